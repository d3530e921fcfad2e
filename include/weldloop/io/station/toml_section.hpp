#pragma once
/// @file
/// One table of a station file, read strictly: every key must be known, every value must be of the wanted kind, within
/// the wanted range, and what does not fit is refused at its line and column.

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <initializer_list>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include <weldloop/core/conductor_size.hpp>
#include <weldloop/core/error.hpp>
#include <weldloop/core/fraction.hpp>
#include <weldloop/core/nearest_word.hpp>
#include <weldloop/core/parse.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/core/trade_words.hpp>
#include <weldloop/core/unit_text.hpp>
#include <weldloop/io/report/escape.hpp>
#include <weldloop/io/station/station_file_error.hpp>
#include <weldloop/io/station/toml_guard.hpp>
#include <weldloop/io/station/toml_parser.hpp>

namespace weldloop::detail {

/// The file as text, for messages.
struct station_text {
    std::string_view text;
    std::string file_name;

    [[noreturn]] void refuse(file_place at, const std::string& reason, std::string_view nearest = {}) const
    {
        throw station_file_error(file_name, at, reason, std::string(nearest));
    }

    /// What stands in the file from a place to the end of its line.
    [[nodiscard]] std::string_view from(file_place at) const
    {
        std::size_t begin = text.starts_with("\xEF\xBB\xBF") ? 3 : 0;  // a byte order mark is no column
        for (std::size_t line = 1; line < at.line && begin < text.size(); ++line)
            begin = std::min(text.find('\n', begin), text.size() - 1) + 1;
        const std::string_view line = text.substr(begin, text.find('\n', begin) - begin);
        std::size_t byte = 0;
        for (std::size_t column = 1; column < at.column && byte < line.size(); ++column)
            byte += std::max<std::size_t>(utf8_length_at(line, byte), 1);
        return line.substr(byte);
    }
};

/// A text of the file in quotes, short enough for a message.
[[nodiscard]] inline std::string in_quotes(std::string_view text)
{
    return "\"" + printable(shortened(text, 60)) + "\"";
}

/// Length of the longest piece two words have in common.
[[nodiscard]] inline std::size_t common_piece(std::string_view a, std::string_view b)
{
    std::size_t longest = 0;
    for (std::size_t i = 0; i < a.size(); ++i)
        for (std::size_t j = 0; j < b.size(); ++j) {
            std::size_t n = 0;
            while (i + n < a.size() && j + n < b.size() && a[i + n] == b[j + n]) ++n;
            longest = std::max(longest, n);
        }
    return longest;
}

/// The word of a list that was most likely meant: the one a word of the trade stands for, else few letters to change
/// and a long piece in common, so that "rusty" leads to "light rust" and "wire gun" to "gun". Ties go to the earlier
/// word. Empty where nothing is near: neither is_near() nor half of the shorter word, three letters or more, in common.
[[nodiscard]] inline std::string_view likely_word(std::string_view given, const std::vector<std::string_view>& words)
{
    constexpr std::size_t least_piece = 3;
    const std::string_view begin = given.substr(0, 64);
    for (const std::string_view w : words)
        if (same_but_for_case(begin, w)) return w;
    if (const std::string_view meant = trade_meaning(begin, words); !meant.empty()) return meant;
    std::string_view best;
    long best_score = 0;
    for (const std::string_view w : words) {
        const long score = 2 * static_cast<long>(common_piece(begin, w)) - static_cast<long>(typing_distance(begin, w));
        if (best.empty() || score > best_score) {
            best = w;
            best_score = score;
        }
    }
    const std::size_t piece = common_piece(begin, best);
    const bool shares_a_piece = piece >= least_piece && 2 * piece >= std::min(begin.size(), best.size());
    return shares_a_piece || is_near(begin, best) ? best : std::string_view{};
}

/// What a key may hold. `least_excluded` where zero is no length.
template <class T>
struct allowed_span {
    T least, most;
    bool least_excluded = false;

