#pragma once
/// @file
/// How the swing of a clamp's places about their period mean changes as its jaws conduct worse or better: between
/// settled periods of its own network.

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <iterator>
#include <map>
#include <memory>
#include <utility>

#include <weldloop/circuit/clamp_network.hpp>
#include <weldloop/solve/periodic_state.hpp>

namespace weldloop::detail {

// Places of a clamp's heat: those of clamp_node, then the patch of the work under its jaws.
inline constexpr std::size_t jaw_place = static_cast<std::size_t>(clamp_node::jaw),
                             body_place = static_cast<std::size_t>(clamp_node::body),
                             spring_place = static_cast<std::size_t>(clamp_node::spring),
                             handle_place = static_cast<std::size_t>(clamp_node::handle),
                             entry_place = static_cast<std::size_t>(clamp_node::entry), patch_place = clamp_nodes,
                             clamp_places = clamp_nodes + 1;
using place_values = std::array<double, clamp_places>;

/// How far the places of a settled period depart from each other.
struct swing_departures {
    place_values mean_over_steady{};  // K, the steady state having the heat spread evenly over the period
    place_values on_over_mean{};      // K, mean of the time with current
    place_values peak_over_mean{};    // K

    /// The same times a share: what a swing does to the mean goes with its square.
    [[nodiscard]] swing_departures grown(double share) const
    {
        swing_departures out;
        for (std::size_t k = 0; k < clamp_places; ++k) {
            out.mean_over_steady[k] = share * share * mean_over_steady[k];
            out.on_over_mean[k] = share * on_over_mean[k];
            out.peak_over_mean[k] = share * peak_over_mean[k];
        }
        return out;
    }
    /// Adds others times a share.
    void add(double share, const swing_departures& other)
    {
        for (std::size_t k = 0; k < clamp_places; ++k) {
            mean_over_steady[k] += share * other.mean_over_steady[k];
            on_over_mean[k] += share * other.on_over_mean[k];
            peak_over_mean[k] += share * other.peak_over_mean[k];
        }
    }
};

/// A settled period of the clamp by itself, with the contact's heat in the steady state under it.
struct clamp_settled {
    std::shared_ptr<const solve::periodic_state> found;  // null, or not solved: there is none
    double contact_heat = 0.0;                           // W, period mean
    swing_departures swing = {};
    int softened = 0;  // moments with soft spots: of the coldest and the hottest with current

    [[nodiscard]] bool is_there() const { return found && found->what == solve::outcome::solved; }
};

/// What a clamp's swing is more than that of one condition grown by its contact's heat. Where the current heats the
/// spring by itself, or warmth levels the contact's drop, the swing does not go with that heat: settled periods of the
/// clamp's own network are sought an eighth of the logarithm of the jaws' conductance apart, where they are asked for,
/// and straight lines in the contact's heat drawn between them. Worse contacts are walked to one period after the
/// other, as long as each has one and its contact makes another heat than the one before: a drop that has levelled off
/// at the melting of the spots swings no other way however little is left to conduct. At most 100 periods, to a
/// conductance of 4e-6 of that followed. Fills while it is read: not for two threads at once.
///
/// Accuracy: means, and peaks of jaws and spring, within 0.1 K of the own period of each condition, held by a test.
/// Source: judgement, how far apart the periods lie; no law of its own.
class swing_course {
public:
    /// @param own the settled period of the condition followed, if it is known
    explicit swing_course(clamp_settled own)
    {
        if (own.is_there()) knots_.emplace(0, std::move(own));
    }

