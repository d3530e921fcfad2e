#pragma once
/// @file
/// A loop held in stretches, and what a change makes of it: only the stretches it touches are solved again.

#include <algorithm>
#include <array>
#include <cstddef>
#include <memory>
#include <optional>
#include <utility>
#include <vector>

#include <weldloop/circuit/loop_scatter.hpp>
#include <weldloop/circuit/loop_state.hpp>
#include <weldloop/circuit/station.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/rating/findings.hpp>
#include <weldloop/rating/loop_stretches.hpp>
#include <weldloop/rating/remedy_change.hpp>
#include <weldloop/rating/verdict.hpp>

namespace weldloop::detail {

/// How many stretches ended how.
class outcome_count {
public:
    void add(loop_outcome o) { ++count_[static_cast<std::size_t>(o)]; }
    void take(loop_outcome o) { --count_[static_cast<std::size_t>(o)]; }
    /// Of the loop they make up.
    [[nodiscard]] loop_outcome whole() const
    {
        for (const loop_outcome o :
             {loop_outcome::open_circuit, loop_outcome::ends, loop_outcome::unstable, loop_outcome::not_settled})
            if (count_[static_cast<std::size_t>(o)] > 0) return o;
        return loop_outcome::solved;
    }

private:
    std::array<int, 5> count_{};
};

/// The loop with a change: the stretches it touches, solved anew.
struct trial {
    std::vector<std::pair<std::size_t, std::unique_ptr<solved_stretch>>> anew;
    std::vector<std::size_t> gone;
    loop_outcome typical = loop_outcome::solved;  // of the whole loop
    std::optional<loop_outcome> poor;             // the same with every joint poor, once it is asked for
    double drop = 0.0;                            // V, typical, of the whole loop
    bool melts = false;
    std::optional<current> through;  // the job's, where it is another
};

/// A loop in stretches.
class weighed_loop {
public:
    /// @param s kept by the caller; its path is sound
    weighed_loop(const station& s, std::size_t arc_at)
        : s_(s), arc_at_(arc_at), cut_(stretches_of(s, arc_at)), felt_in_(parts_in(s)), owners_(parts_in(s))
    {
        for (std::size_t k = 0; k < cut_.size(); ++k) {
            for (std::size_t i = cut_[k].from; i < cut_[k].to; ++i) felt_in_[i].push_back(k);
            for (std::size_t i = cut_[k].own_from; i < cut_[k].own_to; ++i) owners_[i].push_back(k);
            now_.push_back(solved(k, {}));
            typical_.add(now_[k]->typical());
            poor_.add(now_[k]->poor());
            drop_ += now_[k]->drop();
            melting_ += now_[k]->melts() ? 1 : 0;
        }
        for (std::size_t i = 0; i < parts_in(s); ++i) verdicts_.push_back(judged(i, nullptr));
        kinds_ = kinds_with(nullptr);
    }

    [[nodiscard]] loop_outcome outcome() const { return typical_.whole(); }
    [[nodiscard]] bool is_solved() const { return outcome() == loop_outcome::solved; }
    [[nodiscard]] double drop() const { return drop_; }
    [[nodiscard]] verdict verdict_of(std::size_t part) const { return verdicts_[part]; }
    [[nodiscard]] const std::vector<finding_kind>& findings() const { return kinds_; }
    [[nodiscard]] double drop_of(std::size_t part) const
    {
        double sum = 0.0;
        for (const std::size_t k : owners_[part]) sum += now_[k]->drop_of(part);
        return sum;
    }
    /// The stretches a part belongs to.
    [[nodiscard]] const std::vector<std::size_t>& stretches_with(std::size_t part) const { return owners_[part]; }

    /// The loop with a change, at its typical point.
    /// @param only the stretches that are asked about, or null for all it touches
    /// @param known some of these stretches with the same change, which are taken from there
    [[nodiscard]] trial with(const change& c, const std::vector<std::size_t>* only = nullptr, trial known = {}) const
    {
        trial out;
        out.through = c.current;
        outcome_count typical = typical_;
        int melting = melting_;
        out.drop = drop_;
        for (const std::size_t k : only != nullptr ? *only : touched_by(c)) {
            typical.take(now_[k]->typical());
            out.drop -= now_[k]->drop();
            melting -= now_[k]->melts() ? 1 : 0;
            if (c.removes(cut_[k].from) && !is_one_piece(s_)) {
                out.gone.push_back(k);
                continue;
            }
            const auto at = std::find_if(known.anew.begin(), known.anew.end(),
                                         [k](const auto& a) { return a.first == k && a.second != nullptr; });
            out.anew.emplace_back(k, at != known.anew.end() ? std::move(at->second) : solved(k, c));
            const solved_stretch& is = *out.anew.back().second;
            typical.add(is.typical());
            out.drop += is.drop();
            melting += is.melts() ? 1 : 0;
        }
        out.typical = typical.whole();
        out.melts = melting > 0;
        return out;
    }

