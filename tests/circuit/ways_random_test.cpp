// Random loops with ways: every one solved or typed, Kirchhoff's laws and the balance of heat of those solved, and a
// march in time that divides the currents anew at every instant.
#include <weldloop/circuit/loop.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/part/crimped_lug.hpp>
#include <weldloop/part/welding_cable.hpp>
#include <weldloop/part/work_clamp.hpp>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <cstdlib>
#include <iostream>
#include <map>
#include <optional>
#include <random>
#include <string>
#include <utility>
#include <vector>

#include "support/near.hpp"

namespace {
using namespace weldloop;

// ---- loops drawn at random

class drawn_loop {
public:
    explicit drawn_loop(std::uint32_t seed) : random_(seed) {}

    station next()
    {
        station s{.name = "random",
                  .job = {.process = process::smaw,
                          .current = in_si<current>(between(20, 600)),
                          .duty = duty_cycle::of(between(0.05, 1.0))},
                  .where = {.air = temperature::celsius(between(-10, 45))}};
        named_ = 0;
        s.path = {lead(), arc{}, hub("piece")};
        if (upto(1) == 0) s.path.push_back(rest_on_table());
        joint_or_clamp(s.path, true);
        s.path.push_back(lead());
        if (upto(1) == 0) {
            s.path.emplace_back(junction{"middle"});
            s.path.push_back(upto(2) == 0 ? measured() : lead());
        }
        s.path.emplace_back(junction{"stud"});
        s.path.push_back(upto(1) == 0 ? path_part(crimped_lug(name("lug"), lug_size())) : measured());
        for (std::size_t ways = 1 + upto(4); ways-- > 0;) {
            std::vector<std::string> points;
            for (std::size_t i = 0; i < parts_in(s); ++i)
                if (is_hub(part_at(s, i))) points.push_back(name_of(s, i));
            const std::size_t from = upto(points.size() - 1), to = (from + 1 + upto(points.size() - 2)) % points.size();
            way w{.name = name("way"),
                  .from = points[from],
                  .to = points[to],
                  .kind = upto(2) == 0 ? way_kind::stray : way_kind::intended};
            fill(w.path, w.from == "piece");
            if (upto(2) == 0) {
                w.path.emplace_back(junction{name("fork")});
                fill(w.path, false);
            }
            s.ways.push_back(std::move(w));
        }
        return s;
    }

private:
    double between(double a, double b) { return std::uniform_real_distribution<double>(a, b)(random_); }
    std::size_t upto(std::size_t n) { return std::uniform_int_distribution<std::size_t>(0, n)(random_); }
    std::string name(const std::string& kind) { return kind + " " + std::to_string(++named_); }
    conductor_size size(std::size_t from = 0)
    {
        constexpr std::array sizes{10.0, 16.0, 25.0, 35.0, 50.0, 70.0, 95.0, 120.0};
        return square_mm(sizes[from + upto(sizes.size() - 1 - from)]);
    }
    conductor_size lug_size() { return size(1); }
    surface_state surface()
    {
        constexpr std::array states{surface_state::clean,      surface_state::oxidized,
                                    surface_state::light_rust, surface_state::galvanized,
                                    surface_state::heavy_rust, surface_state::spatter_covered};
        return states[upto(states.size() - 1)];
    }
    path_part hub(const std::string& called)
    {
        if (upto(3) == 0) return junction{called};
        return workpiece{.metal = upto(1) == 0 ? mild_steel : aluminium,
                         .mass = in_si<mass>(between(1, 60)),
                         .thickness = in_si<length>(between(0.002, 0.012)),
                         .name = called};
    }
    path_part lead() { return welding_cable(size(), in_si<length>(between(1, 25))).named(name("lead")); }
    path_part rest_on_table()
    {
        return contact{.metals = {mild_steel, mild_steel},
                       .force = in_si<force>(between(50, 800)),
                       .surface = surface(),
                       .name = name("contact")};
    }
    path_part measured()
    {
        const double amps = between(10, 300), volts = amps * std::pow(10.0, between(-4.0, -1.3));
        measured_part m{.name = name("measured"),
                        .drop = {in_si<voltage>(0.7 * volts), in_si<voltage>(volts), in_si<voltage>(1.6 * volts)},
                        .at = in_si<current>(amps),
                        .law = upto(3) == 0 ? drop_law::constant : drop_law::ohmic};
        if (upto(1) == 0) {
            m.mass = in_si<mass>(between(0.2, 5));
            m.cooling_area = in_si<area>(between(0.005, 0.1));
        }
        return m;
    }
    void joint_or_clamp(std::vector<path_part>& path, bool clamp)
    {
        if (clamp)
            path.emplace_back(work_connection{.clamp = upto(1) == 0 ? screw_clamp(in_si<current>(between(150, 500)))
                                                                    : bolted_work_lug(lug_size()),
                                              .onto = mild_steel,
                                              .surface = surface(),
                                              .name = name("clamp")});
        else if (upto(1) == 0)
            path.emplace_back(crimped_lug(name("lug"), lug_size()));
    }
    void fill(std::vector<path_part>& path, bool from_piece)
    {
        joint_or_clamp(path, from_piece);
        switch (upto(3)) {
        case 0: path.push_back(measured()); break;
        case 1:
            path.push_back(measured());
            path.push_back(lead());
            break;
        case 2:
            path.push_back(rest_on_table());
            path.push_back(lead());
            break;
        default: path.push_back(lead()); break;
        }
    }

