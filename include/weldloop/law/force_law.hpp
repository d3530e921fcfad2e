#pragma once
/// @file
/// The handbook law of contact resistance against force, R = 1e-6 K / (0.102 F)^m, and its constants by metal pair.
///
/// K (micro-ohm at 1 kgf) belongs to the exponent only in the sense that at 1 kgf the exponent does not matter: with
/// K taken from one table and m from another the law scatters, at 500 N for copper on steel from 61 (m = 1) over 198
/// (0.7) to 434 micro-ohm (0.5). The steel and aluminium constants contain the normal oxide of a metal that was cleaned
/// and left in the air: no film is added to them, and no number of spots can be read from them.

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <numbers>
#include <string_view>

#include <weldloop/core/band.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/material/metal.hpp>
#include <weldloop/material/metals.hpp>

namespace weldloop {

/// @name Sources of the force law
/// @{

/// Source: the equation.
inline constexpr source force_law_form{"switchgear textbooks",
                                       {},
                                       "R = 1e-6 K/(0.102 F)^m with F in newton; 0.102 turns newton into kgf",
                                       source_kind::memory};
/// Source: constants read.
inline constexpr source force_law_constants_read{"Open data-book wiki Electrical Contacts, Contact Physics - Formulas",
                                                 "2019-02-07", "6.4.2, table of the constant by material pair",
                                                 source_kind::handbook};
/// Source: constants recalled.
inline constexpr source force_law_constants_recalled{
    "switchgear textbooks", {}, "table of the constant by material pair", source_kind::memory};
/// Source: pairs without a row.
inline constexpr source pair_stand_in{
    "constant of the nearest published metal, scaled by the film-free single spot; a factor of 2 either way", "2026",
    "stainless for mild steel, bronze for brass, tinned copper for copper, copper-clad aluminium as copper",
    source_kind::judgement};
/// Source: metals without a row.
inline constexpr source pair_from_spot{
    "film-free single spot times 5, the ratio the published steel rows bear to it; a factor of 2.5 either way", "2026",
    "steel-steel 4.6, steel-copper 5.6 at m = 0.5", source_kind::derived};
/// @}

/// A constant of the force law with where it comes from.
struct force_law_constant_row {
    band<double> constant;  ///< K [micro-ohm kgf^m]: ends as printed, typical their geometric mean
    const source* from;     ///< the table, or the way it was estimated
    bool estimated;         ///< no published value for this pair
};

namespace detail {

struct published_constant {
    std::string_view first, second;
    double low, high;
    const source* from;

