#pragma once
/// @file
/// A path cut into stretches that feel nothing of each other's heat, each solved by itself.

#include <algorithm>
#include <array>
#include <cstddef>
#include <optional>
#include <utility>
#include <variant>
#include <vector>

#include <weldloop/circuit/lead_cells.hpp>
#include <weldloop/circuit/loop_network.hpp>
#include <weldloop/circuit/station.hpp>
#include <weldloop/circuit/station_parts.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/part/conductor_limit.hpp>
#include <weldloop/rating/assessment.hpp>
#include <weldloop/rating/part_limit.hpp>
#include <weldloop/rating/part_verdict.hpp>
#include <weldloop/rating/solved_station.hpp>
#include <weldloop/rating/verdict.hpp>

namespace weldloop {

/// How far heat is felt along a lead.
inline constexpr source lead_cut_model{
    "a lead longer than 8 decay lengths passes less than 1 part in 1000 of a disturbance from end to end (exp(-8), and "
    "what the current's heat adds to it): each half follows its own end",
    "2026",
    {},
    source_kind::derived};
/// Number of decay lengths of heat from which a lead parts its neighbours; see lead_cut_model.
inline constexpr double parting_decay_lengths = 8.0;

namespace detail {

/// Parts of a path that are solved together, each range up to before its last.
struct stretch {
    std::size_t from = 0, to = 0;          // all that is solved
    std::size_t own_from = 0, own_to = 0;  // what counts; the rest is there for its heat
    bool shares_first = false;             // the first is a long lead whose other half belongs to the stretch before
    bool shares_last = false;
};

[[nodiscard]] inline bool parts_its_neighbours(const path_part& part, const surroundings& where)
{
    const auto* lead = std::get_if<cable>(&part);
    return lead != nullptr && lead->length > parting_decay_lengths * grading_length_of(*lead, where);
}

// Whether heat passes between a part and the one before it. Plates, bare contacts and the arc end a chain, and so does
// the work's side of a clamp; a lug there changes what the clamp is, and stays with it.
[[nodiscard]] inline bool touches_the_one_before(const std::vector<path_part>& path, std::size_t arc_at, std::size_t i)
{
    const auto stands_alone = [](const path_part& p) {
        return std::holds_alternative<arc>(p) || std::holds_alternative<contact>(p) || std::holds_alternative<plate>(p);
    };
    if (stands_alone(path[i - 1]) || stands_alone(path[i])) return false;
    if (i > arc_at && holds_the_work(path[i])) return ends_a_cable(path[i - 1]);
    if (i - 1 < arc_at && holds_the_work(path[i - 1])) return ends_a_cable(path[i]);
    return true;
}

// A stretch of many short leads, which part their neighbours together: pieces that overlap as far as heat is felt.
inline void add_in_pieces(std::vector<stretch>& out, const stretch& whole, const station& s)
{
    constexpr double worth_it = 3.0 * parting_decay_lengths;
    std::vector<double> decays{0.0};  // before each part, from the beginning of the stretch
    for (std::size_t i = whole.from; i < whole.to; ++i) {
        const auto* lead = std::get_if<cable>(&s.path[i]);
        const bool is_shared = (whole.shares_first && i == whole.from) || (whole.shares_last && i + 1 == whole.to);
        decays.push_back(decays.back() + (lead != nullptr && !is_shared
                                              ? static_cast<double>(lead->length / grading_length_of(*lead, s.where))
                                              : 0.0));
    }
    const auto before = [&](std::size_t i) { return decays[i - whole.from]; };
    if (decays.back() <= worth_it) {
        out.push_back(whole);
        return;
    }
    for (std::size_t i = whole.from; i < whole.to;) {
        stretch piece{.from = i, .to = i + 1, .own_from = i, .own_to = i + 1};
        while (piece.own_to < whole.to && before(piece.own_to) - before(i) < parting_decay_lengths) ++piece.own_to;
        i = piece.own_to;
        while (piece.from > whole.from && before(piece.own_from) - before(piece.from) < parting_decay_lengths)
            --piece.from;
        piece.to = piece.own_to;
        while (piece.to < whole.to && before(piece.to) - before(piece.own_to) < parting_decay_lengths) ++piece.to;
        piece.shares_first = whole.shares_first && piece.own_from == whole.from;
        piece.shares_last = whole.shares_last && piece.own_to == whole.to;
        out.push_back(piece);
    }
}

/// Whether a station is solved as a whole or not at all: where ways share current everything hangs together, and a
/// workpiece or stud joins what touches it.
[[nodiscard]] inline bool is_one_piece(const station& s)
{
    return !s.ways.empty() || !s.others.empty() || std::any_of(s.path.begin(), s.path.end(), is_hub);
}

/// The stretches of a path, in its order; a long lead between two neighbours ends one and begins the next.
[[nodiscard]] inline std::vector<stretch> stretches_of(const station& s, std::size_t arc_at)
{
    std::vector<stretch> out;
    if (is_one_piece(s)) return {{.from = 0, .to = parts_in(s), .own_from = 0, .own_to = parts_in(s)}};
    stretch now;
    for (std::size_t i = 0; i < s.path.size(); ++i) {
        const bool chain_ends = i + 1 == s.path.size() || !touches_the_one_before(s.path, arc_at, i + 1);
        const bool parted = !chain_ends && i > now.from && parts_its_neighbours(s.path[i], s.where);
        if (!chain_ends && !parted) continue;
        now.to = now.own_to = i + 1;
        now.own_from = now.from;
        now.shares_last = parted;
        if (i != arc_at) add_in_pieces(out, now, s);
        now = {.from = parted ? i : i + 1, .shares_first = parted};
    }
    return out;
}

/// A stretch, solved.
class solved_stretch {
public:
    /// @param where in the path @param parts a station with the parts of the stretch alone
    /// @param arc_at how many of them lie before the arc
    /// @param like the stretch with other parts under the same duty, or null
    /// @param gone_from, gone_to parts of the stretch that are no longer in the path, to before the last
    solved_stretch(const stretch& where, station parts, std::size_t arc_at, const solved_stretch* like = nullptr,
                   std::size_t gone_from = 0, std::size_t gone_to = 0)
        : where_(where), gone_from_(gone_from), gone_to_(gone_to), parts_(std::move(parts)),
          solved_(parts_, arc_at, {}, like != nullptr ? &like->solved_ : nullptr)
    {
    }
    solved_stretch(const solved_stretch&) = delete;
    solved_stretch& operator=(const solved_stretch&) = delete;

