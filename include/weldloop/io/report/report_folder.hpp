#pragma once
/// @file
/// The folder that reports are written to: which name belongs to which station, so that no report takes the place of
/// another station's.

#include <algorithm>
#include <cstddef>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <map>
#include <string>
#include <string_view>
#include <system_error>
#include <utility>
#include <vector>

#include <nlohmann/json.hpp>

#include <weldloop/core/error.hpp>
#include <weldloop/core/trade_words.hpp>
#include <weldloop/io/report/escape.hpp>
#include <weldloop/io/report/json_values.hpp>
#include <weldloop/io/report/write_file.hpp>

namespace weldloop {

/// What documents are written of.
struct document_origin {
    std::string stem;    ///< what their names begin with
    std::string origin;  ///< by which it is known again: the path of the station file, say
};

/// A document of it.
struct document {
    std::string ending;   ///< of its name, with what comes before the point: ".json", "-card.html"
    std::string content;  ///< all of it
};

/// The name without folders and ending, each character that could mean something elsewhere replaced by "_".
/// @param file a path
[[nodiscard]] inline std::string plain_stem(const std::filesystem::path& file)
{
    std::string name = file.stem().string();
    for (char& c : name) {
        const bool plain = (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '-' ||
                           c == '_' || c == '.';
        if (!plain) c = '_';
    }
    if (name.empty() || name.front() == '.' || name.front() == '-') name.insert(0, "_");
    return name;
}

/// The file of a report folder that says which of its files was written of what.
inline constexpr std::string_view report_folder_list = "written.json";

namespace detail {

using written_names = std::map<std::string, std::string>;  // name of a file, origin

[[nodiscard]] inline written_names names_written_in(const std::filesystem::path& folder)
{
    const std::filesystem::path list = folder / std::string(report_folder_list);
    std::error_code fault;
    if (!std::filesystem::exists(list, fault)) return {};
    std::ifstream in(list, std::ios::binary);
    const std::string text{std::istreambuf_iterator<char>(in), {}};
    const nlohmann::json read = nlohmann::json::parse(text, nullptr, false);
    written_names out;
    if (!read.is_object())
        throw file_write_error(list.string(), "it does not say what the files beside it were written of");
    for (const auto& [name, origin] : read.items()) {
        if (!origin.is_string())
            throw file_write_error(list.string(), "it does not say what " + printable(name) + " was written of");
        out[name] = origin.get<std::string>();
    }
    return out;
}

// Whether a name may be written for an origin: it was before, or nothing has it.
[[nodiscard]] inline bool may_be_written(const std::filesystem::path& folder, const written_names& names,
                                         const std::string& name, const std::string& origin)
{
    for (const auto& [taken, of] : names)  // some file systems do not tell A from a
        if (same_but_for_case(taken, name)) return taken == name && of == origin;
    std::error_code fault;
    return !same_but_for_case(name, report_folder_list) && !std::filesystem::exists(folder / name, fault);
}

}  // namespace detail

/// Writes documents of one origin, all or none, and keeps in written.json beside them what they were written of. They
/// take the place of those written of the same origin before. A name that was written of something else, or that
/// something else has, is left alone: "-2", "-3" and so on is put behind the stem.
/// @param folder is made if it is not there @param of what they are of @param documents each with an ending of its own
/// @return the files written
/// @throws file_write_error
inline std::vector<std::filesystem::path>
write_documents(const std::filesystem::path& folder, const document_origin& of, const std::vector<document>& documents)
{
    constexpr int most = 100000;
    detail::written_names names = detail::names_written_in(folder);
    for (int number = 1; number < most; ++number) {
        const std::string stem = number == 1 ? of.stem : of.stem + "-" + std::to_string(number);
        if (!std::all_of(documents.begin(), documents.end(), [&](const document& d) {
                return detail::may_be_written(folder, names, stem + d.ending, of.origin);
            }))
            continue;
        std::vector<std::filesystem::path> out;
        std::vector<file_content> files;
        for (const document& d : documents) {
            names[stem + d.ending] = of.origin;
            out.push_back(folder / (stem + d.ending));
            files.push_back({out.back(), d.content});
        }
        detail::json list = detail::json::object();
        for (const auto& [name, origin] : names) list[name] = origin;
        files.push_back({folder / std::string(report_folder_list), detail::json_text(list) + "\n"});
        write_files(files);
        return out;
    }
    throw file_write_error((folder / of.stem).string(), "no free name for it");
}

}  // namespace weldloop
