#pragma once
/// @file
/// Sentences on what a changing current meets.

#include <cmath>
#include <string>
#include <vector>

#include <weldloop/core/band.hpp>
#include <weldloop/core/fraction.hpp>
#include <weldloop/core/number_text.hpp>
#include <weldloop/core/text.hpp>
#include <weldloop/rating/assessment.hpp>

namespace weldloop {

namespace detail {

/// A number above 0 in two digits, in hundreds too: "140" of 144.
[[nodiscard]] inline std::string rough_number(double value)
{
    constexpr int digits = 2;
    if (!(value > 0.0)) return number_text(value, digits);
    const double unit = std::pow(10.0, std::floor(std::log10(value)) - 1.0);
    return number_text(std::round(value / unit) * unit, digits);
}

/// "12 uH", or over what steel may make of it "18 (12 to 24) uH", in the two digits that the lie of the leads bears,
/// which is stated, not surveyed. @param factor from the SI unit to the printed one
template <class Q>
[[nodiscard]] std::string steel_band_text(const band<Q>& b, double factor, const std::string& unit)
{
    const auto number = [&](const Q& q) { return rough_number(q.value() * factor); };
    const std::string typical = number(b.typical);
    if (number(b.low) == number(b.high)) return typical + " " + unit;
    return typical + " (" + number(b.low) + " to " + number(b.high) + ") " + unit;
}

[[nodiscard]] inline std::string percent_text(double share)
{
    constexpr int digits = 2;
    return number_text(100.0 * share, digits) + " %";
}

[[nodiscard]] inline std::string impedance_line(const course_effects& c)
{
    std::string out = "at " + to_text(c.frequency, "Hz") + " the loop typically has " +
                      to_text(c.resistance, "mohm", 2) + " of resistance (the skin effect adds up to " +
                      percent_text(c.skin_ratio - 1.0) + " to a lead's) and the leads as they lie " +
                      steel_band_text(c.inductance, 1e6, "uH") + ", a reactance of " +
                      steel_band_text(c.reactance, 1e3, "mohm") + "; " + to_text(c.fundamental, "A", 2) +
                      " of the first harmonic take " + steel_band_text(c.inductive, 1.0, "V") + " along it";
    if (c.share) out += ", " + percent_text(c.share->typical) + " of the supply's voltage without load";
    if (c.added) out += ", and ask for " + steel_band_text(*c.added, 1.0, "V") + " more at the supply";
    return out;
}

[[nodiscard]] inline std::string level_line(const level_point& l)
{
    std::string out = "level of " + to_text(l.asked, "A") + ", " + to_text(l.time, "ms") + ": ";
    if (!(l.asked.value() > 0.0)) return out + "no current, so no arc is held";
    if (l.outcome == operating_outcome::beyond_line) return out + "the supply's output line does not go there";
    if (l.outcome != operating_outcome::found) return out + "by its output line the supply typically holds no arc";
    out += "typically " + to_text(l.current, "A") + " at " + to_text(l.terminals, "V") + " across the terminals, " +
           to_text(l.loop_drop, "V") + " for the loop and " + to_text(l.arc_voltage, "V") + " for the arc";
    if (l.arc_voltage < l.arc_wants && !l.is_held) out += ", which asks for " + to_text(l.arc_wants, "V");
    return out;
}

[[nodiscard]] inline std::string edge_line(const course_edge& e)
{
    const std::string way = "from " + to_text(e.from, "A") + " to " + to_text(e.to, "A");
    switch (e.end) {
    case edge_end::not_known: return way + ": the supply's output line is not known all the way";
    case edge_end::too_few_volts: return way + ": typically not reached, the supply has too few volts";
    case edge_end::too_late:
    case edge_end::reached: break;
    }
    return way + " the volts at hand typically need " + steel_band_text(e.takes, 1e3, "ms") + ", with " +
           to_text(e.time, "ms") + " there: " +
           (e.end == edge_end::too_late ? "over before it is reached"
                                        : percent_text(e.lost.typical) + " of that time is lost");
}

}  // namespace detail

/// What alternating or pulsed current meets in a loop, a sentence for each thing; none for direct current.
/// @param found the assessment
[[nodiscard]] inline std::vector<std::string> course_lines(const assessment& found)
{
    std::vector<std::string> out;
    if (!found.course) return out;
    const course_effects& c = *found.course;
    out.push_back(detail::impedance_line(c));
    constexpr double even = 1e-6;  // of the effective value
    if (c.alternates && std::fabs(c.mean.value()) > even * c.fundamental.value())
        out.push_back("the halves are unequal: a mean of " + to_text(c.mean, "A") +
                      " flows one way; leads and joints are heated by the effective value all the same, a meter for "
                      "direct current reads the mean, and steel beside the leads is typically magnetized by it");
    for (const level_point& l : c.levels) out.push_back(detail::level_line(l));
    if (c.edge) out.push_back(detail::edge_line(*c.edge));
    return out;
}

}  // namespace weldloop
