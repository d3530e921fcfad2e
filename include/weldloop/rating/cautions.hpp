#pragma once
/// @file
/// The cautions of the trade that an assessed case calls for. They defer to local codes and licensed practice.

#include <algorithm>
#include <string>
#include <variant>
#include <vector>

#include <weldloop/circuit/station.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/rating/assessment.hpp>

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
/// Burns by touch.
inline constexpr source touch_threshold{
    "ISO 13732-1", "2006",
    "burn threshold of bare metal touched for 1 min, 51 degC; 65 to 70 degC burns within a second",
    source_kind::memory};
/// @}

/// Above this a bare metal part burns the hand that holds it for a minute; see touch_threshold.
inline constexpr temperature hot_to_touch = temperature::celsius(51.0);

namespace detail {
[[nodiscard]] inline bool has_surface(const station& s, surface_state wanted)
{
    return std::any_of(s.path.begin(), s.path.end(), [wanted](const path_part& p) {
        if (const auto* c = std::get_if<contact>(&p)) return c->surface == wanted;
        if (const auto* w = std::get_if<work_connection>(&p)) return w->surface == wanted;
        return false;
    });
}
}  // namespace detail

/// The cautions for a station and what was found in it, the general ones first.
/// @param s the station @param found its assessment; only the parts are read
[[nodiscard]] inline std::vector<std::string> cautions_for(const station& s, const assessment& found)
{
    std::vector<std::string> out{
        "Local codes, the makers' instructions and licensed practice come first; this is a calculation under stated "
        "conditions, not an inspection.",
        "Switch off before touching, tightening or cleaning any part of the circuit.",
        "Live readings only by trained persons with insulated probes; no-load voltage at the leads can kill, most of "
        "all in wet or cramped places.",
        "A work clamp is not a protective earth, and an earth is never removed to stop stray current.",
        "Welding current in a chain, rope, bearing, pipe or earth wire is a fault to be cured, never a path to be "
        "used.",
        "No splice or repair within 10 ft (3 m) of the holder or gun.",
        "Leads are never coiled round the body or over a shoulder.",
        "Leads carry strong magnetic fields: persons with a pacemaker or other implant keep away unless their "
        "physician agrees.",
        "Keep a fire watch: hot joints, spatter and melting covering set fire to what lies near."};

    const bool hot = std::any_of(found.parts.begin(), found.parts.end(),
                                 [](const part_result& p) { return p.peak.high > hot_to_touch; });
    if (hot)
        out.emplace_back("Parts of this circuit can be hot enough to burn: let clamps, lugs and holders cool before a "
                         "bare hand touches them.");
    if (detail::has_surface(s, surface_state::galvanized))
        out.emplace_back("Zinc fume: grind the coat off where the weld and the clamp go, ventilate, and do not breathe "
                         "the white smoke.");
    if (detail::has_surface(s, surface_state::painted_pierced) ||
        detail::has_surface(s, surface_state::painted_unbroken))
        out.emplace_back("Paint fume: strip the paint well back from weld and clamp; old paint may hold lead.");
    const bool covering_hot = std::any_of(found.parts.begin(), found.parts.end(), [](const part_result& p) {
        return p.kind == "cable" && p.limit && p.peak.high > *p.limit;
    });
    if (covering_hot)
        out.emplace_back("Overheated rubber gives off harmful fume and loses its insulation: take the lead out of use "
                         "and ventilate.");
    const bool open = !found.conducts;
    if (open)
        out.emplace_back("An open work connection leaves no-load voltage across it: whoever bridges it with the body "
                         "becomes the path.");
    const bool melting = std::any_of(found.parts.begin(), found.parts.end(),
                                     [](const part_result& p) { return p.verdict == verdict::spots_melting; });
    if (melting)
        out.emplace_back("A contact that melts may spark, weld itself fast or burn the work: stop the job at that "
                         "connection until it is cured.");
    return out;
}

}  // namespace weldloop
