#pragma once
/// @file
/// Heat that the surface of a cable gives to the air and the walls around: still air or wind, sun, altitude, and the
/// way cables lie beside each other.

#include <cmath>
#include <limits>
#include <optional>

#include <weldloop/core/error.hpp>
#include <weldloop/core/fraction.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/core/text.hpp>
#include <weldloop/law/convection.hpp>
#include <weldloop/law/cylinder_loss.hpp>
#include <weldloop/law/free_air.hpp>
#include <weldloop/law/lay.hpp>
#include <weldloop/law/lead_bundle.hpp>
#include <weldloop/law/radiation.hpp>
#include <weldloop/law/surface_model.hpp>
#include <weldloop/material/air.hpp>
#include <weldloop/solve/root.hpp>

namespace weldloop {

/// Absorption of sunlight.
inline constexpr source sun_on_cables{"IEC 60287-2-1", "1994+A1:2001",
                                      "table of solar absorption, polychloroprene 0.8; taken for all rubber",
                                      source_kind::memory};

/// Share of the sun's heat that a rubber covering takes up.
inline constexpr fraction sun_absorption = 0.8;

/// The surface of a cable and what is around it.
struct cable_surface {
    length diameter;                               ///< [m] over the covering, above 0
    temperature air = temperature::celsius(25.0);  ///< air and walls around, -100 to 500 degC
    speed wind = in_si<speed>(0.0);                ///< across the cable [m/s], 0 or above, 0 for still air
    weldloop::lay lay = weldloop::lay::alone;      ///< arrangement
    std::optional<int> coil_turns = {};            ///< of a coiled cable, up to 200; none if not known
    int assumed_turns = assumed_coil_turns;        ///< of a coiled cable whose turns are not known, 1 to 200
    std::optional<int> bundled_leads = {};         ///< loaded leads of a bundle, up to 200; none if not known
    length altitude = in_si<length>(0.0);          ///< above sea level [m], -500 to 11000
    heat_flux sun = in_si<heat_flux>(0.0);         ///< sunlight on the cable's outline [W/m2], 0 or above
    weldloop::emissivity emissivity = 0.9;         ///< of the covering
    thermal_conductivity across_bundle =
        least_across_bundle;                      ///< as in conductivity_across_bundle(), of bundles and coils
    surface_model model = default_surface_model;  ///< of the lone cable in still air
};

/// @name Air temperatures a lead is rated for
/// @{
inline constexpr temperature coldest_air = temperature::celsius(-100.0);  ///< lower than any workplace
inline constexpr temperature hottest_air = temperature::celsius(500.0);   ///< higher than any workplace
/// @}

/// The body that a cable shares with others where it lies in a bundle or a coil; itself elsewhere.
/// @param s the surface and what is around it
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline lead_bundle lead_bundle_of(const cable_surface& s)
{
    if (s.lay != lay::coiled || s.coil_turns) [[likely]]
        return lead_bundle_of(s.lay, s.diameter, s.lay == lay::bundled ? s.bundled_leads : s.coil_turns,
                              s.across_bundle);
    require_within(static_cast<double>(s.assumed_turns), 1.0, static_cast<double>(most_bundled_turns),
                   "assumed turns of the coil");
    lead_bundle out = lead_bundle_of(s.lay, s.diameter, s.assumed_turns, s.across_bundle);
    out.assumed = true;
    return out;
}

namespace detail {

/// The surface law on plain numbers, what does not change with the temperature worked out once.
class surface_kernel {
public:
    /// Checks the surface. @throws not_finite_error, out_of_range_error
    explicit surface_kernel(const cable_surface& s) : surface_kernel(checked(s), lead_bundle_of(s)) {}

    [[nodiscard]] double air() const { return outline_.air(); }  // K

    /// Heat [W/m] that the sun drives into a cable whose surface is held at the air's temperature. A lone cable's
    /// outline takes it up as it is; in a bundle part of it goes back to the air before it is inside.
    [[nodiscard]] double sun_per_length() const { return sun_inside_; }

    /// Heat that the sun gives to the outline, a cable's share of it [W/m].
    [[nodiscard]] double sun_on_outline() const { return sun_; }

    /// Heat given off per length [W/m] at a surface temperature [K] of the hottest cable; rises with it, zero at the
    /// air's. Less sun_per_length() it is what leaves the cable.
    [[nodiscard]] double loss(double surface) const
    {
        if (inside_ == 0.0) return share_ * outline_.loss(surface).value;
        return through_inside(surface, outline_at(surface));
    }

    /// The same with its tangent [W/(m K)], on the side of the law in force where two meet.
    [[nodiscard]] value_and_slope loss_and_slope(double surface) const
    {
        if (inside_ == 0.0) return share_of(outline_.loss(surface));
        const double outline = outline_at(surface), slope = share_ * outline_.loss(outline).slope;
        return {through_inside(surface, outline), slope / (1.0 + slope * inside_)};
    }

