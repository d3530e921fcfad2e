// What laws refuse because its answer would be no number, or because a constant that was given to them is none: each
// found by feeding every number a double can be.
#include <array>
#include <cmath>
#include <limits>
#include <vector>

#include <gtest/gtest.h>

#include <weldloop/core/duty_cycle.hpp>
#include <weldloop/core/error.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/law/bolt_relaxation.hpp>
#include <weldloop/law/burn_off.hpp>
#include <weldloop/law/cable_surface.hpp>
#include <weldloop/law/code_relaxation.hpp>
#include <weldloop/law/convection.hpp>
#include <weldloop/law/copper_relaxation.hpp>
#include <weldloop/law/equal_heating.hpp>
#include <weldloop/law/fin.hpp>
#include <weldloop/law/free_air.hpp>
#include <weldloop/law/heating_march.hpp>
#include <weldloop/law/lead_bundle.hpp>
#include <weldloop/law/reading_fit.hpp>
#include <weldloop/law/relaxation_choice.hpp>
#include <weldloop/law/scatter.hpp>
#include <weldloop/law/skin_effect.hpp>
#include <weldloop/law/stress_relaxation.hpp>
#include <weldloop/material/air.hpp>

#include "law/contact_fixture.hpp"

namespace {
using namespace weldloop;
using namespace weldloop::literals;

constexpr double huge = 1e300, tiny = 1e-300;
constexpr double infinite = std::numeric_limits<double>::infinity();
constexpr double no_number = std::numeric_limits<double>::quiet_NaN();

spring_wire with(double spring_wire::*member, double value)
{
    spring_wire out = hard_drawn_wire;
    out.*member = value;
    return out;
}
spring_wire with(double relaxation_constants::*member, double value)
{
    spring_wire out = hard_drawn_wire;
    out.preset.*member = value;
    return out;
}
spring_wire with_slope(double value)
{
    spring_wire out = hard_drawn_wire;
    out.normal.parameter_slope = in_si<per_kelvin>(value);
    return out;
}
}  // namespace

TEST(LawRefusals, ConstantsOfRelaxationWhereTheWireIsGiven)
{
    for (const double x : {no_number, infinite, -infinite}) {
        EXPECT_THROW((void)relaxation_state(with(&spring_wire::rise_scale, x), 0.6), not_finite_error) << x;
        EXPECT_THROW((void)relaxation_state(with(&relaxation_constants::reference_exponent, x), 0.6), not_finite_error);
        EXPECT_THROW((void)relaxation_state(with(&relaxation_constants::stress_slope, x), 0.6), not_finite_error);
        EXPECT_THROW((void)relaxation_state(with_slope(x), 0.6), not_finite_error);
        EXPECT_THROW((void)chosen_relaxation({}, with_slope(x), 0.6), not_finite_error);
        copper_spring_alloy alloy = brass_spring;
        alloy.reference_exponent = x;
        EXPECT_THROW((void)copper_relaxation_state(alloy), not_finite_error);
    }
    // a spring that was new and cold would have lost everything
    for (const double x : {0.0, -1e-3, 1.1})
        EXPECT_THROW((void)relaxation_state(with_slope(x), 0.6), out_of_range_error) << x;
    EXPECT_THROW((void)relaxation_state(with(&spring_wire::rise_scale, -1.0), 0.6), out_of_range_error);
    EXPECT_THROW((void)relaxation_state(with(&relaxation_constants::reference_exponent, -0.1), 0.6),
                 out_of_range_error);
    EXPECT_THROW((void)relaxation_state(with(&relaxation_constants::stress_slope, 701.0), 0.6), out_of_range_error);
}

// r0 = 0 is a wire that does not relax, whatever the exponential comes to.
TEST(LawRefusals, AWireThatDoesNotRelaxLosesNothingInAnyHeat)
{
    spring_wire still = hard_drawn_wire;
    still.normal.reference_exponent = still.preset.reference_exponent = 0.0;
    still.tempering = temperature::kelvin(huge);
    const relaxation found =
        relaxation_state(still, 0.6).advance(temperature::kelvin(1e10), in_si<duration>(1e9)).result();
    EXPECT_EQ(static_cast<double>(found.lost), 0.0);
    EXPECT_EQ(static_cast<double>(found.bracket.high), 0.0);
}

TEST(LawRefusals, WhatACodeLawIsAskedToCover)
{
    EXPECT_REFUSES_BAD_NUMBERS(code_relaxation_covers(relaxation_time_law::model_code, 0.7, in_si<duration>(x)));
    EXPECT_REFUSES_BAD_NUMBERS_AND_ZERO(
        code_relaxation_covers(relaxation_time_law::logarithmic, 0.7, in_si<duration>(1e6), x));
}

