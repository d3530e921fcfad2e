#pragma once
/// @file
/// Reading text with a unit: parse<current>("260 A"), parse<conductor_size>("2/0 AWG"), parse<temperature>("95 degF").
///
/// The number is a plain decimal with an optional exponent ("2.5", "-10", "4e-3"), the unit stands after it with or
/// without a space. Inches and feet may have a fraction ("1/8 in", "1 1/2 in"), a gauge may be written as on reels
/// ("00 AWG" is 2/0, "#2" is 2 AWG). A fault is reported with the position of the first character that does not fit.

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include <weldloop/core/conductor_size.hpp>
#include <weldloop/core/duty_cycle.hpp>
#include <weldloop/core/error.hpp>
#include <weldloop/core/fraction.hpp>
#include <weldloop/core/nearest_word.hpp>
#include <weldloop/core/number_chars.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/core/text.hpp>
#include <weldloop/core/unit_text.hpp>

namespace weldloop {

namespace detail {

struct number_and_unit {
    double number = 0.0;
    std::string_view unit;
    std::size_t number_at = 0, unit_at = 0;
};

[[nodiscard]] inline std::size_t skip_spaces(std::string_view text, std::size_t at)
{
    while (at < text.size() && (text[at] == ' ' || text[at] == '\t')) ++at;
    return at;
}

/// "9,1 m": the comma of other languages, or thousands. Returns where what follows it is no number.
inline void refuse_comma(std::string_view text, const number_and_unit& part, std::string_view whole)
{
    constexpr std::size_t thousands = 3;
    const std::string_view behind = part.unit.substr(1);
    std::size_t digits = 0;
    while (digits < behind.size() && behind[digits] >= '0' && behind[digits] <= '9') ++digits;
    if (digits == 0 || whole.find_first_of(".eE") != std::string_view::npos) return;
    const std::string_view unit = behind.substr(skip_spaces(behind, digits));
    const std::string decimals(behind.substr(0, digits));
    const auto written = [&](const std::string& number) {
        return number + (unit.empty() ? "" : " ") + std::string(unit);
    };
    std::string pointed = std::string(whole) + "." + decimals;
    std::string wanted = "a number without a comma: write ";
    if (digits == thousands) {
        while (pointed.back() == '0') pointed.pop_back();
        if (pointed.back() == '.') pointed.pop_back();
        wanted += written(std::string(whole) + decimals) + " or ";
    }
    throw bad_text_error(std::string(text), part.unit_at, wanted + written(pointed));
}

[[nodiscard]] inline number_and_unit split_number(std::string_view text, std::size_t from = 0)
{
    number_and_unit out;
    out.number_at = skip_spaces(text, from);
    if (out.number_at == text.size()) throw bad_text_error(std::string(text), out.number_at, "a number with its unit");
    std::size_t begin = out.number_at;
    if (text[begin] == '+' && text.substr(begin + 1, 1) != "-") ++begin;
    const read_number front = number_at_front(text.substr(begin));
    if (front.used == 0) throw bad_text_error(std::string(text), out.number_at, "a finite number with its unit");
    if (!front.value) throw bad_text_error(std::string(text), out.number_at, "a number a computer can hold");
    out.number = *front.value;
    out.unit_at = skip_spaces(text, begin + front.used);
    std::size_t last = text.size();
    while (last > out.unit_at && (text[last - 1] == ' ' || text[last - 1] == '\t')) --last;
    out.unit = text.substr(out.unit_at, last - out.unit_at);
    if (out.unit.starts_with(',')) refuse_comma(text, out, text.substr(begin, front.used));
    return out;
}

[[noreturn]] inline void refuse_unit(std::string_view text, const number_and_unit& part, std::string_view what,
                                     const std::vector<std::string_view>& units)
{
    std::string list;
    for (const std::string_view u : units) list.append(list.empty() ? "" : ", ").append(u);
    std::string hint =
        part.unit.empty() ? std::string("a unit after the number: ") + list : std::string(what) + " in one of " + list;
    if (const std::string_view near = near_word(part.unit, units); !near.empty())
        hint.append("; nearest: ").append(near);
    throw bad_text_error(std::string(text), part.unit_at, hint);
}

/// A fraction as tape measures have it, "1/8 in", "1 1/2 in", taken into the number where the unit is one of those that
/// are divided so.
[[nodiscard]] inline number_and_unit with_fraction(number_and_unit part)
{
    const auto whole_number = [](double x) { return x >= 0.0 && x <= 1e6 && x == std::floor(x); };
    std::string_view rest = part.unit;
    double whole = 0.0, above = part.number;
    if (!rest.starts_with('/')) {
        const read_number next = number_at_front(rest);
        if (!next.value || *next.value < 0.0 || !rest.substr(next.used).starts_with('/')) return part;
        whole = part.number;
        above = *next.value;
        rest.remove_prefix(next.used);
    }
    const read_number below = number_at_front(rest.substr(1));
    if (!below.value || !(*below.value > 0.0)) return part;
    if (!whole_number(whole) || !whole_number(above) || !whole_number(*below.value)) return part;
    const std::string_view unit = rest.substr(skip_spaces(rest, 1 + below.used));
    if (unit != "in" && unit != "ft") return part;
    part.unit_at += part.unit.size() - unit.size();
    part.unit = unit;
    part.number = whole + above / *below.value;
    return part;
}

template <class Q>
struct parser {
    static Q read(std::string_view text)
    {
        number_and_unit part = split_number(text);
        if constexpr (kind_of<Q> == quantity_kind::of_length) part = with_fraction(part);
        if (const unit_row* row = find_unit(part.unit, kind_of<Q>)) {
            const double value = part.number * row->in_si;
            if (!std::isfinite(value))
                throw bad_text_error(std::string(text), part.number_at, "a number a computer can hold");
            return in_si<Q>(value);
        }
        std::vector<std::string_view> units;
        for (const unit_row& row : unit_table)
            if (row.kind == kind_of<Q>) units.push_back(row.name);
        refuse_unit(text, part, "a value", units);
    }
};

template <>
struct parser<temperature> {
    static temperature read(std::string_view text)
    {
        const number_and_unit part = split_number(text);
        if (part.unit == "degC") return temperature::celsius(part.number);
        if (part.unit == "degF") return temperature::fahrenheit(part.number);
        if (part.unit == "K") return temperature::kelvin(part.number);
        refuse_unit(text, part, "a temperature", {"degC", "degF", "K"});
    }
};

template <class Rule>
struct parser<bounded_number<Rule>> {
    static bounded_number<Rule> read(std::string_view text)
    {
        const number_and_unit part = split_number(text);
        using ratio = bounded_number<Rule>;
        if (part.unit == "%") {
            try {
                return part.number / 100.0;
            } catch (const out_of_range_error&) {
                throw out_of_range_error(Rule::name, number_text(part.number) + " %", ratio::allowed_percent());
            }
        }
        if (!part.unit.empty()) refuse_unit(text, part, "a share", {"%"});
        // 1 could be one percent or all
        const std::string as_percent = number_text(part.number) + " %",
                          as_ratio = number_text(100.0 * part.number) + " %";
        throw bad_text_error(std::string(text), part.unit_at,
                             "a unit after the number: %; write " + (part.number == 1.0 ? as_percent + " or " + as_ratio
                                                                     : part.number > 0.0 && part.number < 1.0
                                                                         ? as_ratio
                                                                         : as_percent));
    }
};

template <>
struct parser<conductor_size> {
    static conductor_size read(std::string_view text)
    {
        const std::size_t first = skip_spaces(text, 0);
        const bool is_numbered = text.substr(first).starts_with('#');  // "#2", a number of the gauge
        number_and_unit part = split_number(text, is_numbered ? first + 1 : 0);
        if (part.unit.starts_with("/0")) {
            const std::size_t at = skip_spaces(part.unit, 2);
            const std::string_view rest = part.unit.substr(at);
            if (!rest.empty() && rest != "AWG") {
                part.unit = rest;
                part.unit_at += at;
                refuse_unit(text, part, "an aught size", {"AWG"});
            }
            return {size_scale::aught, part.number};
        }
        if (part.unit == "AWG" || (is_numbered && part.unit.empty())) {
            // "00" is 2/0
            const std::size_t zeros = text.find_first_not_of('0', part.number_at) - part.number_at;
            if (part.number == 0.0 && text.substr(part.number_at, 1) == "0")
                return {size_scale::aught, static_cast<double>(std::min(zeros, text.size() - part.number_at))};
            return {size_scale::awg, part.number};
        }
        if (is_numbered) refuse_unit(text, part, "a number of the gauge", {"AWG"});
        if (part.unit == "kcmil") return {size_scale::kcmil, part.number};
        if (part.unit == "mm2") return {size_scale::square_mm, part.number};
        refuse_unit(text, part, "a conductor size", {"AWG", "/0 AWG", "kcmil", "mm2"});
    }
};

}  // namespace detail

/// Reads a quantity, temperature, share or conductor size.
/// @param text such as "260 A", "50 ft", "95 degF", "60 %", "2/0 AWG"
/// @throws bad_text_error with the position of the fault and the units that would fit; out_of_range_error for a value
///         that cannot be (absolute zero undercut, 120 % duty, 9/0)
template <class T>
[[nodiscard]] T parse(std::string_view text)
{
    return detail::parser<T>::read(text);
}

}  // namespace weldloop
