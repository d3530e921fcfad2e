// The part at fault from readings: against enumeration over every condition, against drawn stations whose loops are
// solved with the drawn joints, and on readings that cannot be.
#include <algorithm>
#include <array>
#include <chrono>
#include <cmath>
#include <cstddef>
#include <cstdio>
#include <cstdlib>
#include <optional>
#include <random>
#include <set>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <weldloop/circuit/loop.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/field/locate_fault.hpp>
#include <weldloop/field/next_look.hpp>
#include <weldloop/field/part_states.hpp>
#include <weldloop/law/joint_characteristic.hpp>
#include <weldloop/part/coupling.hpp>
#include <weldloop/part/crimped_lug.hpp>
#include <weldloop/part/electrode_holder.hpp>
#include <weldloop/part/lug.hpp>
#include <weldloop/part/plate.hpp>
#include <weldloop/part/set_screw.hpp>
#include <weldloop/part/stud_terminal.hpp>
#include <weldloop/part/welding_cable.hpp>
#include <weldloop/part/wire_gun.hpp>
#include <weldloop/part/work_clamp.hpp>

#include "support/near.hpp"

using namespace weldloop;
using namespace weldloop::literals;
using testing::ElementsAre;
using testing::IsSupersetOf;
using testing::UnorderedElementsAre;

namespace {

// A gate jig: covered electrodes, one way out and back.
station gate_jig()
{
    station s{.name = "gate jig",
              .job = {.process = process::smaw, .current = 180_A, .duty = duty_cycle::of(4_min, 10_min)},
              .where = {.air = 25_degC}};
    s.path = {crimped_lug("output lug", awg(1)),
              welding_cable(awg(1), 15_m).named("electrode lead"),
              electrode_holder("holder", 300_A),
              arc{},
              work_connection{.clamp = screw_clamp(400_A), .onto = mild_steel, .name = "work clamp"},
              crimped_lug("clamp lug", awg(1)),
              welding_cable(awg(1), 15_m).named("work lead"),
              crimped_lug("return lug", awg(1))};
    return s;
}

const suspected_part& part_of(const fault_search& f, std::string_view name)
{
    return *std::find_if(f.parts.begin(), f.parts.end(), [&](const suspected_part& p) { return p.name == name; });
}

// What each part of a loop has between its probes.
std::vector<voltage> drops_of(const station& s)
{
    const loop_state l = solve_loop(s);
    std::vector<voltage> out;
    for (const part_state& p : l.parts) out.push_back(p.drop - p.tip_drop - p.extension_drop);
    return out;
}
std::vector<observation> read_each(const station& s, const std::vector<voltage>& drops)
{
    std::vector<observation> out;
    for (std::size_t i = 0; i < s.path.size(); ++i)
        if (!std::holds_alternative<arc>(s.path[i]))
            out.push_back(reading{.across = name_of(s, i), .volts = drops[i], .current = s.job.current});
    return out;
}

}  // namespace

TEST(LocateFault, SoundLoopsAccuseNobody)
{
    const station s = gate_jig();
    const fault_search f = locate_fault(s, read_each(s, drops_of(s)));
    EXPECT_EQ(f.parts.size(), 7u);
    // a clean clamp and holder scatter so widely that light faults hide in their bands
    EXPECT_GT(static_cast<double>(f.none), 0.6);
    for (const suspected_part& p : f.parts) EXPECT_LT(static_cast<double>(p.probability), 0.25) << p.name;
    EXPECT_TRUE(f.doubtful.empty());
    EXPECT_FALSE(f.crossing);
    EXPECT_TRUE(f.basis.has(source_kind::judgement));
}

TEST(LocateFault, NothingKnownGivesTheRates)
{
    const fault_search f = locate_fault(gate_jig(), {});
    EXPECT_NEAR(static_cast<double>(part_of(f, "work clamp").probability), 0.15, 1e-12);
    EXPECT_NEAR(static_cast<double>(part_of(f, "holder").probability), 0.10, 1e-12);
    EXPECT_NEAR(static_cast<double>(f.none), 0.85 * 0.9 * std::pow(0.95, 3.0) * std::pow(0.97, 2.0), 1e-12);
    ASSERT_TRUE(f.next.has_value());
    EXPECT_EQ(f.next->across, "work clamp");
    for (const suspected_part& p : f.parts) EXPECT_FALSE(p.is_read);
    fault_search_settings settings;
    settings.rates.at(part_kind::lug) = 0.5;
    EXPECT_NEAR(static_cast<double>(part_of(locate_fault(gate_jig(), {}, settings), "clamp lug").probability), 0.5,
                1e-12);
}

namespace {

// The states of two neighbours and what readings say of them, every pair summed up by hand: nothing of the search but
// the states themselves.
struct by_hand {
    std::array<double, 2> fault{};
    double none = 0.0, wrong = 0.0;  // of the span
};
by_hand enumerated(const std::array<detail::part_states, 2>& part, double own, double span)
{
    // readings across one part that is failing wander by 15 % beside
    const auto density = [](double x, double read, bool is_failing = false) {
        const double meter =
            std::hypot((0.008 * read * 180.0 + 1e-3) / 180.0, read * (0.025 + 1.0 / 180.0)) / 1.959963984540054;
        const double error = is_failing ? std::hypot(meter, 0.15 * x) : meter;
        const double z = (x - read) / error;
        return std::fabs(z) < (is_failing ? 5.0 : 8.0)
                   ? 0.98 * std::exp(-0.5 * z * z) / (error * std::sqrt(2.0 * 3.141592653589793))
                   : 0.0;
    };
    const auto wrong = [](double read) { return 0.02 / (std::max(read, 1e-7) * 16.0); };
    by_hand out;
    double whole = 0.0;
    for (std::size_t i = 0; i < part[0].size(); ++i)
        for (std::size_t j = 0; j < part[1].size(); ++j) {
            const double x = part[0].ohms[0][i], y = part[1].ohms[0][j];
            const bool fails = part[0].conditions[part[0].condition[i]].what.is_beyond_wear;
            const double first = part[0].prior[i] * part[1].prior[j] * (density(x, own, fails) + wrong(own));
            const double weight = first * (density(x + y, span) + wrong(span));
            whole += weight;
            out.wrong += first * wrong(span);
            if (part[0].condition[i] > 0) out.fault[0] += weight;
            if (part[1].condition[j] > 0) out.fault[1] += weight;
            if (part[0].condition[i] == 0 && part[1].condition[j] == 0) out.none += weight;
        }
    for (double& f : out.fault) f /= whole;
    out.none /= whole;
    out.wrong /= whole;
    return out;
}

}  // namespace

