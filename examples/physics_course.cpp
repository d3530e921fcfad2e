// The laws one by one, as a course would ask for them: a figure a line, all from dimensions and handbook constants.
#include <array>
#include <iostream>
#include <string_view>

#include <weldloop/weldloop.hpp>

namespace wl = weldloop;
using namespace wl::literals;

namespace {

void heading(std::string_view words)
{
    std::cout << '\n' << words << '\n';
}
void say(std::string_view what, double value)
{
    std::cout << "  " << what << ": " << wl::number_text(value, 4) << '\n';
}
void say(std::string_view what, wl::temperature value)
{
    std::cout << "  " << what << ": " << wl::to_text(value, "degC") << '\n';
}
template <class Unit>
void say(std::string_view what, const boost::units::quantity<Unit, double>& value)
{
    std::cout << "  " << what << ": " << wl::si_text(value) << '\n';
}
template <class Q>
void say(std::string_view what, const wl::band<Q>& value)
{
    say(what, value.typical);
}

void spots_and_films()
{
    const wl::metal& copper = wl::annealed_copper;
    const wl::metal_pair pair{copper, copper};
    heading("Contact: spots, films, their temperature");
    const wl::summit_bearing summit = wl::summit_bearing_of(1_N, 5_mm, pair);
    say("radius of a summit's spot under 1 N", summit.radius);
    say("spread of a cluster of spots in a disc of 5 mm", wl::cluster_radius(5_mm));
    say("ten spots of 0.05 mm in it",
        wl::clustered_constriction_resistance(copper.resistivity, 10, 0.05_mm, wl::cluster_radius(5_mm)));
    say("a spot of 1 mm on a sheet of 3 mm, to 100 mm", wl::sheet_resistance(copper.resistivity, 1_mm, 3_mm, 100_mm));
    say("the same on the end of a bar of 10 mm radius", wl::bar_end_resistance(copper.resistivity, 1_mm, 10_mm));
    say("force law's constant without films, copper on mild steel", wl::film_free_constant(copper, wl::mild_steel));
    const wl::contact rod{.metals = {copper, wl::mild_steel}, .force = 300_N};
    say("force for 50 micro-ohm there", wl::force_for_resistance(rod, 50_uohm));
    say("force for 20 mV at 200 A", wl::force_for_drop(rod, 200_A, 20_mV, 40_degC));
    say("its hottest spot at 200 A", wl::hottest_spot_of(rod, 200_A, 40_degC));
    const wl::conductance warm = wl::conductance_at(1.0 / 100_uohm, pair, 60_degC);
    say("100 micro-ohm of spots at 60 degC", wl::resistance(1.0 / warm));
    say("their drop at 300 A", wl::joint_drop(300_A, warm, wl::joint_limits_of(pair, 60_degC)));
    say("drop at which a spot stands at 190 degC", wl::drop_for_spot_temperature(190_degC, 40_degC));
    say("hottest point between sides at 40 and 90 degC, 50 mV", wl::hottest_point_of(50_mV, 40_degC, 90_degC).hottest);
    say("the same where half of the drop lies in a film", wl::filmed_spot_temperature(50_mV, 25_mV, 40_degC));
    say("at the interface of copper and steel",
        wl::interface_temperature(50_mV, {copper, wl::mild_steel}, 40_degC, 90_degC));
    say("heat into the first side", wl::heat_into_sides(50_mV, 1.0 / 100_uohm, 40_degC, 90_degC).first);
    say("heat across a joint of 100 micro-ohm, 1 cm2 of air gap",
        wl::joint_heat_conductance(1.0 / 100_uohm,
                                   {.filling = wl::in_si<wl::thermal_conductivity>(0.026), .faces = 1_cm2}, 60_degC));
    say("resistance of a film of 10 nm and 1 Mohm m over 1 mm2",
        wl::film_resistance(wl::film_resistivity_of(wl::in_si<wl::resistivity>(1e6), 10_nm), 1_mm2));
    const bool holds = wl::film_at_no_load(60_V, 10_nm, wl::exactly(wl::in_si<wl::electric_field>(1e8))) ==
                       wl::film_under_voltage::stands;
    std::cout << "  60 V on a film of 10 nm that stands 1e8 V/m: it " << (holds ? "holds" : "may break through")
              << '\n';
    say("square growth of copper oxide at 150 degC, 100 nm [m2/s]",
        wl::copper_oxide_square_growth(100_nm, 150_degC).value());
    say("probability that light rust has less resistance than mill scale",
        static_cast<double>(wl::probability_better(wl::surface_state::light_rust, wl::surface_state::mill_scale)));
    const wl::film_resistivity face = wl::interface_resistivity(100.0, 10_MPa);
    const wl::lap_bar bar{copper.resistivity, 10_mm};
    say("two bars of 10 mm that overlap by 60 mm, 50 mm wide",
        wl::lap_joint_resistance(bar, bar, {50_mm, 60_mm, face}));
}

void heat_and_short_time()
{
    heading("Heat: convection, coverings, short circuits");
    say("Nusselt number of a cylinder at Ra 1e4, laminar", wl::nusselt_horizontal_cylinder_laminar(1e4, 0.71));
    say("the same by Morgan's table", wl::nusselt_horizontal_cylinder_morgan(1e4));
    say("share of a covering's heat that goes with the conductor, 12 in 18 mm", wl::van_wormer_share(12_mm, 18_mm));
    const wl::cable_surface lead{.diameter = 17_mm, .sun = wl::in_si<wl::heat_flux>(800.0)};
    say("sun on a lead of 17 mm", wl::absorbed_sun(lead));
    say("what it loses at 60 degC", wl::surface_loss(lead, 60_degC));
    say("resistivity of copper at 200 degC, by table",
        wl::tabulated_resistivity_of(wl::annealed_copper, 200_degC).resistivity);
    say("current that heats 50 mm2 from 30 to 200 degC in 1 s",
        wl::adiabatic_current(wl::annealed_copper, 50_mm2, 1_s, {30_degC, 200_degC}));
    say("10 kA for 0.5 s, from 30 degC",
        wl::adiabatic_temperature(wl::annealed_copper, 50_mm2, {10_kA, 0.5_s}, 30_degC));
    const wl::nonadiabatic_factor e =
        wl::nonadiabatic_factor_of({wl::annealed_copper, 50_mm2, wl::flexible_rubber}, 1_s);
    say("what its covering adds", e.factor);
    say("the same by the simplified constants",
        wl::simplified_nonadiabatic_factor(wl::copper_in_xlpe, 50_mm2, 1_s).factor);
    say("least section for 10 kA and 1 s, 30 to 200 degC",
        wl::short_circuit_area(wl::iec_copper, {10_kA, 1_s}, {30_degC, 200_degC}, e.factor));
    say("50 mm2 after 5 kA for 1 s", wl::short_circuit_temperature({wl::iec_copper, 50_mm2}, {5_kA, 1_s}, 30_degC));
    say("a wire of 1 mm melts in air at", wl::steady_fusing_current(1_mm));
    const std::array programme{wl::heating_segment{300_A, 3_min}, wl::heating_segment{0_A, 2_min}};
    const wl::cable welding = wl::welding_cable(wl::aught(2), 10_m);
    const wl::covered_conductor metre =
        wl::covered_conductor_of({welding.metal, welding.size.area(), welding.stranding_increment},
                                 {welding.covering, welding.conductor_diameter, welding.overall_diameter});
    for (const wl::temperature t : wl::conductor_trace_of(metre, {.diameter = welding.overall_diameter}, programme, 6))
        say("  2/0 AWG over a period of 5 min, 300 A for 3", t);
}

void alternating_current()
{
    heading("Alternating and changing current");
    const wl::resistance_per_length dc = wl::in_si<wl::resistance_per_length>(0.2e-3);
    say("skin depth of copper at 60 Hz", wl::skin_depth(wl::annealed_copper.resistivity, 60_Hz));
    say("R of 0.2 ohm/km at 400 Hz over that of direct current", wl::skin_effect_of(dc, 400_Hz).resistance_ratio);
    say("the same by IEC 60287", 1.0 + wl::iec_skin_factor_at(wl::iec_skin_argument(dc, 400_Hz)).increase);
    say("loop of 10 m by 1 m of wire of 6 mm radius", wl::loop_inductance(10_m, 1_m, 6_mm));
    say("volts for 300 A in 1 ms through 20 uH", wl::ramp_voltage(wl::in_si<wl::inductance>(20e-6), 300_A, 1_ms));
    const wl::cable lead = wl::welding_cable(wl::aught(2), 15_m);
    say("two leads of 15 m, 1 m apart", wl::inductance_of(lead, lead, {.spacing = 1_m}).total);
}

void springs_and_screws()
{
    heading("Springs, screws and what time takes");
    say("bending stress at the outside of a coil of index 6, over the plain", wl::outer_bending_factor(6.0));
    std::cout << "  index 6 is " << (wl::usual_spring_index(6.0) ? "usual" : "unusual") << '\n';
    say("coil of 20 mm and 4.5 turns, wound up by a quarter turn", wl::wound_coil_diameter(20_mm, 4.5, 0.25));
    say("its body then, wire of 3 mm", wl::wound_body_length(3_mm, 4.5, 0.25));
    say("rate 5 N/mm, 60 mm free, 30 mm solid, pressed to 45 mm",
        wl::compression_force(5_N / 1_mm, 60_mm, 30_mm, 45_mm));
    say("stress lost by music wire in 1000 h at 120 degC, half of strength",
        static_cast<double>(wl::relaxation_of(wl::music_wire, 0.5, 120_degC, 1000_h).lost));
    say("the same in the hour after it was made, at 80 degC",
        static_cast<double>(wl::stress_relaxation(wl::music_wire, 0.5, 80_degC, 1_h)));
    say("by phosphor bronze in 1000 h at 90 degC",
        static_cast<double>(wl::copper_relaxation(wl::phosphor_bronze_spring, 90_degC, 1000_h).lost));
    say("force of a warm steel spring at 150 degC over the cold", wl::hot_force_ratio(150_degC));
    const wl::screw_thread screw{.diameter = 16_mm, .pitch = 4_mm};
    say("mean diameter of a clamp's screw of 16 mm", wl::mean_diameter_of(screw));
    say("torque to press with 3 kN", wl::screw_torque(3_kN, screw));
    say("torque to let go", wl::lowering_torque(3_kN, screw));
    say("its efficiency", static_cast<double>(wl::screw_efficiency(screw)));
    std::cout << "  it " << (wl::holds_itself(screw) ? "holds" : "does not hold") << " by itself\n";
    say("stress area of M10", wl::metric_stress_area(10_mm, 1.5_mm));
    say("stress area of 3/8-16", wl::inch_stress_area(0.375_in, 1_in / 16.0));
    const wl::clamp_spring spring = *wl::spring_clamp(300_A).spring;
    say("a 300 A spring clamp opened to 20 mm presses with", wl::clamp_force_at(spring, 20_mm));
    say("it may be opened to", wl::clamp_travel_of(spring).widest);
    const wl::ageing_trend aged = wl::ageing_trend_of(
        0.1_mm, 0.7,
        {.time = 20000_h, .usual = 90_degC, .cycles = 5000, .swing = wl::in_si<wl::temperature_difference>(40.0)});
    say("resistance of a joint after 20000 h at 90 degC and 5000 cycles, over the new", aged.resistance_ratio);
    say("after it is tightened again", wl::retightened(aged, 0.7).resistance_ratio);
    std::cout << "  a drop that grew from 10 to 14 mV is "
              << (wl::drop_growth_of(10_mV, 14_mV) == wl::drop_growth::steady ? "steady" : "to be watched") << '\n';
    const std::array course{wl::heated_time{90_degC, 8000_h}, wl::heated_time{60_degC, 12000_h}};
    say("one temperature that ages as 8000 h at 90 and 12000 h at 60 degC",
        wl::equivalent_temperature({105_degC, wl::in_si<wl::temperature_difference>(10.0)}, course));
}

void the_work()
{
    heading("The work beside the weld");
    const wl::heat_per_weld_length heat = wl::in_si<wl::heat_per_weld_length>(1e6);
    say("steel of 10 mm from 800 to 500 degC, 1 kJ/mm", wl::steel_cooling_time(heat, 10_mm, 20_degC));
    say("thick plate", wl::thick_plate_cooling_time(heat, wl::mild_steel.thermal_conductivity, 20_degC));
    const wl::volumetric_heat stored = wl::mild_steel.heat_per_volume();
    const wl::welded_plate thick{.heat = heat, .stored = stored, .thickness = 50_mm, .start = 20_degC},
        thin{.heat = 0.3 * heat, .stored = stored, .thickness = 3_mm, .start = 20_degC};
    say("hottest 10 mm from the weld in 50 mm, over the start", wl::thick_plate_peak_rise(thick, 10_mm));
    say("30 mm from a weld of 0.3 kJ/mm in 3 mm", wl::thin_plate_peak_rise(thin, 30_mm));
    say("30 mm beyond its fusion line", wl::thin_plate_peak_beyond_fusion(thin, 30_mm));
}

}  // namespace

int main()
{
    spots_and_films();
    heat_and_short_time();
    alternating_current();
    springs_and_screws();
    the_work();
}
