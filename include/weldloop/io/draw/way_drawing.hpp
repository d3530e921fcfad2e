#pragma once
/// @file
/// The ways beside the path as a drawing: one lane a way, from the point where it starts to the point where it ends.

#include <algorithm>
#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include <weldloop/circuit/station.hpp>
#include <weldloop/circuit/station_parts.hpp>
#include <weldloop/io/draw/drawing_style.hpp>
#include <weldloop/io/draw/part_glyph.hpp>
#include <weldloop/io/draw/svg.hpp>
#include <weldloop/io/report/report_words.hpp>
#include <weldloop/io/report/text_layout.hpp>
#include <weldloop/rating/assessment.hpp>

namespace weldloop {

namespace detail {

class way_sketch {
public:
    way_sketch(const station& s, const assessment& found, const shown_units& units)
        : station_(s), found_(found), units_(units), width_(width_for(s)),
          drawing_(width_, lane_height * static_cast<double>(s.ways.size()) + below, "The ways of " + found.name,
                   description())
    {
    }

    [[nodiscard]] std::string drawn()
    {
        for (std::size_t w = 0; w < station_.ways.size(); ++w) lane(w);
        return drawing_.finished();
    }

private:
    static constexpr double lane_height = 112, below = 8, lead_from = 150, ends_room = 300, slot = 118,
                            least_width = 700;
    static constexpr double frame_width = 52, frame_height = 32, under_frame = 32;

    [[nodiscard]] static double width_for(const station& s)
    {
        std::size_t most = 1;
        for (const way& w : s.ways) most = std::max(most, w.path.size());
        return std::max(least_width, ends_room + slot * static_cast<double>(most));
    }
    [[nodiscard]] std::string description() const
    {
        std::string out = "Each way with its current.";
        for (std::size_t w = 0; w < station_.ways.size(); ++w)
            out.append(" ").append(way_line(station_, found_, w)).append(".");
        return out;
    }

    void lane(std::size_t which)
    {
        const way& w = station_.ways[which];
        const double top = lane_height * static_cast<double>(which), y = top + 58;
        const double right = width_ - lead_from;
        drawing_.text({12, top + 20},
                      shortened(found_.ways[which].name + ", " + way_words(found_, which),
                                static_cast<std::size_t>(width_ / 7.5)),
                      w.kind == way_kind::stray ? "strong w-over" : "strong");
        drawing_.path(drawing_path().to({lead_from - 10, y}).line({right + 10, y}).d(), "rail");
        drawing_.circle({lead_from - 10, y}, 4, "dot").circle({right + 10, y}, 4, "dot");
        constexpr std::size_t letters = 18;
        drawing_.text({12, y + 4}, shortened(w.from, letters), "small");
        drawing_.text({right + 20, y + 4}, shortened(w.to, letters), "small");
        const std::size_t first = first_place_of_way(station_, which);
        const double room = (right - lead_from) / static_cast<double>(w.path.size());
        for (const part_result& p : found_.parts) {
            if (p.place < first || p.place >= first + w.path.size()) continue;
            const double x = lead_from + room * (static_cast<double>(p.place - first) + 0.5);
            const std::string verdict(to_text(p.verdict));
            const std::string peak = found_.conducts ? decided_value(p, units_) : "-";
            drawing_.begin_group("", std::to_string(number_of(p)) + " " + p.name + ": " + peak + ", " + verdict);
            drawing_.rectangle(
                {{x - 0.5 * frame_width, y - 0.5 * frame_height}, frame_width, frame_height},
                std::string(found_.conducts && temperature_is_known(p) ? heat_class(p.peak.typical) : "no-heat") +
                    " v-" + std::string(class_word(p.verdict)),
                5);
            draw_glyph(drawing_, w.path[p.place - first], {x, y});
            drawing_.text({x, y - 0.5 * frame_height - 5},
                          std::to_string(number_of(p)) + " " + shortened(p.name, static_cast<std::size_t>(room / 7.6)),
                          "middle small strong");
            drawing_.text({x, y + under_frame}, peak, "middle small");
            drawing_.end_group();
        }
    }

    const station& station_;
    const assessment& found_;
    const shown_units& units_;
    double width_;
    svg_drawing drawing_;
};

}  // namespace detail

/// The ways beside the path: each from where it starts to where it ends, its parts with what decided their verdicts,
/// its current.
/// @param s the station @param found its assessment @param units of the report
/// @return an SVG element that takes its looks from drawing_style; empty for a station without ways
[[nodiscard]] inline std::string way_drawing(const station& s, const assessment& found, const shown_units& units = {})
{
    return s.ways.empty() ? std::string() : detail::way_sketch(s, found, units).drawn();
}

}  // namespace weldloop
