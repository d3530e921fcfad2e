// What text, JSON and page say of a clamp's life: the same, true in the poor case, and every key on the page of
// reports.
#include <cmath>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <regex>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include "io/example_stations.hpp"
#include "io/forbidden_words.hpp"
#include "io/markup_checker.hpp"

#include <weldloop/core/literals.hpp>
#include <weldloop/io/draw/standalone_drawing.hpp>
#include <weldloop/io/report/clamp_life_report.hpp>
#include <weldloop/life/clamp_life.hpp>
#include <weldloop/part/sold_clamp.hpp>
#include <weldloop/part/welding_cable.hpp>

using namespace weldloop;
using namespace weldloop::literals;
using nlohmann::json;
using testing::HasSubstr;
using testing::Not;

namespace {

// the gate shop: lightly rusted tube still warm from the last bead
clamp_use on_rust(const work_clamp& clamp, current amps)
{
    clamp_use u{.joint = {.clamp = clamp, .onto = mild_steel, .surface = surface_state::light_rust},
                .lead = welding_cable(square_mm(70), 10_m),
                .load = {.current = amps, .duty = duty_cycle::of(6_min, 10_min)},
                .where = {.air = 25_degC}};
    u.service.openings = 20.0;
    u.service.interpass = 120_degC;
    return u;
}

std::vector<work_clamp> kinds()
{
    return {stamped_spring_clamp(300_A), stamped_spring_clamp(600_A), cast_spring_clamp(300_A), screw_clamp(300_A),
            bolted_work_lug(square_mm(70))};
}

std::string joined(const std::vector<std::string>& lines)
{
    std::string out;
    for (const std::string& l : lines) out += l + "\n";
    return out;
}

}  // namespace

TEST(ClampLifeReport, SaysTimesOfAllCases)
{
    const clamp_life life = clamp_life_of(on_rust(stamped_spring_clamp(300_A), 300_A));
    const std::string text = joined(clamp_life_lines(life));
    const auto typical = [&](const clamp_hours& h) {
        EXPECT_TRUE(h.typical && h.typical->value() > 3600.0);
        return "in a poor case within the first hour, typically " +
               detail::hours_word(h.typical, life.horizon, "after ") + ", in a mild case ";
    };
    EXPECT_THAT(text, HasSubstr("A quarter of the grip it has now is lost: " + typical(life.quarter_lost)));
    EXPECT_THAT(text, HasSubstr("It no longer holds 5 m of its lead with a coupling, which takes 149 N at each jaw: " +
                                typical(life.cable_not_held)));
    ASSERT_TRUE(life.largest_current.poor);
    EXPECT_THAT(text, HasSubstr("Would keep it: no more than " +
                                number_text(std::floor(life.largest_current.poor->value()), 4) + " A: "));
    EXPECT_THAT(text, HasSubstr("Would keep it: a larger one, stamped spring clamp 600 A: "));
    EXPECT_THAT(text, HasSubstr("bolted work lug 70 mm2: 77 % left typically, "));
    EXPECT_THAT(text, HasSubstr("which does not keep the poor case."));
    EXPECT_THAT(text,
                HasSubstr("The clamp to buy: stamped spring clamp 600 A, which keeps its grip here in a poor case"));
    EXPECT_THAT(text, HasSubstr("Look at it again within the first hour of shift: "));
    EXPECT_THAT(text, HasSubstr("Hot metal burns: "));
    EXPECT_THAT(text,
                HasSubstr("Work on which it does, at this current and duty: none, however cool, not even typically."));
    EXPECT_EQ(test::forbidden_word_in(text), "");
}

TEST(ClampLifeReport, AClampThatHoldsIsSaidToHold)
{
    clamp_use u = on_rust(cast_spring_clamp(500_A), 100_A);
    u.joint.surface = surface_state::clean;
    u.service.interpass.reset();
    const std::string text = joined(clamp_life_lines(clamp_life_of(u)));
    EXPECT_THAT(text, HasSubstr("is not lost within 2000 h of shift, neither typically nor in a poor case"));
    EXPECT_THAT(text, HasSubstr("over 2000 h, typically and in a poor case."));
    EXPECT_THAT(text, HasSubstr("The clamp to buy: the same again."));
    EXPECT_THAT(text, HasSubstr("Look at it again after 2000 h of shift, as far as was looked ahead."));
    EXPECT_THAT(text, Not(HasSubstr("Would keep it")));
    EXPECT_THAT(text, Not(HasSubstr("burns")));
}

// A reading that is still good on a clamp that was left alone, and what it has once it is moved: both are said.
TEST(ClampLifeReport, SaysWhatAnUntouchedJointReads)
{
    clamp_use u = on_rust(spring_clamp(300_A), 320_A);
    u.joint.surface = surface_state::clean;
    u.service.openings = 0.0;
    u.service.film = false;
    const std::string text = joined(clamp_life_lines(clamp_life_of(u)));
    EXPECT_THAT(text, HasSubstr("Left untouched it still reads "));
}

