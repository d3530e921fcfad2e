#pragma once
// Legal questions drawn at random, extreme ones among them: what bench/longest.cpp asks. The same number draws the same
// question.
#include <algorithm>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <random>
#include <string>
#include <utility>
#include <vector>

#include <weldloop/circuit/operating_point.hpp>
#include <weldloop/weldloop.hpp>

namespace bench {

using namespace weldloop;

// What may be drawn of leads, joints, stations, clamps and readings. Bounds are those of station files, and beyond them
// where a program may ask more.
class draw {
public:
    explicit draw(std::uint32_t seed) : random_(seed) {}

    // ---- numbers

    double between(double low, double high) { return low + (high - low) * unit_(random_); }
    double magnitude(double low, double high) { return std::exp(between(std::log(low), std::log(high))); }
    bool one_in(int n) { return unit_(random_) * n < 1.0; }
    int count(int most) { return 1 + static_cast<int>(unit_(random_) * most); }
    template <class List>
    auto of(const List& list)
    {
        return list[static_cast<std::size_t>(count(static_cast<int>(std::size(list))) - 1)];
    }

    // ---- what lies around, and the load

    surroundings where(double hottest_air = 80)
    {
        surroundings out{.air = temperature::celsius(between(-60, hottest_air))};
        if (one_in(2)) out.wind = in_si<speed>(magnitude(0.01, 50));
        out.lay = of(all_lays);
        if (out.lay == lay::coiled && one_in(2)) out.coil_turns = count(most_bundled_turns);
        if (out.lay == lay::bundled && one_in(2)) out.bundled_leads = count(most_bundled_turns);
        if (one_in(3)) out.altitude = in_si<length>(between(0, 11000));
        if (one_in(3)) out.sun = in_si<heat_flux>(between(0, 1500));
        return out;
    }
    duty_cycle duty()
    {
        if (one_in(5)) return duty_cycle::continuous();
        const double period = one_in(2) ? magnitude(60, 3600) : magnitude(1e-3, 1e7);
        const double share = one_in(2) ? between(0.05, 0.95) : one_in(2) ? magnitude(1e-4, 1) : 1 - magnitude(1e-4, 1);
        return duty_cycle::of(in_si<duration>(std::max(share, 1e-6) * period), in_si<duration>(period));
    }
    current amps() { return in_si<current>(one_in(6) ? magnitude(1e-3, 1e6) : magnitude(20, 1500)); }

    // ---- leads

    conductor_size size() { return one_in(2) ? of(american_lead_sizes) : of(metric_lead_sizes); }
    cable lead(bool is_whole = false)
    {
        cable out = welding_cable(size(), in_si<length>(one_in(4) ? magnitude(0.01, 1000) : magnitude(1, 40)));
        if (one_in(3)) out.metal = one_in(2) ? tinned_copper : aluminium;
        out.covering = of(all_coverings);
        if (one_in(6)) out.overall_diameter = between(1.01, 12) * out.conductor_diameter;
        if (!is_whole && one_in(3)) {
            out.missing_strands = one_in(2) ? between(0, 0.5) : between(0, 0.999);
            out.damaged_length = std::min(1.0, magnitude(1e-4, 2)) * out.length;
        }
        if (one_in(5)) out.lay = of(all_lays);
        if (out.lay == lay::coiled && one_in(2)) out.coil_turns = count(most_bundled_turns);
        if (out.lay == lay::bundled && one_in(2)) out.bundled_leads = count(most_bundled_turns);
        return out;
    }

    // ---- parts

