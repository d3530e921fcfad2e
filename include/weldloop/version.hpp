#pragma once
/// @file
/// The version of these headers. This is the only place that states it; the build reads it from here.

/// Raised when a change breaks callers (while it is 0, the minor number plays that part).
#define WELDLOOP_VERSION_MAJOR 0
/// Raised when something is added, or when numbers the library gives have changed.
#define WELDLOOP_VERSION_MINOR 1
/// Raised by a correction that changes neither.
#define WELDLOOP_VERSION_PATCH 0

namespace weldloop {

inline constexpr int version_major = WELDLOOP_VERSION_MAJOR;  ///< as WELDLOOP_VERSION_MAJOR
inline constexpr int version_minor = WELDLOOP_VERSION_MINOR;  ///< as WELDLOOP_VERSION_MINOR
inline constexpr int version_patch = WELDLOOP_VERSION_PATCH;  ///< as WELDLOOP_VERSION_PATCH

}  // namespace weldloop
