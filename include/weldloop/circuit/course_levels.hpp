#pragma once
/// @file
/// The levels of a current's course, at which the current stands still for a while, and the edges between them.

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <vector>

#include <weldloop/core/quantities.hpp>
#include <weldloop/law/waveform.hpp>

namespace weldloop {

/// A level, and the edge that leads to it.
struct course_level {
    weldloop::current current;    ///< [A] with its sign
    weldloop::duration duration;  ///< [s] it stands there
    weldloop::current before;     ///< [A] of the level before it, with its sign
    weldloop::duration ramp;      ///< [s] that the course gives the edge between; 0 for a step
};

/// The levels of a period in their order; empty for direct current, the sine, and ramps alone. A course with one
/// level alone comes to it from itself. @param w the course
[[nodiscard]] inline std::vector<course_level> levels_of(const waveform& w)
{
    const std::vector<current_piece>& pieces = w.pieces();
    std::vector<course_level> out;
    for (std::size_t i = 0; i < pieces.size(); ++i) {
        if (pieces[i].from != pieces[i].to) continue;
        course_level s{.current = pieces[i].to, .duration = pieces[i].duration, .before = pieces[i].to, .ramp = {}};
        for (std::size_t back = 1; back <= pieces.size(); ++back) {
            const current_piece& p = pieces[(i + pieces.size() - back) % pieces.size()];
            s.before = p.to;
            if (p.from == p.to) break;
            s.ramp += p.duration;
        }
        out.push_back(s);
    }
    return out;
}

/// Whether one working point stands for a course: direct current; halves of one size, whatever their share of the
/// period; and alternating current without a mean, by its effective value. @param w the course
[[nodiscard]] inline bool has_one_working_point(const waveform& w)
{
    constexpr double even = 1e-9;  // of the effective value
    if (w.is_dc() || std::fabs(w.mean().value()) <= even * w.rms().value()) return true;
    const std::vector<course_level> at = levels_of(w);
    return !at.empty() && std::all_of(at.begin(), at.end(), [&](const course_level& s) {
        return std::fabs(std::fabs(s.current.value()) - w.peak().value()) <= even * w.peak().value();
    });
}

}  // namespace weldloop