    [[nodiscard]] bool holds(const T& value) const
    {
        return (least_excluded ? value > least : value >= least) && value <= most;
    }
};

template <class Q>
[[nodiscard]] std::string bound_text(const Q& q)
{
    return si_text(q);
}
[[nodiscard]] inline std::string bound_text(temperature t)
{
    return to_text(t, "degC");
}
[[nodiscard]] inline std::string bound_text(double x)
{
    return number_text(x);
}
[[nodiscard]] inline std::string bound_text(std::int64_t n)
{
    return std::to_string(n);
}

template <class T>
[[nodiscard]] std::string span_text(const allowed_span<T>& span)
{
    return (span.least_excluded ? "above " : "from ") + bound_text(span.least) + " to " + bound_text(span.most);
}

/// A value as one writes it, for messages.
template <class T>
inline constexpr std::string_view written_example = "\"50 ft\"";
template <>
inline constexpr std::string_view written_example<current> = "\"260 A\"";
template <>
inline constexpr std::string_view written_example<voltage> = "\"4 V\"";
template <>
inline constexpr std::string_view written_example<duration> = "\"6 min\"";
template <>
inline constexpr std::string_view written_example<speed> = "\"0.5 m/s\"";
template <>
inline constexpr std::string_view written_example<force> = "\"250 N\"";
template <>
inline constexpr std::string_view written_example<torque> = "\"20 Nm\"";
template <>
inline constexpr std::string_view written_example<area> = "\"50 mm2\"";
template <>
inline constexpr std::string_view written_example<heat_flux> = "\"800 W/m2\"";
template <>
inline constexpr std::string_view written_example<temperature> = "\"95 degF\"";
template <>
inline constexpr std::string_view written_example<resistance> = "\"420 uohm\"";
template <>
inline constexpr std::string_view written_example<temperature_difference> = "\"4 K\"";
template <>
inline constexpr std::string_view written_example<conductor_size> = "\"2/0 AWG\"";
template <class Rule>
inline constexpr std::string_view written_example<bounded_number<Rule>> = "\"60 %\"";

[[nodiscard]] inline std::string_view toml_kind(const toml::node& node)
{
    switch (node.type()) {
    case toml::node_type::table: return "a table";
    case toml::node_type::array: return "an array";
    case toml::node_type::string: return "a text";
    case toml::node_type::integer:
    case toml::node_type::floating_point: return "a bare number";
    case toml::node_type::boolean: return "true or false";
    case toml::node_type::date:
    case toml::node_type::time:
    case toml::node_type::date_time: return "a date or time";
    case toml::node_type::none: break;
    }
    return "nothing";
}

/// One table of the file.
class toml_section {
public:
    /// @param from the file @param table the table @param what it is, for messages: "[job]", "the cable" @param at its
    /// place
    toml_section(const station_text& from, const toml::table& table, std::string what, file_place at)
        : from_(&from), table_(&table), what_(std::move(what)), at_(at)
    {
    }

    /// Refuses the first key that is not in the list. Called before anything is read, so that a mistyped key is named
    /// as what it is and not as a missing one.
    const toml_section& allow_only(std::initializer_list<std::string_view> keys) const
    {
        return allow_only(std::vector<std::string_view>(keys));
    }
    const toml_section& allow_only(const std::vector<std::string_view>& words) const
    {
        const toml::key* unknown = nullptr;
        for (auto&& [key, value] : *table_) {
            const bool known = std::find(words.begin(), words.end(), key.str()) != words.end();
            if (!known && (unknown == nullptr || before(key, *unknown))) unknown = &key;
        }
        if (unknown != nullptr) {
            refuse(place_of(unknown->source()),
                   "unknown key " + in_quotes(unknown->str()) + " in " + what_ + "; it takes: " + listed(words),
                   likely_word(unknown->str(), words));
        }
        return *this;
    }

    [[nodiscard]] bool has(std::string_view key) const { return table_->contains(key); }
    /// Whether a key holds a bare number.
    [[nodiscard]] bool is_number(std::string_view key) const
    {
        const toml::node* node = table_->get(key);
        return node != nullptr && (node->is_integer() || node->is_floating_point());
    }
    [[nodiscard]] file_place place() const { return at_; }
    /// The place of a key's value; of the section where it has no such key.
    [[nodiscard]] file_place place(std::string_view key) const
    {
        const toml::node* node = table_->get(key);
        return node == nullptr ? at_ : place_of(node->source());
    }
    [[nodiscard]] const std::string& what() const { return what_; }

    [[noreturn]] void refuse(file_place at, const std::string& reason, std::string_view nearest = {}) const
    {
        from_->refuse(at, reason, nearest);
    }
    [[noreturn]] void refuse_missing(std::string_view key) const
    {
        refuse(at_, what_ + " lacks the key \"" + std::string(key) + "\"");
    }

    /// A value the key must have. @param span what it may be
    template <class T>
    [[nodiscard]] T required(std::string_view key, const allowed_span<T>& span) const
    {
        const T value = required<T>(key);
        if (!span.holds(value)) refuse_value(key, span);
        return value;
    }
    template <class T>
    [[nodiscard]] T required(std::string_view key) const
    {
        return parsed<T>(key, present(key));
    }

