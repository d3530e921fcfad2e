#pragma once
/// @file
/// How remedies.hpp is answered.

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <iterator>
#include <map>
#include <optional>
#include <set>
#include <string>
#include <utility>
#include <variant>
#include <vector>

#include <weldloop/circuit/station.hpp>
#include <weldloop/circuit/station_parts.hpp>
#include <weldloop/core/duty_cycle.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/text.hpp>
#include <weldloop/rating/assessment.hpp>
#include <weldloop/rating/lead/sizing.hpp>
#include <weldloop/rating/lead_findings.hpp>
#include <weldloop/rating/lost_volts_body.hpp>
#include <weldloop/rating/operating_findings.hpp>
#include <weldloop/rating/remedies.hpp>
#include <weldloop/rating/remedy_change.hpp>
#include <weldloop/rating/remedy_finder.hpp>
#include <weldloop/rating/remedy_id.hpp>
#include <weldloop/rating/remedy_order.hpp>
#include <weldloop/rating/remedy_weighing.hpp>
#include <weldloop/rating/verdict.hpp>
#include <weldloop/rating/weld_statements.hpp>

namespace weldloop {

namespace detail {

/// The first place of a range for which something holds, if it holds from some place on to `last`, where it does.
template <class Holds>
[[nodiscard]] std::size_t first_place_up_to(std::size_t from, std::size_t last, const Holds& holds)
{
    while (from < last) {
        const std::size_t middle = from + (last - from) / 2;
        if (holds(middle))
            last = middle;
        else
            from = middle + 1;
    }
    return last;
}
/// The first place of a range for which something holds, if it holds from some place on to the last.
template <class Holds>
[[nodiscard]] std::optional<std::size_t> first_place(std::size_t from, std::size_t to, const Holds& holds)
{
    if (from >= to || !holds(to - 1)) return std::nullopt;
    return first_place_up_to(from, to - 1, holds);
}
/// The same. @param guess where it may be; it is looked for at the next place, or downwards in steps that grow
template <class Holds>
[[nodiscard]] std::optional<std::size_t> first_place(std::size_t from, std::size_t to, const Holds& holds,
                                                     std::size_t guess)
{
    if (from >= to) return std::nullopt;
    std::size_t found = std::clamp(guess, from, to - 1);
    if (!holds(found)) {
        ++found;  // a guess is seldom short by more
        return found < to && holds(found) ? found : first_place(found + 1, to, holds);
    }
    for (std::size_t step = 1; found > from; step *= 2) {
        const std::size_t at = found - std::min(step, found - from);
        if (!holds(at)) return first_place_up_to(at + 1, found, holds);
        found = at;
    }
    return found;
}

class remedy_search {
public:
    explicit remedy_search(const station& s) : s_(s), arc_at_(checked_arc_index(s)), loop_(s, arc_at_)
    {
        if (!s.supply) return;
        whole_ = loop_solver(s).solve(scatter::typical, &settled_);
        if (whole_.outcome != loop_outcome::open_circuit) at_arc_ = findings_at_arc_from(s, whole_, &settled_);
        if (whole_.is_solved()) inductive_ = inductive_statements_of(s, whole_);
    }

    [[nodiscard]] std::vector<remedy> operator()()
    {
        for (change& c : changes_for(s_)) weigh(std::move(c), true);
        // a stray way is taken out, never made fit to carry current
        for (std::size_t i = 0; i < parts_in(s_); ++i)
            if (!is_stray(s_, i)) look_for_larger(i);
        if (takes_too_much() && !one_lead_does_) larger_leads_on_both_sides();
        larger_leads_for_the_arc();
        raise_the_setting();
        weld_less();
        together();
        for (std::size_t i = 0; i < parts_in(s_); ++i)
            if (!is_stray(s_, i) && is_against(loop_.verdict_of(i)) && !is_cleared(i, remedy_effort::weld_less))
                remark(i, no_step(i));
        for (const auto& [part, largest] : too_small_)
            if (!is_cleared(part, remedy_effort::replace))
                remark(part, "No larger make of " + name(part) + ", up to " + largest.label +
                                 ", takes the verdict from it by itself: " + words_of_largest(largest) + ".");
        find_moot(s_, steps_);
        put_in_order(steps_);
        std::vector<remedy> out;
        for (step& s : steps_) out.push_back(std::move(s.says));
        return out;
    }

private:
    [[nodiscard]] std::string name(std::size_t part) const { return name_of(s_, part); }
    [[nodiscard]] double allowed() const { return s_.allowed_drop.value_or(usual_allowed_drop).value(); }
    [[nodiscard]] bool takes_too_much() const { return loop_.is_solved() && loop_.drop() > allowed(); }

    template <class Finding>
    [[nodiscard]] static bool has(const std::vector<Finding>& all, finding_id id)
    {
        return std::any_of(all.begin(), all.end(), [id](const Finding& f) { return f.id == id; });
    }
    // Where supply, loop and arc meet is solved anew only for what leaves the arc more volts, or asks for less current.
    [[nodiscard]] bool may_help_the_arc(const change& c, const trial& t) const
    {
        if (changes_inductance(c)) return t.typical == loop_outcome::solved;
        constexpr double least = 1e-3;  // V
        return t.typical == loop_outcome::solved && (!loop_.is_solved() || c.current || t.drop < loop_.drop() - least);
    }

