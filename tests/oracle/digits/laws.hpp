#pragma once
/// @file
/// Laws by their names on plain numbers: what digits_test.cpp holds against rows of fifty digits, and variants.cpp
/// prints. Inputs are in SI units, temperatures in kelvin.

#include <array>
#include <cmath>
#include <cstddef>
#include <span>
#include <string_view>
#include <vector>

#include <weldloop/core/duty_cycle.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/law/arc_heat.hpp>
#include <weldloop/law/arc_line.hpp>
#include <weldloop/law/bolt.hpp>
#include <weldloop/law/bolt_relaxation.hpp>
#include <weldloop/law/burn_off.hpp>
#include <weldloop/law/cable_surface.hpp>
#include <weldloop/law/code_relaxation.hpp>
#include <weldloop/law/compression_spring.hpp>
#include <weldloop/law/conductor_resistance.hpp>
#include <weldloop/law/constriction.hpp>
#include <weldloop/law/convection.hpp>
#include <weldloop/law/copper_relaxation.hpp>
#include <weldloop/law/covering_heat.hpp>
#include <weldloop/law/crimp.hpp>
#include <weldloop/law/current_rise.hpp>
#include <weldloop/law/cylinder_loss.hpp>
#include <weldloop/law/elastic_contact.hpp>
#include <weldloop/law/equal_heating.hpp>
#include <weldloop/law/film.hpp>
#include <weldloop/law/fin.hpp>
#include <weldloop/law/finite_body.hpp>
#include <weldloop/law/force_law.hpp>
#include <weldloop/law/free_air.hpp>
#include <weldloop/law/fusing.hpp>
#include <weldloop/law/heat_modes.hpp>
#include <weldloop/law/hot_modulus.hpp>
#include <weldloop/law/inductance.hpp>
#include <weldloop/law/joint_ageing.hpp>
#include <weldloop/law/joint_characteristic.hpp>
#include <weldloop/law/joint_heat.hpp>
#include <weldloop/law/lap_joint.hpp>
#include <weldloop/law/lead_bundle.hpp>
#include <weldloop/law/load_line.hpp>
#include <weldloop/law/loop_heat_input.hpp>
#include <weldloop/law/magnet.hpp>
#include <weldloop/law/oxide_growth.hpp>
#include <weldloop/law/radiation.hpp>
#include <weldloop/law/relaxation_heat.hpp>
#include <weldloop/law/relaxation_result.hpp>
#include <weldloop/law/resistivity_table.hpp>
#include <weldloop/law/scatter.hpp>
#include <weldloop/law/screw.hpp>
#include <weldloop/law/short_circuit.hpp>
#include <weldloop/law/skin_effect.hpp>
#include <weldloop/law/source_line.hpp>
#include <weldloop/law/spot_temperature.hpp>
#include <weldloop/law/spring.hpp>
#include <weldloop/law/stress_relaxation.hpp>
#include <weldloop/law/thermal_endurance.hpp>
#include <weldloop/law/torsion_spring.hpp>
#include <weldloop/law/unloading.hpp>
#include <weldloop/law/voltage_temperature.hpp>
#include <weldloop/law/waveform.hpp>
#include <weldloop/law/weld_temperature.hpp>
#include <weldloop/law/wire_extension.hpp>
#include <weldloop/law/work_spread.hpp>
#include <weldloop/material/air.hpp>
#include <weldloop/material/metals.hpp>
#include <weldloop/material/spring_wire.hpp>
#include <weldloop/solve/bessel.hpp>
#include <weldloop/solve/curve_table.hpp>
#include <weldloop/solve/least_squares.hpp>
#include <weldloop/solve/root.hpp>
#include <weldloop/solve/sparse_lu.hpp>

#include "oracle/digits/marches.hpp"
#include "oracle/digits/plain_words.hpp"

