#pragma once
/// @file
/// A station solved once, for all that is asked of it: states at the median and at the poor end of the scatter, and
/// what a part has at each of its places.

#include <algorithm>
#include <cstddef>
#include <memory>
#include <optional>
#include <vector>

#include <weldloop/circuit/drawn_scatter.hpp>
#include <weldloop/circuit/loop_body.hpp>
#include <weldloop/circuit/loop_scatter.hpp>
#include <weldloop/circuit/station.hpp>
#include <weldloop/circuit/station_parts.hpp>
#include <weldloop/core/band.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/rating/assessment.hpp>

namespace weldloop::detail {

/// Whether a settled state can lend its swing to the search for that of a network: it has as many nodes.
[[nodiscard]] inline bool lends_swing(const solve::periodic_state& state, const loop_network& to)
{
    return state.what == solve::outcome::solved && state.march != nullptr && state.mean.size() == to.network().size();
}

/// A station solved at its typical and its poor point, with its scatter. Not for two threads at once: what is asked for
/// first is solved then.
class solved_station {
public:
    /// @param opened numbers of parts that are taken as open
    explicit solved_station(const station& s, const std::vector<std::size_t>& opened = {})
        : solved_station(s, checked_arc_index(s), opened)
    {
        solve_ends();
        find_scatter(typical_.outcome, poor_.outcome);
    }
    /// A stretch of a loop by itself, at its typical point; solve_ends() and find_scatter() are for the caller.
    /// @param s with the parts of the stretch alone @param arc_at how many of them lie before the arc
    /// @param like a station with hardly anything different under the same duty, whose swing is lent, or null
    solved_station(const station& s, std::size_t arc_at, const std::vector<std::size_t>& opened = {},
                   const solved_station* like = nullptr)
        : station_(&s), solver_(s, arc_at, opened), divides_(solver_.divides(scatter::typical))
    {
        const bool lends = like != nullptr && !divides_ && lends_swing(like->typical_state_, solver_.network());
        typical_ = solver_.solve(
            scatter::typical, &typical_state_,
            {.near = lends ? &like->typical_state_ : nullptr, .reached_from = solve::period_search::start::cold});
    }
    /// The loop with every joint poor.
    void solve_ends()
    {
        if (!typical_.is_solved()) {  // nothing is better with every joint poor
            poor_ = typical_;
            return;
        }
        poor_ = solver_.solve(scatter::high, &poor_state_, {.near = &typical_state_});
        solver_.set(scatter::typical, typical_);
    }
    /// Whether the loop with every joint poor surely has a state, before it is solved.
    [[nodiscard]] bool surely_has_poor_state()
    {
        const bool out = typical_.is_solved() && solver_.surely_settles(scatter::high);
        solver_.set(scatter::typical, typical_);
        return out;
    }
    /// What became of the loop that this is, or is a stretch of, at its typical and its poor point.
    void find_scatter(loop_outcome typical, loop_outcome poor)
    {
        const loop_outcome before = poor_of_loop_;
        outcome_ = typical;
        poor_of_loop_ = poor;
        if (typical != loop_outcome::solved || (scatter_ && before == poor)) return;
        const auto on_share = static_cast<double>(station_->job.duty.share());
        if (divides_)
            scatter_ = std::make_unique<drawn_scatter>(solver_.network(), typical_state_, on_share);
        else
            scatter_ = std::make_unique<loop_scatter>(
                solver_.network(), typical_state_, [this] { return good_state(); }, poor_state(), on_share);
    }
    solved_station(const solved_station&) = delete;
    solved_station& operator=(const solved_station&) = delete;

    [[nodiscard]] const station& of() const { return *station_; }
    [[nodiscard]] const loop_state& typical() const { return typical_; }
    [[nodiscard]] const loop_state& poor() const { return poor_; }
    [[nodiscard]] const loop_network& network() const { return solver_.network(); }
    [[nodiscard]] const solved_scatter& scatter_of() const { return *scatter_; }
    [[nodiscard]] const solve::periodic_state& typical_state() const { return typical_state_; }
    /// Null where the loop has no state with every joint poor, or none was found of this stretch of it.
    [[nodiscard]] const solve::periodic_state* poor_state() const
    {
        return poor_of_loop_ == loop_outcome::solved && poor_.is_solved() ? &poor_state_ : nullptr;
    }
    /// Whether ways share the current.
    [[nodiscard]] bool divides() const { return divides_; }
    /// Of the loop that this is, or is a stretch of.
    [[nodiscard]] loop_outcome outcome() const { return outcome_; }
    [[nodiscard]] bool is_solved() const { return outcome_ == loop_outcome::solved; }

