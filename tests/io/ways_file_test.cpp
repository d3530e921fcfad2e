// Ways in a station file: what is read, and what is refused at which line and column.
#include <ostream>
#include <string>
#include <string_view>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "io/example_stations.hpp"
#include "support/near.hpp"

#include <weldloop/circuit/loop.hpp>
#include <weldloop/io/station/station_file.hpp>

using namespace weldloop;
using namespace weldloop::literals;
using testing::HasSubstr;
using weldloop::test::with;

namespace {

constexpr std::string_view two_ways = R"(name = "Bench"
[job]
process = "gmaw"
current = "240 A"
[[path]]
part = "cable"
size = "2/0 AWG"
length = "50 ft"
[[path]]
part = "arc"
[[path]]
part = "workpiece"
name = "gate"
metal = "mild steel"
mass = "30 kg"
thickness = "3 mm"
[[path]]
part = "work clamp"
clamp = "spring clamp"
rated = "300 A"
onto = "mild steel"
[[path]]
part = "junction"
name = "stud"
[[path]]
part = "lug"
size = "1 AWG"
[[way]]
name = "strap"
from = "gate"
to = "stud"
[[way.path]]
part = "cable"
name = "second lead"
size = "1 AWG"
length = "30 ft"
[[way]]
name = "chain"
from = "gate"
to = "stud"
kind = "stray"
[[way.path]]
part = "measured"
name = "links"
word = "chain"
drop = "2 V"
drop_low = "1 V"
drop_high = "5 V"
at = "20 A"
limit = "90 degC"
mass = "2 kg"
cooling_area = "0.03 m2"
[[other]]
name = "second welder"
from = "gate"
to = "stud"
current = "150 A"
duty = "40 %"
no_load = "80 V"
)";

struct fault {
    std::string_view old_piece, new_piece;
    std::size_t line, column;
    std::string_view reason;   // part of it
    std::string_view nearest;  // all of it
};
std::ostream& operator<<(std::ostream& out, const fault& f)
{
    return out << "\"" << f.old_piece << "\" -> \"" << f.new_piece << "\"";
}

constexpr std::string_view strap_part =
    "part = \"cable\"\nname = \"second lead\"\nsize = \"1 AWG\"\nlength = \"30 ft\"\n";

