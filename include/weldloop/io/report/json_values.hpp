#pragma once
/// @file
/// Numbers, bands and hours as JSON. Every other header that knows nlohmann-json begins here.

#include <cmath>

#include <nlohmann/json.hpp>

#include <weldloop/core/band.hpp>
#include <weldloop/core/error.hpp>
#include <weldloop/core/number_text.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/text.hpp>
#include <weldloop/io/report/report_words.hpp>

namespace weldloop::detail {

using json = nlohmann::ordered_json;

/// A number of seven digits: more would pretend. @throws not_finite_error: JSON has no NaN
[[nodiscard]] inline json json_number(double value)
{
    if (!std::isfinite(value)) throw not_finite_error("reported value", number_text(value));
    if (value == 0.0) return 0.0;
    const double scale = std::pow(10.0, 6.0 - std::floor(std::log10(std::abs(value))));
    if (!std::isfinite(scale) || scale == 0.0) return value;
    const double rounded = std::round(value * scale) / scale;
    return std::isfinite(rounded) ? rounded : value;
}

template <class Q>
[[nodiscard]] json json_band(const band<Q>& b)
{
    return {{"low", json_number(si_number(b.low))},
            {"typical", json_number(si_number(b.typical))},
            {"high", json_number(si_number(b.high))}};
}

[[nodiscard]] inline json json_hours(duration d)
{
    return json_number(number_in(d, "h"));
}

}  // namespace weldloop::detail
