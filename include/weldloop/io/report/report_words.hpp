#pragma once
/// @file
/// What every form of the report says in the same words: the job, bands, limits, grip, remedies, sources.

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include <weldloop/circuit/station.hpp>
#include <weldloop/circuit/station_parts.hpp>
#include <weldloop/core/band.hpp>
#include <weldloop/core/error.hpp>
#include <weldloop/core/fraction.hpp>
#include <weldloop/core/number_chars.hpp>
#include <weldloop/core/number_text.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/core/text.hpp>
#include <weldloop/io/report/shown_units.hpp>
#include <weldloop/law/lead_bundle.hpp>
#include <weldloop/life/grip_forecast.hpp>
#include <weldloop/life/grip_march.hpp>
#include <weldloop/rating/assessment.hpp>
#include <weldloop/rating/remedy_worth.hpp>
#include <weldloop/rating/verdict.hpp>
#include <weldloop/rating/weld_statement.hpp>

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
    std::string out = number_chars(value, notation::fixed, decimals);
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
template <class Q, class Number>
[[nodiscard]] std::string band_text(const band<Q>& b, int decimals, const Number& number)
{
    const std::string low = fixed_text(number(b.low), decimals), typical = fixed_text(number(b.typical), decimals),
                      high = fixed_text(number(b.high), decimals);
    const bool narrow = si_number(b.high) - si_number(b.low) < 0.01 * std::abs(si_number(b.typical));
    return low == high || narrow ? typical : typical + " (" + low + ".." + high + ")";
}
template <class Q>
[[nodiscard]] std::string band_text(const band<Q>& b, int decimals)
{
    return band_text(b, decimals, [](const Q& q) { return si_number(q); });
}

/// "124 (105..207)" in whole degrees of a report's scale.
[[nodiscard]] inline std::string degrees_text(const band<temperature>& b, const shown_units& u)
{
    return band_text(b, 0, [&u](temperature t) { return u.temperatures.number_of(t); });
}
[[nodiscard]] inline std::string degrees_text(temperature t, const shown_units& u)
{
    return fixed_text(u.temperatures.number_of(t), 0);
}

/// The number cut, not rounded up, to two digits: a time to inspect by is never given later than it is.
[[nodiscard]] inline double cut_to_two_digits(double value)
{
    if (!(value > 0.0)) return 0.0;
    const double unit = std::pow(10.0, std::floor(std::log10(value)) - 1.0);
    constexpr double slip = 1e-9;  // 1200 h must not become 1100 h
    return std::floor(value / unit + slip) * unit;
}

