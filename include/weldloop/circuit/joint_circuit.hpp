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

/// That point of a band.
template <class Q>
[[nodiscard]] constexpr const Q& pick(const band<Q>& b, scatter level)
{
    return level == scatter::low ? b.low : level == scatter::high ? b.high : b.typical;
}

/// One contact of a joint: its cold conductance and the metals that meet.
struct series_contact {
    band<conductance> cold;  ///< at 20 degC, before spots yield; zero is open
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

/// A joint under current.
struct joint_point {
    bool conducts = true;           ///< false: open, no current
    voltage drop = {};              ///< over all its contacts
    voltage first_drop = {};        ///< over the first contact, the one with the work for clamps
    temperature hottest_spot = {};  ///< film-free upper bound, of the worst contact
    double softening_used = 0.0;    ///< drop over softening drop, of the contact that uses most of it
    bool spots_melt = false;        ///< a contact is at the melting drop of its metals
};

/// A joint's drop and hottest spot at a current.
/// @param joint its contacts @param level which point of their scatter @param through current [A], 0 or above
/// @param bulk temperature of its body; at or above the melting point of a metal it counts as just below
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline joint_point joint_point_of(const joint_circuit& joint, scatter level, current through,
                                                temperature bulk)
{
    // low resistance is high conductance
    const scatter of_conductance = level == scatter::low    ? scatter::high
                                   : level == scatter::high ? scatter::low
                                                            : scatter::typical;
    joint_point out;
    out.hottest_spot = bulk;
    for (std::size_t i = 0; i < joint.count; ++i) {
        const series_contact& c = joint.contacts[i];
        const conductance cold = pick(c.cold, of_conductance);
        if (!(cold.value() > 0.0)) {
            out.conducts = false;
            out.drop = out.first_drop = {};
            out.softening_used = 0.0;
            out.spots_melt = false;
            out.hottest_spot = bulk;
            return out;
        }
        const temperature lower_melting = std::min(c.metals.first.melting, c.metals.second.melting);
        const temperature here = std::min(bulk, lower_melting);
        const joint_limits limits = joint_limits_of(c.metals, here);
        const voltage drop = joint_drop(through, conductance_at(cold, c.metals, here), limits);
        out.drop += drop;
        if (i == 0) out.first_drop = drop;
        out.hottest_spot =
            std::max(i == 0 ? here : out.hottest_spot, std::min(hot_spot_temperature(drop, here), lower_melting));
        if (limits.softening.value() > 0.0)
            out.softening_used = std::max(out.softening_used, (drop / limits.softening).value());
        out.spots_melt = out.spots_melt || drop >= melting_share * limits.melting;
    }
    out.drop += pick(joint.constant_drop, level);
    return out;
}

}  // namespace weldloop
