#pragma once
/// @file
/// Steel that a lead lies in, on or through: what it does to the lead's inductance.

#include <array>
#include <string_view>

#include <weldloop/core/band.hpp>
#include <weldloop/core/source.hpp>

namespace weldloop {

/// Steel beside a lead.
enum class steel_beside {
    none,         ///< none within a coil's diameter, or within a hand's breadth of a straight lead
    under_coil,   ///< its coil lies on a steel plate, floor or bench
    within_coil,  ///< its coil is wound round a steel post, bar, drum or piece of work
    round_lead,   ///< it passes alone through a steel frame, hole or pipe, its return outside
};

/// Every place of steel, in the order of the enumeration.
inline constexpr std::array all_steel_beside{steel_beside::none, steel_beside::under_coil, steel_beside::within_coil,
                                             steel_beside::round_lead};

/// The word for steel beside a lead, as printed and as written in station files.
[[nodiscard]] constexpr std::string_view to_text(steel_beside s)
{
    switch (s) {
    case steel_beside::none: return "none";
    case steel_beside::under_coil: return "under the coil";
    case steel_beside::within_coil: return "within the coil";
    case steel_beside::round_lead: return "round the lead";
    }
    return "none";
}

/// Whether steel in this place goes with a lead in a coil. @param s the place
[[nodiscard]] constexpr bool is_of_a_coil(steel_beside s)
{
    return s == steel_beside::under_coil || s == steel_beside::within_coil;
}

/// @name Sources of steel beside a lead
/// @{
/// A coil on a plate.
inline constexpr source steel_image_bound{"mirror image of a coil in iron",
                                          {},
                                          "a plate of any permeability adds at most the coupling of the coil with "
                                          "itself: the inductance is doubled at most",
                                          source_kind::derived};
/// What cannot be bounded that closely.
inline constexpr source steel_beside_judgement{
    "steel multiplies the inductance of a lead: under its coil by 1 to 2, 1.5 typically; within it by 2 to 10, 4 "
    "typically (a short core is open to the air, and welding currents saturate it); round a lead that passes alone by "
    "1.5 to 10, 3 typically, of its whole length",
    "2026",
    {},
    source_kind::judgement};
/// @}

/// By how much steel multiplies the inductance of the lead beside it: judged, for nobody knows the steel. Of a coil on
/// a plate 2 is the highest there can be. @param s the place of the steel
/// @see steel_beside_judgement, steel_image_bound
[[nodiscard]] constexpr band<double> steel_factor(steel_beside s)
{
    switch (s) {
    case steel_beside::none: break;
    case steel_beside::under_coil: return {1.0, 1.5, 2.0};
    case steel_beside::within_coil: return {2.0, 4.0, 10.0};
    case steel_beside::round_lead: return {1.5, 3.0, 10.0};
    }
    return {1.0, 1.0, 1.0};
}

}  // namespace weldloop
