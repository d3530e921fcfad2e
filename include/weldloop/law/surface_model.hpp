#pragma once
/// @file
/// The choice of law for the heat that a lone cable gives off in still air.

#include <array>
#include <string_view>

namespace weldloop {

/// How the heat given off by a lone cable in still air is calculated. Grouping, wind, sun and altitude are the same
/// for all three.
///
/// Measured on published currents of cables in air, calculated over published: median and worst error in percent. Each
/// lay of a model has one and the same law; nothing is fitted. tests/law/cable_surface_test.cpp holds the comparison.
///
/// | published ratings (number of sizes)                       | iec_60287 | morgan    | churchill_chu |
/// |-----------------------------------------------------------|-----------|-----------|---------------|
/// | welding lead 85 degC, air 25 degC, 100 % (8, recalled)    | 0.5, 1.4  | 1.8, 2.6  | 4.5, 4.8      |
/// | IEC 60364-5-52 method G, spaced, level (10)               | 0.5, 2.0  | 1.8, 3.6  | 4.1, 5.6      |
/// | IEC 60364-5-52 method F, two touching (6)                 | 1.1, 2.9  | 2.7, 4.0  | 5.1, 6.1      |
/// | IEC 60364-5-52 method F, three flat (6)                   | 1.2, 2.6  | 2.1, 3.3  | 4.5, 5.5      |
/// | IEC 60364-5-52 method F, trefoil (6)                      | 2.5, 4.0  | 1.7, 3.7  | 3.2, 4.6      |
/// | IEC 60364-5-52 method G, one above the other (10)        | 0.7, 2.3  | 2.0, 3.6  | 4.1, 5.7      |
/// | BS 7671 60 degC rubber flexible, pair, 50 to 150 mm2 (3)  | 1.0, 1.8  | 1.5, 2.5  | 2.5, 5.1      |
///
/// All three lie 5 to 21 % above NFPA 70 tables 310.17 and 400.5, which are older and more cautious.
enum class surface_model {
    churchill_chu,  ///< free convection by Churchill and Chu, radiation by the grey-body law
    morgan,         ///< free convection by Morgan's power laws, radiation by the grey-body law
    iec_60287,      ///< IEC 60287-2-1 in air at 30 degC, its radiation that of the air around, the default
};

/// Every model, in the order of the enumeration.
inline constexpr std::array all_surface_models{surface_model::churchill_chu, surface_model::morgan,
                                               surface_model::iec_60287};

/// The word for a model, as printed and as written in station files.
[[nodiscard]] constexpr std::string_view to_text(surface_model m)
{
    switch (m) {
    case surface_model::churchill_chu: return "churchill chu";
    case surface_model::morgan: return "morgan";
    case surface_model::iec_60287: return "iec 60287";
    }
    return "iec 60287";
}

/// The model with the smallest measured error, see surface_model.
inline constexpr surface_model default_surface_model = surface_model::iec_60287;

}  // namespace weldloop
