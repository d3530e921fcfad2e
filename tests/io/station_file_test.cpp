// Reading stations from files that are as they should be.
#include <algorithm>
#include <array>
#include <type_traits>
#include <variant>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "io/example_stations.hpp"
#include "support/near.hpp"

#include <weldloop/core/literals.hpp>
#include <weldloop/io/station/station_file.hpp>
#include <weldloop/part/conductor_limit.hpp>
#include <weldloop/part/sold_clamp.hpp>

using namespace weldloop;
using namespace weldloop::literals;
using weldloop::test::small_station;
using weldloop::test::with;

namespace {

station read(std::string_view text)
{
    return station_from_toml(text, "test.toml");
}

/// The small station with one more part before the arc.
template <class T>
T part_of(const std::string& table)
{
    // each tool with its process
    const std::string process = std::is_same_v<T, electrode_holder> ? "smaw"
                                : std::is_same_v<T, tig_torch>      ? "gtaw"
                                                                    : "gmaw";
    return std::get<T>(
        read(with(with(small_station, "[[path]]\npart = \"arc\"", "[[path]]\n" + table + "\n[[path]]\npart = \"arc\""),
                  "gmaw", process))
            .path.at(1));
}

/// The small station with more keys of its clamp.
work_connection clamp_of(std::string_view keys)
{
    return std::get<work_connection>(
        read(with(small_station, "clamp = \"spring clamp\"\nrated = \"300 A\"", keys)).path.at(2));
}

}  // namespace

TEST(StationFile, ReadsTheSmallStation)
{
    const station s = read(small_station);
    EXPECT_EQ(s.name, "Bench");
    EXPECT_EQ(s.job.process, process::gmaw);
    EXPECT_EQ(s.job.current, 240_A);
    EXPECT_EQ(to_text(s.job.duty), "60 % of 10 min");
    EXPECT_NEAR_REL(s.where.air.in_celsius(), 32.0, 1e-12);
    EXPECT_FALSE(s.supply);
    EXPECT_FALSE(s.allowed_drop);
    ASSERT_EQ(s.path.size(), 3U);
    EXPECT_EQ(std::get<cable>(s.path[0]).size, aught(2));
    EXPECT_NEAR_REL(std::get<cable>(s.path[0]).length.value(), 15.24, 1e-12);
    const auto& clamp = std::get<work_connection>(s.path[2]);
    EXPECT_EQ(clamp.clamp.rated_current, 300_A);
    EXPECT_EQ(clamp.onto, mild_steel);
}

TEST(StationFile, ReadsTheExamples)
{
    const station shop = read_station(test::example_file("gate_shop.toml"));
    EXPECT_EQ(shop.path.size(), 10U);
    const station stand = read_station(test::example_file("trailer_frame.toml"));
    EXPECT_EQ(stand.path.size(), 8U);
}

TEST(StationFile, TakesEveryKeyOfTheSurroundingsAndTheJob)
{
    std::string text = with(
        small_station, "air = \"32 degC\"",
        "air = \"95 degF\"\nwind = \"0.5 m/s\"\nlay = \"touching pair\"\naltitude = \"300 m\"\nsun = \"800 W/m2\"");
    text = with(text, "duty = \"60 %\"", "on = \"3 min\"\nperiod = \"5 min\"");
    text = with(text, "name = \"Bench\"", "name = \"Bench\"\nallowed_drop = \"4 V\"");
    const station s = read(text);
    EXPECT_NEAR_REL(s.where.air.in_celsius(), 35.0, 1e-12);
    EXPECT_NEAR_REL(s.where.wind.value(), 0.5, 1e-12);
    EXPECT_EQ(s.where.lay, lay::touching_pair);
    EXPECT_EQ(s.where.altitude, 300_m);
    EXPECT_NEAR_REL(s.where.sun.value(), 800.0, 1e-12);
    EXPECT_EQ(s.job.duty, duty_cycle::of(3_min, 5_min));
    EXPECT_EQ(s.allowed_drop, 4_V);
}

