#pragma once
/// @file
/// Films between two bodies: what they add to the resistance, and whether the no-load voltage breaks an insulating one.

#include <cmath>
#include <limits>

#include <weldloop/core/band.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>

namespace weldloop {

/// Resistance of a film over the area it covers.
inline constexpr source film_definition{"Holm, Electric Contacts", "4th edition 1967", "sigma_f/A (definition)",
                                        source_kind::handbook};
/// Thickness and strength of paint.
inline constexpr source paint_strength{"polymer and coating handbooks",
                                       {},
                                       "dry sound paint: 5, 20, 60 MV/m; shop primer: 15, 25, 40 um",
                                       source_kind::memory};

/// Strength of thin oxides.
inline constexpr source oxide_strength{"Holm, Electric Contacts", "4th edition 1967",
                                       "A-fritting of films a few to 100 nm thick: 10, 100, 500 MV/m; the drop then "
                                       "settles between softening and melting",
                                       source_kind::memory};

using electric_field = decltype(voltage{} / length{});  ///< volt per metre

/// Dry film of one coat of shop primer [m]; see paint_strength.
inline constexpr band<length> primer_thickness{in_si<length>(15e-6), in_si<length>(25e-6), in_si<length>(40e-6)};
/// Field that a dry, sound coat of paint stands [V/m]; see paint_strength.
inline constexpr band<electric_field> paint_breakdown_field{in_si<electric_field>(5e6), in_si<electric_field>(20e6),
                                                            in_si<electric_field>(60e6)};

/// Field that an insulating oxide of a few to 100 nm stands [V/m]; see oxide_strength. 10 nm break near 1 V.
inline constexpr band<electric_field> oxide_breakdown_field{in_si<electric_field>(1e7), in_si<electric_field>(1e8),
                                                            in_si<electric_field>(5e8)};

/// Film resistivity of a layer that conducts like its bulk, rho t [ohm m2]. For layers above about 2 nm; thinner ones
/// let electrons tunnel and are better than this.
/// @param rho resistivity of the layer [ohm m], above 0 @param thickness t [m], 0 or above
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline film_resistivity film_resistivity_of(resistivity rho, length thickness)
{
    const film_resistivity found =
        require_positive(rho, "resistivity") * require_not_negative(thickness, "film thickness");
    return require_finite(found, "film resistivity");
}

/// Resistance of a film, sigma_f/A [ohm]; it adds to the constriction of each spot. Only the part of the bearing area
/// that the film still covers counts: where the film has cracked, the metal carries the current.
/// @param sigma film resistivity [ohm m2], 0 or above @param covered area A [m2], above 0
/// @throws not_finite_error, out_of_range_error @see film_definition
[[nodiscard]] inline resistance film_resistance(film_resistivity sigma, area covered)
{
    const resistance found =
        require_not_negative(sigma, "film resistivity") / require_positive(covered, "covered area");
    return require_finite(found, "film resistance");
}

/// Voltage that breaks an insulating film through, E t [V]. 25 um of paint stands at least 125 V.
/// @param thickness t [m], above 0 @param field E the film stands [V/m], above 0, see paint_breakdown_field
/// @throws not_finite_error, out_of_range_error @see paint_strength
[[nodiscard]] inline voltage breakdown_voltage(length thickness, electric_field field)
{
    const voltage found = require_positive(thickness, "film thickness") * require_positive(field, "breakdown field");
    return require_finite(found, "breakdown voltage");
}

/// Whether a no-load voltage breaks a film through; a film that is just reached counts as broken.
/// @param no_load open-circuit voltage of the supply [V], 0 or above
/// @param thickness [m], above 0 @param field [V/m], above 0
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline bool breaks_through(voltage no_load, length thickness, electric_field field)
{
    return require_not_negative(no_load, "no-load voltage") >= breakdown_voltage(thickness, field);
}

/// What a no-load voltage does to an insulating film whose strength scatters.
enum class film_under_voltage {
    stands,     ///< not broken even at the low strength: an open circuit until something pierces it
    may_break,  ///< broken at the low strength, not at the high one
    breaks,     ///< broken at any strength of the band
};

/// Whether a film stands the open-circuit voltage of a supply.
///
/// The 113 V that a d.c. supply may show, on 25 um of primer: stands. On 20 um of the weakest paint it may break; a
/// welder cannot count on it, so paint counts as open until it is pierced.
/// @param no_load open-circuit voltage of the supply [V], 0 or above; an alternating one by its peak
/// @param thickness of the film [m], above 0 @param strength field it stands [V/m], above 0, in order
/// @throws not_finite_error, out_of_range_error @see paint_breakdown_field, oxide_breakdown_field
[[nodiscard]] inline film_under_voltage film_at_no_load(voltage no_load, length thickness,
                                                        const band<electric_field>& strength)
{
    require_positive(strength.low, "breakdown field");
    require_within(strength.high, strength.low, in_si<electric_field>(std::numeric_limits<double>::max()),
                   "breakdown field");
    if (breaks_through(no_load, thickness, strength.high)) return film_under_voltage::breaks;
    return breaks_through(no_load, thickness, strength.low) ? film_under_voltage::may_break
                                                            : film_under_voltage::stands;
}

}  // namespace weldloop
