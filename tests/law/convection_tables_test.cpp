// The printed correlations of convection, evaluated as they stand in the tables, against the laws of convection.hpp.
#include <algorithm>
#include <cmath>
#include <string>

#include <gtest/gtest.h>

#include <weldloop/law/convection.hpp>

#include "support/near.hpp"
#include "support/printed_formula.hpp"
#include "support/reference_table.hpp"

using namespace weldloop;
using weldloop::test::printed_value;
using weldloop::test::reference_table;
using weldloop::test::text_between;

namespace {

// Incropera, sections 7.4 and 9.6 (from memory): no correlation for a cylinder is to be trusted much better than 20 %
constexpr double scatter_of_correlations = 0.20;
// Churchill and Bernstein: from here to 4e5 the last factor may be 1 + (Re/282000)^(1/2)
constexpr double variant_from = 2e4;
// the same law written twice: rounding of pow() only
constexpr double same_law = 1e-12;

/// Calls f at points spread evenly in the logarithm from low to high, both ends left out.
template <class F>
void between(double low, double high, F&& f)
{
    constexpr int points = 12;
    for (int i = 1; i < points; ++i) f(low * std::pow(high / low, static_cast<double>(i) / points));
}

}  // namespace

// source: Churchill and Chu 1975 (two sources), Morgan 1975 (first range seen in an example, the others from memory:
// the published ratings in cable_surface_test.cpp and the examples in convection_test.cpp are their other check),
// McAdams 1954 (one source). Plates, sphere and vertical cylinder are not used by any law here: leads lie, and bodies
// of parts are taken as horizontal cylinders by judgement (thermal_body.hpp).
TEST(ConvectionTables, NaturalConvection)
{
    int same = 0, scatter = 0, skipped = 0;
    for (const auto& row : reference_table("heat-natural-convection.csv").rows()) {
        const std::string& id = row.text("id");
        if (!id.starts_with("NC-HC-")) {
            EXPECT_TRUE(id.starts_with("NC-V") || id.starts_with("NC-HP-") || id == "NC-SPH") << row.where();
            ++skipped;
            continue;
        }
        const double low = row.number("Ra_min"), high = row.number("Ra_max");
        const auto printed = [&](double ra, double pr) {
            return printed_value(row.text("equation"), {{"Ra", ra}, {"Pr", pr}});
        };
        if (id == "NC-HC-FULL") {
            EXPECT_EQ(cylinder_lowest_rayleigh, low) << row.where();
            EXPECT_EQ(cylinder_highest_rayleigh, high) << row.where();
            for (const double pr : {0.68, 0.71, 7.0})
                between(low, high, [&](double ra) {
                    EXPECT_NEAR_REL(nusselt_horizontal_cylinder(ra, pr), printed(ra, pr), same_law) << row.where();
                });
            ++same;
        } else if (id == "NC-HC-LAM") {
            EXPECT_EQ(laminar_highest_rayleigh, high) << row.where();
            for (const double pr : {0.68, 0.71, 7.0})
                between(low, high, [&](double ra) {
                    EXPECT_NEAR_REL(nusselt_horizontal_cylinder_laminar(ra, pr), printed(ra, pr), same_law)
                        << row.where();
                });
            ++same;
        } else if (id.starts_with("NC-HC-MORGAN-")) {
            between(low, high, [&](double ra) {
                EXPECT_NEAR_REL(nusselt_horizontal_cylinder_morgan(ra), printed(ra, 0.7), same_law) << row.where();
            });
            ++same;
        } else {
            // another author, at the Rayleigh numbers of leads and thick parts
            EXPECT_EQ(id, "NC-HC-MCADAMS");
            between(low, 1e7, [&](double ra) {
                EXPECT_NEAR_REL(nusselt_horizontal_cylinder(ra, 0.7), printed(ra, 0.7), scatter_of_correlations) << ra;
                EXPECT_NEAR_REL(nusselt_horizontal_cylinder_morgan(ra), printed(ra, 0.7), scatter_of_correlations)
                    << ra;
            });
            ++scatter;
        }
    }
    EXPECT_EQ(same, 7);
    EXPECT_EQ(scatter, 1);
    EXPECT_EQ(skipped, 7);
}

// source: Churchill and Bernstein 1977 (two sources); Hilpert 1933 (3rd and 5th range one source, the others from
// memory) as another author's measurements; the mixing rule (from memory; no other check of it is published, and
// results that use it name it as recalled). Hilpert is missed by up to 24 % from Re 1.6e5 on: between 2e4 and 4e5 the
// authors of the formula give a variant of their own, which does keep within the scatter. The library has the main form
// only, because a lead never gets there (20 mm in a storm of 30 m/s is 4e4), and errs to the cautious side: less heat
// given off.
TEST(ConvectionTables, ForcedAndMixedConvection)
{
    int same = 0, scatter = 0, mixed = 0;
    for (const auto& row : reference_table("heat-forced-convection.csv").rows()) {
        const std::string& id = row.text("id");
        const auto printed = [&](double re, double pr) {
            return printed_value(row.text("equation"), {{"Re", re}, {"Pr", pr}});
        };
        if (id == "FC-CB") {
            EXPECT_EQ(row.text("Re_min"), "Re*Pr > 0.2") << row.where();
            EXPECT_EQ(cross_flow_lowest_peclet, 0.2);
            for (const double pr : {0.68, 0.71, 7.0})
                between(0.3, cross_flow_highest_reynolds, [&](double re) {
                    EXPECT_NEAR_REL(nusselt_cross_flow(re, pr), printed(re, pr), same_law) << row.where();
                });
            ++same;
        } else if (id.starts_with("FC-HIL-")) {
            between(row.number("Re_min"), row.number("Re_max"), [&](double re) {
                const double ours = nusselt_cross_flow(re, 0.71), theirs = printed(re, 0.71);
                if (re > variant_from) {
                    const double variant = 0.3 + (ours - 0.3) * (1.0 + std::sqrt(re / 282000.0)) /
                                                     std::pow(1.0 + std::pow(re / 282000.0, 0.625), 0.8);
                    EXPECT_NEAR_REL(variant, theirs, scatter_of_correlations) << row.where() << " at Re " << re;
                    EXPECT_LT(ours, variant) << re;
                } else {
                    EXPECT_NEAR_REL(ours, theirs, scatter_of_correlations) << row.where() << " at Re " << re;
                }
            });
            ++scatter;
        } else {
            EXPECT_EQ(id, "MIX");
            EXPECT_TRUE(row.text("equation").starts_with("Nu^n = Nu_forced^n + Nu_natural^n, n = 3")) << row.where();
            const std::string rule = text_between(row.text("equation"), "= ", ", n = 3");
            for (const double n : {3.0, 4.0})
                for (const double natural : {1.0, 4.0, 9.0})
                    for (const double forced : {0.5, 4.0, 30.0})
                        EXPECT_NEAR_REL(std::pow(nusselt_mixed(natural, forced, n), n),
                                        printed_value(rule, {{"Nu_forced", forced}, {"Nu_natural", natural}, {"n", n}}),
                                        same_law);
            ++mixed;
        }
    }
    EXPECT_EQ(same, 1);
    EXPECT_EQ(scatter, 5);
    EXPECT_EQ(mixed, 1);
}