    /// The node of a place that gets hottest.
    [[nodiscard]] std::size_t node_of(std::size_t part, part_place what) const
    {
        std::size_t out = loop_network::nowhere;
        for (const loop_network::place_at& p : network().parts()[part].places)
            if (p.what == what &&
                (out == loop_network::nowhere || typical_state_.peak[p.node] > typical_state_.peak[out]))
                out = p.node;
        return out;
    }
    [[nodiscard]] temperature at(double rise) const { return temperature::kelvin(network().air() + rise); }
    /// The peak of a node with its scatter.
    [[nodiscard]] band<temperature> peak_band(const scattered_sum& peak) const
    {
        const temperature typical = at(peak.base());
        return {std::min(typical, at(peak.end(false))), typical, std::max(typical, at(peak.end(true)))};
    }

private:
    // With every joint good: solved when it is asked for first.
    [[nodiscard]] const solve::periodic_state* good_state()
    {
        if (!good_) {
            constexpr double settled = 5e-3;  // K: it only says which way peaks bend that differ by 0.3 K and more
            good_ = solver_.rises(
                scatter::low,
                {.near = &typical_state_, .settled = settled, .reached_from = solve::period_search::start::cold});
            solver_.set(scatter::typical, typical_);
        }
        return good_->what == solve::outcome::solved ? &*good_ : nullptr;
    }

    const station* station_;
    loop_solver solver_;
    bool divides_;  // ways share the current
    std::optional<solve::periodic_state> good_;
    solve::periodic_state poor_state_, typical_state_;
    loop_state poor_, typical_;
    loop_outcome outcome_ = loop_outcome::not_settled, poor_of_loop_ = loop_outcome::not_settled;
    std::unique_ptr<solved_scatter> scatter_;
};

[[nodiscard]] inline band<voltage> volts_band(double low, double typical, double high)
{
    return {in_si<voltage>(std::max(0.0, std::min(typical, low))), in_si<voltage>(typical),
            in_si<voltage>(std::max(typical, high))};
}

[[nodiscard]] inline band<current> amps_band(double low, double typical, double high)
{
    return {in_si<current>(std::max(0.0, std::min(typical, low))), in_si<current>(typical),
            in_si<current>(std::max(typical, high))};
}

// What a part has: drop, heat, temperatures of all its places, each with its scatter.
inline void measure(part_result& r, const solved_station& s, std::size_t i)
{
    const part_state& usual = s.typical().parts[i];
    r.conducts = usual.conducts;
    r.open_in_poor_case = usual.conducts && s.typical().is_solved() && !s.poor().parts[i].conducts;
    r.basis = s.typical().part_basis[i];
    r.peak = exactly(usual.peak);
    r.peak_temperature = usual.peak;
    if (!s.typical().is_solved()) return;
    const scattered_sum drop = s.scatter_of().drop_of(i, usual.drop.value());
    r.drop = volts_band(drop.end(false), drop.base(), drop.end(true));
    const scattered_sum amps = s.scatter_of().current_of(i, usual.current.value());
    r.current = amps_band(amps.end(false), amps.base(), amps.end(true));
    r.loss = mapped(r.drop, [&](voltage v) { return power(v * usual.current); });
    r.peak_at = usual.hottest;
    for (const place_state& p : usual.places) {
        const std::size_t node = s.node_of(i, p.what);
        r.places.push_back({p.what, s.peak_band(s.scatter_of().peak_of(node))});
        if (p.what == usual.hottest) r.peak = r.places.back().peak;
    }
    r.softening_used = usual.softening_used;
    if (usual.contacts.empty()) return;
    const part_state& poor = s.poor().is_solved() ? s.poor().parts[i] : usual;
    r.hottest_spot =
        band<temperature>{usual.hottest_spot, usual.hottest_spot, std::max(usual.hottest_spot, poor.hottest_spot)};
}

}  // namespace weldloop::detail
