#pragma once
/// @file
/// Numbers, bands and hours as JSON. Every other header that knows nlohmann-json begins here.

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <string>
#include <string_view>

#include <nlohmann/json.hpp>

#include <weldloop/core/band.hpp>
#include <weldloop/core/error.hpp>
#include <weldloop/core/number_text.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/text.hpp>
#include <weldloop/io/report/escape.hpp>
#include <weldloop/io/report/report_words.hpp>
#include <weldloop/rating/caution_words.hpp>

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

/// A value as indented text: bytes that are not UTF-8 become U+FFFD; characters that are not seen and steer a terminal
/// or the text around them are written as escapes, which read back as what they are.
[[nodiscard]] inline std::string json_text(const json& value)
{
    const std::string raw = value.dump(2, ' ', false, json::error_handler_t::replace);
    std::string out;
    out.reserve(raw.size());
    for (std::size_t at = 0; at < raw.size();) {
        const std::size_t bytes = std::max<std::size_t>(utf8_length_at(raw, at), 1);
        const std::string_view c = std::string_view(raw).substr(at, bytes);
        if (c != "\n" && is_control_at(raw, at, bytes))
            for (const char d : json(std::string(c)).dump(-1, ' ', true)) {
                if (d != '"') out.push_back(d);
            }
        else
            out.append(c);
        at += bytes;
    }
    return out;
}

/// The ids of cautions, in their order. @param cautions sentences of the library
template <class Sentences>
[[nodiscard]] json json_caution_ids(const Sentences& cautions)
{
    json out = json::array();
    for (const std::string_view words : cautions)
        if (const auto id = caution_of(words)) out.push_back(std::string(to_text(*id)));
    return out;
}

[[nodiscard]] inline json json_hours(duration d)
{
    return json_number(number_in(d, "h"));
}

}  // namespace weldloop::detail
