// What was found on a station, of any bytes: refused by a typed error with a place in the file, or read as observations
// that hold finite numbers and that can be weighed. The station before it is sound, so that only the section is at
// fault.
#include <string>
#include <string_view>

#include <weldloop/circuit/station_parts.hpp>
#include <weldloop/core/error.hpp>
#include <weldloop/io/station/station_file.hpp>
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

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size)
{
    if (size > 4096) return 0;
    const std::string text = std::string(station_before) + std::string(data, data + size);
    wl::described_station described;
    try {
        described = wl::described_station_from_toml(text, "fuzzed.toml");
    } catch (const wl::station_file_error& e) {
        fuzz::hold_for_page(e.what());
        return 0;
    }
    if (described.observations.empty() || wl::parts_in(described.station) > 8) return 0;
    try {
        const wl::fault_search found = wl::locate_fault(described.station, described.observations);
        for (std::size_t i = 1; i < found.parts.size(); ++i)
            fuzz::hold(found.parts[i].probability <= found.parts[i - 1].probability, "parts in falling probability");
    } catch (const wl::error&) {
        // an observation that no state of the station could give is refused by name
    }
    return 0;
}
