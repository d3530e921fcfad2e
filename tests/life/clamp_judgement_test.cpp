// What is judged about a clamp, ranked by what it does to the answer; the page of it is made here.
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <string>
#include <vector>

#include <gtest/gtest.h>

#include <weldloop/core/literals.hpp>
#include <weldloop/part/welding_cable.hpp>
#include <weldloop/weldloop.hpp>

#include "support/near.hpp"

using namespace weldloop;
using namespace weldloop::literals;

namespace {

clamp_use on_rust(const work_clamp& clamp)
{
    clamp_use u{.joint = {.clamp = clamp, .onto = mild_steel, .surface = surface_state::light_rust},
                .lead = welding_cable(square_mm(70), 10_m),
                .load = {.current = 300_A, .duty = duty_cycle::of(6_min, 10_min)},
                .where = {.air = 25_degC}};
    u.service.openings = clamp.kind == clamp_kind::bolted ? 0.0 : 20.0;
    u.service.interpass = 120_degC;
    return u;
}

const judged_number* named(const std::vector<judged_number>& all, const std::string& what)
{
    for (const judged_number& n : all)
        if (n.what.find(what) != std::string::npos) return &n;
    return nullptr;
}

std::string percent(fraction left)
{
    return number_text(100.0 * static_cast<double>(left), 2) + " %";
}

std::string hours(const std::optional<duration>& t)
{
    if (!t) return "not in 2000 h";
    const double h = t->value() / 3600.0;
    return h < 1.0 ? "first hour" : number_text(h, 2) + " h";
}

std::string page_of(const std::vector<work_clamp>& clamps)
{
    std::ostringstream out;
    out << "# What is judged about clamps {#clamp_judgement_page}\n\n"
           "Every judged number of a clamp and its surface with what it does to the answer, the largest first "
           "(`weldloop::judged_numbers_of`): 300 A at\n60 % on lightly rusted work kept at 120 degC, 70 mm2, twenty "
           "openings a shift (a lug none), 2000 h of shift; the typical case with that\nnumber alone moved to either "
           "end of "
           "its range. The ranges are judgement too (`weldloop::judged_ranges`). This page is made by\n"
           "`tests/life/clamp_judgement_test.cpp`.\n";
    for (const work_clamp& c : clamps) {
        const clamp_use u = on_rust(c);
        const grip_forecast f = grip_over_time(u);
        out << "\n## " << c.name << "\n\nAs judged " << percent(f.grip_left) << " left.\n\n"
            << "| number | judged | lower | left, quarter lost | upper | left, quarter lost "
               "|\n|---|---|---|---|---|---|\n";
        for (const judged_number& n : judged_numbers_of(u))
            out << "| " << n.what << " | " << n.judged << " | " << n.one.value << " | " << percent(n.one.grip_left)
                << ", " << hours(n.one.quarter_lost) << " | " << n.other.value << " | " << percent(n.other.grip_left)
                << ", " << hours(n.other.quarter_lost) << " |\n";
    }
    return out.str();
}

}  // namespace

TEST(ClampJudgement, IsRankedAndNamesItsSource)
{
    for (const work_clamp& c : {stamped_spring_clamp(300_A), cast_spring_clamp(300_A), spring_clamp(300_A),
                                screw_clamp(300_A), bolted_work_lug(square_mm(70))}) {
        const clamp_use u = on_rust(c);
        const double as_judged = static_cast<double>(grip_over_time(u).grip_left);
        const std::vector<judged_number> all = judged_numbers_of(u);
        EXPECT_GE(all.size(), 9U) << c.name;
        double last = 1.0;
        for (const judged_number& n : all) {
            ASSERT_NE(n.from, nullptr);
            EXPECT_EQ(n.from->kind, source_kind::judgement) << n.what;
            EXPECT_LE(n.effect, last);
            last = n.effect;
            const double a = static_cast<double>(n.one.grip_left), b = static_cast<double>(n.other.grip_left);
            EXPECT_NEAR(n.effect, std::max({a, b, as_judged}) - std::min({a, b, as_judged}), 1e-9) << n.what;
        }
        EXPECT_EQ(named(all, "spring") != nullptr, c.spring.has_value()) << c.name;
        EXPECT_EQ(named(all, "opening") != nullptr, u.service.openings > 0.0);
    }
}

// The signs that physics gives each of them.
TEST(ClampJudgement, MovesTheAnswerTheRightWay)
{
    const std::vector<judged_number> all = judged_numbers_of(on_rust(stamped_spring_clamp(300_A)));
    const auto rises = [&](const char* what, bool with_it) {
        const judged_number* n = named(all, what);
        ASSERT_NE(n, nullptr) << what;
        EXPECT_EQ(n->one.grip_left < n->other.grip_left, with_it) << what;
        EXPECT_GT(n->effect, 0.0) << what;
    };
    rises("surface light rust", false);
    rises("stress of the spring", false);
    rises("surface that the air sees", true);
    rises("emissivity", true);
    rises("arms, pivot", false);
    rises("cable connection", false);
    rises("current through the spring", false);
    rises("sink of heat", true);
    rises("relaxation of the spring", false);
    rises("wear of an opening", false);
    clamp_use knocked = on_rust(spring_clamp(300_A));
    knocked.joint.surface = surface_state::clean;
    knocked.service.openings = 0.0;
    knocked.service.knocks = 2.0;
    EXPECT_NE(named(judged_numbers_of(knocked), "knock"), nullptr);
    EXPECT_EQ(named(all, "film"), nullptr);  // steel on steel
}

// docs/pages/clamp_judgement.md; run with WELDLOOP_WRITE_ACCURACY=1 to make it anew.
TEST(ClampJudgement, PageIsWhatTheLibrarySays)
{
    const std::string page = page_of(
        {stamped_spring_clamp(300_A), cast_spring_clamp(300_A), screw_clamp(300_A), bolted_work_lug(square_mm(70))});
    const std::filesystem::path file =
        std::filesystem::path(WELDLOOP_INCLUDE_DIR).parent_path() / "docs" / "pages" / "clamp_judgement.md";
    if (std::getenv("WELDLOOP_WRITE_ACCURACY") != nullptr) std::ofstream(file) << page;
    std::ifstream in(file);
    std::ostringstream kept;
    kept << in.rdbuf();
    EXPECT_EQ(kept.str(), page);
}
