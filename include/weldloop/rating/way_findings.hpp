#pragma once
/// @file
/// What ways beside the path mean: current that goes astray, what it would be with a way back open, other supplies.

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <optional>
#include <string>
#include <utility>
#include <variant>
#include <vector>

#include <weldloop/circuit/loop_body.hpp>
#include <weldloop/circuit/station.hpp>
#include <weldloop/circuit/station_parts.hpp>
#include <weldloop/core/text.hpp>
#include <weldloop/law/load_line.hpp>
#include <weldloop/law/short_circuit.hpp>
#include <weldloop/rating/assessment.hpp>
#include <weldloop/rating/solved_station.hpp>
#include <weldloop/rating/verdict.hpp>

namespace weldloop::detail {

[[nodiscard]] inline bool has_stray_ways(const station& s)
{
    return std::any_of(s.ways.begin(), s.ways.end(), [](const way& w) { return w.kind == way_kind::stray; });
}
/// The parts that open all stray ways.
[[nodiscard]] inline std::vector<std::size_t> openings_of_stray_ways(const station& s)
{
    std::vector<std::size_t> out;
    for (std::size_t i = 0; i < parts_in(s); ++i)
        if (is_stray(s, i)) out.push_back(i);
    return out;
}

/// The ways of a solved station.
[[nodiscard]] inline std::vector<way_result> ways_of(const solved_station& solved)
{
    const station& s = solved.of();
    std::vector<way_result> out;
    for (std::size_t w = 0; w < s.ways.size(); ++w) {
        const way_state& is = solved.typical().ways[w];
        way_result r{.name = name_of_way(s, w), .kind = s.ways[w].kind};
        r.conducts = is.conducts;
        r.spans_arc = is.spans_arc;
        if (solved.typical().is_solved()) {
            const scattered_sum amps = solved.scatter_of().current_of_way(w, is.current.value());
            r.current = amps_band(amps.end(false), amps.base(), amps.end(true));
            r.share = std::min<double>(1.0, is.current / s.job.current);
        }
        out.push_back(std::move(r));
    }
    return out;
}

// Takes over what is worse with every stray way open.
inline void take_worse(assessment& out, assessment&& without, const station& s)
{
    constexpr auto noticeable = in_si<temperature_difference>(0.01);  // less is what solvers leave
    for (part_result& r : out.parts) {
        if (is_stray(s, r.place)) continue;
        for (part_result& other : without.parts) {
            if (other.place != r.place) continue;
            const int now = gravity_of(r.verdict), then = gravity_of(other.verdict);
            const bool hotter = other.peak.typical - r.peak.typical > noticeable;
            if (then < now || (then == now && !(hotter && without.conducts))) continue;
            other.with_stray_open = true;
            other.stray_hides_it = then > now;
            r = std::move(other);
        }
    }
    const bool takes_more = without.conducts && out.conducts && without.total_drop.typical > out.total_drop.typical;
    if (without.outcome != loop_outcome::open_circuit)  // that is a finding of the ways
        for (loop_finding& f : without.findings) {
            f.text = "With every stray way open: " + f.text;
            const auto known = std::find_if(out.findings.begin(), out.findings.end(),
                                            [&f](const loop_finding& other) { return other.id == f.id; });
            if (known == out.findings.end())
                out.findings.push_back(std::move(f));
            else if (takes_more)
                *known = std::move(f);
        }
    if (!takes_more) return;
    out.total_drop = without.total_drop;
    out.arc_voltage = without.arc_voltage;
    out.arc_basis = without.arc_basis;
    out.headroom = without.headroom;
}

// "A, B and C"
[[nodiscard]] inline std::string listed(const std::vector<std::string>& names)
{
    std::string out;
    for (std::size_t i = 0; i < names.size(); ++i)
        out.append(i == 0 ? "" : i + 1 == names.size() ? " and " : ", ").append(names[i]);
    return out;
}

/// Until an adiabatic conductor counts as ruined: the covering of a flexible cord, thermoplastic.
inline constexpr temperature cord_start = temperature::celsius(70.0), cord_end = temperature::celsius(160.0);

// How long the thinnest lead of a stray way would last with a current, if nothing cooled it.
[[nodiscard]] inline std::string lasts(const station& s, std::size_t which, current amps)
{
    const cable* thinnest = nullptr;
    for (const path_part& p : s.ways[which].path)
        if (const auto* c = std::get_if<cable>(&p); c != nullptr && (thinnest == nullptr || c->size < thinnest->size))
            thinnest = c;
    if (thinnest == nullptr || !(amps > current{})) return {};
    const duration t = short_circuit_time({adiabatic_constants_of(thinnest->metal), thinnest->size.area()}, amps,
                                          {cord_start, cord_end});
    constexpr auto worth_saying = in_si<duration>(600.0);  // longer, its cooling counts
    if (t > worth_saying) return {};
    return " As a protective conductor from " + to_text(cord_start, "degC") + " its " + to_text(thinnest->size) +
           " would be at " + to_text(cord_end, "degC") + " after " + to_text(t, "s", 2) + ".";
}

// The largest current of each stray way with an intended way back open, and whose opening that is.
struct worst_opening {
    current most = {};
    std::string by = {};
    bool lasts = true;  // false: something melts before the loop settles; the current is that of the cold circuit
};
// The branches whose opening sends most current astray as the loop is warm now: for each stray way all that come near
// the most, whichever of them it is once the loop has settled. The others need not be solved.
[[nodiscard]] inline std::vector<std::size_t> openings_that_count(const solved_station& solved)
{
    constexpr double near = 0.9;  // of the most that an opening adds; what warms or yields then moves it less
    const station& s = solved.of();
    const std::vector<loop_network::branch_at>& branches = solved.network().branches();
    std::vector<std::size_t> opened;
    std::vector<std::vector<double>> adds;  // to each branch, by each of these openings [A]
    std::vector<double> most(branches.size(), 0.0);
    for (std::size_t k = 0; k < branches.size(); ++k) {
        const loop_network::branch_at& b = branches[k];
        if (b.has_arc || b.parts.empty() || is_stray(s, b.parts.front())) continue;
        loop_network net(s, checked_arc_index(s), {b.parts.front()}, loop_network::purpose::to_read);
        net.set(scatter::typical);
        const current_sharing sharing(net, scatter::typical);
        if (!sharing.arc_burns()) continue;
        const solve::divided_currents divided = sharing.divide(solved.typical_state().on_mean);
        if (divided.what != solve::division::found) continue;
        opened.push_back(k);
        adds.emplace_back(branches.size());
        for (std::size_t i = 0; i < branches.size(); ++i) {
            adds.back()[i] = std::fabs(divided.amps[i]) - std::fabs(branches[i].amps);
            most[i] = std::max(most[i], adds.back()[i]);
        }
    }
    std::vector<std::size_t> out;
    for (std::size_t o = 0; o < opened.size(); ++o)
        for (std::size_t i = 0; i < branches.size(); ++i)
            if (branches[i].way != part_address::trunk && s.ways[branches[i].way].kind == way_kind::stray &&
                adds[o][i] > 0.0 && adds[o][i] >= near * most[i]) {
                out.push_back(opened[o]);
                break;
            }
    return out;
}
[[nodiscard]] inline std::vector<worst_opening> opened_in_turn(const solved_station& solved)
{
    const station& s = solved.of();
    std::vector<worst_opening> out(s.ways.size());
    const std::size_t arc_at = checked_arc_index(s);
    for (const std::size_t which : openings_that_count(solved)) {
        const loop_network::branch_at& b = solved.network().branches()[which];
        loop_solver solver(s, arc_at, {b.parts.front()});
        const loop_state state = solver.solve(scatter::typical, nullptr, {.near = &solved.typical_state()});
        if (state.outcome == loop_outcome::open_circuit) continue;
        std::vector<double> amps = state.branch_amps;
        if (!state.is_solved())
            amps = current_sharing(solver.network(), scatter::typical).divide(solver.network().cold()).amps;
        std::vector<std::string> names;
        for (const std::size_t part : b.parts) names.push_back(name_of(s, part));
        for (std::size_t k = 0; k < amps.size(); ++k) {
            const std::size_t way = solver.network().branches()[k].way;
            const current carried = in_si<current>(std::fabs(amps[k]));
            if (way != part_address::trunk && carried > out[way].most)
                out[way] = {carried, listed(names), state.is_solved()};
        }
    }
    return out;
}

// Findings of ways and other supplies, added to those of the loop.
inline void add_way_findings(assessment& out, const solved_station& solved)
{
    const station& s = solved.of();
    std::vector<loop_finding> found;
    const auto add = [&found](finding_id id, finding_severity how, std::string text) {
        found.push_back({id, how, std::move(text)});
    };
    for (const way_result& w : out.ways)
        if (w.spans_arc)
            add(finding_id::way_spans_arc, finding_severity::stop_job,
                w.name + " joins what lies before the arc with what lies behind it: a short circuit of the supply. "
                         "Everything else is reckoned as if it were open.");
    if (out.outcome == loop_outcome::unstable)
        add(finding_id::sharing_unstable, finding_severity::stop_job,
            "Ways share the current in a state that does not last: a little more in one of them draws more. Which "
            "carries how much cannot be said.");
    if (has_stray_ways(s)) {
        const bool is_solved = solved.typical().is_solved();
        std::vector<worst_opening> worst(s.ways.size());
        if (is_solved) worst = opened_in_turn(solved);
        for (std::size_t w = 0; w < s.ways.size(); ++w) {
            if (s.ways[w].kind != way_kind::stray || out.ways[w].spans_arc) continue;
            const way_result& r = out.ways[w];
            const std::string joins = r.name + " joins points of the welding circuit and is not meant to: ";
            if (solved.typical().outcome == loop_outcome::open_circuit ||
                (is_solved && !(r.current.typical > current{})))
                add(finding_id::stray_way, finding_severity::warning,
                    joins + "it carries no current as things stand, which nothing secures.");
            else if (!is_solved)
                add(finding_id::stray_current, finding_severity::stop_job,
                    joins + "how much it carries cannot be said, as the loop has no state that lasts.");
            else
                add(finding_id::stray_current, finding_severity::stop_job,
                    r.name + " typically carries " + to_text(r.current.typical, "A") + ", in a poor case " +
                        to_text(r.current.high, "A") +
                        ": welding current where none may be. No amount of it is allowed." +
                        lasts(s, w, r.current.typical));
            if (worst[w].most > r.current.typical)
                add(finding_id::stray_when_return_opens, finding_severity::warning,
                    "With the way over " + worst[w].by + " open, " + r.name + " would " +
                        (worst[w].lasts ? "typically carry " : "at first carry ") + to_text(worst[w].most, "A") +
                        (worst[w].lasts ? "." : ", until something melts.") + lasts(s, w, worst[w].most));
        }
        if (solved.typical().outcome != loop_outcome::open_circuit) {
            loop_solver without(s, checked_arc_index(s), openings_of_stray_ways(s));
            if (!without.conducts(scatter::typical))
                add(finding_id::return_by_stray_ways_only, finding_severity::stop_job,
                    "No intended way back conducts: all of the current returns by ways that are not meant for it.");
        }
    }
    for (std::size_t f = 0; f < s.others.size(); ++f) {
        const feed& other = s.others[f];
        const std::string name = other.name.empty() ? "feed " + std::to_string(f + 1) : other.name;
        add(finding_id::shared_work, finding_severity::notice,
            name + " welds on the same circuit: its " + to_text(other.current, "A") +
                " counts as flowing whenever this arc burns, and adds up in what both returns share.");
        if (static_cast<double>(other.duty.share()) > static_cast<double>(s.job.duty.share()))
            add(finding_id::other_duty_is_longer, finding_severity::notice,
                name + " has the longer duty: what its current alone does while this arc rests is not counted.");
        const voltage own = s.supply ? voltage_without_load(*s.supply, {s.job.process, s.job.current}) : voltage{};
        add(finding_id::between_holders, finding_severity::warning,
            other.no_load && own > voltage{}
                ? "Where the outputs of " + name +
                      " and of this supply are opposed, their no-load voltages add up "
                      "between the two holders, to " +
                      to_text(voltage(*other.no_load + own), "V") + " or more: nobody touches both."
                : "Where the outputs of " + name +
                      " and of this supply are opposed, their no-load voltages add up "
                      "between the two holders: nobody touches both.");
    }
    out.findings.insert(out.findings.end(), found.begin(), found.end());
    std::stable_sort(out.findings.begin(), out.findings.end(),
                     [](const loop_finding& a, const loop_finding& b) { return a.severity > b.severity; });
}

}  // namespace weldloop::detail
