#pragma once
/// @file
/// The arc as a source of heat: its power, the share of it that enters the work, heat per length of weld.

#include <weldloop/core/band.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/law/load_line.hpp>

namespace weldloop {

/// Heat per length of weld [J/m]; in the units of this library the same as a force.
using heat_per_weld_length = decltype(energy{} / length{});

/// The factor k of heat input as a welder writes it down: a convention, not a measurement.
inline constexpr source heat_input_convention{"EN 1011-1, as quoted by a steel producer and two open programs",
                                              "1998; 2009", "table 1", source_kind::standard};
/// Wire arcs on steel plate in a calorimeter. Their spread is recalled.
inline constexpr source wire_arc_calorimetry{
    "DuPont and Marder, Thermal efficiency of arc welding processes, Welding Journal 74, 406s: 0.84 for arcs whose "
    "electrode melts, any current; spread of 0.04 recalled",
    "1995", "abstract", source_kind::paper};
/// A calorimeter of another kind on the same process.
inline constexpr source nitrogen_calorimetry{
    "Pepe, Egerland, Colegrove, Yapp, Leonhartsberger and Scotti, Sci. Technol. Weld. Join. 16, 412-417: 0.85", "2011",
    "abstract", source_kind::paper};
/// Tungsten arcs on negative polarity.
inline constexpr source tungsten_arc_review{
    "Stenbacka, Choquet and Hurtig, Review of arc efficiency values for gas tungsten arc welding, IIW XII-2070-12: "
    "0.78, 0.73 to 0.82 with 95 % confidence of the mean; single reports lie between 0.36 and 0.90",
    "2012", "abstract", source_kind::paper};
/// Calorimeters of the 1950s and 60s: covered electrodes 0.66 to 0.85, submerged arc 0.91 to 0.99.
inline constexpr source early_calorimetry{"Grong, Metallurgical Modelling of Welding", "1997",
                                          "table 1.3, after Christensen et al. 1965", source_kind::memory};

/// Measured share of the arc's power that enters the work, as a band: wire arcs 0.80, 0.84, 0.88; covered electrodes
/// 0.66, 0.80, 0.85 (ends recalled); tungsten arc 0.73, 0.78, 0.82; submerged arc 0.84, 0.92, 0.99 (middle judged: two
/// measurements that disagree). It is neither the convention heat_input_factor() nor the share of wire that is
/// deposited. @param p process
[[nodiscard]] constexpr band<double> arc_efficiency(process p)
{
    switch (p) {
    case process::smaw: return {0.66, 0.80, 0.85};
    case process::gtaw: return {0.73, 0.78, 0.82};
    case process::saw: return {0.84, 0.92, 0.99};
    case process::gmaw:
    case process::fcaw: break;
    }
    return {0.80, 0.84, 0.88};
}

/// The sources of arc_efficiency(). @param p process
[[nodiscard]] inline basis arc_efficiency_basis(process p)
{
    basis out;
    switch (p) {
    case process::smaw: out.add(heat_input_convention).add(early_calorimetry); break;
    case process::gtaw: out.add(tungsten_arc_review); break;
    case process::saw: out.add(wire_arc_calorimetry).add(early_calorimetry); break;
    case process::gmaw: out.add(wire_arc_calorimetry).add(nitrogen_calorimetry); break;
    case process::fcaw: out.add(wire_arc_calorimetry); break;
    }
    return out;
}

/// The factor k of Q = k U I / v by convention: 0.8, tungsten arc 0.6, submerged arc 1.0. For a welding record; what
/// the work feels is arc_efficiency(). @param p process @see heat_input_convention
[[nodiscard]] constexpr double heat_input_factor(process p)
{
    constexpr double of_arcs = 0.8, tungsten = 0.6, submerged = 1.0;
    return p == process::gtaw ? tungsten : p == process::saw ? submerged : of_arcs;
}

/// Heat per length of weld, Q = k U I / v [J/m].
/// @param share k, 0 to 1: of the arc's power; 1 gives the arc energy @param arc [V] across the arc, above 0: read at
/// the supply it holds the drop of the leads as well @param i [A] above 0 @param travel [m/s] above 0
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline heat_per_weld_length heat_input(double share, voltage arc, current i, speed travel)
{
    require_within(share, 0.0, 1.0, "share of the arc's power");
    require_positive(arc, "arc voltage");
    require_positive(i, "welding current");
    require_positive(travel, "travel speed");
    return require_finite(heat_per_weld_length(share * arc * i / travel), "heat input");
}

/// Power of the arc in the work [W], share by share of arc_efficiency().
/// @param p process @param arc [V] across the arc, above 0 @param i [A] above 0
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline band<power> arc_power_in_work(process p, voltage arc, current i)
{
    require_positive(arc, "arc voltage");
    require_positive(i, "welding current");
    return mapped(arc_efficiency(p),
                  [&](double share) { return require_finite(power(share * arc * i), "power of the arc"); });
}

}  // namespace weldloop
