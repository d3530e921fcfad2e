#pragma once
/// @file
/// A number that follows a rise, as a table. Solver adapter on plain doubles.

#include <cstddef>

#include <weldloop/solve/curve_table.hpp>

namespace weldloop::detail {

/// A number that bends over hundreds of kelvin, as a table over the rise: cubics between points 8 K apart.
class rise_table {
public:
    static constexpr double step = 8.0;
    static constexpr std::size_t cells = 64;
    static constexpr double end = step * cells;  // rises from 0 to below this

    void clear() { cubics_.clear(); }
    template <class Law>
    [[nodiscard]] solve::sloped at(double rise, const Law& law) const
    {
        const solve::sloped out = cubics_.at(rise * (1.0 / step), [&law](double place) { return law(step * place); });
        return {out.value, out.slope * (1.0 / step)};
    }

private:
    solve::lazy_cubics<cells> cubics_;
};

}  // namespace weldloop::detail
