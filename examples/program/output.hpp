#pragma once
// What the program says and writes.
#include <filesystem>
#include <iostream>
#include <stdexcept>
#include <string>
#include <string_view>
#include <vector>

#include <weldloop/io/report/escape.hpp>
#include <weldloop/io/report/report_folder.hpp>

namespace program {

namespace wl = weldloop;
namespace fs = std::filesystem;

/// Says something; it is an error if nobody can hear it. @throws std::runtime_error
inline void say(std::string_view text)
{
    std::cout << text << std::flush;
    if (!std::cout) throw std::runtime_error("standard output cannot be written to");
}

/// The path by which a file or folder is known again.
inline std::string known_as(const fs::path& file)
{
    std::error_code fault;
    const fs::path whole = fs::weakly_canonical(file, fault);
    return fault ? file.string() : whole.string();
}

/// Writes documents of a file and says where.
inline void write_and_say(const fs::path& folder, const wl::document_origin& of,
                          const std::vector<wl::document>& documents)
{
    std::string text = "\nWritten:\n";
    for (const fs::path& file : wl::write_documents(folder, of, documents))
        text.append("  ").append(wl::printable(file.string())).append("\n");
    say(text);
}

}  // namespace program
