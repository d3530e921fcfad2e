#pragma once
/// @file
/// How diagnose.hpp is answered.

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <string>
#include <utility>
#include <vector>

#include <weldloop/circuit/station.hpp>
#include <weldloop/circuit/station_parts.hpp>
#include <weldloop/core/band.hpp>
#include <weldloop/core/error.hpp>
#include <weldloop/core/fraction.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/text.hpp>
#include <weldloop/field/diagnose.hpp>
#include <weldloop/field/failing_part.hpp>
#include <weldloop/field/fault_rates.hpp>
#include <weldloop/field/fault_search.hpp>
#include <weldloop/field/observation.hpp>
#include <weldloop/field/part_evidence.hpp>
#include <weldloop/field/part_states.hpp>
#include <weldloop/field/reading_doubt.hpp>
#include <weldloop/rating/assessment.hpp>

namespace weldloop {

namespace detail {

/// The 5, 50 and 95 % points of the resistance of a part in a condition, which come in rising order.
[[nodiscard]] inline band<resistance> band_of(const part_states& part, std::size_t condition, std::size_t at_current)
{
    constexpr double top_share = 0.95;  // of a band's high end, see core/band.hpp
    std::vector<std::size_t> states;
    double all = 0.0;
    for (std::size_t i = 0; i < part.size(); ++i)
        if (part.condition[i] == condition) {
            states.push_back(i);
            all += part.prior[i];
        }
    const auto point = [&](double share) {
        double rank = 0.0, ohms = 0.0;  // middle of the state before, and its value
        double below = 0.0;
        for (const std::size_t i : states) {
            const double here = below + 0.5 * part.prior[i], value = part.ohms[at_current][i];
            below += part.prior[i];
            if (here >= share * all)
                return in_si<resistance>(rank > 0.0 ? ohms + (share * all - rank) / (here - rank) * (value - ohms)
                                                    : value);
            rank = here;
            ohms = value;
        }
        return in_si<resistance>(ohms);
    };
    return {point(1.0 - top_share), point(0.5), point(top_share)};
}

/// What one reading says of its part.
[[nodiscard]] inline finding finding_of(const reading& r, const volt_reading& taken, std::size_t at_current,
                                        const part_states& part)
{
    finding f;
    f.part = r.across;
    f.measured = r.volts / r.current;
    volt_reading here = taken;
    here.at_current = at_current;
    const told_of_part told = evidence_reader::told(here, part);
    std::vector<double> of(part.conditions.size(), 0.0);
    double all = 0.0, wrong = 0.0;
    for (std::size_t i = 0; i < part.size(); ++i) {
        of[part.condition[i]] += part.prior[i] * told.right[i];
        wrong += part.prior[i] * told.level;
    }
    for (const double o : of) all += o;
    all += wrong;
    const auto share = [all](double x) { return std::clamp(x / all, 0.0, 1.0); };
    f.wrong = share(wrong);
    for (std::size_t c = 0; c < of.size(); ++c) {
        explanation e{.condition = part.conditions[c].what.condition.words,
                      .resistance = band_of(part, c, at_current),
                      .likelihood = share(of[c]),
                      .remedy = {}};
        e.id = part.conditions[c].what.condition.id;
        e.remedy.what = part.conditions[c].what.cure.words;
        e.remedy.id = part.conditions[c].what.cure.id;
        e.remedy.part = f.part;
        const resistance saved = f.measured - (c == 0 ? e.resistance : f.considered.front().resistance).typical;
        if (c > 0 && saved > resistance{}) e.remedy.volts_regained = saved * r.current;
        f.considered.push_back(std::move(e));
    }
    f.expected = f.considered.front().resistance;
    const double error = band_deviations * taken.spread, typical = f.expected.typical.value();
    const double low = typical - std::hypot(typical - f.expected.low.value(), error);
    const double high = typical + std::hypot(f.expected.high.value() - typical, error);
    f.within_expected = taken.ohms >= low && taken.ohms <= high;
    std::stable_sort(f.considered.begin(), f.considered.end(),
                     [](const explanation& a, const explanation& b) { return a.likelihood > b.likelihood; });
    f.basis.add(fault_search_model)
        .add(fault_rate_judgement)
        .add(failing_rate_judgement)
        .add(condition_judgement)
        .add(failing_judgement)
        .add(softening_volts_of_copper)
        .add(joint_level_judgement)
        .add(surface_state_judgement);
    constexpr double even = 0.5;
    if (static_cast<double>(f.wrong) >= even) {
        f.most_likely = fits_no_condition;
        f.likelihood = f.wrong;
        double failing = 0.0;
        for (std::size_t c = 0; c < of.size(); ++c)
            if (part.conditions[c].what.is_failing) failing += static_cast<double>(share(of[c]));
        if (failing >= stop_when_failing) {
            f.remedy.what = part.conditions.back().what.cure.words;
            f.remedy.id = part.conditions.back().what.cure.id;
            f.remedy.part = f.part;
            return f;
        }
        f.remedy.what = "read " + f.part + " again: check probe, range and name";
        f.remedy.part = f.part;
        return f;
    }
    f.most_likely = f.considered.front().condition;
    f.likelihood = f.considered.front().likelihood;
    f.remedy = f.considered.front().remedy;
    return f;
}

}  // namespace detail

[[nodiscard]] inline std::vector<finding> diagnose(const station& s, const std::vector<reading>& meter)
{
    const detail::evidence_reader reader(s, {});
    std::vector<detail::volt_reading> taken;
    for (const reading& r : meter) {
        taken.push_back(reader.taken(r, taken.size()));
        if (!taken.back().is_of_one())
            throw bad_station_error("reading across " + r.across, "a span to \"" + r.to + "\"",
                                    "one part; locate_fault() takes spans");
    }
    std::vector<finding> out;
    if (meter.empty()) return out;
    detail::states_of_parts solved(s, meter, {});
    const fault_rates rates;
    std::vector<std::pair<std::size_t, detail::part_states>> known;
    for (std::size_t i = 0; i < meter.size(); ++i) {
        const auto at = solved.current_of(meter[i]);
        if (!at)
            throw no_solution_error("station", "a loop without a settled state as described",
                                    "a station described as it should be, and the current of the reading across " +
                                        meter[i].across);
        const std::size_t p = taken[i].first;
        auto part = std::find_if(known.begin(), known.end(), [p](const auto& k) { return k.first == p; });
        if (part == known.end()) {
            known.emplace_back(p, solved.of(p, rates));
            part = known.end() - 1;
        }
        out.push_back(detail::finding_of(meter[i], taken[i], *at, part->second));
    }
    return out;
}

}  // namespace weldloop
