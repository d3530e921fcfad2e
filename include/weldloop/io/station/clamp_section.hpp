#pragma once
/// @file
/// The clamp of a work connection in a station file: its family, and whatever of it is stated otherwise.

#include <array>
#include <string>
#include <string_view>

#include <weldloop/core/literals.hpp>
#include <weldloop/core/text.hpp>
#include <weldloop/io/station/toml_section.hpp>
#include <weldloop/material/metals.hpp>
#include <weldloop/material/spring_wire.hpp>
#include <weldloop/part/clamp_cable_connection.hpp>
#include <weldloop/part/clamp_inside.hpp>
#include <weldloop/part/sold_clamp.hpp>
#include <weldloop/part/work_clamp.hpp>

namespace weldloop::detail {

/// @name What the keys of a clamp may hold
/// @{
inline constexpr allowed_span<current> clamp_ratings{0_A, 2000_A, true};
inline constexpr allowed_span<force> clamp_forces{0_N, 100_kN};
inline constexpr allowed_span<length> clamp_lengths{0_m, 1_m, true};
inline constexpr allowed_span<length> clamp_handles{0_m, 1_m};
inline constexpr allowed_span<length> clamp_wires{0.5_mm, 12.7_mm};
inline constexpr allowed_span<area> clamp_sections{1_mm2, 10000_mm2};
inline constexpr allowed_span<area> clamp_shunts{0_mm2, 1000_mm2};
inline constexpr allowed_span<torque> clamp_torques{0_Nm, 1000_Nm, true};
inline constexpr allowed_span<length> clamp_screws{3_mm, 50_mm};
inline constexpr allowed_span<double> clamp_turns{0.5, 100.0};
/// @}

/// A family of clamps by its word.
struct clamp_word {
    std::string_view word;
    clamp_kind kind;
    clamp_make make = clamp_make::usual;
};
inline constexpr std::array clamp_words{clamp_word{to_text(clamp_kind::spring), clamp_kind::spring},
                                        clamp_word{to_text(clamp_kind::screw), clamp_kind::screw},
                                        clamp_word{to_text(clamp_kind::bolted), clamp_kind::bolted},
                                        clamp_word{"stamped spring clamp", clamp_kind::spring, clamp_make::stamped},
                                        clamp_word{"cast spring clamp", clamp_kind::spring, clamp_make::cast}};

// Keys of the clamps that are known by their dimensions, and those of them that every spring clamp takes.
inline constexpr std::array clamp_dimension_keys{"body",
                                                 "jaw_length",
                                                 "reach",
                                                 "handle",
                                                 "entry",
                                                 "arm_section",
                                                 "arm_outline",
                                                 "jaw_area",
                                                 "spring_wire",
                                                 "spring_wire_diameter",
                                                 "spring_turns",
                                                 "shunt",
                                                 "shunt_length",
                                                 "cable_connection",
                                                 "cable_connection_state",
                                                 "cable_connection_torque",
                                                 "cable_connection_screw",
                                                 "largest_cable"};
inline constexpr std::array clamp_inside_keys{"pivot", "shunt_state", "cable_jaw_surface"};

template <class Keys>
inline void refuse_foreign(const toml_section& s, const Keys& keys, std::string_view word)
{
    for (const std::string_view key : keys)
        if (s.has(key)) {
            std::string reason = "a ";
            reason.append(word).append(" takes no \"").append(key).append("\"");
            s.refuse(s.place(key), reason);
        }
}

inline void take_inside(const toml_section& s, clamp_inside& out)
{
    constexpr auto word = [](auto v) { return to_text(v); };
    s.take_word("pivot", out.pivot, all_pivot_states, word);
    s.take_word("shunt_state", out.shunt, all_shunt_states, word);
}

/// A clamp by its dimensions; those of its family hold where nothing else is stated.
[[nodiscard]] inline work_clamp read_dimensions(const toml_section& s, spring_clamp_dimensions d)
{
    constexpr auto word = [](auto v) { return to_text(v); };
    constexpr auto metal_word = [](const metal& m) { return m.name; };
    s.take_word("body", d.body, all_metals, metal_word);
    s.take_word("jaw", d.jaw, all_metals, metal_word);
    s.take_count("live_jaws", d.live_jaws, 1, 2);
    s.take("jaw_length", d.jaw_length, clamp_lengths);
    s.take("reach", d.reach, clamp_lengths);
    s.take("handle", d.handle, clamp_handles);
    s.take("entry", d.entry, clamp_lengths);
    s.take("arm_section", d.section, clamp_sections);
    s.take("arm_outline", d.outline, clamp_lengths);
    s.take("jaw_area", d.jaw_area, clamp_sections);
    s.take("force", d.force, clamp_forces);
    s.take_word("spring_wire", d.wire, all_spring_wires, [](const spring_wire& w) { return w.name; });
    s.take("spring_wire_diameter", d.wire_diameter, clamp_wires);
    if (s.has("spring_turns")) d.turns = s.number("spring_turns", clamp_turns);
    s.take("shunt", d.shunt, clamp_shunts);
    s.take("shunt_length", d.shunt_length, clamp_lengths);
    s.take_word("cable_connection", d.connection.made, all_clamp_cable_ends, word);
    s.take_word("cable_connection_state", d.connection.state, all_cable_end_states, word);
    s.take("cable_connection_torque", d.connection.tightened_to, clamp_torques);
    s.take("cable_connection_screw", d.connection.screw_diameter, clamp_screws);
    s.take("largest_cable", d.largest_cable);
    take_inside(s, d.inside);
    return s.at_key(s.has("force") ? "force" : "rated", [&] { return clamp_of(d); });
}

/// The clamp of a work connection; `jaw`, `live_jaws` and `force` are taken too.
[[nodiscard]] inline work_clamp read_clamp(const toml_section& s)
{
    const clamp_word family = s.word("clamp", clamp_words, [](const clamp_word& w) { return w.word; });
    const bool bolted = family.kind == clamp_kind::bolted;
    const std::string_view needed = bolted ? "size" : "rated", foreign = bolted ? "rated" : "size";
    if (s.has(foreign))
        s.refuse(s.place(foreign),
                 "a " + std::string(family.word) + " takes \"" + std::string(needed) + "\", not \"" +
                     std::string(foreign) + "\"",
                 needed);
    if (family.kind != clamp_kind::spring) refuse_foreign(s, clamp_inside_keys, family.word);
    if (family.make == clamp_make::usual) refuse_foreign(s, clamp_dimension_keys, family.word);
    if (family.make != clamp_make::usual) {
        const auto rated = s.required<current>("rated", clamp_ratings);
        return read_dimensions(s, s.at_key("rated", [&] {
            return family.make == clamp_make::stamped ? stamped_spring_clamp_dimensions(rated)
                                                      : cast_spring_clamp_dimensions(rated);
        }));
    }
    work_clamp out = [&] {
        if (bolted) {
            const auto size = s.required<conductor_size>("size");
            return s.at_key("size", [&] { return bolted_work_lug(size); });
        }
        const auto rated = s.required<current>("rated", clamp_ratings);
        return s.at_key("rated",
                        [&] { return family.kind == clamp_kind::spring ? spring_clamp(rated) : screw_clamp(rated); });
    }();
    s.take_word("jaw", out.jaw, all_metals, [](const metal& m) { return m.name; });
    s.take_count("live_jaws", out.live_jaws, 1, 2);
    if (s.has("force")) {
        const auto pressing = s.required<force>("force", clamp_forces);
        out = s.at_key("force", [&] { return out.pressing_with(pressing); });
    }
    for (const std::string_view key : clamp_inside_keys)
        if (s.has(key) && !out.inside) out.inside = clamp_inside{};
    if (out.inside) take_inside(s, *out.inside);
    return out;
}

}  // namespace weldloop::detail
