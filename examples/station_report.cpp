// Reads a station file, assesses the station, prints the report and writes it as JSON and as a page.
#include <chrono>
#include <exception>
#include <filesystem>
#include <iostream>
#include <string>
#include <string_view>
#include <vector>

#include <weldloop/io/report/report_json.hpp>
#include <weldloop/io/report/report_page.hpp>
#include <weldloop/io/report/report_text.hpp>
#include <weldloop/io/report/write_file.hpp>
#include <weldloop/io/station/station_file.hpp>
#include <weldloop/weldloop.hpp>

namespace wl = weldloop;
namespace fs = std::filesystem;

namespace {

constexpr std::string_view usage = "usage: weldloop_station STATION.toml [--out DIR]\n";
constexpr std::string_view help =
    "Assesses the welding station described in STATION.toml, says how long it lasts and, by the\n"
    "readings in it, which part is at fault, prints the report,\n"
    "and writes it to DIR (default: .) as STATION.json and STATION.html.\n"
    "Status: 0 done, 2 the call or the station file is at fault, 1 anything else.\n";

enum status { done = 0, failed = 1, bad_input = 2 };

struct request {
    fs::path station;
    fs::path out = ".";
};

/// The file name without folders and ending, each character that could mean something elsewhere replaced.
std::string report_name(const fs::path& station)
{
    std::string name = station.stem().string();
    for (char& c : name) {
        const bool plain = (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '-' ||
                           c == '_' || c == '.';
        if (!plain) c = '_';
    }
    if (name.empty() || name.front() == '.' || name.front() == '-') name.insert(0, "_");
    return name;
}

void report(const request& asked)
{
    const wl::described_station described = wl::read_described_station(asked.station);
    const wl::station& station = described.station;
    const wl::assessment found = wl::assess(station, described.service);
    const std::vector<wl::remedy> remedies = wl::remedies_for(station);
    const auto today = std::chrono::floor<std::chrono::days>(std::chrono::system_clock::now());
    const wl::report_request asked_for{.answers = wl::answers_of(station, found, described.observations),
                                       .units = described.units,
                                       .date = std::chrono::year_month_day(today)};

    // everything is made before anything is written
    const std::string text = wl::report_text(station, found, remedies, asked_for);
    const std::string json = wl::report_json(station, found, remedies, asked_for);
    const std::string page = wl::report_page(station, found, remedies, asked_for);
    const fs::path target = asked.out / report_name(asked.station);
    const auto with_ending = [&target](std::string_view ending) {
        return fs::path(target.string() + std::string(ending));
    };
    wl::write_file(with_ending(".json"), json);
    wl::write_file(with_ending(".html"), page);
    std::cout << text << "\nWritten:\n  " << with_ending(".json").string() << "\n  " << with_ending(".html").string()
              << '\n';
}

}  // namespace

int main(int count, char** values)
{
    const std::vector<std::string_view> arguments(values + 1, values + count);
    request asked;
    for (std::size_t i = 0; i < arguments.size(); ++i) {
        const std::string_view a = arguments[i];
        if (a == "--help" || a == "-h") {
            std::cout << usage << help;
            return done;
        }
        const bool takes_folder = a == "--out" && i + 1 < arguments.size();
        if (takes_folder)
            asked.out = arguments[++i];
        else if (!a.starts_with("-") && asked.station.empty() && !a.empty())
            asked.station = a;
        else {
            std::cerr << "unexpected argument: " << wl::printable(a) << '\n' << usage;
            return bad_input;
        }
    }
    if (asked.station.empty()) {
        std::cerr << usage;
        return bad_input;
    }

    try {
        report(asked);
        return done;
    } catch (const wl::file_write_error& e) {
        std::cerr << e.what() << '\n';
        return failed;
    } catch (const wl::error& e) {
        std::cerr << e.what() << '\n';
        return bad_input;
    } catch (const std::exception& e) {
        std::cerr << e.what() << '\n';
        return failed;
    }
}
