// Lab 9, worked: where the volts of a loop go, read at 50 A through a copper bar, and what they leave an arc on paper.
#include <array>

#include <weldloop/circuit/loop.hpp>
#include <weldloop/circuit/operating_point.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/core/text.hpp>
#include <weldloop/law/arc_line.hpp>
#include <weldloop/law/source_line.hpp>
#include <weldloop/part/crimped_lug.hpp>
#include <weldloop/part/welding_cable.hpp>

#include "lab_sheet.hpp"

namespace wl = weldloop;
using namespace wl::literals;
using lab::fixed;

namespace {
// The loop of the lab. Its arc is on paper: the bench has a bar of copper in its place.
wl::station bench(wl::current amps, wl::surface_state seat)
{
    wl::station out{.name = "course loop",
                    .job = {.process = wl::process::smaw, .current = amps, .duty = wl::duty_cycle::of(3.5_min, 10_min)},
                    .where = {.air = 22_degC}};
    const wl::conductor_size size = wl::square_mm(50);
    out.path = {wl::welding_cable(size, 12_m).named("electrode lead"),
                wl::electrode_holder("holder", 300_A),
                wl::arc{},
                wl::work_connection{
                    .clamp = wl::spring_clamp(300_A), .onto = wl::mild_steel, .surface = seat, .name = "work clamp"},
                wl::crimped_lug("clamp lug", size),
                wl::welding_cable(size, 12_m).named("work lead")};
    out.supply = wl::supply{.kind = wl::supply_kind::drooping, .short_circuit = 240_A, .no_load = {.peak = 72_V}};
    return out;
}
}  // namespace