// A clamp read by itself and with the lug beside it: every pair of states summed up by hand. Sums kept whole give the
// same to rounding, those kept in cells to a thousandth.
TEST(LocateFault, AgainstEnumeration)
{
    const station s = gate_jig();
    const std::vector<voltage> drops = drops_of(s);
    for (const double more : {1.0, 2.5, 8.0}) {
        const voltage own = more * drops[4], span = own + 1.2 * drops[5];
        const std::vector<reading> meter{{.across = "work clamp", .volts = own, .current = 180_A},
                                         {.across = "work clamp", .volts = span, .current = 180_A, .to = "clamp lug"}};
        detail::states_of_parts solved(
            s, meter, {.closest = 1.8 * 0.025 / 1.959963984540054});  // as close as the search takes them
        by_hand exact = enumerated({solved.of(4, fault_rates{}), solved.of(5, fault_rates{})}, own.value() / 180.0,
                                   span.value() / 180.0);
        for (const double rate : {0.95, 0.97, 0.90, 0.97, 0.95}) exact.none *= rate;  // parts that nobody read
        for (const auto& [most, accuracy] :
             {std::pair{std::size_t{10'000'000}, 1e-9}, std::pair{std::size_t{64}, 3e-3}}) {
            const fault_search f =
                locate_fault(s, {meter[0], meter[1]}, {.rates = {}, .meters = {}, .most_values = most});
            EXPECT_NEAR(static_cast<double>(part_of(f, "work clamp").probability), exact.fault[0], accuracy) << more;
            EXPECT_NEAR(static_cast<double>(part_of(f, "clamp lug").probability), exact.fault[1], accuracy) << more;
            EXPECT_NEAR(static_cast<double>(f.none), exact.none, accuracy) << more;
        }
    }
}

TEST(LocateFault, NamesThePartAndItsCure)
{
    station s = gate_jig();
    station bad = s;
    std::get<work_connection>(bad.path[4]).surface = surface_state::heavy_rust;
    const fault_search f = locate_fault(s, read_each(s, drops_of(bad)));
    EXPECT_EQ(f.parts.front().name, "work clamp");
    EXPECT_GT(static_cast<double>(f.parts.front().probability), 0.95);
    EXPECT_NE(f.parts.front().remedy.what.find("clean the faces of work clamp"), std::string::npos);
    EXPECT_GT(f.parts.front().remedy.volts_regained, 0.05_V);
    // what a sound one drops is not regained
    EXPECT_NEAR(f.parts.front().remedy.volts_regained.value(), (drops_of(bad)[4] - drops_of(s)[4]).value(), 0.002);
    EXPECT_LT(static_cast<double>(f.none), 0.05);
    // over the whole way back alone its parts share the blame, and the next reading tells them apart
    const std::vector<voltage> drops = drops_of(bad);
    const voltage back = drops[4] + drops[5] + drops[6] + drops[7];
    const fault_search span =
        locate_fault(s, {reading{.across = "work clamp", .volts = back, .current = 180_A, .to = "return lug"}});
    ASSERT_TRUE(span.next.has_value());
    EXPECT_GT(static_cast<double>(part_of(span, "work clamp").probability),
              static_cast<double>(part_of(span, "return lug").probability));
    EXPECT_NEAR(static_cast<double>(part_of(span, "holder").probability), 0.10, 1e-9);  // nothing was read there
    EXPECT_FALSE(part_of(span, "holder").is_read);
    // the same span the other way round
    const fault_search turned =
        locate_fault(s, {reading{.across = "return lug", .volts = back, .current = 180_A, .to = "work clamp"}});
    EXPECT_EQ(static_cast<double>(turned.none), static_cast<double>(span.none));
}

// Two that contradict each other share the blame: from two in five a reading is in doubt.
TEST(LocateFault, DoubtBeginsAtTwoInFive)
{
    const station s = gate_jig();
    const auto doubts = [&s](double volts) {
        return locate_fault(s, {reading{.across = "work lead", .volts = in_si<voltage>(volts), .current = 180_A}})
            .doubtful;
    };
    double low = 0.0, high = 0.0;  // no volts where there must be some
    for (std::size_t i = 0; i < s.path.size(); ++i)
        if (name_of(s, i) == "work lead") high = drops_of(s)[i].value();
    ASSERT_FALSE(doubts(low).empty());
    ASSERT_TRUE(doubts(high).empty());
    for (int i = 0; i < 50; ++i) {
        const double middle = 0.5 * (low + high);
        (doubts(middle).empty() ? high : low) = middle;
    }
    EXPECT_NEAR(static_cast<double>(doubts(low).front().probability), 0.4, 0.01);
}

