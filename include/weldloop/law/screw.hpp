#pragma once
/// @file
/// The power screw: the force a clamp screw makes of a torque.

#include <algorithm>
#include <cmath>
#include <numbers>

#include <weldloop/core/fraction.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>

namespace weldloop {

/// Torque and force of a power screw.
inline constexpr source power_screw{"Shigley, Mechanical Engineering Design", "6th to 10th edition",
                                    "power screws: raising and lowering torque, collar friction, thread angle",
                                    source_kind::handbook};
/// Friction and pad of a hand-driven clamp screw.
inline constexpr source clamp_screw_judgement{
    "clamp screw: friction 0.15 in thread and under the pad, pad on a mean diameter of 10 mm",
    {},
    {},
    source_kind::judgement};

namespace detail {
struct friction_rule {
    static constexpr const char* name = "friction coefficient";
    static constexpr double low = 0.0, high = 1.5, initial = 0.15;
    static constexpr bool low_excluded = false, high_excluded = false;
};
}  // namespace detail

using friction_coefficient = bounded_number<detail::friction_rule>;  ///< friction force over normal force, 0 to 1.5
using plane_angle = boost::units::quantity<si::plane_angle>;         ///< radian

/// 15 degrees, half the flank angle of a trapezoidal thread (ISO 2901).
inline constexpr plane_angle trapezoidal_half_angle = in_si<plane_angle>(15.0 / 180.0 * std::numbers::pi);
/// 14.5 degrees, half the flank angle of an Acme thread (ASME B1.5).
inline constexpr plane_angle acme_half_angle = in_si<plane_angle>(14.5 / 180.0 * std::numbers::pi);
/// 0, the square thread.
inline constexpr plane_angle square_half_angle = in_si<plane_angle>(0.0);

/// A clamp screw. Tr16x4 is {.diameter = 16_mm, .pitch = 4_mm}.
struct screw_thread {
    length diameter;                                  ///< [m] outside, above the pitch
    length pitch;                                     ///< [m] above 0
    int starts = 1;                                   ///< threads side by side, 1 to 8
    plane_angle half_angle = trapezoidal_half_angle;  ///< [rad] of the flanks, 0 to below pi/4
    friction_coefficient friction = 0.15;             ///< in the thread; see clamp_screw_judgement
    friction_coefficient collar_friction = 0.15;      ///< under the pad or collar; see clamp_screw_judgement
    length collar_diameter = in_si<length>(0.010);    ///< [m] 0 or above, mean, of pad or collar; 0: none
};

namespace detail {

// Arms of the torque per unit force [m]: of the thread when raising or lowering, and of the collar.
struct screw_arms {
    double raising, lowering, collar, lead;
    bool raises;  // false: friction locks the thread both ways
};

inline screw_arms arms_of(const screw_thread& s)
{
    require_positive(s.pitch, "pitch");
    require_positive(s.diameter, "thread diameter");
    if (s.diameter <= s.pitch)
        throw out_of_range_error("thread diameter", si_text(s.diameter), "above the pitch of " + si_text(s.pitch));
    require_within(s.starts, 1.0, 8.0, "thread starts");
    require_within(s.half_angle.value(), 0.0, std::numbers::pi / 4.0, "half angle of the thread");
    require_not_negative(s.collar_diameter, "collar diameter");
    const double mean = (s.diameter - 0.5 * s.pitch).value();
    const double lead = s.starts * s.pitch.value();
    const double around = std::numbers::pi * mean;
    const double f = static_cast<double>(s.friction) / std::cos(s.half_angle.value());
    const double free = around - f * lead;
    return {0.5 * mean * (lead + f * around) / free, 0.5 * mean * (f * around - lead) / (around + f * lead),
            0.5 * static_cast<double>(s.collar_friction) * s.collar_diameter.value(), lead, free > 0.0};
}

inline screw_arms raising_arms_of(const screw_thread& s)
{
    const screw_arms arms = arms_of(s);
    if (!arms.raises)
        throw out_of_range_error("friction coefficient", number_text(static_cast<double>(s.friction)),
                                 "low enough for the thread to turn: pi dm above f l sec a");
    return arms;
}

}  // namespace detail

/// Mean diameter of the thread, d - p/2 [m]. @param s the thread @throws not_finite_error, out_of_range_error
[[nodiscard]] inline length mean_diameter_of(const screw_thread& s)
{
    (void)detail::arms_of(s);
    return s.diameter - 0.5 * s.pitch;
}

/// Force a torque makes, the inverse of screw_torque() [N]. No torque, no force.
/// @param turning T [N m], 0 or above @param s the thread
/// @throws not_finite_error, out_of_range_error for a thread that cannot be, or that friction locks both ways
/// @par Accuracy
/// that of the friction coefficients: 0.10 instead of 0.15 raises the force by about a half
/// @see power_screw
[[nodiscard]] inline weldloop::force screw_force(torque turning, const screw_thread& s)
{
    const detail::screw_arms arms = detail::raising_arms_of(s);
    return require_finite(
        in_si<weldloop::force>(require_not_negative(turning, "torque").value() / (arms.raising + arms.collar)),
        "force of the screw");
}

/// Torque that raises a load, T = (F dm/2)(l + pi f dm sec a)/(pi dm - f l sec a) + F fc dc/2 [N m], with dm the mean
/// diameter, l the lead (starts x pitch), a the half angle, f and fc the friction of thread and collar.
/// @param load F [N], 0 or above @param s the thread
/// @throws not_finite_error, out_of_range_error for a thread that cannot be, or that friction locks both ways
/// @see power_screw
[[nodiscard]] inline torque screw_torque(weldloop::force load, const screw_thread& s)
{
    const detail::screw_arms arms = detail::raising_arms_of(s);
    return require_finite(in_si<torque>(require_not_negative(load, "force").value() * (arms.raising + arms.collar)),
                          "torque of the screw");
}

/// Torque that lowers a load, (F dm/2)(pi f dm sec a - l)/(pi dm + f l sec a) + F fc dc/2 [N m]. Below zero: the screw
/// turns back by itself.
/// @param load F [N], 0 or above @param s the thread
/// @throws not_finite_error, out_of_range_error @see power_screw
[[nodiscard]] inline torque lowering_torque(weldloop::force load, const screw_thread& s)
{
    const detail::screw_arms arms = detail::arms_of(s);
    return require_finite(in_si<torque>(require_not_negative(load, "force").value() * (arms.lowering + arms.collar)),
                          "lowering torque");
}

/// Work got out over work put in, F l/(2 pi T). @param s the thread
/// @throws not_finite_error, out_of_range_error @see power_screw
[[nodiscard]] inline fraction screw_efficiency(const screw_thread& s)
{
    const detail::screw_arms arms = detail::raising_arms_of(s);
    return std::min(1.0, arms.lead / (2.0 * std::numbers::pi * (arms.raising + arms.collar)));
}

/// Whether the thread holds its load by its own friction, without the collar: pi f dm sec a > l. A clamp screw that
/// does not will shake loose. @param s the thread @throws not_finite_error, out_of_range_error @see power_screw
[[nodiscard]] inline bool holds_itself(const screw_thread& s)
{
    return detail::arms_of(s).lowering > 0.0;
}

}  // namespace weldloop
