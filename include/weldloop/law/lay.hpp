#pragma once
/// @file
/// The ways leads lie beside each other, named once for the surface laws and the parts.

#include <array>
#include <string_view>

namespace weldloop {

/// Arrangement of loaded leads.
enum class lay {
    alone,            ///< one lead, air all round
    touching_pair,    ///< out and back leads side by side, touching
    three_flat,       ///< three touching in a row
    trefoil,          ///< three touching in a triangle
    spaced,           ///< side by side with at least one diameter between
    spaced_vertical,  ///< one above the other with at least half a diameter between, out and back, or three
    on_floor,         ///< one lead lying on a floor
    bundled,          ///< several leads tied together
    coiled,           ///< spare length left in a coil
};

/// Every arrangement, in the order of the enumeration.
inline constexpr std::array all_lays{lay::alone,    lay::touching_pair, lay::three_flat,
                                     lay::trefoil,  lay::spaced,        lay::spaced_vertical,
                                     lay::on_floor, lay::bundled,       lay::coiled};

/// The word for an arrangement, as printed and as written in station files.
[[nodiscard]] constexpr std::string_view to_text(lay l)
{
    switch (l) {
    case lay::alone: return "alone";
    case lay::touching_pair: return "touching pair";
    case lay::three_flat: return "three flat";
    case lay::trefoil: return "trefoil";
    case lay::spaced: return "spaced";
    case lay::spaced_vertical: return "spaced vertical";
    case lay::on_floor: return "on floor";
    case lay::bundled: return "bundled";
    case lay::coiled: return "coiled";
    }
    return "alone";
}

}  // namespace weldloop