/// "2.265 (1.638..3.527)" of a drop in volts, with one decimal less from ten on, so that columns keep their width.
[[nodiscard]] inline std::string drop_text(const band<voltage>& b)
{
    return band_text(b, b.high.value() < 9.9995 ? 3 : 2);
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

/// The same with a mark where a row tells the part with every stray way open: "2*". @see open_ways_explained
[[nodiscard]] inline std::string number_with_mark(const part_result& part)
{
    return std::to_string(number_of(part)) + (part.with_stray_open ? "*" : "");
}

/// What that mark says; printed where a row has it.
inline constexpr std::string_view open_ways_explained =
    "*: told with every stray way open, which is worse for the part: what strays also cools. What the loop takes, and "
    "what "
    "the arc gets, are told with the ways as they stand, so that marked drops do not add up to it.";

/// Whether a row of an assessment has the mark.
[[nodiscard]] inline bool has_open_mark(const assessment& found)
{
    return std::any_of(found.parts.begin(), found.parts.end(), [](const part_result& p) { return p.with_stray_open; });
}

/// "gmaw, 240 A, 60 % of 10 min"
[[nodiscard]] inline std::string job_line(const job& j)
{
    return std::string(to_text(j.process)) + ", " + to_text(j.current, "A") + ", " +
           (j.duty.is_continuous() ? std::string("without a break") : to_text(j.duty));
}

/// " in 12 turns", " (turns not stated, 30 assumed)"; empty where leads lie otherwise. @param lies how they do
/// @param count of turns or leads, none if not known
[[nodiscard]] inline std::string crowd_words(lay lies, std::optional<int> count)
{
    if (lies != lay::coiled && lies != lay::bundled) return {};
    const bool coil = lies == lay::coiled;
    if (count) return (coil ? " in " : " by ") + std::to_string(*count) + (coil ? " turns" : " under load");
    std::string out = coil ? " (turns not stated, " : " (number not stated, ";
    return out.append(std::to_string(coil ? assumed_coil_turns : assumed_bundled_leads)).append(" assumed)");
}

/// "air 32 degC, still, leads alone"
[[nodiscard]] inline std::string surroundings_line(const surroundings& s, const shown_units& units = {})
{
    std::string out = "air " + detail::shown_text(s.air, units);
    out.append(s.wind.value() > 0.0 ? ", wind " + detail::shown_text(s.wind, units) : std::string(", no draught"));
    out.append(", leads ").append(to_text(s.lay));
    out.append(crowd_words(s.lay, s.lay == lay::bundled ? s.bundled_leads : s.coil_turns));
    if (s.altitude.value() > 0.0)
        out.append(", ").append(detail::shown_text(s.altitude, units)).append(" above sea level");
    if (s.sun.value() > 0.0) out.append(", sunlight ").append(to_text(s.sun, "W/m2"));
    return out;
}

/// "intended: 167 (150..180) A, 73 % of the arc's current"
[[nodiscard]] inline std::string way_words(const assessment& found, std::size_t which)
{
    const way_result& w = found.ways[which];
    std::string out = std::string(to_text(w.kind)) + ": ";
    if (w.spans_arc) return out + "a short circuit across the arc, reckoned as open";
    if (found.outcome != loop_outcome::solved) return out + "no current is known";
    if (!w.conducts) out += "open, ";
    constexpr double whole_amps = 20.0;
    return out + detail::band_text(w.current, w.current.typical.value() < whole_amps ? 1 : 0) + " A, " +
           to_text(w.share, 2) + " of the arc's current";
}

/// "gate clamp: from gate to return stud, intended: 167 (150..180) A, 73 % of the arc's current"
[[nodiscard]] inline std::string way_line(const station& s, const assessment& found, std::size_t which)
{
    return found.ways[which].name + ": from " + s.ways[which].from + " to " + s.ways[which].to + ", " +
           way_words(found, which);
}

/// Whether a part's temperature was found: of a measured part without a cooling area it is not.
[[nodiscard]] inline bool temperature_is_known(const part_result& p)
{
    return !p.places.empty();
}

/// A part's name with the way it stands in, where that is not the path.
[[nodiscard]] inline std::string name_with_way(const part_result& p)
{
    return p.way.empty() ? p.name : p.name + " (" + p.way + ")";
}

/// "constant voltage, set to 26 V"; for a station without a described supply, that it has none.
/// @throws as highest_output_at()
[[nodiscard]] inline std::string supply_line(const station& s)
{
    if (!s.supply) return "not described";
    if (s.supply->kind == supply_kind::constant_voltage)
        return "constant voltage, set to " + to_text(s.supply->setting, "V");
    if (s.supply->kind != supply_kind::constant_current)
        return std::string(to_text(s.supply->kind)) + ", " +
               to_text(highest_output_at(*s.supply, {s.job.process, s.job.current}), "V") + " at this current";
    return "constant current, up to " + to_text(s.supply->highest_output, "V") + " at this current";
}

/// "150 A at 31.2 V across the terminals: arc 26 V, 3 mm long": where supply, loop and arc meet, typically; of a
/// current whose levels differ that there is no one point; empty without a point for another reason.
[[nodiscard]] inline std::string operating_line(const assessment& found, const shown_units& units = {})
{
    if (found.operating && found.operating->outcome == operating_outcome::not_steady)
        return found.course && !found.course->levels.empty()
                   ? "no single one: the current changes, and supply, loop and arc meet at each of its levels"
                   : "no single one: the current changes all the time";
    if (!found.operating || !found.operating->is_found()) return {};
    const operating_point& p = *found.operating;
    if (!p.line_in_range) {
        const std::string why = "no arc line of the process is known at this current";
        return p.held == arc_hold::arc_length
                   ? "not known: " + why
                   : "typically " + to_text(p.current, "A") + " at " + to_text(p.terminals, "V") +
                         " across the terminals: arc " + to_text(p.arc_voltage, "V") +
                         ", the wire's feed held; the arc's length is not known, for " + why;
    }
    const std::string arc_length_text = p.arc_length.value() < 0.0
                                            ? std::string("of no length")
                                            : detail::shown_short_text(p.arc_length, units) + " long";
    return "typically " + to_text(p.current, "A") + " at " + to_text(p.terminals, "V") + " across the terminals: arc " +
           to_text(p.arc_voltage, "V") + ", " + arc_length_text +
           (p.held == arc_hold::arc_length ? ", its length held" : ", the wire's feed held");
}

/// "typically 240 kWh lost in leads and joints, 60 h more of arc time for the same metal; energy 61, time 2700": what a
/// year's loss comes to, money only where its price is stated; empty unless a year of work is.
[[nodiscard]] inline std::string year_line(const assessment& found)
{
    if (!found.year) return {};
    const yearly_loss& y = *found.year;
    constexpr double kilowatt_hour = 3.6e6;  // J
    constexpr int digits = 3;
    std::string out = "typically " + number_text(y.lost.value() / kilowatt_hour, digits) +
                      " kWh lost in leads and joints, at the supply's output";
    if (y.arc_time.value() > 0.0) out += ", " + to_text(y.arc_time, "h") + " more of arc time for the same metal";
    if (y.energy_cost) out += "; energy " + number_text(*y.energy_cost, digits);
    if (y.time_cost) out += "; time " + number_text(*y.time_cost, digits);
    return y.energy_cost || y.time_cost ? out + ", in the money of the prices stated" : out;
}

/// The word that stands for a number of a loop that has none.
[[nodiscard]] constexpr std::string_view no_number_word(loop_outcome outcome)
{
    return outcome == loop_outcome::open_circuit ? "open" : "no steady state";
}

/// The words for an outcome.
[[nodiscard]] constexpr std::string_view outcome_word(loop_outcome outcome)
{
    switch (outcome) {
    case loop_outcome::solved: return "solved";
    case loop_outcome::open_circuit: return "open circuit";
    case loop_outcome::ends: return "ends";
    case loop_outcome::not_settled: return "not settled";
    case loop_outcome::unstable: return "unstable sharing";
    }
    return "not settled";
}

/// Why an assessment has no numbers, in one sentence; empty where it has them.
[[nodiscard]] inline std::string no_state_line(const assessment& found)
{
    if (found.outcome == loop_outcome::solved) return {};
    for (const loop_finding& f : found.findings)
        if (f.id == finding_id::open_circuit || f.id == finding_id::no_steady_state ||
            f.id == finding_id::sharing_unstable)
            return f.text;
    return "The loop has no settled state: " + std::string(outcome_word(found.outcome)) + ".";
}

/// "1.94 V (1.20..3.10 V)" of a voltage with its band; words where the loop has no state.
/// @param v [V], any @param outcome of the loop
[[nodiscard]] inline std::string volts_line(const band<voltage>& v, loop_outcome outcome)
{
    if (outcome != loop_outcome::solved) return std::string(no_number_word(outcome));
    return detail::band_text(v, detail::decimals_for(v.typical.value())) + " V";
}

/// How the count of cases is meant; printed beside the tables.
inline constexpr std::string_view cases_explained =
    "Beyond: in how many of 100 such cases, connections scattering as they do, some limit of the part is exceeded or "
    "its contact spots yield.";

/// Whether there is anything a part could exceed: a limit, or contact spots that could yield.
[[nodiscard]] inline bool can_exceed(const part_result& p)
{
    return !p.limits.empty() || p.hottest_spot.has_value();
}

/// "43", "<1", ">99": of 100 such cases, for columns.
[[nodiscard]] inline std::string cases_number(likelihood p)
{
    constexpr double one = 0.01;
    const double share = static_cast<double>(p);
    if (share < one) return "<1";
    return share > 1.0 - one ? ">99" : detail::fixed_text(100.0 * share, 0);
}
/// The same of a part; a dash where there is nothing it could exceed.
[[nodiscard]] inline std::string cases_number(const part_result& p)
{
    return can_exceed(p) ? cases_number(p.exceeds) : "-";
}

/// "handle 72 (52..80) degC, limit 70 degC (part that is touched in use)"; of a resistance its share of the limit.
/// @param u the limit @param units of the report
[[nodiscard]] inline std::string limit_line(const limit_use& u, const shown_units& units = {})
{
    const std::string degrees = " " + std::string(units.temperatures.name());
    if (u.limit && u.peak)
        return u.at + " " + detail::degrees_text(*u.peak, units) + degrees + ", limit " +
               detail::degrees_text(*u.limit, units) + degrees + " (" + u.name + ")";
    return u.at + " typically at " + detail::fixed_text(100.0 * u.used, 0) + " % of its limit, in a poor case at " +
           detail::fixed_text(100.0 * u.used_high, 0) + " % (" + u.name + ")";
}

/// What decided the verdict on a part, for the columns of a table: the place, what it has there, and the limit of that.
struct deciding_row {
    std::string at = {};     ///< "conductor", "crimp", "contact spots"
    std::string value = {};  ///< degrees, or a share of the limit in %
    std::string limit = {};  ///< degrees, or "100 %"; a dash where there is none
};

/// How a share in those columns is meant; printed beside the tables.
inline constexpr std::string_view decided_explained =
    "Decided at: the place whose limit decides the verdict, how hot it gets there and how hot it may get. In %: of the "
    "resistance a crimp may have, or of the drop at which contact spots soften.";

/// The row of a part of a settled loop: of the limit or the spots that decided; without either its hottest place, or
/// the one that decides in a poor case. @param p the part @param units of the report
[[nodiscard]] inline deciding_row deciding_row_of(const part_result& p, const shown_units& units = {})
{
    const auto share = [](double used) { return detail::fixed_text(100.0 * used, 0) + " %"; };
    const std::string whole = share(1.0);
    if (p.decided_by == deciding_fact::spots) return {"contact spots", share(p.softening_used), whole};
    if (p.decided_by == deciding_fact::limit && !p.limits.empty()) {
        const limit_use& u = p.limits.front();
        if (!u.limit || !u.peak) return {u.at, share(u.used), whole};
        return {u.at, detail::degrees_text(*u.peak, units), detail::degrees_text(*u.limit, units)};
    }
    if (!temperature_is_known(p)) return {"-", "unknown", "-"};
    return {std::string(to_text(p.peak_at)), detail::degrees_text(p.peak, units),
            p.limit ? detail::degrees_text(*p.limit, units) : "-"};
}

/// "124 degC", "146 %": the typical value of that row, for drawings. @param p the part @param units of the report
[[nodiscard]] inline std::string decided_value(const part_result& p, const shown_units& units = {})
{
    const std::string value = deciding_row_of(p, units).value;
    const std::string typical = value.substr(0, value.find(" ("));
    return typical.ends_with("%") || typical == "unknown" ? typical
                                                          : typical + " " + std::string(units.temperatures.name());
}

/// The part of the path an assessed part stands for, if it is a work connection.
[[nodiscard]] inline const work_connection* work_connection_of(const station& s, const part_result& p)
{
    return p.place < parts_in(s) ? std::get_if<work_connection>(&part_at(s, p.place)) : nullptr;
}
/// Share of its force when new that a clamp has lost before the forecast begins; none for another part.
[[nodiscard]] inline fraction grip_lost_before(const station& s, const part_result& p)
{
    const work_connection* w = work_connection_of(s, p);
    return w != nullptr ? w->grip_lost : fraction(0.0);
}

namespace detail {
[[nodiscard]] inline bool lasts_a_minute(duration d)
{
    return d >= in_si<duration>(60.0);
}
// "4.5 h", below an hour "12 min", below a minute in words: nobody reads a clock finer.
[[nodiscard]] inline std::string hours_text(duration d)
{
    constexpr double slip = 1e-9;
    const double hours = number_in(d, "h");
    if (!lasts_a_minute(d)) return "less than a minute";
    if (hours < 1.0 - slip) return number_text(cut_to_two_digits(60.0 * hours)) + " min";
    return number_text(cut_to_two_digits(hours)) + " h";
}
// "after 4.5 h", "at once".
[[nodiscard]] inline std::string after_text(duration d)
{
    return lasts_a_minute(d) ? "after " + hours_text(d) : std::string("at once");
}
[[nodiscard]] inline std::string percent_of(double share)
{
    return number_text(100.0 * share, 2) + " %";
}
[[nodiscard]] inline std::string outlook_words(grip_outlook outlook)
{
    switch (outlook) {
    case grip_outlook::holds: return "it holds, losing less than a quarter of what it has now";
    case grip_outlook::declines: return "it declines, losing a quarter or more of what it has now";
    case grip_outlook::unstable: break;
    }
    return "it is unstable";
}
[[nodiscard]] inline std::string typical_outlook_words(const grip_forecast& g)
{
    if (g.outlook != grip_outlook::unstable) return outlook_words(g.outlook);
    if (g.spring_destroyed) return "it is unstable: its spring gets hotter than the tempering range of its wire";
    if (g.spots_melt) return "it is unstable: its spots melt";
    if (g.end == grip_end::fallen) return "it is unstable: less than a tenth of its grip is left";
    if (g.end == grip_end::worn) return "it is unstable: film eats up its spots";
    return "it is unstable: heat and loss of grip feed each other";
}
// When the poor case ends, if it ends before the forecast does.
[[nodiscard]] inline std::optional<duration> poor_end_of(const grip_forecast& g)
{
    constexpr double whole = 1.0 - 1e-6;
    if (g.outlook_poor != grip_outlook::unstable || g.poor_points.empty()) return std::nullopt;
    const duration end = g.poor_points.back().at;
    return end < whole * g.horizon ? std::optional<duration>(end) : std::nullopt;
}
// An unstable case that reaches the end of the forecast has a grip and a steady heat, but its spots melt.
[[nodiscard]] inline std::string poor_outlook_words(const grip_forecast& g)
{
    if (g.outlook_poor != grip_outlook::unstable) return outlook_words(g.outlook_poor);
    if (const auto end = poor_end_of(g))
        return "it is unstable: its spots melt, its spring is destroyed or its grip goes, " +
               (lasts_a_minute(*end) ? "by " + hours_text(*end) : std::string("from the start"));
    return "it is unstable: its spots melt";
}
}  // namespace detail

/// The forecast of a clamp's grip in sentences: what is left of its force, now and later, when a quarter is lost, what
/// it comes to. Each is said of the poor case too, and a time never without its band.
/// @param g the forecast @param lost_before share of the force when new that is gone before it begins
[[nodiscard]] inline std::vector<std::string> grip_lines(const grip_forecast& g, fraction lost_before = 0.0)
{
    std::vector<std::string> out;
    if (g.points.empty()) return out;
    const double lost = static_cast<double>(lost_before), now = 1.0 - lost;
    const double left = static_cast<double>(g.grip_left), left_low = static_cast<double>(g.grip_left_low);
    const auto poor_end = detail::poor_end_of(g);
    // an end of the band beyond the forecast is given as its end
    const auto after = [&g](duration d) {
        return d >= g.horizon ? "not within " + detail::hours_text(g.horizon) : detail::after_text(d);
    };

    std::string first = lost > 0.0 ? detail::percent_of(lost) + " of its grip when new is gone already, " +
                                         detail::percent_of(now) + " is left now; after "
                                   : std::string("Grip left after ");
    first += detail::hours_text(g.points.back().at) + " of shift" + (lost > 0.0 ? " " : ": ") + "typically " +
             detail::percent_of(now * left) + (lost > 0.0 ? " of when new" : "") + ", in a poor case " +
             detail::percent_of(now * left_low);
    if (poor_end) first += ", which ends " + detail::after_text(*poor_end);
    out.push_back(first + ".");

    const bool gone_before = lost >= inspection_loss;
    if (gone_before)
        out.push_back(
            "More than a quarter of its grip when new is gone already, typically as in a poor case: inspect it "
            "before the next weld.");
    if (g.quarter_lost) {
        out.push_back((lost > 0.0 ? "A quarter of what is left now is lost: in a poor case "
                                  : "A quarter of the grip is lost: in a poor case ") +
                      after(g.quarter_lost->low) + ", typically " + after(g.quarter_lost->typical) +
                      ", in a kind case " + after(g.quarter_lost->high) + ".");
        if (g.inspect_by && !gone_before && !detail::lasts_a_minute(*g.inspect_by))
            out.push_back("Inspect it before the next weld: the early end of that band is the poor case.");
        else if (g.inspect_by && !gone_before)
            out.push_back("Inspect within " + detail::hours_text(*g.inspect_by) +
                          " of shift, the early end of that band, which is the poor case.");
    } else if (!gone_before && g.outlook_poor != grip_outlook::unstable) {
        const double quarter = 1.0 - inspection_loss;
        if (now * left_low >= quarter)
            out.push_back("A quarter of the grip when new is not lost within " + detail::hours_text(g.horizon) +
                          ", neither typically nor in a poor case.");
        else
            out.push_back("By then a quarter of the grip when new is lost in a poor case, " +
                          std::string(now * left >= quarter ? "typically not" : "and typically too") +
                          ": inspect it well before.");
    }
    const std::string typically = detail::typical_outlook_words(g), poor = detail::poor_outlook_words(g);
    out.push_back(typically == poor ? "What it comes to, typically and in a poor case: " + poor + "."
                                    : "What it comes to: typically " + typically + "; in a poor case " + poor + ".");
    return out;
}

/// What stands beside the list of steps.
inline constexpr std::string_view gains_explained =
    "Gains are of the typical case; less than 10 mV, the last digit of a meter that reads to 20 V, is not told. A step "
    "that gains less stands here only for the verdict it changes, for what it cools by 3 K or more, or for the hold of "
    "its part.";

/// What a remedy regains and what it takes: "gains 0.42 V, cools the part by 35 K; effort: clean".
/// Empty for a remark, which is no step.
/// @param r the remedy @param outcome of the loop before it @param units of the report
[[nodiscard]] inline std::string gain_line(const remedy& r, loop_outcome outcome, const shown_units& units = {})
{
    if (r.is_remark) return {};
    std::string out;
    if (r.restores_circuit)
        out = outcome == loop_outcome::open_circuit ? "closes the circuit" : "gives the loop a steady state";
    const auto add = [&out](const std::string& text) { out.append(out.empty() ? "" : ", ").append(text); };
    const auto volts = [](voltage v) {
        return detail::fixed_text(v.value(), std::min(2, detail::decimals_for(v.value()))) + " V";
    };
    if (r.volts_regained >= least_regain) add("gains " + volts(r.volts_regained));
    if (r.volts_regained <= -least_regain) add("costs " + volts(-r.volts_regained));
    if (r.cooled_by.value() >= 0.5 && !r.is_summary)
        add("cools the part by " + detail::fixed_text(detail::shown_number(r.cooled_by, units), 0) + " " +
            std::string(detail::difference_unit(units)));
    if (r.is_summary) return out.empty() ? "together they gain less than a meter shows" : out;
    if (out.empty() && r.effort == remedy_effort::raise_volts) out = "gains nothing in the loop itself";
    if (out.empty()) out = "gains less than a meter shows, " + to_text(least_regain, "mV");
    return out + "; effort: " + std::string(to_text(r.effort));
}

/// What becomes of the part's verdict and of the findings by a remedy, and which others need not be done then; empty if
/// nothing of that is known. "then within limit (now over limit); clears the finding spots_melt"
[[nodiscard]] inline std::string remedy_effect(const remedy& r)
{
    std::string out;
    const auto add = [&out](const std::string& text) { out.append(out.empty() ? "" : "; ").append(text); };
    const auto listed = [](const std::vector<std::string>& items, std::string_view between) {
        std::string all;
        for (const std::string& item : items) all.append(all.empty() ? "" : between).append(item);
        return all;
    };
    if (r.is_remark) return out;
    if (r.is_summary) {
        if (!r.clears_parts.empty()) add("clears the verdict on " + listed(r.clears_parts, ", "));
    } else if (r.verdict_after)
        add("verdict then: " + std::string(to_text(*r.verdict_after)) +
            (!r.verdict_before                       ? ""
             : *r.verdict_before == *r.verdict_after ? ", as now"
                                                     : " (now " + std::string(to_text(*r.verdict_before)) + ")"));
    else if (r.verdict_before)
        add("the part is then out of the path (now " + std::string(to_text(*r.verdict_before)) + ")");
    if (!r.clears_findings.empty()) {
        std::vector<std::string> ids;
        for (const finding_id id : r.clears_findings) ids.emplace_back(to_text(id));
        add((ids.size() == 1 ? "clears the finding " : "clears the findings ") + listed(ids, ", "));
    }
    if (!r.clears_weld.empty()) {
        std::vector<std::string> words;
        for (const weld_id id : r.clears_weld) words.emplace_back(words_for(id));
        add("the leads then typically no longer cause " + listed(words, ", "));
    }
    if (!r.makes_moot.empty()) add("spares: " + listed(r.makes_moot, "; "));
    return out;
}

/// What is to be done, and to which part where the words do not say it.
[[nodiscard]] inline std::string what_line(const remedy& r)
{
    return r.part.empty() || r.is_summary || r.what.find(r.part) != std::string::npos ? r.what : r.part + ": " + r.what;
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
