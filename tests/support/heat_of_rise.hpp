#pragma once
// A law of heat for tests of networks.

#include <functional>
#include <utility>

#include <weldloop/solve/heat_network.hpp>

namespace weldloop::test {

// Heat as a function of one rise, its slope by differences.
class heat_of_rise final : public solve::heat_law {
public:
    explicit heat_of_rise(std::function<double(double)> watts) : watts_(std::move(watts)) {}
    [[nodiscard]] solve::sloped_by_two at(double rise, double, solve::asked) const override
    {
        constexpr double step = 1e-4;  // K
        return {watts_(rise), (watts_(rise + step) - watts_(rise - step)) / (2.0 * step), 0.0};
    }

private:
    std::function<double(double)> watts_;
};

}  // namespace weldloop::test
