#pragma once
/// @file
/// Springs in series held at one total travel: how the relaxation of each takes force from all.
///
/// They share one force F; element i gives way by c_i F. Relaxing alone at constant travel it would keep exp(-r_i) of
/// its force, which is a creep at the rate r_i' of its elastic travel. With the total travel held, sum c_i (F' + F
/// r_i') = 0, so F/F0 = exp(-sum s_i r_i) with s_i = c_i / sum c. Exact for that law of creep; the stiff element's
/// creep is carried on by the soft one, and counts by its share of the travel only.

#include <weldloop/core/fraction.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/law/relaxation_result.hpp>

namespace weldloop {

/// Share of its force that a pair of springs in series has lost, 1 - (1 - a)^s (1 - b)^(1 - s).
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
