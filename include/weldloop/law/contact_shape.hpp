#pragma once
/// @file
/// Shapes of contact and the exponent each gives the force law.

#include <string_view>

#include <weldloop/core/source.hpp>

namespace weldloop {

/// How two bodies touch.
enum class contact_shape {
    point,        ///< one point: screw tip, pyramid
    sphere,       ///< dome on flat
    toothed_jaw,  ///< several teeth or a line of points
    busbar,       ///< bolted flat bars
    flat,         ///< lapped flat faces, strands under a screw
};

/// Exponents by shape.
inline constexpr source force_law_exponents{
    "Open data-book wiki Electrical Contacts, Contact Physics - Formulas", "2019-02-07",
    "6.4.2, table of exponent by shape; 0.7 for toothed jaws is its line contact and bus-bar range",
    source_kind::handbook};

/// Exponent m of R = K/(0.102 F)^m.
[[nodiscard]] constexpr double force_law_exponent(contact_shape s)
{
    switch (s) {
    case contact_shape::point: return 0.5;
    case contact_shape::sphere: return 0.6;
    case contact_shape::toothed_jaw: return 0.7;
    case contact_shape::busbar: return 0.6;
    case contact_shape::flat: return 1.0;
    }
    return 0.7;
}

}  // namespace weldloop
