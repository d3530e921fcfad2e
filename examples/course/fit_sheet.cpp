// Fits a class's own sheet: a table of readings in, the parameters with their scatter out. The columns say which law.
// What the readings cannot tell is not given, and why is said.
//
//     fit_sheet READINGS.csv
//
// Status 0: something is told; 1: the table is refused; 2: wrong call; 3: nothing can be told.
#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <exception>
#include <fstream>
#include <iostream>
#include <iterator>
#include <limits>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include <weldloop/core/error.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/core/number_text.hpp>
#include <weldloop/law/reading_fit.hpp>
#include <weldloop/solve/least_squares.hpp>

#include "sheet_table.hpp"

namespace wl = weldloop;
using namespace wl::literals;

namespace {

constexpr double any = std::numeric_limits<double>::max();
using line_readings = std::vector<wl::solve::line_reading>;

// Says a number with its standard error, or why there is none.
bool tell(std::string_view what, const wl::fitted_number& n, std::string_view unit = "")
{
    std::cout << what << ": ";
    if (n.value)
        std::cout << wl::number_text(*n.value, 4) << ", standard error " << wl::number_text(n.standard_error, 2)
                  << (unit.empty() ? "" : " ") << unit << '\n';
    else
        std::cout << "not given, " << wl::to_text(n.gap) << '\n';
    return n.value.has_value();
}
// A number of a line; below twice its standard error it is scatter, as in fit_judgement.
wl::fitted_number told(const std::optional<wl::solve::fitted_line>& line, std::size_t which)
{
    constexpr double least = 2.0;
    if (!line) return {};
    const double value = line->a[which], error = line->error[which];
    if (std::fabs(value) < least * error) return {{}, 0.0, wl::fit_gap::scatter_hides_it};
    return {value, error, wl::fit_gap::none};
}
void tell_spread(const std::optional<wl::solve::fitted_line>& line, std::string_view what, std::string_view unit = "")
{
    if (line)
        std::cout << what << ": " << wl::number_text(line->spread, 2) << (unit.empty() ? "" : " ") << unit << '\n';
}
bool spans_factor(const std::vector<double>& x, double factor)
{
    const auto [low, high] = std::minmax_element(x.begin(), x.end());
    return *high >= factor * *low * (1.0 - 1e-9);
}

// Drop by current: V = V0 + R I, and no resistance where the readings bend.
bool drop_by_current(const lab::readings& t)
{
    line_readings straight, bent;
    std::vector<double> sizes;
    for (std::size_t i = 0; i < t.rows.size(); ++i) {
        const double a = lab::number_in(t, i, 0, -1e4, 1e4), v = lab::number_in(t, i, 1, -1e6, 1e6);
        straight.push_back({{1.0, a, 0.0}, v});
        bent.push_back({{1.0, a, a * a * a}, v});
        sizes.push_back(std::fabs(a));
    }
    if (!spans_factor(sizes, 2.0)) return tell("resistance", {{}, 0.0, wl::fit_gap::too_close});
    constexpr double surely = 4.0;  // standard errors: a class has many sheets, and one in twenty is beyond two
    const auto cubic = wl::solve::fit_line(bent, 3);
    if (cubic && std::fabs(cubic->a[2]) > surely * cubic->error[2]) {
        std::cout << "the drop bends (" << wl::number_text(std::fabs(cubic->a[2]) / cubic->error[2], 2)
                  << " standard errors): no resistance belongs to these readings; take those at small currents\n";
        return false;
    }
    const auto line = wl::solve::fit_line(straight, 2);
    const bool some = tell("resistance", told(line, 1), "mohm");
    tell("drop without current", told(line, 0), "mV");
    tell_spread(line, "scatter of the drop", "mV");
    return some;
}

// Rise by time after the current is off: ln(rise) = ln(rise at first) - t/tau.
bool cooling(const lab::readings& t)
{
    line_readings lines;
    std::vector<double> rises;
    for (std::size_t i = 0; i < t.rows.size(); ++i) {
        const double time = lab::number_in(t, i, 0, -1e-9, 1e7);
        rises.push_back(lab::number_in(t, i, 1, 0.0, 1e4));
        lines.push_back({{1.0, -time, 0.0}, std::log(rises.back())});
    }
    if (!spans_factor(rises, 1.5)) return tell("time constant", {{}, 0.0, wl::fit_gap::too_close});
    const auto line = wl::solve::fit_line(lines, 2);
    wl::fitted_number rate = told(line, 1), first = told(line, 0);
    if (rate.value && *rate.value < 0.0)
        throw wl::no_solution_error("time constant", "a rise that grows with time", "readings of something that cools");
    if (rate.value) {
        const double tau = 1.0 / *rate.value;
        rate = {tau, tau * tau * rate.standard_error, wl::fit_gap::none};
    }
    if (first.value) {
        const double rise = std::exp(*first.value);
        first = {rise, rise * first.standard_error, wl::fit_gap::none};
    }
    const bool some = tell("time constant", rate, "s");
    tell("rise at no time", first, "K");
    tell_spread(line, "scatter of ln(rise)");
    return some;
}

bool force_law(const lab::readings& t)
{
    const bool with_meter = t.rows.front().size() > 2;
    std::vector<wl::contact_reading> readings;
    for (std::size_t i = 0; i < t.rows.size(); ++i)
        readings.push_back({lab::number_in(t, i, 0, 0.0, 1e6) * 1_N, lab::number_in(t, i, 1, 0.0, 1e12) * 1_uohm,
                            with_meter ? lab::number_in(t, i, 2, -1e-9, 1.0) : 0.0});
    const wl::force_law_fit fit = wl::fit_force_law(readings);
    tell("exponent m", fit.exponent);
    const bool some = tell("constant K, with m " + wl::number_text(fit.exponent_used, 3), fit.constant, "uohm kgf^m");
    tell("spread of ln R of the surface", fit.spread);
    return some;
}

// Median and spread of ln R of each surface: geometric mean, as of a log-normal.
bool by_surface(const lab::readings& t)
{
    std::map<std::string, line_readings> groups;
    for (std::size_t i = 0; i < t.rows.size(); ++i)
        groups[t.rows[i][0]].push_back({{1.0, 0.0, 0.0}, std::log(lab::number_in(t, i, 1, 0.0, 1e12))});
    constexpr std::size_t least = 4;  // readings for a spread, as in fit_judgement
    bool some = false;
    for (const auto& [surface, lines] : groups) {
        const auto line = lines.size() < least ? std::nullopt : wl::solve::fit_line(lines, 1);
        std::cout << surface << " (" << lines.size() << "): ";
        if (!line) {
            std::cout << "not given, " << wl::to_text(wl::fit_gap::too_few) << '\n';
            continue;
        }
        some = true;
        std::cout << "median " << wl::number_text(std::exp(line->a[0]), 3) << " uohm, standard error "
                  << wl::number_text(100.0 * line->error[0], 2) << " %; spread of ln R "
                  << wl::number_text(line->spread, 2) << ", standard error "
                  << wl::number_text(line->spread / std::sqrt(2.0 * static_cast<double>(lines.size() - 1)), 1) << '\n';
    }
    return some;
}

// Strands left out: R = R0/(1 - s)^p.
bool strands(const lab::readings& t)
{
    line_readings lines;
    std::vector<double> left;
    for (std::size_t i = 0; i < t.rows.size(); ++i) {
        left.push_back(1.0 - 0.01 * lab::number_in(t, i, 0, -1e-9, 99.0));
        lines.push_back({{1.0, -std::log(left.back()), 0.0}, std::log(lab::number_in(t, i, 1, 0.0, 1e12))});
    }
    if (!spans_factor(left, 1.25)) return tell("exponent p", {{}, 0.0, wl::fit_gap::too_close});
    const auto line = wl::solve::fit_line(lines, 2);
    const bool some = tell("exponent p", told(line, 1));
    if (line)
        tell("full barrel R0", {std::exp(line->a[0]), std::exp(line->a[0]) * line->error[0], wl::fit_gap::none},
             "uohm");
    tell_spread(line, "scatter of ln R");
    return some;
}

bool relaxation(const lab::readings& t)
{
    std::vector<wl::relaxation_reading> readings;
    for (std::size_t i = 0; i < t.rows.size(); ++i)
        readings.push_back({lab::number_in(t, i, 0, 0.0, 1.0),
                            wl::temperature::celsius(lab::number_in(t, i, 1, -100.0, 500.0)),
                            lab::number_in(t, i, 2, 0.0, 1e7) * 1_h, 0.01 * lab::number_in(t, i, 3, 0.0, 100.0)});
    const wl::relaxation_reading_fit fit = wl::fit_relaxation(readings);
    const bool some = tell("r0, at 0.7 of strength, 20 degC and 1000 h", fit.reference_exponent);
    tell("stress slope b", fit.stress_slope);
    tell("parameter slope c", fit.parameter_slope, "1/K");
    tell("spread of ln r", fit.spread);
    return some;
}

// A joint by its temperature: R = R20 (1 + a (T - 20)).
bool by_temperature(const lab::readings& t)
{
    line_readings lines;
    double least = any, most = -any;
    for (std::size_t i = 0; i < t.rows.size(); ++i) {
        const double celsius = lab::number_in(t, i, 0, -100.0, 1000.0);
        least = std::min(least, celsius);
        most = std::max(most, celsius);
        lines.push_back({{1.0, celsius - 20.0, 0.0}, lab::number_in(t, i, 1, 0.0, 1e12)});
    }
    constexpr double least_span = 20.0;  // K
    if (most - least < least_span) return tell("coefficient", {{}, 0.0, wl::fit_gap::too_close});
    const auto line = wl::solve::fit_line(lines, 2);
    wl::fitted_number slope = told(line, 1);
    const bool some = tell("resistance at 20 degC", told(line, 0), "uohm");
    if (slope.value) slope = {1e3 * *slope.value / line->a[0], 1e3 * slope.standard_error / line->a[0], slope.gap};
    tell("coefficient", slope, "in 1000 per K");
    tell_spread(line, "scatter of the resistance", "uohm");
    return some;
}

// A loop read part by part: each part's resistance, its mean and scatter where it was read more than once.
bool by_part(const lab::readings& t)
{
    std::map<std::string, line_readings> parts;
    for (std::size_t i = 0; i < t.rows.size(); ++i)
        parts[t.rows[i][0]].push_back(
            {{1.0, 0.0, 0.0}, lab::number_in(t, i, 2, -1e-9, 1e6) / lab::number_in(t, i, 1, 0.0, 1e4)});
    for (const auto& [part, lines] : parts) {
        const auto line = wl::solve::fit_line(lines, 1);
        std::cout << part << " (" << lines.size() << "): " << wl::number_text(line ? line->a[0] : lines.front().y, 4)
                  << " mohm, "
                  << (line ? "standard error " + wl::number_text(line->error[0], 2) + " mohm"
                           : "read once: its scatter is not known")
                  << '\n';
    }
    return true;
}

struct law {
    std::string_view columns;
    bool (*fit)(const lab::readings&);
};
constexpr std::array laws{law{"current_A,drop_mV", drop_by_current},
                          law{"time_s,rise_K", cooling},
                          law{"force_N,resistance_uohm", force_law},
                          law{"force_N,resistance_uohm,meter_share", force_law},
                          law{"surface,resistance_uohm", by_surface},
                          law{"left_out_percent,resistance_uohm", strands},
                          law{"stress_share,oven_degC,time_h,lost_percent", relaxation},
                          law{"temperature_degC,resistance_uohm", by_temperature},
                          law{"part,current_A,drop_mV", by_part}};

}  // namespace

int main(int count, char** words)
try {
    if (count != 2) {
        std::cerr << "fit_sheet READINGS.csv, with the columns\n";
        for (const law& l : laws) std::cerr << "  " << l.columns << '\n';
        return 2;
    }
    std::ifstream in(words[1], std::ios::binary);
    if (!in) throw wl::missing_data_error("file", words[1], "a file that can be read");
    const lab::readings table = lab::readings_of({std::istreambuf_iterator<char>(in), {}});
    for (const law& l : laws) {
        if (l.columns != table.columns) continue;
        std::cout << table.rows.size() << " readings of " << l.columns << '\n';
        return l.fit(table) ? 0 : 3;
    }
    std::string all;
    for (const law& l : laws) all.append(all.empty() ? "" : "; ").append(l.columns);
    throw wl::missing_data_error("columns", table.columns, all);
} catch (const std::exception& e) {
    std::cerr << e.what() << '\n';
    return 1;
}
