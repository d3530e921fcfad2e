// The rules of the include tree: what a folder may include, and what a header must and must not hold.
#include <algorithm>
#include <array>
#include <cstddef>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <map>
#include <regex>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "house/header_tree.hpp"

namespace {

namespace fs = std::filesystem;
using house::header_tree, house::headers_of_the_library;

/// What stands below include/weldloop: each may include itself and what comes before it here.
constexpr std::array<std::string_view, 14> order{"version.hpp",  "core",       "solve", "material", "law",
                                                 "part",         "circuit",    "life",  "rating",   "field",
                                                 "weldloop.hpp", "bodies.hpp", "io",    "test"};

const std::string everything = "weldloop/weldloop.hpp";

/// Place of a header in the order, -1 where it has none.
int rank_of(const std::string& header)
{
    const fs::path path = header;
    const std::vector<fs::path> steps(path.begin(), path.end());
    if (steps.size() < 2 || steps[0] != "weldloop") return -1;
    const bool alone = steps.size() == 2;  // in no folder
    const auto* const found = std::find(order.begin(), order.end(), steps[1].string());
    if (found == order.end() || found->ends_with(".hpp") != alone) return -1;
    return static_cast<int>(found - order.begin());
}

struct inclusion {
    std::string what;
    bool in_quotes;
};

/// As the preprocessor reads it: lines that go on in the next joined, comments gone.
std::string read_as_preprocessed(const std::string& content)
{
    static const std::regex goes_on(R"(\\[ \t]*\n)"), comment(R"(/\*[^*]*\*+(?:[^/*][^*]*\*+)*/|//[^\n]*)");
    return std::regex_replace(std::regex_replace(content, goes_on, ""), comment, " ");
}

std::vector<inclusion> inclusions_in(const std::string& raw)
{
    const std::string content = read_as_preprocessed(raw);
    static const std::regex line(R"((?:^|\n)[ \t]*#[ \t]*include[ \t]*([<"])([^>"\n]+)[>"])");
    std::vector<inclusion> found;
    for (std::sregex_iterator it(content.begin(), content.end(), line), end; it != end; ++it)
        found.push_back({(*it)[2], (*it)[1] == "\""});
    return found;
}

/// What is wrong with one header, in words; nothing when it keeps the rules.
std::vector<std::string> faults_of(const std::string& header, const std::string& content)
{
    std::vector<std::string> faults;
    const auto note = [&](const std::string& what) { faults.push_back(header + ": " + what); };

    const int rank = rank_of(header);
    if (rank < 0 || !header.ends_with(".hpp")) note("does not belong here");
    if (!content.starts_with("#pragma once\n")) note("does not begin with #pragma once");
    if (content.find("std::format") != std::string::npos || content.find("<format>") != std::string::npos)
        note("uses std::format, which g++ 12 does not have");
    // Each unit would get a constant of its own. What is indented is a member or local, where it does not matter.
    static const std::regex constant(R"((?:^|\n)(?:static |constexpr |const )[^\n(]*[={])");
    if (std::regex_search(content, constant)) note("defines a constant that is not inline");
    // a name that a macro makes could be any
    static const std::regex by_macro(R"((?:^|\n)[ \t]*#[ \t]*(?:include(?:_next)?|import)[ \t]*(?![<" \t]))"),
        other_way(R"((?:^|\n)[ \t]*#[ \t]*(?:include_next|import)\b)");
    const std::string read = read_as_preprocessed(content);
    if (std::regex_search(read, by_macro) || std::regex_search(read, other_way))
        note("includes by a macro or another word than include");
    for (const auto& [what, in_quotes] : inclusions_in(content)) {
        if (in_quotes) note("includes \"" + what + "\": write <weldloop/...>");
        if (!what.starts_with("weldloop/")) continue;
        const int included = rank_of(what);
        if (included < 0) note("includes <" + what + ">, which has no place in the order");
        if (included > rank) note("includes <" + what + ">, which stands below it");
    }
    return faults;
}

