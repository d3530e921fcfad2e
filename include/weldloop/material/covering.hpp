#pragma once
/// @file
/// Coverings of leads: what stands between strands and air.

#include <array>
#include <string_view>

#include <weldloop/core/fraction.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/source.hpp>

namespace weldloop {

/// @name Sources of the covering table
/// @{

/// Thermal resistivities.
inline constexpr source iec_60287_2_1_table_1{
    "IEC 60287-2-1", "1994+A1:2001",
    "table 1, thermal resistivities (second text: Rifaldi, Universidad Nacional de La Plata)", source_kind::standard};
/// Heat stored per volume.
inline constexpr source iec_60853_heat{"IEC 60853-2", "1989", "heat stored per volume, annex", source_kind::memory};
/// Emissivity of rubber.
inline constexpr source rubber_emissivity{"Holman, Heat Transfer", "9th edition",
                                          "appendix A-10: rubber 0.86 to 0.95; cable surfaces are taken as 0.9",
                                          source_kind::handbook};
/// @}

/// A covering material.
struct covering {
    std::string_view name;                                ///< as printed and as written in station files
    weldloop::thermal_conductivity thermal_conductivity;  ///< [W/(m K)], one over the published thermal resistivity
    volumetric_heat heat_per_volume;                      ///< [J/(m3 K)]
    weldloop::emissivity emissivity;                      ///< of its surface
};

/// Natural or synthetic rubber, the usual covering of welding leads: 5.0 K m/W.
inline constexpr covering flexible_rubber{"rubber", in_si<thermal_conductivity>(1.0 / 5.0),
                                          in_si<volumetric_heat>(2.0e6), 0.9};
/// Polychloroprene: 5.5 K m/W.
inline constexpr covering polychloroprene{"polychloroprene", in_si<thermal_conductivity>(1.0 / 5.5),
                                          in_si<volumetric_heat>(2.0e6), 0.9};
/// Ethylene-propylene rubber: 3.5 K m/W.
inline constexpr covering ethylene_propylene{"ethylene-propylene rubber", in_si<thermal_conductivity>(1.0 / 3.5),
                                             in_si<volumetric_heat>(2.0e6), 0.9};
/// Plasticised polyvinyl chloride: 5.0 K m/W.
inline constexpr covering pvc{"pvc", in_si<thermal_conductivity>(1.0 / 5.0), in_si<volumetric_heat>(1.7e6), 0.9};
/// Cross-linked polyethylene: 3.5 K m/W.
inline constexpr covering xlpe{"xlpe", in_si<thermal_conductivity>(1.0 / 3.5), in_si<volumetric_heat>(2.4e6), 0.9};

/// Every covering of the table.
inline constexpr std::array all_coverings{flexible_rubber, polychloroprene, ethylene_propylene, pvc, xlpe};

}  // namespace weldloop
