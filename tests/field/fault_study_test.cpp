// Drawn stations: how often the search names the part at fault, against the exact decision on the same draws, and
// whether its probabilities are what comes true.
//
// WELDLOOP_FAULT_STATIONS=20000 draws as many; with WELDLOOP_WRITE_ACCURACY=1 the table is written to
// docs/pages/fault_study.md. Without, a few are drawn.
#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <cstdlib>
#include <fstream>
#include <optional>
#include <random>
#include <string>
#include <utility>
#include <vector>

#include <gtest/gtest.h>

#include <weldloop/core/literals.hpp>
#include <weldloop/core/number_text.hpp>
#include <weldloop/field/diagnose_body.hpp>
#include <weldloop/field/locate_fault_body.hpp>
#include <weldloop/part/coupling.hpp>
#include <weldloop/part/electrode_holder.hpp>
#include <weldloop/part/lug.hpp>
#include <weldloop/part/welding_cable.hpp>
#include <weldloop/part/wire_gun.hpp>
#include <weldloop/part/work_clamp.hpp>

using namespace weldloop;
using namespace weldloop::literals;

namespace {

// Covered electrodes, one way out and back; and a bench for frames: wire, a lead in two pieces.
std::array<station, 2> described()
{
    station jig{.name = "gate jig",
                .job = {.process = process::smaw, .current = 180_A, .duty = duty_cycle::of(4_min, 10_min)},
                .where = {.air = 25_degC}};
    jig.path = {crimped_lug("output lug", awg(1)),
                welding_cable(awg(1), 15_m).named("electrode lead"),
                electrode_holder("holder", 300_A),
                arc{},
                work_connection{.clamp = screw_clamp(400_A), .onto = mild_steel, .name = "work clamp"},
                crimped_lug("clamp lug", awg(1)),
                welding_cable(awg(1), 15_m).named("work lead"),
                crimped_lug("return lug", awg(1))};
    station bench{.name = "frame bench",
                  .job = {.process = process::gmaw, .current = 220_A, .duty = duty_cycle::of(6_min, 10_min)},
                  .where = {.air = 30_degC}};
    bench.path = {crimped_lug("output lug", aught(1)),
                  welding_cable(aught(1), 12_m).named("feeder lead"),
                  coupling("coupling", aught(1)),
                  welding_cable(aught(1), 3_m).named("second lead"),
                  wire_gun("gun", 3_m),
                  arc{},
                  contact{.metals = {mild_steel, mild_steel}, .force = 300_N, .name = "frame on table"},
                  plate{.metal = mild_steel, .length = 1.2_m, .width = 0.8_m, .thickness = 10_mm, .name = "table"},
                  work_connection{.clamp = spring_clamp(300_A), .onto = mild_steel, .name = "work clamp"},
                  crimped_lug("clamp lug", awg(2)),
                  welding_cable(awg(2), 12_m).named("work lead"),
                  crimped_lug("return lug", awg(2))};
    return {jig, bench};
}

// A station with the stated priors: the conditions of its parts and how often each is met.
struct stated {
    station s;
    std::vector<double> rate;                         // of each part
    std::vector<double> failing;                      // share of that, about to burn or part
    std::vector<std::vector<detail::candidate>> can;  // the first: as described; the last may be failing
    std::vector<double> top;                          // ohm that a failing part begins at; empty: not yet known
    explicit stated(station of) : s(std::move(of))
    {
        const fault_rates rates;
        for (const path_part& p : s.path) {
            rate.push_back(static_cast<double>(rates.at(kind_of(p))));
            can.push_back(detail::candidate_maker(name_of(s, can.size()))(p));
            if (can.back().size() < 2) rate.back() = 0.0;
            failing.push_back(is_failing(can.size() - 1, can.back().size() - 1)
                                  ? static_cast<double>(rates.failing_at(kind_of(p)))
                                  : 0.0);
        }
    }
    [[nodiscard]] bool is_failing(std::size_t p, std::size_t c) const
    {
        return c < can[p].size() && can[p][c].is_failing;
    }
    // What a failing part takes: evenly by the logarithm from the top of its other conditions to 15 V, in one of ten
    // from there to 113 V, the most that a supply may have.
    [[nodiscard]] double failing_ohms(std::size_t p, double share) const
    {
        const double amps = s.job.current.value(), short_arc = 15.0 / amps, most = 113.0 / amps;
        return share < 0.9 ? top[p] * std::pow(short_arc / top[p], share / 0.9)
                           : short_arc * std::pow(most / short_arc, (share - 0.9) / 0.1);
    }
    // Share of a condition among the faults of a part.
    [[nodiscard]] double share(std::size_t p, std::size_t c) const
    {
        if (can[p][c].is_beyond_wear) return is_failing(p, c) ? failing[p] : 0.0;  // both are drawn as one
        double all = 0.0;
        for (const detail::candidate& k : can[p]) all += k.weight;
        return (1.0 - failing[p]) * can[p][c].weight / all;
    }
    [[nodiscard]] std::size_t drawn_fault(std::size_t p, std::mt19937& random) const
    {
        double at = std::uniform_real_distribution<double>()(random);
        std::size_t c = 1;
        for (; c + 1 < can[p].size() && at >= share(p, c); ++c) at -= share(p, c);
        return c;
    }
};

// A loop as it is found: the condition of every part, and the ohms between its probes at a warmth of its leads.
struct found_loop {
    std::vector<std::size_t> condition;
    std::vector<double> cold, warmer;  // ohms of each part, and what full warmth adds

