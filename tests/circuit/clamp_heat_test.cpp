#include <algorithm>
#include <array>
#include <cmath>
#include <random>
#include <string>
#include <utility>
#include <vector>

#include <gtest/gtest.h>

#include <weldloop/circuit/body_tables.hpp>
#include <weldloop/circuit/clamp_heat.hpp>
#include <weldloop/circuit/clamp_swing.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/part/welding_cable.hpp>

#include "support/near.hpp"

using namespace weldloop;
using namespace weldloop::literals;
using detail::clamp_solver;

namespace {

const surroundings shop{.air = 30_degC};

clamp_network network_of(const work_clamp& clamp, surface_state state = surface_state::clean)
{
    return clamp_network_of({.clamp = clamp, .onto = mild_steel, .surface = state}, shop);
}

// The network of a small clamp whose jaws meet in metals that neither soften nor melt: their drop follows the force law
// at any heat, so that resistance growing with temperature turns the steady states back before the spring is tempered.
clamp_network steady_states_that_turn_back()
{
    clamp_network n = network_of(spring_clamp(100_A));
    for (metal* m : {&n.jaw_metals.first, &n.jaw_metals.second}) {
        m->resistivity = mild_steel.resistivity;
        m->temperature_coefficient = in_si<per_kelvin>(8e-3);
        m->softening = temperature::kelvin(20000.0);
        m->melting = temperature::kelvin(30000.0);
    }
    return n;
}

const clamp_outside short_lead{in_si<thermal_conductance>(0.1), 35_degC};

// Half of a contact's heat is made on the work's side and comes back only through the faces; what crosses them goes by
// the spots of the metal and the gap between them. The patch of the work stores nothing here.
struct work_pull {
    double taken;        // W of the contact's heat that go straight into the work
    double conductance;  // W/K from the jaws through the faces into the work
};
work_pull work_pull_of(const clamp_network& n, voltage drop, current through, temperature jaw)
{
    const work_heat& work = n.work;
    const double touching =
        (spot_heat_conductance(through / drop, jaw) +
         gap_heat_conductance(air_at(std::clamp(jaw, air_coldest, air_hottest)).thermal_conductivity, work.faces,
                              pressed_gap_height))
            .value();
    // beside them 1.5 mm of air, and radiation, at the mean of the jaw and the patch, which lies where the heat leaves
    // it
    const double sink = work.sink.value(), half = 0.5 * (through * drop).value();
    const double e = static_cast<double>(n.bodies[0].emissivity), both = 1.0 / (1.0 / e + 1.0 / 0.8 - 1.0);
    double patch = work.work.in_kelvin(), crossing = touching;
    for (int k = 0; k < 30; ++k) {
        const double mean =
            std::clamp(0.5 * (patch + jaw.in_kelvin()), air_coldest.in_kelvin(), air_hottest.in_kelvin());
        crossing =
            touching + work.beside.value() * (air_at(temperature::kelvin(mean)).thermal_conductivity.value() / 1.5e-3 +
                                              both * 4.0 * 5.670374419e-8 * mean * mean * mean);
        patch = (sink * work.work.in_kelvin() + crossing * jaw.in_kelvin() + half) / (sink + crossing);
    }
    const double share = sink / (crossing + sink);
    return {half * share, crossing * share};
}

// The balance marched in time with small steps, every conductance asked of the solver anew: what a clamp does that is
// switched on cold. Returns whether it found rest below its limits.
struct warmed {
    bool rests;
    std::array<double, clamp_nodes> rise;
};
warmed warm_up(const clamp_network& n, const clamp_outside& o, const load& work, const clamp_condition& c)
{
    const double air = n.where.air.in_kelvin(), amps = work.current.value();
    const metal_pair& metals = n.jaw_metals;
    std::array<double, clamp_nodes> rise{};
    constexpr double step = 0.5;  // s, a twentieth of the fastest place
    for (int i = 0; i < 400000; ++i) {
        const auto at = [&](std::size_t k) { return temperature::kelvin(air + rise[k]); };
        std::array<double, clamp_nodes> flow{};
        for (std::size_t k = 0; k < clamp_nodes; ++k) flow[k] -= body_loss(n.bodies[k], at(k), n.where).value();
        const auto link = [&](std::size_t a, std::size_t b, thermal_conductance g) {
            flow[a] -= g.value() * (rise[a] - rise[b]);
            flow[b] += g.value() * (rise[a] - rise[b]);
        };
        link(0, 1, n.jaw_body);
        link(1, 2, n.body_spring);
        link(3, 2, n.handle_spring);
        link(1, 3, n.body_handle);
        link(1, 4, n.body_entry);
        link(0, 4, n.jaw_entry);
        flow[4] -= o.conductance.value() * (rise[4] - (o.far - n.where.air).value());
        const double warm = 1.0 - n.grip.slope.value() * (air + rise[2] - 293.15);
        const conductance cold = n.jaws.typical * std::pow(c.force_share * warm, n.force_exponent) / c.contact_factor;
        const voltage drop =
            joint_drop(work.current, conductance_at(cold, metals, at(0)), joint_limits_of(metals, at(0)));
        const work_pull pull = work_pull_of(n, drop, work.current, at(0));
        flow[0] +=
            amps * drop.value() - pull.taken - pull.conductance * (rise[0] - (n.work.work - n.where.air).value());
        const voltage end = joint_drop(work.current, conductance_at(n.termination.typical, n.termination_metals, at(4)),
                                       joint_limits_of(n.termination_metals, at(4)));
        flow[1] += static_cast<double>(n.arms_share) * amps * end.value();
        flow[4] += (1.0 - static_cast<double>(n.arms_share)) * amps * end.value();
        double fastest = 0.0;
        for (std::size_t k = 0; k < clamp_nodes; ++k) {
            const double speed = flow[k] / n.bodies[k].capacity.value();
            rise[k] += step * speed;
            fastest = std::max(fastest, std::fabs(speed));
        }
        if (air + rise[2] > n.grip_limit.in_kelvin()) return {false, rise};
        if (fastest < 1e-8) break;
    }
    return {true, rise};
}

}  // namespace

