#pragma once
/// @file
/// The output line of a power source: which voltage it has at its terminals at which current.

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <numbers>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include <weldloop/core/error.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/solve/root.hpp>

namespace weldloop {

/// @name Sources of output lines
/// @{
/// Straight lines between no load and short circuit, and through two arcs.
inline constexpr source straight_source_line{
    "Ghosh and Mallik, Manufacturing Science; worked problems of a national engineering entrance examination",
    "2nd ed. 1989; 2010s", "problem 5.1; straight line from no-load voltage to short-circuit current",
    source_kind::handbook};
/// A winding with leakage: an ohmic arc and the reactance share the no-load voltage at right angles.
inline constexpr source reactive_source_line{"phasor diagram of a transformer with leakage reactance on an ohmic load",
                                             {},
                                             "U^2 + (X I)^2 = U0^2",
                                             source_kind::derived};
/// Between points that somebody measured.
inline constexpr source monotone_interpolation{"cubic through measured points that never rises between them",
                                               {},
                                               "slopes by the weighted harmonic mean of the neighbouring secants",
                                               source_kind::derived};
/// @}

/// A current and the voltage at it.
struct source_point {
    weldloop::current current;  ///< [A] 0 or above
    weldloop::voltage voltage;  ///< [V] 0 or above
};

/// A source that keeps a voltage, but for a fall with the current.
struct constant_voltage_output {
    voltage setting;                    ///< [V] at no current, above 0
    resistance fall = {};               ///< [V/A] 0 or above: what each ampere takes off
    std::optional<current> limit = {};  ///< [A] above 0: the current rises no further; empty: no limit is known
};

/// A source that keeps a current, but for a rise as its voltage falls.
struct constant_current_output {
    current setting;                      ///< [A] above 0
    voltage at;                           ///< [V] the voltage at which it gives the setting, 0 or above
    voltage highest_output;               ///< [V] up to which it holds its current, above `at`
    conductance rise = {};                ///< [A/V] 0 or above: what each volt less adds
    std::optional<voltage> no_load = {};  ///< [V] without current, at least `highest_output`; empty: the same
};

/// The static output line of a source, from no load to short circuit: the current never falls and the voltage never
/// rises along it. Upright stretches (constant current) and level ones (constant voltage) are both allowed, so a point
/// of the line is named by its place along it, a number from 0 to length().
///
/// What a source does within milliseconds (its choke, a boost at short circuit) is not in it.
class source_line {
public:
    /// A straight line from no load to short circuit, U = U0 (1 - I/Ik).
    /// @param no_load U0 [V], above 0 @param short_circuit Ik [A], above 0
    /// @throws not_finite_error, out_of_range_error @see straight_source_line
    [[nodiscard]] static source_line straight(voltage no_load, current short_circuit)
    {
        require_positive(no_load, "no-load voltage");
        require_positive(short_circuit, "short-circuit current");
        return source_line(shape::straight, {{current{}, no_load}, {short_circuit, voltage{}}});
    }
    /// A straight line from no load through a point to short circuit: a generator with its own no-load voltage.
    /// @param no_load U0 [V], above the point's @param through a point with a current above 0
    /// @throws not_finite_error, out_of_range_error
    [[nodiscard]] static source_line straight_through(voltage no_load, const source_point& through)
    {
        require_positive(no_load, "no-load voltage");
        require_positive(through.current, "current of the point");
        require_not_negative(through.voltage, "voltage of the point");
        if (!(through.voltage < no_load))
            throw out_of_range_error("voltage of the point", si_text(through.voltage),
                                     "below the no-load voltage, " + si_text(no_load));
        return straight(no_load, current(through.current * (no_load / (no_load - through.voltage)).value()));
    }
    /// The straight line through two arcs on one source.
    /// @param one with the smaller current @param other with the larger current and the lower voltage
    /// @throws not_finite_error, out_of_range_error @see straight_source_line
    [[nodiscard]] static source_line straight_through(const source_point& one, const source_point& other)
    {
        for (const source_point* p : {&one, &other}) {
            require_not_negative(p->current, "current of an arc");
            require_not_negative(p->voltage, "voltage of an arc");
        }
        if (!(one.current < other.current && one.voltage > other.voltage))
            throw out_of_range_error("second arc", si_text(other.current) + " at " + si_text(other.voltage),
                                     "more current at a lower voltage than the first");
        const resistance fall = (one.voltage - other.voltage) / (other.current - one.current);
        const voltage no_load = one.voltage + fall * one.current;
        return straight(no_load, current(no_load / fall));
    }
    /// A quarter of an ellipse from no load to short circuit, (U/U0)^2 + (I/Ik)^2 = 1: a transformer whose leakage
    /// reactance bounds the current, its load ohmic; effective values.
    /// @param no_load U0 [V], above 0 @param short_circuit Ik [A], above 0
    /// @throws not_finite_error, out_of_range_error @see reactive_source_line
    [[nodiscard]] static source_line reactive(voltage no_load, current short_circuit)
    {
        require_positive(no_load, "no-load voltage");
        require_positive(short_circuit, "short-circuit current");
        return source_line(shape::ellipse, {{current{}, no_load}, {short_circuit, voltage{}}});
    }
    /// U = Us - k I up to the limit, and at the limit every lower voltage.
    /// @param c setting Us, fall k, limit @throws not_finite_error, out_of_range_error
    [[nodiscard]] static source_line constant_voltage(const constant_voltage_output& c)
    {
        require_positive(c.setting, "supply setting");
        require_not_negative(c.fall, "fall of the output voltage");
        if (c.limit) require_positive(*c.limit, "current limit");
        const bool falls = c.fall.value() > 0.0;
        const current by_fall = falls ? current(c.setting / c.fall) : unlimited;
        const current end = std::min({by_fall, c.limit.value_or(unlimited), unlimited});
        std::vector<source_point> points{{current{}, c.setting},
                                         {end, std::max(voltage{}, voltage(c.setting - c.fall * end))}};
        if (points.back().voltage.value() > 0.0) points.push_back({end, voltage{}});
        return source_line(shape::straight, std::move(points));
    }
    /// I = Is + g (Ua - U) from short circuit to the highest output, and from there straight to no load.
    /// @param c setting Is at Ua, rise g, highest output, no load
    /// @throws not_finite_error, out_of_range_error, also where no current would be left at the highest output
    [[nodiscard]] static source_line constant_current(const constant_current_output& c)
    {
        require_positive(c.setting, "supply current");
        require_not_negative(c.at, "voltage of the setting");
        require_positive(c.highest_output, "supply highest output");
        require_not_negative(c.rise, "rise of the output current");
        if (c.highest_output < c.at)
            throw out_of_range_error("supply highest output", si_text(c.highest_output),
                                     "at least the voltage of the setting, " + si_text(c.at));
        const voltage no_load = c.no_load.value_or(c.highest_output);
        require_finite(no_load, "no-load voltage");
        if (no_load < c.highest_output)
            throw out_of_range_error("no-load voltage", si_text(no_load),
                                     "at least the highest output, " + si_text(c.highest_output));
        const current at_highest = c.setting - c.rise * (c.highest_output - c.at);
        if (!(at_highest.value() > 0.0))
            throw out_of_range_error("rise of the output current", si_text(c.rise),
                                     "so small that current is left at the highest output");
        const current short_circuit = c.setting + c.rise * c.at;
        return source_line(shape::straight, {{current{}, no_load},
                                             {at_highest, c.highest_output},
                                             {require_finite(short_circuit, "short-circuit current"), voltage{}}});
    }
    /// Through measured points, without a rise between them. Nothing is said beyond the first and the last.
    /// @param points two or more, each with more current and no more voltage than the one before
    /// @throws not_finite_error, out_of_range_error @see monotone_interpolation
    [[nodiscard]] static source_line measured(std::vector<source_point> points)
    {
        if (points.size() < 2)
            throw out_of_range_error("points of the output line", std::to_string(points.size()), "two or more");
        for (std::size_t i = 0; i < points.size(); ++i) {
            require_not_negative(points[i].current, "current of a measured point");
            require_not_negative(points[i].voltage, "voltage of a measured point");
            if (i == 0) continue;
            if (!(points[i].current > points[i - 1].current))
                throw out_of_range_error("current of a measured point", si_text(points[i].current),
                                         "above that of the point before, " + si_text(points[i - 1].current));
            if (points[i].voltage > points[i - 1].voltage)
                throw out_of_range_error("voltage of a measured point", si_text(points[i].voltage),
                                         "at most that of the point before, " + si_text(points[i - 1].voltage));
        }
        return source_line(shape::cubic, std::move(points));
    }