TEST(StationFile, TakesHowManyLieTogether)
{
    const auto where = [](std::string_view keys) { return read(with(small_station, "air = \"32 degC\"", keys)).where; };
    EXPECT_EQ(where("lay = \"coiled\"\ncoil_turns = 8").coil_turns, 8);
    EXPECT_EQ(where("lay = \"bundled\"\nbundled_leads = 3").bundled_leads, 3);
    EXPECT_FALSE(where("lay = \"bundled\"").bundled_leads);
    EXPECT_EQ(where("lay = \"spaced vertical\"").lay, lay::spaced_vertical);
    const auto c = part_of<cable>("part = \"cable\"\nsize = \"70 mm2\"\nlength = \"20 m\"\nlay = \"bundled\"\n"
                                  "bundled_leads = 4");
    EXPECT_EQ(c.lay, lay::bundled);
    EXPECT_EQ(c.bundled_leads, 4);
}

TEST(StationFile, TakesDutyInItsFourForms)
{
    const auto duty = [](std::string_view keys) {
        return read(with(small_station, "duty = \"60 %\"\n", keys)).job.duty;
    };
    EXPECT_TRUE(duty("").is_continuous());
    EXPECT_TRUE(duty("duty = \"continuous\"\n").is_continuous());
    EXPECT_EQ(duty("duty = \"35 %\"\n").period(), 10_min);
    EXPECT_EQ(duty("duty = \"40 %\"\nperiod = \"5 min\"\n"), duty_cycle::of(2_min, 5_min));
}

TEST(StationFile, TakesBothSupplies)
{
    const auto with_supply = [](std::string_view keys) {
        return *read(std::string(small_station) + "[supply]\n" + std::string(keys)).supply;
    };
    const supply voltage = with_supply("kind = \"constant voltage\"\nsetting = \"26 V\"\n");
    EXPECT_EQ(voltage.kind, supply_kind::constant_voltage);
    EXPECT_EQ(voltage.setting, 26_V);
    const supply current = with_supply("kind = \"constant current\"\nhighest_output = \"44 V\"\n");
    EXPECT_EQ(current.kind, supply_kind::constant_current);
    EXPECT_EQ(current.highest_output, 44_V);
}

TEST(StationFile, TakesSuppliesByTheirLine)
{
    const auto with_supply = [](std::string_view keys) {
        return *read(std::string(small_station) + "[supply]\n" + std::string(keys)).supply;
    };
    const supply drooping = with_supply("kind = \"drooping\"\nno_load_effective = \"72 V\"\nno_load = \"100 V\"\n"
                                        "short_circuit = \"260 A\"\nshape = \"by reactance\"\nhazard = \"increased\"\n"
                                        "polarity = \"electrode negative\"\n");
    EXPECT_EQ(drooping.kind, supply_kind::drooping);
    EXPECT_EQ(drooping.shape, droop_shape::by_reactance);
    EXPECT_EQ(*drooping.short_circuit, 260_A);
    EXPECT_EQ(*drooping.no_load.peak, 100_V);
    EXPECT_EQ(*drooping.no_load.rms, 72_V);
    EXPECT_EQ(drooping.no_load.kind, output_current::alternating);
    EXPECT_EQ(drooping.hazard, shock_hazard::increased);
    EXPECT_EQ(drooping.polarity, electrode_polarity::negative);
    const supply engine =
        with_supply("kind = \"engine driven\"\nno_load = \"95 V\"\nsetting = \"26 V\"\ncurrent = \"150 A\"\n");
    EXPECT_EQ(engine.kind, supply_kind::engine_driven);
    EXPECT_EQ(engine.current_setting, 150_A);
    const supply read_off = with_supply("kind = \"measured\"\n[[supply.point]]\ncurrent = \"0 A\"\nvoltage = \"70 V\"\n"
                                        "[[supply.point]]\ncurrent = \"190 A\"\nvoltage = \"12 V\"\n");
    ASSERT_EQ(read_off.points.size(), 2U);
    EXPECT_EQ(read_off.points[1].current, 190_A);
    EXPECT_EQ(read_off.points[1].voltage, 12_V);
    const supply flat =
        with_supply("kind = \"constant voltage\"\nsetting = \"27 V\"\nfall = \"20 mohm\"\nlimit = \"400 A\"\n"
                    "feeding = \"by arc voltage\"\nsense_work_side = \"work clamp 3\"\nhighest_output = \"38 V\"\n");
    EXPECT_EQ(flat.fall, 20_mohm);
    EXPECT_EQ(*flat.limit, 400_A);
    EXPECT_EQ(flat.feeding, wire_feeding::by_arc_voltage);
    EXPECT_EQ(flat.sensing->work_side, "work clamp 3");
    EXPECT_EQ(flat.highest_output, 38_V);
    const supply steep = with_supply("kind = \"constant current\"\nhighest_output = \"44 V\"\nrise = \"2 S\"\n"
                                     "no_load = \"65 V\"\nno_load_current = \"alternating\"\n");
    EXPECT_EQ(steep.rise, in_si<conductance>(2.0));
    EXPECT_EQ(steep.no_load.kind, output_current::alternating);
}

