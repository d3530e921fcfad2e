#pragma once
/// @file
/// How loop.hpp is answered.

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <numbers>
#include <optional>
#include <utility>
#include <vector>

#include <weldloop/circuit/current_sharing.hpp>
#include <weldloop/circuit/instant_sharing.hpp>
#include <weldloop/circuit/loop.hpp>
#include <weldloop/circuit/loop_network.hpp>
#include <weldloop/circuit/loop_state.hpp>
#include <weldloop/circuit/station.hpp>
#include <weldloop/circuit/station_parts.hpp>
#include <weldloop/solve/periodic_state.hpp>
#include <weldloop/solve/steady_state.hpp>

namespace weldloop {

namespace detail {

/// A station's network with its solutions at the points of the scatter, each solved when it is asked for.
class loop_solver {
public:
    explicit loop_solver(const station& s) : loop_solver(s, checked_arc_index(s)) {}
    /// A stretch of a loop by itself. @param s with the parts of the stretch alone @param arc_at how many of them lie
    /// before the arc
    /// @param opened numbers of parts that are taken as open
    loop_solver(const station& s, std::size_t arc_at, const std::vector<std::size_t>& opened = {})
        : station_(&s),
          net_(s, arc_at, opened), programme_{s.job.duty.on().value(),
                                              s.job.duty.is_continuous() ? 0.0 : s.job.duty.rest().value()}
    {
    }

    /// Solves at a point of the scatter.
    /// @param search from where and how closely; currents that divide are settled as closely as they need
    [[nodiscard]] loop_state solve(scatter level, solve::periodic_state* kept = nullptr,
                                   const solve::period_search& search = {})
    {
        net_.set(level);
        level_ = level;
        const current_sharing sharing(net_, level);
        loop_state out = without_current(level, sharing);
        if (!sharing.arc_burns()) {
            out.outcome = loop_outcome::open_circuit;
            return out;
        }
        solve::periodic_state found;
        out.outcome = sharing.divides() ? shared(found, sharing, search) : heated(found, search);
        if (out.outcome == loop_outcome::ends) note_bound(out, found.bounded_at);
        if (!out.is_solved()) return out;
        write(out, found, level);
        if (kept != nullptr) *kept = std::move(found);
        return out;
    }

    /// The rises of the settled period at a point of the scatter, without heats where the current does not divide.
    /// @param search as for solve()
    [[nodiscard]] solve::periodic_state rises(scatter level, solve::period_search search)
    {
        solve::periodic_state out;
        net_.set(level);
        const current_sharing sharing(net_, level);
        if (sharing.divides()) {
            static_cast<void>(solve(level, &out, search));
        } else if (sharing.arc_burns()) {
            search.parts = solve::period_search::wanted::rises;
            static_cast<void>(heated(out, search));
        }
        return out;
    }

    /// Whether the loop surely has a settled period at a point of the scatter: it has a steady state with current all
    /// the time, reached from the cold within every bound, and rests only cool it. Costs a small part of solve().
    [[nodiscard]] bool surely_settles(scatter level)
    {
        constexpr double all_the_time = 1.0;
        net_.set(level);
        const current_sharing sharing(net_, level);
        return sharing.arc_burns() && !sharing.divides() &&
               steady_state_of(net_.network(), all_the_time, net_.cold()).what == solve::outcome::solved;
    }

    /// Whether current has a way at a point of the scatter, before the loop is solved.
    [[nodiscard]] bool conducts(scatter level)
    {
        net_.set(level);
        const current_sharing sharing(net_, level);
        return sharing.arc_burns() &&
               (!sharing.divides() || sharing.divide(net_.cold()).what != solve::division::unconnected);
    }

    [[nodiscard]] const loop_network& network() const { return net_; }
    [[nodiscard]] loop_network& network() { return net_; }
    /// Whether ways share current at a point of the scatter.
    [[nodiscard]] bool divides(scatter level)
    {
        net_.set(level);
        return current_sharing(net_, level).divides();
    }
    /// Puts every contact back to a point of its scatter, and the currents to those of a state.
    void set(scatter level, const loop_state& state)
    {
        net_.set(level);
        if (!state.branch_amps.empty()) net_.set_currents(state.branch_amps);
    }

private:
    [[nodiscard]] double on_share() const { return programme_.on / (programme_.on + programme_.rest); }

