#pragma once
/// @file
/// What marches and iterates, by plain numbers: conductors in time, settled periods, roots and sums. Beside them
/// laws.hpp has the laws in closed form.

#include <array>
#include <cmath>
#include <cstddef>
#include <functional>
#include <optional>
#include <span>
#include <utility>
#include <vector>

#include <weldloop/law/current_rise.hpp>
#include <weldloop/law/cylinder_loss.hpp>
#include <weldloop/law/heat_modes.hpp>
#include <weldloop/law/heating_march.hpp>
#include <weldloop/law/periodic_heating.hpp>
#include <weldloop/law/skin_effect.hpp>
#include <weldloop/law/source_line.hpp>
#include <weldloop/law/waveform.hpp>
#include <weldloop/law/work_spread.hpp>
#include <weldloop/material/metals.hpp>
#include <weldloop/solve/current_network.hpp>
#include <weldloop/solve/curve_table.hpp>
#include <weldloop/solve/heat_network.hpp>
#include <weldloop/solve/periodic_state.hpp>
#include <weldloop/solve/steady_state.hpp>

#include "oracle/digits/plain_words.hpp"
#include "support/heat_of_rise.hpp"

namespace weldloop::test::digits {

// ---- a covered conductor in still air, by first principles: resistance at 20 degC, its coefficient, heat of metal and
// covering, conductance and ratio of the covering, its outer diameter, air
inline covered_conductor conductor_of(inputs x)
{
    return {.resistance = in_si<resistance_per_length>(x[0]),
            .temperature_coefficient = in_si<per_kelvin>(x[1]),
            .melting = annealed_copper.melting,
            .metal = in_si<heat_capacity_per_length>(x[2]),
            .covering = in_si<heat_capacity_per_length>(x[3]),
            .conductance = in_si<thermal_conductivity>(x[4]),
            .diameter_ratio = x[5]};
}
inline cable_surface surface_of(inputs x)
{
    return {.diameter = m(x[6]), .air = K(x[7]), .model = surface_model::churchill_chu};
}
/// Its settled period. @param x with current, on-time and period behind
inline periodic_heating period_of(inputs x)
{
    return periodic_heating_of(conductor_of(x), surface_of(x), on_off_current{A(x[8]), s(x[9]), s(x[10])});
}
/// Of steady current. @param x with the current behind
inline periodic_heating steady_of(inputs x)
{
    const std::array<heating_segment, 1> all{heating_segment{A(x[8]), s(600.0)}};
    return periodic_heating_of(conductor_of(x), surface_of(x), all);
}
/// After one current from one temperature everywhere. @param x with current, time and start behind
inline conductor_profile shot_of(inputs x)
{
    return profile_after(conductor_of(x), surface_of(x), {A(x[8]), s(x[9])}, conductor_profile::even(K(x[10])));
}
/// Until the conductor is at a temperature [s], -1 if never. @param x with current, start and what is wanted behind
inline double passage_of(inputs x)
{
    const std::optional<duration> found =
        time_to_conductor(conductor_of(x), surface_of(x), A(x[8]), {conductor_profile::even(K(x[9])), K(x[10])});
    return found ? found->value() : -1.0;
}
/// The straight problem: heat and a surface that gives off in proportion, from the air's temperature.
/// @param x as the conductor, gain and slope [W/(m K)], heat [W/m], time behind
/// @param point of the covering
inline double straight_rise_of(inputs x, std::size_t point)
{
    const detail::conductor_numbers c(conductor_of(x));
    const detail::symmetric_modes modes = detail::modes_of(c, x[8], x[9]);
    const detail::mode_times times(modes, x[11]);
    const detail::mode_path path(modes, times, {}, modes.to_modes({x[10] / c.root_heat[0], 0.0, 0.0, 0.0, 0.0}));
    return detail::point_path(modes, path, point).end() / c.root_heat[point];
}
/// Surface of a covering that lets heat through, its conductor held at a temperature [K].
/// @param x diameter, air, conductance, conductor
inline double surface_under(inputs x)
{
    return detail::surface_kernel({.diameter = m(x[0]), .air = K(x[1]), .model = surface_model::churchill_chu})
        .steady_surface(x[2], x[3]);
}

// ---- lines of sources
inline source_line measured_line()
{
    return source_line::measured(
        {{A(0.0), V(80.0)}, {A(50.0), V(60.0)}, {A(150.0), V(32.0)}, {A(250.0), V(20.0)}, {A(300.0), V(0.0)}});
}
inline double most_watts(const source_line& line)
{
    const source_point p = line.at_most_power();
    return (p.current * p.voltage).value();
}
/// Current where a line meets a + b I.
inline double meeting_amps(const source_line& line, double a, double b)
{
    const auto met = line.meeting([&](double amps) { return a + b * amps; });
    return met ? met->current.value() : -1.0;
}

// ---- small networks: three bodies in a row, heated in the first, cooled from the last
/// @param x capacities of the three, links between them, sink, heat and its slope by the first one's rise
inline solve::heat_network row_of_three(inputs x)
{
    solve::heat_network out;
    for (std::size_t i = 0; i < 3; ++i) out.add_node(x[i]);
    out.link(0, 1, x[3]);
    out.link(1, 2, x[4]);
    out.sink(2, x[5], 0.0);
    out.linear_source(0, x[6], x[7]);
    out.close();
    return out;
}
/// @param x with on-time and rest behind
inline solve::periodic_state period_of_three(inputs x)
{
    const solve::heat_network net = row_of_three(x);
    return solve::periodic_state_of(net, {x[8], x[9]}, std::vector<double>(3, 0.0));
}
/// The same bodies losing heat by a curve from the last, heat following the square root of the first one's rise.
/// @param x capacities of the three, links between them, coefficients of the loss h = a + b sqrt(x) + c x, heat, and by
/// how much of itself it grows with the rise, b sqrt(1 + x^2)
inline double curved_three(inputs x)
{
    const solve::curve_table loss([&](double rise) {
        const double root = std::sqrt(rise);
        return x[5] + root * (x[6] + root * x[7]);
    });
    const heat_of_rise heat([&](double rise) { return x[8] * (1.0 + x[9] * (std::sqrt(1.0 + rise * rise) - 1.0)); });
    solve::heat_network net;
    for (std::size_t i = 0; i < 3; ++i) net.add_node(x[i]);
    net.link(0, 1, x[3]);
    net.link(1, 2, x[4]);
    net.surface(2, 1.0, loss);
    net.add_source({.in = 0, .law = &heat, .to = 0});
    net.close();
    const solve::steady_state found = solve::steady_state_of(net, 1.0, std::vector<double>(3, 0.0));
    return found.what == solve::outcome::solved ? found.rise[0] : -1.0;
}
/// A drop r I + k I^3.
class bent_drop final : public solve::drop_of_current {
public:
    bent_drop(double r, double k) : r_(r), k_(k) {}
    [[nodiscard]] solve::drop_at_current at(double amps) const override
    {
        return {amps * (r_ + k_ * amps * amps), r_ + 3.0 * k_ * amps * amps};
    }

private:
    double r_, k_;
};
/// The current of the first of three ways that share one. @param x r and k of each, the current
inline double shared_amps(inputs x)
{
    const bent_drop one(x[0], x[1]), two(x[2], x[3]), three(x[4], x[5]);
    solve::current_network net(2);
    for (const bent_drop* law : {&one, &two, &three}) net.add_branch(0, 1, *law);
    net.inject(0, 1, x[6]);
    if (!net.prepare()) return -1.0;
    const solve::divided_currents found = net.divide();
    return found.what == solve::division::found ? found.amps[0] : -1.0;
}

// ---- sums and integrals
/// Time of a rise against what an ellipse leaves over an arc. @param x inductance, from, to, no load, short circuit,
/// arc
inline double rise_on_ellipse(inputs x)
{
    const auto found = rise_time(in_si<inductance>(x[0]), A(x[1]), A(x[2]), [&](double amps) {
        const double share = amps / x[4];
        return x[3] * std::sqrt((1.0 - share) * (1.0 + share)) - x[5];
    });
    return found ? found->value() : -1.0;
}
/// Heat of a square current over that of direct current. @param x frequency, R'
inline double square_ratio(inputs x)
{
    const waveform square =
        waveform::square_ac({.positive = A(100.0), .negative = A(100.0), .frequency = in_si<frequency>(x[0])});
    return waveform_resistance_of(square, in_si<resistance_per_length>(x[1])).resistance_ratio;
}
/// @param x capacity, loss, stay, conductivity, density times specific heat
inline heated_stay steady_stay(inputs x)
{
    metal made = mild_steel;
    made.thermal_conductivity = in_si<thermal_conductivity>(x[3]);
    made.specific_heat = in_si<specific_heat>(x[4]);
    made.density = in_si<density>(1.0);
    return {.metal = made,
            .capacity = in_si<heat_capacity>(x[0]),
            .loss = in_si<thermal_conductance>(x[1]),
            .stay = s(x[2]),
            .on = s(x[2]),
            .period = s(x[2])};
}

}  // namespace weldloop::test::digits