    [[nodiscard]] double ohms(std::size_t p, double warm) const { return cold[p] + warm * warmer[p]; }
};
// The whole loop solved with its conditions and every joint at a drawn place of its band.
// @param wider how many times as far from the middle as the band says
std::optional<found_loop> solved(const stated& known, const std::vector<std::size_t>& condition, double wider,
                                 std::mt19937& random)
{
    std::normal_distribution<double> normal;
    station drawn = known.s;
    for (std::size_t p = 0; p < condition.size(); ++p)
        if (condition[p] > 0) drawn.path[p] = known.can[p][condition[p]].part;
    detail::loop_network net(drawn, checked_arc_index(drawn));
    net.set(scatter::typical);
    for (std::size_t p = 0; p < condition.size(); ++p)
        for (auto& c : net.part(p).contacts)
            c.law->set_cold(detail::loop_scatter::cold_at(c.cold, wider * normal(random)));
    const double amps = drawn.job.current.value();
    const solve::periodic_state state = solve::periodic_state_of(
        net.network(), {drawn.job.duty.on().value(), drawn.job.duty.rest().value()}, net.cold(), {nullptr, 0.05});
    if (state.what != solve::outcome::solved) return std::nullopt;
    found_loop out{condition, std::vector<double>(condition.size(), 0.0), std::vector<double>(condition.size(), 0.0)};
    for (std::size_t p = 0; p < condition.size(); ++p) {
        for (const auto& o : net.part(p).ohmics) {
            out.cold[p] += o.at_zero;
            out.warmer[p] += o.by_kelvin * state.on_mean[o.node];
        }
        for (const auto& c : net.part(p).contacts)
            out.cold[p] += c.law->alike() *
                           c.law->volts_at(detail::loop_network::bulk_rise(c, state.on_mean),
                                           detail::loop_network::gripping_rise(c, state.on_mean)) /
                           amps;
    }
    // what is failing warms nothing else here
    for (std::size_t p = 0; p < condition.size() && !known.top.empty(); ++p)
        if (known.is_failing(p, condition[p])) {
            out.cold[p] = known.failing_ohms(p, std::uniform_real_distribution<double>()(random));
            out.warmer[p] = 0.0;
        }
    return out;
}
std::vector<std::size_t> drawn_conditions(const stated& known, std::mt19937& random)
{
    std::uniform_real_distribution<double> unit;
    std::vector<std::size_t> out;
    for (std::size_t p = 0; p < known.can.size(); ++p)
        out.push_back(unit(random) < known.rate[p] ? known.drawn_fault(p, random) : 0);
    return out;
}

// Two readings in a hundred are taken wrongly: anything over so many natural logarithms either way.
constexpr double logs_either_way = 8.0;

// Half of a 95 % interval of a reading's ohms over 1.96, by the data sheets of usual meters.
double deviation(double ohms, double amps)
{
    return std::hypot(0.008 * ohms + 1e-3 / amps, ohms * (0.025 + 1.0 / amps)) / 1.96;
}

// The exact decision: Bayes' rule on the generator itself. For every part and condition many whole loops are drawn and
// solved, everything else in them as it comes; the density of a reading is their mean, the common warmth of the leads
// summed out. Nothing of the search is used but the stated priors.
class exact_decision {
public:
    exact_decision(const stated& known, std::size_t draws, std::mt19937& random) : known_(&known)
    {
        for (std::size_t p = 0; p < known.can.size(); ++p) {
            samples_.emplace_back(known.can[p].size());
            if (known.can[p].empty()) continue;
            for (std::size_t c = 0; c < known.can[p].size() && !known.can[p][c].is_beyond_wear; ++c)
                for (std::size_t k = 0; k < draws; ++k) {
                    std::vector<std::size_t> condition = drawn_conditions(known, random);
                    condition[p] = c;
                    if (const auto loop = solved(known, condition, 1.0, random))
                        samples_[p][c].push_back({loop->cold[p], loop->warmer[p]});
                }
        }
    }
    // The 95 % point of the worst condition of each part, by its draws, leads anything between cold and warm.
    [[nodiscard]] std::vector<double> tops() const
    {
        std::vector<double> out;
        for (const auto& part : samples_) {
            out.push_back(0.0);
            for (const std::vector<sample>& drawn : part) {
                std::vector<double> ohms;
                for (const sample& d : drawn) {
                    const double warm = (static_cast<double>(ohms.size()) + 0.5) / static_cast<double>(drawn.size());
                    ohms.push_back(d.cold + warm * d.warmer);
                }
                std::sort(ohms.begin(), ohms.end());
                if (!ohms.empty())
                    out.back() = std::max(
                        out.back(), ohms[static_cast<std::size_t>(0.95 * static_cast<double>(ohms.size() - 1) + 0.5)]);
            }
        }
        return out;
    }
    // Probability of each part to be at fault.
    [[nodiscard]] std::vector<double> operator()(const std::vector<double>& read, double amps) const
    {
        constexpr std::size_t warmths = 5;
        std::array<double, warmths> log_weight{};
        std::vector<std::array<double, warmths>> share(read.size());
        for (std::size_t p = 0; p < read.size(); ++p) {
            if (samples_[p].empty()) continue;
            const double wrong = 0.02 / (2.0 * logs_either_way * std::max(read[p], 1e-7));
            for (std::size_t w = 0; w < warmths; ++w) {
                const double warm = (static_cast<double>(w) + 0.5) / warmths;
                double faults = 0.0, all = 0.0;
                for (std::size_t c = 0; c < samples_[p].size(); ++c) {
                    const double prior = c == 0 ? 1.0 - known_->rate[p] : known_->rate[p] * known_->share(p, c);
                    const double density_here = known_->is_failing(p, c) ? failing_density(p, read[p], amps)
                                                                         : density(samples_[p][c], read[p], warm, amps);
                    const double here = prior * (0.98 * density_here + wrong);
                    all += here;
                    if (c > 0) faults += here;
                }
                log_weight[w] += std::log(all + 1e-300);
                share[p][w] = all > 0.0 ? faults / all : known_->rate[p];
            }
        }
        const double most = *std::max_element(log_weight.begin(), log_weight.end());
        double sum = 0.0;
        for (double& w : log_weight) sum += (w = std::exp(w - most));
        std::vector<double> out(read.size(), 0.0);
        for (std::size_t p = 0; p < read.size(); ++p)
            for (std::size_t w = 0; w < warmths; ++w) out[p] += share[p][w] * log_weight[w] / sum;
        return out;
    }

private:
    struct sample {
        double cold, warmer;
    };
    // Of a part that is failing, whose readings wander by 15 %.
    [[nodiscard]] double failing_density(std::size_t p, double read, double amps) const
    {
        constexpr int steps = 400;
        double out = 0.0;
        for (int k = 0; k < steps; ++k) {
            const double ohms = known_->failing_ohms(p, (k + 0.5) / steps),
                         spread = std::hypot(deviation(ohms, amps), 0.15 * ohms), z = (read - ohms) / spread;
            out += std::exp(-0.5 * z * z) / (2.5066282746310002 * spread);
        }
        return out / steps;
    }
    // Mean of the densities of a reading over the draws, each blurred as the usual rule for so many says.
    [[nodiscard]] static double density(const std::vector<sample>& all, double read, double warm, double amps)
    {
        double mean = 0.0, square = 0.0;
        for (const sample& s : all) {
            const double ln = std::log(s.cold + warm * s.warmer);
            mean += ln;
            square += ln * ln;
        }
        const double n = static_cast<double>(all.size());
        if (n == 0.0) return 0.0;
        const double blur = 0.9 * std::sqrt(std::max(0.0, square / n - mean * mean / (n * n))) * std::pow(n, -0.2);
        double out = 0.0;
        for (const sample& s : all) {
            const double ohms = s.cold + warm * s.warmer, spread = std::hypot(deviation(ohms, amps), blur * ohms);
            const double z = (read - ohms) / spread;
            if (std::fabs(z) < 6.0) out += std::exp(-0.5 * z * z) / (2.5066282746310002 * spread);
        }
        return out / n;
    }

