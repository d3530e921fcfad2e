#pragma once
// What the worked solutions of the course share: readings that are synthetic and say so, a budget of uncertainty, the
// check against the hand calculation of the sheet, and a picture of points and curves.
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <exception>
#include <functional>
#include <iomanip>
#include <iostream>
#include <numbers>
#include <random>
#include <span>
#include <sstream>
#include <stdexcept>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include <weldloop/io/draw/drawing_style.hpp>
#include <weldloop/io/draw/standalone_drawing.hpp>
#include <weldloop/io/draw/svg.hpp>
#include <weldloop/io/report/write_file.hpp>

namespace lab {

using points = std::vector<std::pair<double, double>>;

// A number with so many decimals.
inline std::string fixed(double value, int decimals)
{
    std::ostringstream out;
    out << std::fixed << std::setprecision(decimals) << value;
    return out.str();
}

// A line of a table: the first cell to the left, the others to the right.
inline void row(const std::vector<std::string>& cells, int first = 26, int other = 11)
{
    for (std::size_t i = 0; i < cells.size(); ++i)
        std::cout << (i == 0 ? std::left : std::right) << std::setw(i == 0 ? first : other) << cells[i];
    std::cout << '\n';
}
inline void heading(std::string_view words)
{
    std::cout << "\n== " << words << '\n';
}

// Normal deviates from a seed, by Box and Muller: the same everywhere, which std::normal_distribution need not be.
class synthetic {
public:
    explicit synthetic(std::uint64_t seed) : engine_(seed) {}
    double normal()
    {
        const double u = uniform(), v = uniform();
        return std::sqrt(-2.0 * std::log(u)) * std::cos(2.0 * std::numbers::pi * v);
    }
    // A reading: a true value with normal scatter, rounded to the last digit of the instrument.
    double reading(double truth, double scatter, double digit)
    {
        return std::round((truth + scatter * normal()) / digit) * digit;
    }

private:
    double uniform() { return (static_cast<double>(engine_() >> 11) + 0.5) * 0x1p-53; }
    std::mt19937_64 engine_;
};

// A quantity of the budget, in the unit it is printed with.
struct input {
    std::string name;
    double value;
    double standard_uncertainty;
};
struct result {
    double value = 0.0;
    double standard_uncertainty = 0.0;
};

// Prints the budget of f: what each input adds is (f(x + u) - f(x - u))/2, the sum is that of squares for inputs that
// do not depend on each other (JCGM 100, 5.1.2 and note 2 of 5.1.3).
inline result budget(std::string_view of, int decimals, const std::vector<input>& inputs,
                     const std::function<double(const std::vector<double>&)>& f)
{
    std::vector<double> x;
    for (const input& i : inputs) x.push_back(i.value);
    std::vector<double> added;
    double squares = 0.0;
    for (std::size_t i = 0; i < x.size(); ++i) {
        std::vector<double> up = x, down = x;
        up[i] += inputs[i].standard_uncertainty;
        down[i] -= inputs[i].standard_uncertainty;
        added.push_back(0.5 * (f(up) - f(down)));
        squares += added.back() * added.back();
    }
    row({"quantity", "value", "u", "adds", "share"}, 34);
    for (std::size_t i = 0; i < x.size(); ++i)
        row({inputs[i].name, weldloop::number_text(x[i], 4), weldloop::number_text(inputs[i].standard_uncertainty, 2),
             fixed(added[i], decimals), fixed(100.0 * added[i] * added[i] / squares, 0) + " %"},
            34);
    const result out{f(x), std::sqrt(squares)};
    std::cout << of << ": " << fixed(out.value, decimals) << ", u " << fixed(out.standard_uncertainty, decimals)
              << ", U (k = 2) " << fixed(2.0 * out.standard_uncertainty, decimals) << '\n';
    return out;
}

// A step of the hand calculation, printed as the sheet quotes it.
inline double step(std::string_view what, double value, int decimals)
{
    std::cout << "  " << what << " = " << fixed(value, decimals) << '\n';
    return value;
}

// Holds the library against a figure worked out by hand, from the steps before it. `allowed` is a share.
inline void by_hand(std::string_view what, double hand, double library, int decimals, double allowed)
{
    const double apart = std::fabs(library / hand - 1.0);
    std::cout << what << ": by hand " << fixed(hand, decimals) << ", by the library " << fixed(library, decimals)
              << "; " << fixed(100.0 * apart, 2) << " % apart, " << weldloop::number_text(100.0 * allowed, 2)
              << " % allowed\n";
    if (!(apart <= allowed)) throw std::runtime_error(std::string(what) + ": hand and library disagree");
}

// A scale; one across without a label has no ticks.
struct axis {
    std::string label;
    double least, most;
    bool logarithmic = false;
};

// Points and curves over two scales, with words for each below.
class picture {
public:
    picture(std::string_view title, axis x, axis y, std::size_t keys)
        : x_(std::move(x)), y_(std::move(y)),
          drawing_(right + 30.0, bottom + 60.0 + 18.0 * static_cast<double>(keys), title, title)
    {
        for (const double v : ticks(y_)) {
            drawing_.line({left, at_y(v)}, {right, at_y(v)}, "grid");
            drawing_.text({left - 8.0, at_y(v) + 4.0}, weldloop::number_text(v, 6), "end small soft");
        }
        for (const double v : x_.label.empty() ? std::vector<double>{} : ticks(x_)) {
            drawing_.line({at_x(v), bottom}, {at_x(v), bottom + 5.0}, "axis");
            drawing_.text({at_x(v), bottom + 19.0}, weldloop::number_text(v, 6), "middle small soft");
        }
        drawing_.line({left, bottom}, {right, bottom}, "axis");
        drawing_.text({0.5 * (left + right), bottom + 38.0}, x_.label, "middle small soft");
        drawing_.text({4.0, top - 12.0}, y_.label, "small soft");
    }

