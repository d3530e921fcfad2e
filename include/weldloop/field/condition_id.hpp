#pragma once
/// @file
/// Which conditions a part may be found in.

#include <string_view>

namespace weldloop {

/// Which condition of a part it is. Its text is stable: programs and files name conditions by it. Degrees of one
/// condition (shares of strands, of grip) share it; the words beside it say how much.
enum class condition_id {
    as_described,        ///< no fault
    oxidized,            ///< faces so: surface_state::oxidized
    greasy,              ///< faces so: surface_state::greasy
    galvanized,          ///< faces so: surface_state::galvanized
    light_rust,          ///< faces so: surface_state::light_rust
    heavy_rust,          ///< faces so: surface_state::heavy_rust
    mill_scale,          ///< faces so: surface_state::mill_scale
    mill_scale_bitten,   ///< faces so: surface_state::mill_scale_bitten
    spatter_covered,     ///< faces so: surface_state::spatter_covered
    painted_pierced,     ///< faces so: surface_state::painted_pierced
    loose,               ///< bolt, screw, plug, spring or clamp holds less than it should
    loose_and_oxidized,  ///< both
    strands_missing,     ///< at a crimp or joint, or its crimp loose
    strands_broken,      ///< over a length of a lead
    longer,              ///< a lead longer than described
    thinner,             ///< a lead of a smaller size than described
    lifted,              ///< off its seat
    worn_tip,            ///< contact tip of a gun
    half_parted,         ///< worse than wear makes it
    failing,             ///< about to burn or part
};

/// The stable text of a condition: "light_rust".
[[nodiscard]] constexpr std::string_view to_text(condition_id id)
{
    switch (id) {
    case condition_id::as_described: return "as_described";
    case condition_id::oxidized: return "oxidized";
    case condition_id::greasy: return "greasy";
    case condition_id::galvanized: return "galvanized";
    case condition_id::light_rust: return "light_rust";
    case condition_id::heavy_rust: return "heavy_rust";
    case condition_id::mill_scale: return "mill_scale";
    case condition_id::mill_scale_bitten: return "mill_scale_bitten";
    case condition_id::spatter_covered: return "spatter_covered";
    case condition_id::painted_pierced: return "painted_pierced";
    case condition_id::loose: return "loose";
    case condition_id::loose_and_oxidized: return "loose_and_oxidized";
    case condition_id::strands_missing: return "strands_missing";
    case condition_id::strands_broken: return "strands_broken";
    case condition_id::longer: return "longer";
    case condition_id::thinner: return "thinner";
    case condition_id::lifted: return "lifted";
    case condition_id::worn_tip: return "worn_tip";
    case condition_id::half_parted: return "half_parted";
    case condition_id::failing: return "failing";
    }
    return "as_described";
}

}  // namespace weldloop
