#pragma once
/// @file
/// Heat that a horizontal cylinder gives to air and walls, on plain numbers: still air or wind, any altitude and
/// emissivity. cable_surface.hpp puts the quantities to it. The laws and their
/// sources are those of convection.hpp, radiation.hpp and free_air.hpp: churchill_chu_cylinder, iec_60287_free_air.

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <optional>

#include <weldloop/core/fraction.hpp>
#include <weldloop/law/convection.hpp>
#include <weldloop/law/free_air.hpp>
#include <weldloop/law/radiation.hpp>
#include <weldloop/law/surface_model.hpp>
#include <weldloop/material/air.hpp>
#include <weldloop/solve/root.hpp>

namespace weldloop::detail {

/// A cylinder and what is around it, plain numbers that have been checked.
struct cylinder_place {
    double diameter, air, wind, pressure, emissivity;  // m, K, m/s, Pa, 1
    surface_model model;
};

/// The law of one cylinder, what does not change with the temperature worked out once.
class cylinder_law {
public:
    explicit cylinder_law(const cylinder_place& at)
        : at_(at), iec_factor_(std::numbers::pi * at.diameter * free_air_coefficient(free_air_alone, at.diameter)),
          relative_pressure_(at.pressure / sea_level_pressure.value()),
          is_base_case_(at.model == surface_model::iec_60287 && at.wind == 0.0 && relative_pressure_ == 1.0 &&
                        at.emissivity == standard_emissivity),
          other_air_(other_air_at(at))
    {
    }

    [[nodiscard]] double air() const { return at_.air; }            // K
    [[nodiscard]] double diameter() const { return at_.diameter; }  // m

    /// Whether nothing but the air's temperature differs from the conditions of the standard's law.
    [[nodiscard]] bool is_base_case() const { return is_base_case_; }
    /// Of the standard's law, by the rise to the power 5/4 [W/(m K^(5/4))].
    [[nodiscard]] double standard_factor() const { return iec_factor_; }
    /// What air of another temperature than the standard's adds to its law by radiation: once rise + twice rise^2 +
    /// thrice rise^3 [W/m].
    struct other_air {
        double once, twice, thrice;
    };
    [[nodiscard]] const other_air& radiation_in_other_air() const { return other_air_; }
    static constexpr double standard_rises_up_to = 250.0;  ///< K: so far it does in other air at -100 degC too

    /// Heat given off per length [W/m] at a surface temperature [K] and its tangent [W/(m K)], on the side of the law
    /// in force where two meet; rises with the temperature, zero at the air's.
    [[nodiscard]] value_and_slope loss(double surface) const
    {
        if (is_base_case_ && standard_is_surely_larger(surface)) return standard_in_air(surface);
        const film_state film = film_of(surface);
        const number radiant = radiation(film, surface, at_.emissivity);
        if (at_.model != surface_model::iec_60287)
            return together(film, with_wind(film, natural(film, relative_pressure_)), radiant);
        const number first = natural(film, 1.0), by_standard = left_by_standard(film, surface);
        const number still = film.rise != 0.0 && by_standard.value > first.value ? by_standard : first;
        if (is_base_case_) return together(film, still, radiant);
        return together(film, with_wind(film, placed(film, surface, first, still, radiant)), radiant);
    }

    /// The balance below where the standard's law is the larger of both, a polynomial in y, the fourth root of the
    /// surface's rise: F y^5 + (a + G) y^4 + b y^8 + c y^12 = G U, F of the standard's law, a to c of
    /// radiation_in_other_air(), both times the share, G the conductance, U the rise without loss.
    struct standard_balance {
        double factor, once, twice, thrice, taken_up;  // F, a + G, b, c, G U
        static constexpr double settled = 2e-7;        // of y, for a step: the next is a thirtieth of its square

        standard_balance(const cylinder_law& law, double share, double conductance, double unheated)
            : factor(share * law.iec_factor_), once(share * law.other_air_.once + conductance),
              twice(share * law.other_air_.twice), thrice(share * law.other_air_.thrice),
              taken_up(conductance * unheated)
        {
        }
        /// Where searches start: surfaces rise by two thirds of what they would without loss, 10 to 250 K.
        [[nodiscard]] static double first_root(double unheated)
        {
            constexpr double highest = 4.4, least = 10.0, bend = 70.0;
            return highest * (unheated + least) / (unheated + bend);
        }
        /// What Newton's rule adds to y, in logarithms of both sides, in which they are next to straight:
        /// y^4 u = G U with u = F y + a + G + b y^4 + c y^8, y times the power 1/p of z = G U/(y^4 u), p = 4 + k the
        /// slope of ln(y^4 u) over ln y; the power by a quotient that has its first three terms.
        [[nodiscard]] double step(double y) const { return step(y, factor, once, twice, thrice, taken_up); }
        /// The same of numbers that stand side by side with those of others.
        [[nodiscard]] static double step(double y, double factor, double once, double twice, double thrice,
                                         double taken_up)
        {
            const double r = (y * y) * (y * y), third = r * thrice, first = factor * y;
            const double bent = twice + third, u = first + once + r * bent;
            const double k = (first + 4.0 * r * (bent + third)) / u, z = taken_up / (r * u);
            return (y + y) * (z - 1.0) / ((3.0 + k) * z + (5.0 + k));
        }
    };