    /// The end of at(): the number of pieces.
    [[nodiscard]] double length() const { return static_cast<double>(points_.size() - 1); }

    /// A point of the line. @param place along it [1], at least 0 (least current), at most length()
    /// @throws not_finite_error, out_of_range_error
    [[nodiscard]] source_point at(double place) const
    {
        require_within(place, 0.0, length(), "place on the output line");
        if (shape_ == shape::ellipse) {
            const double angle = 0.5 * std::numbers::pi * place;
            const source_point &no_load = points_.front(), &closed = points_.back();
            return {closed.current * std::sin(angle),
                    place < length() ? voltage(no_load.voltage * std::cos(angle)) : voltage{}};
        }
        const std::size_t piece = std::min(static_cast<std::size_t>(place), points_.size() - 2);
        const double s = place - static_cast<double>(piece);
        const source_point &from = points_[piece], &to = points_[piece + 1];
        const current amps = (1.0 - s) * from.current + s * to.current;
        if (shape_ == shape::straight) return {amps, (1.0 - s) * from.voltage + s * to.voltage};
        const double width = (to.current - from.current).value(), r = 1.0 - s;
        const double volts = r * r * (1.0 + 2.0 * s) * from.voltage.value() +
                             s * s * (1.0 + 2.0 * r) * to.voltage.value() +
                             s * r * width * (r * slopes_[piece] - s * slopes_[piece + 1]);
        return {amps, in_si<voltage>(std::clamp(volts, to.voltage.value(), from.voltage.value()))};
    }

