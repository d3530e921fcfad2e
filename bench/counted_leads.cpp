// Ratings of leads and joints beside programs on plain numbers that call nothing of the library, again and again, to be
// counted by bench/count.sh: counted_leads <what> <how many>; `check` compares what both answer and fails where they
// are apart.
#include <algorithm>
#include <array>
#include <chrono>
#include <cmath>
#include <cstddef>
#include <cstdio>
#include <cstdlib>
#include <ctime>
#include <functional>
#include <string_view>
#include <thread>
#include <vector>

#include <weldloop/circuit/contact_behaviour.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/part/welding_cable.hpp>
#include <weldloop/rating/lead/ampacities.hpp>

#include "plain_cases.hpp"
#include "plain_duty.hpp"
#include "plain_joint.hpp"
#include "plain_lead.hpp"

namespace {

using namespace weldloop;
using namespace weldloop::literals;

constexpr std::array<double, 8> sections{10, 16, 25, 35, 50, 70, 95, 185};  // mm2

std::vector<cable> leads()
{
    std::vector<cable> out;
    for (const double mm2 : sections) out.push_back(welding_cable(square_mm(mm2), 20_m));
    return out;
}

constexpr double on = 360, rest = 240;  // s
double current_in(double section)       // A
{
    return 4e6 * section;
}

struct question {
    std::string_view name;
    double (*library)(std::size_t);
    double (*plain)(std::size_t);
    double apart;  // share by which both may differ
};

const std::vector<cable> all = leads();
const std::vector<plain::lead> plain_all = plain::leads_of(all);
const std::vector<plain::conductor_of_any> plain_conductors = plain::conductors_of(all);

// What is as short as a resistance finds what it is of by an address, however long that is.
template <class T>
std::vector<const T*> addresses_of(const std::vector<T>& many)
{
    std::vector<const T*> out;
    for (const T& one : many) out.push_back(&one);
    return out;
}
const std::vector<const cable*> lead_at = addresses_of(all);
const std::vector<const plain::lead*> plain_lead_at = addresses_of(plain_all);
const std::vector<const plain::conductor_of_any*> plain_conductor_at = addresses_of(plain_conductors);
const std::vector<contact> joints = [] {
    std::vector<contact> out;
    for (const double newtons : {60, 90, 130, 200, 300, 500, 900, 1800})
        out.push_back({.metals = {annealed_copper, mild_steel},
                       .force = in_si<force>(newtons),
                       .surface = surface_state::oxidized});
    return out;
}();
const std::vector<plain::joint> plain_joints = plain::joints_of(joints);
const std::vector<const contact*> joint_at = addresses_of(joints);
const std::vector<const plain::joint*> plain_joint_at = addresses_of(plain_joints);
const duty_cycle duty = duty_cycle::of(in_si<duration>(on), in_si<duration>(on + rest));

constexpr std::array<question, 8> questions{{
    {"resistance", [](std::size_t i) { return resistance_per_length_of(*lead_at[i], 85_degC).value(); },
     [](std::size_t i) { return plain::resistance(*plain_lead_at[i], 358.15); }, 1e-14},
    {"refusing_resistance", [](std::size_t i) { return resistance_per_length_of(*lead_at[i], 85_degC).value(); },
     [](std::size_t i) { return plain::checked_resistance(*plain_conductor_at[i], 358.15); }, 1e-14},
    {"continuous", [](std::size_t i) { return ampacity_of(all[i], {}).amps.value(); },
     [](std::size_t i) { return plain::continuous(plain_all[i]); }, 1e-12},
    {"peak",
     [](std::size_t i) {
         const load work{.current = in_si<current>(current_in(plain_all[i].area)), .duty = duty};
         return heating_of(all[i], {}, work).conductor_peak.in_kelvin() - plain::air;
     },
     [](std::size_t i) { return plain::on_off_lead(plain_all[i], on, rest).peak(current_in(plain_all[i].area)); },
     1e-8},
    {"duty", [](std::size_t i) { return ampacity_of(all[i], {}, duty).amps.value(); },
     [](std::size_t i) { return plain::on_off_lead(plain_all[i], on, rest).rated(); }, 1e-8},
    {"conductance", [](std::size_t i) { return contact_conductance_of(*joint_at[i]).typical.value(); },
     [](std::size_t i) { return plain::conductance_of(*plain_joint_at[i])[1]; }, 1e-13},
    {"hottest_spot", [](std::size_t i) { return hottest_spot_of(joints[i], 200_A, 40_degC).typical.in_kelvin(); },
     [](std::size_t i) { return plain::hottest_of(plain_joints[i], 200, 313.15)[1]; }, 1e-12},
    {"behaviour", [](std::size_t i) { return behaviour_of(joints[i], 200_A, 40_degC).loss.typical.value(); },
     [](std::size_t i) { return plain::behaviour_of(plain_joints[i], 200, 313.15).loss[1]; }, 1e-12},
}};

int check()
{
    int faults = 0;
    for (const question& q : questions)
        for (std::size_t i = 0; i < sections.size(); ++i) {
            const double ours = q.library(i), twins = q.plain(i), apart = std::fabs(ours / twins - 1);
            if (apart <= q.apart) continue;
            std::printf("%s: %.14g, its twin %.14g: %.1g apart\n", q.name.data(), ours, twins, apart);
            ++faults;
        }
    return faults == 0 ? 0 : 1;
}

// The least time of a turn over all cases [s], library, twin and what else there is by turns, so that what disturbs the
// machine hits all alike.
template <std::size_t n>
std::array<double, n> least_seconds(const std::array<std::function<double()>, n>& turns)
{
    constexpr int rounds = 400;
    std::array<double, n> least{};
    least.fill(1e9);
    volatile double sink = 0;
    for (int k = 0; k < rounds; ++k)
        for (std::size_t t = 0; t < n; ++t) {
            const auto start = std::chrono::steady_clock::now();
            sink = sink + turns[t]();
            least[t] =
                std::min(least[t], std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count());
        }
    return least;
}

// name, nanoseconds of the library, of the twin
void print_times()
{
    constexpr double nano = 1e9;
    const auto over_all = [](double (*one)(std::size_t)) {
        return [one] {
            double sum = 0;
            for (std::size_t i = 0; i < sections.size(); ++i) sum += one(i);
            return sum;
        };
    };
    for (const question& q : questions) {
        const auto least = least_seconds<2>({over_all(q.library), over_all(q.plain)});
        std::printf("%s %.1f %.1f\n", q.name.data(), nano * least[0] / sections.size(),
                    nano * least[1] / sections.size());
    }
    std::vector<cable> many;
    for (std::size_t i = 0; i < 64; ++i) many.push_back(all[i % all.size()]);
    const auto one_by_one = [&many] {
        double sum = 0;
        for (const cable& c : many) sum += ampacity_of(c, {}).amps.value();
        return sum;
    };
    const auto together = [&many] {
        double sum = 0;
        for (const current& amps : ampacities_of(many, {})) sum += amps.value();
        return sum;
    };
    const auto least = least_seconds<2>({one_by_one, together});
    std::printf("together %.1f %.1f\n", nano * least[0] / 64, nano * least[1] / 64);
}

// Processor seconds of the slower of some threads that share out ratings under a duty: as much as alone where nothing
// is shared.
double thread_seconds(std::size_t threads)
{
    constexpr std::size_t each = 4000;
    std::vector<double> used(threads);
    std::vector<std::thread> running;
    for (std::size_t t = 0; t < threads; ++t)
        running.emplace_back([&used, t] {
            timespec from{}, to{};
            clock_gettime(CLOCK_THREAD_CPUTIME_ID, &from);
            volatile double sink = 0;
            for (std::size_t i = 0; i < each; ++i)
                sink = sink + ampacity_of(all[i % all.size()], {}, duty).amps.value();
            clock_gettime(CLOCK_THREAD_CPUTIME_ID, &to);
            used[t] =
                static_cast<double>(to.tv_sec - from.tv_sec) + 1e-9 * static_cast<double>(to.tv_nsec - from.tv_nsec);
        });
    for (std::thread& t : running) t.join();
    return *std::max_element(used.begin(), used.end());
}

// threads, how many times the work of one they do in the same processor time
void print_threads()
{
    double one = 1e9, two = 1e9;
    for (int k = 0; k < 5; ++k) {
        one = std::min(one, thread_seconds(1));
        two = std::min(two, thread_seconds(2));
    }
    std::printf("2 %.2f\n", 2 * one / two);
}

}  // namespace

