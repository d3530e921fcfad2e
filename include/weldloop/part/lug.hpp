#pragma once
/// @file
/// A cable lug: the crimp on the cable and the bolted palm, as one part.

#include <string>
#include <utility>

#include <weldloop/core/conductor_size.hpp>
#include <weldloop/core/fraction.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/material/metals.hpp>
#include <weldloop/material/surface_state.hpp>

namespace weldloop {

/// A crimped copper lug bolted to a stud or a clamp.
struct lug {
    std::string name = {};                        ///< empty: "lug 1" by its place in the path
    conductor_size size = square_mm(50);          ///< of the cable in its barrel
    conductor_size stamped = square_mm(50);       ///< size the lug is made for
    strand_loss missing_strands = 0.0;            ///< strands that did not get into the barrel
    torque bolt_torque = in_si<torque>(20.0);     ///< [N m] 0 or above, on the palm bolt
    length bolt_diameter = in_si<length>(0.010);  ///< [m] above 0, thread of the palm bolt
    surface_state palm = surface_state::clean;    ///< surface under the palm

    /// The same lug with a share of the strands missing outside the barrel. @param share 0 to below 1
    [[nodiscard]] lug with_missing_strands(strand_loss share) const
    {
        lug out = *this;
        out.missing_strands = share;
        return out;
    }
    /// The same lug, its bolt tightened to a torque; a loose lug has a small one.
    /// @param value [N m], 0 or above @throws not_finite_error, out_of_range_error
    [[nodiscard]] lug tightened_to(torque value) const
    {
        require_not_negative(value, "bolt torque");
        lug out = *this;
        out.bolt_torque = value;
        return out;
    }
};

}  // namespace weldloop