    [[nodiscard]] loop_state without_current(scatter level, const current_sharing& sharing) const
    {
        loop_state out;
        out.parts.resize(net_.parts().size());
        for (std::size_t i = 0; i < out.parts.size(); ++i) {
            part_state& p = out.parts[i];
            p.mean = p.peak = p.hottest_spot = station_->where.air;
            out.part_basis.push_back(net_.parts()[i].basis);
            p.conducts = net_.conducts(i, level);
        }
        out.ways.resize(station_->ways.size());
        for (std::size_t b = 0; b < net_.branches().size(); ++b) {
            const std::size_t way = net_.branches()[b].way;
            if (way == part_address::trunk) continue;
            out.ways[way].conducts = out.ways[way].conducts && !sharing.is_open(b);
            out.ways[way].spans_arc = sharing.spans_arc(way);
        }
        return out;
    }

    // The heat at the currents that are set.
    [[nodiscard]] loop_outcome heated(solve::periodic_state& found, const solve::period_search& search) const
    {
        found = periodic_state_of(net_.network(), programme_, net_.cold(), search);
        return found.what == solve::outcome::solved    ? loop_outcome::solved
               : found.what == solve::outcome::bounded ? loop_outcome::ends
                                                       : loop_outcome::not_settled;
    }

    // Currents and heat together: from the division of a cold circuit, and where that leads nowhere from that of the
    // loop as it warms. Under a duty they are then divided at every moment.
    [[nodiscard]] loop_outcome shared(solve::periodic_state& found, const current_sharing& sharing,
                                      const solve::period_search& search)
    {
        const solve::divided_currents divided = sharing.divide(net_.cold());
        if (divided.what == solve::division::unconnected) return loop_outcome::open_circuit;
        if (divided.what != solve::division::found) return loop_outcome::not_settled;
        std::vector<double> amps = divided.amps;
        const bool by_moment = programme_.rest > 0.0;
        if (by_moment) {
            std::optional<solve::periodic_state> likely = by_mean_balance(amps, sharing, search);
            if (!likely)
                amps = divided.amps;
            else if (lends_march(search)) {
                found = std::move(*likely);
                if (followed(found, sharing) == loop_outcome::solved) return loop_outcome::solved;
            }
        }
        loop_outcome out = settled_from(amps, found, sharing, search);
        if (out != loop_outcome::solved) out = settled_as_warmed(divided.amps, found, sharing);
        return by_moment && out == loop_outcome::solved ? followed(found, sharing) : out;
    }
    // Whether a search may begin with the march of a state near by.
    [[nodiscard]] static bool lends_march(const solve::period_search& search)
    {
        return search.near != nullptr && search.near->march != nullptr;
    }
    // From the division of the loop as it warms.
    [[nodiscard]] loop_outcome settled_as_warmed(const std::vector<double>& cold, solve::periodic_state& found,
                                                 const current_sharing& sharing)
    {
        // where a tenth of a kelvin decides which way carries how much, nobody can say
        constexpr double unevenness = 0.1, alike = 1e-3;  // K; of the largest current
        std::vector<double> amps = cold, other = cold;
        const loop_outcome warm = warmed(amps, found.bounded_at, sharing, unevenness);
        if (warmed(other, found.bounded_at, sharing, -unevenness) != warm) return loop_outcome::unstable;
        if (warm != loop_outcome::solved) return warm;
        for (std::size_t b = 0; b < amps.size(); ++b)
            if (std::fabs(amps[b] - other[b]) > alike * largest_given()) return loop_outcome::unstable;
        return settled_from(amps, found, sharing, {});
    }
    // Currents by the balance of the mean over the period, the rises while current flows as those of a settled period
    // near by, or without one as in the mean: what a settled period likely is, at little cost. None where that leads
    // nowhere. @param amps to begin with; those it comes to
    [[nodiscard]] std::optional<solve::periodic_state>
    by_mean_balance(std::vector<double>& amps, const current_sharing& sharing, const solve::period_search& search)
    {
        constexpr int most_rounds = 8;
        const bool moves = lends_march(search),
                   from_near = moves && search.reached_from == solve::period_search::start::near;
        std::vector<double> rise = from_near ? search.near->steady : net_.cold();
        solve::begins begun = from_near ? solve::begins::near_state : solve::begins::cold;
        for (int round = 0; round < most_rounds; ++round) {
            net_.set_currents(amps);
            solve::steady_state steady = steady_state_of(net_.network(), on_share(), rise, begun);
            if (steady.what != solve::outcome::solved) return std::nullopt;
            rise = steady.rise;
            begun = solve::begins::near_state;
            solve::periodic_state likely;
            if (moves)
                likely = solve::detail::moved_to(*search.near, std::move(steady.rise));
            else
                likely.steady = likely.mean = likely.on_mean = std::move(steady.rise);
            current_sharing::step step = sharing.towards(likely, on_share());
            if (step.amps.empty() || !step.is_stable) return std::nullopt;
            if (step.change <= settled_to_begin_with * largest_given()) return likely;
            amps = std::move(step.amps);
        }
        return std::nullopt;
    }
    // The same with the currents divided at every moment. @param found where constant ones settle, or are likely to
    [[nodiscard]] loop_outcome followed(solve::periodic_state& found, const current_sharing& sharing)
    {
        const solve::periodic_state constant = std::move(found);
        instant_sharing follower(net_, sharing);
        return heated(found, {.near = &constant});
    }
    [[nodiscard]] double largest_given() const
    {
        double out = 0.0;
        for (const loop_network::given_current& g : net_.given()) out = std::max(out, g.amps);
        return out;
    }