TEST(StationFile, TakesWhatIsKnownOfTheArc)
{
    const auto arc_with = [](std::string_view keys) {
        return std::get<arc>(read(std::string(small_station) + "[arc]\n" + std::string(keys)).path.at(1));
    };
    const arc all =
        arc_with("length = \"4 mm\"\nat_no_length = \"16 V\"\nvolts_per_mm = \"0.7 V\"\nvolts_per_100A = \"2 V\"\n"
                 "wire_feed = \"0.12 m/s\"\n");
    EXPECT_EQ(*all.length, 4_mm);
    EXPECT_EQ(all.line->at_no_length, 16_V);
    EXPECT_NEAR_REL(all.line->by_length.value(), 700.0, 1e-12);
    EXPECT_NEAR_REL(all.line->by_current.value(), 0.02, 1e-12);
    EXPECT_EQ(*all.wire_feed, in_si<speed>(0.12));
    EXPECT_FALSE(arc_with("length = \"4 mm\"\n").line);
    const arc side = arc_with("to_return = \"1.2 m\"\nreturn_side = \"one end\"\n");
    EXPECT_EQ(*side.to_return, 1.2_m);
    EXPECT_EQ(side.returns_at, return_side::one_end);
    EXPECT_EQ(all.returns_at, return_side::not_stated);
    EXPECT_THROW(static_cast<void>(arc_with("volts_per_mm = \"0.7 V\"\n")), station_file_error);
    EXPECT_THROW(static_cast<void>(arc_with("length = \"0 mm\"\n")), station_file_error);
}

TEST(StationFile, TakesAYearOfWork)
{
    const auto with_year = [](std::string_view keys) {
        return read(std::string(small_station) + "[year]\n" + std::string(keys)).year;
    };
    EXPECT_FALSE(read(small_station).year);
    const year_of_work all = *with_year("arc_time = \"600 h\"\ntariff = 0.3\nhour_cost = 48\n");
    EXPECT_EQ(all.arc_time, 600_h);
    EXPECT_EQ(*all.tariff, 0.3);
    EXPECT_EQ(*all.hour_cost, 48.0);
    EXPECT_FALSE(with_year("arc_time = \"600 h\"\n")->tariff);
    EXPECT_THROW(static_cast<void>(with_year("tariff = 0.3\n")), station_file_error);
    EXPECT_THROW(static_cast<void>(with_year("arc_time = \"9000 h\"\n")), station_file_error);
    EXPECT_THROW(static_cast<void>(with_year("arc_time = \"600 h\"\ntariff = -0.1\n")), station_file_error);
}

// Alternating current is held against the limits of alternating current without saying so twice.
TEST(StationFile, AlternatingPolarityHasAnAlternatingNoLoadVoltage)
{
    const auto with_supply = [](std::string_view keys) {
        return *read(std::string(small_station) + "[supply]\n" + std::string(keys)).supply;
    };
    const std::string kept = "kind = \"constant current\"\nhighest_output = \"44 V\"\nno_load = \"100 V\"\n"
                             "polarity = \"alternating\"\n";
    EXPECT_EQ(with_supply(kept).no_load.kind, output_current::alternating);
    EXPECT_EQ(with_supply(kept + "no_load_current = \"direct\"\n").no_load.kind, output_current::direct);
    const std::string falls = "kind = \"drooping\"\nshort_circuit = \"260 A\"\nno_load = \"100 V\"\n"
                              "polarity = \"alternating\"\n";
    EXPECT_THROW(static_cast<void>(with_supply(falls)), station_file_error);
    EXPECT_EQ(*with_supply(falls + "no_load_effective = \"72 V\"\n").no_load.rms, 72_V);
}

