#pragma once
/// @file
/// Ratios as checked types. A duty of 60 or an emissivity of 9 is a slip of the unit, so a plain number is taken
/// only if it can be, and is read back with static_cast<double>.

#include <cmath>
#include <compare>
#include <string>

#include <weldloop/core/error.hpp>
#include <weldloop/core/number_text.hpp>

namespace weldloop {

/// A dimensionless number that must lie within Rule::low .. Rule::high; Rule::low_excluded / high_excluded say
/// whether the ends belong to it.
template <class Rule>
class bounded_number {
public:
    constexpr bounded_number() = default;

    /// @param value the plain number, 0.6 for 60 %, within Rule::low and Rule::high @throws not_finite_error,
    /// out_of_range_error
    constexpr bounded_number(double value) : value_(checked(value)) {}  // NOLINT: a ratio parameter accepts a number

    /// What it may be, in percent: "above 0 % to 100 %".
    [[nodiscard]] static std::string allowed_percent()
    {
        return (Rule::low_excluded ? "above " : "from ") + number_text(100.0 * Rule::low) +
               (Rule::high_excluded ? " % to below " : " % to ") + number_text(100.0 * Rule::high) + " %";
    }

    /// The plain number.
    constexpr explicit operator double() const noexcept { return value_; }
    /// By number.
    friend constexpr auto operator<=>(bounded_number, bounded_number) = default;

private:
    static constexpr double checked(double v)
    {
        const bool is_high_enough = Rule::low_excluded ? v > Rule::low : v >= Rule::low;
        if (!(is_high_enough && (Rule::high_excluded ? v < Rule::high : v <= Rule::high))) [[unlikely]]
            refuse(v);
        return v;
    }
    [[noreturn, gnu::noinline, gnu::cold]] static void refuse(double v)
    {
        if (!std::isfinite(v)) throw not_finite_error(Rule::name, number_text(v));
        throw out_of_range_error(Rule::name, number_text(v),
                                 (Rule::low_excluded ? "above " : "from ") + number_text(Rule::low) +
                                     (Rule::high_excluded ? " to below " : " to ") + number_text(Rule::high) +
                                     ", as a plain ratio");
    }

    double value_ = Rule::initial;
};

namespace detail {
/// Zero to one, both ends allowed.
struct unit_interval {
    static constexpr double low = 0.0, high = 1.0, initial = 0.0;
    static constexpr bool low_excluded = false, high_excluded = false;
};
struct fraction_rule : unit_interval {
    static constexpr const char* name = "fraction";
};
struct duty_rule : unit_interval {
    static constexpr const char* name = "duty fraction";
    static constexpr double initial = 1.0;
    static constexpr bool low_excluded = true;
};
struct emissivity_rule : unit_interval {
    static constexpr const char* name = "emissivity";
    static constexpr double initial = 0.9;
};
struct strand_rule : unit_interval {
    static constexpr const char* name = "missing strands";
    static constexpr bool high_excluded = true;
};
struct stress_rule : unit_interval {
    static constexpr const char* name = "stress ratio";
};
struct likelihood_rule : unit_interval {
    static constexpr const char* name = "likelihood";
};
}  // namespace detail

using fraction = bounded_number<detail::fraction_rule>;       ///< any share, 0 to 1
using duty_fraction = bounded_number<detail::duty_rule>;      ///< on-time over period, above 0 to 1
using emissivity = bounded_number<detail::emissivity_rule>;   ///< grey-body emissivity, 0 to 1
using strand_loss = bounded_number<detail::strand_rule>;      ///< share of strands missing, 0 to below 1
using stress_fraction = bounded_number<detail::stress_rule>;  ///< stress over tensile strength, 0 to 1
using likelihood = bounded_number<detail::likelihood_rule>;   ///< probability, 0 to 1

}  // namespace weldloop
