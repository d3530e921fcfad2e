#pragma once
/// @file
/// The steady heat of a clamp's network in the mean over the duty period: the lowest steady state, or what keeps it
/// from having one.

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <limits>

#include <weldloop/circuit/body_loss_table.hpp>
#include <weldloop/circuit/clamp_network.hpp>
#include <weldloop/circuit/joint_circuit.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/law/joint_characteristic.hpp>
#include <weldloop/law/voltage_temperature.hpp>

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
    melting,   ///< the jaws reach the melting point of jaw or work
};

/// The steady heat of a clamp.
struct clamp_heat {
    clamp_bound bound = clamp_bound::none;  ///< none: the rest holds; else the state at which the limit was met
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

using node_values = std::array<double, clamp_nodes>;
inline constexpr std::size_t jaw_place = static_cast<std::size_t>(clamp_node::jaw),
                             body_place = static_cast<std::size_t>(clamp_node::body),
                             spring_place = static_cast<std::size_t>(clamp_node::spring),
                             handle_place = static_cast<std::size_t>(clamp_node::handle),
                             entry_place = static_cast<std::size_t>(clamp_node::entry);
using node_matrix = std::array<node_values, clamp_nodes>;

// Elimination without exchange: every diagonal outweighs its row.
[[nodiscard]] inline node_values solved_nodes(node_matrix a, node_values b)
{
    for (std::size_t k = 0; k < clamp_nodes; ++k)
        for (std::size_t i = k + 1; i < clamp_nodes; ++i) {
            if (a[i][k] == 0.0) continue;
            const double f = a[i][k] / a[k][k];
            for (std::size_t j = k + 1; j < clamp_nodes; ++j) a[i][j] -= f * a[k][j];
            b[i] -= f * b[k];
        }
    for (std::size_t k = clamp_nodes; k-- > 0;) {
        for (std::size_t j = k + 1; j < clamp_nodes; ++j) b[k] -= a[k][j] * b[j];
        b[k] /= a[k][k];
    }
    return b;
}

/// A network's balance at one iterate, on plain numbers: W, K over the air, W/K.
struct node_balance {
    node_values surplus{};  // heat made and brought less heat lost
    node_matrix slope{};    // of what is lost, by the rises
};

/// The solver of one clamp under one load, at one point of the scatter. Borrows network and nothing else.
class clamp_solver {
public:
    /// A state between two calls; a start for a neighbouring one.
    struct state {
        clamp_bound bound = clamp_bound::none;
        node_values rise{};         // K over the air
        double contact_heat = 0.0;  // W, period mean, both sides of the contact
        double jaw_volts = 0.0, termination_volts = 0.0;
        double warm = 1.0;        // warm force over cold
        double returned = 0.0;    // slope of the contact's heat by itself: 1 at a fold
        bool spots_melt = false;  // the jaws' drop is at the melting drop of their metals
    };

    clamp_solver(const clamp_network& n, const clamp_outside& outside, const load& work, scatter level)
        : n_(&n), air_(n.where.air.in_kelvin()), amps_(work.current.value()),
          duty_(static_cast<double>(work.duty.share())), lead_(outside.conductance.value()),
          lead_rise_((outside.far - n.where.air).value()),
          body_loss_(n.bodies[body_place].diameter, n.bodies[body_place].emissivity, n.where),
          spring_loss_(n.bodies[spring_place].diameter, n.bodies[spring_place].emissivity, n.where),
          jaws_(pick(n.jaws, of_conductance(level)).value()), termination_(pick(n.termination, of_conductance(level))),
          melting_(std::min(n.jaw_metals.first.melting, n.jaw_metals.second.melting).in_kelvin()),
          melting_rise_(melting_ - air_), grip_rise_((n.grip_limit - n.where.air).value())
    {
    }

    [[nodiscard]] bool conducts() const { return jaws_ > 0.0 && termination_.value() > 0.0; }
    [[nodiscard]] double amps() const { return amps_; }
    [[nodiscard]] double duty() const { return duty_; }
    [[nodiscard]] double air() const { return air_; }

