#pragma once
/// @file
/// The characters of a number, both ways, without locale: std::to_chars and std::from_chars, and for a standard library
/// that lacks them for double (libc++ before 20) the same bytes by a stream in the classic locale.

#include <version>

#include <cmath>
#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

#ifdef __cpp_lib_to_chars
#include <array>
#include <charconv>
#include <system_error>
#else
#include <locale>
#include <sstream>
#endif

namespace weldloop::detail {

/// How the digits of a number are laid out.
enum class notation {
    fixed,      ///< 12.50
    scientific  ///< 1.25e+01, at least two digits of exponent
};

/// A finite number with so many digits after the point, correctly rounded. @param decimals 0 to 17
[[nodiscard]] inline std::string number_chars(double value, notation as, int decimals)
{
#ifdef __cpp_lib_to_chars
    std::array<char, 400> text;  // 309 digits before the point at most
    const auto format = as == notation::fixed ? std::chars_format::fixed : std::chars_format::scientific;
    return std::string(text.data(), std::to_chars(text.data(), text.data() + text.size(), value, format, decimals).ptr);
#else
    std::ostringstream text;
    text.imbue(std::locale::classic());
    text.setf(as == notation::fixed ? std::ios_base::fixed : std::ios_base::scientific, std::ios_base::floatfield);
    text.precision(decimals);
    text << value;
    return text.str();
#endif
}

/// What stands at the front of a text.
struct read_number {
    std::optional<double> value = {};  ///< none: it does not begin with a decimal number, or no double can hold it
    std::size_t used = 0;              ///< characters of the number; 0: there is none
};

/// The longest decimal number at the front of a text: minus sign, digits with or without a point, exponent. No plus
/// sign, no hexadecimal digits, no words for what is not a number. Correctly rounded.
[[nodiscard]] inline read_number number_at_front(std::string_view text)
{
    const auto digits_from = [text](std::size_t at) {
        const std::size_t begin = at;
        while (at < text.size() && text[at] >= '0' && text[at] <= '9') ++at;
        return at - begin;
    };
    std::size_t at = text.starts_with('-') ? 1 : 0;
    const std::size_t whole = digits_from(at);
    at += whole;
    const std::size_t part = at < text.size() && text[at] == '.' ? digits_from(at + 1) : 0;
    if (whole + part == 0) return {};
    if (at < text.size() && text[at] == '.') at += 1 + part;
    if (at < text.size() && (text[at] == 'e' || text[at] == 'E')) {
        const bool sign = at + 1 < text.size() && (text[at + 1] == '-' || text[at + 1] == '+');
        const std::size_t exponent = at + (sign ? 2 : 1);
        if (const std::size_t count = digits_from(exponent)) at = exponent + count;
    }
    read_number out{.used = at};
    double value = 0.0;
#ifdef __cpp_lib_to_chars
    if (std::from_chars(text.data(), text.data() + at, value).ec == std::errc{}) out.value = value;
#else
    std::istringstream in{std::string(text.substr(0, at))};
    in.imbue(std::locale::classic());
    // a number below the least that is normal counts as out of range there, and is read all the same
    if ((in >> value) || (std::isfinite(value) && std::fpclassify(value) == FP_SUBNORMAL)) out.value = value;
#endif
    return out;
}

}  // namespace weldloop::detail