// Work too hot for any clamp of the kind: nothing is offered that does not keep it.
TEST(ClampLifeReport, WhatNothingKeepsIsSaid)
{
    clamp_use u = on_rust(stamped_spring_clamp(300_A), 300_A);
    u.service.interpass = 900_degC;
    u.horizon = 262800_h;
    const clamp_life life = clamp_life_of(u);
    const std::string text = joined(clamp_life_lines(life));
    for (const clamp_cure& c : life.cures) EXPECT_GT(static_cast<double>(c.grip_left), 0.75);
    EXPECT_THAT(text, HasSubstr("Current with which it keeps its grip, at this duty: none, not even typically."));
    if (life.buy.empty()) {
        EXPECT_THAT(text, HasSubstr("None of the clamps tried keeps its grip here in a poor case."));
    }
}

TEST(ClampLifeReport, JsonHasItsKeysOnThePageAndUnits)
{
    const std::string page =
        test::content_of(test::example_file("").parent_path().parent_path().parent_path() / "docs/pages/report.md");
    const std::size_t from = page.find("## The life of a clamp");
    ASSERT_NE(from, std::string::npos);
    clamp_use cool = on_rust(stamped_spring_clamp(300_A), 200_A);
    cool.service.interpass = 300_degC;
    std::set<std::string> used;
    for (const clamp_use& u :
         {on_rust(stamped_spring_clamp(300_A), 300_A), on_rust(cast_spring_clamp(500_A), 80_A), cool}) {
        const json life = json::parse(clamp_life_json(clamp_life_of(u)));
        EXPECT_EQ(life.at("schema"), clamp_life_schema);
        const auto check = [&](const auto& self, const json& value, const std::string& key) -> void {
            if (value.is_object())
                for (const auto& [name, below] : value.items()) {
                    used.insert(name);
                    EXPECT_NE(page.find("`" + name + "`", from), std::string::npos) << name;
                    const bool of_band = name == "poor" || name == "typical" || name == "mild";
                    self(self, below, of_band ? key : name);
                }
            if (value.is_array())
                for (const json& below : value) self(self, below, key);
            if (!value.is_number()) return;
            bool named = false;
            for (const char* end : {"_A", "_h", "_N", "_degC", "_ohm"}) named = named || key.ends_with(end);
            const std::set<std::string> shares{"force",        "film",      "heat",          "disturbance",
                                               "largest_duty", "grip_left", "grip_left_poor"};
            EXPECT_NE(named, shares.contains(key)) << key;
        };
        check(check, life, "");
    }
    for (const char* key : {"amps_A", "clamp", "work_degC", "keeps_poor", "cable_needs_N"})
        EXPECT_TRUE(used.contains(key)) << key;
    const json life = json::parse(clamp_life_json(clamp_life_of(on_rust(cast_spring_clamp(500_A), 80_A))));
    EXPECT_EQ(life.at("quarter_lost_h").at("poor"), "not within horizon");
}

// The picture of docs/pages/grip_model.md. Run with WELDLOOP_WRITE_PICTURES=1 to draw it anew.
TEST(ClampLifeReport, PageAndPictureOfKinds)
{
    const std::vector<work_clamp> clamps = kinds();
    clamp_use u = on_rust(clamps.front(), 300_A);
    u.joint.clamp.name = "<a> & \"b\"";
    const std::vector<clamp_life_row> rows = compare_clamp_lives(clamps, u);
    const clamp_life life = clamp_life_of(u);
    const std::string page = clamp_life_page(life, rows);
    EXPECT_EQ(test::markup_checker(page.substr(page.find("<html"))).fault(), "");
    for (const std::string& line : clamp_life_lines(life)) EXPECT_THAT(page, HasSubstr(markup_escaped(line)));
    for (const clamp_life_row& r : rows) EXPECT_THAT(page, HasSubstr(markup_escaped(r.name)));
    EXPECT_EQ(test::forbidden_word_in(page), "");
    const std::string table = clamp_lives_text(rows, u.horizon);
    EXPECT_THAT(table, HasSubstr(detail::hours_word(life.quarter_lost.typical, u.horizon, "")));
    EXPECT_THAT(table, HasSubstr("within the first hour"));
    EXPECT_EQ(clamp_life_drawing({}, u.horizon), "");

    const std::string svg = standalone_drawing(clamp_life_drawing(rows, u.horizon));
    EXPECT_EQ(test::markup_checker(svg).fault(), "");
    const std::filesystem::path file =
        std::filesystem::path(WELDLOOP_INCLUDE_DIR).parent_path() / "docs" / "pictures" / "clamp_lives.svg";
    if (std::getenv("WELDLOOP_WRITE_PICTURES") != nullptr) std::ofstream(file) << svg;
    // to a whole drawing unit
    const auto whole = [](const std::string& text) { return std::regex_replace(text, std::regex(R"(\.[0-9]+)"), ""); };
    EXPECT_EQ(whole(test::content_of(file)), whole(svg));
}
