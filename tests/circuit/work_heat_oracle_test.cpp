// Rise where a clamp grips a piece that is welded, against finite elements: tests/oracle/work_heat.
#include <weldloop/circuit/arc_in_work.hpp>

#include <weldloop/core/literals.hpp>
#include <weldloop/material/metals.hpp>

#include <algorithm>
#include <cmath>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <iterator>
#include <stdexcept>
#include <string>

#include <gtest/gtest.h>

#include "support/reference_table.hpp"

namespace {
using namespace weldloop;
using namespace weldloop::literals;
using weldloop::test::reference_table;

reference_table kept_output()
{
    const auto path = std::filesystem::path(WELDLOOP_TEST_DATA).parent_path() / "oracle" / "work_heat" / "outputs.csv";
    std::ifstream in(path, std::ios::binary);
    if (!in) throw std::runtime_error(path.string() + ": cannot be read");
    return {path.filename().string(), std::string{std::istreambuf_iterator<char>(in), {}}};
}

// The metal of the decks: k 50 W/(m K), rho c 3.52576e6 J/(m3 K), as mild steel here.
workpiece piece_of(const std::string& deck)
{
    // a plate of 200 x 200 x 10 mm; a tube of 40 x 40 x 3 mm, 600 mm long, cooled outside
    constexpr double tube_section = 40e-3 * 40e-3 - 34e-3 * 34e-3;
    const double volume = deck == "plate" ? 0.2 * 0.2 * 0.01 : 0.6 * tube_section;
    workpiece out{
        .metal = mild_steel, .mass = in_si<mass>(7870.0 * volume), .thickness = deck == "plate" ? 10_mm : 3_mm};
    out.cooling_area = in_si<area>(deck == "plate" ? 2.0 * 0.2 * 0.2 : 4.0 * 0.04 * 0.6);
    if (deck == "tube") out.bar_length = 600_mm;
    return out;
}

// What the piece's body, its patch and the heat from the one to the other come to under a constant loss, the clamp a
// conductance to the air: the balance of the loop's nodes, by hand.
struct found {
    double mean, peak;
};
found rise_at_grip(const reference_table::row& row)
{
    workpiece w = piece_of(row.text("deck"));
    w.from_weld = in_si<length>(1e-3 * row.number("away_mm"));
    const thermal_conductance loss = in_si<heat_transfer_coefficient>(row.number("h_W_m2K")) * *w.cooling_area;
    const auto stay = in_si<duration>(row.number("stay_s"));
    const heated_stay heated{w.metal, w.mass * w.metal.specific_heat,      loss,
                             stay,    in_si<duration>(row.number("on_s")), in_si<duration>(row.number("period_s"))};
    const stay_heating body = heating_over_stay(heated);
    const rise_by_watt place = place_over_mean(w, heated);
    const double watts = row.number("arc_W") * row.number("on_s") / row.number("period_s");
    const double g = patch_to_staying_piece(w, heated).value(), clamp = row.number("grip_W_K");
    const double out_of_piece = (loss + body.exchange).value();
    const auto at_grip = [&](double heat, double over) {
        // out_of_piece T + clamp p = heat, g (T + over - p) = clamp p
        const double ratio = g / (g + clamp), series = clamp * ratio;
        const double T = (heat - series * over) / (out_of_piece + series);
        return ratio * (T + over);
    };
    const auto at = [&](double whole, double over) { return at_grip(watts * whole / body.rise.mean, watts * over); };
    return {at(body.rise.mean, place.mean),
            std::max(at(body.rise.end, place.end), at(body.rise.arc_ends, place.arc_ends))};
}

// source: tests/oracle/work_heat/outputs.csv: a 10 mm plate and a 3 mm tube, welds that repeat, a clamp on them
TEST(WorkHeatOracle, RiseWhereAClampGrips)
{
    double worst_mean = 0.0, worst_peak = 0.0, end_mean = 0.0, end_peak = 0.0;
    int cases = 0;
    for (const reference_table::row& row : kept_output().rows()) {
        const found f = rise_at_grip(row);
        const double mean = f.mean / row.number("mean_K") - 1.0, peak = f.peak / row.number("peak_K") - 1.0;
        std::cout << row.text("deck") << ' ' << row.text("away_mm") << " mm, stay " << row.text("stay_s")
                  << " s, clamp " << row.text("grip_W_K") << " W/K: mean " << f.mean << " K (elements "
                  << row.text("mean_K") << ", " << 100.0 * mean << " %), peak " << f.peak << " (" << row.text("peak_K")
                  << ", " << 100.0 * peak << " %)\n";
        EXPECT_LT(std::fabs(row.number("energy")), 1e-3) << row.where();
        ++cases;
        // the ends of what the picture bears: a stay of one minute, less than a kelvin, a clamp that takes much for
        // long
        const double stay = row.number("stay_s"), grip = row.number("grip_W_K");
        if (stay < 100.0 || row.number("mean_K") < 1.0 || (stay > 900.0 && grip > 0.4)) {
            end_mean = std::max(end_mean, std::fabs(mean));
            end_peak = std::max(end_peak, std::fabs(peak));
            continue;
        }
        worst_mean = std::max(worst_mean, std::fabs(mean));
        worst_peak = std::max(worst_peak, std::fabs(peak));
    }
    EXPECT_EQ(cases, 24);
    EXPECT_LT(worst_mean, 0.10);
    EXPECT_LT(worst_peak, 0.10);
    // measured there
    EXPECT_LT(end_mean, 0.16);
    EXPECT_LT(end_peak, 0.14);
}

}  // namespace
