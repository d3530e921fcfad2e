#pragma once
/// @file
/// Which remedies there are.

#include <string_view>

namespace weldloop {

/// Which change to a station a remedy is. Its text is stable: programs and files name remedies by it. Of one part a
/// step that is still offered after another was made is the same by this.
enum class remedy_id {
    larger_make,      ///< the next larger make of it
    whole_covering,   ///< a new covering
    whole_lead,       ///< without its damaged length
    straight_lead,    ///< laid out straight
    off_steel,        ///< laid away from steel
    fresh_crimp,      ///< crimped anew
    tight_bolt,       ///< bolt or screw tightened
    clean,            ///< faces cleaned
    pressed_faces,    ///< faces pressed harder
    away_from_heat,   ///< away from where the work is hot
    new_spring,       ///< a new clamp for one whose spring has lost grip
    tight_clamp,      ///< clamp tightened again
    to_screw_clamp,   ///< a screw clamp instead
    to_larger_clamp,  ///< a larger clamp instead
    to_bolted_lug,    ///< a bolted lug instead
    turned_home,      ///< coupling turned home
    new_jaws,         ///< a new holder for one whose jaws hardly press
    nearer,           ///< wire feeder or tip nearer
    water_cooled,     ///< one cooled by water
    fresh_joint,      ///< joined with every strand
    new_springs,      ///< new springs
    clear_seat,       ///< seat cleared
    moved_clamp,      ///< clamp moved past other parts
    stray_way_out,    ///< a stray way taken out
    straight_leads,   ///< all leads laid out straight
    larger_leads,     ///< the leads on both sides of the arc, larger
    higher_setting,   ///< the supply set higher by what the loop takes
    longer_rest,      ///< a smaller duty
    less_current,     ///< less welding current
    all_by_hand,      ///< all cleaning and tightening together
    measured_length,  ///< a lead's length measured, and shortened; by readings alone, as those below but the last
    checked_size,     ///< the size printed on a lead looked up
    new_tip,          ///< a new contact tip
    new_gun_cable,    ///< the cable of a gun replaced or cut back
    opened,           ///< opened, and made anew or replaced
    out_of_use,       ///< taken out of use, for it may be failing
    remark,           ///< no step: a sentence on what no listed step cures
};

/// The stable text of a remedy: "tight_bolt".
[[nodiscard]] constexpr std::string_view to_text(remedy_id id)
{
    switch (id) {
    case remedy_id::larger_make: return "larger_make";
    case remedy_id::whole_covering: return "whole_covering";
    case remedy_id::whole_lead: return "whole_lead";
    case remedy_id::straight_lead: return "straight_lead";
    case remedy_id::off_steel: return "off_steel";
    case remedy_id::fresh_crimp: return "fresh_crimp";
    case remedy_id::tight_bolt: return "tight_bolt";
    case remedy_id::clean: return "clean";
    case remedy_id::pressed_faces: return "pressed_faces";
    case remedy_id::away_from_heat: return "away_from_heat";
    case remedy_id::new_spring: return "new_spring";
    case remedy_id::tight_clamp: return "tight_clamp";
    case remedy_id::to_screw_clamp: return "to_screw_clamp";
    case remedy_id::to_larger_clamp: return "to_larger_clamp";
    case remedy_id::to_bolted_lug: return "to_bolted_lug";
    case remedy_id::turned_home: return "turned_home";
    case remedy_id::new_jaws: return "new_jaws";
    case remedy_id::nearer: return "nearer";
    case remedy_id::water_cooled: return "water_cooled";
    case remedy_id::fresh_joint: return "fresh_joint";
    case remedy_id::new_springs: return "new_springs";
    case remedy_id::clear_seat: return "clear_seat";
    case remedy_id::moved_clamp: return "moved_clamp";
    case remedy_id::stray_way_out: return "stray_way_out";
    case remedy_id::straight_leads: return "straight_leads";
    case remedy_id::larger_leads: return "larger_leads";
    case remedy_id::higher_setting: return "higher_setting";
    case remedy_id::longer_rest: return "longer_rest";
    case remedy_id::less_current: return "less_current";
    case remedy_id::all_by_hand: return "all_by_hand";
    case remedy_id::measured_length: return "measured_length";
    case remedy_id::checked_size: return "checked_size";
    case remedy_id::new_tip: return "new_tip";
    case remedy_id::new_gun_cable: return "new_gun_cable";
    case remedy_id::opened: return "opened";
    case remedy_id::out_of_use: return "out_of_use";
    case remedy_id::remark: return "remark";
    }
    return "remark";
}

}  // namespace weldloop
