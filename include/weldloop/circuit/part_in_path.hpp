#pragma once
/// @file
/// A part as its neighbours in the path let it be: one crimp is not counted by two parts.

#include <cstddef>
#include <string>
#include <utility>
#include <variant>
#include <vector>

#include <weldloop/circuit/path_part.hpp>
#include <weldloop/core/band.hpp>
#include <weldloop/core/error.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/part/lug.hpp>
#include <weldloop/part/work_clamp.hpp>
#include <weldloop/part/work_connection.hpp>

namespace weldloop {

/// Metal of a clamp without arms.
inline constexpr source least_arms_judgement{
    "a clamp without arms of its own, such as a work lug: 0.1 micro-ohm of metal, a millimetre of 170 mm2 of copper, "
    "between its jaws and a lug bolted to it",
    "2026",
    {},
    source_kind::judgement};
/// Least resistance of the metal between the palm of a lug and the jaws of a clamp [ohm]; see least_arms_judgement.
inline constexpr resistance least_arms = in_si<resistance>(0.1e-6);

/// A clamp whose cable ends in a lug of its own: the crimp, 5 to 20 micro-ohm of the clamp's `termination`, is that
/// lug's, and only the arms are left, `arms` and no less than least_arms.
/// @param c the clamp, arms 0 ohm or above @throws not_finite_error, out_of_range_error
[[nodiscard]] inline work_clamp without_cable_connection(work_clamp c)
{
    require_not_negative(c.arms, "resistance of the arms");
    if (c.arms < least_arms) {
        c.arms = least_arms;
        c.basis.add(least_arms_judgement);
    }
    c.termination = exactly(conductance(1.0 / c.arms));
    return c;
}

/// The part at a place of a path as it is there. A work clamp or magnet beside a lug or set-screw leaves the cable
/// connection to that, so that its crimp, its missing strands and its heat count once; a stud beside a lug leaves it
/// the face of its palm. Any other part is as it stands.
/// @param path the path @param index from 0, within it
/// @throws out_of_range_error; not_finite_error for a clamp that cannot be @see without_cable_connection()
[[nodiscard]] inline path_part part_in_path(const std::vector<path_part>& path, std::size_t index)
{
    if (index >= path.size())
        throw out_of_range_error("path index", std::to_string(index), "below " + std::to_string(path.size()));
    path_part out = path[index];
    const auto beside = [&](const auto& is) {
        return (index + 1 < path.size() && is(path[index + 1])) || (index > 0 && is(path[index - 1]));
    };
    if (holds_the_work(out) && beside(ends_a_cable)) {
        if (auto* clamp = std::get_if<work_connection>(&out))
            clamp->clamp = without_cable_connection(std::move(clamp->clamp));
        if (auto* magnet = std::get_if<work_magnet>(&out)) magnet->lug_beside = true;
    }
    if (auto* stud = std::get_if<stud_terminal>(&out))
        stud->lug_beside =
            stud->lug_beside || beside([](const path_part& p) { return std::holds_alternative<lug>(p); });
    return out;
}

}  // namespace weldloop
