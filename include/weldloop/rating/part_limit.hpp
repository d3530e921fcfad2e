#pragma once
/// @file
/// The limit each kind of part is held against.

#include <optional>
#include <string_view>
#include <variant>

#include <weldloop/circuit/contact_behaviour.hpp>
#include <weldloop/circuit/loop_element.hpp>
#include <weldloop/circuit/lug_behaviour.hpp>
#include <weldloop/circuit/station.hpp>
#include <weldloop/core/band.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/law/crimp.hpp>
#include <weldloop/part/work_clamp_standard.hpp>
#include <weldloop/rating/joint_temperature_limit.hpp>

namespace weldloop {

/// @name Sources of temperature limits
/// @{

/// Electrode holders.
inline constexpr source holder_rise{"IEC 60974-11", "2004..2021", "clause 9: rise of the handle 40 K",
                                    source_kind::memory};
/// Leads of the usual covering.
inline constexpr source cable_class_85{"BS 638-4 welding cable", "1996",
                                       "85 degC conductor of heat-resisting rubber covering", source_kind::standard};
/// Leads with a limit of their own.
inline constexpr source lead_limit_of_user{
    "highest conductor temperature stated for the lead", {}, {}, source_kind::stated};
/// @}

/// What a part is held against.
struct part_limit {
    std::optional<temperature> peak = {};              ///< highest temperature of its metal
    std::string_view peak_name = {};                   ///< in words
    const source* peak_source = nullptr;               ///< where the temperature limit comes from
    std::optional<weldloop::resistance> highest = {};  ///< highest resistance at 20 degC, by an acceptance test
    std::optional<band<weldloop::resistance>> held =
        {};                              ///< what is held against it: the crimp alone, or the whole clamp, at 20 degC
    std::string_view highest_name = {};  ///< in words
    const source* highest_source = nullptr;  ///< where the resistance limit comes from
};

namespace detail {
[[nodiscard]] inline std::optional<band<resistance>> resistance_if_closed(const band<conductance>& g)
{
    if (!(g.low.value() > 0.0)) return std::nullopt;
    return mapped(g, [](conductance x) { return resistance(1.0 / x); });
}
}  // namespace detail

/// The limits of one part.
/// @param part the part @param where surroundings, for limits stated as a rise over the air
[[nodiscard]] inline part_limit limit_of(const path_part& part, const surroundings& where)
{
    struct finder {
        const surroundings& where;
        part_limit lead(const cable& c) const
        {
            const bool usual = c.limit == temperature::celsius(85.0);
            return {c.limit, "conductor limit of its covering", usual ? &cable_class_85 : &lead_limit_of_user};
        }
        part_limit operator()(const cable& c) const { return lead(c); }
        part_limit operator()(const wire_gun& g) const { return lead(g.lead); }
        part_limit operator()(const tig_torch& t) const { return lead(t.lead); }
        part_limit operator()(const lug& l) const
        {
            const crimp_limit crimp = crimp_limit_of(l.size.area());
            const joint_temperature_limit_row& bolted = joint_temperature_limit(joint_kind::bolted, joint_finish::bare);
            return {bolted.highest,
                    "bolted bare copper in air",
                    bolted.from,
                    crimp.resistance,
                    detail::resistance_if_closed(crimp_conductance_of(l)),
                    "acceptance of a new crimp",
                    crimp.from};
        }
        part_limit operator()(const coupling&) const
        {
            const joint_temperature_limit_row& plug = joint_temperature_limit(joint_kind::contact, joint_finish::bare);
            return {plug.highest, "bare copper-alloy contact in air", plug.from};
        }
        part_limit operator()(const electrode_holder&) const
        {
            return {where.air + in_si<temperature_difference>(40.0), "rise of a holder's handle", &holder_rise};
        }
        part_limit operator()(const work_connection& w) const
        {
            if (w.clamp.kind == clamp_kind::bolted) {
                const joint_temperature_limit_row& bolted =
                    joint_temperature_limit(joint_kind::bolted, joint_finish::bare);
                return {bolted.highest, "bolted bare copper in air", bolted.from};
            }
            return {where.air + grip_rise_limit,
                    "rise of a new clamp's grip",
                    &work_clamp_rise_test,
                    new_clamp_limit,
                    detail::resistance_if_closed(in_series(joint_of(w).contacts[0].cold, joint_of(w).contacts[1].cold)),
                    "acceptance of a new clamp",
                    &work_clamp_drop_test};
        }
        part_limit operator()(const contact&) const { return {}; }
        part_limit operator()(const plate&) const { return {}; }
        part_limit operator()(const arc&) const { return {}; }
    };
    return std::visit(finder{where}, part);
}

}  // namespace weldloop
