#pragma once
/// @file
/// Coverings of leads: what stands between strands and air.

#include <array>
#include <optional>
#include <string_view>

#include <weldloop/core/fraction.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/temperature.hpp>

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
/// Leads of the usual covering.
inline constexpr source cable_class_85{"BS 638-4 welding cable", "1996",
                                       "85 degC conductor of heat-resisting rubber covering", source_kind::standard};
/// Leads covered with polychloroprene.
inline constexpr source en_50525_2_81_covering{"EN 50525-2-81 (IEC 60245-6 before it)", "2011; 1994",
                                               "arc-welding cable covered with chloroprene compound, 85 degC conductor",
                                               source_kind::memory};
/// Conductors of plastic and rubber insulations.
inline constexpr source iec_60364_conductor_limits{
    "IEC 60364-5-52 (same in BS 7671)", "2009; 2018",
    "table 52.1: thermoplastic 70 degC, thermosetting (XLPE, EPR) 90 degC at the conductor", source_kind::standard};
/// Conductors after a short circuit.
inline constexpr source iec_60364_short_circuit{
    "IEC 60364-4-43 (same in IEC 60364-5-54 and BS 7671)", "2008; 2011; 2018",
    "table 43A: end of a short circuit up to 5 s, thermoplastic up to 300 mm2 160 degC, thermosetting 250 degC",
    source_kind::standard};
/// The same of rubber.
inline constexpr source iec_60364_short_circuit_rubber{
    "IEC 60364-4-43 (same in IEC 60364-5-54 and BS 7671)", "2008; 2011; 2018",
    "table 43A: end of a short circuit up to 5 s, 85 degC rubber 220 degC", source_kind::memory};
/// Leads moved in the cold.
inline constexpr source en_50565_cold{"EN 50565-1 (HD 516 before it)", "2014",
                                      "lowest temperature at which flexible cables are laid and handled: thermoplastic "
                                      "5 degC, rubber -25 degC",
                                      source_kind::memory};
/// @}

/// A covering material.
struct covering {
    std::string_view name;  ///< as printed and as written in station files
    weldloop::thermal_conductivity
        thermal_conductivity;                         ///< [W/(m K)] above 0, one over the published thermal resistivity
    volumetric_heat heat_per_volume;                  ///< [J/(m3 K)] above 0
    weldloop::emissivity emissivity;                  ///< of its surface
    std::optional<temperature> highest = {};          ///< of the conductor, all the time; none: not known
    const source* highest_source = nullptr;           ///< where that stands
    std::optional<temperature> short_time = {};       ///< of the conductor at the end of a short circuit of at
                                                      ///< most 5 s; none: not known
    const source* short_time_source = nullptr;        ///< where that stands
    std::optional<temperature> coldest_handled = {};  ///< of the lead while it is bent or knocked; none: not known
    const source* coldest_handled_source = nullptr;   ///< where that stands
};

/// Natural or synthetic rubber, the usual covering of welding leads: 5.0 K m/W.
inline constexpr covering flexible_rubber{"rubber",
                                          in_si<thermal_conductivity>(1.0 / 5.0),
                                          in_si<volumetric_heat>(2.0e6),
                                          0.9,
                                          temperature::celsius(85),
                                          &cable_class_85,
                                          temperature::celsius(220),
                                          &iec_60364_short_circuit_rubber,
                                          temperature::celsius(-25),
                                          &en_50565_cold};
/// Polychloroprene: 5.5 K m/W.
inline constexpr covering polychloroprene{"polychloroprene",
                                          in_si<thermal_conductivity>(1.0 / 5.5),
                                          in_si<volumetric_heat>(2.0e6),
                                          0.9,
                                          temperature::celsius(85),
                                          &en_50525_2_81_covering,
                                          temperature::celsius(220),
                                          &iec_60364_short_circuit_rubber,
                                          temperature::celsius(-25),
                                          &en_50565_cold};
/// Ethylene-propylene rubber: 3.5 K m/W.
inline constexpr covering ethylene_propylene{"ethylene-propylene rubber",   in_si<thermal_conductivity>(1.0 / 3.5),
                                             in_si<volumetric_heat>(2.0e6), 0.9,
                                             temperature::celsius(90),      &iec_60364_conductor_limits,
                                             temperature::celsius(250),     &iec_60364_short_circuit,
                                             temperature::celsius(-25),     &en_50565_cold};
/// Plasticised polyvinyl chloride: 5.0 K m/W.
inline constexpr covering pvc{"pvc",
                              in_si<thermal_conductivity>(1.0 / 5.0),
                              in_si<volumetric_heat>(1.7e6),
                              0.9,
                              temperature::celsius(70),
                              &iec_60364_conductor_limits,
                              temperature::celsius(160),
                              &iec_60364_short_circuit,
                              temperature::celsius(5),
                              &en_50565_cold};
/// Cross-linked polyethylene: 3.5 K m/W.
inline constexpr covering xlpe{"xlpe",
                               in_si<thermal_conductivity>(1.0 / 3.5),
                               in_si<volumetric_heat>(2.4e6),
                               0.9,
                               temperature::celsius(90),
                               &iec_60364_conductor_limits,
                               temperature::celsius(250),
                               &iec_60364_short_circuit};

/// Every covering of the table.
inline constexpr std::array all_coverings{flexible_rubber, polychloroprene, ethylene_propylene, pvc, xlpe};

}  // namespace weldloop
