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
    curve_table() = default;

    /// @param coefficient h(x), x above or below zero
    explicit curve_table(std::function<double(double)> coefficient) : law_(std::move(coefficient))
    {
        value_.fill(std::numeric_limits<double>::quiet_NaN());
    }

    /// h(x) x and its slope. @param x any finite number, not far below zero
    [[nodiscard]] sloped at(double x) const
    {
        if (!(x >= 0.0 && x < highest)) {
            const double h = law_(x);
            return {h * x, h};
        }
        const double place = std::sqrt(x) * (1.0 / step);
        const auto number = static_cast<std::size_t>(static_cast<int>(place));
        const cubic& c = cell_[number];
        if (!c.known) fill(number);
        const double u = place - static_cast<double>(static_cast<int>(number));
        const double h = c.c0 + u * (c.c1 + u * (c.c2 + u * c.c3));
        // d(h x)/dx with place = sqrt(x)/step
        return {h * x, h + 0.5 * place * (c.c1 + u * (2.0 * c.c2 + 3.0 * u * c.c3))};
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

    struct cubic {
        double c0 = 0.0, c1 = 0.0, c2 = 0.0, c3 = 0.0;
        bool known = false;
    };
    void fill(std::size_t number) const
    {
        const double a = point(number), b = point(number + 1), c = point(number + 2), d = point(number + 3);
        cell_[number] = {b, 0.5 * (c - a), a - 2.5 * b + 2.0 * c - 0.5 * d, 1.5 * (b - c) + 0.5 * (d - a), true};
    }

    std::function<double(double)> law_;
    mutable std::array<double, points> value_{};
    mutable std::array<cubic, points - 3> cell_{};
};

}  // namespace weldloop::solve
