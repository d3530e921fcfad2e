#pragma once
/// @file
/// Heat conduction in a covered conductor as exponential modes: the linear problem that the programmes are cut into.
/// Source: exponential_steps; the modes by Jacobi's rotations, as in any textbook of numerical analysis.

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>

#include <weldloop/law/covered_conductor.hpp>
#include <weldloop/solve/root.hpp>

namespace weldloop::detail {

/// A square matrix over the points of a covering.
using point_matrix = std::array<point_values, covering_points>;

/// Rates and modes of a symmetric matrix by Jacobi's rotations: a = sum over k of rate[k] v_k v_k^T, v_k the column k.
/// Rotations stop at elements that are small beside their own diagonal, which keeps the digits of the slow rates.
struct symmetric_modes {
    point_values rate;
    point_matrix vector;  // [point][mode]

    symmetric_modes() = default;

    explicit symmetric_modes(point_matrix a)
    {
        for (std::size_t i = 0; i < covering_points; ++i)
            for (std::size_t j = 0; j < covering_points; ++j) vector[i][j] = i == j ? 1.0 : 0.0;
        rotate(a);
    }

    /// Of the matrix of `near` with its diagonal elements at the conductor and the surface raised: fewer rotations,
    /// as the modes are close to those.
    symmetric_modes(const symmetric_modes& near, double at_conductor, double at_surface) : vector(near.vector)
    {
        point_matrix a;
        const point_values &conductor = vector[0], &surface = vector[surface_point];
        for (std::size_t i = 0; i < covering_points; ++i) {
            for (std::size_t j = 0; j < covering_points; ++j)
                a[i][j] = at_conductor * conductor[i] * conductor[j] + at_surface * surface[i] * surface[j];
            a[i][i] += near.rate[i];
        }
        rotate(a);
    }

    [[nodiscard]] double fastest_growth() const { return *std::max_element(rate.begin(), rate.end()); }

    [[nodiscard]] point_values to_modes(const point_values& y) const
    {
        point_values z{};
        for (std::size_t i = 0; i < covering_points; ++i)
            for (std::size_t k = 0; k < covering_points; ++k) z[k] += vector[i][k] * y[i];
        return z;
    }

    [[nodiscard]] point_values from_modes(const point_values& z) const
    {
        point_values y{};
        for (std::size_t i = 0; i < covering_points; ++i)
            for (std::size_t k = 0; k < covering_points; ++k) y[i] += vector[i][k] * z[k];
        return y;
    }

private:
    // turns the axes until nothing is left beside the diagonal
    void rotate(point_matrix& a)
    {
        constexpr int most_sweeps = 30;  // takes 4 to 6
        constexpr double small = 1e-17;  // of the diagonal: below rounding
        for (int sweep = 0; sweep < most_sweeps; ++sweep) {
            bool is_diagonal = true;
            for (std::size_t p = 0; p + 1 < covering_points; ++p)
                for (std::size_t q = p + 1; q < covering_points; ++q) {
                    const double apq = a[p][q];
                    if (apq * apq <= small * small * std::fabs(a[p][p] * a[q][q])) continue;
                    is_diagonal = false;
                    const double theta = 0.5 * (a[q][q] - a[p][p]) / apq;
                    const double t = (theta >= 0.0 ? 1.0 : -1.0) / (std::fabs(theta) + std::sqrt(theta * theta + 1.0));
                    const double c = 1.0 / std::sqrt(t * t + 1.0), s = t * c;
                    a[p][p] -= t * apq;
                    a[q][q] += t * apq;
                    a[p][q] = a[q][p] = 0.0;
                    for (std::size_t k = 0; k < covering_points; ++k) {
                        if (k != p && k != q) {
                            const double kp = a[k][p], kq = a[k][q];
                            a[k][p] = a[p][k] = c * kp - s * kq;
                            a[k][q] = a[q][k] = s * kp + c * kq;
                        }
                        const double vp = vector[k][p], vq = vector[k][q];
                        vector[k][p] = c * vp - s * vq;
                        vector[k][q] = s * vp + c * vq;
                    }
                }
            if (is_diagonal) break;
        }
        for (std::size_t k = 0; k < covering_points; ++k) rate[k] = a[k][k];
    }
};

/// Modes of a covered conductor whose heat grows by `gain` [W/(m K)] with its temperature and whose surface gives off
/// `slope` [W/(m K)], in the symmetric coordinates y = sqrt(C) x, x above the air.
[[nodiscard]] inline symmetric_modes modes_of(const conductor_numbers& c, double gain, double slope)
{
    point_matrix a{};
    for (std::size_t i = 0; i < covering_points; ++i)
        for (std::size_t j = 0; j < covering_points; ++j)
            a[i][j] = -c.conductance * covering_stiffness[i][j] / (c.root_heat[i] * c.root_heat[j]);
    a[0][0] += gain / (c.root_heat[0] * c.root_heat[0]);
    a[surface_point][surface_point] -= slope / (c.root_heat[surface_point] * c.root_heat[surface_point]);
    return symmetric_modes(a);
}

/// The same from the modes of another gain and slope, given what these have grown by.
[[nodiscard]] inline symmetric_modes modes_near(const symmetric_modes& near, const conductor_numbers& c,
                                                double gain_growth, double slope_growth)
{
    return {near, gain_growth / (c.root_heat[0] * c.root_heat[0]),
            -slope_growth / (c.root_heat[surface_point] * c.root_heat[surface_point])};
}

/// What the modes do within a time: z' = rate z + drive. Everything that does not depend on the start.
struct mode_times {
    double time = 0.0;
    point_values growth;    // exp(rate t) - 1
    point_values by_speed;  // its integral: what a unit of speed at the start adds to z by the end
    point_values by_twice;  // the integral of that: what it adds to the integral of z

