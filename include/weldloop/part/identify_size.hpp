#pragma once
/// @file
/// Which size a conductor has, from what a caliper and a count of strands tell.

#include <algorithm>
#include <cmath>
#include <numbers>
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

/// What was measured on a conductor with its covering stripped. What was not measured stays 0.
struct conductor_reading {
    length conductor_diameter = {};  ///< [m] over the strands, lightly held
    int strands = 0;                 ///< count
    length strand_diameter = {};     ///< [m] of one strand
};

/// A size that fits a reading.
struct size_candidate {
    conductor_size size;     ///< as its table writes it
    strand_class stranding;  ///< class whose strands fit
    double misfit;           ///< worst departure over its tolerance: 0 fits exactly, 1 just fits
    double diameter_error;   ///< measured over table conductor diameter, less 1; 0 where not measured
    double area_error;       ///< strands times the area of one over nominal metal area, less 1; 0 where not measured
};

/// Sizes that a reading fits, best first; among equals in the order of the tables.
///
/// Compared with class K and M conductors (diameter, strand diameter, count, area) and with metric leads (diameter of
/// the lead table; strands of any diameter that class 5 allows; area). A count alone identifies only American
/// conductors, whose strand is known, and may leave two classes open. Only what was measured is compared. A diameter
/// alone often fits an American and a metric size: both are returned.
/// @param r at least the conductor diameter or the count; each 0 (not measured) or above
/// @return at least one candidate
/// @throws not_finite_error, out_of_range_error; missing_data_error when nothing fits, or when too little was measured
/// @see identify_judgement
[[nodiscard]] inline std::vector<size_candidate> identify_size(const conductor_reading& r)
{
    constexpr double most_strands = 1e6;
    require_not_negative(r.conductor_diameter, "conductor diameter");
    require_not_negative(r.strand_diameter, "strand diameter");
    require_within(static_cast<double>(r.strands), 0.0, most_strands, "strand count");
    const bool has_diameter = r.conductor_diameter.value() > 0.0, has_count = r.strands > 0,
               has_strand = r.strand_diameter.value() > 0.0;
    if (!has_diameter && !has_count)
        throw missing_data_error("reading of a conductor", "neither its diameter nor its strand count",
                                 "the conductor diameter, or the strand count with the strand diameter");

    const double strand_area = 0.25 * std::numbers::pi * r.strand_diameter.value() * r.strand_diameter.value();
    std::vector<size_candidate> fits;
    const auto keep = [&fits](const size_candidate& c) {
        if (c.misfit <= 1.0) fits.push_back(c);
    };
    const auto departure = [](double measured, double table) { return measured / table - 1.0; };

    for (const strand_class c : {strand_class::rope_k, strand_class::rope_m})
        for (const rope_lay_row& row : c == strand_class::rope_k ? class_k_conductors : class_m_conductors) {
            if (has_diameter && row.diameter_in == 0.0 && !has_count) continue;  // nothing to compare
            size_candidate found{row.size, c, 0.0, 0.0, 0.0};
            const auto worse = [&found](double error, double tolerance) {
                found.misfit = std::max(found.misfit, std::fabs(error) / tolerance);
            };
            if (has_diameter && row.diameter_in > 0.0) {
                found.diameter_error = departure(r.conductor_diameter.value(), (row.diameter_in * 1.0_in).value());
                worse(found.diameter_error, diameter_tolerance);
            }
            if (has_strand) {
                const length strand = c == strand_class::rope_k ? class_k_strand : class_m_strand;
                worse(departure(r.strand_diameter.value(), strand.value()), strand_diameter_tolerance);
            }
            if (has_count) worse(departure(r.strands, row.strands), strand_count_tolerance);
            // the strand's tolerance is its own: the area adds nothing to the count, it is only reported
            if (has_count && has_strand) found.area_error = departure(r.strands * strand_area, row.size.area().value());
            keep(found);
        }

    for (const lead_row& lead : lead_table) {
        const conductor_size size = square_mm(lead.area_mm2);
        const iec_conductor_row& row = detail::iec_row_of(size, strand_class::class_5);
        const double strand_mm = r.strand_diameter.value() * 1e3;
        if (has_count && !has_strand) continue;  // a count says nothing without the strand
        if (has_strand && strand_mm > row.class_5_strand_mm * (1.0 + strand_diameter_tolerance)) continue;
        size_candidate found{size, strand_class::class_5, 0.0, 0.0, 0.0};
        if (has_strand && strand_mm <= row.class_6_strand_mm * (1.0 + strand_diameter_tolerance))
            found.stranding = strand_class::class_6;
        if (has_diameter) {
            found.diameter_error = departure(r.conductor_diameter.value(), lead.conductor_mm * 1e-3);
            found.misfit = std::fabs(found.diameter_error) / diameter_tolerance;
        }
        if (has_count) {
            found.area_error = departure(r.strands * strand_area, size.area().value());
            found.misfit = std::max(found.misfit, std::fabs(found.area_error) / metal_area_tolerance);
        }
        keep(found);
    }

    if (fits.empty()) {
        std::string measured;
        if (has_diameter) measured += to_text(r.conductor_diameter, "mm") + " over the strands";
        if (has_count) measured += (measured.empty() ? "" : ", ") + std::to_string(r.strands) + " strands";
        if (has_strand) measured += " of " + to_text(r.strand_diameter, "mm");
        throw missing_data_error(
            "size of a conductor", measured,
            "class K and M from 8 AWG to 500 kcmil, metric leads from 10 to 240 mm2, within their tolerances");
    }
    std::stable_sort(fits.begin(), fits.end(),
                     [](const size_candidate& a, const size_candidate& b) { return a.misfit < b.misfit; });
    return fits;
}

}  // namespace weldloop
