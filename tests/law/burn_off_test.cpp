#include <weldloop/core/literals.hpp>
#include <weldloop/law/burn_off.hpp>
#include <weldloop/law/loop_heat_input.hpp>
#include <weldloop/law/wire_extension.hpp>

#include <cmath>
#include <limits>
#include <numbers>
#include <string>

#include "law/worked_example.hpp"
#include "support/near.hpp"
#include "support/reference_table.hpp"

namespace {
using namespace weldloop;
using namespace weldloop::literals;
using weldloop::test::inputs_of;
using weldloop::test::reference_table;

double number_before(const std::string& text, const std::string& unit)
{
    const std::size_t end = text.find(unit), begin = text.rfind(' ', end - 1);
    return std::stod(text.substr(begin + 1, end - begin - 1));
}

// source: arc-melting-rate.csv. WL: deposition table of a handbook page, 3 % as its rounded diameters allow; MR-01: an
// open program's example; BO and EX: the arithmetic of formulas whose constants are recalled or judged (no truth in
// them)
TEST(BurnOff, PublishedRows)
{
    int wires = 0, rates = 0, feeds = 0, drops = 0;
    for (const auto& row : reference_table("arc-melting-rate.csv").rows()) {
        const std::string& id = row.text("id");
        if (id.starts_with("WL-")) {
            ++wires;
            const length d = in_si<length>(1e-3 * number_before(row.text("wire_or_process"), " mm"));
            const density rho = in_si<density>(std::stod(row.text("inputs").substr(4)));
            EXPECT_NEAR_REL(wire_length_per_mass(rho, d).value(), row.number("published_value"),
                            0.01 * row.number("tolerance_pct"))
                << row.where();
            EXPECT_NEAR_REL(wire_length_per_mass(rho, d).value(), row.number("recomputed_value"), 1e-5) << row.where();
        } else if (id == "MR-01") {
            ++rates;
            EXPECT_NEAR(melting_rate(submerged_lead_wire, 1000_A).value() * 3600.0, row.number("published_value"), 0.05)
                << row.where();
        } else if (id.starts_with("BO-")) {
            ++feeds;
            const auto in = inputs_of(row.text("inputs"));
            const burn_off c{in_si<melting_by_current>(in.at("a") * 1e-3), in_si<melting_by_heating>(in.at("b"))};
            const length extension = in_si<length>(in.at("L") * 1e-3);
            const current i = in_si<current>(in.at("I"));
            const speed v = melting_speed(c, i, extension);
            EXPECT_NEAR_REL(v.value() * 60.0, row.number("recomputed_value"), 1e-6) << row.where();
            EXPECT_NEAR_REL(melting_rate(v, in_si<density>(7850), 1.2_mm).value() * 3600.0,
                            number_before(row.text("notes"), " kg/h"), 2e-3)
                << row.where();
            EXPECT_NEAR_REL(current_for_feed(c, v, extension).value(), i.value(), 1e-12);
            EXPECT_NEAR_REL(melting_speed(*usual_burn_off(mild_steel, 1.2_mm), i, extension).value(), v.value(), 1e-12);
        } else if (id >= "EX-1" && id <= "EX-4") {
            ++drops;
            const length d = in_si<length>(1e-3 * number_before(row.text("wire_or_process"), " mm"));
            const resistance per_mm = wire_resistance(in_si<resistivity>(0.85e-6), d, 1_mm);
            EXPECT_NEAR_REL(per_mm.value() * 1e3, row.number("recomputed_value"), 1e-5) << row.where();
        }
    }
    EXPECT_EQ(wires, 16);
    EXPECT_EQ(rates, 1);
    EXPECT_EQ(feeds, 3);
    EXPECT_EQ(drops, 4);
}

// source: MR-EQ1, MR-EQ2 of the same table, the equations as printed
TEST(BurnOff, RegressionsAsPrinted)
{
    const double amps = 750.0;
    EXPECT_NEAR_REL(melting_rate(submerged_lead_wire, in_si<current>(amps)).value() * 3600.0,
                    1e-6 * amps * amps + 0.0131 * amps - 0.998, 1e-12);
    EXPECT_NEAR_REL(melting_rate(submerged_trail_wire, in_si<current>(amps)).value() * 3600.0,
                    8e-6 * amps * amps + 0.0103 * amps - 0.4557, 1e-12);
    EXPECT_THROW(static_cast<void>(melting_rate(submerged_lead_wire, 50_A)), out_of_range_error);
}

TEST(BurnOff, ScalesWithTheAreaOfTheWire)
{
    const burn_off thin = *usual_burn_off(mild_steel, 0.6_mm), known = *usual_burn_off(mild_steel, 1.2_mm);
    EXPECT_NEAR_REL(thin.by_arc.value(), 4.0 * known.by_arc.value(), 1e-12);
    EXPECT_NEAR_REL(thin.by_extension.value(), 16.0 * known.by_extension.value(), 1e-12);
    EXPECT_FALSE(usual_burn_off(annealed_copper, 1.2_mm));
    EXPECT_EQ(usual_burn_off(aluminium, 1.2_mm)->by_extension.value(), 0.0);
}

TEST(BurnOff, RefusesWhatCannotBe)
{
    const burn_off c = *usual_burn_off(mild_steel, 1.2_mm);
    EXPECT_THROW(static_cast<void>(melting_speed(c, in_si<current>(-1), 15_mm)), out_of_range_error);
    EXPECT_THROW(static_cast<void>(current_for_feed(c, in_si<speed>(-1), 15_mm)), out_of_range_error);
    EXPECT_THROW(static_cast<void>(melting_speed({}, 100_A, 15_mm)), out_of_range_error);
    EXPECT_THROW(static_cast<void>(usual_burn_off(mild_steel, 0_mm)), out_of_range_error);
    EXPECT_THROW(static_cast<void>(wire_length_per_mass(in_si<density>(0), 1_mm)), out_of_range_error);
}

// Against a march in small steps along the wire, written here.
TEST(WireExtension, ClosedFormAgainstAMarch)
{
    for (const metal& of : {mild_steel, aluminium}) {
        const fed_wire w{.of = of, .diameter = 1.2_mm, .extension = 15_mm, .feed = in_si<speed>(0.125)};
        const current i = 250_A;
        const double area = std::numbers::pi / 4.0 * 1.2e-3 * 1.2e-3, j = i.value() / area;
        double t = 20.0, drop = 0.0;
        constexpr int steps = 20000;
        for (int k = 0; k < steps; ++k) {
            const double dx = 0.015 / steps;
            const auto rho = [&](double celsius) { return of.resistivity_at(temperature::celsius(celsius)).value(); };
            const double half = t + 0.5 * dx * j * j * rho(t) / (of.heat_per_volume().value() * 0.125);
            drop += j * rho(half) * dx;
            t += dx * j * j * rho(half) / (of.heat_per_volume().value() * 0.125);
        }
        const heated_extension ours = extension_of(w, i);
        EXPECT_FALSE(ours.melts_early);
        EXPECT_NEAR(ours.ends.in_celsius(), t, 1e-4);
        EXPECT_NEAR_REL(ours.drop.value(), drop, 1e-7);
    }
}

TEST(WireExtension, LimitsAndMelting)
{
    fed_wire w{.of = mild_steel, .diameter = 1.2_mm, .extension = 15_mm, .feed = in_si<speed>(0.125)};
    EXPECT_EQ(extension_of(w, 0_A).drop, 0_V);
    EXPECT_EQ(extension_of(w, 0_A).ends, w.enters);
    // little current: the cold resistance
    EXPECT_NEAR_REL(extension_of(w, 1_A).drop.value(), wire_resistance(mild_steel.resistivity, 1.2_mm, 15_mm).value(),
                    1e-4);
    w.feed = in_si<speed>(0.01);
    const heated_extension early = extension_of(w, 250_A);
    EXPECT_TRUE(early.melts_early);
    EXPECT_EQ(early.ends, mild_steel.melting);
    EXPECT_LT(early.melts_at, 15_mm);
    w.feed = in_si<speed>(0.0);
    EXPECT_THROW(static_cast<void>(extension_of(w, 1_A)), out_of_range_error);
    EXPECT_THROW(static_cast<void>(wire_resistance(mild_steel.resistivity, 0_mm, 1_mm)), out_of_range_error);
}

}  // namespace
