#pragma once
/// @file
/// What every form of the report says in the same words: the job, bands, grip, remedies, sources.

#include <array>
#include <charconv>
#include <cmath>
#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include <weldloop/circuit/station.hpp>
#include <weldloop/core/band.hpp>
#include <weldloop/core/error.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/core/text.hpp>
#include <weldloop/rating/assessment.hpp>
#include <weldloop/rating/grip.hpp>

namespace weldloop {

/// What a report is and is not; printed in each of its forms.
inline constexpr std::string_view report_standing =
    "Calculated for the stated conditions from the sources listed in this report. It replaces neither a measurement at "
    "the "
    "station nor local codes and licensed practice. A verdict names the limit a part was held against; it is no "
    "release for work.";

/// How to read a value with a band; printed beside the tables.
inline constexpr std::string_view band_explained =
    "Connections of one kind scatter: 0.12 (0.05..0.40) means typically 0.12, one in twenty below 0.05, one in twenty "
    "above 0.40.";

namespace detail {

/// A number with fixed decimals. @throws not_finite_error: a report holds no NaN
[[nodiscard]] inline std::string fixed_text(double value, int decimals)
{
    if (!std::isfinite(value)) throw not_finite_error("reported value", number_text(value));
    std::array<char, 400> buffer{};
    const auto end =
        std::to_chars(buffer.data(), buffer.data() + buffer.size(), value, std::chars_format::fixed, decimals).ptr;
    std::string out(buffer.data(), end);
    if (out.find_first_not_of("-0.") == std::string::npos && out.front() == '-') out.erase(0, 1);
    return out;
}

template <class Q>
[[nodiscard]] double si_number(const Q& q)
{
    return q.value();
}
[[nodiscard]] inline double si_number(temperature t)
{
    return t.in_celsius();
}

/// "0.120 (0.050..0.400)"; where the scatter is below a hundredth, "0.120" alone.
template <class Q>
[[nodiscard]] std::string band_text(const band<Q>& b, int decimals)
{
    const std::string low = fixed_text(si_number(b.low), decimals),
                      typical = fixed_text(si_number(b.typical), decimals),
                      high = fixed_text(si_number(b.high), decimals);
    const bool narrow = si_number(b.high) - si_number(b.low) < 0.01 * std::abs(si_number(b.typical));
    return low == high || narrow ? typical : typical + " (" + low + ".." + high + ")";
}

/// The number cut, not rounded up, to two digits: a time to inspect by is never given later than it is.
[[nodiscard]] inline double cut_to_two_digits(double value)
{
    if (!(value > 0.0)) return 0.0;
    const double unit = std::pow(10.0, std::floor(std::log10(value)) - 1.0);
    constexpr double slip = 1e-9;  // 1200 h must not become 1100 h
    return std::floor(value / unit + slip) * unit;
}

/// Decimals that show three digits of a positive number, none beyond a thousandth.
[[nodiscard]] inline int decimals_for(double value)
{
    const double size = std::abs(value);
    return size >= 99.5 ? 0 : size >= 9.95 ? 1 : size >= 0.995 ? 2 : 3;
}

}  // namespace detail

/// The number of a part in tables and drawings: its place in the path, from 1. "cable 2" is number 2.
[[nodiscard]] inline std::size_t number_of(const part_result& part)
{
    return part.place + 1;
}

/// "gmaw, 240 A, 60 % of 10 min"
[[nodiscard]] inline std::string job_line(const job& j)
{
    return std::string(to_text(j.process)) + ", " + to_text(j.current, "A") + ", " +
           (j.duty.is_continuous() ? std::string("without a break") : to_text(j.duty));
}

/// "air 32 degC, still, leads alone"
[[nodiscard]] inline std::string surroundings_line(const surroundings& s)
{
    std::string out = "air " + to_text(s.air, "degC");
    out.append(s.wind.value() > 0.0 ? ", wind " + to_text(s.wind, "m/s") : std::string(", no draught"));
    out.append(", leads ").append(to_text(s.lay));
    if (s.lay == lay::coiled && s.coil_turns > 0)
        out.append(" in ").append(std::to_string(s.coil_turns)).append(" turns");
    if (s.altitude.value() > 0.0) out.append(", ").append(to_text(s.altitude, "m")).append(" above sea level");
    if (s.sun.value() > 0.0) out.append(", sunlight ").append(to_text(s.sun, "W/m2"));
    return out;
}

/// "constant voltage, set to 26 V"; for a station without a described supply, that it has none.
[[nodiscard]] inline std::string supply_line(const station& s)
{
    if (!s.supply) return "not described";
    if (s.supply->kind == supply_kind::constant_voltage)
        return "constant voltage, set to " + to_text(s.supply->setting, "V");
    return "constant current, up to " + to_text(s.supply->highest_output, "V") + " at this current";
}

/// The word that stands for a number of a loop that has none.
[[nodiscard]] constexpr std::string_view no_number_word(loop_outcome outcome)
{
    return outcome == loop_outcome::open_circuit ? "open" : "no steady state";
}

/// "1.94 V (1.20..3.10 V)" of a voltage with its band; words where the loop has no state.
[[nodiscard]] inline std::string volts_line(const band<voltage>& v, loop_outcome outcome)
{
    if (outcome != loop_outcome::solved) return std::string(no_number_word(outcome));
    return detail::band_text(v, detail::decimals_for(v.typical.value())) + " V";
}

/// The forecast of a clamp's grip in sentences; a time never without its band.
[[nodiscard]] inline std::vector<std::string> grip_lines(const grip_forecast& g)
{
    std::vector<std::string> out;
    if (g.points.empty()) return out;
    const auto hours = [](duration d) { return number_text(detail::cut_to_two_digits(number_in(d, "h"))) + " h"; };
    // an end of the band beyond the forecast is given as its end
    const auto after = [&](duration d) {
        return d >= usual_forecast ? "not within " + hours(usual_forecast) : "after " + hours(d);
    };
    out.push_back("Grip left after " + hours(g.points.back().at) + " of shift: typically " + to_text(g.grip_left, 2) +
                  ", in a poor case " + to_text(g.grip_left_low, 2) + ".");
    if (g.quarter_lost) {
        out.push_back("A quarter of the grip is lost: in a poor case " + after(g.quarter_lost->low) + ", typically " +
                      after(g.quarter_lost->typical) + ", in a kind case " + after(g.quarter_lost->high) + ".");
        if (g.inspect_by)
            out.push_back("Inspect within " + hours(*g.inspect_by) + " of shift, the early end of that band.");
    } else
        out.push_back("A quarter of the grip is not lost within this forecast, not even in a poor case.");
    if (g.runs_away) out.push_back("Does not settle: heat and loss of grip feed each other.");
    if (g.spring_destroyed) out.push_back("The spring gets hotter than the tempering range of its wire: destroyed.");
    return out;
}

/// What a remedy regains: "gains 0.42 V, cools the part by 35 K".
[[nodiscard]] inline std::string gain_line(const remedy& r)
{
    std::string out = r.restores_circuit ? "closes the circuit" : "";
    const auto add = [&out](const std::string& text) { out.append(out.empty() ? "" : ", ").append(text); };
    if (r.volts_regained.value() >= 0.0005)
        add("gains " + detail::fixed_text(r.volts_regained.value(), detail::decimals_for(r.volts_regained.value())) +
            " V");
    if (r.cooled_by.value() >= 0.5) add("cools the part by " + detail::fixed_text(r.cooled_by.value(), 0) + " K");
    return out.empty() ? "gains nothing that counts at this current" : out;
}

/// What is to be done, and to which part where the words do not say it.
[[nodiscard]] inline std::string what_line(const remedy& r)
{
    return r.part.empty() || r.what.find(r.part) != std::string::npos ? r.what : r.part + ": " + r.what;
}

/// Whether a number from this source was read somewhere. Judgement, memory and practice without a source are not: the
/// user is told which numbers rest on them.
[[nodiscard]] constexpr bool was_read(source_kind kind)
{
    return kind != source_kind::judgement && kind != source_kind::memory && kind != source_kind::common_practice;
}

/// One word or two for a verdict, for drawings.
[[nodiscard]] constexpr std::string_view short_text(verdict v)
{
    switch (v) {
    case verdict::within_limit: return "within";
    case verdict::not_judged: return "not judged";
    case verdict::close_to_limit: return "close";
    case verdict::may_exceed: return "may exceed";
    case verdict::over_limit: return "over limit";
    case verdict::spots_melting: return "melting";
    case verdict::open_circuit: return "open";
    }
    return "not judged";
}

}  // namespace weldloop