    /// Warm force over cold with what grips at a rise [K].
    [[nodiscard]] double warm_at(double rise) const
    {
        const double left =
            std::max(0.0, 1.0 - n_->grip.slope.value() * (air_ + rise - reference_temperature.in_kelvin()));
        return n_->grip.power == 1 ? left : left * left;
    }

    [[nodiscard]] double gripping_rise(const state& s) const { return s.rise[static_cast<std::size_t>(n_->gripping)]; }

    /// Lets the jaws swing within the period: their drop is that at the mean temperature of the on-time, what they lose
    /// to the air is the mean of two temperatures as far apart as the swing scatters.
    /// @param on_excess mean of the on-time above the period's for a watt made in the jaws, period mean [K/W]
    /// @param deviation root mean square of the swing for that watt [K/W]
    void follow_swing(double on_excess, double deviation)
    {
        on_excess_ = on_excess;
        deviation_ = deviation;
    }

    /// Drop of the jaws [V] in a condition, with the places at their rises.
    [[nodiscard]] double jaw_volts_at(const clamp_condition& c, double jaw_rise, double warm) const
    {
        const double cold = jaws_ * std::pow(c.force_share * warm, n_->force_exponent) / c.contact_factor;
        return volts(in_si<conductance>(cold), n_->jaw_metals, jaw_rise);
    }

    /// The lowest steady state: the one a clamp comes to from the cold. Heat made grows with every temperature, so the
    /// contact's heat, put in place of itself, climbs to the lowest balance and past none (Picard from below); chords
    /// shorten the way.
    /// @param from a state of a condition that was no worse, or nullptr for the cold
    [[nodiscard]] state solve(const clamp_condition& c, const state* from = nullptr) const
    {
        constexpr int most_rounds = 400;        // of chords; a state away from its fold takes 4 to 7
        constexpr double settled = 1e-9;        // of the heat
        constexpr double longest_chord = 25.0;  // times the surplus: near a fold chords get long
        state low = from != nullptr ? *from : state{};
        low.bound = clamp_bound::none;
        if (from == nullptr) low.rise.fill(std::max(0.0, lead_rise_));
        double surplus = step(c, low);
        if (from != nullptr && surplus < -settled * low.contact_heat) {  // the start was no lower bound
            low = state{};
            low.rise.fill(std::max(0.0, lead_rise_));
            surplus = step(c, low);
        }
        state at = low;
        for (int i = 0; i < most_rounds; ++i) {
            if (low.bound != clamp_bound::none || std::fabs(surplus) <= settled * (low.contact_heat + settled))
                return low;
            const double chord = low.returned < 1.0 ? 1.0 / (1.0 - low.returned) : longest_chord;
            at = low;
            at.contact_heat = low.contact_heat + surplus * (i == 0 ? 1.0 : std::min(longest_chord, chord));
            const double then = step(c, at);
            const double slope = (then - surplus) / (at.contact_heat - low.contact_heat);
            at.returned = 1.0 + slope;
            if (then < -settled * at.contact_heat) return between(c, low, at);
            low = at;
            surplus = then;
        }
        return low;
    }

    /// The balance of powers at a state, for a check.
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
        const work_pull pull = pull_at(s.contact_heat, s.rise[jaw_place]);
        for (std::size_t i = 0; i < clamp_nodes; ++i)
            to_air += i == jaw_place ? swinging_loss(s.rise[i], deviation_ * (s.contact_heat - duty_ * pull.taken)).flux
                                     : surface_loss(i, s.rise[i]).flux;
        out.made =
            in_si<power>(s.contact_heat + duty_ * amps_ * s.termination_volts + spring_heat(s.rise[spring_place]));
        out.to_air = in_si<power>(to_air);
        out.to_work = in_si<power>(duty_ * pull.taken + pull.conductance * (s.rise[jaw_place] - work_rise()));
        out.to_lead = in_si<power>(lead_ * (s.rise[entry_place] - lead_rise_));
        return out;
    }

