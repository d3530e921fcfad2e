#pragma once
/// @file
/// Observations that were likely taken wrongly, and what each is at odds with.

#include <algorithm>
#include <cstddef>
#include <string>
#include <utility>
#include <variant>
#include <vector>

#include <weldloop/core/quantities.hpp>
#include <weldloop/core/text.hpp>
#include <weldloop/field/fault_inference.hpp>
#include <weldloop/field/fault_search.hpp>
#include <weldloop/field/observation.hpp>

namespace weldloop::detail {

/// A span in words.
[[nodiscard]] inline std::string words_of_span(const reading& r)
{
    return r.across + (r.to.empty() ? "" : " to " + r.to);
}

/// What is to be said of a reading that fits nothing.
inline constexpr const char* fits_no_condition = "fits no condition: check probe, range and name";

/// What is to be said of one that nothing but a failing part explains.
inline constexpr const char* fits_failing_alone =
    "is above all that wear and dirt explain: the part has half parted or is failing, or probe, "
    "range or name were wrong; look at it, supply off "
    "and locked, before it is read again";

/// Finds and words doubts.
class reading_doubt {
public:
    reading_doubt(const std::vector<observation>& made, const fault_evidence& known) : made_(&made), known_(&known)
    {
        for (std::size_t p = 0; p < known.told.size(); ++p)
            for (std::size_t k = 0; k < known.told[p].size(); ++k)
                all_.push_back({known.told[p][k].which, p, p, k, known.told[p][k].is_read, false});
        for (std::size_t s = 0; s < known.spans.size(); ++s)
            all_.push_back({known.spans[s].which, known.spans[s].first, known.spans[s].last, s, true, true});
    }

    [[nodiscard]] std::vector<doubtful_observation> of(const fault_inference& after) const
    {
        std::vector<std::pair<double, std::size_t>> doubted;
        for (std::size_t i = 0; i < all_.size(); ++i) {
            if (!all_[i].is_read) continue;
            const double wrong = share_wrong(after, all_[i]);
            if (wrong >= worth_doubting) doubted.emplace_back(wrong, i);
        }
        std::stable_sort(doubted.begin(), doubted.end(),
                         [](const auto& a, const auto& b) { return a.first > b.first; });
        std::vector<doubtful_observation> out;
        for (const auto& [wrong, i] : doubted)
            out.push_back({.which = all_[i].which,
                           .probability = wrong,
                           .what = subject_of(all_[i]) + " " +
                                   (may_fail(after, all_[i]) ? fits_failing_alone
                                                             : trouble(all_[i], out.size() < most_explained))});
        return out;
    }

private:
    // What was observed of parts, from a first to a last one.
    struct known_of {
        std::size_t which, first, last, place;  // place among those of its part, or among spans
        bool is_read, is_span;
    };

    [[nodiscard]] static double share_wrong(const fault_inference& after, const known_of& o)
    {
        return o.is_span ? after.wrong(o.place) : after.wrong(o.first, o.place);
    }
    // Whether it is of volts above all that parts wear into, and one of them may be failing, likely enough to stop the
    // job.
    [[nodiscard]] bool may_fail(const fault_inference& after, const known_of& o) const
    {
        const auto* r = std::get_if<reading>(&(*made_)[o.which]);
        if (r == nullptr) return false;
        double failing = 0.0, worn = 0.0;
        for (std::size_t p = o.first; p <= o.last; ++p) {
            const part_states& part = known_->parts[p];
            double top = 0.0;  // where failing begins
            for (std::size_t i = 0; i < part.size(); ++i) {
                if (!part.is_beyond_wear(i)) continue;
                if (top == 0.0) top = part.ohms.front()[i];
                failing += after.of(p)[i];
            }
            worn += top;
        }
        return failing >= stop_when_failing && r->volts > in_si<resistance>(worn) * r->current;
    }
    // Probability that it is wrong where only some others are known.
    template <class Keep>
    [[nodiscard]] double share_wrong_with(const known_of& own, const Keep& keep) const
    {
        fault_evidence some{.parts = {}, .told = {}, .spans = {}, .most = known_->most};
        // parts that nothing of it is about are left out
        known_of moved = own;
        some.told.resize(known_->told.size());
        some.parts.resize(known_->parts.size());
        for (const known_of& o : all_) {
            const bool is_own = o.which == own.which;
            if (!is_own && !keep(o)) continue;
            for (std::size_t p = o.first; p <= o.last; ++p)
                if (some.parts[p].size() == 0) some.parts[p] = known_->parts[p];
            if (o.is_span) {
                if (is_own) moved.place = some.spans.size();
                some.spans.push_back(known_->spans[o.place]);
            } else {
                if (is_own) moved.place = some.told[o.first].size();
                some.told[o.first].push_back(known_->told[o.first][o.place]);
            }
        }
        return share_wrong(fault_inference(some), moved);
    }
    [[nodiscard]] static bool overlap(const known_of& a, const known_of& b)
    {
        return a.first <= b.last && b.first <= a.last;
    }

