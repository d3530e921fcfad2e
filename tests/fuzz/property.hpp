#pragma once
// What every answer to hostile input must hold. A property that does not hold ends the program, which is what a fuzzer
// looks for and what the replay of the kept corpus takes for a failed test.
#include <cstddef>
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <string_view>

namespace fuzz {

[[noreturn]] inline void broken(std::string_view property, std::string_view what)
{
    std::fprintf(stderr, "PROPERTY BROKEN: %.*s: %.*s\n", static_cast<int>(property.size()), property.data(),
                 static_cast<int>(what.size()), what.data());
    std::abort();
}

inline void hold(bool holds, std::string_view property, std::string_view what = {})
{
    if (!holds) broken(property, what);
}

/// The part of a text around a place, for messages.
inline std::string_view around(std::string_view text, std::size_t at)
{
    return text.substr(at < 40 ? 0 : at - 40, 80);
}

/// Nothing but printable ASCII and ends of lines: no terminal is steered by it.
inline void hold_for_terminal(std::string_view text)
{
    for (std::size_t i = 0; i < text.size(); ++i)
        hold(text[i] == '\n' || (text[i] >= ' ' && text[i] <= '~'), "text is printable ASCII", around(text, i));
}

/// UTF-8 without control characters (of both sets, ends of lines apart) and without marks that turn the direction of
/// the text around them (Unicode 15, property Bidi_Control) or break its lines. Written here anew: it checks the
/// library's own.
inline void hold_for_page(std::string_view text)
{
    for (std::size_t i = 0; i < text.size();) {
        const auto byte = [&](std::size_t k) -> std::uint32_t {
            return i + k < text.size() ? static_cast<unsigned char>(text[i + k]) : 0U;
        };
        const std::uint32_t lead = byte(0);
        const std::size_t length = lead < 0x80 ? 1 : lead >= 0xF0 ? 4 : lead >= 0xE0 ? 3 : 2;
        std::uint32_t point = length == 1 ? lead : lead & (0x7FU >> length);
        hold(length == 1 || lead >= 0xC2, "output is UTF-8", around(text, i));
        for (std::size_t k = 1; k < length; ++k) {
            hold((byte(k) & 0xC0U) == 0x80U, "output is UTF-8", around(text, i));
            point = point << 6U | (byte(k) & 0x3FU);
        }
        const bool control = (point < 0x20 && point != '\n') || (point >= 0x7F && point < 0xA0);
        const bool steers = point == 0x061C || point == 0x200E || point == 0x200F ||
                            (point >= 0x2028 && point <= 0x202E) || (point >= 0x2066 && point <= 0x2069);
        const bool surrogate = point >= 0xD800 && point <= 0xDFFF;
        hold(!control && !steers && !surrogate && point <= 0x10FFFF, "no character of output steers", around(text, i));
        i += length;
    }
}

}  // namespace fuzz

/// What a target is fed with: the name and the type that libFuzzer wants.
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size);