    const stated* known_;
    std::vector<std::vector<std::vector<sample>>> samples_;
};

struct tally {
    int of = 0, hit = 0;
    void add(bool is_hit)
    {
        ++of;
        hit += is_hit ? 1 : 0;
    }
    [[nodiscard]] double share() const { return of > 0 ? static_cast<double>(hit) / of : 0.0; }
    [[nodiscard]] std::string text() const { return number_text(100.0 * share(), 3) + " % of " + std::to_string(of); }
};

struct study {
    tally sound, single, exact_single, clear, clear_exact, condition, cure, either_cure, loose, loose_after,
        first_of_two, both_of_two, stopped, stopped_in_vain;
    double brier = 0.0, brier_exact = 0.0, brier_rates = 0.0;
    std::array<double, 10> said{}, were{};
    std::array<int, 10> counted{};
    int loops = 0, judged = 0;
};

const suspected_part& part_of(const fault_search& f, const std::string& name)
{
    return *std::find_if(f.parts.begin(), f.parts.end(), [&](const suspected_part& p) { return p.name == name; });
}

// One loop read part by part. @param two whether two faults are put in, whatever the rates
void study_one(study& out, const stated& known, const exact_decision* exact, bool two, std::mt19937& random)
{
    std::normal_distribution<double> normal;
    std::uniform_real_distribution<double> unit;
    const std::size_t parts = known.can.size();
    const double amps = known.s.job.current.value(), wider = two ? 1.5 : 1.0;
    std::vector<std::size_t> condition = drawn_conditions(known, random);
    if (two) {
        std::fill(condition.begin(), condition.end(), 0);
        for (int k = 0; k < 2;) {
            const auto p = static_cast<std::size_t>(unit(random) * static_cast<double>(parts));
            if (known.rate[p] == 0.0 || condition[p] > 0) continue;
            condition[p] = known.drawn_fault(p, random);
            ++k;
        }
    }
    const auto loop = solved(known, condition, wider, random);
    if (!loop) return;
    const double warm = unit(random);
    std::vector<double> read(parts, 0.0);
    std::vector<observation> meter;
    for (std::size_t p = 0; p < parts; ++p) {
        if (known.can[p].empty()) continue;
        double volts = amps * loop->ohms(p, warm);
        if (known.is_failing(p, condition[p])) volts *= std::max(0.0, 1.0 + 0.15 * normal(random));
        double shown = std::max(0.0, volts + normal(random) / 1.96 * (0.008 * volts + 1e-3));
        if (unit(random) < 0.02) shown = volts * std::exp(logs_either_way * (2.0 * unit(random) - 1.0));
        const double through = amps * (1.0 + normal(random) / 1.96 * (0.025 + 1.0 / amps));
        read[p] = shown / through;
        meter.push_back(
            reading{.across = name_of(known.s, p), .volts = in_si<voltage>(shown), .current = in_si<current>(through)});
    }
    const fault_search f = locate_fault(known.s, meter);
    ++out.loops;
    const std::vector<double> by_exact = exact != nullptr ? (*exact)(read, amps) : std::vector<double>(parts, 0.0);
    std::vector<std::size_t> faults;
    for (std::size_t p = 0; p < parts; ++p)
        if (condition[p] > 0) faults.push_back(p);
    bool accused = false;
    for (std::size_t p = 0; p < parts; ++p) {
        if (known.can[p].size() < 2) continue;
        const double said = static_cast<double>(part_of(f, name_of(known.s, p)).probability);
        const double truth = condition[p] > 0 ? 1.0 : 0.0;
        out.brier += (said - truth) * (said - truth);
        out.brier_exact += (by_exact[p] - truth) * (by_exact[p] - truth);
        out.brier_rates += (known.rate[p] - truth) * (known.rate[p] - truth);
        ++out.judged;
        const auto decile = std::min<std::size_t>(9, static_cast<std::size_t>(10.0 * said));
        out.said[decile] += said;
        out.were[decile] += truth;
        ++out.counted[decile];
        accused = accused || (said > 0.5 && condition[p] == 0);
    }
    const auto is_at_fault = [&](const suspected_part& p) { return condition[place_of(known.s, p.name)] > 0; };
    if (faults.empty()) out.sound.add(!accused);
    bool any_failing = false;
    for (const std::size_t p : faults) {
        // below the softening drop of copper it has half parted, and nobody is stopped
        if (!known.is_failing(p, condition[p]) || amps * loop->ohms(p, warm) < 0.12) continue;
        any_failing = true;
        out.stopped.add(may_be_failing(part_of(f, name_of(known.s, p))));
    }
    if (!any_failing) out.stopped_in_vain.add(f.failing_part() != nullptr);
    if (two) {
        out.first_of_two.add(is_at_fault(f.parts[0]));
        out.both_of_two.add(is_at_fault(f.parts[0]) && is_at_fault(f.parts[1]));
    }
    if (faults.size() != 1) return;
    const std::size_t p = faults.front();
    const bool first = is_at_fault(f.parts.front());
    const bool exact_first =
        static_cast<std::size_t>(std::max_element(by_exact.begin(), by_exact.end()) - by_exact.begin()) == p;
    out.single.add(first);
    out.exact_single.add(exact_first);
    // far beyond the band of the part as described and the error of the meters
    static const std::array<station, 2> stations = described();
    const std::size_t which = known.s.name == stations[0].name ? 0 : 1;
    static const std::array<loop_state, 2> usual{solve_loop(stations[0]), solve_loop(stations[1])},
        poor{solve_loop(stations[0], scatter::high), solve_loop(stations[1], scatter::high)};
    const auto ohms_in = [&](const loop_state& l) {
        return (l.parts[p].drop - l.parts[p].tip_drop - l.parts[p].extension_drop).value() / amps;
    };
    const double typical = ohms_in(usual[which]), band = ohms_in(poor[which]) - typical;
    if (loop->ohms(p, warm) - typical > 3.0 * std::hypot(band, 1.96 * deviation(typical, amps))) {
        out.clear.add(first);
        out.clear_exact.add(exact_first);
    }
    const detail::candidate& is = known.can[p][condition[p]];
    const suspected_part& named = part_of(f, name_of(known.s, p));
    if (!first) return;
    out.condition.add(named.condition == is.condition.words);
    out.cure.add(named.remedy.what.starts_with(is.cure.words));
    out.either_cure.add(named.remedy.what.find(is.cure.words) != std::string::npos);
    const auto is_loose = [](const std::string& words) {
        return words.starts_with("loose") || words.starts_with("slack");
    };
    if (!std::holds_alternative<work_connection>(known.s.path[p]) || !is_loose(is.condition.words)) return;
    const auto is_called_loose = [&](const suspected_part& s) { return is_loose(s.condition); };
    out.loose.add(is_called_loose(named));
    // somebody feels for it, and is right in nine of ten
    const bool felt = unit(random) < 0.9;
    meter.push_back(tightness_observation{.part = named.name, .share = felt ? is.signs.tightness : 1.0});
    out.loose_after.add(is_called_loose(part_of(locate_fault(known.s, meter), named.name)));
}

std::string page_of(const study& s, const study& other, std::size_t draws)
{
    const auto row = [](const std::string& what, const std::string& is) { return "| " + what + " | " + is + " |\n"; };
    std::string out =
        "# The search for the part at fault, on drawn stations {#fault_study_page}\n\n"
        "Written by `tests/field/fault_study_test.cpp` (`WELDLOOP_FAULT_STATIONS`, `WELDLOOP_WRITE_ACCURACY=1`): loops "
        "of two "
        "stations with faults at the stated rates, each joint drawn from its band, the whole loop solved with them, "
        "every part read "
        "once with the errors of usual meters, two readings in a hundred taken wrongly. A part that is failing takes "
        "what the rates and ranges of such parts say and warms no other. The exact decision is Bayes' "
        "rule on the generator itself, from ";
    out += std::to_string(draws) +
           " solved loops for every part and condition; it shares no code with the search.\n\n"
           "| of " +
           std::to_string(s.loops) + " loops | result |\n|---|---|\n";
    out += row("sound: no part above one half", s.sound.text());
    out += row("one fault, its excess beyond three times the band and the meters' error: named first", s.clear.text());
    out += row("the same by the exact decision", s.clear_exact.text());
    out += row("one fault: named first", s.single.text());
    out += row("the same by the exact decision", s.exact_single.text());
    out += row("failing parts, 0.12 V and more, for which the job is stopped", s.stopped.text());
    out += row("loops without a failing part in which it is stopped for one", s.stopped_in_vain.text());
    const double judged = s.judged;
    out += row("Brier score: search, exact decision, rates alone", number_text(s.brier / judged, 3) + ", " +
                                                                       number_text(s.brier_exact / judged, 3) + ", " +
                                                                       number_text(s.brier_rates / judged, 3));
    out += row("named first: its condition right", s.condition.text());
    out += row("its first cure right", s.cure.text());
    out += row("its first or second cure right", s.either_cure.text());
    out += row("a loose work clamp called loose, by volts alone", s.loose.text());
    out += row("the same once its tightness was felt, right in nine of ten", s.loose_after.text());
    out += "\n| probability said | of cases | came true |\n|---|---|---|\n";
    for (std::size_t d = 0; d < 10; ++d)
        if (s.counted[d] > 0)
            out += "| " + number_text(100.0 * s.said[d] / s.counted[d], 3) + " % | " + std::to_string(s.counted[d]) +
                   " | " + number_text(100.0 * s.were[d] / s.counted[d], 3) + " % |\n";
    out += "\nAnother generator, of which the search knows nothing: always two faults, joints half as far again from "
           "their middle.\n\n"
           "| of " +
           std::to_string(other.loops) + " loops | result |\n|---|---|\n";
    out += row("one of the two named first", other.first_of_two.text());
    out += row("both named before all others", other.both_of_two.text());
    out += row("Brier score: search, rates alone",
               number_text(other.brier / other.judged, 3) + ", " + number_text(other.brier_rates / other.judged, 3));
    return out;
}

}  // namespace

