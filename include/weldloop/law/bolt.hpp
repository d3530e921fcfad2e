#pragma once
/// @file
/// Bolts: the force a tightening torque makes, stress areas, and the published torques of electrical joints.

#include <array>
#include <cmath>
#include <numbers>
#include <string_view>

#include <weldloop/core/band.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>

namespace weldloop {

/// @name Sources of bolt data
/// @{

/// Source: dry and oiled threads.
inline constexpr source nut_factor_articles{
    "torque-tension articles", "2012; 2020",
    "T = K d F; K 0.20 dry and 0.15 lubricated; preload scatters by 30 % (ends of the dry band from memory)",
    source_kind::handbook};
/// Source: zinc-plated threads.
inline constexpr source nut_factor_zinc{"fastener coating newsletter", "about 2010",
                                        "K 0.17 for zinc plate (ends of the band are judgement)",
                                        source_kind::handbook};
/// Source: threads with anti-seize.
inline constexpr source nut_factor_anti_seize{
    "fastener handbooks", {}, "K with anti-seize or molybdenum disulphide", source_kind::memory};
/// Source: rusty threads.
inline constexpr source nut_factor_rusty{"K of a rusty or damaged thread", {}, {}, source_kind::judgement};
/// Source: metric threads.
inline constexpr source metric_stress_area_rule{
    "ISO 898-1", {}, "nominal stress area, (pi/4)(d - 0.9382 p)^2", source_kind::standard};
/// Source: inch threads.
inline constexpr source inch_stress_area_rule{
    "ASME B1.1", {}, "tensile stress area, (pi/4)(D - 0.9743/n)^2", source_kind::standard};
/// Source: tightening torques.
inline constexpr source electrical_torque_table{
    "DIN 43673 / VDE 0220-2 / NEN 3062 as quoted in a technician's note", "2025-08-17",
    "copper busbar or lug, class 8.8 zinc-plated, not oiled, spring washers", source_kind::handbook};
/// @}

/// State of a thread when it is tightened.
enum class thread_state {
    dry,          ///< plain steel as received
    zinc_plated,  ///< plated, not oiled
    oiled,        ///< oil or wax
    anti_seize,   ///< anti-seize paste or molybdenum disulphide
    rusty,        ///< rusty or damaged
};

/// Every state, in the order of the enumeration.
inline constexpr std::array all_thread_states{thread_state::dry, thread_state::zinc_plated, thread_state::oiled,
                                              thread_state::anti_seize, thread_state::rusty};

/// The word for a state, as written in station files.
[[nodiscard]] constexpr std::string_view to_text(thread_state s)
{
    switch (s) {
    case thread_state::dry: return "dry";
    case thread_state::zinc_plated: return "zinc-plated";
    case thread_state::oiled: return "oiled";
    case thread_state::anti_seize: return "anti-seize";
    case thread_state::rusty: return "rusty";
    }
    return "rusty";
}

/// A nut factor with its source.
struct nut_factor_row {
    band<double> factor;  ///< K of T = K d F
    const source* from;   ///< where it comes from
};

/// Nut factor of a thread. @param s its state @see the sources of bolt data
[[nodiscard]] constexpr nut_factor_row nut_factor(thread_state s)
{
    switch (s) {
    case thread_state::dry: return {{0.17, 0.20, 0.30}, &nut_factor_articles};
    case thread_state::zinc_plated: return {{0.15, 0.17, 0.22}, &nut_factor_zinc};
    case thread_state::oiled: return {{0.12, 0.15, 0.18}, &nut_factor_articles};
    case thread_state::anti_seize: return {{0.09, 0.13, 0.16}, &nut_factor_anti_seize};
    case thread_state::rusty: return {{0.25, 0.35, 0.50}, &nut_factor_rusty};
    }
    return {{0.25, 0.35, 0.50}, &nut_factor_rusty};
}

/// Force in a bolt tightened to a torque, T/(K d) [N]. No torque, no force.
/// @param tightening T [N m], 0 or above @param factor K, 0.05 to 1 @param diameter d, nominal [m], above 0
/// @throws not_finite_error, out_of_range_error
/// @par Accuracy
/// one bolt of a lot differs from the next by about 30 % @see nut_factor_articles
[[nodiscard]] inline weldloop::force bolt_force(torque tightening, double factor, length diameter)
{
    require_not_negative(tightening, "torque");
    require_within(factor, 0.05, 1.0, "nut factor");
    return require_finite(
        in_si<weldloop::force>(tightening.value() / (factor * require_positive(diameter, "bolt diameter").value())),
        "bolt force");
}

/// The same with the scatter of the thread's nut factor: the highest factor gives the lowest force.
/// @param tightening T [N m], 0 or above @param s state of the thread @param diameter d, nominal [m], above 0
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline band<weldloop::force> bolt_force(torque tightening, thread_state s, length diameter)
{
    return mapped(nut_factor(s).factor, [&](double factor) { return bolt_force(tightening, factor, diameter); });
}

namespace detail {
inline area stress_area(length diameter, length pitch, double depth)
{
    require_positive(diameter, "bolt diameter");
    require_positive(pitch, "pitch");
    if (diameter <= pitch)
        throw out_of_range_error("bolt diameter", si_text(diameter), "above the pitch of " + si_text(pitch));
    const length core = diameter - depth * pitch;
    return require_finite(std::numbers::pi / 4.0 * core * core, "stress area");
}
}  // namespace detail

/// Stress area of a metric thread, (pi/4)(d - 0.9382 p)^2 [m2].
/// @param diameter d, nominal [m], above the pitch @param pitch p [m], above 0
/// @throws not_finite_error, out_of_range_error @see metric_stress_area_rule
[[nodiscard]] inline area metric_stress_area(length diameter, length pitch)
{
    constexpr double depth = 0.9382;  // pitches from the outside to the stressed diameter
    return detail::stress_area(diameter, pitch, depth);
}

/// Stress area of a unified inch thread, (pi/4)(D - 0.9743/n)^2 [m2].
/// @param diameter D, nominal [m], above the pitch @param pitch 1/n, one over threads per length [m], above 0
/// @throws not_finite_error, out_of_range_error @see inch_stress_area_rule
[[nodiscard]] inline area inch_stress_area(length diameter, length pitch)
{
    constexpr double depth = 0.9743;  // pitches from the outside to the stressed diameter
    return detail::stress_area(diameter, pitch, depth);
}

/// A published tightening torque.
struct bolt_torque_row {
    length diameter;          ///< [m] nominal thread
    length pitch;             ///< [m] of the coarse thread
    weldloop::torque torque;  ///< [N m]
};

/// Tightening torques of electrical joints, M6 to M16; see electrical_torque_table. Other tables differ: 28 to 50 N m
/// are printed for M10, 120 to 170 for M16.
inline constexpr std::array electrical_torques{
    bolt_torque_row{in_si<length>(0.006), in_si<length>(0.00100), in_si<torque>(8)},
    bolt_torque_row{in_si<length>(0.008), in_si<length>(0.00125), in_si<torque>(20)},
    bolt_torque_row{in_si<length>(0.010), in_si<length>(0.00150), in_si<torque>(40)},
    bolt_torque_row{in_si<length>(0.012), in_si<length>(0.00175), in_si<torque>(70)},
    bolt_torque_row{in_si<length>(0.016), in_si<length>(0.00200), in_si<torque>(120)},
};

/// Published tightening torque of an electrical joint [N m].
/// @param diameter nominal thread, M6 M8 M10 M12 or M16, within 1 %
/// @throws missing_data_error for a thread without a row; not_finite_error, out_of_range_error @see
/// electrical_torque_table
[[nodiscard]] inline torque electrical_bolt_torque(length diameter)
{
    constexpr double same_thread = 0.01;  // 3/8 in is no M10
    require_positive(diameter, "bolt diameter");
    for (const bolt_torque_row& row : electrical_torques)
        if (std::abs(diameter.value() / row.diameter.value() - 1.0) < same_thread) return row.torque;
    throw missing_data_error("bolt diameter", si_text(diameter), "M6, M8, M10, M12, M16");
}

}  // namespace weldloop
