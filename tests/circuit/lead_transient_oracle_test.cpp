// temperature_after() against a lead of 200 rings marched by an ODE suite: tests/oracle/lead_transient.
#include <algorithm>
#include <cmath>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <stdexcept>
#include <string>

#include <gtest/gtest.h>

#include <weldloop/circuit/lead_transient.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/part/welding_cable.hpp>

#include "support/reference_table.hpp"

using namespace weldloop;
using namespace weldloop::literals;
using weldloop::test::reference_table;

namespace {

reference_table kept_output()
{
    const std::filesystem::path path =
        std::filesystem::path(WELDLOOP_TEST_DATA).parent_path() / "oracle" / "lead_transient" / "outputs.csv";
    std::ifstream in(path, std::ios::binary);
    if (!in) throw std::runtime_error(path.string() + ": cannot be read");
    return {path.filename().string(), std::string{std::istreambuf_iterator<char>(in), {}}};
}

constexpr double marched_K = 0.05, settled_K = 0.15;  // as the comments of the two functions promise

}  // namespace

TEST(LeadTransientOracle, SingleShotsAndCoolingAgainstTwoHundredRings)
{
    int rows = 0;
    double worst = 0.0;
    for (const auto& row : kept_output().rows()) {
        if (row.text("kind") != "once") continue;
        const cable lead = welding_cable(square_mm(row.number("size_mm2")), 10_m);
        conductor_profile at = lead_at_rest(lead, {});
        for (const char* part : {"1", "2"})
            at = temperature_after(lead, {},
                                   {in_si<current>(row.number(std::string("amps_") + part)),
                                    in_si<duration>(row.number(std::string("seconds_") + part))},
                                   at);
        EXPECT_NEAR(at.conductor.in_celsius(), row.number("conductor_degC"), marched_K) << row.where();
        EXPECT_NEAR(at.surface.in_celsius(), row.number("surface_degC"), marched_K) << row.where();
        worst = std::max({worst, std::fabs(at.conductor.in_celsius() - row.number("conductor_degC")),
                          std::fabs(at.surface.in_celsius() - row.number("surface_degC"))});
        ++rows;
    }
    EXPECT_EQ(rows, 18);
    RecordProperty("worst_K", std::to_string(worst));
}

TEST(LeadTransientOracle, SettledProgrammesAgainstTwoHundredRings)
{
    int rows = 0;
    double worst = 0.0;
    for (const auto& row : kept_output().rows()) {
        if (row.text("kind") != "settled") continue;
        const cable lead = welding_cable(square_mm(row.number("size_mm2")), 10_m);
        const heating_segment programme[] = {
            {in_si<current>(row.number("amps_1")), in_si<duration>(row.number("seconds_1"))},
            {in_si<current>(row.number("amps_2")), in_si<duration>(row.number("seconds_2"))}};
        const periodic_heating h =
            periodic_heating_of(detail::conductor_of(lead), detail::surface_of(lead, {}), programme);
        EXPECT_NEAR(h.conductor_peak.in_celsius(), row.number("conductor_degC"), settled_K) << row.where();
        EXPECT_NEAR(h.conductor_lowest.in_celsius(), row.number("conductor_lowest_degC"), settled_K) << row.where();
        EXPECT_GE(h.surface_peak.in_celsius(), row.number("surface_degC") - settled_K) << row.where();
        worst = std::max({worst, std::fabs(h.conductor_peak.in_celsius() - row.number("conductor_degC")),
                          std::fabs(h.conductor_lowest.in_celsius() - row.number("conductor_lowest_degC"))});
        ++rows;
    }
    EXPECT_EQ(rows, 18);
    RecordProperty("worst_K", std::to_string(worst));
}
