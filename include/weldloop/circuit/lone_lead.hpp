#pragma once
/// @file
/// A lead by itself in still air at sea level: the case most leads are rated for, with nothing worked out that others
/// need. The law is that of cylinder_loss.hpp; its source is iec_60287_free_air.

#include <optional>

#include <weldloop/circuit/cable_heating.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/law/cable_surface.hpp>
#include <weldloop/law/cylinder_loss.hpp>
#include <weldloop/law/free_air.hpp>
#include <weldloop/law/lay.hpp>
#include <weldloop/law/surface_model.hpp>
#include <weldloop/material/air.hpp>
#include <weldloop/part/cable.hpp>
#include <weldloop/part/lead_basis.hpp>
#include <weldloop/part/surroundings.hpp>

namespace weldloop::detail {

/// Whether nothing but its temperature sets the air apart from that of the standard's law; false where it is refused.
[[nodiscard]] inline bool is_still_air(const surroundings& where)
{
    return where.wind.value() == 0.0 && where.altitude.value() == 0.0 && where.air >= coldest_air &&
           where.air <= hottest_air && where.sun.value() >= 0.0 && where.sun.value() <= greatest_number;
}

/// Whether a lead has its outline for itself there.
[[nodiscard]] inline bool lies_by_itself(const cable& lead, const surroundings& where)
{
    const lay arrangement = lead.lay ? *lead.lay : where.lay;
    // turns of what is no coil may be refused
    return arrangement != lay::bundled && arrangement != lay::coiled &&
           !(lead.lay ? lead.coil_turns.has_value() : where.coil_turns.has_value());
}

/// Such a lead, its conductor at a temperature.
class lone_lead {
public:
    /// @param lead lies_by_itself(), its dimensions checked @param where is_still_air()
    /// @param covering its conductance [W/(m K)] @param conductor temperature [K]
    lone_lead(const cable& lead, const surroundings& where, double covering, double conductor)
        : lay_(lead.lay ? *lead.lay : where.lay), covering_(covering), sun_(where.sun.value()),
          law_({.diameter = lead.overall_diameter.value(),
                .air = where.air.in_kelvin(),
                .wind = 0.0,
                .pressure = sea_level_pressure.value(),
                .emissivity = static_cast<double>(lead.covering.emissivity),
                .model = default_surface_model}),
          unheated_(conductor - law_.air() + sun_ * static_cast<double>(sun_absorption) * law_.diameter() / covering)
    {
    }

    [[nodiscard]] const cylinder_law& law() const { return law_; }
    /// Rise of the surface if it gave off nothing [K].
    [[nodiscard]] double unheated() const { return unheated_; }
    /// What the standard's law asks for; only where follows_standard().
    [[nodiscard]] cylinder_law::standard_balance balance() const
    {
        return {law_, lay_ == lay::alone ? 1.0 : lay_ratio(lay_, in_si<length>(law_.diameter())), covering_, unheated_};
    }
    [[nodiscard]] bool follows_standard() const { return law_.may_follow_standard(unheated_); }
    /// Surface temperature [K]; none where first principles may count.
    [[nodiscard]] std::optional<double> surface() const
    {
        if (!follows_standard()) return std::nullopt;
        return law_.standard_root(balance(), unheated_);
    }

    /// Begins a list with what a steady heating rests on, and the ranges it leaves.
    void begin_basis(basis& out, const cable& lead, temperature conductor, double surface) const
    {
        begin_basis_of(out, lead);
        out.add_new(iec_60287_free_air, free_air_base_air, stefan_boltzmann_law);
        if (sun_ > 0.0) out.add(sun_on_cables);
        if (lay_ != lay::alone) add_lay_basis(out, lay_);
        add_outline_ranges(out, law_, surface);
        add_conductor_ranges(out, lead, conductor);
    }

private:
    lay lay_;
    double covering_, sun_;  // W/(m K), W/m2
    cylinder_law law_;
    double unheated_;  // K
};

}  // namespace weldloop::detail
