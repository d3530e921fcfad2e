// Every form of the report tells of each surface state of the station its numbers, their spread and that they are
// judgement. Source of the numbers: tests/reference/contacts-surface-condition.csv, judgement throughout.
#include <string>
#include <vector>

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include "io/example_stations.hpp"

#include <weldloop/core/literals.hpp>
#include <weldloop/io/report/report_json.hpp>
#include <weldloop/io/report/report_page.hpp>
#include <weldloop/io/report/report_text.hpp>
#include <weldloop/io/report/surface_words.hpp>
#include <weldloop/material/metals.hpp>
#include <weldloop/part/crimped_lug.hpp>
#include <weldloop/part/welding_cable.hpp>

using namespace weldloop;
using namespace weldloop::literals;
using testing::HasSubstr;
using testing::Not;

namespace {

// a path with one contact of a state, whose lug has a clean palm
station with(surface_state s)
{
    station out{.name = "bench",
                .job = {.process = process::smaw, .current = 100_A, .duty = duty_cycle::of(0.3)},
                .where = {},
                .path = {welding_cable(awg(2), 10_m).named("electrode lead"), arc{},
                         contact{.metals = {mild_steel, mild_steel}, .force = 500_N, .surface = s, .name = "seat"},
                         crimped_lug("lug", awg(2)), welding_cable(awg(2), 10_m).named("work lead")}};
    return out;
}

}  // namespace

TEST(SurfaceWords, EveryStateInEveryForm)
{
    for (const surface_state state : all_surface_states) {
        const station s = with(state);
        const assessment found = assess(s);
        const std::string name(to_text(state));
        std::string expected = name + ": open, judgement - seat";
        if (const auto m = resistance_multiplier(state))
            expected = name + ": " + number_text(m->typical) + " (" + number_text(m->low) + ".." +
                       number_text(m->high) + "), judgement - seat";
        EXPECT_THAT(report_text(s, found, {}, {.detail = report_detail::whole}), HasSubstr("- " + expected)) << name;
        EXPECT_THAT(report_page(s, found, {}), HasSubstr("<li>" + expected)) << name;
        bool told = false;
        const nlohmann::json report = nlohmann::json::parse(report_json(s, found, {}));
        for (const auto& entry : report.at("surfaces")) {
            EXPECT_EQ(entry.at("kind"), "judgement");
            if (entry.at("state") != name) continue;
            told = true;
            EXPECT_EQ(entry.at("parts").front(), "seat");
            if (const auto m = resistance_multiplier(state)) {
                EXPECT_EQ(entry.at("over_clean").at("low"), m->low);
                EXPECT_EQ(entry.at("over_clean").at("typical"), m->typical);
                EXPECT_EQ(entry.at("over_clean").at("high"), m->high);
            } else {
                EXPECT_EQ(entry.at("over_clean"), "open");
            }
        }
        EXPECT_TRUE(told) << name;
    }
}

TEST(SurfaceWords, PartsOfOneStateStandTogether)
{
    const std::vector<surface_in_use> used = surfaces_in_use(test::gate_shop().is);
    ASSERT_FALSE(used.empty());
    EXPECT_EQ(used.front().state, surface_state::clean);
    EXPECT_THAT(surface_line(used.front()), HasSubstr("output lug, clamp lug"));
    std::size_t parts = 0;
    for (const surface_in_use& s : used) parts += s.parts.size();
    EXPECT_EQ(parts, 5U);  // three lugs, a contact, a clamp
}

// a station without any joint has no list
TEST(SurfaceWords, NothingToTell)
{
    station s = with(surface_state::clean);
    s.path = {welding_cable(awg(2), 10_m).named("a"), arc{}, welding_cable(awg(2), 10_m).named("b")};
    EXPECT_TRUE(surfaces_in_use(s).empty());
    EXPECT_THAT(report_text(s, assess(s), {}, {.detail = report_detail::whole}), Not(HasSubstr("Surfaces\n--")));
    EXPECT_THAT(report_page(s, assess(s), {}), Not(HasSubstr("<summary>Surfaces")));
}
