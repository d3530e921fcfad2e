#pragma once
/// @file
/// A holder for covered electrodes.

#include <string>
#include <utility>

#include <weldloop/core/conductor_size.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/material/metals.hpp>
#include <weldloop/material/surface_state.hpp>

namespace weldloop {

/// Cable and jaws of a holder by its rated current.
inline constexpr source holder_judgement{
    "electrode holder: 25 mm2 up to 150 A, 35 up to 200, 50 up to 300, 70 up to 400, 95 up to 500, 120 above; two live "
    "brass jaws with a groove each, four lines of three points on the rod, that press 1.6 N for each ampere of the "
    "rating: so much "
    "that "
    "on a clean rod the spots of a new one hold at its rating, also at the 95 % point",
    "2026",
    {},
    source_kind::judgement};

namespace detail {
inline constexpr current highest_holder_rating = 2000_A;

constexpr void require_holder_rating(current rated)
{
    if (!(rated >= current{} && rated <= highest_holder_rating))
        refuse_outside(rated, current{}, highest_holder_rating, "rated current");
}
}  // namespace detail

/// Cable usual in a holder. @param rated current of the holder [A], 0 to 2000
/// @throws not_finite_error, out_of_range_error @see holder_judgement
[[nodiscard]] constexpr conductor_size usual_holder_cable(current rated)
{
    detail::require_holder_rating(rated);
    return rated <= 150_A   ? square_mm(25)
           : rated <= 200_A ? square_mm(35)
           : rated <= 300_A ? square_mm(50)
           : rated <= 400_A ? square_mm(70)
           : rated <= 500_A ? square_mm(95)
                            : square_mm(120);
}

/// Force of a holder's jaws on the rod when new [N]. @param rated current of the holder [A], 0 to 2000
/// @throws not_finite_error, out_of_range_error @see holder_judgement
[[nodiscard]] constexpr force usual_holder_force(current rated)
{
    constexpr double newton_by_ampere = 1.6;
    detail::require_holder_rating(rated);
    return in_si<force>(newton_by_ampere * rated.value());
}
/// Points at which the two grooves touch the rod; see holder_judgement.
inline constexpr int holder_contact_points = 12;

/// A hand-held holder: a cable end crimped into it, and jaws on the bare end of the rod.
struct electrode_holder {
    std::string name = {};                                              ///< empty: "holder 3" by its place in the path
    current rated = in_si<current>(300.0);                              ///< [A] printed on it, above 0 to 2000
    conductor_size size = usual_holder_cable(in_si<current>(300.0));    ///< of the cable in it
    metal jaws = brass;                                                 ///< metal of the jaws
    metal rod = mild_steel;                                             ///< metal of the electrode's core
    weldloop::force force = usual_holder_force(in_si<current>(300.0));  ///< [N] 0 or above, of the jaws on the rod
    surface_state surface = surface_state::clean;                       ///< of jaws and rod end

    /// A holder for 300 A without a name.
    electrode_holder() = default;
    /// A clean holder. @param n name, may be empty @param amps rated current [A], above 0 to 2000
    /// @throws not_finite_error, out_of_range_error
    electrode_holder(std::string n, current amps)
        : name(std::move(n)), rated(require_within(require_positive(amps, "rated current"), 0_A,
                                                   detail::highest_holder_rating, "rated current")),
          size(usual_holder_cable(amps)), force(usual_holder_force(amps))
    {
    }
};

}  // namespace weldloop
