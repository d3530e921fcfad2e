// chart: for the wall beside the cable rack: the longest lead by current, and the current by duty, a curve for each
// size.
#include <array>
#include <string>
#include <string_view>
#include <vector>

#include <weldloop/io/report/lead_chart_page.hpp>
#include <weldloop/weldloop.hpp>

#include "lead_request.hpp"
#include "output.hpp"
#include "words.hpp"

namespace program {

namespace {

constexpr option lengths_option{"--lengths", "WORD", "m or ft (as --air is written)"};
constexpr std::array chart_options{
    duty_option,     period_option, air_option,     lay_option, option{"--drop", "VOLTS", "along one lead (2 V)"},
    covering_option, sizes_option,  lengths_option, out_option};

constexpr std::array american{wl::awg(4),   wl::awg(2),   wl::awg(1),  wl::aught(1),
                              wl::aught(2), wl::aught(3), wl::aught(4)};
constexpr std::array metric{wl::square_mm(16), wl::square_mm(25), wl::square_mm(35), wl::square_mm(50),
                            wl::square_mm(70), wl::square_mm(95), wl::square_mm(120)};

int draw_chart(const call& c)
{
    const std::string out = c.out_folder();  // asked before anything is worked out
    if (!c.about().empty()) call::fault("chart is asked by options alone; " + c.about().front() + " is none");
    constexpr std::array both{std::string_view("m"), std::string_view("ft")};
    const std::string_view lengths =
        c.has("--lengths") ? c.chosen("--lengths", both, [](std::string_view w) { return w; }) : std::string_view{};
    wl::lead_chart_conditions asked{.where = surroundings_of(c), .duty = duty_of(c), .units = units_of(c, lengths)};
    if (const auto drop = c.value<wl::voltage>("--drop")) asked.allowed_drop = *drop;
    std::vector<wl::cable> leads;
    const bool in_metric = family_of(c) == wl::size_family::metric;
    for (const wl::conductor_size& size : in_metric ? metric : american) {
        leads.push_back(wl::welding_cable(size, wl::in_si<wl::length>(10.0)));
        leads.back().covering = covering_of(c);
    }

    const std::string page = wl::lead_chart_page(leads, asked);
    const std::string holds_for = wl::to_text(asked.allowed_drop, "V") + " along a lead, " + wl::to_text(asked.duty) +
                                  ", " + wl::surroundings_line(asked.where) + (in_metric ? ", metric" : ", american") +
                                  ", " + std::string(leads.front().covering.name) +
                                  (asked.units.lengths == wl::shown_lengths::feet ? ", in ft" : ", in m");
    say("Leads by current, length and duty: " + wl::in_shown_units(holds_for, asked.units) + "\n");
    for (const wl::cable& lead : leads)
        say("  " + wl::to_text(lead.size) + ": up to " +
            wl::to_text(wl::ampacity_of(lead, asked.where, asked.duty).amps, "A") + "\n");
    write_and_say(out, {"leads", "leads: " + holds_for}, {{".html", page}});
    return done;
}

}  // namespace

const word chart_word{"chart", "", "curves of current against length and duty for the shop's wall, as a page",
                      chart_options, &draw_chart};

}  // namespace program
