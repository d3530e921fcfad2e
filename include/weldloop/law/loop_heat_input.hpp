#pragma once
/// @file
/// Heat input as it is and as it is written down where the volts are read at the source.

#include <string_view>

#include <weldloop/core/error.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/law/arc_heat.hpp>
#include <weldloop/law/load_line.hpp>

namespace weldloop {

/// How a heat input is written: with a share of the arc's power or without.
enum class heat_input_rule {
    with_factor,  ///< Q = k U I / v, k by EN 1011-1: 0.8, tungsten arc 0.6, submerged arc 1.0
    no_factor,    ///< H = U I / v, as ASME IX QW-409.1 (a) has it
};

/// The words for a rule, formula and factor's source named. @param r rule
[[nodiscard]] constexpr std::string_view to_text(heat_input_rule r)
{
    return r == heat_input_rule::with_factor ? "Q = k U I / v, k by EN 1011-1"
                                             : "H = U I / v, no factor (ASME IX QW-409.1 (a))";
}

/// A welding record's rule without a factor.
inline constexpr source heat_input_without_factor{"ASME IX", "current", "QW-409.1 (a), form recalled",
                                                  source_kind::memory};

/// A weld as it is recorded, and what the loop takes of its volts.
struct recorded_weld {
    weldloop::process process;                            ///< whose factor is taken
    voltage at_supply;                                    ///< [V] across the supply's terminals, above 0
    voltage loop_drop;                                    ///< [V] that the loop takes, 0 or above and below `at_supply`
    weldloop::current current;                            ///< [A] above 0
    speed travel;                                         ///< [m/s] above 0
    heat_input_rule rule = heat_input_rule::with_factor;  ///< how it is written
};

/// Heat input with and without the loop's loss.
struct loop_heat_input {
    double factor;                      ///< k; 1 without a factor
    heat_per_weld_length with_loss;     ///< [J/m] of the volts at the supply: as recorded
    heat_per_weld_length without_loss;  ///< [J/m] of the volts at the arc: what the weld gets
    double overstated;                  ///< share by which the record lies above the weld
};

/// Heat input as recorded at the supply and as it is at the arc. @param w the weld
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline loop_heat_input heat_input_of(const recorded_weld& w)
{
    require_positive(w.at_supply, "voltage at the supply");
    require_not_negative(w.loop_drop, "drop of the loop");
    if (!(w.loop_drop < w.at_supply))
        throw out_of_range_error("drop of the loop", si_text(w.loop_drop),
                                 "below the voltage at the supply, " + si_text(w.at_supply));
    const double k = w.rule == heat_input_rule::with_factor ? heat_input_factor(w.process) : 1.0;
    const voltage arc = w.at_supply - w.loop_drop;
    return {k, heat_input(k, w.at_supply, w.current, w.travel), heat_input(k, arc, w.current, w.travel),
            require_finite((w.loop_drop / arc).value(), "share of the loop")};
}

/// Share of the arc's power that melts the wire, rho A v c dT/(s U I), s the share of its power that the arc gives to
/// the wire. @param melted [W] heat in the wire that is fed, 0 or above @param arc [W] power of the arc, above 0
/// @param share_at_wire s, a share, 0.001 to 1 @throws not_finite_error, out_of_range_error
[[nodiscard]] inline double wire_melting_efficiency(power melted, power arc, double share_at_wire)
{
    require_not_negative(melted, "heat in the wire");
    require_positive(arc, "power of the arc");
    require_within(share_at_wire, 1e-3, 1.0, "share of the power at the wire");
    return require_finite((melted / arc).value() / share_at_wire, "melting efficiency");
}

}  // namespace weldloop
