#pragma once
/// @file
/// What to make at each connection of a new or changed station, and how to tell that it was made well.

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include <weldloop/circuit/station.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/life/station_service.hpp>
#include <weldloop/rating/assessment.hpp>

namespace weldloop {

/// @name Sources of the job card
/// @{

/// What is done at a termination without calculation.
inline constexpr source termination_practice{
    "terminations in shops: every strand in the barrel, faces bright just before they are bolted, the lead held so "
    "that "
    "no pull or bend reaches the crimp, lug crimped where nothing moves, screw clamp where it is taken off and put on",
    {},
    {},
    source_kind::common_practice};
/// What a turning connection wants.
inline constexpr source rotary_ground_practice{
    "turning connections in shops: ring bright and round, brushes bedded in and free in their holders",
    {},
    {},
    source_kind::common_practice};
/// What a joint should read.
inline constexpr source card_expectation{
    "this library: the station as it is to be made, 5 to 95 % of joints alike", {}, {}, source_kind::derived};
/// A torque without a published row.
inline constexpr source card_torque_stated{
    "torque as the station describes it, or usual for its thread", {}, {}, source_kind::stated};
/// When to look again.
inline constexpr source card_look_again{
    "this library: the poor case of its forecasts, a relative trend and no validated law",
    {},
    {},
    source_kind::derived};
/// @}

/// Something to keep to or to check, with where it comes from.
struct card_line {
    std::string what = {};         ///< "torque", "strip", "crimp, at most"
    std::string value = {};        ///< in words, with units
    const source* from = nullptr;  ///< never null
};

/// One part of the station as it is to be made.
struct part_card {
    std::size_t place = 0;              ///< its number in the station, from 0
    std::string name = {};              ///< as printed
    std::string make = {};              ///< what to make, in a sentence
    std::vector<card_line> lines = {};  ///< in the order of the work
};

/// A clamp on the table beside the same one on the part, typically.
struct clamp_seat {
    std::string clamp = {};       ///< its name
    voltage table_drop = {};      ///< [V] the loop takes with it on the table
    voltage part_drop = {};       ///< [V] with it on the part
    temperature table_peak = {};  ///< of the clamp on the table
    temperature part_peak = {};   ///< of it on the part
    bool on_the_part = true;      ///< where it belongs: no graver verdict, and of two alike the smaller drop
};

/// The card.
struct job_card {
    station made = {};                       ///< the station as it is to be made
    assessment found = {};                   ///< of that
    std::vector<part_card> parts = {};       ///< every part that is made or connected, in the order of the station
    std::optional<clamp_seat> seat = {};     ///< where a clamp on a table belongs; empty: no clamp on a table
    std::vector<remedy> still_against = {};  ///< what would cure what speaks against the station even so
    weldloop::basis basis = {};              ///< sources of all lines
};

/// What to make: the station with every joint as it should be (bright faces, full torque, every strand in a barrel of
/// its own size, a covering that is whole, full grip), and with the clamp that suits its use: where service says it is
/// opened or dragged, a screw clamp of the rating or the next one sold; where service is stated and nothing moves it
/// (joints still, no knocks), a bolted lug of the cable's size (16 to 185 mm2); as described where nothing is said of
/// its use, or leads are moved. What is crimped to a lead has the lead's size, a coupling that of the larger of its
/// leads; what has no lead beside it, the size of the station's series that is nearest, see usual_size().
///
/// Limits in volts are those at the current through the part itself: of a way, its share.
///
/// Expected volts and temperatures are those of assess() for that station at the job's current and duty; limits of
/// crimps and new clamps are published ones. How far to cut back is taken from the station as described: what its
/// termination typically reaches now, by cut_back_of(), beside what the trade does.
/// @param s the station, new or as it stands @param service its use, if it is known
/// @return a station that even so has no settled state has no expected values, see `found`
/// @throws as assess(), remedies_for(), station_life_of()
[[nodiscard]] job_card job_card_of(const station& s, const std::optional<station_service>& service = {});

}  // namespace weldloop

#ifndef WELDLOOP_BODIES_APART
#include <weldloop/rating/job_card_body.hpp>
#endif