    // of the largest current: where the division is followed from moment to moment next, that begins there
    static constexpr double settled_to_begin_with = 3e-2;

    // The loop as it warms from the cold: in time, its heat spread over the period, its currents divided anew at every
    // step. @param amps of all branches; when it has come to rest, those it then has
    // @param unevenness of the cold loop, spread over its places [K]
    [[nodiscard]] loop_outcome warmed(std::vector<double>& amps, std::size_t& bounded_at,
                                      const current_sharing& sharing, double unevenness)
    {
        constexpr int most_steps = 1000;  // takes up to three hundred
        // s; of a step: the longest is longer than anything here takes to warm
        constexpr double first = 0.1, longest = 1e6, growth = 1.2, shrinking = 0.25, turning = 0.5;
        constexpr double least_most_change = 4.0, of_rise = 0.04;  // K in a step; of the hottest rise
        constexpr double aimed_at = 0.9;                           // of the most change
        constexpr double at_rest = 1e-3;                           // K in a step
        constexpr double closely = 1e-9;                           // of the drops: currents that the next step replaces
        const solve::heat_network& heat = net_.network();
        closed_branches closed = sharing.branches();
        closed.set(net_.cold());
        if (!closed.prepare()) return loop_outcome::open_circuit;
        std::vector<double> rise = net_.cold(), gain(heat.size()), before(heat.size(), 0.0);
        solve::sparse_lu matrix = heat.pattern();
        double step = first, spread = 0.0, whole = 0.0;
        for (double& r : rise) {
            spread = std::modf(spread + std::numbers::phi, &whole);
            r += unevenness * (2.0 * spread - 1.0);
        }
        for (int k = 0; k < most_steps; ++k) {
            net_.set_currents(amps);
            heat.evaluate(rise, on_share(), gain, &matrix);
            for (std::size_t i = 0; i < heat.size(); ++i) matrix.values()[i] += heat.capacity()[i] / step;
            static_cast<void>(matrix.eliminate());
            matrix.solve(gain);
            double change = 0.0, hottest = 0.0, along = 0.0;
            for (const double d : gain) change = std::max(change, std::fabs(d));
            for (std::size_t i = 0; i < heat.size(); ++i) along += gain[i] * before[i];
            for (const double r : rise) hottest = std::max(hottest, std::fabs(r));
            const double most_change = std::max(least_most_change, of_rise * hottest);
            const double wanted = aimed_at * most_change / change;
            if (change > most_change) {
                step *= std::max(shrinking, wanted);
                continue;
            }
            for (std::size_t i = 0; i < heat.size(); ++i) {
                rise[i] += gain[i];
                if (!(rise[i] > heat.bound()[i])) continue;
                bounded_at = i;
                return loop_outcome::ends;
            }
            closed.set(rise);
            solve::divided_currents divided = closed.divide(amps, closely);
            if (divided.what != solve::division::found) return loop_outcome::not_settled;
            amps = std::move(divided.amps);
            // a step that takes back the one before was too long for currents that follow a step late
            const bool turns = along < 0.0;
            if (change <= at_rest && (step == longest || turns)) return loop_outcome::solved;
            step = std::min(longest, step * (turns ? turning : std::min(growth, wanted)));
            std::swap(before, gain);
        }
        return loop_outcome::not_settled;
    }

