// What a public function may ask for: at most four parameters, more are a struct; no bool, which a caller cannot read.
#include <cstddef>
#include <map>
#include <regex>
#include <set>
#include <stdexcept>
#include <string>
#include <vector>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "house/declared_functions.hpp"
#include "house/header_tree.hpp"

namespace {

using house::declared_function, house::functions_in, house::headers_of_the_library;

constexpr std::size_t most_parameters = 4;

/// Each public function that asks for too many things or for a bool, as "name(how many)" or "name(bool)".
std::vector<std::string> faults_in(const std::string& content)
{
    static const std::regex flag(R"((^|[ <,(])bool($|[ >,)&*=]))");
    std::vector<std::string> faults;
    for (const declared_function& f : functions_in(content)) {
        if (!f.open) continue;
        if (f.parameters.size() > most_parameters)
            faults.push_back(f.name + "(" + std::to_string(f.parameters.size()) + ")");
        for (const std::string& p : f.parameters)
            if (p.find("std :: function") == std::string::npos && std::regex_search(p, flag))
                faults.push_back(f.name + "(bool)");
    }
    return faults;
}

/// Macros the text of a header defines.
std::set<std::string> macros_in(const std::string& content)
{
    static const std::regex goes_on(R"(\\[ \t]*\n)"), define(R"((?:^|\n)[ \t]*#[ \t]*define[ \t]+(\w+))");
    const std::string joined = std::regex_replace(content, goes_on, "");
    std::set<std::string> found;
    for (std::sregex_iterator it(joined.begin(), joined.end(), define), end; it != end; ++it) found.insert((*it)[1]);
    return found;
}

// Kept for programs that name joint, lead, load, place, horizon and service one by one; clamp_use holds them all.
const std::map<std::string, std::set<std::string>> exceptions{
    {"weldloop/life/grip.hpp", {"grip_over_time(6)"}},
    {"weldloop/life/grip_body.hpp", {"grip_over_time(6)"}},
};

}  // namespace

TEST(Parameters, AtMostFourAndNoBool)
{
    const auto tree = headers_of_the_library();
    ASSERT_GT(tree.size(), 200U);
    std::size_t read = 0;
    for (const auto& [header, content] : tree) {
        std::set<std::string> faults;
        EXPECT_NO_THROW({
            for (const std::string& f : faults_in(content)) faults.insert(f);
            read += functions_in(content).size();
        }) << header;
        const auto known = exceptions.find(header);
        EXPECT_EQ(faults, known == exceptions.end() ? std::set<std::string>{} : known->second) << header;
    }
    EXPECT_GT(read, 2000U);
    for (const auto& [header, names] : exceptions) EXPECT_TRUE(tree.contains(header)) << header;
}

// A macro may hide anything; the few there are are known, and the functions they make are read.
TEST(Parameters, NoMacroIsNew)
{
    const std::map<std::string, std::set<std::string>> known{
        {"weldloop/core/literals.hpp", {"WELDLOOP_LITERAL", "WELDLOOP_TEMPERATURE_LITERAL"}},
        {"weldloop/core/unit_text.hpp", {"WELDLOOP_KIND"}},
        {"weldloop/version.hpp", {"WELDLOOP_VERSION_MAJOR", "WELDLOOP_VERSION_MINOR", "WELDLOOP_VERSION_PATCH"}},
        {"weldloop/io/station/toml_parser.hpp", {"TOML_ASSERT", "TOML_HEADER_ONLY"}},
    };
    for (const auto& [header, content] : headers_of_the_library()) {
        const auto found = known.find(header);
        EXPECT_EQ(macros_in(content), found == known.end() ? std::set<std::string>{} : found->second) << header;
    }
}

