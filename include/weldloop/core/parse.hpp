#pragma once
/// @file
/// Reading text with a unit: parse<current>("260 A"), parse<conductor_size>("2/0 AWG"), parse<temperature>("95 degF").
///
/// The number is a plain decimal with an optional exponent ("2.5", "-10", "4e-3"), the unit stands after it with or
/// without a space. A fault is reported with the position of the first character that does not fit.

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

[[nodiscard]] inline number_and_unit split_number(std::string_view text)
{
    number_and_unit out;
    out.number_at = skip_spaces(text, 0);
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

template <class Q>
struct parser {
    static Q read(std::string_view text)
    {
        const number_and_unit part = split_number(text);
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
        if (part.unit == "%") return part.number / 100.0;
        refuse_unit(text, part, "a share", {"%"});  // 1 could be one percent or all
    }
};

template <>
struct parser<conductor_size> {
    static conductor_size read(std::string_view text)
    {
        number_and_unit part = split_number(text);
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
        if (part.unit == "AWG") return {size_scale::awg, part.number};
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
