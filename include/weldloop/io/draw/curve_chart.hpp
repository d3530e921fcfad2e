#pragma once
/// @file
/// A chart of curves over time.

#include <cmath>
#include <cstddef>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include <weldloop/core/number_text.hpp>
#include <weldloop/io/draw/drawing_style.hpp>
#include <weldloop/io/draw/label_column.hpp>
#include <weldloop/io/draw/svg.hpp>

namespace weldloop::detail {

/// Two scales with round steps and their grid.
class curve_chart {
public:
    static constexpr double width = 880, height = 300, left = 62, right = 690, top = 26, bottom = 248;

    curve_chart(double x_most, double y_least, double y_most, std::string_view x_words, std::string_view y_words,
                std::string_view title, std::string_view description)
        : x_{0.0, x_most, left, right}, y_{y_least, y_most, bottom, top}, drawing_(width, height, title, description)
    {
        const double y_step = round_step(y_most - y_least, 6);
        for (double k = std::ceil(y_least / y_step - 1e-9); k * y_step <= y_most + 1e-9 * y_step; k += 1.0) {
            const double y = y_.at(k * y_step);
            drawing_.line({left, y}, {right, y}, "grid");
            drawing_.text({left - 8, y + 4}, number_text(k * y_step, 6), "end small soft");
        }
        const double x_step = round_step(x_most, 8);
        for (double k = 0.0; k * x_step <= x_most + 1e-9 * x_step; k += 1.0) {
            const double x = x_.at(k * x_step);
            drawing_.line({x, bottom}, {x, bottom + 5}, "axis");
            drawing_.text({x, bottom + 19}, number_text(k * x_step, 6), "middle small soft");
        }
        drawing_.line({left, bottom}, {right, bottom}, "axis");
        drawing_.text({0.5 * (left + right), bottom + 38}, x_words, "middle small soft");
        drawing_.text({left - 48, top - 11}, y_words, "small soft");
    }

    [[nodiscard]] svg_drawing& drawing() { return drawing_; }
    [[nodiscard]] drawing_point at(double x, double y) const { return {x_.at(x), y_.at(y)}; }

    /// The class of the curve of a number.
    [[nodiscard]] static std::string style(std::size_t number) { return "curve" + std::to_string(number % 4); }

    /// A curve through points, in the style of its number.
    void curve(const std::vector<std::pair<double, double>>& points, std::size_t number)
    {
        drawing_path path;
        for (std::size_t i = 0; i < points.size(); ++i) {
            const drawing_point p = at(points[i].first, points[i].second);
            if (i == 0)
                path.to(p);
            else
                path.line(p);
        }
        drawing_.path(path.d(), style(number));
    }

    /// Words at the right end of the chart behind a piece of line of a class, moved so that they do not cover each
    /// other.
    void label(double y_value, std::string_view text, std::string_view line)
    {
        labels_.add(y_.at(y_value), text, line);
    }
    void draw_labels() { labels_.draw(drawing_); }

private:
    drawing_scale x_, y_;
    svg_drawing drawing_;
    label_column labels_{right + 8, top, bottom};
};

}  // namespace weldloop::detail
