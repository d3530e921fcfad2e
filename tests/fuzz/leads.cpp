// Public functions of leads, and of clamps and joints over time, each with any doubles for its arguments: a typed error
// or a finite result, and an end.
#include <array>
#include <cstdint>
#include <optional>
#include <span>
#include <vector>

#include <weldloop/circuit/magnet_network.hpp>
#include <weldloop/rating/covering_life.hpp>
#include <weldloop/weldloop.hpp>

#include "any_argument.hpp"
#include "fed_functions.hpp"
#include "made_parts.hpp"

namespace wl = weldloop;

namespace fuzz {

template <>
inline constexpr unsigned words_of<wl::grip_demand> = 2;
template <>
inline constexpr unsigned words_of<wl::code_table> = 9;

// Parts of what objects answer that are numbers.
namespace asked {

std::vector<double> numbers_of(const wl::grip_forecast& f)
{
    std::vector<double> out{static_cast<double>(f.grip_left), static_cast<double>(f.grip_left_low), f.horizon.value(),
                            f.clock_hours.value(), f.arc_hours.value()};
    for (const auto* points : {&f.points, &f.poor_points, &f.kind_points})
        for (const wl::grip_point& p : *points)
            out.insert(out.end(), {p.at.value(), p.force.value(), p.resistance.value(), p.film.value(),
                                   p.peak_temperature.in_kelvin(), p.spring_temperature.in_kelvin()});
    return out;
}
std::vector<double> grip_over_time(const wl::work_connection& joint, const wl::load& work,
                                   const wl::surroundings& where, wl::duration horizon, const wl::grip_service& service)
{
    const wl::cable lead = wl::welding_cable(wl::square_mm(50), wl::in_si<wl::length>(10.0));
    return numbers_of(wl::grip_over_time(joint, lead, work, where, horizon, service));
}
std::vector<double> grip_in_station(const wl::station& s, wl::duration horizon, const wl::grip_service& service)
{
    const std::optional<wl::grip_forecast> f = wl::grip_in_station(s, 4, horizon, service);
    return f ? numbers_of(*f) : std::vector<double>{};
}
std::vector<double> joints_over_time(const wl::station& s, wl::duration horizon)
{
    std::vector<double> out;
    for (const wl::joint_drift& j : wl::joints_over_time(s, horizon).joints)
        for (const wl::drift_case* c : {&j.poor, &j.typical, &j.mild})
            out.insert(out.end(), {c->resistance_ratio, c->softening_used});
    return out;
}
wl::clamp_place place_of(const wl::work_connection& joint, const wl::duty_cycle& duty, const wl::surroundings& where)
{
    return {.joint = joint,
            .lead = wl::welding_cable(wl::square_mm(50), wl::in_si<wl::length>(10.0)),
            .duty = duty,
            .where = where};
}
wl::current largest_clamp_current(const wl::work_connection& joint, const wl::duty_cycle& duty,
                                  const wl::surroundings& where, wl::duration horizon, wl::grip_demand demand)
{
    return wl::largest_clamp_current(place_of(joint, duty, where), horizon, demand);
}
wl::fraction largest_clamp_duty(const wl::work_connection& joint, const wl::surroundings& where, wl::current through,
                                wl::duration horizon, wl::grip_demand demand)
{
    return wl::largest_clamp_duty(place_of(joint, wl::duty_cycle::continuous(), where), through, horizon, demand);
}
std::vector<double> grip_derating_of(const wl::work_connection& joint, const std::array<double, 2>& shares,
                                     wl::duration horizon)
{
    std::vector<double> out;
    for (const wl::grip_derating& d :
         wl::grip_derating_of(place_of(joint, wl::duty_cycle::continuous(), {}), shares, horizon))
        out.push_back(d.largest.value());
    return out;
}
wl::band<wl::duration> hours_to_loss(const wl::work_connection& joint, const wl::duty_cycle& duty, wl::current through,
                                     wl::fraction lost)
{
    return wl::hours_to_loss(place_of(joint, duty, {}), through, lost);
}
std::vector<double> grip_threshold_of(const wl::work_connection& joint, const wl::duty_cycle& duty,
                                      const wl::grip_moment& moment)
{
    const wl::grip_threshold found = wl::grip_threshold_of(place_of(joint, duty, {}), moment);
    return {found.largest.value(), found.jaw.in_kelvin(), found.spring.in_kelvin()};
}
std::vector<double> grip_map_of(const wl::work_connection& joint, const std::array<wl::current, 2>& currents,
                                const std::array<double, 2>& factors, wl::duration horizon)
{
    const wl::grip_map map =
        wl::grip_map_of(place_of(joint, wl::duty_cycle::continuous(), {}), currents, factors, horizon);
    return map.surface_factors;
}
wl::covering_age covering_life_of(const wl::cable& lead, const std::vector<wl::shift>& day, double days)
{
    return wl::covering_life_of(lead, day, days);
}
std::vector<double> smallest_leads(const wl::lead_request& one, const wl::lead_request& other, wl::voltage drop)
{
    const wl::lead_pair_choice found = wl::smallest_leads(one, other, drop);
    return {found.electrode.drop.value(), found.work.drop.value(), found.electrode.current_margin.value()};
}
std::vector<double> smallest_lead(const wl::lead_request& one)
{
    const wl::lead_choice found = wl::smallest_lead(one);
    return {found.drop.value(), found.drop_margin.value(), found.current_margin.value()};
}
std::vector<double> factor_table_of(const wl::cable& lead, const wl::surroundings& where, const wl::duty_cycle& duty,
                                    const std::vector<wl::temperature>& airs)
{
    const wl::factor_table found = wl::factor_table_of(lead, where, duty, airs);
    std::vector<double> out{found.rated.value(), found.rated_alone.value()};
    for (const wl::ambient_row& r : found.ambient) out.insert(out.end(), {r.by_model, r.by_square_root});
    for (const wl::grouping_row& r : found.grouping) out.push_back(r.by_model);
    return out;
}
std::vector<double> clamp_network_of(const wl::work_magnet& m, const wl::conductor_size& cable,
                                     const wl::surroundings& where, wl::length thickness)
{
    const wl::clamp_network n = wl::clamp_network_of(m, cable, where, thickness);
    return {n.jaw_body.value(),  n.jaw_entry.value(),  n.body_entry.value(),  n.jaws.low.value(),
            n.jaws.high.value(), n.force.value(),      n.body_spring.value(), n.handle_spring.value(),
            n.work.sink.value(), n.work.patch.value(), n.body_handle.value()};
}
wl::conductor_profile even(wl::temperature everywhere)
{
    return wl::conductor_profile::even(everywhere);
}
std::vector<double> cost_of_lost_volts(const wl::station& s, wl::voltage lost)
{
    const wl::lost_volts found = wl::cost_of_lost_volts(s, lost);
    if (found.outcome != wl::operating_outcome::found) return {};
    return {found.lost.value(),
            found.arc_shorter.low.value(),
            found.arc_shorter.typical.value(),
            found.arc_shorter.high.value(),
            found.current_now.value(),
            found.current_without.value(),
            found.feed_now.value_or(wl::speed{}).value(),
            found.feed_without.value_or(wl::speed{}).value(),
            found.terminals_wanted.value(),
            found.setting_wanted.value_or(wl::voltage{}).value()};
}

}  // namespace asked

namespace {

template <class Result, class... Arguments>
using of_lead = Result (*)(const wl::cable&, const wl::surroundings&, Arguments...);

// New ones go to the end: kept inputs choose by place.
constexpr std::array entries{
    FED(steady_surface_of),
    FED(steady_loss_of),
    FED(decay_length_of),
    FED_OF(heating_of, of_lead<wl::cable_heating, const wl::load&>),
    FED(lead_held_at),
    FED_OF(time_to_limit, of_lead<std::optional<wl::duration>, wl::current>),
    FED_OF(time_to_limit, of_lead<std::optional<wl::duration>, wl::current, const wl::conductor_profile&>),
    FED(cool_down_time),
    FED_OF(time_constant_of, of_lead<wl::duration, wl::temperature>),
    FED(longest_on_time),
    FED(conductor_from_surface),
    FED_OF(cut_back_of, of_lead<wl::cut_back, const wl::hot_end&, wl::current>),
    FED_OF(cut_back_of, of_lead<wl::cut_back, wl::temperature>),
    FED_OF(ampacity_of, of_lead<wl::ampacity, wl::duty_cycle>),
    FED_BY(factor_table_of),
    FED(largest_duty),
    FED(longest_lead),
    FED_BY(smallest_lead),
    FED_BY(smallest_leads),
    FED(code_ampacity_of),
    FED_BY(covering_life_of),
    FED_BY(even),
    FED_BY(grip_over_time),
    FED_BY(grip_in_station),
    FED_BY(joints_over_time),
    FED_BY(largest_clamp_current),
    FED_BY(largest_clamp_duty),
    FED_BY(grip_derating_of),
    FED_BY(hours_to_loss),
    FED_BY(grip_map_of),
    FED_BY(cost_of_lost_volts),
    FED_BY(grip_threshold_of),
    FED_BY(clamp_network_of),
};
static_assert(entries.size() <= most_entries);

}  // namespace

}  // namespace fuzz

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size)
{
    return fuzz::feed_one(fuzz::entries, data, size);
}