    // A curve in the style of its number, 0 to 3.
    void curve(const points& p, std::size_t style, std::string_view words)
    {
        const std::string name = "curve" + std::to_string(style % 4);
        drawing_.path(path_of(p).d(), name);
        key(words, name);
    }
    // The area between two curves, from left to right along the first and back along the second.
    void between(const points& low, const points& high, std::string_view words)
    {
        weldloop::drawing_path path = path_of(low);
        for (auto p = high.rbegin(); p != high.rend(); ++p) path.line(at(*p));
        drawing_.path(path.close().d(), "band");
        const double y = key_line(words);
        drawing_.rectangle({{left, y - 9.0}, 30.0, 9.0}, "band");
    }
    void dots(const points& p, std::string_view words)
    {
        for (const auto& one : p) drawing_.circle(at(one), 3.6, "dot");
        if (words.empty()) return;
        const double y = key_line(words);
        drawing_.circle({left + 15.0, y - 4.0}, 3.6, "dot");
    }
    // A bar from one value to another, and words beside the upper end.
    void whisker(double x, double low, double high)
    {
        drawing_.line({at_x(x), at_y(low)}, {at_x(x), at_y(high)}, "whisker");
    }
    void note(double x, double y, std::string_view words) { drawing_.text(at({x, y}), words, "small halo middle"); }
    // A dashed level.
    void level(double y, std::string_view words)
    {
        drawing_.line({left, at_y(y)}, {right, at_y(y)}, "limit");
        key(words, "limit");
    }
    [[nodiscard]] std::string finished() const { return weldloop::standalone_drawing(drawing_.finished()); }

private:
    // narrow enough for a telephone
    static constexpr double left = 56.0, right = 430.0, top = 34.0, bottom = 290.0;

    static double on(const axis& a, double v)
    {
        if (a.logarithmic) return std::log(v / a.least) / std::log(a.most / a.least);
        return (v - a.least) / (a.most - a.least);
    }
    [[nodiscard]] double at_x(double v) const { return left + (right - left) * on(x_, v); }
    [[nodiscard]] double at_y(double v) const { return bottom - (bottom - top) * on(y_, v); }
    [[nodiscard]] weldloop::drawing_point at(const std::pair<double, double>& p) const
    {
        return {at_x(p.first), at_y(p.second)};
    }
    [[nodiscard]] weldloop::drawing_path path_of(const points& p) const
    {
        weldloop::drawing_path path;
        for (std::size_t i = 0; i < p.size(); ++i) i == 0 ? path.to(at(p[i])) : path.line(at(p[i]));
        return path;
    }
    static std::vector<double> ticks(const axis& a)
    {
        std::vector<double> out;
        constexpr double rounding = 1e-9;
        if (a.logarithmic) {
            for (double decade = std::floor(std::log10(a.least)); decade <= std::log10(a.most); decade += 1.0)
                for (const double m : {1.0, 2.0, 5.0}) {
                    const double v = m * std::pow(10.0, decade);
                    if (v >= a.least * (1.0 - rounding) && v <= a.most * (1.0 + rounding)) out.push_back(v);
                }
            return out;
        }
        const double step = weldloop::round_step(a.most - a.least, 8);
        for (double k = std::ceil(a.least / step - rounding); k * step <= a.most + rounding * step; k += 1.0)
            out.push_back(k * step);
        return out;
    }
    double key_line(std::string_view words)
    {
        const double y = bottom + 62.0 + 18.0 * static_cast<double>(keys_++);
        drawing_.text({left + 38.0, y}, words, "small");
        return y;
    }
    void key(std::string_view words, std::string_view line)
    {
        if (words.empty()) return;
        const double y = key_line(words);
        drawing_.line({left, y - 4.0}, {left + 30.0, y - 4.0}, line);
    }

    axis x_, y_;
    weldloop::svg_drawing drawing_;
    std::size_t keys_ = 0;
};

// What a solution makes beside its words.
struct sheet {
    std::string drawing;        // SVG
    std::string readings = {};  // CSV for the program of fits; empty where a sheet has none
};

// A table of readings for fit_sheet.
inline std::string table(std::string_view made_by, std::string_view columns,
                         const std::vector<std::vector<std::string>>& rows)
{
    std::string out = "# SYNTHETIC readings, made by " + std::string(made_by) + " from a seed; nothing was measured\n";
    out.append(columns).append("\n");
    for (const auto& cells : rows)
        for (std::size_t i = 0; i < cells.size(); ++i) out.append(cells[i]).append(i + 1 < cells.size() ? "," : "\n");
    return out;
}

// Runs a solution: NAME [PICTURE.svg [READINGS.csv]].
inline int run(int count, char** words, sheet (*solution)())
{
    try {
        const std::span<char*> given(words, static_cast<std::size_t>(count));
        const sheet made = solution();
        if (given.size() > 1) weldloop::write_file(given[1], made.drawing);
        if (given.size() > 2 && !made.readings.empty()) weldloop::write_file(given[2], made.readings);
        return 0;
    } catch (const std::exception& e) {
        std::cerr << e.what() << '\n';
        return 1;
    }
}

}  // namespace lab
