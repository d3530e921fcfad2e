// Leads side by side: Kirchhoff's laws by hand where they are cold, and what heat changes.
#include <cmath>
#include <vector>

#include <gtest/gtest.h>

#include <weldloop/circuit/parallel_leads.hpp>
#include <weldloop/core/error.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/part/welding_cable.hpp>

#include "support/near.hpp"

using namespace weldloop;
using namespace weldloop::literals;

namespace {

const surroundings shop{.air = 20_degC};

}  // namespace

// by hand: 1/R adds up; a milliohm of a bad lug counts like so many metres
TEST(ParallelLeads, ColdOnesShareByConductance)
{
    const std::vector<parallel_lead> leads{{welding_cable(square_mm(50), 10_m)},
                                           {welding_cable(square_mm(70), 15_m)},
                                           {welding_cable(square_mm(50), 10_m), 1_mohm}};
    const lead_sharing s = sharing_of(leads, shop, {.current = 0.1_A});
    std::vector<double> ohms;
    double siemens = 0.0;
    for (const parallel_lead& l : leads) {
        ohms.push_back(resistance_per_length_of(l.lead, 20_degC).value() * l.lead.length.value() + l.ends.value());
        siemens += 1.0 / ohms.back();
    }
    for (std::size_t k = 0; k < leads.size(); ++k) {
        EXPECT_NEAR_REL(s.leads[k].current.value(), 0.1 / (ohms[k] * siemens), 1e-6);
        EXPECT_NEAR_REL(static_cast<double>(s.leads[k].share), 1.0 / (ohms[k] * siemens), 1e-6);
    }
    EXPECT_NEAR_REL(s.drop.value(), 0.1 / siemens, 1e-6);
}

// relation: hot, the currents still add up and every lead has the same drop; the one that is hotter takes less than
// cold
TEST(ParallelLeads, HotOnesKeepBothLawsOfKirchhoff)
{
    const std::vector<parallel_lead> leads{{welding_cable(square_mm(35), 5_m)},
                                           {welding_cable(square_mm(95), 20_m), 0.2_mohm}};
    const load work{.current = 500_A, .duty = duty_cycle::of(6_min, 10_min)};
    const lead_sharing hot = sharing_of(leads, shop, work), cold = sharing_of(leads, shop, {.current = 0.1_A});
    double sum = 0.0;
    for (std::size_t k = 0; k < leads.size(); ++k) {
        const shared_lead& is = hot.leads[k];
        sum += is.current.value();
        EXPECT_NEAR_REL(is.current.value() *
                            (resistance_of(leads[k].lead, is.heating.conductor_mean) + leads[k].ends).value(),
                        hot.drop.value(), 1e-8);
        const cable_heating alone = heating_of(leads[k].lead, shop, {.current = is.current, .duty = work.duty});
        EXPECT_NEAR(alone.conductor_peak.in_kelvin(), is.heating.conductor_peak.in_kelvin(), 1e-6);
    }
    EXPECT_NEAR_REL(sum, 500.0, 1e-9);
    ASSERT_GT(hot.leads[0].heating.conductor_mean, hot.leads[1].heating.conductor_mean);
    EXPECT_LT(hot.leads[0].share, cold.leads[0].share);
}

TEST(ParallelLeads, EqualOnesShareEqually)
{
    const std::vector<parallel_lead> two(2, {welding_cable(square_mm(50), 10_m), 0.1_mohm});
    const lead_sharing s = sharing_of(two, shop, {.current = 300_A});
    for (const shared_lead& l : s.leads) EXPECT_NEAR_REL(l.current.value(), 150.0, 1e-12);
    EXPECT_FALSE(s.basis.sources().empty());
}

TEST(ParallelLeads, RefusesWhatCannotBe)
{
    EXPECT_THROW((void)sharing_of({}, shop, {.current = 100_A}), bad_station_error);
    const std::vector<parallel_lead> wrong{{welding_cable(square_mm(50), 10_m), in_si<resistance>(-1e-3)}},
        one{{welding_cable(square_mm(50), 10_m)}};
    EXPECT_THROW((void)sharing_of(wrong, shop, {.current = 100_A}), out_of_range_error);
    EXPECT_THROW((void)sharing_of(one, shop, {.current = 0_A}), out_of_range_error);
}
