#pragma once
/// @file
/// How locate_fault.hpp is answered.

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <optional>
#include <string>
#include <utility>
#include <variant>
#include <vector>

#include <weldloop/circuit/station_parts.hpp>
#include <weldloop/core/error.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/text.hpp>
#include <weldloop/field/failing_part.hpp>
#include <weldloop/field/fault_inference.hpp>
#include <weldloop/field/locate_fault.hpp>
#include <weldloop/field/next_look.hpp>
#include <weldloop/field/part_evidence.hpp>
#include <weldloop/field/part_states.hpp>
#include <weldloop/field/reading_doubt.hpp>
#include <weldloop/rating/arc_heated.hpp>

namespace weldloop {

namespace detail {

class fault_finder {
public:
    fault_finder(const station& s, const std::vector<observation>& observations, const fault_search_settings& settings)
        : station_(&s), observations_(&observations), settings_(settings), reader_(s, settings.meters)
    {
        std::vector<reading> volts;
        std::vector<volt_reading> taken;
        level_wanted wanted;
        double relative = static_cast<double>(settings.meters.amps_share) / two_sided;
        for (std::size_t i = 0; i < observations.size(); ++i) {
            const auto* r = std::get_if<reading>(&observations[i]);
            const bool is_heat = std::holds_alternative<heat_observation>(observations[i]);
            wanted.with_peaks = wanted.with_peaks || is_heat;
            wanted.at_job = wanted.at_job || is_heat || std::holds_alternative<four_wire_observation>(observations[i]);
            if (r == nullptr) continue;
            volts.push_back(*r);
            taken.push_back(reader_.taken(*r, i));
            if (taken.back().ohms > 0.0) relative = std::min(relative, taken.back().spread / taken.back().ohms);
        }
        for (const likelihood rate : settings.rates.of_kind)
            require_within(static_cast<double>(rate), 0.0, most_rate, "rate of faults");
        wanted.closest = closest_for(relative);
        solved_.emplace(s, volts, wanted);
        if (solved_->currents() == 0)
            throw no_solution_error("station", "a loop without a settled state as described",
                                    "a station described as it should be: its faults are what is looked for");
        known_.most = settings.most_values;
        known_.told.resize(parts_in(s));
        is_read_.resize(parts_in(s), false);
        for (std::size_t p = 0; p < parts_in(s); ++p) known_.parts.push_back(solved_->of(p, settings.rates));
        for (std::size_t i = 0; i < observations.size(); ++i)
            std::visit([&](const auto& o) { tell(o, i); }, observations[i]);
        for (std::size_t r = 0; r < volts.size(); ++r) tell(volts[r], taken[r]);
    }

    [[nodiscard]] fault_search found() const
    {
        fault_search out;
        const fault_inference after(known_);
        out.crossing = after.crosses();
        out.none = after.none();
        for (std::size_t p = 0; p < known_.parts.size(); ++p)
            if (known_.parts[p].conditions.size() > 1) out.parts.push_back(suspected(p, after.of(p)));
        std::stable_sort(out.parts.begin(), out.parts.end(), [](const suspected_part& a, const suspected_part& b) {
            return a.probability > b.probability;
        });
        out.next = next_look(*station_, *observations_, known_, reader_, solved_->main()).most_telling(after);
        out.doubtful = reading_doubt(*observations_, known_).of(after);
        out.not_judged = not_judged_;
        for (const std::size_t i : unsettled_)
            out.doubtful.push_back({.which = i,
                                    .probability = 1.0,
                                    .what = "the reading across " +
                                            words_of_span(std::get<reading>((*observations_)[i])) +
                                            " was taken at a current at which the station as described has no settled "
                                            "state: check current and range"});
        std::sort(out.doubtful.begin(), out.doubtful.end(),
                  [](const doubtful_observation& a, const doubtful_observation& b) { return a.which < b.which; });
        out.basis.add(fault_search_model)
            .add(fault_rate_judgement)
            .add(failing_rate_judgement)
            .add(condition_judgement)
            .add(failing_judgement)
            .add(softening_volts_of_copper)
            .add(stop_when_failing_judgement)
            .add(joint_level_judgement)
            .add(usual_meters)
            .add(surface_state_judgement);
        return out;
    }

private:
    // Values of a resistance so close that readings cannot tell them apart.
    [[nodiscard]] static double closest_for(double relative)
    {
        constexpr double least = 0.002, most = 0.025, of_deviation = 1.8;
        return std::clamp(of_deviation * relative, least, most);
    }

