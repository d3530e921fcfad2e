#pragma once
/// @file
/// The current a lead may carry.

#include <array>
#include <cmath>
#include <limits>
#include <optional>

#include <weldloop/circuit/cable_heating.hpp>
#include <weldloop/core/duty_cycle.hpp>
#include <weldloop/core/error.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/core/text.hpp>
#include <weldloop/law/cable_surface.hpp>
#include <weldloop/law/covered_conductor.hpp>
#include <weldloop/law/equal_heating.hpp>
#include <weldloop/law/periodic_heating.hpp>
#include <weldloop/part/cable.hpp>
#include <weldloop/part/conductor_limit.hpp>
#include <weldloop/part/surroundings.hpp>
#include <weldloop/solve/root.hpp>

namespace weldloop {

/// The rated current of a lead and what stands behind it.
struct ampacity {
    current amps;              ///< [A] that brings the conductor's peak to the limit
    temperature limit;         ///< of the conductor, the lead's
    temperature surface_peak;  ///< of the covering at that current
    current continuous;        ///< [A] the same for current without a break
    current by_square_root;    ///< [A] the guide rule on `continuous`, for comparison: equal_heating_current()
    weldloop::basis basis;     ///< sources, and ranges left
};

namespace detail {
/// A current that brings a conductor to its limit, and the surface then.
struct rated_state {
    double amps;               // A
    temperature surface_peak;  // of the covering
};
}  // namespace detail

/// Current that brings the conductor's peak to the lead's limit, far from its ends.
///
/// Continuous: I = sqrt(q/R') at the limit, q by steady_loss_of(). With a duty: the current for which heating_of()
/// peaks at the limit, solved for together with the temperatures (within 1e-10). Where strands are missing: the root of
/// heating_of() for the current, between the continuous rating and the square-root rule.
///
/// Takes microseconds for a continuous rating and a tenth of a millisecond for one with a duty; at worst, strands
/// missing and on-times of hours between rests of weeks, some tens of milliseconds.
///
/// For leads in open air as surroundings say; not in a duct or pipe, under a mat, buried or on a drum, where less is
/// carried. Grows with area, limit and wind, falls with air temperature and duty. Measured against published ratings
/// alone in air see surface_model; guide tables apply the square-root rule at every duty and so allow more at low duty.
/// @param lead with its diameters; its limit above the air's temperature and below the melting point
/// @param where air, wind, lay, altitude, sun @param duty default continuous
/// @throws missing_data_error for a lead without diameters; not_finite_error; out_of_range_error for air at or above
/// the limit; no_solution_error where the sun alone brings the lead to its limit
[[nodiscard]] inline ampacity ampacity_of(const cable& lead, const surroundings& where,
                                          duty_cycle duty = duty_cycle::continuous())
{
    detail::require_dimensions(lead);
    const temperature limit = limit_of(lead);
    if (where.air >= limit)
        throw out_of_range_error("air temperature", to_text(where.air, "degC"),
                                 "below the lead's limit of " + to_text(limit, "degC"));
    if (limit >= conductor_melting_of(lead.metal))
        throw out_of_range_error("limit of the lead", to_text(limit, "degC"),
                                 "below the melting point of " + to_text(conductor_melting_of(lead.metal), "degC"));
    const cable_surface around = detail::surface_of(lead, where);
    const detail::surface_kernel surface(around);
    const double through =
        covering_conductance(lead.covering.thermal_conductivity, lead.conductor_diameter, lead.overall_diameter)
            .value();
    const double steady = surface.steady_surface(through, limit.in_kelvin());
    const double loss = through * (limit.in_kelvin() - steady);
    if (!(loss > 0.0))
        throw no_solution_error("rated current",
                                "zero: the sun alone heats the lead to its limit of " + to_text(limit, "degC"),
                                "less sunlight, more wind or a higher limit");
    const double undamaged = std::sqrt(loss / resistance_per_length_of(lead, limit).value());
    ampacity out;
    out.limit = limit;
    if (duty.is_continuous() && !detail::is_damaged(lead)) {  // steady: what was solved for is all there is to know
        out.amps = out.continuous = out.by_square_root = in_si<current>(undamaged);
        out.surface_peak = temperature::kelvin(steady);
        detail::add_heating_basis(out.basis, lead, around, surface, limit, out.surface_peak, true);
        return out;
    }
    // rating under the duty with a share of the strands missing all along, where the settled state can be solved for
    // together with the current
    const std::array programme{heating_segment{in_si<current>(1.0), duty.on()},
                               heating_segment{current{}, duty.rest()}};
    const auto all_along = [&](double missing) -> std::optional<detail::rated_state> {
        const detail::conductor_numbers conductor(detail::conductor_of(lead, missing));
        // first guess: one store of heat that the limit's loss empties
        const double rates = loss / (conductor.whole_heat * (limit - where.air).value());
        const double guess =
            undamaged * std::sqrt(1.0 - missing) *
            std::sqrt(std::expm1(-rates * duty.period().value()) / std::expm1(-rates * duty.on().value()));
        for (const std::optional<double> hot : {std::optional<double>{}, std::optional(steady)}) {
            detail::settled_programme rated(conductor, programme, surface);
            if (const std::optional<double> amps = rated.settle_with_peak(limit.in_kelvin(), guess, hot))
                return detail::rated_state{*amps, rated.result().surface_peak};
        }
        return std::nullopt;
    };
    const bool is_damaged = detail::is_damaged(lead);
    const std::optional<detail::rated_state> sound = duty.is_continuous() ? std::nullopt : all_along(0.0);
    if (!is_damaged && sound) {
        out.continuous = in_si<current>(undamaged);
        out.by_square_root = equal_heating_current(out.continuous, duty_cycle::continuous(), duty);
        out.amps = in_si<current>(sound->amps);
        out.surface_peak = sound->surface_peak;
        detail::add_heating_basis(out.basis, lead, around, surface, limit, out.surface_peak, false);
        out.basis.add(square_root_duty_rule);
        return out;
    }
    const auto peak_above_limit = [&](double amps, const duty_cycle& d) {
        return (heating_of(lead, where, {.current = in_si<current>(amps), .duty = d}).conductor_peak - limit).value();
    };
    // brackets: the damage all along and none at all, a little apart as both are limits that may be reached
    constexpr double below = 0.9, above = 1.01;
    constexpr double jump = 1.0, jump_width = 1e-6;  // K within so much of the current
    const double missing = is_damaged ? static_cast<double>(lead.missing_strands) : 0.0;
    const auto root = [&](const duty_cycle& d, double least, double most) {
        double cool = 0.0, cool_at = 0.0, hot = 0.0, hot_at = std::numeric_limits<double>::infinity();
        const auto above_limit = [&](double amps) {
            const double kelvin = peak_above_limit(amps, d);
            if (kelvin > 0.0 && amps < hot_at) hot = kelvin, hot_at = amps;
            if (kelvin <= 0.0 && amps > cool_at) cool = kelvin, cool_at = amps;
            // it runs away: more of the search would halve what lies between no further
            return hot_at - cool_at < jump_width * hot_at && hot - cool > jump ? 0.0 : kelvin;
        };
        const double found = detail::root_between(above_limit, below * least, above * most, "rated current");
        return in_si<current>(hot - cool > jump ? cool_at : found);
    };
    // with a share s missing, the damage alone would carry sqrt(1 - s) of the continuous current
    const double least = std::sqrt(1.0 - missing) * undamaged;
    out.continuous = is_damaged ? root(duty_cycle::continuous(), least, undamaged) : in_si<current>(undamaged);
    if (duty.is_continuous())
        out.amps = out.continuous;
    else {
        const std::optional<detail::rated_state> damaged = is_damaged ? all_along(missing) : std::nullopt;
        out.amps = root(duty, damaged ? damaged->amps : least,
                        sound ? sound->amps : undamaged / std::sqrt(static_cast<double>(duty.share())));
    }
    out.by_square_root = equal_heating_current(out.continuous, duty_cycle::continuous(), duty);
    const cable_heating hot = heating_of(lead, where, {.current = out.amps, .duty = duty});
    out.surface_peak = hot.surface_peak;
    out.basis = hot.basis;
    if (!duty.is_continuous()) out.basis.add(square_root_duty_rule);
    return out;
}

}  // namespace weldloop
