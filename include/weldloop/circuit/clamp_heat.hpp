#pragma once
/// @file
/// The heat of a clamp with what lies behind it, in the mean over the duty period: the state it comes to, or what keeps
/// it from having one. The network is that of the loop, cut off behind the cable connection.

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <memory>
#include <span>
#include <vector>

#include <weldloop/circuit/body_tables.hpp>
#include <weldloop/circuit/clamp_network.hpp>
#include <weldloop/circuit/clamp_nodes.hpp>
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

// Places of a clamp's heat: those of clamp_node, then the patch of the work under its jaws.
inline constexpr std::size_t jaw_place = static_cast<std::size_t>(clamp_node::jaw),
                             body_place = static_cast<std::size_t>(clamp_node::body),
                             spring_place = static_cast<std::size_t>(clamp_node::spring),
                             handle_place = static_cast<std::size_t>(clamp_node::handle),
                             entry_place = static_cast<std::size_t>(clamp_node::entry), patch_place = clamp_nodes,
                             clamp_places = clamp_nodes + 1;
using place_values = std::array<double, clamp_places>;

/// The solver of one clamp under one load, at one point of the scatter. Borrows the clamp_network. Copies share their
/// network, whose tables fill while it is read: not for two threads at once.
class clamp_solver {
public:
    /// A state between two calls; a start for a neighbouring one.
    struct state {
        clamp_bound bound = clamp_bound::none;
        place_values rise{};        // K over the air, period mean
        place_values steady{};      // the same if heat were made all the time at its period mean
        double contact_heat = 0.0;  // W, period mean, both sides of the contact
        double swing = 0.0;         // of the period over that the solver follows; 0 for steady current
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

    /// A settled period, as the states of other conditions follow it: its swing grows with the contact's heat, what the
    /// swing does to the mean with the square of it.
    struct period {
        clamp_bound bound = clamp_bound::none;  // what keeps it from being
        double contact_heat = 0.0;              // W of the steady state under it
        place_values mean_over_steady{};        // K
        place_values on_over_mean{};            // K, mean of the time with current
        place_values peak_over_mean{};          // K
    };
    /// The highest a place gets in the period of a state [K over the air].
    [[nodiscard]] double peak_of(const state& s, std::size_t place) const
    {
        return s.rise[place] + s.swing * period_.peak_over_mean[place];
    }
    /// The states asked for from now on have the swing of a period.
    void follow(const period& p) { period_ = p; }

    /// The settled period of a condition, judged as the loop judges it.
    /// @param near that of a condition that was no worse, or nullptr
    [[nodiscard]] solve::periodic_state settled_period(const clamp_condition& c, const duty_cycle& duty,
                                                       const solve::periodic_state* near = nullptr) const
    {
        set(c);
        const std::vector<double> cold(clamp_places, coldest());
        return solve::periodic_state_of(
            made_->net, {duty.on().value(), duty.is_continuous() ? 0.0 : (duty.period() - duty.on()).value()}, cold,
            {.near = near});
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
        place_values start;
        start.fill(coldest());
        if (from != nullptr)
            for (std::size_t k = 0; k < clamp_places; ++k) start[made_->node[k]] = from->steady[k];
        const solve::steady_state found = solve::steady_state_of(made_->net, duty_, start);
        state s;
        s.bound = period_.bound != clamp_bound::none ? period_.bound : bound_of(found.what, found.bounded_at);
        for (std::size_t k = 0; k < clamp_places; ++k) s.rise[k] = s.steady[k] = found.rise[made_->node[k]];
        const contact_source &jaws = *made_->clamp.jaws.law, &termination = *made_->clamp.termination.law;
        double jaw_on = s.rise[jaw_place];
        if (period_.contact_heat > 0.0) {
            const double steady = duty_ * amps_ * jaws.drop_at(jaw_on, gripping_rise(s), solve::asked::value).value;
            s.swing = steady / period_.contact_heat;
            for (std::size_t k = 0; k < clamp_places; ++k) s.rise[k] += s.swing * s.swing * period_.mean_over_steady[k];
            jaw_on = s.rise[jaw_place] + s.swing * period_.on_over_mean[jaw_place];
            for (std::size_t k = 0; k < clamp_places && s.bound == clamp_bound::none; ++k)
                if (peak_of(s, k) > made_->net.bound()[made_->node[k]])
                    s.bound = bound_of(solve::outcome::bounded, made_->node[k]);
        }
        s.warm = warm_at(gripping_rise(s));
        s.jaw_volts = jaws.drop_at(jaw_on, gripping_rise(s), solve::asked::value).value;
        s.termination_volts = termination.drop_at(s.rise[entry_place], 0.0, solve::asked::value).value;
        s.contact_heat = duty_ * amps_ * s.jaw_volts;
        s.spots_melt = s.jaw_volts >= melting_share * melting_drop(n_->jaw_metals, jaws.bulk_at(jaw_on)).value();
        return s;
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
    static scatter of_conductance(scatter of_resistance)
    {
        return of_resistance == scatter::low    ? scatter::high
               : of_resistance == scatter::high ? scatter::low
                                                : scatter::typical;
    }

    struct built {
        body_tables tables;
        solve::heat_network net;
        clamp_in_network clamp;
        std::array<solve::heat_network::index, clamp_places> node{};

        built(const clamp_network& n, double amps, double lead, double lead_rise)
            : tables(n.where), clamp(put_clamp(
                                   net, n, amps, n.where.air.in_kelvin(), [this](const thermal_body& b) -> const auto& {
                                       return tables.of(b);
                                   }))
        {
            std::copy(clamp.nodes.begin(), clamp.nodes.end(), node.begin());
            node[patch_place] = clamp.face;
            net.sink(node[entry_place], lead, lead_rise);
            if (clamp.spring_at_zero > 0.0)
                net.linear_source(node[spring_place], amps * amps * clamp.spring_at_zero,
                                  amps * amps * clamp.spring_by_kelvin);
            net.close();
        }
    };

    // Coldest of what surrounds it [K over the air].
    [[nodiscard]] double coldest() const
    {
        return std::min({0.0, lead_ > 0.0 ? lead_rise_ : 0.0, made_->clamp.work_rise});
    }

    void set(const clamp_condition& c) const
    {
        made_->clamp.jaws.law->set_cold(jaws_ * std::pow(c.force_share, n_->force_exponent) / c.contact_factor);
    }

    const clamp_network* n_;
    double air_, amps_, duty_, lead_, lead_rise_, jaws_;
    std::shared_ptr<built> made_;
    period period_ = {};
};

}  // namespace detail

}  // namespace weldloop
