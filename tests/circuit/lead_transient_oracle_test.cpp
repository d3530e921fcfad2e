// temperature_after() against a lead of 200 rings marched by an ODE suite: tests/oracle/lead_transient.
#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <map>
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

}  // namespace

// Within 0.2 K for an hour, half an hour and cooling. A single shot that is short beside the time the covering takes to
// warm through reads low, never high by more: its heat goes in deeper than one share can say.
TEST(LeadTransientOracle, TwoStoresAgainstTwoHundredRings)
{
    struct allowance {
        double low, high;  // of the conductor's rise; 0.2 K is allowed in any case
    };
    const std::map<std::string, allowance> allowed{{"long", {0.0, 0.0}},     {"half hour", {0.0, 0.0}},
                                                   {"cooling", {0.0, 0.0}},  {"shot", {0.007, 0.0}},
                                                   {"minute", {0.037, 0.0}}, {"burst", {0.065, 0.0}}};
    int rows = 0;
    for (const auto& row : kept_output().rows()) {
        const cable lead = welding_cable(square_mm(row.number("size_mm2")), 10_m);
        store_temperatures at = lead_at_rest(lead, {});
        for (const char* part : {"1", "2"})
            at = temperature_after(lead, {}, in_si<current>(row.number(std::string("amps_") + part)),
                                   in_si<duration>(row.number(std::string("seconds_") + part)), at);
        const double conductor = at.conductor.in_celsius() - row.number("conductor_degC");
        const double surface = at.surface.in_celsius() - row.number("surface_degC");
        const std::string key = row.text("programme") + " " + row.text("size_mm2");
        RecordProperty("K_" + key, std::to_string(conductor) + " surface " + std::to_string(surface));
        const allowance a = allowed.at(row.text("programme"));
        const double rise = row.number("conductor_degC") - 25.0;
        EXPECT_GE(conductor, -std::max(0.2, a.low * rise)) << row.where() << " " << key;
        EXPECT_LE(conductor, std::max(0.2, a.high * rise)) << row.where() << " " << key;
        EXPECT_NEAR(surface, 0.0, row.text("programme") == "burst" ? 2.1 : 0.9) << row.where() << " " << key;
        ++rows;
    }
    EXPECT_EQ(rows, 18);
}