// 2479 V, more volts than any supply has without load, no volts where there must be some: no condition, and nothing
// else is blamed for it
TEST(LocateFault, ReadingsThatCannotBe)
{
    const station s = gate_jig();
    const std::vector<voltage> drops = drops_of(s);
    for (const voltage& volts : {2479_V, 130_V, 0_V}) {
        std::vector<voltage> read = drops;
        read[6] = volts;
        const fault_search f = locate_fault(s, read_each(s, read));
        ASSERT_EQ(f.doubtful.size(), 1u) << volts.value();
        EXPECT_EQ(f.doubtful[0].which, 5u);
        EXPECT_GT(static_cast<double>(f.doubtful[0].probability), 0.99);
        EXPECT_NE(f.doubtful[0].what.find("work lead fits no condition"), std::string::npos);
        EXPECT_NEAR(static_cast<double>(part_of(f, "work lead").probability), 0.03, 0.01);  // as before it was read
        EXPECT_GT(static_cast<double>(f.none), 0.5);
    }
}

namespace {

const suspected_part& failing_part_of(const fault_search& f, std::string_view name)
{
    const suspected_part& p = part_of(f, name);
    EXPECT_GT(static_cast<double>(p.failing), 0.5) << name;
    EXPECT_TRUE(may_be_failing(p));
    EXPECT_NE(p.condition.find("failing"), std::string::npos) << p.condition;
    EXPECT_TRUE(p.remedy.what.starts_with("take " + std::string(name) + " out of use")) << p.remedy.what;
    return p;
}
double failing(const fault_search& f, std::string_view name)
{
    return static_cast<double>(part_of(f, name).failing);
}

}  // namespace

// Far above every condition a part wears into, far below what cannot be: such a part is about to burn, or the reading
// was taken wrongly. Both are said, and nothing is called sound.
TEST(LocateFault, OneReadingFarAboveAllConditionsIsAPartThatFails)
{
    station s = gate_jig();
    s.job.current = 200_A;
    for (const auto& [name, volts] : {std::pair{"clamp lug", 0.3_V}, std::pair{"work clamp", 2_V},
                                      std::pair{"work lead", 5_V}, std::pair{"holder", 3_V}}) {
        const fault_search f = locate_fault(s, {reading{.across = name, .volts = volts, .current = 200_A}});
        const double fails = static_cast<double>(failing_part_of(f, name).failing);
        EXPECT_EQ(f.parts.front().name, name);
        EXPECT_LT(static_cast<double>(f.none), 0.5) << name;
        EXPECT_LT(fails, 0.95) << name;  // it may have been taken wrongly
        // the odds by hand: the rate, even by the logarithm over the decades up to 15 V, nine tenths of it; against two
        // of a hundred readings over sixteen natural logarithms
        const double least = std::log(15.0 / volts.value());
        EXPECT_LT(fails / (1.0 - fails), 0.02 * 0.9 / least / (0.02 / 16.0)) << name;
        for (const doubtful_observation& d : f.doubtful) {
            EXPECT_NE(d.what.find("has half parted or is failing, or probe, range or name were wrong"),
                      std::string::npos)
                << d.what;
            EXPECT_EQ(d.what.find("fits no condition"), std::string::npos) << d.what;
        }
    }
    // a gun and a torch too
    s.job.process = process::gmaw;
    s.path[2] = wire_gun("gun", 3_m);
    EXPECT_GT(failing(locate_fault(s, {reading{.across = "gun", .volts = 5_V, .current = 200_A}}), "gun"), 0.5);
    // it is looked at, supply off and locked, not read again under current
    const fault_search span =
        locate_fault(s, {reading{.across = "work clamp", .volts = 3.5_V, .current = 200_A, .to = "return lug"}});
    ASSERT_NE(span.failing_part(), nullptr);
    ASSERT_TRUE(span.next.has_value());
    EXPECT_TRUE(span.next->quantity != reading_quantity::volts || !may_be_failing(part_of(span, span.next->across)));
    // an arc drawn out, up to the volts without load: rarer, but it stops the job
    const fault_search drawn = locate_fault(
        gate_jig(), {reading{.across = "work lead", .volts = 30.0 * drops_of(gate_jig())[6], .current = 180_A}});
    EXPECT_GT(failing(drawn, "work lead"), 0.05);
    EXPECT_LT(failing(drawn, "work lead"), 0.5);
    EXPECT_FALSE(drawn.doubtful.empty());
}

// What agrees makes it all but certain: a second reading, the span that holds it, the whole way back, heat at the part,
// a bolt felt loose. A span that has no room for it takes it back.
TEST(LocateFault, WhatAgreesAndWhatContradictsAFailingPart)
{
    const station s = gate_jig();
    const std::vector<voltage> drops = drops_of(s);
    const reading high{.across = "clamp lug", .volts = 0.4_V, .current = 180_A};
    const double once = failing(locate_fault(s, {high}), "clamp lug");
    const auto with = [&](const observation& o) { return failing(locate_fault(s, {high, o}), "clamp lug"); };
    const auto back = [&](voltage lug) {
        return reading{.across = "work clamp",
                       .volts = drops[4] + lug + drops[6] + drops[7],
                       .current = 180_A,
                       .to = "return lug"};
    };
    EXPECT_GT(with(reading{.across = "clamp lug", .volts = 0.4_V, .current = 180_A}), 0.99);
    // it arcs: a second reading does not come out the same to the meter's error
    EXPECT_GT(with(reading{.across = "clamp lug", .volts = 0.48_V, .current = 180_A}), 0.99);
    EXPECT_GT(with(reading{.across = "clamp lug", .volts = 0.2_V, .current = 90_A}), 0.99);
    EXPECT_GT(with(back(0.4_V)), 0.99);
    EXPECT_LT(with(back(drops[5])), 0.02);
    EXPECT_GT(with(tightness_observation{.part = "clamp lug", .share = 0.1}), once);
    EXPECT_LT(with(tightness_observation{.part = "clamp lug", .share = 1.0}), once);
    EXPECT_GT(with(tightness_observation{.part = "clamp lug", .share = 1.0}), 0.25);  // a tight joint may arc too
    const temperature usual = solve_loop(s).parts[5].peak;
    const auto hotter = [&](double kelvin) {
        return heat_observation{.part = "clamp lug", .hottest = usual + in_si<temperature_difference>(kelvin)};
    };
    EXPECT_GT(with(hotter(60.0)), 0.99);       // as its watts make it
    EXPECT_GT(with(hotter(300.0)), 0.95);      // it may take more at other moments
    EXPECT_LT(with(hotter(0.0)), 0.1 * once);  // so many watts cannot stay cool
    // two spans that agree without the part itself being read: who of them it is stays open
    const fault_search spans = locate_fault(
        s, {back(2_V), reading{.across = "clamp lug", .volts = 2_V + drops[6], .current = 180_A, .to = "work lead"}});
    EXPECT_GT(failing(spans, "clamp lug") + failing(spans, "work lead"), 0.98);
    EXPECT_LT(static_cast<double>(spans.none), 0.02);
}

