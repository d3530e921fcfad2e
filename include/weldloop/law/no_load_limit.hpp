#pragma once
/// @file
/// Highest no-load voltages of welding supplies, by what they may be used for.

#include <optional>
#include <string_view>

#include <weldloop/core/error.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>

namespace weldloop {

/// The limits, ordinary work.
inline constexpr source no_load_limits{
    "EN 60974-1, as quoted in an equipment manual and in a maintenance journal of 2019: 113 V dc; 113 V ac peak, 80 V "
    "rms",
    {},
    "table of no-load voltages (clause 11 recalled)",
    source_kind::standard};
/// Increased hazard, and torches held by a machine.
inline constexpr source no_load_limits_elsewhere{
    "EN 60974-1, as quoted in an equipment manual: increased hazard 113 V dc, 68 V ac peak, 48 V rms; torch held by a "
    "machine 141 V peak, 100 V rms",
    {},
    "table of no-load voltages (clause 11 recalled)",
    source_kind::standard};

/// How likely somebody is to come between the electrode and the work.
enum class shock_hazard {
    ordinary,      ///< dry, with room to move
    increased,     ///< wet, hot, or between metal that one cannot help touching
    machine_held,  ///< a torch held by a machine, its operator protected
};

/// The words for a hazard.
[[nodiscard]] constexpr std::string_view to_text(shock_hazard h)
{
    switch (h) {
    case shock_hazard::ordinary: return "ordinary";
    case shock_hazard::increased: return "increased";
    case shock_hazard::machine_held: return "machine held";
    }
    return "ordinary";
}

/// What kind of current a supply gives without load.
enum class output_current {
    direct,       ///< direct
    alternating,  ///< alternating, of any shape
};

/// The words for a kind of current.
[[nodiscard]] constexpr std::string_view to_text(output_current c)
{
    return c == output_current::direct ? "direct" : "alternating";
}

/// A limit of the no-load voltage. Below it nobody is safe: it says what a supply may be built for, not what a body
/// bears.
struct no_load_limit {
    voltage peak;                ///< [V]
    std::optional<voltage> rms;  ///< [V] effective value, of alternating current; both hold
    const source* from;          ///< where it stands
};

/// The limit for a hazard and a kind of current: direct 113 V, machine held 141 V; alternating 113 V peak and 80 V rms,
/// increased hazard 68 V and 48 V, machine held 141 V and 100 V. @param h hazard @param c kind of current
[[nodiscard]] constexpr no_load_limit no_load_limit_for(shock_hazard h, output_current c)
{
    const source* const from = h == shock_hazard::ordinary ? &no_load_limits : &no_load_limits_elsewhere;
    const bool is_direct = c == output_current::direct;
    const auto with = [&](double peak, double rms) {
        return no_load_limit{in_si<voltage>(peak), is_direct ? std::nullopt : std::optional(in_si<voltage>(rms)), from};
    };
    switch (h) {
    case shock_hazard::ordinary: return with(113.0, 80.0);
    case shock_hazard::increased: return with(is_direct ? 113.0 : 68.0, 48.0);
    case shock_hazard::machine_held: return with(141.0, 100.0);
    }
    return with(113.0, 80.0);
}

/// The no-load voltage of a supply.
struct no_load_voltage {
    output_current kind = output_current::direct;  ///< of current
    std::optional<voltage> peak = {};              ///< [V] above 0
    std::optional<voltage> rms = {};               ///< [V] above 0, of alternating current
};

/// What a no-load voltage is to its limit.
enum class no_load_standing {
    not_known,    ///< neither value is given that the limit is on
    above_limit,  ///< at least one is above
    not_above,    ///< those that are given are not above; says nothing of safety
};

/// Holds a no-load voltage against its limit; each value that is given by itself, none is made from the other: that
/// takes the shape of the voltage. Of an effective value alone it is certain that the peak is no lower.
/// @param v the voltage @param h hazard @throws not_finite_error, out_of_range_error
[[nodiscard]] inline no_load_standing standing_of(const no_load_voltage& v, shock_hazard h)
{
    if (v.peak) require_positive(*v.peak, "no-load voltage, peak");
    if (v.rms) require_positive(*v.rms, "no-load voltage, effective");
    if (v.peak && v.rms && *v.rms > *v.peak)
        throw out_of_range_error("no-load voltage, effective", si_text(*v.rms),
                                 "at most its peak, " + si_text(*v.peak));
    const no_load_limit limit = no_load_limit_for(h, v.kind);
    const bool holds_rms = limit.rms && v.rms;
    const bool is_above = (v.peak && *v.peak > limit.peak) || (v.rms && *v.rms > limit.rms.value_or(limit.peak));
    if (is_above) return no_load_standing::above_limit;
    return v.peak || holds_rms ? no_load_standing::not_above : no_load_standing::not_known;
}

}  // namespace weldloop
