#pragma once
/// @file
/// The current a lead stands in a short circuit, by what its covering stands for seconds.

#include <optional>
#include <string>

#include <weldloop/core/error.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/core/text.hpp>
#include <weldloop/law/short_circuit.hpp>
#include <weldloop/material/metals.hpp>
#include <weldloop/part/cable.hpp>
#include <weldloop/part/conductor_limit.hpp>

namespace weldloop {

/// The short-time current of a lead.
struct short_time_rating {
    current amps;           ///< [A] that brings the conductor from its start to its end in the time, no heat lost
    temperature start;      ///< of the conductor when the short circuit begins
    temperature end;        ///< highest at its end
    weldloop::basis basis;  ///< sources
};

namespace detail {
/// The constants a standard gives the metal; those of the metal itself where it gives none.
[[nodiscard]] inline adiabatic_constants short_circuit_constants_of(const metal& strands)
{
    if (strands == annealed_copper || strands == tinned_copper) return iec_copper;
    if (strands == aluminium) return iec_aluminium;
    return adiabatic_constants_of(strands);
}
}  // namespace detail

/// Current a lead stands for a time of seconds, I = k S/sqrt(t) with the k of short_circuit_current() from the start to
/// the short-time limit of its covering.
///
/// No heat is lost, so it is a little low (safe); nonadiabatic_factor_of() says by how much. Missing strands narrow the
/// section where they are missing. Where strands are tinned, their tin may melt below the covering's limit
/// (coat_melting_of()): the end is then that.
/// @param lead its metal, size, covering and missing strands count @param t duration [s], above 0, at most
/// `longest_short_circuit`; longer overloads are for time_to_limit()
/// @param start of the conductor, default its limit: the short circuit comes when it is hot
/// @throws missing_data_error for a covering without a short-time limit; not_finite_error, out_of_range_error
[[nodiscard]] inline short_time_rating short_time_rating_of(const cable& lead, duration t,
                                                            std::optional<temperature> start = std::nullopt)
{
    require_positive(t, "duration");
    if (t > longest_short_circuit)
        throw out_of_range_error("duration", si_text(t), "at most " + si_text(longest_short_circuit));
    if (!lead.covering.short_time)
        throw missing_data_error("short-time limit", "none for a covering of " + std::string(lead.covering.name),
                                 "a covering with a published limit");
    short_time_rating out{{}, start.value_or(limit_of(lead)), *lead.covering.short_time, {}};
    out.basis.add(*lead.covering.short_time_source).add(iec_60724_duration);
    if (const auto coat = coat_melting_of(lead.metal); coat && *coat < out.end) {
        out.end = *coat;
        out.basis.add(*lead.metal.contact_source);
    }
    const adiabatic_constants constants = detail::short_circuit_constants_of(lead.metal);
    out.basis.add(*constants.from);
    const double whole = 1.0 - static_cast<double>(lead.missing_strands);
    out.amps = short_circuit_current({constants, whole * lead.size.area()}, t, {out.start, out.end});
    return out;
}

}  // namespace weldloop
