#pragma once
/// @file
/// Heat that leaves a lead lying in a coil of n turns.

#include <cmath>
#include <numbers>

#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>

namespace weldloop {

/// Where the law of the coil comes from.
inline constexpr source coil_bundle_model{
    "coil as a round bundle: surface of the bundle, conduction from its middle",
    {},
    "derived, with three judged numbers: packing 0.75, conductivity across the bundle 0.3 W/(m K), 30 K of rise for "
    "the "
    "surface coefficient; within 6 % of the IEC 60287-2-1 pair and trefoil at 2 and 3 turns, unchecked above",
    source_kind::judgement};

/// Most turns the law of the coil is asked for.
inline constexpr int most_bundled_turns = 200;

/// Heat that each turn of a coil gives off over that of the same lead alone in still air at the same rise of its
/// hottest turn.
///
/// The turns lie close in a round bundle of the diameter B = D sqrt(n/0.75), whose surface gives off the heat of all n:
/// ratio = 1/(n pi D h(D) (1/(pi B h(B)) + (1 - D/B)^2/(4 pi k))), h(D) = (Z/D^g + E) (30 K)^(1/4) of a lone cable by
/// IEC 60287-2-1. The second term is the rise from the axes of the outer turns to the middle of an evenly heated
/// cylinder. k = 0.3 W/(m K): rubber at 0.2 with 40 % of copper in it conducts 0.45 across (Maxwell), the air between
/// the turns takes a third off. A coil thrown loosely gives off more; one on a reel or in a box less.
/// @param turns n, 1 to 200; 1 is the lead alone @param diameter D of the lead [m], above 0
/// @param z Z [W/(m^(2-g) K^(5/4))] @param e E [W/(m2 K^(5/4))] @param g exponent of the lone cable
/// @return 0 to 1
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline double coil_ratio(int turns, length diameter, double z, double e, double g)
{
    require_within(static_cast<double>(turns), 1.0, static_cast<double>(most_bundled_turns), "turns of the coil");
    const double d = require_positive(diameter, "cable diameter").value();
    if (turns == 1) return 1.0;
    constexpr double packing = 0.75;
    constexpr double across = 0.3;         // W/(m K)
    constexpr double typical_rise = 30.0;  // K
    constexpr double pi = std::numbers::pi;
    const double n = turns, bundle = d * std::sqrt(n / packing), warm = std::sqrt(std::sqrt(typical_rise));
    const auto coefficient = [&](double of) { return (z / std::pow(of, g) + e) * warm; };
    const double inside = 1.0 - d / bundle;
    const double rise_per_heat = 1.0 / (pi * bundle * coefficient(bundle)) + inside * inside / (4.0 * pi * across);
    return 1.0 / (n * pi * d * coefficient(d) * rise_per_heat);
}

}  // namespace weldloop