    /// The network with its conductances as they stand at a state, for what is linear about it: the slope matrix.
    [[nodiscard]] node_matrix slopes_at(const state& s) const { return balance(s.contact_heat, s.rise).slope; }
    /// Heat capacities [J/K].
    [[nodiscard]] node_values capacities() const
    {
        node_values out{};
        for (std::size_t i = 0; i < clamp_nodes; ++i) out[i] = n_->bodies[i].capacity.value();
        return out;
    }
    /// Where the heat of a state is made, period mean [W].
    [[nodiscard]] node_values heats_at(const state& s) const
    {
        node_values out{};
        const double term = duty_ * amps_ * s.termination_volts, arms = static_cast<double>(n_->arms_share);
        out[jaw_place] = s.contact_heat - duty_ * pull_at(s.contact_heat, s.rise[jaw_place]).taken;
        out[body_place] = arms * term;
        out[entry_place] = (1.0 - arms) * term;
        out[spring_place] = spring_heat(s.rise[spring_place]);
        return out;
    }

private:
    static scatter of_conductance(scatter of_resistance)
    {
        return of_resistance == scatter::low    ? scatter::high
               : of_resistance == scatter::high ? scatter::low
                                                : scatter::typical;
    }

    [[nodiscard]] temperature point(double rise) const
    {
        const double coldest = 1.0;  // K; an iteration may overshoot
        return temperature::kelvin(std::max(coldest, air_ + rise));
    }

    [[nodiscard]] temperature jaw_bulk(double rise) const
    {
        return std::min(point(rise), temperature::kelvin(melting_));
    }

    [[nodiscard]] double work_rise() const { return n_->work.work.in_kelvin() - air_; }

    [[nodiscard]] double volts(conductance cold, const metal_pair& metals, double rise) const
    {
        const temperature here = std::min(point(rise), std::min(metals.first.melting, metals.second.melting));
        return spot_characteristic(joint_limits_of(metals, here))
            .drop(amps_ / conductance_at(cold, metals, here).value());
    }

    [[nodiscard]] body_loss_table::loss surface_loss(std::size_t i, double rise) const
    {
        const double surface = n_->bodies[i].surface.value();
        if (!(surface > 0.0)) return {0.0, 0.0};
        const body_loss_table::loss each = (i == spring_place ? spring_loss_ : body_loss_).at(rise);
        return {surface * each.flux, surface * each.slope};
    }

    // of the jaws
    [[nodiscard]] body_loss_table::loss swinging_loss(double rise, double deviation) const
    {
        if (deviation == 0.0) return surface_loss(jaw_place, rise);
        const body_loss_table::loss up = surface_loss(jaw_place, rise + deviation),
                                    down = surface_loss(jaw_place, rise - deviation);
        return {0.5 * (up.flux + down.flux), 0.5 * (up.slope + down.slope)};
    }

    [[nodiscard]] work_pull pull_at(double contact_heat, double jaw_rise) const
    {
        return work_pull_of(n_->work, in_si<voltage>(contact_heat / (duty_ * amps_)), in_si<current>(amps_),
                            point(jaw_rise));
    }

    [[nodiscard]] double spring_heat(double rise) const
    {
        const double cold = n_->spring_path.value();
        if (cold == 0.0) return 0.0;
        return duty_ * amps_ * amps_ * cold * (mild_steel.resistivity_at(point(rise)) / mild_steel.resistivity).value();
    }

