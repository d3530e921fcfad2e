#pragma once
/// @file
/// How hot the conductor of a lead may get, and what says so: its covering, its strands or the user.

#include <optional>
#include <string>
#include <string_view>

#include <weldloop/core/error.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/material/metals.hpp>
#include <weldloop/part/cable.hpp>

namespace weldloop {

/// @name Sources of conductor limits
/// @{
/// Leads with a limit of their own.
inline constexpr source lead_limit_of_user{
    "highest conductor temperature stated for the lead", {}, {}, source_kind::stated};
/// Strands with a coat of tin.
inline constexpr source sae_as22759_tinned{
    "SAE AS22759", {}, "wire of tin-coated copper, 150 degC at the conductor", source_kind::memory};
/// @}

/// Highest temperature of tin-coated strands, all the time: hotter, tin goes into the copper and strands stick
/// together.
/// @see sae_as22759_tinned
inline constexpr temperature highest_of_tinned_strands = temperature::celsius(150.0);

/// What sets the limit of a conductor.
enum class limit_setter {
    covering,            ///< the covering, as its standard has it
    strands,             ///< the strands, lower than the covering
    stated,              ///< the user, no higher than covering and strands
    stated_above_lead,   ///< the user, higher than covering or strands
    stated_for_unknown,  ///< the user; nothing is known of the covering
};

/// The words for what sets a limit, as a verdict prints them.
[[nodiscard]] constexpr std::string_view to_text(limit_setter s)
{
    switch (s) {
    case limit_setter::covering: return "conductor limit of its covering";
    case limit_setter::strands: return "conductor limit of its strands";
    case limit_setter::stated: return "conductor limit stated for it";
    case limit_setter::stated_above_lead: return "conductor limit stated for it, above that of its covering or strands";
    case limit_setter::stated_for_unknown: return "conductor limit stated for it; that of its covering is not known";
    }
    return "conductor limit";
}

/// The limit of a lead's conductor.
struct conductor_limit {
    temperature highest;                 ///< all the time
    limit_setter set_by;                 ///< what sets it
    const source* from;                  ///< where it stands
    std::optional<temperature> of_lead;  ///< lowest of covering and strands, where it is known
};

/// Highest temperature of a conductor: the lower of what covering and strands stand; a stated limit takes its place and
/// says whether it lies above them.
///
/// Terminations are not part of a lead: in a station each is held against its own limit at its own temperature. A lead
/// rated alone that ends in a terminal with a lower limit is given that as its `limit`.
/// @param lead its limit, covering and metal count @throws missing_data_error for a covering of unknown limit where
/// none is stated
[[nodiscard]] inline conductor_limit conductor_limit_of(const cable& lead)
{
    std::optional<temperature> of_lead = lead.covering.highest;
    const source* from = of_lead ? lead.covering.highest_source : nullptr;
    limit_setter set_by = limit_setter::covering;
    if (of_lead && lead.metal == tinned_copper && highest_of_tinned_strands < *of_lead) {
        of_lead = highest_of_tinned_strands;
        from = &sae_as22759_tinned;
        set_by = limit_setter::strands;
    }
    if (lead.limit)
        return {*lead.limit,
                !of_lead                 ? limit_setter::stated_for_unknown
                : *lead.limit > *of_lead ? limit_setter::stated_above_lead
                                         : limit_setter::stated,
                &lead_limit_of_user, of_lead};
    if (!of_lead)
        throw missing_data_error("conductor limit", "none for a covering of " + std::string(lead.covering.name),
                                 "a limit of the lead, or the highest conductor temperature of its covering");
    return {*of_lead, set_by, from, of_lead};
}

/// Whether a limit was stated for a lead that lies above what its covering or strands stand.
/// @param lead its limit, covering and metal count
[[nodiscard]] inline bool is_limit_above_lead(const cable& lead)
{
    return lead.limit && conductor_limit_of(lead).set_by == limit_setter::stated_above_lead;
}

/// The temperature of conductor_limit_of(). @param lead its limit, covering and metal count @throws missing_data_error
[[nodiscard]] inline temperature limit_of(const cable& lead)
{
    if (lead.limit) return *lead.limit;
    if (lead.covering.highest && *lead.covering.highest <= highest_of_tinned_strands) return *lead.covering.highest;
    return conductor_limit_of(lead).highest;
}

}  // namespace weldloop
