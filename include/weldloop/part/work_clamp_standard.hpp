#pragma once
/// @file
/// The published type tests of a work clamp: the holding test, the highest drop and the highest rises of a new one.

#include <array>
#include <cstddef>

#include <weldloop/core/literals.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/law/screw.hpp>

namespace weldloop {

/// @name Sources of the type tests
/// @{

/// Highest drop of a new clamp.
inline constexpr source work_clamp_drop_test{"IEC 60974-13", "2011 and 2021",
                                             "clause 7: two new clamps, 260 mm apart on a clean mild-steel plate of "
                                             "300 x 75 x 12 mm, at most 0.08 V per 100 A from cable to cable",
                                             source_kind::standard};
/// Highest temperature rises.
inline constexpr source work_clamp_rise_test{
    "IEC 60974-13", "2021", "8.1: rise of 40 K at the grip, 45 K at the cable connection, with the largest cable",
    source_kind::standard};
/// What a clamp must hold.
inline constexpr source work_clamp_holding_test{
    "IEC 60974-13", "2021",
    "9.1: holds the weight of 5 m of its largest cable with its coupling for 1 min on a 3 mm plate",
    source_kind::standard};
/// Resistivity of the plate of the drop test.
inline constexpr source test_plate_resistivity{
    "mild steel of the drop test: 0.15 uohm m, middle of 0.13 to 0.20", {}, {}, source_kind::judgement};
/// Friction and coupling in the holding test.
inline constexpr source holding_friction_judgement{
    "friction of a jaw on clean plate 0.15, judged low; coupling on the hung cable 0.4 kg",
    {},
    {},
    source_kind::judgement};
/// Mass of welding cable.
inline constexpr source welding_cable_masses{"Electric Cables Handbook (ed. Moore), BS 638-4:1979 cable", "1997",
                                             "table A9.1, page 877, mass by section", source_kind::handbook};
/// @}

/// Highest drop of the pair of clamps with its plate, per ampere [ohm]: 0.08 V at 100 A.
inline constexpr resistance clamp_pair_limit = 0.08_V / 100_A;
/// Width of the plate of the drop test. @see work_clamp_drop_test
inline constexpr length drop_test_plate_width = 75_mm;
/// Thickness of that plate.
inline constexpr length drop_test_plate_thickness = 12_mm;
/// Distance between the clamps on it.
inline constexpr length drop_test_distance = 260_mm;
/// Resistance of the plate between the clamps of the drop test [ohm], uniform flow. @see test_plate_resistivity
inline constexpr resistance test_plate_resistance =
    in_si<resistivity>(0.15e-6) * drop_test_distance / (drop_test_plate_width * drop_test_plate_thickness);
/// Highest resistance of one new clamp on clean plate, its cable connection included [ohm]: half of what the pair may
/// have once the plate is taken off, 378 micro-ohm. @see work_clamp_drop_test
inline constexpr resistance new_clamp_limit = 0.5 * (clamp_pair_limit - test_plate_resistance);
/// Highest rise of the surface that is gripped. @see work_clamp_rise_test
inline constexpr temperature_difference grip_rise_limit = 40_K;
/// Highest rise of the cable connection. @see work_clamp_rise_test
inline constexpr temperature_difference cable_connection_rise_limit = 45_K;
/// Cable that hangs from the clamp in the holding test. @see work_clamp_holding_test
inline constexpr length holding_test_cable = 5_m;
/// Plate the clamp holds on in that test.
inline constexpr length holding_test_plate = 3_mm;
/// The coupling at the end of that cable. @see holding_friction_judgement
inline constexpr mass holding_test_coupling = 0.4_kg;
/// Friction of a jaw on clean plate. @see holding_friction_judgement
inline constexpr friction_coefficient holding_friction = 0.15;

namespace detail {
struct cable_mass_row {
    double square_mm, kg_per_km;
};
inline constexpr std::array cable_masses{cable_mass_row{16, 230},   cable_mass_row{25, 325},  cable_mass_row{35, 440},
                                         cable_mass_row{50, 600},   cable_mass_row{70, 830},  cable_mass_row{95, 1110},
                                         cable_mass_row{120, 1370}, cable_mass_row{185, 2050}};
}  // namespace detail

/// Mass of rubber-covered welding cable per length [kg/m], straight between the published sizes 16 to 185 mm2.
/// @param conductor metal section [m2], 16 to 185 mm2
/// @throws not_finite_error, out_of_range_error @see welding_cable_masses
[[nodiscard]] inline mass_per_length welding_cable_mass(area conductor)
{
    const auto& rows = detail::cable_masses;
    constexpr double rounding = 1e-9;  // a size that is the end of the table is inside it
    require_within(conductor, in_si<area>(rows.front().square_mm * 1e-6 * (1.0 - rounding)),
                   in_si<area>(rows.back().square_mm * 1e-6 * (1.0 + rounding)), "conductor area");
    const double wanted = conductor.value() * 1e6;
    std::size_t above = 1;
    while (above + 1 < rows.size() && rows[above].square_mm < wanted) ++above;
    const detail::cable_mass_row& a = rows[above - 1];
    const detail::cable_mass_row& b = rows[above];
    const double share = (wanted - a.square_mm) / (b.square_mm - a.square_mm);
    return in_si<mass_per_length>((a.kg_per_km + share * (b.kg_per_km - a.kg_per_km)) * 1e-3);
}

/// What hangs from a clamp in the holding test [kg]: 5 m of cable and a coupling.
/// @param largest_cable metal section [m2], 16 to 185 mm2 @throws not_finite_error, out_of_range_error
[[nodiscard]] inline mass holding_test_mass(area largest_cable)
{
    return welding_cable_mass(largest_cable) * holding_test_cable + holding_test_coupling;
}

/// Least force of a clamp that holds a hanging mass by friction, m g/(2 mu) [N]: both gripped faces rub.
/// @param hanging mass [kg], 0 or above @param friction mu, above 0
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline force holding_force(mass hanging, friction_coefficient friction = holding_friction)
{
    require_not_negative(hanging, "hanging mass");
    const double mu = static_cast<double>(friction);
    if (!(mu > 0.0))
        throw out_of_range_error("friction coefficient", "0", "above zero: without friction nothing holds");
    return require_finite(in_si<force>(hanging.value() * (detail::standard_gravity / (2.0 * mu))), "holding force");
}

}  // namespace weldloop
