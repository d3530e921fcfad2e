#pragma once
/// @file
/// How long clamps and joints last, in sentences. Each is true in the poor case too, or says "typically".

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include <weldloop/core/number_text.hpp>
#include <weldloop/core/text.hpp>
#include <weldloop/core/unit_text.hpp>
#include <weldloop/io/draw/clamp_life_drawing.hpp>
#include <weldloop/io/report/report_words.hpp>
#include <weldloop/life/clamp_life.hpp>
#include <weldloop/life/joint_drift.hpp>
#include <weldloop/life/station_service.hpp>
#include <weldloop/rating/station_life.hpp>

namespace weldloop {

namespace detail {

// "in a poor case within the first hour, typically after 28 h, in a mild case not within 2000 h"
[[nodiscard]] inline std::string hours_words(const clamp_hours& h, duration horizon)
{
    const auto when = [&](const std::optional<duration>& t) { return hours_word(t, horizon, "after "); };
    return "in a poor case " + when(h.poor) + ", typically " + when(h.typical) + ", in a mild case " + when(h.mild);
}

[[nodiscard]] inline bool ever(const clamp_hours& h)
{
    return h.poor.has_value();
}

[[nodiscard]] inline std::string quarter_line(const clamp_hours& lost, duration horizon)
{
    return ever(lost) ? "A quarter of the grip it has now is lost: " + hours_words(lost, horizon) + "."
                      : "A quarter of the grip it has now is not lost within " + hours_text(horizon) +
                            " of shift, neither typically nor in a poor case.";
}

/// Whether a clamp's poor case lasts as long as is looked ahead.
enum class clamp_poor_case { lasts, fails };

/// @param lead "its lead", or the lead by name @param poor_holds whether a poor case lasts so long
[[nodiscard]] inline std::string cable_line(const clamp_hours& dropped, force needs, std::string_view lead,
                                            duration horizon, clamp_poor_case poor_holds = clamp_poor_case::lasts)
{
    const std::string holds = "5 m of " + std::string(lead) + " with a coupling, which takes " +
                              number_text(std::ceil(needs.value()), 3) + " N at each jaw";
    return ever(dropped)
               ? "It no longer holds " + holds + ": " + hours_words(dropped, horizon) + "."
               : "It holds " + holds + ", over " + hours_text(horizon) +
                     (poor_holds == clamp_poor_case::lasts ? ", typically and in a poor case." : ", typically.");
}

// "film 60 %, heat 40 %", the largest first; empty if none counts.
[[nodiscard]] inline std::string shares_words(std::vector<std::pair<double, std::string_view>> shares)
{
    constexpr double counts = 0.01;
    std::stable_sort(shares.begin(), shares.end(), [](const auto& a, const auto& b) { return a.first > b.first; });
    std::string out;
    for (const auto& [share, what] : shares)
        if (share >= counts) out += (out.empty() ? "" : ", ") + std::string(what) + " " + percent_of(share);
    return out;
}
[[nodiscard]] inline std::string causes_words(const grip_causes& c)
{
    return shares_words({{static_cast<double>(c.force), "lost force"},
                         {static_cast<double>(c.heat), "heat"},
                         {static_cast<double>(c.film), "film"},
                         {static_cast<double>(c.disturbance), "knocks and wear"}});
}
[[nodiscard]] inline std::string causes_words(const drift_causes& c)
{
    return shares_words({{static_cast<double>(c.film), "film"},
                         {static_cast<double>(c.force), "loosening"},
                         {static_cast<double>(c.fretting), "small slips"}});
}

// Empty where the two do not differ.
[[nodiscard]] inline std::string untouched_line(const std::optional<resistance>& untouched,
                                                const std::optional<resistance>& moved)
{
    constexpr double differs = 1.01;
    if (!untouched || !moved || !(*moved > differs * *untouched)) return {};
    return "Left untouched it still reads " + to_text(*untouched, "uohm") +
           " at the end, typically; moved, knocked or clamped anew " + to_text(*moved, "uohm") + ".";
}

[[nodiscard]] inline std::string celsius_words(temperature t)
{
    return number_text(std::floor(t.in_celsius()), 3) + " degC";
}

[[nodiscard]] inline std::string cure_words(const clamp_cure& c)
{
    std::string out;
    switch (c.kind) {
    case clamp_cure_kind::clean_surface: out = "bright metal under the jaws"; break;
    case clamp_cure_kind::cooler_work: out = "work no hotter than " + celsius_words(*c.work); break;
    case clamp_cure_kind::less_current:
        out = "no more than " + number_text(std::floor(c.amps->value()), 4) + " A";
        break;
    case clamp_cure_kind::next_size: out = "a larger one, " + c.clamp; break;
    case clamp_cure_kind::other_kind: out = "another kind, " + c.clamp; break;
    }
    return out + ": " + percent_of(static_cast<double>(c.grip_left)) + " left typically, " +
           percent_of(static_cast<double>(c.grip_left_poor)) + " in a poor case" +
           (c.keeps_poor ? "" : ", which does not keep the poor case");
}

[[nodiscard]] inline std::string look_again_line(const std::optional<duration>& look_again, duration horizon)
{
    if (!look_again) return "Look at it again after " + hours_text(horizon) + " of shift, as far as was looked ahead.";
    if (!(look_again->value() > 0.0)) return "Look at it before the next weld: the poor case fails from the start.";
    return "Look at it again " + hours_word(look_again, horizon, "within ") +
           " of shift: a poor case may have lost a quarter, or its hold on the lead, by then.";
}

// "in a poor case from the start, typically after 430 h, in a mild case not within 2000 h"
[[nodiscard]] inline std::string yield_words(const joint_drift& j, const drift_forecast& f)
{
    const auto when = [&](const drift_case& c, const drift_end& end) {
        return c.yields || end.outcome == loop_outcome::solved
                   ? hours_word(c.yields, f.horizon, "after ")
                   : "not before that case ends, " + hours_word(end.at, f.horizon, "after ");
    };
    return "in a poor case " + when(j.poor, f.poor) + ", typically " + when(j.typical, f.typical) +
           ", in a mild case " + when(j.mild, f.mild);
}

[[nodiscard]] inline std::string joint_words(const joint_drift& j)
{
    return j.name + ", " + std::string(j.contact);
}

}  // namespace detail

/// What a joint that yields is, printed beside the list.
inline constexpr std::string_view yielding_explained =
    "A joint yields when its drop reaches the softening drop of its metals: its spots spread by themselves and it "
    "heats. "
    "Hours of shift if nobody touches it; a trend for comparing, no date. Not followed: brushes and contact tips, "
    "which "
    "wear; bolts loosened by vibration; springs of holders and plugs.";

/// Joints named one by one in a list of those that yield; more are counted.
inline constexpr std::size_t most_joints_named = 12;

/// The use a station is looked ahead with: "2000 h of shift ahead, shifts of 8 h with 16 h of rest, ..."
[[nodiscard]] inline std::string service_line(const station_service& s)
{
    const grip_service& c = s.clamps;
    const auto spans = [](duration shift, duration rest) {
        return "shifts of " + to_text(shift, "h") +
               (rest.value() > 0.0 ? " with " + to_text(rest, "h") + " of rest" : std::string(" without rest between"));
    };
    std::string out = to_text(s.horizon, "h") + " of shift ahead; clamps: " + spans(c.shift, c.rest);
    std::string touched;
    for (const auto& [count, what] :
         {std::pair{c.openings, "openings"}, std::pair{c.knocks, "knocks"}, std::pair{c.drags, "drags"}})
        if (count > 0.0)
            touched.append(touched.empty() ? ", a shift with " : ", ").append(number_text(count, 4) + " ").append(what);
    out += touched.empty() ? ", never opened, knocked or dragged" : touched;
    if (static_cast<double>(c.on_work) < 1.0)
        out += ", on the work " + number_text(100.0 * static_cast<double>(c.on_work), 3) + " % of it";
    if (c.clean_every) out += ", cleaned every " + to_text(*c.clean_every, "h");
    if (c.tighten_every) out += ", screws tightened every " + to_text(*c.tighten_every, "h");
    return out + "; other joints: " + spans(s.joints.shift, s.joints.rest) + ", " + number_text(s.joints.starts, 4) +
           " starts from cold a shift, air " + std::string(to_text(s.joints.air)) + ", " +
           std::string(to_text(s.joints.motion));
}

/// How long a clamp goes on holding, in sentences.
/// @param c the clamp @param horizon hours of shift looked ahead [s], any
[[nodiscard]] inline std::vector<std::string> clamp_prospect_lines(const clamp_prospect& c, duration horizon)
{
    std::vector<std::string> out;
    // one that melts from the first weld on has no poor case of its grip
    const bool melts_at_once = c.poor_melts && !detail::ever(c.quarter_lost);
    if (melts_at_once)
        out.push_back("A quarter of the grip it has now is typically not lost within " + detail::hours_text(horizon) +
                      " of shift; in a poor case its spots melt from the first weld on: it may weld itself to the "
                      "work, or burn.");
    else if (detail::ever(c.quarter_lost) || !c.poor_ends)
        out.push_back(detail::quarter_line(c.quarter_lost, horizon));
    if (c.poor_ends)
        out.push_back("In a poor case it comes to an end " + detail::hours_word(c.poor_ends, horizon, "after ") +
                      ": its spots melt, its spring is destroyed or its grip goes.");
    if (c.poor_melts && !melts_at_once)
        out.emplace_back("In a poor case its spots melt: it may weld itself to the work, or burn.");
    if (c.cable_needs && (detail::ever(c.cable_not_held) || !c.poor_ends))
        out.push_back(
            detail::cable_line(c.cable_not_held, *c.cable_needs, c.lead, horizon,
                               c.poor_melts ? detail::clamp_poor_case::fails : detail::clamp_poor_case::lasts));
    if (const std::string by = detail::causes_words(c.causes); !by.empty())
        out.push_back("What raised its resistance, typically: " + by + ".");
    if (std::string line = detail::untouched_line(c.untouched, c.moved); !line.empty()) out.push_back(std::move(line));
    for (const clamp_cure& cure : c.cures) out.push_back("Would keep it: " + detail::cure_words(cure) + ".");
    if (c.cures_sought && c.cures.empty())
        out.push_back(
            "Neither bright metal under the jaws nor a screw clamp in its place keeps its grip here, not even "
            "typically.");
    if (!c.keeps_poor && !c.cures_sought)
        out.push_back(
            "What would keep it is not looked for while stray ways take part of its current: part them first.");
    out.push_back(detail::look_again_line(c.look_again, horizon));
    return out;
}

/// The joints that yield within the forecast, the first in the poor case first, or that none does.
/// @param f the forecast
[[nodiscard]] inline std::vector<std::string> joint_drift_lines(const drift_forecast& f)
{
    std::vector<std::string> out;
    if (f.joints.empty()) {
        out.push_back(
            f.typical.outcome == loop_outcome::solved
                ? "There are no other joints that are followed."
                : "Nothing is known of the other joints: as it is described the loop typically has no settled "
                  "state.");
        return out;
    }
    std::size_t yields = 0;
    for (const joint_drift& j : f.joints) {
        if (!j.poor.yields && !j.typical.yields && !j.mild.yields) continue;
        if (++yields > most_joints_named) continue;
        std::string line = detail::joint_words(j) + ": it yields " + detail::yield_words(j, f);
        const std::string by = detail::causes_words(j.poor.causes);
        out.push_back(line + (by.empty() ? "." : "; driven in the poor case by " + by + "."));
    }
    if (yields > most_joints_named)
        out.push_back("And " + std::to_string(yields - most_joints_named) + " more that yield within " +
                      detail::hours_text(f.horizon) + ".");
    const bool followed = f.poor.outcome == loop_outcome::solved;
    if (yields == 0) {
        const joint_drift& nearest =
            *std::max_element(f.joints.begin(), f.joints.end(), [](const joint_drift& a, const joint_drift& b) {
                return a.poor.softening_used < b.poor.softening_used;
            });
        out.push_back("No other joint yields " +
                      (followed ? "within " + detail::hours_text(f.horizon) + " of shift"
                                : std::string("as far as the cases were followed")) +
                      ", neither typically nor in a poor case; the nearest is " + detail::joint_words(nearest) +
                      ", in the poor case at " + detail::percent_of(nearest.poor.softening_used) +
                      " of the softening drop of its metals.");
    }
    const auto ended = [&](std::string_view which, const drift_end& end) {
        if (end.outcome == loop_outcome::solved) return;
        out.push_back(std::string(which) + " the loop finds no settled state " +
                      (end.at.value() > 0.0 ? "any more " + detail::hours_word(end.at, f.horizon, "after ") +
                                                  " of shift, and is not followed further."
                                            : std::string("from the start, and is not followed.")));
    };
    ended("In the poor case", f.poor);
    ended("Typically", f.typical);
    return out;
}

}  // namespace weldloop
