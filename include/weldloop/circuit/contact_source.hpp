#pragma once
/// @file
/// Contacts as sources of heat in a network, and what they let pass from one side to the other. Solver adapters on
/// plain doubles.

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <limits>

#include <weldloop/core/quantities.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/law/joint_characteristic.hpp>
#include <weldloop/law/joint_heat.hpp>
#include <weldloop/law/voltage_temperature.hpp>
#include <weldloop/material/air.hpp>
#include <weldloop/material/metal.hpp>
#include <weldloop/solve/heat_network.hpp>

namespace weldloop::detail {

/// How the force on a contact follows the temperature of what grips: (1 - slope (T - 20 degC))^power, never below zero,
/// and the conductance the force with the exponent of the force law.
struct force_follows {
    double slope = 0.0;  // 1/K
    int power = 1;
    double exponent = 1.0;
};

/// A contact of one or several alike in series under a steady current.
class contact_source final : public solve::heat_law {
public:
    /// @param cold conductance of each at 20 degC [S], above 0 @param metals that meet @param amps through it
    /// @param air reference of the rises [K] @param alike contacts in series @param grip what warmth does to its force
    contact_source(double cold, const metal_pair& metals, double amps, double air, int alike = 1,
                   const force_follows& grip = {})
        : metals_(metals), amps_(amps), air_(air), cold_(cold), alike_(alike), grip_(grip),
          melting_(std::min(metals.first.melting, metals.second.melting))
    {
        set_cold(cold);
    }

    /// Another point of its scatter. @param cold conductance of each at 20 degC [S], above 0
    void set_cold(double cold)
    {
        cold_ = cold;
        table_.fill(std::numeric_limits<double>::quiet_NaN());
    }
    [[nodiscard]] double cold() const { return cold_; }
    [[nodiscard]] double amps() const { return amps_; }
    [[nodiscard]] int alike() const { return alike_; }
    [[nodiscard]] const metal_pair& metals() const { return metals_; }

    /// The bulk at a rise; a body at or above the melting point of a metal counts as at it.
    [[nodiscard]] temperature bulk_at(double rise) const
    {
        constexpr double coldest = 1.0;  // K; an iteration may overshoot
        return std::min(temperature::kelvin(std::max(coldest, air_ + rise)), melting_);
    }

    /// Drop of one of the contacts [V].
    [[nodiscard]] double volts_at(double rise, double gripping_rise) const
    {
        return volts_with(cold_, rise, gripping_rise);
    }
    /// The same with another cold conductance [S].
    [[nodiscard]] double volts_with(double cold_at_20, double rise, double gripping_rise) const
    {
        const temperature bulk = bulk_at(rise);
        const double cold = cold_at_20 * share_at(gripping_rise) / resistivity_growth(metals_, bulk);
        return drop_law(joint_limits_of(metals_, bulk)).drop(amps_ / cold);
    }

    [[nodiscard]] solve::sloped_by_two at(double rise, double gripping_rise, bool slopes) const override
    {
        const double watts = amps_ * alike_;
        // near melting the drop falls ever more steeply: no table there
        constexpr double clear_of_melting = 60.0;  // K
        if (!(grip_.slope > 0.0) && rise >= 0.0 && rise < table_end &&
            air_ + rise < melting_.in_kelvin() - clear_of_melting) {
            const solve::sloped v = tabulated(rise);
            return {watts * v.value, watts * v.slope, 0.0};
        }
        const double volts = volts_at(rise, gripping_rise);
        solve::sloped_by_two out{watts * volts, 0.0, 0.0};
        if (!slopes) return out;
        constexpr double step = 0.02;  // K
        out.by_first = watts * (volts_at(rise + step, gripping_rise) - volts) / step;
        if (grip_.slope > 0.0) out.by_second = watts * (volts_at(rise, gripping_rise + step) - volts) / step;
        return out;
    }

private:
    [[nodiscard]] double share_at(double gripping_rise) const
    {
        if (!(grip_.slope > 0.0)) return 1.0;
        constexpr double least = 1e-9;  // of the force: a contact that is all but open still has its melting drop
        const double left =
            std::max(least, 1.0 - grip_.slope * (air_ + gripping_rise - reference_temperature.in_kelvin()));
        return std::pow(grip_.power == 1 ? left : left * left, grip_.exponent);
    }

