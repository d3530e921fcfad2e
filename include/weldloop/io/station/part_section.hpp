#pragma once
/// @file
/// One part of a station file's path: which keys each kind takes, and what they may hold.

#include <algorithm>
#include <array>
#include <cstddef>
#include <numbers>
#include <optional>
#include <string>
#include <string_view>
#include <type_traits>
#include <utility>
#include <variant>

#include <weldloop/circuit/magnet_behaviour.hpp>
#include <weldloop/circuit/sheeted_parts.hpp>
#include <weldloop/circuit/station.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/core/unit_text.hpp>
#include <weldloop/io/station/clamp_section.hpp>
#include <weldloop/io/station/toml_section.hpp>
#include <weldloop/law/bolt.hpp>
#include <weldloop/law/brush.hpp>
#include <weldloop/law/contact_shape.hpp>
#include <weldloop/law/lay.hpp>
#include <weldloop/law/lead_bundle.hpp>
#include <weldloop/law/magnet.hpp>
#include <weldloop/material/covering.hpp>
#include <weldloop/material/metals.hpp>
#include <weldloop/material/spring_wire.hpp>
#include <weldloop/material/surface_state.hpp>
#include <weldloop/part/covering_state.hpp>
#include <weldloop/part/crimped_lug.hpp>
#include <weldloop/part/resistance_choice.hpp>
#include <weldloop/part/resting_contact.hpp>
#include <weldloop/part/steel_beside.hpp>
#include <weldloop/part/welding_cable.hpp>
#include <weldloop/part/work_clamp.hpp>

