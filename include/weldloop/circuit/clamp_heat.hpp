#pragma once
/// @file
/// The heat of a clamp with what lies behind it, in the mean over the duty period: the state it comes to, or what keeps
/// it from having one. The network is that of the loop, cut off behind the cable connection.
/// Source: balance of heat in every place, derived; contacts and bodies by the laws of clamp_nodes.hpp.

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <limits>
#include <memory>
#include <span>
#include <vector>

#include <weldloop/circuit/body_tables.hpp>
#include <weldloop/circuit/clamp_network.hpp>
#include <weldloop/circuit/clamp_nodes.hpp>
#include <weldloop/circuit/clamp_swing_course.hpp>
#include <weldloop/circuit/joint_circuit.hpp>
#include <weldloop/core/duty_cycle.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/law/voltage_temperature.hpp>
#include <weldloop/part/load.hpp>
#include <weldloop/solve/periodic_state.hpp>
#include <weldloop/solve/steady_state.hpp>

namespace weldloop {

/// What has become of a clamp, as its heat feels it.
struct clamp_condition {
    double force_share = 1.0;  ///< cold force over that when new, above 0 to 1
    double contact_factor =
        1.0;  ///< resistance of the jaws over that at the same force without film and knocks, above 0
};

/// What a clamp's steady state is limited by.
enum class clamp_bound {
    none,      ///< it has one
    gripping,  ///< what grips reaches its limit: the spring its tempering, the magnet its highest temperature
    melting,   ///< another place reaches the melting point of its metal, or never comes to rest
};

/// The steady heat of a clamp.
struct clamp_heat {
    clamp_bound bound =
        clamp_bound::none;  ///< none: the rest holds; else the state on its warming at which the limit was met
    std::array<temperature, clamp_nodes> mean = {};  ///< by clamp_node, over the duty period
    double warm_share = 1.0;                         ///< warm force over cold
    bool spots_melt = false;                         ///< the jaws' drop is at the melting drop of their metals
    voltage jaw_drop = {};                           ///< jaws to work, while current flows
    voltage drop = {};                               ///< cable to work, while current flows
    power made = {};                                 ///< all heat made, period mean, the work's side included
    power to_air = {};                               ///< from all surfaces
    power to_work = {};                              ///< into the work, both what is made there and what crosses
    power to_lead = {};                              ///< into the lead; negative if the lead heats the clamp

    /// Temperature of a place, period mean.
    [[nodiscard]] temperature at(clamp_node node) const { return mean[static_cast<std::size_t>(node)]; }
};

namespace detail {

/// The solver of one clamp under one load, at one point of the scatter. Borrows the clamp_network. Copies share their
/// network, whose tables fill while it is read: not for two threads at once.
class clamp_solver {
public:
    using reached = solve::period_search::start;
    /// A state between two calls; a start for a neighbouring one.
    struct state {
        clamp_bound bound = clamp_bound::none;
        place_values rise{};            // K over the air, period mean
        place_values steady{};          // the same if heat were made all the time at its period mean
        double contact_heat = 0.0;      // W, period mean, both sides of the contact
        double swing = 0.0;             // contact heat over that of the period the solver follows; 0 for steady current
        place_values peak_over_mean{};  // K in the period
        double jaw_volts = 0.0, termination_volts = 0.0;
        double warm = 1.0;        // warm force over cold
        bool spots_melt = false;  // the jaws' drop is at the melting drop of their metals
    };

    clamp_solver(const clamp_network& n, const clamp_outside& outside, const load& work, scatter level)
        : n_(&n), air_(n.where.air.in_kelvin()), amps_(work.current.value()),
          duty_(static_cast<double>(work.duty.share())), lead_(outside.conductance.value()),
          lead_rise_((outside.far - n.where.air).value()), jaws_(pick(n.jaws, of_conductance(level)).value()),
          made_(std::make_shared<built>(n, amps_, lead_, lead_rise_))
    {
        made_->clamp.termination.law->set_cold(pick(n.termination, of_conductance(level)).value());
    }

