#pragma once
/// @file
/// A flexible welding lead.

#include <optional>
#include <string>
#include <utility>

#include <weldloop/core/conductor_size.hpp>
#include <weldloop/core/fraction.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/law/lay.hpp>
#include <weldloop/material/covering.hpp>
#include <weldloop/material/metals.hpp>
#include <weldloop/part/covering_state.hpp>
#include <weldloop/part/resistance_choice.hpp>
#include <weldloop/part/steel_beside.hpp>

namespace weldloop {

/// What welding_cable() gave a lead: what differs from it was stated by the user.
struct lead_make {
    length conductor_diameter = {};                                      ///< [m] any, over the strands
    length overall_diameter = {};                                        ///< [m] any, over the covering
    double stranding_increment = 0.0;                                    ///< [1] any, of resistance
    resistance_choice resistance = resistance_choice::standard_maximum;  ///< which of the two it is
};

/// A lead: a stranded conductor with a covering. Make one with welding_cable() and change what differs.
struct cable {
    conductor_size size;                            ///< as written on the lead
    weldloop::length length;                        ///< [m] one way, above 0
    std::optional<temperature> limit = {};          ///< highest conductor temperature, where one is stated; none: that
                                                    ///< of covering and strands, see conductor_limit_of()
    std::string name = {};                          ///< empty: "cable 2" by its place in the path
    weldloop::metal metal = annealed_copper;        ///< of the strands
    weldloop::covering covering = flexible_rubber;  ///< around them
    weldloop::length conductor_diameter = {};  ///< [m] above 0, over the strands; 0: not known, refused where needed
    weldloop::length overall_diameter = {};    ///< [m] above the other, over the covering; 0: not known
    double stranding_increment = 0.0;          ///< [1] 0 to 1, extra resistance by the lay of the strands and what the
                                               ///< standard allows above it, 0.06 for 6 %
    strand_loss missing_strands = 0.0;         ///< share of strands broken or corroded away
    weldloop::length damaged_length = {};      ///< [m] 0 to the length, over which they are missing
    weldloop::covering_state covering_state = weldloop::covering_state::whole;  ///< what was seen of the covering
    std::optional<weldloop::lay> lay = {};  ///< how this lead lies, where it differs from the surroundings
    std::optional<int> coil_turns = {};     ///< where its own lay is coiled, up to 200; none if not known
    std::optional<int> bundled_leads = {};  ///< where its own lay is bundled, up to 200; none if not known
    weldloop::steel_beside steel = weldloop::steel_beside::none;  ///< that it lies in, on or through: for inductance
    bool dimensions_interpolated = false;                         ///< diameters interpolated between published sizes
    bool dimensions_extrapolated = false;                         ///< diameters beyond the published sizes
    lead_make made = {};                                          ///< what welding_cable() gave it

    /// The same lead under a name.
    [[nodiscard]] cable named(std::string new_name) const
    {
        cable out = *this;
        out.name = std::move(new_name);
        return out;
    }
};

}  // namespace weldloop