// Within 0.02 % of the law it tabulates, and 1 % beside the corner that the law has at its floor of 1 K, which is 0.02
// K.
TEST(BodyTables, IsTheLawItTabulates)
{
    for (const double across : {0.008, 0.03, 0.06})
        for (const double metres_a_second : {0.0, 2.0}) {
            const surroundings where{.air = 10_degC, .wind = in_si<speed>(metres_a_second)};
            const thermal_body body{
                .surface = 1_m2, .diameter = in_si<length>(across), .emissivity = 0.8, .capacity = {}};
            detail::body_tables tables(where);
            const solve::curve_table& table = tables.of(body);
            for (double rise = -50.0; rise < 1500.0; rise += 0.37) {
                const double expected = body_loss(body, where.air + in_si<temperature_difference>(rise), where).value();
                if (std::fabs(rise) < 2.5) {  // the law has a corner at its floor of 1 K, on either side
                    EXPECT_NEAR_REL(table.at(rise).value, expected, 1e-2) << rise;
                    continue;
                }
                EXPECT_NEAR_REL(table.at(rise).value, expected, 2e-4) << rise;
                const double up = table.at(rise + 1e-3).value, down = table.at(rise - 1e-3).value;
                if (rise > 3.0 && rise < 1000.0) {
                    EXPECT_NEAR_REL(table.at(rise).slope, (up - down) / 2e-3, 1e-4) << rise;
                }
            }
            EXPECT_NEAR_REL(table.at(1.5).value, body_loss(body, where.air + 1.5_K, where).value(), 1e-2);
        }
}

// Heat made equals heat lost, wherever it is lost.
TEST(ClampHeat, BalanceIsClosed)
{
    std::mt19937 random(17);
    std::uniform_real_distribution<double> logarithm(0.0, 1.0);
    const auto between = [&](double low, double high) { return low * std::pow(high / low, logarithm(random)); };
    for (int i = 0; i < 400; ++i) {
        const work_clamp clamp = i % 3 == 0   ? spring_clamp(in_si<current>(between(100, 1000)))
                                 : i % 3 == 1 ? screw_clamp(in_si<current>(between(100, 1000)))
                                              : bolted_work_lug(square_mm(between(16, 185)));
        clamp_network n = network_of(clamp, i % 2 == 0 ? surface_state::clean : surface_state::spatter_covered);
        n.work.work = shop.air + in_si<temperature_difference>(i % 5 == 0 ? 120.0 : 0.0);
        const load work{.current = in_si<current>(between(1, 900)), .duty = duty_cycle::of(between(0.05, 1.0))};
        const clamp_outside o{in_si<thermal_conductance>(between(0.01, 1.0)),
                              shop.air + in_si<temperature_difference>(between(0.1, 60))};
        const clamp_solver solver(n, o, work, scatter::typical);
        const clamp_condition c{between(0.05, 1.0), between(0.5, 20.0)};
        const clamp_solver::state s = solver.solve(c);
        const clamp_heat h = solver.result_of(s);
        const double made = h.made.value();
        EXPECT_NEAR(made, (h.to_air + h.to_work + h.to_lead).value(), 1e-6 * (made + 1.0)) << clamp.name;
        // and the heat of the contact is current times drop
        EXPECT_NEAR_REL(s.contact_heat, solver.duty() * solver.amps() * h.jaw_drop.value(), 1e-7) << clamp.name;
    }
}