// Between what wear makes and the drop at which copper softens, 0.12 V, a joint is remade, but the job is not stopped.
TEST(LocateFault, AHalfPartedJointIsRemade)
{
    station s = gate_jig();
    s.job.current = 60_A;
    const reading high{.across = "clamp lug", .volts = 0.09_V, .current = 60_A};
    const fault_search f = locate_fault(s, {high, high});
    EXPECT_EQ(f.failing_part(), nullptr);
    const suspected_part& lug = part_of(f, "clamp lug");
    EXPECT_GT(static_cast<double>(lug.probability), 0.99);
    EXPECT_TRUE(lug.condition.starts_with("half parted")) << lug.condition;
    EXPECT_TRUE(lug.remedy.what.starts_with("cut clamp lug off")) << lug.remedy.what;
    EXPECT_EQ(f.parts.front().name, "clamp lug");
    EXPECT_LT(static_cast<double>(locate_fault(s, {high}).none), 0.5);
}

// Its rate can be set; the whole rate of a kind stays what it is.
TEST(LocateFault, TheRateOfFailingPartsIsSettable)
{
    const station s = gate_jig();
    const reading high{.across = "clamp lug", .volts = 0.4_V, .current = 180_A};
    fault_search_settings settings;
    const double usual = failing(locate_fault(s, {high}, settings), "clamp lug");
    settings.rates.failing_at(part_kind::lug) = 0.02;
    const double rarer = failing(locate_fault(s, {high}, settings), "clamp lug");
    // odds in proportion to the rate, hardly anything else explains it
    EXPECT_NEAR(rarer / (1.0 - rarer), 0.1 * usual / (1.0 - usual), 2e-3);
    EXPECT_NEAR(static_cast<double>(part_of(locate_fault(s, {}, settings), "clamp lug").probability), 0.05, 1e-12);
    EXPECT_LT(failing(locate_fault(s, {}, settings), "clamp lug"), 0.05 * 0.02);
    EXPECT_THROW(settings.rates.failing_at(part_kind::lug) = 1.5, out_of_range_error);
}

// The supply's own volts without load are the end of what can be read across a part.
TEST(LocateFault, NothingReadsMoreThanTheSupplyHas)
{
    station s = gate_jig();
    s.supply = supply{.kind = supply_kind::constant_current, .highest_output = 40_V};
    s.supply->no_load.peak = 60_V;
    const auto read = [&](voltage v) {
        return locate_fault(s, {reading{.across = "work clamp", .volts = v, .current = 180_A},
                                reading{.across = "work clamp", .volts = v, .current = 180_A}});
    };
    EXPECT_GT(failing(read(50_V), "work clamp"), 0.9);
    EXPECT_LT(failing(read(75_V), "work clamp"), 0.02);
    ASSERT_FALSE(read(75_V).doubtful.empty());
    EXPECT_NE(read(75_V).doubtful.front().what.find("fits no condition"), std::string::npos);
}

// The arc heats holder, gun and torch, and by how much is not reckoned: a temperature there is no evidence.
TEST(LocateFault, WhatTheArcHeatsIsNotJudgedByItsTemperature)
{
    station s = gate_jig();
    const fault_search before = locate_fault(s, {}),
                       after = locate_fault(s, {heat_observation{.part = "holder", .hottest = 60_degC}});
    EXPECT_NEAR(static_cast<double>(part_of(after, "holder").probability),
                static_cast<double>(part_of(before, "holder").probability), 1e-12);
    EXPECT_TRUE(after.doubtful.empty());
    ASSERT_EQ(after.not_judged.size(), 1u);
    EXPECT_EQ(after.not_judged[0].which, 0u);
    EXPECT_EQ(after.not_judged[0].what,
              "the temperature of holder is not judged: the arc heats it, and by how much is not reckoned");
    s.job.process = process::gmaw;
    s.path[2] = wire_gun("gun", 3_m);
    EXPECT_EQ(locate_fault(s, {heat_observation{.part = "gun", .hottest = 90_degC}}).not_judged.size(), 1u);
}

// A probe reaches a lead's covering, which is cooler than its conductor.
TEST(LocateFault, OfALeadTheCoveringIsFelt)
{
    station s = gate_jig();
    s.job.duty = duty_cycle::continuous();
    const part_state lead = solve_loop(s).parts[6];
    const auto covering = std::find_if(lead.places.begin(), lead.places.end(),
                                       [](const place_state& p) { return p.what == part_place::covering; });
    ASSERT_NE(covering, lead.places.end());
    ASSERT_GT((lead.peak - covering->peak).value(), 3.0);
    const auto longer = [&](temperature t) {
        return static_cast<double>(
            part_of(
                locate_fault(s, {heat_observation{
                                    .part = "work lead", .hottest = t, .error = in_si<temperature_difference>(1.0)}}),
                "work lead")
                .probability);
    };
    EXPECT_LT(longer(covering->peak), longer(lead.peak));
}

