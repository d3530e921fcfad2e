#pragma once
/// @file
/// The loop as a drawing: from one terminal through the arc and back, each part with its temperature and verdict.

#include <algorithm>
#include <array>
#include <cstddef>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include <weldloop/circuit/station.hpp>
#include <weldloop/io/draw/drawing_style.hpp>
#include <weldloop/io/draw/part_glyph.hpp>
#include <weldloop/io/draw/svg.hpp>
#include <weldloop/io/draw/way_ends.hpp>
#include <weldloop/io/report/escape.hpp>
#include <weldloop/io/report/report_words.hpp>
#include <weldloop/io/report/text_layout.hpp>
#include <weldloop/rating/assessment.hpp>

namespace weldloop {

namespace detail {

class loop_sketch {
public:
    loop_sketch(const station& s, const assessment& found, const shown_units& units)
        : station_(s), found_(found), units_(units), arc_at_(arc_place(s)),
          slots_(std::max({arc_at_, s.path.size() - arc_at_ - 1, std::size_t{1}})),
          rail_(std::max(room_for_rail, least_slot * static_cast<double>(slots_))),
          width_(rail_from + rail_ + right_room), with_names_(rail_ / static_cast<double>(slots_) >= least_named_slot),
          lanes_(lanes_of(s)), upper_(first_upper + lane_step * static_cast<double>(lanes_.above)),
          centre_y_(upper_ + 0.5 * between + 6),
          lower_(upper_ + between + lane_step * static_cast<double>(lanes_.below)),
          drawing_(width_, height(), title(), description())
    {
    }

    [[nodiscard]] std::string drawn()
    {
        rails();
        branches();
        supply_box();
        for (const part_result& p : found_.parts)
            if (p.way.empty()) part(p);
        arc();
        middle();
        keys();
        return drawing_.finished();
    }

private:
    static constexpr double room_for_rail = 650, rail_from = 118, right_room = 112;
    static constexpr double least_slot = 62, least_named_slot = 88;
    static constexpr double first_upper = 62, between = 200, lane_step = 17, frame_width = 52, frame_height = 32;
    static constexpr double key_line = 24, character = 6.6, bold_character = 7.6;
    static constexpr double half_box = 47;

    [[nodiscard]] static std::size_t arc_place(const station& s)
    {
        const auto is_arc = [](const path_part& p) { return std::holds_alternative<weldloop::arc>(p); };
        return static_cast<std::size_t>(std::find_if(s.path.begin(), s.path.end(), is_arc) - s.path.begin());
    }

    /// The ways that leave the path, each with a lane of its own: above the loop for those before the arc, else within
    /// it.
    struct way_lanes {
        std::vector<std::pair<way_ends, std::size_t>> ways = {};  // with the number of the lane on its side
        std::size_t above = 0, below = 0;                         // how many
    };
    [[nodiscard]] way_lanes lanes_of(const station& s) const
    {
        way_lanes out;
        for (const way_ends& e : ways_at_path(s)) out.ways.emplace_back(e, is_above(e) ? out.above++ : out.below++);
        return out;
    }
    [[nodiscard]] bool is_above(const way_ends& e) const
    {
        return (!e.from || *e.from < arc_at_) && (!e.to || *e.to < arc_at_);
    }

    /// What stands below a part: its peak and place, each in a line, and its verdict.
    struct words_line {
        std::string text, classes;
        double step;  // to the next
    };
    [[nodiscard]] std::vector<words_line> words_below(const part_result& p) const
    {
        std::vector<words_line> out;
        const auto room = static_cast<std::size_t>(slot_of(p.place) / bold_character);
        // smaller and not bold; the longest word of a place, "connection", fits the least slot
        const std::size_t room_for_place =
            std::max<std::size_t>(10, static_cast<std::size_t>(slot_of(p.place) / character));
        if (found_.conducts) {
            out.push_back({decided_value(p, units_), "middle", 13});
            for (const std::string& line : broken(deciding_row_of(p).at, room_for_place))
                out.push_back({line, "middle small soft", 13});
        }
        // "may exceed" takes two lines where parts stand close
        for (const std::string& line : broken(short_text(p.verdict), room))
            out.push_back({line, "middle small strong w-" + std::string(class_word(p.verdict)), 13});
        return out;
    }
    static constexpr double below_frame = 34;  // from the middle of a part to the first of its words

    /// Below the words of the parts of the way back.
    [[nodiscard]] double keys_from() const
    {
        double lowest = lower_ + below_frame;
        for (const part_result& p : found_.parts) {
            if (p.place < arc_at_ || !p.way.empty()) continue;
            double y = lower_ + below_frame;
            for (const words_line& l : words_below(p)) y += l.step;
            lowest = std::max(lowest, y);
        }
        return lowest + 8;
    }