TEST(LawRefusals, AnswersBeyondTheNumbersThereAre)
{
    EXPECT_THROW((void)free_air_coefficient({.z = huge, .e = 0.0, .g = 1.0}, in_si<length>(tiny)), error);
    EXPECT_THROW((void)free_air_coefficient({.z = no_number, .e = 0.0, .g = 1.0}, 20_mm), error);
    EXPECT_THROW((void)settling_rate(-huge, 1.0), error);
    EXPECT_THROW((void)melting_rate(in_si<speed>(huge), in_si<density>(huge), 1_mm), error);
    EXPECT_THROW((void)melting_rate(submerged_lead_wire, in_si<current>(huge)), error);
    EXPECT_THROW((void)usual_burn_off(mild_steel, in_si<length>(tiny)), error);
    EXPECT_THROW((void)usual_burn_off(mild_steel, in_si<length>(huge)), error);
    EXPECT_THROW((void)reynolds_number(in_si<speed>(huge), in_si<length>(huge), air_at(20_degC)), error);
    EXPECT_THROW((void)equal_heating_current(in_si<current>(1.7e308), duty_cycle::continuous(), duty_cycle::of(0.1)),
                 error);
    EXPECT_THROW((void)lead_bundle_of(lay::coiled, in_si<length>(1.7e308), 100), error);
    EXPECT_THROW((void)lead_bundle_of(lay::coiled, 20_mm, 100, in_si<thermal_conductivity>(1e-310)), error);
    EXPECT_THROW((void)product_of({1.0, 1e200, 1e200}, {1.0, 1e200, 1e200}), error);
    EXPECT_THROW((void)surface_loss({.diameter = in_si<length>(huge)}, temperature::kelvin(huge)), error);
    EXPECT_THROW((void)waveform_resistance_of(
                     waveform::of_pieces({{in_si<duration>(1.0), in_si<current>(1e-310), in_si<current>(-1e-320)},
                                          {in_si<duration>(1e-300), current{}, current{}}}),
                     in_si<resistance_per_length>(no_number)),
                 error);
}

TEST(LawRefusals, AFinWhoseNumbersLeaveTheirRange)
{
    using conduction = decltype(thermal_conductance{} * length{});
    const auto fin = [](double axial, double loss, double heating, double extent) {
        return heated_fin(in_si<conduction>(axial), in_si<thermal_conductivity>(loss), in_si<power_per_length>(heating),
                          in_si<length>(extent));
    };
    EXPECT_THROW((void)fin(1.0, tiny, huge, 1.0), error);     // its rise far from the ends
    EXPECT_THROW((void)fin(huge, tiny, 1.0, 1e-100), error);  // its length over its decay length
    EXPECT_THROW((void)fin(huge, huge, 1.0, 1e-20).own_end(), error);
    EXPECT_THROW((void)fin(huge, huge, 1.0, 1e-20).other_end(), error);
    const heated_fin usual = fin(1.0, 1.0, 1.0, 1.0);
    const temperature_difference far = in_si<temperature_difference>(1.7e308);
    EXPECT_THROW((void)usual.into_end(far, -far), error);
    EXPECT_THROW((void)usual.mean_rise(far, far), error);
    EXPECT_TRUE(std::isfinite(usual.highest_rise(far, far).value()));
}

TEST(LawRefusals, FitsOfReadingsFarApartAreGaps)
{
    const auto read = [](double newton, double ohm) {
        return contact_reading{in_si<force>(newton), in_si<resistance>(ohm), 0.0};
    };
    const std::array apart{read(1e-300, 1e300), read(1e300, 1e300), read(1e-300, 1e-300), read(1e300, 1e300),
                           read(1.0, 1e-300)};
    const force_law_fit f = fit_force_law(apart);
    EXPECT_TRUE(!f.constant.value || std::isfinite(*f.constant.value));
    EXPECT_TRUE(!f.multiplier || std::isfinite(f.multiplier->high));
    EXPECT_FALSE(f.multiplier);
    const std::array hot{relaxation_reading{.at = temperature::kelvin(1.7e308), .time = 1000_h, .lost = 0.1}};
    EXPECT_THROW((void)fit_relaxation(hot), error);
    relaxation_constants kept = normal_relaxation;
    kept.stress_slope = no_number;
    EXPECT_THROW((void)fit_relaxation({}, kept), not_finite_error);
}
