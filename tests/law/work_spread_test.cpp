// Rise over a piece's mean at a distance from its weld, against marches written apart.
#include <weldloop/law/work_spread.hpp>

#include <weldloop/core/literals.hpp>
#include <weldloop/material/metals.hpp>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <vector>

#include <gtest/gtest.h>

#include "support/near.hpp"

namespace {
using namespace weldloop;
using namespace weldloop::literals;

constexpr double on = 12.0, period = 20.0;  // s: the arc of the marches

// A row of cells with their faces, heated by a watt in the first; marched implicitly. Mean and end of the rise of a
// cell over that of all.
rise_by_watt marched(const std::vector<double>& volumes, const std::vector<double>& faces_over_distance, double loss,
                     double stay, std::size_t cell)
{
    const double per_volume = mild_steel.heat_per_volume().value(), k = mild_steel.thermal_conductivity.value();
    const std::size_t n = volumes.size();
    double whole = 0.0;
    for (const double v : volumes) whole += v;
    const int steps = static_cast<int>(std::max(4000.0, 8.0 * stay));
    const double dt = stay / steps;
    std::vector<double> t(n, 0.0), diagonal(n), right(n);
    rise_by_watt out;
    double burning = 0.0;
    for (int i = 0; i < steps; ++i) {
        const double before = t[cell];
        const bool burns = std::fmod((i + 0.5) * dt, period) < on;
        const double watts = burns ? 1.0 : 0.0;
        burning += watts / steps;
        double mean_before = 0.0;
        for (std::size_t c = 0; c < n; ++c) mean_before += volumes[c] * t[c] / whole;
        for (std::size_t c = 0; c < n; ++c) {
            diagonal[c] = per_volume * volumes[c] / dt + loss * volumes[c] / whole;
            if (c > 0) diagonal[c] += k * faces_over_distance[c - 1];
            if (c + 1 < n) diagonal[c] += k * faces_over_distance[c];
            right[c] = per_volume * volumes[c] / dt * t[c] + (c == 0 ? watts : 0.0);
        }
        for (std::size_t c = 1; c < n; ++c) {
            const double f = k * faces_over_distance[c - 1] / diagonal[c - 1];
            diagonal[c] -= f * k * faces_over_distance[c - 1];
            right[c] += f * right[c - 1];
        }
        for (std::size_t c = n; c-- > 0;)
            t[c] = (right[c] + (c + 1 < n ? k * faces_over_distance[c] * t[c + 1] : 0.0)) / diagonal[c];
        double mean = 0.0;
        for (std::size_t c = 0; c < n; ++c) mean += volumes[c] * t[c] / whole;
        out.mean += 0.5 * (t[cell] + before - mean - mean_before) / steps;
        out.end = t[cell] - mean;
        if (burns) out.arc_ends = out.end;
    }
    // by a watt in the mean over the stay
    return {out.mean / burning, out.end / burning, out.arc_ends / burning};
}

// source: the march above, cells of a 400th of half the bar, steps of a 4000th of the stay
TEST(WorkSpread, ABarAgainstAMarch)
{
    constexpr std::size_t cells = 400;
    constexpr double bar = 0.6, section = 444e-6, half = bar / 2.0, step = half / cells;
    const double capacity = mild_steel.heat_per_volume().value() * section * bar;
    for (const double stay : {60.0, 180.0, 190.0, 3000.0})
        for (const std::size_t cell : {std::size_t{133}, std::size_t{266}, cells - 1}) {
            // half the bar takes half of the heat: a section of twice the size stands for both
            const std::vector<double> volumes(cells, 2.0 * section * step), faces(cells - 1, 2.0 * section / step);
            const rise_by_watt found =
                bar_over_mean({mild_steel, in_si<heat_capacity>(capacity), in_si<thermal_conductance>(0.8),
                               in_si<duration>(stay), in_si<duration>(on), in_si<duration>(period)},
                              in_si<length>(bar), in_si<length>((static_cast<double>(cell) + 0.5) * step));
            const rise_by_watt expected = marched(volumes, faces, 0.8, stay, cell);
            const double whole = bar / (4.0 * 50.0 * section) * 0.5;  // K/W, the order of the rise at the weld
            EXPECT_NEAR(found.mean, expected.mean, 2e-3 * whole) << stay << " s, cell " << cell;
            EXPECT_NEAR(found.end, expected.end, 2e-3 * whole) << stay << " s, cell " << cell;
            EXPECT_NEAR(found.arc_ends, expected.arc_ends, 2e-3 * whole) << stay << " s, cell " << cell;
        }
}

// source: the same march over rings
TEST(WorkSpread, ADiscAgainstAMarch)
{
    constexpr std::size_t cells = 800;
    constexpr double rim = 0.12, thickness = 0.010, step = rim / cells;
    std::vector<double> volumes, faces;
    for (std::size_t c = 0; c < cells; ++c) {
        const double inner = static_cast<double>(c) * step, outer = inner + step;
        volumes.push_back(std::numbers::pi * thickness * (outer * outer - inner * inner));
        if (c + 1 < cells) faces.push_back(2.0 * std::numbers::pi * thickness * outer / step);
    }
    const double capacity = mild_steel.heat_per_volume().value() * std::numbers::pi * rim * rim * thickness;
    for (const double stay : {20.0, 120.0, 124.0, 1000.0})
        for (const std::size_t cell : {std::size_t{133}, std::size_t{400}, cells - 1}) {
            const rise_by_watt found = disc_over_mean(
                {mild_steel, in_si<heat_capacity>(capacity), in_si<thermal_conductance>(0.9), in_si<duration>(stay),
                 in_si<duration>(on), in_si<duration>(period)},
                in_si<length>(thickness), in_si<length>(rim), in_si<length>((static_cast<double>(cell) + 0.5) * step));
            const rise_by_watt expected = marched(volumes, faces, 0.9, stay, cell);
            constexpr double whole = 1.0 / (2.0 * std::numbers::pi * 50.0 * thickness);
            EXPECT_NEAR(found.mean, expected.mean, 5e-3 * whole) << stay << " s, cell " << cell;
            EXPECT_NEAR(found.end, expected.end, 5e-3 * whole) << stay << " s, cell " << cell;
            EXPECT_NEAR(found.arc_ends, expected.arc_ends, 5e-3 * whole) << stay << " s, cell " << cell;
        }
}

// relation: no piece has begun to differ from its mean by more than its weld has given
TEST(WorkSpread, RefusesWhatCannotBe)
{
    const heated_stay good{mild_steel, in_si<heat_capacity>(900.0), {}, 2_min, 12_s, 20_s};
    EXPECT_LT(bar_over_mean(good, 600_mm, 300_mm).end, 0.0);
    EXPECT_EQ(bar_over_mean(good, 600_mm, 900_mm).end, bar_over_mean(good, 600_mm, 300_mm).end);
    EXPECT_EQ(disc_over_mean(good, 3_mm, 90_mm, 90_mm).end, disc_over_mean(good, 3_mm, 90_mm, 1_m).end);
    EXPECT_THROW(static_cast<void>(bar_over_mean(good, 0_mm, 1_mm)), out_of_range_error);
    EXPECT_THROW(static_cast<void>(bar_over_mean(good, 1_m, in_si<length>(std::nan("")))), not_finite_error);
    EXPECT_THROW(static_cast<void>(disc_over_mean(good, 3_mm, 90_mm, 0_mm)), out_of_range_error);
    EXPECT_THROW(static_cast<void>(disc_over_mean(good, 0_mm, 90_mm, 1_mm)), out_of_range_error);
    heated_stay bad = good;
    bad.capacity = {};
    EXPECT_THROW(static_cast<void>(bar_over_mean(bad, 1_m, 1_mm)), out_of_range_error);
    bad = good;
    bad.stay = {};
    EXPECT_THROW(static_cast<void>(disc_over_mean(bad, 3_mm, 90_mm, 1_mm)), out_of_range_error);
}

}  // namespace
