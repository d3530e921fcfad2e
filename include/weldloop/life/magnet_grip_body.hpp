#pragma once
/// @file
/// How magnet_grip.hpp is answered.

#include <algorithm>

#include <weldloop/circuit/clamp_heat.hpp>
#include <weldloop/circuit/clamp_swing.hpp>
#include <weldloop/circuit/magnet_network.hpp>
#include <weldloop/core/band.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/life/grip_threshold_body.hpp>
#include <weldloop/life/magnet_grip.hpp>
#include <weldloop/part/cable.hpp>
#include <weldloop/part/load.hpp>
#include <weldloop/part/surroundings.hpp>
#include <weldloop/part/work_magnet.hpp>

namespace weldloop {

namespace detail {

struct magnet_state {
    clamp_solver::state heat;
    double peak;  // rise of the housing
};
[[nodiscard]] inline magnet_state magnet_state_of(const clamp_network& n, const clamp_outside& behind, const load& work,
                                                  scatter level)
{
    clamp_solver solver(n, behind, work, level);
    static_cast<void>(let_swing(solver, {}, work.duty));
    const clamp_solver::state s = solver.solve({});
    return {s, solver.peak_of(s, body_place)};
}

}  // namespace detail

[[nodiscard]] inline magnet_grip magnet_grip_of(const work_magnet& m, const cable& lead, const load& work,
                                                const surroundings& where)
{
    require_positive(work.current, "welding current");
    const clamp_network n = clamp_network_of(m, lead.size, where);
    if (!(n.jaws.low.value() > 0.0)) throw bad_station_error("magnet", "an open circuit", "a pad that touches metal");
    const clamp_outside behind = lead_outside(lead, where, work);
    magnet_grip out;
    const auto at = [&](scatter level, temperature& magnet, temperature& peak, temperature& pad, double& pull,
                        weldloop::resistance& r) {
        const auto [s, housing_peak] = detail::magnet_state_of(n, behind, work, level);
        const bool lost = s.bound != clamp_bound::none;
        peak = where.air + in_si<temperature_difference>(housing_peak);
        magnet = where.air + in_si<temperature_difference>(s.rise[detail::body_place]);
        pad = where.air + in_si<temperature_difference>(s.rise[detail::jaw_place]);
        pull = lost ? 0.0 : s.warm;
        r = lost ? weldloop::resistance{} : in_si<voltage>(s.jaw_volts + s.termination_volts) / work.current;
        return lost;
    };
    at(scatter::low, out.magnet.low, out.magnet_peak.low, out.pad.low, out.pull_left.high, out.resistance.low);
    out.demagnetised = at(scatter::typical, out.magnet.typical, out.magnet_peak.typical, out.pad.typical,
                          out.pull_left.typical, out.resistance.typical);
    out.may_be_demagnetised =
        at(scatter::high, out.magnet.high, out.magnet_peak.high, out.pad.high, out.pull_left.low, out.resistance.high);
    out.basis.add(n.basis).add(lead_fin_judgement);
    return out;
}

[[nodiscard]] inline current largest_magnet_current(const work_magnet& m, const cable& lead, const duty_cycle& duty,
                                                    const surroundings& where)
{
    const clamp_network n = clamp_network_of(m, lead.size, where);
    if (!(n.jaws.typical.value() > 0.0))
        throw bad_station_error("magnet", "an open circuit", "a pad that touches metal");
    const auto holds = [&](double amps) {
        const load work{.current = in_si<current>(amps), .duty = duty};
        const clamp_outside behind = lead_outside(lead, where, work);
        if (behind.far >= conductor_melting_of(lead.metal)) return false;
        const detail::clamp_solver::state s = detail::magnet_state_of(n, behind, work, scatter::typical).heat;
        return s.bound == clamp_bound::none && !s.spots_melt;
    };
    if (!holds(lowest_clamp_current.value())) return {};
    return in_si<current>(
        detail::largest_that_holds(lowest_clamp_current.value(), highest_clamp_current.value(), holds));
}

}  // namespace weldloop