    [[nodiscard]] static bool changes_inductance(const change& c)
    {
        return c.id == remedy_id::off_steel || c.id == remedy_id::straight_lead;
    }
    [[nodiscard]] static std::vector<weld_id> inductive_statements_of(const station& s, const loop_state& loop)
    {
        if ((!s.job.course || s.job.course->is_dc()) && share_of_start(s) < weld_limit::start) return {};
        const operating_point p = operating_point_from(s, scatter::typical, {&loop, nullptr, false});
        return inductive_statements(s, loop, p.is_found() ? &p : nullptr);
    }
    // The statements on the weld that are gone with less inductance; the loop's drop is that of the trial.
    [[nodiscard]] std::vector<weld_id> weld_cleared_by(const change& c, const trial& t) const
    {
        std::vector<weld_id> out;
        if (inductive_.empty() || !changes_inductance(c) || t.typical != loop_outcome::solved) return out;
        loop_state loop = whole_;
        loop.total_drop = in_si<voltage>(t.drop);
        const std::vector<weld_id> left = inductive_statements_of(changed(s_, c), loop);
        std::copy_if(inductive_.begin(), inductive_.end(), std::back_inserter(out),
                     [&left](weld_id id) { return std::find(left.begin(), left.end(), id) == left.end(); });
        return out;
    }

    // What supply, loop and arc are found to make of each other with a change; where their point rests on the drop
    // alone, that of the trial.
    [[nodiscard]] std::vector<loop_finding> at_arc_with(const change& c, const trial& t) const
    {
        const station after = changed(s_, c);
        const bool is_direct = !s_.job.course || s_.job.course->is_dc();
        if (is_direct && t.typical == loop_outcome::solved && rests_on_job_drop(after)) {
            loop_state loop;
            loop.outcome = loop_outcome::solved;
            loop.total_drop = in_si<voltage>(t.drop);
            return findings_at_arc_from(after, loop, nullptr);
        }
        return findings_at_arc(after, c.duty || !whole_.is_solved() ? nullptr : &settled_);
    }

    [[nodiscard]] bool is_cleared(std::size_t part, remedy_effort most) const
    {
        const auto at = cleared_with_.find(part);
        return at != cleared_with_.end() && at->second <= most;
    }

    // ---- weighing

    void weigh(change c, bool from_the_part) { weigh(c, loop_.with(c), from_the_part, false); }

    void weigh(change c, trial t, bool from_the_part, bool is_summary)
    {
        if (!is_summary && loop_.is_solved() && t.typical != loop_outcome::solved) return;
        step made{.from_the_part = from_the_part};
        remedy& r = made.says;
        r.what = c.what;
        r.part = name(c.part);
        r.id = c.id;
        r.effort = c.effort;
        r.is_summary = is_summary;
        if (!loop_.findings().empty()) {
            const std::vector<finding_kind> after = loop_.findings_with(t);
            for (const finding_kind& f : loop_.findings()) {
                if (std::any_of(after.begin(), after.end(), [&](const finding_kind& a) { return a.id == f.id; }))
                    continue;
                r.clears_findings.push_back(f.id);
                made.lifts_stop = made.lifts_stop || f.severity == finding_severity::stop_job;
            }
        }
        if (!at_arc_.empty() && may_help_the_arc(c, t)) {
            const std::vector<loop_finding> after = at_arc_with(c, t);
            for (const loop_finding& f : at_arc_) {
                if (has(after, f.id)) continue;
                r.clears_findings.push_back(f.id);
                made.lifts_stop = made.lifts_stop || f.severity == finding_severity::stop_job;
            }
        }
        r.clears_weld = weld_cleared_by(c, t);
        // one lead or stray way of several leaves the finding of the others
        if (c.id == remedy_id::whole_covering) {
            made.lifts_stop = true;
            for (const finding_id id : {finding_id::covering_damaged, finding_id::covering_wet})
                if (has_covering_finding(s_, id) && !has_covering_finding(changed(s_, c), id))
                    r.clears_findings.push_back(id);
        }
        if (c.removes(c.part) && c.part >= s_.path.size()) made.lifts_stop = true;
        const verdict own_before = loop_.verdict_of(c.part);
        r.verdict_before = own_before;
        for (const std::size_t i : loop_.parts_touched(t)) {
            const verdict before = loop_.verdict_of(i);
            if (!is_against(before)) continue;
            const std::optional<verdict> then = loop_.verdict_with(t, i);
            const bool melted = before >= verdict::spots_melting;
            made.lifts_stop = made.lifts_stop || (melted && (!then || *then < verdict::spots_melting));
            if (then && is_against(*then)) continue;
            r.clears_parts.push_back(name(i));
            if (i == c.part) r.clears_verdict = true;
        }
        const weighed_loop::part_now was = loop_.state_of(c.part);
        const weighed_loop::part_now is =
            c.removes(c.part) ? weighed_loop::part_now{.peak = s_.where.air} : loop_.state_of(c.part, &t);
        r.restores_circuit = (!was.conducts && is.conducts) || (was.ends && t.typical == loop_outcome::solved);
        made.lifts_stop = made.lifts_stop || r.restores_circuit;
        if (loop_.is_solved() && t.typical == loop_outcome::solved) {
            r.volts_regained = in_si<voltage>(loop_.drop() - t.drop);
            r.cooled_by = was.peak - is.peak;  // a removed part cools to the air
        }
        const bool clears =
            made.lifts_stop || !r.clears_parts.empty() || !r.clears_findings.empty() || !r.clears_weld.empty();
        const bool regains =
            c.for_its_hold || (!c.only_to_cure && (r.volts_regained >= least_regain || r.cooled_by >= least_cooling));
        if (!clears && !regains && !is_summary && gravity_of(own_before) == 0) return;
        r.verdict_after = loop_.verdict_with(t, c.part);
        const bool eases = r.verdict_after && gravity_of(*r.verdict_after) < gravity_of(own_before);
        if (!clears && !eases && !regains && !is_summary) return;
        if (!is_summary)
            for (const std::size_t i : loop_.parts_touched(t)) note_cleared(i, r);
        if (!is_summary) steps_at_[c.part].push_back(steps_.size());
        made.how = std::move(c);
        steps_.push_back(std::move(made));
    }
    void note_cleared(std::size_t part, const remedy& r)
    {
        if (!is_against(loop_.verdict_of(part))) return;
        if (std::find(r.clears_parts.begin(), r.clears_parts.end(), name(part)) == r.clears_parts.end()) return;
        const auto [at, is_new] = cleared_with_.emplace(part, r.effort);
        if (!is_new) at->second = std::min(at->second, r.effort);
    }

