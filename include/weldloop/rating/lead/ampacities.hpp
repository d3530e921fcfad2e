#pragma once
/// @file
/// The currents many leads may carry in the same surroundings, side by side.

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <limits>
#include <optional>
#include <span>
#include <vector>

#include <weldloop/circuit/cable_heating.hpp>
#include <weldloop/circuit/lone_lead.hpp>
#include <weldloop/core/duty_cycle.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/law/cable_surface.hpp>
#include <weldloop/law/covering_heat.hpp>
#include <weldloop/law/cylinder_loss.hpp>
#include <weldloop/law/free_air.hpp>
#include <weldloop/law/lay.hpp>
#include <weldloop/law/surface_model.hpp>
#include <weldloop/material/air.hpp>
#include <weldloop/part/cable.hpp>
#include <weldloop/part/conductor_limit.hpp>
#include <weldloop/part/surroundings.hpp>
#include <weldloop/rating/lead/ampacity.hpp>

namespace weldloop {

namespace detail {

/// Leads in the same still air whose surface follows the standard's law alone, some at a time: each step of Newton's
/// rule is done for all of them, a loop without branches that a compiler turns into vector instructions.
///
/// The balance is cylinder_law::standard_balance, as ampacity_of() has it.
class lone_leads {
public:
    static constexpr std::size_t most = 32;

    explicit lone_leads(const surroundings& where) : where_(&where), are_there_(is_still_air(where))
    {
        law_.reserve(most);
    }

    /// Takes a lead over, its dimensions and its covering checked. False where it is none of them: in wind, at
    /// altitude, in a bundle, next to bare, where its limit lies far from the air, or is not above it.
    /// @param covering its conductance [W/(m K)] @param limit of the conductor [K] @param place among all leads
    [[nodiscard]] bool take(const cable& lead, double covering, double limit, std::size_t place)
    {
        constexpr double thin = 0.01;  // of D/d - 1: the drop across it is then little beside the rises it is left by
        if (!are_there_ || !lies_by_itself(lead, *where_) || !(limit > where_->air.in_kelvin())) return false;
        if (lead.overall_diameter < (1.0 + thin) * lead.conductor_diameter) return false;
        const lone_lead alone(lead, *where_, covering, limit);
        if (!alone.follows_standard()) return false;
        const std::size_t i = law_.size();
        const balance own = alone.balance();
        place_[i] = place;
        factor_[i] = own.factor;
        once_[i] = own.once;
        twice_[i] = own.twice;
        thrice_[i] = own.thrice;
        taken_up_[i] = own.taken_up;
        unheated_[i] = alone.unheated();
        law_.push_back(alone.law());
        return true;
    }
    [[nodiscard]] bool is_full() const { return law_.size() == most; }
    [[nodiscard]] std::size_t count() const { return law_.size(); }
    [[nodiscard]] std::size_t place(std::size_t i) const { return place_[i]; }  ///< of the lead among all
    void clear() { law_.clear(); }

    /// Solves for all of them.
    void solve()
    {
        constexpr int steps = 4;                            // from a quarter off they leave nothing but rounding
        for (std::size_t i = law_.size(); i < most; ++i) {  // so that every step has the same number of lanes
            factor_[i] = once_[i] = taken_up_[i] = unheated_[i] = 1.0;
            twice_[i] = thrice_[i] = 0.0;
        }
        for (std::size_t i = 0; i < most; ++i) y_[i] = balance::first_root(unheated_[i]);
        for (int k = 0; k < steps; ++k)
            for (std::size_t i = 0; i < most; ++i) {
                step_[i] = balance::step(y_[i], factor_[i], once_[i], twice_[i], thrice_[i], taken_up_[i]);
                y_[i] += step_[i];
            }
    }
    /// Surface temperature [K] of one; none where the steps have not settled or first principles may count there.
    [[nodiscard]] std::optional<double> surface(std::size_t i) const
    {
        const double at = where_->air.in_kelvin() + y_[i] * y_[i] * y_[i] * y_[i];
        if (!(std::fabs(step_[i]) <= balance::settled * y_[i]) || !law_[i].standard_is_surely_larger(at, y_[i]))
            return std::nullopt;
        return at;
    }

private:
    using balance = cylinder_law::standard_balance;
    using lanes = std::array<double, most>;

    const surroundings* where_;
    bool are_there_;
    std::array<std::size_t, most> place_;
    std::vector<cylinder_law> law_;
    lanes factor_, once_, twice_, thrice_, taken_up_, unheated_, y_, step_;  // set as leads are taken over
};

}  // namespace detail

/// Currents that bring the conductors' peaks of many leads to their limits, ampacity_of() for each of them.
///
/// Continuous current in still air at sea level, leads alone, spaced, touching or on a floor: the surfaces are solved
/// for together, about twice as fast a lead as one by one; agrees with ampacity_of() within 1e-12 of the current.
/// Whatever else (wind, altitude, bundles and coils, missing strands, next to no covering, a duty) is rated one by one
/// by ampacity_of(). Source: those in the basis of ampacity_of(), iec_60287_free_air for the surface.
/// @param leads with their diameters; none is an empty answer @param where air, wind, lay, altitude, sun
/// @param duty default continuous
/// @return [A] for each lead, in their order
/// @throws what ampacity_of() throws, if it does for any of the leads
[[nodiscard]] inline std::vector<current> ampacities_of(std::span<const cable> leads, const surroundings& where,
                                                        duty_cycle duty = duty_cycle::continuous())
{
    std::vector<current> out(leads.size());
    const auto one_by_one = [&](std::size_t i) { out[i] = ampacity_of(leads[i], where, duty).amps; };
    if (!duty.is_continuous()) {
        for (std::size_t i = 0; i < leads.size(); ++i) one_by_one(i);
        return out;
    }
    detail::lone_leads together(where);
    std::array<double, detail::lone_leads::most> through, limit;  // W/(m K), K
    const auto rate = [&] {
        together.solve();
        for (std::size_t k = 0; k < together.count(); ++k) {
            const std::size_t i = together.place(k);
            const std::optional<double> surface = together.surface(k);
            const double loss = surface ? through[k] * (limit[k] - *surface) : 0.0;
            if (loss > 0.0)
                out[i] = detail::steady_current(loss, leads[i], temperature::kelvin(limit[k]));
            else
                one_by_one(i);
        }
        together.clear();
    };
    for (std::size_t i = 0; i < leads.size(); ++i) {
        const cable& lead = leads[i];
        detail::require_dimensions(lead);
        const temperature highest = limit_of(lead);
        const double covering =
            covering_conductance(lead.covering.thermal_conductivity, lead.conductor_diameter, lead.overall_diameter)
                .value();
        const std::size_t k = together.count();
        through[k] = covering;
        limit[k] = highest.in_kelvin();
        if (detail::is_damaged(lead) || highest >= conductor_melting_of(lead.metal) ||
            !together.take(lead, covering, limit[k], i))
            one_by_one(i);
        if (together.is_full()) rate();
    }
    rate();
    return out;
}

}  // namespace weldloop