namespace weldloop::detail {

/// @name What the keys may hold: wide enough for any workshop, narrow enough to catch a slipped unit
/// @{
inline constexpr allowed_span<length> lead_lengths{0_m, 1000_m, true};
inline constexpr allowed_span<length> body_lengths{0_m, 100_m, true};
inline constexpr allowed_span<length> diameters{0.1_mm, 200_mm};
inline constexpr allowed_span<length> damaged_lengths{0_m, 1000_m};
inline constexpr allowed_span<length> wire_diameters{0.1_mm, 10_mm};
inline constexpr allowed_span<length> wire_extensions{0_m, 200_mm};
inline constexpr allowed_span<length> bolt_diameters{3_mm, 50_mm};
inline constexpr allowed_span<length> thicknesses{0.1_mm, 1_m};
inline constexpr allowed_span<torque> bolt_torques{0_Nm, 1000_Nm};
inline constexpr allowed_span<length> strap_lengths{0_m, 10_m};
inline constexpr allowed_span<area> strap_sections{1_mm2, 10000_mm2};
inline constexpr allowed_span<area> brush_faces{1_mm2, 10000_mm2};
inline constexpr allowed_span<length> magnet_gaps{0_m, 10_mm};
inline constexpr allowed_span<force> magnet_pulls{0_N, 10_kN, true};
inline constexpr allowed_span<force> forces{0_N, 100_kN};
inline constexpr allowed_span<current> rated_currents{0_A, 2000_A, true};
inline constexpr allowed_span<temperature> lead_limits{temperature::celsius(40), temperature::celsius(250)};
inline constexpr allowed_span<temperature> preheats{temperature::celsius(-40), temperature::celsius(500)};
inline constexpr allowed_span<mass> masses{0_kg, 100000_kg, true};
inline constexpr allowed_span<area> cooling_areas{0_m2, 1000_m2, true};
inline constexpr allowed_span<duration> stays{0_s, 24_h, true};
inline constexpr allowed_span<double> piece_rates{1e-3, 3600.0};
inline constexpr allowed_span<voltage> measured_drops{0_V, 100_V, true};
inline constexpr allowed_span<current> measuring_currents{0_A, 5000_A, true};
inline constexpr allowed_span<temperature> part_limits_allowed{temperature::celsius(0), temperature::celsius(1000)};
/// @}

struct part_word {
    std::string_view word;
    path_part (*read)(const toml_section&);
    part_kind kind;  ///< what it reads
};

inline constexpr auto word_of_metal = [](const metal& m) { return m.name; };
inline constexpr auto word_of_covering = [](const covering& c) { return c.name; };
inline constexpr auto word_of_value = [](auto v) { return to_text(v); };

struct shape_word {
    std::string_view word;
    contact_shape shape;
};
inline constexpr std::array shape_words{
    shape_word{"point", contact_shape::point}, shape_word{"sphere", contact_shape::sphere},
    shape_word{"toothed jaw", contact_shape::toothed_jaw}, shape_word{"busbar", contact_shape::busbar},
    shape_word{"flat", contact_shape::flat}};
inline constexpr std::array strap_makes{strap_make::solid, strap_make::braid};
struct cable_end {
    std::string_view word;
    bool ferrule;
};
inline constexpr std::array cable_ends{cable_end{"ferrule", true}, cable_end{"bare strands", false}};
struct rotary_make {
    std::string_view word;
    std::optional<brush_kind> brush;
};
inline constexpr std::array rotary_makes{rotary_make{"metal-graphite", brush_kind::metal_graphite},
                                         rotary_make{"carbon", brush_kind::carbon},
                                         rotary_make{"metal fingers", std::nullopt}};
inline constexpr std::array torch_coolings{torch_cooling::gas, torch_cooling::water};

inline constexpr std::array resistance_choices{resistance_choice::standard_maximum, resistance_choice::nominal};

inline void take_name(const toml_section& s, std::string& out)
{
    if (s.has("name")) out = s.name("name");
}

/// The lead in a cable, gun or torch; `out` holds the usual one.
inline void take_lead_condition(const toml_section& s, cable& out)
{
    if (s.has("limit")) out.limit = s.required<temperature>("limit", lead_limits);
    s.take_word("covering_state", out.covering_state, all_covering_states, word_of_value);
    s.take("missing_strands", out.missing_strands);
    s.take("damaged_length", out.damaged_length, damaged_lengths);
    const bool missing = static_cast<double>(out.missing_strands) > 0.0;
    if (s.has("damaged_length") && !missing)
        s.refuse(s.place("damaged_length"), "\"damaged_length\" needs \"missing_strands\" beside it");
    if (!s.has("damaged_length") && missing)
        s.refuse(s.place("missing_strands"), "\"missing_strands\" of a lead needs \"damaged_length\" beside it");
    if (out.damaged_length > out.length)
        s.refuse(s.place("damaged_length"),
                 "\"damaged_length\" is longer than the lead, which has " + si_text(out.length));
}

/// The turns of a coil and the leads of a bundle, where leads are said to lie in one.
inline void take_crowd(const toml_section& s, lay lies, std::optional<int>& turns, std::optional<int>& leads)
{
    s.take_count("coil_turns", turns, 1, most_bundled_turns);
    if (s.has("coil_turns") && lies != lay::coiled)
        s.refuse(s.place("coil_turns"), "\"coil_turns\" goes with lay = \"coiled\"");
    s.take_count("bundled_leads", leads, 1, most_bundled_turns);
    if (s.has("bundled_leads") && lies != lay::bundled)
        s.refuse(s.place("bundled_leads"), "\"bundled_leads\" goes with lay = \"bundled\"");
}

/// A size that crimps and bodies are known for, such as one of a welding cable.
[[nodiscard]] inline conductor_size lead_size(const toml_section& s, std::string_view key)
{
    const auto size = s.required<conductor_size>(key);
    return s.at_key(key, [&] { return welding_cable(size, 1_m).size; });
}

[[nodiscard]] inline cable read_cable(const toml_section& s)
{
    s.allow_only({"part", "name", "size", "length", "resistance", "limit", "metal", "covering", "conductor_diameter",
                  "overall_diameter", "missing_strands", "damaged_length", "covering_state", "lay", "coil_turns",
                  "bundled_leads", "steel"});
    const auto size = s.required<conductor_size>("size");
    const auto long_ = s.required<length>("length", lead_lengths);
    resistance_choice choice = resistance_choice::standard_maximum;
    s.take_word("resistance", choice, resistance_choices, word_of_value);
    cable out = s.at_key("size", [&] { return welding_cable(size, long_, choice); });
    take_name(s, out.name);
    s.take_word("metal", out.metal, all_metals, word_of_metal);
    s.take_word("covering", out.covering, all_coverings, word_of_covering);
    s.take("conductor_diameter", out.conductor_diameter, diameters);
    s.take("overall_diameter", out.overall_diameter, diameters);
    if (s.has("conductor_diameter") && s.has("overall_diameter"))
        out.dimensions_interpolated = out.dimensions_extrapolated = false;
    if (s.has("conductor_diameter") || s.has("overall_diameter")) {
        const std::string_view key = s.has("overall_diameter") ? "overall_diameter" : "conductor_diameter";
        if (0.25 * std::numbers::pi * out.conductor_diameter * out.conductor_diameter < out.size.area())
            s.refuse(s.place("conductor_diameter"), "\"conductor_diameter\" is too small for " + to_text(out.size));
        if (!(out.overall_diameter > out.conductor_diameter))
            s.refuse(s.place(key),
                     "the covering has no thickness: \"overall_diameter\" must be above \"conductor_diameter\", " +
                         si_text(out.conductor_diameter));
    }
    take_lead_condition(s, out);
    if (s.has("lay")) {
        lay lies = lay::alone;
        s.take_word("lay", lies, all_lays, word_of_value);
        out.lay = lies;
    }
    take_crowd(s, out.lay.value_or(lay::alone), out.coil_turns, out.bundled_leads);
    s.take_word("steel", out.steel, all_steel_beside, word_of_value);
    const bool in_coil = out.lay == lay::coiled;
    if (out.steel != steel_beside::none && is_of_a_coil(out.steel) != in_coil)
        s.refuse(s.place("steel"), in_coil ? "\"steel\" of a lead with lay = \"coiled\" is under or within its coil"
                                           : "\"steel\" under or within a coil goes with lay = \"coiled\"");
    return out;
}

[[nodiscard]] inline lug read_lug(const toml_section& s)
{
    s.allow_only({"part", "name", "size", "stamped", "missing_strands", "bolt_diameter", "bolt_torque", "palm"});
    lug out = crimped_lug({}, s.required<conductor_size>("size"));
    take_name(s, out.name);
    s.take("stamped", out.stamped);
    s.take("missing_strands", out.missing_strands);
    if (s.has("bolt_diameter")) {
        out.bolt_diameter = s.required<length>("bolt_diameter", bolt_diameters);
        if (!s.has("bolt_torque"))
            out.bolt_torque = s.at_key("bolt_diameter", [&] { return electrical_bolt_torque(out.bolt_diameter); });
    }
    s.take("bolt_torque", out.bolt_torque, bolt_torques);
    s.take_word("palm", out.palm, all_surface_states, word_of_value);
    return out;
}

[[nodiscard]] inline coupling read_coupling(const toml_section& s)
{
    s.allow_only({"part", "name", "size", "force", "surface"});
    coupling out({}, s.required<conductor_size>("size"));
    take_name(s, out.name);
    s.take("force", out.force, forces);
    s.take_word("surface", out.surface, all_surface_states, word_of_value);
    return out;
}

[[nodiscard]] inline electrode_holder read_holder(const toml_section& s)
{
    s.allow_only({"part", "name", "rated", "size", "jaws", "rod", "force", "surface"});
    electrode_holder out({}, s.required<current>("rated", rated_currents));
    take_name(s, out.name);
    s.take("size", out.size);
    s.take_word("jaws", out.jaws, all_metals, word_of_metal);
    s.take_word("rod", out.rod, all_metals, word_of_metal);
    s.take("force", out.force, forces);
    s.take_word("surface", out.surface, all_surface_states, word_of_value);
    return out;
}

[[nodiscard]] inline wire_gun read_gun(const toml_section& s)
{
    s.allow_only({"part", "name", "length", "cooling", "size", "limit", "missing_strands", "damaged_length",
                  "covering_state", "wire", "wire_diameter", "extension"});
    torch_cooling cooling = torch_cooling::gas;
    s.take_word("cooling", cooling, torch_coolings, word_of_value);
    wire_gun out({}, s.required<length>("length", lead_lengths), cooling);
    take_name(s, out.name);
    if (s.has("size")) {
        const auto size = s.required<conductor_size>("size");
        out.lead = s.at_key("size", [&] { return welding_cable(size, out.lead.length); });
    }
    take_lead_condition(s, out.lead);
    s.take_word("wire", out.wire, all_metals, word_of_metal);
    s.take("wire_diameter", out.wire_diameter, wire_diameters);
    s.take("extension", out.extension, wire_extensions);
    return out;
}

[[nodiscard]] inline tig_torch read_torch(const toml_section& s)
{
    s.allow_only(
        {"part", "name", "length", "cooling", "size", "limit", "missing_strands", "damaged_length", "covering_state"});
    torch_cooling cooling = torch_cooling::gas;
    s.take_word("cooling", cooling, torch_coolings, word_of_value);
    tig_torch out({}, s.required<length>("length", lead_lengths), cooling);
    take_name(s, out.name);
    if (s.has("size")) {
        const auto size = s.required<conductor_size>("size");
        out.lead = s.at_key("size", [&] { return welding_cable(size, out.lead.length); });
    }
    take_lead_condition(s, out.lead);
    return out;
}

[[nodiscard]] inline arc read_arc(const toml_section& s)
{
    s.allow_only({"part", "name"});
    arc out;
    take_name(s, out.name);
    return out;
}

[[nodiscard]] inline contact read_contact(const toml_section& s)
{
    s.allow_only({"part", "name", "metals", "force", "surface", "shape", "points"});
    const auto [first, second] = s.two_words("metals", all_metals, word_of_metal);
    contact out{.metals = {first, second}, .force = s.required<force>("force", forces)};
    take_name(s, out.name);
    s.take_word("surface", out.surface, all_surface_states, word_of_value);
    if (s.has("shape")) out.shape = s.word("shape", shape_words, [](const shape_word& w) { return w.word; }).shape;
    s.take_count("points", out.points, 1, 1000);
    return out;
}

[[nodiscard]] inline plate read_plate(const toml_section& s)
{
    s.allow_only({"part", "name", "metal", "length", "width", "thickness"});
    plate out{.metal = s.word("metal", all_metals, word_of_metal),
              .length = s.required<length>("length", body_lengths),
              .width = s.required<length>("width", body_lengths),
              .thickness = s.required<length>("thickness", thicknesses)};
    take_name(s, out.name);
    return out;
}

[[nodiscard]] inline work_connection read_work_clamp(const toml_section& s)
{
    std::vector<std::string_view> keys{"part",  "name", "clamp",   "rated",          "size",      "jaw",    "live_jaws",
                                       "force", "onto", "surface", "work_thickness", "grip_lost", "preheat"};
    keys.insert(keys.end(), clamp_inside_keys.begin(), clamp_inside_keys.end());
    keys.insert(keys.end(), clamp_dimension_keys.begin(), clamp_dimension_keys.end());
    s.allow_only(keys);
    work_connection out{.clamp = read_clamp(s), .onto = s.word("onto", all_metals, word_of_metal)};
    take_name(s, out.name);
    s.take_word("surface", out.surface, all_surface_states, word_of_value);
    s.take("work_thickness", out.work_thickness, thicknesses);
    s.take("grip_lost", out.grip_lost);
    if (s.has("cable_jaw_surface"))
        out.cable_jaw_surface = s.word("cable_jaw_surface", all_surface_states, word_of_value);
    if (s.has("preheat")) out.preheat = s.required<temperature>("preheat", preheats);
    return out;
}

[[nodiscard]] inline junction read_junction(const toml_section& s)
{
    s.allow_only({"part", "name"});
    return junction{s.name("name")};
}

[[nodiscard]] inline workpiece read_workpiece(const toml_section& s)
{
    s.allow_only({"part", "name", "metal", "mass", "thickness", "cooling_area", "stays", "pieces_per_hour", "from_weld",
                  "bar_length"});
    workpiece out{.metal = s.word("metal", all_metals, word_of_metal),
                  .mass = s.required<mass>("mass", masses),
                  .thickness = s.required<length>("thickness", thicknesses)};
    take_name(s, out.name);
    if (s.has("cooling_area")) out.cooling_area = s.required<area>("cooling_area", cooling_areas);
    // the two are taken for each other
    if (s.is_number("stays"))
        s.refuse(s.place("stays"),
                 "\"stays\" is how long a piece stays, a text with its unit, \"5 min\"; how many follow each other is "
                 "\"pieces_per_hour\"",
                 "pieces_per_hour");
    if (s.has("pieces_per_hour") && !s.is_number("pieces_per_hour"))
        s.refuse(s.place("pieces_per_hour"),
                 "\"pieces_per_hour\" is how many follow each other, a bare number, 12; how long a piece stays is "
                 "\"stays\"",
                 "stays");
    if (s.has("stays")) out.stays = s.required<duration>("stays", stays);
    if (s.has("pieces_per_hour")) out.pieces_per_hour = s.number("pieces_per_hour", piece_rates);
    if (s.has("from_weld")) out.from_weld = s.required<length>("from_weld", body_lengths);
    if (s.has("bar_length")) out.bar_length = s.required<length>("bar_length", body_lengths);
    constexpr double rounding = 1e-9;
    if (out.stays && out.pieces_per_hour &&
        out.stays->value() * *out.pieces_per_hour > seconds_per_hour * (1.0 + rounding))
        s.refuse(s.place("pieces_per_hour"),
                 number_text(*out.pieces_per_hour) + " an hour leave " +
                     to_text(in_si<duration>(seconds_per_hour / *out.pieces_per_hour), "min") +
                     " for each, less than \"stays\", " + to_text(*out.stays, "min") + "; allowed: at most " +
                     number_text(seconds_per_hour / out.stays->value()) + " an hour");
    if (out.from_weld && !out.stays && !out.pieces_per_hour)
        s.refuse(s.place("from_weld"), "\"from_weld\" needs \"stays\" or \"pieces_per_hour\"");
    if (out.bar_length && !out.from_weld) s.refuse(s.place("bar_length"), "\"bar_length\" needs \"from_weld\"");
    return out;
}

/// A drop that was measured: one value, or low, typical and high.
[[nodiscard]] inline band<voltage> read_measured_drop(const toml_section& s)
{
    const bool scatters = s.has("drop_low") || s.has("drop_high");
    const auto typical = s.required<voltage>("drop", measured_drops);
    if (!scatters) return exactly(typical);
    const band<voltage> out{s.required<voltage>("drop_low", measured_drops), typical,
                            s.required<voltage>("drop_high", measured_drops)};
    if (out.low > out.typical) s.refuse(s.place("drop_low"), "\"drop_low\" is above \"drop\"");
    if (out.high < out.typical) s.refuse(s.place("drop_high"), "\"drop_high\" is below \"drop\"");
    return out;
}

[[nodiscard]] inline measured_part read_measured(const toml_section& s)
{
    s.allow_only(
        {"part", "name", "word", "drop", "drop_low", "drop_high", "at", "law", "limit", "mass", "cooling_area"});
    measured_part out{.drop = read_measured_drop(s), .at = s.required<current>("at", measuring_currents)};
    take_name(s, out.name);
    if (s.has("word")) out.word = s.name("word");
    s.take_word("law", out.law, drop_laws, word_of_value);
    if (s.has("limit")) out.limit = s.required<temperature>("limit", part_limits_allowed);
    if (s.has("mass")) out.mass = s.required<mass>("mass", masses);
    if (s.has("cooling_area")) out.cooling_area = s.required<area>("cooling_area", cooling_areas);
    if (s.has("limit") && !s.has("cooling_area"))
        s.refuse(s.place("limit"), "\"limit\" needs \"cooling_area\" beside it: without one no temperature is known");
    return out;
}

/// A bolt, nut or screw, and its torque: where the thread is given and the torque is not, what its thread usually has.
inline void take_bolt(const toml_section& s, length& diameter, torque& tightening, thread_state& thread)
{
    s.take("bolt_diameter", diameter, bolt_diameters);
    if (s.has("bolt_diameter") && !s.has("bolt_torque"))
        tightening = s.at_key("bolt_diameter", [&] { return electrical_bolt_torque(diameter); });
    s.take("bolt_torque", tightening, bolt_torques);
    s.take_word("thread", thread, all_thread_states, word_of_value);
}

[[nodiscard]] inline strap read_strap(const toml_section& s)
{
    s.allow_only({"part", "name", "make", "section", "length", "metal", "onto", "bolts", "bolt_diameter", "bolt_torque",
                  "thread", "surface"});
    strap out{.length = s.required<length>("length", strap_lengths),
              .section = s.required<area>("section", strap_sections),
              .make = s.word("make", strap_makes, word_of_value)};
    take_name(s, out.name);
    s.take_word("metal", out.metal, all_metals, word_of_metal);
    s.take_word("onto", out.onto, all_metals, word_of_metal);
    s.take_count("bolts", out.bolts, 1, 100);
    take_bolt(s, out.bolt_diameter, out.tightening, out.thread);
    s.take_word("surface", out.surface, all_surface_states, word_of_value);
    return out;
}

[[nodiscard]] inline stud_terminal read_stud(const toml_section& s)
{
    s.allow_only({"part", "name", "seat", "palm", "lugs", "bolt_diameter", "bolt_torque", "thread", "surface"});
    stud_terminal out{.diameter = s.required<length>("bolt_diameter", bolt_diameters),
                      .tightening = s.required<torque>("bolt_torque", bolt_torques)};
    take_name(s, out.name);
    s.take_word("thread", out.thread, all_thread_states, word_of_value);
    s.take_word("seat", out.seat, all_metals, word_of_metal);
    s.take_word("palm", out.palm, all_metals, word_of_metal);
    s.take_count("lugs", out.lugs, 1, 10);
    s.take_word("surface", out.surface, all_surface_states, word_of_value);
    return out;
}

[[nodiscard]] inline set_screw read_set_screw(const toml_section& s)
{
    s.allow_only({"part", "name", "size", "bolt_diameter", "bolt_torque", "thread", "end", "missing_strands"});
    set_screw out{.size = lead_size(s, "size"), .tightening = s.required<torque>("bolt_torque", bolt_torques)};
    take_name(s, out.name);
    s.take("bolt_diameter", out.screw_diameter, bolt_diameters);
    s.take_word("thread", out.thread, all_thread_states, word_of_value);
    if (s.has("end")) out.ferrule = s.word("end", cable_ends, [](const cable_end& e) { return e.word; }).ferrule;
    s.take("missing_strands", out.missing_strands);
    return out;
}

[[nodiscard]] inline cable_splice read_splice(const toml_section& s)
{
    s.allow_only({"part", "name", "size", "other_size", "stamped", "missing_strands"});
    cable_splice out;
    out.first = out.second = out.stamped = lead_size(s, "size");
    take_name(s, out.name);
    if (s.has("other_size")) out.second = lead_size(s, "other_size");
    if (s.has("stamped"))
        out.stamped = lead_size(s, "stamped");
    else
        out.stamped = std::max(out.first, out.second);
    s.take("missing_strands", out.missing_strands);
    return out;
}

[[nodiscard]] inline rotary_ground read_rotary(const toml_section& s)
{
    s.allow_only({"part", "name", "brush", "count", "face", "force", "finger", "ring", "surface"});
    rotary_ground out;
    take_name(s, out.name);
    out.brush = s.word("brush", rotary_makes, [](const rotary_make& m) { return m.word; }).brush;
    s.take_count("count", out.count, 1, 1000);
    s.take("face", out.face, brush_faces);
    s.take("force", out.force, forces);
    s.take_word("ring", out.ring, all_metals, word_of_metal);
    for (const std::string_view key : {"finger", "surface"})
        if (out.brush && s.has(key))
            s.refuse(s.place(key), "\"" + std::string(key) + "\" goes with brush = \"metal fingers\"");
    s.take_word("finger", out.finger, all_metals, word_of_metal);
    s.take_word("surface", out.surface, all_surface_states, word_of_value);
    return out;
}

[[nodiscard]] inline work_magnet read_magnet(const toml_section& s)
{
    s.allow_only(
        {"part", "name", "size", "pull", "grade", "pad", "points", "onto", "surface", "work_thickness", "gap"});
    work_magnet out;
    out.cable = s.required<conductor_size>("size");
    static_cast<void>(s.at_key("size", [&] { return bolted_work_lug(out.cable); }));
    out.rated = s.required<force>("pull", magnet_pulls);
    out.work = s.word("onto", all_metals, word_of_metal);
    if (!holds_a_magnet(out.work))
        s.refuse(s.place("onto"), "a magnet does not hold on " + std::string(out.work.name) + "; it needs mild steel");
    take_name(s, out.name);
    s.take_word("grade", out.grade, all_magnet_grades, [](const magnet_grade& g) { return g.name; });
    s.take_word("pad", out.pad, all_metals, word_of_metal);
    s.take_count("points", out.points, 1, 1000);
    s.take_word("surface", out.surface, all_surface_states, word_of_value);
    s.take("work_thickness", out.work_thickness, thicknesses);
    s.take("gap", out.gap, magnet_gaps);
    return out;
}

[[nodiscard]] inline spring_pad read_spring_pad(const toml_section& s)
{
    s.allow_only({"part", "name", "force", "pad", "onto", "across", "thickness", "points", "wire", "surface"});
    spring_pad out{.pressing = s.required<force>("force", forces)};
    take_name(s, out.name);
    s.take_word("pad", out.pad, all_metals, word_of_metal);
    s.take_word("onto", out.against, all_metals, word_of_metal);
    s.take("across", out.across, thicknesses);
    s.take("thickness", out.thickness, thicknesses);
    s.take_count("points", out.points, 1, 1000);
    s.take_word("wire", out.wire, all_spring_wires, [](const spring_wire& w) { return w.name; });
    s.take_word("surface", out.surface, all_surface_states, word_of_value);
    return out;
}

[[nodiscard]] inline contact read_resting_contact(const toml_section& s)
{
    s.allow_only({"part", "name", "metals", "mass", "surface"});
    const auto [first, second] = s.two_words("metals", all_metals, word_of_metal);
    const auto resting = s.required<mass>("mass", masses);
    surface_state surface = surface_state::clean;
    s.take_word("surface", surface, all_surface_states, word_of_value);
    contact out = resting_contact(resting, {first, second}, surface);
    take_name(s, out.name);
    return out;
}

/// How a kind of part is read, under its own word or another.
template <auto Read>
[[nodiscard]] constexpr part_word part_word_of(std::string_view word = {})
{
    constexpr part_kind kind = kind_of_part<std::invoke_result_t<decltype(Read), const toml_section&>>;
    return {word.empty() ? to_text(kind) : word, [](const toml_section& s) { return path_part(Read(s)); }, kind};
}

inline constexpr std::array part_words{
    part_word_of<read_cable>(),      part_word_of<read_lug>(),
    part_word_of<read_coupling>(),   part_word_of<read_holder>(),
    part_word_of<read_gun>(),        part_word_of<read_torch>(),
    part_word_of<read_arc>(),        part_word_of<read_contact>(),
    part_word_of<read_plate>(),      part_word_of<read_work_clamp>(),
    part_word_of<read_junction>(),   part_word_of<read_workpiece>(),
    part_word_of<read_measured>(),   part_word_of<read_strap>(),
    part_word_of<read_stud>(),       part_word_of<read_set_screw>(),
    part_word_of<read_splice>(),     part_word_of<read_rotary>(),
    part_word_of<read_magnet>(),     part_word_of<read_resting_contact>("resting contact"),
    part_word_of<read_spring_pad>(),
};

/// Whether a station file has a word for every kind of part.
[[nodiscard]] constexpr bool every_kind_has_a_word()
{
    for (std::size_t kind = 0; kind < std::variant_size_v<path_part>; ++kind) {
        bool found = false;
        for (const part_word& w : part_words) found = found || w.kind == static_cast<part_kind>(kind);
        if (!found) return false;
    }
    return true;
}
static_assert(every_kind_has_a_word(), "a kind of part without a word for station files: add it to part_words");

/// Reads one part, whatever its kind.
[[nodiscard]] inline path_part read_part(const toml_section& s)
{
    const part_word kind = s.word("part", part_words, [](const part_word& w) { return w.word; });
    const std::string article = kind.kind == part_kind::arc ? "an " : "a ";
    const path_part out = kind.read(s.called(article + std::string(kind.word) + " (" + s.what() + ")"));
    std::visit(
        [&s](const auto& p) {  // what no law covers is refused here, where its line is known: mostly a size
            if constexpr (has_sheet<std::decay_t<decltype(p)>>)
                static_cast<void>(s.at_key(s.has("size") ? "size" : "part", [&p] { return sheet_of(p); }));
        },
        out);
    return out;
}

}  // namespace weldloop::detail
