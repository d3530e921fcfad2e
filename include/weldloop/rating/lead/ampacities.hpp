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
/// With y the fourth root of the surface's rise the balance of ampacity_of() is a polynomial,
/// F y^5 + a y^4 + b y^8 + c y^12 + G y^4 = G R + sun: F of the standard's law, a to c of
/// cylinder_law::radiation_in_other_air(), all of them times what the lay leaves, G the covering's conductance, R the
/// rise of the conductor.
class lone_leads {
public:
    static constexpr std::size_t most = 32;

    explicit lone_leads(const surroundings& where)
        : where_(&where), air_(where.air.in_kelvin()),
          are_there_(where.wind.value() == 0.0 && where.altitude.value() == 0.0 && where.air >= coldest_air &&
                     where.air <= hottest_air && where.sun.value() >= 0.0 &&
                     where.sun.value() <= std::numeric_limits<double>::max())
    {
        law_.reserve(most);
    }

    /// Takes a lead over, its dimensions and its covering checked. False where it is none of them: in wind, at
    /// altitude, in a bundle, next to bare, where its limit lies far from the air, or is not above it.
    /// @param covering its conductance [W/(m K)] @param limit of the conductor [K] @param place among all leads
    [[nodiscard]] bool take(const cable& lead, double covering, double limit, std::size_t place)
    {
        constexpr double thin = 0.01;  // of D/d - 1: the drop across it is then little beside the rises it is left by
        const lay arrangement = lead.lay.value_or(where_->lay);
        if (!are_there_ || arrangement == lay::bundled || arrangement == lay::coiled) return false;
        if (lead.lay ? lead.coil_turns : where_->coil_turns) return false;  // turns of what is no coil may be refused
        if (lead.overall_diameter < (1.0 + thin) * lead.conductor_diameter) return false;
        const std::size_t i = law_.size();
        const double diameter = lead.overall_diameter.value(), rise = limit - air_;
        const cylinder_law law(cylinder_place{.diameter = diameter,
                                              .air = air_,
                                              .wind = 0.0,
                                              .pressure = sea_level_pressure.value(),
                                              .emissivity = static_cast<double>(lead.covering.emissivity),
                                              .model = default_surface_model});
        const double sun = where_->sun.value() * static_cast<double>(sun_absorption) * diameter;
        const double unheated = rise + sun / covering;
        if (!law.is_base_case() || !(rise > 0.0) || !(unheated < cylinder_law::standard_rises_up_to)) return false;
        const double share = lay_ratio(arrangement, lead.overall_diameter);
        const cylinder_law::other_air& other = law.radiation_in_other_air();
        place_[i] = place;
        factor_[i] = share * law.standard_factor();
        once_[i] = share * other.once + covering;
        twice_[i] = share * other.twice;
        thrice_[i] = share * other.thrice;
        taken_up_[i] = covering * unheated;
        unheated_[i] = unheated;
        law_.push_back(law);
        return true;
    }
    [[nodiscard]] bool is_full() const { return law_.size() == most; }
    [[nodiscard]] std::size_t count() const { return law_.size(); }
    [[nodiscard]] std::size_t place(std::size_t i) const { return place_[i]; }  ///< of the lead among all
    void clear() { law_.clear(); }

    /// Solves for all of them.
    void solve()
    {
        constexpr int steps = 6;                            // from a quarter off they leave nothing but rounding
        for (std::size_t i = law_.size(); i < most; ++i) {  // so that every step has the same number of lanes
            factor_[i] = once_[i] = taken_up_[i] = unheated_[i] = 1.0;
            twice_[i] = thrice_[i] = 0.0;
        }
        // where the search starts: surfaces rise by two thirds of what they would without loss, 10 to 250 K
        constexpr double highest = 4.4, least = 10.0, bend = 70.0;
        for (std::size_t i = 0; i < most; ++i) y_[i] = highest * (unheated_[i] + least) / (unheated_[i] + bend);
        for (int k = 0; k < steps; ++k)
            for (std::size_t i = 0; i < most; ++i) {
                const double y = y_[i], y3 = y * y * y, r = y3 * y, standard = factor_[i] * r;
                const double surplus = standard * y + r * (once_[i] + r * (twice_[i] + r * thrice_[i])) - taken_up_[i];
                const double slope =
                    5.0 * standard + 4.0 * y3 * (once_[i] + r * (2.0 * twice_[i] + r * 3.0 * thrice_[i]));
                step_[i] = surplus / slope;
                y_[i] = y - step_[i];
            }
    }
    /// Surface temperature [K] of one; none where the steps have not settled or first principles may count there.
    [[nodiscard]] std::optional<double> surface(std::size_t i) const
    {
        constexpr double settled = 1e-9;  // of y: the next step is its square
        const double at = air_ + y_[i] * y_[i] * y_[i] * y_[i];
        if (!(std::fabs(step_[i]) <= settled * y_[i]) || !law_[i].standard_is_surely_larger(at, y_[i]))
            return std::nullopt;
        return at;
    }

private:
    using lanes = std::array<double, most>;

    const surroundings* where_;
    double air_;
    bool are_there_;
    std::array<std::size_t, most> place_;
    std::vector<cylinder_law> law_;
    lanes factor_, once_, twice_, thrice_, taken_up_, unheated_, y_, step_;  // set as leads are taken over
};

}  // namespace detail

/// Currents that bring the conductors' peaks of many leads to their limits, ampacity_of() for each of them.
///
/// Continuous current in still air at sea level, leads alone, spaced, touching or on a floor: the surfaces are solved
/// for together, about three times as fast a lead as one by one; agrees with ampacity_of() within 1e-12 of the current.
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
                out[i] = in_si<current>(
                    std::sqrt(loss / resistance_per_length_of(leads[i], temperature::kelvin(limit[k])).value()));
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
