#pragma once
/// @file
/// toml++, and a text parsed by it. The only header that includes it.
///
/// toml++ 3.3 takes some broken files ("[=") for a fault of its own and asserts; here it throws instead, with or
/// without NDEBUG, and the file is refused like any other. That holds where this header is the first to include toml++.

#include <algorithm>
#include <cstddef>
#include <string>
#include <string_view>

#include <weldloop/io/report/escape.hpp>
#include <weldloop/io/station/station_file_error.hpp>
#include <weldloop/io/station/toml_guard.hpp>

namespace weldloop::detail {
/// Thrown where toml++ would assert.
struct toml_assertion {};
[[noreturn]] inline void toml_asserts()
{
    throw toml_assertion{};
}
}  // namespace weldloop::detail

/// @cond INTERNAL
#ifndef TOML_HEADER_ONLY
#define TOML_HEADER_ONLY 1
#endif
#pragma push_macro("NDEBUG")
#undef NDEBUG
#pragma push_macro("TOML_ASSERT")
#undef TOML_ASSERT
#define TOML_ASSERT(condition) static_cast<void>((condition) || (::weldloop::detail::toml_asserts(), false))
#include <toml++/toml.h>
#pragma pop_macro("TOML_ASSERT")
#pragma pop_macro("NDEBUG")
/// @endcond

namespace weldloop::detail {

[[nodiscard]] inline file_place place_of(const toml::source_region& region)
{
    return region.begin ? file_place{region.begin.line, region.begin.column} : file_place{1, 1};
}

[[nodiscard]] inline bool parsing_asserts(std::string_view text)
{
    try {
        static_cast<void>(toml::parse(text));
    } catch (const toml::parse_error&) {
        return false;
    } catch (const toml_assertion&) {
        return true;
    }
    return false;
}

/// The place of the character at which parsing a text asserts: the last one of the shortest beginning that does.
[[nodiscard]] inline file_place place_of_assertion(std::string_view text)
{
    std::size_t low = 0, high = text.size();  // characters that do not and that do suffice
    while (high - low > 1) {
        const std::size_t middle = low + (high - low) / 2;
        (parsing_asserts(text.substr(0, middle)) ? high : low) = middle;
    }
    const std::string_view before = text.substr(0, high > 0 ? high - 1 : 0);
    const std::size_t line_start = before.find_last_of('\n') + 1;  // 0 in the first line
    std::size_t columns = character_count(before.substr(line_start));
    if (line_start == 0 && before.starts_with("\xEF\xBB\xBF")) --columns;  // a byte order mark is no column
    return {static_cast<std::size_t>(std::count(before.begin(), before.end(), '\n')) + 1, columns + 1};
}

/// The text as a table. @throws station_file_error
[[nodiscard]] inline toml::table parsed_toml(std::string_view whole, const std::string& file_name)
{
    toml_walker walker(whole);
    const file_place beyond_ascii = walker.first_beyond_ascii();
    // with a control character in its place the parser stops there too, if not at an earlier fault
    std::string shown_first;
    if (beyond_ascii.line > 0) shown_first = std::string(walker.before()) + '\x7F';
    const std::string_view text = beyond_ascii.line > 0 ? std::string_view(shown_first) : whole;
    try {
        toml::table table = toml::parse(text, std::string_view(file_name));
        if (beyond_ascii.line == 0) return table;
    } catch (const toml::parse_error& e) {
        const file_place at = place_of(e.source());
        const bool is_earlier =
            at.line < beyond_ascii.line || (at.line == beyond_ascii.line && at.column < beyond_ascii.column);
        if (beyond_ascii.line == 0 || is_earlier)
            throw station_file_error(file_name, at, "not TOML: " + printable(e.description()));
    } catch (const toml_assertion&) {
        throw station_file_error(file_name, place_of_assertion(text), "not TOML: this character cannot stand here");
    }
    throw station_file_error(file_name, beyond_ascii,
                             "not TOML: a character beyond ASCII stands outside of quotes and comments");
}

}  // namespace weldloop::detail
