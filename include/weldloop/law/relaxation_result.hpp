#pragma once
/// @file
/// What a law of stress relaxation says of a spring: how much of its force is gone for good, and within which bounds.
/// Source: derived from exponential creep at constant travel, see series_loss(); the widening is judgement.

#include <algorithm>
#include <cmath>

#include <weldloop/core/band.hpp>
#include <weldloop/core/fraction.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/unit_text.hpp>

namespace weldloop {

/// How a spring was made, as far as its relaxation feels it.
enum class spring_making {
    plain,   ///< coiled and stress-relieved; normal-relaxation wire of the codes
    preset,  ///< set under load while hot; low-relaxation wire of the codes
};

/// What is left of a spring, with its bounds.
struct relaxation {
    fraction lost;  ///< of the plain spring: the cautious value of the two classes
    band<fraction>
        bracket;  ///< plain and preset class as ends, the middle of their exponents between; widened by 3 when flagged
    bool destroyed = false;  ///< hotter than the tempering limit of the wire; everything is lost
    weldloop::basis basis;   ///< sources; flags relaxation_range, spring_destroyed
};

namespace detail {
inline constexpr double extrapolation_factor = 3.0;  // either way, in the exponent r; judgement
// exp(-r) has long been zero; keeps a widened exponent finite
inline constexpr double highest_exponent = 700.0;
inline constexpr double range_rounding = 1e-9;  // an end of a range reached by arithmetic still belongs to it

// What r0 and c of a law r = r0 exp(... + c (P - P0)) can be: past 1/K one kelvin would be all or nothing.
inline void require_relaxation_law(double reference_exponent, const per_kelvin& parameter_slope)
{
    constexpr double steepest = 1.0;  // [1/K]
    require_within(reference_exponent, 0.0, highest_exponent, "reference exponent of relaxation");
    require_positive(parameter_slope, "slope of relaxation by the time-temperature parameter");
    require_within(parameter_slope, {}, in_si<per_kelvin>(steepest),
                   "slope of relaxation by the time-temperature parameter");
}

// r0 exp(x), without a number that is none where nothing relaxes
inline double relaxation_exponent(double reference_exponent, double x)
{
    return reference_exponent > 0.0 ? std::min(reference_exponent * std::exp(x), highest_exponent) : 0.0;
}

inline fraction lost_by(double exponent)
{
    return -std::expm1(-exponent);
}

inline double exponent_of_loss(double lost)
{
    return lost < 1.0 ? std::min(-std::log1p(-lost), highest_exponent) : highest_exponent;
}

inline bool within_range(double x, double low, double high)
{
    return x >= low * (1.0 - range_rounding) && x <= high * (1.0 + range_rounding);
}

inline band<fraction> relaxation_bracket(double plain, double preset, double widened)
{
    return {lost_by(std::min(plain, preset) / widened), lost_by(std::sqrt(plain) * std::sqrt(preset)),
            lost_by(std::max(plain, preset) * widened)};
}
}  // namespace detail

/// Share of its force that a pair of springs in series has lost, 1 - (1 - a)^s (1 - b)^(1 - s).
///
/// They share one force F; element i gives way by c_i F. Relaxing alone at constant travel it would keep exp(-r_i) of
/// its force, which is a creep at the rate r_i' of its elastic travel. With the total travel held, sum c_i (F' + F
/// r_i') = 0, so F/F0 = exp(-sum s_i r_i) with s_i = c_i / sum c. Exact for that law of creep; the stiff element's
/// creep is carried on by the soft one, and counts by its share of the travel only.
/// @param first share a that the first would have lost alone @param share_of_first s, its share of the elastic travel
/// @param second share b that the second would have lost alone @return 1 if one that has a share has lost all
[[nodiscard]] inline fraction series_loss(fraction first, fraction share_of_first, fraction second)
{
    const double s = static_cast<double>(share_of_first);
    const auto part = [](double share, fraction lost) {
        return share > 0.0 ? share * detail::exponent_of_loss(static_cast<double>(lost)) : 0.0;
    };
    if ((s > 0.0 && first == fraction(1.0)) || (s < 1.0 && second == fraction(1.0))) return 1.0;
    return detail::lost_by(part(s, first) + part(1.0 - s, second));
}

}  // namespace weldloop
