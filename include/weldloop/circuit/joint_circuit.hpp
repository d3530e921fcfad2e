#pragma once
/// @file
/// What the loop needs of a joint: its contacts in series, what does not follow their law, and its body of metal.

#include <array>
#include <cstddef>

#include <weldloop/circuit/thermal_body.hpp>
#include <weldloop/core/band.hpp>
#include <weldloop/core/error.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/law/joint_characteristic.hpp>
#include <weldloop/material/metal.hpp>

namespace weldloop {

/// Which point of every joint's scatter a solution is made for.
enum class scatter {
    low,      ///< small resistances, the 5 % points
    typical,  ///< medians
    high,     ///< large resistances, the 95 % points
};

/// That point of a band. @param b of anything, any @param level which point
template <class Q>
[[nodiscard]] constexpr const Q& pick(const band<Q>& b, scatter level)
{
    return level == scatter::low ? b.low : level == scatter::high ? b.high : b.typical;
}

/// One contact of a joint: its cold conductance and the metals that meet.
struct series_contact {
    band<conductance> cold;  ///< [S] at 20 degC, before spots yield, 0 or above; zero is open
    metal_pair metals;       ///< the two bodies
};

/// A joint as the loop sees it.
struct joint_circuit {
    static constexpr std::size_t most_contacts = 2;           ///< in series
    std::array<series_contact, most_contacts> contacts = {};  ///< the first `count` are used
    std::size_t count = 0;                                    ///< contacts in use
    band<voltage> constant_drop = {};       ///< sliding contact: a drop that hardly follows the current
    thermal_body body = {};                 ///< its metal
    double heat_kept = 1.0;                 ///< share of the constant drop's heat that stays in the body
    thermal_conductance flow_cooling = {};  ///< to gas that flows while the arc burns [W/K]
    conductance outer = {};      ///< of its bolted or plugged face: heat crosses there to the neighbour joint
    weldloop::basis basis = {};  ///< of the numbers

    /// Adds a contact in series. @throws std::length_error beyond most_contacts, a fault of the library
    void add(const series_contact& c) { contacts.at(count++) = c; }
};

}  // namespace weldloop
