#pragma once
/// @file
/// A contact whose force falls while nothing moves: its spots, pressed flat before, stay as they are, and so does its
/// resistance, until so little force is left that they part. Moved, it is that of the force left.

#include <cmath>

#include <weldloop/core/fraction.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>

namespace weldloop {

/// How far a force may fall before an untouched contact shows it.
inline constexpr source unloading_measured{
    "force and resistance of a connector contact, measured as its force relaxed from 300 gf (a report known at second "
    "hand)",
    "2012",
    "resistance constant down to under 100 gf; a third is taken for the end of that, where it was still constant",
    source_kind::derived};
/// Below that share.
inline constexpr source unloading_judgement{
    "an untouched contact below a third of the force it was seated with: by the force law from there",
    "2026",
    {},
    source_kind::judgement};

/// Share of the force it was seated with down to which an untouched contact keeps its resistance.
inline constexpr double unloading_share = 1.0 / 3.0;

/// Resistance of an untouched contact over that when it was seated, 1 down to a third of its force and
/// (3 F/F0)^-m below: never above that of a moved one, (F/F0)^-m.
/// @param left F/F0, share of the force it was seated with, above 0 @param exponent m of the force law, 0.1 to 1.5
/// @throws not_finite_error, out_of_range_error @see unloading_measured, unloading_judgement
[[nodiscard]] inline double untouched_resistance_factor(fraction left, double exponent)
{
    const double share = static_cast<double>(left);
    if (!(share > 0.0)) throw out_of_range_error("force left", "0", "above zero: without force nothing conducts");
    require_within(exponent, 0.1, 1.5, "force-law exponent");
    if (share >= unloading_share) return 1.0;
    return require_finite(std::pow(share / unloading_share, -exponent), "resistance of an untouched contact");
}

}  // namespace weldloop