// The check above passes only because it found nothing; these show what it would find.
TEST(ParametersRules, SeeWhatIsWrong)
{
    using testing::ElementsAre, testing::IsEmpty;
    EXPECT_THAT(faults_in("int f(int a, int b, int c, int d);"), IsEmpty());
    EXPECT_THAT(faults_in("int f(int a, int b, int c, int d, int e = 5);"), ElementsAre("f(5)"));
    EXPECT_THAT(faults_in("namespace a { namespace b { inline int f(int a, int b, int c, int d, int e) { } } }"),
                ElementsAre("f(5)"));
    EXPECT_THAT(
        faults_in("struct s { s(int a, int b, int c, int d, int e) : a_(a), b_{b} { if (a) { } } int a_, b_; };"),
        ElementsAre("s::s(5)"));
    EXPECT_THAT(faults_in("struct s { int operator()(int a, int b, int c, int d, int e) const; };"),
                ElementsAre("s::operator()(5)"));
    EXPECT_THAT(faults_in("template <class T, class U = std::map<T, int>> auto f(T a, U b, T c, T d, T e) -> T;"),
                ElementsAre("f(5)"));
    EXPECT_THAT(faults_in("void f(bool yes);"), ElementsAre("f(bool)"));
    EXPECT_THAT(faults_in("void f(int a, const bool& yes = true);"), ElementsAre("f(bool)"));
    EXPECT_THAT(faults_in("void f(std::optional<bool> yes);"), ElementsAre("f(bool)"));
    // what is inside, and what only looks like more
    EXPECT_THAT(faults_in("namespace detail { void f(int a, int b, int c, int d, int e, bool g); }"), IsEmpty());
    EXPECT_THAT(faults_in("class s { void f(int a, int b, int c, int d, int e); public: void g(int a); };"), IsEmpty());
    EXPECT_THAT(faults_in("class s { public: void g(int a, int b, int c, int d, int e); };"), ElementsAre("s::g(5)"));
    EXPECT_THAT(faults_in("void f(std::map<int, int> a, std::array<int, 3> b = {1, 2, 3}, int c = g(1, 2, 3));"),
                IsEmpty());
    EXPECT_THAT(faults_in("inline constexpr table t{f(1, 2, 3, 4, 5), {1, 2, 3, 4, 5}}; int g(int a);"), IsEmpty());
    EXPECT_THAT(faults_in("void f() { g(1, 2, 3, 4, 5); } void h(std::function<bool(int)> f);"), IsEmpty());
    EXPECT_THAT(faults_in("void of_boolean(boolean a);"), IsEmpty());
}

TEST(ParametersRules, AreNotFooled)
{
    using testing::ElementsAre;
    EXPECT_THAT(faults_in("int f(int a, int b, /* ) */ int c, int d, // )\n int e);"), ElementsAre("f(5)"));
    EXPECT_THAT(faults_in("int f(int a, int b, int c, int d, in\\\nt e);"), ElementsAre("f(5)"));
    EXPECT_THAT(faults_in("int\nf\n(int a, int b, int c, int d,\nint e)\n;"), ElementsAre("f(5)"));
    EXPECT_THAT(faults_in("int f(const char* a = \")\", char b = ')', int c = 0, int d = 0, int e = 0);"),
                ElementsAre("f(5)"));
    EXPECT_THAT(faults_in("inline auto t = R\"x({)\")x\"; int f(int a, int b, int c, int d, int e);"),
                ElementsAre("f(5)"));
    EXPECT_THAT(faults_in("#define MAKE(n) \\\n int n(int a, int b, int c, int d, int e) { } \\\n int m(bool a);\n"),
                testing::Not(testing::IsEmpty()));
    EXPECT_THAT(faults_in("#if 0\n#endif\nnamespace a::detail { void g(); } namespace a { void f(bool b); }"),
                ElementsAre("f(bool)"));
    EXPECT_EQ(macros_in("#define A\n  #  define \\\n B 1\n"), (std::set<std::string>{"A", "B"}));
    // what cannot be read is no empty answer
    EXPECT_THROW((void)functions_in("void f(int a;"), std::runtime_error);
    EXPECT_THROW((void)functions_in("void f() { } }"), std::runtime_error);
}
