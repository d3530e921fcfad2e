#pragma once
/// @file
/// How a station is used: what its clamps and its other joints live through, and how far ahead is looked.

#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/life/clamp_use.hpp>
#include <weldloop/life/grip_service.hpp>
#include <weldloop/life/joint_service.hpp>

namespace weldloop {

/// The use of a station. Left as it is: clamps in one long shift that nobody touches, other joints in shifts of 8 h
/// with 16 h of rest in dry air.
struct station_service {
    duration horizon = usual_forecast;  ///< hours of shift to look ahead [s], above 0 to thirty years
    grip_service clamps = {};           ///< of every work clamp and magnet in it
    joint_service joints = {};          ///< of every other joint
};

namespace detail {
inline void require_station_service(const station_service& s)
{
    require_positive(s.horizon, "forecast");
    require_within(s.horizon, duration{}, longest_forecast, "forecast");
    require_service(s.clamps, s.horizon);
    require_joint_service(s.joints);
}
}  // namespace detail

}  // namespace weldloop
