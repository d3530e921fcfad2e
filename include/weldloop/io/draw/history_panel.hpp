#pragma once
/// @file
/// One panel of a drawing of histories: curves over time, and the band between two of them.

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include <weldloop/core/number_text.hpp>
#include <weldloop/io/draw/svg.hpp>

namespace weldloop::detail {

/// Points of a history, time first, in the order of time.
using history = std::vector<std::pair<double, double>>;

/// The value of a history at a time, by a straight line between its points; its ends beyond them.
[[nodiscard]] inline double value_at(const history& h, double time)
{
    const auto after = std::lower_bound(h.begin(), h.end(), time,
                                        [](const std::pair<double, double>& p, double t) { return p.first < t; });
    if (after == h.begin()) return h.front().second;
    if (after == h.end()) return h.back().second;
    const auto before = after - 1;
    const double share = (time - before->first) / (after->first - before->first);
    return before->second + share * (after->second - before->second);
}

/// Where a panel stands in its drawing.
struct panel_frame {
    double left, right, top, bottom;
};

/// A panel with a scale of time and a scale of values, which is logarithmic where the values span more than a decade.
class history_panel {
public:
    history_panel(svg_drawing& on, const panel_frame& frame, double time_most, double least, double most,
                  std::string_view words)
        : on_(&on), logarithmic_(least > 0.0 && most > least * span_of_a_decade),
          x_{0.0, time_most, frame.left, frame.right}, y_{scaled(least), scaled(most), frame.bottom, frame.top}
    {
        for (const double tick : ticks(least, most)) {
            const double y = y_.at(scaled(tick));
            on.line({frame.left, y}, {frame.right, y}, "grid");
            on.text({frame.left - 8, y + 4}, number_text(tick, 6), "end small soft tick");
        }
        on.text({frame.left - 40, frame.top - 10}, words, "small strong");
        on.line({frame.left, frame.bottom}, {frame.right, frame.bottom}, "axis");
        for (const double t : times()) on.line({x_.at(t), frame.bottom}, {x_.at(t), frame.bottom + 4}, "axis");
    }

    /// Round times for the axis.
    [[nodiscard]] std::vector<double> times() const
    {
        std::vector<double> out;
        const double step = round_step(x_.most, 5);
        for (double k = 0.0; k * step <= x_.most * (1.0 + 1e-9); k += 1.0) out.push_back(k * step);
        return out;
    }
    [[nodiscard]] drawing_point at(double time, double value) const { return {x_.at(time), y_.at(scaled(value))}; }

    void curve(const history& h, std::string_view style)
    {
        if (h.size() < 2) return;
        drawing_path path;
        path.to(at(h.front().first, h.front().second));
        for (std::size_t i = 1; i < h.size(); ++i) path.line(at(h[i].first, h[i].second));
        on_->path(path.d(), style);
    }
    /// The band between two histories, as far as both go.
    void band(const history& a, const history& b)
    {
        if (a.size() < 2 || b.size() < 2) return;
        const double end = std::min(a.back().first, b.back().first);
        drawing_path path;
        path.to(at(a.front().first, a.front().second));
        for (const auto& [t, v] : a)
            if (t < end) path.line(at(t, v));
        path.line(at(end, value_at(a, end))).line(at(end, value_at(b, end)));
        for (auto p = b.rbegin(); p != b.rend(); ++p)
            if (p->first < end) path.line(at(p->first, p->second));
        on_->path(path.close().d(), "band");
    }
    /// A line across at a value.
    void level(double value, std::string_view style) { on_->line(at(0.0, value), at(x_.most, value), style); }
    /// A cross where a history ends before its time.
    void end_mark(double time, double value)
    {
        constexpr double arm = 5.0;
        const drawing_point p = at(time, value);
        on_->path(drawing_path()
                      .to({p.x - arm, p.y - arm})
                      .line({p.x + arm, p.y + arm})
                      .to({p.x - arm, p.y + arm})
                      .line({p.x + arm, p.y - arm})
                      .d(),
                  "end-mark");
    }

private:
    static constexpr double span_of_a_decade = 10.0;

    [[nodiscard]] double scaled(double value) const { return logarithmic_ ? std::log10(value) : value; }
    [[nodiscard]] std::vector<double> ticks(double least, double most) const
    {
        std::vector<double> out;
        if (!logarithmic_) {
            const double step = round_step(most - least, 5);
            for (double k = std::ceil(least / step - 1e-9); k * step <= most + 1e-9 * step; k += 1.0)
                out.push_back(k * step);
            return out;
        }
        for (double decade = std::pow(10.0, std::floor(std::log10(least))); decade <= most; decade *= 10.0)
            for (const double m : {1.0, 2.0, 5.0})
                if (m * decade >= least && m * decade <= most) out.push_back(m * decade);
        constexpr std::size_t crowded = 6;
        if (out.size() > crowded)  // full decades only
            std::erase_if(out, [](double t) { return std::fabs(std::log10(t) - std::round(std::log10(t))) > 1e-9; });
        return out;
    }

    svg_drawing* on_;
    bool logarithmic_;
    drawing_scale x_, y_;
};

}  // namespace weldloop::detail
