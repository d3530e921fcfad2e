#pragma once
/// @file
/// What the inductance of the leads takes of an alternating current, beside what resistance and arc take.

#include <cmath>
#include <limits>
#include <numbers>

#include <weldloop/circuit/course_levels.hpp>
#include <weldloop/circuit/loop_inductance.hpp>
#include <weldloop/circuit/station.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/law/waveform.hpp>

namespace weldloop {

/// Reactance.
inline constexpr source loop_reactance{"phasor diagram of resistance and inductance in series",
                                       {},
                                       "X = 2 pi f L at the fundamental, at right angles to loop and arc",
                                       source_kind::derived};

/// Effective volts along the leads' inductance for each ampere of a station's effective current, X I1/I, by the
/// fundamental I1 of its course: of an alternating current without steady levels. None of direct current, and of one
/// with steady levels: on a level the current stands, and its edges are another question (course_effects::edge).
/// @param s the station @return [ohm], typical of the steel beside the leads @throws as lead_inductance_of() @see
/// loop_reactance
[[nodiscard]] inline resistance reactance_of(const station& s)
{
    if (!s.job.course || s.job.course->is_dc()) return {};
    const waveform& w = *s.job.course;
    if (!(w.rms().value() > 0.0) || !has_one_working_point(w) || !levels_of(w).empty()) return {};
    const double fundamental = (w.harmonic(1) / w.rms()).value() / std::numbers::sqrt2;
    return 2.0 * std::numbers::pi * fundamental * w.frequency() * lead_inductance_of(s).total;
}

/// What is left in phase with the current of a voltage when some volts stand at right angles to it, sqrt(U^2 - V^2);
/// none where these are as many. @param all U [V], 0 or above @param across V [V], 0 or above
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline voltage in_phase_of(voltage all, voltage across)
{
    const double u = require_not_negative(all, "voltage").value(),
                 v = require_not_negative(across, "voltage at right angles").value();
    if (!(u > v)) return voltage{};
    const double left = u * u - v * v;  // where the squares leave the numbers there are, by the share of the larger
    constexpr double squares_end = 1e150;
    if (u < squares_end && left > std::numeric_limits<double>::min()) return in_si<voltage>(std::sqrt(left));
    return in_si<voltage>(u * std::sqrt((1.0 - v / u) * (1.0 + v / u)));
}

}  // namespace weldloop
