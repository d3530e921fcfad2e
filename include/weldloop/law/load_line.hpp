#pragma once
/// @file
/// Welding processes and their conventional load voltages.

#include <algorithm>
#include <array>
#include <string_view>

#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>

namespace weldloop {

/// Arc-welding processes.
enum class process {
    smaw,  ///< shielded metal arc (covered electrode)
    gmaw,  ///< gas metal arc (solid wire)
    fcaw,  ///< flux-cored arc
    gtaw,  ///< gas tungsten arc
    saw,   ///< submerged arc
};

/// Every process, in the order of the enumeration.
inline constexpr std::array all_processes{process::smaw, process::gmaw, process::fcaw, process::gtaw, process::saw};

/// The word for a process, as printed and as written in station files.
[[nodiscard]] constexpr std::string_view to_text(process p)
{
    switch (p) {
    case process::smaw: return "smaw";
    case process::gmaw: return "gmaw";
    case process::fcaw: return "fcaw";
    case process::gtaw: return "gtaw";
    case process::saw: return "saw";
    }
    return "smaw";
}

/// Whether the process feeds wire at a constant rate from a constant-voltage supply as a rule (common practice).
[[nodiscard]] constexpr bool feeds_wire(process p)
{
    return p == process::gmaw || p == process::fcaw || p == process::saw;
}

/// Conventional load voltages of power-source type tests.
inline constexpr source conventional_load{"IEC 60974-1, as quoted in a welding handbook p. 341", "1998..2021",
                                          "11.2, type test values of the load voltage", source_kind::standard};
/// The same for submerged arc.
inline constexpr source conventional_load_saw{"IEC 60974-1", "1998..2021", "11.2, submerged arc", source_kind::memory};

/// The source of a process's load line.
[[nodiscard]] constexpr const source& load_line_source(process p)
{
    return p == process::saw ? conventional_load_saw : conventional_load;
}

/// Conventional load voltage, U2 = a + b I: smaw and saw 20 V + 0.04 V/A, gtaw 10 V + 0.04 V/A, wire 14 V + 0.05 V/A,
/// constant above 600 A. It is the load of a type test, not a prediction of an arc.
/// @param p process @param i welding current [A], above 0
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline voltage conventional_load_voltage(process p, current i)
{
    require_positive(i, "welding current");
    constexpr double line_ends_at = 600.0;  // A
    const double amps = std::min(i.value(), line_ends_at);
    switch (p) {
    case process::smaw:
    case process::saw: return in_si<voltage>(20.0 + 0.04 * amps);
    case process::gtaw: return in_si<voltage>(10.0 + 0.04 * amps);
    case process::gmaw:
    case process::fcaw: break;
    }
    return in_si<voltage>(14.0 + 0.05 * amps);
}

}  // namespace weldloop
