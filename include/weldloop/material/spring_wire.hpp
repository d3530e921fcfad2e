#pragma once
/// @file
/// Spring wires: strength by standard and diameter, moduli, static and temperature limits and the constants of their
/// stress relaxation.

#include <array>
#include <cmath>
#include <span>
#include <string>
#include <string_view>

#include <weldloop/core/error.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/core/text.hpp>

namespace weldloop {

/// @name Sources of the spring-wire table
/// @{

/// Strength of music, hard-drawn, oil-tempered, chrome-vanadium and chrome-silicon wire.
inline constexpr source wire_strength_constants{
    "Shigley, Mechanical Engineering Design", "9th and 10th edition",
    "table 10-4, newer set of A and m; an older set under the same number lies 7 to 16 % lower", source_kind::memory};
/// Strength of stainless wire.
inline constexpr source stainless_strength_constants{"Shigley, Mechanical Engineering Design", "9th and 10th edition",
                                                     "table 10-4, 302 stainless; constants of the two thinner ranges "
                                                     "read in a public extract, the thickest range from memory",
                                                     source_kind::handbook};
/// Moduli of the carbon-steel and chrome-vanadium wires.
inline constexpr source wire_moduli{"Shigley, Mechanical Engineering Design", "9th edition", "table 10-5, page 526",
                                    source_kind::handbook};
/// Moduli of chrome-silicon and stainless wire.
inline constexpr source wire_moduli_recalled{"Shigley, Mechanical Engineering Design", "9th edition",
                                             "table 10-5, rows not seen", source_kind::memory};
/// Highest service temperatures.
inline constexpr source wire_service_limits{"spring-industry association material chart", "public reprints",
                                            "highest service temperature by wire", source_kind::handbook};
/// Where a spring of carbon-steel wire counts as destroyed.
inline constexpr source carbon_wire_tempering{"stress relief of cold-drawn carbon spring wire, 230 to 260 degC for "
                                              "half an hour: above 250 degC the spring counts as destroyed",
                                              {},
                                              {},
                                              source_kind::judgement};
/// Where a spring of chrome-alloyed or stainless wire counts as destroyed.
inline constexpr source alloy_wire_tempering{
    "lower end of the customary stress-relief range of the wire; above it the spring counts as destroyed",
    {},
    {},
    source_kind::memory};
/// What a spring bears once without taking a set.
inline constexpr source wire_set_limits{"Shigley, Mechanical Engineering Design", "9th and 10th edition",
                                        "table 10-6 and equation 10-57: share of the tensile strength in shear before "
                                        "and after set removal (lower end), in bending",
                                        source_kind::memory};
/// Relaxation constants of cold-drawn wire.
inline constexpr source relaxation_fit{
    "fit of a Larson-Miller law to code values of cold-drawn wire (IRC:18-2000 table 4A; CEB-FIP Model Code 1990 "
    "2.3.4.5; EN 1992-1-1 10.3.2.1; AERB/SS/CSE-1)",
    "2026", "20 to 100 degC, 0.6 to 0.8 of tensile strength, 1 h to 30 years", source_kind::derived};
/// Relaxation of wires without a published law.
inline constexpr source relaxation_shifted{
    "no published relaxation law for this wire: the law of cold-drawn wire, its rise over 20 degC scaled so that both "
    "lose alike at their highest service temperatures",
    "2026", "a helical spring of 302 stainless lost 2.1 % in 1000 h (Chang, ADA302507, 1995)", source_kind::judgement};
/// @}

/// Tensile strength over a range of wire diameters: Sut = A / d^m, d in millimetres.
struct strength_range {
    length thinnest;     ///< [m] above 0, lower end of the range
    length thickest;     ///< [m] at least `thinnest`, upper end of the range
    pressure at_one_mm;  ///< [Pa] above 0, A: the strength the law gives at 1 mm
    double exponent;     ///< m, any
};

/// Elastic moduli at 20 degC up to a wire diameter.
struct modulus_range {
    length up_to;     ///< [m] above 0, thickest wire of the range
    pressure youngs;  ///< [Pa] above 0, E at 20 degC
    pressure shear;   ///< [Pa] above 0, G at 20 degC
};

/// Largest stress a spring bears once without taking a set, over the tensile strength of its wire.
struct set_limits {
    double bending;       ///< share, 0 to 1, torsion spring, at the inner fibre
    double shear;         ///< share, 0 to 1, compression spring as coiled and stress-relieved
    double preset_shear;  ///< share, 0 to 1, compression spring pressed solid once when made, its set removed
};

/// Constants of the relaxation law r = r0 exp(b (mu - 0.7)) exp(c (P - P0)), S/S0 = exp(-r); the law itself stands in
/// law/stress_relaxation.hpp.
struct relaxation_constants {
    double reference_exponent;   ///< exponent r0, 0 to 700, at 0.7 of tensile strength, 20 degC and 1000 h
    double stress_slope;         ///< b [1], -700 to 700
    per_kelvin parameter_slope;  ///< c [1/K], above 0 to 1
};

/// Cold-drawn, stress-relieved wire. b and c as fitted to the exponent r; r0 fitted anew so that the loss 1 - exp(-r),
/// and not r, meets the code values at 0.6, 0.7 and 0.8 (2.5, 5.0 and 9.0 %: errors +3.3, -3.1, -0.1 % of the value).
inline constexpr relaxation_constants normal_relaxation{0.04966, 6.405, in_si<per_kelvin>(8.70e-4)};
/// Hot-stretched wire or hot-preset spring; same procedure (1.25, 2.5 and 4.5 %: errors +2.6, -3.3, +0.9 %).
inline constexpr relaxation_constants low_relaxation{0.02448, 6.405, in_si<per_kelvin>(1.10e-3)};

/// A spring wire. The spans point to static tables.
struct spring_wire {
    std::string_view name;                      ///< as printed and as written in station files
    std::string_view standard;                  ///< that the wire is ordered to, and its strength table is for
    std::span<const strength_range> strengths;  ///< rising diameters, without gaps
    std::span<const modulus_range> moduli;      ///< rising diameters; the last holds for all thicker wire
    set_limits set;                             ///< static strength of a spring of this wire
    temperature max_service;                    ///< customary limit: some 5 to 10 % relaxation at ordinary stress
    temperature tempering;                      ///< above it the wire is tempered anew and the spring destroyed
    double rise_scale;  ///< 0 to 100: factor on the rise over 20 degC in the law; 1 for the wires it was fitted to
    bool relaxation_published;        ///< whether the relaxation constants rest on published values of such wire
    relaxation_constants normal;      ///< relaxation of the plain spring
    relaxation_constants preset;      ///< relaxation of the hot-preset spring
    const source* strength_source;    ///< of the strengths
    const source* moduli_source;      ///< of the moduli
    const source* set_source;         ///< of the static strength
    const source* service_source;     ///< of max_service
    const source* tempering_source;   ///< of tempering
    const source* relaxation_source;  ///< of the relaxation constants

