#pragma once
/// @file
/// One station surveyed twice: what has become of each joint.

#include <algorithm>
#include <cmath>
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
inline constexpr source trend_judgement{"a typical drop, a resistance or a tightness that was read counts as changed "
                                        "from a tenth on, a temperature that was "
                                        "read from the two errors on, other looks as soon as they differ",
                                        "2026",
                                        {},
                                        source_kind::judgement};
/// See trend_judgement.
inline constexpr double change_that_counts = 0.1;

/// What has become of a part; of two, the later one in this order is said.
enum class part_fate {
    alike,    ///< no other verdict, no drop that counts as changed, and nothing that was read or seen differs
    differs,  ///< what was seen or felt is not the same, which by itself is no better and no worse
    better,   ///< a milder verdict; with the same one less drop; or less resistance as read, tighter, more strands
    worse,    ///< a graver verdict; with the same one more drop; or more resistance as read, looser, fewer strands
    added,    ///< no part had its name before
    gone,     ///< no part has its name now
};

/// The word for a change.
[[nodiscard]] constexpr std::string_view to_text(part_fate c)
{
    switch (c) {
    case part_fate::alike: return "alike";
    case part_fate::differs: return "differs";
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
    std::optional<temperature> hottest = {};          ///< as read last; empty: not read
    std::vector<observation> looks = {};  ///< tightness, faces, strands, arc as found last, one of each sort
};

/// A part at both.
struct part_trend {
    std::string name = {};                  ///< by which it is known again
    std::optional<part_then> before = {};   ///< empty: not there
    std::optional<part_then> after = {};    ///< empty: not there
    part_fate change = part_fate::alike;    ///< the worse of what is calculated and what was read
    bool by_readings = false;               ///< the change is one of what was read, felt or seen
    std::optional<double> read_ratio = {};  ///< resistance that was read, after over before; empty: not read at both
};

/// A span of parts that was read across.
struct span_trend {
    std::string from = {};                  ///< its first part
    std::string to = {};                    ///< its last part
    std::optional<resistance> before = {};  ///< by the last reading; empty: none
    std::optional<resistance> after = {};   ///< the same of the later survey
    std::optional<double> ratio = {};       ///< after over before; empty: not read at both
};

/// A station at both.
struct station_trend {
    std::vector<part_trend> parts = {};       ///< those of the later survey in their order, then what is gone
    std::vector<span_trend> spans = {};       ///< read at one of the two at least, those of the earlier one first
    std::size_t known_again = 0;              ///< parts of one name and kind at both, the arc not counted
    std::size_t most_parts = 0;               ///< of the two stations, the arc not counted
    bool names_differ = false;                ///< the stations have not the same name
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

/// Whether an observation is what was felt or seen of a part.
[[nodiscard]] inline bool is_look_of(const observation& o, const std::string& part)
{
    const auto is = [&]<class Look>(const Look* look) { return look != nullptr && look->part == part; };
    return is(std::get_if<tightness_observation>(&o)) || is(std::get_if<surface_observation>(&o)) ||
           is(std::get_if<strand_observation>(&o)) || is(std::get_if<arc_observation>(&o));
}

[[nodiscard]] inline part_then part_at_survey(const surveyed_station& s, const part_result& p)
{
    part_then out{.verdict = p.verdict, .read = last_read(s, p.name)};
    if (s.found.conducts) out.drop = p.drop;
    if (s.found.conducts && !p.places.empty()) out.peak = p.peak_temperature;
    for (const observation& o : s.answers.observations) {
        if (const auto* heat = std::get_if<heat_observation>(&o)) {
            if (heat->part == p.name) out.hottest = heat->hottest;
        } else if (is_look_of(o, p.name)) {
            std::erase_if(out.looks, [&](const observation& known) { return known.index() == o.index(); });
            out.looks.push_back(o);
        }
    }
    return out;
}

/// Half of the 95 % interval of the last temperature that was read of a part.
[[nodiscard]] inline temperature_difference heat_error(const surveyed_station& s, const std::string& part)
{
    temperature_difference out{};
    for (const observation& o : s.answers.observations)
        if (const auto* heat = std::get_if<heat_observation>(&o); heat != nullptr && heat->part == part)
            out = heat->error;
    return out;
}

/// Of two, the one that is said: a change for the worse first.
[[nodiscard]] constexpr part_fate graver_fate(part_fate a, part_fate b)
{
    return a > b ? a : b;
}
[[nodiscard]] constexpr part_fate fate_of_more(bool is_more, bool is_less)
{
    return is_more ? part_fate::worse : is_less ? part_fate::better : part_fate::alike;
}

/// What has become of one look; alike where the two are of different sorts.
[[nodiscard]] inline part_fate change_of_look(const observation& before, const observation& after)
{
    if (before.index() != after.index()) return part_fate::alike;
    if (const auto* was = std::get_if<tightness_observation>(&before)) {
        const double is = std::get<tightness_observation>(after).share;
        return fate_of_more(is<(1.0 - change_that_counts) * was->share, is>(1.0 + change_that_counts) * was->share);
    }
    if (const auto* was = std::get_if<strand_observation>(&before)) {
        const strand_loss is = std::get<strand_observation>(after).missing;
        return fate_of_more(is > was->missing, is < was->missing);
    }
    if (const auto* was = std::get_if<arc_observation>(&before)) {
        const arc_look is = std::get<arc_observation>(after).seen;
        return fate_of_more(is > was->seen, is < was->seen);
    }
    const auto* was = std::get_if<surface_observation>(&before);
    return was != nullptr && was->seen != std::get<surface_observation>(after).seen ? part_fate::differs
                                                                                    : part_fate::alike;
}

/// What has become of a part by what was read, felt and seen of it at both surveys.
[[nodiscard]] inline part_fate change_as_read(const part_trend& t, temperature_difference heat_errors)
{
    part_fate out = part_fate::alike;
    if (t.read_ratio)
        out = fate_of_more(*t.read_ratio > 1.0 + change_that_counts, *t.read_ratio < 1.0 - change_that_counts);
    for (const observation& was : t.before->looks)
        for (const observation& is : t.after->looks) out = graver_fate(out, change_of_look(was, is));
    if (t.before->hottest && t.after->hottest) {
        const temperature_difference apart = *t.after->hottest - *t.before->hottest;
        if (apart > heat_errors || -apart > heat_errors) out = graver_fate(out, part_fate::differs);
    }
    return out;
}

/// Spans that were read across, by their ends.
inline void add_spans(std::vector<span_trend>& out, const surveyed_station& s,
                      std::optional<resistance> span_trend::*at)
{
    for (const observation& o : s.answers.observations) {
        const auto* r = std::get_if<reading>(&o);
        if (r == nullptr || r->to.empty()) continue;
        auto known = std::find_if(out.begin(), out.end(),
                                  [&](const span_trend& t) { return t.from == r->across && t.to == r->to; });
        if (known == out.end()) known = out.insert(out.end(), {.from = r->across, .to = r->to});
        (*known).*at = r->volts / r->current;
    }
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

/// What has become of each part between two surveys of one station. Parts are known again by name and kind; one that
/// was renamed is gone and new. Said is the worse of what is calculated from the two descriptions and of what was read,
/// felt and seen at both. Whether it is one station at all, `known_again` and `names_differ` tell.
/// @param before the earlier survey, one that was read @param after the later one
/// @see trend_judgement
[[nodiscard]] inline station_trend trend_of(const surveyed_station& before, const surveyed_station& after)
{
    station_trend out;
    if (before.found.conducts) out.drop_before = before.found.total_drop.typical;
    if (after.found.conducts) out.drop_after = after.found.total_drop.typical;
    const auto like = [](const assessment& in, const part_result& other) {
        const auto at = std::find_if(in.parts.begin(), in.parts.end(), [&](const part_result& p) {
            return p.name == other.name && p.kind == other.kind;
        });
        return at == in.parts.end() ? nullptr : &*at;
    };
    const auto counted = [](const assessment& in) {
        return static_cast<std::size_t>(std::count_if(in.parts.begin(), in.parts.end(),
                                                      [](const part_result& p) { return p.kind != part_kind::arc; }));
    };
    out.names_differ = before.found.name != after.found.name;
    out.most_parts = std::max(counted(before.found), counted(after.found));
    for (const part_result& p : after.found.parts) {
        part_trend t{.name = p.name, .after = detail::part_at_survey(after, p), .change = part_fate::added};
        if (const part_result* then = like(before.found, p)) {
            if (p.kind != part_kind::arc) ++out.known_again;
            t.before = detail::part_at_survey(before, *then);
            if (t.before->read && t.after->read && t.before->read->value() > 0.0)
                t.read_ratio = *t.after->read / *t.before->read;
            const double was = detail::heat_error(before, p.name).value(),
                         is = detail::heat_error(after, p.name).value();
            const part_fate calculated = detail::change_between(*t.before, *t.after),
                            read = detail::change_as_read(t, in_si<temperature_difference>(std::hypot(was, is)));
            t.change = detail::graver_fate(calculated, read);
            t.by_readings = t.change != calculated;
        }
        out.parts.push_back(std::move(t));
    }
    for (const part_result& p : before.found.parts)
        if (like(after.found, p) == nullptr)
            out.parts.push_back(
                {.name = p.name, .before = detail::part_at_survey(before, p), .change = part_fate::gone});
    detail::add_spans(out.spans, before, &span_trend::before);
    detail::add_spans(out.spans, after, &span_trend::after);
    for (span_trend& s : out.spans)
        if (s.before && s.after && s.before->value() > 0.0) s.ratio = *s.after / *s.before;
    return out;
}

}  // namespace weldloop
