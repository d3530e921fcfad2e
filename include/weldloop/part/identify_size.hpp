#pragma once
/// @file
/// Which size a conductor has, from what a caliper and a count of strands tell.

#include <algorithm>
#include <cmath>
#include <numbers>
#include <optional>
#include <string>
#include <vector>

#include <weldloop/core/conductor_size.hpp>
#include <weldloop/core/error.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/text.hpp>
#include <weldloop/part/conductor_class.hpp>
#include <weldloop/part/welding_cable.hpp>

namespace weldloop {

/// How far a reading may lie from a table.
inline constexpr source identify_judgement{
    "measured flexible conductors: 8 % in diameter, 5 % in strand diameter, 4 % in metal area, 1 % in strand count",
    "2026", "a rope-lay conductor is soft under the caliper; neighbouring sizes lie 10 to 20 % apart in diameter",
    source_kind::judgement};

/// @name Tolerances of a reading
/// As shares; see identify_judgement.
/// @{
inline constexpr double diameter_tolerance = 0.08;         ///< of the conductor diameter
inline constexpr double strand_diameter_tolerance = 0.05;  ///< of the strand diameter
inline constexpr double metal_area_tolerance = 0.04;       ///< of strands times the area of one
inline constexpr double strand_count_tolerance = 0.01;     ///< of the count
/// @}

/// What was measured on a conductor with its covering stripped, all above 0.
struct conductor_reading {
    std::optional<length> conductor_diameter = {};  ///< [m] above 0, over the strands, lightly held
    std::optional<int> strands = {};                ///< count
    std::optional<length> strand_diameter = {};     ///< [m] above 0, of one strand
};

/// A size that fits a reading.
struct size_candidate {
    conductor_size size;     ///< as its table writes it
    strand_class stranding;  ///< class whose strands fit
    double misfit = 0.0;     ///< ratio of the worst departure to its tolerance: 0 fits exactly, 1 just fits
    std::optional<double> diameter_error = {};  ///< ratio of measured to table conductor diameter, less 1
    std::optional<double> area_error = {};  ///< ratio of strands times the area of one to nominal metal area, less 1
};

/// Sizes that a reading fits, best first; among equals in the order of the tables.
///
/// Compared with class K and M conductors (diameter, strand diameter, count, area) and with metric leads (diameter of
/// the lead table; strands of any diameter that class 5 allows; area). A count alone identifies only American
/// conductors, whose strand is known, and may leave two classes open. Only what was measured is compared. A diameter
/// alone often fits an American and a metric size: both are returned.
/// @param r at least the conductor diameter or the count
/// @return at least one candidate
/// @throws not_finite_error, out_of_range_error; missing_data_error when nothing fits, or when too little was measured
/// @see identify_judgement
[[nodiscard]] inline std::vector<size_candidate> identify_size(const conductor_reading& r)
{
    constexpr double most_strands = 1e6;
    if (r.conductor_diameter) require_positive(*r.conductor_diameter, "conductor diameter");
    if (r.strand_diameter) require_positive(*r.strand_diameter, "strand diameter");
    if (r.strands) require_within(static_cast<double>(*r.strands), 1.0, most_strands, "strand count");
    if (!r.conductor_diameter && !r.strands)
        throw missing_data_error("reading of a conductor", "neither its diameter nor its strand count",
                                 "the conductor diameter, or the strand count with the strand diameter");

    std::optional<area> metal;  // strands times the area of one
    if (r.strands && r.strand_diameter)
        metal = 0.25 * std::numbers::pi * *r.strands * (*r.strand_diameter * *r.strand_diameter);
    std::vector<size_candidate> fits;
    const auto keep = [&fits](const size_candidate& c) {
        if (c.misfit <= 1.0) fits.push_back(c);
    };
    const auto departure = [](const auto& measured, const auto& table) {
        return static_cast<double>(measured / table) - 1.0;
    };
    const auto worse = [](size_candidate& c, double error, double tolerance) {
        c.misfit = std::max(c.misfit, std::fabs(error) / tolerance);
    };

    for (const strand_class c : {strand_class::rope_k, strand_class::rope_m})
        for (const rope_lay_row& row : c == strand_class::rope_k ? class_k_conductors : class_m_conductors) {
            const bool has_diameter = row.diameter_in > 0.0;
            if (!has_diameter && !r.strands) continue;  // nothing to compare
            size_candidate found{row.size, c};
            if (r.conductor_diameter && has_diameter) {
                found.diameter_error = departure(*r.conductor_diameter, row.diameter_in * 1.0_in);
                worse(found, *found.diameter_error, diameter_tolerance);
            }
            if (r.strand_diameter) {
                const length strand = c == strand_class::rope_k ? class_k_strand : class_m_strand;
                worse(found, departure(*r.strand_diameter, strand), strand_diameter_tolerance);
            }
            if (r.strands) worse(found, departure(1.0 * *r.strands, row.strands), strand_count_tolerance);
            // the strand's tolerance is its own: the area adds nothing to the count, it is only reported
            if (metal) found.area_error = departure(*metal, row.size.area());
            keep(found);
        }

    for (const lead_row& lead : lead_table) {
        const conductor_size size = square_mm(lead.area_mm2);
        const iec_conductor_row& row = detail::iec_row_of(size, strand_class::class_5);
        if (r.strands && !r.strand_diameter) continue;  // a count says nothing without the strand
        const auto is_above = [&r](double largest_mm) {
            return *r.strand_diameter > largest_mm * (1.0 + strand_diameter_tolerance) * 1.0_mm;
        };
        if (r.strand_diameter && is_above(row.class_5_strand_mm)) continue;
        size_candidate found{size, strand_class::class_5};
        if (r.strand_diameter && !is_above(row.class_6_strand_mm)) found.stranding = strand_class::class_6;
        if (r.conductor_diameter) {
            found.diameter_error = departure(*r.conductor_diameter, lead.conductor_mm * 1.0_mm);
            worse(found, *found.diameter_error, diameter_tolerance);
        }
        if (metal) {
            found.area_error = departure(*metal, size.area());
            worse(found, *found.area_error, metal_area_tolerance);
        }
        keep(found);
    }

    if (fits.empty()) {
        std::string measured;
        if (r.conductor_diameter) measured += to_text(*r.conductor_diameter, "mm") + " over the strands";
        if (r.strands) measured += (measured.empty() ? "" : ", ") + std::to_string(*r.strands) + " strands";
        if (r.strand_diameter) measured += " of " + to_text(*r.strand_diameter, "mm");
        throw missing_data_error(
            "size of a conductor", measured,
            "class K and M from 8 AWG to 500 kcmil, metric leads from 10 to 240 mm2, within their tolerances");
    }
    std::stable_sort(fits.begin(), fits.end(),
                     [](const size_candidate& a, const size_candidate& b) { return a.misfit < b.misfit; });
    return fits;
}

}  // namespace weldloop
