#pragma once
/// @file
/// Contacts as sources of heat in a network, and what they let pass from one side to the other. Solver adapters on
/// plain doubles.
/// Source: hot_spot_resistance and the other laws of joint_characteristic.hpp, joint_heat.hpp and
/// voltage_temperature.hpp.

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <limits>

#include <weldloop/circuit/rise_table.hpp>
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
        : law_(metals), amps_(amps), air_(air), cold_(cold), alike_(alike), grip_(grip),
          melting_(std::min(metals.first.melting, metals.second.melting))
    {
        set_cold(cold);
    }

    /// Another point of its scatter. @param cold conductance of each at 20 degC [S], above 0
    void set_cold(double cold)
    {
        cold_ = cold;
        if (!(grip_.slope > 0.0)) table_.clear();
        last_ = {};
    }
    /// Another current [A], above 0.
    void set_amps(double amps)
    {
        if (amps == amps_) return;
        amps_ = amps;
        if (!(grip_.slope > 0.0)) table_.clear();
        last_ = {};
    }
    /// Whether its drop is taken from a table: no use where the current changes all the time.
    void keep_table(bool keep) { is_tabled_ = keep; }
    [[nodiscard]] double cold() const { return cold_; }
    [[nodiscard]] double amps() const { return amps_; }
    [[nodiscard]] int alike() const { return alike_; }
    [[nodiscard]] const metal_pair& metals() const { return law_.metals(); }
    [[nodiscard]] const force_follows& grip() const { return grip_; }
    [[nodiscard]] double air() const { return air_; }  ///< reference of its rises [K]
    /// Rise at which one of its metals melts [K].
    [[nodiscard]] double melting_rise() const { return melting_.in_kelvin() - air_; }

    /// The bulk at a rise; a body at or above the melting point of a metal counts as at it.
    [[nodiscard]] temperature bulk_at(double rise) const
    {
        constexpr double coldest = 1.0;  // K; an iteration may overshoot
        return std::min(temperature::kelvin(std::max(coldest, air_ + rise)), melting_);
    }

    /// Drop over current over conductance with the bulk at a rise.
    [[nodiscard]] spot_characteristic characteristic_at(double rise) const
    {
        return spot_characteristic(joint_limits_of(law_.metals(), bulk_at(rise)));
    }
    /// Conductance of one as cold spots with its bulk at a rise [S].
    [[nodiscard]] double conductance_at_rise(double rise, double gripping_rise) const
    {
        return cold_ * share_at(gripping_rise) / resistivity_growth(law_.metals(), bulk_at(rise));
    }

    /// Both at a state: the characteristic over current times `cold_ohms`, the inverse of that conductance [ohm].
    struct held {
        spot_characteristic law;
        double cold_ohms;
    };
    [[nodiscard]] held held_at(double rise, double gripping_rise) const
    {
        const pair_characteristic::with_bulk is = law_.at_bulk(bulk_at(rise).in_kelvin());
        return {is.law, is.growth / (cold_ * share_at(gripping_rise))};
    }

    /// Drop of one of the contacts [V].
    [[nodiscard]] double volts_at(double rise, double gripping_rise) const
    {
        return volts_with(cold_, rise, gripping_rise);
    }
    /// The same with another current [A], 0 or above.
    [[nodiscard]] double volts_through(double amps, double rise, double gripping_rise) const
    {
        return amps > 0.0 ? characteristic_at(rise).drop(amps / conductance_at_rise(rise, gripping_rise)) : 0.0;
    }
    /// The same with another cold conductance [S].
    [[nodiscard]] double volts_with(double cold_at_20, double rise, double gripping_rise) const
    {
        return law_.volts_at(amps_ / (cold_at_20 * share_at(gripping_rise)), bulk_at(rise).in_kelvin());
    }

    /// The drop as the network takes it [V], with slopes if asked for: by table where its force is steady.
    [[nodiscard]] solve::sloped_by_two drop_at(double rise, double gripping_rise,
                                               solve::asked what = solve::asked::value) const
    {
        // near melting the drop falls ever more steeply: no table there
        constexpr double clear_of_melting = 60.0;  // K
        if (is_tabled_ && !(grip_.slope > 0.0) && rise >= 0.0 && rise < rise_table::end &&
            air_ + rise < melting_.in_kelvin() - clear_of_melting) {
            const solve::sloped v = table_.at(rise, [this](double r) { return volts_at(r, 0.0); });
            return {v.value, v.slope, 0.0};
        }
        if (!(last_.rise == rise && last_.gripping == gripping_rise))
            last_ = {rise, gripping_rise, {volts_at(rise, gripping_rise), 0.0, 0.0}, false};
        if (what == solve::asked::slopes && !last_.has_slopes) {
            last_.volts = sloped(last_.volts.value, rise, gripping_rise);
            last_.has_slopes = true;
        }
        return last_.volts;
    }

    [[nodiscard]] solve::sloped_by_two at(double rise, double gripping_rise, solve::asked what) const override
    {
        const double watts = amps_ * alike_;
        const solve::sloped_by_two v = drop_at(rise, gripping_rise, what);
        return {watts * v.value, watts * v.by_first, watts * v.by_second};
    }

