// Spring wire: strength, moduli and limits against the published tables.
#include <algorithm>
#include <cstdio>
#include <limits>
#include <map>
#include <string>

#include <gtest/gtest.h>

#include <weldloop/core/error.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/core/text.hpp>
#include <weldloop/material/spring_wire.hpp>

#include "support/near.hpp"
#include "support/reference_table.hpp"

namespace wl = weldloop;
using namespace weldloop::literals;
using weldloop::test::reference_table;

namespace {

struct spread {
    double lowest = 1e9, highest = -1e9, sum = 0.0;
    int rows = 0;
    void add(double error)
    {
        lowest = std::min(lowest, error);
        highest = std::max(highest, error);
        sum += error;
        ++rows;
    }
};

/// Error of the strength law against every row of one wire of the Indian Standard minima that lies in its range.
spread against_minima(const wl::spring_wire& wire, const std::string& minimum_of)
{
    const reference_table table("springs-wire-tensile-tables.csv");
    spread out;
    for (const auto& row : table.rows()) {
        if (row.text("wire") != minimum_of) continue;
        const wl::length d = row.number("d_mm") * 1_mm;
        if (d < wire.strengths.front().thinnest || d > wire.strengths.back().thickest) continue;
        const double error = wl::number_in(wl::tensile_strength(wire, d), "MPa") / row.number("Sut_min_MPa") - 1.0;
        out.add(error);
        ::testing::Test::RecordProperty(std::string(wire.name) + " over " + minimum_of + ", " + row.text("d_mm") +
                                            " mm",
                                        std::to_string(100.0 * error) + " %");
    }
    std::printf("%-18s against %-40s %+5.1f .. %+5.1f %%, mean %+5.1f %%, %d rows\n", std::string(wire.name).c_str(),
                minimum_of.c_str(), 100 * out.lowest, 100 * out.highest, 100 * out.sum / out.rows, out.rows);
    return out;
}

const std::map<std::string, wl::spring_wire> by_table_name{{"music wire", wl::music_wire},
                                                           {"oil-tempered", wl::oil_tempered_wire},
                                                           {"hard-drawn", wl::hard_drawn_wire},
                                                           {"chrome-vanadium", wl::chrome_vanadium_wire},
                                                           {"chrome-silicon", wl::chrome_silicon_wire},
                                                           {"302 stainless", wl::stainless_wire}};

}  // namespace

// Shigley table 10-4, the newer set: the library's own constants, so this pins them.
TEST(SpringWire, HoldsTheNewerStrengthConstants)
{
    int seen = 0;
    const reference_table table("springs-wire-tensile.csv");
    for (const auto& row : table.rows()) {
        const auto wire = by_table_name.find(row.text("wire"));
        if (row.text("set") != "Shigley 9th-10th ed." || wire == by_table_name.end()) continue;
        const double d_mm = 0.5 * (row.number("d_min_mm") + row.number("d_max_mm"));
        EXPECT_NEAR_REL(wl::number_in(wl::tensile_strength(wire->second, d_mm * 1_mm), "MPa"),
                        row.number("A_MPa_mm_m") / std::pow(d_mm, row.number("m")), 1e-12)
            << row.where();
        ++seen;
    }
    EXPECT_EQ(seen, 8);
}

// Public examination question on the older constants: the law itself, with constants the library does not use.
TEST(SpringWire, GivesTheExaminationQuestion)
{
    const wl::strength_range older{1_mm, 20_mm, 1610_MPa, 0.193};
    wl::spring_wire wire = wl::oil_tempered_wire;
    wire.strengths = {&older, 1};
    int seen = 0;
    const reference_table table("springs-worked-examples.csv");
    for (const auto& row : table.rows()) {
        if (row.text("id") != "SPX-FE-A229") continue;
        EXPECT_NEAR_REL(wl::number_in(wl::tensile_strength(wire, 10_mm), "MPa"), row.number("published_value"), 1e-3);
        ++seen;
    }
    EXPECT_EQ(seen, 1);
}