    [[nodiscard]] const stretch& where() const { return where_; }
    [[nodiscard]] loop_outcome typical() const { return solved_.typical().outcome; }
    /// With every joint poor; solved only where that is in doubt.
    [[nodiscard]] loop_outcome poor()
    {
        if (!poor_) poor_ = solved_.surely_has_poor_state() ? loop_outcome::solved : solve_poor();
        return *poor_;
    }
    [[nodiscard]] const part_state& state_of(std::size_t part) const { return solved_.typical().parts[local(part)]; }
    [[nodiscard]] bool removes(std::size_t part) const { return part >= gone_from_ && part < gone_to_; }
    [[nodiscard]] const station& of() const { return parts_; }
    [[nodiscard]] const loop_state& state() const { return solved_.typical(); }
    [[nodiscard]] bool melts() const
    {
        bool out = false;
        for (std::size_t i = where_.own_from; i < where_.own_to; ++i)
            out = out || (!removes(i) && state_of(i).spots_melt);
        return out;
    }

    /// Typical drop [V], of a shared lead its own half; 0 without a state.
    [[nodiscard]] double drop() const
    {
        if (is_one_piece(parts_)) return solved_.typical().total_drop.value();
        double sum = 0.0;
        for (std::size_t i = where_.own_from; i < where_.own_to; ++i) sum += drop_of(i);
        return sum;
    }
    [[nodiscard]] double drop_of(std::size_t part) const
    {
        if (typical() != loop_outcome::solved || removes(part)) return 0.0;
        if (where_.shares_first && part == where_.from) return half_drop(part, true);
        if (where_.shares_last && part + 1 == where_.to) return half_drop(part, false);
        return state_of(part).drop.value();
    }

