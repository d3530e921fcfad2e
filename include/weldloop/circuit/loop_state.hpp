#pragma once
/// @file
/// The result of solving a loop.

#include <cstddef>
#include <optional>
#include <string_view>
#include <vector>

#include <weldloop/circuit/part_place.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/temperature.hpp>

namespace weldloop {

/// What became of the search for a loop's settled state. Every user of a loop_state looks at it first.
enum class loop_outcome {
    solved,        ///< every number is that of the settled loop
    open_circuit,  ///< some part is open: no current flows, every part is at the temperature of the air
    ends,          ///< on its way from the cold a place passes its bound: metal melts or a spring loses its temper; no
                   ///< numbers, but which place it is
    not_settled,   ///< no state within the bounded work: no numbers
    unstable,  ///< ways share the current in a state that does not last: a little more in one draws more: no numbers
};

/// A place of a part in the settled loop.
struct place_state {
    part_place what = part_place::metal;  ///< which
    temperature mean = {};                ///< over the duty period; of a lead's conductor and covering, along it too
    temperature peak = {};                ///< highest in the duty period and along the part
};

/// A contact of a part in the settled loop, where it comes nearest to yielding within the duty period.
struct contact_state {
    std::string_view what = {};     ///< "crimp", "palm", "jaws", ...
    voltage drop = {};              ///< [V] mean while current flows, of all alike in series
    double softening_used = 0.0;    ///< ratio of drop to the softening drop of its metals, highest in the period
    temperature hottest_spot = {};  ///< film-free upper bound, never above the melting point
    bool melts = false;             ///< at the melting drop of its metals
};

/// One part of a solved loop.
struct part_state {
    bool conducts = true;            ///< false: this part is open
    weldloop::current current = {};  ///< while the arc burns; of a junction or workpiece the largest that reaches it
    voltage drop = {};               ///< mean while current flows
    voltage work_drop = {};          ///< of a clamp or bare contact: over its contact with the work alone
    voltage extension_drop = {};     ///< of a gun: [V] 0 or above, of the wire beyond its tip, contained in `drop`
    voltage tip_drop = {};           ///< of a gun: between tip and wire, contained in `drop`
    power loss = {};                 ///< drop times current
    temperature mean = {};           ///< over the duty period, of its hottest place; of a lead, over its length too
    temperature peak = {};           ///< highest in the duty period, of its hottest place
    part_place hottest = part_place::metal;    ///< which place that is
    temperature hottest_spot = {};             ///< of contact spots; the peak for parts without
    std::vector<place_state> places = {};      ///< each with a temperature of its own
    std::vector<contact_state> contacts = {};  ///< each in series
    double softening_used = 0.0;               ///< ratio of drop to softening drop, of the contact that uses most of it
    bool spots_melt = false;                   ///< some contact is at its melting drop
    std::optional<part_place> passes_bound = {};  ///< a loop that ends: the place of this part that ends it
    std::vector<temperature> trace = {};          ///< of its hottest place, at the times of the loop
};

/// One way of a solved loop.
struct way_state {
    weldloop::current current = {};  ///< largest along it, while the arc burns
    bool conducts = true;            ///< false: some part of it is open
    bool spans_arc = false;          ///< it joins what lies before the arc with what lies behind: taken as open
};

/// A solved loop.
struct loop_state {
    loop_outcome outcome = loop_outcome::solved;  ///< anything but `solved`: drops and temperatures are those of no
                                                  ///< current
    std::vector<part_state> parts = {};           ///< by their number, the arc among them with no drop
    std::vector<way_state> ways = {};             ///< beside the path, as in the station
    std::vector<double> branch_volts =
        {};  ///< [V] any, along each of them, from its first point, but for a gun's tip and wire
    std::vector<double> branch_amps = {};  ///< [A] any, of every length of circuit between two points where ways meet
    voltage total_drop = {};      ///< [V] any, from terminal to terminal but for the arc, mean while current flows
    voltage extension_drop = {};  ///< [V] 0 or above, of the wire beyond a gun's tip, contained in the total
    power made = {};              ///< heat made in the mean over the period, sun included
    power lost = {};              ///< heat given off in the mean over the period
    std::vector<duration> times =
        {};  ///< [s] 0 or above, of the traces, from the start of the current to the end of the rest
    std::vector<basis> part_basis = {};  ///< of each part

    /// Whether there are numbers.
    [[nodiscard]] bool is_solved() const { return outcome == loop_outcome::solved; }
};

}  // namespace weldloop
