// The longest that legal questions drawn at random take: longest table prints a row for each sort of question; longest
// <sort> <number> asks one of them alone and says what it is, to be looked into.
#include <algorithm>
#include <array>
#include <cstddef>
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <ctime>
#include <functional>
#include <string>
#include <string_view>
#include <vector>

#include <weldloop/weldloop.hpp>

#include "drawn_questions.hpp"

namespace {

using namespace weldloop;
using bench::draw;

// A question that waits to be asked. `size` is what its effort is stated by: parts, readings, stations.
struct question {
    std::function<void()> ask;
    std::string words;
    double size = 1;
};

struct sort_of_question {
    std::string_view name;   // in one word
    std::string_view shown;  // on the page
    int drawn;
    std::string_view per;  // what `size` counts, one of it; empty: nothing
    question (*make)(draw&);
};

// ---- words for what was drawn

std::string words_of(const duty_cycle& d)
{
    return d.is_continuous() ? "continuous" : to_text(d.on(), "s", 3) + " of " + to_text(d.period(), "s", 3);
}
std::string words_of(const cable& c)
{
    std::string out = to_text(c.size) + ", " + to_text(c.length, "m", 3) + ", " + to_text(c.missing_strands) +
                      " of strands missing over " + to_text(c.damaged_length, "m", 3);
    if (c.covering.name != flexible_rubber.name) out += ", " + std::string(c.covering.name);
    return out;
}
std::string words_of(const surroundings& w)
{
    std::string out = std::string(to_text(w.lay)) + " in air of " + to_text(w.air, "degC", 3);
    if (w.wind.value() > 0) out += ", wind " + to_text(w.wind, "m/s", 2);
    return out;
}
std::string words_of(const station& s)
{
    return std::to_string(s.path.size()) + " parts, " + std::to_string(s.ways.size()) + " ways, " +
           to_text(s.job.current, "A", 3) + ", " + words_of(s.job.duty) + ", " + words_of(s.where);
}
std::string words_of(const clamp_place& p)
{
    return p.joint.clamp.name + " on " + std::string(to_text(p.joint.surface)) + ", " + words_of(p.duty) + ", " +
           words_of(p.lead) + ", " + words_of(p.where);
}

// ---- sorts of question

volatile double sink = 0;
void keep(double x)
{
    sink = sink + x;
}

clamp_use use_of(draw& any)
{
    const clamp_place p = any.place();
    const duration horizon = any.horizon();
    return {p.joint, p.lead, {any.amps(), p.duty}, p.where, horizon, any.clamp_service(horizon)};
}
std::string words_of(const clamp_use& u)
{
    return to_text(u.load.current, "A", 3) + ", " + to_text(u.horizon, "h", 3) + ", " +
           words_of(clamp_place{u.joint, u.lead, u.load.duty, u.where});
}

surveyed_station surveyed(const station& s, const station_service& service, const std::vector<observation>& found)
{
    surveyed_station out{.file = s.name, .is = s};
    try {
        out.found = assess(s, service);
        out.remedies = remedies_for(s);
        out.answers = answers_of(s, out.found, found);
    } catch (const error& e) {
        out.fault = e.what();
        out.found = {};
    }
    return out;
}

const std::array sorts{
    sort_of_question{"continuous", "continuous rating", 1500, "",
                     [](draw& any) {
                         const cable lead = any.lead();
                         const surroundings where = any.where();
                         return question{[=] { keep(ampacity_of(lead, where).amps.value()); },
                                         words_of(lead) + ", " + words_of(where)};
                     }},
    sort_of_question{"duty", "rating under a duty", 600, "",
                     [](draw& any) {
                         const cable lead = any.lead();
                         const surroundings where = any.where();
                         const duty_cycle duty = any.duty();
                         return question{[=] { keep(ampacity_of(lead, where, duty).amps.value()); },
                                         words_of(lead) + ", " + words_of(where) + ", " + words_of(duty)};
                     }},
    sort_of_question{"heating", "heating under a load", 600, "",
                     [](draw& any) {
                         const cable lead = any.lead();
                         const surroundings where = any.where();
                         const load work{any.amps(), any.duty()};
                         return question{[=] { keep(heating_of(lead, where, work).conductor_peak.in_kelvin()); },
                                         words_of(lead) + ", " + words_of(where) + ", " +
                                             to_text(work.current, "A", 3) + ", " + words_of(work.duty)};
                     }},
    sort_of_question{"time", "time to a limit", 600, "",
                     [](draw& any) {
                         const cable lead = any.lead();
                         const surroundings where = any.where(40);
                         const current amps = any.amps();
                         return question{[=] { keep(time_to_limit(lead, where, amps).has_value()); },
                                         words_of(lead) + ", " + words_of(where) + ", " + to_text(amps, "A", 3)};
                     }},
    sort_of_question{"programme", "heating under a programme of up to 400 segments", 150, "segment",
                     [](draw& any) {
                         const cable lead = any.lead();
                         const surroundings where = any.where();
                         std::vector<heating_segment> programme(static_cast<std::size_t>(any.count(400)));
                         const double amps = any.magnitude(20, 1000), second = any.magnitude(1e-3, 1e5);
                         for (heating_segment& s : programme) {
                             s.current = in_si<current>(any.one_in(3) ? 0 : amps * any.between(0, 1));
                             s.duration = in_si<duration>(second * (any.one_in(5) ? any.magnitude(1e-3, 1e3) : 1));
                         }
                         return question{
                             [=] { keep(heating_of_programme(lead, where, programme).conductor_peak.in_kelvin()); },
                             std::to_string(programme.size()) + " segments, " + words_of(lead) + ", " + words_of(where),
                             static_cast<double>(programme.size())};
                     }},
    sort_of_question{"sizing", "smallest lead", 300, "",
                     [](draw& any) {
                         const cable of = any.lead(true);
                         lead_request r{.length = of.length,
                                        .current = any.amps(),
                                        .duty = any.duty(),
                                        .where = any.where(55),
                                        .both_leads = any.one_in(2),
                                        .family = any.one_in(2) ? size_family::american : size_family::metric,
                                        .metal = of.metal,
                                        .covering = of.covering};
                         if (any.one_in(2)) r.allowed_drop = in_si<voltage>(any.magnitude(0.1, 50));
                         if (any.one_in(3)) r.rule = any.of(all_rating_rules);
                         return question{[=] { keep(smallest_lead(r).drop.value()); },
                                         words_of(of) + ", " + to_text(r.current, "A", 3) + ", " + words_of(r.duty) +
                                             ", " + words_of(r.where)};
                     }},
    sort_of_question{"behaviour", "behaviour of a joint", 1000, "",
                     [](draw& any) {
                         const contact c{.metals = {any.any_metal(), any.any_metal()},
                                         .force = any.pressing(),
                                         .surface = any.surface(),
                                         .points = any.count(1000)};
                         const current amps = any.amps();
                         const temperature bulk = temperature::celsius(any.between(-50, 600));
                         return question{[=] { keep(behaviour_of(c, amps, bulk).loss.typical.value()); },
                                         to_text(c.force, "N", 3) + ", " + to_text(amps, "A", 3)};
                     }},
    sort_of_question{"assess", "assessment of a series loop", 400, "part",
                     [](draw& any) {
                         const station s = any.series(6 + static_cast<std::size_t>(any.magnitude(1, 60)));
                         return question{[=] { keep(assess(s).total_drop.typical.value()); }, words_of(s),
                                         static_cast<double>(s.path.size())};
                     }},
    sort_of_question{"ways", "assessment with up to 16 ways", 150, "",
                     [](draw& any) {
                         const station s = any.with_ways(static_cast<std::size_t>(any.count(16)));
                         return question{[=] { keep(assess(s).total_drop.typical.value()); }, words_of(s)};
                     }},
    sort_of_question{
        "point", "working point of supply, loop and arc", 150, "",
        [](draw& any) {
            station s = any.series(6 + static_cast<std::size_t>(any.magnitude(1, 20)));
            s.supply = supply{.kind = supply_kind::constant_voltage,
                              .setting = in_si<voltage>(any.between(15, 60)),
                              .fall = in_si<resistance>(any.magnitude(1e-4, 0.1))};
            return question{[=] { keep(static_cast<double>(operating_point_of(s).outcome)); }, words_of(s)};
        }},
    sort_of_question{"remedies", "remedies", 150, "part",
                     [](draw& any) {
                         const station s = any.series(6 + static_cast<std::size_t>(any.magnitude(1, 40)));
                         return question{[=] { keep(static_cast<double>(remedies_for(s).size())); }, words_of(s),
                                         static_cast<double>(s.path.size())};
                     }},
    sort_of_question{"remedies_ways", "remedies with up to 8 ways", 40, "",
                     [](draw& any) {
                         const station s = any.with_ways(static_cast<std::size_t>(any.count(8)));
                         return question{[=] { keep(static_cast<double>(remedies_for(s).size())); }, words_of(s)};
                     }},
    sort_of_question{"card", "job card", 100, "part",
                     [](draw& any) {
                         const station s = any.series(6 + static_cast<std::size_t>(any.magnitude(1, 30)));
                         return question{[=] { keep(static_cast<double>(job_card_of(s).parts.size())); }, words_of(s),
                                         static_cast<double>(s.path.size())};
                     }},
    sort_of_question{"readings", "a finding for each of up to 200 readings", 100, "",
                     [](draw& any) {
                         const station s = any.usual(8 + static_cast<std::size_t>(any.count(40)));
                         std::vector<reading> read;
                         for (const observation& o : any.found_on(s, static_cast<std::size_t>(any.count(200)), false))
                             read.push_back(std::get<reading>(o));
                         return question{[=] { keep(static_cast<double>(diagnose(s, read).size())); },
                                         std::to_string(read.size()) + " readings, " + words_of(s)};
                     }},
    sort_of_question{"fault", "part at fault by up to 200 readings and looks", 100, "",
                     [](draw& any) {
                         const station s = any.usual(8 + static_cast<std::size_t>(any.count(40)));
                         const auto found = any.found_on(s, static_cast<std::size_t>(any.count(200)));
                         return question{[=] { keep(static_cast<double>(locate_fault(s, found).parts.size())); },
                                         std::to_string(found.size()) + " observations, " + words_of(s)};
                     }},
    sort_of_question{"fault_drawn", "part at fault, parts of any sort", 100, "",
                     [](draw& any) {
                         station s = any.series(6 + static_cast<std::size_t>(any.magnitude(1, 25)));
                         s.job.current = in_si<current>(any.between(50, 400));
                         const auto found = any.found_on(s, static_cast<std::size_t>(any.count(100)));
                         return question{[=] { keep(static_cast<double>(locate_fault(s, found).parts.size())); },
                                         std::to_string(found.size()) + " observations, " + words_of(s)};
                     }},
    sort_of_question{
        "grip", "forecast of a clamp's grip, up to 30 years", 500, "",
        [](draw& any) {
            const clamp_use u = use_of(any);
            return question{[=] { keep(static_cast<double>(grip_over_time(u).outlook_poor)); }, words_of(u)};
        }},
    sort_of_question{"hours", "hours to a loss of grip", 300, "",
                     [](draw& any) {
                         const clamp_place p = any.place();
                         const current amps = any.amps();
                         return question{[=] { keep(hours_to_loss(p, amps).typical.value()); },
                                         to_text(amps, "A", 3) + ", " + words_of(p)};
                     }},
    sort_of_question{"threshold", "threshold: last steady state of a clamp", 200, "",
                     [](draw& any) {
                         const clamp_place p = any.place();
                         const grip_moment m{.force_left = any.between(0.05, 1),
                                             .contact_factor = any.magnitude(1e-2, 1e3)};
                         return question{[=] { keep(grip_threshold_of(p, m).largest.value()); }, words_of(p)};
                     }},
    sort_of_question{
        "largest", "largest current or duty of a clamp", 150, "",
        [](draw& any) {
            const clamp_place p = any.place();
            const duration horizon = any.horizon();
            const current amps = any.amps();
            if (any.one_in(2))
                return question{[=] { keep(static_cast<double>(largest_clamp_duty(p, amps, horizon))); }, words_of(p)};
            return question{[=] { keep(largest_clamp_current(p, horizon).value()); }, words_of(p)};
        }},
    sort_of_question{"map", "map of 240 forecasts", 100, "",
                     [](draw& any) {
                         const clamp_place p = any.place();
                         const duration horizon = any.horizon();
                         std::vector<current> columns;
                         std::vector<double> rows;
                         const double most = any.magnitude(1, 5000), step = any.between(1.01, 3);
                         for (int i = 1; i <= 20; ++i) columns.push_back(in_si<current>(most * i / 20));
                         for (int i = 0; i < 12; ++i) rows.push_back(std::pow(step, i));
                         return question{
                             [=] { keep(static_cast<double>(grip_map_of(p, columns, rows, horizon).cells.size())); },
                             words_of(p)};
                     }},
    sort_of_question{
        "life", "life of a clamp with its cures", 100, "",
        [](draw& any) {
            const clamp_use u = use_of(any);
            return question{[=] { keep(static_cast<double>(clamp_life_of(u).cures.size())); }, words_of(u)};
        }},
    sort_of_question{"magnet", "largest current of a magnet", 150, "",
                     [](draw& any) {
                         const work_magnet m = any.magnet("magnet");
                         const cable lead = any.lead();
                         const duty_cycle duty = any.duty();
                         const surroundings where = any.where(60);
                         return question{[=] { keep(largest_magnet_current(m, lead, duty, where).value()); },
                                         words_of(lead) + ", " + words_of(duty) + ", " + words_of(where)};
                     }},
    sort_of_question{"drift", "drift of a station's joints", 120, "part",
                     [](draw& any) {
                         const station s = any.series(6 + static_cast<std::size_t>(any.magnitude(1, 30)));
                         const duration horizon = any.horizon();
                         const joint_service service = any.joints();
                         return question{
                             [=] { keep(static_cast<double>(joints_over_time(s, horizon, service).joints.size())); },
                             to_text(horizon, "h", 3) + ", " + words_of(s), static_cast<double>(s.path.size())};
                     }},
    sort_of_question{"drift_ways", "drift of joints with up to 8 ways", 40, "",
                     [](draw& any) {
                         const station s = any.with_ways(static_cast<std::size_t>(any.count(8)));
                         const duration horizon = any.horizon();
                         const joint_service service = any.joints();
                         return question{
                             [=] { keep(static_cast<double>(joints_over_time(s, horizon, service).joints.size())); },
                             to_text(horizon, "h", 3) + ", " + words_of(s)};
                     }},
    sort_of_question{"survey", "survey of up to 6 stations of 8 to 18 parts", 12, "station",
                     [](draw& any) {
                         std::vector<station> stations(static_cast<std::size_t>(any.count(6)));
                         std::vector<std::vector<observation>> found;
                         for (station& s : stations) {
                             s = any.one_in(2) ? any.series(8 + static_cast<std::size_t>(any.count(10)))
                                               : any.usual(8 + static_cast<std::size_t>(any.count(10)));
                             found.push_back(any.found_on(s, static_cast<std::size_t>(any.count(20)) - 1));
                         }
                         const duration horizon = any.horizon();
                         const station_service service{horizon, any.clamp_service(horizon), any.joints()};
                         return question{[=] {
                                             std::vector<surveyed_station> all;
                                             for (std::size_t i = 0; i < stations.size(); ++i)
                                                 all.push_back(surveyed(stations[i], service, found[i]));
                                             keep(static_cast<double>(survey_of(all).ranked.size()));
                                         },
                                         std::to_string(stations.size()) + " stations, first of " +
                                             words_of(stations.front()),
                                         static_cast<double>(stations.size())};
                     }},
    sort_of_question{"trend", "trend of a station of 8 to 48 parts, surveyed twice", 12, "",
                     [](draw& any) {
                         const station s = any.usual(8 + static_cast<std::size_t>(any.count(40)));
                         const auto before = any.found_on(s, static_cast<std::size_t>(any.count(100))),
                                    after = any.found_on(s, static_cast<std::size_t>(any.count(100)));
                         return question{
                             [=] {
                                 keep(static_cast<double>(
                                     trend_of(surveyed(s, {}, before), surveyed(s, {}, after)).parts.size()));
                             },
                             words_of(s)};
                     }},
};

// ---- asking

double processor_seconds()
{
    timespec now{};
    clock_gettime(CLOCK_THREAD_CPUTIME_ID, &now);
    return static_cast<double>(now.tv_sec) + 1e-9 * static_cast<double>(now.tv_nsec);
}

question drawn(std::size_t sort, int number)
{
    constexpr std::uint32_t apart = 1000000;  // more than are drawn of a sort
    draw any(static_cast<std::uint32_t>(sort + 1) * apart + static_cast<std::uint32_t>(number));
    return sorts[sort].make(any);
}

struct asked {
    double seconds;   // of the processor
    bool is_refused;  // by a typed error: no answer, which may take as long to know
};
asked ask(const question& q)
{
    const double before = processor_seconds();
    bool is_refused = false;
    try {
        q.ask();
    } catch (const weldloop::error&) {
        is_refused = true;
    }
    return {processor_seconds() - before, is_refused};
}

struct found {
    int number;
    double seconds, size;
};

// Milliseconds, with three digits and more where they are many.
std::string in_milliseconds(double seconds)
{
    constexpr double milli = 1e3, many = 1e3;
    std::array<char, 32> out{};
    const double ms = milli * seconds;
    std::snprintf(out.data(), out.size(), ms < many ? "%.3g ms" : "%.0f ms", ms);
    return out.data();
}

// | question | drawn | mean | longest | for each of what it is stated by | what the longest was |
void print_row(std::size_t sort)
{
    constexpr std::size_t asked_again = 4;
    const sort_of_question& s = sorts[sort];
    std::vector<found> all;
    int refused = 0;
    double sum = 0, each = 0;
    for (int i = 0; i < s.drawn; ++i) {
        const question q = drawn(sort, i);
        const asked a = ask(q);
        refused += a.is_refused ? 1 : 0;
        sum += a.seconds;
        all.push_back({i, a.seconds, q.size});
    }
    const auto longest = [](const found& a, const found& b) { return a.seconds > b.seconds; };
    std::sort(all.begin(), all.end(), longest);
    const auto few = all.begin() + static_cast<std::ptrdiff_t>(std::min(all.size(), asked_again));
    for (auto f = all.begin(); f != few; ++f)  // what else the machine did is not theirs
        f->seconds = std::min(f->seconds, ask(drawn(sort, f->number)).seconds);
    std::sort(all.begin(), few, longest);
    for (const found& f : all) each = std::max(each, f.seconds / f.size);
    std::printf("| %s | %d, %d refused | %s | %s", std::string(s.shown).c_str(), s.drawn, refused,
                in_milliseconds(sum / s.drawn).c_str(), in_milliseconds(all.front().seconds).c_str());
    if (!s.per.empty()) std::printf(", %s a %s", in_milliseconds(each).c_str(), std::string(s.per).c_str());
    std::printf(" | %s %d: %s |\n", std::string(s.name).c_str(), all.front().number,
                drawn(sort, all.front().number).words.c_str());
    std::fflush(stdout);
}

}  // namespace

int main(int argc, char** argv)
{
    const std::string_view what = argc > 1 ? argv[1] : "";
    if (argc == 2 && what == "table") {
        for (std::size_t sort = 0; sort < sorts.size(); ++sort) print_row(sort);
        return 0;
    }
    for (std::size_t sort = 0; sort < sorts.size(); ++sort) {
        if (argc != 3 || sorts[sort].name != what) continue;
        const question q = drawn(sort, std::atoi(argv[2]));
        const asked a = ask(q);
        std::printf("%s\n%.4f s%s\n", q.words.c_str(), a.seconds, a.is_refused ? ", refused" : "");
        return 0;
    }
    std::fputs("longest table, or longest <sort> <number>, sort one of:", stderr);
    for (const sort_of_question& s : sorts) std::fprintf(stderr, " %s", s.name.data());
    std::fputs("\n", stderr);
    return 2;
}