    surface_state surface() { return one_in(2) ? surface_state::clean : of(all_surface_states); }
    metal any_metal() { return of(all_metals); }
    force pressing() { return in_si<force>(one_in(4) ? magnitude(0.1, 1e5) : magnitude(20, 1000)); }
    torque tightness() { return in_si<torque>(magnitude(0.1, 100)); }
    conductor_size lug_size() { return square_mm(between(16, 185)); }
    work_clamp clamp()
    {
        const current rated = in_si<current>(between(100, 1000));
        switch (count(5)) {
        case 1: return screw_clamp(rated);
        case 2: return bolted_work_lug(lug_size());
        case 3: return stamped_spring_clamp(std::min(rated, detail::largest_stamped));
        case 4: return cast_spring_clamp(rated);
        default: return spring_clamp(rated);
        }
    }
    work_connection clamp_on_work(std::string name)
    {
        work_connection out{.clamp = clamp(), .onto = mild_steel, .surface = surface(), .name = std::move(name)};
        if (one_in(5)) out.onto = any_metal();
        if (one_in(2)) out.grip_lost = one_in(3) ? between(0, 0.99) : between(0, 0.5);
        if (one_in(4)) out.preheat = temperature::celsius(between(20, 500));
        if (one_in(2)) out.work_thickness = in_si<length>(magnitude(5e-4, 0.2));
        return out;
    }
    work_magnet magnet(std::string name)
    {
        work_magnet out{.name = std::move(name), .rated = in_si<force>(magnitude(20, 3000)), .surface = surface()};
        out.cable = lug_size();
        if (one_in(3)) out.gap = in_si<length>(magnitude(1e-5, 3e-3));
        return out;
    }
    measured_part measured(std::string name)
    {
        const double amps = magnitude(1, 1000), volts = amps * magnitude(1e-6, 0.03);
        measured_part out{.name = std::move(name),
                          .drop = {in_si<voltage>(0.7 * volts), in_si<voltage>(volts), in_si<voltage>(1.6 * volts)},
                          .at = in_si<current>(amps),
                          .law = one_in(4) ? drop_law::constant : drop_law::ohmic};
        if (one_in(2)) {
            out.mass = in_si<mass>(magnitude(0.01, 50));
            out.cooling_area = in_si<area>(magnitude(1e-4, 1));
        }
        return out;
    }
    // Any part that stands anywhere in a path but the arc, its tool, and what sits on the work.
    path_part part(const std::string& name)
    {
        switch (count(14)) {
        case 1: {
            lug out = crimped_lug(name, lug_size());
            if (one_in(2)) out.missing_strands = between(0, 0.9);
            if (one_in(2)) out.bolt_torque = tightness();
            out.palm = surface();
            return out;
        }
        case 2: {
            coupling out(name, size());
            out.surface = surface();
            if (one_in(2)) out.force = pressing();
            return out;
        }
        case 3:
            return contact{.metals = {any_metal(), any_metal()},
                           .force = pressing(),
                           .surface = surface(),
                           .name = name,
                           .points = count(10)};
        case 4:
            return plate{.metal = any_metal(),
                         .length = in_si<length>(magnitude(0.01, 10)),
                         .width = in_si<length>(magnitude(0.01, 5)),
                         .thickness = in_si<length>(magnitude(1e-3, 0.3)),
                         .name = name};
        case 5: return measured(name);
        case 6:
            return strap{.name = name,
                         .length = in_si<length>(magnitude(0.02, 3)),
                         .section = in_si<area>(magnitude(5e-6, 1e-3)),
                         .tightening = tightness(),
                         .surface = surface()};
        case 7: return stud_terminal{.name = name, .tightening = tightness(), .lugs = count(10), .surface = surface()};
        case 8: return set_screw{.name = name, .size = lug_size(), .tightening = tightness(), .ferrule = one_in(2)};
        case 9: return cable_splice{.name = name, .first = size(), .second = size(), .stamped = size()};
        case 10:
            return rotary_ground{.name = name,
                                 .brush = one_in(3) ? std::nullopt : std::optional(brush_kind::metal_graphite),
                                 .count = count(8)};
        case 11: return spring_pad{.name = name, .pressing = pressing(), .points = count(20), .surface = surface()};
        default: return lead().named(name);
        }
    }

    // ---- stations

