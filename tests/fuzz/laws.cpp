// Public functions of law/ and part/, each with any doubles for its arguments: a typed error or a finite result, and an
// end. A function is named once, below; the first byte of an input chooses it.
#include <array>
#include <cstdint>
#include <string>
#include <string_view>
#include <tuple>
#include <type_traits>
#include <utility>

#include <weldloop/core/error.hpp>
#include <weldloop/weldloop.hpp>

#include "any_argument.hpp"
#include "property.hpp"

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
wl::conductor_size made<wl::conductor_size>(input& in)
{
    const auto scale = made<wl::size_scale>(in);
    return {scale, in.number()};
}
template <>
wl::magnet_grade made<wl::magnet_grade>(input& in)
{
    return wl::all_magnet_grades[in.byte() % wl::all_magnet_grades.size()];
}

namespace {

template <class R, class... A>
void call(std::string_view name, R (*function)(A...), input& in)
{
    // in braces, so that arguments are made from left to right
    std::tuple<typename stored<std::remove_cvref_t<A>>::type...> arguments{
        made<typename stored<std::remove_cvref_t<A>>::type>(in)...};
    const auto result = std::apply([&](const auto&... a) { return function(a...); }, arguments);
    hold(is_finite(result), "the result is finite", name);
}

struct entry {
    std::string_view name;
    void (*feed)(std::string_view name, input& in);
};
template <auto Function>
void feed(std::string_view name, input& in)
{
    call(name, Function, in);
}

#define FED(function)                                                                                                  \
    entry                                                                                                              \
    {                                                                                                                  \
#function, &feed < &wl::function>                                                                              \
    }
#define FED_OF(function, ...)                                                                                          \
    entry                                                                                                              \
    {                                                                                                                  \
#function, &feed < static_cast < __VA_ARGS__>(&wl::function)>                                                  \
    }

// New ones go to the end: kept inputs choose by place.
constexpr std::array entries{
    FED(spring_index),
    FED(wahl_factor),
    FED(bergstrasser_factor),
    FED(direct_shear_factor),
    FED(inner_bending_factor),
    FED(outer_bending_factor),
    FED(fastest_rise),
    FED(left_while_rising),
    FED(current_after),
    FED(rayleigh_number),
    FED(nusselt_horizontal_cylinder),
    FED(nusselt_horizontal_cylinder_laminar),
    FED(nusselt_horizontal_cylinder_morgan),
    FED(nusselt_cross_flow),
    FED(nusselt_mixed),
    FED(magnet_force),
    FED(fusing_current),
    FED(adiabatic_current),
    FED(adiabatic_temperature),
    FED(copper_oxide_thickness),
    FED(copper_oxide_grown),
    FED(copper_oxide_square_growth),
    FED(spot_heat_conductance),
    FED(gap_heat_conductance),
    FED(gap_radiation_conductance),
    FED(joint_heat_conductance),
    FED(arc_voltage_at),
    FED(arc_length_at),
    FED(arc_line_through),
    FED(hot_spot_temperature),
    FED(drop_for_spot_temperature),
    FED_OF(softening_drop, wl::voltage (*)(const wl::metal&, wl::temperature)),
    FED_OF(melting_drop, wl::voltage (*)(const wl::metal&, wl::temperature)),
    FED_OF(softening_drop, wl::voltage (*)(const wl::metal_pair&, wl::temperature)),
    FED_OF(melting_drop, wl::voltage (*)(const wl::metal_pair&, wl::temperature)),
    FED(covering_conductance),
    FED(van_wormer_share),
    FED(covering_heat_capacity),
    FED(wire_melting_efficiency),
    FED(heat_input),
    FED(arc_power_in_work),
    FED(modulus_at),
    FED(hot_force_ratio),
    FED(film_resistivity_of),
    FED(film_resistance),
    FED(breakdown_voltage),
    FED(crimp_limit_of),
    FED(crimp_resistance),
    FED(barrel_shortfall),
    FED(underfilled_factor),
    FED_OF(conductor_resistance,
           wl::resistance (*)(wl::resistance_per_length, wl::length, wl::strand_loss, wl::length)),
    FED(active_turns),
    FED(solid_length),
    FED(compression_rate),
    FED(coil_factor),
    FED(compression_stress),
    FED(compression_load),
    FED(compression_force),
    FED(longest_stable_spring),
    FED(buckling_deflection),
    FED(film_free_constant),
    FED(force_law_conductance),
    FED(force_law_resistance),
    FED_OF(force_for_resistance, wl::force (*)(wl::resistance, double, double)),
    FED(ambient_factor),
    FED(brush_drop),
    FED(conductivity_across_bundle),
    FED(internal_inductance),
    FED(mutual_inductance_parallel),
    FED(straight_inductance),
    FED(pair_inductance),
    FED(loop_inductance),
    FED(mutual_inductance_coaxial),
    FED(turn_inductance),
    FED(coil_inductance),
    FED(ramp_voltage),
    FED(skin_depth),
    FED(radius_over_skin_depth),
    FED(skin_effect_at),
    FED(skin_effect_of),
    FED(iec_skin_argument),
    FED(iec_skin_factor_at),
    FED(wire_resistance),
    FED(extension_of),
    FED(lay_ratio),
    FED(series_loss),
    FED(contact_temperature_at),
    FED(interface_potential),
    FED(interface_temperature),
    FED(hottest_point_of),
    FED(filmed_spot_temperature),
    FED(heat_into_sides),
    FED(disc_fin_conductance),
    FED(joint_limits_of),
    FED(joint_drop),
    FED(conductance_for_drop),
    FED(conductance_at),
    FED(untouched_resistance_factor),
    FED(torsion_active_turns),
    FED(torsion_rate),
    FED(torsion_stress),
    FED(torsion_moment),
    FED(wound_coil_diameter),
    FED(wound_body_length),
    FED_OF(constriction_resistance, wl::resistance (*)(wl::resistivity, wl::length)),
    FED_OF(constriction_resistance, wl::resistance (*)(wl::resistivity, wl::resistivity, wl::length)),
    FED_OF(constriction_resistance, wl::resistance (*)(wl::resistivity, std::span<const wl::contact_spot>)),
    FED(bearing_area),
    FED(spot_radius),
    FED(cluster_radius),
    FED(clustered_constriction_resistance),
    FED(conventional_load_voltage),
    FED(screw_force),
    FED(screw_torque),
    FED(lowering_torque),
    FED(screw_efficiency),
    FED_OF(bolt_force, wl::force (*)(wl::torque, double, wl::length)),
    FED_OF(bolt_force, wl::band<wl::force> (*)(wl::torque, wl::thread_state, wl::length)),
    FED(metric_stress_area),
    FED(inch_stress_area),
    FED(electrical_bolt_torque),
    FED(elastic_spot_radius),
    FED(summit_bearing_of),
    FED(interface_resistivity),
    FED(lap_joint_resistance),
    FED(sheet_resistance),
    FED(bar_end_resistance),
    FED(steady_fusing_current),
    FED(melting_speed),
    FED(current_for_feed),
    FED(wire_length_per_mass),
    FED(bar_over_mean),
    FED(disc_over_mean),
    FED(heating_over_stay),
    FED(thin_plate_peak_rise),
    FED(thin_plate_peak_beyond_fusion),
    FED(thick_plate_peak_rise),
    FED(thick_plate_cooling_time),
    FED(steel_cooling_time),
    FED(pressure_at_altitude),
    FED(air_at),
    FED(weight_of),
    FED(usual_holder_force),
    FED(welding_cable_mass),
    FED(holding_force),
    FED(holding_test_mass),
    FED(tinned_conductivity),
    FED(radiated),
    FED(radiation_coefficient),
    FED(relative_thickness),
    FED(heat_input_of),
    FED(tabulated_resistivity_of),
    FED_OF(bolt_force_left, wl::band<double> (*)(wl::duration, wl::temperature, const wl::bolted_joint&)),
};
static_assert(entries.size() <= 256);

}  // namespace

}  // namespace fuzz

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size)
{
    if (size > 200) return 0;
    fuzz::input in(data, size);
    const fuzz::entry& chosen = fuzz::entries[in.byte() % fuzz::entries.size()];
    try {
        chosen.feed(chosen.name, in);
    } catch (const wl::error&) {
        // typed, as it should be
    }
    return 0;
}
