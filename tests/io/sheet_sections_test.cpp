// Parts that the loop takes from their sheets, and magnets and resting parts, as a station file states them.
#include <ostream>
#include <string>
#include <string_view>
#include <variant>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "io/example_stations.hpp"
#include "support/near.hpp"

#include <weldloop/core/literals.hpp>
#include <weldloop/io/draw/loop_drawing.hpp>
#include <weldloop/io/report/report_json.hpp>
#include <weldloop/io/report/report_page.hpp>
#include <weldloop/io/report/report_text.hpp>
#include <weldloop/io/station/station_file.hpp>
#include <weldloop/part/resting_contact.hpp>

using namespace weldloop;
using namespace weldloop::literals;
using testing::HasSubstr;
using weldloop::test::small_station;
using weldloop::test::with;

namespace {

/// The small station with one more part behind its clamp, whose table begins in line 19.
station read(std::string_view keys)
{
    return station_from_toml(std::string(small_station) + "[[path]]\n" + std::string(keys) +
                                 "\n[[path]]\npart = \"cable\"\nsize = \"2/0 AWG\"\nlength = \"50 ft\"\n",
                             "test.toml");
}

template <class Part>
Part part_of(std::string_view keys)
{
    return std::get<Part>(read(keys).path.at(3));
}

}  // namespace

TEST(SheetSections, TakesEveryKeyOfAStrap)
{
    const auto s = part_of<strap>("part = \"strap\"\nname = \"bridge\"\nmake = \"solid\"\nsection = \"90 mm2\"\n"
                                  "length = \"12 in\"\nmetal = \"aluminium\"\nonto = \"annealed copper\"\nbolts = 2\n"
                                  "bolt_diameter = \"8 mm\"\nbolt_torque = \"15 Nm\"\nthread = \"oiled\"\n"
                                  "surface = \"oxidized\"");
    EXPECT_EQ(s.name, "bridge");
    EXPECT_EQ(s.make, strap_make::solid);
    EXPECT_NEAR_REL(s.section.value(), 90e-6, 1e-12);
    EXPECT_NEAR_REL(s.length.value(), 0.3048, 1e-12);
    EXPECT_EQ(s.metal, aluminium);
    EXPECT_EQ(s.onto, annealed_copper);
    EXPECT_EQ(s.bolts, 2);
    EXPECT_NEAR_REL(s.bolt_diameter.value(), 0.008, 1e-12);
    EXPECT_NEAR_REL(s.tightening.value(), 15.0, 1e-12);
    EXPECT_EQ(s.thread, thread_state::oiled);
    EXPECT_EQ(s.surface, surface_state::oxidized);

    const auto usual = part_of<strap>("part = \"strap\"\nmake = \"braid\"\nsection = \"50 mm2\"\nlength = \"200 mm\"");
    EXPECT_EQ(usual.make, strap_make::braid);
    EXPECT_EQ(usual.bolt_diameter, strap{}.bolt_diameter);
    EXPECT_EQ(usual.tightening, strap{}.tightening);
    // electrical_torque_table: 70 N m for M12
    const auto larger = part_of<strap>(
        "part = \"strap\"\nmake = \"braid\"\nsection = \"50 mm2\"\nlength = \"200 mm\"\nbolt_diameter = \"12 mm\"");
    EXPECT_NEAR_REL(larger.tightening.value(), 70.0, 1e-12);
}

TEST(SheetSections, TakesEveryKeyOfAStud)
{
    const auto s = part_of<stud_terminal>(
        "part = \"stud\"\nname = \"post\"\nbolt_diameter = \"12 mm\"\nbolt_torque = \"30 Nm\"\nthread = \"rusty\"\n"
        "seat = \"mild steel\"\npalm = \"tinned copper\"\nlugs = 3\nsurface = \"galvanized\"");
    EXPECT_EQ(s.name, "post");
    EXPECT_NEAR_REL(s.diameter.value(), 0.012, 1e-12);
    EXPECT_NEAR_REL(s.tightening.value(), 30.0, 1e-12);
    EXPECT_EQ(s.thread, thread_state::rusty);
    EXPECT_EQ(s.seat, mild_steel);
    EXPECT_EQ(s.palm, tinned_copper);
    EXPECT_EQ(s.lugs, 3);
    EXPECT_EQ(s.surface, surface_state::galvanized);
}

