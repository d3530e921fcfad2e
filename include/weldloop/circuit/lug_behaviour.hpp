#pragma once
/// @file
/// A lug under current: the crimp on its cable and the bolted palm, two joints one after the other.

#include <weldloop/circuit/bolted_face.hpp>
#include <weldloop/circuit/contact_behaviour.hpp>
#include <weldloop/circuit/part_body.hpp>
#include <weldloop/circuit/part_sheet.hpp>
#include <weldloop/core/band.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/law/bolt.hpp>
#include <weldloop/law/contact_shape.hpp>
#include <weldloop/law/crimp.hpp>
#include <weldloop/law/force_law.hpp>
#include <weldloop/material/metals.hpp>
#include <weldloop/part/crimped_lug.hpp>
#include <weldloop/part/lug.hpp>

namespace weldloop {

/// What a palm is bolted to.
inline constexpr source palm_judgement{
    "palm of a lug: copper on a brass stud or clamp arm (the worse of the usual two), zinc-plated bolt",
    "2026",
    {},
    source_kind::judgement};
/// The two metals under a palm; see palm_judgement.
inline constexpr metal_pair palm_metals{annealed_copper, brass};
/// The two metals in a crimp.
inline constexpr metal_pair crimp_metals{annealed_copper, annealed_copper};

/// Conductance of one sound crimp at 20 degC [S]. @param conductor area of metal [m2], as in crimp_limit_of()
/// @throws not_finite_error, out_of_range_error @see crimp_band_judgement
[[nodiscard]] inline band<conductance> sound_crimp_conductance_of(area conductor)
{
    return mapped(crimp_resistance(conductor), [](resistance r) { return conductance(1.0 / r); });
}

/// Conductance of the sound crimps at both ends of a conductor, one after the other, at 20 degC [S].
/// @param conductor area of metal [m2], as in crimp_limit_of() @throws not_finite_error, out_of_range_error
[[nodiscard]] inline band<conductance> both_crimps_conductance_of(area conductor)
{
    const band<conductance> one = sound_crimp_conductance_of(conductor);
    return in_series(one, one);
}

/// The sources a sound crimp rests on. @param conductor area of metal [m2], as in crimp_limit_of()
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline basis crimp_basis_of(area conductor)
{
    basis out;
    return out.add(*crimp_limit_of(conductor).from).add(crimp_band_judgement);
}

/// What one sound crimp does at a current. @param conductor area of metal [m2], as in crimp_limit_of()
/// @param through current [A], 0 or above @param bulk temperature of the crimp @throws not_finite_error,
/// out_of_range_error
[[nodiscard]] inline joint_behaviour sound_crimp_behaviour_of(area conductor, current through, temperature bulk)
{
    joint_behaviour out = joint_behaviour_of(sound_crimp_conductance_of(conductor), crimp_metals, through, bulk);
    out.basis.add(crimp_basis_of(conductor));
    return out;
}

/// Conductance of a lug's crimp at 20 degC [S]: that of a sound crimp of the cable's size, less by the cube of the
/// share of strands that fill the barrel. With a fifth of the strands missing it has 1.95 times the resistance.
/// @param l the lug @throws not_finite_error, out_of_range_error @see crimp_band_judgement,
/// underfilled_barrel_judgement
[[nodiscard]] inline band<conductance> crimp_conductance_of(const lug& l)
{
    const double worse = underfilled_factor(barrel_shortfall(l.size.area(), l.stamped.area(), l.missing_strands));
    return mapped(crimp_resistance(l.size.area()), [&](resistance r) { return conductance(1.0 / (worse * r)); });
}

/// Conductance of a lug's bolted palm at 20 degC [S] by the force law with the exponent of bus bars and the force of
/// its bolt; the nut factor scatters beside K and surface. Open without torque, and on unbroken paint.
/// @param l the lug: bolt torque 0 or above, bolt diameter above 0
/// @throws not_finite_error, out_of_range_error @see palm_judgement, nut_factor_zinc
[[nodiscard]] inline band<conductance> palm_conductance_of(const lug& l)
{
    return bolted_face_conductance_of({.metals = palm_metals,
                                       .bolt_diameter = l.bolt_diameter,
                                       .tightening = l.bolt_torque,
                                       .thread = thread_state::zinc_plated,
                                       .surface = l.palm});
}

/// The sources a lug's palm rests on.
[[nodiscard]] inline basis palm_basis()
{
    basis out;
    detail::add_contact_basis(out, force_law_constant(palm_metals.first, palm_metals.second));
    return out.add(palm_judgement).add(nut_factor_zinc);
}

/// Conductance of a whole lug at 20 degC [S], crimp and palm one after the other.
/// @param l the lug @throws not_finite_error, out_of_range_error
[[nodiscard]] inline band<conductance> lug_conductance_of(const lug& l)
{
    return in_series(crimp_conductance_of(l), palm_conductance_of(l));
}

/// What a lug's crimp does at a current. @param l the lug @param through current [A], 0 or above @param bulk of the lug
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline joint_behaviour crimp_behaviour_of(const lug& l, current through, temperature bulk)
{
    joint_behaviour out = joint_behaviour_of(crimp_conductance_of(l), crimp_metals, through, bulk);
    out.basis.add(crimp_basis_of(l.size.area())).add(underfilled_barrel_judgement);
    return out;
}

/// What a lug's palm does at a current. @param l the lug @param through current [A], 0 or above @param bulk of the lug
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline joint_behaviour palm_behaviour_of(const lug& l, current through, temperature bulk)
{
    joint_behaviour out = joint_behaviour_of(palm_conductance_of(l), palm_metals, through, bulk);
    out.basis.add(palm_basis());
    return out;
}

/// What a lug does at a current: crimp and palm together. @param l the lug @param through current [A], 0 or above
/// @param bulk temperature of the lug @throws not_finite_error, out_of_range_error
[[nodiscard]] inline joint_behaviour behaviour_of(const lug& l, current through, temperature bulk)
{
    return in_series(crimp_behaviour_of(l, through, bulk), palm_behaviour_of(l, through, bulk));
}

/// The sheet of a lug: its crimp and its palm on one body, the limits of bolted copper and of a crimp.
/// @param l the lug @throws not_finite_error, out_of_range_error
[[nodiscard]] inline part_sheet sheet_of(const lug& l)
{
    part_sheet out;
    const band<conductance> crimp = crimp_conductance_of(l), palm = palm_conductance_of(l);
    out.contacts = {{"crimp", contact_hold::crimp, crimp, crimp_metals},
                    {"palm", contact_hold::bolt, palm, palm_metals}};
    out.body = lug_body(l.size);
    out.melting = detail::melting_of(palm_metals);
    out.outer_face = palm.typical;
    out.limits = {detail::joint_limit_at(part_place::metal, joint_kind::bolted, "bolted bare copper in air")};
    out.crimp = detail::crimp_held(crimp, l.size.area());
    out.basis.add(crimp_basis_of(l.size.area())).add(underfilled_barrel_judgement).add(palm_basis());
    out.basis.add(generic_bodies);
    return out;
}

/// What can be otherwise with a lug. @param l the lug
[[nodiscard]] inline part_conditions<lug> conditions_of(const lug& l)
{
    return {.surface = &lug::palm,
            .tightening = &lug::bolt_torque,
            .usual_tightening = crimped_lug(l.name, l.size).bolt_torque,
            .missing_strands = &lug::missing_strands};
}

/// A reading across a crimp held against its limit.
struct crimp_acceptance {
    resistance limit;       ///< [ohm] highest a good crimp of the size may have
    resistance reading;     ///< [ohm] drop over current
    double used;            ///< ratio of reading to limit
    bool within_limit;      ///< reading at or below the limit
    bool limit_recalled;    ///< the limit is not read from the standard: it gives no passing verdict by itself
    weldloop::basis basis;  ///< where the limit comes from
};

/// Whether a crimp is good at a reading: the drop from the front of the barrel to the conductor just behind it, at
/// about the test current of the table and with the joint near room temperature.
/// @param size of the conductor @param drop measured [V], 0 or above @param through measured current [A], above 0
/// @throws not_finite_error, out_of_range_error @see crimp_limit_of()
[[nodiscard]] inline crimp_acceptance crimp_acceptance_of(const conductor_size& size, voltage drop, current through)
{
    const crimp_limit limit = crimp_limit_of(size.area());
    const resistance reading = require_not_negative(drop, "voltage reading") / require_positive(through, "current");
    require_finite(reading, "resistance reading");
    crimp_acceptance out{limit.resistance,
                         reading,
                         require_finite((reading / limit.resistance).value(), "resistance reading over its limit"),
                         reading <= limit.resistance,
                         limit.from != &crimp_limits_read,
                         {}};
    out.basis.add(*limit.from);
    return out;
}

}  // namespace weldloop