    /// Takes over a value where the key is there, and leaves the default where it is not.
    template <class T>
    void take(std::string_view key, T& out) const
    {
        if (has(key)) out = required<T>(key);
    }
    template <class T>
    void take(std::string_view key, T& out, const allowed_span<T>& span) const
    {
        if (has(key)) out = required<T>(key, span);
    }
    /// A whole number, the one thing that is written without quotes.
    template <class Count>
    void take_count(std::string_view key, Count& out, std::int64_t least, std::int64_t most) const
    {
        if (!has(key)) return;
        const toml::node& node = present(key);
        if (!node.is_integer()) refuse(place(key), wrong_kind(key, node) + "; write a whole number");
        const std::int64_t value = **node.as_integer();
        if (const allowed_span<std::int64_t> span{least, most}; !span.holds(value))
            refuse(place(key),
                   "\"" + std::string(key) + "\" cannot be " + std::to_string(value) + "; allowed: " + span_text(span));
        out = static_cast<int>(value);
    }

    /// A text the key must have.
    [[nodiscard]] std::string_view text(std::string_view key) const
    {
        return text_of(key, present(key), "a text in quotes");
    }

    /// One word of a list; `word_of` gives the word for each of its values.
    template <class List, class WordOf>
    [[nodiscard]] auto word(std::string_view key, const List& list, WordOf word_of) const
    {
        return chosen(key, present(key), list, word_of);
    }
    template <class T, class List, class WordOf>
    void take_word(std::string_view key, T& out, const List& list, WordOf word_of) const
    {
        if (has(key)) out = word(key, list, word_of);
    }
    /// Two words of a list, written as an array.
    template <class List, class WordOf>
    [[nodiscard]] auto two_words(std::string_view key, const List& list, WordOf word_of) const
    {
        const toml::node& node = present(key);
        const toml::array* both = node.as_array();
        if (both == nullptr)
            refuse(place(key), wrong_kind(key, node) + "; write two names: [\"brass\", \"mild steel\"]");
        if (both->size() != 2)
            refuse(place(key), "\"" + std::string(key) + "\" needs two names, and has " + std::to_string(both->size()));
        return std::pair{chosen(key, (*both)[0], list, word_of), chosen(key, (*both)[1], list, word_of)};
    }

    /// A name: not empty, not long, printable.
    [[nodiscard]] std::string name(std::string_view key) const
    {
        const std::string_view given = text(key);
        if (given.empty()) refuse(place(key), "\"" + std::string(key) + "\" is empty");
        if (character_count(given) > station_file_limits::name_characters)
            refuse(place(key), "\"" + std::string(key) + "\" is longer than " +
                                   std::to_string(station_file_limits::name_characters) + " characters");
        if (printable(given) != given) refuse(place(key), "\"" + std::string(key) + "\" holds a control character");
        return std::string(given);
    }

    /// A table below this one, if it is there.
    [[nodiscard]] std::optional<toml_section> section(std::string_view key) const
    {
        const toml::node* node = table_->get(key);
        if (node == nullptr) return std::nullopt;
        const toml::table* table = node->as_table();
        if (table == nullptr)
            refuse(place(key), wrong_kind(key, *node) + "; write a table: [" + std::string(key) + "]");
        return toml_section(*from_, *table, "[" + std::string(key) + "]", place_of(table->source()));
    }

    /// A number without a unit.
    [[nodiscard]] double number(std::string_view key, const allowed_span<double>& span) const
    {
        const toml::node& node = present(key);
        if (!node.is_integer() && !node.is_floating_point())
            refuse(place(key), wrong_kind(key, node) + "; write a number");
        const double value = node.is_integer() ? static_cast<double>(**node.as_integer()) : **node.as_floating_point();
        if (!span.holds(value))
            refuse(place(key),
                   "\"" + std::string(key) + "\" cannot be " + number_text(value) + "; allowed: " + span_text(span));
        return value;
    }

    /// The tables of an array of tables, [[key]] each. @param each what one of them is called
    [[nodiscard]] std::vector<toml_section> sections(std::string_view key, std::size_t most,
                                                     std::string_view each = "part") const
    {
        const toml::node& node = present(key);
        const toml::array* array = node.as_array();
        const std::string wanted =
            "; write each " + std::string(each) + " as a table of its own: [[" + std::string(key) + "]]";
        if (array == nullptr) refuse(place(key), wrong_kind(key, node) + wanted);
        std::vector<toml_section> out;
        for (const toml::node& element : *array) {
            const toml::table* table = element.as_table();
            if (table == nullptr) refuse(place_of(element.source()), wrong_kind(key, element) + wanted);
            if (out.size() == most)
                refuse(place_of(element.source()), "more than " + std::to_string(most) + " " + std::string(each) +
                                                       "s in \"" + std::string(key) + "\"");
            out.emplace_back(*from_, *table, std::string(each) + " " + std::to_string(out.size() + 1),
                             place_of(table->source()));
        }
        return out;
    }