    [[nodiscard]] band<double> constant() const { return {low, low == high ? low : std::sqrt(low * high), high}; }
};

inline constexpr std::array published_constants{
    published_constant{annealed_copper.name, mild_steel.name, 3100, 3100, &force_law_constants_read},
    published_constant{brass.name, mild_steel.name, 3000, 3000, &force_law_constants_read},
    published_constant{mild_steel.name, mild_steel.name, 7600, 7600, &force_law_constants_recalled},
    published_constant{annealed_copper.name, annealed_copper.name, 80, 140, &force_law_constants_read},
    published_constant{annealed_copper.name, brass.name, 370, 380, &force_law_constants_recalled},
    published_constant{brass.name, brass.name, 670, 670, &force_law_constants_read},
    published_constant{tinned_copper.name, tinned_copper.name, 70, 100, &force_law_constants_recalled},
    published_constant{aluminium.name, aluminium.name, 3000, 6700, &force_law_constants_read},
    published_constant{aluminium.name, mild_steel.name, 4400, 4400, &force_law_constants_recalled},
    published_constant{aluminium.name, brass.name, 1900, 1900, &force_law_constants_recalled},
    published_constant{aluminium.name, annealed_copper.name, 980, 980, &force_law_constants_recalled},
};

// By what the names say, in either order.
[[gnu::noinline]] inline const published_constant* find_constant_by_text(std::string_view a, std::string_view b)
{
    for (const published_constant& row : published_constants)
        if ((row.first == a && row.second == b) || (row.first == b && row.second == a)) return &row;
    return nullptr;
}

// By their address first: names of the metal table are one object each. Another length is another name.
inline const published_constant* find_constant(std::string_view a, std::string_view b)
{
    const char *const one = a.data(), *const other = b.data();
    for (const published_constant& row : published_constants) {
        const char *const first = row.first.data(), *const second = row.second.data();
        if ((first == one && second == other) || (first == other && second == one)) {
            if (a.size() + b.size() == row.first.size() + row.second.size()) [[likely]]
                return &row;
            break;
        }
    }
    return find_constant_by_text(a, b);
}

inline constexpr double kgf_per_newton = 0.102;           // as the law is written; exact would be 1/9.80665
inline constexpr double ohm_per_unit_constant = 1e-6;     // K is in micro-ohm
inline constexpr double published_steel_over_spot = 5.0;  // see pair_from_spot
inline constexpr double pair_from_spot_factor = 2.5;      // see pair_from_spot
inline constexpr double stand_in_factor = 2.0;            // see pair_stand_in

// The constant a film-free, fully plastic single spot would have.
inline double spot_constant(const metal& a, const metal& b)
{
    require_positive(a.resistivity, "resistivity");
    require_positive(b.resistivity, "resistivity");
    const double softer =
        std::min(require_positive(a.hardness, "hardness"), require_positive(b.hardness, "hardness")).value();
    const double spot_radius_at_one_kgf = std::sqrt(1.0 / (kgf_per_newton * std::numbers::pi * softer));
    return (a.resistivity + b.resistivity).value() / (4.0 * spot_radius_at_one_kgf) / ohm_per_unit_constant;
}

inline bool copper_skinned(const metal& m)
{
    return m == copper_clad_aluminium_10 || m == copper_clad_aluminium_15;
}

// The published metal that stands in for one without a row of its own.
inline const metal& stand_in_for(const metal& m, const metal& other)
{
    const auto copper_faced = [](const metal& x) { return x == annealed_copper || copper_skinned(x); };
    if (m == stainless_steel) return mild_steel;
    if (m == bronze) return brass;
    if (m == tinned_copper) return copper_faced(other) ? tinned_copper : annealed_copper;
    if (copper_faced(m)) return other == tinned_copper ? tinned_copper : annealed_copper;
    return m;
}

// A tin coat is only as good as the oxide it meets, and a copper skin holds the spots: a stand-in for either is not
// scaled.
inline const metal& scaled_as(const metal& m, const metal& stand_in)
{
    return m == tinned_copper || stand_in == tinned_copper || copper_skinned(m) ? stand_in : m;
}

}  // namespace detail

namespace detail {

// A pair without a published row; kept out of the way of those that have one.
[[gnu::noinline]] inline force_law_constant_row estimated_constant(const metal& a, const metal& b)
{
    const metal& first = stand_in_for(a, b);
    const metal& second = stand_in_for(b, a);
    if (const published_constant* row = find_constant(first.name, second.name)) {
        const double scale = spot_constant(scaled_as(a, first), scaled_as(b, second)) / spot_constant(first, second);
        const double typical = scale * std::sqrt(row->low * row->high);
        return {{typical / stand_in_factor, typical, typical * stand_in_factor}, &pair_stand_in, true};
    }
    const double typical = published_steel_over_spot * spot_constant(a, b);
    return {{typical / pair_from_spot_factor, typical, typical * pair_from_spot_factor}, &pair_from_spot, true};
}

}  // namespace detail

/// K of the force law for two metals, in either order.
///
/// Published where there is a row; the table's own range is its band, a row with one value has none. Otherwise
/// estimated and marked so: stainless stands for mild steel and bronze for brass, each scaled by the film-free single
/// spot ((rho1 + rho2) sqrt(H of the softer)); tinned copper meets copper as it meets itself, and any other metal as
/// bare copper does, because there the oxide of the other governs; copper-clad aluminium, whose spots lie in its skin,
/// is as copper, unscaled; anything else is 5 times the single spot.
/// Metals are known by their name.
/// @param a one metal @param b the other
/// @throws out_of_range_error, not_finite_error if an estimate is needed of a metal without resistivity or hardness
/// @see force_law_constants_read, force_law_constants_recalled, pair_stand_in, pair_from_spot
[[nodiscard]] inline force_law_constant_row force_law_constant(const metal& a, const metal& b)
{
    const detail::published_constant* row = detail::find_constant(a.name, b.name);
    if (row == nullptr) return detail::estimated_constant(a, b);
    return {row->constant(), row->from, false};
}

/// The constant K that one film-free spot, yielding fully, would give the force law at m = 0.5 [micro-ohm kgf^0.5]:
/// (rho1 + rho2)/4 sqrt(pi 0.102 H), H the hardness of the softer metal. A check on the published constants: copper has
/// 0.7 to 1.2 times it, steel on copper 5.6, steel on steel 4.6 - what is over is the oxide of a metal left in the air.
/// @param a one metal @param b the other, both with resistivity and hardness above 0
/// @throws not_finite_error, out_of_range_error @see holm_constriction
[[nodiscard]] inline double film_free_constant(const metal& a, const metal& b)
{
    return require_within(detail::spot_constant(a, b), std::numeric_limits<double>::min(),
                          std::numeric_limits<double>::max(), "force-law constant");
}

namespace detail {
/// force_law_conductance() of numbers that have been checked: F in newton, in siemens.
[[nodiscard]] inline double force_law_siemens(double constant, double exponent, double pressing)
{
    return std::pow(kgf_per_newton * pressing, exponent) / (ohm_per_unit_constant * constant);
}
}  // namespace detail

/// Conductance by the force law, (0.102 F)^m / (1e-6 K) [S]. Without force it is zero: open.
/// @param constant K [micro-ohm kgf^m], above 0 @param exponent m, 0.1 to 1.5; see force_law_exponent()
/// @param pressing force F [N], 0 or above. Range of the tables: about 10 N to 10 kN; no more than a power law beyond
/// @throws not_finite_error, out_of_range_error @see force_law_form
[[nodiscard]] inline conductance force_law_conductance(double constant, double exponent, weldloop::force pressing)
{
    require_within(constant, std::numeric_limits<double>::min(), std::numeric_limits<double>::max(),
                   "force-law constant");
    require_within(exponent, 0.1, 1.5, "force-law exponent");
    require_not_negative(pressing, "contact force");
    return require_finite(in_si<conductance>(detail::force_law_siemens(constant, exponent, pressing.value())),
                          "contact conductance");
}

/// Resistance by the force law, 1e-6 K / (0.102 F)^m [ohm].
/// @param constant K [micro-ohm kgf^m], above 0 @param exponent m, 0.1 to 1.5 @param pressing force F [N], above 0
/// @throws not_finite_error, out_of_range_error; a contact without force is open and has no resistance
/// @see force_law_form, force_law_conductance() for the range
[[nodiscard]] inline resistance force_law_resistance(double constant, double exponent, weldloop::force pressing)
{
    const resistance found =
        1.0 / force_law_conductance(constant, exponent, require_positive(pressing, "contact force"));
    return require_finite(found, "contact resistance");
}

/// Force that gives a wanted resistance by the force law, (1e-6 K/R)^(1/m)/0.102 [N].
/// @param wanted resistance [ohm], above 0 @param constant K [micro-ohm kgf^m], above 0 @param exponent m, 0.1 to 1.5
/// @throws not_finite_error, out_of_range_error; no_solution_error if the force would be beyond any number
/// @see force_law_form
[[nodiscard]] inline weldloop::force force_for_resistance(resistance wanted, double constant, double exponent)
{
    require_positive(wanted, "resistance");
    require_within(constant, std::numeric_limits<double>::min(), std::numeric_limits<double>::max(),
                   "force-law constant");
    require_within(exponent, 0.1, 1.5, "force-law exponent");
    const double found =
        std::pow(detail::ohm_per_unit_constant * constant / wanted.value(), 1.0 / exponent) / detail::kgf_per_newton;
    if (!std::isfinite(found))
        throw no_solution_error("contact force", "without a solution", "a resistance that a finite force can reach");
    return in_si<weldloop::force>(found);
}

}  // namespace weldloop
