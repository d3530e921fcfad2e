#pragma once
/// @file
/// A chart of one row for each part: number and name on the left, a bar with its whisker, the value in words on the
/// right.

#include <cmath>
#include <cstddef>
#include <string>
#include <string_view>

#include <weldloop/core/number_text.hpp>
#include <weldloop/io/draw/drawing_style.hpp>
#include <weldloop/io/draw/svg.hpp>
#include <weldloop/io/report/escape.hpp>
#include <weldloop/rating/verdict.hpp>

namespace weldloop::detail {

/// Rows from top to bottom over a scale with round steps.
class row_chart {
public:
    static constexpr double width = 880, bars_from = 214, bars_to = 668, words_from = 682;
    static constexpr double first_row = 30, bar_height = 13, foot = 44;

    /// @param rows how many @param least value at the left @param most value at the right @param axis what is measured,
    /// in words @param row_height of each
    row_chart(std::size_t rows, double least, double most, std::string_view axis, std::string_view title,
              std::string_view description, double row_height = 25.0)
        : scale_{least, most, bars_from, bars_to}, row_height_(row_height),
          bottom_(first_row + row_height * static_cast<double>(rows)),
          drawing_(width, bottom_ + foot, title, description)
    {
        const double step = round_step(most - least, 8);
        for (double k = std::ceil(least / step - 1e-9); k * step <= most + 1e-9 * step; k += 1.0) {
            const double x = scale_.at(k * step);
            drawing_.line({x, first_row - 6}, {x, bottom_}, "grid");
            drawing_.text({x, bottom_ + 17}, number_text(k * step, 6), "middle small soft");
        }
        drawing_.line({bars_from, bottom_}, {bars_to, bottom_}, "axis");
        drawing_.text({0.5 * (bars_from + bars_to), bottom_ + 35}, axis, "middle small soft");
    }

    [[nodiscard]] svg_drawing& drawing() { return drawing_; }
    [[nodiscard]] double x_of(double value) const { return scale_.at(value); }
    [[nodiscard]] double bottom() const { return bottom_; }
    /// The middle of a row.
    [[nodiscard]] double y_of(std::size_t row) const
    {
        return first_row + row_height_ * (static_cast<double>(row) + 0.5);
    }

    /// @param below a second line, smaller
    row_chart& name(std::size_t row, std::string_view number, std::string_view text, std::string_view classes = "",
                    std::string_view below = {})
    {
        const double y = y_of(row) + (below.empty() ? 4.5 : -2.5);
        drawing_.text({26, y}, number, "end small soft");
        drawing_.text({34, y}, shortened(text, 25), classes);
        if (!below.empty()) drawing_.text({34, y + 14}, below, "small soft");
        return *this;
    }
    row_chart& bar(std::size_t row, double from, double to, std::string_view classes)
    {
        const double x = scale_.at(from), length = std::max(scale_.at(to) - x, 1.0);
        drawing_.rectangle({{x, y_of(row) - 0.5 * bar_height}, length, bar_height}, classes);
        return *this;
    }
    /// A line from the low to the high point of a band, with ticks at its ends. A whisker that would be a dot is left
    /// out.
    row_chart& whisker(std::size_t row, double low, double high)
    {
        const double a = scale_.at(low), b = scale_.at(high), y = y_of(row);
        if (b - a < 2.0) return *this;
        drawing_.path(
            drawing_path().to({a, y - 4}).line({a, y + 4}).to({a, y}).line({b, y}).to({b, y - 4}).line({b, y + 4}).d(),
            "whisker");
        return *this;
    }
    row_chart& words(std::size_t row, std::string_view text, std::string_view classes = "")
    {
        drawing_.text({words_from, y_of(row) + 4.5}, text, classes);
        return *this;
    }

private:
    drawing_scale scale_;
    double row_height_, bottom_;
    svg_drawing drawing_;
};

}  // namespace weldloop::detail
