#pragma once
/// @file
/// A chart of one row for each part: a line with number, name and the value in words, below it a bar with its whisker.
/// Narrow enough to be read on a telephone, and drawn no larger on a wide screen.

#include <algorithm>
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
    static constexpr double width = 440, bars_from = 12, bars_to = 428;
    static constexpr double first_row = 26, row_height = 46, bar_height = 12, foot = 44;
    static constexpr double words_above = 1, bar_below = 12;  // of the middle of a row

    /// @param rows how many @param least value at the left @param most value at the right @param axis what is measured,
    /// in words
    row_chart(std::size_t rows, double least, double most, std::string_view axis, std::string_view title,
              std::string_view description)
        : scale_{least, most, bars_from, bars_to}, bottom_(first_row + row_height * static_cast<double>(rows)),
          drawing_(width, bottom_ + foot, title, description)
    {
        const double step = round_step(most - least, 6);
        for (double k = std::ceil(least / step - 1e-9); k * step <= most + 1e-9 * step; k += 1.0) {
            const double x = scale_.at(k * step);
            drawing_.line({x, first_row - 6}, {x, bottom_}, "grid");
            const std::string_view anchor = x < bars_from + 14 ? "" : x > bars_to - 14 ? "end " : "middle ";
            drawing_.text({x, bottom_ + 17}, number_text(k * step, 6), std::string(anchor) + "small soft tick");
        }
        drawing_.line({bars_from, bottom_}, {bars_to, bottom_}, "axis");
        drawing_.text({0.5 * (bars_from + bars_to), bottom_ + 35}, axis, "middle small soft");
    }

    [[nodiscard]] svg_drawing& drawing() { return drawing_; }
    [[nodiscard]] double x_of(double value) const { return scale_.at(value); }
    [[nodiscard]] double bottom() const { return bottom_; }
    /// The middle of a row's bar.
    [[nodiscard]] double y_of(std::size_t row) const
    {
        return first_row + row_height * (static_cast<double>(row) + 0.5) + bar_below;
    }

    row_chart& name(std::size_t row, std::string_view number, std::string_view text, std::string_view classes = "")
    {
        constexpr std::size_t letters = 28;
        const double y = y_of(row) - bar_below - words_above;
        if (!number.empty()) drawing_.text({bars_from + 16, y}, number, "end small soft");
        drawing_.text({bars_from + (number.empty() ? 0 : 24), y}, shortened(text, letters),
                      "halo " + std::string(classes));
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
        drawing_.text({bars_to, y_of(row) - bar_below - words_above}, text, "end halo " + std::string(classes));
        return *this;
    }

private:
    drawing_scale scale_;
    double bottom_;
    svg_drawing drawing_;
};

}  // namespace weldloop::detail
