// The drift of the joints of a circuit that nobody touches: against closed forms where no joint heats, against the loop
// solved with the resistance a march has come to, and against finer steps.
#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <optional>
#include <string>
#include <string_view>
#include <utility>

#include <gtest/gtest.h>

#include <weldloop/circuit/loop_body.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/life/joint_drift_body.hpp>
#include <weldloop/part/coupling.hpp>
#include <weldloop/part/electrode_holder.hpp>
#include <weldloop/part/lug.hpp>
#include <weldloop/part/welding_cable.hpp>
#include <weldloop/part/wire_gun.hpp>
#include <weldloop/part/work_clamp.hpp>

#include "support/near.hpp"

using namespace weldloop;
using namespace weldloop::literals;

namespace {

station frame_bench(current amps = 220_A)
{
    station s{.name = "trailer frame bench",
              .job = {.process = process::gmaw, .current = amps, .duty = duty_cycle::of(6_min, 10_min)},
              .where = {.air = 30_degC}};
    s.path = {welding_cable(aught(1), 40_ft).named("feeder lead"),
              coupling("coupling", aught(1)),
              welding_cable(aught(1), 10_ft).named("second lead"),
              wire_gun("gun", 10_ft),
              arc{},
              work_connection{.clamp = spring_clamp(300_A),
                              .onto = mild_steel,
                              .surface = surface_state::light_rust,
                              .name = "work clamp"},
              crimped_lug("clamp lug", awg(2)),
              welding_cable(awg(2), 40_ft).named("work lead")};
    return s;
}

const joint_drift& joint_of(const drift_forecast& f, std::string_view name, std::string_view contact)
{
    const auto found = std::find_if(f.joints.begin(), f.joints.end(),
                                    [&](const joint_drift& j) { return j.name == name && j.contact == contact; });
    if (found == f.joints.end()) throw std::invalid_argument("no such joint");
    return *found;
}

double hours(const std::optional<duration>& d)
{
    return d ? d->value() / 3600.0 : std::numeric_limits<double>::infinity();
}

}  // namespace

// Nothing heats at 1 A all the time: bolts settle by log10(1 + t/1 h) at 20 degC's pace or nearly, film grows at the
// air's temperature, and the air takes its share. Written out by hand from the laws' equations.
TEST(JointDrift, ColdJointsFollowClosedForms)
{
    station s = frame_bench(1_A);
    s.where.air = 20_degC;
    s.job.duty = duty_cycle::continuous();
    const joint_service service{.shift = 8_h, .rest = 16_h, .air = joint_air::damp};
    const drift_forecast f = joints_over_time(s, 2000_h, service);
    ASSERT_EQ(f.typical.outcome, loop_outcome::solved);
    EXPECT_EQ(f.typical.at, 2000_h);
    EXPECT_NEAR(f.clock.value() / 3600.0, 6000.0, 1e-6);
    // 2.2 nm + 0.9 nm log10(6) of oxide, beside 6000 h of air at 0.6 um a year, a fifth and a twentieth of it
    const double oxide = (2.2 + 0.9 * std::log10(6.0)) * 1e-9, air = 0.6e-6 * 6000.0 / 8766.0;
    const double settled = 0.02 * std::log10(1.0 + 6000.0);
    const double bolted = std::pow(1.0 - settled, -0.6) / (1.0 - (oxide + 0.2 * air) / 5e-6);
    const double crimped = 1.0 / (1.0 - (oxide + 0.05 * air) / 20e-6), plugged = 1.0 / (1.0 - (oxide + air) / 5e-6);
    EXPECT_NEAR_REL(joint_of(f, "clamp lug", "palm").typical.resistance_ratio, bolted, 1e-3);
    EXPECT_NEAR_REL(joint_of(f, "work clamp", "cable connection").typical.resistance_ratio, bolted, 1e-3);
    EXPECT_NEAR_REL(joint_of(f, "clamp lug", "crimp").typical.resistance_ratio, crimped, 1e-3);
    EXPECT_NEAR_REL(joint_of(f, "coupling", "plug").typical.resistance_ratio, plugged, 1e-3);
    // the mild end: what a joint presses stays as it was; 0.1 um a year
    const double mild = 1.0 / (1.0 - (oxide + 0.2 * air / 6.0) / 5e-6);
    EXPECT_NEAR_REL(joint_of(f, "clamp lug", "palm").mild.resistance_ratio, mild, 1e-3);
    EXPECT_EQ(static_cast<double>(joint_of(f, "clamp lug", "palm").mild.causes.force), 0.0);
    const drift_causes& why = joint_of(f, "clamp lug", "palm").typical.causes;
    EXPECT_NEAR(static_cast<double>(why.film) + static_cast<double>(why.force) + static_cast<double>(why.fretting), 1.0,
                1e-12);
    EXPECT_NEAR(static_cast<double>(why.film), -std::log(1.0 - (oxide + 0.2 * air) / 5e-6) / std::log(bolted), 2e-3);
}

