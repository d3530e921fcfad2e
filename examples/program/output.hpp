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
#include <weldloop/io/report/text_layout.hpp>

namespace program {

namespace wl = weldloop;
namespace fs = std::filesystem;

/// Says something; it is an error if nobody can hear it. @throws std::runtime_error
inline void say(std::string_view text)
{
    std::cout << text << std::flush;
    if (!std::cout) throw std::runtime_error("standard output cannot be written to");
}

/// A sentence in lines of at most a hundred letters behind a mark, the others set in by it.
inline std::string wrapped(std::string mark, std::string_view sentence)
{
    constexpr std::size_t width = 100;
    std::string out;
    for (const std::string& line : wl::detail::broken(wl::plain_ascii(sentence), width - mark.size())) {
        out.append(mark).append(line).append("\n");
        mark.assign(mark.size(), ' ');
    }
    return out;
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