// The steady state is the one a cold clamp warms up to.
TEST(ClampHeat, IsWhatAColdClampWarmsUpTo)
{
    for (const double amps : {100.0, 250.0, 400.0})
        for (const surface_state state : {surface_state::clean, surface_state::spatter_covered})
            for (const clamp_condition& c : {clamp_condition{}, clamp_condition{0.5, 1.5}}) {
                const clamp_network n = network_of(spring_clamp(200_A), state);
                const load work{.current = in_si<current>(amps), .duty = duty_cycle::continuous()};
                const clamp_solver solver(n, short_lead, work, scatter::typical);
                const clamp_solver::state s = solver.solve(c);
                const warmed w = warm_up(n, short_lead, work, c);
                ASSERT_TRUE(w.rests);
                for (std::size_t k = 0; k < clamp_nodes; ++k) EXPECT_NEAR(s.rise[k], w.rise[k], 0.02) << k;
                // a start from a neighbour changes nothing
                const clamp_solver::state near = solver.solve({c.force_share, 0.97 * c.contact_factor});
                EXPECT_NEAR(solver.solve(c, &near).rise[0], s.rise[0], 1e-5);
                const clamp_solver::state beyond = solver.solve({c.force_share, 1.2 * c.contact_factor});
                EXPECT_NEAR(solver.solve(c, &beyond).rise[0], s.rise[0], 1e-5);
            }
}

// Where the steady states end, found on them, against clamps switched on cold at currents on either side: within 0.5 %.
// Here they turn back: the contact's heat comes to make itself again in full (returned = 1).
TEST(ClampHeat, TheFoldIsWhereAColdClampRunsAway)
{
    const clamp_network n = steady_states_that_turn_back();
    for (const clamp_condition& c : {clamp_condition{}, clamp_condition{0.6, 1.0}, clamp_condition{1.0, 2.0}}) {
        const auto state_at = [&](double amps) {
            const load work{.current = in_si<current>(amps), .duty = duty_cycle::continuous()};
            const clamp_solver solver(n, short_lead, work, scatter::typical);
            const clamp_solver::state s = solver.solve(c);
            return std::pair{s, s.bound == clamp_bound::none ? solver.returned(s, c) : 0.0};
        };
        double low = 10.0, high = 3000.0;
        while (high > low * (1.0 + 1e-7)) {
            const double middle = std::sqrt(low * high);
            (state_at(middle).first.bound == clamp_bound::none ? low : high) = middle;
        }
        const auto [last, returned] = state_at(low);
        EXPECT_GT(returned, 0.97);
        EXPECT_LT(n.where.air.in_celsius() + last.rise[2], 200.0) << "well below the tempering limit";

        double rests = 0.8 * low, runs = 1.2 * low;
        while (runs > rests * 1.001) {
            const double middle = 0.5 * (rests + runs);
            const load work{.current = in_si<current>(middle), .duty = duty_cycle::continuous()};
            (warm_up(n, short_lead, work, c).rests ? rests : runs) = middle;
        }
        EXPECT_NEAR_REL(low, 0.5 * (rests + runs), 5e-3);
    }
}

TEST(ClampHeat, HotterAndWorseNeverMeansCooler)
{
    const clamp_network n = network_of(spring_clamp(300_A), surface_state::oxidized);
    const auto jaw = [&](double amps, const clamp_condition& c) {
        const load work{.current = in_si<current>(amps), .duty = duty_cycle::continuous()};
        return clamp_solver(n, short_lead, work, scatter::typical).solve(c).rise[0];
    };
    for (double amps = 20.0; amps < 600.0; amps += 20.0) EXPECT_GT(jaw(amps + 20.0, {}), jaw(amps, {}));
    for (double share = 1.0; share > 0.15; share -= 0.05)
        EXPECT_GE(jaw(300.0, {share - 0.05, 1.0}), jaw(300.0, {share, 1.0}));
    for (double factor = 1.0; factor < 30.0; factor *= 1.3)
        EXPECT_GE(jaw(300.0, {1.0, 1.3 * factor}), jaw(300.0, {1.0, factor}));
}

