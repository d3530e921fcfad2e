#pragma once
/// @file
/// Quantities and laws by short words, for the tables of laws alone. Inputs are in SI units, temperatures in kelvin.

#include <span>
#include <string_view>

#include <weldloop/core/quantities.hpp>
#include <weldloop/core/temperature.hpp>

namespace weldloop::test::digits {

using inputs = std::span<const double>;  ///< of a law, in its order

/// A law by its name.
struct named_law {
    std::string_view name;      ///< as in the rows
    double (*value)(inputs x);  ///< of it
};

inline length m(double x)
{
    return in_si<length>(x);
}
inline area m2(double x)
{
    return in_si<area>(x);
}
inline temperature K(double x)
{
    return temperature::kelvin(x);
}
inline temperature_difference dK(double x)
{
    return in_si<temperature_difference>(x);
}
inline current A(double x)
{
    return in_si<current>(x);
}
inline voltage V(double x)
{
    return in_si<voltage>(x);
}
inline duration s(double x)
{
    return in_si<duration>(x);
}
inline force N(double x)
{
    return in_si<force>(x);
}
inline pressure Pa(double x)
{
    return in_si<pressure>(x);
}
inline resistance ohm(double x)
{
    return in_si<resistance>(x);
}
inline resistivity ohm_m(double x)
{
    return in_si<resistivity>(x);
}
inline conductance S(double x)
{
    return in_si<conductance>(x);
}

}  // namespace weldloop::test::digits