// Four states alike of 1 to 4 ohm, each at the middle of its quarter: half of them lie below 2.5 ohm.
TEST(BandOfStates, TakesEachStateAtItsMiddle)
{
    detail::part_states four;
    four.condition = {0, 0, 0, 0};
    four.prior = {0.25, 0.25, 0.25, 0.25};
    four.ohms = {{1.0, 2.0, 3.0, 4.0}};
    const band<resistance> b = detail::band_of(four, 0, 0);
    EXPECT_DOUBLE_EQ(b.low.value(), 1.0);
    EXPECT_DOUBLE_EQ(b.typical.value(), 2.5);
    EXPECT_DOUBLE_EQ(b.high.value(), 4.0);
}

TEST(FaultStudy, DrawnStations)
{
    const char* const asked = std::getenv("WELDLOOP_FAULT_STATIONS");
    const int stations = asked != nullptr ? std::atoi(asked) : 240;
    const bool is_large = stations >= 2000;
    const std::size_t draws = is_large ? 200 : 20;
    constexpr int enough = 300;
    std::mt19937 random(2026);
    const std::array<station, 2> both = described();
    std::array<stated, 2> known{stated(both[0]), stated(both[1])};
    const std::array<exact_decision, 2> exact{exact_decision(known[0], draws, random),
                                              exact_decision(known[1], draws, random)};
    for (const std::size_t i : {0u, 1u}) known[i].top = exact[i].tops();
    study s, other;
    for (int n = 0; n < stations; ++n) {
        const auto which = static_cast<std::size_t>(n % 2);
        study_one(s, known[which], &exact[which], false, random);
        if (n % 10 < 2) study_one(other, known[which], nullptr, true, random);
    }
    const std::string page = page_of(s, other, draws);
    std::puts(page.c_str());
    EXPECT_GE(s.sound.of, stations / 5);
    EXPECT_GE(s.sound.share(), 0.9);
    EXPECT_GE(s.clear.of, stations / 20);
    EXPECT_GE(s.clear.share(), 0.97);
    EXPECT_LT(s.brier, 0.55 * s.brier_rates);
    EXPECT_GE(s.stopped.of, stations / 40);
    EXPECT_GE(s.stopped.share(), 0.9);
    EXPECT_LE(s.stopped_in_vain.share(), 0.1);
    EXPECT_GT(s.loose_after.share(), s.loose.share());
    if (!is_large) return;
    EXPECT_GE(s.single.share(), s.exact_single.share() - 0.03);
    for (std::size_t d = 0; d < 10; ++d)
        if (s.counted[d] >= enough) {
            EXPECT_NEAR(s.said[d] / s.counted[d], s.were[d] / s.counted[d], 0.08);
        }
    if (std::getenv("WELDLOOP_WRITE_ACCURACY") == nullptr) return;
    std::ofstream(std::string(WELDLOOP_INCLUDE_DIR) + "/../docs/pages/fault_study.md") << page;
}
