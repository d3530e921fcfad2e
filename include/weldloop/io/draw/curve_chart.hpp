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
#include <weldloop/io/draw/svg.hpp>

namespace weldloop::detail {

/// Where a chart of curves is drawn. Words of curves stand below.
struct curve_frame {
    double width = 880, left = 62, right = 690, top = 26, bottom = 248;  ///< drawing units
    double foot = 52;                                                    ///< below the axis
};
/// For a telephone as for a desk: the words of up to some curves stand below. @param keys how many
[[nodiscard]] constexpr curve_frame narrow_frame(std::size_t keys)
{
    constexpr double a_key = 18.0;
    return {440, 52, 428, 26, 236, 56 + a_key * static_cast<double>(keys)};
}

/// What a chart of curves says of itself.
struct curve_words {
    std::string_view x, y, title, description;
};

/// Two scales with round steps and their grid.
class curve_chart {
public:
    curve_chart(double x_most, double y_least, double y_most, const curve_words& words, const curve_frame& frame)
        : frame_(frame), x_{0.0, x_most, frame.left, frame.right}, y_{y_least, y_most, frame.bottom, frame.top},
          drawing_(frame.width, frame.bottom + frame.foot, words.title, words.description)
    {
        const double left = frame.left, right = frame.right, top = frame.top, bottom = frame.bottom;
        const double y_step = round_step(y_most - y_least, 6);
        for (double k = std::ceil(y_least / y_step - 1e-9); k * y_step <= y_most + 1e-9 * y_step; k += 1.0) {
            const double y = y_.at(k * y_step);
            drawing_.line({left, y}, {right, y}, "grid");
            drawing_.text({left - 8, y + 4}, number_text(k * y_step, 6), "end small soft tick");
        }
        const double x_step = round_step(x_most, 8);
        for (double k = 0.0; k * x_step <= x_most + 1e-9 * x_step; k += 1.0) {
            const double x = x_.at(k * x_step);
            drawing_.line({x, bottom}, {x, bottom + 5}, "axis");
            drawing_.text({x, bottom + 19}, number_text(k * x_step, 6), "middle small soft tick");
        }
        drawing_.line({left, bottom}, {right, bottom}, "axis");
        drawing_.text({0.5 * (left + right), bottom + 38}, words.x, "middle small soft");
        drawing_.text({left - 40, top - 11}, words.y, "small soft");
    }

    [[nodiscard]] svg_drawing& drawing() { return drawing_; }
    [[nodiscard]] const curve_frame& frame() const { return frame_; }
    [[nodiscard]] drawing_point at(double x, double y) const { return {x_.at(x), y_.at(y)}; }

    /// Curves that can be told apart.
    static constexpr std::size_t styles = 8;
    /// The class of the curve of a number.
    [[nodiscard]] static std::string style(std::size_t number) { return "curve" + std::to_string(number % styles); }

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

    /// Words below the chart behind a piece of line of a class, one under the other.
    void key(std::string_view text, std::string_view line)
    {
        constexpr double a_key = 18.0;
        const double y = frame_.bottom + 58 + a_key * static_cast<double>(keys_++);
        drawing_.line({frame_.left, y - 4}, {frame_.left + 30, y - 4}, line);
        drawing_.text({frame_.left + 38, y}, text, "small");
    }

private:
    curve_frame frame_;
    drawing_scale x_, y_;
    svg_drawing drawing_;
    std::size_t keys_ = 0;
};

}  // namespace weldloop::detail