namespace weldloop::test::digits {

/// A metal by its numbers: resistivity, coefficient, density, specific heat, conductivity, hardness, softening,
/// melting.
struct made_metal {
    double rho = 1.7241e-8, alpha = 3.93e-3, density = 8900.0, heat = 385.0, conducts = 394.0, hard = 0.6e9,
           softens = 463.15, melts = 1356.15;
    [[nodiscard]] metal made() const
    {
        metal out = annealed_copper;
        out.name = "made";
        out.resistivity = ohm_m(rho);
        out.temperature_coefficient = in_si<per_kelvin>(alpha);
        out.density = in_si<weldloop::density>(density);
        out.specific_heat = in_si<specific_heat>(heat);
        out.thermal_conductivity = in_si<thermal_conductivity>(conducts);
        out.hardness = Pa(hard);
        out.softening = K(softens);
        out.melting = K(melts);
        return out;
    }
};

inline heated_fin fin_of(inputs x)
{
    return {in_si<decltype(thermal_conductance{} * length{})>(x[0]), in_si<thermal_conductivity>(x[1]),
            in_si<power_per_length>(x[2]), m(x[3])};
}
inline screw_thread thread_of(inputs x)
{
    return {.diameter = m(x[0]),
            .pitch = m(x[1]),
            .starts = 1,
            .half_angle = in_si<plane_angle>(x[2]),
            .friction = x[3],
            .collar_friction = x[4],
            .collar_diameter = m(x[5])};
}
inline joint_limits limits_of(inputs x)
{
    return {V(x[0]), V(x[1]), x[2], V(x[3])};
}
inline welded_plate plate_of(inputs x)
{
    return {in_si<heat_per_weld_length>(x[0]), in_si<volumetric_heat>(x[1]), m(x[2]), K(x[3]), K(x[4])};
}
inline heated_stay stay_of(inputs x)
{
    return {.metal = made_metal{.conducts = x[5]}.made(),
            .capacity = in_si<heat_capacity>(x[0]),
            .loss = in_si<thermal_conductance>(x[1]),
            .stay = s(x[2]),
            .on = s(x[3]),
            .period = s(x[4])};
}
inline double cylinder(inputs x, surface_model model)
{
    const double rise = x[5];
    return detail::cylinder_law({x[0], x[1], x[2], x[3], x[4], model}).loss(x[1] + rise).value;
}
// Of one rate: exp(x) - 1 over it, and the second integral.
inline detail::mode_times times_of(double rate, double time)
{
    detail::symmetric_modes modes;
    modes.rate.fill(rate);
    modes.vector = {};
    return {modes, time};
}
inline solve::line_reading reading(double x, double y)
{
    return {{1.0, x, 0.0}, y};
}
inline band<double> band_of(inputs x)
{
    return {x[0], x[1], x[2]};
}
inline current_piece piece(double duration, double from, double to)
{
    return {s(duration), A(from), A(to)};
}
// A chain of conductances between neighbours, heated at its first place: the rise of one of its places.
inline double chain(inputs x)
{
    constexpr std::size_t places = 24;
    std::vector<std::pair<std::size_t, std::size_t>> pairs;
    for (std::size_t k = 0; k + 1 < places; ++k) pairs.emplace_back(k, k + 1);
    solve::sparse_lu lu(places, pairs);
    const auto values = lu.values();
    for (std::size_t k = 0; k < places; ++k) {
        values[lu.slot(k, k)] = k == 0 || k + 1 == places ? x[1] : x[2];
        if (k + 1 == places) break;
        values[lu.slot(k, k + 1)] = values[lu.slot(k + 1, k)] = -x[0];
    }
    if (!lu.eliminate()) return 0.0;
    std::array<double, places> rise{};
    rise[0] = x[3];
    lu.solve(rise);
    return rise[static_cast<std::size_t>(x[4])];
}

/// Every law that is held against rows.
inline constexpr std::array laws{
    named_law{"heat_input", [](inputs x) { return heat_input(x[0], V(x[1]), A(x[2]), in_si<speed>(x[3])).value(); }},
    named_law{"arc_voltage_at",
              [](inputs x) {
                  return arc_voltage_at({V(x[0]), in_si<arc_gradient>(x[1]), ohm(x[2])}, m(x[3]), A(x[4])).value();
              }},
    named_law{"arc_length_at",
              [](inputs x) {
                  return arc_length_at({V(x[0]), in_si<arc_gradient>(x[1]), ohm(x[2])}, V(x[3]), A(x[4])).value();
              }},
    named_law{"bolt_force", [](inputs x) { return bolt_force(in_si<torque>(x[0]), x[1], m(x[2])).value(); }},
    named_law{"metric_stress_area", [](inputs x) { return metric_stress_area(m(x[0]), m(x[1])).value(); }},
    named_law{"inch_stress_area", [](inputs x) { return inch_stress_area(m(x[0]), m(x[1])).value(); }},
    named_law{"settling_pace", [](inputs x) { return settling_pace(K(x[0]), K(x[1])); }},
    named_law{"settled_decades", [](inputs x) { return settled_decades(x[0], x[1], s(x[2])); }},
    named_law{"melting_speed",
              [](inputs x) {
                  return melting_speed({in_si<melting_by_current>(x[0]), in_si<melting_by_heating>(x[1])}, A(x[2]),
                                       m(x[3]))
                      .value();
              }},
    named_law{"current_for_feed",
              [](inputs x) {
                  return current_for_feed({in_si<melting_by_current>(x[0]), in_si<melting_by_heating>(x[1])},
                                          in_si<speed>(x[2]), m(x[3]))
                      .value();
              }},
    named_law{"wire_length_per_mass",
              [](inputs x) { return wire_length_per_mass(in_si<density>(x[0]), m(x[1])).value(); }},
    named_law{"model_code_relaxation",
              [](inputs x) {
                  return static_cast<double>(code_relaxation(relaxation_time_law::model_code, x[0], s(x[1])));
              }},
    named_law{"eurocode_relaxation",
              [](inputs x) {
                  return static_cast<double>(code_relaxation(relaxation_time_law::eurocode, x[0], s(x[1])));
              }},
    named_law{"logarithmic_relaxation",
              [](inputs x) {
                  return static_cast<double>(code_relaxation(relaxation_time_law::logarithmic, x[0], s(x[1]),
                                                             {spring_making::plain, x[2]}));
              }},
    named_law{"compression_rate",
              [](inputs x) { return compression_rate(Pa(x[0]), m(x[1]), m(x[2]), x[3]).value(); }},
    named_law{"compression_stress", [](inputs x) { return compression_stress(N(x[0]), m(x[1]), m(x[2])).value(); }},
    named_law{"compression_load", [](inputs x) { return compression_load(Pa(x[0]), m(x[1]), m(x[2])).value(); }},
    named_law{"compression_force",
              [](inputs x) {
                  return compression_force(in_si<spring_rate>(x[0]), m(x[1]), m(x[2]), m(x[3])).value();
              }},
    named_law{"longest_stable_spring",
              [](inputs x) {
                  return longest_stable_spring(m(x[0]), Pa(x[1]), Pa(x[2]), spring_ends_held::both_flat).value();
              }},
    named_law{"buckling_deflection",
              [](inputs x) {
                  const auto out = buckling_deflection(
                      {m(x[0]), m(x[1]), Pa(x[2]), Pa(x[3]), spring_ends_held::both_pivoted});
                  return out ? out->value() : 0.0;
              }},
    named_law{"conductor_resistance",
              [](inputs x) {
                  return conductor_resistance(made_metal{.rho = x[0], .alpha = x[1]}.made(), m2(x[2]), x[3], K(x[4]))
                      .value();
              }},
    named_law{"damaged_conductor",
              [](inputs x) {
                  return conductor_resistance(in_si<resistance_per_length>(x[0]), m(x[1]), x[2], m(x[3])).value();
              }},
    named_law{"constriction_resistance",
              [](inputs x) { return constriction_resistance(ohm_m(x[0]), ohm_m(x[1]), m(x[2])).value(); }},
    named_law{"spot_radius", [](inputs x) { return spot_radius(N(x[0]), Pa(x[1])).value(); }},
    named_law{"two_spots",
              [](inputs x) {
                  const std::array<contact_spot, 2> spots{contact_spot{m(x[1]), m(x[2]), m(x[3])},
                                                          contact_spot{m(x[4]), m(x[5]), m(x[6])}};
                  return constriction_resistance(ohm_m(x[0]), spots).value();
              }},
    named_law{"nusselt_horizontal_cylinder", [](inputs x) { return nusselt_horizontal_cylinder(x[0], x[1]); }},
    named_law{"nusselt_laminar", [](inputs x) { return nusselt_horizontal_cylinder_laminar(x[0], x[1]); }},
    named_law{"nusselt_morgan", [](inputs x) { return nusselt_horizontal_cylinder_morgan(x[0]); }},
    named_law{"nusselt_cross_flow", [](inputs x) { return nusselt_cross_flow(x[0], x[1]); }},
    named_law{"nusselt_mixed", [](inputs x) { return nusselt_mixed(x[0], x[1], x[2]); }},
    named_law{"rayleigh_number",
              [](inputs x) {
                  const air_properties film = air_at(K(x[3]));
                  return rayleigh_number(m(x[0]), K(x[1]), K(x[2]), film);
              }},
    named_law{"air_viscosity", [](inputs x) { return air_at(K(x[0])).viscosity.value(); }},
    named_law{"air_conductivity", [](inputs x) { return air_at(K(x[0])).thermal_conductivity.value(); }},
    named_law{"air_heat", [](inputs x) { return air_at(K(x[0])).specific_heat.value(); }},
    named_law{"vibration_heat", [](inputs x) { return detail::vibration_heat(x[0])[0]; }},
    named_law{"pressure_at_altitude", [](inputs x) { return pressure_at_altitude(m(x[0])).value(); }},
    named_law{"cylinder_loss_first_principles",
              [](inputs x) { return cylinder(x, surface_model::churchill_chu); }},
    named_law{"cylinder_loss_morgan", [](inputs x) { return cylinder(x, surface_model::morgan); }},
    named_law{"cylinder_loss", [](inputs x) { return cylinder(x, surface_model::iec_60287); }},
    named_law{"copper_relaxation",
              [](inputs x) {
                  copper_spring_alloy alloy = phosphor_bronze_spring;
                  alloy.reference_exponent = x[0];
                  alloy.parameter_slope = in_si<per_kelvin>(x[1]);
                  return static_cast<double>(copper_relaxation(alloy, K(x[2]), s(x[3])).lost);
              }},
    named_law{"covering_conductance",
              [](inputs x) {
                  return covering_conductance(in_si<thermal_conductivity>(x[0]), m(x[1]), m(x[2])).value();
              }},
    named_law{"van_wormer_share", [](inputs x) { return van_wormer_share(m(x[0]), m(x[1])); }},
    named_law{"covering_heat_capacity",
              [](inputs x) {
                  return covering_heat_capacity(in_si<volumetric_heat>(x[0]), m(x[1]), m(x[2])).value();
              }},
    named_law{"crimp_limit", [](inputs x) { return crimp_limit_of(m2(x[0])).resistance.value(); }},
    named_law{"barrel_shortfall",
              [](inputs x) { return static_cast<double>(barrel_shortfall(m2(x[0]), m2(x[1]), x[2])); }},
    named_law{"underfilled_factor", [](inputs x) { return underfilled_factor(x[0]); }},
    named_law{"current_after",
              [](inputs x) {
                  return current_after({V(x[0]), ohm(x[1]), in_si<inductance>(x[2]), A(x[3])}, s(x[4])).value();
              }},
    named_law{"rise_time",
              [](inputs x) {
                  const auto out = rise_time(in_si<inductance>(x[0]), A(x[1]), A(x[2]),
                                             [&](double amps) { return x[3] - x[4] * amps; });
                  return out ? out->value() : 0.0;
              }},
    named_law{"elastic_spot_radius",
              [](inputs x) { return elastic_spot_radius(N(x[0]), m(x[1]), Pa(x[2])).value(); }},
    named_law{"contact_modulus",
              [](inputs x) {
                  return contact_modulus({"one", Pa(x[0]), x[1], nullptr}, {"other", Pa(x[2]), x[3], nullptr}).value();
              }},
    named_law{"equal_heating_current",
              [](inputs x) { return equal_heating_current(A(x[0]), duty_cycle::of(s(x[1]), s(600.0)), duty_cycle::of(s(x[2]), s(600.0))).value(); }},
    named_law{"ambient_factor", [](inputs x) { return ambient_factor(K(x[0]), K(x[1]), K(x[2])); }},
    named_law{"film_resistance",
              [](inputs x) { return film_resistance(in_si<film_resistivity>(x[0]), m2(x[1])).value(); }},
    named_law{"fin_own_end", [](inputs x) { return fin_of(x).own_end().value(); }},
    named_law{"fin_other_end", [](inputs x) { return fin_of(x).other_end().value(); }},
    named_law{"fin_into_end", [](inputs x) { return fin_of(x).into_end(dK(x[4]), dK(x[5])).value(); }},
    named_law{"fin_mean_rise", [](inputs x) { return fin_of(x).mean_rise(dK(x[4]), dK(x[5])).value(); }},
    named_law{"fin_highest_rise", [](inputs x) { return fin_of(x).highest_rise(dK(x[4]), dK(x[5])).value(); }},
    named_law{"disc_fin_conductance",
              [](inputs x) {
                  return disc_fin_conductance(in_si<thermal_conductivity>(x[0]), m(x[1]), m(x[2]),
                                              in_si<heat_transfer_coefficient>(x[3]))
                      .value();
              }},
    named_law{"sheet_resistance",
              [](inputs x) { return sheet_resistance(ohm_m(x[0]), m(x[1]), m(x[2]), m(x[3])).value(); }},
    named_law{"bar_end_resistance",
              [](inputs x) { return bar_end_resistance(ohm_m(x[0]), m(x[1]), m(x[2])).value(); }},
    named_law{"force_law_conductance",
              [](inputs x) { return force_law_conductance(x[0], x[1], N(x[2])).value(); }},
    named_law{"force_for_resistance",
              [](inputs x) { return force_for_resistance(ohm(x[0]), x[1], x[2]).value(); }},
    named_law{"free_air_coefficient", [](inputs x) { return free_air_coefficient(free_air_alone, m(x[0])); }},
    named_law{"adiabatic_current",
              [](inputs x) {
                  return adiabatic_current(made_metal{.rho = x[0], .alpha = x[1]}.made(), m2(x[2]), s(x[3]),
                                           {K(x[4]), K(x[5])})
                      .value();
              }},
    named_law{"adiabatic_temperature",
              [](inputs x) {
                  return adiabatic_temperature(made_metal{.rho = x[0], .alpha = x[1]}.made(), m2(x[2]),
                                               {A(x[3]), s(x[4])}, K(x[5]))
                      .in_kelvin();
              }},
    named_law{"mode_by_speed", [](inputs x) { return times_of(x[0], x[1]).by_speed[0]; }},
    named_law{"mode_by_twice", [](inputs x) { return times_of(x[0], x[1]).by_twice[0]; }},
    named_law{"modulus_at", [](inputs x) { return modulus_at(Pa(x[0]), K(x[1])).value(); }},
    named_law{"mutual_inductance_parallel",
              [](inputs x) { return mutual_inductance_parallel(m(x[0]), m(x[1])).value(); }},
    named_law{"pair_inductance",
              [](inputs x) {
                  return pair_inductance(m(x[0]), m(x[1]), m(x[2]), in_si<inductance_per_length>(x[3])).value();
              }},
    named_law{"loop_inductance", [](inputs x) { return loop_inductance(m(x[0]), m(x[1]), m(x[2])).value(); }},
    named_law{"mutual_inductance_coaxial",
              [](inputs x) { return mutual_inductance_coaxial(m(x[0]), m(x[1]), m(x[2])).value(); }},
    named_law{"coil_inductance",
              [](inputs x) {
                  return coil_inductance({static_cast<int>(x[0]), m(x[1]), m(x[2])}, m(x[3])).value();
              }},
    named_law{"turn_inductance", [](inputs x) { return turn_inductance(m(x[0]), m(x[1])).value(); }},
    named_law{"joint_drop",
              [](inputs x) { return joint_drop(A(x[4]), S(x[5]), limits_of(x)).value(); }},
    named_law{"conductance_for_drop",
              [](inputs x) { return conductance_for_drop(A(x[4]), V(x[5]), limits_of(x)).value(); }},
    named_law{"gap_radiation_conductance",
              [](inputs x) {
                  return gap_radiation_conductance({.filling = air_in_gaps,
                                                    .faces = m2(x[0]),
                                                    .first_emissivity = x[1],
                                                    .second_emissivity = x[2]},
                                                   K(x[3]))
                      .value();
              }},
    named_law{"lap_joint_resistance",
              [](inputs x) {
                  return lap_joint_resistance({ohm_m(x[0]), m(x[1])}, {ohm_m(x[2]), m(x[3])},
                                              {m(x[4]), m(x[5]), in_si<film_resistivity>(x[6])})
                      .value();
              }},
    named_law{"conductivity_across_bundle",
              [](inputs x) {
                  return conductivity_across_bundle(in_si<thermal_conductivity>(x[0]), m(x[1]), m(x[2])).value();
              }},
    named_law{"bundle_rise_inside",
              [](inputs x) {
                  return lead_bundle_of(lay::bundled, m(x[0]), static_cast<int>(x[1]), in_si<thermal_conductivity>(x[2]))
                      .rise_inside;
              }},
    named_law{"overstated_heat_input",
              [](inputs x) {
                  return heat_input_of({process::gmaw, V(x[0]), V(x[1]), A(x[2]), in_si<speed>(x[3])}).overstated;
              }},
    named_law{"magnet_force",
              [](inputs x) { return magnet_force(N(x[0]), ferrite_magnet, K(x[1]), m(x[2])).force.value(); }},
    named_law{"copper_oxide_thickness",
              [](inputs x) { return copper_oxide_thickness(K(x[0]), s(x[1])).value(); }},
    named_law{"copper_oxide_grown",
              [](inputs x) { return copper_oxide_grown(m(x[0]), K(x[1]), s(x[2])).value(); }},
    named_law{"copper_oxide_square_growth",
              [](inputs x) { return copper_oxide_square_growth(m(x[0]), K(x[1])).value(); }},
    named_law{"ageing_force_left",
              [](inputs x) {
                  return static_cast<double>(
                      ageing_trend_of(m(1e-4), 0.7, {s(3600.0), K(300.0), x[0], dK(x[1])}).force_left);
              }},
    named_law{"radiated", [](inputs x) { return radiated(x[0], K(x[1]), K(x[2])).value(); }},
    named_law{"equivalent_time",
              [](inputs x) {
                  return relaxation_clock(relaxation_heat_rule::activation_energy).advance(K(x[0]), s(x[1])).equivalent().value();
              }},
    named_law{"series_loss", [](inputs x) { return static_cast<double>(series_loss(x[0], x[1], x[2])); }},
    named_law{"tabulated_resistivity",
              [](inputs x) { return tabulated_resistivity_of(annealed_copper, K(x[0])).resistivity.value(); }},
    named_law{"product_of", [](inputs x) { return product_of(band_of(x), band_of(x.subspan(3))).low; }},
    named_law{"probability_smaller",
              [](inputs x) {
                  return static_cast<double>(probability_smaller(band_of(x), band_of(x.subspan(3))));
              }},
    named_law{"probability_smaller_halves",
              [](inputs x) {
                  return static_cast<double>(probability_smaller(band_of(x), band_of(x.subspan(3))));
              }},
    named_law{"lognormal_spread", [](inputs x) { return detail::split_log_normal(band_of(x)).above; }},
    named_law{"screw_force",
              [](inputs x) { return screw_force(in_si<torque>(x[6]), thread_of(x)).value(); }},
    named_law{"lowering_torque", [](inputs x) { return lowering_torque(N(x[6]), thread_of(x)).value(); }},
    named_law{"screw_efficiency", [](inputs x) { return static_cast<double>(screw_efficiency(thread_of(x))); }},
    named_law{"k_factor", [](inputs x) { return k_factor_of(iec_copper, {K(x[0]), K(x[1])}).value(); }},
    named_law{"short_circuit_time",
              [](inputs x) {
                  return short_circuit_time({iec_copper, m2(x[0]), x[1]}, A(x[2]), {K(x[3]), K(x[4])}).value();
              }},
    named_law{"short_circuit_temperature",
              [](inputs x) {
                  return short_circuit_temperature({iec_copper, m2(x[0]), x[1]}, {A(x[2]), s(x[3])}, K(x[4]))
                      .in_kelvin();
              }},
    named_law{"steady_fusing_current", [](inputs x) { return steady_fusing_current(m(x[0])).value(); }},
    named_law{"skin_depth", [](inputs x) { return skin_depth(ohm_m(x[0]), in_si<frequency>(x[1]), x[2]).value(); }},
    named_law{"skin_increase", [](inputs x) { return skin_effect_at(x[0]).resistance_increase; }},
    named_law{"skin_inductance", [](inputs x) { return skin_effect_at(x[0]).inductance_ratio; }},
    named_law{"iec_skin_factor", [](inputs x) { return iec_skin_factor_at(x[0]).increase; }},
    named_law{"reactive_line_voltage",
              [](inputs x) { return source_line::reactive(V(x[0]), A(x[1])).at_current(A(x[2])).voltage.value(); }},
    named_law{"contact_temperature_at",
              [](inputs x) { return contact_temperature_at(V(x[0]), V(x[1]), K(x[2]), K(x[3])).in_kelvin(); }},
    named_law{"hottest_point", [](inputs x) { return hottest_point_of(V(x[0]), K(x[1]), K(x[2])).hottest.in_kelvin(); }},
    named_law{"filmed_spot_temperature",
              [](inputs x) { return filmed_spot_temperature(V(x[0]), V(x[1]), K(x[2])).in_kelvin(); }},
    named_law{"heat_into_first",
              [](inputs x) { return heat_into_sides(V(x[0]), S(x[1]), K(x[2]), K(x[3])).first.value(); }},
    named_law{"wahl_factor", [](inputs x) { return wahl_factor(x[0]); }},
    named_law{"bergstrasser_factor", [](inputs x) { return bergstrasser_factor(x[0]); }},
    named_law{"inner_bending_factor", [](inputs x) { return inner_bending_factor(x[0]); }},
    named_law{"outer_bending_factor", [](inputs x) { return outer_bending_factor(x[0]); }},
    named_law{"stress_relaxation",
              [](inputs x) {
                  return static_cast<double>(stress_relaxation(music_wire, x[0], K(x[1]), s(x[2])));
              }},
    named_law{"endurance_time",
              [](inputs x) { return endurance_time({K(x[0]), dK(x[1])}, K(x[2])).value(); }},
    named_law{"equivalent_temperature",
              [](inputs x) {
                  const std::array<heated_time, 2> course{heated_time{K(x[2]), s(x[3])}, heated_time{K(x[4]), s(x[5])}};
                  return equivalent_temperature({K(x[0]), dK(x[1])}, course).in_kelvin();
              }},
    named_law{"torsion_rate", [](inputs x) { return torsion_rate(Pa(x[0]), m(x[1]), m(x[2]), x[3]).value(); }},
    named_law{"torsion_stress",
              [](inputs x) { return torsion_stress(in_si<torque>(x[0]), m(x[1]), m(x[2])).value(); }},
    named_law{"untouched_resistance_factor", [](inputs x) { return untouched_resistance_factor(x[0], x[1]); }},
    named_law{"hot_spot_temperature", [](inputs x) { return hot_spot_temperature(V(x[0]), K(x[1])).in_kelvin(); }},
    named_law{"drop_for_spot_temperature",
              [](inputs x) { return drop_for_spot_temperature(K(x[0]), K(x[1])).value(); }},
    named_law{"waveform_rms",
              [](inputs x) {
                  return waveform::of_pieces({piece(x[0], x[1], x[2]), piece(x[3], x[4], x[5])}).rms().value();
              }},
    named_law{"waveform_mean_absolute",
              [](inputs x) {
                  return waveform::of_pieces({piece(x[0], x[1], x[2]), piece(x[3], x[4], x[5])}).mean_absolute().value();
              }},
    named_law{"pulse_harmonic",
              [](inputs x) {
                  return waveform::of_pieces({piece(x[0], x[1], x[1]), piece(x[2], x[3], x[3])})
                      .harmonic(static_cast<int>(x[4]))
                      .value();
              }},
    named_law{"relative_thickness",
              [](inputs x) {
                  return relative_thickness(m(x[0]), in_si<volumetric_heat>(x[1]), dK(x[2]),
                                            in_si<heat_per_weld_length>(x[3]));
              }},
    named_law{"thin_plate_peak_beyond_fusion",
              [](inputs x) { return thin_plate_peak_beyond_fusion(plate_of(x), m(x[5])).value(); }},
    named_law{"thick_plate_peak_rise", [](inputs x) { return thick_plate_peak_rise(plate_of(x), m(x[5])).value(); }},
    named_law{"thick_plate_cooling_time",
              [](inputs x) {
                  return thick_plate_cooling_time(in_si<heat_per_weld_length>(x[0]), in_si<thermal_conductivity>(x[1]),
                                                  K(x[2]))
                      .value();
              }},
    named_law{"steel_cooling_time",
              [](inputs x) {
                  return steel_cooling_time(in_si<heat_per_weld_length>(x[0]), m(x[1]), K(x[2])).value();
              }},
    named_law{"wire_extension_drop",
              [](inputs x) {
                  return extension_of({.of = made_metal{.rho = x[0], .alpha = x[1]}.made(),
                                       .diameter = m(x[2]),
                                       .extension = m(x[3]),
                                       .feed = in_si<speed>(x[4]),
                                       .enters = K(x[5])},
                                      A(x[6]))
                      .drop.value();
              }},
    named_law{"heating_over_stay",
              [](inputs x) { return heating_over_stay(stay_of(x)).rise.mean; }},
    named_law{"end_over_mean", [](inputs x) { return heating_over_stay(stay_of(x)).end_over_mean; }},
    named_law{"bessel_j0", [](inputs x) { return solve::bessel_j(0.0, x[0]); }},
    named_law{"bessel_k0", [](inputs x) { return solve::bessel_k(0.0, x[0]); }},
    named_law{"bessel_k1", [](inputs x) { return solve::bessel_k(1.0, x[0]); }},
    named_law{"curve_table",
              [](inputs x) {
                  return solve::curve_table([&](double rise) {
                             const double root = std::sqrt(rise);
                             return x[0] + root * (x[1] + root * x[2]);
                         })
                      .value_at(x[3]);
              }},
    named_law{"fitted_slope",
              [](inputs x) {
                  const std::array<solve::line_reading, 4> readings{reading(x[0], x[1]), reading(x[2], x[3]),
                                                                    reading(x[4], x[5]), reading(x[6], x[7])};
                  const auto line = solve::fit_line(readings, 2);
                  return line ? line->a[1] : 0.0;
              }},
    named_law{"root_between",
              [](inputs x) {
                  return detail::root_between([&](double t) { return std::expm1(t) - x[0]; }, 0.0, 40.0, "root");
              }},
    named_law{"rising_root",
              [](inputs x) {
                  return detail::rising_root(
                      [&](double t) {
                          return detail::value_and_slope{std::expm1(t) - x[0], std::exp(t)};
                      },
                      0.0, 40.0, 1.0, "root");
              }},
    named_law{"steady_conductor", [](inputs x) { return steady_of(x).conductor_peak.in_kelvin() - x[7]; }},
    named_law{"period_conductor_peak", [](inputs x) { return period_of(x).conductor_peak.in_kelvin() - x[7]; }},
    named_law{"period_conductor_mean", [](inputs x) { return period_of(x).conductor_mean.in_kelvin() - x[7]; }},
    named_law{"period_surface_peak", [](inputs x) { return period_of(x).surface_peak.in_kelvin() - x[7]; }},
    named_law{"shot_conductor", [](inputs x) { return shot_of(x).conductor.in_kelvin() - x[7]; }},
    named_law{"shot_surface", [](inputs x) { return shot_of(x).surface.in_kelvin() - x[7]; }},
    named_law{"time_to_conductor", [](inputs x) { return passage_of(x); }},
    named_law{"time_constant",
              [](inputs x) { return time_constant_of(conductor_of(x), surface_of(x), K(x[8])).value(); }},
    named_law{"straight_conductor", [](inputs x) { return straight_rise_of(x, 0); }},
    named_law{"straight_surface", [](inputs x) { return straight_rise_of(x, detail::surface_point); }},
    named_law{"surface_under", [](inputs x) { return surface_under(x) - x[1]; }},
    named_law{"surface_table",
              [](inputs x) {
                  const detail::surface_kernel law(
                      {.diameter = m(x[0]), .air = K(x[1]), .model = surface_model::churchill_chu});
                  return solve::curve_table([&](double rise) { return law.loss(x[1] + rise) / rise; }).value_at(x[2]);
              }},
    named_law{"meeting_on_straight",
              [](inputs x) { return meeting_amps(source_line::straight(V(x[0]), A(x[1])), x[2], x[3]); }},
    named_law{"meeting_on_ellipse",
              [](inputs x) { return meeting_amps(source_line::reactive(V(x[0]), A(x[1])), x[2], x[3]); }},
    named_law{"meeting_on_measured", [](inputs x) { return meeting_amps(measured_line(), x[0], x[1]); }},
    named_law{"most_power_straight", [](inputs x) { return most_watts(source_line::straight(V(x[0]), A(x[1]))); }},
    named_law{"most_power_ellipse", [](inputs x) { return most_watts(source_line::reactive(V(x[0]), A(x[1]))); }},
    named_law{"most_power_measured", [](inputs) { return most_watts(measured_line()); }},
    named_law{"network_mean", [](inputs x) { return period_of_three(x).mean[0]; }},
    named_law{"network_end_of_on", [](inputs x) { return period_of_three(x).peak[0]; }},
    named_law{"network_start_of_on", [](inputs x) { return period_of_three(x).trace.front()[0]; }},
    named_law{"network_steady", [](inputs x) { return curved_three(x); }},
    named_law{"shared_current", [](inputs x) { return shared_amps(x); }},
    named_law{"rise_time_on_ellipse", [](inputs x) { return rise_on_ellipse(x); }},
    named_law{"square_wave_ratio", [](inputs x) { return square_ratio(x); }},
    named_law{"bar_over_mean", [](inputs x) { return bar_over_mean(steady_stay(x), m(x[5]), m(0.0)).mean; }},
    named_law{"disc_over_mean",
              [](inputs x) { return disc_over_mean(steady_stay(x), m(x[5]), m(x[6]), m(x[7])).mean; }},
    named_law{"sparse_chain", [](inputs x) { return chain(x); }},
};

}  // namespace weldloop::test::digits
