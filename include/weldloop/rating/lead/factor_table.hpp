#pragma once
/// @file
/// Rating factors for other air and other arrangements, for any lead, limit and duty: what a cable guide prints for
/// one.

#include <array>
#include <cstddef>
#include <span>
#include <string>
#include <vector>

#include <weldloop/core/duty_cycle.hpp>
#include <weldloop/core/error.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/core/text.hpp>
#include <weldloop/law/equal_heating.hpp>
#include <weldloop/law/lay.hpp>
#include <weldloop/part/cable.hpp>
#include <weldloop/part/conductor_limit.hpp>
#include <weldloop/part/surroundings.hpp>
#include <weldloop/rating/lead/ampacity.hpp>

namespace weldloop {

/// The factor of one air temperature.
struct ambient_row {
    temperature air;        ///< around the lead
    double by_model;        ///< ratio, ampacity_of() there over that at the base
    double by_square_root;  ///< factor, ambient_factor(): what guides and codes print, within 0.012
    current amps;           ///< [A] by the model
};

/// The factor of one arrangement.
struct grouping_row {
    weldloop::lay lay;       ///< how the leads lie
    double by_model;         ///< ratio, ampacity_of() so over that alone
    current amps;            ///< [A] of each lead
    bool judgement = false;  ///< no published formula stands behind it
};

/// Rating factors of one lead at one duty.
struct factor_table {
    weldloop::cable lead;                     ///< whose size, covering and limit they hold for
    duty_cycle duty;                          ///< at which they hold
    temperature base;                         ///< air of the rated current
    current rated;                            ///< [A] at the base, as the surroundings lie
    current rated_alone;                      ///< [A] at the base, alone
    std::vector<ambient_row> ambient = {};    ///< one row for each air asked for
    std::vector<grouping_row> grouping = {};  ///< one row for each arrangement, alone first
    weldloop::basis basis = {};               ///< sources, and ranges left
};

/// Air temperatures of the guides' tables: 10 to 60 degC by 5 K.
inline constexpr std::array usual_air_temperatures{
    temperature::celsius(10.0), temperature::celsius(15.0), temperature::celsius(20.0), temperature::celsius(25.0),
    temperature::celsius(30.0), temperature::celsius(35.0), temperature::celsius(40.0), temperature::celsius(45.0),
    temperature::celsius(50.0), temperature::celsius(55.0), temperature::celsius(60.0)};

/// Rating factors of a lead for other air and other arrangements.
///
/// Each factor is a rated current over that at the base; beside the model's own ambient factor stands the square root
/// the guides print. The two meet at the base; a lead of 85 degC on a base of 25 degC loses up to 0.01 more
/// by the model at 45 degC, up to 0.02 at 60; from 25 down to 0 degC they agree within 0.004, below the square root
/// flatters. Factors of `on_floor`, `bundled` (of six) and `coiled` (of thirty turns) are judgement.
/// @param lead with its diameters; its limit is that of the factors; its own lay is not looked at
/// @param where wind, lay (of the ambient factors), altitude, sun; its air is the base, below the limit
/// @param duty time under current; a bare percentage takes a period of 10 min, cable guides use 5 min
/// @param airs the rows; those at the limit or above are left out, as tables leave them blank
/// @throws as ampacity_of(): missing_data_error, not_finite_error, out_of_range_error, no_solution_error
[[nodiscard]] inline factor_table factor_table_of(const cable& lead, const surroundings& where,
                                                  duty_cycle duty = duty_cycle::continuous(),
                                                  std::span<const temperature> airs = usual_air_temperatures)
{
    cable lies_as_told = lead;
    lies_as_told.lay.reset();
    const ampacity at_base = ampacity_of(lies_as_told, where, duty);
    surroundings lone = where;
    lone.lay = lay::alone;
    const ampacity alone = ampacity_of(lies_as_told, lone, duty);
    factor_table out{.lead = lead, .duty = duty, .base = where.air, .rated = at_base.amps, .rated_alone = alone.amps};
    out.basis.add(at_base.basis).add(ambient_factor_rule);
    for (const temperature& air : airs) {
        if (air >= limit_of(lead)) continue;
        surroundings there = where;
        there.air = air;
        const ampacity rated = ampacity_of(lies_as_told, there, duty);
        out.ambient.push_back(
            {air, rated.amps / at_base.amps, ambient_factor(limit_of(lead), where.air, air), rated.amps});
        out.basis.add(rated.basis);
    }
    for (const lay arrangement : all_lays) {
        surroundings there = where;
        there.lay = arrangement;
        const ampacity rated = ampacity_of(lies_as_told, there, duty);
        out.grouping.push_back(
            {arrangement, rated.amps / alone.amps, rated.amps,
             arrangement == lay::on_floor || arrangement == lay::bundled || arrangement == lay::coiled});
        out.basis.add(rated.basis);
    }
    return out;
}

}  // namespace weldloop
