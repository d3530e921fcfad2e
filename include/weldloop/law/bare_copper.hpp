#pragma once
/// @file
/// Copper left bare between the covering of a cable and the barrel of its lug.

#include <weldloop/core/conductor_size.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/core/unit_text.hpp>
#include <weldloop/material/metal.hpp>

namespace weldloop {

/// How much bare copper a good termination shows.
inline constexpr source bare_copper_judgement{"covering ends at most 5 mm before the barrel", "2026",
                                              "judgement; all of the trade wants none to speak of: bare strands break "
                                              "at the barrel, oxidize, and touch what they "
                                              "should not",
                                              source_kind::judgement};
/// See bare_copper_judgement [m].
inline constexpr length most_bare_copper = in_si<length>(5e-3);

/// What a bare length does.
struct bare_copper {
    weldloop::resistance resistance;  ///< [ohm] of the length: that of the cable, no more
    bool too_long;          ///< longer than most_bare_copper: live metal to be covered, whatever the heat says
    weldloop::basis basis;  ///< sources
};

/// Bare copper beside a barrel: its resistance rho l/A is that of the covered cable, and it is cooled better, so it is
/// no thermal fault; it is live metal, and that is the fault.
/// @param size of the cable @param bare length without covering [m], 0 or above @param m metal of the strands
/// @param t temperature of the strands
/// @throws not_finite_error, out_of_range_error @see bare_copper_judgement
[[nodiscard]] inline bare_copper bare_copper_of(const conductor_size& size, length bare, const metal& m, temperature t)
{
    require_positive(m.resistivity, "resistivity");
    const resistance r = m.resistivity_at(t) * require_not_negative(bare, "bare length") / size.area();
    bare_copper out{require_finite(r, "resistance of the bare length"), bare > most_bare_copper, {}};
    out.basis.add(bare_copper_judgement);
    if (m.electrical_source != nullptr) out.basis.add(*m.electrical_source);
    return out;
}

}  // namespace weldloop
