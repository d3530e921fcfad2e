#pragma once
/// @file
/// How a current rises through resistance and inductance, and what inductance leaves of a supply's volts meanwhile.

#include <cmath>

#include <weldloop/core/error.hpp>
#include <weldloop/core/number_text.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>

namespace weldloop {

/// The law of a coil in series with a resistor.
inline constexpr source series_coil_law{
    "U = R i + L di/dt from a step of the voltage", {}, "solved in closed form", source_kind::derived};

/// Amperes per second.
using current_rate = decltype(current{} / duration{});

/// A circuit that is switched on: a steady voltage on resistance and inductance in series.
struct switched_circuit {
    voltage driving;  ///< [V] that drives the current: the supply's less what takes constant volts; any sign
    weldloop::resistance resistance;  ///< R [ohm], above 0
    weldloop::inductance inductance;  ///< L [H], 0 or above
    current before = {};              ///< [A] that flows when it is switched
};

/// The current a time after the step [A], i = U/R + (i0 - U/R) exp(-t R/L); without inductance at once U/R.
/// @param c the circuit @param after t [s], 0 or above @throws not_finite_error, out_of_range_error
[[nodiscard]] inline current current_after(const switched_circuit& c, duration after)
{
    require_finite(c.driving, "driving voltage");
    require_positive(c.resistance, "resistance");
    require_not_negative(c.inductance, "inductance");
    require_finite(c.before, "current before");
    const double t = require_not_negative(after, "time after switching").value();
    const current settled = c.driving / c.resistance;
    if (c.inductance.value() == 0.0) return settled;
    return settled + (c.before - settled) * std::exp(-t * c.resistance.value() / c.inductance.value());
}

/// The fastest rise a voltage makes in an inductance, U/L [A/s]. @param spare U [V], 0 or above: what the supply has
/// left over arc and resistance @param l L [H], above 0 @throws not_finite_error, out_of_range_error
[[nodiscard]] inline current_rate fastest_rise(voltage spare, inductance l)
{
    return require_not_negative(spare, "spare voltage") / require_positive(l, "inductance");
}

/// Volts that are left while the current rises, U - L di/dt; below 0 where the supply cannot make that rise [V].
/// @param supply U [V], 0 or above @param l L [H], 0 or above @param rate di/dt [A/s], 0 or above
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline voltage left_while_rising(voltage supply, inductance l, current_rate rate)
{
    require_not_negative(supply, "supply voltage");
    require_not_negative(l, "inductance");
    if (!(rate.value() >= 0.0 && rate.value() <= detail::greatest_number))
        throw out_of_range_error("rise of the current", number_text(rate.value()) + " A/s", "zero or above");
    return supply - l * rate;
}

}  // namespace weldloop
