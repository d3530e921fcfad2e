#pragma once
/// @file
/// Resistivity of copper and aluminium against temperature by table, beyond the linear law.

#include <algorithm>
#include <array>
#include <cstddef>
#include <span>
#include <string>

#include <weldloop/core/error.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/material/metals.hpp>

namespace weldloop {

/// @name Sources of the tables
/// @{
/// Pure copper.
inline constexpr source matula_copper{"Matula, J. Phys. Chem. Ref. Data 8(4), 1147", "1979",
                                      "table 2, total resistivity of copper, 273 to 1358 K", source_kind::paper};
/// Pure aluminium. One row of it was read, the others are recalled.
inline constexpr source crc_aluminium{"Handbook of Chemistry and Physics (Desai, James, Ho 1984)", "78th edition",
                                      "section 12, aluminium, 273 to 800 K", source_kind::memory};
/// How the table of the pure metal is carried over to a conductor.
inline constexpr source impurity_rule{
    "Matthiessen's rule: impurities add the same resistivity at every temperature", {}, {}, source_kind::derived};
/// @}

/// A point of a table of resistivity.
struct resistivity_point {
    double kelvin;  ///< [K]
    double nohm_m;  ///< [nohm m]
};

/// Pure copper; see matula_copper.
inline constexpr std::array copper_resistivity_table{
    resistivity_point{273.15, 15.43}, resistivity_point{293, 16.78},  resistivity_point{300, 17.25},
    resistivity_point{350, 20.63},    resistivity_point{400, 24.02},  resistivity_point{500, 30.90},
    resistivity_point{600, 37.92},    resistivity_point{700, 45.14},  resistivity_point{800, 52.62},
    resistivity_point{900, 60.41},    resistivity_point{1000, 68.58}, resistivity_point{1100, 77.17},
    resistivity_point{1200, 86.26},   resistivity_point{1300, 95.92}, resistivity_point{1357.6, 101.71},
};

/// Pure aluminium; see crc_aluminium.
inline constexpr std::array aluminium_resistivity_table{
    resistivity_point{273, 24.17}, resistivity_point{293, 26.50}, resistivity_point{300, 27.33},
    resistivity_point{400, 38.7},  resistivity_point{500, 49.9},  resistivity_point{600, 61.3},
    resistivity_point{700, 73.5},  resistivity_point{800, 87.0},
};

/// A resistivity from a table.
struct tabulated_resistivity {
    weldloop::resistivity resistivity;  ///< [ohm m]
    weldloop::basis basis;              ///< sources; range_flag::resistivity_range outside the table
};

namespace detail {

/// The table of the metal that a conductor is made of. @throws missing_data_error
[[nodiscard]] inline std::span<const resistivity_point> resistivity_table_of(const metal& metal)
{
    if (metal == annealed_copper || metal == tinned_copper) return copper_resistivity_table;
    if (metal == aluminium) return aluminium_resistivity_table;
    throw missing_data_error("table of resistivity", std::string(metal.name), "copper, tinned copper, aluminium");
}

/// Straight lines between the points; beyond the ends the end lines go on [nohm m].
[[nodiscard]] inline double along_table(std::span<const resistivity_point> table, double kelvin)
{
    std::size_t above = 1;
    while (above + 1 < table.size() && table[above].kelvin < kelvin) ++above;
    const resistivity_point& a = table[above - 1];
    const resistivity_point& b = table[above];
    return a.nohm_m + (b.nohm_m - a.nohm_m) * (kelvin - a.kelvin) / (b.kelvin - a.kelvin);
}

}  // namespace detail

/// Resistivity of a conductor by the table of its pure metal, rho(T) = rho20 + (rho_pure(T) - rho_pure(20 degC)): what
/// makes the conductor worse than the pure metal at 20 degC adds the same at every temperature.
///
/// Straight lines between the points of the table, which lie 0.1 % or less above the curve between. Outside the table
/// the end lines go on and `resistivity_range` is flagged; where the lower one has fallen to zero, near 45 K for
/// copper, the temperature is refused.
///
/// metal::resistivity_at(), the linear law, against this, percent: copper 0.0 at 0 degC, 0.1 at 90, -0.2 at 200, -0.8
/// at 300, -2.5 at 500, -10.8 at 1000. Aluminium (table recalled) 0.2 at 0 degC, -0.1 at 90, 0.3 at 200, -0.6 at 400,
/// -3.0 at 520.
///
/// Accuracy: copper 0.5 % by its source, which covers the pure metal; measured ratios of NBS Handbook 100 (copper, 0 to
/// 500 degC) are met within 0.35 %. Multiplying the table of the pure metal instead would lie up to 2.2 % above them.
/// @param metal copper, tinned copper or aluminium @param t of the conductor
/// @return [ohm m]
/// @throws missing_data_error for another metal; out_of_range_error where the extrapolated line has ended
[[nodiscard]] inline tabulated_resistivity tabulated_resistivity_of(const metal& metal, temperature t)
{
    const std::span<const resistivity_point> table = detail::resistivity_table_of(metal);
    const double above_reference =
        detail::along_table(table, t.in_kelvin()) - detail::along_table(table, reference_temperature.in_kelvin());
    tabulated_resistivity out{require_positive(metal.resistivity, "resistivity") + detail::nohm_m(above_reference), {}};
    require_finite(out.resistivity, "resistivity");
    if (!(out.resistivity.value() > 0.0))
        throw out_of_range_error("temperature", number_text(t.in_kelvin()) + " K",
                                 "where the table's first line is above zero");
    out.basis.add(metal == aluminium ? crc_aluminium : matula_copper).add(impurity_rule);
    if (metal.electrical_source) out.basis.add(*metal.electrical_source);
    if (t.in_kelvin() < table.front().kelvin || t.in_kelvin() > table.back().kelvin)
        out.basis.add(range_flag::resistivity_range);
    return out;
}

}  // namespace weldloop
