#pragma once
// What the program was called with: a word, what it is about, options. Each word says what it takes; help is made of
// that.
#include <array>
#include <filesystem>
#include <initializer_list>
#include <map>
#include <optional>
#include <span>
#include <stdexcept>
#include <string>
#include <string_view>
#include <system_error>
#include <vector>

#include <weldloop/core/error.hpp>
#include <weldloop/core/nearest_word.hpp>
#include <weldloop/core/parse.hpp>
#include <weldloop/io/report/escape.hpp>

namespace program {

namespace wl = weldloop;

/// What a call ends with.
enum status {
    done = 0,
    failed = 1,     ///< something could not be written, or went wrong
    bad_input = 2,  ///< the call, or what was read, is at fault
    against = 3,    ///< only where it was asked for: something speaks against it, or nothing can be said
};

/// The call is at fault.
class bad_call : public std::runtime_error {
public:
    using std::runtime_error::runtime_error;
};

/// An option of a word.
struct option {
    std::string_view name;   ///< with its dashes
    std::string_view value;  ///< what it takes; empty: nothing
    std::string_view meaning;
};

class call;

/// A word of the program.
struct word {
    std::string_view name;
    std::string_view takes;    ///< what it is about
    std::string_view meaning;  ///< in a line
    std::span<const option> options;
    int (*run)(const call&);
};

/// A word as it was called.
class call {
public:
    /// @throws bad_call for an option that the word does not have, that lacks its value or comes twice
    call(const word& w, std::span<const std::string_view> arguments) : word_(w)
    {
        for (std::size_t i = 0; i < arguments.size(); ++i) {
            const std::string_view a = arguments[i];
            if (!a.starts_with("-") || a == "-") {
                if (a.empty()) fault("an empty argument");
                about_.emplace_back(a);
                continue;
            }
            const option& o = option_called(a);
            if (options_.contains(std::string(a))) fault(std::string(a) + " stands there twice");
            if (o.value.empty()) {
                options_[std::string(a)] = {};
                continue;
            }
            if (++i == arguments.size()) fault(std::string(a) + " lacks its value, " + std::string(o.value));
            options_[std::string(a)] = arguments[i];
        }
    }

    [[nodiscard]] const std::vector<std::string>& about() const { return about_; }
    [[nodiscard]] bool has(std::string_view name) const { return options_.contains(std::string(name)); }
    /// The folder that --out names. @throws bad_call where it is a file, or ends as the name of one
    [[nodiscard]] std::string out_folder() const
    {
        const std::string given = text("--out", ".");
        const std::filesystem::path path(given);
        std::error_code fault_of_path;
        if (std::filesystem::is_directory(path, fault_of_path)) return given;
        if (std::filesystem::exists(path, fault_of_path)) fault("--out names a folder, and " + given + " is a file");
        for (const char* ending : {".html", ".json", ".csv", ".toml", ".txt", ".pdf", ".svg"})
            if (path.extension() == ending)
                fault("--out names a folder, and \"" + given +
                      "\" ends like a file; the files in it are named after the station's file");
        if (given.empty()) fault("--out names a folder, and is empty");
        return given;
    }
    [[nodiscard]] std::string text(std::string_view name, std::string_view otherwise) const
    {
        const auto found = options_.find(std::string(name));
        return found == options_.end() ? std::string(otherwise) : found->second;
    }

    /// A quantity; none where the option is not there. @throws bad_call naming option, text and what it may be
    template <class T>
    [[nodiscard]] std::optional<T> value(std::string_view name) const
    {
        const auto found = options_.find(std::string(name));
        if (found == options_.end()) return std::nullopt;
        try {
            return wl::parse<T>(found->second);
        } catch (const wl::error& e) {
            fault(std::string(name) + " cannot be \"" + found->second + "\"; wanted: " + e.allowed());
        }
    }
    /// The same of an option that must be there.
    template <class T>
    [[nodiscard]] T required(std::string_view name) const
    {
        const std::optional<T> found = value<T>(name);
        if (!found) fault(std::string(word_.name) + " needs " + std::string(name));
        return *found;
    }
    /// One of a list of words, the first where the option is not there.
    template <class List, class WordOf>
    [[nodiscard]] auto chosen(std::string_view name, const List& list, WordOf word_of) const
    {
        const std::string given = text(name, word_of(*std::begin(list)));
        std::vector<std::string_view> words;
        std::string all;
        for (const auto& one : list) {
            if (word_of(one) == given) return one;
            words.push_back(word_of(one));
            all.append(all.empty() ? "" : ", ").append(words.back());
        }
        fault(std::string(name) + " cannot be \"" + given + "\"; it is one of: " + all + hint(given, words));
    }

    [[noreturn]] static void fault(const std::string& what) { throw bad_call(wl::printable(what)); }
    /// "; nearest: duty" where something is near.
    [[nodiscard]] static std::string hint(std::string_view given, std::span<const std::string_view> words)
    {
        const std::string_view near = wl::near_word(given, words);
        return near.empty() ? std::string() : "; nearest: " + std::string(near);
    }

private:
    [[nodiscard]] const option& option_called(std::string_view name) const
    {
        std::vector<std::string_view> names;
        for (const option& o : word_.options) {
            if (o.name == name) return o;
            names.push_back(o.name);
        }
        std::string all;
        for (const std::string_view n : names) all.append(all.empty() ? "" : ", ").append(n);
        fault(std::string(word_.name) + " has no option " + std::string(name) +
              (all.empty() ? std::string() : "; it has: " + all) + hint(name, names));
    }

    const word& word_;
    std::vector<std::string> about_;
    std::map<std::string, std::string> options_;
};

/// @name Options that several words have
/// @{
inline constexpr option out_option{"--out", "FOLDER", "where files are written (.)"};
inline constexpr option judge_option{"--judge", "",
                                     "status 3 where something is over its limit or may be, or no verdict is possible"};
/// @}

}  // namespace program
