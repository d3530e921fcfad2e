#pragma once
/// @file
/// From the temperature of a lead's surface to that of its conductor and its current.

#include <algorithm>
#include <cmath>
#include <string>

#include <weldloop/circuit/cable_heating.hpp>
#include <weldloop/core/error.hpp>
#include <weldloop/core/fraction.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/core/text.hpp>
#include <weldloop/field/measured.hpp>
#include <weldloop/law/radiation.hpp>
#include <weldloop/part/cable.hpp>
#include <weldloop/part/surroundings.hpp>
#include <weldloop/part/welding_cable.hpp>
#include <weldloop/solve/root.hpp>

namespace weldloop {

/// @name Sources of surface readings
/// @{
/// How well the heat that leaves is known.
inline constexpr source surface_heat_uncertainty{
    "heat that leaves a lead in still air at a surface temperature: 15 % either way in a workshop", "2026",
    "judgement; the surface law meets continuous ratings within 4 %, 8 % of the heat; draughts and what it lies on are "
    "more",
    source_kind::judgement};
/// What a thermometer sees.
inline constexpr source grey_body_reading{
    "grey body in even surroundings, all wavelengths", {}, "eps Ts^4 + (1 - eps) Tr^4 = Tb^4", source_kind::derived};
/// @}

/// Share of the heat that leaves, half of its 95 % interval; see surface_heat_uncertainty.
inline constexpr double surface_heat_share = 0.15;
/// Least emissivity [1] that a surface may have whose radiation is read as its temperature: below it the surroundings
/// are seen.
inline constexpr double least_readable_emissivity = 0.5;

/// A reading of a thermometer that sees radiation.
struct radiation_reading {
    measured<temperature> shown;                       ///< on its display
    weldloop::emissivity set = 1.0;                    ///< emissivity it is set to
    temperature reflected = temperature::celsius(20);  ///< of what the surface mirrors, as it is and as it is set
    measured<double, double> surface{0.9, 0.05};       ///< emissivity of the surface [1], 0.5 to 1
};

namespace detail {
/// Root of the sum of squares.
template <class... D>
[[nodiscard]] double together(const D&... d)
{
    return std::sqrt(((d * d) + ...));
}

[[nodiscard]] inline double fourth_power(double x)
{
    return x * x * x * x;
}

/// Temperature of a lead without current: that of the air, warmer in the sun.
[[nodiscard]] inline temperature idle_temperature_of(const cable& lead, const surroundings& where)
{
    if (!(where.sun > heat_flux{})) return where.air;
    constexpr double most_by_sun = 200.0;  // K
    const double air = where.air.in_kelvin();
    return temperature::kelvin(root_between(
        [&](double conductor) { return steady_loss_of(lead, where, temperature::kelvin(conductor)).value(); }, air,
        air + most_by_sun, "temperature in the sun"));
}
}  // namespace detail

/// Temperature of a surface from the radiation read off it: Tb^4 = e Tm^4 + (1 - e) Tr^4 is what the thermometer saw,
/// with e its setting, and Ts^4 = (Tb^4 - (1 - eps) Tr^4)/eps.
///
/// Grey and over all wavelengths: a narrow band errs differently where surface or surroundings are hot. A painted or
/// taped spot (0.9 to 0.95) is the way to read bright metal.
/// @param r the reading
/// @throws not_finite_error; out_of_range_error for an emissivity below 0.5; no_solution_error where the surroundings
/// alone give more radiation than was seen
[[nodiscard]] inline measured<temperature> surface_temperature_of(const radiation_reading& r)
{
    require_within(r.surface.value, least_readable_emissivity, 1.0, "emissivity of the surface");
    require_not_negative(r.shown.uncertainty, "uncertainty of the reading");
    require_within(r.surface.uncertainty, 0.0, 1.0, "uncertainty of the emissivity");
    const double mirrored = detail::fourth_power(r.reflected.in_kelvin()), set = static_cast<double>(r.set);
    const auto surface = [&](double shown, double own_emissivity) {
        const double seen = set * detail::fourth_power(shown) + (1.0 - set) * mirrored;
        const double own = (seen - (1.0 - own_emissivity) * mirrored) / own_emissivity;
        if (!(own > 0.0))
            throw no_solution_error("surface temperature", "none: what it mirrors is brighter than what was seen",
                                    "colder surroundings or a surface of higher own_emissivity");
        return std::sqrt(std::sqrt(own));
    };
    const double shown = r.shown.value.in_kelvin(), eps = r.surface.value;
    const double at = surface(shown, eps);
    const double of_reading = at - surface(shown - r.shown.uncertainty.value(), eps);
    const double higher = std::min(1.0, eps + r.surface.uncertainty);
    const double lower = std::max(least_readable_emissivity, eps - r.surface.uncertainty);
    const double of_emissivity =
        std::max(std::fabs(surface(shown, lower) - at), std::fabs(surface(shown, higher) - at));
    return {temperature::kelvin(at), in_si<temperature_difference>(detail::together(of_reading, of_emissivity))};
}

/// What a surface temperature tells of a lead.
struct lead_from_surface {
    measured<temperature> conductor;  ///< of the strands
    measured<current> effective;      ///< root mean square of the current over the last hour or so
    weldloop::basis basis;            ///< sources, and ranges left
};

/// Conductor temperature and current of a lead from the temperature of its surface, far from its ends, settled.
///
/// The conductor is as much warmer as the covering lets the heat that leaves the surface through; the current is the
/// one that makes this heat. With a duty it is the effective value (root mean square), and the reading should stand for
/// the mean of a period. A small rise says little of the current, and the uncertainty says so.
/// @param lead sound, with its diameters @param where air, wind, lay, altitude, sun
/// @param surface read by contact, or surface_temperature_of() a radiation reading
/// @param air_uncertainty [K], 0 or above, of the air beside the lead, half of the 95 % interval
/// @throws missing_data_error for a lead without diameters; not_finite_error; out_of_range_error for a lead in a coil
/// or a bundle, whose surface is not one, and for one with missing strands; no_solution_error where the surface is not
/// warmer than the air and the sun make it by more than the uncertainty
[[nodiscard]] inline lead_from_surface
conductor_from_surface(const cable& lead, const surroundings& where, const measured<temperature>& surface,
                       temperature_difference air_uncertainty = in_si<temperature_difference>(1.0))
{
    require_not_negative(surface.uncertainty, "uncertainty of the surface temperature");
    require_not_negative(air_uncertainty, "uncertainty of the air temperature");
    const lay lies = lead.lay.value_or(where.lay);
    if (lies == lay::coiled || lies == lay::bundled)
        throw out_of_range_error("lay of the lead", std::string(to_text(lies)),
                                 "a stretch that lies out of the coil or bundle");
    if (detail::is_damaged(lead))
        throw out_of_range_error("missing strands", to_text(lead.damaged_length, "m") + " of them",
                                 "a sound stretch of the lead");
    const temperature_difference rise = surface.value - detail::idle_temperature_of(lead, where);
    const auto off =
        in_si<temperature_difference>(detail::together(surface.uncertainty.value(), air_uncertainty.value()));
    if (!(rise > off))
        throw no_solution_error("current from the surface", "none to be read: the rise is " + to_text(rise, "K"),
                                "a rise above its uncertainty of " + to_text(off, "K", 2));
    struct found {
        double conductor, amps;
    };
    const auto from = [&](double surface_kelvin, const surroundings& there, double heat) {
        constexpr double most_across = 400.0;  // K across any covering
        const auto above = [&](double conductor) {
            return steady_surface_of(lead, there, temperature::kelvin(conductor)).in_kelvin() - surface_kelvin;
        };
        const double conductor = detail::root_between(above, std::min(surface_kelvin, there.air.in_kelvin()),
                                                      surface_kelvin + most_across, "conductor temperature");
        // heat other than the law's warms the conductor by as much more over the surface
        const double across = heat * (conductor - surface_kelvin);
        const temperature at = temperature::kelvin(surface_kelvin + across);
        const double loss = heat * steady_loss_of(lead, there, temperature::kelvin(conductor)).value();
        return found{at.in_kelvin(), loss > 0.0 ? std::sqrt(loss / resistance_per_length_of(lead, at).value()) : 0.0};
    };
    const double read = surface.value.in_kelvin();
    surroundings cooler = where;
    cooler.air = where.air - air_uncertainty;
    const found best = from(read, where, 1.0), hot = from(read + surface.uncertainty.value(), where, 1.0),
                cold = from(read, cooler, 1.0), more = from(read, where, 1.0 + surface_heat_share);
    lead_from_surface out;
    out.conductor = {
        temperature::kelvin(best.conductor),
        in_si<temperature_difference>(detail::together(hot.conductor - best.conductor, cold.conductor - best.conductor,
                                                       more.conductor - best.conductor))};
    out.effective = {
        in_si<current>(best.amps),
        in_si<current>(detail::together(hot.amps - best.amps, cold.amps - best.amps, more.amps - best.amps))};
    detail::begin_basis_of(out.basis, lead);
    out.basis.add(surface_heat_uncertainty);
    return out;
}

}  // namespace weldloop
