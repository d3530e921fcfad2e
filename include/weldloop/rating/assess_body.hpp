#pragma once
/// @file
/// How assess.hpp is answered.

#include <algorithm>
#include <array>
#include <cstddef>
#include <optional>
#include <string>
#include <utility>
#include <variant>
#include <vector>

#include <weldloop/circuit/clamp_neighbours.hpp>
#include <weldloop/circuit/drawn_scatter.hpp>
#include <weldloop/circuit/loop_body.hpp>
#include <weldloop/circuit/loop_scatter.hpp>
#include <weldloop/circuit/sensed_drop.hpp>
#include <weldloop/circuit/station.hpp>
#include <weldloop/circuit/station_parts.hpp>
#include <weldloop/core/number_text.hpp>
#include <weldloop/core/text.hpp>
#include <weldloop/life/grip_body.hpp>
#include <weldloop/rating/arc_voltage.hpp>
#include <weldloop/rating/assess.hpp>
#include <weldloop/rating/assessment.hpp>
#include <weldloop/rating/cautions.hpp>
#include <weldloop/rating/clamp_on_work.hpp>
#include <weldloop/rating/covering_life.hpp>
#include <weldloop/rating/findings.hpp>
#include <weldloop/rating/lead_findings.hpp>
#include <weldloop/rating/operating_findings.hpp>
#include <weldloop/rating/part_notes.hpp>
#include <weldloop/rating/part_verdict.hpp>
#include <weldloop/rating/solved_station.hpp>
#include <weldloop/rating/way_findings.hpp>
#include <weldloop/rating/weld_statements.hpp>

namespace weldloop {

namespace detail {

inline void collect(std::vector<source>& all, const basis& b)
{
    for (const source* s : b.sources())
        if (std::find(all.begin(), all.end(), *s) == all.end()) all.push_back(*s);
}

// What the loop takes and what it leaves for the arc.
inline void sum_up(assessment& out, const solved_station& solved)
{
    const station& s = solved.of();
    out.conducts = solved.typical().is_solved();
    out.outcome = solved.typical().outcome;
    if (!out.conducts) {
        out.arc_basis =
            out.outcome == loop_outcome::open_circuit ? "the circuit is open: no arc" : "the loop has no steady state";
        return;
    }
    constexpr double low = 0.05, high = 0.95;
    const scattered_sum drop = solved.scatter_of().total_drop(solved.typical().total_drop.value());
    out.total_drop = volts_band(drop.quantile(low), drop.base(), drop.quantile(high));
    const arc_share share = arc_share_of(s, out.total_drop, sensed_drop_of(s, solved.typical()));
    out.arc_voltage = share.arc;
    out.arc_basis = share.relative_to;
    out.headroom = share.headroom;
}

/// All that follows from a solved station: parts with their verdicts, totals, findings. No forecast, no cautions.
[[nodiscard]] inline assessment judged(const solved_station& solved)
{
    const station& s = solved.of();
    assessment out;
    out.name = s.name;
    sum_up(out, solved);
    for (std::size_t i = 0; i < parts_in(s); ++i) {
        const part_address a = address_of(s, i);
        const path_part& part = path_at(s, a)[a.index];
        if (std::holds_alternative<arc>(part)) continue;
        part_result r;
        r.name = name_of(part, i);
        r.kind = weldloop::kind_of(part);
        r.word = word_of(part);
        r.place = i;
        if (a.way != part_address::trunk) r.way = name_of_way(s, a.way);
        measure(r, solved, i);
        judge(r, solved, i);
        note_what_is_not_known(r, part, solved, i);
        out.parts.push_back(std::move(r));
        if (!out.conducts) continue;
        const band<voltage>& extension = solved.network().parts()[i].extension;
        out.wire_extension_drop.low += extension.low;
        out.wire_extension_drop.typical += extension.typical;
        out.wire_extension_drop.high += extension.high;
    }
    out.ways = ways_of(solved);
    out.findings = findings_for(s, out, solved.poor().outcome);
    return out;
}

}  // namespace detail

[[nodiscard]] inline assessment assess(const station& s, const station_service& service)
{
    detail::require_station_service(service);
    const detail::solved_station solved(s);
    assessment out = detail::judged(solved);
    out.service = service;
    std::optional<detail::solved_station> without;
    if (detail::has_stray_ways(s)) {
        without.emplace(s, detail::openings_of_stray_ways(s));
        detail::take_worse(out, detail::judged(*without), s);
    }
    if (!s.ways.empty() || !s.others.empty()) detail::add_way_findings(out, solved);
    detail::add_operating_point(out, solved);
    detail::add_course_effects(out, solved);
    detail::note_hot_work(out, solved);
    detail::add_covering_findings(out, s);
    detail::add_cold_coverings(out, s);
    detail::add_intermittent(out, s);
    // typical and poor, with stray ways as they stand and open: each made when the first clamp asks
    std::array<std::array<std::optional<detail::loop_around>, 2>, 2> around;
    for (part_result& r : out.parts) {
        if (out.conducts && std::holds_alternative<work_connection>(part_at(s, r.place)) &&
            r.current.typical > current{}) {
            const detail::solved_station& in = r.with_stray_open ? *without : solved;
            auto& [typical, poor_case] = around[r.with_stray_open ? 1 : 0];
            const auto in_loop = [&](auto& loop, const solve::periodic_state& state, scatter level) {
                if (!loop) loop.emplace(in.network(), state, static_cast<double>(s.job.duty.share()), level);
                return loop->of(r.place);
            };
            const detail::clamp_in_loop usual = in_loop(typical, in.typical_state(), scatter::typical);
            const detail::clamp_in_loop poor =
                in.poor_state() != nullptr ? in_loop(poor_case, *in.poor_state(), scatter::high) : usual;
            r.grip = detail::forecast_in_loop(s, r.place, usual, poor, service.horizon, service.clamps);
            r.basis.add(r.grip->basis);
        }
        if (out.conducts) detail::add_covering_use(r, s, service.horizon);
        detail::collect(out.sources, r.basis);
    }
    basis own;
    if (out.conducts) {
        own.add(solved.divides() ? drawn_scatter_model : loop_scatter_model);
        if (const arc_share share = arc_share_of(s, out.total_drop); share.from != nullptr) own.add(*share.from);
    }
    out.weld = weld_statements_for(s, out);
    out.year = detail::year_of(s, out);
    if (!out.weld.empty()) own.add(weld_thresholds);
    if (std::any_of(out.weld.begin(), out.weld.end(), [](const weld_statement& w) {
            return w.id == weld_id::choked_current || w.id == weld_id::blunt_pulses;
        }))
        own.add(course_thresholds);
    if (out.course) own.add(out.course->basis);
    out.cautions = cautions_for(s, out);
    if (s.supply) detail::add_supply_sources(own, s);
    if (out.operating && out.operating->is_found()) own.add(out.operating->basis);
    own.add(osha_1926_351).add(osha_1910_254).add(touch_threshold);
    if (detail::has_stray_ways(s)) own.add(wac_296_307_49009).add(csa_w117_2);
    detail::collect(out.sources, own);
    return out;
}

}  // namespace weldloop
