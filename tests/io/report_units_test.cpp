// Reports in the units of the person who wrote the station down.
#include <string>
#include <string_view>
#include <vector>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "io/example_stations.hpp"

#include <weldloop/core/literals.hpp>
#include <weldloop/io/report/first_actions.hpp>
#include <weldloop/io/report/report_page.hpp>
#include <weldloop/io/report/report_text.hpp>
#include <weldloop/io/station/units_section.hpp>

using namespace weldloop;
using namespace weldloop::literals;
using testing::HasSubstr;
using testing::Not;

namespace {

const shown_units american{.temperatures = "degF", .lengths = shown_lengths::feet};

shown_units units_of(std::string_view old_piece, std::string_view new_piece)
{
    return described_station_from_toml(test::with(test::small_station, old_piece, new_piece), "s.toml").units;
}
std::string name_of(const shown_units& u)
{
    return std::string(u.temperatures.name()) + (u.lengths == shown_lengths::feet ? ", ft" : ", m");
}

}  // namespace

// 0 degC = 32 degF and 100 degC = 212 degF by definition; 1 ft = 0.3048 m, 1 in = 25.4 mm (international, 1959)
TEST(ShownUnits, TellNumbersOfASentenceOver)
{
    EXPECT_EQ(in_shown_units("from 0 degC to 100 degC", american), "from 32 degF to 212 degF");
    EXPECT_EQ(in_shown_units("at -40 degC.", american), "at -40 degF.");
    EXPECT_EQ(in_shown_units("over 0.3048 m; 25.4 mm (12.7 mm)", american), "over 1 ft; 1 in (0.5 in)");
    EXPECT_EQ(in_shown_units("wind 5.08 m/s", american), "wind 1000 ft/min");
    // no unit of length: a section, a torque, a name of a thread, a rate, a word
    for (const char* kept : {"50 mm2", "20 Nm", "15 N m", "M8 m", "3 min", "0.5 mV", "2 m2", "1.2 nohm m", "x5 m"})
        EXPECT_EQ(in_shown_units(kept, american), kept);
    EXPECT_EQ(in_shown_units("0 degC, 1 m", {}), "0 degC, 1 m");
    EXPECT_EQ(in_shown_units("0 degC, 0.3048 m", {.temperatures = "degF"}), "32 degF, 0.3048 m");
    EXPECT_EQ(in_shown_units("0 degC, 0.3048 m", {.lengths = shown_lengths::feet}), "0 degC, 1 ft");
    EXPECT_EQ(in_shown_units("", american), "");
    EXPECT_EQ(in_shown_units("5", american), "5");
    EXPECT_EQ(in_shown_units("5 ", american), "5 ");
}

// A length that is written in both: once, in the reader's own.
TEST(ShownUnits, TakeOneOfALengthInBoth)
{
    EXPECT_EQ(in_shown_units("within 10 ft (3 m) of the holder", american), "within 10 ft of the holder");
    EXPECT_EQ(in_shown_units("within 10 ft (3 m) of the holder", {}), "within 3 m of the holder");
    EXPECT_EQ(in_shown_units("6 in to 10 in (152 mm to 254 mm) behind", american), "6 in to 10 in behind");
    EXPECT_EQ(in_shown_units("6 in to 10 in (152 mm to 254 mm) behind", {}), "152 mm to 254 mm behind");
    EXPECT_EQ(in_shown_units("5 ft (worn); 10 ft (3 mV)", {}), "5 ft (worn); 10 ft (3 mV)");
    EXPECT_EQ(in_shown_units("10 ft (3 m", american), "10 ft (9.84 ft");
    EXPECT_EQ(in_shown_units("lead 10 ft (3 m) is", {}, {.names = {"lead 10 ft (3 m)"}}), "lead 10 ft (3 m) is");
}

TEST(ShownUnits, LeaveNamesAsTheyAreWritten)
{
    station s = read_station(test::example_file("trailer_frame.toml"));
    std::get<cable>(s.path[1]).name = "spare 10 m at 0 degC";
    const detail::sentence_facts facts = detail::facts_of(s);
    ASSERT_EQ(facts.names, std::vector<std::string>{"spare 10 m at 0 degC"});
    EXPECT_EQ(in_shown_units("spare 10 m at 0 degC is at 100 degC", american, facts),
              "spare 10 m at 0 degC is at 212 degF");
}

// 124.4 degC is 255.9 degF: told over from what was printed, 124 degC, it would be 255
TEST(ShownUnits, AgreeWithATableThatRoundsByItself)
{
    EXPECT_EQ(in_shown_units("124 degC", american), "255 degF");
    EXPECT_EQ(in_shown_units("124 degC", american, {.exact = {temperature::celsius(124.4)}}), "256 degF");
    EXPECT_EQ(in_shown_units("124 degC", american, {.exact = {temperature::celsius(125.4)}}), "255 degF");
    for (const test::assessed_station& s : {test::gate_shop(), test::trailer_stand(), test::long_path()})
        for (const part_result& p : s.found.parts) {
            if (p.decided_by != deciding_fact::limit || !p.limit) continue;
            const std::string reason = in_shown_units(p.reason, american, detail::facts_of(s.is, &p));
            const auto row = deciding_row_of(p, american);
            if (p.peak.typical < temperature::celsius(100.0)) continue;  // those have a decimal in the sentence
            EXPECT_THAT(reason, testing::StartsWith(row.at + " typically " + decided_value(p, american) + " against " +
                                                    row.limit + " degF"));
        }
}

