#pragma once
/// @file
/// A welding station: the job, its surroundings, the power source, and the path the current takes.

#include <optional>
#include <string>
#include <vector>

#include <weldloop/circuit/path_part.hpp>
#include <weldloop/circuit/way.hpp>
#include <weldloop/core/duty_cycle.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/law/load_line.hpp>
#include <weldloop/law/waveform.hpp>
#include <weldloop/part/load.hpp>
#include <weldloop/part/supply.hpp>
#include <weldloop/part/surroundings.hpp>
#include <weldloop/part/year_of_work.hpp>

namespace weldloop {

/// What is welded, how hard and how long.
struct job {
    weldloop::process process = process::smaw;   ///< sets the conventional load line
    weldloop::current current;                   ///< [A] while the arc burns, above 0; the effective value
    duty_cycle duty = duty_cycle::continuous();  ///< time under current
    std::optional<waveform> course = {};  ///< its shape while the arc burns, `current` its effective value; empty:
                                          ///< direct
};

/// A station. The path runs from one supply terminal through the arc to the other; its order is the current's.
struct station {
    std::string name = {};                        ///< as printed
    weldloop::job job;                            ///< what is welded
    surroundings where = {};                      ///< around every lead and joint
    std::vector<path_part> path = {};             ///< parts in the order of the current
    std::optional<weldloop::supply> supply = {};  ///< if it is described
    std::optional<voltage> allowed_drop = {};     ///< [V] above 0, the loop may take, if somebody set a limit
    std::optional<year_of_work> year = {};        ///< of work, if it is stated: what the loss comes to
    std::vector<feed> others = {};                ///< other supplies on the same work
    std::vector<way> ways = {};                   ///< beside the path
    std::string intermittent = {};  ///< name of a part that was seen to make and break the circuit; empty: none
};

}  // namespace weldloop