TEST(StationFile, RefusesWhatASupplyCannotBe)
{
    const auto refusal = [](std::string_view keys) {
        try {
            static_cast<void>(read(std::string(small_station) + "[supply]\n" + std::string(keys)));
        } catch (const station_file_error& e) {
            return std::string(e.what());
        }
        return std::string("none");
    };
    using ::testing::HasSubstr;
    EXPECT_THAT(refusal("kind = \"drooping\"\nshort_circuit = \"260 A\"\n"), HasSubstr("no_load"));
    EXPECT_THAT(refusal("kind = \"drooping\"\nno_load = \"80 V\"\n"), HasSubstr("short_circuit"));
    EXPECT_THAT(refusal("kind = \"drooping\"\nno_load = \"80 V\"\nshort_circuit = \"260 A\"\nsetting = \"26 V\"\n"),
                HasSubstr("not \"setting\""));
    EXPECT_THAT(refusal("kind = \"constant voltage\"\nsetting = \"27 V\"\nhighest_output = \"40 V\"\n"),
                HasSubstr("takes \"setting\", not \"highest_output\""));
    EXPECT_THAT(refusal("kind = \"constant voltage\"\nsetting = \"27 V\"\nsense_work_side = \"no such part\"\n"),
                HasSubstr("no such part"));
    EXPECT_THAT(refusal("kind = \"constant current\"\nhighest_output = \"44 V\"\nno_load = \"40 V\"\n"),
                HasSubstr("at least the highest output"));
    EXPECT_THAT(refusal("kind = \"measured\"\n[[supply.point]]\ncurrent = \"0 A\"\nvoltage = \"70 V\"\n"),
                HasSubstr("two or more"));
}

TEST(StationFile, TakesEveryKeyOfACable)
{
    const auto c = part_of<cable>("part = \"cable\"\nname = \"spare\"\nsize = \"70 mm2\"\nlength = \"20 m\"\nlimit = "
                                  "\"90 degC\"\nmetal = \"tinned copper\"\n"
                                  "covering = \"polychloroprene\"\nconductor_diameter = \"13 mm\"\noverall_diameter = "
                                  "\"19 mm\"\nmissing_strands = \"12 %\"\n"
                                  "damaged_length = \"100 mm\"\ncovering_state = \"crushed\"\nlay = \"coiled\"\n"
                                  "coil_turns = 8\nresistance = \"nominal\"");
    EXPECT_EQ(c.covering_state, covering_state::crushed);
    EXPECT_EQ(c.made.resistance, resistance_choice::nominal);
    EXPECT_EQ(c.stranding_increment,
              welding_cable(square_mm(70), 20_m, resistance_choice::nominal).stranding_increment);
    EXPECT_EQ(c.name, "spare");
    EXPECT_EQ(c.lay, lay::coiled);
    EXPECT_EQ(c.coil_turns, 8);
    EXPECT_EQ(c.size, square_mm(70));
    EXPECT_EQ(c.limit, temperature::celsius(90));
    EXPECT_EQ(c.metal, tinned_copper);
    EXPECT_EQ(c.covering.name, polychloroprene.name);
    EXPECT_EQ(c.conductor_diameter, 13_mm);
    EXPECT_EQ(c.overall_diameter, 19_mm);
    EXPECT_NEAR_REL(static_cast<double>(c.missing_strands), 0.12, 1e-12);
    EXPECT_EQ(c.damaged_length, 100_mm);
    EXPECT_FALSE(c.dimensions_interpolated || c.dimensions_extrapolated);
}

// A lead without a limit of its own has that of its covering.
TEST(StationFile, ALeadHasTheLimitOfItsCovering)
{
    const auto c = part_of<cable>("part = \"cable\"\nsize = \"70 mm2\"\nlength = \"20 m\"\ncovering = \"pvc\"");
    EXPECT_FALSE(c.limit);
    EXPECT_EQ(limit_of(c), 70_degC);
    EXPECT_EQ(c.covering_state, covering_state::whole);
    EXPECT_EQ(c.made.resistance, resistance_choice::standard_maximum);
}

TEST(StationFile, TakesEveryStateOfACoveringOfEveryLead)
{
    for (const covering_state state : all_covering_states) {
        const std::string key = "\ncovering_state = \"" + std::string(to_text(state)) + "\"";
        EXPECT_EQ(part_of<cable>("part = \"cable\"\nsize = \"70 mm2\"\nlength = \"20 m\"" + key).covering_state, state);
        EXPECT_EQ(part_of<wire_gun>("part = \"gun\"\nlength = \"3 m\"" + key).lead.covering_state, state);
        EXPECT_EQ(part_of<tig_torch>("part = \"tig torch\"\nlength = \"4 m\"" + key).lead.covering_state, state);
    }
    try {
        (void)part_of<cable>("part = \"cable\"\nsize = \"70 mm2\"\nlength = \"20 m\"\ncovering_state = \"burned\"");
        FAIL() << "read";
    } catch (const station_file_error& e) {
        EXPECT_EQ(e.nearest(), "burnt");
        EXPECT_EQ(e.column(), 18U);
        EXPECT_GT(e.line(), 1U);
    }
}