    /// Temperature [K] of the surface of a covering that lets `conductance` [W/(m K)] through, the conductor under it
    /// steadily at a temperature [K].
    [[nodiscard]] double steady_surface(double conductance, double conductor) const
    {
        const double through = conductance / (1.0 + conductance * inside_);
        const double outline = outline_.balance(share_, sun_, through, conductor);
        return inside_ == 0.0 ? outline : conductor - (conductor - outline) * through / conductance;
    }

    /// loss() with its slope [W/(m K)] over a twentieth of the rise to either side, so that it has no step where the
    /// law changes from one formula to another; 1e-4 from the tangent elsewhere.
    [[nodiscard]] value_and_slope line_at(double surface) const
    {
        const double step = 0.02 + 0.05 * std::fabs(surface - air());  // K; large beside rounding
        if (inside_ == 0.0) return {loss(surface), (loss(surface + step) - loss(surface - step)) / (2.0 * step)};
        const double outline = outline_at(surface);
        const double follows = step / (1.0 + share_ * outline_.loss(outline).slope * inside_);  // the outline
        const double above = through_inside(surface + step, outline_at(surface + step, outline + follows));
        const double below = through_inside(surface - step, outline_at(surface - step, outline - follows));
        return {through_inside(surface, outline), (above - below) / (2.0 * step)};
    }

    /// The slope of line_at().
    [[nodiscard]] double slope(double surface) const { return line_at(surface).slope; }

    /// The law of the outline, a bundle's where the cable lies in one.
    [[nodiscard]] const cylinder_law& outline() const { return outline_; }

    /// Whether nobody said how many share that outline.
    [[nodiscard]] bool is_count_assumed() const { return assumed_; }

private:
    surface_kernel(const cable_surface& s, const lead_bundle& body)
        : outline_({.diameter = body.outline.value(),
                    .air = s.air.in_kelvin(),
                    .wind = s.wind.value(),
                    .pressure = standard_pressure(s.altitude.value()),
                    .emissivity = static_cast<double>(s.emissivity),
                    .model = s.model}),
          share_(lay_ratio(s.lay, s.diameter) / body.leads), inside_(body.rise_inside),
          sun_(s.sun.value() * static_cast<double>(sun_absorption) * body.outline.value() / body.leads),
          sun_inside_(sun_), assumed_(body.assumed)
    {
        if (inside_ > 0.0 && sun_ > 0.0)
            sun_inside_ = (outline_.balance(share_, sun_, 1.0 / inside_, air()) - air()) / inside_;
    }

    /// Temperature [K] of the outline under a surface's; `near` it the search starts.
    [[nodiscard]] double outline_at(double surface, double near = std::numeric_limits<double>::quiet_NaN()) const
    {
        return outline_.balance(share_, sun_, 1.0 / inside_, surface, near);
    }
    [[nodiscard]] double through_inside(double surface, double outline) const
    {
        return (surface - outline) / inside_ + sun_inside_;
    }

    static const cable_surface& checked(const cable_surface& s)
    {
        if (s.air >= coldest_air && s.air <= hottest_air && s.wind.value() >= 0.0 &&
            s.wind.value() <= greatest_number && s.altitude >= lowest_altitude && s.altitude <= highest_altitude &&
            s.sun.value() >= 0.0 && s.sun.value() <= greatest_number) [[likely]]
            return s;
        refuse(s);
    }
    // The first of what checked() asks for that does not hold.
    [[noreturn, gnu::noinline, gnu::cold]] static void refuse(const cable_surface& s)
    {
        (void)lead_bundle_of(s);
        if (s.air < coldest_air || s.air > hottest_air)
            throw out_of_range_error("air temperature", to_text(s.air, "degC"), "-100 degC to 500 degC");
        require_not_negative(s.wind, "wind");
        (void)pressure_at_altitude(s.altitude);
        refuse_value(s.sun, "sunlight", "zero or above");
    }

    [[nodiscard]] value_and_slope share_of(const value_and_slope& whole) const
    {
        return {share_ * whole.value, share_ * whole.slope};
    }

