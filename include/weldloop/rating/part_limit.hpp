#pragma once
/// @file
/// The limits each kind of part is held against, each at the place it is defined for.

#include <optional>
#include <utility>
#include <variant>
#include <vector>

#include <weldloop/circuit/joint_temperature_limit.hpp>
#include <weldloop/circuit/part_place.hpp>
#include <weldloop/circuit/part_sheet.hpp>
#include <weldloop/circuit/sheeted_parts.hpp>
#include <weldloop/circuit/station.hpp>
#include <weldloop/circuit/work_joint.hpp>
#include <weldloop/core/band.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/part/conductor_limit.hpp>
#include <weldloop/part/work_clamp_standard.hpp>

namespace weldloop {

/// @name Sources of temperature limits
/// @{

/// Electrode holders.
inline constexpr source holder_rise{"IEC 60974-11", "2004..2021", "clause 9: rise of the handle 40 K",
                                    source_kind::memory};
/// Measured parts with a limit of their own.
inline constexpr source part_limit_of_user{"highest temperature stated for the part", {}, {}, source_kind::stated};
/// @}

/// What a part is held against.
struct part_limits {
    std::vector<place_limit> places = {};          ///< temperatures
    std::optional<resistance_limit> crimp = {};    ///< of a crimp: workmanship, whatever its age
    std::optional<current_limit> carries = {};     ///< what wear allows all the time: information, no verdict
    std::optional<resistance_limit> as_new = {};   ///< a type test of new parts: information, no verdict on one in use
    std::optional<place_limit> as_new_grip = {};   ///< the same of the temperature of what is gripped
    std::optional<place_limit> as_new_cable = {};  ///< the same of the cable connection
};

namespace detail {
struct limits_finder {
    const surroundings& where;

    static part_limits lead(const cable& c)
    {
        const conductor_limit limit = conductor_limit_of(c);
        return {.places = {{part_place::conductor, limit.highest, to_text(limit.set_by), limit.from}}};
    }
    part_limits operator()(const cable& c) const { return lead(c); }
    part_limits operator()(const wire_gun& g) const { return lead(g.lead); }
    part_limits operator()(const tig_torch& t) const { return lead(t.lead); }
    template <has_sheet Part>
    part_limits operator()(const Part& p) const
    {
        part_sheet sheet = sheet_of(p);
        return {.places = std::move(sheet.limits), .crimp = sheet.crimp, .carries = sheet.carries};
    }
    part_limits operator()(const electrode_holder&) const
    {
        return {.places = {
                    joint_limit_at(part_place::handle, joint_kind::accessible_touched, "part that is touched in use"),
                    {part_place::handle, where.air + in_si<temperature_difference>(40.0), "rise of a holder's handle",
                     &holder_rise}}};
    }
    part_limits operator()(const work_connection& w) const
    {
        part_limits out;
        if (w.clamp.kind == clamp_kind::bolted) {
            out.places = {joint_limit_at(part_place::jaws, joint_kind::bolted, "bolted bare copper in air")};
            return out;
        }
        out.places = {joint_limit_at(part_place::cable_connection, joint_kind::terminal, "bare terminal in air")};
        if (w.clamp.build.handle > length{})
            out.places.push_back(
                joint_limit_at(part_place::handle, joint_kind::accessible_touched, "part that is touched in use"));
        if (w.clamp.spring)
            out.places.push_back({part_place::spring, w.clamp.spring->wire.tempering, "tempering of the spring's wire",
                                  w.clamp.spring->wire.tempering_source});
        const joint_circuit joint = joint_of(w);
        if (const auto held = resistance_if_closed(in_series(joint.contacts[0].cold, joint.contacts[1].cold)))
            out.as_new = resistance_limit{new_clamp_limit, *held, "type test of a new clamp on clean plate",
                                          &work_clamp_drop_test};
        out.as_new_grip = place_limit{part_place::handle, where.air + grip_rise_limit,
                                      "type test of a new clamp: what a hand grips", &work_clamp_rise_test};
        out.as_new_cable = place_limit{part_place::cable_connection, where.air + cable_connection_rise_limit,
                                       "type test of a new clamp: cable connection", &work_clamp_rise_test};
        return out;
    }
    part_limits operator()(const work_magnet& m) const
    {
        return {.places = {joint_limit_at(part_place::cable_connection, joint_kind::terminal, "bare terminal in air"),
                           {part_place::magnet, m.grade.highest, "beyond which its pull is lost", m.grade.from}}};
    }
    part_limits operator()(const measured_part& m) const
    {
        if (!m.limit || !m.cooling_area) return {};
        return {.places = {{part_place::metal, *m.limit, "its stated limit", &part_limit_of_user}}};
    }
    part_limits operator()(const junction&) const { return {}; }
    part_limits operator()(const workpiece&) const { return {}; }
    part_limits operator()(const contact&) const { return {}; }
    part_limits operator()(const plate&) const { return {}; }
    part_limits operator()(const arc&) const { return {}; }
};
}  // namespace detail

/// The limits of one part. A part without any is judged by its spots alone.
/// @param part the part @param where surroundings, for limits stated as a rise over the air
[[nodiscard]] inline part_limits limits_of(const path_part& part, const surroundings& where)
{
    return std::visit(detail::limits_finder{where}, part);
}

}  // namespace weldloop