TEST(LocateFault, ReadingsAtOddsAreNamedBoth)
{
    const station s = gate_jig();
    const std::vector<voltage> drops = drops_of(s);
    const voltage back = drops[4] + drops[5] + drops[6] + drops[7];
    std::vector<observation> meter = read_each(s, drops);
    meter.push_back(reading{.across = "work clamp", .volts = 1.4 * back, .current = 180_A, .to = "return lug"});
    const fault_search f = locate_fault(s, meter);
    ASSERT_EQ(f.doubtful.size(), 1u);
    EXPECT_EQ(f.doubtful[0].which, 7u);
    EXPECT_EQ(f.doubtful[0].what,
              "the reading across work clamp to return lug contradicts that across work lead: read both again");
    // the same place read twice
    const fault_search twice =
        locate_fault(s, {reading{.across = "work lead", .volts = drops[6], .current = 180_A},
                         reading{.across = "work lead", .volts = 1.5 * drops[6], .current = 180_A}});
    ASSERT_FALSE(twice.doubtful.empty());
    for (const doubtful_observation& d : twice.doubtful)
        EXPECT_NE(d.what.find("contradicts that across work lead: read both again"), std::string::npos) << d.what;
    meter.back() = reading{.across = "work clamp", .volts = back, .current = 180_A, .to = "return lug"};
    EXPECT_TRUE(locate_fault(s, meter).doubtful.empty());
}

TEST(LocateFault, WhatIsSeenAndFeltWeighsConditions)
{
    const station s = gate_jig();
    const auto clamp = [&](const std::vector<observation>& told) {
        return static_cast<double>(part_of(locate_fault(s, told), "work clamp").probability);
    };
    const double before = clamp({});
    EXPECT_GT(clamp({surface_observation{.part = "work clamp", .seen = surface_state::heavy_rust}}), before);
    EXPECT_LT(clamp({surface_observation{.part = "work clamp", .seen = surface_state::clean}}), before);
    EXPECT_GT(clamp({tightness_observation{.part = "work clamp", .share = 0.3}}), before);
    station bad = s;
    std::get<work_connection>(bad.path[4]).surface = surface_state::heavy_rust;
    const double cool = clamp({heat_observation{.part = "work clamp", .hottest = solve_loop(s).parts[4].peak}}),
                 hot = clamp({heat_observation{.part = "work clamp", .hottest = solve_loop(bad).parts[4].peak}});
    EXPECT_GT(hot, 0.8);
    EXPECT_LT(cool, hot);
    const fault_search strands = locate_fault(s, {strand_observation{.part = "clamp lug", .missing = 0.4}});
    EXPECT_GT(static_cast<double>(part_of(strands, "clamp lug").probability), 0.05);
    EXPECT_NE(part_of(strands, "clamp lug").condition.find("40 %"), std::string::npos);
    // cold and without current: a lug that is twenty times what it should be
    const fault_search cold = locate_fault(s, {four_wire_observation{.part = "clamp lug", .ohms = 150_uohm}});
    EXPECT_GT(static_cast<double>(part_of(cold, "clamp lug").probability), 0.9);
}

TEST(LocateFault, RefusesWhatCannotBe)
{
    const station s = gate_jig();
    const auto ask = [&](const observation& o) { static_cast<void>(locate_fault(s, {o})); };
    EXPECT_THROW(ask(reading{.across = "arc", .volts = 20_V, .current = 180_A}), bad_station_error);
    EXPECT_THROW(ask(reading{.across = "no such lug", .volts = 1_V, .current = 180_A}), bad_station_error);
    EXPECT_THROW(ask(reading{.across = "holder", .volts = 1_V, .current = 180_A, .to = "work clamp"}),
                 bad_station_error);
    EXPECT_THROW(ask(reading{.across = "holder", .volts = -1_V, .current = 180_A}), out_of_range_error);
    EXPECT_THROW(ask(reading{.across = "holder", .volts = 1_V, .current = 0_A}), out_of_range_error);
    EXPECT_THROW(ask(heat_observation{.part = "holder", .hottest = 80_degC, .error = {}}), out_of_range_error);
    EXPECT_THROW(ask(tightness_observation{.part = "holder", .share = -0.1}), out_of_range_error);
    EXPECT_THROW(ask(four_wire_observation{.part = "holder", .ohms = -1.0 * 1_uohm}), out_of_range_error);
    station open = s;
    std::get<work_connection>(open.path[4]).surface = surface_state::painted_unbroken;
    EXPECT_THROW(static_cast<void>(locate_fault(open, {})), no_solution_error);
    fault_search_settings settings;
    settings.meters.amps_share = -0.1;
    EXPECT_THROW(static_cast<void>(locate_fault(s, {}, settings)), out_of_range_error);
}

