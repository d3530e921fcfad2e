// The jaws on hot work against finite elements kept in tests/oracle/hot_jaws (gmsh and getdp, Debian 12).
#include <algorithm>
#include <cmath>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <stdexcept>
#include <string>

#include <gtest/gtest.h>

#include <weldloop/circuit/clamp_network.hpp>
#include <weldloop/circuit/work_heat.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/law/fin.hpp>
#include <weldloop/life/grip.hpp>
#include <weldloop/part/sold_clamp.hpp>
#include <weldloop/part/welding_cable.hpp>
#include <weldloop/part/work_clamp.hpp>

#include "support/near.hpp"
#include "support/reference_table.hpp"

using namespace weldloop;
using namespace weldloop::literals;

namespace {

test::reference_table finite_elements()
{
    const std::filesystem::path path =
        std::filesystem::path(WELDLOOP_TEST_DATA).parent_path() / "oracle" / "hot_jaws" / "outputs.csv";
    std::ifstream in(path, std::ios::binary);
    if (!in) throw std::runtime_error(path.string() + ": cannot be read");
    return {path.filename().string(), std::string{std::istreambuf_iterator<char>(in), {}}};
}

}  // namespace

// The picture of the network: pad and air beside it side by side, behind them the disc of the work, a jaw of one
// temperature. What it is off by is the spread from a pad smaller than the disc's patch.
TEST(HotJaws, BodiesOfOneTemperatureAgainstFiniteElements)
{
    constexpr double face = 30e-3 * 40e-3, pad = 120e-6, outside = 2.0 * (6e-4 + 3.9e-4 + 2.6e-4), loss = 12.0;  // m2
    constexpr double jaws = 2.0;  // one from above, one from below: each has half of the disc
    const double sink = disc_fin_conductance(in_si<thermal_conductivity>(50.0), 10_mm, work_patch_radius,
                                             in_si<heat_transfer_coefficient>(20.0))
                            .value() /
                        jaws;
    double least = 1.0, most = -1.0;
    int rows = 0;
    for (const auto& row : finite_elements().rows()) {
        EXPECT_LT(std::fabs(row.number("energy")), 1e-9);
        const double passes = row.number("pad_W_K") + row.number("air_W_m2K") * (face - pad);
        const double in = 1.0 / (1.0 / passes + 1.0 / sink), out = loss * outside + row.number("rest_W_K");
        const double off = row.number("work_K") * in / (in + out) / row.number("jaw_K") - 1.0;
        EXPECT_LT(std::fabs(off), 0.07) << row.where();
        least = std::min(least, off);
        most = std::max(most, off);
        ++rows;
    }
    EXPECT_EQ(rows, 19);
    std::printf("rise of the jaw against finite elements: %+.1f to %+.1f %%\n", 100.0 * least, 100.0 * most);
}

// Idle jaws on work kept at 250 degC, between what the pads alone would give and the work: warm, far from its heat.
TEST(HotJaws, IdleJawsOnHotWork)
{
    const auto idle = [](const work_clamp& clamp, temperature work) {
        work_connection w{.clamp = clamp, .onto = mild_steel, .surface = surface_state::clean, .name = "work clamp"};
        w.preheat = work;
        return grip_over_time(w, welding_cable(square_mm(70), 10_m), {.current = 1_A, .duty = duty_cycle::continuous()},
                              {.air = 25_degC}, 1_h)
            .points.front()
            .peak_temperature.in_celsius();
    };
    const double cast = idle(spring_clamp(300_A), 250_degC);
    EXPECT_GT(cast, 80.0);                                                // 73 by the pads alone
    EXPECT_LT(cast, 120.0);                                               // its lead cools it
    EXPECT_GT(idle(stamped_spring_clamp(300_A), 250_degC), cast + 10.0);  // thin steel carries less away
    EXPECT_NEAR(idle(spring_clamp(300_A), 25_degC), 25.0, 0.5);
    // nearly in proportion: air conducts, and surfaces radiate, more when hotter, on either side of the jaw
    EXPECT_NEAR_REL((cast - 25.0) / (idle(spring_clamp(300_A), 137.5_degC) - 25.0), 2.0, 0.05);
}