    // ---- larger parts

    void look_for_larger(std::size_t part)
    {
        const bool hot = is_against(loop_.verdict_of(part));
        const bool is_lead = std::holds_alternative<cable>(part_at(s_, part));
        const bool short_of_volts = is_lead && takes_too_much();
        if (!hot && !short_of_volts) return;
        ladder larger = change_finder(s_, part).larger(part_at(s_, part));
        if (larger.rungs.empty()) return;
        std::optional<std::size_t> rung;
        std::map<std::size_t, trial> tried;
        if (short_of_volts) rung = smallest(part, larger, hot, true, tried);
        if (rung) one_lead_does_ = true;
        if (!rung && hot) {
            rung = smallest(part, larger, true, false, tried);
            if (!rung) {
                trial& t = once(tried, larger.rungs.size() - 1,
                                [&] { return to_rung(part, larger, larger.rungs.size() - 1); });
                too_small_[part] = {larger.rungs.back().label, *loop_.verdict_with(t, part)};
                return;
            }
        }
        if (!rung) return;
        change c = to_rung(part, larger, *rung);
        trial t = std::move(once(tried, *rung, [&] { return c; }));
        weigh(std::move(c), std::move(t), false, false);
    }

    // What is left with the largest make, as far as it was reckoned.
    struct largest_make {
        std::string label;
        verdict then = verdict::over_limit;
    };
    [[nodiscard]] static std::string words_of_largest(const largest_make& m)
    {
        switch (m.then) {
        case verdict::close_to_limit: return "with that it is typically within its limits, but still close to one";
        case verdict::may_exceed:
            return "with that it is typically within its limits, but not where the connections are poor";
        case verdict::over_limit:
            return "with that it is typically still over a limit, by what lies beside it or around it, or by the "
                   "current itself";
        case verdict::spots_melting: return "with that its contact spots typically still melt";
        case verdict::open_circuit: return "with that no current passes it either";
        case verdict::within_limit:
        case verdict::not_judged: break;
        }
        return "a make between does no better";
    }

    [[nodiscard]] static change to_rung(std::size_t part, const ladder& larger, std::size_t k)
    {
        return {.what = larger.opening + larger.rungs[k].label,
                .part = part,
                .parts = {{part, larger.rungs[k].part}},
                .only_to_cure = !std::holds_alternative<cable>(larger.rungs[k].part)};
    }

    // A trial of the typical state, made once.
    template <class Made>
    trial& once(std::map<std::size_t, trial>& tried, std::size_t k, const Made& made) const
    {
        const auto at = tried.find(k);
        return at != tried.end() ? at->second : tried.emplace(k, loop_.with(made())).first->second;
    }

    // The smallest make that leaves no verdict against the part, and that brings the loop within its allowed drop.
    [[nodiscard]] std::optional<std::size_t> smallest(std::size_t part, const ladder& larger, bool cool, bool drop,
                                                      std::map<std::size_t, trial>& tried) const
    {
        if (drop && loop_.drop() - loop_.drop_of(part) > allowed()) return std::nullopt;
        const std::size_t all = larger.rungs.size();
        const auto with = [&](std::size_t k) -> trial& {
            return once(tried, k, [&] { return to_rung(part, larger, k); });
        };
        std::size_t from = 0;
        if (std::holds_alternative<cable>(part_at(s_, part))) {  // the typical state first: it costs little
            const auto may_do = [&](std::size_t k) {
                const trial& t = with(k);
                if (drop && !(t.typical == loop_outcome::solved && t.drop <= allowed())) return false;
                const weighed_loop::part_now is = loop_.state_of(part, &t);
                return !is.ends && (!cool || is.used <= close_share);
            };
            const std::optional<std::size_t> first = first_place(0, all, may_do);
            if (!first || !cool) return first;
            from = *first;
        }
        const auto does = [&](std::size_t k) {
            trial& t = with(k);
            return (!drop || t.drop <= allowed()) && loop_.clears(t, part);
        };
        if (does(from)) return from;
        return first_place(from + 1, all, does);
    }

