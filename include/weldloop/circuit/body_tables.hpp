#pragma once
/// @file
/// What bodies lose to the air as tables over their rise, one for bodies alike. Solver adapter on plain doubles.
/// Source: that of body_coefficient(), put into tables.

#include <algorithm>
#include <memory>
#include <utility>
#include <vector>

#include <weldloop/circuit/thermal_body.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/part/surroundings.hpp>
#include <weldloop/solve/curve_table.hpp>

namespace weldloop::detail {

/// Tables of body_coefficient() in one place's air, W/m2 over K: within 0.02 %, but 1 % from 0.3 to 2.5 K on
/// either side, beside the corner the law has at its floor of 1 K. A table stays where it is as long as this.
class body_tables {
public:
    explicit body_tables(const surroundings& where) : where_(where) {}

    /// @param body whose diameter and emissivity count
    [[nodiscard]] const solve::curve_table& of(const thermal_body& body)
    {
        for (const auto& [known, table] : tables_)
            if (known.diameter == body.diameter && known.emissivity == body.emissivity) return *table;
        const auto coefficient = [law = body_law(body, where_), air = where_.air.in_kelvin()](double rise) {
            constexpr double coldest = 1.0;  // K; no body comes near it, an iteration may
            return law.at(temperature::kelvin(std::max(coldest, air + rise))).value();
        };
        tables_.emplace_back(body, std::make_unique<solve::curve_table>(coefficient));
        return *tables_.back().second;
    }

private:
    surroundings where_;
    std::vector<std::pair<thermal_body, std::unique_ptr<solve::curve_table>>> tables_;
};

}  // namespace weldloop::detail