    /// Whether the standard's law alone may set a balance in which the surface rises by at most so much [K].
    [[nodiscard]] bool may_follow_standard(double unheated) const
    {
        return is_base_case_ && unheated > 0.0 && unheated < standard_rises_up_to;
    }
    /// Surface temperature [K] of such a balance; none where the law is not surely the larger there. Where it is the
    /// larger at its own root, that is the root of the larger of both.
    [[nodiscard]] std::optional<double> standard_root(const standard_balance& by_standard, double unheated) const
    {
        constexpr int most_steps = 8;  // takes 3
        double y = standard_balance::first_root(unheated);
        for (int k = 0; k < most_steps; ++k) {
            const double step = by_standard.step(y);
            y += step;
            if (std::fabs(step) > standard_balance::settled * y) continue;
            const double rise = (y * y) * (y * y);
            if (rise <= unheated && standard_is_surely_larger(at_.air + rise, y)) return at_.air + rise;
            break;
        }
        return std::nullopt;
    }

    /// Surface temperature [K] at which the cylinder gives off what it takes up and what reaches it from a temperature
    /// [K] through a conductance.
    /// @param share of the loss that counts @param taken_up of the sun [W/m] @param conductance [W/(m K)], above 0
    /// @param inside temperature [K] @param near the answer [K], where the search starts; NaN: where it likely lies
    [[nodiscard]] double balance(double share, double taken_up, double conductance, double inside,
                                 double near = std::numeric_limits<double>::quiet_NaN()) const
    {
        const double unheated = taken_up / conductance;  // K, rise of the surface over the inside if no heat were lost
        if (const double rise = inside - at_.air + unheated; may_follow_standard(rise))
            if (const std::optional<double> found = standard_root({*this, share, conductance, rise}, rise))
                return *found;
        const double low = std::min(inside, at_.air), high = std::max(inside, at_.air) + unheated;
        if (low == high) return low;
        const auto where = [&](auto law, double first) {
            const auto surplus = [&](double t) {
                const value_and_slope given = law(t);
                return value_and_slope{share * given.value - taken_up - conductance * (inside - t),
                                       share * given.slope + conductance};
            };
            return rising_root(surplus, low, high, first, "surface temperature");
        };
        constexpr double usual_share = 0.7;  // of the rise inside: only where the search starts
        const double rise = inside - at_.air + unheated;
        double first =
            std::isnan(near)
                ? at_.air + rise / (1.0 + share * iec_factor_ * std::sqrt(std::sqrt(usual_share * std::fabs(rise))) /
                                              conductance)
                : near;
        return where([this](double t) { return loss(t); }, first);
    }

    /// Whether the standard leaves more to convection than first principles give, proved without the exponentials of
    /// air: that it lies above Churchill and Chu's Nu k = (0.60 k^(1/2) + 0.387 (k^3 Ra)^(1/6) / factor)^2 with
    /// air_ceiling_at(). False where not proved.
    [[nodiscard]] bool standard_is_surely_larger(double surface) const
    {
        return standard_is_surely_larger(surface, std::sqrt(std::sqrt(std::fabs(surface - at_.air))));
    }
    /// The same where the fourth root of the rise is known.
    [[nodiscard]] bool standard_is_surely_larger(double surface, double root_of_rise) const
    {
        const double t = 0.5 * (surface + at_.air), rise = std::fabs(surface - at_.air), d = at_.diameter;
        if (!(t >= ceiling_lowest && t <= ceiling_highest) || rise == 0.0) return false;
        const double base = free_air_base.in_kelvin(), hot = base + (surface - at_.air);
        const double to_convection = iec_factor_ * std::numbers::inv_pi * root_of_rise -
                                     grey_factor() * (hot * hot + base * base) * (hot + base);  // W/(m K)
        if (!(to_convection > 0.0)) return false;
        const air_numbers a = air_ceiling_at(t, sea_level_pressure.value());
        constexpr double by_movement = least_prandtl_factor / churchill_chu_slope;
        const double to_movement =
            by_movement * (std::sqrt(to_convection) - churchill_chu_still * std::sqrt(a.conductivity));
        if (!(to_movement > 0.0)) return false;
        const double density = a.density * d, cube = to_movement * to_movement * to_movement;
        return cube * cube * a.viscosity * t > gravity * rise * d * density * density * a.specific_heat *
                                                   a.conductivity * a.conductivity;  // k^3 Ra, its quotient undone
    }

