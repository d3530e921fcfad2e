#pragma once
/// @file
/// The places of a part that have a temperature of their own.

#include <string_view>

namespace weldloop {

/// A place of a part. Limits hold where they are defined: each names its place.
enum class part_place {
    conductor,         ///< of a lead, at its hottest along the way and at its ends
    covering,          ///< outside of a lead's covering
    metal,             ///< of a lug, a strap or another joint of one body, a plate, a junction, a workpiece
    head,              ///< of a gun or torch
    jaws,              ///< of a clamp or holder
    arms,              ///< of a clamp between jaws and pivot
    spring,            ///< of a clamp
    handle,            ///< what a hand grips
    cable_connection,  ///< of a clamp
    work,              ///< under a clamp or contact
    magnet,            ///< with its housing, of a work magnet
};

/// The word for a place, as printed.
[[nodiscard]] constexpr std::string_view to_text(part_place p)
{
    switch (p) {
    case part_place::conductor: return "conductor";
    case part_place::covering: return "covering";
    case part_place::metal: return "metal";
    case part_place::head: return "head";
    case part_place::jaws: return "jaws";
    case part_place::arms: return "arms";
    case part_place::spring: return "spring";
    case part_place::handle: return "handle";
    case part_place::cable_connection: return "cable connection";
    case part_place::work: return "work";
    case part_place::magnet: return "magnet";
    }
    return "metal";
}

}  // namespace weldloop
