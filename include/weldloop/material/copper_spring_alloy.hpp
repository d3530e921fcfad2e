#pragma once
/// @file
/// Copper alloys that serve as springs: jaws, contact leaves. How fast they relax, as far as anyone publishes it.
///
/// Little is: one bound for a copper-nickel-silicon strip, the loss on first loading, a ranking of alloys, and that the
/// loss does not depend on the initial stress. The other constants are recalled ranges; every result of theirs is
/// flagged and carries a factor 3 either way.

#include <array>
#include <string_view>

#include <weldloop/core/fraction.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/temperature.hpp>

namespace weldloop {

/// @name Sources of the copper alloys
/// @{

/// Phosphor bronze, brass and beryllium copper.
inline constexpr source copper_relaxation_recalled{
    "stress remaining after 1000 h, recalled ranges: phosphor bronze 80 to 88 % at 105 degC, 50 to 65 % at 150; "
    "beryllium copper 95 to 98, 88 to 94, 70 to 82 % at 105, 150, 200 degC; cartridge brass 65 to 75 % at 105 degC",
    {},
    "their middles, by a Larson-Miller law with C = 20",
    source_kind::memory};
/// Copper-nickel-silicon.
inline constexpr source copper_nickel_silicon_bound{
    "journal article, abstract TEMAW99030026410", "1998",
    "Cu-1.8Ni-0.4Si-1.1Zn strip: less than 20 % lost after 1000 h at 433 K; the upper bound of the law is that bound",
    source_kind::paper};
/// What brass and copper-nickel-silicon take from others.
inline constexpr source copper_slope_judgement{
    "slope over the time-temperature parameter: brass as phosphor bronze, copper-nickel-silicon as beryllium copper",
    "2026",
    {},
    source_kind::judgement};
/// Loss on first loading.
inline constexpr source copper_first_loading{"IEEE Electronic Components Conference 38", "1988",
                                             "abstract: about 1 % for beryllium copper, 5 % for the others",
                                             source_kind::paper};
/// Where the temper is gone.
inline constexpr source copper_temper_judgement{
    "a copper alloy has lost its spring above the softening of its cold work or above its ageing temperature", "2026",
    "brass and bronze 300 degC, beryllium copper 315, copper-nickel-silicon 400", source_kind::judgement};
/// @}

/// A copper alloy in its spring temper. The law is r = r0 exp(c (P - P0)), S/S0 = exp(-r), see copper_relaxation.hpp.
struct copper_spring_alloy {
    std::string_view name;            ///< as printed
    double reference_exponent;        ///< exponent r0, 0 to 700, at 105 degC and 1000 h
    per_kelvin parameter_slope;       ///< c [1/K], above 0 to 1
    fraction first_loading;           ///< lost at once when loaded for the first time at room temperature
    temperature temper_lost;          ///< above it the temper is gone and the spring destroyed
    const source* relaxation_source;  ///< of r0
    const source* slope_source;       ///< of c

    /// Alloys are known by their name.
    friend constexpr bool operator==(const copper_spring_alloy& a, const copper_spring_alloy& b)
    {
        return a.name == b.name;
    }
};

namespace detail {
// c from the middles of the recalled ranges: bronze ln(0.553/0.174)/1035 K; beryllium copper by least squares over
// three
inline constexpr per_kelvin bronze_slope = in_si<per_kelvin>(1.116e-3);
inline constexpr per_kelvin beryllium_slope = in_si<per_kelvin>(9.34e-4);
}  // namespace detail

/// Phosphor bronze, UNS C51000, spring temper.
inline constexpr copper_spring_alloy phosphor_bronze_spring{
    "phosphor bronze",          0.174, detail::bronze_slope, 0.05, 300_degC, &copper_relaxation_recalled,
    &copper_relaxation_recalled};
/// Cartridge brass, UNS C26000, spring temper.
inline constexpr copper_spring_alloy brass_spring{
    "brass", 0.357, detail::bronze_slope, 0.05, 300_degC, &copper_relaxation_recalled, &copper_slope_judgement};
/// Beryllium copper, UNS C17200, age hardened.
inline constexpr copper_spring_alloy beryllium_copper_spring{
    "beryllium copper",         0.0357, detail::beryllium_slope, 0.01, 315_degC, &copper_relaxation_recalled,
    &copper_relaxation_recalled};
/// Copper-nickel-silicon, hardened by precipitation. r0 such that the upper bound of the law, three times r, is the
/// published bound of 20 % after 1000 h at 160 degC: ln(1/0.8)/3 at P - P0 = 55 K x 23.
inline constexpr copper_spring_alloy copper_nickel_silicon_spring{
    "copper-nickel-silicon", 0.02282, detail::beryllium_slope, 0.05, 400_degC, &copper_nickel_silicon_bound,
    &copper_slope_judgement};

/// Every copper alloy of the table.
inline constexpr std::array all_copper_spring_alloys{phosphor_bronze_spring, brass_spring, beryllium_copper_spring,
                                                     copper_nickel_silicon_spring};

}  // namespace weldloop
