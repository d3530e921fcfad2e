#pragma once
/// @file
/// What a surface gives off as a table over its rise, filled where it is asked for.

#include <array>
#include <cmath>
#include <cstddef>
#include <functional>
#include <limits>
#include <utility>

namespace weldloop::solve {

/// A value with its slope.
struct sloped {
    double value = 0.0;  ///< the value
    double slope = 0.0;  ///< its derivative
};

/// A loss law q(x) = h(x) x with h smooth in the square root of x, by cubics in that root between points a half apart.
/// Points are worked out where they are asked for first; below zero and above 1024 the law itself is asked.
///
/// Not for two threads at once: the table fills while it is read.
class curve_table {
public:
    /// A table without a law, to be assigned to.
    curve_table() { value_.fill(std::numeric_limits<double>::quiet_NaN()); }

    /// @param coefficient h(x), x above or below zero
    explicit curve_table(std::function<double(double)> coefficient) : curve_table() { law_ = std::move(coefficient); }

    /// h(x) x and its slope. @param x any finite number, not far below zero
    [[nodiscard]] sloped at(double x) const
    {
        if (!(x >= 0.0 && x < highest)) {
            const double h = law_(x);
            return {h * x, h};
        }
        const double place = std::sqrt(x) / step;
        const auto cell = static_cast<std::size_t>(place);
        const double u = place - static_cast<double>(cell);
        const double a = point(cell), b = point(cell + 1), c = point(cell + 2), d = point(cell + 3);
        const double c1 = 0.5 * (c - a), c2 = a - 2.5 * b + 2.0 * c - 0.5 * d, c3 = 1.5 * (b - c) + 0.5 * (d - a);
        const double h = b + u * (c1 + u * (c2 + u * c3));
        // d(h x)/dx with place = sqrt(x)/step
        return {h * x, h + 0.5 * place * (c1 + u * (2.0 * c2 + 3.0 * u * c3))};
    }

private:
    static constexpr double step = 0.5;
    static constexpr std::size_t points = 68;
    static constexpr double highest = step * step * 64.0 * 64.0;
    static constexpr double least = 1e-6;  // x: the law at zero is its limit

    [[nodiscard]] double point(std::size_t i) const
    {
        double& v = value_[i];
        if (std::isnan(v)) {
            const double root = step * (i == 0 ? 1.0 : static_cast<double>(i) - 1.0);  // even about zero
            v = law_(std::fmax(root * root, least));
        }
        return v;
    }

    std::function<double(double)> law_;
    mutable std::array<double, points> value_{};
};

}  // namespace weldloop::solve
