// Feeds a target with kept inputs: replay FILE_OR_FOLDER ... Takes the place of libFuzzer's main, so that whatever was
// found once is looked at with every compiler.
#include <algorithm>
#include <cstdint>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <vector>

#include "property.hpp"

namespace {

std::vector<std::filesystem::path> files_of(int count, char** values)
{
    std::vector<std::filesystem::path> out;
    for (int i = 1; i < count; ++i) {
        if (!std::filesystem::is_directory(values[i]))
            out.emplace_back(values[i]);
        else
            for (const auto& entry : std::filesystem::directory_iterator(values[i])) out.push_back(entry.path());
    }
    std::sort(out.begin(), out.end());
    return out;
}

}  // namespace

int main(int count, char** values)
{
    const std::vector<std::filesystem::path> files = files_of(count, values);
    for (const std::filesystem::path& file : files) {
        std::printf("%s\n", file.filename().c_str());
        std::fflush(stdout);  // the last one named is the one at fault
        std::ifstream in(file, std::ios::binary);
        const std::vector<char> bytes{std::istreambuf_iterator<char>(in), {}};
        if (in.bad() || !in.is_open()) return 1;
        const std::vector<std::uint8_t> data(bytes.begin(), bytes.end());
        LLVMFuzzerTestOneInput(data.data(), data.size());
    }
    std::printf("%zu inputs\n", files.size());
    return files.empty() ? 1 : 0;
}
