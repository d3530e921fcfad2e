#pragma once
/// @file
/// Stations whose reports together have every key.

#include <vector>

#include <weldloop/core/literals.hpp>

#include "io/example_stations.hpp"

namespace weldloop::test {

using namespace literals;

/// Stations that together have every key.
inline std::vector<assessed_station> stations_with_all_keys()
{
    std::vector<assessed_station> out = all_stations();
    // what remedies and forecasts of these stations need not have
    remedy r{"tighten it", "lug"};
    r.id = remedy_id::tight_bolt;
    r.verdict_before = verdict::over_limit;
    r.verdict_after = verdict::within_limit;
    out.front().remedies.push_back(r);
    for (part_result& p : out.front().found.parts) {
        if (!p.grip) continue;
        p.grip->quarter_lost = band<duration>{in_si<duration>(3.6e5), in_si<duration>(7.2e5), in_si<duration>(7.2e6)};
        p.grip->inspect_by = in_si<duration>(3.6e5);
        p.grip->outlook_poor = grip_outlook::unstable;
        p.grip->poor_points = {p.grip->points.front()};
    }
    // what supplies of several kinds have
    supply& all = out.front().is.supply.emplace();
    all = {.kind = supply_kind::drooping, .setting = 26_V, .highest_output = 44_V};
    all.current_setting = 150_A;
    all.fall = 20_mohm;
    all.rise = in_si<conductance>(2.0);
    all.limit = all.short_circuit = 260_A;
    all.points = {{0_A, 70_V}, {190_A, 12_V}};
    all.no_load = {.kind = output_current::alternating, .peak = 100_V, .rms = 72_V};
    all.polarity = electrode_polarity::positive;
    all.feeding = wire_feeding::by_arc_voltage;
    all.sensing.emplace();
    if (out.front().found.operating) out.front().found.operating->extension = 15_mm;
    out.front().found.year = yearly_loss{.energy_cost = 60.0, .time_cost = 500.0};
    // what a changing current has
    course_effects& changing = out.front().found.course.emplace();
    changing.share.emplace();
    changing.added.emplace();
    changing.levels = {{.asked = 60_A, .outcome = operating_outcome::found, .arc_wants = 20_V}};
    changing.edge = course_edge{.to = 200_A};
    // what answers may hold, and those of these stations need not
    clamp_prospect& c = out.back().answers.life->clamps.front();
    c.poor_ends = 300_h;
    c.cures = {{.kind = clamp_cure_kind::less_current, .clamp = "clamp", .amps = 100_A, .work = 40_degC}};
    out.back().answers.fault->doubtful.push_back({.which = 1, .probability = 0.6, .what = "fits nothing"});
    out.back().answers.fault->next = next_reading{.across = "lug", .bits = 0.1};
    return out;
}

}  // namespace weldloop::test
