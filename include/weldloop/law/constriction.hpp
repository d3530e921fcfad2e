#pragma once
/// @file
/// Constriction resistance: what current pays for squeezing through the few spots where two bodies really touch.
///
/// Range of the whole file: spots small against both bodies (bodies at least 150 spot radii wide keep the error below
/// 1 %) and large against the free path of the electrons, about 40 nm in copper. No film in the spots.

#include <cmath>
#include <cstddef>
#include <limits>
#include <numbers>
#include <span>

#include <weldloop/core/fraction.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>

namespace weldloop {

/// One round spot; bearing area of a plastic contact.
inline constexpr source holm_constriction{
    "Holm, Electric Contacts", "4th edition 1967",
    "rho/(4a) for each side of a spot; A = F/(xi H) (relation confirmed in open code citing Holm)",
    source_kind::handbook};
/// Many spots.
inline constexpr source greenwood_spots{
    "Greenwood, Constriction resistance and the real area of contact, Br. J. Appl. Phys. 17", "1966",
    "pair sum over spots; short form with the radius of the cluster", source_kind::memory};
/// Radius of a cluster.
inline constexpr source cluster_radius_of_disc{
    "mean of 1/s over a disc, 16/(3 pi r)", {}, "gives the cluster radius 3 pi^2 r/32", source_kind::derived};

namespace detail {
struct pressure_factor_rule {
    static constexpr const char* name = "pressure factor";
    static constexpr double low = 0.0, high = 1.0, initial = 1.0;
    static constexpr bool low_excluded = true, high_excluded = false;
};
}  // namespace detail

/// Mean pressure in the spots over the hardness, above 0 to 1: 1 fully plastic, 0.45 to 0.75 common, 0.1 to 0.3 for
/// lightly loaded smooth contacts (Holm, from memory).
using pressure_factor = bounded_number<detail::pressure_factor_rule>;

/// Resistance of one round spot between bodies of one metal, rho/(2a) [ohm].
/// @param rho resistivity [ohm m], above 0 @param radius a of the spot [m], above 0
/// @throws not_finite_error, out_of_range_error @see holm_constriction for source and range
[[nodiscard]] inline resistance constriction_resistance(resistivity rho, length radius)
{
    const resistance found = require_positive(rho, "resistivity") / (2.0 * require_positive(radius, "spot radius"));
    return require_finite(found, "constriction resistance");
}

/// Resistance of one round spot between two metals, (rho1 + rho2)/(4a) [ohm].
/// @param first  resistivity of one body [ohm m], above 0 @param second of the other [ohm m], above 0
/// @param radius a of the spot [m], above 0
/// @throws not_finite_error, out_of_range_error @see holm_constriction for source and range
[[nodiscard]] inline resistance constriction_resistance(resistivity first, resistivity second, length radius)
{
    require_positive(first, "resistivity");
    require_positive(second, "resistivity");
    const resistance found = (first + second) / (4.0 * require_positive(radius, "spot radius"));
    return require_finite(found, "constriction resistance");
}

/// Area that bears the load of a contact that has yielded, F/(xi H) [m2].
/// @param pressing force F [N], 0 or above; no force, no area
/// @param hardness indentation hardness H of the softer body [Pa], above 0
/// @param factor   xi, see pressure_factor
/// @throws not_finite_error, out_of_range_error @see holm_constriction
[[nodiscard]] inline area bearing_area(weldloop::force pressing, pressure hardness, pressure_factor factor = 1.0)
{
    require_not_negative(pressing, "contact force");
    require_positive(hardness, "hardness");
    return require_finite(in_si<area>(pressing.value() / (static_cast<double>(factor) * hardness.value())),
                          "bearing area");
}

/// Radius of the one round spot that bears a force, sqrt(F/(pi xi H)) [m]. Zero without force: the bodies do not touch.
/// @param pressing force F [N], 0 or above
/// @param hardness indentation hardness H of the softer body [Pa], above 0
/// @param factor   xi, see pressure_factor
/// @throws not_finite_error, out_of_range_error @see holm_constriction
[[nodiscard]] inline length spot_radius(weldloop::force pressing, pressure hardness, pressure_factor factor = 1.0)
{
    return in_si<length>(std::sqrt(bearing_area(pressing, hardness, factor).value() / std::numbers::pi));
}

/// A round spot in the plane of contact.
struct contact_spot {
    length x;       ///< [m] position of its centre, any
    length y;       ///< [m] position of its centre, any
    length radius;  ///< [m], above 0
};

/// Resistance of many spots in parallel that crowd each other, Greenwood's pair sum [ohm]:
/// R = rho/(2 sum a_i) + (rho/pi) sum_{i != j} (a_i a_j/s_ij) / (sum a_i)^2.
///
/// Within 1 % for spots at least 5 radii apart; nearer ones are an approximation. Two metals: give the mean of their
/// resistivities. One spot gives rho/(2a). Time grows with the square of the number of spots.
/// @param rho resistivity [ohm m], above 0 @param spots at least one; none may overlap another
/// @throws not_finite_error, out_of_range_error (also for overlapping spots) @see greenwood_spots
[[nodiscard]] inline resistance constriction_resistance(resistivity rho, std::span<const contact_spot> spots)
{
    require_positive(rho, "resistivity");
    if (spots.empty()) throw out_of_range_error("number of spots", "0", "at least one");
    double sum = 0.0, pairs = 0.0;
    for (std::size_t i = 0; i < spots.size(); ++i) {
        require_finite(spots[i].x, "spot position");
        require_finite(spots[i].y, "spot position");
        sum += require_positive(spots[i].radius, "spot radius").value();
        for (std::size_t j = 0; j < i; ++j) {
            const double apart = std::hypot((spots[i].x - spots[j].x).value(), (spots[i].y - spots[j].y).value());
            const double touching = (spots[i].radius + spots[j].radius).value();
            if (apart < touching)
                throw out_of_range_error("distance of two spots", number_text(apart) + " m",
                                         "at least the sum of their radii, " + number_text(touching) + " m");
            pairs += 2.0 * spots[i].radius.value() * spots[j].radius.value() / apart;
        }
    }
    return require_finite(in_si<resistance>(rho.value() * (0.5 / sum + pairs / (std::numbers::pi * sum * sum))),
                          "constriction resistance");
}

/// Radius of the single spot that crowds current as a disc full of evenly spread spots does, 3 pi^2 r/32 = 0.925 r [m].
/// @param disc_radius r of the disc that holds the spots [m], above 0
/// @throws not_finite_error, out_of_range_error @see cluster_radius_of_disc
[[nodiscard]] inline length cluster_radius(length disc_radius)
{
    return (3.0 * std::numbers::pi * std::numbers::pi / 32.0) * require_positive(disc_radius, "disc radius");
}

/// Resistance of n equal spots spread evenly over a disc, the short form rho/(2 n a) + rho/(2 alpha) [ohm].
/// It lies above the pair sum, because it lets a spot crowd itself: by 1.18/sqrt(n) of its second term (derived, holds
/// for many spots).
/// @param rho    resistivity [ohm m], above 0 (two metals: their mean)
/// @param count  n, at least 1 @param radius a of one spot [m], above 0
/// @param alpha  radius of the cluster [m], see cluster_radius(), at least `radius`
/// @throws not_finite_error, out_of_range_error @see greenwood_spots
[[nodiscard]] inline resistance clustered_constriction_resistance(resistivity rho, int count, length radius,
                                                                  length alpha)
{
    require_positive(rho, "resistivity");
    require_within(count, 1.0, static_cast<double>(std::numeric_limits<int>::max()), "number of spots");
    require_positive(radius, "spot radius");
    require_within(alpha, radius, in_si<length>(std::numeric_limits<double>::max()), "cluster radius");
    const resistance found = rho / (2.0 * count * radius) + rho / (2.0 * alpha);
    return require_finite(found, "constriction resistance");
}

}  // namespace weldloop