TEST(ShownUnits, AreThoseMostOfTheFileIsWrittenIn)
{
    EXPECT_EQ(name_of(units_of("name", "name")), "degC, ft");  // 32 degC, 50 ft
    EXPECT_EQ(name_of(units_of("32 degC", "90 degF")), "degF, ft");
    EXPECT_EQ(name_of(units_of("50 ft", "15 m")), "degC, m");
    EXPECT_EQ(name_of(units_of("air = \"32 degC\"", "")), "degF, ft");  // no temperature: as the lengths
    EXPECT_EQ(name_of(units_of("air = \"32 degC\"", "altitude = \"300 m\"")), "degC, m");  // one of each: SI
    EXPECT_EQ(name_of(units_of("length = \"50 ft\"", "name = \"old 2 m, 3 m\"\nlength = \"50 ft\"")), "degC, ft");
    // metres as mm, feet as inches; a torque and a section are no lengths
    EXPECT_EQ(name_of(units_of("onto = \"mild steel\"",
                               "onto = \"mild steel\"\nwork_thickness = \"10 mm\"\nsurface = \"clean\"")),
              "degC, m");
    EXPECT_EQ(name_of(read_described_station(test::example_file("gate_shop.toml")).units), "degF, ft");
    EXPECT_EQ(name_of(read_described_station(test::example_file("trailer_frame.toml")).units), "degC, m");
}

// A file without any length is told in feet where its temperatures are in degF, in metres where they are not.
TEST(ShownUnits, OfAFileWithoutLengthsAreThoseOfItsTemperatures)
{
    const auto units = [](std::string_view file) { return name_of(detail::read_units(toml::parse(file), {})); };
    EXPECT_EQ(units("air = \"90 degF\""), "degF, ft");
    EXPECT_EQ(units("air = \"90 degF\"\nlimit = \"85 degC\""), "degC, m");
    EXPECT_EQ(units("air = \"32 degC\""), "degC, m");
    EXPECT_EQ(units("current = \"90 A\""), "degC, m");
}

TEST(ShownUnits, AreThoseTheFileAsksFor)
{
    EXPECT_EQ(name_of(units_of("[job]", "[report]\ntemperatures = \"degF\"\nlengths = \"m\"\n[job]")), "degF, m");
    EXPECT_EQ(name_of(units_of("[job]", "[report]\nlengths = \"m\"\n[job]")), "degC, m");
    EXPECT_EQ(name_of(units_of("[job]", "[report]\n[job]")), "degC, ft");
    for (const auto& [written, line, reason] :
         {std::tuple{"[report]\ntemperatures = \"K\"\n[job]", 3U, "one of: degC, degF"},
          std::tuple{"[report]\nlengths = \"in\"\n[job]", 3U, "one of: m, ft"},
          std::tuple{"[report]\nunits = \"degF\"\n[job]", 3U, "unknown key \"units\""},
          std::tuple{"[report]\nlengths = 3\n[job]", 3U, "lengths"}}) {
        try {
            static_cast<void>(units_of("[job]", written));
            ADD_FAILURE() << written;
        } catch (const station_file_error& e) {
            EXPECT_EQ(e.line(), line) << e.what();
            EXPECT_THAT(std::string(e.what()), HasSubstr(reason));
        }
    }
}

TEST(ShownUnits, AreTheOnlyOnesOfATextReport)
{
    for (const test::assessed_station& s :
         {test::gate_shop(), test::gate_two_clamps(), test::open_bench(), test::trailer_readings()}) {
        const std::string text = report_text(s.is, s.found, s.remedies, {.answers = s.answers, .units = american});
        EXPECT_THAT(text, Not(HasSubstr("degC"))) << text.substr(text.find("degC") - 100, 160);
        EXPECT_THAT(text, Not(HasSubstr(" mm ")));
        EXPECT_THAT(text, HasSubstr("Surroundings  air " + to_text(s.is.where.air, "degF")));
        const std::string page = report_page(s.is, s.found, s.remedies, {.answers = s.answers, .units = american});
        const std::string before_sources =
            page.substr(page.find("<body>"), page.find("<summary>Surf") - page.find("<body>"));
        EXPECT_THAT(before_sources, Not(HasSubstr("degC")))
            << before_sources.substr(before_sources.find("degC") - 200, 260);
    }
}

TEST(ShownUnits, TellDifferencesWithoutTheOffsetOfTheScale)
{
    remedy r{.what = "do it", .cooled_by = 35_K};
    EXPECT_THAT(gain_line(r, loop_outcome::solved, american), HasSubstr("cools the part by 63 degF;"));
    EXPECT_THAT(gain_line(r, loop_outcome::solved), HasSubstr("cools the part by 35 K;"));
    EXPECT_EQ(observation_line(heat_observation{.part = "lug", .hottest = 100_degC, .error = 10_K}, american),
              "lug: hottest at 212 degF, within 18 degF");
}