    // The leads that take most on either side of the arc, and the sizes larger than one of them.
    struct lead_pair {
        std::array<std::size_t, 2> at{};
        std::vector<conductor_size> sizes;
    };
    [[nodiscard]] std::optional<lead_pair> leads_on_both_sides() const
    {
        std::array<std::optional<std::size_t>, 2> most;
        for (std::size_t i = 0; i < s_.path.size(); ++i) {
            if (!std::holds_alternative<cable>(s_.path[i])) continue;
            std::optional<std::size_t>& side = most[i < arc_at_ ? 0 : 1];
            if (!side || loop_.drop_of(i) > loop_.drop_of(*side)) side = i;
        }
        if (!most[0] || !most[1]) return std::nullopt;
        lead_pair out{{*most[0], *most[1]}, {}};
        for (const conductor_size& size : sizes_of(family_of(lead_at(out.at[0]).size)))
            if (size > lead_at(out.at[0]).size || size > lead_at(out.at[1]).size) out.sizes.push_back(size);
        return out;
    }
    [[nodiscard]] const cable& lead_at(std::size_t part) const { return std::get<cable>(s_.path[part]); }
    // Both of at least a size.
    [[nodiscard]] change both_of(const lead_pair& pair, const conductor_size& least) const
    {
        const auto grown = [&](const cable& was) {
            if (was.size >= least) return was;
            for (const conductor_size& size : sizes_of(family_of(was.size)))
                if (size >= least) return resized(was, size);
            return resized(was, sizes_of(family_of(was.size)).back());
        };
        change c{.id = remedy_id::larger_leads,
                 .part = pair.at[loop_.drop_of(pair.at[0]) > loop_.drop_of(pair.at[1]) ? 0 : 1]};
        for (const std::size_t part : pair.at) {
            const cable &was = lead_at(part), now = grown(was);
            if (now.size == was.size) continue;
            c.what += (c.what.empty() ? "replace " : " and ") + name(part) + " (" + to_text(was.size) + ") by " +
                      to_text(now.size);
            c.parts.push_back({part, now});
            std::get<cable>(c.parts.back().instead).name = name(part);
        }
        return c;
    }

    // Where no lead alone brings the loop within its allowed drop: the one that takes most on either side of the arc,
    // both to at least the same size.
    void larger_leads_on_both_sides()
    {
        const std::optional<lead_pair> found = leads_on_both_sides();
        if (!found) return;
        const std::array<std::size_t, 2>& pair = found->at;
        const std::vector<conductor_size>& sizes = found->sizes;
        const auto both = [&](std::size_t k) { return both_of(*found, sizes[k]); };
        std::map<std::size_t, trial> tried;
        const auto with = [&](std::size_t k) -> trial& { return once(tried, k, [&] { return both(k); }); };
        const auto does = [&](std::size_t k) {
            return with(k).typical == loop_outcome::solved && with(k).drop <= allowed();
        };
        const auto may_cool = [&](std::size_t k) {
            return std::all_of(pair.begin(), pair.end(),
                               [&](std::size_t i) { return loop_.state_of(i, &with(k)).used <= close_share; });
        };
        const auto cools = [&](std::size_t k) {
            return std::all_of(pair.begin(), pair.end(), [&](std::size_t i) { return loop_.clears(with(k), i); });
        };
        // as if the resistance of the two alone changed
        const auto would_do = [&](std::size_t k) {
            double drop = loop_.drop();
            for (const part_change& p : both(k).parts)
                drop -= loop_.drop_of(p.at) * (1.0 - static_cast<double>(std::get<cable>(s_.path[p.at]).size.area() /
                                                                         std::get<cable>(p.instead).size.area()));
            return drop <= allowed();
        };
        const std::size_t guess = first_place(0, sizes.size(), would_do).value_or(sizes.size());
        if (const auto enough = first_place(0, sizes.size(), does, guess)) {
            std::size_t k = *enough;
            if (is_against(loop_.verdict_of(pair[0])) || is_against(loop_.verdict_of(pair[1])))
                if (const auto cool = first_place(k, sizes.size(), may_cool))
                    k = cools(*cool) ? *cool : first_place(*cool + 1, sizes.size(), cools).value_or(k);
            weigh(both(k), std::move(with(k)), false, false);
            return;
        }
        if (sizes.empty()) return;
        const change largest = both(sizes.size() - 1);
        const trial& t = with(sizes.size() - 1);
        if (t.typical != loop_outcome::solved) return;
        remark(largest.part, "No larger leads bring the loop within " + to_text(in_si<voltage>(allowed()), "V") +
                                 ": with " + name(pair[0]) + " and " + name(pair[1]) + " of at least " +
                                 to_text(sizes.back()) + " it would typically still take " +
                                 to_text(in_si<voltage>(t.drop), "V") + ".");
    }

    // ---- supply, loop and arc