    [[nodiscard]] bool conducts() const { return jaws_ > 0.0 && made_->clamp.termination.law->cold() > 0.0; }
    [[nodiscard]] double amps() const { return amps_; }
    [[nodiscard]] double duty() const { return duty_; }
    [[nodiscard]] double air() const { return air_; }
    /// Whether current heats the spring, whatever the contact does.
    [[nodiscard]] bool heats_spring() const { return made_->clamp.spring.cold > 0.0; }
    /// The network, for a check, as the last condition asked for left it. @param c condition
    [[nodiscard]] const solve::heat_network& network_at(const clamp_condition& c) const
    {
        set(c);
        return made_->net;
    }
    /// Nodes of the places in it.
    [[nodiscard]] const std::array<solve::heat_network::index, clamp_places>& nodes() const { return made_->node; }

    /// Warm force over cold with what grips at a rise [K].
    [[nodiscard]] double warm_at(double rise) const
    {
        const double left =
            std::max(0.0, 1.0 - n_->grip.slope.value() * (air_ + rise - reference_temperature.in_kelvin()));
        return n_->grip.power == 1 ? left : left * left;
    }

    [[nodiscard]] double gripping_rise(const state& s) const { return s.rise[static_cast<std::size_t>(n_->gripping)]; }

    /// A settled period, as the states of other conditions follow it: its swing grows with the contact's heat, and by
    /// what a swing_course says beyond that.
    struct period {
        clamp_bound bound = clamp_bound::none;  // what keeps it from being
        double contact_heat = 0.0;              // W of the steady state under it
        swing_departures swing = {};
        double conductance = 0.0;  // S, of the jaws when it was found
        solve::on_off programme = {};
        clamp_settled own = {};  // the clamp's own period of that condition, if it is known
        // by how much the logarithm of the conductance may change without a look at other periods, with hard spots
        // (then it may rise by any amount) and with soft ones; half as much again until they count in full; 0: not at
        // all
        double trusted = 0.0, trusted_soft = 0.0;
    };
    /// The swing of a place in a state, over that of the period it follows.
    [[nodiscard]] double swing_of(const state& s, std::size_t place) const
    {
        constexpr double least = 1e-2;  // K: a smaller swing tells nothing
        const double followed = period_.swing.peak_over_mean[place];
        return followed > least ? std::max(0.0, s.peak_over_mean[place] / followed) : s.swing;
    }
    /// The highest a place gets in the period of a state [K over the air].
    [[nodiscard]] double peak_of(const state& s, std::size_t place) const
    {
        return s.rise[place] + s.peak_over_mean[place];
    }
    /// The states asked for from now on have the swing of a period.
    void follow(const period& p)
    {
        period_ = p;
        course_ = std::make_shared<swing_course>(p.own);
    }
    /// Conductance of the jaws in a condition [S].
    [[nodiscard]] double conductance_at(const clamp_condition& c) const
    {
        return jaws_ * std::pow(c.force_share, n_->force_exponent) / c.contact_factor;
    }

    /// The settled period of a condition, judged as the loop judges it: its end within 5 mK of its start.
    /// @param near that of a condition that was no worse, or nullptr @param from the cold: it may be a worse one, even
    /// of the clamp under another current, and lends its swing alone
    [[nodiscard]] solve::periodic_state settled_period(const clamp_condition& c, const duty_cycle& duty,
                                                       const solve::periodic_state* near = nullptr,
                                                       reached from = reached::near) const
    {
        set(c);
        return settled_as_set(programme_of(duty), {.near = near,
                                                   .settled = swing_settled,
                                                   .reached_from = from,
                                                   .parts = solve::period_search::wanted::rises});
    }
    /// Of a duty cycle.
    [[nodiscard]] static solve::on_off programme_of(const duty_cycle& duty)
    {
        return {duty.on().value(), duty.is_continuous() ? 0.0 : (duty.period() - duty.on()).value()};
    }
    /// The departures of a settled period, and the contact's heat under it. @param found of the condition @param c
    [[nodiscard]] clamp_settled settled_of(const clamp_condition& c,
                                           std::shared_ptr<const solve::periodic_state> found) const
    {
        set(c);
        return departures_of(std::move(found));
    }
    /// What ended a search for a state.
    [[nodiscard]] clamp_bound bound_of(solve::outcome what, solve::heat_network::index where) const
    {
        if (what == solve::outcome::solved) return clamp_bound::none;
        return what == solve::outcome::bounded && where == made_->clamp.at(n_->gripping) ? clamp_bound::gripping
                                                                                         : clamp_bound::melting;
    }