    void tell(const reading&, std::size_t) {}
    void tell(const heat_observation& o, std::size_t which)
    {
        require_positive(o.error, "error of the temperature of " + o.part);
        const std::size_t p = reader_.number_of(o.part, "temperature of");
        if (is_heated_by_arc(weldloop::kind_of(part_at(*station_, p)))) {
            not_judged_.push_back({which, "the temperature of " + o.part +
                                              " is not judged: the arc heats it, and by how much is not reckoned"});
            return;
        }
        put(o, p, which);
    }
    template <class Observation>
    void tell(const Observation& o, std::size_t which)
    {
        put(o, reader_.number_of(o.part, "observation of"), which);
    }
    template <class Observation>
    void put(const Observation& o, std::size_t p, std::size_t which)
    {
        is_read_[p] = true;
        known_.told[p].push_back(reader_.told(o, which, known_.parts[p], *solved_));
    }
    void tell(const reading& r, volt_reading taken)
    {
        const std::optional<std::size_t> at = solved_->current_of(r);
        if (!at) {
            unsettled_.push_back(taken.which);
            return;
        }
        taken.at_current = *at;
        for (std::size_t p = taken.first; p <= taken.last; ++p) is_read_[p] = true;
        if (taken.is_of_one())
            known_.told[taken.first].push_back(evidence_reader::told(taken, known_.parts[taken.first]));
        else
            known_.spans.push_back(taken);
    }

    [[nodiscard]] suspected_part suspected(std::size_t p, const std::vector<double>& after) const
    {
        const part_states& part = known_.parts[p];
        suspected_part out;
        out.name = name_of(*station_, p);
        out.is_read = is_read_[p];
        std::vector<double> of(part.conditions.size(), 0.0), ohms(of);
        for (std::size_t i = 0; i < after.size(); ++i) {
            of[part.condition[i]] += after[i];
            ohms[part.condition[i]] += after[i] * part.ohms[solved_->main()][i];
        }
        double faults = 0.0, failing = 0.0;
        std::vector<std::pair<double, const named_cure*>> cures;
        for (std::size_t c = 1; c < of.size(); ++c) {
            faults += of[c];
            if (part.conditions[c].what.is_failing) failing += of[c];
            const named_cure& cure = part.conditions[c].what.cure;
            const auto known =
                std::find_if(cures.begin(), cures.end(), [&](const auto& k) { return k.second->words == cure.words; });
            if (known == cures.end())
                cures.emplace_back(of[c], &cure);
            else
                known->first += of[c];
        }
        std::stable_sort(cures.begin(), cures.end(), [](const auto& a, const auto& b) { return a.first > b.first; });
        out.failing = std::clamp(failing, 0.0, 1.0);
        const auto share = [&](double x) { return faults > 0.0 ? std::clamp(x / faults, 0.0, 1.0) : 0.0; };
        std::size_t best = 0;
        std::vector<std::size_t> order;
        for (std::size_t c = 1; c < of.size(); ++c) {
            order.push_back(c);
            if (part.conditions[c].what.cure.words == cures.front().second->words && (best == 0 || of[c] > of[best]))
                best = c;
        }
        std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) { return of[a] > of[b]; });
        for (const std::size_t c : order)
            out.conditions.push_back({part.conditions[c].what.condition.words, share(of[c]),
                                      part.conditions[c].what.cure.words, part.conditions[c].what.condition.id,
                                      part.conditions[c].what.cure.id});
        out.probability = std::clamp(faults, 0.0, 1.0);
        out.condition = part.conditions[best].what.condition.words;
        out.condition_id = part.conditions[best].what.condition.id;
        out.condition_share = share(of[best]);
        out.cure_share = share(cures.front().first);
        // a part that may be failing is opened first, whatever else is likelier
        const bool is_opened = may_be_failing(out) && part.conditions.back().what.is_failing;
        if (is_opened)
            std::stable_partition(cures.begin(), cures.end(), [&](const auto& k) {
                return k.second->words == part.conditions.back().what.cure.words;
            });
        out.remedy.what = cures.front().second->words;
        out.remedy.id = cures.front().second->id;
        if (cures.size() > 1 && share(cures[1].first) >= worth_a_second) {
            out.remedy.what +=
                (is_opened ? "; if it proves whole: " : "; if the drop stays: ") + cures[1].second->words;
            out.second_cure = cures[1].second->id;
        }
        out.remedy.part = out.name;
        if (!(of[best] > 0.0)) return out;
        const double saved = ohms[best] / of[best] - part.typical_ohms(solved_->main());
        if (saved > 0.0) out.remedy.volts_regained = in_si<resistance>(saved) * station_->job.current;
        return out;
    }

    static constexpr double most_rate = 0.9;
    static constexpr double worth_a_second = 0.2;  // share of a second cure that is named

    const station* station_;
    const std::vector<observation>* observations_;
    fault_search_settings settings_;
    evidence_reader reader_;
    std::optional<states_of_parts> solved_;
    fault_evidence known_;
    std::vector<bool> is_read_;
    std::vector<unused_observation> not_judged_;
    std::vector<std::size_t> unsettled_;  // numbers of observations
};

}  // namespace detail

[[nodiscard]] inline fault_search locate_fault(const station& s, const std::vector<observation>& observations,
                                               const fault_search_settings& settings)
{
    return detail::fault_finder(s, observations, settings).found();
}

}  // namespace weldloop
