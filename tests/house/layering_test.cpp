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

namespace {

namespace fs = std::filesystem;
using header_tree = std::map<std::string, std::string>;  // path below include/ -> content

/// What stands below include/weldloop: each may include itself and what comes before it here.
constexpr std::array<std::string_view, 11> order{"version.hpp", "core",   "solve", "material",     "law", "part",
                                                 "circuit",     "rating", "field", "weldloop.hpp", "io"};

const std::string everything = "weldloop/weldloop.hpp";

header_tree headers_of_the_library()
{
    header_tree tree;
    const fs::path root = WELDLOOP_INCLUDE_DIR;
    for (const fs::directory_entry& entry : fs::recursive_directory_iterator(root)) {
        if (!entry.is_regular_file()) continue;
        std::ifstream in(entry.path(), std::ios::binary);
        tree[entry.path().lexically_relative(root).generic_string()] = {std::istreambuf_iterator<char>(in), {}};
    }
    return tree;
}

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

std::vector<inclusion> inclusions_in(const std::string& content)
{
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
    for (const auto& [what, in_quotes] : inclusions_in(content)) {
        if (in_quotes) note("includes \"" + what + "\": write <weldloop/...>");
        if (!what.starts_with("weldloop/")) continue;
        const int included = rank_of(what);
        if (included < 0) note("includes <" + what + ">, which has no place in the order");
        if (included > rank) note("includes <" + what + ">, which stands below it");
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
        EXPECT_EQ(reached.contains(header), !header.starts_with("weldloop/io/")) << header;
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

TEST(LayeringRules, FollowInclusionsThroughOtherHeaders)
{
    const header_tree tree{{"weldloop/weldloop.hpp", "#include <weldloop/part/cable.hpp>\n"},
                           {"weldloop/part/cable.hpp", "#include <weldloop/core/text.hpp>\n#include <string>\n"},
                           {"weldloop/core/text.hpp", ""},
                           {"weldloop/core/left_out.hpp", ""}};
    EXPECT_THAT(reached_from("weldloop/weldloop.hpp", tree),
                testing::ElementsAre("weldloop/core/text.hpp", "weldloop/part/cable.hpp", "weldloop/weldloop.hpp"));
}