    // In Newton's steps of the loops' currents with the heat solved anew at each. @param amps to begin with
    [[nodiscard]] loop_outcome settled_from(std::vector<double> amps, solve::periodic_state& found,
                                            const current_sharing& sharing, solve::period_search search)
    {
        constexpr int most_rounds = 60;
        constexpr double settled_for_good = 1e-11;  // of the largest current
        const double settled = programme_.rest > 0.0 ? settled_to_begin_with : settled_for_good;
        constexpr double as_before = 1e-3;  // of it: a bound met at the same currents again is one
        // the heat's own rest moves the currents: it is solved as much finer as they need once they hardly change
        constexpr double hardly = 1e-5, finely_settled = 1e-7;  // of the largest current; K
        constexpr double roughly_settled = 0.05;                // K, of what is followed next
        const double largest = largest_given();
        solve::periodic_state before;
        bool was_bounded = false;
        double fineness = programme_.rest > 0.0 ? roughly_settled : solve::period_search{}.settled;
        for (int round = 0; round < most_rounds; ++round) {
            net_.set_currents(amps);
            using wanted = solve::period_search::wanted;
            search.settled = fineness;
            search.parts = programme_.rest > 0.0 ? wanted::rises : wanted::all;
            const loop_outcome heat = heated(found, search);
            if (heat == loop_outcome::ends && !was_bounded && found.mean.size() == net_.network().size()) {
                // what has warmed on the way to the bound may carry less by then
                was_bounded = true;
                const solve::divided_currents divided = sharing.divide(found.mean, amps);
                double change = 0.0;
                for (std::size_t b = 0; b < amps.size(); ++b)
                    change = std::max(change, std::fabs(divided.amps[b] - amps[b]));
                if (divided.what == solve::division::found && change > as_before * largest) {
                    amps = divided.amps;
                    continue;
                }
            }
            if (heat != loop_outcome::solved) return heat;
            const current_sharing::step step = sharing.towards(found, on_share());
            if (step.change <= settled * largest && !step.amps.empty()) {
                if (!step.is_stable) return loop_outcome::unstable;
                if (fineness == finely_settled || programme_.rest > 0.0) return loop_outcome::solved;
            }
            if (step.amps.empty()) return loop_outcome::unstable;
            if (step.change <= hardly * largest) fineness = finely_settled;
            before = std::move(found);
            search.near = &before;
            search.reached_from = solve::period_search::start::near;
            amps = step.amps;
        }
        return loop_outcome::not_settled;
    }

    // The part whose place it is: the end of a lead's conductor is a place of the joint it sits in as well, which owns
    // it.
    void note_bound(loop_state& out, std::size_t node) const
    {
        part_state* owner = nullptr;
        for (std::size_t i = 0; i < out.parts.size(); ++i)
            for (const loop_network::place_at& at : net_.parts()[i].places) {
                if (at.node != node || (owner != nullptr && at.what == part_place::conductor)) continue;
                if (owner != nullptr) owner->passes_bound.reset();
                owner = &out.parts[i];
                owner->passes_bound = at.what;
            }
    }

    [[nodiscard]] temperature at(double rise) const { return temperature::kelvin(net_.air() + rise); }

    void write(loop_state& out, const solve::periodic_state& found, scatter level)
    {
        for (const double t : found.times) out.times.push_back(in_si<duration>(t));
        out.made = in_si<power>(found.sums.made);
        out.lost = in_si<power>(found.sums.lost);
        const sharing_means means = means_of(found);
        net_.set_currents(means.branch_amps);
        const std::vector<std::vector<double>> amps = amps_of(found);
        std::size_t first_contact = 0;
        for (std::size_t i = 0; i < out.parts.size(); ++i) {
            write_part(out.parts[i], i, means, first_contact, amps, found, level);
            first_contact += net_.parts()[i].contacts.size();
            out.extension_drop += out.parts[i].extension_drop;
        }
        out.branch_amps = means.branch_amps;
        out.branch_volts = means.branch_volts;
        for (const loop_network::branch_at& b : net_.branches())
            if (b.way != part_address::trunk)
                out.ways[b.way].current = std::max(out.ways[b.way].current, in_si<current>(std::fabs(b.amps)));
        out.total_drop = across(out, means);
    }

