#pragma once
/// @file
/// From the four-wire resistance of a lead to its mean temperature, and to copper that is missing.

#include <cmath>

#include <weldloop/core/error.hpp>
#include <weldloop/core/fraction.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/core/text.hpp>
#include <weldloop/field/measured.hpp>
#include <weldloop/field/surface_reading.hpp>
#include <weldloop/material/metals.hpp>
#include <weldloop/part/cable.hpp>
#include <weldloop/part/resistance_choice.hpp>
#include <weldloop/part/welding_cable.hpp>

namespace weldloop {

/// Temperature from two resistances.
inline constexpr source resistance_method{"resistance method of machine standards (IEC 60034-1)",
                                          {},
                                          "T2 = (R2/R1)(k + T1) - k, k = 1/alpha20 - 20 degC; 235 for copper",
                                          source_kind::memory};

/// A resistance read while the lead was at an even temperature.
struct resistance_reading {
    measured<resistance> ohms;  ///< [ohm] above 0, four-wire: without the leads of the meter
    measured<temperature> at;   ///< of the conductor: cold, that of the air it has lain in
};

/// Mean temperature of a conductor from its resistance now and cold: T2 = (R2/R1)(T1 + k) - k, k = 1/alpha20 - 20 degC
/// of the metal. Lugs and plugs between the probes must be the same both times.
/// @param metal of the strands @param cold what it had at a known temperature @param now [ohm] above 0
/// @throws not_finite_error, out_of_range_error, also for a mean beyond -50 to 300 degC, where the linear law ends
[[nodiscard]] inline measured<temperature> mean_temperature_of(const metal& metal, const resistance_reading& cold,
                                                               const measured<resistance>& now)
{
    require_positive(cold.ohms.value, "cold resistance");
    require_positive(now.value, "resistance");
    require_not_negative(cold.ohms.uncertainty, "uncertainty of the cold resistance");
    require_not_negative(now.uncertainty, "uncertainty of the resistance");
    require_not_negative(cold.at.uncertainty, "uncertainty of the cold temperature");
    const temperature_difference above_zero =
        1.0 / require_positive(metal.temperature_coefficient, "temperature coefficient") +
        (cold.at.value - reference_temperature);
    const double ratio = now.value / cold.ohms.value;
    const temperature mean = cold.at.value + (ratio - 1.0) * above_zero;
    if (mean < resistivity_lowest || mean > resistivity_highest)
        throw out_of_range_error("resistance", si_text(now.value),
                                 "that of a conductor between " + to_text(resistivity_lowest, "degC") + " and " +
                                     to_text(resistivity_highest, "degC"));
    const double off = detail::together(now.uncertainty / now.value, cold.ohms.uncertainty / cold.ohms.value,
                                        cold.at.uncertainty / above_zero);
    return {mean, require_finite(temperature_difference(ratio * above_zero * off), "uncertainty of the temperature")};
}

/// Copper that is missing from a lead, as a share over a length.
struct missing_copper {
    double least =
        0.0;  ///< share at least: the sound lead had the highest resistance allowed, readings as far off as stated
    double most = 0.0;      ///< share at most: the sound lead had the nominal one
    weldloop::basis basis;  ///< sources
};

/// Share of the strands that is missing from a lead, by its resistance at a known temperature.
///
/// Over a length Ld the rest is taken to be whole: s = 1 - Ld/(R/R' - (L - Ld)). A lead whose resistance may be that of
/// a sound one has `least` 0: nothing is shown to be missing, and up to `most` may be. A measurement of the same lead
/// when it was new says far more than the standards: give its increment to the lead.
/// @param lead as it was bought: metal, size, length @param read at an even temperature
/// @param over Ld, the length that is suspected [m], above 0, at most the lead's
/// @throws not_finite_error, out_of_range_error; no_solution_error where the resistance is below that of whole strands
/// by more than the uncertainty: size, length or temperature are not as stated
[[nodiscard]] inline missing_copper missing_copper_of(const cable& lead, const resistance_reading& read, length over)
{
    require_positive(read.ohms.value, "resistance");
    require_not_negative(read.ohms.uncertainty, "uncertainty of the resistance");
    require_not_negative(read.at.uncertainty, "uncertainty of the temperature");
    require_positive(over, "suspected length");
    require_within(over, length{}, lead.length, "suspected length");
    const bool as_made = lead.stranding_increment == lead.made.stranding_increment;
    cable nominal = lead, highest = lead;
    if (as_made) {  // what the user stated of its resistance counts instead
        nominal.stranding_increment =
            welding_cable(lead.size, lead.length, resistance_choice::nominal).stranding_increment;
        highest.stranding_increment =
            welding_cable(lead.size, lead.length, resistance_choice::standard_maximum).stranding_increment;
    }
    const auto gone = [&](const cable& sound, resistance ohms, temperature t) {
        const length as_whole = ohms / resistance_per_length_of(sound, t);  // length of whole strands with it
        const length left = as_whole - (lead.length - over);
        return left > over ? 1.0 - static_cast<double>(over / left) : 0.0;
    };
    const resistance low = read.ohms.value - read.ohms.uncertainty, high = read.ohms.value + read.ohms.uncertainty;
    const temperature warm = read.at.value + read.at.uncertainty, cool = read.at.value - read.at.uncertainty;
    if (high < resistance_per_length_of(nominal, cool) * lead.length)
        throw no_solution_error(
            "missing copper", "none: " + si_text(read.ohms.value) + " is less than whole strands have",
            "at least " + si_text(resistance(resistance_per_length_of(nominal, cool) * lead.length)) +
                " for this size, length and temperature");
    missing_copper out;
    out.least = low > resistance{} ? gone(highest, low, warm) : 0.0;
    out.most = gone(nominal, high, cool);
    if (lead.metal.electrical_source != nullptr) out.basis.add(*lead.metal.electrical_source);
    detail::add_resistance_basis(out.basis, lead);
    return out;
}

}  // namespace weldloop
