#pragma once
/// @file
/// How the joints of a circuit that nobody touches get worse: film, loosening and fretting -> resistance -> heat, all
/// joints of the circuit at once.

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include <weldloop/circuit/contact_hold.hpp>
#include <weldloop/circuit/loop_state.hpp>
#include <weldloop/circuit/station.hpp>
#include <weldloop/core/band.hpp>
#include <weldloop/core/fraction.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/life/joint_service.hpp>

namespace weldloop {

/// @name Sources of drift
/// @{

/// Radius of the spots that film eats into.
inline constexpr source joint_spots_judgement{
    "spots of a joint that film eats from their rim: 5 um radius, 20 um in a crimp; used up at nine tenths of it",
    "2026",
    {},
    source_kind::judgement};
/// How much of the air comes to the spots.
inline constexpr source joint_sealing_judgement{
    "of what the air takes off open copper, a joint's spots feel all where faces are sprung or rest, a fifth under a "
    "bolt or screw, a twentieth in a crimp",
    "2026",
    {},
    source_kind::judgement};
/// Fretting.
inline constexpr source fretting_recalled{
    "Slade (ed.), Electrical Contacts", "2nd edition",
    "fretting of unlubricated contacts shows after 1e3 to 1e5 slips; taken here as doubling the resistance, in "
    "proportion to their number, ten times as many under a bolt or screw, a hundred times in a crimp",
    source_kind::memory};
/// What loosening does to a joint that nobody touches.
inline constexpr source untouched_joint_judgement{
    "force that a joint loses untouched raises its resistance by the force law in the typical and the poor case; in "
    "the mild one its spots stay as they were pressed",
    "2026",
    {},
    source_kind::judgement};
/// @}

/// What has raised a joint's resistance, as shares that sum to one; all zero if nothing rose.
struct drift_causes {
    fraction film = {};      ///< oxide and corrosion at the spots
    fraction force = {};     ///< settling of bolts and screws, heat cycles
    fraction fretting = {};  ///< small slips
};

/// A joint at one end of what may be.
struct drift_case {
    std::optional<duration> yields = {};  ///< [s] hours of shift after which its spots yield; none: not as far as the
                                          ///< forecast of this case goes
    double resistance_ratio = 1.0;        ///< over that when the forecast begins, at its end or where it yields
    double softening_used = 0.0;          ///< ratio of the drop to the softening drop of its metals, there
    drift_causes causes = {};             ///< of the ratio
};

/// A joint over hours of shift.
struct joint_drift {
    std::size_t part = 0;                       ///< number of its part in the station, from 0
    std::string name = {};                      ///< of the part
    std::string_view contact = {};              ///< "crimp", "palm", "plug", ...
    contact_hold hold = contact_hold::resting;  ///< what holds it
    drift_case poor = {};                       ///< every joint at its poor end, every law at its harsh end
    drift_case typical = {};                    ///< in the middle
    drift_case mild = {};                       ///< every joint good, every law mild
};

/// How one case of a circuit's forecast ends.
struct drift_end {
    loop_outcome outcome = loop_outcome::solved;  ///< solved: followed to the horizon; else what became of the loop
    duration at = {};                             ///< [s] hours of shift that were followed
};

/// The joints of a circuit over hours of shift.
struct drift_forecast {
    std::vector<joint_drift> joints = {};  ///< that yields first in the poor case first, then by what is used of the
                                           ///< softening drop there
    drift_end poor = {};                   ///< how the poor case ends
    drift_end typical = {};                ///< how the typical case ends
    drift_end mild = {};                   ///< how the mild case ends
    duration horizon = {};                 ///< [s] hours of shift asked for
    duration clock = {};                   ///< [s] by the clock: shifts and rests, whole horizon
    weldloop::basis basis = {};            ///< sources, and range_flag::relative_trend
};

/// The drift of every joint of a station that is left as it is: crimps, bolted palms, cable connections, couplings,
/// collets, resting faces. Three marches, poor, typical and mild, each with all joints of the circuit
/// ageing at once in its network, which is solved anew whenever one has changed by a few per cent.
///
/// A joint's resistance is R/R0 = (F/F0)^(-m) (1 + N/N2)/(1 - x/a): x oxide of copper at the joint's temperature with
/// and without current and at the air's in rests (copper_oxide_grown()) and what the air takes (corrosion_speed()), a
/// the radius of its spots; F/F0 the settling of a bolt or screw that was bedded before (bolt_force_left()) and heat
/// cycles, the swing of every period and of every start from cold (cycling_judgement), m by its shape; N slips.
/// "Yields" is the drop of a contact at the softening drop of its metals: its spots spread by themselves, at the price
/// of a joint that heats.
///
/// Left out, because something else answers it or nothing is known: jaws of work clamps and magnets on the work
/// (grip_over_time()), jaws of holders, which every electrode seats anew, brushes and contact tips, which wear;
/// loosening of bolts by vibration; springs of holders, plugs and fingers, whose stress is not known; rust and scale of
/// steel.
/// @param s the station @param horizon hours of shift to look ahead [s], above 0 to thirty years
/// @param service shifts, starts, air, motion
/// @return joints none, and outcomes that say so, for a station whose loop has no settled state
/// @throws bad_station_error, not_finite_error, out_of_range_error
/// @par Accuracy
/// of the march: hours within 2 % of one with a quarter of its steps; of the laws: a trend, no forecast
/// (range_flag::relative_trend): no validated law of a joint's resistance over time was found
[[nodiscard]] drift_forecast joints_over_time(const station& s, duration horizon, const joint_service& service = {});

}  // namespace weldloop

#ifndef WELDLOOP_BODIES_APART
#include <weldloop/life/joint_drift_body.hpp>
#endif
