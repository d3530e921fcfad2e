// Every public function is used by the library itself or by a program of examples/: what only tests call is dead.
#include <algorithm>
#include <cctype>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <map>
#include <set>
#include <string>
#include <vector>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "house/declared_functions.hpp"
#include "house/header_tree.hpp"

namespace {

using words = std::map<std::string, int>;

/// How often each word stands in a text, comments and literals left out.
void count(const std::string& text, words& into)
{
    for (const std::string& token : house::reading::tokens_of(house::reading::plain_text(text)))
        if (std::isalpha(static_cast<unsigned char>(token.front())) != 0) ++into[token];
}

words of_the_examples()
{
    words found;
    const std::filesystem::path folder = std::filesystem::path(WELDLOOP_INCLUDE_DIR).parent_path() / "examples";
    for (const auto& entry : std::filesystem::recursive_directory_iterator(folder)) {
        if (entry.path().extension() != ".cpp" && entry.path().extension() != ".hpp") continue;
        std::ifstream in(entry.path(), std::ios::binary);
        count({std::istreambuf_iterator<char>(in), {}}, found);
    }
    return found;
}

/// Names of the free public functions of headers that stand there only where they are declared.
std::set<std::string> called_by_nothing(const house::header_tree& tree, const words& examples)
{
    words in_headers, declared;
    std::set<std::string> open;
    for (const auto& [header, content] : tree) {
        count(content, in_headers);
        if (header.starts_with("weldloop/test/")) continue;  // what stands there is for tests
        for (const house::declared_function& f : house::functions_in(content)) {
            const std::string name = f.name.substr(f.name.rfind(':') + 1);
            ++declared[name];
            if (f.open && name == f.name && !name.starts_with("operator")) open.insert(name);
        }
    }
    std::set<std::string> found;
    for (const std::string& name : open)
        if (in_headers[name] <= declared[name] && !examples.contains(name)) found.insert(name);
    return found;
}

}  // namespace

TEST(Reached, EveryPublicFunctionHasAUser)
{
    // no program or question asks for these so far: of the arc, of fits and losses, of a clamp's life on paper,
    // of a file's station without its use and readings
    const std::set<std::string> not_yet{
        "arc_line_through",  "clamp_life_json",    "clamp_life_page",         "clamp_lives_text", "current_after",
        "extension_of",      "fastest_rise",       "heat_input_of",           "melting_rate",     "read_station",
        "station_from_toml", "shift_hours_of_arc", "wire_melting_efficiency", "wire_resistance"};
    EXPECT_THAT(called_by_nothing(house::headers_of_the_library(), of_the_examples()), testing::IsSubsetOf(not_yet));
}

TEST(ReachedRules, SeeWhatIsDead)
{
    const house::header_tree tree{
        {"weldloop/law/a.hpp", "inline int used(int a) { return a; }\ninline int dead(int a) { return used(a); }\n"
                               "inline int dead(double a) { return 0; } // dead(1)\n"
                               "namespace detail { inline int inner() { return 0; } }\n"},
    };
    EXPECT_EQ(called_by_nothing(tree, {}), (std::set<std::string>{"dead"}));
    EXPECT_EQ(called_by_nothing(tree, {{"dead", 1}}), std::set<std::string>{});
}
