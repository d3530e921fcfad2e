#pragma once
/// @file
/// How the temperature of a part swings over one period of its duty.

#include <algorithm>
#include <cstddef>
#include <string>
#include <utility>
#include <vector>

#include <weldloop/circuit/loop_state.hpp>
#include <weldloop/circuit/station.hpp>
#include <weldloop/circuit/station_parts.hpp>
#include <weldloop/core/error.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/temperature.hpp>

namespace weldloop {

/// Temperature of the hottest place of a part at evenly spaced times of the settled duty period, from the start of the
/// current to the end of the rest: the solution of the loop, straight between the moments it was solved for. First and
/// last value are equal. The moment the current stops is one of those, so the highest of enough times is the peak.
/// @param s the station @param solved its loop, as solve_loop() gave it @param index place of the part in the path
/// @param count of times, 2 to 10000
/// @return the temperatures; the air's throughout for a loop without a settled state and for the arc
/// @throws bad_station_error for an index outside the path or a loop that is not of this station; out_of_range_error
[[nodiscard]] inline std::vector<std::pair<duration, temperature>>
duty_trace_of(const station& s, const loop_state& solved, std::size_t index, int count = 121)
{
    require_within(count, 2.0, 1e4, "times of the trace");
    if (index >= parts_in(s) || solved.parts.size() != parts_in(s))
        throw bad_station_error("part of the trace", std::to_string(index),
                                "a place in the path of the station that was solved");
    const std::vector<temperature>& trace = solved.parts[index].trace;
    std::vector<std::pair<duration, temperature>> out;
    std::size_t k = 1;
    for (int i = 0; i < count; ++i) {
        const duration at = s.job.duty.period() * (static_cast<double>(i) / (count - 1));
        if (trace.empty()) {
            out.emplace_back(at, solved.parts[index].peak);
            continue;
        }
        while (k + 1 < solved.times.size() && solved.times[k] < at) ++k;
        const double share =
            std::clamp(((at - solved.times[k - 1]) / (solved.times[k] - solved.times[k - 1])).value(), 0.0, 1.0);
        out.emplace_back(at, trace[k - 1] + share * (trace[k] - trace[k - 1]));
    }
    return out;
}

}  // namespace weldloop
