#pragma once
/// @file
/// Conductor sizes: AWG, aught (1/0 to 4/0), circular mils in thousands, square millimetres.

#include <compare>
#include <limits>
#include <numbers>
#include <string>

#include <weldloop/core/error.hpp>
#include <weldloop/core/number_text.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/unit_text.hpp>

namespace weldloop {

/// The gauge progression: 36 AWG is 5 mil, 4/0 is 460 mil, 39 equal steps between them.
inline constexpr source awg_definition{"ASTM B258", "2002", "definition: d = 5 mil x 92^((36 - n)/39)",
                                       source_kind::standard};

/// How a size was written.
enum class size_scale {
    awg,        ///< American wire gauge, 1 to 40
    aught,      ///< 1/0 to 4/0 of the same gauge
    kcmil,      ///< thousands of circular mils
    square_mm,  ///< square millimetres of metal
};

/// The size of a conductor, as written. Two sizes compare by area; "2/0 AWG" stays "2/0 AWG" when printed.
class conductor_size {
public:
    /// @param scale how the size is written @param number gauge number 1 to 40, count of aughts 1 to 4,
    /// 1 to 5000 kcmil or 0.01 to 2500 mm2
    /// @throws not_finite_error; out_of_range_error for a number the scale does not have
    constexpr conductor_size(size_scale scale, double number)
        : scale_(scale), number_(checked(scale, number)), area_(area_of(scale, number).value())
    {
    }

    [[nodiscard]] constexpr size_scale scale() const noexcept { return scale_; }  ///< how it is written
    [[nodiscard]] constexpr double number() const noexcept { return number_; }    ///< the number in that scale

    /// Metal area [m2]: of the solid gauge wire, of the stated circular mils, or the nominal square millimetres.
    [[nodiscard]] constexpr weldloop::area area() const { return in_si<weldloop::area>(area_); }

    /// By area.
    friend constexpr std::weak_ordering operator<=>(const conductor_size& a, const conductor_size& b)
    {
        const double x = a.area().value(), y = b.area().value();
        return x < y ? std::weak_ordering::less : y < x ? std::weak_ordering::greater : std::weak_ordering::equivalent;
    }
    /// As written: 1 AWG is not the square millimetres of the same area.
    friend constexpr bool operator==(const conductor_size& a, const conductor_size& b)
    {
        return a.scale_ == b.scale_ && a.number_ == b.number_;
    }

private:
    static constexpr double checked(size_scale scale, double n)
    {
        if (!(n >= -std::numeric_limits<double>::max() && n <= std::numeric_limits<double>::max()))
            throw not_finite_error("conductor size", number_text(n));
        const bool whole = n >= 0 && n <= 1e6 && n == static_cast<double>(static_cast<int>(n));
        switch (scale) {
        case size_scale::awg:
            if (!(whole && n >= 1 && n <= 40))
                throw out_of_range_error("AWG size", number_text(n),
                                         "whole numbers 1 to 40; aught(1) to aught(4) above 1 AWG");
            break;
        case size_scale::aught:
            if (!(whole && n >= 1 && n <= 4))
                throw out_of_range_error("aught size", number_text(n), "1 to 4, for 1/0 to 4/0");
            break;
        case size_scale::kcmil:
            if (!(n >= 1 && n <= 5000)) throw out_of_range_error("kcmil size", number_text(n), "1 to 5000 kcmil");
            break;
        case size_scale::square_mm:
            if (!(n >= 0.01 && n <= 2500))
                throw out_of_range_error("square millimetre size", number_text(n), "0.01 to 2500 mm2");
            break;
        }
        return n;
    }

    // d = 5 mil x r^(36 - n) with r = 92^(1/39): whole powers only, so that it is a constant expression everywhere
    static constexpr length gauge_diameter(int n)
    {
        constexpr double thirty_ninth_root_of_92 = 1.1229321965322814;
        double d_mil = 5.0;
        for (int step = n; step < 36; ++step) d_mil *= thirty_ninth_root_of_92;
        for (int step = 36; step < n; ++step) d_mil /= thirty_ninth_root_of_92;
        return in_si<length>(d_mil * 1e-3 * detail::metres_per_inch);
    }

    static constexpr weldloop::area circle(length d) { return 0.25 * std::numbers::pi * d * d; }

    static constexpr weldloop::area area_of(size_scale scale, double number)
    {
        switch (scale) {
        case size_scale::awg: return circle(gauge_diameter(static_cast<int>(number)));
        case size_scale::aught: return circle(gauge_diameter(1 - static_cast<int>(number)));
        case size_scale::kcmil: return in_si<weldloop::area>(number * 1e3 * detail::square_metres_per_cmil);
        case size_scale::square_mm: break;
        }
        return in_si<weldloop::area>(number * 1e-6);
    }

    size_scale scale_;
    double number_;
    double area_;  // m2; kept as a gauge costs dozens of products, plain so that a size stays trivially copyable
};

/// @name Sizes as they are spoken
/// @throws out_of_range_error for a number the scale does not have
/// @{

/// American wire gauge, 1 to 40: awg(4). @param number the gauge
[[nodiscard]] constexpr conductor_size awg(int number)
{
    return {size_scale::awg, static_cast<double>(number)};
}
/// Gauge sizes above 1 AWG, 1/0 to 4/0: aught(2) is 2/0. @param count of aughts, 1 to 4
[[nodiscard]] constexpr conductor_size aught(int count)
{
    return {size_scale::aught, static_cast<double>(count)};
}
/// Thousands of circular mils: kcmil(250). @param thousands [kcmil], 1 to 5000
[[nodiscard]] constexpr conductor_size kcmil(double thousands)
{
    return {size_scale::kcmil, thousands};
}
/// Square millimetres of metal: square_mm(70). @param number [mm2], 0.01 to 2500
[[nodiscard]] constexpr conductor_size square_mm(double number)
{
    return {size_scale::square_mm, number};
}
/// @}

/// The size as written: "1 AWG", "2/0 AWG", "250 kcmil", "70 mm2".
[[nodiscard]] inline std::string to_text(const conductor_size& s)
{
    switch (s.scale()) {
    case size_scale::awg: return number_text(s.number()) + " AWG";
    case size_scale::aught: return number_text(s.number()) + "/0 AWG";
    case size_scale::kcmil: return number_text(s.number(), 6) + " kcmil";
    case size_scale::square_mm: break;
    }
    return number_text(s.number(), 6) + " mm2";
}

}  // namespace weldloop
