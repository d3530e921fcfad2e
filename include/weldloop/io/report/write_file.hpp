#pragma once
/// @file
/// Writing files as a whole or not at all.

#include <cstddef>
#include <deque>
#include <filesystem>
#include <fstream>
#include <random>
#include <span>
#include <string>
#include <string_view>
#include <system_error>
#include <utility>

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

/// A file to be written.
struct file_content {
    std::filesystem::path target;  ///< its name
    std::string content;           ///< all of it
};

namespace detail {

// What a renaming has done, undone when it goes out of scope unless all went well.
class renaming {
public:
    renaming(std::filesystem::path part, std::filesystem::path target) : target_(std::move(target))
    {
        std::error_code fault;
        if (std::filesystem::exists(target_, fault)) {
            old_ = unused_name_beside(target_);
            std::filesystem::rename(target_, old_, fault);
            if (fault) {
                old_.clear();
                throw file_write_error(target_.string(), "the file before it cannot be set aside: " + fault.message());
            }
        }
        std::filesystem::rename(part, target_, fault);
        if (!fault) {
            renamed_ = true;
            return;
        }
        undo();
        throw file_write_error(target_.string(), "cannot take its name: " + fault.message());
    }
    renaming(const renaming&) = delete;
    renaming& operator=(const renaming&) = delete;
    ~renaming() { undo(); }

    void keep()
    {
        std::error_code ignored;
        if (!old_.empty()) std::filesystem::remove_all(old_, ignored);
        old_.clear();
        renamed_ = false;
    }

private:
    void undo()
    {
        std::error_code ignored;
        if (renamed_) std::filesystem::remove(target_, ignored);
        if (!old_.empty()) std::filesystem::rename(old_, target_, ignored);
        renamed_ = false;
        old_.clear();
    }

    std::filesystem::path target_, old_;
    bool renamed_ = false;
};

[[nodiscard]] inline std::filesystem::path written_beside(const file_content& file)
{
    const std::filesystem::path& target = file.target;
    std::error_code fault;
    if (target.has_parent_path()) {
        std::filesystem::create_directories(target.parent_path(), fault);
        if (fault) throw file_write_error(target.string(), "its folder cannot be made: " + fault.message());
    }
    if (std::filesystem::is_directory(target, fault)) throw file_write_error(target.string(), "a folder has its name");
    passing_file part(unused_name_beside(target));
    std::ofstream out(part.name(), std::ios::binary | std::ios::trunc);
    if (!out) throw file_write_error(target.string(), "cannot be opened for writing");
    out.write(file.content.data(), static_cast<std::streamsize>(file.content.size()));
    out.close();
    if (!out) throw file_write_error(target.string(), "cannot be written to its end");
    part.keep();
    return part.name();
}

}  // namespace detail

/// Writes files that belong together, all or none: each first under another name beside its own, then all by renaming.
/// A failure leaves neither a part nor a change; files that stood there before stand there again. Folders on the way
/// are made, and stay.
/// @param files each with a name of its own
/// @throws file_write_error if a folder, a file or a name cannot be made
inline void write_files(std::span<const file_content> files)
{
    std::deque<detail::passing_file> parts;
    for (const file_content& file : files) parts.emplace_back(detail::written_beside(file));
    std::deque<detail::renaming> done;
    for (std::size_t i = 0; i < files.size(); ++i) done.emplace_back(parts[i].name(), files[i].target);
    for (detail::renaming& one : done) one.keep();
    for (detail::passing_file& part : parts) part.keep();
}

/// Writes a file: first under another name beside it, then by renaming. A failure leaves neither a part nor a change.
/// Folders on the way are made.
/// @param target the file @param content all of it
/// @throws file_write_error if a folder, the file or the name cannot be made
inline void write_file(const std::filesystem::path& target, std::string_view content)
{
    const file_content file{target, std::string(content)};
    write_files({&file, 1});
}

}  // namespace weldloop