    /// Whether a convection formula is used outside its range at a surface temperature [K].
    [[nodiscard]] bool leaves_range(double surface) const
    {
        const double t = 0.5 * (surface + at_.air), rise = std::fabs(surface - at_.air), d = at_.diameter;
        // above 200 K and 500 m below the sea the Rayleigh number is at most 7.3e8 times this product
        constexpr double small = 1e3;  // m3 K
        if (t > 200.0 && t <= air_hottest.in_kelvin() && at_.wind == 0.0 && rise * d * d * d < small) return false;
        if (t < air_coldest.in_kelvin() || t > air_hottest.in_kelvin()) return true;
        const film_state film = film_of(surface);
        return film.rayleigh * relative_pressure_ * relative_pressure_ > cylinder_highest_rayleigh ||
               at_.wind * d / film.kinematic_viscosity * relative_pressure_ > cross_flow_highest_reynolds;
    }

private:
    static constexpr double standard_emissivity = static_cast<double>(covering_emissivity_of_iec);

    /// Air at the film temperature and at sea level; the growths are shares per kelvin of the surface.
    struct film_state {
        double rise;                                   // K of the surface above the air
        double conductivity, conductivity_growth;      // W/(m K)
        double kinematic_viscosity, viscosity_growth;  // m2/s
        double prandtl, prandtl_growth;                // 1
        double prandtl_factor, factor_growth;          // Churchill and Chu's
        double rayleigh, buoyancy_growth;              // the growth is that of the Rayleigh number over the rise
    };

    [[nodiscard]] film_state film_of(double surface) const
    {
        const double t = 0.5 * (surface + at_.air), per_kelvin = 1.0 / t, rise = surface - at_.air, d = at_.diameter;
        const growing_air a = growing_air_at(t, sea_level_pressure.value());
        const double nu = a.viscosity / a.density, alpha = a.conductivity / (a.density * a.specific_heat);
        const prandtl_power factor(nu / alpha);
        constexpr double half = 0.5;  // of the surface's kelvin is the film's
        const double nu_growth = half * (a.viscosity_growth + per_kelvin);
        const double alpha_growth = half * (a.conductivity_growth + per_kelvin - a.specific_heat_growth);
        return {rise,
                a.conductivity,
                half * a.conductivity_growth,
                nu,
                nu_growth,
                nu / alpha,
                nu_growth - alpha_growth,
                factor.value,
                factor.exponent * (nu_growth - alpha_growth),
                gravity * per_kelvin * std::fabs(rise) * d * d * d / (nu * alpha),
                -half * per_kelvin - nu_growth - alpha_growth};
    }

    /// A Nusselt number, and its slope times the rise (the slope itself has no bound at zero rise). Radiation is
    /// written as one too: q = pi k (Nu + Nu_radiation) rise.
    struct number {
        double value, slope_by_rise;
    };

    /// Free convection by the model's correlation; the default's is Churchill and Chu's.
    [[nodiscard]] number natural(const film_state& f, double relative_pressure) const
    {
        const double rayleigh = f.rayleigh * relative_pressure * relative_pressure;
        const double rayleigh_growth_by_rise = 1.0 + f.rise * f.buoyancy_growth;
        if (at_.model == surface_model::morgan) {
            const morgan_row row = morgan_row_of(rayleigh);
            const double nusselt = row.nusselt(rayleigh);
            return {nusselt, nusselt * row.exponent * rayleigh_growth_by_rise};
        }
        const double moved = churchill_chu_slope * std::cbrt(std::sqrt(rayleigh)) / f.prandtl_factor;
        const double root = churchill_chu_still + moved;
        return {root * root, 2.0 * root * moved * (rayleigh_growth_by_rise / 6.0 - f.rise * f.factor_growth)};
    }

    /// Radiation per kelvin of rise over pi k.
    [[nodiscard]] number radiation(const film_state& f, double surface, double emissivity) const
    {
        const double air = at_.air;
        const double powers = (surface + air) * (surface * surface + air * air);
        const double growth = (surface * (3.0 * surface + 2.0 * air) + air * air) / powers;
        const double value = at_.diameter * emissivity * stefan_boltzmann * powers / f.conductivity;
        return {value, value * f.rise * (growth - f.conductivity_growth)};
    }

