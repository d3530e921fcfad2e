#pragma once
/// @file
/// What was found on a station on the spot, read from its file: [[reading]].

#include <algorithm>
#include <array>
#include <cstddef>
#include <string>
#include <string_view>
#include <utility>
#include <variant>
#include <vector>

#include <weldloop/circuit/station.hpp>
#include <weldloop/circuit/station_parts.hpp>
#include <weldloop/core/fraction.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/field/observation.hpp>
#include <weldloop/io/station/part_section.hpp>
#include <weldloop/io/station/toml_section.hpp>

namespace weldloop::detail {

/// @name What the keys may hold
/// @{
inline constexpr allowed_span<voltage> read_volts{0_V, 200_V};
inline constexpr allowed_span<voltage> read_volt_errors{0_V, 10_V, true};
inline constexpr allowed_span<current> read_currents{0_A, 5000_A, true};
inline constexpr allowed_span<temperature> read_temperatures{temperature::celsius(-60), temperature::celsius(1500)};
inline constexpr allowed_span<temperature_difference> read_temperature_errors{
    in_si<temperature_difference>(0.0), in_si<temperature_difference>(200.0), true};
inline constexpr allowed_span<resistance> read_resistances{in_si<resistance>(0.0), in_si<resistance>(10.0)};
inline constexpr allowed_span<resistance> read_resistance_errors{in_si<resistance>(0.0), in_si<resistance>(1.0), true};
struct tightness_rule {
    static constexpr double low = 0.0, high = 10.0, initial = 1.0;
    static constexpr bool low_excluded = false, high_excluded = false;
    static constexpr const char* name = "tightness";
};
/// @}

/// The parts a probe can be held to: all but the arc and junctions.
class readable_parts {
public:
    readable_parts(const station& s, std::size_t arc_at) : station_(&s), arc_at_(arc_at)
    {
        for (std::size_t i = 0; i < parts_in(s); ++i)
            if (!std::holds_alternative<arc>(part_at(s, i)) && !std::holds_alternative<junction>(part_at(s, i)))
                names_.push_back(name_of(s, i));
    }

    /// The name a key must hold, as the station calls the part.
    [[nodiscard]] std::string name(const toml_section& s, std::string_view key) const
    {
        return s.word(key, names_, [](const std::string& one) { return std::string_view(one); });
    }
    /// Whether a part feeds a wire.
    [[nodiscard]] bool is_gun(std::string_view name) const
    {
        return std::holds_alternative<wire_gun>(part_at(*station_, place_of(*station_, name)));
    }
    /// Refuses a span that lies in two ways or holds the arc.
    void check_span(const toml_section& s, std::string_view across, std::string_view to) const
    {
        const std::size_t first = place_of(*station_, across), last = place_of(*station_, to);
        const std::size_t way = address_of(*station_, first).way;
        if (way != address_of(*station_, last).way)
            s.refuse(s.place("to"),
                     in_quotes(to) + " stands in another way than " + in_quotes(across) + "; a span lies in one way");
        if (way == part_address::trunk && std::min(first, last) < arc_at_ && arc_at_ < std::max(first, last))
            s.refuse(s.place("to"), "the span from " + in_quotes(across) + " to " + in_quotes(to) +
                                        " holds the arc; both stand on one side of it");
    }

private:
    const station* station_;
    std::size_t arc_at_;
    std::vector<std::string> names_;
};

/// The key that says what sort of finding a table is.
inline constexpr std::array observation_words{std::string_view("volts"),     std::string_view("hottest"),
                                              std::string_view("four_wire"), std::string_view("tightness"),
                                              std::string_view("surface"),   std::string_view("missing_strands"),
                                              std::string_view("arc")};

[[nodiscard]] inline std::string_view kind_of_observation(const toml_section& s)
{
    std::string_view found;
    for (const std::string_view word : observation_words) {
        if (!s.has(word)) continue;
        if (!found.empty())
            s.refuse(s.place(word), "\"" + std::string(found) + "\" and \"" + std::string(word) +
                                        "\" are two findings; write each as a [[reading]] of its own");
        found = word;
    }
    if (found.empty()) {
        std::string all;
        for (const std::string_view word : observation_words) all.append(all.empty() ? "" : ", ").append(word);
        s.refuse(s.place(), s.what() + " says nothing of what was found; it takes one of: " + all);
    }
    return found;
}

/// Volts across a part or span under current; or one of the other findings about one part.
[[nodiscard]] inline observation read_observation(const toml_section& s, const readable_parts& parts)
{
    s.allow_only({"across", "to", "volts", "current", "hottest", "four_wire", "tightness", "surface", "missing_strands",
                  "arc", "error"});
    const std::string_view kind = kind_of_observation(s);
    const auto only_with = [&](std::string_view key, std::string_view wanted) {
        if (s.has(key) && kind != wanted)
            s.refuse(s.place(key), "\"" + std::string(key) + "\" goes with \"" + std::string(wanted) + "\"");
    };
    only_with("to", "volts");
    only_with("current", "volts");
    if (s.has("error") && kind != "volts" && kind != "hottest" && kind != "four_wire")
        s.refuse(s.place("error"), "\"error\" goes with \"volts\", \"hottest\" or \"four_wire\"");
    const std::string part = parts.name(s, "across");
    if (kind == "hottest") {
        heat_observation out{.part = part, .hottest = s.required<temperature>("hottest", read_temperatures)};
        s.take("error", out.error, read_temperature_errors);
        return out;
    }
    if (kind == "four_wire") {
        four_wire_observation out{.part = part, .ohms = s.required<resistance>("four_wire", read_resistances)};
        s.take("error", out.error, read_resistance_errors);
        return out;
    }
    if (kind == "tightness")
        return tightness_observation{
            .part = part, .share = static_cast<double>(s.required<bounded_number<tightness_rule>>("tightness"))};
    if (kind == "surface")
        return surface_observation{.part = part, .seen = s.word("surface", all_surface_states, word_of_value)};
    if (kind == "missing_strands")
        return strand_observation{.part = part, .missing = s.required<strand_loss>("missing_strands")};
    if (kind == "arc") {
        if (!parts.is_gun(part))
            s.refuse(s.place("across"), in_quotes(part) + " is no wire gun; \"arc\" goes with one");
        return arc_observation{.part = part, .seen = s.word("arc", arc_looks, [](arc_look l) { return to_text(l); })};
    }
    reading out{.across = part,
                .volts = s.required<voltage>("volts", read_volts),
                .current = s.required<current>("current", read_currents)};
    if (s.has("to")) {
        out.to = parts.name(s, "to");
        parts.check_span(s, out.across, out.to);
        if (out.to == out.across) out.to.clear();
    }
    s.take("error", out.error, read_volt_errors);
    return out;
}

}  // namespace weldloop::detail
