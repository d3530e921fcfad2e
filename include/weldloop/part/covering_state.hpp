#pragma once
/// @file
/// In what state the covering of a lead is, as someone who looked at it says.

#include <array>
#include <string_view>

namespace weldloop {

/// The state of a covering. Anything but `whole` is a danger to whoever touches it, whatever the lead carries.
enum class covering_state {
    whole,    ///< nothing seen
    cut,      ///< cut or torn, down to the strands or not
    burnt,    ///< burnt, melted, hard or cracked by heat
    bare,     ///< gone over a stretch: strands can be touched
    wet,      ///< wet within reach of strands, or soaked
    crushed,  ///< crushed or kinked: strands may be broken under it
};

/// Every state, the sound one first.
inline constexpr std::array all_covering_states{covering_state::whole, covering_state::cut, covering_state::burnt,
                                                covering_state::bare,  covering_state::wet, covering_state::crushed};

/// The word for a state. @param s the state
[[nodiscard]] constexpr std::string_view to_text(covering_state s)
{
    switch (s) {
    case covering_state::whole: return "whole";
    case covering_state::cut: return "cut";
    case covering_state::burnt: return "burnt";
    case covering_state::bare: return "bare";
    case covering_state::wet: return "wet";
    case covering_state::crushed: return "crushed";
    }
    return "whole";
}

}  // namespace weldloop
