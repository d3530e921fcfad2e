#pragma once
/// @file
/// How a current rises through resistance and inductance, and what inductance leaves of a supply's volts meanwhile.

#include <cmath>
#include <optional>

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
    current before = {};              ///< [A] any, that flows when it is switched
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
    const current settled = require_finite(current(c.driving / c.resistance), "settled current");
    if (c.inductance.value() == 0.0) return settled;
    const double decay = -t * c.resistance.value() / c.inductance.value();
    // each by itself: the difference of two large currents can be none
    return settled * -std::expm1(decay) + c.before * std::exp(decay);
}

/// The fastest rise a voltage makes in an inductance, U/L [A/s]. @param spare U [V], 0 or above: what the supply has
/// left over arc and resistance @param l L [H], above 0 @throws not_finite_error, out_of_range_error
[[nodiscard]] inline current_rate fastest_rise(voltage spare, inductance l)
{
    return require_finite(
        current_rate(require_not_negative(spare, "spare voltage") / require_positive(l, "inductance")),
        "rise of the current");
}

/// How long the current takes from one value to another while the volts to spare for its rise depend on it, the
/// integral of L di/u(i) over sixty-four panels with u straight in each: exact for a steady voltage on resistance and
/// for every straight line, 1e-4 for a curved one; 0 without inductance. Empty where nothing is to spare somewhere on
/// the way: the current does not get there.
/// @param l L [H], 0 or above @param from [A], any @param to [A], at least `from`
/// @param spare u, what is to spare for the rise at a current, in volts and amperes as plain numbers
/// @throws not_finite_error, out_of_range_error; as spare does
template <class Spare>
[[nodiscard]] std::optional<duration> rise_time(inductance l, current from, current to, const Spare& spare)
{
    require_not_negative(l, "inductance");
    require_finite(from, "current before");
    require_finite(to, "current to reach");
    if (to < from) throw out_of_range_error("current to reach", si_text(to), "at least " + si_text(from));
    constexpr int panels = 64;
    const double step = (to - from).value() / panels;
    double seconds = 0.0, before = require_finite(in_si<voltage>(spare(from.value())), "volts to spare").value();
    for (int k = 1; k <= panels; ++k) {
        if (!(before > 0.0)) return std::nullopt;
        const double now = require_finite(in_si<voltage>(spare(from.value() + k * step)), "volts to spare").value();
        if (!(now > 0.0)) return std::nullopt;
        // the mean of 1/u over a straight u is the logarithm's: of one and the same ratio, however small it is
        const double ratio = (now - before) / before;
        const double mean = (ratio == 0.0 ? 1.0 : std::log1p(ratio) / ratio) / before;
        seconds += l.value() * step * mean;
        before = now;
    }
    return require_finite(in_si<duration>(seconds), "time of the rise");
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
    return require_finite(voltage(supply - l * rate), "voltage left while the current rises");
}

}  // namespace weldloop