/// Types that a header declares and leaves to others, and those it defines, at the left margin or indented.
std::set<std::string> types_in(const std::string& content, bool defined)
{
    static const std::regex declared(
        R"((?:^|\n)[ \t]*(?:template[ \t]*<[^\n]*>[ \t\n]*)?(?:struct|class|enum(?: class)?)[ \t]+(\w+)[ \t]*(?::[ \t]*[\w:]+[ \t]*)?;)"),
        made(
            R"((?:^|\n)[ \t]*(?:template[ \t]*<[^\n]*>[ \t\n]*)?(?:struct|class|enum(?: class)?)[ \t]+(\w+)[^;{}()]*\{)");
    const std::string read = read_as_preprocessed(content);
    std::set<std::string> found;
    const std::regex& wanted = defined ? made : declared;
    for (std::sregex_iterator it(read.begin(), read.end(), wanted), end; it != end; ++it) found.insert((*it)[1]);
    return found;
}

/// Forward declarations of types that stand below their header in the order.
std::vector<std::string> forward_faults_of(const header_tree& tree)
{
    std::map<std::string, int> highest_place;  // lowest folder in which a type of this name is defined
    for (const auto& [header, content] : tree)
        for (const std::string& type : types_in(content, true)) {
            const auto [at, is_new] = highest_place.emplace(type, rank_of(header));
            if (!is_new) at->second = std::min(at->second, rank_of(header));
        }
    std::vector<std::string> faults;
    for (const auto& [header, content] : tree)
        for (const std::string& type : types_in(content, false)) {
            const auto known = highest_place.find(type);
            if (known != highest_place.end() && known->second > rank_of(header))
                faults.push_back(header + ": declares " + type + ", which stands below it");
        }
    return faults;
}

/// All headers of the tree that including `start` brings in, itself too.
std::set<std::string> reached_from(const std::string& start, const header_tree& tree)
{
    std::set<std::string> reached;
    std::vector<std::string> open{start};
    while (!open.empty()) {
        const std::string header = open.back();
        open.pop_back();
        const auto found = tree.find(header);
        if (found == tree.end() || !reached.insert(header).second) continue;
        for (const inclusion& next : inclusions_in(found->second)) open.push_back(next.what);
    }
    return reached;
}

}  // namespace

TEST(Layering, EveryHeaderKeepsTheRules)
{
    const header_tree tree = headers_of_the_library();
    ASSERT_THAT(tree, testing::Contains(testing::Key(everything)));
    for (const auto& [header, content] : tree) EXPECT_THAT(faults_of(header, content), testing::IsEmpty());
}

TEST(Layering, NoHeaderDeclaresWhatStandsBelowIt)
{
    EXPECT_THAT(forward_faults_of(headers_of_the_library()), testing::IsEmpty());
}

TEST(Layering, EveryIncludedHeaderExists)
{
    const header_tree tree = headers_of_the_library();
    for (const auto& [header, content] : tree) {
        for (const inclusion& next : inclusions_in(content)) {
            const bool ours = next.what.starts_with("weldloop/");
            EXPECT_TRUE(!ours || tree.contains(next.what)) << header << ": " << next.what;
        }
    }
}

TEST(Layering, TheMainHeaderBringsInAllButIo)
{
    const header_tree tree = headers_of_the_library();
    const std::set<std::string> reached = reached_from(everything, tree);
    for (const auto& [header, content] : tree)
        EXPECT_EQ(reached.contains(header), !header.starts_with("weldloop/io/") &&
                                                !header.starts_with("weldloop/test/") &&
                                                header != "weldloop/bodies.hpp")
            << header;
}

// The page on what stays says of every folder whether it does.
TEST(Layering, EveryFolderHasAStatus)
{
    std::ifstream in(fs::path(WELDLOOP_INCLUDE_DIR).parent_path() / "docs" / "pages" / "stability.md");
    const std::string page{std::istreambuf_iterator<char>(in), {}};
    static const std::regex row("\\n\\| `(\\w+)` \\| (?:stable|free) \\|");
    std::vector<std::string> said, there;
    for (std::sregex_iterator it(page.begin(), page.end(), row), end; it != end; ++it) said.push_back((*it)[1]);
    for (const std::string_view folder : order)
        if (!folder.ends_with(".hpp")) there.emplace_back(folder);
    EXPECT_EQ(said, there);
}