    /// The departures beyond those of the condition followed, grown by the contact's heat.
    /// @param x logarithm of the jaws' conductance over that of the condition followed @param heat of the contact in
    /// the steady state [W] @param settle the clamp_settled at such a logarithm, with the settled period of a
    /// conductance that was no less, or null, and with that of a lesser one, which lends its swing, or null
    template <class Settle>
    [[nodiscard]] swing_departures beyond(double x, double heat, const Settle& settle) const
    {
        if (x == 0.0 || !at(0, settle)->is_there()) return {};
        int high = whole * static_cast<int>(std::ceil(std::max(x / (whole * unit), -double{most_walked})));
        while (there_to_ > high && !ends_) {
            const clamp_settled &better = *at(there_to_, settle), &worse = *at(there_to_ - whole, settle);
            if (worse.is_there()) there_to_ -= whole;  // no period: none of a worse contact either
            ends_ = !worse.is_there() || is_level(better, worse);
        }
        high = std::max(high, there_to_);
        if (!at(high, settle)->is_there()) return {};
        int low = high - whole;
        for (int part = whole; part > 0 && !at(low = high - part, settle)->is_there();) part /= 2;
        const bool at_end = low != high - whole;
        while (high - low > finest && at(low, settle)->is_there() &&
               at(high, settle)->softened != at(low, settle)->softened) {
            const int middle = (high + low) / 2;  // the way of the swing turns there
            (x > unit * middle ? low : high) = middle;
        }
        const clamp_settled &better = *at(high, settle), &worse = *at(low, settle);
        swing_departures out = more_of(better, settle);
        if (!worse.is_there()) return out;
        const double width = unit * (high - low), change = worse.contact_heat / better.contact_heat - 1.0;
        constexpr double level = 0.1;     // change of the heat by that of the conductance: less says nothing
        constexpr double furthest = 2.0;  // beyond the last period there is, in widths
        const double share =
            std::fabs(change) > level * width ? (heat / better.contact_heat - 1.0) / change : (unit * high - x) / width;
        const double part = std::clamp(share, 0.0, at_end ? furthest : 1.0);
        swing_departures to = more_of(worse, settle);
        to.add(-1.0, out);
        out.add(part, to);
        return out;
    }

private:
    static constexpr int finest = 2;               // units between two knots where spots begin to soften
    static constexpr int whole = 8;                // units between two knots; parts of it before the last period
    static constexpr double unit = 0.125 / whole;  // of the logarithm of the conductance
    static constexpr int most_walked = 100;        // knots

    // Whether worse contacts make no other heat any more.
    [[nodiscard]] static bool is_level(const clamp_settled& better, const clamp_settled& worse)
    {
        constexpr double level = 1e-4;  // of the heat, from one knot to the next
        return std::fabs(worse.contact_heat - better.contact_heat) <= level * std::fabs(better.contact_heat);
    }

    template <class Settle>
    [[nodiscard]] const clamp_settled* at(int place, const Settle& settle) const
    {
        const auto from = knots_.lower_bound(place);
        if (from != knots_.end() && from->first == place) return &from->second;
        const auto better = std::find_if(from, knots_.end(), is_settled);
        const auto worse = std::find_if(std::reverse_iterator(from), knots_.rend(), is_settled);
        clamp_settled made = settle(unit * place, better != knots_.end() ? better->second.found.get() : nullptr,
                                    worse != knots_.rend() ? worse->second.found.get() : nullptr);
        return &knots_.emplace(place, std::move(made)).first->second;
    }
    [[nodiscard]] static bool is_settled(const std::pair<const int, clamp_settled>& knot)
    {
        return knot.second.is_there();
    }

    // What a knot's departures are beyond those of the condition followed, grown.
    template <class Settle>
    [[nodiscard]] swing_departures more_of(const clamp_settled& k, const Settle& settle) const
    {
        const clamp_settled& own = *at(0, settle);
        swing_departures out = k.swing;
        out.add(-1.0, own.swing.grown(k.contact_heat / own.contact_heat));
        return out;
    }

    mutable std::map<int, clamp_settled> knots_;  // by place; stay where they are while others come
    mutable int there_to_ = 0;                    // whole places down to here have a period
    mutable bool ends_ = false;                   // nothing is walked to beyond that
};

}  // namespace weldloop::detail
