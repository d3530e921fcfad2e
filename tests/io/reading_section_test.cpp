// What was found on the spot, in a station file: every sort of it, and what is refused at which line and column.
#include <algorithm>
#include <string>
#include <string_view>
#include <variant>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "io/example_stations.hpp"

#include <weldloop/core/literals.hpp>
#include <weldloop/io/station/station_file.hpp>

using namespace weldloop;
using namespace weldloop::literals;
using testing::HasSubstr;

namespace {

/// The small loop with a named lead, and readings from line 20 on.
std::string with_readings(std::string_view readings)
{
    return test::with(test::small_station, "part = \"cable\"", "part = \"cable\"\nname = \"work lead\"") +
           "[[reading]]\n" + std::string(readings) + "\n";
}
std::vector<observation> read(std::string_view readings)
{
    return described_station_from_toml(with_readings(readings), "found.toml").observations;
}
void expect_refused(std::string_view readings, std::size_t line, std::size_t column, std::string_view why)
{
    try {
        static_cast<void>(read(readings));
        ADD_FAILURE() << readings << " was taken";
    } catch (const station_file_error& e) {
        EXPECT_EQ(e.line(), line) << e.what();
        EXPECT_EQ(e.column(), column) << e.what();
        EXPECT_THAT(e.what(), HasSubstr(std::string(why)));
    }
}

}  // namespace

TEST(ReadingSection, TakesVoltsAcrossAPartAndASpan)
{
    const auto found = read(R"(across = "work lead"
volts = "0.52 V"
current = "158 A"
error = "10 mV"
[[reading]]
across = "work clamp 3"
volts = "310 mV"
current = "160 A")");
    ASSERT_EQ(found.size(), 2U);
    const auto& one = std::get<reading>(found[0]);
    EXPECT_EQ(one.across, "work lead");
    EXPECT_EQ(one.to, "");
    EXPECT_DOUBLE_EQ(one.volts.value(), 0.52);
    EXPECT_DOUBLE_EQ(one.current.value(), 158.0);
    EXPECT_DOUBLE_EQ(one.error.value(), 0.01);
    const auto& other = std::get<reading>(found[1]);
    EXPECT_EQ(other.across, "work clamp 3");  // a part without a name, as the station calls it
    EXPECT_EQ(other.error, voltage{});

    const auto span = described_station_from_toml(test::content_of(test::example_file("trailer_readings.toml")),
                                                  "trailer_readings.toml");
    ASSERT_EQ(span.observations.size(), 6U);
    EXPECT_EQ(std::get<reading>(span.observations[0]).to, "work terminal");
    EXPECT_TRUE(span.service_is_stated);
}

TEST(ReadingSection, TakesEverythingElseOneFindsOut)
{
    const auto found = read(R"(across = "work lead"
hottest = "60 degC"
[[reading]]
across = "work lead"
hottest = "150 degF"
error = "10 K"
[[reading]]
across = "work lead"
four_wire = "420 uohm"
error = "5 uohm"
[[reading]]
across = "work clamp 3"
tightness = "30 %"
[[reading]]
across = "work clamp 3"
surface = "light rust"
[[reading]]
across = "work lead"
missing_strands = "35 %")");
    ASSERT_EQ(found.size(), 6U);
    const auto& warm = std::get<heat_observation>(found[0]);
    EXPECT_EQ(warm.part, "work lead");
    EXPECT_NEAR(warm.hottest.in_celsius(), 60.0, 1e-9);
    EXPECT_EQ(warm.error, heat_observation{}.error);
    EXPECT_NEAR(std::get<heat_observation>(found[1]).hottest.in_celsius(), 65.5556, 1e-3);
    EXPECT_DOUBLE_EQ(std::get<heat_observation>(found[1]).error.value(), 10.0);
    EXPECT_DOUBLE_EQ(std::get<four_wire_observation>(found[2]).ohms.value(), 420e-6);
    EXPECT_DOUBLE_EQ(std::get<four_wire_observation>(found[2]).error.value(), 5e-6);
    EXPECT_DOUBLE_EQ(std::get<tightness_observation>(found[3]).share, 0.3);
    EXPECT_EQ(std::get<surface_observation>(found[4]).seen, surface_state::light_rust);
    EXPECT_DOUBLE_EQ(static_cast<double>(std::get<strand_observation>(found[5]).missing), 0.35);
}

