#pragma once
/// @file
/// What a lead may carry of an alternating or pulsed current.

#include <cmath>

#include <weldloop/circuit/waveform_heating.hpp>
#include <weldloop/core/duty_cycle.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/law/skin_effect.hpp>
#include <weldloop/law/waveform.hpp>
#include <weldloop/part/cable.hpp>
#include <weldloop/part/surroundings.hpp>
#include <weldloop/rating/lead/ampacity.hpp>

namespace weldloop {

/// ampacity_of() in effective amperes of a course: the direct rating over the square root of waveform_ratio_of(). Only
/// the shape of the course counts, not its size. Pulses are rated by their effective value, which is above their mean.
/// @param lead with its diameters @param where air, wind, lay, altitude, sun @param duty time under current
/// @param course shape of the current while the arc burns
/// @throws as ampacity_of()
[[nodiscard]] inline ampacity ampacity_of(const cable& lead, const surroundings& where, duty_cycle duty,
                                          const waveform& course)
{
    ampacity out = ampacity_of(lead, where, duty);
    const double less = 1.0 / std::sqrt(waveform_ratio_of(lead, course));
    out.amps = less * out.amps;
    out.continuous = less * out.continuous;
    out.by_square_root = less * out.by_square_root;
    out.basis.add(waveform_calculus);
    if (!course.is_dc()) out.basis.add(bessel_skin_effect);
    return out;
}

}  // namespace weldloop