TEST(SheetSections, TakesEveryKeyOfASetScrew)
{
    const auto s = part_of<set_screw>(
        "part = \"set screw\"\nname = \"block\"\nsize = \"2/0 AWG\"\nbolt_diameter = \"10 mm\"\n"
        "bolt_torque = \"12 Nm\"\nthread = \"anti-seize\"\nend = \"bare strands\"\nmissing_strands = \"10 %\"");
    EXPECT_EQ(s.name, "block");
    EXPECT_EQ(s.size, aught(2));
    EXPECT_NEAR_REL(s.screw_diameter.value(), 0.010, 1e-12);
    EXPECT_NEAR_REL(s.tightening.value(), 12.0, 1e-12);
    EXPECT_EQ(s.thread, thread_state::anti_seize);
    EXPECT_FALSE(s.ferrule);
    EXPECT_NEAR_REL(static_cast<double>(s.missing_strands), 0.1, 1e-12);
    EXPECT_TRUE(
        part_of<set_screw>("part = \"set screw\"\nsize = \"2/0 AWG\"\nbolt_torque = \"10 Nm\"\nend = \"ferrule\"")
            .ferrule);
}

TEST(SheetSections, TakesEveryKeyOfASplice)
{
    const auto s = part_of<cable_splice>("part = \"splice\"\nname = \"sleeve\"\nsize = \"70 mm2\"\n"
                                         "other_size = \"50 mm2\"\nstamped = \"95 mm2\"\nmissing_strands = \"20 %\"");
    EXPECT_EQ(s.name, "sleeve");
    EXPECT_EQ(s.first, square_mm(70));
    EXPECT_EQ(s.second, square_mm(50));
    EXPECT_EQ(s.stamped, square_mm(95));
    EXPECT_NEAR_REL(static_cast<double>(s.missing_strands), 0.2, 1e-12);
    const auto usual = part_of<cable_splice>("part = \"splice\"\nsize = \"50 mm2\"\nother_size = \"70 mm2\"");
    EXPECT_EQ(usual.stamped, square_mm(70));
    EXPECT_EQ(part_of<cable_splice>("part = \"splice\"\nsize = \"50 mm2\"").second, square_mm(50));
}

TEST(SheetSections, TakesEveryKeyOfASpringPad)
{
    const auto s = part_of<spring_pad>(
        "part = \"spring pad\"\nname = \"locator\"\nforce = \"350 N\"\npad = \"brass\"\nonto = \"stainless steel\"\n"
        "across = \"25 mm\"\nthickness = \"8 mm\"\npoints = 5\nwire = \"music wire\"\nsurface = \"greasy\"");
    EXPECT_EQ(s.name, "locator");
    EXPECT_NEAR_REL(s.pressing.value(), 350.0, 1e-12);
    EXPECT_EQ(s.pad, brass);
    EXPECT_EQ(s.against, stainless_steel);
    EXPECT_NEAR_REL(s.across.value(), 0.025, 1e-12);
    EXPECT_NEAR_REL(s.thickness.value(), 0.008, 1e-12);
    EXPECT_EQ(s.points, 5);
    EXPECT_EQ(s.wire.name, music_wire.name);
    EXPECT_EQ(s.surface, surface_state::greasy);
    EXPECT_EQ(part_of<spring_pad>("part = \"spring pad\"\nforce = \"1 kN\"").pad, annealed_copper);
}

TEST(SheetSections, TakesEveryKeyOfARotaryGround)
{
    const auto s =
        part_of<rotary_ground>("part = \"rotary ground\"\nname = \"turntable\"\nbrush = \"metal fingers\"\ncount = 8\n"
                               "face = \"2 cm2\"\nforce = \"25 N\"\nfinger = \"bronze\"\nring = \"mild steel\"\n"
                               "surface = \"greasy\"");
    EXPECT_EQ(s.name, "turntable");
    EXPECT_FALSE(s.brush);
    EXPECT_EQ(s.count, 8);
    EXPECT_NEAR_REL(s.face.value(), 2e-4, 1e-12);
    EXPECT_NEAR_REL(s.force.value(), 25.0, 1e-12);
    EXPECT_EQ(s.finger, bronze);
    EXPECT_EQ(s.ring, mild_steel);
    EXPECT_EQ(s.surface, surface_state::greasy);
    EXPECT_EQ(part_of<rotary_ground>("part = \"rotary ground\"\nbrush = \"carbon\"").brush, brush_kind::carbon);
    EXPECT_EQ(part_of<rotary_ground>("part = \"rotary ground\"\nbrush = \"metal-graphite\"").brush,
              brush_kind::metal_graphite);
}