// One place read far apart is as bad as any two: two temperatures, a temperature or a cold resistance against volts.
// Both are named.
TEST(LocateFault, AnyTwoKindsMayContradict)
{
    const station s = gate_jig();
    const loop_state sound = solve_loop(s);
    const temperature usual = sound.parts[4].peak;
    const auto hotter = [&](double kelvin) {
        return heat_observation{.part = "work clamp", .hottest = usual + in_si<temperature_difference>(kelvin)};
    };
    const auto said = [&](const std::vector<observation>& o) {
        std::string out;
        for (const doubtful_observation& d : locate_fault(s, o).doubtful) out += d.what + "\n";
        return out;
    };
    const observation volts = reading{.across = "work clamp", .volts = drops_of(s)[4], .current = 180_A};
    EXPECT_EQ(said({volts, hotter(0.0)}), "");
    const std::string heats = said({hotter(0.0), hotter(45.0)});
    EXPECT_NE(heats.find("the temperature of work clamp contradicts the temperature of work clamp: read both again"),
              std::string::npos)
        << heats;
    const std::string heat = said({volts, hotter(45.0)});
    EXPECT_NE(heat.find("the temperature of work clamp contradicts the reading across work clamp: read both again"),
              std::string::npos)
        << heat;
    const std::string cold = said({reading{.across = "work lead", .volts = drops_of(s)[6], .current = 180_A},
                                   four_wire_observation{.part = "work lead", .ohms = 8300_uohm}});
    EXPECT_NE(cold.find("the four-wire reading of work lead contradicts the reading across work lead: read both again"),
              std::string::npos)
        << cold;
    // against everything the model knows of the part
    EXPECT_NE(said({four_wire_observation{.part = "work lead", .ohms = 300'000_uohm}})
                  .find("the four-wire reading of work lead fits no condition"),
              std::string::npos);
    EXPECT_NE(said({hotter(250.0)}).find("fits no condition"), std::string::npos);
}

// A rusty clamp levels off: of four times the current it takes less than four times the volts. Read at either current
// it is found, and both readings agree.
TEST(LocateFault, EachReadingAtItsOwnCurrent)
{
    station s = gate_jig();
    s.job.duty = duty_cycle::continuous();
    station bad = s;
    std::get<work_connection>(bad.path[4]).surface = surface_state::heavy_rust;
    std::vector<observation> meter;
    std::array<double, 2> ohms{};
    std::size_t n = 0;
    for (const current& amps : {50_A, 200_A}) {
        bad.job.current = amps;
        const voltage volts = drops_of(bad)[4];
        ohms[n++] = (volts / amps).value();
        meter.push_back(reading{.across = "work clamp", .volts = volts, .current = amps});
    }
    ASSERT_GT(ohms[0], 1.5 * ohms[1]);
    const fault_search f = locate_fault(s, meter);
    EXPECT_TRUE(f.doubtful.empty()) << f.doubtful.front().what;
    EXPECT_EQ(f.parts.front().name, "work clamp");
    EXPECT_GT(static_cast<double>(f.parts.front().probability), 0.95);
    // spans that overlap at currents far apart are said to be taken as if apart
    const voltage back = drops_of(s)[4] + drops_of(s)[5];
    EXPECT_TRUE(
        locate_fault(s, {reading{.across = "work clamp", .volts = back, .current = 180_A, .to = "clamp lug"},
                         reading{.across = "work clamp", .volts = back / 3.6, .current = 50_A, .to = "clamp lug"}})
            .crossing);
    // at a current the loop as described cannot bear nothing is concluded, and said
    meter.push_back(reading{.across = "work lead", .volts = 1_V, .current = 1800_A});
    const fault_search burnt = locate_fault(s, meter);
    ASSERT_EQ(burnt.doubtful.size(), 1u);
    EXPECT_EQ(burnt.doubtful[0].which, 2u);
    EXPECT_NE(burnt.doubtful[0].what.find("no settled state: check current and range"), std::string::npos);
    EXPECT_EQ(burnt.parts.front().name, "work clamp");
}

// One current goes round a loop, and two clamp meters need not agree on it. What they differ by within their errors is
// no news; what they differ by beyond is said, wherever in the way they were taken.
TEST(LocateFault, ClampMetersThatDisagreeAreWeighedAndSaid)
{
    const station s = gate_jig();
    const std::vector<voltage> drops = drops_of(s);
    const auto read_twice = [&](const current& other, const meters& m) {
        return locate_fault(s,
                            {reading{.across = "work lead", .volts = drops[6], .current = 180_A},
                             reading{.across = "work lead", .volts = drops[6], .current = other}},
                            {.meters = m});
    };
    const meters exact{.amps_share = 0.0, .amps_floor = 0_A};
    EXPECT_TRUE(read_twice(180_A, exact).doubtful.empty());
    EXPECT_TRUE(read_twice(188_A, {}).doubtful.empty());
    // without an error of the meters 4 % is a contradiction, and with it a tenth is
    for (const fault_search& f : {read_twice(188_A, exact), read_twice(200_A, {})}) {
        ASSERT_FALSE(f.doubtful.empty());
        for (const doubtful_observation& d : f.doubtful)
            EXPECT_NE(d.what.find("contradicts that across work lead: read both again"), std::string::npos) << d.what;
    }
    // with a third too much a lead would have less resistance than its copper
    const fault_search third = read_twice(240_A, {});
    ASSERT_EQ(third.doubtful.size(), 1u);
    EXPECT_EQ(third.doubtful[0].which, 1u);
    EXPECT_EQ(third.doubtful[0].what, "the reading across work lead fits no condition: check probe, range and name");
    // a meter that shows a third too much, at the whole way back and at one part of it
    const voltage back = drops[4] + drops[5] + drops[6] + drops[7];
    std::vector<observation> seen = read_each(s, drops);
    seen.push_back(reading{.across = "work clamp", .volts = back, .current = 188_A, .to = "return lug"});
    EXPECT_TRUE(locate_fault(s, seen).doubtful.empty());
    std::get<reading>(seen.back()).current = 240_A;
    const fault_search span = locate_fault(s, seen);
    ASSERT_EQ(span.doubtful.size(), 1u);
    EXPECT_EQ(span.doubtful[0].which, 7u);
    EXPECT_GT(static_cast<double>(span.doubtful[0].probability), 0.9);
    seen.back() = reading{.across = "work clamp", .volts = back, .current = 180_A, .to = "return lug"};
    std::get<reading>(seen[5]).current = 240_A;
    const fault_search one = locate_fault(s, seen);
    ASSERT_FALSE(one.doubtful.empty());
    EXPECT_TRUE(std::any_of(one.doubtful.begin(), one.doubtful.end(),
                            [](const doubtful_observation& d) { return d.which == 5u; }));
}

// by hand: at 180 A the usual meters err together by hypot(0.8 %, 2.5 % + 1/180) = 3.159 % at 95 %, so that what is
// read falls into steps of 2 x 3.159 %/1.95996 = 3.223 % over 1 mV/180 A. Of a part that is at fault in four of ten,
// with a resistance three steps higher, a reading tells all, 0.6 log2(1/0.6) + 0.4 log2(1/0.4) = 0.97095 bits; with one
// that is 0.6 of a step higher, 1.9 %, nothing, though the voltmeter alone would tell the two apart.
TEST(LocateFault, ANextReadingErrsByBothMeters)
{
    const station s = gate_jig();
    const std::vector<observation> none;
    const detail::evidence_reader reader(s, meters{});
    const auto told_by = [&](double steps) {
        constexpr double step = 0.03223, floor = 1e-3 / 180.0;
        const auto ohms = [&](double n) { return floor * std::expm1(step * n); };
        detail::fault_evidence e;
        e.parts.resize(s.path.size());
        e.told.resize(s.path.size());
        const detail::candidate lead{.condition = {}, .weight = 0.0, .part = s.path[1], .cure = {}};
        e.parts[1].conditions.assign(2, {.what = lead});
        e.parts[1].condition = {0, 1};
        e.parts[1].prior = {0.6, 0.4};
        e.parts[1].ohms = {{ohms(100.2), ohms(100.2 + steps)}};
        return detail::next_look(s, none, e, reader, 0).most_telling(detail::fault_inference(e));
    };
    const std::optional<next_reading> far = told_by(3.0);
    ASSERT_TRUE(far.has_value());
    EXPECT_EQ(far->across, "electrode lead");
    EXPECT_NEAR(far->bits, 0.97095, 1e-5);
    EXPECT_FALSE(told_by(0.6).has_value());
}

// By volts alone grip and faces cannot be told apart; the next thing to do is to feel or look, and then the cure is
// known.
TEST(LocateFault, ALooseClampIsNamedOnceItIsFelt)
{
    const station s = gate_jig();
    station bad = s;
    std::get<work_connection>(bad.path[4]).grip_lost = 0.9;
    std::vector<observation> meter = read_each(s, drops_of(bad));
    const fault_search before = locate_fault(s, meter);
    EXPECT_EQ(before.parts.front().name, "work clamp");
    EXPECT_NE(before.parts.front().remedy.what.find("; if the drop stays: "), std::string::npos);
    EXPECT_THAT((std::vector{before.parts.front().remedy.id, before.parts.front().second_cure}),
                UnorderedElementsAre(remedy_id::tight_clamp, remedy_id::clean));
    ASSERT_TRUE(before.next.has_value());
    EXPECT_EQ(before.next->across, "work clamp");
    EXPECT_TRUE(before.next->quantity == reading_quantity::tightness ||
                before.next->quantity == reading_quantity::surface);
    EXPECT_NE(before.parts.front().remedy.what.find("tighten work clamp"), std::string::npos);  // first or second
    double shares = 0.0;
    for (const possible_condition& c : before.parts.front().conditions) shares += static_cast<double>(c.share);
    EXPECT_NEAR(shares, 1.0, 1e-9);
    meter.push_back(tightness_observation{.part = "work clamp", .share = 0.1});
    const fault_search after = locate_fault(s, meter);
    EXPECT_TRUE(after.parts.front().remedy.what.starts_with("tighten work clamp"));
    EXPECT_NE(after.parts.front().condition.find("grip"), std::string::npos);
    EXPECT_EQ(after.parts.front().condition_id, condition_id::loose);
    EXPECT_EQ(after.parts.front().remedy.id, remedy_id::tight_clamp);
    EXPECT_GT(static_cast<double>(after.parts.front().cure_share), 0.6);
}

// Programs go by ids: every condition that a part can be found in has one, and so has its cure. Which they are is
// written out here from what the conditions are.
TEST(LocateFault, ConditionsAndCuresHaveIds)
{
    const fault_search f = locate_fault(gate_jig(), {});
    std::set<std::string> of_lug, of_lead, of_clamp;
    for (const suspected_part& p : f.parts)
        for (const possible_condition& c : p.conditions) {
            EXPECT_NE(c.id, condition_id::as_described) << p.name << ": " << c.condition;
            ASSERT_TRUE(c.cure_id.has_value()) << p.name << ": " << c.cure;
            const std::string ids = std::string(to_text(c.id)) + " " + std::string(to_text(*c.cure_id));
            if (p.name == "clamp lug") of_lug.insert(ids);
            if (p.name == "work lead") of_lead.insert(ids);
            if (p.name == "work clamp") of_clamp.insert(ids);
        }
    EXPECT_THAT(of_lug, ElementsAre("failing out_of_use", "half_parted fresh_crimp", "loose tight_bolt",
                                    "loose_and_oxidized tight_bolt", "strands_missing fresh_crimp"));
    EXPECT_THAT(of_lead, ElementsAre("failing out_of_use", "longer measured_length", "strands_broken whole_lead",
                                     "thinner checked_size"));
    EXPECT_THAT(of_clamp, IsSupersetOf({"failing out_of_use", "galvanized clean", "greasy clean", "heavy_rust clean",
                                        "loose tight_clamp", "spatter_covered clean"}));
}

// No probe reaches the tip's own drop, and the arc heats the head; an unsteady arc tells of it.
TEST(LocateFault, AWornContactTip)
{
    station s = gate_jig();
    s.job.process = process::gmaw;
    s.path[2] = wire_gun("gun", 3_m);
    const voltage usual = drops_of(s)[2];
    const observation volts = reading{.across = "gun", .volts = usual, .current = 180_A};
    const auto gun = [&](const std::vector<observation>& o) { return part_of(locate_fault(s, o), "gun"); };
    const double before = static_cast<double>(gun({volts}).probability);
    const suspected_part unsteady = gun({volts, arc_observation{.part = "gun", .seen = arc_look::unsteady}});
    EXPECT_NEAR(before, 0.09 * 4.0 / 6.0 / (0.9 + 0.09 * 4.0 / 6.0), 0.01);  // broken or failing: ruled out
    const double odds = before / (1.0 - before) * 0.9 / 0.25;
    EXPECT_NEAR(static_cast<double>(unsteady.probability), odds / (1.0 + odds), 0.01);
    EXPECT_EQ(unsteady.condition, "contact tip worn");
    EXPECT_EQ(unsteady.condition_id, condition_id::worn_tip);
    EXPECT_EQ(unsteady.remedy.id, remedy_id::new_tip);
    EXPECT_NE(unsteady.remedy.what.find("fit a new contact tip"), std::string::npos);
    EXPECT_LT(static_cast<double>(gun({volts, arc_observation{.part = "gun"}}).probability), before);
    EXPECT_THROW(static_cast<void>(locate_fault(s, {arc_observation{.part = "work clamp"}})), bad_station_error);
}

// A table at 137 times its band fits no condition; a hundred and two readings, many of them nonsense, stay bounded
// work.
TEST(LocateFault, NothingIsLostAmongManyReadings)
{
    station s = gate_jig();
    s.path.insert(s.path.begin() + 4,
                  plate{.metal = mild_steel, .length = 1.2_m, .width = 0.8_m, .thickness = 10_mm, .name = "table"});
    const std::vector<voltage> drops = drops_of(s);
    std::vector<observation> meter = read_each(s, drops);
    meter.push_back(reading{.across = "table", .volts = 137.0 * drops[4], .current = 180_A});
    const fault_search one = locate_fault(s, meter);
    ASSERT_FALSE(one.doubtful.empty());
    EXPECT_EQ(one.doubtful.back().which, 8u);
    EXPECT_NE(one.doubtful.back().what.find("table fits no condition: check probe, range and name"), std::string::npos);
    std::mt19937 random(11);
    while (meter.size() < 102) {
        const std::size_t from = 5 + random() % 4, to = from + random() % (9 - from);
        voltage sum;
        for (std::size_t p = from; p <= to; ++p) sum += drops[p];
        meter.push_back(reading{.across = name_of(s, from),
                                .volts = (random() % 5 == 0 ? 40.0 : 1.0) * sum,
                                .current = 180_A,
                                .to = name_of(s, to)});
    }
    const auto began = std::chrono::steady_clock::now();
    const fault_search many = locate_fault(s, meter);
    const double seconds = std::chrono::duration<double>(std::chrono::steady_clock::now() - began).count();
    std::printf("102 readings: %.2f s, %zu doubtful\n", seconds, many.doubtful.size());
    EXPECT_LT(seconds, 20.0);  // unoptimised, on a busy machine
    EXPECT_GT(many.doubtful.size(), 10u);
    for (const suspected_part& p : many.parts) EXPECT_TRUE(std::isfinite(static_cast<double>(p.probability)));
}

// Meters without an error and volts that come from no such loop: a reading far finer than itself ends in bounded work.
TEST(LocateFault, AReadingWithoutErrorEndsInBoundedWork)
{
    const auto began = std::chrono::steady_clock::now();
    for (const double share : {0.0, 1e-300, 1e-12})
        for (const double volts : {1.3, 60.0}) {
            const fault_search_settings exact{.meters = {.volts_share = share,
                                                         .volts_floor = 0_V,
                                                         .amps_share = share,
                                                         .amps_floor = 0_A,
                                                         .ohms_share = share,
                                                         .ohms_floor = in_si<resistance>(0.0)}};
            const fault_search found = locate_fault(
                gate_jig(),
                {reading{.across = "work clamp", .volts = in_si<voltage>(volts), .current = 180_A, .to = "return lug"}},
                exact);
            for (const suspected_part& p : found.parts) EXPECT_TRUE(std::isfinite(static_cast<double>(p.probability)));
            EXPECT_TRUE(std::isfinite(static_cast<double>(found.none)));
            EXPECT_TRUE(!found.next || std::isfinite(found.next->bits));
        }
    EXPECT_LT(std::chrono::duration<double>(std::chrono::steady_clock::now() - began).count(), 20.0);  // unoptimised
}

// A loose stud that thin air hardly cools: the warmer it is the less it drops, and rounds from warmth to drop went back
// and forth between molten and colder than the air, to a resistance that is no number.
TEST(LocateFault, AJointWhoseDropFallsAsItWarms)
{
    station s{.name = "loose stud",
              .job = {.process = process::gmaw, .current = 281_A, .duty = duty_cycle::of(3297_s, 3575_s)},
              .where = {.air = temperature::celsius(-35.4), .lay = lay::trefoil, .altitude = 8300_m}};
    lug torn = crimped_lug("lug", square_mm(63));
    torn.missing_strands = 0.9;
    s.path = {
        welding_cable(square_mm(35), 0.125_m).named("tail"),
        welding_cable(square_mm(35), 1.16_m).named("feeder"),
        torn,
        wire_gun("gun", 3_m),
        arc{},
        work_connection{
            .clamp = screw_clamp(370_A), .onto = mild_steel, .surface = surface_state::galvanized, .name = "clamp"},
        set_screw{.name = "set screw", .size = square_mm(71), .tightening = 0.15_Nm, .ferrule = false},
        stud_terminal{.name = "stud", .tightening = 0.2_Nm, .lugs = 7},
        stud_terminal{.name = "last stud", .tightening = 17_Nm, .lugs = 6}};
    for (const double amps : {95.0, 200.0, 315.0}) {
        const std::vector<reading> meter{{.across = "stud", .volts = 0.2_V, .current = in_si<current>(amps)}};
        detail::states_of_parts solved(s, meter, {.at_job = true, .with_peaks = true, .closest = 0.023});
        for (const std::size_t part : {6u, 7u, 8u}) {
            const detail::part_states states = solved.of(part, {});
            for (const std::vector<double>& level : states.ohms)
                for (const double ohms : level) EXPECT_TRUE(std::isfinite(ohms) && ohms > 0.0) << amps << ' ' << part;
        }
    }
}