// The checks above pass only because they found nothing; these show that they would find something.
TEST(LayeringRules, SeeWhatIsWrong)
{
    const auto faults = [](const std::string& header, const std::string& lines) {
        return faults_of(header, "#pragma once\n" + lines);
    };
    using testing::ElementsAre, testing::HasSubstr, testing::IsEmpty;
    EXPECT_THAT(faults("weldloop/law/heat.hpp", "#include <weldloop/core/text.hpp>\n#include <cmath>\n"), IsEmpty());
    EXPECT_THAT(faults("weldloop/law/heat.hpp", "#include <weldloop/law/air.hpp>\n"), IsEmpty());
    EXPECT_THAT(faults("weldloop/law/heat.hpp", "#  include <weldloop/part/cable.hpp>\n"),
                ElementsAre(HasSubstr("stands below")));
    EXPECT_THAT(faults("weldloop/field/meter.hpp", "#include <weldloop/weldloop.hpp>\n"),
                ElementsAre(HasSubstr("stands below")));
    EXPECT_THAT(faults("weldloop/weldloop.hpp", "#include <weldloop/io/report.hpp>\n"),
                ElementsAre(HasSubstr("stands below")));
    EXPECT_THAT(faults("weldloop/io/report.hpp", "#include <weldloop/weldloop.hpp>\n"), IsEmpty());
    EXPECT_THAT(faults("weldloop/version.hpp", "#include <weldloop/core/text.hpp>\n"),
                ElementsAre(HasSubstr("stands below")));
    EXPECT_THAT(faults("weldloop/core/text.hpp", "#include \"units.hpp\"\n"),
                ElementsAre(HasSubstr("write <weldloop")));
    EXPECT_THAT(faults("weldloop/core/text.hpp", "#include <weldloop/tools/a.hpp>\n"),
                ElementsAre(HasSubstr("no place")));
    EXPECT_THAT(faults("weldloop/tools/text.hpp", ""), ElementsAre(HasSubstr("does not belong")));
    EXPECT_THAT(faults("weldloop/text.hpp", ""), ElementsAre(HasSubstr("does not belong")));
    EXPECT_THAT(faults("weldloop/core/text.hpp", "auto t = std::format(\"\");\n"),
                ElementsAre(HasSubstr("std::format")));
    EXPECT_THAT(faults("weldloop/core/text.hpp", "inline constexpr int one = 1;\nconstexpr int two() { return 2; }\n"),
                IsEmpty());
    EXPECT_THAT(faults("weldloop/core/text.hpp", "constexpr int one = 1;\n"), ElementsAre(HasSubstr("not inline")));
    EXPECT_THAT(faults_of("weldloop/core/text.hpp", "// text\n"), ElementsAre(HasSubstr("#pragma once")));
}

TEST(LayeringRules, AreNotFooled)
{
    const auto faults = [](const std::string& lines) {
        return faults_of("weldloop/law/heat.hpp", "#pragma once\n" + lines);
    };
    using testing::ElementsAre, testing::HasSubstr, testing::IsEmpty;
    EXPECT_THAT(faults("#define BELOW <weldloop/part/cable.hpp>\n#include BELOW\n"),
                ElementsAre(HasSubstr("by a macro")));
    EXPECT_THAT(faults("#inc\\\nlude <weldloop/part/cable.hpp>\n"), ElementsAre(HasSubstr("stands below")));
    EXPECT_THAT(faults("/* a */ # /* b */ include /* c */ <weldloop/part/cable.hpp>\n"),
                ElementsAre(HasSubstr("stands below")));
    EXPECT_THAT(faults("#import <cmath>\n"), ElementsAre(HasSubstr("another word")));
    EXPECT_THAT(faults("// #include <weldloop/part/cable.hpp>\n"), IsEmpty());

    const header_tree tree{{"weldloop/part/cable.hpp", "struct cable {\n};\n"},
                           {"weldloop/law/heat.hpp", "  struct cable;\nstruct heat;\nstruct heat {\n};\n"},
                           {"weldloop/circuit/loop.hpp", "class cable;\n"}};
    EXPECT_THAT(forward_faults_of(tree), ElementsAre(HasSubstr("law/heat.hpp: declares cable")));
}

TEST(LayeringRules, FollowInclusionsThroughOtherHeaders)
{
    const header_tree tree{{"weldloop/weldloop.hpp", "#include <weldloop/part/cable.hpp>\n"},
                           {"weldloop/part/cable.hpp", "#include <weldloop/core/text.hpp>\n#include <string>\n"},
                           {"weldloop/core/text.hpp", ""},
                           {"weldloop/core/left_out.hpp", ""}};
    EXPECT_THAT(reached_from("weldloop/weldloop.hpp", tree),
                testing::ElementsAre("weldloop/core/text.hpp", "weldloop/part/cable.hpp", "weldloop/weldloop.hpp"));
}
