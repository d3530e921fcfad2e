#pragma once
/// @file
/// How a joint gets worse with time, heat and heat cycles, and what re-tightening restores.
///
/// No validated law of a joint's resistance over time exists. What stands here ranks cases: the hotter, the longer, the
/// smaller its spots, the worse. Every result carries range_flag::relative_trend; no number of it is a forecast.

#include <algorithm>
#include <cmath>
#include <limits>

#include <weldloop/core/fraction.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/law/oxide_growth.hpp>

namespace weldloop {

/// @name Sources of ageing
/// @{

/// Oxide eats into the spots from their rim.
inline constexpr source shrinking_spots{"the metal of a spot shrinks from its rim by the thickness of oxide that "
                                        "copper grows in the time: R/R0 = 1/(1 - x/a)",
                                        "2026", "judgement; no validated law was found", source_kind::judgement};
/// Heat cycles.
inline constexpr source cycling_judgement{
    "heat cycles of 50 K take 2 % of a joint's force in every decade of their number, in proportion to the swing",
    "2026", "judgement; no validated law was found", source_kind::judgement};
/// What re-tightening does.
inline constexpr source retightening_judgement{
    "re-tightening restores the force and makes half of the lost metal again; cleaning and remaking makes all of it",
    "2026",
    {},
    source_kind::judgement};
/// When a joint counts as worn out.
inline constexpr source worn_joint_ratio{"IEC 61238-1-1", "2018", "resistance factor ratio lambda at most 2.0",
                                         source_kind::memory};
/// When a joint is about to run away.
inline constexpr source unstable_drop_growth{
    "Malucci and Ruffino, current rating by voltage-drop criterion", "2000s",
    "power connectors ran away once their drop had grown by 10 to 30 mV (as summarised in an open engineering note)",
    source_kind::paper};
/// Aluminium under enough stress.
inline constexpr source aluminium_joint_stress{
    "Slade (ed.), Electrical Contacts", "2nd edition",
    "chapter 5, Naybour and Farrell: 60 N/mm2 in an aluminium joint at 20 degC (the sentence is cut off in the excerpt "
    "read: the number is certain, what follows below it is inferred)",
    source_kind::handbook};
/// @}

/// Resistance over that of the new joint at which it counts as worn out; see worn_joint_ratio.
inline constexpr double worn_ratio = 2.0;
/// Share of the lost metal that re-tightening without cleaning makes again; see retightening_judgement.
inline constexpr double metal_made_again = 0.5;
/// Share of force lost per decade of cycles at cycling_swing; see cycling_judgement.
inline constexpr double cycling_loss = 0.02;
/// [K], see cycling_judgement.
inline constexpr temperature_difference cycling_swing = in_si<temperature_difference>(50.0);
/// Growth of the drop from which a joint is to be watched [V]; see unstable_drop_growth.
inline constexpr voltage watched_drop_growth = in_si<voltage>(10e-3);
/// Growth of the drop at which joints of the study had run away [V]; see unstable_drop_growth.
inline constexpr voltage runaway_drop_growth = in_si<voltage>(30e-3);
/// Stress in an aluminium joint [Pa]; see aluminium_joint_stress.
inline constexpr pressure least_aluminium_stress = in_si<pressure>(60e6);

/// What a joint has gone through.
struct joint_history {
    duration time;                      ///< [s] since it was made, 0 or above
    temperature usual;                  ///< of the joint while it worked, up to 180 degC
    double cycles = 0.0;                ///< number of heat cycles, 0 or above
    temperature_difference swing = {};  ///< [K] of one cycle, 0 or above
};

/// How far a joint has gone.
struct ageing_trend {
    double resistance_ratio;  ///< over that of the new joint, 1 or above; the largest double where no metal is left
    fraction metal_left;      ///< radius of the spots over that when new
    fraction force_left;      ///< after the heat cycles
    bool worn;                ///< resistance_ratio at or above worn_ratio, or no metal left
    weldloop::basis basis;    ///< sources and relative_trend
};

namespace detail {
inline ageing_trend trend_of(double metal, double grip, double exponent)
{
    ageing_trend out{std::numeric_limits<double>::max(), metal, grip, true, {}};
    if (metal > 0.0 && grip > 0.0) {
        out.resistance_ratio = std::min(std::numeric_limits<double>::max(), std::pow(grip, -exponent) / metal);
        out.worn = out.resistance_ratio >= worn_ratio;
    }
    out.basis.add(shrinking_spots).add(copper_oxide_growth).add(cycling_judgement).add(worn_joint_ratio);
    out.basis.add(range_flag::relative_trend);
    return out;
}
}  // namespace detail

/// Trend of a copper joint: spots shrunk by the oxide of its time, force less by its cycles,
/// R/R0 = (F/F0)^(-m)/(1 - x/a), F/F0 = 1 - 0.02 (swing/50 K) log10(1 + N).
///
/// Many small spots age faster than few large ones of the same resistance. A new joint gives 1; a joint whose oxide is
/// as thick as its spots have radius has no metal left.
/// @param spot_radius a of one spot when new [m], above 0; see spot_radius()
/// @param exponent m of the force law, 0.1 to 1.5 @param history what it has gone through
/// @throws not_finite_error, out_of_range_error @see shrinking_spots, cycling_judgement, copper_oxide_thickness()
[[nodiscard]] inline ageing_trend ageing_trend_of(length spot_radius, double exponent, const joint_history& history)
{
    require_positive(spot_radius, "spot radius");
    require_within(exponent, 0.1, 1.5, "force-law exponent");
    const double cycles = require_within(history.cycles, 0.0, std::numeric_limits<double>::max(), "number of cycles");
    const double swing = (require_not_negative(history.swing, "swing of a cycle") / cycling_swing).value();
    const length oxide = copper_oxide_thickness(history.usual, history.time);
    const double metal = std::max(0.0, 1.0 - (oxide / spot_radius).value());
    const double grip = std::max(0.0, 1.0 - cycling_loss * swing * std::log10(1.0 + cycles));
    return detail::trend_of(metal, grip, exponent);
}

/// What is done to a joint that is tightened again.
enum class joint_care {
    tightened,  ///< its fastener only
    remade,     ///< taken apart, its faces cleaned, put together
};

/// The same joint after it was tightened again: full force, and half of the lost metal made anew; all of it if it was
/// remade. @param aged its trend before @param exponent m of the force law, 0.1 to 1.5 @param care what was done
/// @throws not_finite_error, out_of_range_error @see retightening_judgement
[[nodiscard]] inline ageing_trend retightened(const ageing_trend& aged, double exponent,
                                              joint_care care = joint_care::tightened)
{
    require_within(exponent, 0.1, 1.5, "force-law exponent");
    const double lost = 1.0 - static_cast<double>(aged.metal_left);
    ageing_trend out =
        detail::trend_of(1.0 - lost * (care == joint_care::remade ? 0.0 : 1.0 - metal_made_again), 1.0, exponent);
    out.basis.add(retightening_judgement);
    return out;
}

/// What the growth of a joint's drop at the same current says.
enum class drop_growth {
    steady,   ///< less than 10 mV more
    watched,  ///< 10 to 30 mV more: to be remade at the next stop
    runaway,  ///< 30 mV more or beyond: joints of the study had run away by then
};

/// Growth of a joint's drop held against the study's. @param when_new drop of the new joint [V], 0 or above
/// @param now drop at the same current [V], 0 or above @throws not_finite_error, out_of_range_error
/// @see unstable_drop_growth
[[nodiscard]] inline drop_growth drop_growth_of(voltage when_new, voltage now)
{
    require_not_negative(when_new, "drop of the new joint");
    const voltage grown = require_not_negative(now, "drop of the joint") - when_new;
    return grown >= runaway_drop_growth   ? drop_growth::runaway
           : grown >= watched_drop_growth ? drop_growth::watched
                                          : drop_growth::steady;
}

}  // namespace weldloop
