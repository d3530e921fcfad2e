#pragma once
/// @file
/// The units a report is told in: those of the person who wrote the station down. The library reckons in SI; sentences
/// that it made in degC and metres are told over here.

#include <array>
#include <cctype>
#include <cstddef>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include <weldloop/core/band.hpp>
#include <weldloop/core/number_chars.hpp>
#include <weldloop/core/number_text.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/core/text.hpp>

namespace weldloop {

/// Units of length a report can be told in.
enum class shown_lengths {
    metric,  ///< m, mm, m/s
    feet,    ///< ft, in, ft/min
};

/// The units of a report. JSON is always in SI and degC.
struct shown_units {
    temperature_scale temperatures = "degC";        ///< of every temperature and difference of temperatures
    shown_lengths lengths = shown_lengths::metric;  ///< of every length and speed
};

namespace detail {

[[nodiscard]] inline bool is_si(const shown_units& u)
{
    return u.temperatures.name() == "degC" && u.lengths == shown_lengths::metric;
}

/// "185 degF"
[[nodiscard]] inline std::string shown_text(temperature t, const shown_units& u)
{
    return to_text(t, u.temperatures);
}
/// The number of a difference of temperatures on the scale of a report, and its unit: K beside degC.
[[nodiscard]] inline double shown_number(temperature_difference d, const shown_units& u)
{
    constexpr double fahrenheit_a_kelvin = 1.8;
    return u.temperatures.name() == "degF" ? fahrenheit_a_kelvin * d.value() : d.value();
}
[[nodiscard]] inline std::string_view difference_unit(const shown_units& u)
{
    return u.temperatures.name() == "degF" ? "degF" : "K";
}
/// "984 ft", "300 m"
[[nodiscard]] inline std::string shown_text(length l, const shown_units& u)
{
    return u.lengths == shown_lengths::feet ? to_text(l, "ft") : to_text(l, "m");
}
/// "0.118 in", "3 mm"
[[nodiscard]] inline std::string shown_short_text(length l, const shown_units& u)
{
    return u.lengths == shown_lengths::feet ? to_text(l, "in") : to_text(l, "mm");
}
[[nodiscard]] inline std::string shown_text(speed v, const shown_units& u)
{
    return u.lengths == shown_lengths::feet ? to_text(v, "ft/min") : to_text(v, "m/s");
}

/// A number with its unit in a sentence, told in other units.
struct unit_change {
    std::string_view from;
    double per_unit;  // of the number
    std::string_view to;
};
inline constexpr unit_change celsius_change{"degC", 1.8, "degF"};
inline constexpr unit_change kelvin_change{"K", 1.8, "degF"};  // sentences give differences in kelvin
inline constexpr std::array length_changes{unit_change{"mm", 1.0 / 25.4, "in"},
                                           unit_change{"m/s", 60.0 / 0.3048, "ft/min"},
                                           unit_change{"m", 1.0 / 0.3048, "ft"}};

[[nodiscard]] inline bool is_letter_or_digit(char c)
{
    return std::isalnum(static_cast<unsigned char>(c)) != 0;
}

/// Length of the number that begins here and is no part of a longer word; 0 if none does.
[[nodiscard]] inline std::size_t number_at(std::string_view text, std::size_t at)
{
    const bool signed_here = text[at] == '-';
    const std::size_t first = at + (signed_here ? 1 : 0);
    if (first >= text.size() || std::isdigit(static_cast<unsigned char>(text[first])) == 0) return 0;
    if (at > 0 && (is_letter_or_digit(text[at - 1]) || text[at - 1] == '.' || text[at - 1] == '-')) return 0;
    const read_number read = number_at_front(text.substr(at));
    return read.value ? read.used : 0;
}

/// The change for the unit that begins here and ends with its word; none where no unit does.
[[nodiscard]] inline const unit_change* change_at(std::string_view rest, const shown_units& u)
{
    const auto is = [rest](const unit_change& c) {
        if (!rest.starts_with(c.from)) return false;
        const std::size_t end = c.from.size();
        return end == rest.size() || (!is_letter_or_digit(rest[end]) && rest[end] != '/');
    };
    if (u.temperatures.name() == "degF" && is(celsius_change)) return &celsius_change;
    if (u.temperatures.name() == "degF" && is(kelvin_change)) return &kelvin_change;
    if (u.lengths == shown_lengths::feet)
        for (const unit_change& c : length_changes)
            if (is(c)) return &c;
    return nullptr;
}

/// Length of "10 ft" or "6 in to 10 in" at the front of a text, in one of two units; 0 if there is none.
[[nodiscard]] inline std::size_t span_at_front(std::string_view text, std::string_view unit, std::string_view other)
{
    const auto quantity = [&](std::size_t at) -> std::size_t {
        const std::size_t digits = number_at_front(text.substr(at)).used;
        if (digits == 0 || text.substr(at + digits, 1) != " ") return 0;
        const std::string_view rest = text.substr(at + digits + 1);
        for (const std::string_view u : {unit, other})
            if (rest.starts_with(u) && (rest.size() == u.size() || !is_letter_or_digit(rest[u.size()])))
                return digits + 1 + u.size();
        return 0;
    };
    constexpr std::string_view to = " to ";
    const std::size_t first = quantity(0);
    if (first == 0 || !text.substr(first).starts_with(to)) return first;
    const std::size_t second = quantity(first + to.size());
    return second == 0 ? first : first + to.size() + second;
}

/// A length that is written in both, "10 ft (3 m)".
struct length_in_both {
    std::string_view feet = {}, metres = {};
    std::size_t used = 0;  // characters; 0: there is none
};
[[nodiscard]] inline length_in_both length_in_both_at(std::string_view text)
{
    length_in_both out;
    const std::size_t feet = span_at_front(text, "ft", "in");
    if (feet == 0 || !text.substr(feet).starts_with(" (")) return out;
    const std::string_view inside = text.substr(feet + 2);
    const std::size_t metres = span_at_front(inside, "mm", "m");
    if (metres == 0 || inside.substr(metres, 1) != ")") return out;
    return {text.substr(0, feet), inside.substr(0, metres), feet + 2 + metres + 1};
}

/// What a sentence may hold that is no number of the library's.
struct sentence_facts {
    std::vector<std::string> names = {};  ///< of the station and its parts: stay as written, whatever they hold
    std::vector<temperature> exact = {};  ///< the temperatures the sentence is about, before they were rounded
};

/// A temperature that was printed in degC, in degF: of the temperature itself where it is known, so that a sentence and
/// a table, rounded each by itself, say the same.
[[nodiscard]] inline std::string fahrenheit_of(std::string_view printed, double celsius,
                                               std::span<const temperature> exact)
{
    for (const temperature t : exact)
        if (number_text(t.in_celsius()) == printed) return number_text(t.in_fahrenheit());
    return number_text(temperature::celsius(celsius).in_fahrenheit());
}

}  // namespace detail

/// A sentence of the library, made in degC and metres, in the units of a report: numbers with their unit are told over,
/// to three digits; of a length that stands there in both, "10 ft (3 m)", one is kept; names stay as they are written.
/// @param sentence in SI @param units of the report @param facts names and exact temperatures it may hold
[[nodiscard]] inline std::string in_shown_units(std::string_view sentence, const shown_units& units,
                                                const detail::sentence_facts& facts = {})
{
    if (detail::is_si(units) && sentence.find(" (") == std::string_view::npos) return std::string(sentence);
    std::string out;
    for (std::size_t at = 0; at < sentence.size();) {
        const std::string* name = nullptr;
        for (const std::string& n : facts.names)
            if (!n.empty() && sentence.substr(at).starts_with(n) && (name == nullptr || n.size() > name->size()))
                name = &n;
        if (name != nullptr) {
            out.append(*name);
            at += name->size();
            continue;
        }
        const std::size_t digits = detail::number_at(sentence, at);
        if (const auto both = detail::length_in_both_at(sentence.substr(at)); digits > 0 && both.used > 0) {
            out.append(units.lengths == shown_lengths::feet ? both.feet : both.metres);
            at += both.used;
            continue;
        }
        const std::size_t unit = at + digits + 1;
        const detail::unit_change* change = digits > 0 && unit < sentence.size() && sentence[unit - 1] == ' '
                                                ? detail::change_at(sentence.substr(unit), units)
                                                : nullptr;
        if (change == nullptr) {
            const std::size_t step = digits > 0 ? digits : 1;
            out.append(sentence.substr(at, step));
            at += step;
            continue;
        }
        const std::string_view printed = sentence.substr(at, digits);
        const double value = detail::number_at_front(printed).value.value_or(0.0);
        out.append(change == &detail::celsius_change ? detail::fahrenheit_of(printed, value, facts.exact)
                                                     : number_text(change->per_unit * value));
        out.append(" ").append(change->to);
        at = unit + change->from.size();
    }
    return out;
}

}  // namespace weldloop
