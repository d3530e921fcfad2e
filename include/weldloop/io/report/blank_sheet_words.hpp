#pragma once
/// @file
/// What a blank sheet for readings says in each of its forms.

#include <array>
#include <string>
#include <string_view>

#include <weldloop/circuit/station.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/core/text.hpp>
#include <weldloop/io/report/report_words.hpp>
#include <weldloop/io/report/shown_units.hpp>
#include <weldloop/rating/probe_reading.hpp>

namespace weldloop {

/// How the numbers of a blank sheet are meant; printed on each of its forms.
inline constexpr std::string_view blank_sheet_explained =
    "Expected is what nine of ten stations like the one described show at the job's current, once the duty has gone on "
    "long enough to settle: half an hour of it as a rule. At another current millivolts change about in proportion, a "
    "joint near its limits apart. A reading outside says that something is not as described; one inside is no release "
    "for work. Where a joint, lead or clamp reads many times what is expected: stop, read no more across it; it may be "
    "failing, about to burn or part. Supply off and locked, it is taken out of use and opened.";

/// What is filled in before the first reading.
inline constexpr std::array blank_sheet_fields{std::string_view("Date"),
                                               std::string_view("Read by"),
                                               std::string_view("Second person, at the arc"),
                                               std::string_view("Meter, its category and voltage"),
                                               std::string_view("Temperature of the air"),
                                               std::string_view("Arc current, A"),
                                               std::string_view("Minutes under duty")};

/// Where the probes go for a part; common practice, no source. @param kind of part
[[nodiscard]] constexpr std::string_view probes_of(part_kind kind)
{
    switch (kind) {
    case part_kind::cable: return "from end to end of its copper";
    case part_kind::lug: return "lead just behind the barrel to the stud or clamp under the palm";
    case part_kind::contact: return "one body to the other, close to where they touch";
    case part_kind::plate: return "where the current enters to where it leaves";
    case part_kind::work_connection: return "its lead or lug to the work close beside it";
    case part_kind::wire_gun: return "its plug to the contact tip";
    case part_kind::tig_torch: return "its connection to the collet";
    case part_kind::electrode_holder: return "its lead to the rod just outside the jaws";
    case part_kind::coupling: return "lead to lead";
    case part_kind::strap: return "what it is bolted to at one end to the same at the other";
    case part_kind::stud_terminal: return "its seat to the farthest lug";
    case part_kind::set_screw: return "lead to the terminal's body";
    case part_kind::cable_splice: return "lead to lead";
    case part_kind::rotary_ground: return "its lead to the ring";
    case part_kind::work_magnet: return "its lead to the work beside the pad";
    case part_kind::spring_pad: return "the pad to the work beside it";
    case part_kind::arc:
    case part_kind::junction:
    case part_kind::workpiece:
    case part_kind::measured_part: break;
    }
    return "one end to the other";
}

namespace detail {

/// "1.8 to 6.4 mV"
[[nodiscard]] inline std::string expected_volts(const probe_reading& r)
{
    return to_text(r.volts.low, "mV", 2) == to_text(r.volts.high, "mV", 2)
               ? to_text(r.volts.typical, "mV", 2)
               : number_text(number_in(r.volts.low, "mV"), 2) + " to " + to_text(r.volts.high, "mV", 2);
}
/// Where a thermometer goes, or why it tells nothing.
[[nodiscard]] inline std::string heat_probe_of(const station& s, const probe_reading& r)
{
    return r.heated_by_arc ? "temperature not judged: the arc heats it" : "hottest at its " + peak_place_word(s, r);
}
/// "46 to 66 degC", in whole degrees of a scale
[[nodiscard]] inline std::string expected_heat(const probe_reading& r, const shown_units& units)
{
    if (r.heated_by_arc) return "not judged";
    if (!r.peak) return "not known";
    const auto whole = [&](temperature t) { return fixed_text(units.temperatures.number_of(t), 0); };
    const std::string low = whole(r.peak->low), high = whole(r.peak->high), unit(units.temperatures.name());
    return (low == high ? high : low + " to " + high) + " " + unit;
}

}  // namespace detail

}  // namespace weldloop
