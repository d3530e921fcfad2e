#pragma once
/// @file
/// Direct-current resistance of a stranded conductor, sound or with strands missing over a length.
///
/// Source: R = rho l/A with resistivity linear in temperature and strands in parallel, as in any textbook; resistivity
/// and coefficient have their source in material/metals.hpp.

#include <weldloop/core/error.hpp>
#include <weldloop/core/fraction.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/material/metal.hpp>

namespace weldloop {

/// @name Where the linear law of resistivity keeps to its tables
/// @{
inline constexpr temperature resistivity_lowest = temperature::celsius(-50.0);  ///< below it the law reads high
inline constexpr temperature resistivity_highest =
    temperature::celsius(300.0);  ///< above it copper reads 1.5 to 7 % low
/// @}

namespace detail {
// Says which argument it is that cannot be; a resistance that is zero because it is beyond the smallest number stands.
// Plain numbers [ohm/m, m2], which stay in registers.
[[gnu::noinline, gnu::cold]] inline double doubtful_resistance(double found, const metal& metal, double section,
                                                               double increment)
{
    require_positive(metal.resistivity, "resistivity");
    require_positive(in_si<area>(section), "conductor area");
    require_within(increment, 0.0, 1.0, "stranding increment");
    return require_finite(in_si<resistance_per_length>(found), "resistance per length").value();
}
}  // namespace detail

/// Resistance of a stranded conductor per length, R' = rho(T) (1 + increment) / A with
/// rho(T) = rho20 (1 + alpha20 (T - 20 degC)).
///
/// `increment` is the extra length of strands that lie in a helix (0.02 concentric, 0.04 to 0.07 rope-lay). Accuracy:
/// code and guide tables to their printed digits up to 90 degC; see resistivity_lowest and resistivity_highest.
/// @param metal of the strands @param section A of metal [m2], above 0 @param increment [1], 0 to 1 @param t of the
/// conductor
/// @return [ohm/m]
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline resistance_per_length conductor_resistance(const metal& metal, area section, double increment,
                                                                temperature t)
{
    const resistance_per_length found(metal.resistivity_at(t) * (1.0 + increment) / section);
    // with these above zero, so is the resistivity, and both are finite
    if (section.value() > 0.0 && increment >= 0.0 && increment <= 1.0 && found.value() > 0.0 &&
        found.value() <= detail::greatest_number) [[likely]]
        return found;
    return in_si<resistance_per_length>(detail::doubtful_resistance(found.value(), metal, section.value(), increment));
}

/// Resistance of a conductor that has lost a share of its strands over a part of its length:
/// R = R' ((L - Ld) + Ld/(1 - s)). The current is taken to spread evenly again outside the damage, which strands in
/// good contact do within a few lay lengths.
/// @param sound R' of the undamaged conductor [ohm/m], above 0 @param whole L [m], above 0
/// @param missing s, share of strands missing @param damaged Ld [m], 0 to L
/// @return [ohm]
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline resistance conductor_resistance(resistance_per_length sound, length whole, strand_loss missing,
                                                     length damaged)
{
    require_positive(sound, "resistance per length");
    require_positive(whole, "conductor length");
    require_within(damaged, length{}, whole, "damaged length");
    return require_finite(resistance(sound * ((whole - damaged) + damaged / (1.0 - static_cast<double>(missing)))),
                          "resistance of the conductor");
}

}  // namespace weldloop