private:
    static constexpr double least_left = 1e-9;  // of the force: all but open, a contact still has its melting drop
    [[nodiscard]] double left_at(double gripping_rise) const
    {
        return std::max(least_left, 1.0 - grip_.slope * (air_ + gripping_rise - reference_temperature.in_kelvin()));
    }
    [[nodiscard]] solve::sloped_by_two sloped(double volts, double rise, double gripping_rise) const
    {
        const double kelvin = bulk_at(rise).in_kelvin();
        const pair_characteristic::drop_at v = law_.sloped(volts, kelvin);
        solve::sloped_by_two out{v.volts, kelvin < melting_.in_kelvin() ? v.by_kelvin : 0.0, 0.0};
        if (!(grip_.slope > 0.0)) return out;
        const double left = left_at(gripping_rise);
        if (left > least_left) out.by_second = v.by_log * grip_.slope * grip_.power * grip_.exponent / left;
        return out;
    }

    [[nodiscard]] double share_at(double gripping_rise) const
    {
        if (!(grip_.slope > 0.0)) return 1.0;
        const double left = left_at(gripping_rise);
        return std::pow(grip_.power == 1 ? left : left * left, grip_.exponent);
    }

    // The last asked for: heat and crossing of one contact ask in turn.
    struct known_drop {
        double rise = std::numeric_limits<double>::quiet_NaN(), gripping = 0.0;
        solve::sloped_by_two volts = {};
        bool has_slopes = false;
    };

    pair_characteristic law_;
    double amps_, air_, cold_;
    int alike_;
    force_follows grip_;
    temperature melting_;
    rise_table table_;
    mutable known_drop last_;
    bool is_tabled_ = true;
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

    [[nodiscard]] solve::sloped_by_two at(double rise, double gripping_rise, solve::asked what) const override
    {
        const double bulk = contact_->bulk_at(rise).in_kelvin();
        const solve::sloped_by_two v = contact_->drop_at(rise, gripping_rise, what);
        const double volts = v.value * contact_->alike();
        const solve::sloped air = gap(rise);
        if (!(volts > 0.0)) return {air.value, air.slope, 0.0};
        const double spots = lorenz_number * contact_->amps() / volts;
        return {spots * bulk + air.value, spots * (1.0 - bulk * v.by_first / v.value) + air.slope, 0.0};
    }

private:
    [[nodiscard]] solve::sloped gap(double rise) const
    {
        if (!(faces_ > 0.0)) return {};
        if (rise >= 0.0 && rise < rise_table::end) return gap_.at(rise, [this](double r) { return gap_by_law(r); });
        return {gap_by_law(rise), 0.0};
    }
    [[nodiscard]] double gap_by_law(double rise) const
    {
        const double bulk = std::clamp(air_ + rise, air_coldest.in_kelvin(), air_hottest.in_kelvin());
        return air_numbers_at(bulk, sea_level_pressure.value()).conductivity * faces_ / pressed_gap_height.value();
    }

    const contact_source* contact_;
    double air_, faces_;
    rise_table gap_;
};

/// Heat that crosses the bolted or plugged faces two neighbours share, by the metal spots of the better one.
class shared_face final : public solve::heat_law {
public:
    /// @param face cold conductance of the better face [S] @param air reference of the rises [K]
    shared_face(double face, double air) : by_kelvin_(lorenz_number * face), air_(air) {}

    [[nodiscard]] solve::sloped_by_two at(double rise, double, solve::asked) const override
    {
        return {by_kelvin_ * (air_ + rise), by_kelvin_, 0.0};
    }

private:
    double by_kelvin_, air_;
};

}  // namespace weldloop::detail