    /// Voltage without current [V]; empty where the first measured point has current.
    [[nodiscard]] std::optional<voltage> no_load() const
    {
        return points_.front().current.value() == 0.0 ? std::optional(points_.front().voltage) : std::nullopt;
    }
    /// Current without voltage [A]; empty where the last measured point has voltage, and where no limit is known.
    [[nodiscard]] std::optional<current> short_circuit() const
    {
        const source_point& last = points_.back();
        return last.voltage.value() == 0.0 && last.current < unlimited ? std::optional(last.current) : std::nullopt;
    }
    /// Least and largest current of the line [A]; the largest is `unlimited` where no limit is known.
    [[nodiscard]] std::pair<current, current> currents() const
    {
        return {points_.front().current, points_.back().current};
    }

    /// The point at a current; on an upright stretch its upper end. @param amps [A] within currents()
    /// @throws not_finite_error, out_of_range_error
    [[nodiscard]] source_point at_current(current amps) const
    {
        require_within(amps, points_.front().current, points_.back().current, "current on the output line");
        for (std::size_t i = 0; i + 1 < points_.size(); ++i) {
            if (amps > points_[i + 1].current) continue;
            const double begin = static_cast<double>(i);
            if (amps <= points_[i].current) return at(begin);
            if (shape_ == shape::ellipse)
                return at(std::asin(std::min(1.0, (amps / points_.back().current).value())) / (0.5 * std::numbers::pi));
            const current width = points_[i + 1].current - points_[i].current;
            return at(std::min(begin + 1.0, begin + ((amps - points_[i].current) / width).value()));
        }
        return points_.back();
    }

    /// The point at which the source gives most power, and the power there; on a straight line half of the no-load
    /// voltage. 1e-8 of the power.
    [[nodiscard]] source_point at_most_power() const
    {
        constexpr int parts = 64, rounds = 60;
        const auto watts = [this](double place) {
            const source_point p = at(place);
            return p.current.value() * p.voltage.value();
        };
        double best = 0.0;
        for (int k = 0; k <= parts; ++k)
            if (const double place = length() * k / parts; watts(place) > watts(best)) best = place;
        double low = std::max(0.0, best - length() / parts), high = std::min(length(), best + length() / parts);
        for (int k = 0; k < rounds; ++k) {
            const double left = low + (high - low) / 3.0, right = high - (high - low) / 3.0;
            (watts(left) < watts(right) ? low : high) = watts(left) < watts(right) ? left : right;
        }
        return at(0.5 * (low + high));
    }

    /// Where the source meets a load: of several points the one with the most current, which an arc struck by touch
    /// comes to, and which is driven back when disturbed. Empty where the source has less voltage than the load asks
    /// for all along its line, or more.
    /// @param load volts of everything outside the terminals at amperes, plain numbers; continuous
    /// @throws as load does
    template <class Load>
    [[nodiscard]] std::optional<source_point> meeting(const Load& load) const
    {
        constexpr int parts = 32;  // of each piece
        const auto spare = [&](double place) {
            const source_point p = at(place);
            return p.voltage.value() - load(p.current.value());
        };
        const int all = parts * static_cast<int>(points_.size() - 1);
        double upper = length(), above = spare(upper);
        if (above == 0.0) return at(upper);
        for (int k = all - 1; k >= 0; --k) {
            const double lower = static_cast<double>(k) / parts, below = spare(lower);
            if (below >= 0.0 && above < 0.0)
                return at(below == 0.0 ? lower : detail::root_between(spare, lower, upper, "operating point"));
            upper = lower;
            above = below;
        }
        return std::nullopt;
    }

    /// Current that stands for none known: a source without a limit ends there [A].
    static constexpr current unlimited = in_si<current>(1e5);

private:
    enum class shape { straight, ellipse, cubic };
    source_line(shape s, std::vector<source_point> points) : shape_(s), points_(std::move(points))
    {
        if (shape_ == shape::cubic) set_slopes();
    }
    // of each point [V/A]: the harmonic mean of the secants beside it, weighted with the wider neighbour; 0 where one
    // is level, so that no piece rises; at the ends the secant itself
    void set_slopes()
    {
        const std::size_t n = points_.size();
        std::vector<double> width, secant;
        for (std::size_t i = 0; i + 1 < n; ++i) {
            width.push_back((points_[i + 1].current - points_[i].current).value());
            secant.push_back((points_[i + 1].voltage - points_[i].voltage).value() / width.back());
        }
        slopes_.assign(n, 0.0);
        slopes_.front() = secant.front();
        slopes_.back() = secant.back();
        for (std::size_t i = 1; i + 1 < n; ++i) {
            if (!(secant[i - 1] < 0.0 && secant[i] < 0.0)) continue;
            const double before = 2.0 * width[i] + width[i - 1], behind = width[i] + 2.0 * width[i - 1];
            slopes_[i] = (before + behind) / (before / secant[i - 1] + behind / secant[i]);
        }
    }

    shape shape_;
    std::vector<source_point> points_;
    std::vector<double> slopes_ = {};
};

}  // namespace weldloop
