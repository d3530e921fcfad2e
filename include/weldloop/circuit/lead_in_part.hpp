#pragma once
/// @file
/// The lead a part of the path is or has.

#include <variant>

#include <weldloop/circuit/path_part.hpp>
#include <weldloop/part/cable.hpp>
#include <weldloop/part/tig_torch.hpp>
#include <weldloop/part/wire_gun.hpp>

namespace weldloop {

/// The lead of a part: a cable itself, the cable of a wire gun or a torch. @param part any part of a path
/// @return null for a part without one; it lives as long as the part
[[nodiscard]] inline const cable* lead_in(const path_part& part)
{
    if (const auto* c = std::get_if<cable>(&part)) return c;
    if (const auto* g = std::get_if<wire_gun>(&part)) return &g->lead;
    if (const auto* t = std::get_if<tig_torch>(&part)) return &t->lead;
    return nullptr;
}

}  // namespace weldloop
