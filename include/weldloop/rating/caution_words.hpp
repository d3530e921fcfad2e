#pragma once
/// @file
/// The cautions of the trade as they are printed, each with its name. They defer to local codes and licensed practice.

#include <array>
#include <optional>
#include <string_view>

#include <weldloop/rating/caution_id.hpp>
#include <weldloop/rating/work_cautions.hpp>

namespace weldloop {

/// @name Cautions
/// @{
/// As printed.
inline constexpr std::string_view caution_codes =
    "Local codes, the makers' instructions and licensed practice come first; this is a calculation under stated "
    "conditions, not an inspection.";
/// As printed.
inline constexpr std::string_view caution_switch_off =
    "Switch off before touching, tightening or cleaning any part of the circuit.";
/// As printed.
inline constexpr std::string_view caution_live_readings =
    "Live readings only by trained persons with insulated probes; no-load voltage at the leads can kill, most of all "
    "in wet or cramped places.";
/// As printed.
inline constexpr std::string_view caution_no_earth =
    "A work clamp is not a protective earth, and an earth is never removed to stop stray current.";
/// As printed.
inline constexpr std::string_view caution_no_path =
    "Welding current in a chain, rope, bearing, pipe or earth wire is a fault to be cured, never a path to be used.";
/// As printed.
inline constexpr std::string_view caution_no_coil = "Leads are never coiled round the body or over a shoulder.";
/// As printed.
inline constexpr std::string_view caution_implants =
    "Leads carry strong magnetic fields: persons with a pacemaker or other implant keep away unless their physician "
    "agrees.";
/// As printed.
inline constexpr std::string_view caution_near_return =
    "The return is connected as near the weld as can be, so that all current comes back through it; a structure used "
    "as return again and again has its joints bonded and is inspected.";
/// As printed.
inline constexpr std::string_view caution_no_splice = "No splice or repair within 10 ft (3 m) of the holder or gun.";
/// As printed.
inline constexpr std::string_view caution_fire =
    "Keep a fire watch: hot joints, spatter and melting covering set fire to what lies near.";
/// As printed.
inline constexpr std::string_view caution_burns = "Parts of this circuit can be hot enough to burn: let clamps, lugs "
                                                  "and holders cool before a bare hand touches them.";
/// As printed.
inline constexpr std::string_view caution_zinc =
    "Zinc fume: grind the coat off where the weld and the clamp go, ventilate, and do not breathe the white smoke.";
/// As printed.
inline constexpr std::string_view caution_paint =
    "Paint fume: strip the paint well back from weld and clamp; old paint may hold lead.";
/// As printed.
inline constexpr std::string_view caution_hot_covering =
    "A covering past its limit can give off harmful fume and lose its insulation: take that lead, gun or torch out of "
    "use and ventilate.";
/// As printed.
inline constexpr std::string_view caution_stray =
    "Stop the job where current can stray: it burns protective conductors, bearings, chains and wire ropes where "
    "nobody sees it, and a burnt protective conductor kills later. Chains, wire ropes, cranes, hoists and lifts carry "
    "no welding current, conduit with conductors is no return (29 CFR 1910.254(c)(2) and the codes after it).";
/// As printed.
inline constexpr std::string_view caution_after_stray =
    "What has carried stray current is looked at by a licensed electrician before it is used again: protective "
    "conductors, plugs, bearings, ropes.";
/// As printed.
inline constexpr std::string_view caution_two_supplies = "Two supplies on one work: nobody touches both holders or an "
                                                         "electrode of each; no-load voltages can add up between them.";
/// As printed.
inline constexpr std::string_view caution_across_arc =
    "A way across the arc is a short circuit of the supply: switch off and part it before anything else.";
/// As printed.
inline constexpr std::string_view caution_open =
    "An open connection leaves the no-load voltage across it: whoever bridges it with the body becomes the path.";
/// As printed.
inline constexpr std::string_view caution_no_state =
    "Stop the job: at this current and duty the loop typically finds no settled temperature; something in it can melt, "
    "burn or set fire.";
/// As printed.
inline constexpr std::string_view caution_melting = "A contact that melts can spark, weld itself fast or burn the "
                                                    "work: stop the job at that connection until it is cured.";
/// As printed.
inline constexpr std::string_view caution_arc_goes_out =
    "Stop the job: a supply at its end typically leaves an arc that goes out and is struck again and again, with the "
    "no-load voltage at the electrode each time.";
/// @}

/// A caution with its name.
struct named_caution {
    caution_id id = caution_id::codes;  ///< which
    std::string_view words = {};        ///< as printed
};

/// Every caution, in the order of the enumeration.
inline constexpr std::array all_cautions{named_caution{caution_id::codes, caution_codes},
                                         named_caution{caution_id::switch_off, caution_switch_off},
                                         named_caution{caution_id::live_readings, caution_live_readings},
                                         named_caution{caution_id::no_earth, caution_no_earth},
                                         named_caution{caution_id::no_path, caution_no_path},
                                         named_caution{caution_id::no_coil, caution_no_coil},
                                         named_caution{caution_id::implants, caution_implants},
                                         named_caution{caution_id::near_return, caution_near_return},
                                         named_caution{caution_id::no_splice, caution_no_splice},
                                         named_caution{caution_id::fire, caution_fire},
                                         named_caution{caution_id::burns, caution_burns},
                                         named_caution{caution_id::zinc, caution_zinc},
                                         named_caution{caution_id::paint, caution_paint},
                                         named_caution{caution_id::hot_covering, caution_hot_covering},
                                         named_caution{caution_id::stray, caution_stray},
                                         named_caution{caution_id::after_stray, caution_after_stray},
                                         named_caution{caution_id::two_supplies, caution_two_supplies},
                                         named_caution{caution_id::across_arc, caution_across_arc},
                                         named_caution{caution_id::open, caution_open},
                                         named_caution{caution_id::no_state, caution_no_state},
                                         named_caution{caution_id::melting, caution_melting},
                                         named_caution{caution_id::arc_goes_out, caution_arc_goes_out},
                                         named_caution{caution_id::proven_dead, touch_cautions[0]},
                                         named_caution{caution_id::let_cool, touch_cautions[1]},
                                         named_caution{caution_id::damaged_covering_stops, touch_cautions[2]},
                                         named_caution{caution_id::licensed_inside, touch_cautions[3]},
                                         named_caution{caution_id::live_work, live_cautions[0]},
                                         named_caution{caution_id::meter_category, live_cautions[1]}};

/// Which caution a sentence is. @param words as printed @return none for what is no caution of the library
[[nodiscard]] constexpr std::optional<caution_id> caution_of(std::string_view words)
{
    for (const named_caution& c : all_cautions)
        if (c.words == words) return c.id;
    return std::nullopt;
}

}  // namespace weldloop
