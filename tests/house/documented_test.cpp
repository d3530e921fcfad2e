// A public function whose own body refuses something says so in its comment, by @throws. That everything public has a
// comment, and that a comment names parameters that are there, is Doxygen's to check (docs/Doxyfile.in); units stand in
// the types.
#include <algorithm>
#include <cstddef>
#include <regex>
#include <sstream>
#include <string>
#include <string_view>
#include <vector>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "house/declared_functions.hpp"
#include "house/header_tree.hpp"

namespace {

/// Braces, brackets and parentheses that a line leaves open.
int opened_by(const std::string& line)
{
    const auto count = [&line](char c) { return static_cast<int>(std::count(line.begin(), line.end(), c)); };
    return count('(') + count('{') + count('[') - count(')') - count('}') - count(']');
}

struct commented {
    std::string comment, code;
};

/// Every declaration with a comment of its own above it, outside namespaces `detail`. Reads what clang-format writes.
std::vector<commented> commented_in(const std::string& content)
{
    static const std::regex inner(R"(^(inline )?namespace (\w+::)*detail\b.*)"),
        inner_ends(R"(^\}  // namespace (\w+::)*detail$)"), scope(R"(^\s*(struct|class|enum|namespace|union|#|\}).*)");
    std::vector<commented> out;
    std::istringstream lines(content);
    commented next;
    bool is_inner = false;
    for (std::string line; std::getline(lines, line);) {
        const std::size_t from = std::min(line.find_first_not_of(' '), line.size());
        const std::string_view said = std::string_view(line).substr(from);
        if (is_inner || std::regex_match(line, inner)) {
            is_inner = !std::regex_match(line, inner_ends);
            next = {};
        } else if (said.starts_with("///")) {
            next.comment.append(said).append("\n");
        } else if (next.comment.empty() || said.empty() || std::regex_match(line, scope)) {
            next = {};
        } else {
            int open = 0;
            do {
                if (next.code.starts_with("template") && std::regex_match(line, scope) && open == 0) {
                    next.code.clear();  // a class: its members have comments of their own
                    break;
                }
                const std::string plain = house::reading::plain_text(line + "\n");
                open += opened_by(plain);
                next.code += plain;
                const std::size_t end = plain.find_last_not_of(" \n");
                if (open == 0 && end != std::string::npos && (plain[end] == ';' || plain[end] == '}')) break;
            } while (std::getline(lines, line));
            if (!next.code.empty()) out.push_back(std::move(next));
            next = {};
        }
    }
    return out;
}

/// The first words of declarations whose body refuses something that the comment does not speak of.
std::vector<std::string> silent_in(const std::string& content)
{
    static const std::regex refuses(R"(\bthrow \w|\brequire_\w+ ?\()");
    std::vector<std::string> out;
    for (const commented& c : commented_in(content))
        if (std::regex_search(c.code, refuses) && c.comment.find("@throws") == std::string::npos)
            out.push_back(c.code.substr(0, c.code.find('\n')));
    return out;
}

}  // namespace

TEST(Documented, WhatRefusesSaysSo)
{
    std::size_t read = 0;
    for (const auto& [header, content] : house::headers_of_the_library()) {
        if (header == "weldloop/core/require.hpp") continue;  // one comment for all of them
        read += commented_in(content).size();
        EXPECT_THAT(silent_in(content), testing::IsEmpty()) << header;
    }
    EXPECT_GT(read, 1000U);
}

TEST(DocumentedRules, SeeWhatIsSilent)
{
    using testing::ElementsAre, testing::HasSubstr, testing::IsEmpty;
    EXPECT_THAT(silent_in("/// Half. @throws out_of_range_error\ninline int half(int a)\n{\n    require_even(a);\n    "
                          "return a / 2;\n}\n"),
                IsEmpty());
    EXPECT_THAT(silent_in("/// Half.\ntemplate <class T>\nT half(T a)\n{\n    if (a) throw odd(a);\n    return a;\n}\n"
                          "/// Not.\ninline int whole(int a) { return a; }\n"),
                ElementsAre(HasSubstr("template")));
    EXPECT_THAT(silent_in("struct s {\n    /// Half.\n    int half() const { return require_even(a_) / 2; }\n};\n"),
                ElementsAre(HasSubstr("half")));
    EXPECT_THAT(silent_in("/// Half, \"throw it\".\nint half(int a) { return text(\"throw it\"); }\n"), IsEmpty());
    EXPECT_THAT(silent_in("namespace detail {\n/// Half.\nint half(int a) { throw odd(a); }\n}  // namespace detail\n"),
                IsEmpty());
}
