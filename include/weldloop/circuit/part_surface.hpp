#pragma once
/// @file
/// The surface state that a part of the path has.

#include <optional>
#include <variant>

#include <weldloop/circuit/station.hpp>
#include <weldloop/material/surface_state.hpp>

namespace weldloop {

/// The state of the faces that meet in a part: of a contact, the seat of a clamp, the palm of a lug, plug and socket of
/// a coupling, jaws and rod of a holder. Empty for a part without such faces.
/// @param part the part
[[nodiscard]] inline std::optional<surface_state> surface_of(const path_part& part)
{
    struct looker {
        std::optional<surface_state> operator()(const cable&) const { return {}; }
        std::optional<surface_state> operator()(const lug& l) const { return l.palm; }
        std::optional<surface_state> operator()(const contact& c) const { return c.surface; }
        std::optional<surface_state> operator()(const plate&) const { return {}; }
        std::optional<surface_state> operator()(const work_connection& w) const { return w.surface; }
        std::optional<surface_state> operator()(const arc&) const { return {}; }
        std::optional<surface_state> operator()(const wire_gun&) const { return {}; }
        std::optional<surface_state> operator()(const tig_torch&) const { return {}; }
        std::optional<surface_state> operator()(const electrode_holder& h) const { return h.surface; }
        std::optional<surface_state> operator()(const junction&) const { return {}; }
        std::optional<surface_state> operator()(const workpiece&) const { return {}; }
        std::optional<surface_state> operator()(const measured_part&) const { return {}; }
        std::optional<surface_state> operator()(const coupling& c) const { return c.surface; }
    };
    return std::visit(looker{}, part);
}

}  // namespace weldloop
