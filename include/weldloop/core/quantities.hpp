#pragma once
/// @file
/// Short names for the physical quantities of the library: Boost.Units quantities in coherent SI units.
///
/// A wrong unit does not compile. Units of daily use (feet, kcmil, degrees) enter through literals.hpp and parse.hpp
/// and leave through text.hpp; between those edges every value is in SI.

#include <boost/units/pow.hpp>
#include <boost/units/quantity.hpp>
#include <boost/units/systems/si/area.hpp>
#include <boost/units/systems/si/base.hpp>
#include <boost/units/systems/si/conductance.hpp>
#include <boost/units/systems/si/current.hpp>
#include <boost/units/systems/si/electric_potential.hpp>
#include <boost/units/systems/si/energy.hpp>
#include <boost/units/systems/si/force.hpp>
#include <boost/units/systems/si/frequency.hpp>
#include <boost/units/systems/si/inductance.hpp>
#include <boost/units/systems/si/length.hpp>
#include <boost/units/systems/si/mass.hpp>
#include <boost/units/systems/si/plane_angle.hpp>
#include <boost/units/systems/si/power.hpp>
#include <boost/units/systems/si/pressure.hpp>
#include <boost/units/systems/si/resistance.hpp>
#include <boost/units/systems/si/resistivity.hpp>
#include <boost/units/systems/si/temperature.hpp>
#include <boost/units/systems/si/time.hpp>
#include <boost/units/systems/si/torque.hpp>
#include <boost/units/systems/si/velocity.hpp>
#include <boost/version.hpp>

#include <weldloop/core/quantity_operators.hpp>

#if BOOST_VERSION < 107400
#error "weldloop needs Boost 1.74 or later: no older one was tried"
#endif

namespace weldloop {

namespace si = boost::units::si;

using length = boost::units::quantity<si::length>;               ///< metre
using area = boost::units::quantity<si::area>;                   ///< square metre
using mass = boost::units::quantity<si::mass>;                   ///< kilogram
using duration = boost::units::quantity<si::time>;               ///< second
using frequency = boost::units::quantity<si::frequency>;         ///< hertz
using speed = boost::units::quantity<si::velocity>;              ///< metre per second
using force = boost::units::quantity<si::force>;                 ///< newton
using pressure = boost::units::quantity<si::pressure>;           ///< pascal; also stress, modulus and hardness
using torque = boost::units::quantity<si::torque>;               ///< newton metre (Boost: per radian)
using energy = boost::units::quantity<si::energy>;               ///< joule
using power = boost::units::quantity<si::power>;                 ///< watt
using current = boost::units::quantity<si::current>;             ///< ampere
using voltage = boost::units::quantity<si::electric_potential>;  ///< volt
using resistance = boost::units::quantity<si::resistance>;       ///< ohm
using conductance = boost::units::quantity<si::conductance>;     ///< siemens
using resistivity = boost::units::quantity<si::resistivity>;     ///< ohm metre
using inductance = boost::units::quantity<si::inductance>;       ///< henry
using temperature_difference =
    boost::units::quantity<si::temperature>;  ///< kelvin, a difference; points are `temperature`

using volume = decltype(area{} * length{});                                        ///< cubic metre
using density = decltype(mass{} / volume{});                                       ///< kilogram per cubic metre
using per_kelvin = decltype(1.0 / temperature_difference{});                       ///< 1/K, temperature coefficients
using heat_capacity = decltype(energy{} / temperature_difference{});               ///< joule per kelvin
using specific_heat = decltype(energy{} / mass{} / temperature_difference{});      ///< J/(kg K)
using volumetric_heat = decltype(energy{} / volume{} / temperature_difference{});  ///< J/(m3 K)
using thermal_conductivity = decltype(power{} / length{} / temperature_difference{});     ///< W/(m K)
using thermal_conductance = decltype(power{} / temperature_difference{});                 ///< W/K
using heat_transfer_coefficient = decltype(power{} / area{} / temperature_difference{});  ///< W/(m2 K)
using heat_flux = decltype(power{} / area{});                                             ///< W/m2
using power_per_length = decltype(power{} / length{});                                    ///< W/m
using resistance_per_length = decltype(resistance{} / length{});                          ///< ohm/m
using mass_per_length = decltype(mass{} / length{});                                      ///< kg/m
using film_resistivity = decltype(resistance{} * area{});                                 ///< ohm m2, of a surface film
using per_length = decltype(1.0 / length{});                                              ///< 1/m

static_assert(sizeof(current) == sizeof(double), "a quantity costs no more than its number");

/// Wraps a number that is already in the coherent SI unit of Q. For solver adapters and data tables, where the unit
/// stands beside the number; everywhere else use a literal.
/// @param value [coherent SI unit of Q], any
template <class Q>
[[nodiscard]] constexpr Q in_si(double value)
{
    return Q::from_value(value);
}

}  // namespace weldloop