const fault faults[] = {
    // where a way starts and ends
    {"from = \"gate\"\nto = \"stud\"\n[[way.path]]", "from = \"gat\"\nto = \"stud\"\n[[way.path]]", 30, 8,
     "\"from\" cannot be \"gat\"; it is one of: gate, stud", "gate"},
    {"to = \"stud\"\n[[way.path]]", "to = \"studd\"\n[[way.path]]", 31, 6, "\"to\" cannot be \"studd\"", "stud"},
    {"to = \"stud\"\n[[way.path]]", "to = \"second lead\"\n[[way.path]]", 31, 6, "\"to\" cannot be \"second lead\"",
     ""},
    {"to = \"stud\"\n[[way.path]]", "to = \"gate\"\n[[way.path]]", 31, 6, "are the same point", ""},
    {"to = \"stud\"\n[[way.path]]", "[[way.path]]", 28, 1, "lacks the key \"to\"", ""},
    {"from = \"gate\"\nto = \"stud\"\n[[way.path]]", "to = \"stud\"\n[[way.path]]", 28, 1, "lacks the key \"from\"",
     ""},
    {strap_part, "part = \"junction\"\nname = \"stud\"\n", 34, 8, "two parts are called \"stud\"", ""},
    {"to = \"stud\"\n[[way.path]]", "to = \"own\"\n[[way.path]]\npart = \"junction\"\nname = \"own\"\n[[way.path]]", 31,
     6, "a point of the way itself", ""},
    // what it is and what stands in it
    {"kind = \"stray\"", "kind = \"strays\"", 41, 8, "\"kind\" cannot be \"strays\"; it is one of: intended, stray",
     "stray"},
    {"kind = \"stray\"", "sort = \"stray\"", 41, 1, "unknown key \"sort\"", ""},
    {"[[other]]", "[[others]]", 53, 3, "unknown key \"others\"", "other"},
    // nameless points are called by their number: the seventh part
    {"to = \"stud\"\n[[way.path]]",
     "to = \"workpiece 7\"\n[[way.path]]\npart = \"workpiece\"\nmetal = \"mild steel\"\nmass = \"1 kg\"\nthickness = "
     "\"3 mm\"\n"
     "[[way.path]]",
     31, 6, "a point of the way itself", ""},
    {std::string_view("[[way.path]]\npart = \"cable\"\nname = \"second lead\"\nsize = \"1 AWG\"\nlength = \"30 ft\"\n"),
     "", 28, 1, "lacks the key \"path\"", ""},
    {std::string_view("[[way.path]]\npart = \"cable\"\nname = \"second lead\"\nsize = \"1 AWG\"\nlength = \"30 ft\"\n"),
     "path = []\n", 32, 8, "a way without parts", ""},
    {strap_part, "part = \"gun\"\nlength = \"12 ft\"\n", 33, 8, "stand in the path, not in a way", ""},
    {strap_part, "part = \"arc\"\nname = \"second\"\n", 33, 8, "stand in the path, not in a way", ""},
    {strap_part, "part = \"holder\"\nrated = \"300 A\"\n", 33, 8, "stand in the path, not in a way", ""},
    // names
    {"name = \"links\"", "name = \"second lead\"", 44, 8,
     "two parts are called \"second lead\"; the other one stands in line 32", ""},
    {"name = \"links\"", "name = \"gate\"", 44, 8, "two parts are called \"gate\"", ""},
    {"name = \"chain\"", "name = \"strap\"", 38, 8, "two ways are called \"strap\"", ""},
    // a measured part
    {"drop_low = \"1 V\"", "drop_low = \"3 V\"", 47, 12, "\"drop_low\" is above \"drop\"", ""},
    {"drop_high = \"5 V\"", "drop_high = \"1.5 V\"", 48, 13, "\"drop_high\" is below \"drop\"", ""},
    {"drop_high = \"5 V\"\n", "", 42, 1, "lacks the key \"drop_high\"", ""},
    {"drop = \"2 V\"\n", "", 42, 1, "lacks the key \"drop\"", ""},
    {"drop = \"2 V\"", "drop = \"0 V\"", 46, 8, "cannot be \"0 V\"", ""},
    {"at = \"20 A\"", "at = \"0 A\"", 49, 6, "cannot be \"0 A\"", ""},
    {"cooling_area = \"0.03 m2\"\n", "", 50, 9, "\"limit\" needs \"cooling_area\"", ""},
    {"cooling_area = \"0.03 m2\"", "cooling_area = \"0 m2\"", 52, 16, "cannot be \"0 m2\"", ""},
    {"word = \"chain\"", "law = \"ohm\"", 45, 7, "\"law\" cannot be \"ohm\"", "ohmic"},
    // a workpiece, a junction
    {"mass = \"30 kg\"", "mass = \"0 kg\"", 15, 8, "cannot be \"0 kg\"", ""},
    {"thickness = \"3 mm\"", "thickness = \"3 mm\"\nstays = \"0 min\"", 17, 9, "cannot be \"0 min\"", ""},
    {"thickness = \"3 mm\"", "thickness = \"3 mm\"\nstays = \"25 h\"", 17, 9, "cannot be \"25 h\"", ""},
    {"thickness = \"3 mm\"", "thickness = \"3 mm\"\nstays = \"4 kg\"", 17, 12, "cannot be \"4 kg\"", ""},
    {"thickness = \"3 mm\"", "thickness = \"3 mm\"\npieces_per_hour = 0", 17, 19, "cannot be 0", ""},
    {"thickness = \"3 mm\"", "thickness = \"3 mm\"\nstays = \"5 min\"\npieces_per_hour = 13", 18, 19,
     "13 an hour leave 4.62 min for each", ""},
    {"thickness = \"3 mm\"", "thickness = \"3 mm\"\nstays = \"5 min\"\npieces_per_hour = 6", 18, 19,
     "a piece is there whenever the arc burns", ""},
    {"thickness = \"3 mm\"", "thickness = \"3 mm\"\nstays = \"5 min\"\nfrom_weld = \"0 mm\"", 18, 13,
     "cannot be \"0 mm\"", ""},
    {"thickness = \"3 mm\"", "thickness = \"3 mm\"\nfrom_weld = \"80 mm\"", 17, 13, "needs \"stays\"", ""},
    {"thickness = \"3 mm\"", "thickness = \"3 mm\"\nstays = \"5 min\"\nbar_length = \"2 m\"", 18, 14,
     "needs \"from_weld\"", ""},
    {"thickness = \"3 mm\"\n", "", 11, 1, "lacks the key \"thickness\"", ""},
    {"part = \"junction\"\nname = \"stud\"\n", "part = \"junction\"\n", 22, 1, "lacks the key \"name\"", ""},
    // another supply
    {"current = \"150 A\"", "current = \"0 A\"", 57, 11, "cannot be \"0 A\"", ""},
    {"to = \"stud\"\ncurrent", "to = \"gate\"\ncurrent", 56, 6, "are the same point", ""},
    {"from = \"gate\"\nto = \"stud\"\ncurrent", "from = \"date\"\nto = \"stud\"\ncurrent", 55, 8,
     "\"from\" cannot be \"date\"", "gate"},
    {"no_load = \"80 V\"", "noload = \"80 V\"", 59, 1, "unknown key \"noload\"", "no_load"},
};

