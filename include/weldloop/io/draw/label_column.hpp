#pragma once
/// @file
/// Words beside a chart, each behind a piece of its line, or at the end of one that leads from its height, moved so
/// that they do not cover each other.

#include <algorithm>
#include <string>
#include <string_view>
#include <vector>

#include <weldloop/io/draw/svg.hpp>

namespace weldloop::detail {

class label_column {
public:
    /// @param left where the pieces of line begin @param top of the column @param bottom of the column
    /// @param leads whether a line leads from each height to its words; otherwise it lies level beside them
    label_column(double left, double top, double bottom, bool leads = false)
        : left_(left), top_(top), bottom_(bottom), leads_(leads)
    {
    }

    /// Words at a height, or as near to it as the others leave room. @param line class of the piece of line
    void add(double y, std::string_view text, std::string_view line)
    {
        labels_.push_back({y, y, std::string(text), std::string(line)});
    }
    void draw(svg_drawing& on)
    {
        std::stable_sort(labels_.begin(), labels_.end(), [](const auto& a, const auto& b) { return a.y < b.y; });
        constexpr double apart = 17.0;
        double free_from = top_;
        for (auto& l : labels_) free_from = (l.y = std::max(l.y, free_from)) + apart;
        double free_to = bottom_;
        for (auto l = labels_.rbegin(); l != labels_.rend(); ++l) free_to = (l->y = std::min(l->y, free_to)) - apart;
        for (const auto& l : labels_) {
            on.line({left_, leads_ ? l.from : l.y}, {left_ + 22, l.y}, l.line);
            on.text({left_ + 28, l.y + 4}, l.text, "small");
        }
    }

private:
    struct label {
        double from, y;
        std::string text, line;
    };
    double left_, top_, bottom_;
    bool leads_;
    std::vector<label> labels_;
};

}  // namespace weldloop::detail