// The fit of the ASTM minima is independent of that set: within 5 % for music wire at 3 mm, 1 % for the other two.
TEST(SpringWire, AgreesWithTheFitOfTheStandardsMinima)
{
    int seen = 0;
    const reference_table table("springs-wire-tensile.csv");
    for (const auto& row : table.rows()) {
        if (row.text("set") != "power-law fit of ASTM minima") continue;
        const wl::spring_wire& wire = by_table_name.at(row.text("wire"));
        const double minimum = row.number("A_MPa_mm_m") / std::pow(3.0, row.number("m"));
        RecordProperty(
            std::string(wire.name) + " at 3 mm",
            std::to_string(100.0 * (wl::number_in(wl::tensile_strength(wire, 3_mm), "MPa") / minimum - 1.0)) + " %");
        EXPECT_NEAR_REL(wl::number_in(wl::tensile_strength(wire, 3_mm), "MPa"), minimum,
                        wire == wl::music_wire ? 0.05 : 0.01)
            << row.where();
        ++seen;
    }
    EXPECT_EQ(seen, 3);
}

// IS 4454 minima (Bhandari tables 10.1 and 10.2). Its grades are not the ASTM wires: what is asserted is where each law
// lies.
TEST(SpringWire, LiesAmongTheIndianStandardMinima)
{
    const spread oil = against_minima(wl::oil_tempered_wire, "oil-hardened and tempered, SW (static)");
    EXPECT_GE(oil.lowest, -0.055);
    EXPECT_LE(oil.highest, 0.055);

    const spread music_3 = against_minima(wl::music_wire, "patented cold-drawn, grade 3");
    const spread music_4 = against_minima(wl::music_wire, "patented cold-drawn, grade 4");
    EXPECT_GE(music_3.lowest, -0.015);  // on or above grade 3 ...
    EXPECT_LE(music_3.highest, 0.115);
    EXPECT_LE(music_4.highest, 0.025);  // ... and below grade 4

    const spread hard_1 = against_minima(wl::hard_drawn_wire, "patented cold-drawn, grade 1");
    const spread hard_2 = against_minima(wl::hard_drawn_wire, "patented cold-drawn, grade 2");
    EXPECT_GE(hard_1.lowest, 0.09);    // above grade 1 ...
    EXPECT_LE(hard_2.highest, -0.01);  // ... and 2 to 9 % below grade 2
    EXPECT_GE(hard_2.lowest, -0.095);
}

// Shigley table 10-5, page 526.
TEST(SpringWire, HoldsThePublishedModuli)
{
    const std::map<std::string, wl::spring_wire> wires{{"music wire A228", wl::music_wire},
                                                       {"hard-drawn A227", wl::hard_drawn_wire},
                                                       {"oil-tempered A229", wl::oil_tempered_wire},
                                                       {"chrome-vanadium A231/A232", wl::chrome_vanadium_wire},
                                                       {"chrome-silicon A401", wl::chrome_silicon_wire},
                                                       {"302 stainless A313", wl::stainless_wire}};
    // a diameter inside each printed range
    const std::map<std::string, wl::length> inside{{"<0.032", 0.020_in},
                                                   {"0.033-0.063", 0.050_in},
                                                   {"0.064-0.125", 0.100_in},
                                                   {">0.125", 0.200_in},
                                                   {"all", 0.100_in}};
    int seen = 0;
    const reference_table table("springs-moduli.csv");
    for (const auto& row : table.rows()) {
        const auto wire = wires.find(row.text("wire"));
        if (wire == wires.end()) continue;
        const wl::length d = inside.at(row.text("d_range_in"));
        EXPECT_NEAR_REL(wl::number_in(wl::youngs_modulus(wire->second, d), "GPa"), row.number("E_GPa"), 1e-12)
            << row.where();
        EXPECT_NEAR_REL(wl::number_in(wl::shear_modulus(wire->second, d), "GPa"), row.number("G_GPa"), 1e-12)
            << row.where();
        ++seen;
    }
    EXPECT_EQ(seen, 12);
}