    /// The steady state a clamp comes to from the cold, or from a state near it.
    /// @param from a state of a condition that was no worse, or nullptr for the cold
    [[nodiscard]] state solve(const clamp_condition& c, const state* from = nullptr) const
    {
        set(c);
        const found_steady found = steady_from(from != nullptr ? &from->steady : nullptr);
        return finished(found.bound, found.steady);
    }

    /// As solve(), for many conditions that lie close together: between steady states solved before where these lie
    /// evenly, which all copies of the solver share; solved where they do not, as beside a fold. The
    /// first condition is solved as it is; others come within 5 mK.
    [[nodiscard]] state solve_along(const clamp_condition& c) const
    {
        const double log_share = n_->force_exponent * std::log(c.force_share) - std::log(c.contact_factor);
        if (made_->knots.empty()) made_->first = log_share;
        const double x = log_share - made_->first;
        for (int width = clamp_knot::coarsest; width >= 1; width /= 2) {
            const int at = (static_cast<int>(std::ceil(x / (clamp_knot::unit * width))) - 1) * width;
            const clamp_knot high = knot_at(at + width);  // the better one first: the other begins there
            if (high.bound != clamp_bound::none) break;
            const clamp_knot low = knot_at(at);
            if (!lie_evenly(low, high, width)) continue;
            set(c);
            const double h = clamp_knot::unit * width, u = x / h - at / width, v = 1.0 - u;
            place_values steady;
            for (std::size_t k = 0; k < clamp_places; ++k)
                steady[k] = v * v * (1.0 + 2.0 * u) * low.steady[k] + u * u * (1.0 + 2.0 * v) * high.steady[k] +
                            h * u * v * (v * low.slope[k] - u * high.slope[k]);
            return finished(clamp_bound::none, steady);
        }
        const clamp_knot* better = nearest_better(x);
        set(c);
        const found_steady found = steady_from(better != nullptr ? &better->steady : nullptr);
        return finished(found.bound, found.steady);
    }

    /// How much of its own heat the contact makes again by warming itself, at a settled state: 1 at a fold, where the
    /// steady states turn back.
    [[nodiscard]] double returned(const state& s, const clamp_condition& c) const
    {
        set(c);
        place_values at{}, watt{};
        for (std::size_t k = 0; k < clamp_places; ++k) at[made_->node[k]] = s.steady[k];
        solve::sparse_lu matrix = made_->net.pattern();
        std::vector<double> slopes;
        made_->net.straighten(at, duty_, slopes, matrix);
        if (!matrix.eliminate()) return 1.0;
        const solve::heat_network::source& jaws = made_->net.sources()[made_->clamp.jaws.source];
        watt[jaws.to] += jaws.share;
        watt[jaws.also_to] += jaws.also_share;
        matrix.solve(watt);
        const solve::sloped_by_two heat = made_->net.heat_of(jaws, at, solve::asked::slopes);
        double more = heat.by_first * watt[jaws.in];
        if (jaws.follows != solve::heat_network::nowhere) more += heat.by_second * watt[jaws.follows];
        more *= duty_;
        return more / (1.0 + more);
    }

