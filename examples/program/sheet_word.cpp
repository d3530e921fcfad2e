// sheet: a blank sheet for a clipboard, each part with what it should read beside blanks for what it does.
#include <array>
#include <string>
#include <vector>

#include <weldloop/io/report/blank_sheet_page.hpp>
#include <weldloop/io/report/blank_sheet_text.hpp>
#include <weldloop/io/station/station_file.hpp>
#include <weldloop/rating/probe_reading.hpp>
#include <weldloop/weldloop.hpp>

#include "output.hpp"
#include "words.hpp"

namespace program {

namespace {

constexpr std::array sheet_options{out_option};

int make_sheet(const call& c)
{
    const std::string out = c.out_folder();  // asked before anything is worked out
    if (c.about().size() != 1) call::fault("sheet needs one station file");
    const fs::path file = c.about().front();
    const wl::described_station described = wl::read_described_station(file);
    const wl::assessment found = wl::assess(described.station, described.service);
    const std::vector<wl::probe_reading> expected = wl::probe_readings_of(described.station, found);
    const std::string page = wl::blank_sheet_page(described.station, found, expected, described.units);
    say(wl::blank_sheet_text(described.station, found, expected, described.units));
    write_and_say(out, {wl::plain_stem(file), known_as(file)}, {{"-sheet.html", page}});
    return done;
}

}  // namespace

const word sheet_word{"sheet", "STATION.toml",
                      "blank sheet for readings, with what each part should show; text and page", sheet_options,
                      &make_sheet};

}  // namespace program