    /// What becomes of the whole loop with every joint poor.
    [[nodiscard]] loop_outcome poor_with(trial& t) const
    {
        if (!t.poor) {
            outcome_count poor = poor_;
            for (const std::size_t k : t.gone) poor.take(now_[k]->poor());
            for (const auto& [k, is] : t.anew) {
                poor.take(now_[k]->poor());
                poor.add(is->poor());
            }
            t.poor = poor.whole();
        }
        return *t.poor;
    }

    /// Whether no verdict is against a part with a change; by the typical state alone where that says enough.
    [[nodiscard]] bool clears(trial& t, std::size_t part) const
    {
        for (const std::size_t k : owners_[part])
            if (at(k, &t).is_over_typically(part)) return false;
        return !is_against(*verdict_with(t, part));
    }

    /// The verdict on a part with a change; none if the part is gone.
    [[nodiscard]] std::optional<verdict> verdict_with(trial& t, std::size_t part) const
    {
        for (const std::size_t k : owners_[part])
            if (std::find(t.gone.begin(), t.gone.end(), k) != t.gone.end() || at(k, &t).removes(part))
                return std::nullopt;
        return judged(part, &t);
    }
    /// The same in the stretches of the trial alone, whatever becomes of the rest of the loop.
    [[nodiscard]] static verdict verdict_in(const trial& t, std::size_t part)
    {
        std::optional<verdict> out;
        for (const auto& [k, is] : t.anew) {
            const verdict v = is->verdict_of(part, is->typical(), is->poor());
            if (!out || gravity_of(v) > gravity_of(*out)) out = v;
        }
        return out.value_or(verdict::not_judged);
    }
    /// As clears(), in the stretches of the trial alone.
    [[nodiscard]] static bool clears_in(trial& t, std::size_t part)
    {
        for (const auto& [k, is] : t.anew)
            if (is->is_over_typically(part)) return false;
        return !is_against(verdict_in(t, part));
    }
    [[nodiscard]] std::vector<finding_kind> findings_with(trial& t) const { return kinds_with(&t); }

    /// What stops the job in the typical case of the whole loop. @param t with a change, of all stretches it touches
    [[nodiscard]] bool stops_with(const trial& t) const
    {
        if (t.typical != loop_outcome::solved || t.melts) return true;
        const loop_summary loop{.outcome = t.typical, .melts = t.melts, .drop = in_si<voltage>(t.drop)};
        std::vector<finding_kind> found =
            finding_kinds(t.through ? with_current(*t.through) : s_, loop, [](voltage) { return false; });
        if (is_one_piece(s_)) add_way_kinds(found, at(0, &t).of(), at(0, &t).state());
        return std::any_of(found.begin(), found.end(),
                           [](const finding_kind& f) { return f.severity == finding_severity::stop_job; });
    }
    /// The stretches that by themselves stop the job now.
    [[nodiscard]] std::vector<std::size_t> stopping() const
    {
        std::vector<std::size_t> out;
        for (std::size_t k = 0; k < now_.size(); ++k)
            if (now_[k]->typical() != loop_outcome::solved || now_[k]->melts()) out.push_back(k);
        return out;
    }
    /// Whether none of the stretches of a trial stops the job by itself, whatever becomes of the others.
    [[nodiscard]] static bool none_stops(const trial& t)
    {
        return std::none_of(t.anew.begin(), t.anew.end(), [](const auto& a) {
            return a.second->typical() != loop_outcome::solved || a.second->melts();
        });
    }

    /// Whether current passes a part, whether it ends the loop, and its highest temperature.
    struct part_now {
        bool conducts = true, ends = false;
        temperature peak;
        double used = 0.0;  // of a lead: share of its allowed rise
    };
    [[nodiscard]] part_now state_of(std::size_t part, const trial* t = nullptr) const
    {
        part_now out{.peak = temperature::kelvin(0.0)};
        for (const std::size_t k : owners_[part]) {
            const solved_stretch& in = at(k, t);
            if (in.removes(part)) continue;
            const part_state& p = in.state_of(part);
            out.conducts = out.conducts && p.conducts;
            out.ends = out.ends || p.passes_bound.has_value();
            out.peak = std::max(out.peak, p.peak);
            const auto* lead = std::get_if<cable>(&part_at(s_, part));
            if (lead != nullptr) out.used = std::max(out.used, in.used_by_lead(part));
        }
        return out;
    }

