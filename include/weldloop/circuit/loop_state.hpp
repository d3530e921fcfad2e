#pragma once
/// @file
/// The result of solving a loop.

#include <vector>

#include <weldloop/core/quantities.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/temperature.hpp>

namespace weldloop {

/// What became of the search for a loop's steady state.
enum class loop_outcome {
    solved,        ///< every number is that of the settled loop
    open_circuit,  ///< some part is open: no current flows, every part is at the temperature of the air
    melts,         ///< no steady state below the melting point of some part's metal: no numbers but which part it is
    not_settled,   ///< the search ended without a state: no numbers
};

/// One part of a solved loop.
struct part_state {
    bool conducts = true;           ///< false: this part is open
    voltage drop = {};              ///< while current flows
    voltage work_drop = {};         ///< of a joint: over its contact with the work alone
    voltage extension_drop = {};    ///< of a gun: of the wire beyond its tip, contained in `drop`
    power loss = {};                ///< heat made in it while current flows, without the wire beyond a gun's tip
    temperature mean = {};          ///< over the duty period; of a lead, over its length too
    temperature peak = {};          ///< highest in the duty period and along the part
    temperature hottest_spot = {};  ///< of contact spots; the peak for parts without
    duration time_constant = {};    ///< of a joint: its heat capacity over all conductances it feels; 0: none
    temperature_difference on_rise =
        {};                       ///< of a joint: what its own heat would raise it by, were the current never off
    bool has_spots = false;       ///< whether it has contact spots
    double softening_used = 0.0;  ///< drop over softening drop, of the contact that uses most of it; 0: no contact
    bool spots_melt = false;      ///< contact spots at the melting drop
    bool metal_melts = false;     ///< its body would pass its melting point
};

/// A solved loop.
struct loop_state {
    std::vector<part_state> parts = {};           ///< in the order of the path, the arc among them with no drop
    loop_outcome outcome = loop_outcome::solved;  ///< anything but `solved`: drops and temperatures are those of no
                                                  ///< current
    bool conducts = true;                         ///< false: some part is open and no current flows
    voltage total_drop = {};                      ///< of all parts while current flows
    voltage extension_drop = {};                  ///< of the wire beyond a gun's tip, contained in the total
    std::vector<basis> part_basis = {};           ///< of each part
};

}  // namespace weldloop