TEST(ReadingSection, RefusesWhatIsNoReading)
{
    expect_refused("across = \"work lead\"\nvolts = \"0.5 V\"", 20, 1, "lacks the key \"current\"");
    expect_refused("volts = \"0.5 V\"\ncurrent = \"100 A\"", 20, 1, "lacks the key \"across\"");
    expect_refused("across = \"work lead\"", 20, 1, "says nothing of what was found");
    expect_refused("across = \"work lead\"\nvolts = \"0.5 V\"\ncurrent = \"100 A\"\nhottest = \"60 degC\"", 24, 11,
                   "two findings");
    expect_refused("across = \"work laed\"\nhottest = \"60 degC\"", 21, 10, "nearest: \"work lead\"");
    expect_refused("across = \"arc 2\"\nhottest = \"60 degC\"", 21, 10, "it is one of");
    expect_refused("across = \"work lead\"\nto = \"work clamp 3\"\nvolts = \"1 V\"\ncurrent = \"100 A\"", 22, 6,
                   "holds the arc");
    expect_refused("across = \"work clamp 3\"\nto = \"work lead\"\nvolts = \"1 V\"\ncurrent = \"100 A\"", 22, 6,
                   "holds the arc");
    expect_refused("across = \"work lead\"\nto = \"work lead\"\nhottest = \"60 degC\"", 22, 6, "goes with \"volts\"");
    expect_refused("across = \"work lead\"\ncurrent = \"60 A\"\nhottest = \"60 degC\"", 22, 11, "goes with \"volts\"");
    expect_refused("across = \"work lead\"\nsurface = \"clean\"\nerror = \"4 K\"", 23, 9, "goes with");
    expect_refused("across = \"work lead\"\nhottest = \"60 degC\"\nerror = \"4 V\"", 23, 12, "\"error\" cannot be");
    expect_refused("across = \"work lead\"\nhottest = \"60 K\"", 22, 11, "allowed");
    expect_refused("across = \"work lead\"\nfour_wire = 420", 22, 13, "420 uohm");
    expect_refused("across = \"work lead\"\nfour_wire = \"-1 uohm\"", 22, 13, "allowed");
    expect_refused("across = \"work lead\"\ntightness = \"1001 %\"", 22, 13, "from 0 % to 1000 %");
    expect_refused("across = \"work lead\"\nsurface = \"rusty\"", 22, 11, "nearest: \"light rust\"");
    expect_refused("across = \"work lead\"\nmissing_strands = \"100 %\"", 22, 19, "missing_strands");
    expect_refused("across = \"work lead\"\nvolts = \"0.5 V\"\ncurrent = \"0 A\"", 23, 11, "above");
    expect_refused("across = \"work lead\"\nvolts = \"-0.5 V\"\ncurrent = \"9 A\"", 22, 9, "allowed");
    expect_refused("part = \"work lead\"\nhottest = \"60 degC\"", 21, 1, "unknown key");
    std::string many;
    for (int i = 0; i < 201; ++i) many += "across = \"work lead\"\nhottest = \"60 degC\"\n[[reading]]\n";
    expect_refused(many + "across = \"work lead\"\nhottest = \"60 degC\"", 20 + 3 * 200, 1, "more than 200");
}

TEST(ReadingSection, KeepsASpanWithinOneWay)
{
    const std::string file = test::content_of(test::example_file("gate_two_clamps.toml"));
    const auto lines = static_cast<std::size_t>(std::count(file.begin(), file.end(), '\n'));
    const std::string span = "[[reading]]\nvolts = \"1 V\"\ncurrent = \"100 A\"\nacross = \"gate clamp\"\nto = ";
    EXPECT_NO_THROW(static_cast<void>(described_station_from_toml(file + span + "\"second work lead\"\n", "two.toml")));
    try {
        static_cast<void>(described_station_from_toml(file + span + "\"work lead\"\n", "two.toml"));
        ADD_FAILURE();
    } catch (const station_file_error& e) {
        EXPECT_EQ(e.line(), lines + 5);
        EXPECT_EQ(e.column(), 6U);
        EXPECT_THAT(e.what(), HasSubstr("stands in another way"));
    }
    // a junction is a point, and no probe stands across a point
    EXPECT_THROW(static_cast<void>(described_station_from_toml(
                     file + "[[reading]]\nacross = \"return stud\"\nhottest = \"60 degC\"\n", "two.toml")),
                 station_file_error);
}
