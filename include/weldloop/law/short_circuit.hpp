#pragma once
/// @file
/// Short time: what a conductor and its covering stand for a few seconds, by the rules of the standards.
///
/// The physics of heating without loss stands in fusing.hpp; here are the constants the standards put into it, their k
/// factors, and the heat that the covering takes.

#include <cmath>
#include <string>
#include <string_view>

#include <weldloop/core/error.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/core/text.hpp>
#include <weldloop/law/fusing.hpp>
#include <weldloop/law/heating_segment.hpp>
#include <weldloop/material/covering.hpp>
#include <weldloop/material/metal.hpp>
#include <weldloop/material/metals.hpp>

namespace weldloop {

/// @name Sources of short-time ratings
/// @{
/// K and beta of copper and aluminium.
inline constexpr source iec_60949_constants{"IEC 60949 (same in IEC 60364-5-54)", "1988; 2011",
                                            "table I; table A.54.1, as public pages give them", source_kind::standard};
/// K and beta of steel.
inline constexpr source iec_60949_steel{"IEC 60949 (same in IEC 60364-5-54)", "1988; 2011", "table I; table A.54.1",
                                        source_kind::memory};
/// Heat that the covering takes.
inline constexpr source iec_60949_nonadiabatic{
    "IEC 60949", "1988", "clause 5: C1 2464 mm/m, C2 1.22 K m mm2/J, F 0.7 (gives the published constants of one pair)",
    source_kind::memory};
/// Simplified constants of copper in cross-linked polyethylene.
inline constexpr source iec_60949_xlpe{
    "IEC 60949", "1988", "simplified constants X 0.41, Y 0.12, in a public course note", source_kind::standard};
/// Longest short circuit that the rules speak of.
inline constexpr source iec_60724_duration{"IEC 60724", {}, "short circuits up to 5 s", source_kind::memory};
/// Current that melts a wire in air in the long run.
inline constexpr source preece_rule{"Preece, Proceedings of the Royal Society", "1884; as public pages give it",
                                    "copper, 10244 A/in^1.5", source_kind::paper};
/// @}

/// Ampere second^(1/2) per square metre: a current density that heats as much in one second.
using short_circuit_factor = decltype(current{} * boost::units::root<2>(duration{}) / area{});

/// Constants of heating without loss, as a standard or a metal gives them.
struct adiabatic_constants {
    std::string_view material;     ///< of the conductor
    short_circuit_factor heating;  ///< K [A s^(1/2)/m2], above 0
    temperature_difference beta;   ///< [K] above 0, reciprocal of the temperature coefficient at 0 degC
    temperature melting;           ///< highest end temperature
    const source* from;            ///< of K and beta
};

namespace detail {
constexpr adiabatic_constants iec_60949_row(std::string_view material, double k_per_mm2, double beta,
                                            temperature melting, const source* from)
{
    return {material, in_si<short_circuit_factor>(k_per_mm2 * 1e6), in_si<temperature_difference>(beta), melting, from};
}

[[nodiscard]] inline adiabatic_law law_of(const adiabatic_constants& c)
{
    const double k = require_positive(c.heating, "short-circuit constant K").value();
    const double span =
        require_positive(c.beta, "short-circuit constant beta").value() + reference_temperature.in_celsius();
    return {k * k, span};
}

inline void require_end(const adiabatic_constants& c, const heating_span& span)
{
    if (span.start >= span.end || span.end > c.melting)
        throw out_of_range_error("end temperature", to_text(span.end, "degC"),
                                 "above the start, at most the melting point of " + to_text(c.melting, "degC"));
}

inline void require_gain(double factor)
{
    require_within(factor, 1.0, 10.0, "non-adiabatic factor");
}
}  // namespace detail

/// @name Constants of the standards
/// K 226, 148, 78 A s^(1/2)/mm2 and beta 234.5, 228, 202 K.
/// @{
inline constexpr adiabatic_constants iec_copper =
    detail::iec_60949_row("copper", 226, 234.5, annealed_copper.melting, &iec_60949_constants);  ///< copper
inline constexpr adiabatic_constants iec_aluminium =
    detail::iec_60949_row("aluminium", 148, 228, aluminium.melting, &iec_60949_constants);  ///< aluminium
inline constexpr adiabatic_constants iec_steel =
    detail::iec_60949_row("steel", 78, 202, mild_steel.melting, &iec_60949_steel);  ///< steel
/// @}

/// Constants of a metal from its own resistivity, temperature coefficient and heat: K^2 = c (beta + 20 degC)/rho20,
/// beta = 1/alpha20 - 20 degC. Copper has K 225.0, aluminium 146.2 against 226 and 148 of the standard.
/// @param metal with a positive temperature coefficient @throws not_finite_error, out_of_range_error
[[nodiscard]] inline adiabatic_constants adiabatic_constants_of(const metal& metal)
{
    const detail::adiabatic_law law = detail::adiabatic_law_of(metal);
    return {metal.name, in_si<short_circuit_factor>(std::sqrt(law.k2)),
            in_si<temperature_difference>(law.span - reference_temperature.in_celsius()), conductor_melting_of(metal),
            metal.electrical_source ? metal.electrical_source : &iec_60949_adiabatic};
}

/// The k factor of the wiring rules, k = K sqrt(ln((beta + T2)/(beta + T1))), so that S = I sqrt(t)/k
/// [A s^(1/2)/m2; 1e-6 of it is A s^(1/2)/mm2]. The published k of copper, aluminium and steel come out within 0.7.
/// @param c constants @param span T1 and T2 @throws not_finite_error, out_of_range_error
[[nodiscard]] inline short_circuit_factor k_factor_of(const adiabatic_constants& c, const heating_span& span)
{
    detail::require_end(c, span);
    return in_si<short_circuit_factor>(std::sqrt(detail::law_of(c).integral(span.start, span.end)));
}

/// A conductor in a short circuit.
struct short_circuit_conductor {
    adiabatic_constants constants;  ///< K, beta and the melting point
    area section;                   ///< S [m2], above 0
    double nonadiabatic = 1.0;      ///< factor e, 1 to 10: 1 without loss, or nonadiabatic_factor_of()
};

/// Current that heats a conductor from one temperature to another, I = e k S/sqrt(t) [A].
/// @param c the conductor @param t duration [s], above 0 @param span T1 and T2
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline current short_circuit_current(const short_circuit_conductor& c, duration t,
                                                   const heating_span& span)
{
    require_positive(c.section, "conductor area");
    require_positive(t, "duration");
    detail::require_gain(c.nonadiabatic);
    const double current_density = k_factor_of(c.constants, span).value() / std::sqrt(t.value());
    return require_finite(in_si<current>(c.nonadiabatic * current_density * c.section.value()),
                          "short-circuit current");
}

/// Least conductor that stands a short circuit, S = I sqrt(t)/(e k) [m2]; 0 for no current.
/// @param c constants @param through I [A], 0 or above, and t [s], above 0 @param span T1 and T2
/// @param nonadiabatic factor e, 1 to 10 @throws not_finite_error, out_of_range_error
[[nodiscard]] inline area short_circuit_area(const adiabatic_constants& c, const heating_segment& through,
                                             const heating_span& span, double nonadiabatic = 1.0)
{
    require_not_negative(through.current, "current");
    require_positive(through.duration, "duration");
    detail::require_gain(nonadiabatic);
    const double k = nonadiabatic * k_factor_of(c, span).value();
    return require_finite(in_si<area>(through.current.value() * std::sqrt(through.duration.value()) / k),
                          "conductor area");
}

/// Time a current may flow until a conductor reaches a temperature, t = (e k S/I)^2 [s].
/// @param c the conductor @param through I [A], above 0 @param span T1 and T2
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline duration short_circuit_time(const short_circuit_conductor& c, current through,
                                                 const heating_span& span)
{
    require_positive(c.section, "conductor area");
    require_positive(through, "current");
    detail::require_gain(c.nonadiabatic);
    const double root = c.nonadiabatic * k_factor_of(c.constants, span).value() * c.section.value() / through.value();
    return require_finite(in_si<duration>(root * root), "duration");
}

/// Temperature of a conductor after a short circuit, T2 = (beta + T1) exp((I/(e K S))^2 t) - beta.
/// @param c the conductor @param through I [A], 0 or above, and t [s], above 0 @param start T1, below the melting point
/// @throws not_finite_error, out_of_range_error; no_solution_error when it melts before
[[nodiscard]] inline temperature short_circuit_temperature(const short_circuit_conductor& c,
                                                           const heating_segment& through, temperature start)
{
    require_not_negative(through.current, "current");
    const current melts = short_circuit_current(c, through.duration, {start, c.constants.melting});
    if (through.current > melts)
        throw no_solution_error("temperature after the short circuit",
                                "above the melting point of " + to_text(c.constants.melting, "degC"),
                                "at most " + si_text(melts) + " for " + si_text(through.duration));
    const double current_density = through.current.value() / (c.nonadiabatic * c.section.value());
    return detail::law_of(c.constants).after(start, current_density * current_density * through.duration.value());
}

/// @name Constants of the heat that the covering takes
/// @{
inline constexpr double nonadiabatic_c1 = 2.464;  ///< C1 = 2464 mm/m [1], in coherent units; see iec_60949_nonadiabatic
/// C2 [K m3/J] = 1.22 K m mm2/J; see iec_60949_nonadiabatic
inline constexpr auto nonadiabatic_c2 = 1.22e-6 / volumetric_heat::from_value(1.0);
inline constexpr double usual_thermal_contact = 0.7;  ///< factor F of covering on strands; see iec_60949_nonadiabatic
inline constexpr duration longest_short_circuit = in_si<duration>(5.0);  ///< see iec_60724_duration
/// @}

/// How much more current a covered conductor stands than a bare one that loses no heat.
struct nonadiabatic_factor {
    double factor;          ///< e, 1 or above
    bool short_time;        ///< the duration is at most `longest_short_circuit`; above, e is an extrapolation
    weldloop::basis basis;  ///< sources
};

/// A conductor and the covering that takes heat from it.
struct covered_section {
    metal conductor;                         ///< its heat per volume counts
    area section;                            ///< S [m2], above 0
    covering around;                         ///< its heat per volume and conductivity count
    double contact = usual_thermal_contact;  ///< factor F, 0 to 1: 0 for a bare conductor, 1 for perfect contact
};

/// Non-adiabatic factor from the materials, e = sqrt(1 + F A sqrt(t/S) + F^2 B t/S) with A = C1/cc sqrt(ci ki) and
/// B = C2/cc ci ki: cc and ci the heat per volume of conductor and covering, ki the conductivity of the covering.
///
/// For copper in cross-linked polyethylene F A is 0.416 and F^2 B 0.119, in mm and s; the standard prints 0.41 and
/// 0.12.
/// @param what conductor, covering and how they touch @param t duration [s], above 0
/// @throws not_finite_error, out_of_range_error @see iec_60949_nonadiabatic
[[nodiscard]] inline nonadiabatic_factor nonadiabatic_factor_of(const covered_section& what, duration t)
{
    require_positive(what.section, "conductor area");
    require_positive(t, "duration");
    const double contact = require_within(what.contact, 0.0, 1.0, "thermal contact");
    const double cc = require_positive(what.conductor.heat_per_volume(), "heat per volume").value();
    const double ci = require_positive(what.around.heat_per_volume, "heat per volume of the covering").value();
    const double ki = require_positive(what.around.thermal_conductivity, "conductivity of the covering").value();
    const double spread = ci * ki * t.value() / what.section.value();
    const double first = contact * nonadiabatic_c1 / cc * std::sqrt(spread);
    const double second = contact * contact * nonadiabatic_c2.value() / cc * spread;
    const double factor = require_within(std::sqrt(1.0 + first + second), 1.0, 1e9, "non-adiabatic factor");
    nonadiabatic_factor out{factor, t <= longest_short_circuit, {}};
    out.basis.add(iec_60949_nonadiabatic).add(iec_60724_duration);
    return out;
}

/// Published constants of the simplified form, e = sqrt(1 + X sqrt(t/S) + Y t/S) with S in mm2 and t in s.
struct simplified_nonadiabatic {
    double x;            ///< X [(mm2/s)^(1/2)], 0 or above
    double y;            ///< Y [mm2/s], 0 or above
    const source* from;  ///< where they stand
};

/// Copper in cross-linked polyethylene; see iec_60949_xlpe.
inline constexpr simplified_nonadiabatic copper_in_xlpe{0.41, 0.12, &iec_60949_xlpe};

/// Non-adiabatic factor from published constants. @param constants X and Y, 0 or above @param section S [m2], above 0
/// @param t duration [s], above 0 @throws not_finite_error, out_of_range_error
[[nodiscard]] inline nonadiabatic_factor simplified_nonadiabatic_factor(const simplified_nonadiabatic& constants,
                                                                        area section, duration t)
{
    constexpr double most = 1e3;  // far above any pair of materials
    const double x = require_within(constants.x, 0.0, most, "constant X"),
                 y = require_within(constants.y, 0.0, most, "constant Y");
    const double share =
        require_positive(t, "duration").value() / (require_positive(section, "conductor area").value() * 1e6);
    const double factor =
        require_within(std::sqrt(1.0 + x * std::sqrt(share) + y * share), 1.0, 1e9, "non-adiabatic factor");
    nonadiabatic_factor out{factor, t <= longest_short_circuit, {}};
    if (constants.from) out.basis.add(*constants.from);
    out.basis.add(iec_60724_duration);
    return out;
}

/// Constant of Preece's rule for copper, in its own units [A/in^1.5]; see preece_rule.
inline constexpr double preece_copper = 10244.0;

/// Current that melts a bare copper wire stretched in still air in the long run, I = 10244 A (d/1 in)^1.5 [A].
///
/// A rule of thin fuse wires, whose loss is taken as proportional to the surface; for the thick conductors of leads it
/// is an extrapolation. It holds for minutes, fusing_current() for seconds: what really melts lies above both.
/// @param diameter d of the wire [m], above 0 @throws not_finite_error, out_of_range_error @see preece_rule
[[nodiscard]] inline current steady_fusing_current(length diameter)
{
    const double inches = number_in(require_positive(diameter, "wire diameter"), "in");
    return require_finite(in_si<current>(preece_copper * inches * std::sqrt(inches)), "fusing current");
}

}  // namespace weldloop
