// Lab 2, worked: two loads of equal mean heat on one lead, their peaks, and the time constant from a cooling curve.
#include <array>

#include <weldloop/circuit/cable_heating.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/core/text.hpp>
#include <weldloop/law/equal_heating.hpp>
#include <weldloop/part/welding_cable.hpp>
#include <weldloop/rating/lead/square_root_excess.hpp>
#include <weldloop/solve/least_squares.hpp>

#include "lab_sheet.hpp"

namespace wl = weldloop;
using namespace wl::literals;
using lab::fixed;

lab::sheet solve()
{
    const wl::cable lead = wl::welding_cable(wl::square_mm(10), 6_m, wl::resistance_choice::nominal);
    const wl::surroundings room{.air = 22_degC};
    const wl::duty_cycle duty = wl::duty_cycle::of(3.6_min, 10_min);
    const wl::current pulse = 80_A, steady = wl::equal_heating_current(pulse, duty, wl::duty_cycle::continuous());
    const wl::cable_heating even = wl::heating_of(lead, room, {.current = steady});
    const wl::cable_heating swing = wl::heating_of(lead, room, {.current = pulse, .duty = duty});
    const auto rise = [&](wl::temperature t) { return wl::number_in(t - room.air, "K"); };
    const double level = rise(even.conductor_peak), peak = rise(swing.conductor_peak);
    const wl::covered_conductor metre =
        wl::covered_conductor_of({lead.metal, lead.size.area(), lead.stranding_increment},
                                 {lead.covering, lead.conductor_diameter, lead.overall_diameter});
    const double heat = wl::number_in((metre.metal + metre.covering) * 1_m, "J/K");

    lab::heading("prediction");
    std::cout << "10 mm2 alone in still air of 22 degC, conductor over the air\n";
    lab::row({"load", "mean rise [K]", "peak rise [K]"}, 26, 15);
    lab::row(
        {wl::to_text(steady, "A") + " without a break", fixed(rise(even.conductor_period_mean), 1), fixed(level, 1)},
        26, 15);
    lab::row({"80 A, 3.6 min of 10 min", fixed(rise(swing.conductor_period_mean), 1), fixed(peak, 1)}, 26, 15);

    lab::heading("by hand");
    const double ohms = lab::step("17.241 nohm m with 4 % for the lay over 10 mm2 [mohm/m]", 17.241 * 1.04 / 10.0, 4);
    const double at_36 = lab::step("at 36 degC [mohm/m]", ohms * (1.0 + 0.00393 * 16.0), 4);
    const double watts = 48.0 * 48.0 * at_36 * 1e-3;
    lab::by_hand("heat from one metre at 48 A [W/m]", watts,
                 wl::number_in(wl::steady_loss_of(lead, room, even.conductor_peak), "W/m"), 3, 0.001);
    const double copper = lab::step("copper, 10 mm2 of 3.45 J/(cm3 K) [J/K]", 34.5, 1);
    const double ring =
        lab::step("covering, ring of 4.7 to 8.7 mm [mm2]", 0.25 * std::numbers::pi * (8.7 * 8.7 - 4.7 * 4.7), 1);
    const double stored = lab::step("with 2.0 J/(cm3 K), and the copper [J/K]", copper + 2.0 * ring, 1);
    lab::by_hand("heat stored by one metre [J/K]", stored, heat, 1, 0.005);
    const double one_body =
        lab::step("time constant, stored heat by heat lost per kelvin [s]", stored * 14.0 / watts, 1);
    const double for_good = lab::step("rise if 80 A stayed on, 14.0 K/0.36 [K]", 14.0 / 0.36, 1);
    const double on = lab::step("1 - exp(-on/tau)", -std::expm1(-216.0 / one_body), 4);
    const double whole = lab::step("1 - exp(-period/tau)", -std::expm1(-600.0 / one_body), 4);
    lab::by_hand("peak rise of one body [K]", for_good * on / whole, peak, 1, 0.10);

    lab::synthetic world(202);
    constexpr double truth = 1.04, scatter_k = 0.35, digit_k = 0.1;
    constexpr int times = 101;  // 0.1 min apart
    const std::array programme{wl::heating_segment{pulse, duty.on()}, wl::heating_segment{0_A, duty.rest()}};
    const std::vector<wl::temperature> trace =
        wl::conductor_trace_of(metre, {.diameter = lead.overall_diameter, .air = room.air}, programme, times);
    lab::heading("data sheet (SYNTHETIC, seed 202): rise by the resistance method after the current is off");
    lab::row({"time after [min]", "rise [K]"}, 18, 10);
    std::vector<wl::solve::line_reading> lines;
    std::vector<std::vector<std::string>> rows;
    lab::points curve, dots;
    for (int i = 0; i < times; ++i) curve.emplace_back(0.1 * i, rise(trace[static_cast<std::size_t>(i)]));
    for (int i = 41; i < times; i += 5) {
        const double after = 0.1 * (i - 36),
                     read = world.reading(truth * curve[static_cast<std::size_t>(i)].second, scatter_k, digit_k);
        lab::row({fixed(after, 1), fixed(read, 1)}, 18, 10);
        rows.push_back({fixed(60.0 * after, 0), fixed(read, 1)});
        dots.emplace_back(after + 3.6, read);
        lines.push_back({{1.0, -after, 0.0}, std::log(read)});
    }
    const auto line = wl::solve::fit_line(lines, 2);
    if (!line) throw std::runtime_error("no line through these readings");
    const double constant = 1.0 / line->a[1];
    std::cout << "time constant " << fixed(constant, 2) << " min, standard error "
              << fixed(constant * constant * line->error[1], 2) << " min\n";

    lab::heading("uncertainty budget of the peak by one body");
    lab::budget("peak rise [K]", 1,
                {{"steady rise at 48 A [K]", truth * level, 0.35},
                 {"time constant [min]", constant, constant * constant * line->error[1]},
                 {"80 A over its setting", 1.0, 0.003},
                 {"48 A over its setting", 1.0, 0.003}},
                [](const std::vector<double>& x) {
                    const double at_once = x[0] / 0.36 * std::pow(x[2] / x[3], 2);
                    return at_once * std::expm1(-3.6 / x[1]) / std::expm1(-10.0 / x[1]);
                });

    lab::heading("answers");
    const wl::square_root_excess rule = wl::excess_of_square_root_rule(lead, room, duty);
    std::cout << "at its limit this lead would carry " << fixed(wl::number_in(rule.by_rule, "A"), 0)
              << " A by the square root, " << fixed(wl::number_in(rule.by_peak, "A"), 0) << " A by its peak;\n"
              << "by the square root it ends " << fixed(wl::number_in(rule.over_limit, "K"), 1)
              << " K over the limit\n";
    for (const double minutes : {1.0, 5.0, 10.0, 60.0}) {
        const wl::duration period = minutes * 1_min;
        const wl::cable_heating other =
            wl::heating_of(lead, room, {.current = pulse, .duty = wl::duty_cycle::of(0.36 * period, period)});
        std::cout << "the same 36 % of a period of " << fixed(minutes, 0) << " min: peak rise "
                  << fixed(rise(other.conductor_peak), 1) << " K\n";
    }

    lab::picture picture("Rise of a 10 mm2 lead over one period", {"time [min]", 0, 10},
                         {"conductor over air [K]", 0, 25}, 3);
    picture.curve(curve, 0, "80 A for 3.6 min of 10 min, prediction");
    picture.level(level, "48 A without a break, the same mean heat");
    picture.dots(dots, "synthetic readings after the current is off");
    return {picture.finished(), lab::table("02_duty_heating", "time_s,rise_K", rows)};
}

int main(int count, char** words)
{
    return lab::run(count, words, solve);
}
