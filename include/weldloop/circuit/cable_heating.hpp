#pragma once
/// @file
/// How hot a lead gets along its length, far from its ends: under a load or a programme of currents, and held at a
/// temperature.

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <optional>
#include <span>

#include <weldloop/core/duty_cycle.hpp>
#include <weldloop/core/error.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/core/text.hpp>
#include <weldloop/law/cable_surface.hpp>
#include <weldloop/law/conductor_resistance.hpp>
#include <weldloop/law/covering_heat.hpp>
#include <weldloop/law/periodic_heating.hpp>
#include <weldloop/part/cable.hpp>
#include <weldloop/part/conductor_limit.hpp>
#include <weldloop/part/lead_basis.hpp>
#include <weldloop/part/load.hpp>
#include <weldloop/part/surroundings.hpp>
#include <weldloop/part/welding_cable.hpp>

namespace weldloop {

/// Temperatures of a lead under a load that repeats until they have settled; no heat along its ends.
struct cable_heating {
    temperature conductor_peak;         ///< hottest moment at the hottest place; damage is the hottest place
    temperature conductor_mean;         ///< mean over the lead's length and the arc-on time; gives the drop
    temperature surface_peak;           ///< hottest moment of the covering, at the damage if there is any
    temperature conductor_period_mean;  ///< mean over the period, where the strands are whole
    temperature_difference ripple_up;   ///< [K] peak less period mean of the conductor, where the strands are whole
    bool over_limit = false;            ///< conductor_peak lies above the lead's limit
    bool melts = false;                 ///< conductor_peak lies above the melting point: "far too hot", not a forecast
    weldloop::basis basis;              ///< sources, and ranges left
};

namespace detail {

/// The surface of a lead in its surroundings.
[[nodiscard]] inline cable_surface surface_of(const cable& lead, const surroundings& where)
{
    cable_surface out{.diameter = lead.overall_diameter,
                      .air = where.air,
                      .wind = where.wind,
                      .lay = lead.lay.value_or(where.lay),
                      .coil_turns = lead.lay ? lead.coil_turns : where.coil_turns,
                      .bundled_leads = lead.lay ? lead.bundled_leads : where.bundled_leads,
                      .altitude = where.altitude,
                      .sun = where.sun,
                      .emissivity = lead.covering.emissivity};
    if (out.lay == lay::bundled || out.lay == lay::coiled) {
        if (lead.lay) out.assumed_turns = assumed_turns_of(lead.length);
        out.across_bundle = conductivity_across_bundle(lead.covering.thermal_conductivity, lead.conductor_diameter,
                                                       lead.overall_diameter);
    }
    return out;
}

/// Metal [m2] that fills a conductor of a diameter, and what rounding may add.
[[nodiscard]] inline double most_metal_in(length diameter)
{
    return (1.0 + 1e-6) * 0.25 * std::numbers::pi * diameter.value() * diameter.value();
}

/// Says what is wrong with the dimensions of a lead, if anything is.
[[gnu::noinline, gnu::cold]] inline void doubt_dimensions(const cable& lead)
{
    if (lead.overall_diameter.value() == 0.0 || lead.conductor_diameter.value() == 0.0)
        throw missing_data_error("diameter of lead " + (lead.name.empty() ? to_text(lead.size) : lead.name),
                                 "not given", "conductor and overall diameter, as welding_cable() sets them");
    require_positive(lead.conductor_diameter, "conductor diameter");
    require_positive(lead.overall_diameter, "overall diameter");
    require_within(lead.damaged_length, weldloop::length{}, require_positive(lead.length, "lead length"),
                   "damaged length");
    if (lead.size.area().value() > most_metal_in(lead.conductor_diameter))
        throw out_of_range_error("conductor diameter", si_text(lead.conductor_diameter),
                                 "at least that of a solid conductor of " + to_text(lead.size));
}

/// Refuses a lead whose dimensions are not known or do not fit. @throws missing_data_error, not_finite_error,
/// out_of_range_error
inline void require_dimensions(const cable& lead)
{
    const double inner = lead.conductor_diameter.value(), outer = lead.overall_diameter.value();
    const double damaged = lead.damaged_length.value(), whole = lead.length.value();
    // the two bounds hold for the others too; what is damaged all along is looked at again
    if (inner > 0.0 && outer > inner && outer <= greatest_number && damaged >= 0.0 && whole > damaged &&
        whole <= greatest_number && lead.size.area().value() <= most_metal_in(lead.conductor_diameter)) [[likely]]
        return;
    doubt_dimensions(lead);
}

[[nodiscard]] inline bool is_damaged(const cable& lead)
{
    return static_cast<double>(lead.missing_strands) > 0.0 && lead.damaged_length.value() > 0.0;
}

/// One metre of the lead as a heat store, with a share of its strands missing.
[[nodiscard]] inline covered_conductor conductor_of(const cable& lead, double missing = 0.0)
{
    return covered_conductor_of({lead.metal, lead.size.area() * (1.0 - missing), lead.stranding_increment},
                                {lead.covering, lead.conductor_diameter, lead.overall_diameter});
}

/// Adds the ranges that a conductor leaves at its peak.
inline void add_conductor_ranges(basis& out, const cable& lead, temperature peak)
{
    if (peak < resistivity_lowest || peak > resistivity_highest) out.add(range_flag::resistivity_range);
    if (lead.metal.core_melting > temperature{} && peak > lead.metal.melting) out.add(range_flag::strand_coat_melts);
}

/// Begins a list with the sources of a heating and the ranges its peaks leave.
inline void begin_heating_basis(basis& out, const cable& lead, const cable_surface& surface,
                                const surface_kernel& kernel, const temperature& conductor_peak,
                                const temperature& surface_peak, bool continuous)
{
    begin_basis_of(out, lead);
    add_surface_basis(out, surface, kernel, surface_peak);
    if (!continuous) {
        out.add(covering_points_model);
        out.add(is_heat_of_table(lead.covering) ? iec_60853_heat : lead_covering_of_user);
    }
    add_conductor_ranges(out, lead, conductor_peak);
}

}  // namespace detail

/// Temperature of the covering's surface when the conductor is steadily at a temperature:
/// G (Tc - Ts) = q(Ts) - sun, G of the covering by covering_conductance(), q by surface_loss().
/// @param lead with its diameters @param where air, wind, lay, altitude, sun @param conductor Tc
/// @return Ts; between the conductor's and the air's temperature where there is no sun
/// @throws missing_data_error for a lead without diameters; not_finite_error, out_of_range_error
[[nodiscard]] inline temperature steady_surface_of(const cable& lead, const surroundings& where, temperature conductor)
{
    detail::require_dimensions(lead);
    const detail::surface_kernel surface(detail::surface_of(lead, where));
    const thermal_conductivity g =
        covering_conductance(lead.covering.thermal_conductivity, lead.conductor_diameter, lead.overall_diameter);
    return temperature::kelvin(surface.steady_surface(g.value(), conductor.in_kelvin()));
}

/// Heat that leaves one metre of conductor when it is steadily at a temperature, q(Ts) - sun with Ts by
/// steady_surface_of(). It is the heat I^2 R' that would hold the conductor there.
///
/// Rises with the temperature; zero at the air's without sun, negative below it (heat enters).
/// @param lead with its diameters @param where air, wind, lay, altitude, sun @param conductor its temperature
/// @return [W/m]
/// @throws missing_data_error for a lead without diameters; not_finite_error, out_of_range_error
[[nodiscard]] inline power_per_length steady_loss_of(const cable& lead, const surroundings& where,
                                                     temperature conductor)
{
    detail::require_dimensions(lead);
    const detail::surface_kernel surface(detail::surface_of(lead, where));
    const thermal_conductivity g =
        covering_conductance(lead.covering.thermal_conductivity, lead.conductor_diameter, lead.overall_diameter);
    return in_si<power_per_length>(g.value() *
                                   (conductor.in_kelvin() - surface.steady_surface(g.value(), conductor.in_kelvin())));
}

/// Decay length of heat along a lead, 1/m with m^2 = (UP - I^2 R' alpha)/(k A): an excess of temperature at one place
/// falls to 1/e over this length.
///
/// UP is the heat that leaves a metre per kelvin above the air (covering and surface in series, without sun) at the
/// stated conductor temperature; R' alpha is what the current's heat gains per kelvin. With the air's own temperature
/// UP is taken 0.01 K from it.
/// @param lead with its diameters @param where air, wind, lay, altitude @param conductor temperature at which UP holds
/// @param through I [A], 0 or above; leave it out for a lead without current
/// @return [m]; accuracy that of the square root of the surface law, 3 to 8 %
/// @throws missing_data_error for a lead without diameters; not_finite_error, out_of_range_error; no_solution_error
/// where the current's heat grows faster than what leaves (m^2 zero or below): an excess then does not decay
[[nodiscard]] inline length decay_length_of(const cable& lead, const surroundings& where, temperature conductor,
                                            current through = in_si<current>(0.0))
{
    require_not_negative(through, "current");
    surroundings shade = where;
    shade.sun = heat_flux{};
    const temperature_difference least = in_si<temperature_difference>(0.01);
    temperature at = conductor;
    if (at > where.air - least && at < where.air + least) at = where.air + least;
    const double up = steady_loss_of(lead, shade, at).value() / (at - where.air).value();
    const double gain = through.value() * through.value() *
                        resistance_per_length_of(lead, reference_temperature).value() *
                        lead.metal.temperature_coefficient.value();
    const double ka =
        require_positive(lead.metal.thermal_conductivity, "thermal conductivity of the conductor").value() *
        lead.size.area().value();
    if (!(up > gain))
        throw no_solution_error("decay length",
                                "without end: the current's heat grows by " + number_text(gain) + " W/(m K)",
                                "less growth than the " + number_text(up) + " W/(m K) that leave the lead");
    return require_finite(in_si<length>(std::sqrt(ka / (up - gain))), "decay length");
}

namespace detail {

/// Share of a damaged length's own excess of temperature that is there at its middle, heat running off along the
/// conductor to both sides: two fins of the sections and slopes they have. Inside the damage
/// theta = (q/g) (1 - 1/(cosh x + r sinh x)), q the heat made more, g what is lost more per kelvin less what is made
/// more, x half the damage over its decay length, r the heat a kelvin sends along the damage over that along the lead;
/// never more than the excess of a lead damaged all along.
/// @param whole period mean of the sound conductor @param damaged of one damaged all along @param squared mean square
/// of the current [A2]
[[nodiscard]] inline double excess_left(const cable& lead, const surroundings& where, temperature whole,
                                        temperature damaged, double squared)
{
    const double all = (damaged - whole).value();
    if (!(all > 0.0)) return 1.0;
    constexpr double step = 1.0;  // K
    surroundings shade = where;
    shade.sun = heat_flux{};
    const auto loss = [&](double kelvin) {
        return steady_loss_of(lead, shade, temperature::kelvin(whole.in_kelvin() + kelvin)).value();
    };
    const double by_kelvin = (loss(step) - loss(-step)) / (2.0 * step);
    const double metal = 1.0 - static_cast<double>(lead.missing_strands);
    const double made = squared * resistance_per_length_of(lead, reference_temperature).value();
    const double gain = made * lead.metal.temperature_coefficient.value();
    const double outside = by_kelvin - gain, inside = by_kelvin - gain / metal;
    if (!(outside > 0.0 && inside > 0.0)) return 1.0;  // nothing draws the excess down
    const double axial = (lead.metal.thermal_conductivity * lead.size.area()).value();
    const double x = 0.5 * lead.damaged_length.value() * std::sqrt(inside / (axial * metal));
    const double r = std::sqrt(metal * inside / outside);
    const double heat = squared * resistance_per_length_of(lead, whole).value() * (1.0 / metal - 1.0);
    const double drawn = 1.0 - 1.0 / (std::cosh(x) + r * std::sinh(x));
    return std::min(1.0, heat / inside * drawn / all);
}

}  // namespace detail

/// Temperatures of a lead under a programme of several currents that repeats, settled, far from its ends: heating_of()
/// for more than on and off.
///
/// periodic_heating_of() with the lead's conductor, covering and surface. Damage is
/// drawn down as in heating_of(), with the current of the same mean heat.
/// @param lead with its diameters @param where air, wind, lay, altitude, sun
/// @param programme one segment or more, each a current of 0 or above for a duration above 0
/// @return as heating_of(); conductor_mean is over the time with any current
/// @throws missing_data_error for a lead without diameters; not_finite_error, out_of_range_error, no_solution_error
[[nodiscard]] inline cable_heating heating_of_programme(const cable& lead, const surroundings& where,
                                                        std::span<const heating_segment> programme)
{
    detail::require_dimensions(lead);
    const cable_surface surface = detail::surface_of(lead, where);
    const detail::surface_kernel kernel(surface);
    const auto settled_with = [&](double missing) {
        const detail::conductor_numbers conductor(detail::conductor_of(lead, missing));
        return detail::checked_and_settled(conductor, kernel, programme).result();
    };
    const periodic_heating whole = settled_with(0.0);
    cable_heating out;
    out.conductor_peak = whole.conductor_peak;
    out.conductor_mean = whole.conductor_on_mean;
    out.surface_peak = whole.surface_peak;
    out.conductor_period_mean = whole.conductor_mean;
    out.ripple_up = whole.conductor_peak - whole.conductor_mean;
    out.melts = whole.melts;
    if (detail::is_damaged(lead)) {
        const periodic_heating damaged = settled_with(static_cast<double>(lead.missing_strands));
        double squares = 0.0, period = 0.0;
        for (const heating_segment& s : programme) {
            squares += s.current.value() * s.current.value() * s.duration.value();
            period += s.duration.value();
        }
        const double left =
            detail::excess_left(lead, where, whole.conductor_mean, damaged.conductor_mean, squares / period);
        const double along = std::min((lead.damaged_length / lead.length).value(), left);
        out.conductor_peak = out.conductor_peak + left * (damaged.conductor_peak - whole.conductor_peak);
        out.surface_peak = out.surface_peak + left * (damaged.surface_peak - whole.surface_peak);
        out.conductor_mean = out.conductor_mean + along * (damaged.conductor_on_mean - whole.conductor_on_mean);
        out.conductor_peak = std::max(out.conductor_peak, out.conductor_mean);  // equal but for rounding at times
        out.melts = out.conductor_peak > conductor_melting_of(lead.metal);
    }
    out.over_limit = out.conductor_peak > limit_of(lead);
    detail::begin_heating_basis(out.basis, lead, surface, kernel, out.conductor_peak, out.surface_peak,
                                programme.size() == 1);
    return out;
}

/// Temperatures of a lead under a load, settled, far from its ends.
///
/// Whole strands: periodic_heating_of() with the lead's conductor, covering and surface. Damage (missing strands over a
/// length Ld): there the same with the remaining strands, and the excess is drawn down along the conductor: at the
/// middle of the damage as detail::excess_left() says; averaged over the lead it keeps the share Ld/L, or the same
/// if that is less.
///
/// Overloaded leads get an answer too: above the melting point it only says "far too hot" (`melts`), up to a thousand
/// times the current a coil melts at, where no_solution_error ends it.
/// Accuracy of the rise: 5 % alone in still air from 100 % duty tables, see surface_model; no current gives the air's
/// temperature (higher in the sun).
/// @param lead with its diameters @param where air, wind, lay, altitude, sun @param work current [A], 0 or above, and
/// duty
/// @throws missing_data_error for a lead without diameters; not_finite_error, out_of_range_error, no_solution_error
[[nodiscard]] inline cable_heating heating_of(const cable& lead, const surroundings& where, const load& work)
{
    const std::array programme{heating_segment{work.current, work.duty.on()},
                               heating_segment{current{}, work.duty.period() - work.duty.on()}};
    return heating_of_programme(lead, where,
                                std::span<const heating_segment>(programme).first(work.duty.is_continuous() ? 1 : 2));
}

}  // namespace weldloop