    mode_times() = default;

    mode_times(const symmetric_modes& modes, double t) : time(t)
    {
        for (std::size_t k = 0; k < covering_points; ++k) {
            const double rate = modes.rate[k], x = rate * t;
            growth[k] = std::expm1(x);
            by_speed[k] = rate == 0.0 ? t : growth[k] / rate;
            // the series where the difference would lose digits
            by_twice[k] =
                t * t *
                (std::fabs(x) > 0.1
                     ? (growth[k] - x) / (x * x)
                     : 0.5 + x * (1.0 / 6 +
                                  x * (1.0 / 24 +
                                       x * (1.0 / 120 +
                                            x * (1.0 / 720 + x * (1.0 / 5040 + x * (1.0 / 40320 + x / 362880)))))));
        }
    }

    static constexpr double most_growth = 600.0;  // exponent: below the overflow of double at 709
    [[nodiscard]] static bool overflows(const symmetric_modes& modes, double t)
    {
        return !(modes.fastest_growth() * t < most_growth);
    }
};

/// The path of the modes from a start under a constant drive.
struct mode_path {
    double time = 0.0;
    point_values start, speed, finish;

    mode_path() = default;

    mode_path(const symmetric_modes& modes, const mode_times& times, const point_values& from,
              const point_values& drive)
        : time(times.time), start(from)
    {
        for (std::size_t k = 0; k < covering_points; ++k) {
            speed[k] = modes.rate[k] * start[k] + drive[k];
            finish[k] = start[k] + speed[k] * times.by_speed[k];
        }
    }
};

/// One point's y along a path. Borrows the path and its modes.
class point_path {
public:
    point_path(const symmetric_modes& modes, const mode_path& path, std::size_t point)
        : modes_(modes), path_(path), share_(modes.vector[point])
    {
    }

    [[nodiscard]] double begin() const { return sum_of(path_.start); }
    [[nodiscard]] double end() const { return sum_of(path_.finish); }

    /// At a time after the start.
    [[nodiscard]] double at(double t) const
    {
        double y = 0.0;
        for (std::size_t k = 0; k < covering_points; ++k) {
            const double rate = modes_.rate[k];
            y += share_[k] * (path_.start[k] + path_.speed[k] * (rate == 0.0 ? t : std::expm1(rate * t) / rate));
        }
        return y;
    }

    /// Integral over the whole time, for which `times` are.
    [[nodiscard]] double integral(const mode_times& times) const
    {
        double sum = 0.0;
        for (std::size_t k = 0; k < covering_points; ++k)
            sum += share_[k] * (path_.start[k] * path_.time + path_.speed[k] * times.by_twice[k]);
        return sum;
    }

    /// Times at which the point turns between start and end, in order.
    struct turnings {
        std::array<double, 4> at{};
        std::size_t count = 0;
    };

    /// Turnings are looked for between the ends, and `after_switching` also between times that grow fourfold from a
    /// 64th of the whole: there the fast modes of the covering make a point turn more than once.
    [[nodiscard]] turnings turns(const mode_times& times, bool after_switching) const
    {
        const auto slope = [this](double t) {
            value_and_slope sum{0.0, 0.0};
            for (std::size_t k = 0; k < covering_points; ++k) {
                const double part = share_[k] * path_.speed[k] * std::exp(modes_.rate[k] * t);
                sum.value += part;
                sum.slope += modes_.rate[k] * part;
            }
            return sum;
        };
        turnings out;
        double from = 0.0, before = 0.0, last = 0.0;
        for (std::size_t k = 0; k < covering_points; ++k) {
            before += share_[k] * path_.speed[k];
            last += share_[k] * path_.speed[k] * (1.0 + times.growth[k]);
        }
        const auto look = [&](double to, double after) {
            if (before * after < 0.0) {
                const double sign = before < 0.0 ? 1.0 : -1.0;
                const auto rising = [&](double t) {
                    const value_and_slope at = slope(t);
                    return value_and_slope{sign * at.value, sign * at.slope};
                };
                const double first = from + (to - from) * before / (before - after);
                out.at[out.count++] = rising_root(rising, from, to, first, "time of a turning point");
            }
            from = to;
            before = after;
        };
        if (after_switching)
            for (const double share : {1.0 / 64, 1.0 / 16, 1.0 / 4})
                look(share * path_.time, slope(share * path_.time).value);
        look(path_.time, last);
        return out;
    }

private:
    [[nodiscard]] double sum_of(const point_values& z) const
    {
        double y = 0.0;
        for (std::size_t k = 0; k < covering_points; ++k) y += share_[k] * z[k];
        return y;
    }

    const symmetric_modes& modes_;
    const mode_path& path_;
    const point_values& share_;
};

}  // namespace weldloop::detail