int main(int argc, char** argv)
{
    const std::string_view what = argc > 1 ? argv[1] : "";
    if (what == "check") return check();
    if (what == "times") return print_times(), 0;
    if (what == "threads") return print_threads(), 0;
    if (argc != 3) {
        std::fputs("counted_leads check|times|threads, or counted_leads [plain_]<what> <how many>, what of:", stderr);
        for (const question& q : questions) std::fprintf(stderr, " %s", q.name.data());
        std::fputs(" together\n", stderr);
        return 2;
    }
    const auto count = static_cast<std::size_t>(std::strtoul(argv[2], nullptr, 10));
    double sum = 0;
    if (what == "together") {  // a lead of many
        std::vector<cable> many;
        for (std::size_t i = 0; i < count; ++i) many.push_back(all[i % all.size()]);
        for (const current& amps : ampacities_of(many, {})) sum += amps.value();
        std::printf("%.14g\n", sum);
        return 0;
    }
    if (what == "copied") {  // what `together` does beside
        std::vector<cable> many;
        for (std::size_t i = 0; i < count; ++i) many.push_back(all[i % all.size()]);
        std::printf("%.14g\n", many.back().length.value());
        return 0;
    }
    const bool plain = what.starts_with("plain_");
    const std::string_view name = plain ? what.substr(6) : what;
    for (const question& q : questions) {
        if (q.name != name) continue;
        for (std::size_t i = 0; i < count; ++i) sum += (plain ? q.plain : q.library)(i % sections.size());
        std::printf("%.14g\n", sum);
        return 0;
    }
    return 2;
}
