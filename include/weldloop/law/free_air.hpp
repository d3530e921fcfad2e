#pragma once
/// @file
/// The standard's formula for cables in free air, one row an arrangement.

#include <cmath>

#include <weldloop/core/fraction.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/law/lay.hpp>

namespace weldloop {

/// @name Sources of the rows
/// @{
/// Single cable and touching pair.
inline constexpr source iec_60287_free_air{
    "IEC 60287-2-1", "1994+A1:2001",
    "table 2, heat dissipation in free air, single cable and two touching (constants confirmed by the ratings they "
    "reproduce, not read in the standard)",
    source_kind::derived};
/// Three cables.
inline constexpr source iec_60287_free_air_three{
    "IEC 60287-2-1", "1994+A1:2001",
    "table 2, trefoil and three touching (from memory; they reproduce the method F ratings of IEC 60364-5-52)",
    source_kind::memory};
/// Cables one above the other.
inline constexpr source iec_60287_free_air_vertical{
    "IEC 60287-2-1", "1994+A1:2001",
    "table 2, three spaced one above the other (from memory; it reproduces the method G vertical ratings of IEC "
    "60364-5-52)",
    source_kind::memory};
/// A lead on a floor.
inline constexpr source arrangement_factors{"share of heat that a lead on a floor still gives off",
                                            {},
                                            "judgement; no published formula known",
                                            source_kind::judgement};
/// Air for which the rows hold.
inline constexpr source free_air_base_air{
    "IEC 60364-5-52", "2009",
    "table B.52.12, air at 30 degC: the ratings that confirm the constants of IEC 60287-2-1 in free air",
    source_kind::derived};
/// @}

/// Constants of h = Z/De^g + E of one arrangement in free air.
struct free_air_row {
    double z;                                              ///< Z [W/(m^(2-g) K^(5/4))], any
    double e;                                              ///< E [W/(m2 K^(5/4))], any
    double g;                                              ///< exponent of the diameter, any
    const weldloop::source* source = &iec_60287_free_air;  ///< where they come from
};

/// @name Rows of IEC 60287-2-1 for cables in free air
/// @{
inline constexpr free_air_row free_air_alone{0.21, 3.94, 0.60, &iec_60287_free_air};  ///< single cable
inline constexpr free_air_row free_air_touching_pair{0.29, 2.35, 0.50,
                                                     &iec_60287_free_air};  ///< two touching, side by side
inline constexpr free_air_row free_air_trefoil{0.96, 1.25, 0.20, &iec_60287_free_air_three};  ///< three in a triangle
inline constexpr free_air_row free_air_three_flat{0.62, 1.95, 0.25,
                                                  &iec_60287_free_air_three};  ///< three touching in a row
inline constexpr free_air_row free_air_three_vertical{
    1.31, 2.00, 0.20, &iec_60287_free_air_vertical};            ///< three, half a diameter apart, one above the other
inline constexpr length free_air_widest = in_si<length>(0.15);  ///< largest diameter the rows hold for
/// @}

/// Air that the rows stand for, free_air_base_air: the standard states none, and the ratings that confirm its constants
/// are of air at 30 degC.
inline constexpr temperature free_air_base = temperature::celsius(30.0);

/// Emissivity of the coverings behind the constants, which do not state it.
inline constexpr emissivity covering_emissivity_of_iec = 0.9;

namespace detail {
/// free_air_coefficient() of a diameter [m] that has been checked.
[[nodiscard]] inline double free_air_coefficient(const free_air_row& row, double diameter)
{
    return row.z / std::pow(diameter, row.g) + row.e;
}
}  // namespace detail

/// Heat transfer coefficient per fourth root of the rise in free air, h = Z/De^g + E.
/// @param row constants of the arrangement @param diameter De [m], above 0; up to 0.15 m by the standard
/// @return h [W/(m2 K^(5/4))], plain because its unit has a broken power
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline double free_air_coefficient(const free_air_row& row, length diameter)
{
    return require_finite(detail::free_air_coefficient(row, require_positive(diameter, "cable diameter").value()),
                          "heat transfer coefficient in free air");
}

/// Share of its heat that a lead on a floor still gives off, arrangement_factors.
inline constexpr double on_floor_ratio = 0.80;

/// Heat that a lead among others gives off over that of the same lead alone at the same rise, for the arrangements that
/// leave each lead its own outline.
///
/// For a touching pair, trefoil, three flat and leads one above the other the ratio of the IEC 60287-2-1 rows. `spaced`
/// counts as alone: at one diameter apart side by side the wiring rules give the current of single cables.
/// `spaced_vertical` takes the row of three, which reproduces the published column within 2.3 %; a pair carries 2 to 5
/// % more by the row of two (from memory), which nobody published ratings for. `on_floor` is judgement. Leads in a
/// bundle or a coil have an outline in common and no ratio, see lead_bundle_of(): 1 is returned.
/// @param lay the arrangement @param diameter of a lead [m], above 0
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline double lay_ratio(lay lay, length diameter)
{
    require_positive(diameter, "cable diameter");
    const auto over_alone = [&](const free_air_row& row) {
        return free_air_coefficient(row, diameter) / free_air_coefficient(free_air_alone, diameter);
    };
    switch (lay) {
    case lay::alone:
    case lay::spaced:
    case lay::bundled:
    case lay::coiled: return 1.0;
    case lay::touching_pair: return over_alone(free_air_touching_pair);
    case lay::three_flat: return over_alone(free_air_three_flat);
    case lay::trefoil: return over_alone(free_air_trefoil);
    case lay::spaced_vertical: return over_alone(free_air_three_vertical);
    case lay::on_floor: return on_floor_ratio;
    }
    return 1.0;
}

}  // namespace weldloop
