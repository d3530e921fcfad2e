// The program of the library: assesses stations, finds faults, sizes leads, draws charts, and writes what a technician
// carries to the job. Each of its words is a unit of examples/program.
#include <algorithm>
#include <array>
#include <exception>
#include <filesystem>
#include <iostream>
#include <string>
#include <string_view>
#include <vector>

#include "program/output.hpp"
#include "program/words.hpp"

#include <weldloop/io/report/write_file.hpp>

using namespace program;

namespace {

const std::array words{&assess_word, &fault_word, &lead_word,   &chart_word,
                       &card_word,   &sheet_word, &survey_word, &trend_word};

std::vector<std::string_view> names_of_words()
{
    std::vector<std::string_view> out;
    for (const word* w : words) out.push_back(w->name);
    out.push_back("help");
    return out;
}

const word* word_called(std::string_view name)
{
    const auto* const found =
        std::find_if(words.begin(), words.end(), [name](const word* w) { return w->name == name; });
    return found == words.end() ? nullptr : *found;
}

std::string padded(std::string_view text, std::size_t width)
{
    return std::string(text) + std::string(text.size() < width ? width - text.size() : 1, ' ');
}

std::string usage_of(const word& w)
{
    return "weldloop_station " + std::string(w.name) + (w.takes.empty() ? "" : " ") + std::string(w.takes) +
           (w.options.empty() ? "" : " [options]");
}

std::string help_on(const word& w)
{
    constexpr std::size_t column = 24;
    std::string out = usage_of(w) + "\n\n" + std::string(w.meaning) + "\n";
    if (!w.options.empty()) out += "\n";
    for (const option& o : w.options)
        out += "  " + padded(std::string(o.name) + (o.value.empty() ? "" : " ") + std::string(o.value), column) +
               std::string(o.meaning) + "\n";
    return out;
}

std::string help()
{
    constexpr std::size_t column = 42;
    std::string out = "weldloop_station WORD ... rates the connections and leads of welding circuits.\n\n";
    for (const word* w : words)
        out +=
            "  " + padded(std::string(w->name) + " " + std::string(w->takes), column) + std::string(w->meaning) + "\n";
    out += "  " + padded("help [WORD]", column) + "this, or the options of a word\n\n";
    return out + "A station file without a word is assessed. Values are texts with their unit, \"40 ft\", \"230 A\", "
                 "\"60 %\".\n"
                 "Status: 0 done, 1 something could not be written or went wrong, 2 the call or what was read is at "
                 "fault;\nwith --judge 3 where something speaks against a station.\n";
}

int answer(const std::vector<std::string_view>& arguments)
{
    if (arguments.empty()) {
        std::cerr << help();
        return bad_input;
    }
    const std::string_view first = arguments.front();
    const bool asks_for_help =
        std::any_of(arguments.begin(), arguments.end(), [](std::string_view a) { return a == "--help" || a == "-h"; });
    if (first == "help" || asks_for_help) {
        const std::string_view about = first != "help"        ? first
                                       : arguments.size() > 1 ? arguments[1]
                                                              : std::string_view{};
        const word* w = word_called(about);
        if (w == nullptr && first == "help" && arguments.size() > 1 && about != "help" && !about.starts_with("-"))
            call::fault("there is no word \"" + std::string(about) + "\"" + call::hint(about, names_of_words()));
        say(w == nullptr ? help() : help_on(*w));
        return done;
    }
    if (const word* w = word_called(first)) return w->run(call(*w, std::span(arguments).subspan(1)));
    // a file by itself, or with options before it
    const bool is_file = first.starts_with("-") || first.find_first_of("./\\") != std::string_view::npos ||
                         std::filesystem::exists(first);
    if (is_file) return assess_word.run(call(assess_word, arguments));
    call::fault("\"" + std::string(first) + "\" is no word of this program and no file" +
                call::hint(first, names_of_words()));
}

}  // namespace

int main(int count, char** values)
{
    const std::vector<std::string_view> arguments(values + std::min(count, 1), values + count);
    try {
        return answer(arguments);
    } catch (const bad_call& e) {
        std::cerr << e.what() << "\nSee: weldloop_station help\n";
        return bad_input;
    } catch (const wl::file_write_error& e) {
        std::cerr << e.what() << '\n';
        return failed;
    } catch (const wl::error& e) {
        std::cerr << e.what() << '\n';
        return bad_input;
    } catch (const std::exception& e) {
        std::cerr << e.what() << '\n';
        return failed;
    }
}