    /// The same section under a better name, once it is known what it is.
    [[nodiscard]] toml_section called(std::string what) const { return {*from_, *table_, std::move(what), at_}; }

    /// Calls f, and gives an error of the library the place of a key.
    template <class F>
    [[nodiscard]] auto at_key(std::string_view key, F f) const
    {
        try {
            return f();
        } catch (const station_file_error&) {
            throw;
        } catch (const error& e) {
            refuse(place(key), e.argument() + " is " + printable(e.value()) + "; allowed: " + e.allowed());
        }
    }

private:
    [[nodiscard]] static bool before(const toml::key& a, const toml::key& b)
    {
        const file_place x = place_of(a.source()), y = place_of(b.source());
        return x.line != y.line ? x.line < y.line : x.column < y.column;
    }

    [[nodiscard]] static std::string listed(const std::vector<std::string_view>& words)
    {
        // a word may hold a comma: "mill scale, bitten through"
        const bool in_marks = std::any_of(words.begin(), words.end(),
                                          [](std::string_view w) { return w.find(',') != std::string_view::npos; });
        std::string out;
        for (const std::string_view w : words) {
            out.append(out.empty() ? "" : ", ");
            if (in_marks)
                out.append("\"").append(w).append("\"");
            else
                out.append(w);
        }
        return out;
    }

    [[nodiscard]] static std::string wrong_kind(std::string_view key, const toml::node& node)
    {
        return "\"" + std::string(key) + "\" is " + std::string(toml_kind(node));
    }

    [[nodiscard]] const toml::node& present(std::string_view key) const
    {
        const toml::node* node = table_->get(key);
        if (node == nullptr) refuse_missing(key);
        return *node;
    }

    [[nodiscard]] std::string_view text_of(std::string_view key, const toml::node& node, std::string_view wanted) const
    {
        const toml::value<std::string>* text = node.as_string();
        if (text == nullptr) refuse(place_of(node.source()), wrong_kind(key, node) + "; write " + std::string(wanted));
        return text->get();
    }

    template <class T>
    [[nodiscard]] T parsed(std::string_view key, const toml::node& node) const
    {
        const std::string_view given =
            text_of(key, node, "a text with its unit, such as " + std::string(written_example<T>));
        try {
            return parse<T>(given);
        } catch (const bad_text_error& e) {
            const auto [wanted, nearest] = without_hint(e.allowed());
            refuse(inside(node, given, e.position()),
                   "\"" + std::string(key) + "\" cannot be " + in_quotes(given) + "; wanted: " + wanted, nearest);
        } catch (const error& e) {
            refuse(place_of(node.source()),
                   "\"" + std::string(key) + "\" cannot be " + in_quotes(given) + "; allowed: " + e.allowed());
        }
    }

    template <class List, class WordOf>
    [[nodiscard]] auto chosen(std::string_view key, const toml::node& node, const List& list, WordOf word_of) const
    {
        const std::string_view given = text_of(key, node, "one of its words in quotes");
        std::vector<std::string_view> words;
        for (const auto& value : list) {
            if (word_of(value) == given) return value;
            words.push_back(word_of(value));
        }
        refuse(place_of(node.source()),
               "\"" + std::string(key) + "\" cannot be " + in_quotes(given) + "; it is one of: " + listed(words),
               likely_word(given, words));
    }

    template <class T>
    [[noreturn]] void refuse_value(std::string_view key, const allowed_span<T>& span) const
    {
        refuse(place(key),
               "\"" + std::string(key) + "\" cannot be " + in_quotes(text(key)) + "; allowed: " + span_text(span));
    }

    /// The place of a character within a text value. Where the text is written with escapes or over several lines, its
    /// beginning.
    [[nodiscard]] file_place inside(const toml::node& node, std::string_view value, std::size_t position) const
    {
        const file_place begin = place_of(node.source());
        const std::string_view before_fault = value.substr(0, position);
        const std::string_view raw = from_->from(begin);
        if (raw.empty() || raw.substr(1, before_fault.size()) != before_fault) return begin;
        return {begin.line, begin.column + 1 + character_count(before_fault)};
    }

    /// Cuts "...; nearest: ft" into what is wanted and the nearest word.
    [[nodiscard]] static std::pair<std::string, std::string> without_hint(const std::string& allowed)
    {
        constexpr std::string_view mark = "; nearest: ";
        const std::size_t at = allowed.find(mark);
        if (at == std::string::npos) return {allowed, {}};
        return {allowed.substr(0, at), allowed.substr(at + mark.size())};
    }

    const station_text* from_;
    const toml::table* table_;
    std::string what_;
    file_place at_;
};

}  // namespace weldloop::detail