    std::mt19937 random_;
    int named_ = 0;
};

// ---- Kirchhoff's laws, from the drops of the parts

struct departures {
    double of_current = 0.0;  // at a point, of the loop's current
    double of_voltage = 0.0;  // round a loop, of the largest drop of a branch in it
    double of_energy = 0.0;   // drops times currents less heat made, of it
};

departures departures_of(const station& s, const detail::loop_network& net, const loop_state& state)
{
    departures out;
    const auto& branches = net.branches();
    const std::vector<double>& amps = state.branch_amps;
    std::vector<double> balance(net.points(), 0.0), volts(branches.size(), 0.0);
    balance[detail::loop_network::terminal_out] = s.job.current.value();
    balance[detail::loop_network::terminal_in] = -s.job.current.value();
    for (std::size_t b = 0; b < branches.size(); ++b) {
        balance[branches[b].from] -= amps[b];
        balance[branches[b].to] += amps[b];
        for (const std::size_t part : branches[b].parts)
            volts[b] += std::copysign(state.parts[part].drop.value(), amps[b]);
    }
    for (const double a : balance) out.of_current = std::max(out.of_current, std::fabs(a) / s.job.current.value());
    // what spreads in a piece has the same resistance for every current that reaches it
    std::size_t point = 1;
    for (std::size_t i = 0; i < parts_in(s); ++i) {
        if (!is_hub(part_at(s, i))) continue;
        ++point;
        double squares = 0.0;
        for (std::size_t b = 0; b < branches.size(); ++b)
            if (branches[b].from == point || branches[b].to == point) squares += amps[b] * amps[b];
        const double ohms = squares > 0.0 ? state.parts[i].loss.value() / squares : 0.0;
        for (std::size_t b = 0; b < branches.size(); ++b)
            if (branches[b].from == point || branches[b].to == point) volts[b] += ohms * amps[b];
    }
    // potentials along a tree of branches that conduct; what is left out closes a loop each
    struct step {
        std::size_t point, branch;
    };
    const auto conducts = [&](std::size_t b) {
        if (branches[b].way != part_address::trunk && state.ways[branches[b].way].spans_arc) return false;
        return std::all_of(branches[b].parts.begin(), branches[b].parts.end(),
                           [&](std::size_t p) { return state.parts[p].conducts; });
    };
    std::vector<std::optional<double>> at(net.points());
    std::vector<std::optional<step>> up(net.points());
    std::vector<bool> used(branches.size(), false);
    for (std::size_t start = 0; start < net.points(); ++start) {
        if (at[start]) continue;
        at[start] = 0.0;
        for (bool moved = true; moved;) {
            moved = false;
            for (std::size_t b = 0; b < branches.size(); ++b) {
                const auto &from = at[branches[b].from], &to = at[branches[b].to];
                if (!conducts(b) || from.has_value() == to.has_value()) continue;
                const std::size_t known = from ? branches[b].from : branches[b].to,
                                  other = from ? branches[b].to : branches[b].from;
                at[other] = *at[known] + (from ? -volts[b] : volts[b]);
                up[other] = step{known, b};
                used[b] = moved = true;
            }
        }
    }
    for (std::size_t b = 0; b < branches.size(); ++b) {
        if (used[b] || !conducts(b)) continue;
        double largest = std::fabs(volts[b]);
        for (const std::size_t end : {branches[b].from, branches[b].to})
            for (std::size_t p = end; up[p]; p = up[p]->point)
                largest = std::max(largest, std::fabs(volts[up[p]->branch]));
        const double sum = *at[branches[b].from] - *at[branches[b].to] - volts[b];
        if (largest > 0.0) out.of_voltage = std::max(out.of_voltage, std::fabs(sum) / largest);
    }
    double made = 0.0;
    for (std::size_t i = 0; i < parts_in(s); ++i) {
        const auto* m = std::get_if<measured_part>(&part_at(s, i));
        if (m == nullptr || m->cooling_area)
            made += static_cast<double>(s.job.duty.share()) * state.parts[i].loss.value();
    }
    out.of_energy = std::fabs(made - state.made.value()) / made;
    return out;
}

const char* word_of(loop_outcome o)
{
    switch (o) {
    case loop_outcome::solved: return "solved";
    case loop_outcome::open_circuit: return "open circuit";
    case loop_outcome::ends: return "ends";
    case loop_outcome::not_settled: return "not settled";
    default: return "unstable";
    }
}

constexpr std::uint32_t drawn_from = 41;

// source: Kirchhoff's laws and the balance of heat
TEST(WaysRandom, TwoThousandLoopsAreSolvedOrSayWhyNot)
{
    drawn_loop loops(drawn_from);
    std::map<std::string, int> outcomes;
    departures worst;
    double worst_balance = 0.0;
    for (int i = 0; i < 2000; ++i) {
        const station s = loops.next();
        detail::loop_solver solver(s);
        solve::periodic_state found;
        const loop_state state = solver.solve(scatter::typical, &found);
        ++outcomes[word_of(state.outcome)];
        if (std::getenv("WELDLOOP_SHOW") != nullptr && state.outcome != loop_outcome::solved &&
            state.outcome != loop_outcome::ends)
            std::cout << "loop " << i << ": " << word_of(state.outcome) << '\n';
        int passing = 0;
        for (const part_state& p : state.parts) {
            passing += p.passes_bound ? 1 : 0;
            if (!state.is_solved()) {
                EXPECT_EQ(p.drop.value(), 0.0) << i;
            } else {
                EXPECT_GE(p.peak, p.mean) << i;
                EXPECT_TRUE(std::isfinite(p.drop.value() + p.peak.in_kelvin() + p.current.value())) << i;
                EXPECT_GE(p.drop.value(), 0.0) << i;
            }
        }
        EXPECT_EQ(passing, state.outcome == loop_outcome::ends ? 1 : 0) << i;
        if (!state.is_solved()) continue;
        const departures d = departures_of(s, solver.network(), state);
        EXPECT_LE(d.of_current, 1e-9) << i;
        EXPECT_LE(d.of_voltage, 1e-9) << i;
        EXPECT_LE(d.of_energy, 1e-9) << i;
        EXPECT_LE(std::fabs(found.imbalance), 1e-9) << i;
        worst.of_current = std::max(worst.of_current, d.of_current);
        worst.of_voltage = std::max(worst.of_voltage, d.of_voltage);
        worst.of_energy = std::max(worst.of_energy, d.of_energy);
        worst_balance = std::max(worst_balance, std::fabs(found.imbalance));
    }
    for (const auto& [word, count] : outcomes) std::cout << word << ": " << count << '\n';
    std::cout << "worst departures: current " << worst.of_current << ", voltage " << worst.of_voltage << ", heat made "
              << worst.of_energy << ", heat kept " << worst_balance << '\n';
    EXPECT_GT(outcomes["solved"], 1000);
    EXPECT_GT(outcomes["ends"], 100);
    EXPECT_EQ(outcomes["not settled"], 0);
    EXPECT_EQ(outcomes["open circuit"], 0);
}

}  // namespace
