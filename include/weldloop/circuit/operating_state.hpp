#pragma once
/// @file
/// The result of solving supply, loop and arc together.

#include <optional>
#include <string_view>

#include <weldloop/circuit/loop_state.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/source.hpp>

namespace weldloop {

/// The model behind an operating point.
inline constexpr source operating_point_model{
    "static output line of the supply, settled loop and straight arc line in one balance of volts",
    {},
    "the loop solved anew at each current, its heat with it",
    source_kind::derived};

/// What is held while the supply, the loop and the arc settle.
enum class arc_hold {
    arc_length,  ///< a hand, or a feeder that follows the arc's voltage, holds its length; the current follows
    wire_feed,   ///< a wire fed at a constant speed holds the current; the arc's length follows
};

/// The words for what is held.
[[nodiscard]] constexpr std::string_view to_text(arc_hold h)
{
    return h == arc_hold::arc_length ? "arc length" : "wire feed";
}

/// What became of the search for an operating point.
enum class operating_outcome {
    found,             ///< every number is that of the settled circuit
    no_supply,         ///< none is described
    not_steady,        ///< the current's levels differ, pulsed or alternating: there is no one working point
    open_circuit,      ///< the loop is open
    loop_not_settled,  ///< the loop has no settled state at the currents that the supply would give
    beyond_line,       ///< the point lies where the supply's output line is not known, or where it gives no current
    no_arc,            ///< the supply has too few volts for this arc at any current
    not_settled,       ///< no point within the bounded work
};

/// The words for an outcome.
[[nodiscard]] constexpr std::string_view to_text(operating_outcome o)
{
    switch (o) {
    case operating_outcome::found: return "found";
    case operating_outcome::no_supply: return "no supply described";
    case operating_outcome::not_steady: return "current with unequal levels";
    case operating_outcome::open_circuit: return "open circuit";
    case operating_outcome::loop_not_settled: return "loop without a settled state";
    case operating_outcome::beyond_line: return "beyond the supply's output line";
    case operating_outcome::no_arc: return "too few volts for the arc";
    case operating_outcome::not_settled: return "not settled";
    }
    return "not settled";
}

/// An operating point. Without `found` there are no numbers in it but `asked`.
struct operating_point {
    operating_outcome outcome = operating_outcome::not_settled;  ///< look at it first
    arc_hold held = arc_hold::arc_length;                        ///< what was held
    weldloop::current asked = {};                                ///< [A] of the job
    weldloop::current current = {};                              ///< [A] that flows
    voltage terminals = {};                                      ///< [V] across the supply's terminals
    voltage inductive = {};  ///< [V] along the leads' inductance, at right angles to those of loop and arc, of an
                             ///< alternating current without steady levels; see reactance_of()
    voltage loop_drop = {};  ///< [V] of all parts, the wire's extension too
    voltage wire_extension_drop = {};  ///< [V] of that, along the wire beyond a gun's tip
    voltage made_good = {};            ///< [V] of that, by a supply that senses remotely
    voltage arc_voltage = {};          ///< [V] across the arc
    length arc_length = {};  ///< [m]; with the feed held, below 0: the arc gets fewer volts than an arc of no length
                             ///< asks for, so the wire stubs
    std::optional<length> extension = {};  ///< [m] of the wire beyond the tip, where the wire's feed was stated
    bool line_in_range = true;   ///< false: the usual arc line does not reach to that current, so that nothing can be
                                 ///< said of the arc's length, and where that is held nothing of the current
    loop_state loop = {};        ///< at that current
    weldloop::basis basis = {};  ///< sources of lines and balance

    /// Whether there are numbers.
    [[nodiscard]] bool is_found() const { return outcome == operating_outcome::found; }
    /// What leads and joints take from the arc [V]: the loop's drop without the wire's extension, whose heat melts
    /// wire, and without what the supply makes good.
    [[nodiscard]] voltage lost() const { return loop_drop - wire_extension_drop - made_good; }
};

}  // namespace weldloop
