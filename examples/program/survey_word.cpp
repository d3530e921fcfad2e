// survey: every station file of a folder, the worst first, what to buy, what to clean; trend: the same station twice.
#include <algorithm>
#include <array>
#include <chrono>
#include <iostream>
#include <string>
#include <vector>

#include <weldloop/io/report/survey_csv.hpp>
#include <weldloop/io/report/survey_page.hpp>
#include <weldloop/io/report/survey_text.hpp>
#include <weldloop/io/station/station_file.hpp>
#include <weldloop/weldloop.hpp>

#include "judged.hpp"
#include "output.hpp"
#include "words.hpp"

namespace program {

namespace {

constexpr std::array survey_options{out_option, judge_option};
constexpr std::array trend_options{out_option};

/// Says on standard error how far a long work has come, once it has taken long.
class progress {
public:
    explicit progress(std::size_t of) : of_(of) {}
    void done_with(std::size_t count)
    {
        constexpr std::chrono::seconds patience{2}, between{2};
        const auto now = std::chrono::steady_clock::now();
        if (now - begun_ < patience || now - said_ < between || count == of_) return;
        said_ = now;
        std::cerr << count << " of " << of_ << " stations ...\n";
    }

private:
    std::size_t of_;
    std::chrono::steady_clock::time_point begun_ = std::chrono::steady_clock::now(), said_ = begun_;
};

wl::surveyed_station surveyed(const fs::path& file, const std::string& called)
{
    wl::surveyed_station out{.file = called};
    try {
        const wl::described_station described = wl::read_described_station(file);
        out.is = described.station;
        out.found = wl::assess(described.station, described.service);
        out.remedies = wl::remedies_for(described.station);
        out.answers = wl::answers_of(described.station, out.found, described.observations);
    } catch (const wl::error& e) {
        out.fault = wl::printable(e.what());
        out.found = {};
    }
    return out;
}

std::vector<fs::path> station_files_in(const fs::path& folder)
{
    std::error_code fault;
    std::vector<fs::path> out;
    if (fs::is_regular_file(folder, fault))
        call::fault("survey reads a folder, and " + folder.string() + " is a file; the word assess takes one");
    fs::directory_iterator entries(folder, fault);
    if (fault) call::fault(folder.string() + " cannot be read as a folder: " + fault.message());
    for (const fs::directory_entry& entry : entries)
        if (entry.path().extension() == ".toml") out.push_back(entry.path());
    if (out.empty()) call::fault(folder.string() + " holds no station file: their names end with .toml");
    std::sort(out.begin(), out.end());
    return out;
}

int survey_folder(const call& c)
{
    const std::string out = c.out_folder();  // asked before anything is worked out
    if (c.about().size() != 1) call::fault("survey needs one folder");
    const fs::path folder = c.about().front();
    const std::vector<fs::path> files = station_files_in(folder);
    std::vector<wl::surveyed_station> stations;
    progress so_far(files.size());
    for (const fs::path& file : files) {
        stations.push_back(surveyed(file, file.filename().string()));
        so_far.done_with(stations.size());
    }
    const wl::survey found = wl::survey_of(stations);
    const std::vector<wl::document> documents{{".csv", wl::survey_csv(stations, found)},
                                              {".html", wl::survey_page(stations, found)}};
    say(wl::survey_text(stations, found));
    write_and_say(out, {"survey", "survey of " + known_as(folder)}, documents);
    for (const std::size_t i : found.not_read) std::cerr << stations[i].fault << '\n';
    if (!found.not_read.empty()) return bad_input;
    const bool is_against = std::any_of(stations.begin(), stations.end(), [](const wl::surveyed_station& s) {
        return speaks_against(s.found) || wl::has_read_fault(s);
    });
    return is_against && c.has("--judge") ? against : done;
}

int follow_trend(const call& c)
{
    const std::string out = c.out_folder();  // asked before anything is worked out
    if (c.about().size() != 2) call::fault("trend needs two files of one station, the earlier one first");
    std::vector<wl::surveyed_station> both;
    for (const std::string& file : c.about()) {
        both.push_back(surveyed(file, file));
        if (!both.back().fault.empty()) call::fault(both.back().fault);
    }
    const wl::station_trend found = wl::trend_of(both[0], both[1]);
    if (found.known_again == 0)
        call::fault("trend needs two files of one station: " + c.about()[0] + " and " + c.about()[1] +
                    " have no part of one name and kind in common");
    const std::string page = wl::trend_page(both[0], both[1], found);
    say(wl::trend_text(both[0], both[1], found));
    write_and_say(out, {wl::plain_stem(c.about()[1]), known_as(c.about()[0]) + " to " + known_as(c.about()[1])},
                  {{"-trend.html", page}});
    return done;
}

}  // namespace

const word survey_word{"survey", "FOLDER",
                       "every station of a folder, worst first; what to buy, what to clean; text, CSV, page",
                       survey_options, &survey_folder};
const word trend_word{"trend", "BEFORE.toml AFTER.toml",
                      "what has become of each joint between two surveys of a station", trend_options, &follow_trend};

}  // namespace program