    // Where supply, loop and arc do not meet as the job asks: the smallest larger lead with which they do, else both.
    void larger_leads_for_the_arc()
    {
        std::vector<finding_id> wanted;
        for (const loop_finding& f : at_arc_) wanted.push_back(f.id);
        if (has(loop_.findings(), finding_id::supply_cannot_hold_arc))
            wanted.push_back(finding_id::supply_cannot_hold_arc);
        const auto all_in = [&](const std::vector<finding_id>& cleared) {
            return std::all_of(wanted.begin(), wanted.end(), [&](finding_id id) {
                return std::find(cleared.begin(), cleared.end(), id) != cleared.end();
            });
        };
        if (wanted.empty() || loop_.outcome() == loop_outcome::open_circuit ||
            std::any_of(steps_.begin(), steps_.end(), [&](const step& s) { return all_in(s.says.clears_findings); }))
            return;
        const auto clears_all = [&](const change& c) {
            trial t = loop_.with(c);
            if (t.typical != loop_outcome::solved) return false;
            const std::vector<finding_kind> loop = loop_.findings_with(t);
            const std::vector<loop_finding> arc = at_arc_with(c, t);
            return std::none_of(wanted.begin(), wanted.end(),
                                [&](finding_id id) { return has(loop, id) || has(arc, id); });
        };
        bool one_does = false;
        std::optional<change> largest;
        for (std::size_t i = 0; i < s_.path.size(); ++i) {
            if (!std::holds_alternative<cable>(s_.path[i])) continue;
            const ladder larger = change_finder(s_, i).larger(s_.path[i]);
            const auto made = [&](std::size_t k) { return to_rung(i, larger, k); };
            const std::size_t all = larger.rungs.size();
            if (all == 0) continue;
            if (!largest || loop_.drop_of(i) > loop_.drop_of(largest->part)) largest = made(all - 1);
            if (const auto k = first_place(0, all, [&](std::size_t n) { return clears_all(made(n)); })) {
                weigh(made(*k), false);
                one_does = true;
            }
        }
        if (one_does) return;
        if (const std::optional<lead_pair> pair = leads_on_both_sides(); pair && !pair->sizes.empty()) {
            const auto made = [&](std::size_t k) { return both_of(*pair, pair->sizes[k]); };
            const std::size_t all = pair->sizes.size();
            if (const auto k = first_place(0, all, [&](std::size_t n) { return clears_all(made(n)); }))
                return weigh(made(*k), false);
            largest = made(all - 1);
        }
        if (!largest) return;
        const std::vector<loop_finding> still = at_arc_with(*largest, loop_.with(*largest));
        remark(largest->part,
               "No larger leads by themselves put right what supply, loop and arc make of each other. The "
               "largest that were tried (" +
                   largest->what + ") leave this: " +
                   (still.empty() ? "the supply typically cannot hold the arc at the job's current."
                                  : still.front().text));
    }

    // The setting of a supply that keeps its voltage, higher by what leads and joints take.
    void raise_the_setting()
    {
        if (!s_.supply || s_.supply->kind != supply_kind::constant_voltage || at_arc_.empty()) return;
        const operating_point p = operating_point_from(s_, scatter::typical, known());
        if (!p.is_found() || !(p.lost().value() > 0.0)) return;
        station set = s_;
        set.supply->setting += p.lost();
        const std::vector<loop_finding> after = findings_at_arc_from(set, whole_, &settled_);
        step made{.how = {.part = largest_drop(), .effort = remedy_effort::raise_volts}};
        remedy& r = made.says;
        for (const loop_finding& f : at_arc_)
            if (!has(after, f.id)) r.clears_findings.push_back(f.id);
        if (r.clears_findings.empty()) return;
        r.what = "set the supply to " + to_text(set.supply->setting, "V") + " (now " +
                 to_text(s_.supply->setting, "V") + "), if it goes that high: what leads and joints take, " +
                 to_text(p.lost(), "V") + ", is given back, and they go on taking it; " + cost_of_setting(p);
        r.part = "supply";
        r.id = remedy_id::higher_setting;
        r.effort = remedy_effort::raise_volts;
        steps_.push_back(std::move(made));
    }
    [[nodiscard]] known_loop known() const { return {&whole_, &settled_}; }
    [[nodiscard]] std::size_t largest_drop() const
    {
        std::size_t out = 0;
        for (std::size_t i = 0; i < s_.path.size(); ++i)
            if (loop_.drop_of(i) > loop_.drop_of(out)) out = i;
        return out;
    }
    // What a higher setting makes of the parts.
    [[nodiscard]] std::string cost_of_setting(const operating_point& p) const
    {
        const std::string held = "as long as the wire's feed holds the current, no part gets hotter for it";
        if (!(p.lost() < arc_line_of(s_).at_no_length)) return held;
        const lost_volts cost = cost_of_lost_volts_from(s_, p.lost(), known());
        if (cost.outcome != operating_outcome::found || cost.parts.empty()) return held;
        const auto rise = [](const part_at_setting& a) { return (a.peak_then - a.peak_now).value(); };
        const part_at_setting& most =
            *std::max_element(cost.parts.begin(), cost.parts.end(),
                              [&](const part_at_setting& a, const part_at_setting& b) { return rise(a) < rise(b); });
        const std::string more = "at the same length of the arc the current would typically be " +
                                 to_text(cost.current_without, "A") + " instead of " + to_text(cost.current_now, "A") +
                                 ", every part hotter, " + most.name + " by " +
                                 to_text(temperature_difference(most.peak_then - most.peak_now), "K");
        return p.held == arc_hold::wire_feed ? held + "; " + more : more;
    }

    // ---- rest, and less current

    // As a dial is set: in fives, below 50 A in ones; down, but for what rounding takes from a whole number.
    static double dial_amps(double share)
    {
        constexpr double fives_from = 50.0, five = 5.0, rounding = 1e-9;
        const double amps = share * (1.0 + rounding);
        return amps >= fives_from ? five * std::floor(amps / five)
                                  : std::max(std::floor(amps), share < 1.0 ? share : 1.0);
    }

