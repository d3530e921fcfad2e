// lead: the smallest lead that stays cool enough and loses few enough volts, and how close the next smaller one comes.
#include <array>
#include <string>

#include <weldloop/io/report/report_words.hpp>
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
                                  option{"--drop", "VOLTS", "it may take when hot (4 V)"},
                                  option{"--both", "", "the allowed drop is that of two such leads, out and back"},
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

    const wl::lead_choice found = wl::smallest_lead(asked);
    const wl::temperature limit = wl::limit_of(found.cable);
    std::string text = "Lead for " + wl::to_text(asked.current, "A") + ", " +
                       (asked.duty.is_continuous() ? "without a break" : wl::to_text(asked.duty)) + ", " +
                       wl::to_text(asked.length, "m") + " one way; " + wl::surroundings_line(asked.where) + "\n\n";
    const auto line = [&text](std::string_view what, const std::string& value) {
        text.append("  ").append(what).append(": ").append(value).append("\n");
    };
    line("smallest size that does",
         wl::to_text(found.cable.size) + ", decided by " + std::string(wl::to_text(found.governed_by)));
    line("conductor, hottest",
         wl::to_text(found.heating.conductor_peak, "degC") + ", limit " + wl::to_text(limit, "degC"));
    line("it may carry at this duty",
         wl::to_text(found.rated.amps, "A") + ", " + wl::to_text(found.current_margin, "A") + " more than asked");
    line(asked.both_leads ? "both leads take when hot" : "it takes when hot",
         wl::to_text(found.drop, "V") + " of " + wl::to_text(asked.allowed_drop, "V") + " allowed" +
             (c.has("--drop") ? std::string() : " (" + std::string(wl::usual_loop_drop.place) + ")"));
    text.append("\nSources\n");
    for (const wl::source* from : found.basis.sources()) text.append("- ").append(wl::to_text(*from)).append("\n");
    if (!c.has("--drop")) text.append("- ").append(wl::to_text(wl::usual_loop_drop)).append("\n");
    text.append("\nA lead in open air, whole, by itself or as stated; not in a duct, under a mat or on a drum. Joints "
                "count on top: assess\nthe station. Local codes and licensed practice come first.\n");
    say(text);
    return done;
}

}  // namespace

const word lead_word{"lead", "", "the smallest lead for a length, a current and a duty", lead_options, &size_lead};

}  // namespace program