    [[nodiscard]] node_balance balance(double contact_heat, const node_values& rise) const
    {
        node_balance out;
        const auto lose = [&](std::size_t i, double watts, double slope) {
            out.surplus[i] -= watts;
            out.slope[i][i] += slope;
        };
        const auto link = [&](std::size_t i, std::size_t j, thermal_conductance g) {
            const double w = g.value() * (rise[i] - rise[j]);
            out.surplus[i] -= w;
            out.surplus[j] += w;
            out.slope[i][i] += g.value();
            out.slope[j][j] += g.value();
            out.slope[i][j] -= g.value();
            out.slope[j][i] -= g.value();
        };
        const work_pull pull = pull_at(contact_heat, rise[jaw_place]);
        const double made = contact_heat - duty_ * pull.taken;
        for (std::size_t i = 0; i < clamp_nodes; ++i) {
            const body_loss_table::loss air =
                i == jaw_place ? swinging_loss(rise[i], deviation_ * made) : surface_loss(i, rise[i]);
            lose(i, air.flux, air.slope);
        }
        link(jaw_place, body_place, n_->jaw_body);
        link(body_place, spring_place, n_->body_spring);
        link(body_place, handle_place, n_->body_handle);
        link(body_place, entry_place, n_->body_entry);
        link(jaw_place, entry_place, n_->jaw_entry);
        lose(entry_place, lead_ * (rise[entry_place] - lead_rise_), lead_);

        lose(jaw_place, pull.conductance * (rise[jaw_place] - work_rise()), pull.conductance);
        out.surplus[jaw_place] += made;

        const double term = duty_ * amps_ * volts(termination_, n_->termination_metals, rise[entry_place]);
        const double arms = static_cast<double>(n_->arms_share);
        out.surplus[body_place] += arms * term;
        out.surplus[entry_place] += (1.0 - arms) * term;
        out.surplus[spring_place] += spring_heat(rise[spring_place]);
        return out;
    }

    /// Settles the places for the contact's heat of `s`, and returns by how much the contact then makes more. Newton's
    /// steps for what is lost; what termination and spring heat more by being hotter follows from step to step, which
    /// climbs from below and is seen where it has no end.
    double step(const clamp_condition& c, state& s) const
    {
        constexpr int most_steps = 200;
        constexpr double settled = 1e-7;        // K; the step after it is smaller by far
        constexpr double longest_step = 200.0;  // K
        const double hottest = 2.0 * melting_rise_ + 1000.0;
        for (int i = 0; i < most_steps; ++i) {
            const node_balance b = balance(s.contact_heat, s.rise);
            const node_values by = solved_nodes(b.slope, b.surplus);
            double most = 0.0;
            for (std::size_t k = 0; k < clamp_nodes; ++k) most = std::max(most, std::fabs(by[k]));
            const double share = most > longest_step ? longest_step / most : 1.0;
            for (std::size_t k = 0; k < clamp_nodes; ++k) s.rise[k] = std::min(s.rise[k] + share * by[k], hottest);
            if (most <= settled || s.rise[jaw_place] >= hottest) break;
        }
        s.warm = warm_at(gripping_rise(s));
        s.termination_volts = volts(termination_, n_->termination_metals, s.rise[entry_place]);
        s.bound = s.rise[jaw_place] >= melting_rise_ ? clamp_bound::melting
                  : gripping_rise(s) > grip_rise_    ? clamp_bound::gripping
                                                     : clamp_bound::none;
        const double made = s.contact_heat - duty_ * pull_at(s.contact_heat, s.rise[jaw_place]).taken;
        const double jaw_on = s.rise[jaw_place] + on_excess_ * made;
        s.jaw_volts = jaw_volts_at(c, jaw_on, s.warm);
        s.spots_melt = s.jaw_volts >= melting_share * melting_drop(n_->jaw_metals, jaw_bulk(jaw_on)).value();
        return duty_ * amps_ * s.jaw_volts - s.contact_heat;
    }

    /// The balance between a state that makes more heat than it was given and one that makes less.
    [[nodiscard]] state between(const clamp_condition& c, const state& low, const state& high) const
    {
        state s = low;
        const double heat = root_between(
            [&](double watts) {
                s.contact_heat = watts;
                return step(c, s);
            },
            low.contact_heat, high.contact_heat, "heat of the jaws");
        s.contact_heat = heat;
        static_cast<void>(step(c, s));
        s.returned = high.returned;
        return s;
    }

    const clamp_network* n_;
    double air_, amps_, duty_, lead_, lead_rise_;
    body_loss_table body_loss_, spring_loss_;
    double jaws_;
    conductance termination_;
    double melting_, melting_rise_, grip_rise_;
    double on_excess_ = 0.0, deviation_ = 0.0;
};

}  // namespace detail

}  // namespace weldloop