    // Whether nothing that stops the job is left with a change, in the whole loop.
    [[nodiscard]] bool is_harmless(const change& c) const
    {
        const trial t = loop_.with(c);
        if (loop_.stops_with(t)) return false;
        const auto stops = [](const loop_finding& f) { return f.severity == finding_severity::stop_job; };
        if (std::none_of(at_arc_.begin(), at_arc_.end(), stops)) return true;
        const std::vector<loop_finding> after = at_arc_with(c, t);
        return std::none_of(after.begin(), after.end(), stops);
    }
    // Whether what stops the job now does not with a change: by the stretches alone that do.
    [[nodiscard]] bool may_be_harmless(const change& c) const
    {
        const std::vector<std::size_t> now = loop_.stopping();
        return now.empty() || weighed_loop::none_stops(loop_.with(c, &now));
    }
    // The first place from one on with which the loop is harmless. @param place from where on; the one found
    template <class Made>
    [[nodiscard]] bool find_harmless(std::size_t& place, std::size_t all, const Made& made) const
    {
        const auto may_be = [&](std::size_t k) { return may_be_harmless(made(k)); };
        if (!may_be(place)) {
            const std::optional<std::size_t> from = first_place(place + 1, all, may_be);
            if (!from) return false;
            place = *from;
        }
        const auto is = [&](std::size_t k) { return is_harmless(made(k)); };
        if (is(place)) return true;
        const std::optional<std::size_t> found = first_place(place + 1, all, is);
        if (found) place = *found;
        return found.has_value();
    }

    // Whether something stops the job that less current does not change.
    [[nodiscard]] bool is_stopped_at_any_current() const
    {
        if (has_covering_finding(s_, finding_id::covering_damaged) ||
            has_covering_finding(s_, finding_id::covering_wet))
            return true;
        constexpr std::array of_current{finding_id::open_circuit, finding_id::no_steady_state, finding_id::spots_melt,
                                        finding_id::supply_cannot_hold_arc, finding_id::sharing_unstable};
        const std::vector<finding_kind>& now = loop_.findings();
        return std::any_of(now.begin(), now.end(), [&](const finding_kind& f) {
            return f.severity == finding_severity::stop_job &&
                   std::find(of_current.begin(), of_current.end(), f.id) == of_current.end();
        });
    }

    // For the parts that nothing short of buying cures: what helps at once.
    void weld_less()
    {
        if (loop_.outcome() == loop_outcome::open_circuit) return;
        stays_stopped_ = is_stopped_at_any_current();
        if (stays_stopped_) return;
        constexpr double step_of_duty = 0.05, step_of_current = 0.05, least_current = 0.20;  // shares
        const double share = static_cast<double>(s_.job.duty.share());
        const auto rests = static_cast<std::size_t>(std::ceil(share / step_of_duty - 1e-9)) - 1;
        const auto at_duty = [&](std::size_t k) {  // from long to short
            const duration on = step_of_duty * static_cast<double>(rests - k) * s_.job.duty.period();
            return change{.id = remedy_id::longer_rest,
                          .effort = remedy_effort::weld_less,
                          .duty = duty_cycle::of(on, s_.job.duty.period())};
        };
        const auto lower = static_cast<std::size_t>((1.0 - least_current) / step_of_current + 1e-9);
        const auto at_current = [&](std::size_t k) {
            const double left = 1.0 - step_of_current * static_cast<double>(k + 1);
            return change{.id = remedy_id::less_current,
                          .effort = remedy_effort::weld_less,
                          .current = in_si<current>(dial_amps(left * s_.job.current.value()))};
        };
        // where to look first: two thirds of the heat
        constexpr double usual_heat = 2.0 / 3.0;
        const auto place_of = [](double steps) { return static_cast<std::size_t>(std::max(0.0, std::floor(steps))); };
        const std::size_t usual_rest = place_of(static_cast<double>(rests) - usual_heat * share / step_of_duty),
                          usual_lower = place_of((1.0 - std::sqrt(usual_heat)) / step_of_current - 1.0);
        // stretch and place, each tried once while its parts are looked at
        std::map<std::pair<std::size_t, std::size_t>, trial> at_rest, at_less;
        const auto cures = [&](auto& tried, std::size_t part, std::size_t k, const auto& made) {
            const std::vector<std::size_t>& own = loop_.stretches_with(part);
            std::erase_if(tried, [&](const auto& t) { return t.first.first < own.front(); });
            return std::all_of(own.begin(), own.end(), [&](std::size_t stretch) {
                auto at = tried.find({stretch, k});
                if (at == tried.end()) {
                    const std::vector<std::size_t> only{stretch};
                    at = tried.emplace(std::pair{stretch, k}, loop_.with(made(k), &only)).first;
                }
                return loop_.clears_in(at->second, part);
            });
        };
        struct pool {
            std::vector<std::size_t> parts;
            std::size_t place = 0;
            bool has_place = false;
        } resting, lowered;
        // what is offered to go on with leaves nothing that stops the job, whatever part that is in: there a pool
        // begins
        const auto begin = [&](pool& p, std::size_t all, const auto& made) {
            if (loop_.stopping().empty()) return all > 0;
            const auto from = first_place(0, all, [&](std::size_t k) { return may_be_harmless(made(k)); });
            p.has_place = from.has_value();
            p.place = from.value_or(0);
            return p.has_place;
        };
        // the place that others need does for most
        const auto take_in = [&](pool& p, std::size_t part, std::size_t all, const auto& holds, std::size_t guess) {
            const std::optional<std::size_t> k = !p.has_place     ? first_place(0, all, holds, guess)
                                                 : holds(p.place) ? std::optional<std::size_t>(p.place)
                                                                  : first_place(p.place + 1, all, holds);
            if (!k) return false;
            p.parts.push_back(part);
            p.place = *k;
            p.has_place = true;
            return true;
        };
        const bool may_rest = begin(resting, rests, at_duty), may_lower = begin(lowered, lower, at_current);
        const auto lower_for = [&](std::size_t part) {
            if (may_lower)
                static_cast<void>(take_in(
                    lowered, part, lower, [&](std::size_t k) { return cures(at_less, part, k, at_current); },
                    usual_lower));
        };
        for (std::size_t i = 0; i < parts_in(s_); ++i) {
            if (is_stray(s_, i) || !is_against(loop_.verdict_of(i)) || is_cleared(i, remedy_effort::re_terminate))
                continue;
            const auto rested = [&](std::size_t k) { return cures(at_rest, i, k, at_duty); };
            if (!may_rest || !take_in(resting, i, rests, rested, usual_rest)) lower_for(i);
        }
        const auto offer = [&](const pool& p, auto& tried, change c, const std::string& what) {
            trial known;
            for (auto& [at, t] : tried)
                if (at.second == p.place) std::move(t.anew.begin(), t.anew.end(), std::back_inserter(known.anew));
            c.part = p.parts.front();
            c.only_to_cure = true;
            c.what = what + ", until something is done about ";
            constexpr std::size_t most_named = 6;
            for (std::size_t i = 0; i < std::min(p.parts.size(), most_named); ++i)
                c.what += (i == 0 ? "" : ", ") + name(p.parts[i]);
            if (p.parts.size() > most_named) c.what += " and others";
            trial t = loop_.with(c, nullptr, std::move(known));
            c.what += words_of_left(t);
            weigh(std::move(c), std::move(t), false, false);
        };
        if (!resting.parts.empty() && !find_harmless(resting.place, rests, at_duty)) {
            for (const std::size_t i : resting.parts) lower_for(i);
            resting.parts.clear();
        }
        if (!lowered.parts.empty() && !find_harmless(lowered.place, lower, at_current)) lowered.parts.clear();
        if (!resting.parts.empty()) {
            change c = at_duty(resting.place);
            const std::string what = "rest longer: weld at most " + to_text(c.duty->on(), "min") + " in every " +
                                     to_text(c.duty->period(), "min") + " (now " + to_text(s_.job.duty.on(), "min") +
                                     ")";
            offer(resting, at_rest, std::move(c), what);
        }
        if (!lowered.parts.empty()) {
            change c = at_current(lowered.place);
            const std::string what =
                "weld with at most " + to_text(*c.current, "A") + " (now " + to_text(s_.job.current, "A") + ")";
            offer(lowered, at_less, std::move(c), what);
        }
    }

