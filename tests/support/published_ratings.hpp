#pragma once
/// @file
/// Published currents of cables in free air, calculated again: what the tests of the surface laws and the accuracy page
/// share.

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <map>
#include <stdexcept>
#include <string>
#include <utility>
#include <vector>

#include <weldloop/core/literals.hpp>
#include <weldloop/law/cable_surface.hpp>
#include <weldloop/material/metals.hpp>

#include "support/reference_table.hpp"

namespace weldloop::test::published {

inline constexpr double pi = 3.14159265358979323846;

/// A covered conductor by what the rating formula needs.
struct construction {
    double conductor_mm, overall_mm;  // over the strands, over the covering
    double covering_resistance;       // K m/W
    double ohm_per_km;                // at 20 degC
};

/// I = sqrt(q/R') with the surface found by halving, from the public functions only.
inline double rated_current(const construction& c, cable_surface surface, double limit_degC)
{
    surface.diameter = in_si<length>(c.overall_mm * 1e-3);
    double low = surface.air.in_celsius(), high = limit_degC;
    for (int i = 0; i < 60; ++i) {
        const double middle = 0.5 * (low + high);
        (surface_loss(surface, temperature::celsius(middle)).value() < (limit_degC - middle) / c.covering_resistance
             ? low
             : high) = middle;
    }
    const double r =
        c.ohm_per_km * 1e-3 *
        (annealed_copper.resistivity_at(temperature::celsius(limit_degC)) / annealed_copper.resistivity).value();
    return std::sqrt((limit_degC - low) / c.covering_resistance / r);
}

/// Diameters of a rubber-covered lead and its covering of 5.0 K m/W.
inline construction lead(double conductor_mm, double overall_mm, double ohm_per_km)
{
    return {conductor_mm, overall_mm, 5.0 / (2 * pi) * std::log(overall_mm / conductor_mm), ohm_per_km};
}

inline double class_2_resistance(double mm2)
{
    const reference_table table("conductors-iec60228.csv");
    for (const auto& row : table.rows())
        if (row.number("nominal_area_mm2") == mm2) return row.number("class2_plain_Rmax_20C_ohm_per_km");
    throw std::runtime_error("no such size");
}

inline double flexible_resistance(double mm2)
{
    const reference_table table("conductors-iec60228.csv");
    for (const auto& row : table.rows())
        if (row.number("nominal_area_mm2") == mm2) return row.number("class5_6_plain_Rmax_20C_ohm_per_km");
    throw std::runtime_error("no such size");
}

/// Single-core 90 degC cable for fixed wiring. Diameters are assumed, as the ratings do not state them: fill 0.80,
/// insulation of IEC 60502-1 (XLPE, 3.5 K m/W), sheath 0.035 D + 1.0 mm, at least 1.4 mm (PVC, 5.0 K m/W).
inline construction fixed_wiring(double mm2)
{
    static const std::map<double, double> insulation{{25, 0.9},  {35, 0.9},  {50, 1.0},  {70, 1.1},  {95, 1.1},
                                                     {120, 1.2}, {150, 1.4}, {185, 1.6}, {240, 1.7}, {300, 1.8}};
    const double conductor = std::sqrt(mm2 / 0.80 * 4 / pi);
    const double core = conductor + 2 * insulation.at(mm2);
    const double overall = core + 2 * std::max(1.4, 0.035 * core + 1.0);
    return {conductor, overall, 3.5 / (2 * pi) * std::log(core / conductor) + 5.0 / (2 * pi) * std::log(overall / core),
            class_2_resistance(mm2)};
}

/// Errors of calculated over published currents.
class errors {
public:
    void add(double ours, double published, double mm2)
    {
        all_.push_back(ours / published - 1);
        mm2_.push_back(mm2);
    }
    void add(const errors& more)
    {
        all_.insert(all_.end(), more.all_.begin(), more.all_.end());
        mm2_.insert(mm2_.end(), more.mm2_.begin(), more.mm2_.end());
    }
    [[nodiscard]] std::size_t count() const { return all_.size(); }
    [[nodiscard]] const std::vector<double>& all() const { return all_; }
    /// The sizes they belong to [mm2].
    [[nodiscard]] const std::vector<double>& sizes_mm2() const { return mm2_; }
    [[nodiscard]] double median() const
    {
        const std::vector<double> sorted = sizes();
        return sorted.at(sorted.size() / 2);
    }
    [[nodiscard]] double worst() const { return sizes().back(); }

private:
    [[nodiscard]] std::vector<double> sizes() const
    {
        std::vector<double> out;
        for (const double e : all_) out.push_back(std::fabs(e));
        std::sort(out.begin(), out.end());
        return out;
    }

