#pragma once
/// @file
/// Text from elsewhere, made fit for a page, a drawing or a terminal. Names come from files, and a file may hold
/// anything: marks of a page, control characters, bytes that are no text at all.

#include <cstddef>
#include <string>
#include <string_view>

namespace weldloop {

namespace detail {

inline constexpr std::string_view replacement_character = "\xEF\xBF\xBD";  // U+FFFD

/// Length in bytes of the well-formed UTF-8 character at a place, 0 if there is none. Surrogates and overlong forms
/// are not well-formed.
[[nodiscard]] constexpr std::size_t utf8_length_at(std::string_view text, std::size_t at)
{
    const auto byte = [&](std::size_t i) -> unsigned {
        return i < text.size() ? static_cast<unsigned char>(text[i]) : 0U;
    };
    const auto follows = [&](std::size_t i, unsigned low = 0x80U, unsigned high = 0xBFU) {
        return byte(i) >= low && byte(i) <= high;
    };
    const unsigned lead = byte(at);
    if (lead < 0x80U) return at < text.size() ? 1 : 0;
    if (lead >= 0xC2U && lead <= 0xDFU) return follows(at + 1) ? 2 : 0;
    if (lead >= 0xE0U && lead <= 0xEFU) {
        const unsigned low = lead == 0xE0U ? 0xA0U : 0x80U;
        const unsigned high = lead == 0xEDU ? 0x9FU : 0xBFU;
        return follows(at + 1, low, high) && follows(at + 2) ? 3 : 0;
    }
    if (lead >= 0xF0U && lead <= 0xF4U) {
        const unsigned low = lead == 0xF0U ? 0x90U : 0x80U;
        const unsigned high = lead == 0xF4U ? 0x8FU : 0xBFU;
        return follows(at + 1, low, high) && follows(at + 2) && follows(at + 3) ? 4 : 0;
    }
    return 0;
}

/// Whether the character is one that is not seen and turns or breaks the text around it: marks of direction,
/// embeddings, overrides and isolates (U+061C, U+200E, U+200F, U+202A to U+202E, U+2066 to U+206F), separators of lines
/// and paragraphs (U+2028, U+2029).
[[nodiscard]] constexpr bool is_steering(std::string_view c)
{
    if (c == "\xD8\x9C") return true;
    if (c.size() != 3 || c[0] != '\xE2') return false;
    const auto last = static_cast<unsigned char>(c[2]);
    if (c[1] == '\x80') return last == 0x8EU || last == 0x8FU || (last >= 0xA8U && last <= 0xAEU);
    return c[1] == '\x81' && last >= 0xA6U && last <= 0xAFU;
}

/// Whether the character of that many bytes is a control character (of the first or second set), steers the text
/// around it, or is one of the two that XML does not know.
[[nodiscard]] constexpr bool is_control_at(std::string_view text, std::size_t at, std::size_t bytes)
{
    const std::string_view c = text.substr(at, bytes);
    if (bytes == 1) return static_cast<unsigned char>(c[0]) < 0x20U || c[0] == '\x7F';
    if (bytes == 2 && c[0] == '\xC2') return static_cast<unsigned char>(c[1]) < 0xA0U;
    return is_steering(c) || c == "\xEF\xBF\xBE" || c == "\xEF\xBF\xBF";
}

/// Calls `put` for each character; `put_bad` for a control character and for each byte that is no text.
template <class Put, class PutBad>
constexpr void for_each_character(std::string_view text, Put put, PutBad put_bad)
{
    for (std::size_t at = 0; at < text.size();) {
        const std::size_t bytes = utf8_length_at(text, at);
        if (bytes == 0 || is_control_at(text, at, bytes))
            put_bad();
        else
            put(text.substr(at, bytes));
        at += bytes == 0 ? 1 : bytes;
    }
}

}  // namespace detail

/// The text as content or attribute of HTML, SVG or XML: marks are escaped, control characters, those that
/// steer the text around them, and bytes that are not UTF-8 become U+FFFD.
[[nodiscard]] inline std::string markup_escaped(std::string_view text)
{
    std::string out;
    out.reserve(text.size());
    const auto put = [&](std::string_view c) {
        switch (c.front()) {  // a longer character begins with none of these
        case '&': out.append("&amp;"); break;
        case '<': out.append("&lt;"); break;
        case '>': out.append("&gt;"); break;
        case '"': out.append("&quot;"); break;
        case '\'': out.append("&#39;"); break;
        default: out.append(c);
        }
    };
    // what needs nothing is taken in one piece
    const auto is_plain = [](char c) {
        return c >= ' ' && c < '\x7F' && c != '&' && c != '<' && c != '>' && c != '"' && c != '\'';
    };
    for (std::size_t at = 0; at < text.size();) {
        std::size_t end = at;
        while (end < text.size() && is_plain(text[end])) ++end;
        out.append(text.substr(at, end - at));
        at = end;
        while (end < text.size() && !is_plain(text[end])) ++end;
        detail::for_each_character(text.substr(at, end - at), put, [&] { out.append(detail::replacement_character); });
        at = end;
    }
    return out;
}

/// The text as printable ASCII, one '?' for each character that is not: nothing in it can steer a terminal.
[[nodiscard]] inline std::string plain_ascii(std::string_view text)
{
    std::string out;
    out.reserve(text.size());
    detail::for_each_character(
        text, [&](std::string_view c) { out.append(c.size() == 1 ? c : std::string_view("?")); },
        [&] { out.push_back('?'); });
    return out;
}

/// The text without control characters and broken bytes, '?' for each: for messages.
[[nodiscard]] inline std::string printable(std::string_view text)
{
    std::string out;
    out.reserve(text.size());
    detail::for_each_character(
        text, [&](std::string_view c) { out.append(c); }, [&] { out.push_back('?'); });
    return out;
}

/// The first characters of a text, with "..." in place of the rest if it is longer.
/// @param text UTF-8 @param longest characters of the result, 4 or more
[[nodiscard]] inline std::string shortened(std::string_view text, std::size_t longest)
{
    std::size_t count = 0, keep = 0, at = 0;
    while (at < text.size()) {
        if (count + 3 == longest) keep = at;
        const std::size_t bytes = detail::utf8_length_at(text, at);
        at += bytes == 0 ? 1 : bytes;
        ++count;
    }
    return count <= longest ? std::string(text) : std::string(text.substr(0, keep)) + "...";
}

/// The number of characters of a UTF-8 text; a byte that is no text counts as one.
[[nodiscard]] constexpr std::size_t character_count(std::string_view text)
{
    std::size_t count = 0;
    for (std::size_t at = 0; at < text.size(); ++count) {
        const std::size_t bytes = detail::utf8_length_at(text, at);
        at += bytes == 0 ? 1 : bytes;
    }
    return count;
}

}  // namespace weldloop