    // What is still over a limit while less is welded: it has steps of its own.
    [[nodiscard]] std::string words_of_left(trial& t) const
    {
        std::string names;
        for (std::size_t i = 0; i < parts_in(s_); ++i) {
            if (is_stray(s_, i) || gravity_of(loop_.verdict_of(i)) < gravity_of(verdict::over_limit)) continue;
            const std::optional<verdict> then = loop_.verdict_with(t, i);
            if (then && gravity_of(*then) >= gravity_of(verdict::over_limit))
                names += (names.empty() ? "" : ", ") + name(i);
        }
        return names.empty() ? names : "; it does not bring " + names + " within limits";
    }

    // ---- all cleaning and tightening

    void together()
    {
        std::set<std::size_t> places;
        std::size_t cleaned = 0, tightened = 0;
        // a wet lead is out of use until it is dry: nothing that is done together with others
        const auto belongs = [](const change& c) {
            return c.effort <= remedy_effort::clean && c.id != remedy_id::whole_covering;
        };
        for (const step& s : steps_)
            if (s.from_the_part && belongs(s.how)) {
                places.insert(s.how.part);
                ++(s.how.effort == remedy_effort::clean ? cleaned : tightened);
            }
        if (cleaned + tightened < 2) return;
        change all{.id = remedy_id::all_by_hand,
                   .part = *places.begin(),
                   .effort = cleaned == 0 ? remedy_effort::tighten : remedy_effort::clean};
        for (const std::size_t i : places) {
            path_part part = part_at(s_, i);
            constexpr int most_steps = 4;  // of one part
            for (int n = 0; n < most_steps; ++n) {
                std::vector<change> left = change_finder(s_, i).changes(part);
                const auto next = std::find_if(left.begin(), left.end(), belongs);
                if (next == left.end()) break;
                part = std::move(next->parts.front().instead);
            }
            all.parts.push_back({i, std::move(part)});
        }
        const std::string work = cleaned == 0     ? "all tightening"
                                 : tightened == 0 ? "all cleaning"
                                                  : "all cleaning and tightening";
        all.what = work + " together (" + std::to_string(cleaned + tightened) + " steps): ";
        for (const std::size_t i : places) all.what += (i == *places.begin() ? "" : ", ") + name(i);
        trial t = loop_.with(all);
        weigh(std::move(all), std::move(t), false, true);
    }

    // ---- sentences