    /// Wires are known by their name.
    friend constexpr bool operator==(const spring_wire& a, const spring_wire& b) { return a.name == b.name; }
};

namespace detail {
inline constexpr std::array music_strength{strength_range{0.1_mm, 6.5_mm, 2211_MPa, 0.145}};
inline constexpr std::array hard_drawn_strength{strength_range{0.7_mm, 12.7_mm, 1783_MPa, 0.190}};
inline constexpr std::array oil_tempered_strength{strength_range{0.5_mm, 12.7_mm, 1855_MPa, 0.187}};
inline constexpr std::array chrome_vanadium_strength{strength_range{0.8_mm, 11.1_mm, 2005_MPa, 0.168}};
inline constexpr std::array chrome_silicon_strength{strength_range{1.6_mm, 9.5_mm, 1974_MPa, 0.108}};
inline constexpr std::array stainless_strength{strength_range{0.3_mm, 2.5_mm, 1867_MPa, 0.146},
                                               strength_range{2.5_mm, 5.0_mm, 2065_MPa, 0.263},
                                               strength_range{5.0_mm, 10.0_mm, 2911_MPa, 0.478}};

inline constexpr length any_diameter = 1_m;
inline constexpr std::array music_moduli{
    modulus_range{0.032_in, 203.4_GPa, 82.7_GPa}, modulus_range{0.063_in, 200_GPa, 81.7_GPa},
    modulus_range{0.125_in, 196.5_GPa, 81.0_GPa}, modulus_range{any_diameter, 193_GPa, 80.0_GPa}};
inline constexpr std::array hard_drawn_moduli{
    modulus_range{0.032_in, 198.6_GPa, 80.7_GPa}, modulus_range{0.063_in, 197.9_GPa, 80.0_GPa},
    modulus_range{0.125_in, 197.2_GPa, 79.3_GPa}, modulus_range{any_diameter, 196.5_GPa, 78.6_GPa}};
inline constexpr std::array oil_tempered_moduli{modulus_range{any_diameter, 196.5_GPa, 77.2_GPa}};
inline constexpr std::array chrome_vanadium_moduli{modulus_range{any_diameter, 203.4_GPa, 77.2_GPa}};
inline constexpr std::array chrome_silicon_moduli{modulus_range{any_diameter, 203.4_GPa, 77.2_GPa}};
inline constexpr std::array stainless_moduli{modulus_range{any_diameter, 193_GPa, 69_GPa}};

inline constexpr set_limits cold_drawn_set{0.78, 0.45, 0.60};
inline constexpr set_limits tempered_set{0.87, 0.50, 0.65};
inline constexpr set_limits austenitic_set{0.61, 0.35, 0.55};

inline constexpr temperature carbon_wire_service = 121_degC;
inline constexpr temperature chrome_vanadium_service = 218.5_degC;
inline constexpr temperature chrome_silicon_service = 246_degC;
inline constexpr temperature stainless_service = 288_degC;

constexpr double scale_to_carbon_wire(temperature service)
{
    return ((carbon_wire_service - reference_temperature) / (service - reference_temperature)).value();
}
}  // namespace detail

/// Music wire, ASTM A228: patented and cold drawn.
inline constexpr spring_wire music_wire{"music wire",
                                        "ASTM A228",
                                        detail::music_strength,
                                        detail::music_moduli,
                                        detail::cold_drawn_set,
                                        detail::carbon_wire_service,
                                        250_degC,
                                        1.0,
                                        true,
                                        normal_relaxation,
                                        low_relaxation,
                                        &wire_strength_constants,
                                        &wire_moduli,
                                        &wire_set_limits,
                                        &wire_service_limits,
                                        &carbon_wire_tempering,
                                        &relaxation_fit};

/// Hard-drawn wire, ASTM A227: cold drawn, the wire of common clamp springs.
inline constexpr spring_wire hard_drawn_wire{"hard-drawn wire",
                                             "ASTM A227",
                                             detail::hard_drawn_strength,
                                             detail::hard_drawn_moduli,
                                             detail::cold_drawn_set,
                                             detail::carbon_wire_service,
                                             250_degC,
                                             1.0,
                                             true,
                                             normal_relaxation,
                                             low_relaxation,
                                             &wire_strength_constants,
                                             &wire_moduli,
                                             &wire_set_limits,
                                             &wire_service_limits,
                                             &carbon_wire_tempering,
                                             &relaxation_fit};

/// Oil-tempered wire, ASTM A229. Its relaxation is judgement: the law of cold-drawn wire, same service limit.
inline constexpr spring_wire oil_tempered_wire{"oil-tempered wire",
                                               "ASTM A229",
                                               detail::oil_tempered_strength,
                                               detail::oil_tempered_moduli,
                                               detail::tempered_set,
                                               detail::carbon_wire_service,
                                               250_degC,
                                               detail::scale_to_carbon_wire(detail::carbon_wire_service),
                                               false,
                                               normal_relaxation,
                                               low_relaxation,
                                               &wire_strength_constants,
                                               &wire_moduli,
                                               &wire_set_limits,
                                               &wire_service_limits,
                                               &carbon_wire_tempering,
                                               &relaxation_shifted};

/// Chrome-vanadium wire, ASTM A232. Its relaxation is judgement, see relaxation_shifted.
inline constexpr spring_wire chrome_vanadium_wire{"chrome-vanadium wire",
                                                  "ASTM A232",
                                                  detail::chrome_vanadium_strength,
                                                  detail::chrome_vanadium_moduli,
                                                  detail::tempered_set,
                                                  detail::chrome_vanadium_service,
                                                  370_degC,
                                                  detail::scale_to_carbon_wire(detail::chrome_vanadium_service),
                                                  false,
                                                  normal_relaxation,
                                                  low_relaxation,
                                                  &wire_strength_constants,
                                                  &wire_moduli,
                                                  &wire_set_limits,
                                                  &wire_service_limits,
                                                  &alloy_wire_tempering,
                                                  &relaxation_shifted};

/// Chrome-silicon wire, ASTM A401. Its relaxation is judgement, see relaxation_shifted.
inline constexpr spring_wire chrome_silicon_wire{"chrome-silicon wire",
                                                 "ASTM A401",
                                                 detail::chrome_silicon_strength,
                                                 detail::chrome_silicon_moduli,
                                                 detail::tempered_set,
                                                 detail::chrome_silicon_service,
                                                 370_degC,
                                                 detail::scale_to_carbon_wire(detail::chrome_silicon_service),
                                                 false,
                                                 normal_relaxation,
                                                 low_relaxation,
                                                 &wire_strength_constants,
                                                 &wire_moduli_recalled,
                                                 &wire_set_limits,
                                                 &wire_service_limits,
                                                 &alloy_wire_tempering,
                                                 &relaxation_shifted};

/// 302 stainless wire, ASTM A313. Its relaxation is judgement, see relaxation_shifted.
inline constexpr spring_wire stainless_wire{"stainless wire",
                                            "ASTM A313, type 302",
                                            detail::stainless_strength,
                                            detail::stainless_moduli,
                                            detail::austenitic_set,
                                            detail::stainless_service,
                                            315_degC,
                                            detail::scale_to_carbon_wire(detail::stainless_service),
                                            false,
                                            normal_relaxation,
                                            low_relaxation,
                                            &stainless_strength_constants,
                                            &wire_moduli_recalled,
                                            &wire_set_limits,
                                            &wire_service_limits,
                                            &alloy_wire_tempering,
                                            &relaxation_shifted};

/// Every spring wire of the table.
inline constexpr std::array all_spring_wires{music_wire,           hard_drawn_wire,     oil_tempered_wire,
                                             chrome_vanadium_wire, chrome_silicon_wire, stainless_wire};

/// Least tensile strength of a wire, Sut = A / d^m [Pa] (d in mm).
///
/// Within 5 % of an independent fit of the ASTM minima for music wire, 1 % for hard-drawn and oil-tempered wire. Where
/// two ranges meet the thinner one holds; they differ by less than 1 %.
/// @param wire     from the table
/// @param diameter of the wire [m], within the ranges of its table
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline pressure tensile_strength(const spring_wire& wire, length diameter)
{
    require_positive(diameter, "wire diameter");
    // a diameter that reached the end of a range by arithmetic must not fall out of it
    constexpr double slack = 1e-9;
    if (diameter >= wire.strengths.front().thinnest * (1.0 - slack))
        for (const strength_range& range : wire.strengths)
            if (diameter <= range.thickest * (1.0 + slack))
                return range.at_one_mm * std::pow((1_mm / diameter).value(), range.exponent);
    throw out_of_range_error("wire diameter", to_text(diameter, "mm"),
                             to_text(wire.strengths.front().thinnest, "mm") + " to " +
                                 to_text(wire.strengths.back().thickest, "mm") + " for " + std::string(wire.name));
}

namespace detail {
[[nodiscard]] inline const modulus_range& moduli_of(const spring_wire& wire, length diameter)
{
    require_positive(diameter, "wire diameter");
    for (const modulus_range& range : wire.moduli)
        if (diameter <= range.up_to) return range;
    return wire.moduli.back();
}
}  // namespace detail

/// Young's modulus of a wire at 20 degC [Pa].
/// @param wire from the table @param diameter of the wire [m], above 0 @throws not_finite_error, out_of_range_error
[[nodiscard]] inline pressure youngs_modulus(const spring_wire& wire, length diameter)
{
    return detail::moduli_of(wire, diameter).youngs;
}

/// Shear modulus of a wire at 20 degC [Pa].
/// @param wire from the table @param diameter of the wire [m], above 0 @throws not_finite_error, out_of_range_error
[[nodiscard]] inline pressure shear_modulus(const spring_wire& wire, length diameter)
{
    return detail::moduli_of(wire, diameter).shear;
}

}  // namespace weldloop
