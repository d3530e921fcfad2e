#pragma once
/// @file
/// Films found between bodies: how thick they are and how they conduct. The resistivities of oxides span 4 to 10
/// decades with stoichiometry and moisture, so nothing here predicts a dirty clamp; surface_state.hpp does, by
/// judgement.

#include <array>
#include <string_view>

#include <weldloop/core/band.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/source.hpp>

namespace weldloop {

/// @name Sources of films
/// @{

/// Iron oxides and hydroxide.
inline constexpr source mineral_resistivities{
    "Reynolds, An Introduction to Applied and Environmental Geophysics (after Telford et al. 1990)", "2nd edition 2011",
    "table 7.1, page 291 (ends; the typical values are judgement)", source_kind::handbook};
/// Cuprous oxide.
inline constexpr source cuprous_oxide_films{
    "Drobny and Pulfrey, Thin Solid Films 61, 89; Parretta et al., Phys. Stat. Sol. (a), 399", "1979; 1996",
    "abstracts: 25 to 1e4 ohm cm; 43 ohm cm", source_kind::paper};
/// Cupric oxide and sulphide, tunnel films, thicknesses of scale, rust and paint, resistivity of paint.
inline constexpr source films_recalled{
    "contact, corrosion and coating handbooks", {}, "thickness and resistivity of films", source_kind::memory};
/// @}

/// Volume resistivity of a film.
struct film_resistivity_row {
    std::string_view film;   ///< what it is
    band<resistivity> bulk;  ///< [ohm m] low, typical, high of what is published
    const source* from;      ///< where it stands
};

namespace detail {
constexpr band<resistivity> ohm_m(double low, double typical, double high)
{
    return {in_si<resistivity>(low), in_si<resistivity>(typical), in_si<resistivity>(high)};
}
constexpr band<film_resistivity> ohm_m2(double low, double typical, double high)
{
    return {in_si<film_resistivity>(low), in_si<film_resistivity>(typical), in_si<film_resistivity>(high)};
}
constexpr band<length> micrometres(double low, double typical, double high)
{
    return {in_si<length>(low * 1e-6), in_si<length>(typical * 1e-6), in_si<length>(high * 1e-6)};
}
}  // namespace detail

/// Films that conduct by their bulk, thicker than some 2 nm; their film resistivity is this times thickness.
inline constexpr std::array film_bulk_resistivities{
    film_resistivity_row{"magnetite, main part of mill scale", detail::ohm_m(5e-5, 0.01, 5700), &mineral_resistivities},
    film_resistivity_row{"haematite, outer mill scale and red rust", detail::ohm_m(0.0035, 100, 1e7),
                         &mineral_resistivities},
    film_resistivity_row{"limonite, yellow or brown rust", detail::ohm_m(1e3, 1e5, 1e7), &mineral_resistivities},
    film_resistivity_row{"cuprous oxide", detail::ohm_m(0.25, 0.43, 100), &cuprous_oxide_films},
    film_resistivity_row{"cupric oxide", detail::ohm_m(1e-4, 0.01, 10), &films_recalled},
    film_resistivity_row{"copper sulphide tarnish", detail::ohm_m(1e-5, 1e-3, 0.1), &films_recalled},
    film_resistivity_row{"paint", detail::ohm_m(1e7, 1e10, 1e13), &films_recalled},
};

/// Cuprous oxide, what copper grows in warm dry air [ohm m].
inline constexpr band<resistivity> cuprous_oxide_resistivity = film_bulk_resistivities[3].bulk;

/// Resistance of a film times its area.
struct film_state_row {
    std::string_view film;         ///< what it is
    band<film_resistivity> whole;  ///< [ohm m2]
    const source* from;            ///< where it stands
};

/// Whole films, by what a person would call them.
inline constexpr std::array film_states{
    film_state_row{"adsorbed water or oxygen on clean metal", detail::ohm_m2(1e-13, 1e-12, 1e-11), &films_recalled},
    film_state_row{"thin copper oxide of a fresh joint", detail::ohm_m2(2e-12, 1e-11, 1e-10), &films_recalled},
    film_state_row{"tarnished copper, 10 to 100 nm", detail::ohm_m2(1e-10, 1e-9, 4e-8), &films_recalled},
    film_state_row{"mill scale, intact", detail::ohm_m2(1e-9, 2e-7, 5e-3), &films_recalled},
    film_state_row{"rust, dry", detail::ohm_m2(0.01, 1, 100), &films_recalled},
};

/// Thickness of a film.
struct film_thickness_row {
    std::string_view film;   ///< what it is
    band<length> thickness;  ///< [m]
    const source* from;      ///< where it stands
};

/// Films one can measure with a coating gauge.
inline constexpr std::array film_thicknesses{
    film_thickness_row{"mill scale", detail::micrometres(5, 20, 60), &films_recalled},
    film_thickness_row{"light flash rust", detail::micrometres(1, 5, 20), &films_recalled},
    film_thickness_row{"heavy rust", detail::micrometres(50, 200, 1000), &films_recalled},
    film_thickness_row{"shop primer", detail::micrometres(15, 25, 40), &films_recalled},
    film_thickness_row{"paint system", detail::micrometres(50, 150, 500), &films_recalled},
};

}  // namespace weldloop
