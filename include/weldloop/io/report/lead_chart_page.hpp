#pragma once
/// @file
/// The charts of a shop's leads as one page for its wall.

#include <span>
#include <string>
#include <string_view>

#include <weldloop/core/duty_cycle.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/io/draw/lead_chart.hpp>
#include <weldloop/io/report/page_writer.hpp>
#include <weldloop/io/report/report_words.hpp>
#include <weldloop/io/report/shown_units.hpp>
#include <weldloop/part/cable.hpp>
#include <weldloop/part/surroundings.hpp>
#include <weldloop/rating/lead/ampacity.hpp>

namespace weldloop {

/// What a chart of leads does not say; printed under it.
inline constexpr std::string_view lead_chart_standing =
    "Calculated for whole leads in open air under the conditions named, joints left out: a bad joint is hotter than "
    "any "
    "lead. Not for leads in a duct, under a mat or on a drum. Local codes, makers' instructions and licensed practice "
    "come first.";

/// Two charts as one page that needs nothing from elsewhere: the longest lead by current, and the current by duty.
/// @param leads 1 to 8, of different sizes @param c what they hold for
/// @throws what lead_length_chart() and lead_duty_chart() throw
[[nodiscard]] inline std::string lead_chart_page(std::span<const cable> leads, const lead_chart_conditions& c)
{
    const std::string lengths = lead_length_chart(leads, c);
    const std::string duties = lead_duty_chart(leads, c.where, c.duty.period(), c.units);
    detail::page_writer page("Welding leads: current, length, duty", "");
    page.element("p", in_shown_units(surroundings_line(c.where), c.units) + "; covering " +
                          std::string(leads.front().covering.name));
    page.begin_main();
    page.figure(
        "How long a lead may be", lengths,
        "Find the current below and go up to the curve of the size: at the left stands the longest lead, one "
        "way, that loses no more than the volts named. A curve ends where the conductor is at its limit; at "
        "more current the size is too small, however short it is. A curve that leaves the chart at the top goes on: "
        "at half the current a lead may be about twice as long.");
    page.figure("What a lead may carry by its duty", duties,
                "Find the share of time under current below and go up to the curve of the size: at the left stands the "
                "current that brings its conductor to the limit. Heat alone: the volts are in the first chart.");
    basis all;
    for (const cable& lead : leads) all.add(ampacity_of(lead, c.where, c.duty).basis);
    page.sources(all);
    return page.finished(lead_chart_standing);
}

}  // namespace weldloop
