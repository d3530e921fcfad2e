// Public functions of part/, circuit/, field/ and rating/ that are quick, each with any doubles for its arguments: a
// typed error or a finite result, and an end. Those of leads and clamps over time stand in leads.cpp.
#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include <weldloop/circuit/bolted_face.hpp>
#include <weldloop/circuit/coupling_behaviour.hpp>
#include <weldloop/circuit/gun_behaviour.hpp>
#include <weldloop/circuit/holder_behaviour.hpp>
#include <weldloop/circuit/loop_reactance.hpp>
#include <weldloop/circuit/lug_behaviour.hpp>
#include <weldloop/circuit/magnet_behaviour.hpp>
#include <weldloop/circuit/measured_body.hpp>
#include <weldloop/circuit/operating_point.hpp>
#include <weldloop/circuit/rotary_ground_behaviour.hpp>
#include <weldloop/circuit/set_screw_behaviour.hpp>
#include <weldloop/circuit/spatter_behaviour.hpp>
#include <weldloop/circuit/splice_behaviour.hpp>
#include <weldloop/circuit/spring_pad_behaviour.hpp>
#include <weldloop/circuit/strap_behaviour.hpp>
#include <weldloop/circuit/stud_behaviour.hpp>
#include <weldloop/circuit/work_joint.hpp>
#include <weldloop/rating/remedy_finder.hpp>
#include <weldloop/rating/usual_size.hpp>
#include <weldloop/weldloop.hpp>

#include "any_argument.hpp"
#include "fed_functions.hpp"
#include "made_parts.hpp"

namespace wl = weldloop;

