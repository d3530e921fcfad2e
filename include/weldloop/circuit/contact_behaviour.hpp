#pragma once
/// @file
/// What a joint does under current: conductance of a contact with its scatter, and from it drop, heat and hottest spot
/// along the voltage-current characteristic.

#include <algorithm>
#include <type_traits>

#include <weldloop/core/band.hpp>
#include <weldloop/core/error.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/law/contact_shape.hpp>
#include <weldloop/law/force_law.hpp>
#include <weldloop/law/joint_characteristic.hpp>
#include <weldloop/law/scatter.hpp>
#include <weldloop/law/voltage_temperature.hpp>
#include <weldloop/material/metal.hpp>
#include <weldloop/material/surface_state.hpp>
#include <weldloop/part/contact.hpp>

namespace weldloop {

/// What a joint does at one current. Where it does not conduct, no current flows: every number is zero, the hottest
/// spot is the bulk.
struct joint_behaviour {
    bool conducts = false;     ///< false: an open circuit
    bool may_be_open = false;  ///< it conducts, but in more than one of twenty such joints it does not
    band<weldloop::resistance> resistance = {};  ///< [ohm] 0 or above, drop over current, at this current
    band<voltage> drop = {};                     ///< [V] never above the melting drop of its metals
    band<temperature> hottest_spot = {};  ///< of the spots; an upper bound where there are films; never above melting
    band<power> loss = {};                ///< [W] drop times current, 0 or above
    bool spots_melt = false;              ///< in the typical joint: may weld or burn
    bool spots_may_melt = false;          ///< in the worse joint (95 % point)
    weldloop::basis basis = {};           ///< sources and left ranges
};

namespace detail {

// Conductance of a pair under a force, divided by what scatters (`factors`, multipliers of resistance).
inline band<conductance> scattered_conductance(conductance typical, const band<double>& factors)
{
    return {typical / factors.high, typical / factors.typical, typical / factors.low};
}

inline constexpr band<conductance> open_circuit{};

// What every characteristic rests on, put together once. Not constexpr: under its undefined-behaviour sanitizer g++
// takes no comparison of addresses for a constant.
inline const basis& characteristic_basis()
{
    static const basis found = [] {
        basis out;
        out.add(softening_hardness_law).add(voltage_temperature_law).add(lorenz_source).add(melting_share_judgement);
        return out.add(hot_spot_resistance);
    }();
    return found;
}

// Of a force-law constant with its scatter, which stays in registers.
[[gnu::always_inline]] inline band<conductance> contact_conductance(const contact& c, const band<double>& constant)
{
    require_not_negative(c.force, "contact force");
    const double points = require_within(c.points, 1.0, 1000.0, "contact points");
    const band<double>* const surface = multiplier_row(c.surface);
    if (surface == nullptr || c.force.value() == 0.0) return open_circuit;
    const double each = require_finite(force_law_siemens(1.0, force_law_exponent(c.shape), (c.force / points).value()),
                                       "contact conductance");
    return scattered_conductance(in_si<conductance>(points * each), product(constant, *surface));
}

inline void add_contact_basis(basis& out, const force_law_constant_row& k)
{
    out.add(force_law_form).add(*k.from).add(force_law_exponents).add(surface_state_judgement);
    if (k.estimated) out.add(range_flag::pair_estimated);
}

}  // namespace detail

/// Conductance of a contact at 20 degC while its spots are cold [S]. Zero at all three points: open.
///
/// G = n (0.102 F/n)^m / (1e-6 K s): n points share force and current; K scatters as the published rows of the pair do,
/// s as the surface state does, independently. The clean row of s is the spread of the published exponents about the
/// usual one, so no further scatter is added for the exponent. A copper jaw on clean steel, 500 N: 59, 198, 395
/// micro-ohm.
///
/// Open without force, and through unbroken paint.
/// @param c the contact: force 0 or above, 1 to 1000 points
/// @throws not_finite_error, out_of_range_error
/// @see force_law_constant(), force_law_exponents, surface_state_judgement, independent_scatter
[[nodiscard]] inline band<conductance> contact_conductance_of(const contact& c)
{
    const metal &first = c.metals.first, &second = c.metals.second;
    const detail::published_constant* const row = detail::find_constant(first.name, second.name);
    return detail::contact_conductance(c, row != nullptr ? row->constant()
                                                         : detail::estimated_constant(first, second).constant);
}

/// What a contact's conductance rests on: sources, and pair_estimated for metals without a published constant.
/// @param c the contact @throws as force_law_constant()
[[nodiscard]] inline basis contact_basis_of(const contact& c)
{
    basis out;
    detail::add_contact_basis(out, force_law_constant(c.metals.first, c.metals.second));
    return out;
}

/// Resistance of a contact at 20 degC while its spots are cold [ohm]; one over contact_conductance_of().
/// @param c the contact
/// @throws missing_data_error for an open contact, which has none; not_finite_error, out_of_range_error
[[nodiscard]] inline band<resistance> contact_resistance_of(const contact& c)
{
    const band<conductance> g = contact_conductance_of(c);
    if (!(g.low.value() > 0.0))
        throw missing_data_error("contact resistance", "that of an open circuit",
                                 "a contact with force, and no unbroken paint in it");
    return mapped(g, [](conductance x) { return require_finite(resistance(1.0 / x), "contact resistance"); });
}

/// What any joint does at a current: the characteristic of joint_drop() for the three points of its conductance.
///
/// A joint that conducts typically but not at its low point (`may_be_open`) has there the drop to which the
/// characteristic tends, the melting drop. With the bulk at or above a metal's melting point the joint is wetted: no
/// drop, `spots_melt`, and the melting point as its hottest spot.
/// @param at_20   conductance at 20 degC with cold spots [S], zero or above, in order; zero is open
/// @param metals  the two that meet @param through current [A], 0 or above @param bulk temperature of both bodies
/// @throws not_finite_error, out_of_range_error; missing_data_error for the resistance of a joint that may be open, at
///   no current
/// @see softening_hardness_law, voltage_temperature_law, melting_share_judgement
[[nodiscard]] inline joint_behaviour joint_behaviour_of(const band<conductance>& at_20, const metal_pair& metals,
                                                        current through, temperature bulk)
{
    require_not_negative(at_20.low, "joint conductance");
    require_not_negative(at_20.typical - at_20.low, "rise from low to typical conductance");
    require_not_negative(at_20.high - at_20.typical, "rise from typical to high conductance");
    require_not_negative(through, "current");

    const joint_limits limits = joint_limits_of(metals, bulk);
    const temperature melting = std::min(metals.first.melting, metals.second.melting);
    joint_behaviour out;
    out.basis = detail::characteristic_basis();
    out.basis.add(*metals.first.contact_source).add(*metals.second.contact_source);
    out.conducts = at_20.typical.value() > 0.0;
    if (!out.conducts) {
        out.hottest_spot = exactly(bulk);
        return out;
    }
    out.may_be_open = !(at_20.low.value() > 0.0);

    // the low conductance gives the high drop
    const double grown = detail::resistivity_growth(metals, bulk);
    const detail::spot_characteristic law(limits);
    const auto drop_at = [&](conductance g) {
        if (!(through.value() > 0.0)) return in_si<voltage>(0.0);
        return in_si<voltage>(law.drop(through.value() * grown / g.value()));
    };
    out.drop = {drop_at(at_20.high), drop_at(at_20.typical),
                out.may_be_open && through.value() > 0.0 ? limits.melting : drop_at(at_20.low)};
    out.loss = mapped(out.drop, [&](voltage v) { return power(v * through); });
    out.hottest_spot = mapped(out.drop, [&](voltage v) { return std::min(hot_spot_temperature(v, bulk), melting); });
    if (through.value() > 0.0)
        out.resistance =
            mapped(out.drop, [&](voltage v) { return require_finite(resistance(v / through), "joint resistance"); });
    else if (out.may_be_open)
        throw missing_data_error("joint resistance", "that of a joint that may be open", "a current above zero");
    else
        out.resistance =
            mapped(at_20, [&](conductance g) { return require_finite(resistance(grown / g), "joint resistance"); });

    const auto melts = [&](voltage v) { return v >= melting_share * limits.melting; };
    out.spots_melt = melts(out.drop.typical);
    out.spots_may_melt = melts(out.drop.high);
    if (out.spots_melt) out.basis.add(range_flag::spots_melting);
    return out;
}

/// What a contact does at a current and a bulk temperature.
/// @param c the contact @param through current [A], 0 or above @param bulk temperature of both bodies
/// @throws not_finite_error, out_of_range_error @see joint_behaviour_of(), contact_conductance_of()
[[nodiscard]] inline joint_behaviour behaviour_of(const contact& c, current through, temperature bulk)
{
    const force_law_constant_row k = force_law_constant(c.metals.first, c.metals.second);
    joint_behaviour out = joint_behaviour_of(detail::contact_conductance(c, k.constant), c.metals, through, bulk);
    detail::add_contact_basis(out.basis, k);
    return out;
}

/// The hottest spot of a contact at a current, and nothing else: the same temperatures as behaviour_of() gives, without
/// its other numbers and its list of sources. For sweeps. The bulk's temperature where no current can flow.
/// @param c the contact @param through current [A], 0 or above @param bulk temperature of both bodies
/// @throws not_finite_error, out_of_range_error @see behaviour_of(), hot_spot_temperature()
[[nodiscard]] inline band<temperature> hottest_spot_of(const contact& c, current through, temperature bulk)
{
    const band<conductance> g = contact_conductance_of(c);
    require_not_negative(through, "current");
    const temperature melting = std::min(c.metals.first.melting, c.metals.second.melting);
    if (!(g.typical.value() > 0.0)) return exactly(bulk);
    const detail::spot_characteristic law(joint_limits_of(c.metals, bulk));
    const double amps = through.value() * detail::resistivity_growth(c.metals, bulk);
    const auto spot = [&](conductance of) {
        const voltage drop = in_si<voltage>(amps > 0.0 ? law.drop(amps / of.value()) : 0.0);
        return std::min(hot_spot_temperature(drop, bulk), melting);
    };
    return {spot(g.high), spot(g.typical), spot(g.low)};
}

/// Conductance of two joints one after the other [S]; zero if either is open. The ends of the two bands meet, which
/// makes the band of the sum a little too wide.
/// @param a one joint [S], 0 or above @param b the other [S], 0 or above
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline band<conductance> in_series(const band<conductance>& a, const band<conductance>& b)
{
    const auto both = [](conductance x, conductance y) {
        require_not_negative(x, "joint conductance");
        require_not_negative(y, "joint conductance");
        if (x.value() == 0.0 || y.value() == 0.0) return in_si<conductance>(0.0);
        return conductance(x / (1.0 + (x / y).value()));
    };
    return {both(a.low, b.low), both(a.typical, b.typical), both(a.high, b.high)};
}

/// Two joints one after the other, at the same current: drops, heat and resistances add, the hotter spot counts.
/// @param a one joint @param b the other @throws not_finite_error for a sum beyond the numbers there are
[[nodiscard]] inline joint_behaviour in_series(const joint_behaviour& a, const joint_behaviour& b)
{
    joint_behaviour out;
    out.basis = a.basis;
    out.basis.add(b.basis);
    out.conducts = a.conducts && b.conducts;
    const auto hotter = [](temperature x, temperature y) { return std::max(x, y); };
    out.hottest_spot = {hotter(a.hottest_spot.low, b.hottest_spot.low),
                        hotter(a.hottest_spot.typical, b.hottest_spot.typical),
                        hotter(a.hottest_spot.high, b.hottest_spot.high)};
    if (!out.conducts) {
        // no current in the one that conducts either: its spots are at the bulk temperature of the open one
        out.hottest_spot = a.conducts ? b.hottest_spot : a.hottest_spot;
        return out;
    }
    const auto sum = [](const auto& x, const auto& y) {
        const auto finite = [](const auto& one) { return require_finite(one, "sum of two joints"); };
        return std::decay_t<decltype(x)>{finite(x.low + y.low), finite(x.typical + y.typical), finite(x.high + y.high)};
    };
    out.may_be_open = a.may_be_open || b.may_be_open;
    out.resistance = sum(a.resistance, b.resistance);
    out.drop = sum(a.drop, b.drop);
    out.loss = sum(a.loss, b.loss);
    out.spots_melt = a.spots_melt || b.spots_melt;
    out.spots_may_melt = a.spots_may_melt || b.spots_may_melt;
    return out;
}

}  // namespace weldloop
