// lead: the smallest lead that stays cool enough and loses few enough volts, and how close the next smaller one comes.
#include <array>
#include <string>

#include <weldloop/io/report/report_words.hpp>
#include <weldloop/rating/lead_findings.hpp>
#include <weldloop/weldloop.hpp>

#include "lead_request.hpp"
#include "output.hpp"
#include "words.hpp"

namespace program {

namespace {

constexpr std::array lead_options{option{"--length", "LENGTH", "of one lead, one way; must be there"},
                                  option{"--current", "CURRENT", "while the arc burns; must be there"},
                                  duty_option,
                                  period_option,
                                  air_option,
                                  lay_option,
                                  option{"--drop", "VOLTS", "it may take when hot (2 V; with --both 4 V)"},
                                  option{"--both", "", "the allowed drop is that of two such leads, out and back"},
                                  covering_option,
                                  sizes_option};

int size_lead(const call& c)
{
    if (!c.about().empty()) call::fault("lead is asked by options alone; " + c.about().front() + " is none");
    wl::lead_request asked{.length = c.required<wl::length>("--length"),
                           .current = c.required<wl::current>("--current"),
                           .duty = duty_of(c),
                           .where = surroundings_of(c),
                           .both_leads = c.has("--both"),
                           .family = family_of(c)};
    if (const auto drop = c.value<wl::voltage>("--drop")) asked.allowed_drop = *drop;
    asked.covering = covering_of(c);
    const wl::shown_units units = units_of(c, c.text("--length", ""));
    const wl::detail::sentence_facts facts{.exact = {asked.where.air}};
    const auto told = [&](const std::string& sentence) { return wl::in_shown_units(sentence, units, facts); };

    const wl::lead_choice found = wl::smallest_lead(asked);
    const wl::temperature limit = wl::limit_of(found.cable);
    constexpr int exact_in_feet = 5;  // 15.2 m is not 50 ft
    std::string text = wrapped("", told("Lead for " + wl::to_text(asked.current, "A") + ", " +
                                        (asked.duty.is_continuous() ? "without a break" : wl::to_text(asked.duty)) +
                                        ", " + wl::to_text(asked.length, "m", exact_in_feet) + " one way; " +
                                        wl::surroundings_line(asked.where))) +
                       "\n";
    const auto line = [&](std::string_view what, const std::string& value) {
        text += wrapped("  ", std::string(what) + ": " + told(value));
    };
    line("smallest size that does",
         wl::to_text(found.cable.size) + ", decided by " + std::string(wl::to_text(found.governed_by)));
    line("conductor, hottest",
         wl::to_text(found.heating.conductor_peak, "degC") + ", limit " + wl::to_text(limit, "degC"));
    line("it may carry at this duty",
         wl::to_text(found.rated.amps, "A") + ", " + wl::to_text(found.current_margin, "A") + " more than asked");
    line(asked.both_leads ? "both leads take when hot" : "it takes when hot",
         wl::to_text(found.drop, "V") + " of " + wl::to_text(asked.drop_allowed(), "V") + " allowed");
    if (!c.has("--drop"))
        line("assumed", asked.both_leads ? wl::to_text(wl::usual_allowed_drop, "V") + " for both leads together"
                                         : "half of the " + wl::to_text(wl::usual_allowed_drop, "V") +
                                               " of both leads for this one, so that the way back may take as much; "
                                               "--drop says otherwise");
    const std::string cold = wl::detail::cold_covering_text("it", found.cable, asked.where.air);
    if (!cold.empty()) line("in the cold", cold);
    text.append("\nSources\n");
    for (const wl::source* from : found.basis.sources()) text += wrapped("- ", wl::to_text(*from));
    if (!c.has("--drop")) text += wrapped("- ", wl::to_text(wl::usual_loop_drop));
    if (!c.has("--drop") && !asked.both_leads) text += wrapped("- ", wl::to_text(wl::usual_lead_share));
    text.append("\n");
    text += wrapped("", "A lead in open air, whole, by itself or as stated; not in a duct, under a mat or on a drum. "
                        "Joints count on top: assess the station. Local codes and licensed practice come first.");
    say(text);
    return done;
}

}  // namespace

const word lead_word{"lead", "", "the smallest lead for a length, a current and a duty", lead_options, &size_lead};

}  // namespace program
