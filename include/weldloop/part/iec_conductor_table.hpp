#pragma once
/// @file
/// Metric conductors as IEC 60228 limits them.

#include <array>

#include <weldloop/core/source.hpp>

namespace weldloop {

/// @name Sources of the metric conductors
/// @{
/// Highest resistances.
inline constexpr source iec_60228_classes{
    "IEC 60228", "2004", "tables 1 to 4: highest resistance at 20 degC, class 2, 5 and 6", source_kind::standard};
/// Largest strands and diameters.
inline constexpr source iec_60228_strands{"IEC 60228", "2004", "largest strand and largest conductor diameter by class",
                                          source_kind::memory};
/// @}

/// A row of the metric table.
struct iec_conductor_row {
    double area_mm2;                    ///< nominal [mm2]
    double class_2_ohm_per_km;          ///< plain copper, highest at 20 degC [ohm/km]
    double class_2_tinned_ohm_per_km;   ///< [ohm/km] metal-coated copper
    double flexible_ohm_per_km;         ///< [ohm/km] class 5 and 6, plain copper
    double flexible_tinned_ohm_per_km;  ///< [ohm/km] class 5 and 6, metal-coated copper
    double aluminium_ohm_per_km;        ///< [ohm/km] class 2, aluminium; 0: not in the table
    double class_5_strand_mm;           ///< largest strand of class 5 [mm]
    double class_6_strand_mm;           ///< largest strand of class 6 [mm]; 0: not in the table
    double largest_diameter_mm;         ///< largest diameter of a class 5 or 6 conductor [mm]
};

/// Metric conductors, smallest first; see iec_60228_classes, iec_60228_strands.
inline constexpr std::array iec_conductors{
    iec_conductor_row{0.5, 36.0, 36.7, 39.0, 40.1, 0, 0.21, 0.16, 1.1},
    iec_conductor_row{0.75, 24.5, 24.8, 26.0, 26.7, 0, 0.21, 0.16, 1.3},
    iec_conductor_row{1, 18.1, 18.2, 19.5, 20.0, 0, 0.21, 0.16, 1.5},
    iec_conductor_row{1.5, 12.1, 12.2, 13.3, 13.7, 0, 0.26, 0.16, 1.8},
    iec_conductor_row{2.5, 7.41, 7.56, 7.98, 8.21, 0, 0.26, 0.16, 2.4},
    iec_conductor_row{4, 4.61, 4.7, 4.95, 5.09, 0, 0.31, 0.16, 3.0},
    iec_conductor_row{6, 3.08, 3.11, 3.3, 3.39, 0, 0.31, 0.21, 3.9},
    iec_conductor_row{10, 1.83, 1.84, 1.91, 1.95, 3.08, 0.41, 0.21, 5.1},
    iec_conductor_row{16, 1.15, 1.16, 1.21, 1.24, 1.91, 0.41, 0.21, 6.3},
    iec_conductor_row{25, 0.727, 0.734, 0.78, 0.795, 1.2, 0.41, 0.21, 7.8},
    iec_conductor_row{35, 0.524, 0.529, 0.554, 0.565, 0.868, 0.41, 0.21, 9.2},
    iec_conductor_row{50, 0.387, 0.391, 0.386, 0.393, 0.641, 0.41, 0.31, 11.0},
    iec_conductor_row{70, 0.268, 0.27, 0.272, 0.277, 0.443, 0.51, 0.31, 13.1},
    iec_conductor_row{95, 0.193, 0.195, 0.206, 0.21, 0.32, 0.51, 0.31, 15.1},
    iec_conductor_row{120, 0.153, 0.154, 0.161, 0.164, 0.253, 0.51, 0.31, 17.0},
    iec_conductor_row{150, 0.124, 0.126, 0.129, 0.132, 0.206, 0.51, 0.31, 19.0},
    iec_conductor_row{185, 0.0991, 0.1, 0.106, 0.108, 0.164, 0.51, 0.41, 21.0},
    iec_conductor_row{240, 0.0754, 0.0762, 0.0801, 0.0817, 0.125, 0.51, 0.41, 24.0},
    iec_conductor_row{300, 0.0601, 0.0607, 0.0641, 0.0654, 0.1, 0.51, 0.41, 27.0},
    iec_conductor_row{400, 0.047, 0.0475, 0.0486, 0.0495, 0.0778, 0.51, 0, 31.0},
    iec_conductor_row{500, 0.0366, 0.0369, 0.0384, 0.0391, 0.0605, 0.61, 0, 35.0},
    iec_conductor_row{630, 0.0283, 0.0286, 0.0287, 0.0292, 0.0469, 0.61, 0, 39.0},
};

}  // namespace weldloop
