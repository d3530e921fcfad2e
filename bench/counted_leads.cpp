// Ratings of leads and joints beside programs on plain numbers that call nothing of the library, again and again, to be
// counted by bench/count.sh: counted_leads <what> <how many>; `check` compares what both answer and fails where they
// are apart.
#include <array>
#include <cmath>
#include <cstddef>
#include <cstdio>
#include <cstdlib>
#include <span>
#include <string_view>
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
const std::vector<contact> joints = [] {
    std::vector<contact> out;
    for (const double newtons : {60, 90, 130, 200, 300, 500, 900, 1800})
        out.push_back({.metals = {annealed_copper, mild_steel},
                       .force = in_si<force>(newtons),
                       .surface = surface_state::oxidized});
    return out;
}();
const std::vector<plain::joint> plain_joints = plain::joints_of(joints);
const duty_cycle duty = duty_cycle::of(in_si<duration>(on), in_si<duration>(on + rest));

constexpr std::array<question, 7> questions{{
    {"resistance", [](std::size_t i) { return resistance_per_length_of(all[i], 85_degC).value(); },
     [](std::size_t i) { return plain::resistance(plain_all[i], 358.15); }, 1e-14},
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
    {"conductance", [](std::size_t i) { return contact_conductance_of(joints[i]).typical.value(); },
     [](std::size_t i) { return plain::conductance_of(plain_joints[i])[1]; }, 1e-13},
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

}  // namespace

int main(int argc, char** argv)
{
    const std::string_view what = argc > 1 ? argv[1] : "";
    if (what == "check") return check();
    if (argc != 3) {
        std::fputs("counted_leads check, or counted_leads [plain_]<what> <how many>, what of:", stderr);
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