TEST(SheetSections, TakesEveryKeyOfAMagnet)
{
    const auto m = part_of<work_magnet>(
        "part = \"magnet\"\nname = \"foot\"\nsize = \"2/0 AWG\"\npull = \"400 N\"\n"
        "grade = \"samarium-cobalt\"\npad = \"annealed copper\"\npoints = 3\nonto = \"mild steel\"\n"
        "surface = \"mill scale, bitten through\"\nwork_thickness = \"6 mm\"\ngap = \"0.1 mm\"");
    EXPECT_EQ(m.name, "foot");
    EXPECT_EQ(m.cable, aught(2));
    EXPECT_NEAR_REL(m.rated.value(), 400.0, 1e-12);
    EXPECT_EQ(m.grade.name, samarium_cobalt_magnet.name);
    EXPECT_EQ(m.pad, annealed_copper);
    EXPECT_EQ(m.points, 3);
    EXPECT_EQ(m.work, mild_steel);
    EXPECT_EQ(m.surface, surface_state::mill_scale_bitten);
    EXPECT_NEAR_REL(m.work_thickness.value(), 0.006, 1e-12);
    EXPECT_NEAR_REL(m.gap.value(), 1e-4, 1e-12);
}

// 2 kg press with 19.6 N on three points (weight_of())
TEST(SheetSections, TakesEveryKeyOfARestingContact)
{
    const auto c = part_of<contact>("part = \"resting contact\"\nname = \"on the table\"\n"
                                    "metals = [\"mild steel\", \"stainless steel\"]\nmass = \"2 kg\"\n"
                                    "surface = \"light rust\"");
    EXPECT_EQ(c.name, "on the table");
    EXPECT_EQ(c.metals.first, mild_steel);
    EXPECT_EQ(c.metals.second, stainless_steel);
    EXPECT_NEAR_REL(c.force.value(), 2.0 * 9.80665, 1e-12);
    EXPECT_EQ(c.points, resting_points);
    EXPECT_EQ(c.surface, surface_state::light_rust);
}