station_file_error error_of(std::string_view text)
{
    try {
        static_cast<void>(station_from_toml(text, "bench.toml"));
    } catch (const station_file_error& e) {
        return e;
    }
    throw std::logic_error("the text was taken for a station");
}

}  // namespace

// a piece that is welded for a while
TEST(WaysFile, StayOfAPieceIsRead)
{
    std::string text(two_ways);
    text.replace(text.find("thickness"), 0,
                 "stays = \"4 min\"\npieces_per_hour = 15\nfrom_weld = \"8 cm\"\nbar_length = \"2 m\"\n");
    const station s = station_from_toml(text, "bench.toml");
    const auto& gate = std::get<workpiece>(s.path.at(2));
    EXPECT_DOUBLE_EQ(gate.stays.value().value(), 240.0);
    EXPECT_DOUBLE_EQ(gate.pieces_per_hour.value(), 15.0);
    EXPECT_DOUBLE_EQ(gate.from_weld.value().value(), 0.08);
    EXPECT_DOUBLE_EQ(gate.bar_length.value().value(), 2.0);
}

TEST(WaysFile, IsRead)
{
    const station s = station_from_toml(two_ways, "bench.toml");
    ASSERT_EQ(s.ways.size(), 2u);
    EXPECT_EQ(s.ways[0].name, "strap");
    EXPECT_EQ(s.ways[0].kind, way_kind::intended);
    EXPECT_EQ(s.ways[0].from, "gate");
    EXPECT_EQ(s.ways[0].to, "stud");
    ASSERT_EQ(s.ways[0].path.size(), 1u);
    EXPECT_EQ(std::get<cable>(s.ways[0].path[0]).name, "second lead");
    EXPECT_EQ(s.ways[1].kind, way_kind::stray);
    const auto& links = std::get<measured_part>(s.ways[1].path.at(0));
    EXPECT_EQ(links.word, "chain");
    EXPECT_EQ(links.law, drop_law::ohmic);
    EXPECT_DOUBLE_EQ(links.drop.low.value(), 1.0);
    EXPECT_DOUBLE_EQ(links.drop.typical.value(), 2.0);
    EXPECT_DOUBLE_EQ(links.drop.high.value(), 5.0);
    EXPECT_DOUBLE_EQ(links.at.value(), 20.0);
    EXPECT_EQ(*links.limit, 90_degC);
    EXPECT_DOUBLE_EQ(links.mass->value(), 2.0);
    EXPECT_DOUBLE_EQ(links.cooling_area->value(), 0.03);
    const auto& gate = std::get<workpiece>(s.path.at(2));
    EXPECT_EQ(gate.metal.name, mild_steel.name);
    EXPECT_DOUBLE_EQ(gate.mass.value(), 30.0);
    EXPECT_DOUBLE_EQ(gate.thickness.value(), 0.003);
    EXPECT_FALSE(gate.cooling_area);
    EXPECT_FALSE(gate.stays);
    EXPECT_FALSE(gate.from_weld);
    ASSERT_EQ(s.others.size(), 1u);
    EXPECT_EQ(s.others[0].name, "second welder");
    EXPECT_DOUBLE_EQ(s.others[0].current.value(), 150.0);
    EXPECT_DOUBLE_EQ(static_cast<double>(s.others[0].duty.share()), 0.4);
    EXPECT_DOUBLE_EQ(s.others[0].no_load->value(), 80.0);
}

TEST(WaysFile, NamesPlaceReasonAndNearestWord)
{
    for (const fault& f : faults) {
        SCOPED_TRACE(testing::PrintToString(f));
        try {
            const station_file_error e = error_of(with(two_ways, f.old_piece, f.new_piece));
            EXPECT_EQ(e.line(), f.line) << e.what();
            EXPECT_EQ(e.column(), f.column) << e.what();
            EXPECT_THAT(e.reason(), HasSubstr(f.reason));
            EXPECT_EQ(e.nearest(), f.nearest) << e.what();
        } catch (const std::logic_error& taken) {
            ADD_FAILURE() << taken.what();
        }
    }
}

// one station told twice: the file, and the program of docs and examples
TEST(WaysFile, TheExampleIsTheStationItDescribes)
{
    const station s = read_station(test::example_file("gate_two_clamps.toml"));
    EXPECT_EQ(s.path.size(), 9u);
    ASSERT_EQ(s.ways.size(), 2u);
    EXPECT_EQ(s.ways[0].name, "clamp on the gate");
    EXPECT_EQ(s.ways[1].kind, way_kind::stray);
    const loop_state state = solve_loop(s);
    ASSERT_TRUE(state.is_solved());
    double sum = 0.0;
    for (const way_state& w : state.ways) sum += w.current.value();
    EXPECT_NEAR(sum + state.parts[place_of(s, "work lead")].current.value(), 230.0, 1e-9 * 230.0);
}