    [[nodiscard]] double height() const
    {
        const std::size_t lines = (found_.conducts ? 2 : 1) +
                                  (with_names_ ? 0 : (station_.path.size() + names_a_line() - 2) / names_a_line());
        return keys_from() + key_line * static_cast<double>(lines);
    }
    [[nodiscard]] std::size_t names_a_line() const { return static_cast<std::size_t>(width_ / 215.0); }
    [[nodiscard]] std::string title() const { return "The loop of " + found_.name; }
    [[nodiscard]] std::string description() const
    {
        std::string out = found_.conducts
                              ? "Parts in the order of the current, with what decided the verdict, and the verdict."
                              : "Parts in the order of the current, with their verdicts. " +
                                    in_shown_units(no_state_line(found_), units_);
        for (const part_result& p : found_.parts) {
            if (!p.way.empty()) continue;
            out.append(" ")
                .append(std::to_string(number_of(p)))
                .append(" ")
                .append(p.name)
                .append(": ")
                .append(told_of(p))
                .append(".");
        }
        return out;
    }
    /// "conductor 83 degC, may exceed limit", of what decided; the verdict alone where there are no temperatures.
    [[nodiscard]] std::string told_of(const part_result& p) const
    {
        const std::string verdict(to_text(p.verdict));
        return found_.conducts ? deciding_row_of(p).at + " " + decided_value(p, units_) + ", " + verdict : verdict;
    }

    /// Room along the rail for each part on the side of a part.
    [[nodiscard]] double slot_of(std::size_t index) const
    {
        return rail_ / static_cast<double>(index < arc_at_ ? arc_at_ : station_.path.size() - arc_at_ - 1);
    }
    [[nodiscard]] drawing_point place_of(std::size_t index) const
    {
        const bool before = index < arc_at_;
        const double along =
            slot_of(index) * (static_cast<double>(before ? index : station_.path.size() - 1 - index) + 0.5);
        return {rail_from + along, before ? upper_ : lower_};
    }
    [[nodiscard]] double arc_x() const { return rail_from + rail_ + 34; }

    void rails()
    {
        drawing_.path(drawing_path()
                          .to({60, centre_y_ - half_box})
                          .line({60, upper_})
                          .line({arc_x(), upper_})
                          .line({arc_x(), centre_y_ - 24})
                          .d(),
                      "rail");
        drawing_.path(drawing_path()
                          .to({60, centre_y_ + half_box})
                          .line({60, lower_})
                          .line({arc_x(), lower_})
                          .line({arc_x(), centre_y_ + 24})
                          .d(),
                      "rail");
    }

    /// Each way as a line from where it leaves the path to where it comes back; one that ends elsewhere as a stub.
    void branches()
    {
        constexpr double beside = 0.5 * frame_width + 7, stub = 46, first_above = 18, first_within = 64;
        for (const auto& lane : lanes_.ways) {
            const way_ends& e = lane.first;
            const double step = lane_step * static_cast<double>(lane.second);
            const double y = is_above(e) ? first_above + step : lower_ - first_within - step;
            const auto end_at = [&](std::size_t place, double side) {
                const drawing_point at = place_of(place);
                drawing_.circle({at.x + side * beside, at.y}, 4, "dot");
                return drawing_point{at.x + side * beside, at.y};
            };
            const bool to_right = e.from && e.to && place_of(*e.to).x > place_of(*e.from).x;
            const double side = to_right ? 1.0 : -1.0;
            const drawing_point a = end_at(e.from ? *e.from : *e.to, side);
            const drawing_point b = e.from && e.to ? end_at(*e.to, -side) : drawing_point{a.x + side * stub, y};
            drawing_path line = drawing_path().to(a).line({a.x, y}).line({b.x, y});
            if (e.from && e.to) line.line(b);
            drawing_.path(line.d(), "rail");
            const bool stray = station_.ways[e.way].kind == way_kind::stray;
            drawing_.text({0.5 * (a.x + b.x), y - 4},
                          shortened(way_label(found_, e.way), 34) + (e.from && e.to ? "" : ", to another way"),
                          std::string("middle small halo") + (stray ? " strong w-over" : " strong"));
        }
    }

    void supply_box()
    {
        const double y = centre_y_ - half_box;
        drawing_.rectangle({{12, y}, 96, 2 * half_box}, "box", 6);
        drawing_.circle({60, y}, 4, "dot").circle({60, y + 2 * half_box}, 4, "dot");
        drawing_.text({60, y + 27}, "supply", "middle strong");
        drawing_.text({60, y + 47}, to_text(station_.job.current, "A"), "middle");
        const std::string_view holds = !station_.supply                                         ? "not described"
                                       : station_.supply->kind == supply_kind::constant_voltage ? "const. voltage"
                                       : station_.supply->kind == supply_kind::constant_current
                                           ? "const. current"
                                           : to_text(station_.supply->kind);
        drawing_.text({60, y + 66}, holds, "middle small soft");
        const std::string share =
            station_.job.duty.is_continuous() ? "continuous" : to_text(station_.job.duty.share()) + " duty";
        drawing_.text({60, y + 82}, share, "middle small soft");
    }

