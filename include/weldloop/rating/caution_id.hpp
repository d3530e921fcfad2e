#pragma once
/// @file
/// Which cautions there are.

#include <string_view>

namespace weldloop {

/// The cautions of the trade that documents print. Its text is stable: programs name cautions by it.
enum class caution_id {
    codes,                   ///< local codes, makers and licensed practice come first
    switch_off,              ///< off before touching
    live_readings,           ///< live readings by trained persons only
    no_earth,                ///< a work clamp is no earth
    no_path,                 ///< no current through chains, ropes, bearings, pipes, earth wires
    no_coil,                 ///< no lead round the body
    implants,                ///< magnetic fields and implants
    near_return,             ///< the return near the weld
    no_splice,               ///< no splice near the holder
    fire,                    ///< fire watch
    burns,                   ///< hot enough to burn
    zinc,                    ///< fume of zinc
    paint,                   ///< fume of paint
    hot_covering,            ///< a covering past its limit
    stray,                   ///< current that strays
    after_stray,             ///< what has carried stray current
    two_supplies,            ///< two holders on one work
    across_arc,              ///< a way across the arc
    open,                    ///< no-load voltage across an open connection
    no_state,                ///< no settled temperature
    melting,                 ///< a contact that melts
    arc_goes_out,            ///< a supply at its end
    proven_dead,             ///< before a joint is touched: off, locked, proven dead
    let_cool,                ///< metal stays hot after
    damaged_covering_stops,  ///< a damaged covering stops the job
    licensed_inside,         ///< inside of supply and mains for an electrician
    live_work,               ///< readings under current are live work
    meter_category,          ///< what meter, leads and probes bear
};

/// The stable text of a caution: "switch_off".
[[nodiscard]] constexpr std::string_view to_text(caution_id id)
{
    switch (id) {
    case caution_id::codes: return "codes";
    case caution_id::switch_off: return "switch_off";
    case caution_id::live_readings: return "live_readings";
    case caution_id::no_earth: return "no_earth";
    case caution_id::no_path: return "no_path";
    case caution_id::no_coil: return "no_coil";
    case caution_id::implants: return "implants";
    case caution_id::near_return: return "near_return";
    case caution_id::no_splice: return "no_splice";
    case caution_id::fire: return "fire";
    case caution_id::burns: return "burns";
    case caution_id::zinc: return "zinc";
    case caution_id::paint: return "paint";
    case caution_id::hot_covering: return "hot_covering";
    case caution_id::stray: return "stray";
    case caution_id::after_stray: return "after_stray";
    case caution_id::two_supplies: return "two_supplies";
    case caution_id::across_arc: return "across_arc";
    case caution_id::open: return "open";
    case caution_id::no_state: return "no_state";
    case caution_id::melting: return "melting";
    case caution_id::arc_goes_out: return "arc_goes_out";
    case caution_id::proven_dead: return "proven_dead";
    case caution_id::let_cool: return "let_cool";
    case caution_id::damaged_covering_stops: return "damaged_covering_stops";
    case caution_id::licensed_inside: return "licensed_inside";
    case caution_id::live_work: return "live_work";
    case caution_id::meter_category: return "meter_category";
    }
    return "codes";
}

}  // namespace weldloop
