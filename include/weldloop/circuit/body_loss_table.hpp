#pragma once
/// @file
/// The heat transfer coefficient of a body in air as a table over its rise, for solvers that ask for it a thousand
/// times.

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>

#include <weldloop/circuit/thermal_body.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/part/surroundings.hpp>

namespace weldloop::detail {

/// body_coefficient() of one diameter and emissivity, by cubics in the square root of the rise, each body's law being
/// smooth in it. Within 0.02 %, but 1 % from 0.3 to 2.5 K, beside the corner the law has at its floor of 1 K; below the
/// air's temperature and beyond the table the law is asked.
class body_loss_table {
public:
    body_loss_table() = default;

    body_loss_table(length across, emissivity surface, const surroundings& where)
        : body_{.surface = {}, .diameter = across, .emissivity = surface, .capacity = {}}, where_(&where)
    {
        for (std::size_t i = 0; i < points; ++i) {
            const double root = step * (static_cast<double>(i) - 1.0);
            value_[i] = law(root * root);
        }
        value_[0] = value_[1];  // the law is flat up to its floor of 1 K
    }

    /// What a square metre loses at a rise over the air.
    struct loss {
        double flux;   ///< [W/m2]
        double slope;  ///< by the rise [W/(m2 K)]; outside the table that of a fixed coefficient
    };

    /// @param rise over the air [K]
    [[nodiscard]] loss at(double rise) const
    {
        if (!(rise >= 0.0 && rise < highest_rise)) {
            const double h = law(rise);
            return {h * rise, h};
        }
        const double root = std::sqrt(rise), place = root / step;
        const auto cell = static_cast<std::size_t>(place);
        const double u = place - static_cast<double>(cell);
        const double a = value_[cell], b = value_[cell + 1], c = value_[cell + 2], d = value_[cell + 3];
        const double c1 = 0.5 * (c - a), c2 = a - 2.5 * b + 2.0 * c - 0.5 * d, c3 = 1.5 * (b - c) + 0.5 * (d - a);
        const double h = b + u * (c1 + u * (c2 + u * c3));
        // d(h rise)/d(rise) with place = sqrt(rise)/step
        return {h * rise, h + 0.5 * place * (c1 + u * (2.0 * c2 + 3.0 * u * c3))};
    }

private:
    static constexpr double step = 0.5;  // sqrt(K); the floor of the law at 1 K is a point of the table
    static constexpr std::size_t points = 68;
    static constexpr double highest_rise = step * step * 64.0 * 64.0;  // K

    [[nodiscard]] double law(double rise) const
    {
        const double coldest = 1.0;  // K; no body comes near it, an iteration may
        const temperature hot = temperature::kelvin(std::max(coldest, where_->air.in_kelvin() + rise));
        return body_coefficient(body_, hot, *where_).value();
    }

    thermal_body body_ = {};
    const surroundings* where_ = nullptr;
    std::array<double, points> value_{};
};

}  // namespace weldloop::detail