    /// A state with its powers, which balance if the current is steady.
    [[nodiscard]] clamp_heat result_of(const state& s) const
    {
        clamp_heat out;
        out.bound = s.bound;
        out.spots_melt = s.spots_melt;
        for (std::size_t i = 0; i < clamp_nodes; ++i) out.mean[i] = temperature::kelvin(air_ + s.rise[i]);
        out.warm_share = s.warm;
        out.jaw_drop = in_si<voltage>(s.jaw_volts);
        out.drop = in_si<voltage>(s.jaw_volts + s.termination_volts);
        double to_air = 0.0;
        for (std::size_t i = 0; i < clamp_nodes; ++i)
            to_air += n_->bodies[i].surface.value() * made_->tables.of(n_->bodies[i]).at(s.rise[i]).value;
        place_values at{};
        for (std::size_t k = 0; k < clamp_places; ++k) at[made_->node[k]] = s.rise[k];
        out.made = in_si<power>(made_->net.totals_at(at, duty_).made);
        out.to_air = in_si<power>(to_air);
        out.to_work = in_si<power>(n_->work.sink.value() * (s.rise[patch_place] - made_->clamp.work_rise));
        out.to_lead = in_si<power>(lead_ * (s.rise[entry_place] - lead_rise_));
        return out;
    }

private:
    static constexpr double swing_settled = 5e-3;  // K from period to period
    static scatter of_conductance(scatter of_resistance)
    {
        return of_resistance == scatter::low    ? scatter::high
               : of_resistance == scatter::high ? scatter::low
                                                : scatter::typical;
    }

    // A steady state at a whole place of the logarithm of the jaws' conductance over that of the first condition.
    struct clamp_knot {
        static constexpr int coarsest = 16;
        static constexpr double unit = 0.125 / coarsest;
        int at = 0;
        clamp_bound bound = clamp_bound::none;
        place_values steady{};
        place_values slope{};  // K by the logarithm of the conductance
    };

    struct built {
        std::vector<clamp_knot> knots;  // as asked for
        double first = 0.0;             // logarithm of their conductance at 0, over that when new
        body_tables tables;
        solve::heat_network net;
        clamp_in_network clamp;
        double amps;
        squared_source spring;
        std::array<solve::heat_network::index, clamp_places> node{};

        built(const clamp_network& n, double through, double lead, double lead_rise)
            : tables(n.where),
              clamp(put_clamp(
                  net, n, through,
                  n.where.air.in_kelvin(), [this](const thermal_body& b) -> const auto& { return tables.of(b); })),
              amps(through), spring(amps, clamp.spring)
        {
            std::copy(clamp.nodes.begin(), clamp.nodes.end(), node.begin());
            node[patch_place] = clamp.face;
            net.sink(node[entry_place], lead, lead_rise);
            if (clamp.spring.cold > 0.0)
                net.add_source({.in = node[spring_place], .law = &spring, .to = node[spring_place]});
            net.close();
        }
    };

    struct found_steady {
        clamp_bound bound;
        place_values steady;
    };
    // At the condition that is set. @param from rises by place of a condition that was no worse, or null: from the cold
    [[nodiscard]] found_steady steady_from(const place_values* from) const
    {
        place_values start;
        start.fill(coldest());
        if (from != nullptr)
            for (std::size_t k = 0; k < clamp_places; ++k) start[made_->node[k]] = (*from)[k];
        const solve::steady_state found = solve::steady_state_of(
            made_->net, duty_, start, from != nullptr ? solve::begins::near_state : solve::begins::cold);
        found_steady out{bound_of(found.what, found.bounded_at), {}};
        for (std::size_t k = 0; k < clamp_places; ++k) out.steady[k] = found.rise[made_->node[k]];
        return out;
    }