    /// The parts of stretches, each once.
    [[nodiscard]] std::vector<std::size_t> parts_of(const std::vector<std::size_t>& stretches) const
    {
        std::vector<std::size_t> out;
        for (const std::size_t k : stretches)
            for (std::size_t i = cut_[k].own_from; i < cut_[k].own_to; ++i) out.push_back(i);
        return once_each(std::move(out));
    }
    /// The parts of the stretches that a change touches, each once.
    [[nodiscard]] std::vector<std::size_t> parts_touched(const trial& t) const
    {
        std::vector<std::size_t> stretches = t.gone;
        for (const auto& [k, is] : t.anew) stretches.push_back(k);
        return parts_of(stretches);
    }

private:
    static std::vector<std::size_t> once_each(std::vector<std::size_t> all)
    {
        std::sort(all.begin(), all.end());
        all.erase(std::unique(all.begin(), all.end()), all.end());
        return all;
    }

    [[nodiscard]] std::vector<std::size_t> touched_by(const change& c) const
    {
        std::vector<std::size_t> out;
        if (c.is_everywhere()) {
            for (std::size_t k = 0; k < cut_.size(); ++k) out.push_back(k);
            return out;
        }
        const auto take = [&](std::size_t part) {
            out.insert(out.end(), felt_in_[part].begin(), felt_in_[part].end());
        };
        for (const part_change& p : c.parts) take(p.at);
        for (std::size_t i = c.gone_from; i < c.gone_to; ++i) take(i);
        return once_each(std::move(out));
    }

    [[nodiscard]] std::unique_ptr<solved_stretch> solved(std::size_t k, const change& c) const
    {
        const stretch& here = cut_[k];
        const solved_stretch* const like = c.duty || k >= now_.size() ? nullptr : now_[k].get();
        if (is_one_piece(s_)) {
            station whole = changed(s_, c);
            const std::size_t arc_now = arc_at_ - (c.gone_to <= arc_at_ ? c.gone_to - c.gone_from : 0);
            return std::make_unique<solved_stretch>(here, std::move(whole), arc_now, like, c.gone_from, c.gone_to);
        }
        station parts{.job = s_.job, .where = s_.where};
        const auto first = s_.path.begin();
        parts.path.assign(first + static_cast<std::ptrdiff_t>(here.from), first + static_cast<std::ptrdiff_t>(here.to));
        change own{.lay = c.lay, .duty = c.duty, .current = c.current};
        for (const part_change& p : c.parts)
            if (p.at >= here.from && p.at < here.to) own.parts.push_back({p.at - here.from, p.instead});
        apply(parts, own);
        return std::make_unique<solved_stretch>(here, std::move(parts), here.from < arc_at_ ? here.to - here.from : 0,
                                                like);
    }

    [[nodiscard]] solved_stretch& at(std::size_t k, const trial* t) const
    {
        if (t != nullptr)
            for (const auto& [which, is] : t->anew)
                if (which == k) return *is;
        return *now_[k];
    }

    // Of a lead that two stretches share, the graver one counts.
    [[nodiscard]] verdict judged(std::size_t part, trial* t) const
    {
        const loop_outcome typical = t != nullptr ? t->typical : typical_.whole(),
                           poor = t != nullptr ? poor_with(*t) : poor_.whole();
        std::optional<verdict> out;
        for (const std::size_t k : owners_[part]) {
            const verdict v = at(k, t).verdict_of(part, typical, poor);
            if (!out || gravity_of(v) > gravity_of(*out)) out = v;
        }
        return out.value_or(verdict::not_judged);
    }

    [[nodiscard]] station with_current(current through) const
    {
        station out = s_;
        out.job.current = through;
        return out;
    }

    [[nodiscard]] std::vector<finding_kind> kinds_with(trial* t) const
    {
        const loop_summary loop{.outcome = t != nullptr ? t->typical : typical_.whole(),
                                .poor = t != nullptr ? poor_with(*t) : poor_.whole(),
                                .melts = t != nullptr ? t->melts : melting_ > 0,
                                .drop = in_si<voltage>(t != nullptr ? t->drop : drop_)};
        const bool is_at_other = t != nullptr && t->through;
        std::vector<finding_kind> out =
            finding_kinds(is_at_other ? with_current(*t->through) : s_, loop, [&](voltage limit) {
                constexpr double poor_share = 0.05;
                scattered_sum drop;
                for (std::size_t k = 0; k < cut_.size(); ++k)
                    if (t == nullptr || std::find(t->gone.begin(), t->gone.end(), k) == t->gone.end())
                        drop.add(at(k, t).scattered_drop(loop.outcome, loop.poor));
                return drop.above(limit.value()) > poor_share;
            });
        if (is_one_piece(s_)) add_way_kinds(out, at(0, t).of(), at(0, t).state());
        return out;
    }

    const station& s_;
    std::size_t arc_at_;
    std::vector<stretch> cut_;
    std::vector<std::vector<std::size_t>> felt_in_,
        owners_;  // stretches of each part: solved with it; those it counts in
    std::vector<std::unique_ptr<solved_stretch>> now_;
    outcome_count typical_, poor_;
    double drop_ = 0.0;
    int melting_ = 0;
    std::vector<verdict> verdicts_;
    std::vector<finding_kind> kinds_;
};

}  // namespace weldloop::detail
