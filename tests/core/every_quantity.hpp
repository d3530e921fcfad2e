#pragma once
/// @file
/// The quantity types that have unit names, to run one check over all of them.

#include <string_view>

#include <weldloop/core/quantities.hpp>

namespace weldloop::test {

/// Calls visit(Q{}, "q") for every named quantity type q.
template <class F>
void for_every_quantity(F visit)
{
#define WELDLOOP_VISIT(name) visit(weldloop::name{}, std::string_view(#name))
    WELDLOOP_VISIT(length);
    WELDLOOP_VISIT(area);
    WELDLOOP_VISIT(volume);
    WELDLOOP_VISIT(mass);
    WELDLOOP_VISIT(duration);
    WELDLOOP_VISIT(frequency);
    WELDLOOP_VISIT(speed);
    WELDLOOP_VISIT(force);
    WELDLOOP_VISIT(pressure);
    WELDLOOP_VISIT(torque);
    WELDLOOP_VISIT(energy);
    WELDLOOP_VISIT(power);
    WELDLOOP_VISIT(current);
    WELDLOOP_VISIT(voltage);
    WELDLOOP_VISIT(resistance);
    WELDLOOP_VISIT(conductance);
    WELDLOOP_VISIT(resistivity);
    WELDLOOP_VISIT(inductance);
    WELDLOOP_VISIT(temperature_difference);
    WELDLOOP_VISIT(per_kelvin);
    WELDLOOP_VISIT(heat_capacity);
    WELDLOOP_VISIT(specific_heat);
    WELDLOOP_VISIT(volumetric_heat);
    WELDLOOP_VISIT(thermal_conductivity);
    WELDLOOP_VISIT(thermal_conductance);
    WELDLOOP_VISIT(heat_transfer_coefficient);
    WELDLOOP_VISIT(heat_flux);
    WELDLOOP_VISIT(power_per_length);
    WELDLOOP_VISIT(resistance_per_length);
    WELDLOOP_VISIT(mass_per_length);
    WELDLOOP_VISIT(density);
    WELDLOOP_VISIT(film_resistivity);
    WELDLOOP_VISIT(per_length);
#undef WELDLOOP_VISIT
}

}  // namespace weldloop::test