namespace {

/// One fault in the table that begins in line 19, whose first key stands in line 20.
struct fault {
    std::string_view keys;
    std::size_t line, column;
    std::string_view reason;  // part of it
};
std::ostream& operator<<(std::ostream& out, const fault& f)
{
    return out << f.keys;
}

constexpr fault faults[] = {
    // strap
    {"part = \"strap\"\nsection = \"50 mm2\"\nlength = \"20 cm\"", 19, 1, "lacks the key \"make\""},
    {"part = \"strap\"\nmake = \"braid\"\nlength = \"20 cm\"", 19, 1, "lacks the key \"section\""},
    {"part = \"strap\"\nmake = \"braid\"\nsection = \"50 mm2\"", 19, 1, "lacks the key \"length\""},
    {"part = \"strap\"\nmake = \"woven\"\nsection = \"50 mm2\"\nlength = \"20 cm\"", 21, 8, "one of: solid, braid"},
    {"part = \"strap\"\nmake = \"braid\"\nsection = \"0 mm2\"\nlength = \"20 cm\"", 22, 11, "cannot be \"0 mm2\""},
    {"part = \"strap\"\nmake = \"braid\"\nsection = \"50 mm\"\nlength = \"20 cm\"", 22, 15, "in one of"},
    {"part = \"strap\"\nmake = \"braid\"\nsection = \"50 mm2\"\nlength = \"20 m\"", 23, 10, "from 0 m to 10 m"},
    {"part = \"strap\"\nmake = \"braid\"\nsection = \"50 mm2\"\nlength = \"20 cm\"\nbolts = 0", 24, 9, "from 1 to 100"},
    {"part = \"strap\"\nmake = \"braid\"\nsection = \"50 mm2\"\nlength = \"20 cm\"\nbolt_diameter = \"9 mm\"", 24, 17,
     "M6, M8, M10, M12, M16"},
    {"part = \"strap\"\nmake = \"braid\"\nsection = \"50 mm2\"\nlength = \"20 cm\"\nthread = \"wet\"", 24, 10,
     "dry, zinc-plated, oiled, anti-seize, rusty"},
    {"part = \"strap\"\nmake = \"braid\"\nsection = \"50 mm2\"\nlength = \"20 cm\"\nwidth = \"3 cm\"", 24, 1,
     "unknown key \"width\""},
    // stud
    {"part = \"stud\"\nbolt_torque = \"20 Nm\"", 19, 1, "lacks the key \"bolt_diameter\""},
    {"part = \"stud\"\nbolt_diameter = \"10 mm\"", 19, 1, "lacks the key \"bolt_torque\""},
    {"part = \"stud\"\nbolt_diameter = \"1 mm\"\nbolt_torque = \"20 Nm\"", 21, 17, "from 0.003 m to 0.05 m"},
    {"part = \"stud\"\nbolt_diameter = \"10 mm\"\nbolt_torque = \"2 kNm\"", 22, 18, "cannot be \"2 kNm\""},
    {"part = \"stud\"\nbolt_diameter = \"10 mm\"\nbolt_torque = \"20 Nm\"\nlugs = 11", 23, 8, "from 1 to 10"},
    // set-screw
    {"part = \"set screw\"\nbolt_torque = \"10 Nm\"", 19, 1, "lacks the key \"size\""},
    {"part = \"set screw\"\nsize = \"70 mm2\"", 19, 1, "lacks the key \"bolt_torque\""},
    {"part = \"set screw\"\nsize = \"40 AWG\"\nbolt_torque = \"10 Nm\"", 21, 8, "lead size is 40 AWG"},
    {"part = \"set screw\"\nsize = \"70 mm2\"\nbolt_torque = \"10 Nm\"\nend = \"tinned\"", 23, 7,
     "one of: ferrule, bare strands"},
    {"part = \"set screw\"\nsize = \"70 mm2\"\nbolt_torque = \"10 Nm\"\nmissing_strands = \"100 %\"", 23, 19,
     "to below 1"},
    {"part = \"set screw\"\nsize = \"70 mm2\"\nbolt_torque = \"10 Nm\"\nsurface = \"clean\"", 23, 1,
     "unknown key \"surface\""},
    // splice
    {"part = \"splice\"", 19, 1, "lacks the key \"size\""},
    {"part = \"splice\"\nsize = \"1 mm2\"", 21, 8, "lead size is 1 mm2"},
    {"part = \"splice\"\nsize = \"70 mm2\"\nother_size = \"1 mm2\"", 22, 14, "lead size is 1 mm2"},
    {"part = \"splice\"\nsize = \"70 mm2\"\nstamped = \"1 mm2\"", 22, 11, "lead size is 1 mm2"},
    {"part = \"splice\"\nsize = \"70 mm2\"\nlength = \"1 m\"", 22, 1, "unknown key \"length\""},
    // rotary ground
    {"part = \"rotary ground\"", 19, 1, "lacks the key \"brush\""},
    {"part = \"rotary ground\"\nbrush = \"copper\"", 21, 9, "metal-graphite, carbon, metal fingers"},
    {"part = \"rotary ground\"\nbrush = \"carbon\"\ncount = 0", 22, 9, "from 1 to 1000"},
    {"part = \"rotary ground\"\nbrush = \"carbon\"\nface = \"0 cm2\"", 22, 8, "cannot be \"0 cm2\""},
    {"part = \"rotary ground\"\nbrush = \"carbon\"\nfinger = \"brass\"", 22, 10, "goes with brush = \"metal fingers\""},
    {"part = \"rotary ground\"\nbrush = \"carbon\"\nsurface = \"clean\"", 22, 11,
     "goes with brush = \"metal fingers\""},
    // magnet
    {"part = \"magnet\"\npull = \"300 N\"\nonto = \"mild steel\"", 19, 1, "lacks the key \"size\""},
    {"part = \"magnet\"\nsize = \"50 mm2\"\nonto = \"mild steel\"", 19, 1, "lacks the key \"pull\""},
    {"part = \"magnet\"\nsize = \"50 mm2\"\npull = \"300 N\"", 19, 1, "lacks the key \"onto\""},
    {"part = \"magnet\"\nsize = \"10 mm2\"\npull = \"300 N\"\nonto = \"mild steel\"", 21, 8, "10 mm2"},
    {"part = \"magnet\"\nsize = \"50 mm2\"\npull = \"0 N\"\nonto = \"mild steel\"", 22, 8, "above 0 N to"},
    {"part = \"magnet\"\nsize = \"50 mm2\"\npull = \"300 N\"\nonto = \"stainless steel\"", 23, 8,
     "does not hold on stainless steel"},
    {"part = \"magnet\"\nsize = \"50 mm2\"\npull = \"300 N\"\nonto = \"mild steel\"\ngrade = \"iron\"", 24, 9,
     "neodymium-iron-boron, samarium-cobalt, hard ferrite, aluminium-nickel-cobalt"},
    {"part = \"magnet\"\nsize = \"50 mm2\"\npull = \"300 N\"\nonto = \"mild steel\"\ngap = \"20 mm\"", 24, 7,
     "from 0 m to 0.01 m"},
    // spring-loaded pad
    {"part = \"spring pad\"", 19, 1, "lacks the key \"force\""},
    {"part = \"spring pad\"\nforce = \"200 N\"\nacross = \"0 mm\"", 22, 10, "cannot be \"0 mm\""},
    {"part = \"spring pad\"\nforce = \"200 N\"\nwire = \"copper\"", 22, 8, "one of"},
    {"part = \"spring pad\"\nforce = \"200 N\"\nbrush = \"carbon\"", 22, 1, "unknown key \"brush\""},
    // gun
    {"part = \"gun\"\nlength = \"3 m\"\ncooling = \"oil\"", 22, 11, "one of: gas, water"},
    // resting contact
    {"part = \"resting contact\"\nmass = \"2 kg\"", 19, 1, "lacks the key \"metals\""},
    {"part = \"resting contact\"\nmetals = [\"brass\", \"brass\"]", 19, 1, "lacks the key \"mass\""},
    {"part = \"resting contact\"\nmetals = [\"brass\", \"brass\"]\nmass = \"0 kg\"", 22, 8, "cannot be \"0 kg\""},
    {"part = \"resting contact\"\nmetals = [\"brass\", \"brass\"]\nforce = \"2 N\"", 22, 1, "unknown key \"force\""},
};

class SheetFault : public testing::TestWithParam<fault> {};

}  // namespace

