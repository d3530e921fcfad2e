// fault: from the readings in a station file to the part at fault.
#include <array>
#include <string>
#include <string_view>
#include <utility>

#include <weldloop/io/report/fault_words.hpp>
#include <weldloop/io/station/station_file.hpp>
#include <weldloop/weldloop.hpp>

#include "judged.hpp"
#include "output.hpp"
#include "words.hpp"

namespace program {

namespace {

constexpr std::array fault_options{judge_option};

int find_fault(const call& c)
{
    if (c.about().size() != 1) call::fault("fault needs one station file");
    const wl::described_station described = wl::read_described_station(c.about().front());
    if (described.observations.empty())
        call::fault(c.about().front() + ": there is no [[reading]] in it, so that nothing tells the part at fault");

    std::string text;
    const auto put = [&text](std::string mark, std::string_view sentence) {
        text += wrapped(std::move(mark), sentence);
    };
    put("", described.station.name);
    put("", "As it is described: " + wl::job_line(described.station.job) + "; " +
                wl::surroundings_line(described.station.where));
    text.append("\nWhat was found\n");
    std::size_t number = 0;
    for (const wl::observation& o : described.observations)
        put("  " + std::to_string(++number) + "  ", wl::observation_line(o));
    text.append("\nBefore anything is touched\n");
    for (const std::string_view caution : wl::reading_cautions) put("! ", caution);
    text.append("\nWhere the fault is\n");
    bool is_against = true;
    try {
        const wl::fault_search found = wl::locate_fault(described.station, described.observations);
        for (const std::string& line : wl::fault_lines(found)) put("- ", line);
        is_against = speaks_against(found);
        put("", wl::fault_explained);
        text.append("\nSources\n");
        for (const wl::source* from : found.basis.sources()) put("- ", wl::to_text(*from));
    } catch (const wl::no_solution_error&) {
        put("- ", wl::fault_without_state);
    }
    say(text);
    return is_against && c.has("--judge") ? against : done;
}

}  // namespace

const word fault_word{"fault", "STATION.toml", "the part at fault by the readings in the file, and what to read next",
                      fault_options, &find_fault};

}  // namespace program
