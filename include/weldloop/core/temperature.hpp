#pragma once
/// @file
/// A temperature as a point on the absolute scale.
///
/// A point is not a difference: two points cannot be added, a point cannot be scaled, and 5 degC is not 5 K. The
/// difference of two points is a `temperature_difference`, and that can be added to a point.

#include <cmath>
#include <compare>
#include <concepts>
#include <limits>

#include <weldloop/core/error.hpp>
#include <weldloop/core/number_text.hpp>
#include <weldloop/core/quantities.hpp>

namespace weldloop {

/// A temperature point. Default: 20 degC, the reference temperature of published resistivities.
class temperature {
public:
    static constexpr double celsius_zero_in_kelvin = 273.15;  ///< [K] exact, definition of the Celsius scale

    constexpr temperature() = default;

    /// @param value [K], 0 or above. @throws not_finite_error, out_of_range_error
    [[nodiscard]] static constexpr temperature kelvin(double value) { return temperature(checked(value)); }
    /// @param value [degC], -273.15 or above. @throws not_finite_error, out_of_range_error
    [[nodiscard]] static constexpr temperature celsius(double value) { return kelvin(value + celsius_zero_in_kelvin); }
    /// @param value [degF], -459.67 or above. @throws not_finite_error, out_of_range_error
    [[nodiscard]] static constexpr temperature fahrenheit(double value)
    {
        return kelvin((value + 459.67) * (5.0 / 9.0));
    }

    [[nodiscard]] constexpr double in_kelvin() const noexcept { return kelvin_; }                            ///< [K]
    [[nodiscard]] constexpr double in_celsius() const noexcept { return kelvin_ - celsius_zero_in_kelvin; }  ///< [degC]
    [[nodiscard]] constexpr double in_fahrenheit() const noexcept { return kelvin_ * 1.8 - 459.67; }         ///< [degF]

    /// The point as a difference from absolute zero, for laws that need T itself (radiation, Lorenz, Arrhenius).
    [[nodiscard]] constexpr temperature_difference above_absolute_zero() const
    {
        return in_si<temperature_difference>(kelvin_);
    }

    /// How much hotter the first point is [K].
    friend constexpr temperature_difference operator-(temperature a, temperature b)
    {
        return in_si<temperature_difference>(a.kelvin_ - b.kelvin_);
    }
    /// A point that much hotter. @throws not_finite_error, out_of_range_error below absolute zero
    friend constexpr temperature operator+(temperature a, temperature_difference d)
    {
        return kelvin(a.kelvin_ + d.value());
    }
    /// The same.
    friend constexpr temperature operator+(temperature_difference d, temperature a) { return a + d; }
    /// A point that much colder. @throws not_finite_error, out_of_range_error below absolute zero
    friend constexpr temperature operator-(temperature a, temperature_difference d)
    {
        return kelvin(a.kelvin_ - d.value());
    }
    /// Hotter is greater.
    friend constexpr auto operator<=>(temperature, temperature) = default;
    /// @name The same as one comparison of numbers: compilers make three of an ordering
    /// @{
    /// colder than
    friend constexpr bool operator<(temperature a, temperature b) { return a.kelvin_ < b.kelvin_; }
    /// hotter than
    friend constexpr bool operator>(temperature a, temperature b) { return a.kelvin_ > b.kelvin_; }
    /// at most as hot as
    friend constexpr bool operator<=(temperature a, temperature b) { return a.kelvin_ <= b.kelvin_; }
    /// at least as hot as
    friend constexpr bool operator>=(temperature a, temperature b) { return a.kelvin_ >= b.kelvin_; }
    /// @}

    /// Does not compile, and says why: a temperature has no negative.
    template <class T = void>
    constexpr temperature operator-() const
    {
        static_assert(!sizeof(T*), "a temperature has no negative: write temperature::celsius(-10)");
        return *this;
    }

private:
    constexpr explicit temperature(double k) : kelvin_(k) {}

    static constexpr double checked(double k)
    {
        if (!(k >= 0.0 && k <= std::numeric_limits<double>::max())) [[unlikely]]
            refuse(k);
        return k;
    }
    [[noreturn, gnu::noinline, gnu::cold]] static void refuse(double k)
    {
        if (!std::isfinite(k)) throw not_finite_error("temperature", number_text(k) + " K");
        throw out_of_range_error("temperature", number_text(k) + " K", "absolute zero (0 K, -273.15 degC) or above");
    }

    double kelvin_ = 293.15;
};

/// Two temperature points cannot be added; the overload exists to say so in one sentence.
template <class T>
    requires std::same_as<T, temperature>
constexpr temperature operator+(T a, T)
{
    static_assert(!sizeof(T*), "two temperature points cannot be added: add a temperature_difference, such as 10_K");
    return a;
}

/// 20 degC, to which published resistivities are referred.
inline constexpr temperature reference_temperature = temperature::celsius(20.0);

}  // namespace weldloop
