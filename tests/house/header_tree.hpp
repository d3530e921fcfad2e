#pragma once
// The headers of the library as texts.

#include <filesystem>
#include <fstream>
#include <iterator>
#include <map>
#include <string>

namespace house {

using header_tree = std::map<std::string, std::string>;  // path below include/ -> content

inline header_tree headers_of_the_library()
{
    namespace fs = std::filesystem;
    header_tree tree;
    const fs::path root = WELDLOOP_INCLUDE_DIR;
    for (const fs::directory_entry& entry : fs::recursive_directory_iterator(root)) {
        if (!entry.is_regular_file()) continue;
        std::ifstream in(entry.path(), std::ios::binary);
        tree[entry.path().lexically_relative(root).generic_string()] = {std::istreambuf_iterator<char>(in), {}};
    }
    return tree;
}

}  // namespace house
