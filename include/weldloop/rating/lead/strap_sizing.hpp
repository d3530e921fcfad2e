#pragma once
/// @file
/// The smallest strap or bar that carries a current.

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>
#include <string>

#include <weldloop/circuit/joint_temperature_limit.hpp>
#include <weldloop/circuit/strap_behaviour.hpp>
#include <weldloop/circuit/thermal_body.hpp>
#include <weldloop/core/duty_cycle.hpp>
#include <weldloop/core/error.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/core/text.hpp>
#include <weldloop/part/load.hpp>
#include <weldloop/part/strap.hpp>
#include <weldloop/part/surroundings.hpp>

namespace weldloop {

/// Sections of straps and bars offered, small to large: the nominal areas of IEC 60228 from 10 mm2.
inline constexpr std::array strap_sections{10_mm2,  16_mm2,  25_mm2,  35_mm2,  50_mm2,  70_mm2,
                                           95_mm2,  120_mm2, 150_mm2, 185_mm2, 240_mm2, 300_mm2,
                                           400_mm2, 500_mm2, 630_mm2, 800_mm2, 1000_mm2};

/// A strap that neither gets heat from its neighbours nor gives them any.
struct strap_heating {
    temperature peak;            ///< hottest moment of the settled period
    temperature mean_under_arc;  ///< mean over the time under current: gives the drop
    voltage drop;                ///< [V] of body and both ends at the 95 % point, at that mean
    weldloop::basis basis;       ///< sources
};

/// What is asked of a strap.
struct strap_request {
    strap like = {};                           ///< length, make, metal, bolts and faces; its section does not count
    load work;                                 ///< current [A], above 0, and duty
    surroundings where = {};                   ///< air, wind, altitude
    std::optional<temperature> limit = {};     ///< default that of bolted bare metal in air
    std::optional<voltage> allowed_drop = {};  ///< [V] above 0, of the whole strap; none: heat alone
};

/// The smallest strap that satisfies a request.
struct strap_choice {
    weldloop::strap strap;               ///< with its section
    strap_heating heating;               ///< how hot it gets
    temperature_difference heat_margin;  ///< [K] limit less peak, 0 or above
};

/// How hot a strap gets by itself, settled: C dT/dt = I^2 (R(T) + 2 Re) - body_loss(T) over the period, marched from
/// the temperature of the air until a period ends as it began; two periods in a row tell where the next are to begin.
///
/// The ends are taken at their 95 % point, and all of their heat enters the strap: in a loop half of it goes to the
/// neighbour, whose temperature then counts more than anything here. It is for choosing; assess() judges.
/// Accuracy: that of body_loss(), 20 % of the rise; the march is within 0.5 K.
/// @param s with its section @param work current [A], above 0, and duty @param where air, wind, altitude
/// @return none where it would melt
/// @throws not_finite_error, out_of_range_error; no_solution_error where the periods do not settle
[[nodiscard]] inline std::optional<strap_heating> strap_heating_of(const strap& s, const load& work,
                                                                   const surroundings& where)
{
    require_positive(work.current, "current");
    const thermal_body body = body_of(s);
    const band<conductance> ends = bolted_face_conductance_of(end_of(s));
    if (!(ends.low > conductance{}))
        throw missing_data_error("bolted ends of the strap", "may be open in a poor case", "ends that press");
    const double amps = work.current.value(), both_ends = 2.0 / ends.low.value();
    const double capacity = require_positive(body.capacity, "heat capacity of the strap").value();
    const double on = work.duty.on().value(), rest = work.duty.period().value() - on;
    const double melting = conductor_melting_of(s.metal).in_kelvin();
    const auto body_ohms = [&](double kelvin) { return body_resistance_of(s, temperature::kelvin(kelvin)).value(); };
    const auto slope = [&](double kelvin, double through) {
        const double made = through * through * (body_ohms(kelvin) + both_ends);
        return (made - body_loss(body, temperature::kelvin(kelvin), where).value()) / capacity;
    };
    constexpr int steps = 60, most_periods = 4000;  // takes 4 to 12
    constexpr double settled_to = 1e-3;             // K that later periods would still move by
    constexpr double of_time_constant = 0.05;
    const double air = where.air.in_kelvin();
    const double time_constant =
        capacity /
        (body_coefficient(body, where.air + in_si<temperature_difference>(50.0), where) * body.surface).value();
    double now = air, sum = 0.0, peak = air;
    const auto march = [&](double span, double through) {
        const int n = std::max(steps, static_cast<int>(std::ceil(span / (of_time_constant * time_constant))));
        const double h = span / n;
        sum = 0.0;
        for (int i = 0; i < n; ++i) {  // midpoint rule
            const double half = now + 0.5 * h * slope(now, through);
            if (half >= melting) return false;
            sum += half / n;
            now += h * slope(half, through);
            peak = std::max(peak, now);
            if (now >= melting) return false;
        }
        return true;
    };
    double change_before = 0.0;  // over the period before, if this one begins where that ended
    for (int period = 0; period < most_periods; ++period) {
        const double began = now;
        peak = now;
        if (!march(on, amps)) return std::nullopt;
        const double under_arc = sum;
        if (rest > 0.0) static_cast<void>(march(rest, 0.0));
        const double change = now - began;
        const double kept = change_before != 0.0 ? change / change_before : -1.0;  // of a change by the next period
        change_before = change;
        if (change != 0.0 && !(kept > 0.0 && kept < 1.0)) continue;
        const double left = change == 0.0 ? 0.0 : change * kept / (1.0 - kept);
        if (std::fabs(left) > settled_to) {
            if (now + left < melting) {
                now += left;
                change_before = 0.0;
            }
            continue;
        }
        strap_heating out{temperature::kelvin(peak),
                          temperature::kelvin(under_arc),
                          in_si<voltage>(amps * (body_ohms(under_arc) + both_ends)),
                          {}};
        out.basis.add(basis_of(end_of(s))).add(strap_shape_judgement);
        if (s.metal.electrical_source != nullptr) out.basis.add(*s.metal.electrical_source);
        if (s.make == strap_make::braid) out.basis.add(braid_lay_judgement);
        return out;
    }
    throw no_solution_error("strap temperature", "not settled", "a longer period or a smaller strap");
}

/// The smallest of strap_sections whose settled peak stays at or below the limit and whose drop stays at or below the
/// allowed one, by itself: see strap_heating_of().
/// @param request current above 0, air below the limit
/// @throws not_finite_error, out_of_range_error, missing_data_error; no_solution_error, naming the largest section,
/// when none suffices
[[nodiscard]] inline strap_choice smallest_strap(const strap_request& request)
{
    const temperature limit =
        request.limit.value_or(joint_temperature_limit(joint_kind::bolted, joint_finish::bare).highest);
    if (request.where.air >= limit)
        throw out_of_range_error("air temperature", to_text(request.where.air, "degC"),
                                 "below the limit of " + to_text(limit, "degC"));
    if (request.allowed_drop) require_positive(*request.allowed_drop, "allowed drop");
    std::string largest;
    for (const area& section : strap_sections) {
        strap tried = request.like;
        tried.section = section;
        const std::optional<strap_heating> hot = strap_heating_of(tried, request.work, request.where);
        if (hot && hot->peak <= limit && !(request.allowed_drop && hot->drop > *request.allowed_drop))
            return {tried, *hot, limit - hot->peak};
        largest = to_text(section, "mm2");
        largest.append(hot ? ", with " + to_text(hot->peak, "degC") + " and " + to_text(hot->drop, "V")
                           : ", which melts");
    }
    throw no_solution_error("strap section", "beyond the largest: " + largest,
                            "at most " + to_text(limit, "degC") + ", by cleaner or tighter ends or a smaller current");
}

}  // namespace weldloop
