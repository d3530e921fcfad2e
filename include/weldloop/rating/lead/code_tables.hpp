#pragma once
/// @file
/// Rating tables of codes and standards as published: data with source and edition, which no model is tuned to.

#include <array>
#include <span>
#include <string_view>

#include <weldloop/core/conductor_size.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/temperature.hpp>

namespace weldloop {

/// @name Sources of the code tables
/// @{
/// Flexible single conductors.
inline constexpr source nfpa_70_table_400_5{
    "NFPA 70", "2008 to 2017",
    "table 400.5(A)(2), type W and stage cable, single conductor in free air at 30 degC (as printed in a handbook of "
    "lighting; column letters from memory)",
    source_kind::standard};
/// Cells of the other table that were read.
inline constexpr source nfpa_70_table_310_17_read{
    "NFPA 70", "2023", "table 310.17, 75 degC, 6 and 4 AWG (in a worked feeder example)", source_kind::standard};
/// The other cells.
inline constexpr source nfpa_70_table_310_17{
    "NFPA 70", "2008 to 2023",
    "table 310.17, single insulated conductors in free air at 30 degC (from memory; equal to table 400.5 wherever both "
    "have a cell)",
    source_kind::memory};
/// Fixed wiring in free air.
inline constexpr source iec_60364_free_air{
    "IEC 60364-5-52 (as BS 7671 table 4E1A)", "2009",
    "table B.52.12, methods F and G, copper, thermosetting insulation 90 degC, air 30 degC (as public pages give it)",
    source_kind::standard};
/// Cables on ships.
inline constexpr source ship_rules_bv{
    "Bureau Veritas, Rules for the Classification of Steel Ships", "as seen in 2014",
    "Pt C Ch 2 Sec 3, table 8: single-core, 85 degC, air 45 degC, at most six bunched", source_kind::standard};
/// The same of another society.
inline constexpr source ship_rules_abs{"ABS Rules", "as seen in 2013",
                                       "4-8-3, table of maximum current: single-core, 85 and 95 degC, air 45 degC",
                                       source_kind::standard};
/// Guide ratings of welding cable.
inline constexpr source bs_638_4_guide{"BS 638-4 guide ratings", "1996",
                                       "85 degC welding cable, air 25 degC, shares of a period of 5 min",
                                       source_kind::memory};
/// @}

/// Air for which the code tables on land hold.
inline constexpr temperature code_table_air = temperature::celsius(30.0);
/// Air for which the ship tables hold.
inline constexpr temperature ship_table_air = temperature::celsius(45.0);

/// One cell of a code table.
struct code_cell {
    conductor_size size;   ///< as the table names it
    double limit_degC;     ///< column: highest conductor temperature [degC], above 0
    double amps;           ///< [A] above 0, without a break, in the air of the table
    source_kind verified;  ///< `standard` where it was read, `memory` where recalled
};

/// NFPA 70 table 400.5(A)(2), the cells that were read.
inline constexpr std::array code_table_400_5{
    code_cell{awg(8), 75, 70, source_kind::standard},    code_cell{awg(8), 90, 80, source_kind::standard},
    code_cell{awg(6), 75, 95, source_kind::standard},    code_cell{awg(6), 90, 105, source_kind::standard},
    code_cell{awg(4), 60, 105, source_kind::standard},   code_cell{awg(4), 75, 125, source_kind::standard},
    code_cell{awg(4), 90, 140, source_kind::standard},   code_cell{awg(2), 60, 140, source_kind::standard},
    code_cell{awg(2), 75, 170, source_kind::standard},   code_cell{awg(2), 90, 190, source_kind::standard},
    code_cell{awg(1), 90, 220, source_kind::standard},   code_cell{aught(1), 60, 195, source_kind::standard},
    code_cell{aught(1), 75, 230, source_kind::standard}, code_cell{aught(1), 90, 260, source_kind::standard},
    code_cell{aught(2), 60, 225, source_kind::standard}, code_cell{aught(2), 75, 265, source_kind::standard},
    code_cell{aught(2), 90, 300, source_kind::standard}, code_cell{aught(3), 60, 260, source_kind::standard},
    code_cell{aught(3), 75, 310, source_kind::standard}, code_cell{aught(3), 90, 350, source_kind::standard},
    code_cell{aught(4), 60, 300, source_kind::standard}, code_cell{aught(4), 75, 360, source_kind::standard},
    code_cell{aught(4), 90, 405, source_kind::standard},
};

/// NFPA 70 table 310.17, copper. The 300 kcmil cell at 90 degC is 505 in editions to 2008.
inline constexpr std::array code_table_310_17{
    code_cell{awg(8), 60, 60, source_kind::memory},      code_cell{awg(8), 75, 70, source_kind::memory},
    code_cell{awg(8), 90, 80, source_kind::memory},      code_cell{awg(6), 60, 80, source_kind::memory},
    code_cell{awg(6), 75, 95, source_kind::standard},    code_cell{awg(6), 90, 105, source_kind::memory},
    code_cell{awg(4), 60, 105, source_kind::memory},     code_cell{awg(4), 75, 125, source_kind::standard},
    code_cell{awg(4), 90, 140, source_kind::memory},     code_cell{awg(3), 60, 120, source_kind::memory},
    code_cell{awg(3), 75, 145, source_kind::memory},     code_cell{awg(3), 90, 165, source_kind::memory},
    code_cell{awg(2), 60, 140, source_kind::memory},     code_cell{awg(2), 75, 170, source_kind::memory},
    code_cell{awg(2), 90, 190, source_kind::memory},     code_cell{awg(1), 60, 165, source_kind::memory},
    code_cell{awg(1), 75, 195, source_kind::memory},     code_cell{awg(1), 90, 220, source_kind::memory},
    code_cell{aught(1), 60, 195, source_kind::memory},   code_cell{aught(1), 75, 230, source_kind::memory},
    code_cell{aught(1), 90, 260, source_kind::memory},   code_cell{aught(2), 60, 225, source_kind::memory},
    code_cell{aught(2), 75, 265, source_kind::memory},   code_cell{aught(2), 90, 300, source_kind::memory},
    code_cell{aught(3), 60, 260, source_kind::memory},   code_cell{aught(3), 75, 310, source_kind::memory},
    code_cell{aught(3), 90, 350, source_kind::memory},   code_cell{aught(4), 60, 300, source_kind::memory},
    code_cell{aught(4), 75, 360, source_kind::memory},   code_cell{aught(4), 90, 405, source_kind::memory},
    code_cell{kcmil(250), 60, 340, source_kind::memory}, code_cell{kcmil(250), 75, 405, source_kind::memory},
    code_cell{kcmil(250), 90, 455, source_kind::memory}, code_cell{kcmil(300), 60, 375, source_kind::memory},
    code_cell{kcmil(300), 75, 445, source_kind::memory}, code_cell{kcmil(300), 90, 500, source_kind::memory},
    code_cell{kcmil(350), 60, 420, source_kind::memory}, code_cell{kcmil(350), 75, 505, source_kind::memory},
    code_cell{kcmil(350), 90, 570, source_kind::memory}, code_cell{kcmil(400), 60, 455, source_kind::memory},
    code_cell{kcmil(400), 75, 545, source_kind::memory}, code_cell{kcmil(400), 90, 615, source_kind::memory},
    code_cell{kcmil(500), 60, 515, source_kind::memory}, code_cell{kcmil(500), 75, 620, source_kind::memory},
    code_cell{kcmil(500), 90, 700, source_kind::memory},
};

/// IEC 60364-5-52 method F, two touching.
inline constexpr std::array code_table_iec_pair{
    code_cell{square_mm(25), 90, 161, source_kind::standard},
    code_cell{square_mm(50), 90, 242, source_kind::standard},
    code_cell{square_mm(70), 90, 310, source_kind::standard},
    code_cell{square_mm(120), 90, 437, source_kind::standard},
    code_cell{square_mm(185), 90, 575, source_kind::standard},
    code_cell{square_mm(300), 90, 783, source_kind::standard},
};

/// IEC 60364-5-52 method F, three touching in a row.
inline constexpr std::array code_table_iec_three_flat{
    code_cell{square_mm(25), 90, 141, source_kind::standard},
    code_cell{square_mm(50), 90, 216, source_kind::standard},
    code_cell{square_mm(70), 90, 279, source_kind::standard},
    code_cell{square_mm(120), 90, 400, source_kind::standard},
    code_cell{square_mm(185), 90, 533, source_kind::standard},
    code_cell{square_mm(300), 90, 736, source_kind::standard},
};

/// IEC 60364-5-52 method F, three in a triangle.
inline constexpr std::array code_table_iec_trefoil{
    code_cell{square_mm(25), 90, 135, source_kind::standard},
    code_cell{square_mm(50), 90, 207, source_kind::standard},
    code_cell{square_mm(70), 90, 268, source_kind::standard},
    code_cell{square_mm(120), 90, 383, source_kind::standard},
    code_cell{square_mm(185), 90, 510, source_kind::standard},
    code_cell{square_mm(300), 90, 703, source_kind::standard},
};

/// IEC 60364-5-52 method G, three spaced level.
inline constexpr std::array code_table_iec_spaced{
    code_cell{square_mm(25), 90, 182, source_kind::standard},
    code_cell{square_mm(35), 90, 226, source_kind::standard},
    code_cell{square_mm(50), 90, 275, source_kind::standard},
    code_cell{square_mm(70), 90, 353, source_kind::standard},
    code_cell{square_mm(95), 90, 430, source_kind::standard},
    code_cell{square_mm(120), 90, 500, source_kind::standard},
    code_cell{square_mm(150), 90, 577, source_kind::standard},
    code_cell{square_mm(185), 90, 661, source_kind::standard},
    code_cell{square_mm(240), 90, 781, source_kind::standard},
    code_cell{square_mm(300), 90, 902, source_kind::standard},
};

/// IEC 60364-5-52 method G, three spaced one above the other.
inline constexpr std::array code_table_iec_spaced_upright{
    code_cell{square_mm(25), 90, 161, source_kind::standard},
    code_cell{square_mm(35), 90, 201, source_kind::standard},
    code_cell{square_mm(50), 90, 246, source_kind::standard},
    code_cell{square_mm(70), 90, 318, source_kind::standard},
    code_cell{square_mm(95), 90, 389, source_kind::standard},
    code_cell{square_mm(120), 90, 454, source_kind::standard},
    code_cell{square_mm(150), 90, 527, source_kind::standard},
    code_cell{square_mm(185), 90, 605, source_kind::standard},
    code_cell{square_mm(240), 90, 719, source_kind::standard},
    code_cell{square_mm(300), 90, 833, source_kind::standard},
};

/// Bureau Veritas, at most six bunched.
inline constexpr std::array code_table_ship_bv{
    code_cell{square_mm(10), 85, 67, source_kind::standard},
    code_cell{square_mm(16), 85, 90, source_kind::standard},
    code_cell{square_mm(25), 85, 120, source_kind::standard},
    code_cell{square_mm(35), 85, 145, source_kind::standard},
    code_cell{square_mm(50), 85, 180, source_kind::standard},
    code_cell{square_mm(70), 85, 225, source_kind::standard},
    code_cell{square_mm(95), 85, 275, source_kind::standard},
    code_cell{square_mm(120), 85, 320, source_kind::standard},
    code_cell{square_mm(150), 85, 365, source_kind::standard},
    code_cell{square_mm(185), 85, 415, source_kind::standard},
    code_cell{square_mm(240), 85, 490, source_kind::standard},
    code_cell{square_mm(300), 85, 560, source_kind::standard},
};

/// ABS, single-core.
inline constexpr std::array code_table_ship_abs{
    code_cell{square_mm(50), 85, 184, source_kind::standard},
    code_cell{square_mm(70), 85, 228, source_kind::standard},
    code_cell{square_mm(95), 85, 276, source_kind::standard},
    code_cell{square_mm(120), 85, 319, source_kind::standard},
    code_cell{square_mm(150), 85, 367, source_kind::standard},
    code_cell{square_mm(185), 85, 418, source_kind::standard},
    code_cell{square_mm(240), 85, 492, source_kind::standard},
    code_cell{square_mm(300), 85, 565, source_kind::standard},
    code_cell{square_mm(50), 95, 208, source_kind::standard},
    code_cell{square_mm(70), 95, 256, source_kind::standard},
    code_cell{square_mm(95), 95, 310, source_kind::standard},
    code_cell{square_mm(120), 95, 359, source_kind::standard},
    code_cell{square_mm(150), 95, 412, source_kind::standard},
    code_cell{square_mm(185), 95, 470, source_kind::standard},
    code_cell{square_mm(240), 95, 553, source_kind::standard},
    code_cell{square_mm(300), 95, 636, source_kind::standard},
};

/// A code table.
enum class code_table {
    nfpa_70_400_5,             ///< flexible cords and cables
    nfpa_70_310_17,            ///< building wire in free air
    iec_60364_pair,            ///< fixed wiring, two touching
    iec_60364_three_flat,      ///< fixed wiring, three in a row
    iec_60364_trefoil,         ///< fixed wiring, three in a triangle
    iec_60364_spaced,          ///< fixed wiring, three spaced level
    iec_60364_spaced_upright,  ///< fixed wiring, three spaced one above the other
    ship_bv,                   ///< ships, at most six bunched
    ship_abs,                  ///< ships
};

/// Every code table, in the order of the enumeration.
inline constexpr std::array all_code_tables{code_table::nfpa_70_400_5,
                                            code_table::nfpa_70_310_17,
                                            code_table::iec_60364_pair,
                                            code_table::iec_60364_three_flat,
                                            code_table::iec_60364_trefoil,
                                            code_table::iec_60364_spaced,
                                            code_table::iec_60364_spaced_upright,
                                            code_table::ship_bv,
                                            code_table::ship_abs};

/// The cells of a table, sizes small to large.
[[nodiscard]] constexpr std::span<const code_cell> cells_of(code_table table)
{
    switch (table) {
    case code_table::nfpa_70_400_5: return code_table_400_5;
    case code_table::nfpa_70_310_17: return code_table_310_17;
    case code_table::iec_60364_pair: return code_table_iec_pair;
    case code_table::iec_60364_three_flat: return code_table_iec_three_flat;
    case code_table::iec_60364_trefoil: return code_table_iec_trefoil;
    case code_table::iec_60364_spaced: return code_table_iec_spaced;
    case code_table::iec_60364_spaced_upright: return code_table_iec_spaced_upright;
    case code_table::ship_bv: return code_table_ship_bv;
    case code_table::ship_abs: return code_table_ship_abs;
    }
    return code_table_310_17;
}

/// The air a table holds for. @param table which
[[nodiscard]] constexpr temperature air_of(code_table table)
{
    return table == code_table::ship_bv || table == code_table::ship_abs ? ship_table_air : code_table_air;
}

/// Where a cell stands. @param table its table @param cell of it
[[nodiscard]] constexpr const source& source_of(code_table table, const code_cell& cell)
{
    switch (table) {
    case code_table::nfpa_70_400_5: return nfpa_70_table_400_5;
    case code_table::ship_bv: return ship_rules_bv;
    case code_table::ship_abs: return ship_rules_abs;
    case code_table::nfpa_70_310_17:
        return cell.verified == source_kind::memory ? nfpa_70_table_310_17 : nfpa_70_table_310_17_read;
    case code_table::iec_60364_pair:
    case code_table::iec_60364_three_flat:
    case code_table::iec_60364_trefoil:
    case code_table::iec_60364_spaced:
    case code_table::iec_60364_spaced_upright: return iec_60364_free_air;
    }
    return iec_60364_free_air;
}

/// Shares of the period of the guide ratings, small to large [%].
inline constexpr std::array guide_duties{20.0, 30.0, 60.0, 85.0, 100.0};
/// Air of the guide ratings.
inline constexpr temperature guide_air = temperature::celsius(25.0);
/// Period of the guide ratings.
inline constexpr duration guide_period = in_si<duration>(5.0 * 60.0);
/// Conductor temperature of the guide ratings.
inline constexpr temperature guide_limit = temperature::celsius(85.0);

/// A size of the guide ratings.
struct guide_row {
    double area_mm2;             ///< nominal [mm2]
    std::array<double, 5> amps;  ///< [A] at the shares of guide_duties
};

/// BS 638-4, copper, recalled; see bs_638_4_guide.
inline constexpr std::array bs_638_4_ratings{
    guide_row{16, {300, 245, 175, 145, 135}},   guide_row{25, {400, 330, 230, 195, 180}},
    guide_row{35, {505, 410, 290, 245, 225}},   guide_row{50, {635, 520, 365, 305, 285}},
    guide_row{70, {795, 650, 460, 385, 355}},   guide_row{95, {965, 790, 560, 470, 430}},
    guide_row{120, {1120, 910, 650, 540, 500}}, guide_row{185, {1485, 1215, 860, 720, 665}},
};

}  // namespace weldloop
