#pragma once
/// @file
/// Station files and reports for programs whose units define WELDLOOP_BODIES_APART: one unit, beside that of
/// weldloop/bodies.hpp, includes this file. Readers and writers that the others only see declared are compiled there.

#include <weldloop/io/report/report_json_body.hpp>
#include <weldloop/io/report/report_page_body.hpp>
#include <weldloop/io/report/report_text_body.hpp>
#include <weldloop/io/station/station_file_body.hpp>

namespace weldloop::detail {

/// As kept_bodies in weldloop/bodies.hpp: a function whose address is taken leaves its code behind.
struct kept_reports {
    decltype(&report_json) json = &report_json;                                       ///< for programs
    decltype(&report_page) page = &report_page;                                       ///< for browsers
    decltype(&report_text) text = &report_text;                                       ///< for terminals
    decltype(&described_station_from_toml) from_text = &described_station_from_toml;  ///< of a text
    decltype(&station_from_toml) station_from_text = &station_from_toml;              ///< of a text, the station alone
    decltype(&read_described_station) from_file = &read_described_station;            ///< of a file
    decltype(&read_station) station_from_file = &read_station;                        ///< of a file, the station alone
};
[[gnu::used]] static const kept_reports kept_io_bodies;

}  // namespace weldloop::detail