// Between states solved before, up to the fold and beyond it: the same state as one solved for itself, and the same
// end.
TEST(ClampHeat, AlongItsConditionsIsAsSolvedForEach)
{
    int ended = 0, went_on = 0;
    for (const double amps : {150.0, 300.0, 600.0, 1500.0, 3000.0})
        for (const surface_state surface : {surface_state::clean, surface_state::oxidized}) {
            clamp_network n = network_of(spring_clamp(300_A), surface);
            n.grip_limit = 120_degC;  // so that some end
            const load work{.current = in_si<current>(amps), .duty = duty_cycle::continuous()};
            const clamp_solver along(n, short_lead, work, scatter::typical),
                each(n, short_lead, work, scatter::typical);
            EXPECT_EQ(along.solve_along({}).rise, each.solve({}).rise);
            for (double share = 1.0; share > 0.05; share *= 0.987) {
                const clamp_condition c{share, 1.0 + 0.3 * (1.0 - share)};
                const clamp_solver::state one = along.solve_along(c), other = each.solve(c);
                ASSERT_EQ(one.bound, other.bound) << amps << " A, " << share;
                ASSERT_EQ(one.spots_melt, other.spots_melt) << amps << " A, " << share;
                if (one.bound != clamp_bound::none) {
                    ++ended;
                    continue;
                }
                ++went_on;
                for (std::size_t k = 0; k < one.rise.size(); ++k) EXPECT_NEAR(one.rise[k], other.rise[k], 5e-3);
                EXPECT_NEAR_REL(one.jaw_volts, other.jaw_volts, 2e-5);
            }
        }
    EXPECT_GT(ended, 20);
    EXPECT_GT(went_on, 200);
}

TEST(ClampHeat, SaysWhatEndsTheSteadyStates)
{
    const load work{.current = 300_A, .duty = duty_cycle::continuous()};
    clamp_network n = network_of(spring_clamp(300_A));
    n.grip_limit = 200_degC;  // the place of the spring is met before the brass beside the lead melts
    EXPECT_EQ(clamp_solver(n, {in_si<thermal_conductance>(50.0), 900_degC}, work, scatter::typical).solve({}).bound,
              clamp_bound::gripping);
    clamp_network screw = network_of(screw_clamp(300_A));
    screw.jaw_metals.first.melting = 60_degC;
    screw.grip_limit = 2000_degC;
    EXPECT_EQ(clamp_solver(screw, {in_si<thermal_conductance>(1.0), 200_degC}, work, scatter::typical).solve({}).bound,
              clamp_bound::melting);
}

// The swing read off the settled period against the network switched on and off in small explicit steps until it
// repeats.
TEST(ClampSwing, IsTheNetworkSwitchedOnAndOff)
{
    for (const double share : {0.2, 0.6, 0.9}) {
        const clamp_network n = network_of(spring_clamp(300_A), surface_state::oxidized);
        const load work{.current = 350_A, .duty = duty_cycle::of(in_si<duration>(600.0 * share), 10_min)};
        clamp_solver solver(n, short_lead, work, scatter::typical);
        const detail::clamp_swing swing = detail::let_swing(solver, {}, work.duty);
        const clamp_solver::state s = solver.solve({});
        ASSERT_EQ(s.bound, clamp_bound::none);
        EXPECT_NEAR(s.swing, 1.0, 1e-9);
        const solve::heat_network& net = solver.network_at({});
        const auto jaw = solver.nodes()[detail::jaw_place], spring = solver.nodes()[detail::spring_place];
        std::vector<double> x(net.size()), gain(net.size());
        for (std::size_t k = 0; k < net.size(); ++k) x[solver.nodes()[k]] = s.rise[k];
        double jaw_end = 0.0, jaw_sum = 0.0, spring_sum = 0.0, spring_rate = 0.0;
        const double kelvin = solver.air() + s.rise[detail::spring_place];
        constexpr double step = 0.05, sensitivity = 0.15;
        constexpr int periods = 40;
        const int steps = 12000, on = static_cast<int>(std::lround(share * steps));
        for (int p = 0; p < periods; ++p)
            for (int i = 0; i < steps; ++i) {
                net.evaluate(x, i < on ? 1.0 : 0.0, gain, nullptr);
                for (std::size_t k = 0; k < net.size(); ++k) x[k] += step * gain[k] / net.capacity()[k];
                if (p + 1 < periods) continue;
                if (i + 1 == on) jaw_end = x[jaw];
                jaw_sum += x[jaw];
                spring_sum += x[spring];
                spring_rate += std::exp(sensitivity * kelvin * (1.0 - kelvin / (solver.air() + x[spring])));
            }
        const double jaw_mean = jaw_sum / steps, spring_mean = spring_sum / steps;
        EXPECT_NEAR(s.rise[detail::jaw_place], jaw_mean, 0.01) << share;
        EXPECT_NEAR(s.rise[detail::spring_place], spring_mean, 0.01) << share;
        EXPECT_NEAR(solver.peak_of(s, detail::jaw_place) - s.rise[detail::jaw_place], jaw_end - jaw_mean, 0.03)
            << share;
        // exp(-c/T) with c = sensitivity T2: the temperature at which it is what it is in the mean
        const double same =
            kelvin / (1.0 - std::log(spring_rate / steps) / (sensitivity * kelvin)) - solver.air() - spring_mean;
        EXPECT_NEAR(swing.spring_excess(sensitivity, 1.0, kelvin), same, 0.01) << share;
    }
    const clamp_network n = network_of(spring_clamp(300_A));
    const load steady{.current = 300_A, .duty = duty_cycle::continuous()};
    clamp_solver solver(n, short_lead, steady, scatter::typical);
    const detail::clamp_swing none = detail::let_swing(solver, {}, steady.duty);
    const clamp_solver::state s = solver.solve({});
    EXPECT_EQ(solver.peak_of(s, detail::jaw_place), s.rise[detail::jaw_place]);
    EXPECT_EQ(none.spring_excess(0.15, s.swing, 400.0), 0.0);
}