    void remark(std::size_t part, std::string words)
    {
        step made;
        made.how.part = part;
        made.says.what = std::move(words);
        made.says.part = name(part);
        made.says.id = remedy_id::remark;
        made.says.effort = remedy_effort::replace;
        made.says.verdict_before = made.says.verdict_after = loop_.verdict_of(part);
        made.says.is_remark = true;
        steps_.push_back(std::move(made));
    }
    [[nodiscard]] std::string no_step(std::size_t part) const
    {
        const std::string who = name(part) + " (" + std::string(to_text(loop_.verdict_of(part))) + ")";
        const std::vector<std::string> steps = steps_together(part);
        if (steps.empty())
            return "No step listed here clears " + who + ", by itself or with others beside it" +
                   (stays_stopped_ ? "; to weld less is not offered while the job is stopped for another reason."
                                   : ".");
        std::string out = "No single step clears " + who + "; these do together: ";
        for (std::size_t i = 0; i < steps.size(); ++i) out += (i == 0 ? "" : "; ") + steps[i];
        return out + ".";
    }

    // Steps to the part, then to its neighbours, taken one after the other until they clear it; those without which the
    // rest clears it too are left out again.
    [[nodiscard]] std::vector<std::string> steps_together(std::size_t part) const
    {
        constexpr std::size_t most_steps = 8;
        std::vector<const step*> taken;
        for (const step* s : nearby(part)) {
            taken.push_back(s);
            const std::optional<change> all = all_of(taken, part);
            if (!all) {
                taken.pop_back();
                continue;
            }
            if (do_clear(*all, part)) return words_of(without_idle(std::move(taken), part));
            if (taken.size() == most_steps) break;
        }
        return {};
    }
    [[nodiscard]] bool do_clear(const change& all, std::size_t part) const
    {
        trial t = loop_.with(all, &loop_.stretches_with(part));
        return loop_.clears_in(t, part);
    }
    // Steps taken one after the other as one change; none where one of them is not called for any more when its turn
    // comes.
    [[nodiscard]] std::optional<change> all_of(const std::vector<const step*>& steps, std::size_t part) const
    {
        std::map<std::size_t, path_part> parts;
        for (const step* s : steps) {
            const std::size_t at = s->how.part;
            const auto known = parts.find(at);
            path_part then = s->how.parts.front().instead;
            if (known != parts.end()) {  // the same to what stands there by now, if it is still called for
                std::vector<change> left = change_finder(s_, at).changes(known->second);
                const auto same = std::find_if(left.begin(), left.end(), [&](const change& c) {
                    return s->from_the_part && c.id == s->how.id && c.gone_from == c.gone_to;
                });
                if (same == left.end()) return std::nullopt;
                then = std::move(same->parts.front().instead);
            }
            parts.insert_or_assign(at, std::move(then));
        }
        change all{.part = part};
        for (const auto& [place, is] : parts) all.parts.push_back({place, is});
        return all;
    }
    [[nodiscard]] std::vector<const step*> without_idle(std::vector<const step*> taken, std::size_t part) const
    {
        for (std::size_t i = taken.size() - 1; i-- > 0;) {  // the last was needed
            std::vector<const step*> fewer = taken;
            fewer.erase(fewer.begin() + static_cast<std::ptrdiff_t>(i));
            const std::optional<change> all = all_of(fewer, part);
            if (all && do_clear(*all, part)) taken = std::move(fewer);
        }
        return taken;
    }
    [[nodiscard]] static std::vector<std::string> words_of(const std::vector<const step*>& steps)
    {
        std::vector<std::string> out;
        for (const step* s : steps) out.push_back(s->says.what);
        return out;
    }
    // Single steps done to a part; and to the parts of its stretches, its own first.
    [[nodiscard]] std::vector<const step*> at_part(std::size_t part) const
    {
        const auto at = steps_at_.find(part);
        std::vector<const step*> out;
        if (at == steps_at_.end()) return out;
        for (const std::size_t k : at->second)
            if (steps_[k].how.parts.size() == 1 && steps_[k].how.gone_from == steps_[k].how.gone_to)
                out.push_back(&steps_[k]);
        return out;
    }
    [[nodiscard]] std::vector<const step*> nearby(std::size_t part) const
    {
        std::vector<const step*> out;
        for (const std::size_t i : loop_.parts_of(loop_.stretches_with(part)))
            for (const step* s : at_part(i)) out.push_back(s);
        std::stable_sort(out.begin(), out.end(), [part](const step* a, const step* b) {
            const bool own = a->how.part == part;
            return own != (b->how.part == part) ? own : a->says.effort < b->says.effort;
        });
        return out;
    }

    const station& s_;
    std::size_t arc_at_;
    weighed_loop loop_;
    loop_state whole_;                  // at the job's current, typically, of a station with a supply
    solve::periodic_state settled_;     // of it
    std::vector<weld_id> inductive_;    // statements on the weld that rest on the leads' inductance
    std::vector<loop_finding> at_arc_;  // what supply, loop and arc are found to make of each other
    std::vector<step> steps_;
    std::map<std::size_t, remedy_effort> cleared_with_;         // parts with a verdict against them: the least effort
    std::map<std::size_t, std::vector<std::size_t>> steps_at_;  // single steps by their part
    std::map<std::size_t, largest_make> too_small_;             // parts no larger make of which does: the largest
    bool one_lead_does_ = false;
    bool stays_stopped_ = false;  // by what less current does not change
};

}  // namespace detail

[[nodiscard]] inline std::vector<remedy> remedies_for(const station& s)
{
    return detail::remedy_search(s)();
}

}  // namespace weldloop