    /// The drop with its scatter. @param typical, poor outcomes of the whole loop
    [[nodiscard]] scattered_sum scattered_drop(loop_outcome typical, loop_outcome poor)
    {
        poor_ = solve_poor();  // poor() may have known that there is one without it
        solved_.find_scatter(typical, poor);
        if (is_one_piece(parts_)) return solved_.scatter_of().total_drop(drop());
        return solved_.scatter_of().drop_by(where_.own_from - where_.from, where_.own_to - where_.from, drop());
    }

    /// The verdict on a part. @param typical, poor outcomes of the whole loop
    [[nodiscard]] verdict verdict_of(std::size_t part, loop_outcome typical, loop_outcome poor)
    {
        poor_ = solve_poor();
        solved_.find_scatter(typical, poor);
        part_result r;
        r.conducts = state_of(part).conducts;
        judge(r, solved_, local(part), verdict_depth::alone);
        return r.verdict;
    }

    /// Whether a verdict is against a part by its typical state alone, whatever the scatter.
    [[nodiscard]] bool is_over_typically(std::size_t part) const
    {
        const part_state& p = state_of(part);
        if (!p.conducts || p.passes_bound || p.spots_melt || p.softening_used > 1.0) return true;
        if (typical() != loop_outcome::solved) return false;
        const part_limits limits = limits_of(part_as_placed(parts_, local(part)), parts_.where);
        return std::any_of(limits.places.begin(), limits.places.end(), [&](const place_limit& l) {
            return std::any_of(p.places.begin(), p.places.end(),
                               [&l](const place_state& at) { return at.what == l.where && at.peak > l.highest; });
        });
    }

    /// Share of a lead's allowed rise that its conductor uses, typically.
    [[nodiscard]] double used_by_lead(std::size_t part) const
    {
        const auto& lead = std::get<cable>(part_at(parts_, local(part)));
        return share_of_rise(state_of(part).peak, limit_of(lead), parts_.where.air);
    }

private:
    // Number of a part in the station that is solved.
    [[nodiscard]] std::size_t local(std::size_t part) const
    {
        return part - where_.from - (part >= gone_to_ ? gone_to_ - gone_from_ : 0);
    }
    // At its poor point too, once.
    loop_outcome solve_poor()
    {
        if (!is_poor_solved_) solved_.solve_ends();
        is_poor_solved_ = true;
        return solved_.poor().outcome;
    }

    [[nodiscard]] double half_drop(std::size_t part, bool far_half) const
    {
        const auto& cells = solved_.network().parts()[part - where_.from].ohmics;
        const std::vector<double>& on_mean = solved_.typical_state().on_mean;
        double whole = 0.0, sum = 0.0, before = 0.0;
        for (const auto& c : cells) whole += c.length;
        const double from = far_half ? 0.5 * whole : 0.0, to = from + 0.5 * whole;
        for (const auto& c : cells) {
            const double own = std::min(before + c.length, to) - std::max(before, from);
            before += c.length;
            if (own > 0.0) sum += own / c.length * (c.at_zero + c.by_kelvin * on_mean[c.node]);
        }
        return solved_.network().amps() * sum;
    }

    stretch where_;
    std::size_t gone_from_, gone_to_;
    station parts_;
    solved_station solved_;
    bool is_poor_solved_ = false;
    std::optional<loop_outcome> poor_;
};

}  // namespace detail

}  // namespace weldloop
