#pragma once
/// @file
/// The cautions of the trade that an assessed case calls for. They defer to local codes and licensed practice.

#include <algorithm>
#include <string>
#include <vector>

#include <weldloop/circuit/part_place.hpp>
#include <weldloop/circuit/part_surface.hpp>
#include <weldloop/circuit/station.hpp>
#include <weldloop/circuit/station_parts.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/rating/assessment.hpp>
#include <weldloop/rating/caution_words.hpp>
#include <weldloop/rating/part_verdict.hpp>
#include <weldloop/rating/touch_limit.hpp>
#include <weldloop/rating/verdict.hpp>

namespace weldloop {

/// @name Sources of the cautions
/// @{

/// Leads, splices, return circuits.
inline constexpr source osha_1926_351{
    "29 CFR 1926.351", "current",
    "(b)(2) splices, (c) return circuits, (d) unattended holders; read in the parallel text WAC 296-155-405",
    source_kind::standard};
/// Stray paths, coiled cable.
inline constexpr source osha_1910_254{
    "29 CFR 1910.254", "current",
    "(c)(2) chains, ropes and hoists carry no welding current; (d)(8) no cable coiled round the body",
    source_kind::memory};
/// Stray paths and structures as return, in a state's text on the base of 29 CFR 1910.254(c)(2).
inline constexpr source wac_296_307_49009{
    "WAC 296-307-49009", "2020",
    "(2) conduit and pipelines, (3) chains, ropes, cranes, hoists, lifts, (4) structures as return, (5) checks",
    source_kind::standard};
/// Return lead near the weld.
inline constexpr source csa_w117_2{"CSA W117.2", "2001", "a) to d), as quoted on a public forum", source_kind::memory};
/// Burns by touch.
inline constexpr source touch_threshold{
    "ISO 13732-1", "2006",
    "burn threshold of bare metal touched for 1 min, 51 degC; 65 to 70 degC burns within a second",
    source_kind::memory};
/// @}

namespace detail {
[[nodiscard]] inline bool has_surface(const station& s, surface_state wanted)
{
    for (std::size_t i = 0; i < parts_in(s); ++i)
        if (surface_of(part_at(s, i)) == wanted) return true;
    return false;
}

// Whether the covering of a lead may be past its limit, at the 95 % point or with more than one case in twenty: of a
// lead in the path, or inside a gun or torch.
[[nodiscard]] inline bool covering_may_be_too_hot(const part_result& p)
{
    return std::any_of(p.limits.begin(), p.limits.end(), [](const limit_use& u) {
        return u.limit && u.at == to_text(part_place::conductor) &&
               ((u.peak && u.peak->high > *u.limit) || static_cast<double>(u.exceeds) > may_exceed_share);
    });
}
}  // namespace detail

/// The cautions for a station and what was found in it, the general ones first.
/// @param s the station @param found its assessment: parts and findings
[[nodiscard]] inline std::vector<std::string> cautions_for(const station& s, const assessment& found)
{
    std::vector<std::string> out{
        std::string(caution_codes),    std::string(caution_switch_off), std::string(caution_live_readings),
        std::string(caution_no_earth), std::string(caution_no_path),    std::string(caution_no_splice),
        std::string(caution_no_coil),  std::string(caution_implants),   std::string(caution_fire)};

    const auto some = [&found](const auto& wanted) {
        return std::any_of(found.parts.begin(), found.parts.end(), wanted);
    };
    const auto finding = [&found](finding_id id) {
        return std::any_of(found.findings.begin(), found.findings.end(),
                           [id](const loop_finding& f) { return f.id == id; });
    };
    const bool hot = s.where.air > hot_to_touch || some([](const part_result& p) {
                         return std::any_of(p.places.begin(), p.places.end(),
                                            [](const place_result& at) { return at.peak.high > hot_to_touch; });
                     });
    if (hot) out.emplace_back(caution_burns);
    if (detail::has_surface(s, surface_state::galvanized)) out.emplace_back(caution_zinc);
    if (detail::has_surface(s, surface_state::painted_pierced) ||
        detail::has_surface(s, surface_state::painted_unbroken))
        out.emplace_back(caution_paint);
    if (some(detail::covering_may_be_too_hot)) out.emplace_back(caution_hot_covering);
    if (std::any_of(s.ways.begin(), s.ways.end(), [](const way& w) { return w.kind == way_kind::stray; })) {
        out.emplace_back(caution_stray);
        out.emplace_back(caution_near_return);
        out.emplace_back(caution_after_stray);
    }
    if (!s.others.empty()) out.emplace_back(caution_two_supplies);
    if (finding(finding_id::way_spans_arc)) out.emplace_back(caution_across_arc);
    if (finding(finding_id::open_circuit)) out.emplace_back(caution_open);
    if (finding(finding_id::no_steady_state)) out.emplace_back(caution_no_state);
    if (some([](const part_result& p) { return p.verdict == verdict::spots_melting; }))
        out.emplace_back(caution_melting);
    if (finding(finding_id::supply_cannot_hold_arc)) out.emplace_back(caution_arc_goes_out);
    return out;
}

}  // namespace weldloop
