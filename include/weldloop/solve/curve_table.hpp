#pragma once
/// @file
/// What a surface gives off as a table over its rise, filled where it is asked for.

#include <array>
#include <bitset>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <functional>
#include <utility>

namespace weldloop::solve {

/// A value with its slope.
struct sloped {
    double value = 0.0;  ///< [its unit] the value
    double slope = 0.0;  ///< [its unit over that of the place] its derivative
};

/// Cubics through four points of a curve each, one place apart, their points worked out where they are asked for first.
/// Not for two threads at once: it fills while it is read.
template <std::size_t cells>
class lazy_cubics {
public:
    lazy_cubics() {}  ///< with nothing known: numbers are written before they are read, and not before
    lazy_cubics(const lazy_cubics& other) { *this = other; }  ///< with what the other knows
    /// Takes what another knows, and forgets the rest. @param other any, also this
    lazy_cubics& operator=(const lazy_cubics& other)
    {
        known_cells_ = other.known_cells_;
        known_points_ = other.known_points_;
        for (std::size_t i = 0; i < point_.size(); ++i)
            if (known_points_[i]) point_[i] = other.point_[i];
        for (std::size_t i = 0; i < cells; ++i)
            if (is_known(i)) cell_[i] = other.cell_[i];
        return *this;
    }
    /// Forgets every point.
    void clear()
    {
        known_cells_ = 0;
        known_points_.reset();
    }

    /// The curve and its slope by the place. @param place [cells], at least 0, below `cells` @param curve asked at
    /// whole places from -1 to cells + 1
    template <class Curve>
    [[nodiscard]] sloped at(double place, const Curve& curve) const
    {
        const int number = static_cast<int>(place);
        const cubic& c = cell_at(number, curve);
        const double u = place - number;
        return {c.c0 + u * (c.c1 + u * (c.c2 + u * c.c3)), c.c1 + u * (2.0 * c.c2 + 3.0 * u * c.c3)};
    }
    /// The curve alone [unit of the curve]. @param place [cells], as in at() @param curve as in at()
    template <class Curve>
    [[nodiscard]] double value_at(double place, const Curve& curve) const
    {
        const int number = static_cast<int>(place);
        const cubic& c = cell_at(number, curve);
        const double u = place - number;
        return c.c0 + u * (c.c1 + u * (c.c2 + u * c.c3));
    }

private:
    static_assert(cells <= 64, "a bit for every cell");
    struct cubic {
        double c0, c1, c2, c3;
    };
    [[nodiscard]] bool is_known(std::size_t cell) const { return (known_cells_ >> cell & 1U) != 0U; }
    template <class Curve>
    [[nodiscard]] const cubic& cell_at(int number, const Curve& curve) const
    {
        if (!is_known(static_cast<unsigned>(number))) fill(number, curve);
        return cell_[static_cast<unsigned>(number)];
    }

    // Seldom asked for, and kept out of at(), which then fits into its callers.
    template <class Curve>
    [[gnu::noinline]] void fill(int number, const Curve& curve) const
    {
        double* const p = &point_[static_cast<unsigned>(number)];
        for (int i = 0; i < 4; ++i) {
            const auto which = static_cast<unsigned>(number + i);
            if (known_points_[which]) continue;
            p[i] = curve(number + i - 1.0);
            known_points_.set(which);
        }
        known_cells_ |= std::uint64_t{1} << static_cast<unsigned>(number);
        cell_[static_cast<unsigned>(number)] = {p[1], 0.5 * (p[2] - p[0]), p[0] - 2.5 * p[1] + 2.0 * p[2] - 0.5 * p[3],
                                                1.5 * (p[1] - p[2]) + 0.5 * (p[3] - p[0])};
    }

    mutable std::uint64_t known_cells_ = 0;
    mutable std::bitset<cells + 3> known_points_;
    mutable std::array<double, cells + 3> point_;
    mutable std::array<cubic, cells> cell_;
};

/// A loss law q(x) = h(x) x with h smooth in the square root of x, by cubics in that root between points a half apart.
/// Points are worked out where they are asked for first; below -16 and from 1024 on the law itself is asked.
///
/// Accuracy: exact, but for rounding, from 0.25 on where h is a square in the root. Heat of a cylinder in still air by
/// free convection and radiation (tests/oracle/digits): from a rise of 1 K on 1e-3, from 4 K on 2e-4; smaller rises,
/// where such an h is not smooth in the root, come out within 0.03 K. Where a law steps from one formula to another, as
/// the cable standard's and Morgan's do, 0.5 to 1 % beside the step.
///
/// Not for two threads at once: the table fills while it is read.
class curve_table {
public:
    /// A table without a law, to be assigned to.
    curve_table() = default;

    /// @param coefficient h(x), x above or below zero; on either side alike or not
    explicit curve_table(std::function<double(double)> coefficient) : law_(std::move(coefficient)) {}

    /// h(x) x and its slope. @param x [unit of the table], any, not far below zero
    [[nodiscard]] sloped at(double x) const
    {
        if (!(x >= 0.0 && x < highest)) return below_or_beyond(x);
        const double place = std::sqrt(x) * (1.0 / step);
        const sloped h = cubics_.at(place, [this](double at) { return at_place(at); });
        return {h.value * x, h.value + 0.5 * place * h.slope};  // place = sqrt(x)/step
    }
    /// h(x) x alone [unit of the table]. @param x [unit of the table], as in at()
    [[nodiscard]] double value_at(double x) const
    {
        if (!(x >= 0.0 && x < highest)) return below_or_beyond(x).value;
        return x * cubics_.value_at(std::sqrt(x) * (1.0 / step), [this](double at) { return at_place(at); });
    }

private:
    static constexpr double step = 0.5;
    static constexpr std::size_t cells = 64;
    static constexpr std::size_t cells_below = 8;
    static constexpr double within = 1.0 - 1e-12;  // of the last cell: nearer its end the root may round to the end
    static constexpr double highest = within * step * step * cells * cells,
                            lowest = -within * step * step * cells_below * cells_below;
    static constexpr double least = 1e-6;  // x: the law at zero is its limit

    [[nodiscard]] double at_place(double place) const
    {
        return law_(std::fmax(step * step * place * place, least));  // even about zero
    }

    // What carries no current lies a rounding below zero as often as above, what is cooled some kelvins.
    [[nodiscard, gnu::noinline]] sloped below_or_beyond(double x) const
    {
        if (!(x > lowest && x < 0.0)) return by_law(x);
        const double place = std::sqrt(-x) * (1.0 / step);
        const sloped h = below_.at(
            place, [this](double at) { return law_(std::fmin(-step * step * at * at, -least)); });  // even about zero
        return {h.value * x, h.value + 0.5 * place * h.slope};  // place = sqrt(-x)/step
    }

    [[nodiscard]] sloped by_law(double x) const
    {
        const double h = law_(x), further = 1e-3 * (1.0 + std::fabs(x));
        return {h * x, (law_(x + further) * (x + further) - h * x) / further};
    }

    std::function<double(double)> law_;
    lazy_cubics<cells> cubics_;
    lazy_cubics<cells_below> below_;
};

}  // namespace weldloop::solve
