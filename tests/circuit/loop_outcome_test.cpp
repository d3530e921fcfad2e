// Whether a loop has a steady state, and that nothing else is printed as one.
#include <weldloop/circuit/loop_body.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/part/crimped_lug.hpp>
#include <weldloop/part/welding_cable.hpp>
#include <weldloop/part/work_clamp.hpp>

#include <algorithm>
#include <array>
#include <cmath>
#include <random>
#include <utility>
#include <vector>

#include "support/near.hpp"

namespace {
using namespace weldloop;

// Half of its strands in the barrel, between a steel table and a copper bar: its drop levels off and falls as its metal
// warms, so that an iteration between drop and temperature swings from one to the other. The balance by halving.
TEST(LoopOutcome, ALugWhoseDropFallsAsItWarmsHasItsOneState)
{
    const lug worn = crimped_lug("worn lug", aught(2)).with_missing_strands(0.5);
    station s{.name = "bench", .job = {.process = process::smaw, .current = 600_A}, .where = {.air = 25_degC}};
    s.path = {welding_cable(aught(4), 5_m).named("feeder"), arc{},
              plate{.metal = mild_steel, .length = 1_m, .width = 0.8_m, .thickness = 10_mm, .name = "table"}, worn,
              plate{.metal = annealed_copper, .length = 1_m, .width = 100_mm, .thickness = 10_mm, .name = "bar"}};
    const loop_state state = solve_loop(s);
    ASSERT_EQ(state.outcome, loop_outcome::solved);

    const thermal_body body = lug_body(worn.size);
    const auto drop_at = [&](double celsius) {
        const temperature t = temperature::celsius(celsius);
        const auto one = [&](const band<conductance>& cold, const metal_pair& metals) {
            return joint_drop(600_A, conductance_at(cold.typical, metals, t), joint_limits_of(metals, t)).value();
        };
        return one(crimp_conductance_of(worn), crimp_metals) + one(palm_conductance_of(worn), palm_metals);
    };
    double cold = 25.0, hot = 900.0;  // brass melts at 915 degC
    while (hot - cold > 1e-9) {
        const double middle = 0.5 * (cold + hot);
        const bool warms = 600.0 * drop_at(middle) > body_loss(body, temperature::celsius(middle), s.where).value();
        (warms ? cold : hot) = middle;
    }
    EXPECT_NEAR(state.parts[3].mean.in_celsius(), cold, 0.01);
    EXPECT_NEAR_REL(state.parts[3].drop.value(), drop_at(cold), 1e-4);
    EXPECT_GT(state.parts[3].loss.value(), 10.0);
}

std::vector<path_part> random_side(std::mt19937& random)
{
    const auto upto = [&](int n) { return std::uniform_int_distribution<int>(0, n)(random); };
    const auto between = [&](double a, double b) { return std::uniform_real_distribution<double>(a, b)(random); };
    const std::array sizes{awg(8), awg(4), awg(1), aught(2), aught(4), square_mm(16), square_mm(70), square_mm(185)};
    const auto size = [&] { return sizes[static_cast<std::size_t>(upto(7))]; };
    const auto state = [&] { return all_surface_states[static_cast<std::size_t>(upto(9))]; };  // unbroken paint is open
    std::vector<path_part> out;
    for (int k = upto(4); k >= 0; --k) switch (upto(7)) {
        case 0: out.emplace_back(crimped_lug("", size()).with_missing_strands(between(0, 0.8))); break;
        case 1: out.emplace_back(coupling("", size())); break;
        case 2:
            out.emplace_back(contact{
                .metals = {mild_steel, stainless_steel}, .force = in_si<force>(between(1, 900)), .surface = state()});
            break;
        case 3: out.emplace_back(plate{.metal = aluminium, .length = 1_m, .width = 100_mm, .thickness = 5_mm}); break;
        case 4:
            out.emplace_back(work_connection{
                .clamp = upto(1) ? spring_clamp(200_A) : screw_clamp(400_A), .onto = mild_steel, .surface = state()});
            break;
        case 5: out.emplace_back(electrode_holder("", in_si<current>(between(100, 600)))); break;
        default: out.emplace_back(welding_cable(size(), in_si<length>(between(0.3, 40)))); break;
        }
    return out;
}

station random_loop(std::mt19937& random)
{
    const auto between = [&](double a, double b) { return std::uniform_real_distribution<double>(a, b)(random); };
    station s{.name = "random",
              .job = {.process = process::smaw,
                      .current = in_si<current>(between(20, 700)),
                      .duty = duty_cycle::of(between(0.05, 1.0))},
              .where = {.air = temperature::celsius(between(-20, 50))}};
    for (path_part& p : random_side(random)) s.path.push_back(std::move(p));
    s.path.emplace_back(arc{});
    for (path_part& p : random_side(random)) s.path.push_back(std::move(p));
    return s;
}

TEST(LoopOutcome, FiveThousandRandomLoopsAreSolvedOrSayWhyNot)
{
    std::mt19937 random(7);
    int solved = 0, ending = 0;
    double worst_balance = 0.0, worst_sum = 0.0;
    for (int i = 0; i < 1700; ++i) {
        const station s = random_loop(random);
        detail::loop_solver solver(s);
        for (const scatter level : {scatter::low, scatter::typical, scatter::high}) {
            solve::periodic_state found;
            const loop_state state = solver.solve(level, &found);
            ASSERT_NE(state.outcome, loop_outcome::not_settled) << "loop " << i;
            ASSERT_NE(state.outcome, loop_outcome::open_circuit) << "loop " << i;
            (state.is_solved() ? solved : ending) += 1;
            int passing = 0;
            voltage sum = {};
            for (const part_state& p : state.parts) {
                passing += p.passes_bound ? 1 : 0;
                sum += p.drop;
                if (state.is_solved()) {
                    EXPECT_GE(p.peak, p.mean) << "loop " << i;
                    EXPECT_NEAR_REL(p.loss.value() + 1e-300, (p.drop * s.job.current).value() + 1e-300, 1e-9);
                } else {
                    EXPECT_EQ(p.drop.value(), 0.0);
                    EXPECT_EQ(p.peak, s.where.air);
                }
            }
            EXPECT_EQ(passing, state.is_solved() ? 0 : 1) << "loop " << i;
            if (!state.is_solved()) continue;
            worst_balance = std::max(worst_balance, std::fabs(found.imbalance));
            worst_sum = std::max(worst_sum, std::fabs((state.total_drop - sum).value() / state.total_drop.value()));
        }
    }
    EXPECT_GT(solved, 3000);
    EXPECT_GT(ending, 500);
    // of the heat made, and of the loop's drop: one current passes all parts
    EXPECT_LT(worst_balance, 1e-9);
    EXPECT_LT(worst_sum, 1e-12);
}

// Follows a loop from the cold by short linear implicit steps through as many periods as it takes: nothing of the
// solver's search is in it. True if some node passes its bound, within the hours allowed.
struct marched {
    bool passes = false;
    std::vector<double> peak;  // of the last period
};
marched march(const station& s, scatter level, double hours)
{
    detail::loop_network loop(s, checked_arc_index(s));
    loop.set(level);
    for (std::size_t i = 0; i < loop.parts().size(); ++i) EXPECT_TRUE(loop.conducts(i, level)) << i;
    const solve::heat_network& n = loop.network();
    const double on = s.job.duty.on().value(), period = s.job.duty.period().value();
    std::vector<double> x = loop.cold(), gain(n.size());
    marched out;
    for (double clock = 0.0; clock < hours * 3600.0; clock += period) {
        out.peak = x;
        for (const auto& [span, share] : {std::pair{on, 1.0}, std::pair{period - on, 0.0}}) {
            double left = span, step = 0.02;
            while (left > 1e-9 * period) {
                const double h = std::min(step, left);
                solve::sparse_lu matrix = n.pattern();
                n.evaluate(x, share, gain, &matrix);
                for (std::size_t i = 0; i < n.size(); ++i) matrix.values()[i] += n.capacity()[i] / h;
                static_cast<void>(matrix.eliminate());
                matrix.solve(gain);
                double most = 0.0;
                for (const double d : gain) most = std::max(most, std::fabs(d));
                constexpr double longest = 2.0;  // K in a step
                if (most > longest && h > 1e-4) {
                    step = 0.5 * h;
                    continue;
                }
                for (std::size_t i = 0; i < n.size(); ++i) {
                    x[i] += gain[i];
                    out.peak[i] = std::max(out.peak[i], x[i]);
                    out.passes = out.passes || x[i] > n.bound()[i];
                }
                if (out.passes) return out;
                left -= h;
                step = 1.3 * h;
            }
        }
    }
    return out;
}

TEST(LoopOutcome, WhatEndsEndsInAMarchAndWhatIsSolvedStays)
{
    std::mt19937 random(7);
    int ended = 0, solved = 0, near_a_bound = 0;
    for (int i = 0; i < 260; ++i) {
        const station s = random_loop(random);
        const loop_state state = solve_loop(s, scatter::high);
        if (state.is_solved() && solved >= 100) continue;
        constexpr double enough = 30.0;  // hours: dozens of time constants
        const marched check = march(s, scatter::high, enough);
        if (!state.is_solved()) {
            ++ended;
            // a step of 2 K may stop short of a bound that the period only just passes
            if (!check.passes) ++near_a_bound;
            continue;
        }
        ++solved;
        EXPECT_FALSE(check.passes) << "loop " << i;
        if (check.passes) continue;
        detail::loop_solver solver(s);
        solve::periodic_state found;
        static_cast<void>(solver.solve(scatter::high, &found));
        for (std::size_t k = 0; k < check.peak.size(); ++k)
            EXPECT_NEAR(found.peak[k], check.peak[k], std::max(1.0, 0.02 * check.peak[k])) << "loop " << i;
    }
    EXPECT_EQ(solved, 100);
    EXPECT_GT(ended, 30);
    EXPECT_LE(near_a_bound, ended / 20);
}

// Sunlight is heat that a lead takes up, whatever it loses: it warms the loop and stops no calculation.
TEST(LoopOutcome, TheSunWarmsALoop)
{
    station s{.name = "yard",
              .job = {.process = process::smaw, .current = 125_A, .duty = duty_cycle::of(0.35)},
              .where = {.air = 22_degC}};
    s.path = {crimped_lug("terminal", square_mm(50)),
              welding_cable(square_mm(50), 10_m).named("electrode lead"),
              electrode_holder("holder", 300_A),
              arc{},
              work_connection{.clamp = screw_clamp(300_A), .onto = mild_steel, .name = "clamp"},
              crimped_lug("clamp lug", square_mm(50)),
              welding_cable(square_mm(50), 10_m).named("work lead")};
    temperature before = temperature::celsius(0.0);
    for (const double sun : {0.0, 200.0, 400.0, 700.0, 1000.0}) {
        s.where.sun = in_si<heat_flux>(sun);
        const loop_state state = solve_loop(s);
        ASSERT_EQ(state.outcome, loop_outcome::solved) << sun;
        EXPECT_GT(state.parts[6].peak, before);
        before = state.parts[6].peak;
        const load work{.current = s.job.current, .duty = s.job.duty};
        // far from its ends the lead is that of the lead model
        const cable_heating alone = heating_of(std::get<cable>(s.path[6]), s.where, work);
        EXPECT_NEAR((state.parts[6].peak - s.where.air).value(), (alone.conductor_peak - s.where.air).value(),
                    0.05 * (alone.conductor_peak - s.where.air).value())
            << sun;
    }
}

}  // namespace
