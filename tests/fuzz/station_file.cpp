// A station file of any bytes: refused by a typed error, or read, assessed and reported as text, page and JSON, each of
// which is fit for what it is meant for.
#include <string>
#include <string_view>
#include <vector>

#include <nlohmann/json.hpp>

#include <weldloop/circuit/station_parts.hpp>
#include <weldloop/core/error.hpp>
#include <weldloop/io/report/report_json.hpp>
#include <weldloop/io/report/report_page.hpp>
#include <weldloop/io/report/report_text.hpp>
#include <weldloop/io/station/station_file.hpp>
#include <weldloop/weldloop.hpp>

#include "property.hpp"
#include "toml_mutator.hpp"

namespace wl = weldloop;

namespace {

constexpr std::size_t longest_text = 16384;  // bytes: larger ones only take longer
constexpr std::size_t most_parts = 40;

void hold_for_station(const wl::described_station& described)
{
    const wl::station& station = described.station;
    const wl::assessment found = wl::assess(station, described.service);
    const std::vector<wl::remedy> remedies = wl::remedies_for(station);
    const wl::report_request asked{.answers = wl::answers_of(station, found, described.observations),
                                   .detail = wl::report_detail::whole,
                                   .units = described.units};
    fuzz::hold_for_terminal(wl::report_text(station, found, remedies, asked));
    fuzz::hold_for_page(wl::report_page(station, found, remedies, asked));
    const std::string json = wl::report_json(station, found, remedies, asked);
    fuzz::hold_for_page(json);
    fuzz::hold(nlohmann::json::accept(json), "the JSON is JSON", json.substr(0, 200));
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size)
{
    if (size > longest_text) return 0;
    const std::string text(data, data + size);
    wl::described_station described;
    try {
        described = wl::described_station_from_toml(text, "fuzzed.toml");
    } catch (const wl::station_file_error& e) {
        fuzz::hold_for_page(e.what());
        return 0;
    }
    if (wl::parts_in(described.station) > most_parts) return 0;
    hold_for_station(described);  // whatever could be read can be assessed: no error is allowed here
    return 0;
}
