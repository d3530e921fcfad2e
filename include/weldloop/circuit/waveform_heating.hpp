#pragma once
/// @file
/// A lead under alternating or pulsed current.

#include <cmath>

#include <weldloop/circuit/cable_heating.hpp>
#include <weldloop/core/duty_cycle.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/law/skin_effect.hpp>
#include <weldloop/law/waveform.hpp>
#include <weldloop/part/cable.hpp>
#include <weldloop/part/surroundings.hpp>
#include <weldloop/part/welding_cable.hpp>

namespace weldloop {

/// Heat that a current of a course makes in a lead over that of a direct current of the same effective value,
/// waveform_resistance_of() at 20 degC: hot, the resistance is larger and the skin effect less, by 1e-3 of the ratio in
/// usual leads. An upper bound for flexible leads, and without the proximity of a return that lies close; see
/// skin_effect_of(). @param lead its metal, size and increment count @param course of the current
/// @return 1 or above; 1 for direct current @throws not_finite_error, out_of_range_error
[[nodiscard]] inline double waveform_ratio_of(const cable& lead, const waveform& course)
{
    return waveform_resistance_of(course, resistance_per_length_of(lead, reference_temperature)).resistance_ratio;
}

/// A lead as direct current finds it that makes as much heat of the same effective value: with the skin effect of a
/// course in its stranding increment, see waveform_ratio_of(). @param lead its metal, size and increment count
/// @param course of the current @throws not_finite_error, out_of_range_error
[[nodiscard]] inline cable lead_under(const cable& lead, const waveform& course)
{
    cable out = lead;
    out.stranding_increment = (1.0 + lead.stranding_increment) * waveform_ratio_of(lead, course) - 1.0;
    return out;
}

/// The direct current that heats a lead as much as a current of a course does, rms times the square root of
/// waveform_ratio_of() [A]. @param lead its metal, size and increment count @param course of the current
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline current heating_current_of(const cable& lead, const waveform& course)
{
    return std::sqrt(waveform_ratio_of(lead, course)) * course.rms();
}

/// heating_of() for a current of a course: temperatures of the direct current that heats as much. The course is far
/// shorter than the heat of a lead takes, so that only its mean heat counts.
/// @param lead with its diameters @param where air, wind, lay, altitude, sun @param course of the current while the arc
/// burns @param duty time under current
/// @throws as heating_of()
[[nodiscard]] inline cable_heating heating_of(const cable& lead, const surroundings& where, const waveform& course,
                                              const duty_cycle& duty)
{
    cable_heating out = heating_of(lead, where, {.current = heating_current_of(lead, course), .duty = duty});
    out.basis.add(waveform_calculus);
    if (!course.is_dc()) out.basis.add(bessel_skin_effect);
    return out;
}

}  // namespace weldloop
