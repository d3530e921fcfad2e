#pragma once
/// @file
/// Several leads side by side from one lug to another: what each carries and how hot it gets.
/// Source: Ohm's and Kirchhoff's laws, each lead by heating_of().

#include <cmath>
#include <cstddef>
#include <span>
#include <string>
#include <vector>

#include <weldloop/circuit/cable_heating.hpp>
#include <weldloop/core/error.hpp>
#include <weldloop/core/fraction.hpp>
#include <weldloop/core/number_text.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/part/cable.hpp>
#include <weldloop/part/load.hpp>
#include <weldloop/part/surroundings.hpp>
#include <weldloop/part/welding_cable.hpp>

namespace weldloop {

/// One of several leads that share a current.
struct parallel_lead {
    cable lead;                      ///< with its own length, size and state
    weldloop::resistance ends = {};  ///< [ohm] of its lugs and connections together, 0 or above
};

/// What one of several leads gets.
struct shared_lead {
    weldloop::current current = {};  ///< [A] while the arc burns
    fraction share = 0.0;            ///< of the whole
    cable_heating heating;           ///< at that current, far from its ends
};

/// Leads that share a current, and what they drop together.
struct lead_sharing {
    std::vector<shared_lead> leads = {};  ///< in the order given
    voltage drop = {};                    ///< [V] between their common ends, the same for each
    weldloop::basis basis = {};           ///< sources
};

/// How leads with common ends share a current: I_k (R_k(T_k) + ends_k) is the same for each, T_k the mean that lead
/// gets to at its own current; direct current, no heat along their ends.
///
/// Resistance grows with temperature, so a lead that takes more is hotter and gives some back: there is one sharing,
/// and taking the resistances of the last temperatures again and again comes to it. Leads that lie together must be
/// said to
/// (`lay`); what one gives off does not warm the other otherwise.
/// @param leads one or more, each with its diameters; `ends` 0 or above
/// @param where air around @param work whole current [A], above 0, and duty
/// @return currents that add up to the whole within 1e-9, drops equal within 1e-9
/// @throws bad_station_error for no leads; missing_data_error, not_finite_error, out_of_range_error as heating_of();
/// no_solution_error where the sharing does not settle
[[nodiscard]] inline lead_sharing sharing_of(std::span<const parallel_lead> leads, const surroundings& where,
                                             const load& work)
{
    if (leads.empty()) throw bad_station_error("parallel leads", "none", "at least one");
    require_positive(work.current, "welding current");
    std::vector<double> ohms(leads.size());
    const auto ohms_at = [&](std::size_t k, temperature mean) {
        return (resistance_of(leads[k].lead, mean) + leads[k].ends).value();
    };
    for (std::size_t k = 0; k < leads.size(); ++k) {
        require_not_negative(leads[k].ends, "resistance of the ends");
        ohms[k] = ohms_at(k, where.air);
    }
    lead_sharing out;
    out.leads.resize(leads.size());
    constexpr double settled = 1e-10;
    constexpr int most_rounds = 200;
    for (int round = 0; round < most_rounds; ++round) {
        double siemens = 0.0, moved = 0.0;
        for (const double r : ohms) siemens += 1.0 / r;
        out.drop = in_si<voltage>(work.current.value() / siemens);
        for (std::size_t k = 0; k < leads.size(); ++k) {
            shared_lead& is = out.leads[k];
            is.current = in_si<current>(out.drop.value() / ohms[k]);
            is.share = 1.0 / (ohms[k] * siemens);
            is.heating = heating_of(leads[k].lead, where, {.current = is.current, .duty = work.duty});
            const double now = ohms_at(k, is.heating.conductor_mean);
            moved = std::max(moved, std::fabs(now / ohms[k] - 1.0));
            ohms[k] = now;
        }
        if (moved > settled) continue;
        for (const shared_lead& is : out.leads) out.basis.add(is.heating.basis);
        return out;
    }
    throw no_solution_error("sharing of parallel leads", "not settled after " + number_text(most_rounds) + " rounds",
                            "leads whose heat settles");
}

}  // namespace weldloop
