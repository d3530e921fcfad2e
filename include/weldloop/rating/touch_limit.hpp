#pragma once
/// @file
/// How hot a surface may be before touching it burns a person.

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <span>

#include <weldloop/core/literals.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/temperature.hpp>

namespace weldloop {

/// @name Sources of burn thresholds
/// @{

/// One second on bare metal.
inline constexpr source burn_threshold_read{
    "ISO 13732-1 (formerly EN 563)", "2006",
    "figure 2: bare smooth metal, 1 s, 65 to 70 degC (as seen in a public discussion of the figure)",
    source_kind::standard};
/// All other times and materials.
inline constexpr source burn_threshold_recalled{
    "ISO 13732-1", "2006", "figure 2 and table 1: burn thresholds by time and material", source_kind::memory};
/// @}

/// What a person touches.
enum class touched_surface {
    bare_metal,  ///< smooth, no coat
    plastic,     ///< plastics and, by analogy, rubber: cable covering, handle
};

/// A published threshold.
struct burn_threshold_row {
    duration contact;    ///< [s] how long it is touched
    temperature lowest;  ///< below it no burn is expected; the lower edge where the figure has a band
    const source* from;  ///< read, or recalled
};

/// Above this a bare metal part burns the hand that holds it for a minute; see burn_threshold_recalled.
inline constexpr temperature hot_to_touch = temperature::celsius(51.0);

/// Bare metal, from 1 s to 8 h.
inline constexpr std::array metal_burn_thresholds{
    burn_threshold_row{in_si<duration>(1), temperature::celsius(65), &burn_threshold_read},
    burn_threshold_row{in_si<duration>(10), temperature::celsius(55), &burn_threshold_recalled},
    burn_threshold_row{in_si<duration>(60), hot_to_touch, &burn_threshold_recalled},
    burn_threshold_row{in_si<duration>(600), temperature::celsius(48), &burn_threshold_recalled},
    burn_threshold_row{in_si<duration>(28800), temperature::celsius(43), &burn_threshold_recalled},
};
/// Plastics and rubber, from 1 s to 8 h.
inline constexpr std::array plastic_burn_thresholds{
    burn_threshold_row{in_si<duration>(1), temperature::celsius(85), &burn_threshold_recalled},
    burn_threshold_row{in_si<duration>(60), temperature::celsius(60), &burn_threshold_recalled},
    burn_threshold_row{in_si<duration>(600), temperature::celsius(48), &burn_threshold_recalled},
    burn_threshold_row{in_si<duration>(28800), temperature::celsius(43), &burn_threshold_recalled},
};

/// A threshold with its support.
struct burn_threshold {
    temperature lowest;     ///< a hotter surface may burn
    weldloop::basis basis;  ///< of the rows used
};

/// Temperature from which touching a surface may burn: the published rows, between them straight in the logarithm of
/// time, beyond 8 h the last.
/// @param contact how long it is touched [s], 1 s or more: shorter times are not tabulated @param what is touched
/// @throws not_finite_error, out_of_range_error
/// @par Accuracy
/// the figure's bands are 2 to 5 K wide; of bare metal only the row of 1 s was read, the rest is recalled and passes
/// nothing by itself
[[nodiscard]] inline burn_threshold burn_threshold_of(duration contact, touched_surface what)
{
    const std::span<const burn_threshold_row> rows = what == touched_surface::bare_metal
                                                         ? std::span<const burn_threshold_row>(metal_burn_thresholds)
                                                         : std::span<const burn_threshold_row>(plastic_burn_thresholds);
    require_finite(contact, "contact time");
    if (contact < rows.front().contact) throw out_of_range_error("contact time", si_text(contact), "1 s or longer");
    std::size_t above = 1;
    while (above + 1 < rows.size() && rows[above].contact < contact) ++above;
    const burn_threshold_row &a = rows[above - 1], &b = rows[above];
    const double share = std::min(1.0, std::log(static_cast<double>(contact / a.contact)) /
                                           std::log(static_cast<double>(b.contact / a.contact)));
    burn_threshold out{a.lowest + share * (b.lowest - a.lowest), {}};
    if (share < 1.0) out.basis.add(*a.from);
    if (share > 0.0) out.basis.add(*b.from);
    return out;
}

/// Whether touching a surface for a time may burn. @param surface its temperature @param contact [s], 1 s or more
/// @param what is touched @throws not_finite_error, out_of_range_error
[[nodiscard]] inline bool may_burn(temperature surface, duration contact, touched_surface what)
{
    return surface > burn_threshold_of(contact, what).lowest;
}

}  // namespace weldloop
