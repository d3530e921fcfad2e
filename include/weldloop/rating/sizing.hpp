#pragma once
/// @file
/// The smallest lead that stays cool enough and loses little enough voltage.

#include <array>
#include <optional>
#include <span>
#include <string>
#include <string_view>

#include <weldloop/circuit/cable_heating.hpp>
#include <weldloop/core/conductor_size.hpp>
#include <weldloop/core/duty_cycle.hpp>
#include <weldloop/core/error.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/core/text.hpp>
#include <weldloop/part/cable.hpp>
#include <weldloop/part/conductor_limit.hpp>
#include <weldloop/part/surroundings.hpp>
#include <weldloop/part/welding_cable.hpp>
#include <weldloop/rating/ampacity.hpp>
#include <weldloop/rating/drop.hpp>

namespace weldloop {

/// Sizes to choose from.
enum class size_family {
    american,  ///< 8 AWG to 500 kcmil, as listed by ASTM B172
    metric,    ///< 10 to 240 mm2, nominal sizes of IEC 60228
};

/// What decides the size of a lead.
enum class lead_limit {
    heat,  ///< the conductor's temperature limit
    drop,  ///< the allowed voltage drop
};

/// The word for what decides.
[[nodiscard]] constexpr std::string_view to_text(lead_limit l)
{
    return l == lead_limit::heat ? "heat" : "drop";
}

/// What a loop may take where the station names no limit of its own.
inline constexpr source usual_loop_drop{
    "AWS Welding Handbook and the safety standard after it, as described in a trade article", "1938 to 1942",
    "4 V in both leads, basis of its table of lead sizes", source_kind::handbook};
/// [V], see usual_loop_drop.
inline constexpr voltage usual_allowed_drop = in_si<voltage>(4.0);

/// What is asked of a lead.
struct lead_request {
    weldloop::length length;                     ///< [m] of one lead, above 0
    weldloop::current current;                   ///< [A] while the arc burns, above 0
    duty_cycle duty = duty_cycle::continuous();  ///< time under current
    surroundings where = {};                     ///< air, wind, lay, altitude, sun
    voltage allowed_drop = usual_allowed_drop;   ///< [V] along the hot lead, above 0
    bool both_leads = false;                     ///< out and back leads of this length share the allowed drop
    size_family family = size_family::american;  ///< sizes to choose from
    std::optional<temperature> limit = {};       ///< of the conductor, as cable::limit
};

/// The smallest lead that satisfies a request.
struct lead_choice {
    weldloop::cable cable;                      ///< the lead, its length that of the request
    lead_limit governed_by = lead_limit::heat;  ///< which limit the next smaller size fails, or fails by more
    ampacity rated;                             ///< what the lead may carry at this duty
    cable_heating heating;                      ///< how hot it gets
    voltage drop;                               ///< [V] along it when hot, along both where both were asked for
    current current_margin;                     ///< [A] rated less asked, 0 or above
    voltage drop_margin;                        ///< [V] allowed less lost, 0 or above
    weldloop::basis basis;                      ///< sources, and ranges left
};

/// American sizes of leads, small to large.
inline constexpr std::array american_lead_sizes{awg(8),     awg(6),     awg(4),     awg(3),    awg(2),     awg(1),
                                                aught(1),   aught(2),   aught(3),   aught(4),  kcmil(250), kcmil(300),
                                                kcmil(350), kcmil(400), kcmil(450), kcmil(500)};
/// Metric sizes of leads, small to large.
inline constexpr std::array metric_lead_sizes{square_mm(10),  square_mm(16),  square_mm(25), square_mm(35),
                                              square_mm(50),  square_mm(70),  square_mm(95), square_mm(120),
                                              square_mm(150), square_mm(185), square_mm(240)};

/// The sizes of a family, small to large.
[[nodiscard]] constexpr std::span<const conductor_size> sizes_of(size_family family)
{
    if (family == size_family::metric) return metric_lead_sizes;
    return american_lead_sizes;
}

/// The smallest lead of a family whose conductor stays at or below the limit and whose drop when hot stays at or below
/// the allowed one.
///
/// Both are calculated for each size from the smallest up: the conductor's peak by heating_of(), the drop by drop_of()
/// at its mean over the arc-on time. `governed_by` names the limit that the next smaller size fails; where it fails
/// both, the one it fails by the larger share. For the smallest size of the family it names the limit that is nearer.
/// @param request length, current and allowed drop above 0; air below the limit
/// @throws not_finite_error, out_of_range_error; no_solution_error, naming the largest size, when none suffices
[[nodiscard]] inline lead_choice smallest_lead(const lead_request& request)
{
    require_positive(request.length, "lead length");
    require_positive(request.current, "current");
    require_positive(request.allowed_drop, "allowed drop");
    cable any = welding_cable(sizes_of(request.family).front(), request.length);
    any.limit = request.limit;
    const temperature limit = limit_of(any);
    if (request.where.air >= limit)
        throw out_of_range_error("air temperature", to_text(request.where.air, "degC"),
                                 "below the limit of " + to_text(limit, "degC"));
    const double leads = request.both_leads ? 2.0 : 1.0;
    const std::span<const conductor_size> sizes = sizes_of(request.family);

    double heat_use = 0.0, drop_use = 0.0;  // of the size before: share of each limit that is used up
    bool is_first = true;
    std::string largest;
    for (const conductor_size& size : sizes) {
        cable lead = welding_cable(size, request.length);
        lead.limit = request.limit;
        const cable_heating hot = heating_of(lead, request.where, {.current = request.current, .duty = request.duty});
        const voltage drop = leads * drop_of(lead, request.current, hot.conductor_mean);
        const double heat_now = ((hot.conductor_peak - request.where.air) / (limit - request.where.air)).value();
        const double drop_now = (drop / request.allowed_drop).value();
        if (hot.conductor_peak <= limit && drop <= request.allowed_drop) {
            if (is_first) {
                heat_use = heat_now;
                drop_use = drop_now;
            }
            const ampacity rated = ampacity_of(lead, request.where, request.duty);
            return {.cable = lead,
                    .governed_by = heat_use >= drop_use ? lead_limit::heat : lead_limit::drop,
                    .rated = rated,
                    .heating = hot,
                    .drop = drop,
                    .current_margin = rated.amps - request.current,
                    .drop_margin = request.allowed_drop - drop,
                    .basis = weldloop::basis(hot.basis).add(rated.basis)};
        }
        heat_use = heat_now;
        drop_use = drop_now;
        is_first = false;
        largest = to_text(size) + ", with " + to_text(hot.conductor_peak, "degC") + " and " + to_text(drop, "V");
    }
    throw no_solution_error("lead size", "beyond the largest: " + largest,
                            "at most " + to_text(limit, "degC") + " and " + to_text(request.allowed_drop, "V"));
}

}  // namespace weldloop