    void part(const part_result& p)
    {
        const drawing_point at = place_of(p.place);
        const std::string kind(class_word(p.verdict));
        drawing_.begin_group("", std::to_string(number_of(p)) + " " + p.name + ": " + told_of(p));
        drawing_.rectangle(
            {{at.x - 0.5 * frame_width, at.y - 0.5 * frame_height}, frame_width, frame_height},
            std::string(found_.conducts && temperature_is_known(p) ? heat_class(p.peak.typical) : "no-heat") + " v-" +
                kind,
            5);
        draw_glyph(drawing_, station_.path.at(p.place), at);
        name_above(at, p);
        double y = at.y + below_frame;
        for (const words_line& l : words_below(p)) {
            drawing_.text({at.x, y}, l.text, l.classes);
            y += l.step;
        }
        drawing_.end_group();
    }

    void name_above(drawing_point at, const part_result& p)
    {
        const std::string number = std::to_string(number_of(p));
        const double floor = at.y - 0.5 * frame_height - 8;
        if (!with_names_) {
            drawing_.text({at.x, floor}, number, "middle strong");
            return;
        }
        const auto room = static_cast<std::size_t>(std::min(slot_of(p.place), 190.0) / bold_character);
        std::vector<std::string> lines = broken(number + " " + shortened(p.name, 2 * room - 4), room);
        if (lines.size() > 2) {
            lines.resize(2);
            lines[1] = shortened(lines[1] + "....", room);
        }
        double y = floor - 15.0 * static_cast<double>(lines.size() - 1);
        for (const std::string& line : lines) {
            drawing_.text({at.x, y}, line, "middle small strong");
            y += 15;
        }
    }

    void arc()
    {
        const double x = arc_x(), y = centre_y_;
        if (found_.conducts)
            drawing_.path(
                drawing_path().to({x, y - 24}).line({x - 7, y - 5}).line({x + 6, y - 1}).line({x, y + 24}).d(), "bolt");
        const std::string number = std::to_string(arc_at_ + 1);
        drawing_.text({x + 16, y - 8}, number + " arc", "strong");
        drawing_.text({x + 16, y + 10},
                      found_.conducts ? fixed_text(found_.arc_voltage.typical.value(), 1) + " V" : "no arc", "");
    }

    void middle()
    {
        const double x = rail_from + 0.5 * rail_;
        const part_result& weakest = found_.weakest();
        drawing_.text({x, centre_y_ - 10},
                      found_.conducts ? "the loop takes " + volts_line(found_.total_drop, found_.outcome)
                      : found_.outcome == loop_outcome::open_circuit ? std::string("open circuit: no current flows")
                                                                     : std::string("no steady state at this current"),
                      "middle large");
        drawing_.text({x, centre_y_ + 12},
                      "weakest: " + std::to_string(number_of(weakest)) + " " + shortened(weakest.name, 30) + ", " +
                          std::string(to_text(weakest.verdict)),
                      "middle");
    }

    void keys()
    {
        double y = keys_from() + 8;
        double x = 12;
        drawing_.text({x, y + 4}, "Frame:", "small soft");
        x += 48;
        for (const verdict v : verdicts_by_weight) {
            drawing_.rectangle({{x, y - 8}, 22, 15}, "chip-ground v-" + std::string(class_word(v)), 3);
            drawing_.text({x + 29, y + 4}, short_text(v), "small");
            x += 48 + character * static_cast<double>(short_text(v).size());
        }
        if (found_.conducts) {
            y += key_line;
            x = 12;
            drawing_.text({x, y + 4}, "Peak, " + std::string(units_.temperatures.name()) + ":", "small soft");
            x += 76;
            for (std::size_t k = 0; k < heat_steps.size(); ++k) {
                const std::string words = heat_words(k, units_);
                drawing_.rectangle({{x, y - 8}, 22, 15}, std::string(heat_steps[k].class_name) + " chip", 3);
                drawing_.text({x + 29, y + 4}, words, "small tick");
                x += 46 + character * static_cast<double>(words.size());
            }
        }
        if (with_names_) return;
        std::size_t column = 0;
        y += key_line;
        for (const part_result& p : found_.parts) {
            if (!p.way.empty()) continue;
            drawing_.text({12 + 215.0 * static_cast<double>(column), y + 4},
                          std::to_string(number_of(p)) + " " + shortened(p.name, 28), "small");
            if (++column == names_a_line()) {
                column = 0;
                y += key_line;
            }
        }
    }

    const station& station_;
    const assessment& found_;
    const shown_units& units_;
    std::size_t arc_at_, slots_;
    double rail_, width_;
    bool with_names_;
    way_lanes lanes_;
    double upper_, centre_y_, lower_;
    svg_drawing drawing_;
};

}  // namespace detail

/// The loop as a closed drawing: supply, parts in the order of the current, arc, and the parts of the way back, each
/// with what decided its verdict, and the verdict. Names are written beside the parts where there is
/// room, else in a key below. Where ways share the current a line leaves the loop at the part where it divides and
/// comes back where it meets again; what lies in it is told by way_drawing().
/// @param s the station @param found its assessment @param units of the report
/// @return an SVG element that takes its looks from drawing_style
[[nodiscard]] inline std::string loop_drawing(const station& s, const assessment& found, const shown_units& units = {})
{
    return detail::loop_sketch(s, found, units).drawn();
}

}  // namespace weldloop