    // Cubics between points 8 K apart, worked out where they are asked for: the drop bends over hundreds of kelvin.
    static constexpr double table_step = 8.0;
    static constexpr std::size_t table_points = 67;
    static constexpr double table_end = table_step * (table_points - 3);

    [[nodiscard]] double table_point(std::size_t i) const
    {
        double& v = table_[i];
        if (std::isnan(v)) v = volts_at(table_step * (static_cast<double>(i) - 1.0), 0.0);
        return v;
    }
    [[nodiscard]] solve::sloped tabulated(double rise) const
    {
        const double place = rise / table_step;
        const auto cell = static_cast<std::size_t>(place);
        const double u = place - static_cast<double>(cell);
        const double a = table_point(cell), b = table_point(cell + 1), c = table_point(cell + 2),
                     d = table_point(cell + 3);
        const double c1 = 0.5 * (c - a), c2 = a - 2.5 * b + 2.0 * c - 0.5 * d, c3 = 1.5 * (b - c) + 0.5 * (d - a);
        return {b + u * (c1 + u * (c2 + u * c3)), (c1 + u * (2.0 * c2 + 3.0 * u * c3)) / table_step};
    }

    metal_pair metals_;
    double amps_, air_, cold_;
    int alike_;
    force_follows grip_;
    temperature melting_;
    mutable std::array<double, table_points> table_{};
};

/// Heat that crosses the faces of a contact: by its spots, as they carry the current, and by the air between them.
class contact_crossing final : public solve::heat_law {
public:
    /// @param contact whose spots they are @param air reference of the rises [K] @param faces apparent area [m2], 0 or
    /// above
    contact_crossing(const contact_source& contact, double air, double faces)
        : contact_(&contact), air_(air), faces_(faces)
    {
    }

    [[nodiscard]] solve::sloped_by_two at(double rise, double gripping_rise, bool slopes) const override
    {
        solve::sloped_by_two out{conductance_at_rise(rise, gripping_rise), 0.0, 0.0};
        if (!slopes) return out;
        constexpr double step = 0.02;  // K
        out.by_first = (conductance_at_rise(rise + step, gripping_rise) - out.value) / step;
        return out;
    }

private:
    [[nodiscard]] double conductance_at_rise(double rise, double gripping_rise) const
    {
        const temperature bulk = contact_->bulk_at(rise);
        const double volts = contact_->volts_at(rise, gripping_rise) * contact_->alike();
        const double spots = volts > 0.0 ? contact_->amps() / volts : 0.0;
        const double gap = faces_ > 0.0 ? air_numbers_at(std::clamp(bulk, air_coldest, air_hottest).in_kelvin(),
                                                         sea_level_pressure.value())
                                                  .conductivity *
                                              faces_ / pressed_gap_height.value()
                                        : 0.0;
        return lorenz_number * bulk.in_kelvin() * spots + gap;
    }

    const contact_source* contact_;
    double air_, faces_;
};

/// Heat that crosses the bolted or plugged faces two neighbours share, by the metal spots of the better one.
class shared_face final : public solve::heat_law {
public:
    /// @param face cold conductance of the better face [S] @param air reference of the rises [K]
    shared_face(double face, double air) : by_kelvin_(lorenz_number * face), air_(air) {}

    [[nodiscard]] solve::sloped_by_two at(double rise, double, bool) const override
    {
        return {by_kelvin_ * (air_ + rise), by_kelvin_, 0.0};
    }

private:
    double by_kelvin_, air_;
};

}  // namespace weldloop::detail
