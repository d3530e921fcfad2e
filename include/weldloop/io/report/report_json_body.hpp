#pragma once
/// @file
/// How report_json.hpp is answered.

#include <cmath>
#include <string>
#include <string_view>
#include <vector>

#include <nlohmann/json.hpp>

#include <weldloop/circuit/station.hpp>
#include <weldloop/field/station_answers.hpp>
#include <weldloop/io/report/answers_json.hpp>
#include <weldloop/io/report/course_words.hpp>
#include <weldloop/io/report/first_actions.hpp>
#include <weldloop/io/report/json_values.hpp>
#include <weldloop/io/report/report_json.hpp>
#include <weldloop/io/report/report_request.hpp>
#include <weldloop/io/report/report_words.hpp>
#include <weldloop/io/report/surface_words.hpp>
#include <weldloop/life/grip.hpp>
#include <weldloop/rating/assessment.hpp>

namespace weldloop {

namespace detail {

[[nodiscard]] inline json json_flags(const basis& b)
{
    json out = json::array();
    for (const range_flag flag : b.flags()) out.push_back(std::string(to_text(flag)));
    return out;
}

[[nodiscard]] inline json json_flag_ids(const basis& b)
{
    json out = json::array();
    for (const range_flag flag : b.flags()) out.push_back(std::string(id_text(flag)));
    return out;
}

/// @param lost_before share of the force when new that is gone before the forecast begins
[[nodiscard]] inline json json_grip(const grip_forecast& g, fraction lost_before)
{
    json points = json::array();
    for (const grip_point& p : g.points)
        points.push_back(
            {{"at_h", json_hours(p.at)},
             {"force_N", json_number(p.force.value())},
             {"resistance_ohm", p.resistance.value() > 0.0 ? json_number(p.resistance.value()) : json("open")},
             {"jaws_peak_degC", json_number(p.peak_temperature.in_celsius())}});
    const double now = 1.0 - static_cast<double>(lost_before);
    json out{{"points", points},
             {"grip_lost_before", json_number(static_cast<double>(lost_before))},
             {"grip_left", json_number(static_cast<double>(g.grip_left))},
             {"grip_left_poor", json_number(static_cast<double>(g.grip_left_low))},
             {"grip_left_of_new", json_number(now * static_cast<double>(g.grip_left))},
             {"grip_left_of_new_poor", json_number(now * static_cast<double>(g.grip_left_low))},
             {"outlook", std::string(to_text(g.outlook))},
             {"outlook_poor", std::string(to_text(g.outlook_poor))}};
    if (const auto end = poor_end_of(g)) out["poor_case_ends_h"] = json_hours(*end);
    if (g.quarter_lost)
        out["quarter_lost_h"] = {{"low", json_hours(g.quarter_lost->low)},
                                 {"typical", json_hours(g.quarter_lost->typical)},
                                 {"high", json_hours(g.quarter_lost->high)}};
    if (g.inspect_by) out["inspect_by_h"] = json_hours(*g.inspect_by);
    out["runs_away"] = g.runs_away;
    out["spring_destroyed"] = g.spring_destroyed;
    out["spots_melt"] = g.spots_melt;
    out["flags"] = json_flags(g.basis);
    out["flag_ids"] = json_flag_ids(g.basis);
    return out;
}

[[nodiscard]] inline json json_limit(const limit_use& u)
{
    json out{{"at", u.at}, {"name", u.name}};
    if (u.limit) out["limit_degC"] = json_number(u.limit->in_celsius());
    if (u.peak) out["peak_degC"] = json_band(*u.peak);
    out["used"] = json_number(u.used);
    out["used_poor"] = json_number(u.used_high);
    out["exceeds_probability"] = json_number(static_cast<double>(u.exceeds));
    if (u.from != nullptr) {
        out["source"] = to_text(*u.from);
        out["kind"] = std::string(to_text(u.from->kind));
    }
    return out;
}

/// A part's number, or the word that stands in its place: "open" for an open part, "none" where the loop has no state.
[[nodiscard]] inline json json_part(const station& s, const part_result& p, const assessment& found)
{
    const bool conducts = found.outcome == loop_outcome::solved;
    const json none = p.conducts ? "none" : "open";
    json out{{"name", p.name}, {"kind", p.word}, {"number", number_of(p)}, {"way", p.way}};
    out["with_stray_open"] = p.with_stray_open;
    out["stray_hides_it"] = p.stray_hides_it;
    out["current_A"] = conducts ? json_band(p.current) : none;
    out["verdict"] = std::string(to_text(p.verdict));
    out["verdict_id"] = std::string(id_text(p.verdict));
    out["decided_by"] = std::string(to_text(p.decided_by));
    out["reason"] = p.reason;
    out["drop_V"] = conducts ? json_band(p.drop) : none;
    out["loss_W"] = conducts ? json_band(p.loss) : none;
    out["peak_degC"] = !conducts ? none : temperature_is_known(p) ? json_band(p.peak) : json("unknown");
    if (conducts) {
        if (temperature_is_known(p)) out["peak_at"] = std::string(to_text(p.peak_at));
        if (p.hottest_spot) out["hottest_spot_degC"] = json_band(*p.hottest_spot);
        if (!p.limits.empty()) {
            out["limit_at"] = p.limits.front().at;
            out["limit_name"] = p.limits.front().name;
        }
        if (p.limit) out["limit_degC"] = json_number(p.limit->in_celsius());
        if (can_exceed(p)) {
            out["used"] = json_number(p.used);
            out["exceeds_probability"] = json_number(static_cast<double>(p.exceeds));
        }
        if (p.hottest_spot) out["softening_used"] = json_number(p.softening_used);
    }
    out["places"] = json::array();
    out["limits"] = json::array();
    if (conducts) {
        for (const place_result& at : p.places)
            out["places"].push_back({{"place", std::string(to_text(at.what))}, {"peak_degC", json_band(at.peak)}});
        for (const limit_use& u : p.limits) out["limits"].push_back(json_limit(u));
    }
    out["notes"] = p.notes;
    out["flags"] = json_flags(p.basis);
    out["flag_ids"] = json_flag_ids(p.basis);
    if (p.covering_use)
        out["covering_life"] = {{"work_h", json_hours(found.service.horizon)},
                                {"used_poor", json_number(p.covering_use->poor)},
                                {"used_typical", json_number(p.covering_use->typical)},
                                {"used_good", json_number(p.covering_use->good)}};
    if (p.grip) out["grip"] = json_grip(*p.grip, grip_lost_before(s, p));
    return out;
}

[[nodiscard]] inline json json_job(const job& j)
{
    return {{"process", std::string(to_text(j.process))},
            {"current_A", json_number(j.current.value())},
            {"on_s", json_number(j.duty.on().value())},
            {"period_s", json_number(j.duty.period().value())}};
}

[[nodiscard]] inline json json_surroundings(const surroundings& s)
{
    return {{"air_degC", json_number(s.air.in_celsius())},  {"wind_m_per_s", json_number(s.wind.value())},
            {"lay", std::string(to_text(s.lay))},           {"coil_turns", s.coil_turns.value_or(0)},
            {"bundled_leads", s.bundled_leads.value_or(0)}, {"altitude_m", json_number(s.altitude.value())},
            {"sun_W_per_m2", json_number(s.sun.value())}};
}

[[nodiscard]] inline json json_supply(const supply& s)
{
    json out{{"kind", std::string(to_text(s.kind))}};
    const auto put = [&out](const char* key, const auto& value) {
        if (value.value() > 0.0) out[key] = json_number(value.value());
    };
    const auto put_known = [&out](const char* key, const auto& value) {
        if (value) out[key] = json_number(value->value());
    };
    put("setting_V", s.setting);
    put("highest_output_V", s.highest_output);
    put("setting_A", s.current_setting);
    put("fall_ohm", s.fall);
    put("rise_S", s.rise);
    put_known("limit_A", s.limit);
    put_known("short_circuit_A", s.short_circuit);
    if (s.kind == supply_kind::drooping) out["shape"] = std::string(to_text(s.shape));
    for (const source_point& p : s.points)
        out["points"].push_back(
            {{"current_A", json_number(p.current.value())}, {"voltage_V", json_number(p.voltage.value())}});
    put_known("no_load_peak_V", s.no_load.peak);
    put_known("no_load_effective_V", s.no_load.rms);
    if (s.no_load.peak || s.no_load.rms) {
        out["no_load_current"] = std::string(to_text(s.no_load.kind));
        out["hazard"] = std::string(to_text(s.hazard));
    }
    if (s.polarity != electrode_polarity::not_stated) out["polarity"] = std::string(to_text(s.polarity));
    if (s.feeding != wire_feeding::constant_speed) out["feeding"] = std::string(to_text(s.feeding));
    if (s.sensing)
        out["sensing"] = {{"electrode_side", s.sensing->electrode_side}, {"work_side", s.sensing->work_side}};
    return out;
}

[[nodiscard]] inline json json_operating(const operating_point& p)
{
    json out{{"outcome", std::string(to_text(p.outcome))},
             {"held", std::string(to_text(p.held))},
             {"asked_A", json_number(p.asked.value())}};
    if (!p.is_found()) return out;
    out["arc_line_reaches"] = p.line_in_range;
    if (!p.line_in_range && p.held == arc_hold::arc_length) return out;
    out["current_A"] = json_number(p.current.value());
    out["terminals_V"] = json_number(p.terminals.value());
    if (p.inductive.value() > 0.0) out["inductive_V"] = json_number(p.inductive.value());
    out["loop_drop_V"] = json_number(p.loop_drop.value());
    out["arc_V"] = json_number(p.arc_voltage.value());
    if (p.line_in_range) out["arc_length_m"] = json_number(p.arc_length.value());
    if (p.extension) out["extension_m"] = json_number(p.extension->value());
    return out;
}

[[nodiscard]] inline json json_course(const assessment& found)
{
    const course_effects& c = *found.course;
    json out{{"frequency_Hz", json_number(c.frequency.value())},
             {"resistance_ohm", json_number(c.resistance.value())},
             {"skin_ratio", json_number(c.skin_ratio)},
             {"inductance_H", json_band(c.inductance)},
             {"reactance_ohm", json_band(c.reactance)},
             {"first_harmonic_A", json_number(c.fundamental.value())},
             {"inductive_V", json_band(c.inductive)},
             {"mean_A", json_number(c.mean.value())}};
    const auto numbers = [](const band<double>& b) {
        return json{{"low", json_number(b.low)}, {"typical", json_number(b.typical)}, {"high", json_number(b.high)}};
    };
    if (c.share) out["share_of_no_load"] = numbers(*c.share);
    if (c.added) out["added_V"] = json_band(*c.added);
    out["levels"] = json::array();
    for (const level_point& l : c.levels) {
        json level{{"asked_A", json_number(l.asked.value())},
                   {"time_s", json_number(l.time.value())},
                   {"outcome", std::string(to_text(l.outcome))},
                   {"is_held", l.is_held}};
        if (l.outcome == operating_outcome::found) {
            level["current_A"] = json_number(l.current.value());
            level["terminals_V"] = json_number(l.terminals.value());
            level["loop_drop_V"] = json_number(l.loop_drop.value());
            level["arc_V"] = json_number(l.arc_voltage.value());
            if (l.arc_wants.value() > 0.0) level["arc_asks_V"] = json_number(l.arc_wants.value());
        }
        out["levels"].push_back(std::move(level));
    }
    if (c.edge) {
        json edge{{"from_A", json_number(c.edge->from.value())},
                  {"to_A", json_number(c.edge->to.value())},
                  {"time_s", json_number(c.edge->time.value())},
                  {"end", std::string(to_text(c.edge->end))}};
        if (c.edge->end == edge_end::reached || c.edge->end == edge_end::too_late)
            edge["takes_s"] = json_band(c.edge->takes);
        if (c.edge->end != edge_end::not_known) edge["lost_share"] = numbers(c.edge->lost);
        out["edge"] = std::move(edge);
    }
    out["lines"] = course_lines(found);
    return out;
}

[[nodiscard]] inline json json_remedy(const remedy& r)
{
    json out;
    if (r.id) out["id"] = std::string(to_text(*r.id));
    out["what"] = r.what;
    out["part"] = r.part;
    out["effort"] = std::string(to_text(r.effort));
    out["volts_regained_V"] = json_number(r.volts_regained.value());
    out["cooled_by_K"] = json_number(r.cooled_by.value());
    out["restores_circuit"] = r.restores_circuit;
    const auto put_verdict = [&out](const std::string& key, const std::optional<verdict>& v) {
        if (!v) return;
        out[key] = std::string(to_text(*v));
        out[key + "_id"] = std::string(id_text(*v));
    };
    put_verdict("verdict_before", r.verdict_before);
    put_verdict("verdict_after", r.verdict_after);
    out["clears_verdict"] = r.clears_verdict;
    out["clears_findings"] = json::array();
    for (const finding_id f : r.clears_findings) out["clears_findings"].push_back(std::string(to_text(f)));
    out["clears_weld"] = json::array();
    for (const weld_id w : r.clears_weld) out["clears_weld"].push_back(std::string(to_text(w)));
    out["clears_parts"] = r.clears_parts;
    out["makes_moot"] = r.makes_moot;
    out["is_summary"] = r.is_summary;
    out["is_remark"] = r.is_remark;
    return out;
}

[[nodiscard]] inline json json_surface(const surface_in_use& s)
{
    const auto multiplier = resistance_multiplier(s.state);
    return {{"state", std::string(to_text(s.state))},
            {"over_clean", multiplier ? json{{"low", json_number(multiplier->low)},
                                             {"typical", json_number(multiplier->typical)},
                                             {"high", json_number(multiplier->high)}}
                                      : json("open")},
            {"kind", std::string(to_text(surface_state_judgement.kind))},
            {"parts", s.parts}};
}

[[nodiscard]] inline json json_source(const source& s)
{
    return {{"document", std::string(s.document)},
            {"edition", std::string(s.edition)},
            {"place", std::string(s.place)},
            {"kind", std::string(to_text(s.kind))}};
}

}  // namespace detail

inline std::string report_json(const station& s, const assessment& found, const std::vector<remedy>& remedies,
                               const report_request& asked)
{
    using detail::json;
    const station_answers& answers = asked.answers;
    const std::vector<first_action> actions = first_actions(s, found, remedies, answers);
    json out{{"schema", std::string(report_schema)},
             {"name", found.name},
             {"outcome", std::string(outcome_word(found.outcome))},
             {"conducts", found.conducts}};
    out["version"] = version_text();
    if (asked.date) out["date"] = detail::date_text(*asked.date);
    out["shown_in"] = {{"temperatures", std::string(asked.units.temperatures.name())},
                       {"lengths", asked.units.lengths == shown_lengths::feet ? "ft" : "m"}};
    out["answer"] = {{"says", std::string(to_text(circuit_answer_of(found, answers)))},
                     {"sentence", answer_sentence(found, actions, answers)},
                     {"weld_sentence", weld_answer(found, answers)}};
    out["dangers"] = json::array();
    for (const present_danger& d : present_dangers(found))
        out["dangers"].push_back({{"id", std::string(to_text(d.finding.id))},
                                  {"cautions", d.cautions},
                                  {"caution_ids", detail::json_caution_ids(d.cautions)}});
    out["actions"] = json::array();
    for (const first_action& a : actions) {
        json action;
        if (a.does.id) action["id"] = std::string(to_text(*a.does.id));
        action["what"] = what_line(a.does);
        action["part"] = a.does.part;
        action["by_readings"] = a.by_readings;
        action["cautions"] = a.cautions;
        action["caution_ids"] = detail::json_caution_ids(a.cautions);
        out["actions"].push_back(std::move(action));
    }
    out["findings"] = json::array();
    for (const loop_finding& f : found.findings)
        out["findings"].push_back(
            {{"id", std::string(to_text(f.id))}, {"severity", std::string(to_text(f.severity))}, {"text", f.text}});
    out["job"] = detail::json_job(s.job);
    out["surroundings"] = detail::json_surroundings(s.where);
    if (s.supply) out["supply"] = detail::json_supply(*s.supply);

    out["parts"] = json::array();
    for (const part_result& p : found.parts) out["parts"].push_back(detail::json_part(s, p, found));

    const json none = found.outcome == loop_outcome::open_circuit ? "open" : "none";
    out["ways"] = json::array();
    for (const way_result& w : found.ways)
        out["ways"].push_back({{"name", w.name},
                               {"kind", std::string(to_text(w.kind))},
                               {"current_A", found.conducts ? detail::json_band(w.current) : none},
                               {"share", found.conducts ? detail::json_number(static_cast<double>(w.share)) : none},
                               {"conducts", w.conducts},
                               {"spans_arc", w.spans_arc}});
    const auto volts = [&](voltage v) { return found.conducts ? detail::json_number(v.value()) : none; };
    const auto volt_band = [&](const band<voltage>& v) { return found.conducts ? detail::json_band(v) : none; };
    out["total_drop_V"] = volts(found.total_drop.typical);
    out["total_drop_band_V"] = volt_band(found.total_drop);
    out["wire_extension_drop_V"] = volt_band(found.wire_extension_drop);
    if (s.allowed_drop) out["allowed_drop_V"] = detail::json_number(s.allowed_drop->value());
    out["arc_V"] = volts(found.arc_voltage.typical);
    out["arc_band_V"] = volt_band(found.arc_voltage);
    out["arc_V_basis"] = found.arc_basis;
    if (found.headroom) out["headroom_V"] = volt_band(*found.headroom);
    out["weld"] = json::array();
    for (const weld_statement& w : found.weld)
        out["weld"].push_back({{"id", std::string(to_text(w.id))}, {"text", w.text}});
    if (found.operating) out["operating_point"] = detail::json_operating(*found.operating);
    if (found.course) out["course"] = detail::json_course(found);
    if (found.year) {
        json& year = out["year"];
        year["energy_lost_J"] = detail::json_number(found.year->lost.value());
        year["arc_time_longer_s"] = detail::json_number(found.year->arc_time.value());
        if (found.year->energy_cost) year["energy_cost"] = detail::json_number(*found.year->energy_cost);
        if (found.year->time_cost) year["time_cost"] = detail::json_number(*found.year->time_cost);
    }
    out["weakest"] = found.weakest().name;
    if (answers.life) out["life"] = detail::json_life(*answers.life);
    if (!answers.observations.empty()) out["fault"] = detail::json_fault(answers);

    out["remedies"] = json::array();
    for (const remedy& r : remedies) out["remedies"].push_back(detail::json_remedy(r));
    const std::vector<std::string> cautions = all_cautions_of(found, answers);
    out["cautions"] = cautions;
    out["caution_ids"] = detail::json_caution_ids(cautions);
    out["surfaces"] = json::array();
    for (const surface_in_use& used : surfaces_in_use(s)) out["surfaces"].push_back(detail::json_surface(used));
    out["sources"] = json::array();
    for (const source& from : sources_of(found, answers)) out["sources"].push_back(detail::json_source(from));
    return detail::json_text(out) + "\n";
}

}  // namespace weldloop
