#pragma once
/// @file
/// Straight lines through readings: linear least squares with up to three unknowns, their standard errors and the
/// spread of the readings about the line.

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <optional>
#include <span>
#include <utility>

#include <weldloop/core/require.hpp>

namespace weldloop::solve {

/// Most unknowns of a line.
inline constexpr std::size_t most_unknowns = 3;

/// One reading: y = sum of x[k] a[k] with a scatter of equal size for all.
struct line_reading {
    std::array<double, most_unknowns> x{};  ///< factors of the unknowns, any
    double y = 0.0;                         ///< [its unit] what was read, any
};

/// The line that fits best.
struct fitted_line {
    std::array<double, most_unknowns> a{};      ///< [unit of y over that of x] unknowns
    std::array<double, most_unknowns> error{};  ///< [unit of y over that of x] their standard errors, from the spread
    double spread = 0.0;  ///< [unit of y] standard deviation of y about the line, with n - unknowns
};

/// Least squares by the normal equations, Gauss and Jordan with pivots. @param readings any @param unknowns 1 to 3,
/// the first of each reading's factors @return empty where there are no more readings than unknowns, or they do not
/// tell the unknowns apart, or their squares leave the numbers there are @throws not_finite_error
[[nodiscard]] inline std::optional<fitted_line> fit_line(std::span<const line_reading> readings, std::size_t unknowns)
{
    if (unknowns < 1 || unknowns > most_unknowns || readings.size() <= unknowns) return std::nullopt;
    for (const line_reading& r : readings) {
        require_finite(r.y, "reading of a line");
        for (std::size_t i = 0; i < unknowns; ++i) require_finite(r.x[i], "factor of a line's unknown");
    }
    std::array<std::array<double, most_unknowns>, most_unknowns> m{}, inverse{};
    std::array<double, most_unknowns> right{};
    for (const line_reading& r : readings)
        for (std::size_t i = 0; i < unknowns; ++i) {
            right[i] += r.x[i] * r.y;
            for (std::size_t j = 0; j < unknowns; ++j) m[i][j] += r.x[i] * r.x[j];
        }
    std::array<double, most_unknowns> size{};
    for (std::size_t i = 0; i < unknowns; ++i) {
        size[i] = std::sqrt(m[i][i]);
        if (!(size[i] > 0.0) || !std::isfinite(size[i])) return std::nullopt;
    }
    for (std::size_t i = 0; i < unknowns; ++i)
        for (std::size_t j = 0; j < unknowns; ++j) {
            m[i][j] /= size[i] * size[j];
            inverse[i][j] = i == j ? 1.0 : 0.0;
        }
    constexpr double singular = 1e-10;  // of the scaled equations
    for (std::size_t k = 0; k < unknowns; ++k) {
        std::size_t pivot = k;
        for (std::size_t i = k + 1; i < unknowns; ++i)
            if (std::fabs(m[i][k]) > std::fabs(m[pivot][k])) pivot = i;
        if (!(std::fabs(m[pivot][k]) > singular)) return std::nullopt;
        std::swap(m[k], m[pivot]);
        std::swap(inverse[k], inverse[pivot]);
        const double by = 1.0 / m[k][k];
        for (std::size_t j = 0; j < unknowns; ++j) {
            m[k][j] *= by;
            inverse[k][j] *= by;
        }
        for (std::size_t i = 0; i < unknowns; ++i) {
            if (i == k) continue;
            const double f = m[i][k];
            for (std::size_t j = 0; j < unknowns; ++j) {
                m[i][j] -= f * m[k][j];
                inverse[i][j] -= f * inverse[k][j];
            }
        }
    }
    fitted_line out;
    for (std::size_t i = 0; i < unknowns; ++i)
        for (std::size_t j = 0; j < unknowns; ++j) out.a[i] += inverse[i][j] * right[j] / (size[i] * size[j]);
    double squares = 0.0;
    for (const line_reading& r : readings) {
        double miss = r.y;
        for (std::size_t i = 0; i < unknowns; ++i) miss -= r.x[i] * out.a[i];
        squares += miss * miss;
    }
    out.spread = std::sqrt(squares / static_cast<double>(readings.size() - unknowns));
    for (std::size_t i = 0; i < unknowns; ++i)
        out.error[i] = out.spread * std::sqrt(std::max(0.0, inverse[i][i])) / size[i];
    for (std::size_t i = 0; i < unknowns; ++i)
        if (!std::isfinite(out.a[i]) || !std::isfinite(out.error[i]) || !std::isfinite(out.spread)) return std::nullopt;
    return out;
}

}  // namespace weldloop::solve
