#pragma once
/// @file
/// How station_file.hpp is answered.

#include <array>
#include <cstddef>
#include <filesystem>
#include <fstream>
#include <map>
#include <string>
#include <string_view>
#include <system_error>
#include <utility>
#include <variant>
#include <vector>

#include <weldloop/circuit/arc_in_work.hpp>
#include <weldloop/circuit/station.hpp>
#include <weldloop/circuit/station_parts.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/io/report/shown_units.hpp>
#include <weldloop/io/station/arc_section.hpp>
#include <weldloop/io/station/part_section.hpp>
#include <weldloop/io/station/reading_section.hpp>
#include <weldloop/io/station/service_section.hpp>
#include <weldloop/io/station/station_file.hpp>
#include <weldloop/io/station/station_file_error.hpp>
#include <weldloop/io/station/supply_section.hpp>
#include <weldloop/io/station/toml_guard.hpp>
#include <weldloop/io/station/toml_parser.hpp>
#include <weldloop/io/station/toml_section.hpp>
#include <weldloop/io/station/units_section.hpp>
#include <weldloop/io/station/year_section.hpp>
#include <weldloop/law/waveform.hpp>

namespace weldloop {

namespace detail {

/// @name What the keys may hold
/// @{
inline constexpr allowed_span<current> welding_currents{0_A, 5000_A, true};
inline constexpr allowed_span<duration> duty_times{0_s, 24_h, true};
inline constexpr allowed_span<frequency> supply_frequencies{1_Hz, in_si<frequency>(1000.0)};
inline constexpr allowed_span<current> pulse_currents{0_A, 5000_A};
inline constexpr allowed_span<duration> pulse_times{in_si<duration>(1e-5), in_si<duration>(1.0)};
inline constexpr allowed_span<duration> ramp_times{0_s, in_si<duration>(1.0)};
inline constexpr allowed_span<voltage> allowed_drops{0_V, 100_V, true};
inline constexpr allowed_span<temperature> air_temperatures{temperature::celsius(-60), temperature::celsius(100)};
inline constexpr allowed_span<speed> winds{0_m_per_s, 50_m_per_s};
inline constexpr allowed_span<length> altitudes{0_m, 11000_m};
inline constexpr allowed_span<heat_flux> suns{in_si<heat_flux>(0), in_si<heat_flux>(1500)};
/// @}

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

/// What the current of a job does while the arc burns, as the file calls it.
enum class course_kind { direct, alternating, pulsed };
struct course_word {
    std::string_view word;
    course_kind kind;
};
inline constexpr std::array course_words{course_word{"direct", course_kind::direct},
                                         course_word{"alternating", course_kind::alternating},
                                         course_word{"pulsed", course_kind::pulsed}};

/// Keys that only some courses have.
[[nodiscard]] inline course_kind read_course_kind(const toml_section& s)
{
    const course_kind kind = s.has("waveform")
                                 ? s.word("waveform", course_words, [](const course_word& w) { return w.word; }).kind
                                 : course_kind::direct;
    const auto only_with = [&](course_kind wanted, std::string_view word, std::string_view key) {
        if (kind != wanted && s.has(key))
            s.refuse(s.place(key), "\"" + std::string(key) + "\" goes with waveform = \"" + std::string(word) + "\"");
    };
    for (const std::string_view key : {"frequency", "balance"}) only_with(course_kind::alternating, "alternating", key);
    for (const std::string_view key : {"base", "peak", "base_time", "peak_time", "rise_time", "fall_time"})
        only_with(course_kind::pulsed, "pulsed", key);
    return kind;
}

/// A sine, or with a balance a square wave of equal currents.
[[nodiscard]] inline waveform read_alternating(const toml_section& s, current effective)
{
    const auto f = s.required<frequency>("frequency", supply_frequencies);
    if (!s.has("balance")) return waveform::sine(effective, f);
    const auto balance = s.required<fraction>("balance");
    return s.at_key("balance", [&] {
        return waveform::square_ac(
            {.positive = effective, .negative = effective, .frequency = f, .positive_share = balance});
    });
}

[[nodiscard]] inline waveform read_pulses(const toml_section& s)
{
    pulse_train pulses{.base = s.required<current>("base", pulse_currents),
                       .peak = s.required<current>("peak", welding_currents),
                       .base_time = s.required<duration>("base_time", pulse_times),
                       .peak_time = s.required<duration>("peak_time", pulse_times)};
    s.take("rise_time", pulses.rise, ramp_times);
    s.take("fall_time", pulses.fall, ramp_times);
    return s.at_key("peak", [&] { return waveform::pulse(pulses); });
}

[[nodiscard]] inline job read_job(const toml_section& s)
{
    s.allow_only({"process", "current", "duty", "on", "period", "waveform", "frequency", "balance", "base", "peak",
                  "base_time", "peak_time", "rise_time", "fall_time"});
    job out;
    out.process = s.word("process", all_processes, word_of_value);
    const course_kind kind = read_course_kind(s);
    if (kind == course_kind::pulsed) {
        if (s.has("current"))
            s.refuse(s.place("current"), "the effective current of pulses follows from base and peak: leave it out");
        out.course = read_pulses(s);
        out.current = out.course->rms();
    } else
        out.current = s.required<current>("current", welding_currents);
    if (kind == course_kind::alternating) out.course = read_alternating(s, out.current);
    out.duty = read_duty(s);
    return out;
}

[[nodiscard]] inline surroundings read_surroundings(const toml_section& s)
{
    s.allow_only({"air", "wind", "lay", "coil_turns", "bundled_leads", "altitude", "sun"});
    surroundings out;
    s.take("air", out.air, air_temperatures);
    s.take("wind", out.wind, winds);
    s.take_word("lay", out.lay, all_lays, word_of_value);
    take_crowd(s, out.lay, out.coil_turns, out.bundled_leads);
    s.take("altitude", out.altitude, altitudes);
    s.take("sun", out.sun, suns);
    return out;
}

/// Parts as they were read, by their number, with the section each stands in.
struct read_parts {
    std::vector<toml_section> sections;
    std::vector<std::string> points;  // names of junctions and workpieces
};

/// Names and arc: what no part can see alone, with the place of the part at fault.
inline void check_path(const toml_section& root, const read_parts& read, const station& s)
{
    std::map<std::string, std::size_t> seen;
    const toml_section* first_arc = nullptr;
    for (std::size_t i = 0; i < read.sections.size(); ++i) {
        const toml_section& here = read.sections[i];
        const std::string name = name_of(s, i);
        if (const auto [twin, fresh] = seen.emplace(name, i); !fresh) {
            const toml_section& named = here.has("name") ? here : read.sections[twin->second];
            const std::size_t other = here.has("name") ? twin->second : i;
            named.refuse(named.has("name") ? named.place("name") : named.place(),
                         "two parts are called " + in_quotes(name) + "; the other one stands in line " +
                             std::to_string(read.sections[other].place().line));
        }
        const path_part& part = part_at(s, i);
        const bool in_way = i >= s.path.size();
        if (in_way && (std::holds_alternative<wire_gun>(part) || std::holds_alternative<tig_torch>(part) ||
                       std::holds_alternative<electrode_holder>(part) || std::holds_alternative<arc>(part)))
            here.refuse(here.place("part"), "arc, guns, torches and holders stand in the path, not in a way beside it");
        if (!std::holds_alternative<arc>(part)) continue;
        if (first_arc != nullptr)
            here.refuse(here.place("part"), "a second arc; the first one stands in line " +
                                                std::to_string(first_arc->place("part").line) +
                                                "; a station has one, another welder on the same work is an [[other]]");
        first_arc = &here;
    }
    const std::size_t in_path = s.path.size();
    if (first_arc == nullptr)
        root.refuse(read.sections.empty() ? root.place("path") : read.sections.front().place(),
                    "the path has no arc; one part must be \"arc\"");
    if (first_arc == &read.sections.front() || first_arc == &read.sections[in_path - 1])
        first_arc->refuse(first_arc->place("part"),
                          "the arc stands at the end of the path; it needs parts on both sides");
}

/// What a process is welded with.
[[nodiscard]] constexpr part_kind tool_of(process p)
{
    switch (p) {
    case process::smaw: return part_kind::electrode_holder;
    case process::gtaw: return part_kind::tig_torch;
    case process::gmaw:
    case process::fcaw:
    case process::saw: break;
    }
    return part_kind::wire_gun;
}

/// Refuses the tool of another process where that of the station's own is missing; without any, the loop is described
/// without its tool.
inline void check_tool(const read_parts& read, const station& s)
{
    const part_kind own = tool_of(s.job.process);
    const toml_section* other = nullptr;
    for (std::size_t i = 0; i < s.path.size(); ++i) {
        const part_kind kind = weldloop::kind_of(s.path[i]);
        if (kind == own) return;
        const bool is_tool =
            kind == part_kind::electrode_holder || kind == part_kind::tig_torch || kind == part_kind::wire_gun;
        if (is_tool && other == nullptr) other = &read.sections[i];
    }
    if (other != nullptr)
        other->refuse(other->place("part"),
                      "process " + in_quotes(to_text(s.job.process)) + " is welded with a " +
                          std::string(to_text(own)) + "; the path has a " + std::string(other->text("part")) +
                          " and no " + std::string(to_text(own)),
                      to_text(own));
}

/// The name of a junction or workpiece that a key must hold.
[[nodiscard]] inline std::string read_point(const toml_section& s, std::string_view key, const read_parts& read)
{
    if (read.points.empty())
        s.refuse(s.place(key), "there is no junction and no workpiece where it could start or end");
    return s.word(key, read.points, [](const std::string& name) { return std::string_view(name); });
}

inline void check_two_points(const toml_section& s, std::string_view from, std::string_view to)
{
    if (from == to) s.refuse(s.place("to"), "\"from\" and \"to\" are the same point");
}

[[nodiscard]] inline feed read_feed(const toml_section& s, const read_parts& read)
{
    s.allow_only({"name", "from", "to", "current", "duty", "on", "period", "no_load"});
    feed out{.from = read_point(s, "from", read),
             .to = read_point(s, "to", read),
             .current = s.required<current>("current", welding_currents),
             .duty = read_duty(s)};
    check_two_points(s, out.from, out.to);
    if (s.has("name")) out.name = s.name("name");
    if (s.has("no_load")) out.no_load = s.required<voltage>("no_load", supply_voltages);
    return out;
}

// Whether a piece beside the arc is there as long as the arc burns.
inline void check_stay(const toml_section& s, const station& of, std::size_t i)
{
    const auto* w = std::get_if<workpiece>(&of.path[i]);
    if (w == nullptr || !w->pieces_per_hour) return;
    static_cast<void>(s.at_key("pieces_per_hour", [&] { return arc_heat_in(of, *w); }));
}

}  // namespace detail

inline described_station described_station_from_toml(std::string_view text, std::string_view file_name)
{
    const detail::station_text from{text, printable(file_name)};
    refuse_hostile_toml(text, from.file_name);
    const toml::table table = detail::parsed_toml(text, from.file_name);
    const detail::toml_section root(from, table, "the file", {1, 1});

    root.allow_only({"name", "allowed_drop", "intermittent", "job", "surroundings", "supply", "arc", "year", "service",
                     "path", "way", "other", "reading", "report"});
    described_station described;
    station& out = described.station;
    out.name = root.name("name");
    described.units = detail::read_units(table, root.section("report"));
    if (root.has("allowed_drop")) out.allowed_drop = root.required<voltage>("allowed_drop", detail::allowed_drops);
    const auto job_section = root.section("job");
    if (!job_section) root.refuse_missing("job");
    out.job = detail::read_job(*job_section);
    if (const auto section = root.section("surroundings")) out.where = detail::read_surroundings(*section);
    if (const auto section = root.section("supply")) out.supply = detail::read_supply(*section);
    if (const auto section = root.section("year")) out.year = detail::read_year(*section);

    detail::read_parts read;
    const auto take_path = [&read](const detail::toml_section& holder, std::vector<path_part>& path) {
        const std::size_t left = station_file_limits::parts - read.sections.size();
        for (const detail::toml_section& section : holder.sections("path", left)) {
            path.push_back(detail::read_part(section));
            read.sections.push_back(section);
        }
    };
    take_path(root, out.path);
    std::vector<detail::toml_section> way_sections;
    if (root.has("way")) way_sections = root.sections("way", station_file_limits::ways, "way");
    for (const detail::toml_section& section : way_sections) {
        section.allow_only({"name", "from", "to", "kind", "path"});
        way& w = out.ways.emplace_back();
        if (section.has("name")) w.name = section.name("name");
        section.take_word("kind", w.kind, all_way_kinds, detail::word_of_value);
        take_path(section, w.path);
        if (w.path.empty()) section.refuse(section.place("path"), "a way without parts");
    }
    for (std::size_t i = 0; i < read.sections.size(); ++i)
        if (is_hub(part_at(out, i))) read.points.push_back(name_of(out, i));
    detail::check_path(root, read, out);
    detail::check_tool(read, out);
    for (std::size_t k = 0; k < way_sections.size(); ++k) {
        way& w = out.ways[k];
        w.from = detail::read_point(way_sections[k], "from", read);
        w.to = detail::read_point(way_sections[k], "to", read);
        detail::check_two_points(way_sections[k], w.from, w.to);
        for (std::size_t i = 0; i < w.path.size(); ++i)
            for (const char* key : {"from", "to"})
                if (is_hub(w.path[i]) && name_of(w.path[i], first_place_of_way(out, k) + i) ==
                                             (std::string_view(key) == "from" ? w.from : w.to))
                    way_sections[k].refuse(way_sections[k].place(key), "a point of the way itself");
        for (std::size_t other = 0; other < k; ++other)
            if (name_of_way(out, other) == name_of_way(out, k))
                way_sections[k].refuse(way_sections[k].has("name") ? way_sections[k].place("name")
                                                                   : way_sections[k].place(),
                                       "two ways are called " + detail::in_quotes(name_of_way(out, k)));
    }
    if (root.has("other"))
        for (const detail::toml_section& section : root.sections("other", station_file_limits::others, "supply"))
            out.others.push_back(detail::read_feed(section, read));
    if (const auto section = root.section("supply"))
        static_cast<void>(section->at_key(section->has("sense_electrode_side") ? "sense_electrode_side"
                                          : section->has("sense_work_side")    ? "sense_work_side"
                                                                               : "kind",
                                          [&] { return detail::checked_supply(out); }));
    const std::size_t arc_at = root.at_key("path", [&] { return checked_arc_index(out); });
    if (root.has("intermittent")) {
        std::vector<std::string> parts;
        for (std::size_t i = 0; i < parts_in(out); ++i)
            if (!std::holds_alternative<arc>(part_at(out, i))) parts.push_back(name_of(out, i));
        out.intermittent =
            root.word("intermittent", parts, [](const std::string& name) { return std::string_view(name); });
    }
    if (const auto section = root.section("arc")) detail::read_arc_values(*section, std::get<arc>(out.path[arc_at]));
    for (const std::size_t i : {arc_at - 1, arc_at + 1}) detail::check_stay(read.sections[i], out, i);
    if (const auto section = root.section("service")) {
        described.service = detail::read_service(*section);
        described.service_is_stated = true;
    }
    if (root.has("reading")) {
        const detail::readable_parts parts(out, arc_at);
        for (const detail::toml_section& section : root.sections("reading", station_file_limits::readings, "reading"))
            described.observations.push_back(detail::read_observation(section, parts));
    }
    return described;
}

inline station station_from_toml(std::string_view text, std::string_view file_name)
{
    return described_station_from_toml(text, file_name).station;
}

inline described_station read_described_station(const std::filesystem::path& file)
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
    return described_station_from_toml(text, name);
}

inline station read_station(const std::filesystem::path& file)
{
    return read_described_station(file).station;
}

}  // namespace weldloop