TEST(StationFile, TakesEveryKeyOfALug)
{
    const auto l = part_of<lug>("part = \"lug\"\nname = \"a\"\nsize = \"2 AWG\"\nstamped = \"1/0 "
                                "AWG\"\nmissing_strands = \"20 %\"\nbolt_diameter = \"12 mm\"\n"
                                "bolt_torque = \"15 Nm\"\npalm = \"oxidized\"");
    EXPECT_EQ(l.size, awg(2));
    EXPECT_EQ(l.stamped, aught(1));
    EXPECT_EQ(l.bolt_diameter, 12_mm);
    EXPECT_EQ(l.bolt_torque, 15_Nm);
    EXPECT_EQ(l.palm, surface_state::oxidized);
    // a bolt of another size takes the torque usual for it
    EXPECT_EQ(part_of<lug>("part = \"lug\"\nsize = \"2 AWG\"\nbolt_diameter = \"12 mm\"").bolt_torque,
              electrical_bolt_torque(12_mm));
}

TEST(StationFile, TakesEveryKeyOfACouplingAndAHolder)
{
    const auto c = part_of<coupling>(
        "part = \"coupling\"\nname = \"a\"\nsize = \"70 mm2\"\nforce = \"50 N\"\nsurface = \"greasy\"");
    EXPECT_EQ(c.size, square_mm(70));
    EXPECT_EQ(c.force, 50_N);
    EXPECT_EQ(c.surface, surface_state::greasy);
    const auto h = part_of<electrode_holder>("part = \"holder\"\nname = \"a\"\nrated = \"400 A\"\nsize = \"50 "
                                             "mm2\"\njaws = \"bronze\"\nrod = \"stainless steel\"\n"
                                             "force = \"90 N\"\nsurface = \"spatter-covered\"");
    EXPECT_EQ(h.rated, 400_A);
    EXPECT_EQ(h.size, square_mm(50));
    EXPECT_EQ(h.jaws, bronze);
    EXPECT_EQ(h.rod, stainless_steel);
    EXPECT_EQ(h.force, 90_N);
    EXPECT_EQ(h.surface, surface_state::spatter_covered);
}

TEST(StationFile, TakesEveryKeyOfAGunAndATorch)
{
    const auto g = part_of<wire_gun>(
        "part = \"gun\"\nname = \"a\"\nlength = \"12 ft\"\nsize = \"35 mm2\"\nlimit = \"75 degC\"\nmissing_strands = "
        "\"10 %\"\n"
        "damaged_length = \"50 mm\"\nwire = \"aluminium\"\nwire_diameter = \"0.045 in\"\nextension = \"0.5 in\"");
    EXPECT_EQ(g.lead.size, square_mm(35));
    EXPECT_EQ(g.lead.length, 12_ft);
    EXPECT_EQ(g.lead.limit, temperature::celsius(75));
    EXPECT_EQ(g.wire, aluminium);
    EXPECT_EQ(g.wire_diameter, 0.045_in);
    EXPECT_EQ(g.extension, 0.5_in);
    EXPECT_EQ(g.cooling, torch_cooling::gas);
    const auto wet = part_of<wire_gun>("part = \"gun\"\nlength = \"12 ft\"\ncooling = \"water\"");
    EXPECT_EQ(wet.cooling, torch_cooling::water);
    EXPECT_EQ(wet.lead.size, usual_gun_cable(torch_cooling::water));
    const auto t = part_of<tig_torch>("part = \"tig torch\"\nname = \"a\"\nlength = \"4 m\"\ncooling = "
                                      "\"water\"\nlimit = \"75 degC\"\nmissing_strands = \"10 %\"\n"
                                      "damaged_length = \"50 mm\"");
    EXPECT_EQ(t.cooling, torch_cooling::water);
    EXPECT_EQ(t.lead.size, usual_torch_cable(torch_cooling::water));
    EXPECT_EQ(part_of<tig_torch>("part = \"tig torch\"\nlength = \"4 m\"\nsize = \"35 mm2\"").lead.size, square_mm(35));
}