// Where the current heats nothing a film grows by the hours, whatever share of them the current flows.
TEST(JointDrift, AFilmGrowsByTheHoursNotByTheDuty)
{
    station s = frame_bench(1_A);
    s.where.air = 100_degC;
    const auto film_of = [&s](const duty_cycle& duty) {
        s.job.duty = duty;
        const drift_forecast f = joints_over_time(s, 5000_h, {.rest = {}});
        return joint_of(f, "coupling", "plug").typical.resistance_ratio - 1.0;
    };
    const double whole = film_of(duty_cycle::continuous());
    EXPECT_GT(whole, 1e-3);
    EXPECT_NEAR_REL(film_of(duty_cycle::of(5_min, 10_min)), whole, 1e-3);
}

// Heat cycles by hand: 2 % of the force by 50 K and decade, of periods and of starts, at the swing the solved loop has.
TEST(JointDrift, HeatCyclesByTheSolvedSwing)
{
    station s = frame_bench();
    const loop_state now = solve_loop(s);
    ASSERT_TRUE(now.is_solved());
    const drift_forecast f = joints_over_time(s, 1_h, {.rest = {}, .starts = 8.0});
    double least = std::numeric_limits<double>::infinity(), most = -least;
    for (const temperature& t : now.parts[6].trace) {
        least = std::min(least, t.in_celsius());
        most = std::max(most, t.in_celsius());
    }
    // six periods and one start in an hour
    const double left = 1.0 - 0.02 * ((most - 30.0) / 50.0 * std::log10(2.0) + (most - least) / 50.0 * std::log10(7.0));
    const drift_case& crimp = joint_of(f, "clamp lug", "crimp").typical;
    EXPECT_NEAR(std::log(crimp.resistance_ratio) * static_cast<double>(crimp.causes.force), -std::log(left), 1e-4);
    EXPECT_GT(most - least, 1.0);
}

// slips by hand: 10 an hour, 1e4 of them double what is open, ten times as many under a bolt
TEST(JointDrift, SlipsInProportion)
{
    station s = frame_bench(1_A);
    const drift_forecast f = joints_over_time(s, 500_h, {.motion = joint_motion::moved});
    const auto fretted = [&](std::string_view name, std::string_view contact) {
        const drift_case& c = joint_of(f, name, contact).typical;
        return std::pow(c.resistance_ratio, static_cast<double>(c.causes.fretting));
    };
    EXPECT_NEAR_REL(fretted("coupling", "plug"), 1.5, 1e-6);
    EXPECT_NEAR_REL(fretted("clamp lug", "palm"), 1.05, 1e-6);
    EXPECT_NEAR_REL(fretted("clamp lug", "crimp"), 1.005, 1e-6);
}

// The loop solved by itself with the plug's force cut until its resistance stands where the march says it yields: its
// drop is the softening drop. The other joints' drift, which warms it a little, is left out there.
TEST(JointDrift, WhereAJointYieldsTheLoopSaysSoToo)
{
    const station s = frame_bench();
    const drift_forecast f = joints_over_time(s, 20000_h, {.air = joint_air::salt, .motion = joint_motion::moved});
    const drift_case& plug = joint_of(f, "coupling", "plug").typical;
    ASSERT_TRUE(plug.yields.has_value());
    EXPECT_GT(*plug.yields, 100_h);
    station worn = s;
    auto& part = std::get<coupling>(worn.path[1]);
    const double exponent = force_law_exponent(plug_contact_of(part).shape);
    part.force = std::pow(plug.resistance_ratio, -1.0 / exponent) * part.force;
    const loop_state there = solve_loop(worn);
    ASSERT_TRUE(there.is_solved());
    EXPECT_NEAR(there.parts[1].contacts[0].softening_used, plug.softening_used, 0.03);
    EXPECT_GE(plug.softening_used, 1.0);
}

TEST(JointDrift, FinerStepsChangeHoursByLittle)
{
    const station s = frame_bench();
    for (const auto& [air, motion] :
         {std::pair{joint_air::salt, joint_motion::still}, std::pair{joint_air::dry, joint_motion::shaken}}) {
        const joint_service service{.air = air, .motion = motion};
        const drift_forecast usual = joints_over_time(s, 20000_h, service),
                             fine = detail::drift_in_steps(s, 20000_h, service, 0.25);
        int yielding = 0;
        for (const joint_drift& j : usual.joints) {
            const joint_drift& k = joint_of(fine, j.name, j.contact);
            for (const auto& [one, other] :
                 {std::pair{&j.poor, &k.poor}, std::pair{&j.typical, &k.typical}, std::pair{&j.mild, &k.mild}}) {
                ASSERT_EQ(one->yields.has_value(), other->yields.has_value()) << j.name << ' ' << j.contact;
                if (!one->yields) {
                    EXPECT_NEAR_REL(one->resistance_ratio, other->resistance_ratio, 0.02);
                    continue;
                }
                EXPECT_NEAR_REL(hours(one->yields), hours(other->yields), 0.02) << j.name << ' ' << j.contact;
                ++yielding;
            }
        }
        EXPECT_GE(yielding, 2);
    }
}

