#pragma once
/// @file
/// Heat of a resistance by the square of a current. Solver adapter on plain doubles.
/// Source: Joule's law.

#include <weldloop/solve/heat_network.hpp>

namespace weldloop::detail {

/// A resistance that a current heats. It grows with its rise; where other ways lie beside it, its share of the current
/// yields as it grows.
struct squared_resistance {
    double at_zero = 0.0;    ///< [ohm] heat over the square of the whole current at no rise, with the share it has cold
    double by_kelvin = 0.0;  ///< [ohm/K] by how much that grows
    double cold = 0.0;       ///< [ohm] the same at 20 degC; needed where it yields
    double yields = 0.0;     ///< its share when cold is 1 + yields (growth - 1) times what it is; 0: it keeps its share

    /// Heat over the square of the current and its slope [ohm, ohm/K].
    struct heat {
        double ohms = 0.0, slope = 0.0;
    };
    /// At a rise [K].
    [[nodiscard]] heat at(double rise) const
    {
        const double straight = at_zero + by_kelvin * rise;
        if (!(yields > 0.0)) return {straight, by_kelvin};
        constexpr double least = 0.1;  // growth; an iteration may overshoot to below the absolute zero
        if (!(straight > least * cold)) {
            const double falls = 1.0 + yields * (least - 1.0);
            return {least * cold / (falls * falls), 0.0};
        }
        const double growth = straight / cold, falls = 1.0 + yields * (growth - 1.0);
        return {straight / (falls * falls), by_kelvin * (falls - 2.0 * yields * growth) / (falls * falls * falls)};
    }
};

/// Heat of such a resistance under a current that may change with the state.
class squared_source final : public solve::heat_law {
public:
    /// @param amps of its branch, kept by the caller @param law of the resistance
    squared_source(const double& amps, const squared_resistance& law) : amps_(&amps), law_(law) {}
    [[nodiscard]] solve::sloped_by_two at(double rise, double, solve::asked) const override
    {
        const double squared = *amps_ * *amps_;
        const auto [ohms, slope] = law_.at(rise);
        return {squared * ohms, squared * slope, 0.0};
    }

private:
    const double* amps_;
    squared_resistance law_;
};

}  // namespace weldloop::detail
