#pragma once
/// @file
/// The current a lead may carry.

#include <array>
#include <cmath>
#include <optional>

#include <weldloop/circuit/cable_heating.hpp>
#include <weldloop/circuit/lone_lead.hpp>
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

/// Current that makes so much heat [W/m] in a conductor at a temperature.
[[nodiscard]] inline current steady_current(double heat, const cable& lead, temperature conductor)
{
    return in_si<current>(std::sqrt(heat / resistance_per_length_of(lead, conductor).value()));
}

/// The rating of a lead that is more than a lone_lead under current without a break.
class lead_rating {
public:
    /// @param covering its conductance [W/(m K)] @param limit above the air's temperature
    lead_rating(const cable& lead, const surroundings& where, double covering, temperature limit)
        : lead_(lead), where_(where), limit_(limit), around_(surface_of(lead, where)), surface_(around_),
          steady_(surface_.steady_surface(covering, limit.in_kelvin())),
          loss_(covering * (limit.in_kelvin() - steady_)), missing_(is_damaged(lead) ? share_of_missing(lead) : 0.0)
    {
        if (!(loss_ > 0.0))
            throw no_solution_error("rated current",
                                    "zero: the sun alone heats the lead to its limit of " + to_text(limit, "degC"),
                                    "less sunlight, more wind or a higher limit");
        undamaged_ = steady_current(loss_, lead, limit).value();
    }

    [[nodiscard]] ampacity under(const duty_cycle& duty) const
    {
        ampacity out;
        out.limit = limit_;
        if (duty.is_continuous() && missing_ == 0.0) {  // steady: what was solved for is all there is to know
            out.amps = out.continuous = out.by_square_root = in_si<current>(undamaged_);
            out.surface_peak = temperature::kelvin(steady_);
            begin_heating_basis(out.basis, lead_, around_, surface_, limit_, out.surface_peak, true);
            return out;
        }
        // brackets: the damage all along and none at all, a little apart as both are limits that may be reached
        constexpr double below = 0.9, above = 1.01;
        // with a share s missing, the damage alone would carry sqrt(1 - s) of the continuous current
        double least = std::sqrt(1.0 - missing_) * undamaged_, most = undamaged_;
        out.continuous =
            in_si<current>(missing_ == 0.0 ? undamaged_ : root(duty_cycle::continuous(), below * least, above * most));
        out.amps = out.continuous;
        out.by_square_root = equal_heating_current(out.continuous, duty_cycle::continuous(), duty);
        if (!duty.is_continuous()) {
            most /= std::sqrt(static_cast<double>(duty.share()));
            if (const std::optional<swing> sound = all_along(0.0, duty)) {
                if (missing_ == 0.0) {
                    out.amps = in_si<current>(sound->amps);
                    out.surface_peak = sound->surface_peak;
                    begin_heating_basis(out.basis, lead_, around_, surface_, limit_, out.surface_peak, false);
                    out.basis.add(square_root_duty_rule);
                    return out;
                }
                most = sound->amps;
            }
            if (missing_ > 0.0)
                if (const std::optional<swing> damaged = all_along(missing_, duty)) least = damaged->amps;
            out.amps = in_si<current>(root(duty, below * least, above * most));
        }
        const cable_heating hot = heating_of(lead_, where_, {.current = out.amps, .duty = duty});
        out.surface_peak = hot.surface_peak;
        out.basis = hot.basis;
        if (!duty.is_continuous()) out.basis.add(square_root_duty_rule);
        return out;
    }

private:
    struct swing {
        double amps;               // A
        temperature surface_peak;  // of the covering
    };

    [[nodiscard]] static double share_of_missing(const cable& lead)
    {
        return static_cast<double>(lead.missing_strands);
    }

    /// The rating with a share of the strands missing all along, solved for together with the temperatures; none where
    /// that way leads nowhere.
    [[nodiscard]] std::optional<swing> all_along(double missing, const duty_cycle& duty) const
    {
        const conductor_numbers conductor(conductor_of(lead_, missing));
        const std::array programme{heating_segment{in_si<current>(undamaged_), duty.on()},
                                   heating_segment{current{}, duty.rest()}};
        // first guess: one store of heat that the limit's loss empties
        const double rates = loss_ / (conductor.whole_heat * (limit_ - where_.air).value());
        const double guess =
            std::sqrt(1.0 - missing) * undamaged_ *
            std::sqrt(std::expm1(-rates * duty.period().value()) / std::expm1(-rates * duty.on().value()));
        for (const std::optional<double> hot : {std::optional<double>{}, std::optional(steady_)}) {
            settled_programme rated(conductor, programme, surface_);
            if (const std::optional<double> amps = rated.settle_with_peak(limit_.in_kelvin(), guess, hot))
                return swing{*amps, rated.result().surface_peak};
        }
        return std::nullopt;
    }