    // What follows from the steady rises at the condition that is set.
    [[nodiscard]] state finished(clamp_bound bound, const place_values& steady) const
    {
        state s;
        s.bound = period_.bound != clamp_bound::none ? period_.bound : bound;
        s.rise = s.steady = steady;
        const contact_source &jaws = *made_->clamp.jaws.law, &termination = *made_->clamp.termination.law;
        double jaw_on = s.rise[jaw_place];
        if (period_.contact_heat > 0.0) {
            const double heat = duty_ * amps_ * jaws.drop_at(jaw_on, gripping_rise(s)).value;
            s.swing = heat / period_.contact_heat;
            swing_departures swing = period_.swing.grown(s.swing);
            if (bound == clamp_bound::none) add_course(heat, jaw_on, swing);
            for (std::size_t k = 0; k < clamp_places; ++k) s.rise[k] += swing.mean_over_steady[k];
            s.peak_over_mean = swing.peak_over_mean;
            jaw_on = s.rise[jaw_place] + swing.on_over_mean[jaw_place];
            for (std::size_t k = 0; k < clamp_places && s.bound == clamp_bound::none; ++k)
                if (peak_of(s, k) > made_->net.bound()[made_->node[k]])
                    s.bound = bound_of(solve::outcome::bounded, made_->node[k]);
        }
        s.warm = warm_at(gripping_rise(s));
        s.jaw_volts = jaws.drop_at(jaw_on, gripping_rise(s)).value;
        s.termination_volts = termination.drop_at(s.rise[entry_place], 0.0).value;
        s.contact_heat = duty_ * amps_ * s.jaw_volts;
        s.spots_melt = s.jaw_volts >= melting_share * melting_drop(n_->jaw_metals, jaws.bulk_at(jaw_on)).value();
        return s;
    }

    // From 0 at 0 to 1 at 1, level outside.
    [[nodiscard]] static double smooth_step(double u)
    {
        const double v = std::clamp(u, 0.0, 1.0);
        return v * v * (3.0 - 2.0 * v);
    }

    // Adds to a grown swing what the course says beyond it. @param heat of the contact in the steady state [W]
    // @param rise of the jaws there
    void add_course(double heat, double rise, swing_departures& swing) const
    {
        const contact_source& jaws = *made_->clamp.jaws.law;
        const double conductance = jaws.cold();
        const double x = std::log(conductance / period_.conductance);
        const auto past = [x](double trusted) {
            constexpr double until = 0.5;  // of what is trusted
            const double more = std::fabs(x) - trusted;
            return more > 0.0 ? smooth_step(more / (until * trusted)) : 0.0;
        };
        constexpr double hard = 0.8, soft = 0.9;  // mean drop over that at which spots soften
        const double volts = std::max(heat, period_.contact_heat) / (duty_ * amps_);
        const double near_soft = volts / softening_drop(n_->jaw_metals, jaws.bulk_at(rise)).value();
        const double counts = std::max(x > 0.0 && period_.trusted > 0.0 ? 0.0 : past(period_.trusted),
                                       smooth_step((near_soft - hard) / (soft - hard)) * past(period_.trusted_soft));
        if (!(counts > 0.0)) return;
        swing.add(counts, course_->beyond(x, heat, [this](double at, const auto* better, const auto* worse) {
            set_conductance(period_.conductance * std::exp(at));
            return departures_of(std::make_shared<const solve::periodic_state>(
                settled_as_set(period_.programme, {.near = better != nullptr ? better : worse,
                                                   .settled = swing_settled,
                                                   .reached_from = better != nullptr ? reached::near : reached::cold,
                                                   .parts = solve::period_search::wanted::rises})));
        }));
        set_conductance(conductance);
    }

    // At the condition that is set.
    [[nodiscard]] solve::periodic_state settled_as_set(const solve::on_off& programme,
                                                       const solve::period_search& search) const
    {
        const std::vector<double> cold(clamp_places, coldest());
        return solve::periodic_state_of(made_->net, programme, cold, search);
    }
    [[nodiscard]] clamp_settled departures_of(std::shared_ptr<const solve::periodic_state> found) const
    {
        clamp_settled out{.found = std::move(found)};
        if (!out.is_there()) return out;
        for (std::size_t k = 0; k < clamp_places; ++k) {
            const std::size_t at = made_->node[k];
            out.swing.mean_over_steady[k] = out.found->mean[at] - out.found->steady[at];
            out.swing.on_over_mean[k] = out.found->on_mean[at] - out.found->mean[at];
            out.swing.peak_over_mean[k] = out.found->peak[at] - out.found->mean[at];
        }
        const contact_source& jaws = *made_->clamp.jaws.law;
        const std::size_t jaw = made_->node[jaw_place], gripping = made_->clamp.at(n_->gripping);
        const auto volts_at = [&](const std::vector<double>& rise) {
            return jaws.drop_at(rise[jaw], rise[gripping]).value;
        };
        out.contact_heat = duty_ * amps_ * volts_at(out.found->steady);
        for (const std::vector<double>* moment : {&out.found->trace.front(), &out.found->peak})
            if (volts_at(*moment) > softening_drop(n_->jaw_metals, jaws.bulk_at((*moment)[jaw])).value())
                ++out.softened;
        return out;
    }