TEST(SpringWire, HoldsThePublishedServiceLimits)
{
    const std::map<std::string, wl::spring_wire> wires{{"music wire A228", wl::music_wire},
                                                       {"hard-drawn A227", wl::hard_drawn_wire},
                                                       {"oil-tempered A229", wl::oil_tempered_wire},
                                                       {"chrome-vanadium A231/A232", wl::chrome_vanadium_wire},
                                                       {"chrome-silicon A401", wl::chrome_silicon_wire},
                                                       {"302/304 stainless A313", wl::stainless_wire}};
    int seen = 0;
    const reference_table table("springs-max-service-temperature.csv");
    for (const auto& row : table.rows()) {
        const auto wire = wires.find(row.text("wire"));
        if (wire == wires.end()) continue;
        EXPECT_NEAR_REL(wire->second.max_service.in_celsius(), row.number("max_service_temperature_C"), 1e-12)
            << row.where();
        ++seen;
    }
    EXPECT_EQ(seen, 6);
}

TEST(SpringWire, ThinnerWireIsStronger)
{
    for (const wl::spring_wire& wire : wl::all_spring_wires) {
        wl::pressure last = 1e6 * 1_MPa;
        const double low = wire.strengths.front().thinnest.value(), high = wire.strengths.back().thickest.value();
        for (int i = 0; i <= 200; ++i) {
            const wl::pressure strength =
                wl::tensile_strength(wire, wl::in_si<wl::length>(low + (high - low) * i / 200));
            EXPECT_LE(strength, last) << wire.name;
            last = strength;
        }
    }
}

TEST(SpringWire, RangesAreRisingAndWithoutGaps)
{
    for (const wl::spring_wire& wire : wl::all_spring_wires) {
        for (std::size_t i = 0; i < wire.strengths.size(); ++i) {
            EXPECT_LT(wire.strengths[i].thinnest, wire.strengths[i].thickest) << wire.name;
            if (i > 0) {
                EXPECT_EQ(wire.strengths[i].thinnest, wire.strengths[i - 1].thickest) << wire.name;
            }
        }
        for (std::size_t i = 1; i < wire.moduli.size(); ++i)
            EXPECT_LT(wire.moduli[i - 1].up_to, wire.moduli[i].up_to) << wire.name;
        EXPECT_LT(wire.max_service, wire.tempering) << wire.name;
        for (const wl::source* s : {wire.strength_source, wire.moduli_source, wire.set_source, wire.service_source,
                                    wire.tempering_source, wire.relaxation_source})
            ASSERT_NE(s, nullptr) << wire.name;
        EXPECT_FALSE(wire.standard.empty()) << wire.name;
        EXPECT_LT(wire.set.shear, wire.set.preset_shear) << wire.name;
        EXPECT_LT(wire.set.preset_shear, wire.set.bending) << wire.name;
        EXPECT_EQ(wire.relaxation_published, wire.relaxation_source->kind != wl::source_kind::judgement) << wire.name;
    }
}

TEST(SpringWire, RefusesADiameterOutsideItsTable)
{
    EXPECT_THROW((void)wl::tensile_strength(wl::music_wire, 7_mm), wl::out_of_range_error);
    EXPECT_THROW((void)wl::tensile_strength(wl::music_wire, 0.05_mm), wl::out_of_range_error);
    EXPECT_THROW((void)wl::tensile_strength(wl::music_wire, 0_mm), wl::out_of_range_error);
    EXPECT_THROW((void)wl::tensile_strength(wl::music_wire, -1.0 * 1_mm), wl::out_of_range_error);
    EXPECT_THROW(
        (void)wl::tensile_strength(wl::music_wire, wl::in_si<wl::length>(std::numeric_limits<double>::quiet_NaN())),
        wl::not_finite_error);
    EXPECT_THROW((void)wl::youngs_modulus(wl::music_wire, 0_mm), wl::out_of_range_error);
    EXPECT_THROW(
        (void)wl::shear_modulus(wl::music_wire, wl::in_si<wl::length>(std::numeric_limits<double>::infinity())),
        wl::not_finite_error);
    // the ends belong to the table, however they were reached
    EXPECT_NO_THROW((void)wl::tensile_strength(wl::music_wire, 65.0 * 0.1_mm));
    EXPECT_NO_THROW((void)wl::tensile_strength(wl::hard_drawn_wire, 0.5_in));
}
