#pragma once
/// @file
/// Numbers as text: short, without locale, never "inf" or "nan" in disguise.

#include <cmath>
#include <cstddef>
#include <string>

#include <weldloop/core/error.hpp>
#include <weldloop/core/number_chars.hpp>

namespace weldloop {

/// A number with a given count of significant digits, plain notation between 1e-4 and 1e9, trailing zeros cut.
/// Digits before the point are never rounded away. A value that is not finite reads "not a number" or "infinite".
/// @param value any number @param digits significant digits, 1 to 17
/// @throws out_of_range_error for another count of digits
[[nodiscard]] inline std::string number_text(double value, int digits = 3)
{
    if (digits < 1 || digits > 17) throw out_of_range_error("significant digits", std::to_string(digits), "1 to 17");
    if (std::isnan(value)) return "not a number";
    if (std::isinf(value)) return value < 0 ? "minus infinite" : "infinite";
    if (value == 0.0) return "0";

    const double magnitude = std::fabs(value);
    if (magnitude < 1e-4 || magnitude >= 1e9) {
        const std::string out = detail::number_chars(value, detail::notation::scientific, digits - 1);
        const std::size_t exponent_at = out.find('e');
        std::size_t kept = exponent_at;
        if (out.find('.') != std::string::npos) {
            while (out[kept - 1] == '0') --kept;
            if (out[kept - 1] == '.') --kept;
        }
        return out.substr(0, kept) + out.substr(exponent_at);
    }
    const int before_point = static_cast<int>(std::floor(std::log10(magnitude))) + 1;
    const int decimals = digits > before_point ? digits - before_point : 0;
    std::string out = detail::number_chars(value, detail::notation::fixed, decimals);
    if (decimals > 0) {
        while (out.back() == '0') out.pop_back();
        if (out.back() == '.') out.pop_back();
    }
    return out;
}

}  // namespace weldloop
