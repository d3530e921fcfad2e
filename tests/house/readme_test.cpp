#include <filesystem>
#include <fstream>
#include <sstream>
#include <string>

#include <gtest/gtest.h>

#include <weldloop/version.hpp>

namespace {

std::string text_of(const std::string& path)
{
    std::ifstream in(std::filesystem::path(WELDLOOP_INCLUDE_DIR).parent_path() / path);
    std::ostringstream out;
    out << in.rdbuf();
    return out.str();
}

// The program in the README is the one that is compiled and run as an example.
TEST(Readme, ShowsTheExampleAsItIs)
{
    const std::string readme = text_of("README.md"), example = text_of("examples/quick_start.cpp");
    const std::string mark = "//! [quick start]\n";
    const std::size_t begin = example.find(mark);
    ASSERT_NE(begin, std::string::npos);
    const std::size_t end = example.find(mark, begin + mark.size());
    ASSERT_NE(end, std::string::npos);
    const std::string program = example.substr(begin + mark.size(), end - begin - mark.size());
    EXPECT_GT(program.size(), 400U);
    std::string block = "```cpp\n";
    block.append(program).append("```");
    EXPECT_NE(readme.find(block), std::string::npos);
}

// A recipe whose format wants the number as a literal states the one of the headers.
TEST(Packaging, NamesTheVersionOfTheHeaders)
{
    const std::string version = std::to_string(weldloop::version_major) + "." +
                                std::to_string(weldloop::version_minor) + "." + std::to_string(weldloop::version_patch);
    EXPECT_NE(text_of("cmake/packaging/vcpkg/vcpkg.json").find("\"version\": \"" + version + "\""), std::string::npos);
}

}  // namespace
