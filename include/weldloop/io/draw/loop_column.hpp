#pragma once
/// @file
/// The loop and the ways beside it one part below the other, for narrow screens.

#include <algorithm>
#include <cstddef>
#include <string>
#include <string_view>
#include <variant>

#include <weldloop/circuit/station.hpp>
#include <weldloop/circuit/station_parts.hpp>
#include <weldloop/io/draw/drawing_style.hpp>
#include <weldloop/io/draw/part_glyph.hpp>
#include <weldloop/io/draw/svg.hpp>
#include <weldloop/io/draw/way_ends.hpp>
#include <weldloop/io/report/escape.hpp>
#include <weldloop/io/report/report_words.hpp>
#include <weldloop/io/report/shown_units.hpp>
#include <weldloop/rating/assessment.hpp>

namespace weldloop {

namespace detail {

/// Rows of parts along a rail that runs downwards.
class part_column {
public:
    static constexpr double width = 440, rail = 64, row_height = 58, back = 18;
    static constexpr double frame_width = 52, frame_height = 32, words = 104;

    part_column(const assessment& found, const shown_units& units, double height, std::string_view title,
                std::string_view told)
        : found_(&found), units_(&units), drawing_(width, height, title, told)
    {
    }

    [[nodiscard]] svg_drawing& drawing() { return drawing_; }

