#pragma once
/// @file
/// What a law of stress relaxation says of a spring: how much of its force is gone for good, and within which bounds.

#include <algorithm>
#include <cmath>

#include <weldloop/core/band.hpp>
#include <weldloop/core/fraction.hpp>
#include <weldloop/core/source.hpp>

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
inline constexpr double seconds_per_hour = 3600.0;
inline constexpr double extrapolation_factor = 3.0;  // either way, in the exponent r; judgement
// exp(-r) has long been zero; keeps a widened exponent finite
inline constexpr double highest_exponent = 700.0;
inline constexpr double range_rounding = 1e-9;  // an end of a range reached by arithmetic still belongs to it

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

}  // namespace weldloop
