#pragma once
/// @file
/// One station surveyed twice: what has become of each joint.

#include <algorithm>
#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include <weldloop/core/band.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/field/observation.hpp>
#include <weldloop/field/survey.hpp>
#include <weldloop/rating/assessment.hpp>
#include <weldloop/rating/verdict.hpp>

namespace weldloop {

/// Changes that count.
inline constexpr source trend_judgement{
    "a typical drop, or a resistance that was read, counts as changed from a tenth on",
    "2026",
    {},
    source_kind::judgement};
/// See trend_judgement.
inline constexpr double change_that_counts = 0.1;

/// What has become of a part.
enum class part_fate {
    alike,   ///< no other verdict, no drop that counts as changed
    better,  ///< a milder verdict; with the same one less drop
    worse,   ///< a graver verdict; with the same one more drop
    added,   ///< no part had its name before
    gone,    ///< no part has its name now
};

/// The word for a change.
[[nodiscard]] constexpr std::string_view to_text(part_fate c)
{
    switch (c) {
    case part_fate::alike: return "alike";
    case part_fate::better: return "better";
    case part_fate::worse: return "worse";
    case part_fate::added: return "new";
    case part_fate::gone: return "gone";
    }
    return "alike";
}

/// A part at one of two surveys.
struct part_then {
    weldloop::verdict verdict = verdict::not_judged;  ///< on it
    std::optional<band<voltage>> drop = {};           ///< calculated; empty without a settled state
    std::optional<temperature> peak = {};             ///< calculated, typical; empty where it is not known
    std::optional<resistance> read = {};              ///< by the last reading across it alone; empty: none
};

/// A part at both.
struct part_trend {
    std::string name = {};                  ///< by which it is known again
    std::optional<part_then> before = {};   ///< empty: not there
    std::optional<part_then> after = {};    ///< empty: not there
    part_fate change = part_fate::alike;    ///< calculated
    std::optional<double> read_ratio = {};  ///< resistance that was read, after over before; empty: not read at both
};

/// A station at both.
struct station_trend {
    std::vector<part_trend> parts = {};       ///< those of the later survey in their order, then what is gone
    std::optional<voltage> drop_before = {};  ///< [V] of the loop, typical; empty without a state
    std::optional<voltage> drop_after = {};   ///< [V] the same of the later one
};

namespace detail {

[[nodiscard]] inline std::optional<resistance> last_read(const surveyed_station& s, const std::string& part)
{
    std::optional<resistance> out;
    for (const observation& o : s.answers.observations) {
        if (const auto* r = std::get_if<reading>(&o); r != nullptr && r->to.empty() && r->across == part)
            out = r->volts / r->current;
        if (const auto* r = std::get_if<four_wire_observation>(&o); r != nullptr && r->part == part) out = r->ohms;
    }
    return out;
}

[[nodiscard]] inline part_then part_at_survey(const surveyed_station& s, const part_result& p)
{
    part_then out{.verdict = p.verdict, .read = last_read(s, p.name)};
    if (s.found.conducts) out.drop = p.drop;
    if (s.found.conducts && !p.places.empty()) out.peak = p.peak_temperature;
    return out;
}

[[nodiscard]] inline part_fate change_between(const part_then& before, const part_then& after)
{
    const int was = gravity_of(before.verdict), is = gravity_of(after.verdict);
    if (is != was) return is > was ? part_fate::worse : part_fate::better;
    if (!before.drop || !after.drop) return part_fate::alike;
    const voltage then = before.drop->typical, now = after.drop->typical;
    if (now > (1.0 + change_that_counts) * then) return part_fate::worse;
    return now < (1.0 - change_that_counts) * then ? part_fate::better : part_fate::alike;
}

}  // namespace detail

/// What has become of each part between two surveys of one station. Parts are known again by their names; one that was
/// renamed is gone and new.
/// @param before the earlier survey, one that was read @param after the later one
/// @see trend_judgement
[[nodiscard]] inline station_trend trend_of(const surveyed_station& before, const surveyed_station& after)
{
    station_trend out;
    if (before.found.conducts) out.drop_before = before.found.total_drop.typical;
    if (after.found.conducts) out.drop_after = after.found.total_drop.typical;
    const auto named = [](const assessment& in, const std::string& name) {
        const auto at =
            std::find_if(in.parts.begin(), in.parts.end(), [&](const part_result& p) { return p.name == name; });
        return at == in.parts.end() ? nullptr : &*at;
    };
    for (const part_result& p : after.found.parts) {
        part_trend t{.name = p.name, .after = detail::part_at_survey(after, p), .change = part_fate::added};
        if (const part_result* then = named(before.found, p.name)) {
            t.before = detail::part_at_survey(before, *then);
            t.change = detail::change_between(*t.before, *t.after);
            if (t.before->read && t.after->read && t.before->read->value() > 0.0)
                t.read_ratio = *t.after->read / *t.before->read;
        }
        out.parts.push_back(std::move(t));
    }
    for (const part_result& p : before.found.parts)
        if (named(after.found, p.name) == nullptr)
            out.parts.push_back(
                {.name = p.name, .before = detail::part_at_survey(before, p), .change = part_fate::gone});
    return out;
}

}  // namespace weldloop
