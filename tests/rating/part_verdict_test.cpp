// What a verdict rests on: limits at the places they are defined for, spots, the probability of exceeding.
#include <weldloop/circuit/work_joint.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/part/crimped_lug.hpp>
#include <weldloop/part/welding_cable.hpp>
#include <weldloop/part/work_clamp.hpp>
#include <weldloop/weldloop.hpp>

#include <algorithm>
#include <cmath>
#include <random>
#include <string>

#include "support/near.hpp"

namespace {
using namespace weldloop;

station stand(current amps, const duty_cycle& duty = duty_cycle::of(0.35))
{
    station s{
        .name = "stand", .job = {.process = process::smaw, .current = amps, .duty = duty}, .where = {.air = 25_degC}};
    s.path = {welding_cable(square_mm(70), 10_m).named("electrode lead"), electrode_holder("holder", 400_A), arc{},
              work_connection{.clamp = screw_clamp(400_A), .onto = mild_steel, .name = "clamp"},
              welding_cable(square_mm(70), 10_m).named("work lead")};
    return s;
}

const part_result& part(const assessment& a, const std::string& name)
{
    return *std::find_if(a.parts.begin(), a.parts.end(), [&](const part_result& p) { return p.name == name; });
}

const limit_use& limit_at(const part_result& p, const std::string& where)
{
    return *std::find_if(p.limits.begin(), p.limits.end(), [&](const limit_use& u) { return u.at == where; });
}

// A holder's limit is that of its handle, whatever its jaws have. A new clean one keeps it at its own rating.
TEST(PartVerdict, ANewHolderIsWithinItsLimitAtItsRating)
{
    for (const double amps : {150.0, 200.0, 300.0, 400.0, 500.0}) {
        station s = stand(in_si<current>(amps));
        const electrode_holder holder("holder", in_si<current>(amps));
        s.path[0] = welding_cable(holder.size, 10_m).named("electrode lead");
        s.path[1] = holder;
        const assessment a = assess(s);
        const part_result& h = part(a, "holder");
        EXPECT_EQ(h.verdict, verdict::within_limit) << amps << " A: " << h.reason;
        EXPECT_EQ(h.peak_at, part_place::handle);
        double jaws = 0.0, handle = 0.0;
        for (const place_result& p : h.places)
            (p.what == part_place::jaws ? jaws : handle) = p.peak.typical.in_celsius();
        EXPECT_GT(jaws, handle + 5.0) << amps;
    }
}

// A lead is held against what its covering stands; a higher limit that was stated counts, and the part says so.
TEST(PartVerdict, ALeadHasTheLimitOfItsCovering)
{
    station s = stand(250_A);
    auto& lead = std::get<cable>(s.path.front());
    EXPECT_EQ(*part(assess(s), "electrode lead").limit, 85_degC);
    EXPECT_EQ(part(assess(s), "electrode lead").limit_name, "conductor limit of its covering");
    lead.covering = pvc;
    EXPECT_EQ(*part(assess(s), "electrode lead").limit, 70_degC);
    EXPECT_TRUE(part(assess(s), "electrode lead").notes.empty());
    lead.limit = 90_degC;
    const assessment a = assess(s);
    const part_result& stated = part(a, "electrode lead");
    EXPECT_EQ(*stated.limit, 90_degC);
    ASSERT_EQ(stated.notes.size(), 1U);
    EXPECT_EQ(stated.notes[0],
              "It is held against 90 degC, as stated; a covering of pvc over annealed copper stands 70 degC.");
    EXPECT_NE(stated.reason.find("above that of its covering"), std::string::npos) << stated.reason;
    EXPECT_TRUE(stated.basis.has(range_flag::limit_above_covering));
}

// The lead beside it is as hot as what it sits in, and judged by that.
TEST(PartVerdict, ALeadIsJudgedByItsHottestEnd)
{
    station s = stand(250_A);
    std::get<electrode_holder>(s.path[1]).surface = surface_state::light_rust;
    const assessment a = assess(s);
    double jaws = 0.0;
    for (const place_result& p : part(a, "holder").places)
        if (p.what == part_place::jaws) jaws = p.peak.typical.in_celsius();
    EXPECT_NEAR(part(a, "electrode lead").peak.typical.in_celsius(), jaws, 1e-9);
    EXPECT_GT(jaws, part(a, "work lead").peak.typical.in_celsius() + 20.0);
    EXPECT_GE(gravity_of(part(a, "electrode lead").verdict), gravity_of(verdict::may_exceed));
}

TEST(PartVerdict, ATypeTestOfNewClampsIsNoVerdict)
{
    station s = stand(20_A);
    s.path[3] = work_connection{
        .clamp = spring_clamp(200_A), .onto = mild_steel, .surface = surface_state::light_rust, .name = "clamp"};
    const assessment a = assess(s);
    const part_result& clamp = part(a, "clamp");
    ASSERT_FALSE(clamp.notes.empty());
    EXPECT_NE(clamp.notes.front().find("378 uohm"), std::string::npos) << clamp.notes.front();
    for (const limit_use& u : clamp.limits) EXPECT_EQ(u.name.find("type test"), std::string::npos);
    const auto resistance_now = mapped(contact_conductance_of(jaw_contact_of(std::get<work_connection>(s.path[3]))),
                                       [](conductance g) { return 1.0 / g.value(); });
    EXPECT_GT(resistance_now.typical, new_clamp_limit.value());
    EXPECT_LT(gravity_of(clamp.verdict), gravity_of(verdict::over_limit)) << clamp.reason;
}

// Close from nine tenths of the allowed rise on; over from the whole of it.
TEST(PartVerdict, ComesCloseBeforeItIsOver)
{
    int close = 0, within = 0, over = 0;
    for (double amps = 200.0; amps <= 420.0; amps += 2.0) {
        station s = stand(in_si<current>(amps), duty_cycle::continuous());
        s.path[1] = wire_gun("gun", 3_m);  // its head is far from the lead that is looked at
        s.path[3] = work_connection{.clamp = bolted_work_lug(square_mm(185)), .onto = mild_steel, .name = "clamp"};
        const assessment a = assess(s);
        const part_result& lead = part(a, "work lead");
        if (lead.verdict == verdict::may_exceed) continue;  // the joint's scatter reaches over
        const double used = (lead.peak.typical - s.where.air).value() / 60.0;
        EXPECT_NEAR(lead.used, used, 1e-9);
        EXPECT_EQ(lead.verdict, used > 1.0   ? verdict::over_limit
                                : used > 0.9 ? verdict::close_to_limit
                                             : verdict::within_limit)
            << amps << " A, " << used << ": " << lead.reason;
        close += lead.verdict == verdict::close_to_limit ? 1 : 0;
        within += lead.verdict == verdict::within_limit ? 1 : 0;
        over += lead.verdict == verdict::over_limit ? 1 : 0;
    }
    EXPECT_GE(close, 3);
    EXPECT_GE(within, 10);
    EXPECT_GE(over, 10);
}

// One case in twenty is the border between within and may exceed, one in two that to over.
TEST(PartVerdict, FollowsTheProbabilityOfExceeding)
{
    std::mt19937 random(3);
    const auto between = [&](double a, double b) { return std::uniform_real_distribution<double>(a, b)(random); };
    int within = 0, may = 0, over = 0;
    for (int i = 0; i < 120; ++i) {
        station s = stand(in_si<current>(between(120, 450)), duty_cycle::of(between(0.3, 1.0)));
        auto& clamp = std::get<work_connection>(s.path[3]);
        clamp.clamp = spring_clamp(in_si<current>(between(200, 500)));
        clamp.surface = i % 3 == 0   ? surface_state::clean
                        : i % 3 == 1 ? surface_state::oxidized
                                     : surface_state::mill_scale_bitten;
        for (const part_result& p : assess(s).parts) {
            const double exceeds = static_cast<double>(p.exceeds);
            double most = 0.0;
            for (const limit_use& u : p.limits) most = std::max(most, static_cast<double>(u.exceeds));
            EXPECT_GE(exceeds, most);
            switch (p.verdict) {
            case verdict::within_limit:
            case verdict::close_to_limit:
                EXPECT_LE(exceeds, 0.05 + 0.006) << p.name << ": " << p.reason;
                ++within;
                break;
            case verdict::may_exceed:
                EXPECT_GT(exceeds, 0.045) << p.name << ": " << p.reason;
                ++may;
                break;
            case verdict::over_limit:
                EXPECT_GT(std::max(exceeds, p.used - 0.5), 0.45) << p.name << ": " << p.reason;
                ++over;
                break;
            default: break;
            }
            for (const limit_use& u : p.limits) {
                if (!u.peak) continue;
                EXPECT_EQ(u.used_high > 1.0, u.peak->high > *u.limit) << p.name;
            }
        }
    }
    EXPECT_GE(within, 50);
    EXPECT_GE(may, 20);
    EXPECT_GE(over, 20);
}

// Air at or above a limit leaves no allowed rise: any warmth is past it.
TEST(PartVerdict, AirAboveALimitCondemns)
{
    for (const double air : {85.0, 95.0}) {
        station s = stand(20_A);
        s.where.air = temperature::celsius(air);
        const assessment a = assess(s);
        const part_result& lead = part(a, "work lead");
        EXPECT_EQ(lead.verdict, verdict::over_limit) << air;
        EXPECT_EQ(lead.used, 100.0) << air;
        EXPECT_EQ(static_cast<double>(limit_at(lead, "conductor").exceeds), 1.0) << air;
    }
}

// Just below the softening drop a contact is not over, just above it is.
TEST(PartVerdict, SpotsThatYieldAreOverTheirLimit)
{
    int below = 0, above = 0;
    for (double newton = 4.0; newton < 4000.0; newton *= 1.12) {
        station s = stand(120_A);
        s.path.insert(s.path.begin() + 3, contact{.metals = {mild_steel, mild_steel},
                                                  .force = in_si<force>(newton),
                                                  .surface = surface_state::clean,
                                                  .name = "frame on table"});
        const assessment a = assess(s);
        const part_result& c = part(a, "frame on table");
        if (c.verdict == verdict::spots_melting) continue;
        EXPECT_EQ(c.verdict == verdict::over_limit, c.softening_used > 1.0) << newton << " N: " << c.reason;
        if (c.verdict == verdict::within_limit) {
            EXPECT_LE(static_cast<double>(c.exceeds), 0.06) << c.reason;
        }
        (c.softening_used > 1.0 ? above : below) += 1;
    }
    EXPECT_GE(below, 5);
    EXPECT_GE(above, 3);
}

// The band of the whole loop: nearer below than above, for resistances scatter by factors.
TEST(PartVerdict, TheTotalReachesFartherUpThanDown)
{
    station s = stand(150_A);
    std::get<work_connection>(s.path[3]).surface = surface_state::oxidized;
    const band<voltage> total = assess(s).total_drop;
    EXPECT_GT((total.high - total.typical).value(), 1.2 * (total.typical - total.low).value());
    EXPECT_GT((total.typical - total.low).value(), 0.0);
}

}  // namespace
