#pragma once
/// @file
/// Which findings of a loop there are.

#include <string_view>

namespace weldloop {

/// What can be found of a loop as a whole. Its text is stable: programs and files name findings by it.
enum class finding_id {
    open_circuit,                    ///< no current can flow
    no_steady_state,                 ///< something gives way before the loop settles, or no settled state was found
    no_steady_state_in_a_poor_case,  ///< the same with every joint at the 95 % point of its scatter
    spots_melt,                      ///< contact spots melt somewhere, typically
    supply_cannot_hold_arc,          ///< the supply cannot give what loop and arc typically take
    supply_may_not_hold_arc,         ///< the same in a poor case
    drop_above_allowed,              ///< the loop typically takes more than is allowed
    drop_may_exceed_allowed,         ///< the same in a poor case
    way_spans_arc,                   ///< a way joins what lies before the arc with what lies behind it
    sharing_unstable,                ///< ways share the current in a state that does not last
    stray_current,                   ///< welding current where none may be
    stray_way,                       ///< a stray way that carries nothing as things stand
    stray_when_return_opens,         ///< what a stray way would carry with an intended way back open
    return_by_stray_ways_only,       ///< no intended way back conducts
    shared_work,                     ///< another supply welds on the same circuit
    other_duty_is_longer,            ///< that one's duty is longer than this job's
    between_holders,                 ///< no-load voltages of two supplies can add up
    covering_damaged,                ///< a lead's covering is cut, burnt, bare or crushed
    covering_wet,                    ///< a lead's covering is wet
    covering_cold,                   ///< the air is colder than a lead's covering may be handled in
    no_load_above_limit,             ///< the supply's no-load voltage is above what the hazard allows
    supply_does_not_suit,            ///< the supply's output is of the wrong kind for the process
    polarity_does_not_suit,          ///< the electrode is on the wrong terminal for the process
    supply_gives_other_current,      ///< at this arc the supply gives another current than the job's
    working_point_not_known,         ///< the supply's line or the loop ends before the point is met
    too_few_volts_for_arc,           ///< the current is there, but fewer volts than an arc asks for
    level_not_held,                  ///< the supply cannot hold a level of the job's pulses
    part_intermittent,               ///< a part was seen to make and break the circuit
};

/// The stable text of a finding: "open_circuit".
[[nodiscard]] constexpr std::string_view to_text(finding_id id)
{
    switch (id) {
    case finding_id::open_circuit: return "open_circuit";
    case finding_id::no_steady_state: return "no_steady_state";
    case finding_id::no_steady_state_in_a_poor_case: return "no_steady_state_in_a_poor_case";
    case finding_id::spots_melt: return "spots_melt";
    case finding_id::supply_cannot_hold_arc: return "supply_cannot_hold_arc";
    case finding_id::supply_may_not_hold_arc: return "supply_may_not_hold_arc";
    case finding_id::drop_above_allowed: return "drop_above_allowed";
    case finding_id::drop_may_exceed_allowed: return "drop_may_exceed_allowed";
    case finding_id::way_spans_arc: return "way_spans_arc";
    case finding_id::sharing_unstable: return "sharing_unstable";
    case finding_id::stray_current: return "stray_current";
    case finding_id::stray_way: return "stray_way";
    case finding_id::stray_when_return_opens: return "stray_when_return_opens";
    case finding_id::return_by_stray_ways_only: return "return_by_stray_ways_only";
    case finding_id::shared_work: return "shared_work";
    case finding_id::other_duty_is_longer: return "other_duty_is_longer";
    case finding_id::between_holders: return "between_holders";
    case finding_id::covering_damaged: return "covering_damaged";
    case finding_id::covering_wet: return "covering_wet";
    case finding_id::covering_cold: return "covering_cold";
    case finding_id::no_load_above_limit: return "no_load_above_limit";
    case finding_id::supply_does_not_suit: return "supply_does_not_suit";
    case finding_id::polarity_does_not_suit: return "polarity_does_not_suit";
    case finding_id::supply_gives_other_current: return "supply_gives_other_current";
    case finding_id::working_point_not_known: return "working_point_not_known";
    case finding_id::too_few_volts_for_arc: return "too_few_volts_for_arc";
    case finding_id::level_not_held: return "level_not_held";
    case finding_id::part_intermittent: return "part_intermittent";
    }
    return "open_circuit";
}

}  // namespace weldloop
