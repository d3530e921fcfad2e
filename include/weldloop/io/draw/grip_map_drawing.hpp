#pragma once
/// @file
/// The map of a clamp over current and surface: where it holds, where it declines, where it is unstable.

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include <weldloop/core/error.hpp>
#include <weldloop/core/number_text.hpp>
#include <weldloop/io/draw/map_regions.hpp>
#include <weldloop/io/draw/svg.hpp>
#include <weldloop/io/report/report_words.hpp>
#include <weldloop/life/grip_map_result.hpp>
#include <weldloop/material/surface_state.hpp>

namespace weldloop {

/// A place on the map to point at, such as the job at hand.
struct grip_map_mark {
    current amps = {};            ///< [A] while the arc burns
    double surface_factor = 1.0;  ///< contact resistance over that of clean metal, above 0
    std::string words = {};       ///< beside the mark
};

namespace detail {

// Edges half-way between the values of a row of cells, and as far beyond its ends.
[[nodiscard]] inline std::vector<double> edges_about(const std::vector<double>& middles)
{
    std::vector<double> out;
    out.push_back(middles[0] - 0.5 * (middles[1] - middles[0]));
    for (std::size_t i = 1; i < middles.size(); ++i) out.push_back(0.5 * (middles[i - 1] + middles[i]));
    out.push_back(middles.back() + 0.5 * (middles.back() - middles[middles.size() - 2]));
    return out;
}

struct outlook_look {
    grip_outlook outlook;
    std::string_view tone, hatch, edge;  // classes
};
inline constexpr std::array outlook_looks{
    outlook_look{grip_outlook::holds, {}, {}, {}},
    outlook_look{grip_outlook::declines, "tone-declines", "hatch-declines", "edge-declines"},
    outlook_look{grip_outlook::unstable, "tone-unstable", "hatch-unstable", "edge-unstable"}};

// One set of lines for what declines, two that cross for what is unstable.
inline void hatch(svg_drawing& on, const map_cells& m, const outlook_look& look)
{
    constexpr double sparse = 14.0, dense = 8.0;  // drawing units
    const int kind = static_cast<int>(look.outlook);
    if (look.outlook == grip_outlook::holds) return;
    on.path(region_of(m, kind).d(), look.tone);
    const bool unstable = look.outlook == grip_outlook::unstable;
    on.path(hatching_of(m, kind, unstable ? dense : sparse, 1.0).d(), look.hatch);
    if (unstable) on.path(hatching_of(m, kind, dense, -1.0).d(), look.hatch);
}

inline void word_on_paper(svg_drawing& on, drawing_point middle, std::string_view word)
{
    constexpr double per_letter = 8.0, beside = 18.0, tall = 24.0;
    const double wide = per_letter * static_cast<double>(word.size()) + beside;
    on.rectangle({{middle.x - 0.5 * wide, middle.y - 0.5 * tall}, wide, tall}, "paper", 3.0);
    on.text({middle.x, middle.y + 5.0}, word, "middle strong");
}

// A ringed dot, its words on paper beside it, on the side that has more room.
inline void point_at(svg_drawing& on, drawing_point at, std::string_view words, double middle)
{
    constexpr double per_letter = 7.0, apart = 12.0;
    const double half = 0.5 * per_letter * static_cast<double>(words.size()) + apart;
    on.circle(at, 7.0, "paper").circle(at, 4.0, "dot");
    word_on_paper(on, {at.x > middle ? at.x - half - apart : at.x + half + apart, at.y}, words);
}

}  // namespace detail

/// The map as regions told apart by hatching and by words: what holds is plain, what declines is hatched once and edged
/// by a dashed line, what is unstable is hatched twice and edged by a heavy one; a key below repeats it. Surfaces stand
/// at the right by a letter where their usual multiplier lies.
/// @param m the map, with two or more currents and surface factors, both rising, factors above 0
/// @param name of the clamp, as printed
/// @param mark a place to point at; left out where it lies outside the map
/// @return an SVG element that takes its looks from drawing_style
/// @throws out_of_range_error for a map of fewer than two by two cells, or whose cells do not fit its sides
[[nodiscard]] inline std::string grip_map_drawing(const grip_map& m, std::string_view name,
                                                  const std::optional<grip_map_mark>& mark = {})
{
    if (m.currents.size() < 2 || m.surface_factors.size() < 2)
        throw out_of_range_error("grip map",
                                 std::to_string(m.currents.size()) + " by " + std::to_string(m.surface_factors.size()) +
                                     " cells",
                                 "two by two or more");
    if (m.cells.size() != m.currents.size() * m.surface_factors.size())
        throw out_of_range_error("cells of the grip map", std::to_string(m.cells.size()), "currents times surfaces");
    if (!(m.surface_factors.front() > 0.0))
        throw out_of_range_error("surface factor", number_text(m.surface_factors.front()), "above zero");

    constexpr double width = 440, left = 52, right = 404, top = 34, bottom = 326, key_from = 56.0, a_key = 18.0;
    std::vector<surface_state> surfaces;  // within the map, the best first
    for (const surface_state s : all_surface_states) {
        const auto multiplier = resistance_multiplier(s);
        if (!multiplier) continue;
        const double at = std::log10(multiplier->typical);
        const double first = std::log10(m.surface_factors.front()), last = std::log10(m.surface_factors.back());
        if (at >= first && at <= last) surfaces.push_back(s);
    }
    std::stable_sort(surfaces.begin(), surfaces.end(), [](surface_state a, surface_state b) {
        return resistance_multiplier(a)->typical < resistance_multiplier(b)->typical;
    });
    const double height = bottom + key_from + 30.0 + a_key * std::ceil(0.5 * static_cast<double>(surfaces.size() + 1));
    std::vector<double> amps, decades;
    for (const current& i : m.currents) amps.push_back(i.value());
    for (const double f : m.surface_factors) decades.push_back(std::log10(f));
    const std::vector<double> amp_edges = detail::edges_about(amps), decade_edges = detail::edges_about(decades);
    const drawing_scale across{amp_edges.front(), amp_edges.back(), left, right},
        up{decade_edges.front(), decade_edges.back(), bottom, top};
    detail::map_cells cells;
    for (const double a : amp_edges) cells.x.push_back(across.at(a));
    for (const double d : decade_edges) cells.y.push_back(up.at(d));
    for (const grip_outlook o : m.cells) cells.kinds.push_back(static_cast<int>(o));

    const std::string hours = number_text(detail::cut_to_two_digits(number_in(m.horizon, "h"))) + " h of shift";
    svg_drawing on(width, height, "What " + std::string(name) + " comes to",
                   "Current across, contact resistance over that of clean metal upwards, after " + hours +
                       ". Plain: holds. Hatched once: declines. Hatched twice: unstable.");
    for (const detail::outlook_look& look : detail::outlook_looks) detail::hatch(on, cells, look);
    for (const detail::outlook_look& look : detail::outlook_looks)
        if (!look.edge.empty()) on.path(detail::edge_of(cells, static_cast<int>(look.outlook)).d(), look.edge);
    on.path(drawing_path().to({left, top}).line({left, bottom}).line({right, bottom}).line({right, top}).close().d(),
            "frame");

    const double step = round_step(amp_edges.back() - amp_edges.front(), 6);
    for (double k = std::ceil(amp_edges.front() / step); k * step <= amp_edges.back(); k += 1.0) {
        on.line({across.at(k * step), bottom}, {across.at(k * step), bottom + 5}, "axis");
        on.text({across.at(k * step), bottom + 19}, number_text(k * step, 6), "middle small soft tick");
    }
    on.text({0.5 * (left + right), bottom + 40}, "A while the arc burns", "middle small soft");
    for (double decade = std::floor(decade_edges.front()); decade <= decade_edges.back(); decade += 1.0)
        for (const double part : {1.0, 2.0, 5.0}) {
            const double at = decade + std::log10(part);
            if (at < decade_edges.front() || at > decade_edges.back()) continue;
            on.line({left - 5, up.at(at)}, {left, up.at(at)}, "axis");
            on.text({left - 9, up.at(at) + 4}, number_text(part * std::pow(10.0, decade), 3), "end small soft tick");
        }
    on.text({left - 44, top - 14}, "contact resistance over that of clean metal; after " + hours, "small strong");

    // at the right edge by a letter, which the key names; two at one height share their line
    const auto letter = [](std::size_t i) { return std::string(1, static_cast<char>('a' + i)); };
    std::string together;
    for (std::size_t i = 0; i < surfaces.size(); ++i) {
        constexpr double apart = 12.0;
        const double y = up.at(std::log10(resistance_multiplier(surfaces[i])->typical));
        on.line({right, y}, {right + 5, y}, "axis");
        together += letter(i);
        const bool next_is_near =
            i + 1 < surfaces.size() && y - up.at(std::log10(resistance_multiplier(surfaces[i + 1])->typical)) < apart;
        if (next_is_near) continue;
        on.text({right + 9, y + 4}, together, "small");
        together.clear();
    }

    std::optional<drawing_point> marked;
    if (mark && mark->surface_factor > 0.0) {
        const double i = mark->amps.value(), f = std::log10(mark->surface_factor);
        if (i >= amp_edges.front() && i <= amp_edges.back() && f >= decade_edges.front() && f <= decade_edges.back())
            marked = {across.at(i), up.at(f)};
    }
    for (const detail::outlook_look& look : detail::outlook_looks) {
        constexpr double room_wide = 50.0, room_tall = 14.0, word_tall = 30.0;
        auto at = detail::roomiest_point(cells, static_cast<int>(look.outlook), room_wide, room_tall);
        if (!at) continue;
        if (marked && std::fabs(at->y - marked->y) < word_tall)  // clear of the mark's words, within the map
            at->y = at->y + word_tall < bottom ? marked->y + word_tall : marked->y - word_tall;
        detail::word_on_paper(on, *at, to_text(look.outlook));
    }
    if (marked) detail::point_at(on, *marked, mark->words, 0.5 * (left + right));
    double key = left;
    for (const detail::outlook_look& look : detail::outlook_looks) {
        constexpr double wide = 34.0, tall = 18.0, per_entry = 122.0;
        const detail::map_cells swatch{
            {key, key + wide}, {bottom + key_from + tall, bottom + key_from}, {static_cast<int>(look.outlook)}};
        detail::hatch(on, swatch, look);
        on.rectangle({{key, bottom + key_from}, wide, tall}, "frame");
        on.text({key + wide + 8.0, bottom + key_from + 13.0}, to_text(look.outlook), "small");
        key += per_entry;
    }
    for (std::size_t i = 0; i < surfaces.size(); ++i) {
        const double x = i % 2 == 0 ? left : 0.5 * (left + right) + 10.0;
        const double y = bottom + key_from + 40.0 + a_key * static_cast<double>(i / 2);
        on.text({x, y}, letter(i), "small strong");
        on.text({x + 14.0, y}, to_text(surfaces[i]), "small");
    }
    return on.finished();
}

}  // namespace weldloop
