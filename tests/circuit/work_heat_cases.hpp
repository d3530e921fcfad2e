#pragma once
/// @file
/// Rise where a clamp grips a piece that is welded, beside finite elements: tests/oracle/work_heat.

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <stdexcept>
#include <string>

#include <weldloop/circuit/arc_in_work.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/material/metals.hpp>

#include "support/reference_table.hpp"

namespace weldloop::test {

/// What the elements give.
inline reference_table kept_work_heat()
{
    const auto path = std::filesystem::path(WELDLOOP_TEST_DATA).parent_path() / "oracle" / "work_heat" / "outputs.csv";
    std::ifstream in(path, std::ios::binary);
    if (!in) throw std::runtime_error(path.string() + ": cannot be read");
    return {path.filename().string(), std::string{std::istreambuf_iterator<char>(in), {}}};
}

/// The metal of the decks: k 50 W/(m K), rho c 3.52576e6 J/(m3 K), as mild steel here.
inline workpiece piece_of(const std::string& deck)
{
    // a plate of 200 x 200 x 10 mm; a tube of 40 x 40 x 3 mm, 600 mm long, cooled outside
    constexpr double tube_section = 40e-3 * 40e-3 - 34e-3 * 34e-3;
    const double volume = deck == "plate" ? 0.2 * 0.2 * 0.01 : 0.6 * tube_section;
    workpiece out{.metal = mild_steel,
                  .mass = in_si<mass>(7870.0 * volume),
                  .thickness = deck == "plate" ? in_si<length>(10e-3) : in_si<length>(3e-3)};
    out.cooling_area = in_si<area>(deck == "plate" ? 2.0 * 0.2 * 0.2 : 4.0 * 0.04 * 0.6);
    if (deck == "tube") out.bar_length = in_si<length>(0.6);
    return out;
}

/// What the piece's body, its patch and the heat from the one to the other come to under a constant loss, the clamp a
/// conductance to the air: the balance of the loop's nodes, by hand.
struct grip_rise {
    double mean, peak;
};
inline grip_rise rise_at_grip(const reference_table::row& row)
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

/// Whether a case lies where the picture of the piece ends: a stay of one minute, less than a kelvin, a clamp that
/// takes much for long.
inline bool beyond_the_picture(const reference_table::row& row)
{
    const double stay = row.number("stay_s");
    return stay < 100.0 || row.number("mean_K") < 1.0 || (stay > 900.0 && row.number("grip_W_K") > 0.4);
}

}  // namespace weldloop::test