    std::vector<double> all_, mm2_;
};

/// source: BS 638-4 diameters (handbook), H01N2-D conductor diameters and the 100 % ratings (both recalled): a lead at
/// 85 degC in air at 25 degC
inline errors welding_leads(surface_model model)
{
    static const std::map<double, double> conductor{{16, 5.9},   {25, 7.4},   {35, 8.8},   {50, 10.45},
                                                    {70, 12.45}, {95, 14.05}, {120, 16.0}, {185, 19.6}};
    std::map<double, double> overall;
    for (const auto& row : reference_table("welding-cable-dimensions-bs638.csv").rows())
        overall[row.number("cross_section_mm2")] =
            0.5 * (row.number("overall_diameter_min_mm") + row.number("overall_diameter_max_mm"));
    errors out;
    for (const auto& row : reference_table("welding-cable-duty-ratings-85C.csv").rows()) {
        if (row.number("duty_cycle_percent") != 100) continue;
        const double mm2 = row.number("cross_section_mm2");
        const cable_surface surface{
            .diameter = {}, .air = temperature::celsius(row.number("ambient_C")), .model = model};
        out.add(rated_current(lead(conductor.at(mm2), overall.at(mm2), flexible_resistance(mm2)), surface,
                              row.number("conductor_max_C")),
                row.number("current_A"), mm2);
    }
    return out;
}

/// source: IEC 60364-5-52 table B.52.12 = BS 7671 table 4E1A, 90 degC, air 30 degC (one source; trefoil two sources)
inline errors fixed_wiring_table(surface_model model, const std::string& method, lay arrangement)
{
    errors out;
    for (const auto& row : reference_table("ampacity-iec60364-free-air.csv").rows()) {
        if (row.text("method") != method || row.text("insulation") != "XLPE_EPR") continue;
        const cable_surface surface{
            .diameter = {}, .air = temperature::celsius(row.number("ambient_C")), .lay = arrangement, .model = model};
        const double mm2 = row.number("cross_section_mm2");
        out.add(rated_current(fixed_wiring(mm2), surface, row.number("conductor_max_C")), row.number("current_A"), mm2);
    }
    return out;
}

/// source: BS 7671 table 4F1A, 60 degC rubber flexible cables, two single cores touching (one source); at 16 and 25 mm2
/// the table is for two-core cables
inline errors flexible_pairs(surface_model model)
{
    static const std::map<double, std::pair<double, double>> diameters{
        {50, {10.45, 15.0}}, {95, {14.05, 19.5}}, {150, {17.8, 23.8}}};
    errors out;
    for (const auto& row : reference_table("heat-freeair-ampacity.csv").rows()) {
        if (row.number("conductor_temperature_C") != 60 || row.number("conductor_mm2") < 35) continue;
        const auto [conductor, overall] = diameters.at(row.number("conductor_mm2"));
        const cable_surface surface{.diameter = {},
                                    .air = temperature::celsius(row.number("ambient_C")),
                                    .lay = lay::touching_pair,
                                    .model = model};
        out.add(rated_current(lead(conductor, overall, flexible_resistance(row.number("conductor_mm2"))), surface, 60),
                row.number("current_A"), row.number("conductor_mm2"));
    }
    return out;
}

}  // namespace weldloop::test::published
