// Lab 6, worked: crimps with strands left out, by their drop; the exponent of the rise, and what a limit of drop lets
// pass.
#include <array>

#include <weldloop/circuit/lug_behaviour.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/core/text.hpp>
#include <weldloop/law/crimp.hpp>
#include <weldloop/solve/least_squares.hpp>

#include "lab_sheet.hpp"

namespace wl = weldloop;
using namespace wl::literals;
using lab::fixed;

lab::sheet solve()
{
    const wl::conductor_size size = wl::awg(6);
    const wl::band<wl::resistance> sound = wl::crimp_resistance(size.area());
    const wl::crimp_limit limit = wl::crimp_limit_of(size.area());
    const auto microohm = [](const wl::resistance& r) { return wl::number_in(r, "uohm"); };
    constexpr std::array shares{0.0, 0.1, 0.2, 0.3, 0.4, 0.5};
    lab::heading("prediction, lugs crimped on 6 AWG");
    std::cout << "limit " << fixed(microohm(limit.resistance), 1) << " uohm (5 mV at 101 A); a sound crimp typically "
              << fixed(microohm(sound.typical), 1) << " uohm, 5 to 95 % " << fixed(microohm(sound.low), 1) << " to "
              << fixed(microohm(sound.high), 1) << " uohm\n";
    lab::row({"strands left out", "factor", "typical [uohm]", "drop at 50 A [mV]"}, 18, 19);
    lab::points law, crowding, dots, fitted;
    for (const double s : shares) {
        const double factor = wl::underfilled_factor(s), typical = factor * microohm(sound.typical);
        lab::row({fixed(100.0 * s, 0) + " %", fixed(factor, 3), fixed(typical, 1), fixed(0.05 * typical, 2)}, 18, 19);
        law.emplace_back(100.0 * s, typical);
        crowding.emplace_back(100.0 * s, microohm(sound.typical) / (1.0 - s));
    }
    lab::heading("by hand");
    const double cube = lab::step("0.7 x 0.7 x 0.7", 0.7 * 0.7 * 0.7, 3);
    lab::by_hand("factor with 30 % left out", 1.0 / cube, wl::underfilled_factor(0.3), 3, 0.001);

    // this synthetic press has a sound crimp of 21 uohm, an exponent of 2.4 and 8 % scatter from crimp to crimp
    lab::synthetic world(606);
    constexpr double truth = 21.0, exponent = 2.4, scatter = 0.08, digit_uv = 1.0, amps = 50.0;
    lab::heading("data sheet (SYNTHETIC, seed 606): three crimps each, drop at 50 A [uV]");
    lab::row({"strands left out", "first", "second", "third"}, 18);
    std::vector<wl::solve::line_reading> lines;
    std::vector<std::vector<std::string>> rows;
    for (const double s : shares) {
        std::vector<std::string> cells{fixed(100.0 * s, 0) + " %"};
        for (int i = 0; i < 3; ++i) {
            const double ohms = truth * std::pow(1.0 - s, -exponent) * std::exp(scatter * world.normal());
            const double read = world.reading(amps * ohms, 2.0, digit_uv);
            cells.push_back(fixed(read, 0));
            lines.push_back({{1.0, -std::log1p(-s), 0.0}, std::log(read / amps)});
            rows.push_back({fixed(100.0 * s, 0), fixed(read / amps, 2)});
            dots.emplace_back(100.0 * s, read / amps);
        }
        lab::row(cells, 18);
    }
    const auto line = wl::solve::fit_line(lines, 2);
    if (!line) throw std::runtime_error("no line through these readings");
    const double full = std::exp(line->a[0]), p = line->a[1];
    std::cout << "fit of R = R0/(1 - s)^p: R0 " << fixed(full, 1) << " uohm, standard error "
              << fixed(full * line->error[0], 1) << "; p " << fixed(p, 2) << ", standard error "
              << fixed(line->error[1], 2) << "; spread of ln R " << fixed(line->spread, 3) << '\n'
              << "from p = 1 (crowding alone) " << fixed((p - 1.0) / line->error[1], 0)
              << " standard errors, from p = 3 (the judged rule) " << fixed((3.0 - p) / line->error[1], 0) << '\n';

    std::cout << "put in: R0 " << fixed(truth, 0) << " uohm, p " << fixed(exponent, 1) << ", spread "
              << fixed(scatter, 2) << '\n';

    lab::heading("uncertainty budget of one crimp");
    lab::budget("resistance [uohm]", 2,
                {{"drop at 50 A [uV]", 1050.0, 2.3},
                 {"thermal voltage left [uV]", 0.0, 3.0},
                 {"current [A]", 50.0, 0.15},
                 {"cable between the probes [mm]", 4.0, 1.0}},
                [](const std::vector<double>& x) { return (x[0] - x[1]) / x[2] - 1.35 * (x[3] - 4.0); });

    lab::heading("answers");
    const double hidden = 1.0 - std::pow(full / microohm(limit.resistance), 1.0 / p);
    std::cout << "with this press the limit of drop is met up to " << fixed(100.0 * hidden, 0) << " % left out\n";
    for (const double s : {0.0, 0.3, 0.4}) {
        const wl::voltage drop = amps * 1_A * (truth * std::pow(1.0 - s, -exponent) * 1_uohm);
        std::cout << fixed(100.0 * s, 0) << " % left out: "
                  << (wl::crimp_acceptance_of(size, drop, amps * 1_A).within_limit ? "within" : "beyond")
                  << " the limit\n";
    }
    std::cout << "a sound crimp makes " << fixed(truth * 1e-6 * 101.0 * 101.0, 2)
              << " W at 101 A, one with half its strands "
              << fixed(truth * std::pow(0.5, -exponent) * 1e-6 * 101.0 * 101.0, 2) << " W\n";

    for (const double s : shares) fitted.emplace_back(100.0 * s, full * std::pow(1.0 - s, -p));
    lab::picture picture("Resistance of a crimp by strands left out", {"strands left out [%]", 0, 55},
                         {"resistance [uohm]", 0, 180}, 5);
    picture.curve(law, 0, "prediction, (1 - s)^-3, judgement");
    picture.curve(fitted, 1, "fitted to the readings");
    picture.curve(crowding, 2, "crowding of the current alone, (1 - s)^-1");
    picture.level(microohm(limit.resistance), "limit of the published table");
    picture.dots(dots, "synthetic readings");
    return {picture.finished(), lab::table("06_crimp_and_strands", "left_out_percent,resistance_uohm", rows)};
}

int main(int count, char** words)
{
    return lab::run(count, words, solve);
}
