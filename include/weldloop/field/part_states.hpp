#pragma once
/// @file
/// Every state a part may be found in, condition and resistance, before anything is read; at each current of the
/// readings.

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <memory>
#include <optional>
#include <string>
#include <utility>
#include <variant>
#include <vector>

#include <weldloop/circuit/loop_body.hpp>
#include <weldloop/circuit/station.hpp>
#include <weldloop/circuit/station_parts.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/field/failing_part.hpp>
#include <weldloop/field/fault_rates.hpp>
#include <weldloop/field/observation.hpp>
#include <weldloop/field/part_candidates.hpp>
#include <weldloop/field/part_ohms.hpp>
#include <weldloop/solve/periodic_state.hpp>
#include <weldloop/solve/span_sums.hpp>
#include <weldloop/solve/steady_state.hpp>

namespace weldloop::detail {

/// A condition of a part.
struct part_condition {
    candidate what;
    double prior = 0.0;                   // before anything is read
    std::vector<double> cold_share = {};  // at each current: its resistance cold over the typical hot one
};

/// A part by its states: a condition and a resistance each. None for the arc and junctions.
struct part_states {
    std::vector<part_condition> conditions;  // the first: as described
    std::vector<std::size_t> condition;      // of each state
    std::vector<double> prior;               // of each state
    std::vector<std::vector<double>> ohms;   // at each current, of each state

    [[nodiscard]] std::size_t size() const { return prior.size(); }
    [[nodiscard]] bool is_beyond_wear(std::size_t state) const
    {
        return conditions[condition[state]].what.is_beyond_wear;
    }
    [[nodiscard]] double typical_ohms(std::size_t at_current) const  // as described: the mean
    {
        double sum = 0.0, weight = 0.0;
        for (std::size_t i = 0; i < size() && condition[i] == 0; ++i) {
            sum += prior[i] * ohms[at_current][i];
            weight += prior[i];
        }
        return weight > 0.0 ? sum / weight : 0.0;
    }
};

/// What the states of parts are wanted for.
struct level_wanted {
    bool at_job = false;      // something was found at the current of the job itself
    bool with_peaks = false;  // some of it a temperature
    double closest = 0.02;    // see ohms_in_loop
};

/// A station as described, solved at the currents that readings were taken at.
class states_of_parts {
public:
    /// @param readings of volts: those at nearly one current share a solution
    states_of_parts(const station& s, const std::vector<reading>& readings, const level_wanted& wanted)
        : closest_(wanted.closest)
    {
        std::vector<double> asked;
        const double job = s.job.current.value();
        if (s.ways.empty())
            for (const reading& r : readings) asked.push_back(r.current.value());
        if (wanted.at_job || asked.empty()) asked.push_back(job);
        std::sort(asked.begin(), asked.end());
        for (std::size_t i = 0; i < asked.size();) {
            std::size_t n = i;
            double sum = 0.0;
            while (n < asked.size() && asked[n] <= alike * asked[i]) sum += asked[n++];
            auto level = std::make_unique<solved_level>(s, in_si<current>(sum / static_cast<double>(n - i)), wanted);
            level->from = asked[i];
            level->to = asked[n - 1];
            i = n;
            if (level->in_loop) levels_.push_back(std::move(level));
        }
        for (std::size_t l = 1; l < levels_.size(); ++l)
            if (std::fabs(std::log(levels_[l]->amps / job)) < std::fabs(std::log(levels_[main_]->amps / job)))
                main_ = l;
    }

    /// How many currents there are that the loop has a settled state at.
    [[nodiscard]] std::size_t currents() const { return levels_.size(); }
    /// The one nearest to that of the job.
    [[nodiscard]] std::size_t main() const { return main_; }
    /// The current that stands for one that was read at; none if the loop has no settled state there.
    [[nodiscard]] std::optional<std::size_t> current_of(const reading& r) const
    {
        if (levels_.empty()) return std::nullopt;
        if (!levels_.front()->at.ways.empty()) return 0;
        const double amps = r.current.value();
        for (std::size_t l = 0; l < levels_.size(); ++l)
            if (levels_[l]->from <= amps && amps <= levels_[l]->to) return l;
        return std::nullopt;
    }
    [[nodiscard]] const ohms_in_loop& loop_at(std::size_t l) const { return *levels_[l]->in_loop; }

