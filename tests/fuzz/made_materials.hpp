#pragma once
// How arguments of the library's own small types are made: words, sizes, materials.
#include <string>
#include <string_view>
#include <utility>

#include <weldloop/weldloop.hpp>

#include "any_argument.hpp"

namespace wl = weldloop;

namespace fuzz {

template <>
inline constexpr unsigned words_of<wl::process> = 5;
template <>
inline constexpr unsigned words_of<wl::lay> = 8;
template <>
inline constexpr unsigned words_of<wl::thread_state> = 5;
template <>
inline constexpr unsigned words_of<wl::coil_ends> = 4;
template <>
inline constexpr unsigned words_of<wl::coil_correction> = 3;
template <>
inline constexpr unsigned words_of<wl::spring_ends_held> = 4;
template <>
inline constexpr unsigned words_of<wl::brush_kind> = 2;
template <>
inline constexpr unsigned words_of<wl::contact_shape> = 5;
template <>
inline constexpr unsigned words_of<wl::bolted_pair> = 2;
template <>
inline constexpr unsigned words_of<wl::bolt_follower> = 3;
template <>
inline constexpr unsigned words_of<wl::bolted_faces> = 2;
template <>
inline constexpr unsigned words_of<wl::heat_input_rule> = 2;
template <>
inline constexpr unsigned words_of<wl::size_scale> = 4;
template <>
inline constexpr unsigned words_of<wl::relaxation_time_law> = 3;
template <>
inline constexpr unsigned words_of<wl::relaxation_heat_rule> = 3;
template <>
inline constexpr unsigned words_of<wl::spring_making> = 2;
template <>
inline constexpr unsigned words_of<wl::joint_care> = 2;
template <>
inline constexpr unsigned words_of<wl::surface_model> = 3;
template <>
inline constexpr unsigned words_of<wl::surface_state> = static_cast<unsigned>(wl::all_surface_states.size());
template <>
inline constexpr unsigned words_of<wl::surface_treatment> = static_cast<unsigned>(wl::all_surface_treatments.size());

template <>
inline wl::conductor_size made<wl::conductor_size>(input& in)
{
    const auto scale = made<wl::size_scale>(in);
    return {scale, in.number()};
}
template <>
inline wl::magnet_grade made<wl::magnet_grade>(input& in)
{
    return wl::all_magnet_grades[in.byte() % wl::all_magnet_grades.size()];
}
template <>
inline wl::basis made<wl::basis>(input&)
{
    return {};
}

/// Gives some members of a usual object other values: a bit of a byte says of each whether.
template <class T, class... Members>
T changed(input& in, T usual, Members... members)
{
    unsigned which = sizeof...(members) > 8 ? in.byte() * 256U + in.byte() : in.byte();
    const auto one = [&](auto member) {
        using type = std::remove_cvref_t<decltype(usual.*member)>;
        if (which % 2 == 1) usual.*member = made<type>(in);
        which /= 2;
    };
    (one(members), ...);
    return usual;
}

template <>
inline wl::relaxation_constants made<wl::relaxation_constants>(input& in)
{
    using k = wl::relaxation_constants;
    return changed(in, wl::normal_relaxation, &k::reference_exponent, &k::stress_slope, &k::parameter_slope);
}
template <>
inline wl::spring_wire made<wl::spring_wire>(input& in)
{
    using w = wl::spring_wire;
    return changed(in, wl::all_spring_wires[in.byte() % wl::all_spring_wires.size()], &w::max_service, &w::tempering,
                   &w::rise_scale, &w::normal, &w::preset);
}
template <>
inline wl::copper_spring_alloy made<wl::copper_spring_alloy>(input& in)
{
    using a = wl::copper_spring_alloy;
    return changed(in, wl::all_copper_spring_alloys[in.byte() % wl::all_copper_spring_alloys.size()],
                   &a::reference_exponent, &a::parameter_slope, &a::temper_lost);
}
template <>
inline wl::covering made<wl::covering>(input& in)
{
    using c = wl::covering;
    return changed(in, wl::all_coverings[in.byte() % wl::all_coverings.size()], &c::thermal_conductivity,
                   &c::heat_per_volume, &c::emissivity, &c::highest, &c::short_time);
}
template <>
inline wl::cable_surface made<wl::cable_surface>(input& in)
{
    using s = wl::cable_surface;
    wl::cable_surface usual{.diameter = made<wl::length>(in)};
    usual = changed(in, usual, &s::air, &s::wind, &s::lay, &s::coil_turns, &s::assumed_turns, &s::bundled_leads);
    return changed(in, usual, &s::altitude, &s::sun, &s::emissivity, &s::across_bundle, &s::model);
}
template <>
inline wl::constant_voltage_output made<wl::constant_voltage_output>(input& in)
{
    using c = wl::constant_voltage_output;
    return changed(in, wl::constant_voltage_output{.setting = made<wl::voltage>(in)}, &c::fall, &c::limit);
}
template <>
inline wl::constant_current_output made<wl::constant_current_output>(input& in)
{
    using c = wl::constant_current_output;
    const wl::constant_current_output usual{wl::in_si<wl::current>(150.0), wl::in_si<wl::voltage>(26.0),
                                            wl::in_si<wl::voltage>(60.0)};
    return changed(in, usual, &c::setting, &c::at, &c::highest_output, &c::rise, &c::no_load);
}
template <>
inline wl::duty_cycle made<wl::duty_cycle>(input& in)
{
    const auto on = made<wl::duration>(in);
    return in.byte() % 4 == 0 ? wl::duty_cycle::continuous() : wl::duty_cycle::of(on, made<wl::duration>(in));
}

}  // namespace fuzz
