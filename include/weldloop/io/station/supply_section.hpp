#pragma once
/// @file
/// The [supply] of a station file.

#include <algorithm>
#include <array>
#include <cstddef>
#include <initializer_list>
#include <string>
#include <string_view>
#include <vector>

#include <weldloop/core/literals.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/io/station/part_section.hpp>
#include <weldloop/io/station/toml_section.hpp>
#include <weldloop/law/no_load_limit.hpp>
#include <weldloop/part/supply.hpp>
#include <weldloop/part/supply_line.hpp>

namespace weldloop::detail {

/// @name What the keys of a supply may hold
/// @{
inline constexpr allowed_span<voltage> supply_voltages{0_V, 200_V, true};
inline constexpr allowed_span<current> supply_currents{0_A, 5000_A, true};
inline constexpr allowed_span<resistance> output_falls{in_si<resistance>(0.0), in_si<resistance>(1.0)};
inline constexpr allowed_span<conductance> output_rises{in_si<conductance>(0.0), in_si<conductance>(100.0)};
inline constexpr allowed_span<current> point_currents{0_A, 5000_A};
inline constexpr allowed_span<voltage> point_voltages{0_V, 200_V};
inline constexpr std::size_t most_points = 50;
inline constexpr std::array all_hazards{shock_hazard::ordinary, shock_hazard::increased, shock_hazard::machine_held};
inline constexpr std::array all_output_currents{output_current::direct, output_current::alternating};
/// @}

/// A key that only some kinds of supply take.
struct supply_key {
    std::string_view key;
    std::initializer_list<supply_kind> of;
};

/// Refuses keys that belong to other kinds. @param needed what this kind takes in their place
inline void refuse_foreign(const toml_section& s, supply_kind kind, std::string_view needed)
{
    using enum supply_kind;
    const supply_key keys[] = {{"setting", {constant_voltage, engine_driven}},
                               {"highest_output", {constant_current, constant_voltage}},
                               {"current", {constant_current, engine_driven}},
                               {"fall", {constant_voltage}},
                               {"limit", {constant_voltage}},
                               {"sense_electrode_side", {constant_voltage}},
                               {"sense_work_side", {constant_voltage}},
                               {"rise", {constant_current}},
                               {"short_circuit", {drooping}},
                               {"shape", {drooping}},
                               {"point", {measured}}};
    const bool senses = s.has("sense_electrode_side") || s.has("sense_work_side");
    for (const supply_key& k : keys) {
        const bool takes = std::find(k.of.begin(), k.of.end(), kind) != k.of.end() &&
                           !(k.key == "highest_output" && kind == constant_voltage && !senses);
        if (!takes && s.has(k.key))
            s.refuse(s.place(k.key),
                     "a " + std::string(to_text(kind)) + " supply takes \"" + std::string(needed) + "\", not \"" +
                         std::string(k.key) + "\"",
                     needed);
    }
}

/// No-load voltage, hazard, polarity and feeding: of every kind.
inline void read_what_all_have(const toml_section& s, supply& out)
{
    if (s.has("no_load")) out.no_load.peak = s.required<voltage>("no_load", supply_voltages);
    if (s.has("no_load_effective")) {
        out.no_load.rms = s.required<voltage>("no_load_effective", supply_voltages);
        out.no_load.kind = output_current::alternating;
    }
    s.take_word("no_load_current", out.no_load.kind, all_output_currents, word_of_value);
    s.take_word("hazard", out.hazard, all_hazards, word_of_value);
    s.take_word("polarity", out.polarity, all_polarities, word_of_value);
    if (!s.has("no_load_current") && out.polarity == electrode_polarity::alternating)
        out.no_load.kind = output_current::alternating;
    s.take_word("feeding", out.feeding, all_wire_feedings, word_of_value);
}

[[nodiscard]] inline std::vector<source_point> read_points(const toml_section& s)
{
    std::vector<source_point> out;
    for (const toml_section& point : s.sections("point", most_points, "point")) {
        point.allow_only({"current", "voltage"});
        out.push_back(
            {point.required<current>("current", point_currents), point.required<voltage>("voltage", point_voltages)});
    }
    return out;
}

[[nodiscard]] inline supply read_supply(const toml_section& s)
{
    s.allow_only({"kind", "setting", "highest_output", "current", "fall", "rise", "limit", "short_circuit", "shape",
                  "point", "no_load", "no_load_effective", "no_load_current", "hazard", "polarity", "feeding",
                  "sense_electrode_side", "sense_work_side"});
    supply out{.kind = s.word("kind", all_supply_kinds, word_of_value)};
    const bool has_setting = out.kind == supply_kind::constant_voltage || out.kind == supply_kind::engine_driven;
    refuse_foreign(s, out.kind,
                   has_setting                                 ? "setting"
                   : out.kind == supply_kind::constant_current ? "highest_output"
                   : out.kind == supply_kind::drooping         ? "short_circuit"
                                                               : "point");
    read_what_all_have(s, out);
    if (has_setting) out.setting = s.required<voltage>("setting", supply_voltages);
    if (out.kind == supply_kind::constant_current || s.has("highest_output"))
        out.highest_output = s.required<voltage>("highest_output", supply_voltages);
    s.take("current", out.current_setting, supply_currents);
    s.take("fall", out.fall, output_falls);
    s.take("rise", out.rise, output_rises);
    if (s.has("limit")) out.limit = s.required<current>("limit", supply_currents);
    if (out.kind == supply_kind::drooping) out.short_circuit = s.required<current>("short_circuit", supply_currents);
    s.take_word("shape", out.shape, all_droop_shapes, word_of_value);
    if (out.kind == supply_kind::measured) out.points = read_points(s);
    if ((out.kind == supply_kind::drooping || out.kind == supply_kind::engine_driven) && !no_load_voltage_of(out))
        s.refuse_missing(out.no_load.kind == output_current::alternating ? "no_load_effective" : "no_load");
    if (s.has("sense_electrode_side") || s.has("sense_work_side")) {
        out.sensing.emplace();
        if (s.has("sense_electrode_side")) out.sensing->electrode_side = s.name("sense_electrode_side");
        if (s.has("sense_work_side")) out.sensing->work_side = s.name("sense_work_side");
    }
    return out;
}

}  // namespace weldloop::detail
