#pragma once
/// @file
/// What lies between the two jaws of a clamp and its cable: pivot, shunt and spring side by side, in what state.

#include <array>
#include <string_view>

namespace weldloop {

/// What the pivot of a clamp does.
enum class pivot_state {
    conducts,  ///< bare and worn, see bare_pivot_judgement
    open,      ///< corroded or bushed: it carries nothing
};

/// The word for a state, as written in station files.
[[nodiscard]] constexpr std::string_view to_text(pivot_state s)
{
    return s == pivot_state::open ? "open" : "conducts";
}

/// Every state of a pivot.
inline constexpr std::array all_pivot_states{pivot_state::conducts, pivot_state::open};

/// What the shunt beside the pivot does.
enum class shunt_state {
    whole,   ///< carries its share
    broken,  ///< torn off or burnt through: it carries nothing
};

/// The word for a state, as written in station files.
[[nodiscard]] constexpr std::string_view to_text(shunt_state s)
{
    return s == shunt_state::broken ? "broken" : "whole";
}

/// Every state of a shunt.
inline constexpr std::array all_shunt_states{shunt_state::whole, shunt_state::broken};

/// The way of the current from the jaw without cable to the cable. A clamp that has it divides its current between its
/// jaws, and what comes by the other jaw between pivot, shunt and spring: see divided_clamp_current().
struct clamp_inside {
    pivot_state pivot = pivot_state::conducts;  ///< of the pin that holds both halves
    shunt_state shunt = shunt_state::whole;     ///< of clamp_build::shunt; without effect where that is 0
};

}  // namespace weldloop