    /// What wind adds, nusselt_mixed() with the power 4.
    [[nodiscard]] number with_wind(const film_state& f, const number& still) const
    {
        if (!(at_.wind > 0.0)) return still;
        const double reynolds = at_.wind * at_.diameter / f.kinematic_viscosity * relative_pressure_;
        const cross_flow_nusselt forced(reynolds, f.prandtl);
        const double forced_slope = forced.by_reynolds * -f.viscosity_growth + forced.by_prandtl * f.prandtl_growth;
        const double s3 = still.value * still.value * still.value, f3 = forced.value * forced.value * forced.value;
        const double mixed = std::sqrt(std::sqrt(s3 * still.value + f3 * forced.value));
        return {mixed, (s3 * still.slope_by_rise + f3 * f.rise * forced_slope) / (mixed * mixed * mixed)};
    }

    [[nodiscard]] static value_and_slope together(const film_state& f, const number& convective, const number& radiant)
    {
        const double sum = convective.value + radiant.value, conducting = std::numbers::pi * f.conductivity;
        return {conducting * sum * f.rise, conducting * (sum * (1.0 + f.rise * f.conductivity_growth) +
                                                         convective.slope_by_rise + radiant.slope_by_rise)};
    }

    static other_air other_air_at(const cylinder_place& at)
    {
        const double t = at.air, base = free_air_base.in_kelvin();
        const double grey = at.diameter * (std::numbers::pi * standard_emissivity * stefan_boltzmann);
        return {grey * 4.0 * (t * t * t - base * base * base), grey * 6.0 * (t * t - base * base),
                grey * 4.0 * (t - base)};
    }

    [[nodiscard]] double grey_factor() const { return at_.diameter * (standard_emissivity * stefan_boltzmann); }

    /// Radiation per pi of a surface of the standard's emissivity between two temperatures [W/m] and its slope.
    [[nodiscard]] value_and_slope grey(double surface, double around) const
    {
        const double factor = grey_factor();
        const double square = surface * surface + around * around;
        return {factor * square * (surface + around) * (surface - around), factor * 4.0 * surface * surface * surface};
    }

    /// What the standard's law leaves to convection, over pi [W/m]: the law less the radiation in the air that it
    /// stands for, the rise being the same.
    [[nodiscard]] value_and_slope standard_convection(double surface) const
    {
        const double rise = surface - at_.air, base = free_air_base.in_kelvin();
        const double per_kelvin = iec_factor_ / std::numbers::pi * std::sqrt(std::sqrt(std::fabs(rise)));
        const value_and_slope radiated = grey(base + rise, base);
        return {per_kelvin * rise - radiated.value, 1.25 * per_kelvin - radiated.slope};
    }

    /// The same as a Nusselt number; no matter where there is no rise.
    [[nodiscard]] number left_by_standard(const film_state& f, double surface) const
    {
        if (f.rise == 0.0) return {0.0, 0.0};
        const value_and_slope q = standard_convection(surface);
        const double value = q.value / (f.conductivity * f.rise);
        return {value, q.slope / f.conductivity - value * (1.0 + f.rise * f.conductivity_growth)};
    }

    /// The standard's law with the radiation of the air around instead of its own [W/m]: at the same rise the fourth
    /// powers of the two surfaces cancel.
    [[nodiscard]] value_and_slope standard_in_air(double surface) const
    {
        const double rise = surface - at_.air, per_kelvin = iec_factor_ * std::sqrt(std::sqrt(std::fabs(rise)));
        const other_air& o = other_air_;
        return {rise * (per_kelvin + o.once + rise * (o.twice + rise * o.thrice)),
                1.25 * per_kelvin + o.once + rise * (2.0 * o.twice + rise * 3.0 * o.thrice)};
    }

    /// The default's still convection at this altitude and emissivity. By how much the standard's law lies above first
    /// principles, convection alone or both ways of heat may do: the reading that gives off less counts.
    [[nodiscard]] number placed(const film_state& f, double surface, const number& first, const number& still,
                                const number& radiant) const
    {
        const number here = natural(f, relative_pressure_);
        const double thinner = here.value / first.value;
        const number by_convection{still.value * thinner,
                                   thinner * (still.slope_by_rise + still.value * (here.slope_by_rise / here.value -
                                                                                   first.slope_by_rise / first.value))};
        const number base = radiation(f, surface, standard_emissivity);
        const double above = still.value + base.value, below = first.value + base.value, excess = above / below;
        const double excess_slope =
            (still.slope_by_rise + base.slope_by_rise - excess * (first.slope_by_rise + base.slope_by_rise)) / below;
        const number by_both{excess * (here.value + radiant.value) - radiant.value,
                             excess_slope * (here.value + radiant.value) +
                                 excess * (here.slope_by_rise + radiant.slope_by_rise) - radiant.slope_by_rise};
        return by_both.value < by_convection.value ? by_both : by_convection;
    }

    cylinder_place at_;
    double iec_factor_;  // W/(m K^(5/4)), of the standard's law
    double relative_pressure_;
    bool is_base_case_;  // nothing but the standard's own conditions, in any air
    other_air other_air_;
};

}  // namespace weldloop::detail