TEST(StationFile, TakesEveryKeyOfAContactAndAPlate)
{
    const auto c = part_of<contact>("part = \"contact\"\nname = \"a\"\nmetals = [\"brass\", \"mild steel\"]\nforce = "
                                    "\"30 lbf\"\nsurface = \"light rust\"\n"
                                    "shape = \"flat\"\npoints = 3");
    EXPECT_EQ(c.metals.first, brass);
    EXPECT_EQ(c.metals.second, mild_steel);
    EXPECT_EQ(c.force, 30_lbf);
    EXPECT_EQ(c.surface, surface_state::light_rust);
    EXPECT_EQ(c.shape, contact_shape::flat);
    EXPECT_EQ(c.points, 3);
    const auto p = part_of<plate>("part = \"plate\"\nname = \"a\"\nmetal = \"mild steel\"\nlength = \"4 ft\"\nwidth = "
                                  "\"3 ft\"\nthickness = \"0.5 in\"");
    EXPECT_EQ(p.length, 4_ft);
    EXPECT_EQ(p.width, 3_ft);
    EXPECT_EQ(p.thickness, 0.5_in);
}

TEST(StationFile, TakesEveryKeyOfAWorkClamp)
{
    const work_connection w = clamp_of("name = \"a\"\nclamp = \"screw clamp\"\nrated = \"400 A\"\njaw = \"annealed "
                                       "copper\"\nlive_jaws = 2\nforce = \"1 kN\"\n"
                                       "surface = \"mill scale, bitten through\"\nwork_thickness = \"6 mm\"\ngrip_lost "
                                       "= \"20 %\"\npreheat = \"250 degF\"");
    EXPECT_EQ(w.name, "a");
    EXPECT_EQ(w.clamp.kind, clamp_kind::screw);
    EXPECT_EQ(w.clamp.rated_current, 400_A);
    EXPECT_EQ(w.clamp.jaw, annealed_copper);
    EXPECT_EQ(w.clamp.live_jaws, 2);
    EXPECT_EQ(w.clamp.force, 1_kN);
    EXPECT_EQ(w.surface, surface_state::mill_scale_bitten);
    EXPECT_EQ(w.work_thickness, 6_mm);
    EXPECT_NEAR_REL(static_cast<double>(w.grip_lost), 0.2, 1e-12);
    ASSERT_TRUE(w.preheat);
    EXPECT_NEAR_REL(w.preheat->in_fahrenheit(), 250.0, 1e-12);
    EXPECT_EQ(clamp_of("clamp = \"bolted lug\"\nsize = \"2/0 AWG\"").clamp.kind, clamp_kind::bolted);
}

