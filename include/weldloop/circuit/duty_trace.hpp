#pragma once
/// @file
/// How the temperature of a part swings over one period of its duty.

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <utility>
#include <vector>

#include <weldloop/circuit/cable_heating.hpp>
#include <weldloop/circuit/loop.hpp>
#include <weldloop/circuit/station.hpp>
#include <weldloop/core/error.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/law/periodic_heating.hpp>

namespace weldloop {

/// Temperature of a part at evenly spaced times of the settled duty period, from the start of the current to the end of
/// the rest; first and last value are equal but for the model's rounding.
///
/// A lead, or the lead of a gun or torch, swings as it would without ends, its rise scaled to that of its hottest place
/// in the loop. A joint is one lump: it rises and falls with the time constant of its heat capacity against all
/// conductances it feels. Plates and bare contacts are shown at the level the loop gives them.
/// @param s the station @param solved its loop, as solve_loop() gave it @param index place of the part in the path
/// @param count of times, 2 to 10000
/// @throws bad_station_error for an index outside the path or a loop that is not of this station; errors of
/// heating_of()
[[nodiscard]] inline std::vector<std::pair<duration, temperature>>
duty_trace_of(const station& s, const loop_state& solved, std::size_t index, int count = 121)
{
    require_within(count, 2.0, 1e4, "times of the trace");
    if (index >= s.path.size() || solved.parts.size() != s.path.size())
        throw bad_station_error("part of the trace", std::to_string(index),
                                "a place in the path of the station that was solved");
    const part_state& part = solved.parts[index];
    const double on = s.job.duty.on().value(), period = s.job.duty.period().value();
    std::vector<std::pair<duration, temperature>> out;
    for (int i = 0; i < count; ++i) out.emplace_back(in_si<duration>(period * i / (count - 1)), part.peak);
    if (solved.outcome != loop_outcome::solved || s.job.duty.is_continuous()) return out;

    const cable* lead = std::get_if<cable>(&s.path[index]);
    if (const auto* gun = std::get_if<wire_gun>(&s.path[index])) lead = &gun->lead;
    if (const auto* torch = std::get_if<tig_torch>(&s.path[index]);
        torch != nullptr && torch->cooling == torch_cooling::gas)
        lead = &torch->lead;
    if (lead != nullptr) {
        const std::array<heating_segment, 2> programme{heating_segment{s.job.current, s.job.duty.on()},
                                                       heating_segment{weldloop::current{}, s.job.duty.rest()}};
        const std::vector<temperature> alone =
            conductor_trace_of(detail::conductor_of(*lead), detail::surface_of(*lead, s.where), programme, count);
        const temperature_difference highest = *std::max_element(alone.begin(), alone.end()) - s.where.air;
        if (highest.value() > 0.0)
            for (std::size_t i = 0; i < out.size(); ++i)
                out[i].second = s.where.air + (part.peak - s.where.air) * ((alone[i] - s.where.air) / highest).value();
    } else if (part.time_constant.value() > 0.0) {
        const double tau = part.time_constant.value(), rise = part.on_rise.value();
        // share of the steady on-rise that is there when the current starts again
        const double valley = std::exp(-(period - on) / tau) * std::expm1(-on / tau) / std::expm1(-period / tau);
        const double peak = std::expm1(-on / tau) / std::expm1(-period / tau);
        for (auto& [at, here] : out) {
            const double t = at.value();
            const double share = t <= on ? 1.0 - (1.0 - valley) * std::exp(-t / tau) : peak * std::exp(-(t - on) / tau);
            here = part.peak + in_si<temperature_difference>(rise * (share - peak));
        }
    }
    return out;
}

}  // namespace weldloop
