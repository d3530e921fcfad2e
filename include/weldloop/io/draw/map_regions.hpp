#pragma once
/// @file
/// Regions of a map of cells: hatching, the edges between them, and where their words have most room.

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <optional>
#include <utility>
#include <vector>

#include <weldloop/io/draw/svg.hpp>

namespace weldloop::detail {

/// Cells of a map in drawing units: columns from left to right, rows from below. `kind` numbers what a cell is.
struct map_cells {
    std::vector<double> x, y;     ///< edges; one more than columns and rows; y falls, as rows go up
    std::vector<int> kinds = {};  ///< row by row

    [[nodiscard]] std::size_t columns() const { return x.size() - 1; }
    [[nodiscard]] std::size_t rows() const { return y.size() - 1; }
    [[nodiscard]] int kind(std::size_t row, std::size_t column) const { return kinds[row * columns() + column]; }
};

/// The region of a kind as one path of rectangles, a run of cells each.
[[nodiscard]] inline drawing_path region_of(const map_cells& m, int kind)
{
    drawing_path out;
    for (std::size_t row = 0; row < m.rows(); ++row)
        for (std::size_t from = 0; from < m.columns(); ++from) {
            if (m.kind(row, from) != kind) continue;
            std::size_t to = from;
            while (to + 1 < m.columns() && m.kind(row, to + 1) == kind) ++to;
            out.to({m.x[from], m.y[row]}).line({m.x[to + 1], m.y[row]}).line({m.x[to + 1], m.y[row + 1]});
            out.line({m.x[from], m.y[row + 1]}).close();
            from = to;
        }
    return out;
}

/// Hatching of a kind: parallel lines that rise to the right (slope 1) or fall (slope -1), drawn where the kind lies.
[[nodiscard]] inline drawing_path hatching_of(const map_cells& m, int kind, double spacing, double slope)
{
    constexpr double step = 1.0;  // along x, drawing units: finer than any cell that can be seen
    const double left = m.x.front(), right = m.x.back(), bottom = m.y.front(), top = m.y.back();
    drawing_path out;
    const double tall = bottom - top, wide = right - left;
    for (double start = -tall; start <= wide; start += spacing) {
        std::optional<drawing_point> from;
        drawing_point last{};
        std::size_t column = 0, row = slope > 0.0 ? 0 : m.rows() - 1;  // of the cell that p lies in, followed along
        for (double u = 0.0; u <= tall; u += step) {
            const drawing_point p{left + start + u, slope > 0.0 ? bottom - u : top + u};
            if (p.x > right) break;
            while (column + 1 < m.columns() && p.x >= m.x[column + 1]) ++column;
            if (slope > 0.0)
                while (row + 1 < m.rows() && p.y <= m.y[row + 1]) ++row;
            else
                while (row > 0 && p.y > m.y[row]) --row;
            const bool inside = p.x >= left && m.kind(row, column) == kind;
            if (inside && !from) from = p;
            if (!inside && from) {
                out.to(*from).line(last);
                from.reset();
            }
            last = p;
        }
        if (from) out.to(*from).line(last);
    }
    return out;
}

/// The edges between a kind with all above it and what lies below, as lines as long as they go, so that dashes run on.
[[nodiscard]] inline drawing_path edge_of(const map_cells& m, int kind)
{
    const std::size_t columns = m.columns(), rows = m.rows(), wide = columns + 1;
    const auto beyond = [&](std::size_t row, std::size_t column) { return m.kind(row, column) >= kind; };
    // the sides that are edges, by the corner at their lower left; upright sides first
    std::vector<char> upright(wide * (rows + 1), 0), level(wide * (rows + 1), 0);
    for (std::size_t row = 0; row < rows; ++row)
        for (std::size_t column = 0; column < columns; ++column) {
            if (column > 0) upright[row * wide + column] = beyond(row, column - 1) != beyond(row, column);
            if (row > 0) level[row * wide + column] = beyond(row - 1, column) != beyond(row, column);
        }
    const auto at = [&](std::size_t corner) { return drawing_point{m.x[corner % wide], m.y[corner / wide]}; };
    // takes one side away from a corner and says where it leads
    const auto step_from = [&](std::size_t corner) -> std::optional<std::size_t> {
        const auto take = [](char& side) { return std::exchange(side, char{0}) != 0; };
        if (take(upright[corner])) return corner + wide;
        if (take(level[corner])) return corner + 1;
        if (corner >= wide && take(upright[corner - wide])) return corner - wide;
        if (corner % wide > 0 && take(level[corner - 1])) return corner - 1;
        return std::nullopt;
    };
    const auto sides_at = [&](std::size_t corner) {
        return upright[corner] + level[corner] + (corner >= wide ? upright[corner - wide] : 0) +
               (corner % wide > 0 ? level[corner - 1] : 0);
    };
    drawing_path out;
    const auto follow = [&](std::size_t corner) {
        auto next = step_from(corner);
        if (!next) return;
        out.to(at(corner));
        for (; next; next = step_from(*next)) out.line(at(*next));
    };
    // lines that end at the frame first, then what is closed
    for (std::size_t corner = 0; corner < upright.size(); ++corner)
        if (sides_at(corner) % 2 == 1) follow(corner);
    for (std::size_t corner = 0; corner < upright.size(); ++corner)
        while (sides_at(corner) > 0) follow(corner);
    return out;
}

/// The point of a kind's region with most room about it for a word of a width and height; empty if the region is
/// absent.
[[nodiscard]] inline std::optional<drawing_point> roomiest_point(const map_cells& m, int kind, double wide, double tall)
{
    std::optional<drawing_point> best;
    double best_room = 1.0;  // the word just fits
    for (std::size_t row = 0; row < m.rows(); ++row)
        for (std::size_t column = 0; column < m.columns(); ++column) {
            if (m.kind(row, column) != kind) continue;
            std::size_t left = column, right = column, below = row, above = row;
            while (left > 0 && m.kind(row, left - 1) == kind) --left;
            while (right + 1 < m.columns() && m.kind(row, right + 1) == kind) ++right;
            while (below > 0 && m.kind(below - 1, column) == kind) --below;
            while (above + 1 < m.rows() && m.kind(above + 1, column) == kind) ++above;
            const drawing_point p{0.5 * (m.x[column] + m.x[column + 1]), 0.5 * (m.y[row] + m.y[row + 1])};
            const double room = std::min(std::min(p.x - m.x[left], m.x[right + 1] - p.x) / wide,
                                         std::min(m.y[below] - p.y, p.y - m.y[above + 1]) / tall);
            if (room >= best_room) {
                best_room = room;
                best = p;
            }
        }
    return best;
}

}  // namespace weldloop::detail
