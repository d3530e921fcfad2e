// Every public function of the folders of numbers that takes a quantity or a plain number is named in a target of
// tests/fuzz, where it is fed every number a double can be; those that are not stand here with the reason.
#include <algorithm>
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
#include "house/stated.hpp"

namespace {

using house::words;

const words folders_of_numbers{"core", "solve", "material", "law", "part", "circuit", "life", "rating", "field"};

std::string folder_of(const std::string& header)
{
    const std::string below = header.substr(header.find('/') + 1);
    return below.substr(0, below.find('/'));
}

/// Names of the public functions of numbers, with the header that declares each. A member has its class before it.
std::map<std::string, std::string> functions_of_numbers(const house::header_tree& tree)
{
    words numbers = house::quantities_of(tree);
    numbers.insert({"double", "float", "temperature"});
    std::map<std::string, std::string> out;
    for (const auto& [header, content] : tree) {
        if (!folders_of_numbers.contains(folder_of(header))) continue;
        for (const house::declared_function& f : house::functions_in(content)) {
            if (!house::must_say(f) || house::bare_name(f.name).starts_with("operator")) continue;
            const bool counts = std::any_of(f.parameters.begin(), f.parameters.end(), [&](const std::string& p) {
                const std::string type = house::type_and_name(p).first;
                return std::any_of(numbers.begin(), numbers.end(),
                                   [&](const std::string& n) { return house::has_word(type, n); });
            });
            if (counts) out[f.name] = header;
        }
    }
    return out;
}

/// Words of the targets.
words named_in_the_targets()
{
    words out;
    const auto folder = std::filesystem::path(WELDLOOP_INCLUDE_DIR).parent_path() / "tests" / "fuzz";
    for (const auto& entry : std::filesystem::directory_iterator(folder)) {
        if (entry.path().extension() != ".cpp") continue;
        std::ifstream in(entry.path(), std::ios::binary);
        for (const std::string& token :
             house::reading::tokens_of(house::reading::plain_text({std::istreambuf_iterator<char>(in), {}})))
            out.insert(token);
    }
    return out;
}

/// Functions of numbers that no target names: a member by its class, or by its own name.
words unfed(const house::header_tree& tree, const words& named, const words& left_out)
{
    words out;
    for (const auto& [name, header] : functions_of_numbers(tree)) {
        const std::string of = name.substr(0, name.find("::"));
        if (named.contains(of) || named.contains(house::bare_name(name))) continue;
        if (left_out.contains(name) || left_out.contains(of)) continue;
        out.insert(header + " " + name);
    }
    return out;
}

}  // namespace

TEST(Fed, EveryFunctionOfNumbersIsNamedInAFuzzTarget)
{
    const words left_out{// make the numbers themselves: every argument of every target is made by them
                         "in_si", "exactly", "mapped", "temperature", "bounded_number",
                         // are what refuses
                         "require_finite", "require_positive", "require_not_negative", "require_within",
                         "require_factor",
                         // print any number that a text can hold; the texts of quantities have a target of their own
                         "number_in", "to_text", "si_text", "temperature_scale",
                         // choose one of the three numbers of a band
                         "pick",
                         // inside of a search: asked of states, places and matrices that a solver itself has made
                         "drop_of_current", "heat_law", "state_follower", "lazy_cubics", "curve_table", "heat_network",
                         "current_network", "anderson_mixing", "plain_resistance", "reading_likelihood", "sum_grid",
                         "sparse_lu", "steady_state_of", "periodic_state_of"};
    const house::header_tree tree = house::headers_of_the_library();
    const std::map<std::string, std::string> all = functions_of_numbers(tree);
    EXPECT_GT(all.size(), 300U);
    EXPECT_THAT(unfed(tree, named_in_the_targets(), left_out), testing::IsEmpty());
    for (const std::string& name : left_out) {
        const bool known = std::any_of(all.begin(), all.end(), [&name](const auto& f) {
            return f.first == name || f.first.starts_with(name + "::");
        });
        EXPECT_TRUE(known) << name << " is no more";
    }
}

TEST(FedRules, SeeWhatIsNotFed)
{
    using testing::ElementsAre, testing::IsEmpty;
    const house::header_tree tree{{"weldloop/law/a.hpp",
                                   "using length = decltype(1);\n/// Half. @param x [m]\nlength half(length x);\n"
                                   "/// Count.\nint count(int x);\n/// @cond\n"
                                   "class box {\npublic:\n    /// Wide. @param x [m]\n    void wide(length x);\n};\n"
                                   "namespace detail {\n/// Inner.\nlength inner(length x);\n}\n"},
                                  {"weldloop/io/b.hpp", "/// Drawn. @param x [m]\nvoid drawn(double x);\n"}};
    EXPECT_THAT(unfed(tree, {}, {}), ElementsAre("weldloop/law/a.hpp box::wide", "weldloop/law/a.hpp half"));
    EXPECT_THAT(unfed(tree, {"half", "box"}, {}), IsEmpty());
    EXPECT_THAT(unfed(tree, {"half"}, {"box"}), IsEmpty());
}
