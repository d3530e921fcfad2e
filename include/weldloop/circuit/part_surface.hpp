#pragma once
/// @file
/// The surface state that a part of the path has.

#include <optional>
#include <variant>

#include <weldloop/circuit/sheeted_parts.hpp>
#include <weldloop/circuit/station.hpp>
#include <weldloop/material/surface_state.hpp>

namespace weldloop {

namespace detail {
struct surface_looker {
    template <has_conditions Part>
    std::optional<surface_state> operator()(const Part& p) const
    {
        const auto where = conditions_of(p).surface;
        return where != nullptr ? std::optional(p.*where) : std::nullopt;
    }
    std::optional<surface_state> operator()(const cable&) const { return {}; }
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
};
}  // namespace detail

/// The state of the faces that meet in a part: of a contact, the seat of a clamp, the palm of a lug, plug and socket of
/// a coupling, jaws and rod of a holder, the ends of a strap. Empty for a part without such faces.
/// @param part the part
[[nodiscard]] inline std::optional<surface_state> surface_of(const path_part& part)
{
    return std::visit(detail::surface_looker{}, part);
}

}  // namespace weldloop
