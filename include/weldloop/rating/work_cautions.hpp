#pragma once
/// @file
/// What is said before somebody works on a circuit or reads on it: once, for every document that goes to the job.

#include <array>
#include <string_view>

#include <weldloop/core/source.hpp>

namespace weldloop {

/// Order of work on a circuit, and who reads.
inline constexpr source work_cautions_practice{
    "cautions of the trade before work on a circuit and live readings", {}, {}, source_kind::common_practice};
/// Marks of meters and their leads.
inline constexpr source meter_category_standard{
    "IEC 61010-1 and IEC 61010-031", {}, "measurement categories II to IV, marked with a voltage", source_kind::memory};

/// Before a joint is touched. @see work_cautions_practice
inline constexpr std::array touch_cautions{
    std::string_view("Before a joint is touched, opened, tightened or cleaned: supply off and locked against switching "
                     "on, then proven dead."),
    std::string_view("Metal that was under current can burn for many minutes after: let joints, leads, tip and work "
                     "cool, and feel with the back of a gloved hand first."),
    std::string_view("A covering that is cut, burnt, bare, wet or crushed stops the job: that lead is out of use until "
                     "it is cured."),
    std::string_view("Local codes, the makers' instructions and licensed practice come first. What is inside the "
                     "supply, its mains lead and its protective conductor are for a licensed electrician.")};

/// Before something is read while current flows. @see work_cautions_practice, meter_category_standard
inline constexpr std::array live_cautions{
    std::string_view("Readings under current are live work: only trained persons, with insulated leads and probes, and "
                     "nobody alone: a second person holds the arc, the one who reads does nothing else. The no-load "
                     "voltage stands across the circuit whenever the arc is out."),
    std::string_view("Meter, leads and probes bear a measurement category, II or higher, with a voltage above the "
                     "no-load voltage of the supply; III or higher where mains terminals can be reached. Nothing is "
                     "read while a high-frequency start is on: it can break the meter and reach the hand.")};

/// Both, in short, beside an answer that rests on readings.
inline constexpr std::array reading_cautions{live_cautions[0], live_cautions[1], touch_cautions[0]};

}  // namespace weldloop
