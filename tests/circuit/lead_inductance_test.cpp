#include <limits>
#include <numbers>

#include <gtest/gtest.h>

#include <weldloop/circuit/lead_inductance.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/part/welding_cable.hpp>

#include "support/near.hpp"

using namespace weldloop;
using namespace weldloop::literals;

namespace {

constexpr double nan_value = std::numeric_limits<double>::quiet_NaN();
constexpr double infinite = std::numeric_limits<double>::infinity();

double microhenry(const lead_inductance& l)
{
    return l.total.value() * 1e6;
}

}  // namespace

TEST(LeadInductance, TouchingPair)
{
    const cable lead = welding_cable(square_mm(70), 10_m);
    const lead_inductance l = inductance_of(lead, lead);
    const double per_length =
        0.4 * std::log(lead.overall_diameter.value() / (0.5 * lead.conductor_diameter.value())) + 0.1;
    EXPECT_NEAR_REL(microhenry(l), 10 * per_length, 1e-12);
    EXPECT_EQ(l.coiled.value(), 0.0);
    EXPECT_EQ(l.total, l.straight);
    EXPECT_EQ(l.lead_in_coil.value(), 0.0);
    EXPECT_FALSE(l.basis.sources().empty());
}

TEST(LeadInductance, UnequalLeadsCountTheirMeanLength)
{
    const cable one = welding_cable(square_mm(70), 10_m), other = welding_cable(square_mm(50), 4_m);
    const cable mean = welding_cable(square_mm(50), 7_m);
    EXPECT_NEAR_REL(microhenry(inductance_of(one, other, {.spacing = 0.3_m})),
                    microhenry(inductance_of(welding_cable(square_mm(70), 7_m), mean, {.spacing = 0.3_m})), 1e-12);
    EXPECT_EQ(inductance_of(one, other).total, inductance_of(other, one).total);
}

// common practice: leads apart and spare lead in a coil make a supply slow; coil both together
TEST(LeadInductance, SpacingAndCoilCostAndCoilingTogetherDoesNot)
{
    const cable lead = welding_cable(square_mm(70), 20_m);
    const lead_inductance together = inductance_of(lead, lead);
    const lead_inductance apart = inductance_of(lead, lead, {.spacing = 1_m});
    const lead_inductance coiled = inductance_of(lead, lead, {.coil = {.turns = 8, .diameter = 0.5_m, .layers = 3}});
    const lead_inductance both =
        inductance_of(lead, lead, {.coil = {.turns = 8, .diameter = 0.5_m, .layers = 3, .both_leads = true}});
    EXPECT_GT(microhenry(apart), 3 * microhenry(together));
    EXPECT_GT(microhenry(coiled), 5 * microhenry(together));
    EXPECT_NEAR_REL(microhenry(both), microhenry(together), 1e-12);
    EXPECT_NEAR_REL(coiled.lead_in_coil.value(), 8 * 0.5 * std::numbers::pi, 1e-14);
    EXPECT_NEAR_REL(coiled.coiled.value(),
                    coil_inductance({.turns = 8, .diameter = 0.5_m, .pitch = lead.overall_diameter, .layers = 3},
                                    0.5 * lead.conductor_diameter)
                        .value(),
                    1e-14);
    // the coiled length no longer lies beside its return
    EXPECT_NEAR_REL(coiled.straight.value(), together.total.value() * (1 - 0.5 * coiled.lead_in_coil.value() / 20),
                    1e-12);
}

TEST(LeadInductance, RefusesWhatCannotBe)
{
    const cable lead = welding_cable(square_mm(70), 10_m);
    const auto with = [&](auto member, auto value) {
        cable c = lead;
        c.*member = value;
        return c;
    };
    for (double bad : {nan_value, infinite}) {
        EXPECT_THROW((void)inductance_of(lead, lead, {.spacing = in_si<length>(bad)}), not_finite_error);
        EXPECT_THROW((void)inductance_of(lead, lead, {.coil = {.turns = 2, .diameter = in_si<length>(bad)}}),
                     not_finite_error);
        EXPECT_THROW((void)inductance_of(with(&cable::length, in_si<length>(bad)), lead), not_finite_error);
        EXPECT_THROW((void)inductance_of(lead, with(&cable::conductor_diameter, in_si<length>(bad))), not_finite_error);
        EXPECT_THROW((void)inductance_of(lead, with(&cable::overall_diameter, in_si<length>(bad))), not_finite_error);
    }
    EXPECT_THROW((void)inductance_of(with(&cable::overall_diameter, length{}), lead), missing_data_error);
    EXPECT_THROW((void)inductance_of(with(&cable::length, length{}), lead), out_of_range_error);
    EXPECT_THROW((void)inductance_of(lead, lead, {.spacing = 5_mm}), out_of_range_error);
    EXPECT_THROW((void)inductance_of(lead, lead, {.spacing = -1.0 * 5_mm}), out_of_range_error);
    EXPECT_THROW((void)inductance_of(lead, lead, {.coil = {.turns = -1}}), out_of_range_error);
    EXPECT_THROW((void)inductance_of(lead, lead, {.coil = {.turns = 3}}), out_of_range_error);
    EXPECT_THROW((void)inductance_of(lead, lead, {.coil = {.turns = 30, .diameter = 0.5_m}}), out_of_range_error);
    EXPECT_THROW((void)inductance_of(lead, lead, {.coil = {.turns = 3, .diameter = 0.5_m, .layers = 4}}),
                 out_of_range_error);
}
