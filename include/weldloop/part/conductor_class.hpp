#pragma once
/// @file
/// Conductors by class: strands, and resistance as built (nominal) and as the standard allows it (maximum).

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <optional>
#include <string>
#include <string_view>

#include <weldloop/core/conductor_size.hpp>
#include <weldloop/core/error.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/law/conductor_resistance.hpp>
#include <weldloop/material/metals.hpp>
#include <weldloop/part/iec_conductor_table.hpp>
#include <weldloop/part/resistance_choice.hpp>
#include <weldloop/part/welding_cable.hpp>

namespace weldloop {

/// @name Sources of the conductor classes
/// @{
/// Tinned strands.
inline constexpr source astm_b33{"ASTM B33", "2004", "table 2: conductivity of tinned soft wire by diameter",
                                 source_kind::standard};
/// Temperature coefficient of copper that conducts less.
inline constexpr source matthiessen_coefficient{
    "NBS Handbook 100", "1966", "temperature coefficient in proportion to conductivity, 0.00393 1/K at 100 % IACS",
    source_kind::handbook};
/// @}

/// How a conductor is stranded.
enum class strand_class {
    class_2,            ///< IEC 60228 class 2, stranded copper for fixed wiring
    class_2_aluminium,  ///< the same of aluminium
    class_5,            ///< IEC 60228 class 5, flexible copper
    class_6,            ///< IEC 60228 class 6, finer: the same limits as class 5
    rope_k,             ///< ASTM B172 class K, rope-lay of 30 AWG strands: the American welding lead
    rope_m,             ///< ASTM B172 class M, rope-lay of 34 AWG strands
};

/// Coat of the strands.
enum class strand_finish {
    plain,   ///< bare
    tinned,  ///< each strand with a coat of tin
};

/// The words for a class. @param c the class
[[nodiscard]] constexpr std::string_view to_text(strand_class c)
{
    switch (c) {
    case strand_class::class_2: return "IEC class 2";
    case strand_class::class_2_aluminium: return "IEC class 2, aluminium";
    case strand_class::class_5: return "IEC class 5";
    case strand_class::class_6: return "IEC class 6";
    case strand_class::rope_k: return "class K";
    case strand_class::rope_m: return "class M";
    }
    return "unknown class";
}

/// How the strands of a rope-lay conductor are gathered: bunches in one rope, or ropes in a rope.
enum class rope_lay {
    seven,              ///< 7 bunches
    nineteen,           ///< 19 bunches
    seven_by_seven,     ///< 7 ropes of 7 bunches
    nineteen_by_seven,  ///< 19 ropes or more of 7 bunches
};

/// Share of extra length, mass and resistance by the lay: 4, 5, 6, 7 %. @param lay of the rope @see astm_b172
[[nodiscard]] constexpr double lay_increment(rope_lay lay)
{
    switch (lay) {
    case rope_lay::seven: return 0.04;
    case rope_lay::nineteen: return 0.05;
    case rope_lay::seven_by_seven: return 0.06;
    case rope_lay::nineteen_by_seven: return 0.07;
    }
    return 0.07;
}

/// Share of extra length of concentric strands; see iec_lay_judgement.
inline constexpr double concentric_increment = 0.02;

/// A row of the American rope-lay tables.
struct rope_lay_row {
    conductor_size size;  ///< as written
    int strands;          ///< count
    rope_lay lay;         ///< how they are gathered
    double diameter_in;   ///< of the conductor, approximate [in]; 0: not known
};

/// Diameter of a class K strand, 30 AWG rounded as ASTM B258 rounds it [m].
inline constexpr length class_k_strand = 10.0_mil;
/// Diameter of a class M strand, 34 AWG [m].
inline constexpr length class_m_strand = 6.3_mil;

/// Class K, largest first; counts read up to 2/0, else recalled with a check of the mass; see astm_b172.
inline constexpr std::array class_k_conductors{
    rope_lay_row{kcmil(500), 5054, rope_lay::nineteen_by_seven, 0.988},
    rope_lay_row{kcmil(450), 4522, rope_lay::nineteen_by_seven, 0.933},
    rope_lay_row{kcmil(400), 3990, rope_lay::nineteen_by_seven, 0.878},
    rope_lay_row{kcmil(350), 3458, rope_lay::nineteen_by_seven, 0.809},
    rope_lay_row{kcmil(300), 2989, rope_lay::seven_by_seven, 0.768},
    rope_lay_row{kcmil(250), 2499, rope_lay::seven_by_seven, 0.682},
    rope_lay_row{aught(4), 2107, rope_lay::seven_by_seven, 0.627},
    rope_lay_row{aught(3), 1666, rope_lay::seven_by_seven, 0.533},
    rope_lay_row{aught(2), 1323, rope_lay::seven_by_seven, 0.47},
    rope_lay_row{aught(1), 1064, rope_lay::nineteen, 0.451},
    rope_lay_row{awg(1), 836, rope_lay::nineteen, 0.397},
    rope_lay_row{awg(2), 665, rope_lay::nineteen, 0.338},
    rope_lay_row{awg(3), 532, rope_lay::nineteen, 0.304},
    rope_lay_row{awg(4), 420, rope_lay::seven, 0.272},
    rope_lay_row{awg(6), 266, rope_lay::seven, 0.202},
    rope_lay_row{awg(8), 168, rope_lay::seven, 0.157},
};

/// Class M, largest first; counts read up to 4 AWG, else recalled with a check of the mass; see astm_b172.
inline constexpr std::array class_m_conductors{
    rope_lay_row{kcmil(500), 12691, rope_lay::nineteen_by_seven, 0.997},
    rope_lay_row{kcmil(450), 11396, rope_lay::nineteen_by_seven, 0.941},
    rope_lay_row{kcmil(400), 10101, rope_lay::nineteen_by_seven, 0.901},
    rope_lay_row{kcmil(350), 8806, rope_lay::nineteen_by_seven, 0.825},
    rope_lay_row{kcmil(300), 7581, rope_lay::nineteen_by_seven, 0.768},
    rope_lay_row{kcmil(250), 6384, rope_lay::nineteen_by_seven, 0.713},
    rope_lay_row{aught(4), 5320, rope_lay::nineteen_by_seven, 0.645},
    rope_lay_row{aught(3), 4256, rope_lay::nineteen_by_seven, 0.576},
    rope_lay_row{aught(2), 3325, rope_lay::nineteen_by_seven, 0.508},
    rope_lay_row{aught(1), 2646, rope_lay::seven_by_seven, 0},
    rope_lay_row{awg(1), 2107, rope_lay::seven_by_seven, 0.396},
    rope_lay_row{awg(2), 1666, rope_lay::seven_by_seven, 0.337},
    rope_lay_row{awg(3), 1323, rope_lay::seven_by_seven, 0.305},
    rope_lay_row{awg(4), 1064, rope_lay::nineteen, 0.269},
    rope_lay_row{awg(6), 665, rope_lay::nineteen, 0.215},
    rope_lay_row{awg(8), 420, rope_lay::seven, 0.162},
};

/// A row of the table of tinned wire.
struct tinned_wire_row {
    double over_in;       ///< wire diameter above this [in]
    double conductivity;  ///< least, as a share of the annealed copper standard
};

/// Tinned soft wire, thickest first; see astm_b33.
inline constexpr std::array tinned_wires{tinned_wire_row{0.29, 0.9766}, tinned_wire_row{0.103, 0.9716},
                                         tinned_wire_row{0.0201, 0.9616}, tinned_wire_row{0.0111, 0.9416},
                                         tinned_wire_row{0.003, 0.9315}};

/// Least conductivity of tinned soft copper wire, as a share of the annealed copper standard: tin makes thin wire
/// worse.
/// @param strand diameter [m], above 0.003 in, up to 0.46 in @throws not_finite_error, out_of_range_error
[[nodiscard]] inline double tinned_conductivity(length strand)
{
    constexpr double thickest_in = 0.46;
    constexpr double rounding = 1e-9;  // a wire at the end of a row belongs to it
    const double inches = strand.value() / detail::metres_per_inch * (1.0 - rounding);
    require_within(strand, in_si<length>(tinned_wires.back().over_in * detail::metres_per_inch),
                   in_si<length>(thickest_in * (1.0 + rounding) * detail::metres_per_inch), "strand diameter");
    for (const tinned_wire_row& row : tinned_wires)
        if (inches > row.over_in) return row.conductivity;
    return tinned_wires.back().conductivity;
}

/// What a conductor of a class is made of.
struct conductor_build {
    conductor_size size;  ///< as written
    int strands;          ///< count; metric classes: about, from the area and the nominal strand
    length strand;        ///< [m] above 0, diameter of one; metric classes: the usual one, 0.01 mm below the largest
    std::optional<length> conductor_diameter =
        {};            ///< [m] above 0, over the strands, where known. Metric classes: the largest the standard allows
    double increment;  ///< [1] extra length of the strands by their lay, 0 to 1
    weldloop::basis basis;  ///< sources
};

namespace detail {

[[nodiscard]] constexpr bool is_rope_lay(strand_class c)
{
    return c == strand_class::rope_k || c == strand_class::rope_m;
}

/// Row of the metric table. @throws missing_data_error
[[nodiscard]] inline const iec_conductor_row& iec_row_of(const conductor_size& size, strand_class c)
{
    if (size.scale() == size_scale::square_mm)
        for (const iec_conductor_row& row : iec_conductors)
            if (row.area_mm2 == size.number()) {
                const bool has = c == strand_class::class_2_aluminium ? row.aluminium_ohm_per_km > 0.0
                                 : c == strand_class::class_6         ? row.class_6_strand_mm > 0.0
                                                                      : true;
                if (has) return row;
            }
    throw missing_data_error("conductor size", to_text(size) + ", " + std::string(to_text(c)),
                             c == strand_class::class_2_aluminium ? "nominal areas from 10 to 630 mm2"
                             : c == strand_class::class_6         ? "nominal areas from 0.5 to 300 mm2"
                                                                  : "nominal areas from 0.5 to 630 mm2");
}

/// Row of an American table. @throws missing_data_error
[[nodiscard]] inline const rope_lay_row& rope_row_of(const conductor_size& size, strand_class c)
{
    for (const rope_lay_row& row : c == strand_class::rope_k ? class_k_conductors : class_m_conductors)
        if (row.size == size) return row;
    throw missing_data_error("conductor size", to_text(size) + ", " + std::string(to_text(c)),
                             "8, 6, 4, 3, 2, 1 AWG, 1/0 to 4/0, 250 to 500 kcmil by 50");
}

/// Increment of a metric conductor; see iec_lay_judgement.
[[nodiscard]] constexpr double iec_increment(const conductor_size& size, strand_class c)
{
    if (c == strand_class::class_2 || c == strand_class::class_2_aluminium) return concentric_increment;
    const auto& like = c == strand_class::class_5 ? class_k_conductors : class_m_conductors;
    rope_lay lay = like.back().lay;  // of the smallest
    for (auto row = like.rbegin(); row != like.rend(); ++row) {
        lay = row->lay;
        if (!(row->size < size)) break;
    }
    return lay_increment(lay);
}

/// Copper that conducts a share of the standard, its coefficient falling with it; see matthiessen_coefficient.
[[nodiscard]] inline metal copper_conducting(double share)
{
    metal out = annealed_copper;
    out.resistivity = annealed_copper.resistivity / share;
    out.temperature_coefficient = annealed_copper.temperature_coefficient * share;
    return out;
}

}  // namespace detail

/// Strands and lay of a conductor. Metric classes state only the largest strand and diameter: count and strand are then
/// those of the usual make, class 2 has neither.
/// @param size a size of the class's table @param c the class @throws missing_data_error
[[nodiscard]] inline conductor_build conductor_build_of(const conductor_size& size, strand_class c)
{
    conductor_build out{size, 0, length{}, std::nullopt, 0.0, {}};
    if (detail::is_rope_lay(c)) {
        const rope_lay_row& row = detail::rope_row_of(size, c);
        out.strands = row.strands;
        out.strand = c == strand_class::rope_k ? class_k_strand : class_m_strand;
        if (row.diameter_in > 0.0) out.conductor_diameter = row.diameter_in * 1.0_in;
        out.increment = lay_increment(row.lay);
        out.basis.add(astm_b172);
        return out;
    }
    const iec_conductor_row& row = detail::iec_row_of(size, c);
    out.increment = detail::iec_increment(size, c);
    out.basis.add(iec_lay_judgement);
    if (c == strand_class::class_5 || c == strand_class::class_6) {
        constexpr double below_largest_mm = 0.01;  // the usual strand: 0.40 mm where 0.41 mm is allowed
        const double largest = c == strand_class::class_5 ? row.class_5_strand_mm : row.class_6_strand_mm;
        out.strand = in_si<length>((largest - below_largest_mm) * 1e-3);
        const area strand_area = 0.25 * std::numbers::pi * (out.strand * out.strand);
        out.strands = static_cast<int>(std::lround(static_cast<double>(size.area() / strand_area)));
        if (row.largest_diameter_mm > 0.0) out.conductor_diameter = row.largest_diameter_mm * 1.0_mm;
        out.basis.add(iec_60228_strands);
    }
    return out;
}

/// How a conductor is made, and which of its resistances is meant.
struct conductor_make {
    strand_class stranding;                                 ///< class
    strand_finish finish = strand_finish::plain;            ///< plain or tinned; aluminium is plain
    resistance_choice choice = resistance_choice::nominal;  ///< nominal or standard maximum
};

/// Resistance per length of a conductor by size, class, finish and temperature [ohm/m].
///
/// | class    | nominal                                   | standard maximum                    |
/// |----------|-------------------------------------------|-------------------------------------|
/// | 2, 5, 6  | rho (1 + lay)/nominal area                | IEC 60228                           |
/// | K, M     | rho (1 + lay)/nominal circular mils       | 2 % above nominal (recalled)        |
///
/// Tinned: in metric classes by the ratio of the standard's columns, in K and M by the conductivity of tinned wire of
/// the strand's diameter (7.35 % more for both). The temperature coefficient of copper falls with its conductivity.
/// Linear law of resistivity from -50 to 300 degC, see resistivity_lowest. Class 5 at 630 mm2 has no nominal value: the
/// limit of the standard lies below that of the nominal area with its lay.
/// @param size a size of the class's table @param make class, finish and choice @param t of the conductor
/// @throws missing_data_error for a size or finish that the class does not have
[[nodiscard]] inline resistance_per_length conductor_resistance_of(const conductor_size& size,
                                                                   const conductor_make& make, temperature t)
{
    const auto& [c, finish, choice] = make;
    const conductor_build build = conductor_build_of(size, c);
    const bool tinned = finish == strand_finish::tinned, nominal = choice == resistance_choice::nominal;
    if (detail::is_rope_lay(c)) {
        const metal copper = tinned ? detail::copper_conducting(tinned_conductivity(build.strand)) : annealed_copper;
        return conductor_resistance(copper, size.area(), build.increment, t) *
               (nominal ? 1.0 : 1.0 + astm_resistance_margin);
    }
    const iec_conductor_row& row = detail::iec_row_of(size, c);
    const bool of_aluminium = c == strand_class::class_2_aluminium,
               flexible = c != strand_class::class_2 && !of_aluminium;
    if (of_aluminium && tinned) throw missing_data_error("finish of aluminium strands", "tinned", "plain");
    const double plain_limit = of_aluminium ? row.aluminium_ohm_per_km
                               : flexible   ? row.flexible_ohm_per_km
                                            : row.class_2_ohm_per_km;
    const double limit = !tinned    ? plain_limit
                         : flexible ? row.flexible_tinned_ohm_per_km
                                    : row.class_2_tinned_ohm_per_km;
    const metal strands = of_aluminium ? aluminium
                          : tinned     ? detail::copper_conducting(plain_limit / limit)
                                       : annealed_copper;
    const resistance_per_length highest_at_20 = in_si<resistance_per_length>(limit * 1e-3);
    if (!nominal) return highest_at_20 * (strands.resistivity_at(t) / strands.resistivity);
    if (conductor_resistance(strands, size.area(), build.increment, reference_temperature) > highest_at_20)
        throw missing_data_error("nominal resistance", to_text(size) + ", " + std::string(to_text(c)),
                                 "the standard maximum, or another size");
    return conductor_resistance(strands, size.area(), build.increment, t);
}

/// The sources behind conductor_resistance_of(). @param make class, finish and choice
[[nodiscard]] inline basis conductor_basis_of(const conductor_make& make)
{
    const auto& [c, finish, choice] = make;
    basis out;
    out.add(c == strand_class::class_2_aluminium ? iec_60889 : iec_60028);
    const bool rope = detail::is_rope_lay(c), nominal = choice == resistance_choice::nominal;
    if (rope) out.add(astm_b172);
    if (rope && !nominal) out.add(astm_resistance_limit);
    if (!rope && nominal) out.add(iec_lay_judgement);
    if (!rope && (!nominal || finish == strand_finish::tinned)) out.add(iec_60228_classes);
    if (rope && finish == strand_finish::tinned) out.add(astm_b33);
    if (finish == strand_finish::tinned) out.add(matthiessen_coefficient);
    return out;
}

}  // namespace weldloop
