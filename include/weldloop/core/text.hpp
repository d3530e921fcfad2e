#pragma once
/// @file
/// Quantities as text, in the unit the caller names: to_text(drop, "mV").
///
/// A unit written as a literal is checked against the quantity when the program is compiled; a unit that arrives at
/// run time goes through any_unit and is checked then.

#include <array>
#include <cstddef>
#include <string>
#include <string_view>
#include <type_traits>

#include <weldloop/core/error.hpp>
#include <weldloop/core/fraction.hpp>
#include <weldloop/core/number_text.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/core/unit_text.hpp>

namespace weldloop {

namespace detail {
// Not constexpr on purpose: a literal of the wrong unit ends the compilation at a call of this name.
inline void this_unit_does_not_measure_this_quantity() {}

[[nodiscard]] inline std::string units_of(quantity_kind kind)
{
    std::string out;
    for (const unit_row& row : unit_table)
        if (row.kind == kind) out.append(out.empty() ? "" : ", ").append(row.name);
    return out;
}
}  // namespace detail

/// The name of a unit that measures Q.
template <class Q>
class unit_of {
public:
    /// A literal; the wrong unit does not compile.
    consteval unit_of(const char* name)
        : at_(detail::unit_index(name, detail::kind_of<Q>))  // NOLINT: implicit by design
    {
        if (at_ == detail::unit_table.size()) detail::this_unit_does_not_measure_this_quantity();
    }

    /// A unit known only at run time. @throws out_of_range_error if it does not measure Q
    [[nodiscard]] static unit_of at_run_time(std::string_view name)
    {
        const std::size_t at = detail::unit_index(name, detail::kind_of<Q>);
        if (at == detail::unit_table.size())
            throw out_of_range_error("unit", std::string(name), detail::units_of(detail::kind_of<Q>));
        return unit_of(at);
    }

    [[nodiscard]] constexpr std::string_view name() const { return detail::unit_table[at_].name; }  ///< as written
    [[nodiscard]] constexpr double in_si() const
    {
        return detail::unit_table[at_].in_si;
    }  ///< [coherent SI unit] its size

private:
    constexpr explicit unit_of(std::size_t at) : at_(at) {}
    std::size_t at_;  // in the unit table
};

/// A temperature scale, by its name: "degC", "degF" or "K".
class temperature_scale {
public:
    /// A literal; another unit does not compile.
    consteval temperature_scale(std::string_view name) : at_(place_of(name))  // NOLINT: implicit by design
    {
        if (at_ == scale::none) detail::this_unit_does_not_measure_this_quantity();
    }
    /// The same.
    consteval temperature_scale(const char* name) : temperature_scale(std::string_view(name)) {}  // NOLINT

    /// A scale known only at run time. @throws out_of_range_error
    [[nodiscard]] static temperature_scale at_run_time(std::string_view name)
    {
        const scale found = place_of(name);
        if (found == scale::none) throw out_of_range_error("temperature scale", std::string(name), "degC, degF, K");
        return temperature_scale(found);
    }

    /// "degC", "degF" or "K".
    [[nodiscard]] constexpr std::string_view name() const { return names[static_cast<std::size_t>(at_)]; }
    /// The number of a temperature on it. @param t the temperature
    [[nodiscard]] double number_of(temperature t) const
    {
        switch (at_) {
        case scale::celsius: return t.in_celsius();
        case scale::fahrenheit: return t.in_fahrenheit();
        case scale::kelvin:
        case scale::none: break;
        }
        return t.in_kelvin();
    }

private:
    enum class scale : std::size_t { celsius, fahrenheit, kelvin, none };
    static constexpr std::array<std::string_view, 3> names{"degC", "degF", "K"};  // in the order of scale

    constexpr explicit temperature_scale(scale at) : at_(at) {}
    static constexpr scale place_of(std::string_view name)
    {
        std::size_t at = 0;
        while (at < names.size() && names[at] != name) ++at;
        return static_cast<scale>(at);
    }
    scale at_;
};

/// The number of a quantity in a unit: number_in(50_ft, "m") is 15.24 [that unit].
/// @param q the quantity, any @param unit a unit that measures it
template <class Unit>
[[nodiscard]] double number_in(const boost::units::quantity<Unit, double>& q,
                               std::type_identity_t<unit_of<boost::units::quantity<Unit, double>>> unit)
{
    return q.value() / unit.in_si();
}

/// A quantity as text in a unit, "1.94 V".
/// @param q      the quantity, any @param unit a unit that measures it @param digits significant digits, 1 to 17
template <class Unit>
[[nodiscard]] std::string to_text(const boost::units::quantity<Unit, double>& q,
                                  std::type_identity_t<unit_of<boost::units::quantity<Unit, double>>> unit,
                                  int digits = 3)
{
    return number_text(number_in(q, unit), digits) + " " + std::string(unit.name());
}

/// A temperature as text, "85 degC". A hundredth of a degree has no meaning here: three digits by default.
[[nodiscard]] inline std::string to_text(temperature t, temperature_scale scale, int digits = 3)
{
    return number_text(scale.number_of(t), digits) + " " + std::string(scale.name());
}

/// A ratio as text in percent, "62 %".
template <class Rule>
[[nodiscard]] std::string to_text(bounded_number<Rule> ratio, int digits = 3)
{
    return number_text(100.0 * static_cast<double>(ratio), digits) + " %";
}

}  // namespace weldloop