    // What it is at odds with: one other observation, several together, or everything.
    // @param in_full whether each other one may be tried
    [[nodiscard]] std::string trouble(const known_of& own, bool in_full) const
    {
        if (share_wrong_with(own, [](const known_of&) { return false; }) >= worth_doubting) return fits_no_condition;
        std::vector<const known_of*> others;
        for (const known_of& o : all_)
            if (o.which != own.which && overlap(o, own)) others.push_back(&o);
        std::string all;
        for (std::size_t k = 0; k < others.size() && k < most_named; ++k)
            all.append(all.empty() ? "" : ", ").append(object_of(*others[k]));
        if (others.size() > most_named) all += " and others";
        const known_of* against = nullptr;  // what it agrees best without
        double least = worth_doubting;
        for (std::size_t k = 0; in_full && k < others.size() && k < most_tried; ++k) {
            const double without =
                share_wrong_with(own, [&](const known_of& o) { return o.which != others[k]->which; });
            if (without >= least) continue;
            least = without;
            against = others[k];
        }
        if (against != nullptr)
            return "contradicts " +
                   (is_volts(own) && is_volts(*against) ? "that across " + object_of(*against) : subject_of(*against)) +
                   ": read both again";
        if (all.empty()) return fits_no_condition;
        return "contradicts several others, " + all + ": read them again";
    }

    [[nodiscard]] std::string subject_of(const known_of& o) const
    {
        return std::visit([](const auto& known) { return words(known); }, (*made_)[o.which]);
    }
    [[nodiscard]] bool is_volts(const known_of& o) const { return std::holds_alternative<reading>((*made_)[o.which]); }
    [[nodiscard]] std::string object_of(const known_of& o) const
    {
        if (const auto* r = std::get_if<reading>(&(*made_)[o.which])) return words_of_span(*r);
        return subject_of(o);
    }
    static std::string words(const reading& r) { return "the reading across " + words_of_span(r); }
    static std::string words(const heat_observation& o) { return "the temperature of " + o.part; }
    static std::string words(const four_wire_observation& o) { return "the four-wire reading of " + o.part; }
    static std::string words(const tightness_observation& o) { return "the tightness of " + o.part; }
    static std::string words(const surface_observation& o) { return "the look of the faces of " + o.part; }
    static std::string words(const strand_observation& o) { return "the look of the strands of " + o.part; }
    static std::string words(const arc_observation& o) { return "the look of the arc at " + o.part; }

    static constexpr double worth_doubting = 0.4;     // two that contradict each other share the blame
    static constexpr std::size_t most_explained = 8;  // doubtful ones that are held against each other one
    static constexpr std::size_t most_tried = 12;     // of those others
    static constexpr std::size_t most_named = 4;      // in a sentence

    const std::vector<observation>* made_;
    const fault_evidence* known_;
    std::vector<known_of> all_;
};

}  // namespace weldloop::detail
