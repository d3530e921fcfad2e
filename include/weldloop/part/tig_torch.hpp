#pragma once
/// @file
/// A torch with a tungsten electrode.

#include <string>
#include <utility>

#include <weldloop/core/conductor_size.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/part/cable.hpp>
#include <weldloop/part/torch_cooling.hpp>
#include <weldloop/part/welding_cable.hpp>

namespace weldloop {

/// What is inside a torch.
inline constexpr source torch_judgement{"tungsten torch: 25 mm2 of copper if cooled by gas, 16 mm2 inside the water "
                                        "hose if cooled by water; crimped at both ends",
                                        "2026",
                                        {},
                                        source_kind::judgement};

/// Conductor usual in a torch. @param cooling of the torch @see torch_judgement
[[nodiscard]] constexpr conductor_size usual_torch_cable(torch_cooling cooling)
{
    return cooling == torch_cooling::water ? square_mm(16) : square_mm(25);
}

/// A tungsten torch with its cable. The cable inside (`lead`) is rated as a lead, if water does not cool it.
struct tig_torch {
    std::string name = {};                                          ///< empty: "tig torch 3" by its place in the path
    torch_cooling cooling = torch_cooling::gas;                     ///< of the cable
    cable lead = welding_cable(square_mm(25), in_si<length>(4.0));  ///< conductor from the supply to the torch body

    /// A gas-cooled torch of 4 m without a name.
    tig_torch() = default;
    /// A torch of the usual make. @param n name, may be empty @param long_ of its cable [m], above 0 @param c cooling
    /// @throws not_finite_error, out_of_range_error @see torch_judgement
    tig_torch(std::string n, length long_, torch_cooling c = torch_cooling::gas)
        : name(std::move(n)), cooling(c), lead(welding_cable(usual_torch_cable(c), long_))
    {
    }
};

}  // namespace weldloop
