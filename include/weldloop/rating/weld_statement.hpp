#pragma once
/// @file
/// What a welder notices of a loop, as a list.

#include <string>
#include <string_view>

#include <weldloop/core/source.hpp>

namespace weldloop {

/// What can be said of the weld. Its text is stable.
enum class weld_id {
    arc_soft,        ///< too few volts reach the arc
    poor_starts,     ///< the current rises too slowly, or a joint does not hold
    spatter,         ///< the arc is too short or goes out and comes back
    lack_of_fusion,  ///< the weld gets less heat than the record says
    ropy_bead,       ///< less current than was set
    arc_blow,        ///< current crosses the work beside the weld
    choked_current,  ///< inductance takes the volts of alternating current
    blunt_pulses,    ///< edges of pulses or halves take long
};

/// The stable text of a statement: "arc_soft".
[[nodiscard]] constexpr std::string_view to_text(weld_id id)
{
    switch (id) {
    case weld_id::arc_soft: return "arc_soft";
    case weld_id::poor_starts: return "poor_starts";
    case weld_id::spatter: return "spatter";
    case weld_id::lack_of_fusion: return "lack_of_fusion";
    case weld_id::ropy_bead: return "ropy_bead";
    case weld_id::arc_blow: return "arc_blow";
    case weld_id::choked_current: return "choked_current";
    case weld_id::blunt_pulses: return "blunt_pulses";
    }
    return "arc_soft";
}

/// The welder's words for it: "a soft arc".
[[nodiscard]] constexpr std::string_view words_for(weld_id id)
{
    switch (id) {
    case weld_id::arc_soft: return "a soft arc";
    case weld_id::poor_starts: return "poor starts";
    case weld_id::spatter: return "spatter";
    case weld_id::lack_of_fusion: return "a risk of lack of fusion";
    case weld_id::ropy_bead: return "a ropy bead";
    case weld_id::arc_blow: return "arc blow";
    case weld_id::choked_current: return "a choked current";
    case weld_id::blunt_pulses: return "blunt pulses";
    }
    return "a soft arc";
}

/// One statement on the weld: what is noticed, with its quantity and threshold in the sentence.
struct weld_statement {
    weld_id id = weld_id::arc_soft;  ///< which
    double quantity = 0.0;   ///< [1] or [m], 0 or above, what was found: a share, a length for `spatter` by a short arc
    double threshold = 0.0;  ///< [1] or [m], 0 or above, from which on it is said
    std::string text = {};   ///< one sentence
};

/// From where on something is said. No published threshold was found for any of them.
inline constexpr source weld_thresholds{
    "statements on the weld: a soft arc from 10 % of the supply's volts lost in the circuit; risk of lack of fusion "
    "from "
    "12 % of the volts or 10 % of the current; a ropy bead from 5 % of the current; spatter from an arc shorter by its "
    "usual length, or a joint that does not hold; poor starts from a third of the no-load voltage taken by inductance "
    "at "
    "500 A/ms, or a joint that does not hold; arc blow from 10 % of the current crossing the work to stray ways, "
    "or from 0.5 m to a return at one end",
    {},
    {},
    source_kind::common_practice};
/// The same of a current that changes.
inline constexpr source course_thresholds{
    "statements on a changing current: choked from a tenth of the no-load voltage taken by the leads' reactance; blunt "
    "pulses from a fifth of the level's time lost on its edge",
    "2026",
    {},
    source_kind::judgement};

}  // namespace weldloop
