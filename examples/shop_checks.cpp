// Checks made in a shop that need no whole station: terminations and connectors held against published limits, damaged
// strands, what cleaning does, supply conductors, and what an instrument's reading means.
#include <array>
#include <iostream>
#include <string_view>
#include <vector>

#include <weldloop/circuit/coupling_behaviour.hpp>
#include <weldloop/circuit/holder_behaviour.hpp>
#include <weldloop/circuit/lug_behaviour.hpp>
#include <weldloop/circuit/parallel_leads.hpp>
#include <weldloop/circuit/path_part.hpp>
#include <weldloop/circuit/rotary_ground_behaviour.hpp>
#include <weldloop/circuit/spatter_behaviour.hpp>
#include <weldloop/circuit/splice_behaviour.hpp>
#include <weldloop/circuit/stud_behaviour.hpp>
#include <weldloop/rating/lead/strap_sizing.hpp>
#include <weldloop/weldloop.hpp>

namespace wl = weldloop;
using namespace wl::literals;

namespace {

void say(std::string_view what, const wl::termination_acceptance& a)
{
    std::cout << "  " << what << ": " << (a.accepted ? "within" : "beyond") << " the published limit, "
              << wl::number_text(100.0 * a.used, 3) << " % of it"
              << (a.limit_recalled ? " (recalled: no proof that it passes)" : "") << '\n';
}
void ohms_of(std::string_view what, const wl::band<wl::conductance>& g)
{
    std::cout << "  " << what << ": typically " << wl::si_text(wl::resistance(1.0 / g.typical)) << '\n';
}

void terminations()
{
    std::cout << "terminations as tested\n";
    say("lug of 4 AWG pulled with 700 N",
        wl::pull_out_acceptance_of(wl::awg(4), 700_N, wl::pull_out_claim::commercial));
    std::cout << "  crimp of 2/0 AWG, 2 mV at 200 A: "
              << (wl::crimp_acceptance_of(wl::aught(2), 2_mV, 200_A).within_limit ? "within" : "beyond")
              << " the published limit\n";
    say("stud of 10 mm, 6 mV at 100 A", wl::stud_acceptance_of(10_mm, 6_mV, 100_A));
    say("2/0 AWG with 4 strands broken", wl::broken_strand_acceptance_of(wl::aught(2), 4));
    say("two like joints, 31 and 25 micro-ohm", wl::similar_joint_acceptance_of(31_uohm, 25_uohm));
    say("connector 38 K over the air", wl::connector_rise_acceptance_of(wl::in_si<wl::temperature_difference>(38.0),
                                                                        wl::connector_rise_limits.front()));
    say("clamping unit, 18 mV", wl::clamping_unit_acceptance_of(18_mV));
    say("bond of 2 milliohm", wl::bond_acceptance_of(2_mohm));
    say("connector on 70 mm2 pulled with 5 kN",
        wl::connector_pull_acceptance_of(70_mm2, wl::connected_metal::of_copper, 5_kN));
    say("crimp that held 650 N on a wire of 1 kN",
        wl::wire_share_acceptance_of(650_N, 1_kN, wl::wire_share_claim::crimp_without_table));
    const std::array readings{20_uohm, 20.5_uohm, 19.8_uohm};
    say("three readings under current cycles", wl::steady_connector_acceptance_of(readings));
}

void parts()
{
    std::cout << "\nwhole parts, cold\n";
    ohms_of("coupling for 2/0 AWG", wl::coupling_conductance_of(wl::coupling("", wl::aught(2))));
    ohms_of("holder, crimp and jaws", wl::holder_conductance_of(wl::electrode_holder("", 300_A)));
    const wl::lug lug = wl::crimped_lug("", wl::aught(2));
    ohms_of("lug for 2/0 AWG, crimp and palm", wl::lug_conductance_of(lug));
    ohms_of("splice of 70 mm2", wl::splice_conductance_of({}));
    ohms_of("stud with two lugs", wl::stud_conductance_of({}));
    const wl::joint_behaviour spatter = wl::spatter_behaviour_of(wl::annealed_copper, 300_N, 200_A, 40_degC);
    std::cout << "  jaws on spatter at 200 A: " << wl::to_text(spatter.drop.typical, "mV") << '\n';
    const wl::rotary_ground turntable{};
    std::cout << "  at 400 A without a break the brushes of a rotary ground carry "
              << (wl::brushes_overloaded(turntable, 400_A) ? "more than" : "what") << " their material should\n";
    const std::vector<wl::path_part> path{wl::welding_cable(wl::aught(2), 10_m).named("work lead"), lug};
    std::cout << "  the work lead stands at place " << wl::index_of(path, "work lead") + 1 << '\n';
}

void damage_and_cleaning()
{
    std::cout << "\ndamage and cleaning\n";
    wl::cable lead = wl::welding_cable(wl::aught(2), 10_m);
    lead.missing_strands = 0.1;
    lead.damaged_length = 5_cm;
    const wl::conductor_build build = wl::conductor_build_of(lead.size, wl::strand_class::rope_k);
    const wl::strand_report report = wl::strand_report_of(lead, wl::crimped_lug("", lead.size), build, {.nicked = 3});
    std::cout << "  a tenth of the strands missing adds " << wl::si_text(report.along_missing) << '\n'
              << "  whole strands of this make: "
              << wl::si_text(wl::conductor_resistance_of(lead.size, {wl::strand_class::rope_k}, 20_degC)) << '\n';
    const wl::basis from = wl::conductor_basis_of({wl::strand_class::rope_k});
    for (const wl::source* s : from.sources()) std::cout << "    by " << s->document << '\n';
    std::cout << "  light rust, wire brushed: "
              << wl::to_text(wl::surface_after(wl::surface_state::light_rust, wl::surface_treatment::wire_brushed))
              << '\n'
              << "  30 mm of bare copper at a set screw: "
              << (wl::bare_copper_of(lead.size, 30_mm, wl::annealed_copper, 60_degC).too_long ? "cover it"
                                                                                              : "short enough")
              << '\n';
}

void supply_and_readings()
{
    std::cout << "\nsupply and readings\n";
    std::cout << "  primary of 40 A at 60 % duty counts as "
              << wl::to_text(wl::supply_current_of(wl::supplied_welder::arc_welder, 40_A, 0.6).amps, "A") << '\n';
    const std::array each{31_A, 31_A, 24_A};
    std::cout << "  three such on one feeder: "
              << wl::to_text(wl::group_supply_current(wl::welder_group::arc_welders, each), "A") << '\n';
    const wl::measured<wl::temperature> copper =
        wl::surface_temperature_of({.shown = {70_degC, wl::in_si<wl::temperature_difference>(2.0)}, .set = 0.95});
    std::cout << "  a covering that shows 70 degC at a set 0.95 is at " << wl::to_text(copper.value, "degC") << '\n';
    std::cout << "  a handle at 58 degC held for 10 s: "
              << (wl::may_burn(58_degC, 10_s, wl::touched_surface::plastic) ? "may burn"
                                                                            : "below the published threshold")
              << '\n';
    const wl::cable lead = wl::welding_cable(wl::aught(2), 10_m);
    std::cout << "  2/0 AWG cools from 85 to 40 degC in "
              << wl::to_text(wl::cool_down_time(lead, {}, 85_degC, 40_degC), "min") << '\n';
}

void leads_and_their_readings()
{
    std::cout << "\nleads\n";
    const wl::cable lead = wl::welding_cable(wl::aught(2), 10_m);
    for (const wl::size_candidate& c : wl::identify_size({.strands = 2107, .strand_diameter = 0.25_mm}))
        std::cout << "  2107 strands of 0.25 mm are " << wl::to_text(c.size) << '\n';
    std::cout << "  for 400 A at 30 degC its duty may be "
              << wl::to_text(wl::largest_duty(lead, {.air = 30_degC}, 400_A).duty.share())
              << "; 200 A without a break it carries in air up to "
              << wl::to_text(wl::highest_air(lead, {.current = 200_A}, {}).air, "degC") << "; for a second it stands "
              << wl::to_text(wl::short_time_rating_of(lead, 1_s).amps, "kA") << '\n';
    const wl::lead_request out{.length = 20_m, .current = 250_A, .duty = wl::duty_cycle::of(6_min, 10_min)};
    std::cout << "  one lead for 250 A at 60 %, 20 m: " << wl::to_text(wl::smallest_lead(out).cable.size)
              << "; out and back with least copper within 4 V: "
              << wl::to_text(wl::smallest_leads(out, out, 4_V).electrode.cable.size) << " and "
              << wl::to_text(wl::smallest_leads(out, out, 4_V).work.cable.size) << '\n'
              << "  a strap of 300 mm for 300 A: "
              << wl::to_text(wl::smallest_strap({.like = {.length = 300_mm}, .work = {.current = 300_A}}).strap.section,
                             "mm2")
              << '\n';
    const std::array both{wl::parallel_lead{lead, 50_uohm},
                          wl::parallel_lead{wl::welding_cable(wl::awg(1), 10_m), 50_uohm}};
    std::cout << "  beside one of 1 AWG it takes "
              << wl::to_text(wl::sharing_of(both, {}, {.current = 400_A}).leads.front().share) << " of 400 A\n";
    const wl::temperature_difference kelvin = wl::in_si<wl::temperature_difference>(1.0);
    const wl::resistance_reading cold{{2.71_mohm, 10_uohm}, {20_degC, kelvin}};
    std::cout << "  2.71 milliohm cold and 3.10 warm: it is at "
              << wl::to_text(wl::mean_temperature_of(lead.metal, cold, {3.10_mohm, 10_uohm}).value, "degC")
              << "; with 2.80 cold at most "
              << wl::number_text(
                     100.0 * wl::missing_copper_of(lead, {{2.80_mohm, 10_uohm}, {20_degC, kelvin}}, 1_m).most, 2)
              << " % of a metre is missing\n";
    const wl::lead_from_surface seen = wl::conductor_from_surface(lead, {.air = 25_degC}, {55_degC, kelvin});
    std::cout << "  a covering at 55 degC means a conductor at " << wl::to_text(seen.conductor.value, "degC") << " and "
              << wl::to_text(seen.effective.value, "A") << " effective\n";
}

}  // namespace

int main()
{
    terminations();
    parts();
    damage_and_cleaning();
    supply_and_readings();
    leads_and_their_readings();
}
