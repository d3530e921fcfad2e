#pragma once
/// @file
/// Which parts the arc heats by what is not reckoned.

#include <weldloop/circuit/path_part.hpp>

namespace weldloop {

/// Whether the arc heats a part of a kind: holder, gun and torch, which no model here gives the arc's heat. What they
/// read is above what their own losses make, and no temperature of theirs is expected or judged by a reading.
/// @param kind of part
[[nodiscard]] constexpr bool is_heated_by_arc(part_kind kind)
{
    return kind == part_kind::electrode_holder || kind == part_kind::wire_gun || kind == part_kind::tig_torch;
}

}  // namespace weldloop