TEST_P(SheetFault, IsRefusedAtItsPlace)
{
    const fault& f = GetParam();
    try {
        static_cast<void>(read(f.keys));
        ADD_FAILURE() << "accepted: " << f.keys;
    } catch (const station_file_error& e) {
        EXPECT_EQ(e.line(), f.line) << e.what();
        EXPECT_EQ(e.column(), f.column) << e.what();
        EXPECT_THAT(std::string(e.what()), HasSubstr(f.reason));
    }
}

INSTANTIATE_TEST_SUITE_P(Sections, SheetFault, testing::ValuesIn(faults));

// every report speaks of every kind, with its sign and its word
TEST(SheetSections, EveryReportShowsEveryKind)
{
    const std::string text = with(
        std::string(small_station), "[[path]]\npart = \"work clamp\"\nclamp = \"spring clamp\"\nrated = \"300 A\"\n",
        "[[path]]\npart = \"resting contact\"\nmetals = [\"mild steel\", \"mild steel\"]\nmass = \"900 kg\"\n"
        "[[path]]\npart = \"magnet\"\nsize = \"2/0 AWG\"\npull = \"900 N\"\n");
    const auto s = test::assessed(station_from_toml(
        text + "[[path]]\npart = \"lug\"\nsize = \"2/0 AWG\"\n"
               "[[path]]\npart = \"strap\"\nmake = \"braid\"\nsection = \"95 mm2\"\nlength = \"20 cm\"\n"
               "[[path]]\npart = \"stud\"\nbolt_diameter = \"10 mm\"\nbolt_torque = \"20 Nm\"\nlugs = 2\n"
               "[[path]]\npart = \"set screw\"\nsize = \"2/0 AWG\"\nbolt_torque = \"10 Nm\"\n"
               "[[path]]\npart = \"cable\"\nsize = \"2/0 AWG\"\nlength = \"50 ft\"\n"
               "[[path]]\npart = \"splice\"\nsize = \"2/0 AWG\"\n"
               "[[path]]\npart = \"cable\"\nsize = \"2/0 AWG\"\nlength = \"50 ft\"\n"
               "[[path]]\npart = \"rotary ground\"\nbrush = \"metal-graphite\"\n"
               "[[path]]\npart = \"spring pad\"\nforce = \"500 N\"\n",
        "all.toml"));
    ASSERT_EQ(s.found.outcome, loop_outcome::solved);
    const std::string plain = report_text(s.is, s.found, s.remedies, {.answers = s.answers}),
                      json = report_json(s.is, s.found, s.remedies, {.answers = s.answers}),
                      page = report_page(s.is, s.found, s.remedies, {.answers = s.answers});
    for (const std::string_view kind :
         {"magnet", "strap", "stud", "set screw", "splice", "rotary ground", "spring pad", "contact"}) {
        EXPECT_THAT(plain, HasSubstr(kind));
        EXPECT_THAT(json, HasSubstr(kind));
        EXPECT_THAT(page, HasSubstr(kind));
    }
    EXPECT_THAT(json, HasSubstr("\"magnet\""));
}
