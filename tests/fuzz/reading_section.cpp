// What was found on a station, of any bytes: refused by a typed error with a place in the file, or read as observations
// that hold finite numbers and that can be weighed. The station before it is sound, so that only the section is at
// fault.
#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include <weldloop/circuit/station_parts.hpp>
#include <weldloop/core/error.hpp>
#include <weldloop/io/station/reading_section.hpp>
#include <weldloop/io/station/station_file.hpp>
#include <weldloop/io/station/toml_guard.hpp>
#include <weldloop/io/station/toml_parser.hpp>
#include <weldloop/io/station/toml_section.hpp>
#include <weldloop/weldloop.hpp>

#include "property.hpp"
#include "toml_mutator.hpp"

namespace wl = weldloop;

namespace {

constexpr std::string_view station_before = R"(name = "stand"
[job]
process = "smaw"
current = "125 A"
duty = "35 %"
[supply]
kind = "constant current"
highest_output = "44 V"
[[path]]
part = "lug"
name = "terminal"
size = "50 mm2"
[[path]]
part = "cable"
name = "electrode lead"
size = "50 mm2"
length = "10 m"
[[path]]
part = "holder"
name = "holder"
rated = "300 A"
[[path]]
part = "arc"
[[path]]
part = "work clamp"
name = "work clamp"
clamp = "screw clamp"
rated = "300 A"
onto = "mild steel"
surface = "clean"
[[path]]
part = "cable"
name = "work lead"
size = "50 mm2"
length = "10 m"
)";

constexpr std::string_view file_name = "fuzzed.toml";
constexpr std::size_t longest_text = 1024;  // bytes: larger ones only take longer
constexpr std::size_t most_parts = 8;

const wl::station& sound_station()
{
    static const wl::station it = wl::station_from_toml(station_before, file_name);
    return it;
}

/// The readings of a text of its own, by what reads them at the end of a file; the station before is read once.
/// @throws station_file_error
std::vector<wl::observation> readings_alone(const std::string& text)
{
    static const wl::detail::readable_parts parts(sound_station(), wl::checked_arc_index(sound_station()));
    const wl::detail::station_text from{text, std::string(file_name)};
    wl::refuse_hostile_toml(text, from.file_name);
    const toml::table table = wl::detail::parsed_toml(text, from.file_name);
    const wl::detail::toml_section root(from, table, "the file", {1, 1});
    std::vector<wl::observation> out;
    if (!root.has("reading")) return out;
    for (const wl::detail::toml_section& section :
         root.sections("reading", wl::station_file_limits::readings, "reading"))
        out.push_back(wl::detail::read_observation(section, parts));
    return out;
}

/// Whether a text is also read with its station and weighed, which takes some twenty times as long: one in
/// thirty-two, by its own bytes; of kept ones all.
bool is_weighed([[maybe_unused]] const std::string& text)
{
#ifdef WELDLOOP_FUZZ_WITH_LIBFUZZER
    std::uint32_t hash = 2166136261U;  // FNV-1a
    for (const char c : text) hash = (hash ^ static_cast<unsigned char>(c)) * 16777619U;
    return (hash >> 16U) % 32U == 0;
#else
    return true;
#endif
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size)
{
    if (size > longest_text) return 0;
    const std::string text(data, data + size);
    std::optional<std::size_t> alone;  // how many were read, if none was refused
    try {
        alone = readings_alone(text).size();
    } catch (const wl::station_file_error& e) {
        fuzz::hold_for_page(e.what());
    }
    if (!is_weighed(text)) return 0;
    wl::described_station described;
    try {
        described = wl::described_station_from_toml(std::string(station_before) + text, file_name);
    } catch (const wl::station_file_error& e) {
        fuzz::hold_for_page(e.what());
        return 0;
    }
    // before its first heading a text goes on with the last part of the station; behind it, it may add others
    if (text.starts_with("[") && wl::parts_in(described.station) == wl::parts_in(sound_station()))
        fuzz::hold(alone == described.observations.size(), "readings are the same behind their station", text);
    if (described.observations.empty() || wl::parts_in(described.station) > most_parts) return 0;
    try {
        const wl::fault_search found = wl::locate_fault(described.station, described.observations);
        for (std::size_t i = 1; i < found.parts.size(); ++i)
            fuzz::hold(found.parts[i].probability <= found.parts[i - 1].probability, "parts in falling probability");
    } catch (const wl::error&) {
        // an observation that no state of the station could give is refused by name
    }
    return 0;
}
