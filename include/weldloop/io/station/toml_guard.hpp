#pragma once
/// @file
/// What a station file may not exceed, checked before it is parsed. A parser builds one table in another for every dot
/// of a key, and a tree that is deep enough ends the program that frees it; so dots are counted first. And toml++ 3.3
/// looks up some letters beyond ASCII by a table that has no row for them, which is undefined; so characters that
/// cannot stand where they do never reach it.

#include <cstddef>
#include <string>
#include <string_view>

#include <weldloop/io/report/escape.hpp>
#include <weldloop/io/station/station_file_error.hpp>

namespace weldloop {

/// Limits of a station file; beyond them it is refused by station_file_error.
struct station_file_limits {
    static constexpr std::size_t bytes = 1U << 20U;  ///< size of the file, 1 MiB
    static constexpr std::size_t parts = 1000;       ///< parts of the path
    static constexpr std::size_t ways = 100;         ///< ways beside the path
    static constexpr std::size_t others = 20;        ///< other supplies on the same work
    static constexpr std::size_t readings = 200;     ///< readings and what else was found
    static constexpr std::size_t key_dots =
        256;  ///< dots outside of texts and comments in one line; the format needs 1
    static constexpr std::size_t name_characters = 80;  ///< length of a name
};

namespace detail {

/// Walks over a TOML text far enough to tell texts and comments from the rest, and looks at the rest.
class toml_walker {
public:
    explicit toml_walker(std::string_view text)
        : text_(text), at_(text.starts_with("\xEF\xBB\xBF") ? 3 : 0), line_start_(at_)
    {
    }

    /// The place of the dot that is one too many in its line; line 0 if there is none.
    [[nodiscard]] file_place first_dot_beyond(std::size_t allowed)
    {
        std::size_t dots = 0;
        return first_outside([&](char c) {
            if (c == '\n') dots = 0;
            return c == '.' && ++dots > allowed;
        });
    }
    /// The place of the first character beyond ASCII; line 0 if there is none. TOML has them in texts and comments
    /// only.
    [[nodiscard]] file_place first_beyond_ascii()
    {
        return first_outside([](char c) { return static_cast<unsigned char>(c) >= 0x80U; });
    }
    /// What stands before the place that was found.
    [[nodiscard]] std::string_view before() const { return text_.substr(0, at_); }

private:
    template <class Wanted>
    [[nodiscard]] file_place first_outside(Wanted is_wanted)
    {
        while (at_ < text_.size()) {
            const char c = text_[at_];
            if (c == '#')
                skip_comment();
            else if (c == '"' || c == '\'')
                skip_quoted(c);
            else {
                if (is_wanted(c)) return {line_, character_count(text_.substr(line_start_, at_ - line_start_)) + 1};
                step();
            }
        }
        return {};
    }
    void step()
    {
        if (text_[at_++] == '\n') {
            ++line_;
            line_start_ = at_;
        }
    }
    void skip_comment()
    {
        while (at_ < text_.size() && text_[at_] != '\n') step();
    }
    [[nodiscard]] bool three_at(char quote) const { return text_.substr(at_, 3) == std::string(3, quote); }

    void skip_quoted(char quote)
    {
        const bool many_lines = three_at(quote);
        for (int i = 0; i < (many_lines ? 3 : 1); ++i) step();
        while (at_ < text_.size()) {
            if (text_[at_] == '\n' && !many_lines) return;  // a fault, which the parser will name
            if (text_[at_] == '\\' && quote == '"') {
                step();
                if (at_ < text_.size() && (many_lines || text_[at_] != '\n')) step();
            } else if (text_[at_] == quote && (!many_lines || three_at(quote))) {
                // the last two of five quotes belong to the text, the end is where quotes end
                for (int i = 0; i < (many_lines ? 5 : 1) && at_ < text_.size() && text_[at_] == quote; ++i) step();
                return;
            } else
                step();
        }
    }

    std::string_view text_;
    std::size_t at_, line_ = 1, line_start_;
};

}  // namespace detail

/// Refuses a text that is too large or could nest too deep. @throws station_file_error
inline void refuse_hostile_toml(std::string_view text, const std::string& file_name)
{
    if (text.size() > station_file_limits::bytes)
        throw station_file_error(file_name, {},
                                 "the file is larger than " + std::to_string(station_file_limits::bytes) + " bytes");
    if (const file_place dot = detail::toml_walker(text).first_dot_beyond(station_file_limits::key_dots); dot.line > 0)
        throw station_file_error(file_name, dot, "too many dots in keys; a station file needs one at most");
}

}  // namespace weldloop
