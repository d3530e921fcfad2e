#pragma once
/// @file
/// The voltage of an arc by its length and its current.

#include <optional>

#include <weldloop/core/band.hpp>
#include <weldloop/core/error.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/law/load_line.hpp>

namespace weldloop {

/// Volts per length of arc [V/m].
using arc_gradient = decltype(voltage{} / length{});

/// @name Sources of arc lines
/// @{
/// Gas metal arc, argon mixtures on steel.
inline constexpr source wire_arc_equation{
    "models of gas metal arc control", {}, "U = 15.7 V + 0.022 V/A I + 0.636 V/mm L", source_kind::memory};
/// Gradients in the column of the other arcs.
inline constexpr source arc_gradients_recalled{
    "arc-physics literature: tungsten arc in argon 0.6 to 1.0 V/mm, covered rutile electrode 1.0 to 2.5 V/mm, gas "
    "metal arc 0.6 to 1.2 V/mm",
    {},
    {},
    source_kind::memory};
/// What nothing was found for.
inline constexpr source arc_line_judgement{
    "arc lines: the conventional load voltage holds at the usual length (covered electrode 3 mm, about its core; "
    "tungsten arc 3 mm; cored wire 5 mm; submerged arc 4 mm); cored wire has the gradient of gas metal arcs, submerged "
    "arcs 0.6 to 1.4 V/mm; a gas metal arc is usually 5 mm long",
    "2026",
    {},
    source_kind::judgement};
/// Where the usual lines end.
inline constexpr source arc_line_range_judgement{
    "usual arc lines stand for usual arcs: gas metal arc 40 to 450 A, cored wire 100 to 400 A, covered electrode and "
    "tungsten arc up to the 600 A where the conventional load line levels; a submerged arc runs at 26 to 36 V, which "
    "lies below the conventional load line at every current",
    "2026",
    {},
    source_kind::judgement};
/// Lines from two readings.
inline constexpr source arc_line_by_readings{"worked problems of a national engineering entrance examination", "2010s",
                                             "arc line from two readings", source_kind::handbook};
/// @}

/// A straight arc line, U = a + b L + c I. Good for a working arc: below some tens of amperes arcs need more volts the
/// less current there is, which it does not follow.
struct arc_line {
    voltage at_no_length = {};    ///< a [V], above 0: the falls at both electrodes
    arc_gradient by_length = {};  ///< b [V/m], 0 or above
    resistance by_current = {};   ///< c [V/A], 0 or above: the slope of the arc
};

namespace detail {
inline void require_arc_line(const arc_line& line)
{
    require_positive(line.at_no_length, "arc voltage at no length");
    if (!(line.by_length.value() >= 0.0 && line.by_length.value() <= greatest_number))
        throw out_of_range_error("arc gradient", number_text(line.by_length.value()) + " V/m", "zero or above");
    require_not_negative(line.by_current, "slope of the arc");
}
}  // namespace detail

/// Voltage of an arc [V], U = a + b L + c I. @param line a, b, c @param l L [m], 0 or above @param i I [A], 0 or above
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline voltage arc_voltage_at(const arc_line& line, length l, current i)
{
    detail::require_arc_line(line);
    require_not_negative(l, "arc length");
    require_not_negative(i, "arc current");
    return require_finite(voltage(line.at_no_length + line.by_length * l + line.by_current * i), "arc voltage");
}

/// Length of an arc that has a voltage at a current [m]: below 0 where the voltage does not hold an arc of any length.
/// @param line b above 0 @param v [V], 0 or above @param i [A], 0 or above
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline length arc_length_at(const arc_line& line, voltage v, current i)
{
    detail::require_arc_line(line);
    require_not_negative(v, "arc voltage");
    require_not_negative(i, "arc current");
    if (!(line.by_length.value() > 0.0)) throw out_of_range_error("arc gradient", "0 V/m", "above zero");
    return require_finite(length((v - line.at_no_length - line.by_current * i) / line.by_length), "arc length");
}

/// An arc that was read.
struct arc_reading {
    weldloop::length length;    ///< [m] 0 or above
    weldloop::voltage voltage;  ///< [V] above 0
};

/// The arc line without a slope by current through two readings.
/// @param one shorter @param other longer, at a voltage no lower
/// @throws not_finite_error, out_of_range_error @see arc_line_by_readings
[[nodiscard]] inline arc_line arc_line_through(const arc_reading& one, const arc_reading& other)
{
    for (const arc_reading* r : {&one, &other}) {
        require_not_negative(r->length, "arc length");
        require_positive(r->voltage, "arc voltage");
    }
    if (!(other.length > one.length && other.voltage >= one.voltage))
        throw out_of_range_error("second reading", si_text(other.voltage) + " at " + si_text(other.length),
                                 "a longer arc at no less volts");
    const arc_gradient b = (other.voltage - one.voltage) / (other.length - one.length);
    return {require_positive(voltage(one.voltage - b * one.length), "arc voltage at no length"), b, {}};
}

/// Usual length of the arc [m]; see arc_line_judgement. @param p process
[[nodiscard]] constexpr length usual_arc_length(process p)
{
    switch (p) {
    case process::smaw:
    case process::gtaw: return in_si<length>(0.003);
    case process::saw: return in_si<length>(0.004);
    case process::gmaw:
    case process::fcaw: break;
    }
    return in_si<length>(0.005);
}

/// Volts per length of the arc [V/m], as a band: tungsten arc in argon 0.6, 0.8, 1.0 V/mm; covered electrode 1.0, 1.75,
/// 2.5; wire 0.6, 0.636, 1.2; submerged arc 0.6, 1.0, 1.4. All recalled or judged: they say the order of a change of
/// length, not its digits. @param p process @see arc_gradients_recalled, arc_line_judgement
[[nodiscard]] constexpr band<arc_gradient> usual_arc_gradient(process p)
{
    const auto of = [](double low, double typical, double high) {
        constexpr double mm = 1e-3;
        return band<arc_gradient>{in_si<arc_gradient>(low / mm), in_si<arc_gradient>(typical / mm),
                                  in_si<arc_gradient>(high / mm)};
    };
    switch (p) {
    case process::smaw: return of(1.0, 1.75, 2.5);
    case process::gtaw: return of(0.6, 0.8, 1.0);
    case process::saw: return of(0.6, 1.0, 1.4);
    case process::gmaw:
    case process::fcaw: break;
    }
    return of(0.6, 0.636, 1.2);
}

/// The arc line of a process where nothing better is known: of gas metal arcs the recalled equation; of the others the
/// conventional load voltage at the usual length, with usual_arc_gradient(). The load voltage is that of a type test,
/// so tungsten arcs have in truth some volts less. @param p process @see usual_arc_line_basis
[[nodiscard]] constexpr arc_line usual_arc_line(process p)
{
    const arc_gradient b = usual_arc_gradient(p).typical;
    if (p == process::gmaw) return {in_si<voltage>(15.7), b, in_si<resistance>(0.022)};
    const double at_no_current = p == process::fcaw ? 14.0 : p == process::gtaw ? 10.0 : 20.0;  // V, load line
    const double slope = p == process::fcaw ? 0.05 : 0.04;                                      // V/A, load line
    return {in_si<voltage>(at_no_current) - b * usual_arc_length(p), b, in_si<resistance>(slope)};
}

/// Currents between which a line stands for an arc [A].
struct arc_line_range {
    current least = {};  ///< [A]
    current most = {};   ///< [A]
};

/// Between which currents usual_arc_line() may be held against an arc; none of a submerged arc, whose usual line says
/// nothing of the arc's length at any current. @param p process @see arc_line_range_judgement
[[nodiscard]] constexpr std::optional<arc_line_range> usual_arc_line_range(process p)
{
    const auto between = [](double least, double most) {
        return arc_line_range{in_si<current>(least), in_si<current>(most)};
    };
    switch (p) {
    case process::gmaw: return between(40.0, 450.0);
    case process::fcaw: return between(100.0, 400.0);
    case process::smaw:
    case process::gtaw: return between(0.0, 600.0);
    case process::saw: break;
    }
    return std::nullopt;
}

/// The sources of usual_arc_line(). @param p process
[[nodiscard]] inline basis usual_arc_line_basis(process p)
{
    basis out;
    if (p == process::gmaw) return out.add(wire_arc_equation).add(arc_line_judgement).add(arc_line_range_judgement);
    out.add(load_line_source(p)).add(arc_line_judgement).add(arc_line_range_judgement);
    if (p == process::smaw || p == process::gtaw) out.add(arc_gradients_recalled);
    return out;
}

}  // namespace weldloop
