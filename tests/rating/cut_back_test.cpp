// The cut-back length against the fin whose loss is not made linear, and beside what the trade does.
#include <cmath>
#include <limits>
#include <string>

#include <gtest/gtest.h>

#include <weldloop/core/literals.hpp>
#include <weldloop/part/welding_cable.hpp>
#include <weldloop/rating/lead/ampacity.hpp>
#include <weldloop/rating/lead/cut_back.hpp>

#include "support/near.hpp"

using namespace weldloop;
using namespace weldloop::literals;

namespace {

/// Length [m] between two temperatures [degC] of a long fin without current, from its first integral:
/// k A/2 (dT/dx)^2 = integral of q from the air to T. The heat q is steady_loss_of(), not made linear.
double length_by_first_integral(const cable& lead, double end, double limit)
{
    const double ka = lead.metal.thermal_conductivity.value() * lead.size.area().value();
    const double air = 25.0, step = 0.05;
    const auto q = [&](double t) { return steady_loss_of(lead, {}, temperature::celsius(t)).value(); };
    double energy = 0.0, length = 0.0, last_q = 0.0;
    for (double t = air; t < end - 0.5 * step; t += step) {
        const double next_q = q(t + step);
        energy += 0.5 * step * (last_q + next_q);
        last_q = next_q;
        if (t + step > limit + 0.5 * step) length += step / std::sqrt(2.0 / ka * energy);
    }
    return length;
}

}  // namespace

TEST(CutBack, AgreesWithTheFinThatIsNotLinear)
{
    for (const conductor_size& size : {awg(1), aught(2), aught(4)}) {
        const cable lead = welding_cable(size, 20_m);
        for (const double end : {120.0, 200.0, 300.0}) {
            const double exact = length_by_first_integral(lead, end, 85.0);
            const double ours = cut_back_of(lead, {}, temperature::celsius(end)).length.value();
            EXPECT_NEAR_REL(ours, exact, 0.03) << to_text(size) << " from " << end;
            RecordProperty("over_exact_" + std::to_string(static_cast<int>(end)) + "_" + std::to_string(size.number()),
                           std::to_string(ours / exact));
        }
    }
}

TEST(CutBack, IsTheLogarithmOfTheRises)
{
    const cable lead = welding_cable(aught(2), 20_m);
    const cut_back at = cut_back_of(lead, {}, 185_degC);
    EXPECT_NEAR_REL(at.length.value(), at.decay_length.value() * std::log(160.0 / 60.0), 1e-9);
    EXPECT_FALSE(at.none_needed);
    EXPECT_NEAR(at.far.in_celsius(), 25.0, 1e-9);
    // an end that is hotter by e in the rise adds a decay length
    const cut_back hotter = cut_back_of(lead, {}, temperature::celsius(25.0 + 160.0 * std::exp(1.0)));
    EXPECT_NEAR_REL((hotter.length - at.length).value(), at.decay_length.value(), 1e-9);
    // what stands beside common practice: 6 to 10 inches
    EXPECT_NEAR(number_in(cut_back_practice_least, "in"), 6.0, 1e-9);
    EXPECT_NEAR(number_in(cut_back_practice_most, "in"), 10.0, 1e-9);
}

TEST(CutBack, DegenerateCases)
{
    const cable lead = welding_cable(aught(2), 20_m);
    const cut_back cool = cut_back_of(lead, {}, 80_degC);
    EXPECT_TRUE(cool.none_needed);
    EXPECT_EQ(cool.length.value(), 0.0);
    EXPECT_TRUE(cut_back_of(lead, {}, 85_degC).none_needed);
    EXPECT_EQ(cut_back_of(lead, {}, 10_degC).length.value(), 0.0);
    // hot all along: no length of it is enough
    EXPECT_THROW((void)cut_back_of(lead, {}, {200_degC, 85_degC}, 600_A), no_solution_error);
    EXPECT_THROW((void)cut_back_of(lead, {.air = 90_degC}, 200_degC), no_solution_error);
    // just below its rating it reaches far
    const current rated = ampacity_of(lead, {}).amps;
    EXPECT_GT(cut_back_of(lead, {}, {200_degC, 85_degC}, 0.99 * rated).length.value(),
              4.0 * cut_back_of(lead, {}, 200_degC).length.value());
}

// Not a validation: the trade's 6 to 10 inches come without a source. They are shown beside the decay lengths of leads
// without current, which come to the same order, and to which a lead that carried current adds.
TEST(CutBack, CommonPracticeBesideDecayLengths)
{
    for (const conductor_size& size : {awg(1), aught(1), aught(2), aught(3), aught(4)}) {
        const cable lead = welding_cable(size, 20_m);
        const double idle = number_in(decay_length_of(lead, {}, limit_of(lead)), "in");
        RecordProperty("decay_length_in_" + std::to_string(lead.size.area().value() * 1e6), std::to_string(idle));
        EXPECT_GE(idle, number_in(cut_back_practice_least, "in") - 0.5) << to_text(size);
        EXPECT_LE(idle, number_in(cut_back_practice_most, "in") + 0.5) << to_text(size);
        const current rated = ampacity_of(lead, {}).amps;
        double last = idle, last_cut = cut_back_of(lead, {}, 200_degC).length.value();
        for (const double share : {0.3, 0.6, 0.9}) {
            const double now = number_in(decay_length_of(lead, {}, limit_of(lead), share * rated), "in");
            const double cut = cut_back_of(lead, {}, {200_degC, limit_of(lead)}, share * rated).length.value();
            EXPECT_GT(now, last);
            EXPECT_GT(cut, last_cut);
            last = now;
            last_cut = cut;
        }
        RecordProperty("decay_length_at_90_in_" + std::to_string(lead.size.area().value() * 1e6), std::to_string(last));
    }
}

TEST(CutBack, RefusesBadInput)
{
    cable lead = welding_cable(aught(2), 20_m);
    for (const double bad : {std::numeric_limits<double>::quiet_NaN(), std::numeric_limits<double>::infinity()}) {
        EXPECT_THROW((void)cut_back_of(lead, {}, {200_degC, 85_degC}, in_si<current>(bad)), not_finite_error);
        EXPECT_THROW((void)cut_back_of(lead, {.wind = in_si<speed>(bad)}, 200_degC), not_finite_error);
    }
    EXPECT_THROW((void)cut_back_of(lead, {}, {200_degC, 85_degC}, in_si<current>(-1)), out_of_range_error);
    lead.overall_diameter = length{};
    EXPECT_THROW((void)cut_back_of(lead, {}, 200_degC), missing_data_error);
}