TEST(StationFile, TakesEveryNumberOfAClampByItsDimensions)
{
    const work_connection plain = clamp_of("clamp = \"stamped spring clamp\"\nrated = \"300 A\"");
    EXPECT_EQ(plain.clamp.name, stamped_spring_clamp(300_A).name);
    EXPECT_EQ(plain.clamp.body_mass, stamped_spring_clamp(300_A).body_mass);
    EXPECT_EQ(clamp_of("clamp = \"cast spring clamp\"\nrated = \"400 A\"").clamp.force, cast_spring_clamp(400_A).force);

    const work_connection w = clamp_of(
        "clamp = \"stamped spring clamp\"\nrated = \"300 A\"\nbody = \"bronze\"\njaw = \"brass\"\nlive_jaws = 1\n"
        "jaw_length = \"30 mm\"\nreach = \"25 mm\"\nhandle = \"80 mm\"\nentry = \"20 mm\"\narm_section = \"100 mm2\"\n"
        "arm_outline = \"130 mm\"\njaw_area = \"70 mm2\"\nforce = \"200 N\"\nspring_wire = \"music wire\"\n"
        "spring_wire_diameter = \"4.8 mm\"\nspring_turns = 5\nshunt = \"10 mm2\"\nshunt_length = \"100 mm\"\n"
        "cable_connection = \"set-screw\"\ncable_connection_state = \"loose\"\ncable_connection_torque = \"8 Nm\"\n"
        "cable_connection_screw = \"10 mm\"\nlargest_cable = \"50 mm2\"\npivot = \"open\"\nshunt_state = \"broken\"\n"
        "cable_jaw_surface = \"light rust\"");
    const work_clamp& c = w.clamp;
    EXPECT_EQ(c.body_metal, bronze);
    EXPECT_EQ(c.jaw, brass);
    EXPECT_EQ(c.live_jaws, 1);
    EXPECT_EQ(c.build.jaw, 30_mm);
    EXPECT_EQ(c.build.reach, 25_mm);
    EXPECT_EQ(c.build.handle, 80_mm);
    EXPECT_EQ(c.build.entry, 20_mm);
    EXPECT_NEAR_REL(c.body_mass.value(), 2.0 * 100e-6 * 0.155 * bronze.density.value(), 1e-12);
    EXPECT_NEAR_REL(c.body_surface.value(), 2.0 * 0.130 * 0.155, 1e-12);
    EXPECT_NEAR_REL(c.jaw_area.value(), 70e-6, 1e-12);
    EXPECT_EQ(c.force, 200_N);
    ASSERT_TRUE(c.spring && c.inside && w.cable_jaw_surface);
    EXPECT_EQ(c.spring->wire, music_wire);
    EXPECT_NEAR_REL(c.spring->wire_diameter.value(), 4.8e-3, 1e-12);
    EXPECT_EQ(c.spring->turns, 5.0);
    EXPECT_NEAR_REL(c.build.shunt.value(), 10e-6, 1e-12);
    EXPECT_EQ(c.build.shunt_length, 100_mm);
    EXPECT_EQ(c.inside->pivot, pivot_state::open);
    EXPECT_EQ(c.inside->shunt, shunt_state::broken);
    EXPECT_EQ(*w.cable_jaw_surface, surface_state::light_rust);
    EXPECT_EQ(c.largest_cable, square_mm(50));
    const clamp_cable_connection loose{.made = clamp_cable_end::set_screw,
                                       .state = cable_end_state::loose,
                                       .tightened_to = 8_Nm,
                                       .screw_diameter = 10_mm};
    EXPECT_NEAR_REL(1.0 / c.termination.typical.value(),
                    (cable_connection_resistance(loose, 50_mm2, bronze).typical + c.arms).value(), 1e-12);

    // the usual spring clamp takes the states of its inside, no other clamp does, and only the sold ones dimensions
    const work_connection torn = clamp_of("clamp = \"spring clamp\"\nrated = \"300 A\"\nshunt_state = \"broken\"");
    ASSERT_TRUE(torn.clamp.inside);
    EXPECT_EQ(torn.clamp.inside->shunt, shunt_state::broken);
    EXPECT_FALSE(clamp_of("clamp = \"spring clamp\"\nrated = \"300 A\"").clamp.inside);
    for (const char* keys : {"clamp = \"screw clamp\"\nrated = \"300 A\"\npivot = \"open\"",
                             "clamp = \"spring clamp\"\nrated = \"300 A\"\nentry = \"20 mm\"",
                             "clamp = \"bolted lug\"\nsize = \"70 mm2\"\nshunt = \"20 mm2\"",
                             "clamp = \"stamped spring clamp\"\nrated = \"700 A\"",
                             "clamp = \"stamped spring clamp\"\nrated = \"300 A\"\nforce = \"2 kN\""})
        EXPECT_THROW((void)clamp_of(keys), station_file_error) << keys;
}

TEST(StationFile, TakesThePathAsInlineTablesToo)
{
    const station s = read(
        "name = \"a\"\npath = [{part = \"cable\", size = \"1 AWG\", length = \"3 m\"}, {part = \"arc\"},\n"
        "{part = \"cable\", size = \"1 AWG\", length = \"3 m\"}]\n[job]\nprocess = \"gtaw\"\ncurrent = \"90 A\"\n");
    EXPECT_EQ(s.path.size(), 3U);
}

