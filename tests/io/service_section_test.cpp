// The use of a station in its file: what is taken over, what it changes, what is refused and where.
#include <string>
#include <string_view>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "io/example_stations.hpp"

#include <weldloop/core/literals.hpp>
#include <weldloop/io/station/station_file.hpp>

using namespace weldloop;
using namespace weldloop::literals;
using testing::HasSubstr;

namespace {

std::string used(std::string_view keys)
{
    return std::string(test::small_station) + "[service]\n" + std::string(keys) + "\n";
}
described_station read(std::string_view keys)
{
    return described_station_from_toml(used(keys), "use.toml");
}
/// The refusal of a section of one key; the section begins in line 19.
void expect_refused(std::string_view keys, std::size_t line, std::size_t column, std::string_view why)
{
    try {
        static_cast<void>(read(keys));
        ADD_FAILURE() << keys << " was taken";
    } catch (const station_file_error& e) {
        EXPECT_EQ(e.line(), line) << e.what();
        EXPECT_EQ(e.column(), column) << e.what();
        EXPECT_THAT(e.what(), HasSubstr(std::string(why)));
    }
}

}  // namespace

TEST(ServiceSection, ReachesClampsAndJoints)
{
    const described_station d = read(R"(look_ahead = "4000 h"
shift = "10 h"
rest = "14 h"
openings = 30
knocks = 2.5
drags = 4
on_work = "80 %"
clean_every = "40 h"
tighten_every = "500 h"
starts = 3
air = "salt"
motion = "shaken")");
    EXPECT_TRUE(d.service_is_stated);
    const station_service& s = d.service;
    EXPECT_EQ(s.horizon, 4000_h);
    EXPECT_EQ(s.clamps.shift, 10_h);
    EXPECT_EQ(s.clamps.rest, 14_h);
    EXPECT_EQ(s.clamps.openings, 30.0);
    EXPECT_EQ(s.clamps.knocks, 2.5);
    EXPECT_EQ(s.clamps.drags, 4.0);
    EXPECT_DOUBLE_EQ(static_cast<double>(s.clamps.on_work), 0.8);
    EXPECT_EQ(s.clamps.clean_every, 40_h);
    EXPECT_EQ(s.clamps.tighten_every, 500_h);
    EXPECT_EQ(s.joints.shift, 10_h);
    EXPECT_EQ(s.joints.rest, 14_h);
    EXPECT_EQ(s.joints.starts, 3.0);
    EXPECT_EQ(s.joints.air, joint_air::salt);
    EXPECT_EQ(s.joints.motion, joint_motion::shaken);
}

TEST(ServiceSection, LeftOutIsTheUseNobodyStated)
{
    const described_station d = described_station_from_toml(test::small_station, "use.toml");
    EXPECT_FALSE(d.service_is_stated);
    EXPECT_EQ(d.service.horizon, usual_forecast);
    EXPECT_EQ(d.service.clamps.rest, duration{});
    EXPECT_TRUE(d.observations.empty());
    // an empty section is that of single shifts by day, for clamps too
    const described_station e = read("");
    EXPECT_TRUE(e.service_is_stated);
    EXPECT_EQ(e.service.clamps.rest, 16_h);
    EXPECT_EQ(e.service.joints.rest, 16_h);
    EXPECT_EQ(e.service.clamps.shift, 8_h);
}

TEST(ServiceSection, RefusesWhatCannotBe)
{
    expect_refused("knock = 3", 20, 1, "nearest: \"knocks\"");
    expect_refused("look_ahead = \"40 years\"", 20, 18, "look_ahead");
    expect_refused("look_ahead = \"0 h\"", 20, 14, "above");
    expect_refused("look_ahead = \"262801 h\"", 20, 14, "allowed");
    expect_refused("shift = \"25 h\"", 20, 9, "allowed");
    expect_refused("rest = \"8761 h\"", 20, 8, "allowed");
    expect_refused("rest = 16", 20, 8, "bare number");
    expect_refused("openings = -1", 20, 12, "from 0 to 10000");
    expect_refused("drags = 10001", 20, 9, "from 0 to 10000");
    expect_refused("knocks = \"many\"", 20, 10, "write a number");
    expect_refused("starts = 1001", 20, 10, "from 0 to 1000");
    expect_refused("on_work = \"0 %\"", 20, 11, "nothing is gripped");
    expect_refused("on_work = \"101 %\"", 20, 11, "on_work");
    expect_refused("air = \"dampish\"", 20, 7, "nearest: \"damp\"");
    expect_refused("motion = \"shaky\"", 20, 10, "nearest: \"shaken\"");
    // no more cleanings than a forecast follows, whichever key stands first
    expect_refused("clean_every = \"1.9 h\"", 20, 15, "allowed");
    expect_refused("tighten_every = \"3.9 h\"\nlook_ahead = \"4000 h\"", 20, 17, "allowed");
    EXPECT_EQ(read("clean_every = \"2 h\"").service.clamps.clean_every, 2_h);
}

TEST(ServiceSection, ReachesTheForecastsOfTheAssessment)
{
    const described_station d = read("look_ahead = \"1000 h\"\nopenings = 400\nknocks = 50");
    const assessment left = assess(d.station), used_so = assess(d.station, d.service);
    const auto grip_of = [](const assessment& a) {
        for (const part_result& p : a.parts)
            if (p.grip) return *p.grip;
        return grip_forecast{};
    };
    ASSERT_FALSE(grip_of(left).points.empty());
    EXPECT_EQ(grip_of(left).horizon, usual_forecast);
    EXPECT_EQ(grip_of(used_so).horizon, 1000_h);
    EXPECT_GT(static_cast<double>(grip_of(used_so).causes.disturbance),
              static_cast<double>(grip_of(left).causes.disturbance));
    EXPECT_EQ(used_so.service.clamps.openings, 400.0);
    // drops and temperatures do not hang on the use
    EXPECT_EQ(used_so.total_drop.high, left.total_drop.high);
    // half the hours use up half of a covering's life
    for (std::size_t i = 0; i < left.parts.size(); ++i) {
        if (!left.parts[i].covering_use) continue;
        const double whole = left.parts[i].covering_use->typical;
        EXPECT_NEAR(used_so.parts[i].covering_use->typical, 0.5 * whole, 1e-9 * whole);
    }
    station_service wrong;
    wrong.horizon = duration{};
    EXPECT_THROW(static_cast<void>(assess(d.station, wrong)), out_of_range_error);
}
