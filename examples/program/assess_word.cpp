// assess: reads station files, assesses each station, prints its report and writes it as JSON and as a page.
#include <array>
#include <chrono>
#include <iostream>
#include <string>
#include <vector>

#include <weldloop/io/report/report_json.hpp>
#include <weldloop/io/report/report_page.hpp>
#include <weldloop/io/report/report_text.hpp>
#include <weldloop/io/report/report_words.hpp>
#include <weldloop/io/station/station_file.hpp>
#include <weldloop/weldloop.hpp>

#include "judged.hpp"
#include "output.hpp"
#include "words.hpp"

namespace program {

namespace {

constexpr option whole_option{"--whole", "", "print every limit, surfaces, sources and judgement too"};
constexpr std::array assess_options{out_option, whole_option, judge_option};

bool report(const fs::path& file, const fs::path& folder, wl::report_detail detail)
{
    const wl::described_station described = wl::read_described_station(file);
    const wl::station& station = described.station;
    const wl::assessment found = wl::assess(station, described.service);
    const std::vector<wl::remedy> remedies = wl::remedies_for(station);
    const auto today = std::chrono::floor<std::chrono::days>(std::chrono::system_clock::now());
    const wl::report_request asked{.answers = wl::answers_of(station, found, described.observations),
                                   .detail = detail,
                                   .units = described.units,
                                   .date = std::chrono::year_month_day(today)};

    // everything is made before anything is written
    const std::string text = wl::report_text(station, found, remedies, asked);
    const std::vector<wl::document> documents{{".json", wl::report_json(station, found, remedies, asked)},
                                              {".html", wl::report_page(station, found, remedies, asked)}};
    say(text);
    write_and_say(folder, {wl::plain_stem(file), known_as(file)}, documents);
    if (!found.conducts) std::cerr << wl::printable(file.string()) << ": " << wl::no_state_line(found) << '\n';
    return speaks_against(found) || (asked.answers.fault && speaks_against(*asked.answers.fault));
}

int assess_stations(const call& c)
{
    const std::string out = c.out_folder();  // asked before anything is worked out
    if (c.about().empty()) call::fault("assess needs a station file");
    const wl::report_detail detail = c.has("--whole") ? wl::report_detail::whole : wl::report_detail::brief;
    bool is_against = false;
    for (const std::string& file : c.about()) {
        if (&file != c.about().data()) say("\n\n");
        is_against = report(file, out, detail) || is_against;
    }
    return is_against && c.has("--judge") ? against : done;
}

}  // namespace

const word assess_word{"assess", "STATION.toml ...",
                       "rates every part, says what to change, how long it lasts; report as text, JSON and page",
                       assess_options, &assess_stations};

}  // namespace program
