// card: what to make at each connection of a station, and how to tell that it was made well.
#include <array>
#include <optional>
#include <string>

#include <weldloop/io/report/job_card_page.hpp>
#include <weldloop/io/report/job_card_text.hpp>
#include <weldloop/io/station/station_file.hpp>
#include <weldloop/weldloop.hpp>

#include "output.hpp"
#include "words.hpp"

namespace program {

namespace {

constexpr std::array card_options{out_option};

int make_card(const call& c)
{
    const std::string out = c.out_folder();  // asked before anything is worked out
    if (c.about().size() != 1) call::fault("card needs one station file");
    const fs::path file = c.about().front();
    const wl::described_station described = wl::read_described_station(file);
    const std::optional<wl::station_service> service =
        described.service_is_stated ? std::optional(described.service) : std::nullopt;
    const wl::job_card card = wl::job_card_of(described.station, service);
    const std::string page = wl::job_card_page(card, described.units);
    say(wl::job_card_text(card, described.units));
    write_and_say(out, {wl::plain_stem(file), known_as(file)}, {{"-card.html", page}});
    return done;
}

}  // namespace

const word card_word{"card", "STATION.toml",
                     "job card: lugs, clamps, strip, torque, what each joint should read; text and page", card_options,
                     &make_card};

}  // namespace program