    /// The current [A] between two at which heating_of() peaks at the limit. Where the damage runs away the peak jumps
    /// over it: then the highest current found that keeps below, close to the jump.
    [[nodiscard]] double root(const duty_cycle& duty, double least, double most) const
    {
        constexpr double jump = 1.0, close = 1e-6;  // K within such a share of the current
        constexpr int usual_calls = 12;             // a smooth peak takes 7 to 10
        struct {
            double amps, kelvin;
        } cool{least, 0.0}, hot{most, 0.0};
        int calls = 0;
        const auto above_limit = [&](double amps) {
            const load work{.current = in_si<current>(amps), .duty = duty};
            const double kelvin = (heating_of(lead_, where_, work).conductor_peak - limit_).value();
            if (kelvin > 0.0 && amps <= hot.amps) hot = {amps, kelvin};
            if (kelvin <= 0.0 && amps >= cool.amps) cool = {amps, kelvin};
            return kelvin;
        };
        const auto jumps = [&] { return hot.kelvin - cool.kelvin > jump; };
        const auto until_it_jumps = [&](double amps) {
            const double kelvin = above_limit(amps);
            return ++calls > usual_calls && jumps() ? 0.0 : kelvin;  // zero ends the search
        };
        double found = root_between(until_it_jumps, least, most, "rated current");
        while (calls > usual_calls && jumps()) {
            if (hot.amps - cool.amps < close * hot.amps) return cool.amps;
            found = 0.5 * (cool.amps + hot.amps);
            if (above_limit(found) == 0.0) return found;
            if (!jumps()) found = root_between(above_limit, cool.amps, hot.amps, "rated current");
        }
        return found;
    }

    const cable& lead_;
    const surroundings& where_;
    temperature limit_;
    cable_surface around_;
    surface_kernel surface_;
    double steady_, loss_;    // K of the surface, W/m, the conductor steadily at the limit
    double missing_;          // share of strands, 0 for none or over no length
    double undamaged_ = 0.0;  // A without a break
};

// Kept out of the way of leads by themselves.
[[gnu::noinline]] inline ampacity rated(const cable& lead, const surroundings& where, const duty_cycle& duty,
                                        double covering, temperature limit)
{
    return lead_rating(lead, where, covering, limit).under(duty);
}

[[noreturn, gnu::noinline, gnu::cold]] inline void refuse_limit(const cable& lead, const surroundings& where,
                                                                temperature limit)
{
    if (where.air >= limit)
        throw out_of_range_error("air temperature", to_text(where.air, "degC"),
                                 "below the lead's limit of " + to_text(limit, "degC"));
    throw out_of_range_error("limit of the lead", to_text(limit, "degC"),
                             "below the melting point of " + to_text(conductor_melting_of(lead.metal), "degC"));
}

}  // namespace detail

/// Current that brings the conductor's peak to the lead's limit, far from its ends.
///
/// Continuous: I = sqrt(q/R') at the limit, q by steady_loss_of(). With a duty: the current for which heating_of()
/// peaks at the limit, solved for together with the temperatures (within 1e-10). Where strands are missing: the root of
/// heating_of() for the current, between the continuous rating and the square-root rule.
///
/// Where strands are missing and the damage runs away, so that the peak jumps over the limit: the highest current found
/// that keeps below, within 1e-6.
///
/// Takes a fifth of a microsecond for a continuous rating and a tenth of a millisecond for one with a duty; at worst,
/// strands missing in a coil and on-times of days, some tens of milliseconds.
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
    if (where.air >= limit || limit >= conductor_melting_of(lead.metal)) [[unlikely]]
        detail::refuse_limit(lead, where, limit);
    const double covering =
        covering_conductance(lead.covering.thermal_conductivity, lead.conductor_diameter, lead.overall_diameter)
            .value();
    ampacity out;
    if (duty.is_continuous() && !detail::is_damaged(lead) && detail::is_still_air(where) &&
        detail::lies_by_itself(lead, where)) {
        const detail::lone_lead alone(lead, where, covering, limit.in_kelvin());
        const std::optional<double> surface = alone.surface();
        if (surface && *surface < limit.in_kelvin()) [[likely]] {
            out.amps = out.continuous = out.by_square_root =
                detail::steady_current(covering * (limit.in_kelvin() - *surface), lead, limit);
            out.limit = limit;
            out.surface_peak = temperature::kelvin(*surface);
            alone.begin_basis(out.basis, lead, limit, *surface);
            return out;
        }
    }
    out = detail::rated(lead, where, duty, covering, limit);
    return out;
}

}  // namespace weldloop