    /// The states of a part. @param p its number @param rates of faults
    [[nodiscard]] part_states of(std::size_t p, const fault_rates& rates)
    {
        part_states out;
        const station& s = levels_.front()->at;
        const path_part& part = part_at(s, p);
        out.ohms.resize(levels_.size());
        if (std::holds_alternative<arc>(part) || std::holds_alternative<junction>(part)) return out;
        std::vector<candidate> all = candidate_maker(name_of(s, p))(part);
        std::vector<std::vector<part_ohms>> at;  // of each known condition, at each current
        double faults = 0.0;
        station with = s;
        for (const candidate& c : all) {
            if (c.is_beyond_wear) continue;
            faults += c.weight;
            part_at(with, p) = c.part;
            const path_part placed = part_as_placed(with, p);
            std::vector<part_ohms>& here = at.emplace_back();
            for (const auto& level : levels_) here.push_back(level->in_loop->of(p, placed));
        }
        std::vector<failing_spread> spreads;
        for (std::size_t l = 0; l < levels_.size(); ++l) spreads.push_back(failing_from(at, p, l));
        const failing_spread::counts beyond = spreads[main_].values(closest_);
        const double soft = softening_volts / levels_[main_]->in_loop->amps_through(p);
        std::vector<std::vector<double>> worse(levels_.size());  // ohm, of what is beyond wear
        if (all.back().is_beyond_wear)
            for (std::size_t l = 0; l < levels_.size(); ++l) spreads[l].put(worse[l], beyond);
        // of those the first are not yet failing
        const std::size_t milder = static_cast<std::size_t>(
            std::lower_bound(worse[main_].begin(), worse[main_].end(), soft) - worse[main_].begin());

        const part_kind kind = weldloop::kind_of(part);
        const double rate = static_cast<double>(rates.at(kind));
        const double failing = worse[main_].empty() ? 0.0 : rate * static_cast<double>(rates.failing_at(kind));
        const double others = faults > 0.0 ? rate - failing : 0.0;
        std::size_t states = worse[main_].size();
        for (const std::vector<part_ohms>& here : at) states += here[main_].hot.size();
        out.condition.reserve(states);
        out.prior.reserve(states);
        for (std::vector<double>& ohms : out.ohms) ohms.reserve(states);
        out.conditions.reserve(all.size());
        for (std::size_t c = 0; c < all.size(); ++c) {
            part_condition here{.what = std::move(all[c])};
            if (here.what.is_beyond_wear) {
                const std::size_t first = here.what.is_failing ? milder : 0,
                                  last = here.what.is_failing ? worse[main_].size() : milder;
                if (first == last) continue;
                here.cold_share.assign(levels_.size(), 1.0);
                for (std::size_t i = first; i < last; ++i) {
                    out.condition.push_back(out.conditions.size());
                    out.prior.push_back(failing * failing_spread::weight(i, beyond));
                    here.prior += out.prior.back();
                    for (std::size_t l = 0; l < levels_.size(); ++l) out.ohms[l].push_back(worse[l][i]);
                }
            } else {
                here.prior = c > 0 ? others * here.what.weight / faults : 1.0 - others - failing;
                for (const part_ohms& o : at[c]) here.cold_share.push_back(o.cold_share);
                const solve::distribution& main = at[c][main_].hot;
                for (const solve::weighted_value& v : main) {
                    out.condition.push_back(c);
                    out.prior.push_back(here.prior * v.weight);
                    out.ohms[main_].push_back(v.at);
                }
                for (std::size_t l = 0; l < levels_.size(); ++l)
                    if (l != main_) put_values(out.ohms[l], main, at[c][l].hot);
            }
            out.conditions.push_back(std::move(here));
        }
        return out;
    }

private:
    // What a part takes that is failing: from the top of the conditions it wears into.
    [[nodiscard]] failing_spread failing_from(const std::vector<std::vector<part_ohms>>& known, std::size_t p,
                                              std::size_t level) const
    {
        double top = 0.0;
        for (const std::vector<part_ohms>& here : known) top = std::max(top, top_of(here[level].hot));
        return {top, levels_[level]->in_loop->amps_through(p), most_volts_of(levels_[level]->at).value()};
    }

    static constexpr double alike = 1.25;  // currents this far apart warm the loop alike, within what lay differs
    struct solved_level {
        solved_level(const station& s, current through, const level_wanted& wanted) : at(s), amps(through.value())
        {
            if (s.ways.empty()) at.job.current = through;
            solver.emplace(at);
            const bool is_solved = wanted.with_peaks || !s.ways.empty() || !s.others.empty() ? in_period() : in_mean();
            if (is_solved) in_loop.emplace(at, solver->network(), found, wanted.closest);
        }
        solved_level(const solved_level&) = delete;
        solved_level& operator=(const solved_level&) = delete;

        [[nodiscard]] bool in_period()
        {
            const loop_state state = solver->solve(scatter::typical, &found);
            if (state.is_solved()) solver->set(scatter::typical, state);
            return state.is_solved();
        }
        // The mean over the period alone, a tenth of the work: a resistance differs by half a percent from that while
        // current flows.
        [[nodiscard]] bool in_mean()
        {
            loop_network& net = solver->network();
            net.set(scatter::typical);
            for (std::size_t p = 0; p < net.parts().size(); ++p)
                if (!net.conducts(p, scatter::typical)) return false;
            solve::steady_state mean =
                solve::steady_state_of(net.network(), static_cast<double>(at.job.duty.share()), net.cold());
            found.mean = found.on_mean = found.peak = std::move(mean.rise);
            return mean.what == solve::outcome::solved;
        }

        station at;
        double amps, from = 0.0, to = 0.0;
        std::optional<loop_solver> solver;
        solve::periodic_state found;
        std::optional<ohms_in_loop> in_loop;
    };

    // The values at another current that have the ranks of those at the main one: what is poor at one is at the other.
    static void put_values(std::vector<double>& out, const solve::distribution& main, const solve::distribution& there)
    {
        double below_main = 0.0, below = 0.0;  // weights
        std::size_t at = 0;
        const auto middle = [&](std::size_t i) { return below + 0.5 * there[i].weight; };
        for (const solve::weighted_value& v : main) {
            const double rank = below_main + 0.5 * v.weight;
            below_main += v.weight;
            // the last whose middle lies at or below that rank
            while (at + 1 < there.size() && middle(at) + 0.5 * (there[at].weight + there[at + 1].weight) <= rank)
                below += there[at++].weight;
            const double over = rank - middle(at);
            if (at + 1 == there.size() || over <= 0.0) {
                out.push_back(there[at].at);
                continue;
            }
            const double apart = 0.5 * (there[at].weight + there[at + 1].weight);
            out.push_back(there[at].at + over / apart * (there[at + 1].at - there[at].at));
        }
    }

    std::vector<std::unique_ptr<solved_level>> levels_;
    std::size_t main_ = 0;
    double closest_;
};

}  // namespace weldloop::detail