    // Means while current flows: as they were followed, or of currents that are constant.
    [[nodiscard]] sharing_means means_of(const solve::periodic_state& found) const
    {
        sharing_means out(net_);
        if (!found.followed_on.empty()) {
            std::size_t at = 0;
            out.in_order([&](double& x) { x = found.followed_on[at++]; });
            return out;
        }
        for (std::size_t b = 0; b < net_.branches().size(); ++b) {
            out.branch_amps[b] = net_.branches()[b].amps;
            out.branch_volts[b] = net_.volts_of(b, found);
        }
        std::size_t which = 0;
        for (std::size_t i = 0; i < net_.parts().size(); ++i) {
            const loop_network::part_at& p = net_.parts()[i];
            for (const loop_network::ohmic_at& o : p.ohmics) {
                const double amps = out.branch_amps[o.branch];
                const double volts = amps * (o.at_zero + o.by_kelvin * found.on_mean[o.node]);
                out.metal_volts[i] += volts;
                out.metal_watts[i] += amps * volts;
                out.watts[i] += amps * volts;
            }
            for (const loop_network::contact_at& c : p.contacts) {
                // its heat is that of a current no smaller than amps_in(); where there is less, there is less drop
                const double amps = net_.amps_in(c.branch), own = out.branch_amps[c.branch];
                out.contact_volts[which] = own * found.source_on[c.source] / (amps * amps);
                out.watts[i] += own * out.contact_volts[which++];
            }
            if (!p.measured) continue;
            out.measured_volts[i] = p.measured->drop_of(out.branch_amps[p.branch]).volts;
            out.watts[i] += out.branch_amps[p.branch] * out.measured_volts[i];
        }
        return out;
    }
    // Currents of all branches at the moments of the trace that have current.
    [[nodiscard]] std::vector<std::vector<double>> amps_of(const solve::periodic_state& found)
    {
        std::vector<std::vector<double>> out;
        std::vector<double> constant;
        for (const loop_network::branch_at& b : net_.branches()) constant.push_back(b.amps);
        if (found.followed_on.empty()) {
            out.assign(found.times.size(), constant);
            return out;
        }
        const current_sharing sharing(net_, level_);
        instant_sharing follower(net_, sharing);
        for (std::size_t k = 0; k < found.times.size() && found.times[k] <= programme_.on * (1.0 + 1e-9); ++k) {
            follower.follow(found.trace[k]);
            out.push_back(follower.amps());
        }
        net_.set_currents(constant);
        return out;
    }

    // From terminal to terminal along branches that conduct, the arc left out.
    [[nodiscard]] voltage across(const loop_state& out, const sharing_means& means) const
    {
        const std::vector<loop_network::branch_at>& branches = net_.branches();
        if (branches.size() == 1) {
            voltage sum;
            for (const part_state& p : out.parts) sum += p.drop;
            return sum;
        }
        std::vector<double> volts;  // of each branch, from its first point to its second
        std::vector<bool> conducts;
        for (std::size_t b = 0; b < branches.size(); ++b) {
            double sum = means.branch_volts[b];
            bool closed = true;
            for (const std::size_t part : branches[b].parts) {
                closed = closed && out.parts[part].conducts;
                sum += constant_drop(out.parts[part], net_.parts()[part]);
            }
            volts.push_back(sum);
            conducts.push_back(closed);
        }
        return in_si<voltage>(net_.volts_across(volts, [&](std::size_t b) {
            return conducts[b] && (branches[b].way == part_address::trunk || !out.ways[branches[b].way].spans_arc);
        }));
    }
    // Of a gun's tip and wire, which no balance of loops needs.
    [[nodiscard]] static double constant_drop(const part_state& state, const loop_network::part_at& part)
    {
        return part.tip != nullptr ? (state.tip_drop + state.extension_drop).value() : 0.0;
    }

