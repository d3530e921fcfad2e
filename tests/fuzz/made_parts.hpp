#pragma once
// How parts and what is around them are made: usual ones, some of whose members are anything.
#include <cstdint>
#include <optional>

#include <weldloop/weldloop.hpp>

#include "any_argument.hpp"
#include "made_materials.hpp"

namespace fuzz {

template <>
inline constexpr unsigned words_of<wl::covering_state> = 3;
template <>
inline constexpr unsigned words_of<wl::steel_beside> = static_cast<unsigned>(wl::all_steel_beside.size());
template <>
inline constexpr unsigned words_of<wl::resistance_choice> = 2;
template <>
inline constexpr unsigned words_of<wl::torch_cooling> = 2;
template <>
inline constexpr unsigned words_of<wl::strand_class> = 6;
template <>
inline constexpr unsigned words_of<wl::strand_finish> = 2;
template <>
inline constexpr unsigned words_of<wl::rope_lay> = 4;
template <>
inline constexpr unsigned words_of<wl::clamp_cable_end> = 3;
template <>
inline constexpr unsigned words_of<wl::cable_end_state> = 2;
template <>
inline constexpr unsigned words_of<wl::pivot_state> = 2;
template <>
inline constexpr unsigned words_of<wl::shunt_state> = 2;
template <>
inline constexpr unsigned words_of<wl::strap_make> = 2;
template <>
inline constexpr unsigned words_of<wl::connected_metal> = 2;
template <>
inline constexpr unsigned words_of<wl::wire_share_claim> = 2;
template <>
inline constexpr unsigned words_of<wl::pull_out_claim> = 2;
template <>
inline constexpr unsigned words_of<wl::supplied_welder> = 5;
template <>
inline constexpr unsigned words_of<wl::welder_group> = 2;
template <>
inline constexpr unsigned words_of<wl::touched_surface> = 2;
template <>
inline constexpr unsigned words_of<wl::size_family> = 2;
template <>
inline constexpr unsigned words_of<wl::clamp_motion> = 2;
template <>
inline constexpr unsigned words_of<wl::scatter> = 3;

template <>
inline bool is_finite<wl::clamp_spring>(const wl::clamp_spring& s)
{
    return all_finite(s.wire_diameter, s.coil_diameter, s.arm, s.stress, s.turns, s.opening, s.legs);
}
template <>
inline bool is_finite<wl::work_clamp>(const wl::work_clamp& c)
{
    return all_finite(c.rated_current, c.rated_duty, c.force, c.jaw_area, c.spring, c.body_mass, c.body_surface) &&
           all_finite(c.body_diameter, c.termination, c.build, c.arms);
}
template <>
inline bool is_finite<wl::spring_clamp_dimensions>(const wl::spring_clamp_dimensions& d)
{
    return all_finite(d.rated_current, d.jaw_length, d.reach, d.handle, d.entry, d.section, d.outline, d.across) &&
           all_finite(d.jaw_area, d.force, d.wire_diameter, d.turns, d.shunt, d.shunt_length);
}
template <>
inline bool is_finite<wl::cable>(const wl::cable& c)
{
    return all_finite(c.length, c.limit, c.conductor_diameter, c.overall_diameter, c.stranding_increment);
}

template <>
inline wl::surroundings made<wl::surroundings>(input& in)
{
    using s = wl::surroundings;
    return changed(in, wl::surroundings{}, &s::air, &s::wind, &s::lay, &s::coil_turns, &s::bundled_leads, &s::altitude,
                   &s::sun);
}
template <>
inline wl::cable made<wl::cable>(input& in)
{
    using c = wl::cable;
    return changed(in, wl::welding_cable(wl::square_mm(50), wl::in_si<wl::length>(10.0)), &c::length, &c::limit,
                   &c::metal, &c::covering, &c::conductor_diameter, &c::overall_diameter, &c::stranding_increment,
                   &c::missing_strands, &c::damaged_length, &c::covering_state, &c::lay, &c::coil_turns,
                   &c::bundled_leads, &c::steel, &c::size);
}
template <>
inline wl::load made<wl::load>(input& in)
{
    const auto amps = made<wl::current>(in);
    return {amps, made<wl::duty_cycle>(in)};
}
template <>
inline wl::contact made<wl::contact>(input& in)
{
    using c = wl::contact;
    return changed(in, wl::contact{.metals = {wl::brass, wl::mild_steel}, .force = wl::in_si<wl::force>(300.0)},
                   &c::metals, &c::force, &c::surface, &c::shape, &c::points);
}
template <>
inline wl::lug made<wl::lug>(input& in)
{
    using l = wl::lug;
    return changed(in, wl::lug{}, &l::size, &l::stamped, &l::missing_strands, &l::bolt_torque, &l::bolt_diameter,
                   &l::palm);
}
template <>
inline wl::coupling made<wl::coupling>(input& in)
{
    using c = wl::coupling;
    return changed(in, wl::coupling{}, &c::size, &c::force, &c::surface);
}
template <>
inline wl::electrode_holder made<wl::electrode_holder>(input& in)
{
    using h = wl::electrode_holder;
    return changed(in, wl::electrode_holder{}, &h::rated, &h::size, &h::jaws, &h::rod, &h::force, &h::surface);
}
template <>
inline wl::wire_gun made<wl::wire_gun>(input& in)
{
    using g = wl::wire_gun;
    return changed(in, wl::wire_gun{}, &g::wire, &g::wire_diameter, &g::extension, &g::lead);
}
template <>
inline wl::cable_splice made<wl::cable_splice>(input& in)
{
    using s = wl::cable_splice;
    return changed(in, wl::cable_splice{}, &s::first, &s::second, &s::stamped, &s::missing_strands);
}
template <>
inline wl::stud_terminal made<wl::stud_terminal>(input& in)
{
    using s = wl::stud_terminal;
    return changed(in, wl::stud_terminal{}, &s::diameter, &s::tightening, &s::thread, &s::seat, &s::palm, &s::lugs,
                   &s::surface);
}
template <>
inline wl::rotary_ground made<wl::rotary_ground>(input& in)
{
    using r = wl::rotary_ground;
    return changed(in, wl::rotary_ground{}, &r::brush, &r::count, &r::face, &r::force, &r::finger, &r::ring,
                   &r::surface);
}
template <>
inline wl::set_screw made<wl::set_screw>(input& in)
{
    using s = wl::set_screw;
    return changed(in, wl::set_screw{}, &s::size, &s::screw_diameter, &s::tightening, &s::thread, &s::ferrule,
                   &s::missing_strands);
}
template <>
inline wl::spring_pad made<wl::spring_pad>(input& in)
{
    using p = wl::spring_pad;
    return changed(in, wl::spring_pad{}, &p::pad, &p::against, &p::pressing, &p::across, &p::thickness, &p::points,
                   &p::surface, &p::wire);
}
template <>
inline wl::strap made<wl::strap>(input& in)
{
    using s = wl::strap;
    return changed(in, wl::strap{}, &s::length, &s::section, &s::make, &s::metal, &s::onto, &s::bolts,
                   &s::bolt_diameter, &s::tightening, &s::thread, &s::surface);
}
template <>
inline wl::work_magnet made<wl::work_magnet>(input& in)
{
    using m = wl::work_magnet;
    return changed(in, wl::work_magnet{}, &m::rated, &m::grade, &m::magnet, &m::pad, &m::pad_share, &m::points,
                   &m::work, &m::surface, &m::gap, &m::cable, &m::work_thickness);
}
template <>
inline wl::compression_between_arms made<wl::compression_between_arms>(input& in)
{
    using c = wl::compression_between_arms;
    return changed(in, wl::compression_between_arms{}, &c::arm, &c::free_length, &c::ends, &c::held, &c::guided,
                   &c::set_removed);
}
template <>
inline wl::clamp_spring made<wl::clamp_spring>(input& in)
{
    using s = wl::clamp_spring;
    return changed(in, wl::clamp_spring{}, &s::wire, &s::wire_diameter, &s::coil_diameter, &s::coils, &s::arm,
                   &s::stress, &s::turns, &s::current_share, &s::opening, &s::legs, &s::compression);
}
template <>
inline wl::spring_clamp_dimensions made<wl::spring_clamp_dimensions>(input& in)
{
    using d = wl::spring_clamp_dimensions;
    wl::spring_clamp_dimensions out = wl::stamped_spring_clamp_dimensions(wl::in_si<wl::current>(300.0));
    out = changed(in, out, &d::rated_current, &d::rated_duty, &d::largest_cable, &d::body, &d::jaw, &d::live_jaws,
                  &d::jaw_length, &d::reach, &d::handle, &d::entry, &d::section, &d::outline);
    return changed(in, out, &d::emissivity, &d::across, &d::jaw_area, &d::force, &d::wire, &d::wire_diameter, &d::turns,
                   &d::shunt, &d::shunt_length, &d::inside, &d::connection);
}
template <>
inline wl::clamp_build made<wl::clamp_build>(input& in)
{
    using b = wl::clamp_build;
    return changed(in, wl::clamp_build{}, &b::jaw, &b::reach, &b::handle, &b::entry, &b::shunt, &b::shunt_length,
                   &b::spring_seat);
}
template <>
inline wl::work_clamp made<wl::work_clamp>(input& in)
{
    using c = wl::work_clamp;
    const wl::current usual = wl::in_si<wl::current>(300.0);
    wl::work_clamp out = in.byte() % 2 == 0 ? wl::spring_clamp(usual) : wl::screw_clamp(usual);
    out = changed(in, out, &c::rated_current, &c::rated_duty, &c::largest_cable, &c::live_jaws, &c::force, &c::jaw,
                  &c::shape, &c::jaw_area, &c::spring);
    return changed(in, out, &c::body_metal, &c::body_mass, &c::body_surface, &c::body_diameter, &c::body_emissivity,
                   &c::termination, &c::build, &c::arms, &c::inside);
}
template <>
inline wl::work_connection made<wl::work_connection>(input& in)
{
    using w = wl::work_connection;
    const auto clamp = made<wl::work_clamp>(in);
    return changed(in, wl::work_connection{.clamp = clamp, .onto = wl::mild_steel}, &w::onto, &w::surface,
                   &w::work_thickness, &w::grip_lost, &w::preheat, &w::cable_jaw_surface);
}
template <>
inline wl::grip_service made<wl::grip_service>(input& in)
{
    using s = wl::grip_service;
    return changed(in, wl::grip_service{}, &s::shift, &s::rest, &s::openings, &s::knocks, &s::clean_every,
                   &s::tighten_every, &s::film, &s::interpass, &s::drags, &s::on_work, &s::wipe, &s::widest_opening,
                   &s::motion);
}
template <>
inline wl::lead_request made<wl::lead_request>(input& in)
{
    using r = wl::lead_request;
    const wl::lead_request usual{.length = wl::in_si<wl::length>(10.0), .current = wl::in_si<wl::current>(200.0)};
    return changed(in, usual, &r::length, &r::current, &r::duty, &r::where, &r::allowed_drop, &r::both_leads,
                   &r::family, &r::limit, &r::metal, &r::covering, &r::resistance);
}
/// A station whose job and parts are anything.
template <>
inline wl::station made<wl::station>(input& in)
{
    wl::station out;
    out.path = {made<wl::lug>(in),
                wl::welding_cable(wl::square_mm(50), wl::in_si<wl::length>(10.0)),
                made<wl::electrode_holder>(in),
                wl::arc{},
                wl::work_connection{.clamp = made<wl::work_clamp>(in), .onto = wl::mild_steel},
                made<wl::cable>(in)};
    out.job.process = made<wl::process>(in);
    out.job.current = in.byte() % 2 == 0 ? wl::in_si<wl::current>(150.0) : made<wl::current>(in);
    out.where = made<wl::surroundings>(in);
    return out;
}

}  // namespace fuzz
