#pragma once
/// @file
/// What holds the faces of a contact together, and so what can loosen them.

#include <string_view>

namespace weldloop {

/// What holds the faces of a contact together.
enum class contact_hold {
    crimp,    ///< pressed metal that holds itself: a crimp
    bolt,     ///< a bolt or nut: palms, bolted ends, a lug on its stud
    screw,    ///< a screw on strands or a collet
    spring,   ///< a spring or its own springing: plug, holder jaws, fingers, a spring-loaded pad, jaws of a clamp
    resting,  ///< weight, or nothing that is known
    sliding,  ///< a brush that is pressed on: its faces are worn and made anew all the time
};

/// The words for what holds a contact, as printed.
[[nodiscard]] constexpr std::string_view to_text(contact_hold h)
{
    switch (h) {
    case contact_hold::crimp: return "crimped";
    case contact_hold::bolt: return "bolted";
    case contact_hold::screw: return "under a screw";
    case contact_hold::spring: return "sprung";
    case contact_hold::resting: return "resting";
    case contact_hold::sliding: return "sliding";
    }
    return "resting";
}

}  // namespace weldloop