    /// A part about a height: its sign on the rail, its name, what decided, the verdict.
    void part(double y, const path_part& is, const part_result& p)
    {
        constexpr std::size_t letters = 42;
        const bool heat = found_->conducts && temperature_is_known(p);
        drawing_.rectangle(
            {{rail - 0.5 * frame_width, y - 0.5 * frame_height}, frame_width, frame_height},
            std::string(heat ? heat_class(p.peak.typical) : "no-heat") + " v-" + std::string(class_word(p.verdict)), 5);
        draw_glyph(drawing_, is, {rail, y});
        drawing_.text({words, y - 4}, std::to_string(number_of(p)) + " " + shortened(p.name, letters), "strong");
        const std::string decided =
            found_->conducts ? deciding_row_of(p).at + " " + decided_value(p, *units_) + ", " : std::string();
        drawing_.text({words, y + 13}, decided + std::string(to_text(p.verdict)),
                      "small w-" + std::string(class_word(p.verdict)));
    }
    void rail_between(double from, double to)
    {
        drawing_.path(drawing_path().to({rail, from}).line({rail, to}).d(), "rail");
    }

private:
    const assessment* found_;
    const shown_units* units_;
    svg_drawing drawing_;
};

[[nodiscard]] inline const part_result* part_at_place(const assessment& found, std::size_t place)
{
    const auto at = std::find_if(found.parts.begin(), found.parts.end(),
                                 [place](const part_result& p) { return p.place == place; });
    return at == found.parts.end() ? nullptr : &*at;
}

}  // namespace detail

/// The loop from the supply's upper terminal down through the arc to the lower one, one part a row, each with what
/// decided its verdict; the line at the left closes it, lines at the right are ways beside the path.
/// @param s the station @param found its assessment @param units of the report
/// @return an SVG element that takes its looks from drawing_style
[[nodiscard]] inline std::string loop_column(const station& s, const assessment& found, const shown_units& units = {})
{
    using column = detail::part_column;
    constexpr double first = 92, box = 44, below = 12;
    const double rows = static_cast<double>(s.path.size()) * column::row_height;
    column out(found, units, first + rows + below, "The loop of " + found.name,
               "Parts in the order of the current, one below the other, as they are told in the table of parts.");
    svg_drawing& on = out.drawing();
    const double last = first + rows - 0.5 * column::row_height;
    on.path(drawing_path()
                .to({column::rail, 8 + box})
                .line({column::rail, last})
                .to({column::rail, last})
                .line({column::rail, last + 26})
                .line({column::back, last + 26})
                .line({column::back, 8 + box})
                .d(),
            "rail");
    on.rectangle({{6, 8}, column::rail + 24, box}, "box", 6);
    on.circle({column::back, 8 + box}, 4, "dot").circle({column::rail, 8 + box}, 4, "dot");
    on.text({0.5 * (column::rail + 36), 27}, "supply", "middle strong");
    on.text({0.5 * (column::rail + 36), 44}, to_text(s.job.current, "A"), "middle small");
    on.text({column::words, 27},
            found.conducts ? "the loop takes " + volts_line(found.total_drop, found.outcome)
            : found.outcome == loop_outcome::open_circuit ? std::string("open circuit: no current flows")
                                                          : std::string("no steady state at this current"),
            "strong");
    constexpr std::size_t letters = 30;
    on.text({column::words, 44},
            "worst: " + std::to_string(number_of(found.weakest())) + " " + shortened(found.weakest().name, letters),
            "small");
    const auto middle_of = [&](std::size_t row) {
        return first + (static_cast<double>(row) + 0.5) * column::row_height;
    };
    // a way leaves the rail at the right and comes back to it; three stand clear of each other
    constexpr std::size_t lanes = 3;
    constexpr double first_lane = 93, lane_step = 4, below_frame = 22;
    std::size_t lane = 0;
    for (const detail::way_ends& e : detail::ways_at_path(s)) {
        if (!e.from || !e.to) continue;
        const double x = first_lane + lane_step * static_cast<double>(lane++ % lanes);
        const double top = middle_of(std::min(*e.from, *e.to)) + below_frame,
                     foot = middle_of(std::max(*e.from, *e.to)) - below_frame;
        on.path(drawing_path().to({column::rail, top}).line({x, top}).line({x, foot}).line({column::rail, foot}).d(),
                s.ways[e.way].kind == way_kind::stray ? "end-mark" : "whisker");
        on.circle({column::rail, top}, 4, "dot").circle({column::rail, foot}, 4, "dot");
    }
    for (std::size_t i = 0; i < s.path.size(); ++i) {
        const double y = middle_of(i);
        if (const part_result* p = detail::part_at_place(found, i)) {
            out.part(y, s.path[i], *p);
            continue;
        }
        // the arc: a gap in the rail
        on.rectangle({{column::rail - 10, y - 22}, 20, 44}, "gap");
        if (found.conducts)
            on.path(drawing_path()
                        .to({column::rail, y - 22})
                        .line({column::rail - 7, y - 4})
                        .line({column::rail + 6, y})
                        .line({column::rail, y + 22})
                        .d(),
                    "bolt");
        on.text({column::words, y + 4},
                std::to_string(i + 1) + " arc, " +
                    (found.conducts ? detail::fixed_text(found.arc_voltage.typical.value(), 1) + " V"
                                    : std::string("none")),
                "strong");
    }
    return on.finished();
}

/// The ways beside the path one below the other, each from where it starts down to where it ends.
/// @param s the station @param found its assessment @param units of the report
/// @return an SVG element that takes its looks from drawing_style; empty for a station without ways
[[nodiscard]] inline std::string way_column(const station& s, const assessment& found, const shown_units& units = {})
{
    using column = detail::part_column;
    if (s.ways.empty()) return {};
    constexpr double head = 62, foot = 40;
    double height = 0.0;
    for (const way& w : s.ways) height += head + foot + static_cast<double>(w.path.size()) * column::row_height;
    column out(found, units, height, "The ways of " + found.name,
               "Each way from where it starts down to where it ends, its parts as they are told in the table.");
    svg_drawing& on = out.drawing();
    double top = 0.0;
    for (std::size_t w = 0; w < s.ways.size(); ++w) {
        constexpr std::size_t letters = 52;
        const double rows = static_cast<double>(s.ways[w].path.size()) * column::row_height;
        on.text({8, top + 18}, shortened(found.ways[w].name, letters),
                s.ways[w].kind == way_kind::stray ? "strong w-over" : "strong");
        on.text({8, top + 35}, shortened(way_words(found, w), letters + 10), "small");
        out.rail_between(top + 52, top + head + rows + 12);
        on.circle({column::rail, top + 52}, 4, "dot").circle({column::rail, top + head + rows + 12}, 4, "dot");
        on.text({column::words, top + 56}, "from " + shortened(s.ways[w].from, letters), "small soft");
        on.text({column::words, top + head + rows + 16}, "to " + shortened(s.ways[w].to, letters), "small soft");
        const std::size_t first = first_place_of_way(s, w);
        for (std::size_t i = 0; i < s.ways[w].path.size(); ++i)
            if (const part_result* p = detail::part_at_place(found, first + i))
                out.part(top + head + (static_cast<double>(i) + 0.5) * column::row_height, s.ways[w].path[i], *p);
        top += head + foot + rows;
    }
    return on.finished();
}

}  // namespace weldloop