namespace fuzz {

// Members of objects, constructors, and functions whose plain name is not enough.
namespace asked {

wl::lug tightened_to(wl::torque value)
{
    return wl::lug{}.tightened_to(value);
}
std::vector<double> pressing_with(const wl::work_clamp& c, wl::force value)
{
    const wl::work_clamp pressed = c.pressing_with(value);  // whose other members are as they were given
    return {pressed.force.value(), pressed.spring ? static_cast<double>(pressed.spring->stress) : 0.0};
}
wl::electrode_holder electrode_holder(wl::current amps)
{
    return {"", amps};
}
wl::tig_torch tig_torch(wl::length l, wl::torch_cooling c)
{
    return {"", l, c};
}
wl::wire_gun wire_gun(wl::length l, wl::torch_cooling c)
{
    return {"", l, c};
}
wl::relaxation clamp_spring_state(const wl::clamp_spring& s, wl::fraction share, const wl::relaxation_choice& law,
                                  const std::vector<std::array<wl::temperature, 2>>& held, wl::duration each)
{
    wl::clamp_spring_state state(s, {.share = share}, law);
    for (const auto& [spring, jaw] : held) state.advance(spring, jaw, each);
    return state.result();
}
wl::contact resting_contact(wl::mass resting, const wl::metal_pair& metals, wl::surface_state surface)
{
    return wl::resting_contact(resting, metals, surface);
}
wl::joint_circuit joint_of_clamp(const wl::work_connection& w)
{
    return wl::joint_of(w);
}
wl::work_heat work_of(const wl::work_connection& w, const wl::surroundings& where)
{
    return wl::work_of(w, where);
}
wl::joint_behaviour with_body(const wl::contact& c, wl::resistance body, wl::current through)
{
    return wl::with_body(wl::behaviour_of(c, through, wl::reference_temperature), body, through);
}
wl::voltage terminal_voltage_of(wl::voltage setting, wl::process process, wl::current amps, wl::voltage sensed)
{
    wl::supply s;
    s.setting = setting;
    return wl::terminal_voltage_of(s, {process, amps}, sensed);
}
wl::arc_share arc_share_of(const wl::station& s, const wl::band<wl::voltage>& drop, wl::voltage sensed)
{
    return wl::arc_share_of(s, drop, sensed);
}
bool arc_line_reaches(const wl::station& s, wl::current i)
{
    return wl::arc_line_reaches(s, i);
}

}  // namespace asked

namespace {

using conductances = wl::band<wl::conductance>;
template <class Part>
using behaviour = wl::joint_behaviour (*)(const Part&, wl::current, wl::temperature);

// New ones go to the end: kept inputs choose by place.
constexpr std::array entries{
    FED(usual_holder_cable),
    FED(usual_holder_force),
    FED(offered_rating_from),
    FED(smallest_size_above),
    FED_BY(tightened_to),
    FED_BY(pressing_with),
    FED_BY(electrode_holder),
    FED_BY(tig_torch),
    FED_BY(wire_gun),
    FED_BY(clamp_spring_state),
    FED_BY(resting_contact),
    FED(clamp_of),
    FED(stamped_spring_clamp_dimensions),
    FED(cast_spring_clamp_dimensions),
    FED(stamped_spring_clamp),
    FED(cast_spring_clamp),
    FED(same_make),
    FED(spring_clamp),
    FED(screw_clamp),
    FED(bolted_work_lug),
    FED(cable_connection_resistance),
    FED(clamp_force_at),
    FED(clamp_spring_stress),
    FED(conductor_resistance_of),
    FED(welding_cable),
    FED(resistance_per_length_of),
    FED(resistance_of),
    FED(usual_bolt_torque),
    FED_OF(behaviour_of, behaviour<wl::bolted_face>),
    FED_OF(behaviour_of, behaviour<wl::contact>),
    FED_OF(behaviour_of, behaviour<wl::coupling>),
    FED_OF(behaviour_of, behaviour<wl::electrode_holder>),
    FED_OF(behaviour_of, behaviour<wl::lug>),
    FED_OF(behaviour_of, behaviour<wl::work_magnet>),
    FED_OF(behaviour_of, behaviour<wl::rotary_ground>),
    FED_OF(behaviour_of, behaviour<wl::set_screw>),
    FED_OF(behaviour_of, behaviour<wl::cable_splice>),
    FED_OF(behaviour_of, behaviour<wl::spring_pad>),
    FED_OF(behaviour_of, behaviour<wl::strap>),
    FED_OF(behaviour_of, behaviour<wl::stud_terminal>),
    FED_BY(joint_of_clamp),
    FED_BY(work_of),
    FED_BY(with_body),
    FED(joint_behaviour_of),
    FED(hottest_spot_of),
    FED_OF(in_series, conductances (*)(const conductances&, const conductances&)),
    FED(force_for_drop),
    FED(tip_drop),
    FED(extension_drop_of),
    FED(in_phase_of),
    FED(sound_crimp_conductance_of),
    FED(both_crimps_conductance_of),
    FED(crimp_basis_of),
    FED(sound_crimp_behaviour_of),
    FED(crimp_behaviour_of),
    FED(palm_behaviour_of),
    FED(crimp_acceptance_of),
    FED(measured_body),
    FED(brushes_overloaded),
    FED_OF(joint_of, wl::joint_circuit (*)(const wl::rotary_ground&, wl::current)),
    FED(spatter_contact_of),
    FED(spatter_conductance_of),
    FED(spatter_behaviour_of),
    FED(body_resistance_of),
    FED(body_coefficient),
    FED(body_loss),
    FED(plate_sink),
    FED(patch_capacity),
    FED_BY(terminal_voltage_of),
    FED_BY(arc_share_of),
    FED_BY(arc_line_reaches),
    FED(connector_rise_acceptance_of),
    FED(clamping_unit_acceptance_of),
    FED(bond_acceptance_of),
    FED(steady_connector_acceptance_of),
    FED(connector_pull_of),
    FED(connector_pull_acceptance_of),
    FED(wire_share_acceptance_of),
    FED(pull_out_acceptance_of),
    FED(stud_acceptance_of),
    FED(similar_joint_acceptance_of),
    FED(short_time_rating_of),
    FED(supply_current_of),
    FED(group_supply_current),
    FED(burn_threshold_of),
    FED(may_burn),
    FED(drop_of),
    FED(guide_rating_of),
    FED(mean_temperature_of),
    FED(missing_copper_of),
    FED(clock_hours),
    FED(arc_hours),
    FED(shift_hours_of_arc),
};
static_assert(entries.size() <= most_entries);

}  // namespace

}  // namespace fuzz

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size)
{
    return fuzz::feed_one(fuzz::entries, data, size);
}
