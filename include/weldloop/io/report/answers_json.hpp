#pragma once
/// @file
/// How long a station lasts and where its fault is, as parts of its JSON report.

#include <optional>
#include <string>
#include <string_view>

#include <nlohmann/json.hpp>

#include <weldloop/field/station_answers.hpp>
#include <weldloop/io/report/fault_words.hpp>
#include <weldloop/io/report/json_values.hpp>
#include <weldloop/io/report/life_words.hpp>
#include <weldloop/life/station_service.hpp>
#include <weldloop/rating/station_life.hpp>

namespace weldloop::detail {

[[nodiscard]] inline json json_share(fraction x)
{
    return json_number(static_cast<double>(x));
}
[[nodiscard]] inline json json_hours_or_never(const std::optional<duration>& t)
{
    return t ? json_hours(*t) : json("not within horizon");
}

[[nodiscard]] inline json json_clamp_hours(const clamp_hours& h)
{
    return {{"poor", json_hours_or_never(h.poor)},
            {"typical", json_hours_or_never(h.typical)},
            {"mild", json_hours_or_never(h.mild)}};
}

[[nodiscard]] inline json json_causes(const grip_causes& c)
{
    return {{"force", json_share(c.force)},
            {"film", json_share(c.film)},
            {"heat", json_share(c.heat)},
            {"disturbance", json_share(c.disturbance)}};
}

[[nodiscard]] inline json json_cure(const clamp_cure& c)
{
    json out{{"kind", std::string(to_text(c.kind))}};
    if (!c.clamp.empty()) out["clamp"] = c.clamp;
    if (c.amps) out["amps_A"] = json_number(c.amps->value());
    if (c.work) out["work_degC"] = json_number(c.work->in_celsius());
    out["grip_left"] = json_share(c.grip_left);
    out["grip_left_poor"] = json_share(c.grip_left_poor);
    out["keeps_poor"] = c.keeps_poor;
    return out;
}

[[nodiscard]] inline json json_prospect(const clamp_prospect& c, duration horizon)
{
    json out{{"name", c.name},
             {"number", c.place + 1},
             {"keeps_typically", c.keeps_typically},
             {"keeps_poor", c.keeps_poor},
             {"quarter_lost_h", json_clamp_hours(c.quarter_lost)}};
    if (c.cable_needs) {
        out["lead"] = c.lead;
        out["cable_needs_N"] = json_number(c.cable_needs->value());
        out["cable_not_held_h"] = json_clamp_hours(c.cable_not_held);
    }
    if (c.poor_ends) out["poor_case_ends_h"] = json_hours(*c.poor_ends);
    out["spots_melt_poor"] = c.poor_melts;
    out["causes"] = json_causes(c.causes);
    if (c.untouched) out["untouched_resistance_ohm"] = json_number(c.untouched->value());
    if (c.moved) out["moved_resistance_ohm"] = json_number(c.moved->value());
    out["cures_sought"] = c.cures_sought;
    out["cures"] = json::array();
    for (const clamp_cure& cure : c.cures) out["cures"].push_back(json_cure(cure));
    out["look_again_h"] = json_hours_or_never(c.look_again);
    out["lines"] = clamp_prospect_lines(c, horizon);
    return out;
}

[[nodiscard]] inline json json_drift_case(const drift_case& c)
{
    return {{"yields_h", c.yields ? json_hours(*c.yields) : json("not as far as followed")},
            {"resistance_ratio", json_number(c.resistance_ratio)},
            {"softening_used", json_number(c.softening_used)},
            {"causes",
             {{"film", json_share(c.causes.film)},
              {"force", json_share(c.causes.force)},
              {"fretting", json_share(c.causes.fretting)}}}};
}
[[nodiscard]] inline json json_drift_end(const drift_end& e)
{
    return {{"outcome", std::string(outcome_word(e.outcome))}, {"followed_h", json_hours(e.at)}};
}

[[nodiscard]] inline json json_service(const station_service& s)
{
    const grip_service& c = s.clamps;
    json out{{"look_ahead_h", json_hours(s.horizon)}, {"shift_h", json_hours(c.shift)},
             {"rest_h", json_hours(c.rest)},          {"openings", json_number(c.openings)},
             {"knocks", json_number(c.knocks)},       {"drags", json_number(c.drags)},
             {"on_work", json_share(c.on_work)}};
    if (c.clean_every) out["clean_every_h"] = json_hours(*c.clean_every);
    if (c.tighten_every) out["tighten_every_h"] = json_hours(*c.tighten_every);
    out["joints_shift_h"] = json_hours(s.joints.shift);
    out["joints_rest_h"] = json_hours(s.joints.rest);
    out["starts"] = json_number(s.joints.starts);
    out["air"] = std::string(to_text(s.joints.air));
    out["motion"] = std::string(to_text(s.joints.motion));
    return out;
}

[[nodiscard]] inline json json_life(const station_life& life)
{
    json out{{"service", json_service(life.service)}};
    out["clamps"] = json::array();
    for (const clamp_prospect& c : life.clamps) out["clamps"].push_back(json_prospect(c, life.service.horizon));
    out["joints"] = json::array();
    for (const joint_drift& j : life.joints.joints)
        out["joints"].push_back({{"name", j.name},
                                 {"number", j.part + 1},
                                 {"contact", std::string(j.contact)},
                                 {"poor", json_drift_case(j.poor)},
                                 {"typical", json_drift_case(j.typical)},
                                 {"mild", json_drift_case(j.mild)}});
    out["joints_followed"] = {{"poor", json_drift_end(life.joints.poor)},
                              {"typical", json_drift_end(life.joints.typical)},
                              {"mild", json_drift_end(life.joints.mild)}};
    out["lines"] = joint_drift_lines(life.joints);
    return out;
}

[[nodiscard]] inline json json_fault(const station_answers& a)
{
    json out;
    out["readings"] = json::array();
    for (const observation& o : a.observations) out["readings"].push_back(observation_line(o));
    out["is_located"] = a.fault.has_value();
    out["parts"] = json::array();
    out["doubtful"] = json::array();
    out["not_judged"] = json::array();
    out["lines"] = json::array();
    if (a.fault) {
        const fault_search& f = *a.fault;
        for (const suspected_part& p : f.parts) {
            json cures = json::array();
            for (const std::optional<remedy_id>& id : {p.remedy.id, p.second_cure})
                if (id) cures.push_back(std::string(to_text(*id)));
            out["parts"].push_back({{"name", p.name},
                                    {"probability", json_number(static_cast<double>(p.probability))},
                                    {"failing", json_number(static_cast<double>(p.failing))},
                                    {"condition", p.condition},
                                    {"condition_id", std::string(to_text(p.condition_id))},
                                    {"condition_share", json_number(static_cast<double>(p.condition_share))},
                                    {"remedy", p.remedy.what},
                                    {"remedy_ids", std::move(cures)},
                                    {"is_read", p.is_read}});
        }
        out["none"] = json_number(static_cast<double>(f.none));
        if (f.next)
            out["next"] = {
                {"across", f.next->across}, {"to", f.next->to}, {"quantity", std::string(to_text(f.next->quantity))}};
        for (const doubtful_observation& d : f.doubtful)
            out["doubtful"].push_back({{"reading", d.which + 1},
                                       {"probability", json_number(static_cast<double>(d.probability))},
                                       {"text", d.what}});
        for (const unused_observation& u : f.not_judged)
            out["not_judged"].push_back({{"reading", u.which + 1}, {"text", u.what}});
        const suspected_part* const failing = f.failing_part();
        out["stops_job"] = failing != nullptr ? json(failing->name) : json(nullptr);
        out["crossing"] = f.crossing;
        out["lines"] = fault_lines(f);
    } else
        out["lines"].push_back(std::string(fault_without_state));
    out["cautions"] = json::array();
    for (const std::string_view c : reading_cautions) out["cautions"].push_back(std::string(c));
    out["caution_ids"] = json_caution_ids(reading_cautions);
    return out;
}

}  // namespace weldloop::detail