    // A station of so many parts, at least 6; every part as likely before the arc as behind it.
    station series(std::size_t parts)
    {
        station out = empty_station();
        int number = 0;
        const auto add = [&](std::size_t until) {
            while (out.path.size() < until) out.path.push_back(part("part " + std::to_string(++number)));
        };
        add(static_cast<std::size_t>(count(static_cast<int>(parts) - 4)));
        add_tool(out);
        out.path.push_back(arc{});
        if (one_in(2)) out.path.push_back(piece("piece"));
        if (one_in(6))
            out.path.push_back(magnet("clamp"));
        else
            out.path.push_back(clamp_on_work("clamp"));
        add(parts);
        if (one_in(3)) add_supply(out);
        return out;
    }
    // One whose current divides: intended and stray ways from piece to stud and between forks.
    station with_ways(std::size_t ways)
    {
        station out = empty_station();
        add_tool(out);
        out.path.insert(out.path.end(), {arc{}, piece("piece"), clamp_on_work("clamp"), lead().named("return"),
                                         junction{.name = "middle"}, lead().named("tail"), junction{.name = "stud"}});
        const std::vector<std::string> points{"piece", "middle", "stud"};
        for (std::size_t w = 0; w < ways; ++w) {
            const std::string number = std::to_string(w + 1);
            const auto from = static_cast<std::size_t>(count(2) - 1);
            way made{.name = "way " + number,
                     .from = points[from],
                     .to = points[from == 1 || one_in(2) ? 2 : 1],
                     .kind = one_in(3) ? way_kind::stray : way_kind::intended};
            if (from == 0 && one_in(2)) made.path.push_back(clamp_on_work("clamp " + number));
            if (one_in(2)) made.path.push_back(part("part " + number));
            made.path.push_back(lead().named("lead " + number));
            out.ways.push_back(std::move(made));
        }
        return out;
    }
    // As a shop has them: nothing that cannot be found in one.
    station usual(std::size_t parts)
    {
        station out{.name = "usual",
                    .job = {.process = process::gmaw,
                            .current = in_si<current>(between(80, 400)),
                            .duty = duty_cycle::of(between(0.1, 1.0))},
                    .where = {.air = temperature::celsius(between(-10, 40))}};
        const conductor_size made = square_mm(between(50, 120));
        int number = 0;
        const auto add = [&](std::size_t until) {
            while (out.path.size() < until) {
                const std::string name = "part " + std::to_string(++number);
                if (number % 2 != 0)
                    out.path.push_back(crimped_lug(name, made));
                else
                    out.path.push_back(welding_cable(made, in_si<length>(between(1, 15))).named(name));
            }
        };
        add(parts / 2);
        out.path.push_back(wire_gun("tool", in_si<length>(3)));
        out.path.push_back(arc{});
        out.path.push_back(work_connection{.clamp = spring_clamp(in_si<current>(between(200, 600))),
                                           .onto = mild_steel,
                                           .surface = surface_state::light_rust,
                                           .name = "clamp"});
        add(parts);
        return out;
    }

    // ---- use

    grip_service clamp_service(duration horizon)
    {
        grip_service out{.shift = in_si<duration>(magnitude(60, 86400))};
        if (one_in(2)) out.rest = in_si<duration>(magnitude(60, 3e7));
        if (one_in(2)) out.openings = magnitude(0.01, 10000);
        if (one_in(3)) out.knocks = magnitude(0.01, 10000);
        if (one_in(4)) out.drags = magnitude(0.01, 10000);
        if (one_in(3)) out.clean_every = std::min(1.0, magnitude(1.001e-3, 1)) * horizon;
        if (one_in(3)) out.tighten_every = std::min(1.0, magnitude(1.001e-3, 1)) * horizon;
        if (one_in(3)) out.interpass = temperature::celsius(between(20, 450));
        if (one_in(3)) out.on_work = magnitude(0.01, 1);
        return out;
    }
    duration horizon() { return std::min(in_si<duration>(magnitude(3600, 1e9)), longest_forecast); }
    joint_service joints()
    {
        return {.shift = in_si<duration>(magnitude(60, 86400)),
                .rest = in_si<duration>(magnitude(60, 3e7)),
                .starts = between(0, 1000),
                .air = of(all_joint_airs),
                .motion = of(all_joint_motions)};
    }
    clamp_place place()
    {
        return {.joint = clamp_on_work("clamp"), .lead = lead(), .duty = duty(), .where = where(60)};
    }

