#pragma once
/// @file
/// Stations that the tests of io share.

#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>
#include <string_view>
#include <vector>

#include <weldloop/field/station_answers.hpp>
#include <weldloop/io/station/station_file.hpp>
#include <weldloop/rating/assess.hpp>
#include <weldloop/rating/remedies.hpp>

namespace weldloop::test {

inline std::filesystem::path example_file(std::string_view name)
{
    return std::filesystem::path(WELDLOOP_INCLUDE_DIR).parent_path() / "examples" / "stations" / name;
}

inline std::string content_of(const std::filesystem::path& file)
{
    std::ifstream in(file, std::ios::binary);
    return {std::istreambuf_iterator<char>(in), {}};
}

/// A station with its results.
struct assessed_station {
    station is;
    assessment found;
    std::vector<remedy> remedies;
    station_answers answers = {};
};

inline assessed_station assessed(const station& s)
{
    return {s, assess(s), remedies_for(s)};
}

/// With all that is answered beside.
inline assessed_station answered(const described_station& d)
{
    assessed_station out{d.station, assess(d.station, d.service), remedies_for(d.station)};
    out.answers = answers_of(out.is, out.found, d.observations);
    return out;
}

/// The healthy one half a year on, with its use and what was read on it.
inline assessed_station trailer_readings()
{
    return answered(read_described_station(example_file("trailer_readings.toml")));
}

/// The demo, whose faults are worth finding.
inline assessed_station gate_shop()
{
    return assessed(read_station(example_file("gate_shop.toml")));
}
/// The healthy one.
inline assessed_station trailer_stand()
{
    return assessed(read_station(example_file("trailer_frame.toml")));
}

/// The one with a second clamp and a chain that steals current.
inline assessed_station gate_two_clamps()
{
    return assessed(read_station(example_file("gate_two_clamps.toml")));
}

/// A small loop; line and column of each word matter to the tests of the reader.
inline constexpr std::string_view small_station = R"(name = "Bench"
[job]
process = "gmaw"
current = "240 A"
duty = "60 %"
[surroundings]
air = "32 degC"
[[path]]
part = "cable"
size = "2/0 AWG"
length = "50 ft"
[[path]]
part = "arc"
[[path]]
part = "work clamp"
clamp = "spring clamp"
rated = "300 A"
onto = "mild steel"
)";

/// The text with the first occurrence of one piece replaced by another.
inline std::string with(std::string_view text, std::string_view old_piece, std::string_view new_piece)
{
    std::string out(text);
    const std::size_t at = out.find(old_piece);
    if (at == std::string::npos) throw std::logic_error("the test's text does not hold " + std::string(old_piece));
    return out.replace(at, old_piece.size(), new_piece);
}

/// The small loop with its clamp on unbroken paint.
inline assessed_station open_bench()
{
    return assessed(station_from_toml(
        with(small_station, "onto = \"mild steel\"", "onto = \"mild steel\"\nsurface = \"painted, unbroken\""),
        "open.toml"));
}

/// The healthy stand at a current that none of its leads bears: a loop that ends.
inline assessed_station ending_stand()
{
    station s = read_station(example_file("trailer_frame.toml"));
    s.job.current = in_si<current>(3000.0);
    return assessed(s);
}

/// What a page, a terminal and a parser of markup would like to take for more than a name.
inline constexpr std::string_view hostile_name = "<script>alert('x')</script> & \"\x1b[31m\x80 \xC3\xA9";

/// The demo with such names everywhere, which no file could bring but a program can.
inline assessed_station hostile_shop()
{
    station s = read_station(example_file("gate_shop.toml"));
    s.name = hostile_name;
    int number = 0;
    for (path_part& p : s.path)
        std::visit([&](auto& part) { part.name = std::string(hostile_name) + std::to_string(++number); }, p);
    return assessed(s);
}

/// A path of 18 parts, some without names, with what the demos do not have.
inline assessed_station long_path()
{
    constexpr std::string_view text = R"(name = "Long"
[job]
process = "smaw"
current = "180 A"
on = "2 min"
period = "5 min"
[[path]]
part = "lug"
size = "1/0 AWG"
[[path]]
part = "cable"
name = "first length of the electrode lead, from the supply to the door"
size = "1/0 AWG"
length = "25 ft"
[[path]]
part = "coupling"
size = "1/0 AWG"
[[path]]
part = "cable"
size = "1/0 AWG"
length = "25 ft"
[[path]]
part = "coupling"
size = "1/0 AWG"
[[path]]
part = "cable"
size = "2 AWG"
length = "10 ft"
[[path]]
part = "holder"
rated = "300 A"
[[path]]
part = "arc"
[[path]]
part = "contact"
metals = ["mild steel", "stainless steel"]
force = "200 N"
surface = "heavy rust"
[[path]]
part = "plate"
metal = "mild steel"
length = "2 m"
width = "300 mm"
thickness = "10 mm"
[[path]]
part = "contact"
metals = ["mild steel", "mild steel"]
force = "900 N"
[[path]]
part = "plate"
metal = "mild steel"
length = "1 m"
width = "300 mm"
thickness = "10 mm"
[[path]]
part = "work clamp"
clamp = "bolted lug"
size = "1/0 AWG"
onto = "mild steel"
surface = "galvanized"
[[path]]
part = "lug"
size = "1/0 AWG"
[[path]]
part = "cable"
size = "1/0 AWG"
length = "25 ft"
[[path]]
part = "coupling"
size = "1/0 AWG"
force = "20 N"
surface = "oxidized"
[[path]]
part = "cable"
size = "1/0 AWG"
length = "25 ft"
[[path]]
part = "lug"
size = "1/0 AWG"
)";
    return assessed(station_from_toml(text, "long.toml"));
}

/// The demo with its answers, its names what no file could bring, and a reading of each sort on them.
inline assessed_station hostile_answers()
{
    described_station d = read_described_station(example_file("trailer_readings.toml"));
    d.station.name = hostile_name;
    const auto renamed = [](std::string_view name) { return std::string(hostile_name) + std::string(name); };
    for (path_part& p : d.station.path) std::visit([&](auto& part) { part.name = renamed(part.name); }, p);
    const std::string lug = renamed("clamp lug");
    d.observations = {
        reading{.across = renamed("work clamp"),
                .volts = in_si<voltage>(3.0),
                .current = in_si<current>(120.0),
                .to = renamed("work lead"),
                .error = in_si<voltage>(0.01)},
        reading{.across = lug, .volts = in_si<voltage>(0.3), .current = in_si<current>(120.0)},
        heat_observation{.part = lug, .hottest = temperature::celsius(90.0)},
        four_wire_observation{.part = lug, .ohms = in_si<resistance>(2e-3), .error = in_si<resistance>(1e-5)},
        tightness_observation{.part = lug, .share = 0.3},
        surface_observation{.part = lug, .seen = surface_state::light_rust},
        strand_observation{.part = renamed("work lead"), .missing = 0.2}};
    return answered(d);
}

/// One of every kind: with faults, healthy, with ways, long, open, ending, with hostile names, with answers.
inline std::vector<assessed_station> all_stations()
{
    return {gate_shop(),    trailer_stand(), gate_two_clamps(),  long_path(),      open_bench(),
            ending_stand(), hostile_shop(),  trailer_readings(), hostile_answers()};
}

}  // namespace weldloop::test