TEST(JointDrift, PoorComesFirstAndHarshConditionsSooner)
{
    const auto first = [](const station& s, const joint_service& service) {
        return joints_over_time(s, 20000_h, service);
    };
    const station s = frame_bench();
    const joint_service salt{.air = joint_air::salt};
    double before = std::numeric_limits<double>::infinity();
    for (const joint_motion m : all_joint_motions) {
        const drift_forecast f = first(s, {.air = joint_air::salt, .motion = m});
        for (const joint_drift& j : f.joints) {
            EXPECT_LE(hours(j.poor.yields), hours(j.typical.yields)) << j.name << ' ' << j.contact;
            EXPECT_LE(hours(j.typical.yields), hours(j.mild.yields)) << j.name << ' ' << j.contact;
        }
        for (std::size_t k = 1; k < f.joints.size(); ++k)
            EXPECT_LE(hours(f.joints[k - 1].poor.yields), hours(f.joints[k].poor.yields));
        const double plug = hours(joint_of(f, "coupling", "plug").typical.yields);
        EXPECT_LT(plug, before);
        before = plug;
    }
    const double usual = hours(joint_of(first(s, salt), "coupling", "plug").typical.yields);
    EXPECT_LT(usual, hours(joint_of(first(s, {.air = joint_air::damp}), "coupling", "plug").typical.yields));
    EXPECT_LT(hours(joint_of(first(frame_bench(260_A), salt), "coupling", "plug").typical.yields), usual);
    EXPECT_GT(hours(joint_of(first(s, {.rest = {}, .air = joint_air::salt}), "coupling", "plug").typical.yields),
              usual);
}

// The clamp's jaws have a forecast of their own; brushes wear.
TEST(JointDrift, SaysWhichJointsItFollows)
{
    const drift_forecast f = joints_over_time(frame_bench(), 100_h);
    EXPECT_EQ(f.joints.size(), 6u);  // plug and crimps, crimps of the gun, cable connection, crimp and palm of the lug
    for (const joint_drift& j : f.joints) EXPECT_NE(j.contact, "jaws");
    EXPECT_EQ(joint_of(f, "coupling", "plug").hold, contact_hold::spring);
    EXPECT_EQ(joint_of(f, "clamp lug", "palm").hold, contact_hold::bolt);
    EXPECT_EQ(joint_of(f, "gun", "crimps").hold, contact_hold::crimp);
    EXPECT_TRUE(f.basis.has(range_flag::relative_trend));
    station stick = frame_bench();
    stick.path[3] = electrode_holder("holder", 300_A);  // every electrode seats its jaws anew
    const drift_forecast g = joints_over_time(stick, 100_h);
    EXPECT_EQ(joint_of(g, "holder", "crimp").hold, contact_hold::crimp);
    for (const joint_drift& j : g.joints) EXPECT_NE(j.contact, "jaws");
}

TEST(JointDrift, LoopsThatEndSaySo)
{
    station open = frame_bench();
    std::get<coupling>(open.path[1]).surface = surface_state::painted_unbroken;
    const drift_forecast none = joints_over_time(open, 100_h);
    EXPECT_EQ(none.typical.outcome, loop_outcome::open_circuit);
    EXPECT_TRUE(none.joints.empty());
    EXPECT_EQ(none.typical.at, duration{});
    // a joint that gets worse until the loop has no state left: a short thin jumper that is all but too hot by itself
    station hot = frame_bench(460_A);
    hot.job.duty = duty_cycle::continuous();
    std::get<cable>(hot.path[7]) = welding_cable(awg(4), 1_ft);
    hot.path[6] = crimped_lug("clamp lug", awg(4));
    hot.path.emplace_back(crimped_lug("far lug", awg(4)));
    ASSERT_TRUE(solve_loop(hot).is_solved());
    const drift_forecast f = joints_over_time(hot, 20000_h, {.air = joint_air::salt, .motion = joint_motion::shaken});
    EXPECT_EQ(f.typical.outcome, loop_outcome::ends);
    EXPECT_NE(f.poor.outcome, loop_outcome::solved);
    EXPECT_GT(f.poor.at, 1_h);
    EXPECT_LT(f.poor.at, f.typical.at);
    EXPECT_LT(f.typical.at, f.mild.at);
    ASSERT_FALSE(f.joints.empty());
    for (const joint_drift& j : f.joints) EXPECT_LE(j.poor.yields.value_or(duration{}), f.poor.at);
}

TEST(JointDrift, RefusesWhatCannotBe)
{
    const station s = frame_bench();
    EXPECT_THROW(static_cast<void>(joints_over_time(s, 0_h)), out_of_range_error);
    EXPECT_THROW(static_cast<void>(joints_over_time(s, 300000_h)), out_of_range_error);
    EXPECT_THROW(static_cast<void>(joints_over_time(s, 100_h, {.shift = 0_h})), out_of_range_error);
    EXPECT_THROW(static_cast<void>(joints_over_time(s, 100_h, {.rest = -1.0 * 1_h})), out_of_range_error);
    EXPECT_THROW(static_cast<void>(joints_over_time(s, 100_h, {.starts = 1001.0})), out_of_range_error);
    EXPECT_THROW(static_cast<void>(joints_over_time(s, 100_h, {.starts = std::nan("")})), not_finite_error);
}
