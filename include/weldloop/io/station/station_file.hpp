#pragma once
/// @file
/// Reading a station from a file. The format is described in the page on station files.

#include <filesystem>
#include <string_view>
#include <vector>

#include <weldloop/circuit/station.hpp>
#include <weldloop/field/observation.hpp>
#include <weldloop/io/report/shown_units.hpp>
#include <weldloop/io/station/station_file_error.hpp>
#include <weldloop/life/station_service.hpp>

namespace weldloop {

/// What a station file holds.
struct described_station {
    weldloop::station station = {};              ///< whose path can be assessed
    station_service service = {};                ///< its use, from [service]
    bool service_is_stated = false;              ///< the file has that section
    std::vector<observation> observations = {};  ///< what was found on it, from [[reading]], in the order of the file
    shown_units units = {};                      ///< a report of it is told in: the file's own, or those of [report]
};

/// Reads a station and what is said of it from text.
/// @param text the content of a station file, at most 1 MiB @param file_name how messages call it
/// @throws station_file_error with line and column for whatever does not fit: no TOML, an unknown or missing key, a
/// wrong
///         kind of value, an unknown unit or word, an impossible value, a name used twice, no arc or two
[[nodiscard]] described_station described_station_from_toml(std::string_view text, std::string_view file_name);

/// Reads a station alone from text. @param text as above @param file_name as above @throws as above
[[nodiscard]] station station_from_toml(std::string_view text, std::string_view file_name);

/// Reads a station and what is said of it from a file.
/// @param file a TOML file of at most 1 MiB
/// @throws station_file_error as described_station_from_toml(), and without a line for a file that cannot be read or is
/// too large, and for what is no file: a folder, a pipe, a device
[[nodiscard]] described_station read_described_station(const std::filesystem::path& file);

/// Reads a station alone from a file. @param file as above @throws as above
[[nodiscard]] station read_station(const std::filesystem::path& file);

}  // namespace weldloop

#ifndef WELDLOOP_BODIES_APART
#include <weldloop/io/station/station_file_body.hpp>
#endif