    void write_part(part_state& out, std::size_t which, const sharing_means& means, std::size_t first_contact,
                    const std::vector<std::vector<double>>& amps, const solve::periodic_state& found,
                    scatter level) const
    {
        const loop_network::part_at& part = net_.parts()[which];
        double most = std::fabs(means.branch_amps[part.branch]);
        for (const std::size_t b : part.meeting) most = std::max(most, std::fabs(means.branch_amps[b]));
        out.current = in_si<current>(most);
        // a point where ways meet has a drop for each: as one at the largest current it makes the same heat
        double volts = part.meeting.empty() ? std::fabs(means.metal_volts[which])
                       : most > 0.0         ? means.metal_watts[which] / most
                                            : 0.0;
        for (std::size_t k = 0; k < part.contacts.size(); ++k) {
            const loop_network::contact_at& c = part.contacts[k];
            out.contacts.push_back(contact_of(c, std::fabs(means.contact_volts[first_contact + k]), amps, found));
            const contact_state& now = out.contacts.back();
            volts += now.drop.value();
            if (c.on_work) out.work_drop = now.drop;
            out.softening_used = std::max(out.softening_used, now.softening_used);
            out.spots_melt = out.spots_melt || now.melts;
            out.hottest_spot = std::max(out.hottest_spot, now.hottest_spot);
        }
        volts += std::fabs(means.measured_volts[which]);
        out.extension_drop = pick(part.extension, level);
        out.tip_drop = pick(part.constant_drop, level);
        out.drop = in_si<voltage>(volts) + out.tip_drop + out.extension_drop;
        out.loss = in_si<power>(means.watts[which]) + out.current * (out.tip_drop + out.extension_drop);
        if (part.places.empty()) return;

        double along = 0.0, conductor = 0.0;
        for (const loop_network::ohmic_at& o : part.ohmics) {
            along += o.length;
            conductor += o.length * found.mean[o.node];
        }
        std::size_t hottest = part.places.front().node;
        for (const loop_network::place_at& p : part.places) {
            const auto known = std::find_if(out.places.begin(), out.places.end(),
                                            [&p](const place_state& s) { return s.what == p.what; });
            const temperature mean = at(found.mean[p.node]), peak = at(found.peak[p.node]);
            if (known == out.places.end())
                out.places.push_back({p.what, mean, peak});
            else {
                known->mean = std::max(known->mean, mean);
                known->peak = std::max(known->peak, peak);
            }
            const bool beside_the_part = p.what == part_place::work && part.places.front().what != part_place::work;
            if (!beside_the_part && found.peak[p.node] >= found.peak[hottest]) {
                hottest = p.node;
                out.hottest = p.what;
            }
        }
        if (along > 0.0)
            for (place_state& p : out.places)
                if (p.what == part_place::conductor) p.mean = at(conductor / along);
        out.mean = along > 0.0 ? at(conductor / along) : at(found.mean[hottest]);
        out.peak = at(found.peak[hottest]);
        out.hottest_spot = std::max(out.hottest_spot, out.peak);
        for (const std::vector<double>& moment : found.trace) out.trace.push_back(at(moment[hottest]));
    }

    [[nodiscard]] contact_state contact_of(const loop_network::contact_at& c, double drop,
                                           const std::vector<std::vector<double>>& amps,
                                           const solve::periodic_state& found) const
    {
        contact_state out;
        out.what = c.word;
        out.drop = in_si<voltage>(drop);
        const metal_pair& metals = c.law->metals();
        const temperature melting = std::min(metals.first.melting, metals.second.melting);
        for (std::size_t k = 0; k < found.times.size(); ++k) {
            if (found.times[k] > programme_.on * (1.0 + 1e-9)) break;
            const double rise = loop_network::bulk_rise(c, found.trace[k]);
            const double volts = c.law->volts_through(std::fabs(amps[k][c.branch]), rise,
                                                      loop_network::gripping_rise(c, found.trace[k]));
            const temperature bulk = c.law->bulk_at(rise);
            const joint_limits limits = joint_limits_of(metals, bulk);
            if (limits.softening.value() > 0.0)
                out.softening_used = std::max(out.softening_used, volts / limits.softening.value());
            else
                out.softening_used =
                    std::max(out.softening_used, 1.0 + volts);  // softer than soft: it is past that drop
            out.melts = out.melts || volts >= melting_share * limits.melting.value();
            out.hottest_spot =
                std::max(out.hottest_spot, std::min(hot_spot_temperature(in_si<voltage>(volts), bulk), melting));
        }
        return out;
    }

    const station* station_;
    loop_network net_;
    solve::on_off programme_;
    scatter level_ = scatter::typical;  // that is set
};

}  // namespace detail

[[nodiscard]] inline loop_state solve_loop(const station& s, scatter level)
{
    return detail::loop_solver(s).solve(level);
}

}  // namespace weldloop