lab::sheet solve()
{
    constexpr double lab_amps = 50.0, arc_amps = 150.0;
    const wl::loop_state cold = wl::solve_loop(bench(lab_amps * 1_A, wl::surface_state::clean));
    const wl::loop_state warm = wl::solve_loop(bench(arc_amps * 1_A, wl::surface_state::clean));
    if (!cold.is_solved() || !warm.is_solved()) throw std::runtime_error("the loop has no settled state");
    constexpr std::array names{"electrode lead", "holder", "arc", "work clamp", "clamp lug", "work lead"};
    constexpr std::array truth{1.01, 0.9, 0.0, 1.35, 0.8, 1.02};  // of the synthetic bench, over the prediction
    const auto millivolt = [](const wl::voltage& v) { return wl::number_in(v, "mV"); };

    lab::synthetic world(909);
    lab::heading("prediction, and data sheet (SYNTHETIC, seed 909)");
    lab::row({"part", "at 50 A [mV]", "read [mV]", "read [mohm]", "at 150 A [mV]", "by the reading"}, 18, 15);
    double read_sum = 0.0, predicted_sum = 0.0, carried_sum = 0.0, leads = 0.0;
    std::vector<std::vector<std::string>> rows;
    for (std::size_t i = 0; i < names.size(); ++i) {
        if (truth[i] == 0.0) continue;
        const double expected = millivolt(cold.parts[i].drop), hot = millivolt(warm.parts[i].drop);
        const double read = world.reading(truth[i] * expected, 0.02, 0.01), carried = read * hot / expected;
        lab::row(
            {names[i], fixed(expected, 2), fixed(read, 2), fixed(read / lab_amps, 3), fixed(hot, 1), fixed(carried, 1)},
            18, 15);
        rows.push_back({names[i], fixed(lab_amps, 0), fixed(read, 2)});
        predicted_sum += hot;
        read_sum += read;
        carried_sum += carried;
        if (i == 0 || i + 1 == names.size()) leads += carried;
    }
    lab::row({"sum", fixed(millivolt(cold.total_drop), 2), fixed(read_sum, 2), fixed(read_sum / lab_amps, 3),
              fixed(predicted_sum, 1), fixed(carried_sum, 1)},
             18, 15);

    lab::heading("by hand, one lead at 50 A");
    const double cold_lead = lab::step("IEC 60228, 50 mm2: 0.386 ohm/km x 12 m [mohm]", 0.386 * 12.0, 3);
    const double at_22 = lab::step("at 22 degC [mohm]", cold_lead * (1.0 + 0.00393 * 2.0), 3);
    lab::by_hand("times 50 A, the lead's own rise left out [mV]", lab_amps * at_22, millivolt(cold.parts[0].drop), 1,
                 0.006);

    lab::heading("the arc on paper: a drooping supply of 72 V and 240 A, a covered electrode");
    const wl::operating_point sound = wl::operating_point_of(bench(arc_amps * 1_A, wl::surface_state::clean));
    const wl::operating_point rusty = wl::operating_point_of(bench(arc_amps * 1_A, wl::surface_state::heavy_rust));
    if (!sound.is_found()) throw std::runtime_error(std::string(wl::to_text(sound.outcome)));
    const auto tell = [](std::string_view what, const wl::operating_point& p) {
        std::cout << what << ": ";
        if (!p.is_found()) {
            std::cout << wl::to_text(p.outcome) << '\n';
            return;
        }
        std::cout << fixed(wl::number_in(p.current, "A"), 1) << " A, terminals "
                  << fixed(wl::number_in(p.terminals, "V"), 2) << " V, loop "
                  << fixed(wl::number_in(p.loop_drop, "V"), 2) << " V, arc "
                  << fixed(wl::number_in(p.arc_voltage, "V"), 2) << " V\n";
    };
    tell("clean clamp", sound);
    tell("clamp on heavy rust", rusty);
    const double loop_ohms = lab::step("predicted sum at 150 A over 150 A [mohm]", predicted_sum / arc_amps, 3);
    const double slopes = lab::step("72/240 + 0.04 + loop [ohm]", 72.0 / 240.0 + 0.04 + 1e-3 * loop_ohms, 4);
    lab::by_hand("(72 - 20) V over that, clean clamp [A]", 52.0 / slopes, wl::number_in(sound.current, "A"), 1, 0.001);

    lab::heading("uncertainty budget: the loop's volts at 150 A from readings at 50 A");
    lab::budget("volts lost [V]", 3,
                {{"sum of the readings [mV]", read_sum, 0.05},
                 {"current at the readings [A]", lab_amps, 0.15},
                 {"copper at 150 A, mean [degC]", 29.0, 3.0},
                 {"clamp seated anew, share of its drop", 0.0, 0.12}},
                [&](const std::vector<double>& x) {
                    return 1e-3 * arc_amps / x[1] *
                           (x[0] * (1.0 + 0.00393 * (x[2] - 22.0)) + x[3] * 1.35 * millivolt(cold.parts[3].drop));
                });

    lab::heading("answers");
    const wl::arc_line arc = wl::usual_arc_line(wl::process::smaw);
    const wl::length usual = wl::usual_arc_length(wl::process::smaw);
    const double volts_a_mm = wl::number_in(wl::voltage(arc.by_length * 1_mm), "V");
    std::cout << "the loop takes " << fixed(100.0 * carried_sum / 1e3 / wl::number_in(sound.terminals, "V"), 1)
              << " % of the volts at the terminals and makes " << fixed(carried_sum / 1e3 * arc_amps, 0)
              << " W while the arc burns; " << fixed(100.0 * leads / carried_sum, 0) << " % of it in the leads\n"
              << "a millimetre of arc is worth about " << fixed(volts_a_mm, 2) << " V (judged): the loop's volts are "
              << fixed(carried_sum / 1e3 / volts_a_mm, 1) << " mm of arc\n"
              << "at 50 A through a bar the source must hold " << fixed(read_sum / 1e3, 2) << " V\n";

    const wl::source_line line = wl::source_line::straight(72_V, 240_A);
    lab::points supply, alone, both;
    for (double a = 120.0; a <= 180.0; a += 5.0) {
        supply.emplace_back(a, wl::number_in(line.at_current(a * 1_A).voltage, "V"));
        alone.emplace_back(a, wl::number_in(wl::arc_voltage_at(arc, usual, a * 1_A), "V"));
        both.emplace_back(a, alone.back().second + 1e-3 * carried_sum * a / arc_amps);
    }
    lab::picture picture("Supply, arc and loop on paper", {"current [A]", 120, 180}, {"voltage [V]", 16, 40}, 4);
    picture.curve(supply, 3, "output line of the supply");
    picture.curve(alone, 1, "arc alone, recalled line");
    picture.curve(both, 0, "arc and loop, the loop by the synthetic readings");
    picture.dots({{wl::number_in(sound.current, "A"), wl::number_in(sound.terminals, "V")}},
                 "operating point by the library");
    return {picture.finished(), lab::table("09_loop_budget", "part,current_A,drop_mV", rows)};
}

int main(int count, char** words)
{
    return lab::run(count, words, solve);
}
