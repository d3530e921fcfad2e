// What the pages show as code is code: every block of C++ stands word for word in a file that is compiled, whatever its
// indentation, and nothing that looks like C++ stands anywhere else.
#include <filesystem>
#include <fstream>
#include <regex>
#include <sstream>
#include <string>
#include <vector>

#include <gtest/gtest.h>

namespace {

namespace fs = std::filesystem;

const fs::path root = fs::path(WELDLOOP_INCLUDE_DIR).parent_path();

std::vector<std::string> lines_of(const fs::path& file)
{
    std::ifstream in(file);
    std::vector<std::string> out;
    for (std::string line; std::getline(in, line);) out.push_back(line);
    return out;
}

std::string without_indentation(const std::string& line)
{
    const std::size_t at = line.find_first_not_of(' ');
    return (at == std::string::npos ? "" : line.substr(at)) + "\n";
}

std::vector<fs::path> pages()
{
    std::vector<fs::path> out{root / "README.md", root / "DEVELOPERS.md"};
    for (const char* folder : {"docs", "docs/pages", "docs/course", "tests", "bench"})
        for (const auto& entry : fs::directory_iterator(root / folder))
            if (entry.path().extension() == ".md") out.push_back(entry.path());
    return out;
}

// Every file that some program is made of: what lies in these folders is compiled, by their lists.
std::vector<std::string> compiled()
{
    std::vector<std::string> out;
    for (const char* folder : {"examples", "examples/course", "examples/scripts", "examples/program", "cmake",
                               "tests/pages", "tests/io", "tests/package/ways"})
        for (const auto& entry : fs::directory_iterator(root / folder)) {
            if (entry.path().extension() != ".cpp") continue;
            std::string text;
            for (const std::string& line : lines_of(entry.path())) text += without_indentation(line);
            out.push_back(std::move(text));
        }
    return out;
}

struct found_code {
    std::vector<std::string> blocks;   // of C++, without indentation
    std::vector<std::string> strays;   // lines of C++ outside of one
    std::vector<std::string> foreign;  // fences that do not say what they hold
};

found_code code_of(const std::vector<std::string>& page)
{
    static const std::regex looks_like_code(
        R"(^    .*(;|; *//.*)$|^    (#include|using namespace|EXPECT_|namespace |int main)|[@\\]code)");
    found_code out;
    std::string fence;  // as it was opened
    for (const std::string& line : page) {
        const bool mark = line.rfind("```", 0) == 0 || line.rfind("~~~", 0) == 0;
        if (mark && fence.empty()) {
            fence = line;
            if (line == "```cpp")
                out.blocks.emplace_back();
            else if (line != "~~~{.unparsed}" && line != "```toml" && line != "```sh" && line != "```cmake" &&
                     line != "```meson")
                out.foreign.push_back(line);
        } else if (mark && line == fence.substr(0, 3))
            fence.clear();
        else if (fence == "```cpp")
            out.blocks.back() += without_indentation(line);
        else if (fence.empty() && std::regex_search(line, looks_like_code))
            out.strays.push_back(line);
    }
    return out;
}

}  // namespace

TEST(QuotedCode, StandsInACompiledFile)
{
    const std::vector<std::string> programs = compiled();
    std::size_t blocks = 0;
    for (const fs::path& page : pages()) {
        const found_code found = code_of(lines_of(page));
        for (const std::string& stray : found.strays)
            ADD_FAILURE() << page << ": code that nothing compiles; put it into ```cpp: " << stray;
        for (const std::string& fence : found.foreign) ADD_FAILURE() << page << ": " << fence;
        for (const std::string& block : found.blocks) {
            bool quoted = false;
            for (const std::string& program : programs) quoted = quoted || program.find(block) != std::string::npos;
            EXPECT_TRUE(quoted) << page << ": no compiled file has\n" << block;
            ++blocks;
        }
    }
    EXPECT_GE(blocks, 6U);
}

// What pages take over by name exists where programs are compiled.
TEST(QuotedCode, FilesTakenOverAreCompiled)
{
    static const std::regex command(R"(^\s*[\\@](snippet|include)(\{[a-z]+\})?\s+(\S+))");
    std::size_t taken = 0;
    for (const fs::path& page : pages())
        for (const std::string& line : lines_of(page)) {
            std::smatch match;
            if (!std::regex_search(line, match, command)) continue;
            const std::string name = match[3];
            bool there = false;
            for (const char* folder : {"examples", "examples/course", "examples/scripts"})
                there = there || fs::exists(root / folder / name);
            EXPECT_TRUE(there && name.ends_with(".cpp")) << page << ": " << line;
            ++taken;
        }
    EXPECT_GE(taken, 27U);
}

TEST(QuotedCode, FindsWhatItLooksFor)
{
    const found_code found = code_of({"    const auto x = 1_A;", "    ctest -L schema", "```cpp", "    int a = 1;",
                                      "```", "~~~", "a;", "~~~", "    #include <x.hpp>", "\\code"});
    EXPECT_EQ(found.blocks, (std::vector<std::string>{"int a = 1;\n"}));
    EXPECT_EQ(found.strays, (std::vector<std::string>{"    const auto x = 1_A;", "    #include <x.hpp>", "\\code"}));
    EXPECT_EQ(found.foreign, (std::vector<std::string>{"~~~"}));
}
