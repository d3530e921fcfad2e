#pragma once
/// @file
/// Elasticity of the metals that meet in contacts.

#include <array>
#include <string>
#include <string_view>

#include <weldloop/core/error.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/material/metal.hpp>
#include <weldloop/material/metals.hpp>

namespace weldloop {

/// Moduli of metals.
inline constexpr source elastic_constants_recalled{"Shigley, Mechanical Engineering Design", "9th edition 2011",
                                                   "table A-5, physical constants of materials", source_kind::memory};

/// Elastic constants of a metal at 20 degC.
struct elastic_metal {
    std::string_view name;  ///< of the metal
    pressure youngs;        ///< E [Pa], above 0
    double poisson;         ///< ratio nu, 0 to 0.5
    const source* from;     ///< where both come from
};

/// The metals with elastic constants. A coat of tin is too thin to count: tinned copper is as copper. Copper-clad
/// aluminium has none: no published value was found.
inline constexpr std::array elastic_metals{
    elastic_metal{annealed_copper.name, 119_GPa, 0.326, &elastic_constants_recalled},
    elastic_metal{tinned_copper.name, 119_GPa, 0.326, &elastic_constants_recalled},
    elastic_metal{aluminium.name, 71.7_GPa, 0.333, &elastic_constants_recalled},
    elastic_metal{brass.name, 106_GPa, 0.324, &elastic_constants_recalled},
    elastic_metal{bronze.name, 111_GPa, 0.349, &elastic_constants_recalled},
    elastic_metal{mild_steel.name, 207_GPa, 0.292, &elastic_constants_recalled},
    elastic_metal{stainless_steel.name, 190_GPa, 0.305, &elastic_constants_recalled},
};

/// The elastic constants of a metal, known by its name. @param m the metal
/// @throws missing_data_error for a metal without a row @see elastic_constants_recalled
[[nodiscard]] inline const elastic_metal& elasticity_of(const metal& m)
{
    for (const elastic_metal& row : elastic_metals)
        if (row.name == m.name) return row;
    throw missing_data_error("elastic constants", "of " + std::string(m.name), "a metal of elastic_metals");
}

}  // namespace weldloop
