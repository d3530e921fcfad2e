// Public functions of core/, solve/, material/ and law/, each with any doubles for its arguments: a typed error or a
// finite result, and an end. A function is named once, below; the first byte of an input chooses it.
#include <array>
#include <cstdint>
#include <span>
#include <string>
#include <vector>

#include <weldloop/weldloop.hpp>

#include "any_argument.hpp"
#include "fed_functions.hpp"
#include "made_materials.hpp"

namespace wl = weldloop;

namespace fuzz {

// What objects answer after any history, and functions that take something to call.
namespace asked {

struct stretch {
    wl::temperature at;
    wl::duration time;
};
using history = std::vector<stretch>;

template <class State>
State held(State state, const history& past)
{
    for (const stretch& s : past) state.advance(s.at, s.time);
    return state;
}

wl::relaxation relaxation_state(const wl::spring_wire& wire, wl::stress_fraction stress, const history& past)
{
    return held(wl::relaxation_state(wire, stress), past).result();
}
wl::relaxation code_relaxation_state(const wl::spring_wire& wire, wl::stress_fraction stress,
                                     const wl::code_relaxation_law& law, const history& past)
{
    return held(wl::code_relaxation_state(wire, stress, law), past).result();
}
wl::relaxation copper_relaxation_state(const wl::copper_spring_alloy& alloy, const history& past)
{
    return held(wl::copper_relaxation_state(alloy), past).result();
}
wl::relaxation chosen_relaxation(const wl::relaxation_choice& choice, const wl::spring_wire& wire,
                                 wl::stress_fraction stress, const history& past)
{
    return held(wl::chosen_relaxation(choice, wire, stress), past).result();
}
std::vector<double> relaxation_clock(wl::relaxation_heat_rule rule, const history& past)
{
    const wl::relaxation_clock clock = held(wl::relaxation_clock(rule), past);
    return {clock.equivalent().value(), clock.loss_factor()};
}
wl::ageing_trend retightened(wl::length spot, double exponent, const wl::joint_history& past, wl::joint_care care)
{
    return wl::retightened(wl::ageing_trend_of(spot, exponent, past), exponent, care);
}
std::vector<double> heated_fin(decltype(wl::thermal_conductance{} * wl::length{}) axial, wl::thermal_conductivity loss,
                               wl::power_per_length heating, const std::array<wl::length, 1>& extent,
                               wl::temperature_difference one, wl::temperature_difference other)
{
    const wl::heated_fin fin(axial, loss, heating, extent[0]);
    return {fin.decay_length().value(),
            fin.far_rise().value(),
            fin.own_end().value(),
            fin.other_end().value(),
            fin.into_end(one, other).value(),
            fin.mean_rise(one, other).value(),
            fin.highest_rise(one, other).value()};
}
struct line_numbers {
    unsigned char shape;
    wl::voltage no_load;
    wl::current short_circuit;
    wl::source_point one, other;
    wl::constant_voltage_output level;
    wl::constant_current_output constant;
};
std::vector<wl::source_point> source_line(const line_numbers& n, double place, wl::current amps)
{
    const wl::source_line line = [&n] {
        switch (n.shape % 6) {
        case 0: return wl::source_line::straight(n.no_load, n.short_circuit);
        case 1: return wl::source_line::straight_through(n.no_load, n.one);
        case 2: return wl::source_line::straight_through(n.one, n.other);
        case 3: return wl::source_line::reactive(n.no_load, n.short_circuit);
        case 4: return wl::source_line::constant_voltage(n.level);
        default: return wl::source_line::constant_current(n.constant);
        }
    }();
    return {line.at(place), line.at_current(amps)};
}
std::vector<double> numbers_of(const wl::waveform& w)
{
    return {w.rms().value(), w.mean().value(), w.mean_absolute().value(), w.peak().value()};
}
std::vector<double> sine(wl::current effective, wl::frequency f)
{
    return numbers_of(wl::waveform::sine(effective, f));
}
std::vector<double> dc(wl::current steady)
{
    return numbers_of(wl::waveform::dc(steady));
}
wl::waveform_resistance waveform_resistance_of(const std::vector<wl::current_piece>& pieces,
                                               wl::resistance_per_length dc)
{
    return wl::waveform_resistance_of(wl::waveform::of_pieces(pieces), dc);
}
std::optional<wl::duration> rise_time(wl::inductance l, wl::current from, wl::current to, double spare)
{
    return wl::rise_time(l, from, to, [spare](double) { return spare; });
}
std::optional<wl::duration> time_to_conductor(const wl::covered_conductor& conductor, const wl::cable_surface& surface,
                                              wl::current through, const wl::conductor_passage& passage)
{
    return wl::time_to_conductor(conductor, surface, through, passage);
}
wl::duration time_constant_of(const wl::covered_conductor& conductor, const wl::cable_surface& surface,
                              wl::temperature at)
{
    return wl::time_constant_of(conductor, surface, at);
}
wl::resistivity resistivity_at(const wl::metal& m, wl::temperature t)
{
    return m.resistivity_at(t);
}
std::string number_text(double x, unsigned char digits)
{
    return wl::number_text(x, digits % 18);
}
std::optional<wl::solve::fitted_line> fit_line(const std::vector<wl::solve::line_reading>& readings,
                                               unsigned char unknowns)
{
    return wl::solve::fit_line(readings, unknowns % 5U);
}
double bessel_j(double order, double x)
{
    return wl::solve::bessel_j(order, x);
}
double bessel_k(double order, double x)
{
    return wl::solve::bessel_k(order, x);
}

}  // namespace asked

namespace {

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
    FED(settling_pace),
    FED(settled_decades),
    FED(settling_rate),
    FED(usual_burn_off),
    FED_OF(melting_rate, wl::mass_rate (*)(wl::speed, wl::density, wl::length)),
    FED_OF(melting_rate, wl::mass_rate (*)(const wl::melting_regression&, wl::current)),
    FED(surface_loss),
    FED(surface_basis),
    FED(code_relaxation),
    FED(code_relaxation_covers),
    FED(reynolds_number),
    FED(copper_relaxation),
    FED(relaxation_of),
    FED(stress_relaxation),
    FED(bare_copper_of),
    FED(equal_heating_current),
    FED(breaks_through),
    FED(film_at_no_load),
    FED(free_air_coefficient),
    FED(ageing_trend_of),
    FED_BY(retightened),
    FED(drop_growth_of),
    FED(assumed_turns_of),
    FED_OF(lead_bundle_of, wl::lead_bundle (*)(wl::lay, wl::length, std::optional<int>, wl::thermal_conductivity)),
    FED(fit_force_law),
    FED(fit_relaxation),
    FED(product_of),
    FED(probability_smaller),
    FED(short_circuit_current),
    FED(short_circuit_area),
    FED(short_circuit_time),
    FED(short_circuit_temperature),
    FED(nonadiabatic_factor_of),
    FED(simplified_nonadiabatic_factor),
    FED(usual_spring_index),
    FED(endurance_time),
    FED(tensile_strength),
    FED(youngs_modulus),
    FED(shear_modulus),
    FED_BY(relaxation_state),
    FED_BY(code_relaxation_state),
    FED_BY(copper_relaxation_state),
    FED_BY(chosen_relaxation),
    FED_BY(relaxation_clock),
    FED_BY(heated_fin),
    FED_BY(source_line),
    FED_BY(sine),
    FED_BY(dc),
    FED_BY(waveform_resistance_of),
    FED_BY(rise_time),
    FED_BY(time_to_conductor),
    FED_BY(time_constant_of),
    FED_BY(resistivity_at),
    FED(kcmil),
    FED(square_mm),
    FED_BY(number_text),
    FED_BY(fit_line),
    FED_BY(bessel_j),
    FED_BY(bessel_k),
    FED(covering_age_at),
};
static_assert(entries.size() <= fuzz::most_entries);

}  // namespace

}  // namespace fuzz

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size)
{
    return fuzz::feed_one(fuzz::entries, data, size);
}