// The page of the file names every unit, metal, covering and wire that a file may hold.
TEST(StationFile, ThePageNamesWhateverIsTaken)
{
    const std::string page = test::content_of(test::example_file("").parent_path().parent_path().parent_path() /
                                              "docs/pages/station_file.md");
    const std::size_t begin = page.find("\nUnits: ");
    ASSERT_NE(begin, std::string::npos);
    std::string units = page.substr(begin + 7, page.find("\n\n", begin) - begin - 7);
    for (char& c : units)
        if (c == '\n') c = ' ';
    units.back() = ',';
    std::replace(units.begin(), units.end(), ';', ',');
    constexpr std::array taken{quantity_kind::of_length,     quantity_kind::of_area,
                               quantity_kind::of_mass,       quantity_kind::of_duration,
                               quantity_kind::of_frequency,  quantity_kind::of_speed,
                               quantity_kind::of_force,      quantity_kind::of_torque,
                               quantity_kind::of_current,    quantity_kind::of_voltage,
                               quantity_kind::of_resistance, quantity_kind::of_conductance,
                               quantity_kind::of_heat_flux,  quantity_kind::of_temperature_difference};
    for (const detail::unit_row& row : detail::unit_table)
        if (std::find(taken.begin(), taken.end(), row.kind) != taken.end()) {
            EXPECT_NE(units.find(" " + std::string(row.name) + ","), std::string::npos) << row.name;
        }
    const auto is_named = [&](std::string_view word) {
        EXPECT_THAT(page, testing::HasSubstr("`\"" + std::string(word) + "\"`"));
    };
    for (const metal& m : all_metals) is_named(m.name);
    for (const covering& c : all_coverings) is_named(c.name);
    for (const spring_wire& w : all_spring_wires) is_named(w.name);
    for (const surface_state s : all_surface_states) is_named(to_text(s));
}

TEST(StationFile, TakesEveryWordThatIsPrinted)
{
    for (const surface_state state : all_surface_states)
        EXPECT_EQ(
            clamp_of("clamp = \"spring clamp\"\nrated = \"300 A\"\nsurface = \"" + std::string(to_text(state)) + "\"")
                .surface,
            state);
    for (const lay l : all_lays)
        EXPECT_EQ(read(with(small_station, "air = \"32 degC\"", "lay = \"" + std::string(to_text(l)) + "\"")).where.lay,
                  l);
    // by hand: sqrt(0.6 80^2 + 0.4 350^2)
    const station pulsed = read(with(small_station, "current = \"240 A\"\n",
                                     "waveform = \"pulsed\"\nbase = \"80 A\"\npeak = \"350 A\"\n"
                                     "base_time = \"6 ms\"\npeak_time = \"4 ms\"\n"));
    EXPECT_NEAR_REL(pulsed.job.current.value(), std::sqrt(0.6 * 80.0 * 80.0 + 0.4 * 350.0 * 350.0), 1e-12);
    ASSERT_TRUE(pulsed.job.course);
    const station ramped = read(with(small_station, "current = \"240 A\"\n",
                                     "waveform = \"pulsed\"\nbase = \"80 A\"\npeak = \"350 A\"\n"
                                     "base_time = \"6 ms\"\npeak_time = \"4 ms\"\nrise_time = \"0.5 ms\"\n"
                                     "fall_time = \"1.5 ms\"\n"));
    EXPECT_NEAR_REL(ramped.job.course->period().value(), 12e-3, 1e-12);
    EXPECT_NEAR_REL(ramped.job.course->shortest_edge().value(), 0.5e-3, 1e-12);
    EXPECT_EQ(read(small_station).intermittent, "");
    EXPECT_EQ(read(with(small_station, "[job]", "intermittent = \"work clamp 3\"\n[job]")).intermittent,
              "work clamp 3");
    for (const steel_beside where : all_steel_beside) {
        const auto lead =
            part_of<cable>("part = \"cable\"\nsize = \"70 mm2\"\nlength = \"20 m\"\nsteel = \"" +
                           std::string(to_text(where)) + "\"" + (is_of_a_coil(where) ? "\nlay = \"coiled\"" : ""));
        EXPECT_EQ(lead.steel, where);
    }
    const station square = read(with(small_station, "current = \"240 A\"\n",
                                     "current = \"240 A\"\nwaveform = \"alternating\"\nfrequency = \"120 Hz\"\n"
                                     "balance = \"30 %\"\n"));
    ASSERT_TRUE(square.job.course);
    EXPECT_NEAR_REL(square.job.course->mean().value(), 240.0 * (0.3 - 0.7), 1e-12);
    EXPECT_NEAR_REL(square.job.course->rms().value(), 240.0, 1e-12);
    EXPECT_FALSE(
        read(with(small_station, "current = \"240 A\"\n", "current = \"240 A\"\nwaveform = \"direct\"\n")).job.course);
    for (const process p : all_processes) EXPECT_EQ(read(with(small_station, "gmaw", to_text(p))).job.process, p);
    for (const metal& m : all_metals)
        EXPECT_EQ(std::get<work_connection>(read(with(small_station, "mild steel", m.name)).path[2]).onto, m);
}
