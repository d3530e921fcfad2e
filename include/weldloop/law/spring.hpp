#pragma once
/// @file
/// Helical springs of round wire: what their curvature does to the stress in the wire.
///
/// d wire diameter, D mean coil diameter, C = D/d spring index. The curvature factors are made for C from 4 to 12; the
/// formulas are evaluated for any C above 1, see usual_spring_index(). Rates and stresses stand in
/// compression_spring.hpp and torsion_spring.hpp.

#include <string>
#include <string_view>

#include <weldloop/core/error.hpp>
#include <weldloop/core/number_text.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/unit_text.hpp>

namespace weldloop {

/// Rates, stresses and factors of curvature.
inline constexpr source spring_formulas{"Shigley, Mechanical Engineering Design", "9th and 10th edition",
                                        "equations 10-3 to 10-9, 10-43, 10-50, 10-51", source_kind::handbook};
/// Active turns, solid length and the diameter of a wound torsion spring.
inline constexpr source spring_turns{"Shigley, Mechanical Engineering Design", "9th and 10th edition",
                                     "table 10-1 and equations 10-48 and 10-49", source_kind::memory};

namespace detail {
// What a spring can be, wide enough for any: a watch hair spring to a rail buffer.
inline constexpr length thinnest_spring_wire = in_si<length>(1e-6);
inline constexpr length thickest_spring_wire = in_si<length>(0.2);
inline constexpr double highest_spring_index = 1000.0;
inline constexpr double most_turns = 1e6;

inline double require_index(double index)
{
    require_within(index, 1.0, highest_spring_index, "spring index");
    if (index == 1.0) throw out_of_range_error("spring index", "1", "above 1");
    return index;
}

inline double require_turns(double turns, std::string_view what)
{
    require_within(turns, 0.0, most_turns, what);
    if (turns == 0.0) throw out_of_range_error(std::string(what), "0", "above zero");
    return turns;
}

// Stress, modulus and hardness in pascal: nothing solid reaches the upper end.
inline pressure require_stress(pressure stress, std::string_view what)
{
    return require_within(stress, in_si<pressure>(0.0), in_si<pressure>(1e13), what);
}

inline pressure require_modulus(pressure modulus, std::string_view what)
{
    return require_stress(require_positive(modulus, what), what);
}
}  // namespace detail

/// Spring index C = D/d [1].
/// @param coil mean coil diameter D [m], above d, up to 1000 d @param wire wire diameter d [m], 1 um to 0.2 m
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline double spring_index(length coil, length wire)
{
    require_within(wire, detail::thinnest_spring_wire, detail::thickest_spring_wire, "wire diameter");
    require_positive(coil, "coil diameter");
    if (!(coil > wire && coil <= detail::highest_spring_index * wire))
        throw out_of_range_error("coil diameter", si_text(coil),
                                 "above the wire diameter of " + si_text(wire) + ", up to 1000 times that");
    return (coil / wire).value();
}

/// Whether an index lies within 4 to 12, for which the curvature factors are made. @param index C [1], any
[[nodiscard]] constexpr bool usual_spring_index(double index)
{
    return index >= 4.0 && index <= 12.0;
}

/// Wahl's factor of direct shear and curvature, (4C - 1)/(4C - 4) + 0.615/C.
/// @param index C [1], above 1 to 1000 @throws not_finite_error, out_of_range_error
[[nodiscard]] inline double wahl_factor(double index)
{
    detail::require_index(index);
    return (4.0 * index - 1.0) / (4.0 * index - 4.0) + 0.615 / index;
}

/// Bergstrasser's factor of the same, (4C + 2)/(4C - 3); within 1.4 % of Wahl's from C 4, 1 % from C 8.
/// @param index C [1], above 1 to 1000 @throws not_finite_error, out_of_range_error
[[nodiscard]] inline double bergstrasser_factor(double index)
{
    detail::require_index(index);
    return (4.0 * index + 2.0) / (4.0 * index - 3.0);
}

/// Factor of direct shear alone, 1 + 0.5/C, for a spring that bears a steady load once.
/// @param index C [1], above 1 to 1000 @throws not_finite_error, out_of_range_error
[[nodiscard]] inline double direct_shear_factor(double index)
{
    detail::require_index(index);
    return 1.0 + 0.5 / index;
}

/// Curvature factor of bending at the inner fibre of a torsion spring, (4C^2 - C - 1)/(4C (C - 1)).
/// @param index C [1], above 1 to 1000 @throws not_finite_error, out_of_range_error
[[nodiscard]] inline double inner_bending_factor(double index)
{
    detail::require_index(index);
    return (4.0 * index * index - index - 1.0) / (4.0 * index * (index - 1.0));
}

/// Curvature factor at the outer fibre, (4C^2 + C - 1)/(4C (C + 1)).
/// @param index C [1], above 1 to 1000 @throws not_finite_error, out_of_range_error
[[nodiscard]] inline double outer_bending_factor(double index)
{
    detail::require_index(index);
    return (4.0 * index * index + index - 1.0) / (4.0 * index * (index + 1.0));
}

}  // namespace weldloop
