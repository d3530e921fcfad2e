#pragma once
/// @file
/// How diagnose.hpp is answered.

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <string>
#include <utility>
#include <variant>
#include <vector>

#include <weldloop/circuit/loop_body.hpp>
#include <weldloop/circuit/part_sheet.hpp>
#include <weldloop/circuit/sheeted_parts.hpp>
#include <weldloop/circuit/station.hpp>
#include <weldloop/circuit/station_parts.hpp>
#include <weldloop/core/band.hpp>
#include <weldloop/core/fraction.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/text.hpp>
#include <weldloop/field/diagnose.hpp>
#include <weldloop/field/part_candidates.hpp>
#include <weldloop/field/reading.hpp>
#include <weldloop/rating/assessment.hpp>
#include <weldloop/rating/remedies_body.hpp>

namespace weldloop {

namespace detail {

// What the part would have at the reading's current, everything else of the station as described.
[[nodiscard]] inline band<resistance> resistance_in(const station& s, std::size_t index, const path_part& part)
{
    station changed = s;
    part_at(changed, index) = part;
    const auto at = [&](scatter level) {
        const loop_state state = solve_loop(changed, level);
        return state.outcome == loop_outcome::solved ? state.parts[index].drop / state.parts[index].current
                                                     : resistance{};
    };
    band<resistance> out{at(scatter::low), at(scatter::typical), at(scatter::high)};
    // a lead that has not warmed up yet reads lower
    if (const auto* c = std::get_if<cable>(&part)) out.low = std::min(out.low, resistance_of(*c, s.where.air));
    return out;
}

// Density of a reading in a log-normal with its own spread on either side of the median.
[[nodiscard]] inline double density(resistance measured, const band<resistance>& b)
{
    constexpr double reading_scatter = 0.05;  // see condition_priors
    if (!(b.typical > resistance{})) return 0.0;
    const auto over_typical = [&b](resistance r) { return static_cast<double>(r / b.typical); };
    const double below =
        std::hypot(std::log(1.0 / std::max(over_typical(b.low), 1e-12)) / band_deviations, reading_scatter);
    const double above = std::hypot(std::log(over_typical(b.high)) / band_deviations, reading_scatter);
    const double distance = std::log(over_typical(measured));
    const double sigma = distance < 0.0 ? below : above;
    return 2.0 / (below + above) * std::exp(-0.5 * (distance / sigma) * (distance / sigma));
}

}  // namespace detail

[[nodiscard]] inline std::vector<finding> diagnose(const station& s, const std::vector<reading>& meter)
{
    static_cast<void>(checked_arc_index(s));
    std::vector<finding> out;
    for (const reading& r : meter) {
        require_not_negative(r.volts, "reading across " + r.across);
        require_positive(r.current, "current of the reading across " + r.across);
        const std::size_t index = place_of(s, r.across);
        const path_part& read = part_at(s, index);
        if (std::holds_alternative<arc>(read))
            throw bad_station_error("reading across", "the arc", "any other part: the arc is no resistance");
        if (std::holds_alternative<junction>(read))
            throw bad_station_error("reading across", "a junction", "a part between two points");
        station at_reading = s;
        at_reading.job.current = r.current;

        finding f;
        f.part = r.across;
        f.measured = r.volts / r.current;
        constexpr auto least_reading = in_si<resistance>(1e-9);  // a reading of nothing still has a logarithm
        const resistance measured = std::max(f.measured, least_reading);
        double sum = 0.0;
        std::vector<double> weights;
        for (const detail::candidate& c : detail::candidate_maker(f.part)(read)) {
            explanation e;
            e.condition = c.condition;
            e.resistance = detail::resistance_in(at_reading, index, c.part);
            e.remedy.what = c.cure;
            e.remedy.part = f.part;
            const resistance saved =
                f.measured - (weights.empty() ? e.resistance : f.considered.front().resistance).typical;
            if (!weights.empty() && saved > resistance{}) e.remedy.volts_regained = saved * r.current;
            weights.push_back(c.weight * detail::density(measured, e.resistance));
            sum += weights.back();
            f.considered.push_back(std::move(e));
        }
        f.expected = f.considered.front().resistance;
        f.within_expected = f.measured >= f.expected.low && f.measured <= f.expected.high;
        for (std::size_t i = 0; i < weights.size(); ++i)
            f.considered[i].likelihood =
                sum > 0.0 ? std::clamp(weights[i] / sum, 0.0, 1.0) : 1.0 / static_cast<double>(weights.size());
        std::stable_sort(f.considered.begin(), f.considered.end(),
                         [](const explanation& a, const explanation& b) { return a.likelihood > b.likelihood; });
        f.most_likely = f.considered.front().condition;
        f.likelihood = f.considered.front().likelihood;
        f.remedy = f.considered.front().remedy;
        f.basis.add(condition_priors).add(surface_state_judgement);
        out.push_back(std::move(f));
    }
    return out;
}

}  // namespace weldloop
