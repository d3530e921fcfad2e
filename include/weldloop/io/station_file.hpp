#pragma once
/// @file
/// Reading a station from a file. The format is described in the page on station files.

#include <array>
#include <cstddef>
#include <filesystem>
#include <fstream>
#include <map>
#include <string>
#include <string_view>
#include <system_error>
#include <utility>
#include <vector>

#include <weldloop/circuit/station.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/io/part_section.hpp>
#include <weldloop/io/station_file_error.hpp>
#include <weldloop/io/toml_guard.hpp>
#include <weldloop/io/toml_parser.hpp>
#include <weldloop/io/toml_section.hpp>

namespace weldloop {

namespace detail {

/// @name What the keys may hold
/// @{
inline constexpr allowed_span<current> welding_currents{0_A, 5000_A, true};
inline constexpr allowed_span<duration> duty_times{0_s, 24_h, true};
inline constexpr allowed_span<voltage> supply_voltages{0_V, 200_V, true};
inline constexpr allowed_span<voltage> allowed_drops{0_V, 100_V, true};
inline constexpr allowed_span<temperature> air_temperatures{temperature::celsius(-60), temperature::celsius(100)};
inline constexpr allowed_span<speed> winds{0_m_per_s, 50_m_per_s};
inline constexpr allowed_span<length> altitudes{0_m, 11000_m};
inline constexpr allowed_span<heat_flux> suns{in_si<heat_flux>(0), in_si<heat_flux>(1500)};
/// @}

struct supply_word {
    std::string_view word;
    supply_kind kind;
};
inline constexpr std::array supply_words{supply_word{"constant voltage", supply_kind::constant_voltage},
                                         supply_word{"constant current", supply_kind::constant_current}};

/// "continuous", a share, a share of a period, or an on-time within a period.
[[nodiscard]] inline duty_cycle read_duty(const toml_section& s)
{
    if (s.has("on")) {
        if (s.has("duty")) s.refuse(s.place("on"), "\"on\" and \"duty\" say the same thing; keep one of them");
        const auto on = s.required<duration>("on", duty_times);
        const auto period = s.required<duration>("period", duty_times);
        return s.at_key("on", [&] { return duty_cycle::of(on, period); });
    }
    if (!s.has("duty")) {
        if (s.has("period")) s.refuse(s.place("period"), "\"period\" needs \"on\" or \"duty\" beside it");
        return duty_cycle::continuous();
    }
    if (s.text("duty") == "continuous") {
        if (s.has("period")) s.refuse(s.place("period"), "a continuous duty has no period");
        return duty_cycle::continuous();
    }
    const auto share = s.required<duty_fraction>("duty");
    if (!s.has("period")) return s.at_key("duty", [&] { return duty_cycle::of(share); });
    const auto period = s.required<duration>("period", duty_times);
    return s.at_key("duty", [&] { return duty_cycle::of(static_cast<double>(share) * period, period); });
}

[[nodiscard]] inline job read_job(const toml_section& s)
{
    s.allow_only({"process", "current", "duty", "on", "period"});
    job out{.process = s.word("process", all_processes, word_of_value),
            .current = s.required<current>("current", welding_currents)};
    out.duty = read_duty(s);
    return out;
}

[[nodiscard]] inline surroundings read_surroundings(const toml_section& s)
{
    s.allow_only({"air", "wind", "lay", "coil_turns", "altitude", "sun"});
    surroundings out;
    s.take("air", out.air, air_temperatures);
    s.take("wind", out.wind, winds);
    s.take_word("lay", out.lay, all_lays, word_of_value);
    take_coil_turns(s, out.lay, out.coil_turns);
    s.take("altitude", out.altitude, altitudes);
    s.take("sun", out.sun, suns);
    return out;
}

[[nodiscard]] inline supply read_supply(const toml_section& s)
{
    s.allow_only({"kind", "setting", "highest_output"});
    supply out{.kind = s.word("kind", supply_words, [](const supply_word& w) { return w.word; }).kind};
    const bool holds_voltage = out.kind == supply_kind::constant_voltage;
    const std::string_view needed = holds_voltage ? "setting" : "highest_output",
                           foreign = holds_voltage ? "highest_output" : "setting";
    if (s.has(foreign))
        s.refuse(s.place(foreign),
                 "a " + std::string(s.text("kind")) + " supply takes \"" + std::string(needed) + "\", not \"" +
                     std::string(foreign) + "\"",
                 needed);
    (holds_voltage ? out.setting : out.highest_output) = s.required<voltage>(needed, supply_voltages);
    return out;
}

/// Names and arc: what no part can see alone, with the place of the part at fault.
inline void check_path(const toml_section& root, const std::vector<toml_section>& sections,
                       const std::vector<path_part>& path)
{
    std::map<std::string, std::size_t> seen;
    const toml_section* first_arc = nullptr;
    for (std::size_t i = 0; i < path.size(); ++i) {
        const toml_section& here = sections[i];
        const std::string name = name_of(path, i);
        if (const auto [twin, fresh] = seen.emplace(name, i); !fresh) {
            const toml_section& named = here.has("name") ? here : sections[twin->second];
            const std::size_t other = here.has("name") ? twin->second : i;
            named.refuse(named.has("name") ? named.place("name") : named.place(),
                         "two parts are called " + in_quotes(name) + "; the other one stands in line " +
                             std::to_string(sections[other].place().line));
        }
        if (!std::holds_alternative<arc>(path[i])) continue;
        if (first_arc != nullptr)
            here.refuse(here.place("part"),
                        "a second arc; the first one stands in line " + std::to_string(first_arc->place("part").line));
        first_arc = &here;
    }
    if (first_arc == nullptr)
        root.refuse(sections.empty() ? root.place("path") : sections.front().place(),
                    "the path has no arc; one part must be \"arc\"");
    if (first_arc == &sections.front() || first_arc == &sections.back())
        first_arc->refuse(first_arc->place("part"),
                          "the arc stands at the end of the path; it needs parts on both sides");
}

}  // namespace detail

/// Reads a station from text.
/// @param text the content of a station file, at most 1 MiB @param file_name how messages call it
/// @return a station whose path can be assessed
/// @throws station_file_error with line and column for whatever does not fit: no TOML, an unknown or missing key, a
/// wrong
///         kind of value, an unknown unit or word, an impossible value, a name used twice, no arc or two
[[nodiscard]] inline station station_from_toml(std::string_view text, std::string_view file_name)
{
    const detail::station_text from{text, printable(file_name)};
    refuse_hostile_toml(text, from.file_name);
    const toml::table table = detail::parsed_toml(text, from.file_name);
    const detail::toml_section root(from, table, "the file", {1, 1});

    root.allow_only({"name", "allowed_drop", "job", "surroundings", "supply", "path"});
    station out;
    out.name = root.name("name");
    if (root.has("allowed_drop")) out.allowed_drop = root.required<voltage>("allowed_drop", detail::allowed_drops);
    const auto job_section = root.section("job");
    if (!job_section) root.refuse_missing("job");
    out.job = detail::read_job(*job_section);
    if (const auto section = root.section("surroundings")) out.where = detail::read_surroundings(*section);
    if (const auto section = root.section("supply")) out.supply = detail::read_supply(*section);

    const std::vector<detail::toml_section> sections = root.sections("path", station_file_limits::parts);
    for (const detail::toml_section& section : sections) out.path.push_back(detail::read_part(section));
    detail::check_path(root, sections, out.path);
    return root.at_key("path", [&] {
        static_cast<void>(checked_arc_index(out));
        return out;
    });
}

/// Reads a station from a file.
/// @param file a TOML file of at most 1 MiB
/// @throws station_file_error as station_from_toml(), and without a line for a file that cannot be read or is too large
[[nodiscard]] inline station read_station(const std::filesystem::path& file)
{
    const std::string name = printable(file.string());
    std::error_code fault;
    if (!std::filesystem::exists(file, fault)) throw station_file_error(name, {}, "there is no such file");
    if (std::filesystem::is_directory(file, fault)) throw station_file_error(name, {}, "is a folder, not a file");

    std::ifstream in(file, std::ios::binary);
    std::string text(station_file_limits::bytes + 1, '\0');  // one more than allowed, so that too much is seen
    if (in) in.read(text.data(), static_cast<std::streamsize>(text.size()));
    if (!in && !in.eof()) throw station_file_error(name, {}, "cannot be read");
    text.resize(static_cast<std::size_t>(in.gcount()));
    return station_from_toml(text, name);
}

}  // namespace weldloop