    cylinder_law outline_;
    double share_;   // of the outline's heat that one cable gives
    double inside_;  // K m/W, outline to the hottest cable, over the heat of one
    double sun_, sun_inside_;
    bool assumed_;
};

/// Adds what an arrangement rests on.
inline void add_lay_basis(basis& out, lay arrangement)
{
    switch (arrangement) {
    case lay::alone:
    case lay::spaced: break;
    case lay::touching_pair: out.add(iec_60287_free_air); break;
    case lay::trefoil:
    case lay::three_flat: out.add(iec_60287_free_air_three); break;
    case lay::spaced_vertical: out.add(iec_60287_free_air_vertical); break;
    case lay::on_floor: out.add(arrangement_factors).add(range_flag::arrangement_judgement); break;
    case lay::bundled:
    case lay::coiled: out.add(bundle_model).add(range_flag::arrangement_judgement); break;
    }
}

/// Adds the ranges that the law of an outline leaves at a surface temperature [K].
inline void add_outline_ranges(basis& out, const cylinder_law& outline, double surface,
                               surface_model model = default_surface_model)
{
    if (outline.leaves_range(surface)) out.add(range_flag::convection_range);
    if (model == surface_model::iec_60287 && outline.diameter() > free_air_widest.value())
        out.add(range_flag::cable_diameter_range);
}

/// Adds what surface_basis() says of a surface with its kernel, to sources of which none is of a surface.
inline void add_surface_basis(basis& out, const cable_surface& s, const surface_kernel& kernel, temperature surface)
{
    const bool is_still = s.wind.value() == 0.0 && s.altitude.value() == 0.0;
    if (s.model == surface_model::iec_60287 && is_still)
        out.add_new(iec_60287_free_air, free_air_base_air, stefan_boltzmann_law);
    else {
        if (s.model == surface_model::iec_60287) out.add(iec_60287_free_air).add(free_air_base_air);
        if (s.model == surface_model::morgan) out.add(morgan_cylinder);
        if (s.model == surface_model::churchill_chu || !is_still) out.add(churchill_chu_cylinder);
        out.add(stefan_boltzmann_law);
        if (s.model != surface_model::iec_60287) out.add(us_standard_atmosphere);
    }
    if (s.wind.value() > 0.0) out.add(churchill_bernstein_cylinder).add(mixed_convection_rule);
    if (s.sun.value() > 0.0) out.add(sun_on_cables);
    add_lay_basis(out, s.lay);
    if (kernel.is_count_assumed()) out.add(range_flag::crowd_assumed);
    add_outline_ranges(out, kernel.outline(), surface.in_kelvin(), s.model);
}

}  // namespace detail

/// Heat per length that the surface of a cable gives to air and walls, before what the sun adds.
///
/// Alone in still air at sea level, with the emissivity 0.9:
/// - `churchill_chu`, `morgan`: q = pi D (Nu k/D (Ts - Ta) + eps sigma (Ts^4 - Ta^4)), air at the film temperature;
/// - `iec_60287`: q = pi D (Z/D^g + E) (Ts - Ta)^(5/4) in air at 30 degC, where the published ratings confirm it. It
///   knows the rise alone, but radiation grows with the cube of the temperature: elsewhere the radiation of that rise
///   at 30 degC is replaced by that at Ta. What is left to convection is no less than `churchill_chu` gives (the power
///   makes the standard's coefficient vanish with the rise, which no surface does; it falls below at about 10 K at 20
///   mm, 20 K at 50 mm).
///
/// IEC 60287 has neither altitude nor emissivity nor wind. At others of the first two either the convection left above
/// is scaled by churchill_chu here over churchill_chu at sea level and radiation added, or the whole is scaled by
/// convection and radiation here over those at sea level with 0.9: the lesser counts. Wind V: Nu^4 = Nu_still^4 +
/// Nu_cross-flow^4 with the convection so found.
///
/// Arrangement: the whole is multiplied by lay_ratio(), wind too, which is on the cautious side. In a bundle or a coil
/// the law above holds for the outline of the body and gives the heat of all its leads, q = q_outline(Tb)/n with
/// Tb = Ts - q lead_bundle::rise_inside; Ts is that of the hottest. Sun falls on the outline; this is then what leaves
/// the lead at Ts more than at the air's temperature.
///
/// Rises with the surface temperature, is zero at the air's and negative below. Accuracy 5 % in free air for the
/// default model (2.5 % of current), in air from -40 to 60 degC within 3 % of current of first principles tied to it at
/// 25 degC; 15 to 20 % for wind; unknown for `on_floor`; for bundles see docs/pages/heat_model.md.
/// @param s the surface and what is around it @param surface Ts
/// @return [W/m]
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline power_per_length surface_loss(const cable_surface& s, temperature surface)
{
    return require_finite(in_si<power_per_length>(detail::surface_kernel(s).loss(surface.in_kelvin())),
                          "heat given off per length");
}

/// Heat per length that a cable takes up from the sun: absorption 0.8 x diameter x sunlight; in a bundle or a coil its
/// share of what the outline takes up.
/// @param s the surface and what is around it
/// @return [W/m]
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline power_per_length absorbed_sun(const cable_surface& s)
{
    return require_finite(in_si<power_per_length>(detail::surface_kernel(s).sun_on_outline()), "sun on the cable");
}

/// The sources of surface_loss() and the ranges it leaves at a surface temperature.
/// @param s the surface and what is around it @param surface Ts
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline basis surface_basis(const cable_surface& s, temperature surface)
{
    basis out;
    detail::add_surface_basis(out, s, detail::surface_kernel(s), surface);
    return out;
}

}  // namespace weldloop