    // ---- what was found: readings across parts and spans, and looks
    std::vector<observation> found_on(const station& s, std::size_t how_many, bool spans = true)
    {
        std::vector<observation> out;
        while (out.size() < how_many) {
            const std::size_t at = static_cast<std::size_t>(count(static_cast<int>(s.path.size()))) - 1;
            if (std::holds_alternative<arc>(s.path[at]) || is_hub(s.path[at])) continue;
            const std::string name = name_of(s.path, at);
            const current through = between(0.3, 1.2) * s.job.current;
            if (!spans || one_in(2)) {
                out.push_back(reading{.across = name, .volts = in_si<voltage>(magnitude(1e-4, 1)), .current = through});
                continue;
            }
            switch (count(4)) {
            case 1: {  // a span that holds no arc
                std::size_t to = at;
                while (to + 1 < s.path.size() && !std::holds_alternative<arc>(s.path[to + 1]) &&
                       !is_hub(s.path[to + 1]) && !one_in(12))
                    ++to;
                if (to == at) continue;
                out.push_back(reading{.across = name,
                                      .volts = in_si<voltage>(magnitude(1e-3, 5)),
                                      .current = through,
                                      .to = name_of(s.path, to)});
                break;
            }
            case 2:
                out.push_back(four_wire_observation{.part = name, .ohms = in_si<resistance>(magnitude(1e-6, 1e-2))});
                break;
            case 3:
                out.push_back(heat_observation{.part = name, .hottest = temperature::celsius(between(20, 200))});
                break;
            default: out.push_back(tightness_observation{.part = name, .share = between(0, 2)});
            }
        }
        return out;
    }

    station empty_station()
    {
        return {.name = "drawn",
                .job = {.process = of(all_processes), .current = amps(), .duty = duty()},
                .where = where(60)};
    }

private:
    workpiece piece(std::string name)
    {
        workpiece out{.metal = one_in(3) ? any_metal() : mild_steel,
                      .mass = in_si<mass>(magnitude(0.05, 5000)),
                      .thickness = in_si<length>(magnitude(5e-4, 0.1)),
                      .name = std::move(name)};
        if (one_in(3)) out.stays = in_si<duration>(magnitude(10, 1e5));
        if (one_in(3)) out.from_weld = in_si<length>(magnitude(0.01, 1));
        return out;
    }
    void add_tool(station& s)
    {
        switch (s.job.process) {
        case process::smaw: s.path.push_back(electrode_holder("tool", in_si<current>(between(100, 600)))); break;
        case process::gtaw:
            s.path.push_back(
                tig_torch("tool", in_si<length>(4), one_in(2) ? torch_cooling::water : torch_cooling::gas));
            break;
        default: s.path.push_back(wire_gun("tool", in_si<length>(3)));
        }
    }
    void add_supply(station& s)
    {
        if (one_in(2))
            s.supply = supply{.kind = supply_kind::constant_voltage, .setting = in_si<voltage>(between(15, 60))};
        else
            s.supply = supply{.kind = supply_kind::drooping,
                              .short_circuit = between(1.1, 3) * s.job.current,
                              .no_load = {.peak = in_si<voltage>(between(50, 113))}};
        if (one_in(2)) s.allowed_drop = in_si<voltage>(magnitude(0.5, 50));
    }

    std::mt19937 random_;
    std::uniform_real_distribution<double> unit_{0, 1};
};

}  // namespace bench