    // The solved knot of the least conductance above a place, or null.
    [[nodiscard]] const clamp_knot* nearest_better(double x) const
    {
        const clamp_knot* out = nullptr;
        for (const clamp_knot& k : made_->knots)
            if (clamp_knot::unit * k.at >= x && k.bound == clamp_bound::none && (out == nullptr || k.at < out->at))
                out = &k;
        return out;
    }

    [[nodiscard]] clamp_knot knot_at(int at) const
    {
        for (const clamp_knot& k : made_->knots)
            if (k.at == at) return k;
        const double x = clamp_knot::unit * at;
        const clamp_knot* const better = nearest_better(x);
        set_conductance(jaws_ * std::exp(made_->first + x));
        const found_steady found = steady_from(better != nullptr ? &better->steady : nullptr);
        clamp_knot out{.at = at, .bound = found.bound, .steady = found.steady};
        if (out.bound == clamp_bound::none) {
            constexpr double step =
                1e-3;  // to a worse condition; half a thousandth of what the slope bends in a stretch
            set_conductance(jaws_ * std::exp(made_->first + x - step));
            const found_steady worse = steady_from(&out.steady);
            for (std::size_t k = 0; k < clamp_places; ++k)
                out.slope[k] = worse.bound == clamp_bound::none ? (out.steady[k] - worse.steady[k]) / step
                                                                : std::numeric_limits<double>::quiet_NaN();
        }
        made_->knots.push_back(out);
        return out;
    }

    // Whether a cubic follows the steady states between two of them. Its error is reckoned from that of a square root,
    // as states follow before a fold, by how far the slopes at its ends lie from their mean.
    [[nodiscard]] static bool lie_evenly(const clamp_knot& low, const clamp_knot& high, int width)
    {
        if (low.bound != clamp_bound::none) return false;
        constexpr double allowed = 5e-3;   // K
        constexpr double of_change = 0.7;  // error over change, by the third power of how far the slopes are apart
        const double h = clamp_knot::unit * width;
        for (std::size_t k = 0; k < clamp_places; ++k) {
            if (!std::isfinite(low.slope[k] + high.slope[k])) return false;
            const double change = std::fabs(high.steady[k] - low.steady[k]),
                         mean = (high.steady[k] - low.steady[k]) / h;
            const double off = std::max(std::fabs(low.slope[k] - mean), std::fabs(high.slope[k] - mean)) * h;
            const double apart = off / std::max(change, allowed);
            if (!(of_change * apart * apart * apart * change <= allowed)) return false;
        }
        return true;
    }

    // Coldest of what surrounds it [K over the air].
    [[nodiscard]] double coldest() const
    {
        return std::min({0.0, lead_ > 0.0 ? lead_rise_ : 0.0, made_->clamp.work_rise});
    }

    void set(const clamp_condition& c) const { set_conductance(conductance_at(c)); }
    void set_conductance(double cold) const { made_->clamp.jaws.law->set_cold(cold); }

    const clamp_network* n_;
    double air_, amps_, duty_, lead_, lead_rise_, jaws_;
    std::shared_ptr<built> made_;
    period period_ = {};
    std::shared_ptr<swing_course> course_;  // beyond the period; null without one
};

}  // namespace detail

}  // namespace weldloop
