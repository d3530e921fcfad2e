#pragma once
/// @file
/// The error of a station file: where it is, why it is one, and the word that was most likely meant.

#include <cstddef>
#include <string>
#include <utility>

#include <weldloop/core/error.hpp>

namespace weldloop {

/// A place in a text file.
struct file_place {
    std::size_t line = 0;    ///< from 1; 0 for the file as a whole
    std::size_t column = 0;  ///< from 1, counted in characters; 0 for the file as a whole

    /// Line and column.
    friend bool operator==(const file_place&, const file_place&) = default;
};

/// A station file cannot be used. what() reads `file:line:column: reason; nearest: "word"`, the form in which editors
/// and terminals offer to jump to the place.
class station_file_error : public error {
public:
    /// @param file    as the caller named it
    /// @param place   of the offending key, value or character
    /// @param reason  what is wrong there and what would be accepted
    /// @param nearest the valid word nearest to the one that stands there; empty if none is meant
    station_file_error(std::string file, file_place place, std::string reason, std::string nearest = {})
        : error(error_id::station_file, "station file", file, reason), file_(std::move(file)), place_(place),
          reason_(std::move(reason)), nearest_(std::move(nearest)), message_(file_)
    {
        if (place_.line > 0)
            message_.append(":").append(std::to_string(place_.line)).append(":").append(std::to_string(place_.column));
        message_.append(": ").append(reason_);
        if (!nearest_.empty()) message_.append("; nearest: \"").append(nearest_).append("\"");
    }

    [[nodiscard]] const char* what() const noexcept override { return message_.c_str(); }  ///< the whole message
    [[nodiscard]] const std::string& file() const& noexcept { return file_; }              ///< as the caller named it
    [[nodiscard]] std::size_t line() const noexcept { return place_.line; }          ///< from 1; 0: the whole file
    [[nodiscard]] std::size_t column() const noexcept { return place_.column; }      ///< from 1; 0: the whole file
    [[nodiscard]] const std::string& reason() const& noexcept { return reason_; }    ///< what is wrong there
    [[nodiscard]] const std::string& nearest() const& noexcept { return nearest_; }  ///< most likely word, or empty

private:
    std::string file_;
    file_place place_;
    std::string reason_, nearest_, message_;
};

}  // namespace weldloop