// The swing of a worse contact, told between periods of the clamp's own network, against the worse contact's own
// settled period: the spring heated by the current itself or not, spots that stay cold, come to soften on the way, or
// are soft from the start.
TEST(ClampSwing, OfAWorseContactIsThatOfItsOwnPeriod)
{
    double furthest = 0.0;  // K, of the swing grown by the contact's heat alone
    for (const surface_state surface : {surface_state::clean, surface_state::oxidized, surface_state::light_rust})
        for (const double path : {0.0, 1.5e-4}) {
            clamp_network n = network_of(spring_clamp(300_A), surface);
            n.spring_path = in_si<resistance>(path);
            n.spring_yields = path > 0.0 ? 0.7 : 0.0;
            const load work{.current = 350_A, .duty = duty_cycle::of(6_min, 10_min)};
            clamp_solver solver(n, short_lead, work, scatter::typical);
            const detail::clamp_swing swing = detail::let_swing(solver, {}, work.duty);
            for (const double force : {0.9, 0.8, 0.6, 0.4}) {
                const clamp_condition worse{force, 1.0};
                const clamp_solver::state told = solver.solve(worse);
                clamp_solver alone(n, short_lead, work, scatter::typical);
                const solve::periodic_state own = alone.settled_period(worse, work.duty);
                ASSERT_EQ(own.what, solve::outcome::solved);
                for (std::size_t place = 0; place < detail::clamp_places; ++place) {
                    const std::size_t node = solver.nodes()[place];
                    const double peak = own.peak[node] - own.mean[node];
                    // the cable connection's own heat is left out as long as spots stay hard and little is worn
                    const bool at_connection =
                        place == detail::entry_place || place == detail::body_place || place == detail::handle_place;
                    const double allowed = at_connection ? 0.3 : 0.1;
                    EXPECT_NEAR(told.rise[place], own.mean[node], 0.1) << to_text(surface) << force << " " << place;
                    EXPECT_NEAR(solver.peak_of(told, place) - told.rise[place], peak, allowed)
                        << to_text(surface) << force << " " << place;
                    furthest =
                        std::max(furthest, std::fabs(told.swing * swing.followed().swing.peak_over_mean[place] - peak));
                }
            }
        }
    EXPECT_GT(furthest, 2.0);  // else the cases show nothing
}

// Beyond the last condition with a settled period the swing goes on as it went before it, and the states end there.
TEST(ClampSwing, EndsWhereThePeriodsEnd)
{
    clamp_network n = network_of(spring_clamp(300_A), surface_state::clean);
    n.spring_path = in_si<resistance>(1.5e-4);
    const load work{.current = 350_A, .duty = duty_cycle::of(6_min, 10_min)};
    const auto peak_at = [&](double force) {
        const clamp_solver alone(n, short_lead, work, scatter::typical);
        const solve::periodic_state own = alone.settled_period({force, 1.0}, work.duty);
        return own.peak[alone.nodes()[detail::jaw_place]];
    };
    n.jaw_metals.first.melting = n.where.air + in_si<temperature_difference>(peak_at(0.82));
    clamp_solver solver(n, short_lead, work, scatter::typical);
    static_cast<void>(detail::let_swing(solver, {}, work.duty));
    EXPECT_EQ(solver.solve({0.84, 1.0}).bound, clamp_bound::none);
    EXPECT_EQ(solver.solve({0.80, 1.0}).bound, clamp_bound::melting);
}
