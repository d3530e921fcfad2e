#pragma once
/// @file
/// The wire between contact tip and arc, heated along its length by its own current while it is fed.

#include <cmath>
#include <numbers>

#include <weldloop/core/error.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/material/metal.hpp>

namespace weldloop {

/// The balance of a moving wire.
inline constexpr source moving_wire_balance{
    "heat balance of a wire that moves through its own heating, no heat to the air and none along the wire",
    {},
    "T and V in closed form for a linear law of resistivity",
    source_kind::derived};

/// Resistance of a length of wire of an even resistivity, rho L/(pi d^2/4) [ohm].
/// @param mean rho [ohm m], above 0 @param diameter d [m], above 0 @param extension L [m], 0 or above
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline resistance wire_resistance(resistivity mean, length diameter, length extension)
{
    require_positive(mean, "mean resistivity of the wire");
    require_positive(diameter, "wire diameter");
    require_not_negative(extension, "wire extension");
    return require_finite(resistance(mean * extension / (std::numbers::pi / 4.0 * diameter * diameter)),
                          "wire resistance");
}

/// A wire on its way from tip to arc.
struct fed_wire {
    metal of;                                       ///< its material: resistivity with its linear law, heat per volume
    length diameter;                                ///< d [m], above 0
    length extension;                               ///< L [m], 0 or above
    speed feed;                                     ///< v [m/s], above 0
    temperature enters = temperature::celsius(20);  ///< at the tip
};

/// What becomes of it.
struct heated_extension {
    temperature ends;      ///< at the arc; never above melting
    voltage drop;          ///< along it [V]
    length melts_at = {};  ///< [m] from the tip where its own heat alone would melt it; the whole extension where not
    bool melts_early = false;  ///< it melts before the arc: the feed does not belong to this current and extension
};

/// Temperature and drop along a fed wire at a current.
///
/// A piece of wire takes L/v from tip to arc, too short for heat to leave it: c dT/dx = J^2 rho(T)/v. With rho linear,
/// rho = rho_e (1 + a (T - Te)), T - Te = (exp(a k x) - 1)/a and V = J rho_e (exp(a k L) - 1)/(a k), k = J^2 rho_e/(c
/// v). The linear law of resistivity and one specific heat are the metal's near 20 degC: steel has in truth a
/// resistivity that levels off above 800 degC and a peak of heat at 750 degC, both of which make the drop smaller; some
/// tens of percent.
/// @param w the wire @param through I [A], 0 or above @throws not_finite_error, out_of_range_error
/// @see moving_wire_balance
[[nodiscard]] inline heated_extension extension_of(const fed_wire& w, current through)
{
    const double d = require_positive(w.diameter, "wire diameter").value();
    const double extent = require_not_negative(w.extension, "wire extension").value();
    const double v = require_positive(w.feed, "wire feed").value();
    const double amps_by_area = require_not_negative(through, "arc current").value() / (std::numbers::pi / 4.0 * d * d);
    if (!(w.enters < w.of.melting))
        throw out_of_range_error("temperature of the wire at the tip", std::to_string(w.enters.in_kelvin()) + " K",
                                 "below its melting point");
    const double entering = w.of.resistivity_at(w.enters).value();                                   // ohm m
    const double a = w.of.temperature_coefficient.value() * w.of.resistivity.value() / entering;     // 1/K, of entering
    const double k = amps_by_area * amps_by_area * entering / (w.of.heat_per_volume().value() * v);  // K/m
    const double room = (w.of.melting - w.enters).value();                                           // K
    const auto grown = [a](double x) { return a > 0.0 ? std::expm1(a * x) / a : x; };
    const double melts_at = k > 0.0 ? (a > 0.0 ? std::log1p(a * room) / a : room) / k : extent;
    heated_extension out;
    out.melts_early = k > 0.0 && melts_at < extent;
    out.melts_at = in_si<length>(out.melts_early ? melts_at : extent);
    const double heated = k * out.melts_at.value();
    out.ends = w.enters + in_si<temperature_difference>(out.melts_early ? room : grown(heated));
    out.drop = require_finite(
        in_si<voltage>(amps_by_area * entering * (k > 0.0 ? grown(heated) / k : extent) +
                       amps_by_area * w.of.resistivity_at(w.of.melting).value() * (extent - out.melts_at.value())),
        "drop of the wire extension");
    return out;
}

}  // namespace weldloop
