#pragma once
/// @file
/// What to read, feel or look at next: what would tell most.

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
#include <weldloop/field/failing_part.hpp>
#include <weldloop/field/fault_inference.hpp>
#include <weldloop/field/fault_search.hpp>
#include <weldloop/field/part_evidence.hpp>
#include <weldloop/material/surface_state.hpp>

namespace weldloop::detail {

/// Information that more observations would give.
class next_look {
public:
    /// @param at_current which of the currents a reading would be taken at
    next_look(const station& s, const std::vector<observation>& made, const fault_evidence& known,
              const evidence_reader& reader, std::size_t at_current)
        : station_(&s), made_(&made), known_(&known), reader_(&reader), at_current_(at_current)
    {
    }

    /// Volts across a part by what they tell of whether it is at fault; of a part that likely is, or may be failing, a
    /// look by what it tells of its condition; volts across one that may be failing are not offered.
    [[nodiscard]] std::optional<next_reading> most_telling(const fault_inference& after) const
    {
        constexpr double least_bits = 1e-3, likely = 0.5;
        std::optional<next_reading> out;
        const auto offer = [&](std::size_t p, reading_quantity q, double bits) {
            if (bits > least_bits && (!out || bits > out->bits))
                out = next_reading{.across = name_of(*station_, p), .quantity = q, .bits = bits};
        };
        for (std::size_t p = 0; p < known_->parts.size(); ++p) {
            const part_states& part = known_->parts[p];
            if (part.conditions.size() < 2) continue;
            std::vector<double> of(part.conditions.size(), 0.0);
            for (std::size_t i = 0; i < part.size(); ++i) of[part.condition[i]] += after.of(p)[i];
            // what may be failing is opened, not read under current
            const bool is_stopped = part.conditions.back().what.is_failing && of.back() >= stop_when_failing;
            if (!is_stopped && !is_known(p, reading_quantity::volts))
                offer(p, reading_quantity::volts, bits_of_volts(part, after.of(p)));
            if (1.0 - of.front() < likely && !is_stopped) continue;
            for (const reading_quantity q : {reading_quantity::tightness, reading_quantity::surface,
                                             reading_quantity::strands, reading_quantity::arc})
                if (!is_known(p, q)) offer(p, q, bits_of_look(part, of, q));
        }
        return out;
    }

private:
    // Whether it was read or seen.
    [[nodiscard]] bool is_known(std::size_t p, reading_quantity q) const
    {
        return std::any_of(made_->begin(), made_->end(), [&](const observation& o) {
            if (const auto* r = std::get_if<reading>(&o))
                return q == reading_quantity::volts && place_of(*station_, r->across) == p &&
                       (r->to.empty() || r->to == r->across);
            return (q == reading_quantity::tightness && is_of<tightness_observation>(o, p)) ||
                   (q == reading_quantity::surface && is_of<surface_observation>(o, p)) ||
                   (q == reading_quantity::strands && is_of<strand_observation>(o, p)) ||
                   (q == reading_quantity::arc && is_of<arc_observation>(o, p));
        });
    }
    template <class Observation>
    [[nodiscard]] bool is_of(const observation& o, std::size_t p) const
    {
        const auto* known = std::get_if<Observation>(&o);
        return known != nullptr && place_of(*station_, known->part) == p;
    }

    // Of a usual reading across a part, on whether it is at fault: what is read falls into cells as wide as its error,
    // or as what no meter on a bench tells apart.
    [[nodiscard]] double bits_of_volts(const part_states& part, const std::vector<double>& after) const
    {
        const double amps = station_->job.current.value();
        const meters& m = reader_->used();
        const double relative = std::max(finest, std::hypot(m.volts_share, reader_->by_amps(amps)) / two_sided);
        const double floor = std::max((m.volts_floor / station_->job.current).value(), least_ohms);
        const auto cell = [&](double ohms) { return std::log((ohms + floor) / floor) / (2.0 * relative); };
        const std::vector<double>& ohms = part.ohms[at_current_];
        std::vector<std::array<double, 2>> cells(
            static_cast<std::size_t>(cell(*std::max_element(ohms.begin(), ohms.end()))) + 1, {0.0, 0.0});
        std::array<double, 2> whole{0.0, 0.0};  // as described, at fault
        for (std::size_t i = 0; i < part.size(); ++i) {
            const std::size_t is_faulty = part.condition[i] > 0 ? 1 : 0;
            cells[static_cast<std::size_t>(cell(ohms[i]))][is_faulty] += after[i];
            whole[is_faulty] += after[i];
        }
        double bits = 0.0;
        for (const std::array<double, 2>& c : cells)
            for (const std::size_t k : {0u, 1u})
                if (c[k] > 0.0) bits += c[k] * std::log2(c[k] / ((c[0] + c[1]) * whole[k]));
        return bits;
    }

    // Of a look at a part, on its condition: right in nine of ten, else any of the other answers.
    // @param of probability of each condition
    [[nodiscard]] static double bits_of_look(const part_states& part, const std::vector<double>& of, reading_quantity q)
    {
        std::vector<double> answers(q == reading_quantity::surface ? all_surface_states.size() : 2u, 0.0);
        double inverse_known = 0.0;  // entropy of the answer once the condition is known
        for (std::size_t c = 0; c < of.size(); ++c) {
            const double right = right_share(part.conditions[c], q, answers.size());
            const std::size_t answer = answer_of(part.conditions[c], part, q);
            const double others = (1.0 - right) / (static_cast<double>(answers.size()) - 1.0);
            for (std::size_t a = 0; a < answers.size(); ++a) {
                const double share = a == answer ? right : others;
                answers[a] += of[c] * share;
                inverse_known += of[c] * entropy(share);
            }
        }
        double all = 0.0;
        for (const double a : answers) all += entropy(a);
        return all - inverse_known;
    }
    [[nodiscard]] static double entropy(double p) { return p > 0.0 ? -p * std::log2(p) : 0.0; }
    // @param answers how many there are
    [[nodiscard]] static double right_share(const part_condition& c, reading_quantity q, std::size_t answers)
    {
        // of a failing part some are loose, and nothing else tells
        if (c.what.is_beyond_wear)
            return q == reading_quantity::tightness ? 1.0 - failing_loose_share : 1.0 / static_cast<double>(answers);
        return q == reading_quantity::arc && !c.what.signs.arc_unsteady ? 1.0 - otherwise_unsteady_share
                                                                        : seen_right_share;
    }
    [[nodiscard]] static std::size_t answer_of(const part_condition& c, const part_states& of, reading_quantity q)
    {
        switch (q) {
        case reading_quantity::tightness: return evidence_reader::is_loose(c.what.signs.tightness) ? 1 : 0;
        case reading_quantity::strands: return c.what.signs.strands_missing > 0.0 ? 1 : 0;
        case reading_quantity::arc: return c.what.signs.arc_unsteady ? 1 : 0;
        case reading_quantity::surface:
            return static_cast<std::size_t>(
                std::find(all_surface_states.begin(), all_surface_states.end(), evidence_reader::surface_of(c, of)) -
                all_surface_states.begin());
        case reading_quantity::volts: break;
        }
        return 0;
    }

    static constexpr double least_ohms = 1e-9;
    static constexpr double finest =
        1e-4;  // of a reading: keeps the cells of any resistance below some hundred thousand

    const station* station_;
    const std::vector<observation>* made_;
    const fault_evidence* known_;
    const evidence_reader* reader_;
    std::size_t at_current_;
};

}  // namespace weldloop::detail
