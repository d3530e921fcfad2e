#pragma once
/// @file
/// What temperature does to a law of relaxation that is made for 20 degC: published rules, to compare.
///
/// They disagree with each other by up to 1.6 in the loss between 20 and 100 degC.

#include <algorithm>
#include <cmath>
#include <limits>
#include <string_view>

#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/law/relaxation_result.hpp>

namespace weldloop {

/// @name Sources of the temperature rules
/// @{

/// Equivalent time of heat curing.
inline constexpr source equivalent_curing_time{"EN 1992-1-1", "2004", "10.3.2.1(2), equation 10.2, as quoted publicly",
                                               source_kind::standard};
/// Activation energy.
inline constexpr source relaxation_activation{"Bazant and Yu, Journal of Engineering Mechanics 139", "2013",
                                              "Q/k = 14600 K, from memory; the form is confirmed by the abstract",
                                              source_kind::memory};
/// Loss in proportion to the temperature in degC.
inline constexpr source linear_heat_rule{
    "AERB/SS/CSE-1", {}, "rho(T) = rho(20 degC) T/20, as summarised in public notes", source_kind::standard};
/// @}

/// A published rule for the temperature of a relaxing wire.
enum class relaxation_heat_rule {
    equivalent_time,    ///< hours count 1.14^(T - 20) times; 20 to 90 degC
    activation_energy,  ///< hours count exp(Q/k (1/293 K - 1/T)) times; 20 to 100 degC
    linear,             ///< the loss is T/20 times that at 20 degC; 20 to 60 degC
};

/// The words for a rule, as printed.
[[nodiscard]] constexpr std::string_view to_text(relaxation_heat_rule rule)
{
    switch (rule) {
    case relaxation_heat_rule::equivalent_time: return "equivalent time";
    case relaxation_heat_rule::activation_energy: return "activation energy";
    case relaxation_heat_rule::linear: return "linear in degC";
    }
    return "equivalent time";
}

namespace detail {
inline constexpr double curing_base = 1.14;                   // per kelvin
inline constexpr double activation_kelvin = 14600.0;          // Q/k
inline constexpr double activation_reference_kelvin = 293.0;  // T0
inline constexpr double heat_rule_celsius = 20.0;             // what all rules start from

constexpr double hottest_covered(relaxation_heat_rule rule)
{
    return rule == relaxation_heat_rule::equivalent_time ? 90.0 : rule == relaxation_heat_rule::linear ? 60.0 : 100.0;
}
}  // namespace detail

/// The time at 20 degC that a history of temperatures stands for under a rule, and the factor on the loss.
///
/// equivalent_time: t = t_cold + 1.14^(Tmax - 20)/(Tmax - 20) sum (T_i - 20) dt_i over the stretches above 20 degC, as
/// printed: hours below the highest temperature count by a straight line, which overstates a mixed history, and a later
/// peak counts them anew. activation_energy: t = sum exp(Q/k (1/T0 - 1/T_i)) dt_i, exact for any history. linear: the
/// clock's time, and the loss times Tmax/20, as if the peak had lasted: the rule knows no history.
class relaxation_clock {
public:
    /// @param rule which
    explicit relaxation_clock(relaxation_heat_rule rule) : rule_(rule) {}

    /// Lets a time pass at a temperature. @param t temperature @param time [s], 0 or above
    /// @throws not_finite_error, out_of_range_error
    relaxation_clock& advance(temperature t, duration time)
    {
        require_not_negative(time, "time");
        if (time.value() == 0.0) return *this;
        const double celsius = t.in_celsius(), rise = celsius - detail::heat_rule_celsius;
        hottest_ = std::max(hottest_, celsius);
        coldest_ = std::min(coldest_, celsius);
        if (rule_ == relaxation_heat_rule::activation_energy)
            plain_ += time.value() * speed_at(t);
        else if (rule_ == relaxation_heat_rule::equivalent_time && rise > 0.0)
            risen_ += time.value() * rise;
        else
            plain_ += time.value();
        return *this;
    }

    /// The time at 20 degC [s], at most the largest number there is.
    [[nodiscard]] duration equivalent() const
    {
        const double rise = hottest_ - detail::heat_rule_celsius;
        const double hot = risen_ > 0.0 ? risen_ / rise * std::pow(detail::curing_base, rise) : 0.0;
        return in_si<duration>(std::min(plain_ + hot, std::numeric_limits<double>::max()));
    }
    /// The factor on the loss at 20 degC, 1 unless the rule is linear.
    [[nodiscard]] double loss_factor() const
    {
        return rule_ == relaxation_heat_rule::linear ? std::max(1.0, hottest_ / detail::heat_rule_celsius) : 1.0;
    }
    /// Whether every temperature so far lies in the range of the rule. Nothing has passed yet: yes.
    [[nodiscard]] bool covered() const
    {
        return hottest_ <= detail::hottest_covered(rule_) + detail::range_rounding &&
               coldest_ >= detail::heat_rule_celsius - detail::range_rounding;
    }

private:
    static double speed_at(temperature t)
    {
        const double kelvin = t.in_kelvin();
        if (kelvin <= 0.0) return 0.0;
        constexpr double reference = detail::activation_reference_kelvin;
        return std::exp(detail::activation_kelvin * ((kelvin - reference) / (kelvin * reference)));
    }

    relaxation_heat_rule rule_;
    double plain_ = 0.0;                          // [s] counted as they are, or already weighted
    double risen_ = 0.0;                          // [K s] above 20 degC
    double hottest_ = detail::heat_rule_celsius;  // [degC]
    double coldest_ = detail::heat_rule_celsius;  // [degC]
};

/// The source of a rule. @param rule which
[[nodiscard]] inline const source& source_of(relaxation_heat_rule rule)
{
    switch (rule) {
    case relaxation_heat_rule::equivalent_time: return equivalent_curing_time;
    case relaxation_heat_rule::activation_energy: return relaxation_activation;
    case relaxation_heat_rule::linear: return linear_heat_rule;
    }
    return equivalent_curing_time;
}

}  // namespace weldloop
