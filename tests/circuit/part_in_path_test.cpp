#include <vector>

#include <gtest/gtest.h>

#include <weldloop/circuit/loop.hpp>
#include <weldloop/circuit/lug_behaviour.hpp>
#include <weldloop/circuit/part_in_path.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/law/crimp.hpp>
#include <weldloop/material/metals.hpp>
#include <weldloop/part/crimped_lug.hpp>
#include <weldloop/part/welding_cable.hpp>
#include <weldloop/weldloop.hpp>

#include "law/contact_fixture.hpp"
#include "support/near.hpp"

namespace {

using namespace weldloop;

const conductor_size size = square_mm(70);

work_connection connection(const work_clamp& c)
{
    return {.clamp = c, .onto = mild_steel, .name = "clamp"};
}

work_connection clamp_at(const std::vector<path_part>& path, std::size_t at)
{
    return std::get<work_connection>(part_in_path(path, at));
}

resistance of(const work_connection& w)
{
    return 1.0 / w.clamp.termination.typical;
}

}  // namespace

// relation: a clamp's way to its cable is a sound crimp and its arms (crimp_resistance(), the MIL-T-7928E limits); the
// crimp goes to the lug beside it, on either side, the arms stay; without a lug nothing changes
TEST(PartInPath, ALugTakesTheCrimpFromTheClamp)
{
    const cable lead = welding_cable(size, 10_m).named("lead");
    const lug beside = crimped_lug("lug", size);
    for (const work_clamp& c : {spring_clamp(300_A), screw_clamp(300_A)}) {
        const work_connection w = connection(c);
        EXPECT_NEAR_REL(of(clamp_at({w, lead}, 0)).value(), (crimp_resistance(size.area()).typical + c.arms).value(),
                        1e-12);
        EXPECT_EQ(clamp_at({w, lead}, 0).clamp.termination, c.termination);
        EXPECT_EQ(clamp_at({beside, lead, w, lead, beside}, 2).clamp.termination, c.termination);
        for (const work_connection& found : {clamp_at({w, beside, lead}, 0), clamp_at({lead, beside, w}, 2)}) {
            EXPECT_NEAR_REL(of(found).value(), c.arms.value(), 1e-12);
            EXPECT_EQ(found.clamp.termination, exactly(found.clamp.termination.typical));
            EXPECT_EQ(found.clamp.force, c.force);
        }
    }
    EXPECT_TRUE(std::holds_alternative<cable>(part_in_path({connection(spring_clamp(300_A)), lead}, 1)));
}

// a work lug has no arms: hardly anything is left of it, and it says that this is judged
TEST(PartInPath, AWorkLugKeepsNextToNothing)
{
    const work_connection found =
        clamp_at({connection(bolted_work_lug(size)), crimped_lug("lug", size), welding_cable(size, 5_m)}, 0);
    EXPECT_NEAR_REL(of(found).value(), least_arms.value(), 1e-12);
    bool said = false;
    for (const source* s : found.clamp.basis.sources()) said = said || s == &least_arms_judgement;
    EXPECT_TRUE(said);
}

// relation, through the solved loop: with a lug beside it a clamp drops what its jaws and arms have and no crimp; clamp
// and lug together drop one crimp and one palm more than jaws and arms, not two crimps
TEST(PartInPath, OneCrimpInTheLoop)
{
    const work_clamp c = spring_clamp(300_A);
    const cable lead = welding_cable(size, 10_m).named("lead");
    const lug beside = crimped_lug("lug", size);
    const auto drop = [&](std::vector<path_part> after_arc) {
        station s{.name = "bench", .job = {.process = process::smaw, .current = 200_A, .duty = duty_cycle::of(0.35)}};
        s.path = {welding_cable(size, 10_m).named("electrode lead"), arc{}};
        for (path_part& p : after_arc) s.path.push_back(std::move(p));
        const loop_state state = solve_loop(s);
        voltage sum = {};
        for (std::size_t i = 2; i + 1 < state.parts.size(); ++i) sum += state.parts[i].drop;
        return sum;
    };
    const voltage alone = drop({connection(c), lead}), with_lug = drop({connection(c), beside, lead});
    const voltage palm = 200_A / palm_conductance_of(beside).typical;
    const voltage crimp = 200_A * crimp_resistance(size.area()).typical;
    // the jaws are the larger part and their drop follows the clamp's temperature by less than a crimp's share
    EXPECT_NEAR((with_lug - alone).value(), palm.value(), 0.3 * palm.value());
    EXPECT_LT(with_lug, alone + palm + 0.5 * crimp);
}

TEST(PartInPath, RefusesWhatCannotBe)
{
    EXPECT_THROW((void)part_in_path({}, 0), out_of_range_error);
    EXPECT_THROW((void)part_in_path({arc{}}, 1), out_of_range_error);
    work_clamp c = spring_clamp(300_A);
    const auto with_arms = [&](double x) {
        c.arms = in_si<resistance>(x);
        return without_cable_connection(c);
    };
    EXPECT_REFUSES_BAD_NUMBERS(with_arms(x));
}
