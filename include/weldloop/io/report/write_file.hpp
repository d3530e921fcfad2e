#pragma once
/// @file
/// Writing a file as a whole or not at all.

#include <filesystem>
#include <fstream>
#include <random>
#include <string>
#include <string_view>
#include <system_error>

#include <weldloop/core/error.hpp>

namespace weldloop {

/// A file cannot be written. Id 108.
class file_write_error : public error {
public:
    /// @param file the target @param reason why it cannot be written
    file_write_error(const std::string& file, const std::string& reason)
        : error(error_id::file_write, "file " + file, "not written: " + reason, "a place that can be written to")
    {
    }
};

namespace detail {

/// A name beside the target that nothing has.
[[nodiscard]] inline std::filesystem::path unused_name_beside(const std::filesystem::path& target)
{
    std::random_device random;
    for (int attempt = 0; attempt < 100; ++attempt) {
        std::filesystem::path name = target;
        name += ".part" + std::to_string(random());
        std::error_code fault;
        if (!std::filesystem::exists(name, fault)) return name;
    }
    throw file_write_error(target.string(), "no free name for its parts");
}

/// Removes a file when it goes out of scope, unless it was kept.
class passing_file {
public:
    explicit passing_file(std::filesystem::path name) : name_(std::move(name)) {}
    passing_file(const passing_file&) = delete;
    passing_file& operator=(const passing_file&) = delete;
    ~passing_file()
    {
        std::error_code ignored;
        if (!kept_) std::filesystem::remove(name_, ignored);
    }
    void keep() { kept_ = true; }
    [[nodiscard]] const std::filesystem::path& name() const { return name_; }

private:
    std::filesystem::path name_;
    bool kept_ = false;
};

}  // namespace detail

/// Writes a file: first under another name beside it, then by renaming. A reader sees the old file or the new one,
/// never a part, and a failure leaves neither a part nor a change. Folders on the way are made.
/// @param target the file @param content all of it
/// @throws file_write_error if a folder, the file or the name cannot be made
inline void write_file(const std::filesystem::path& target, std::string_view content)
{
    std::error_code fault;
    if (target.has_parent_path()) {
        std::filesystem::create_directories(target.parent_path(), fault);
        if (fault) throw file_write_error(target.string(), "its folder cannot be made: " + fault.message());
    }
    detail::passing_file part(detail::unused_name_beside(target));
    std::ofstream out(part.name(), std::ios::binary | std::ios::trunc);
    if (!out) throw file_write_error(target.string(), "cannot be opened for writing");
    out.write(content.data(), static_cast<std::streamsize>(content.size()));
    out.close();
    if (!out) throw file_write_error(target.string(), "cannot be written to its end");
    std::filesystem::rename(part.name(), target, fault);
    if (fault) throw file_write_error(target.string(), "cannot take its name: " + fault.message());
    part.keep();
}

}  // namespace weldloop
