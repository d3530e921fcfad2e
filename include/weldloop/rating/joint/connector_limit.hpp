#pragma once
/// @file
/// Published limits of connectors and clamping units: rise, drop, pull and steadiness, each with its source.
///
/// Most were recalled and not read: such a limit may condemn a connector, but its passing verdict is marked
/// `limit_recalled`. Which standard applies to a product is for its user and the local code to say.

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <optional>
#include <span>
#include <string_view>

#include <weldloop/core/error.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/rating/joint/termination_acceptance.hpp>

namespace weldloop {

/// @name Sources of connector limits
/// @{

/// Temperatures power connectors are made for.
inline constexpr source connector_design_temperature{
    "ANSI C119.4", "2011 and 2016", "title: 100 degC copper to copper, 93 degC with aluminium", source_kind::standard};
/// Steadiness under current cycles.
inline constexpr source connector_current_cycles{"ANSI C119.4", "2004 to 2016",
                                                 "class A: 500 cycles; each reading from the 25th on within 5 % of its "
                                                 "own mean; connector over control steady within "
                                                 "10 K",
                                                 source_kind::memory};
/// Rises of commercial connectors.
inline constexpr source commercial_connector_rise{
    "UL 486A-486B",
    {},
    "as summarised by a reader on a code forum: 50 K static, 125 K in heat cycling",
    source_kind::standard};
/// Rise of power connectors.
inline constexpr source power_connector_rise{
    "NEMA CC 1", {}, "30 K over the air at rated current", source_kind::memory};
/// Rise of terminals.
inline constexpr source clamping_terminal_rise{"IEC 60998-1; IEC 60999-1", "2002; 1999",
                                               "45 K at the rated test current", source_kind::memory};
/// Drop of clamping units.
inline constexpr source clamping_unit_drop{
    "IEC 60999-1", "1999",
    "15 mV at first; after cycling 22.5 mV or 1.5 times the value of the 24th cycle, the smaller", source_kind::memory};
/// Compression and mechanical connectors.
inline constexpr source connector_type_test{"IEC 61238-1-1", "2018 (and 2003)",
                                            "class A: pull 60 N/mm2 of copper, 40 N/mm2 of aluminium, at most 20 kN, "
                                            "for 1 min; scatter delta and beta 0.3, change "
                                            "D 0.15, ratio lambda 2.0",
                                            source_kind::memory};
/// Bonds.
inline constexpr source bond_class_r{"MIL-B-5087B; NASA-STD-4003A", "1964; 2013",
                                     "class R: 2.5 milliohm for each joint", source_kind::memory};
/// Pull of a crimp that no table has.
inline constexpr source crimp_pull_by_wire{
    "NASA-STD-8739.4", "change 6, 2011",
    "13.7.5 and page 69: 60 % of the wire's tensile strength where no table value "
    "exists",
    source_kind::standard};
/// Pull of an aircraft terminal.
inline constexpr source terminal_pull_by_wire{"FAA AC 43.13-1B", "chg 1, 2001",
                                              "11-174, page 11-67: a joint as strong as the wire itself",
                                              source_kind::standard};
/// @}

/// A published rise of a connector.
struct connector_rise_limit {
    std::string_view what;           ///< the connector and its test
    temperature_difference highest;  ///< [K] above 0, over the air
    const source* from;              ///< where it stands
};

/// Rises of connectors, as published; see their sources.
inline constexpr std::array connector_rise_limits{
    connector_rise_limit{"commercial connector, static heating", in_si<temperature_difference>(50.0),
                         &commercial_connector_rise},
    connector_rise_limit{"commercial connector, heat cycling", in_si<temperature_difference>(125.0),
                         &commercial_connector_rise},
    connector_rise_limit{"power connector, rated current", in_si<temperature_difference>(30.0), &power_connector_rise},
    connector_rise_limit{"clamping terminal, test current", in_si<temperature_difference>(45.0),
                         &clamping_terminal_rise},
};

/// Temperature that a connector of copper alone is made for; see connector_design_temperature.
inline constexpr temperature copper_connector_design = temperature::celsius(100.0);
/// Temperature that a connector with aluminium in it is made for; see connector_design_temperature.
inline constexpr temperature aluminium_connector_design = temperature::celsius(93.0);
/// Drop of a new clamping unit at its test current [V]; see clamping_unit_drop.
inline constexpr voltage new_clamping_unit_drop = in_si<voltage>(15e-3);
/// Drop of a cycled clamping unit at its test current [V]; see clamping_unit_drop.
inline constexpr voltage cycled_clamping_unit_drop = in_si<voltage>(22.5e-3);
/// Factor of the growth of a clamping unit's drop since its 24th cycle; see clamping_unit_drop.
inline constexpr double cycled_clamping_unit_growth = 1.5;
/// Highest resistance of a bond [ohm]; see bond_class_r.
inline constexpr resistance bond_limit = in_si<resistance>(2.5e-3);
/// Share of its own mean by which a cycled connector's reading may differ; see connector_current_cycles.
inline constexpr double steady_reading_margin = 0.05;

namespace detail {
inline termination_acceptance at_most(double used, const source& from)
{
    constexpr double rounding = 1.0 + 1e-9;
    termination_acceptance out{
        std::min(used, std::numeric_limits<double>::max()), used <= rounding, from.kind == source_kind::memory, {}};
    out.basis.add(from);
    return out;
}
inline termination_acceptance at_least(force pulled, force least, const source& from)
{
    return at_most(pulled > force{} ? static_cast<double>(least / pulled) : std::numeric_limits<double>::max(), from);
}
}  // namespace detail

/// Whether a connector's rise is within a published one. @param rise measured over the air [K], 0 or above
/// @param limit a row of connector_rise_limits @throws not_finite_error, out_of_range_error
[[nodiscard]] inline termination_acceptance connector_rise_acceptance_of(temperature_difference rise,
                                                                         const connector_rise_limit& limit)
{
    return detail::at_most(require_not_negative(rise, "rise") / require_positive(limit.highest, "highest rise"),
                           *limit.from);
}

/// Whether a clamping unit is good at a drop, taken at the test current of its section. Without a 24th cycle it counts
/// as new: 15 mV; with one as cycled: 22.5 mV or 1.5 times the drop of that cycle, the smaller.
/// @param drop measured [V], 0 or above @param at_24th_cycle drop of the 24th cycle [V], above 0
/// @throws not_finite_error, out_of_range_error @see clamping_unit_drop
[[nodiscard]] inline termination_acceptance clamping_unit_acceptance_of(voltage drop,
                                                                        std::optional<voltage> at_24th_cycle = {})
{
    require_not_negative(drop, "voltage reading");
    const voltage limit = at_24th_cycle ? std::min(cycled_clamping_unit_drop,
                                                   voltage(cycled_clamping_unit_growth *
                                                           require_positive(*at_24th_cycle, "drop of the 24th cycle")))
                                        : new_clamping_unit_drop;
    return detail::at_most(drop / limit, clamping_unit_drop);
}

/// Whether a bond of clean metal faces is good. @param reading [ohm], 0 or above
/// @throws not_finite_error, out_of_range_error @see bond_class_r
[[nodiscard]] inline termination_acceptance bond_acceptance_of(resistance reading)
{
    return detail::at_most(require_not_negative(reading, "resistance reading") / bond_limit, bond_class_r);
}

/// Whether the readings of one connector kept steady under current cycles: the one farthest from their mean against 5 %
/// of it. One reading is its own mean.
/// @param readings of the same connector from the 25th cycle on [ohm], at least one, each above 0
/// @throws not_finite_error, out_of_range_error @see connector_current_cycles
[[nodiscard]] inline termination_acceptance steady_connector_acceptance_of(std::span<const resistance> readings)
{
    if (readings.empty()) throw out_of_range_error("number of readings", "0", "at least one");
    const resistance largest =
        require_positive(*std::max_element(readings.begin(), readings.end()), "resistance reading");
    double mean = 0.0, farthest = 0.0;  // over the largest, so that no sum overflows
    for (const resistance& r : readings) mean += require_positive(r, "resistance reading") / largest;
    mean /= static_cast<double>(readings.size());
    for (const resistance& r : readings)
        farthest = std::max(farthest, std::abs(static_cast<double>(r / largest) - mean));
    return detail::at_most(farthest / (steady_reading_margin * mean), connector_current_cycles);
}

/// What the conductor in a connector is made of.
enum class connected_metal {
    of_copper,     ///< also copper-clad
    of_aluminium,  ///< and its alloys
};

/// Pull that a compression or mechanical connector stands for a minute, 60 N/mm2 of copper or 40 N/mm2 of aluminium and
/// no more than 20 kN [N]. @param conductor area of metal [m2], above 0 @param made_of its metal
/// @throws not_finite_error, out_of_range_error @see connector_type_test
[[nodiscard]] inline force connector_pull_of(area conductor, connected_metal made_of)
{
    constexpr pressure copper_stress = in_si<pressure>(60e6), aluminium_stress = in_si<pressure>(40e6);
    constexpr force most = in_si<force>(20e3);
    const force pull = (made_of == connected_metal::of_aluminium ? aluminium_stress : copper_stress) *
                       require_positive(conductor, "conductor area");
    return std::min(pull, most);
}

/// Whether a connector stands its pull. @param conductor area of metal [m2], above 0
/// @param made_of its metal @param pulled [N] without slipping for a minute, 0 or above
/// @throws not_finite_error, out_of_range_error @see connector_pull_of()
[[nodiscard]] inline termination_acceptance connector_pull_acceptance_of(area conductor, connected_metal made_of,
                                                                         force pulled)
{
    return detail::at_least(require_not_negative(pulled, "pull"), connector_pull_of(conductor, made_of),
                            connector_type_test);
}

/// Which share of the wire's own strength a crimp must hold.
enum class wire_share_claim {
    crimp_without_table,  ///< 60 %, where no table has the size; see crimp_pull_by_wire
    aircraft_terminal,    ///< all of it; see terminal_pull_by_wire
};

/// Whether a crimp holds the share of its wire's strength that a standard asks for.
/// @param pulled force at which it let go, or the highest it stood [N], 0 or above
/// @param wire tensile strength of the wire [N], above 0 @param claim which standard
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline termination_acceptance wire_share_acceptance_of(force pulled, force wire, wire_share_claim claim)
{
    constexpr double crimp_share = 0.6;
    const bool aircraft = claim == wire_share_claim::aircraft_terminal;
    const force least = (aircraft ? 1.0 : crimp_share) * require_positive(wire, "strength of the wire");
    return detail::at_least(require_not_negative(pulled, "pull"), least,
                            aircraft ? terminal_pull_by_wire : crimp_pull_by_wire);
}

}  // namespace weldloop
