#pragma once
/// @file
/// Heat that the surface of a cable gives to the air and the walls around: still air or wind, sun, altitude, and the
/// way cables lie beside each other.

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <string_view>

#include <weldloop/core/error.hpp>
#include <weldloop/core/fraction.hpp>
#include <weldloop/core/literals.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/core/text.hpp>
#include <weldloop/law/coil_heat.hpp>
#include <weldloop/law/convection.hpp>
#include <weldloop/law/lay.hpp>
#include <weldloop/law/radiation.hpp>
#include <weldloop/material/air.hpp>
#include <weldloop/solve/root.hpp>

namespace weldloop {

/// @name Sources of the cable surface
/// @{
/// Single cable and touching pair.
inline constexpr source iec_60287_free_air{
    "IEC 60287-2-1", "1994+A1:2001",
    "table 2, heat dissipation in free air, single cable and two touching (constants confirmed by the ratings they "
    "reproduce, not read in the standard)",
    source_kind::derived};
/// Three cables.
inline constexpr source iec_60287_free_air_three{
    "IEC 60287-2-1", "1994+A1:2001",
    "table 2, trefoil and three touching (from memory; they reproduce the method F ratings of IEC 60364-5-52)",
    source_kind::memory};
/// Leads on a floor, in a bundle, in a coil.
inline constexpr source arrangement_factors{
    "share of heat that a lead on a floor, in a bundle or in a coil still gives off",
    {},
    "judgement; anchors: grouping factors 0.8 to 0.57 and reel factors 0.8 to 0.4 of current in wiring rules",
    source_kind::judgement};
/// Absorption of sunlight.
inline constexpr source sun_on_cables{"IEC 60287-2-1", "1994+A1:2001",
                                      "table of solar absorption, polychloroprene 0.8; taken for all rubber",
                                      source_kind::memory};
/// @}

/// How the heat given off by a lone cable in still air is calculated. Grouping, wind, sun and altitude are the same
/// for all three.
///
/// Measured on published currents of cables in air, calculated over published: median and worst error in percent. Each
/// lay of a model has one and the same law; nothing is fitted. tests/law/cable_surface_test.cpp holds the comparison.
///
/// | published ratings (number of sizes)                       | iec_60287 | morgan    | churchill_chu |
/// |-----------------------------------------------------------|-----------|-----------|---------------|
/// | welding lead 85 degC, air 25 degC, 100 % (8, recalled)    | 0.9, 2.0  | 1.8, 2.6  | 4.5, 4.8      |
/// | IEC 60364-5-52 method G, spaced, level (10)               | 0.5, 2.0  | 1.8, 3.6  | 4.1, 5.6      |
/// | IEC 60364-5-52 method F, two touching (6)                 | 1.1, 2.9  | 2.7, 4.0  | 5.1, 6.1      |
/// | IEC 60364-5-52 method F, three flat (6)                   | 1.2, 2.6  | 2.1, 3.3  | 4.5, 5.5      |
/// | IEC 60364-5-52 method F, trefoil (6)                      | 2.5, 4.0  | 1.7, 3.7  | 3.2, 4.6      |
/// | BS 7671 60 degC rubber flexible, pair, 50 to 150 mm2 (3)  | 1.0, 1.8  | 1.5, 2.5  | 2.5, 5.1      |
///
/// All three lie 5 to 21 % above NFPA 70 tables 310.17 and 400.5, which are older and more cautious. Leads spaced one
/// above the other warm each other: method G vertical is 9 to 14 % lower than `spaced` gives.
enum class surface_model {
    churchill_chu,  ///< free convection by Churchill and Chu, radiation by the grey-body law
    morgan,         ///< free convection by Morgan's power laws, radiation by the grey-body law
    iec_60287,      ///< both together by the IEC 60287-2-1 formula, the default
};

/// Every model, in the order of the enumeration.
inline constexpr std::array all_surface_models{surface_model::churchill_chu, surface_model::morgan,
                                               surface_model::iec_60287};

/// The word for a model, as printed and as written in station files.
[[nodiscard]] constexpr std::string_view to_text(surface_model m)
{
    switch (m) {
    case surface_model::churchill_chu: return "churchill chu";
    case surface_model::morgan: return "morgan";
    case surface_model::iec_60287: return "iec 60287";
    }
    return "iec 60287";
}

/// The model with the smallest measured error, see surface_model.
inline constexpr surface_model default_surface_model = surface_model::iec_60287;

/// Constants of h = Z/De^g + E of one arrangement in free air.
struct free_air_row {
    double z;                                              ///< Z [W/(m^(2-g) K^(5/4))]
    double e;                                              ///< E [W/(m2 K^(5/4))]
    double g;                                              ///< exponent of the diameter
    const weldloop::source* source = &iec_60287_free_air;  ///< where they come from
};

/// @name Rows of IEC 60287-2-1 for cables in free air
/// @{
inline constexpr free_air_row free_air_alone{0.21, 3.94, 0.60, &iec_60287_free_air};  ///< single cable
inline constexpr free_air_row free_air_touching_pair{0.29, 2.35, 0.50,
                                                     &iec_60287_free_air};  ///< two touching, side by side
inline constexpr free_air_row free_air_trefoil{0.96, 1.25, 0.20, &iec_60287_free_air_three};  ///< three in a triangle
inline constexpr free_air_row free_air_three_flat{0.62, 1.95, 0.25,
                                                  &iec_60287_free_air_three};  ///< three touching in a row
inline constexpr length free_air_widest = in_si<length>(0.15);                 ///< largest diameter the rows hold for
/// @}

/// Share of the sun's heat that a rubber covering takes up.
inline constexpr fraction sun_absorption = 0.8;

/// Emissivity of the coverings behind the IEC 60287 constants, which do not state it.
inline constexpr emissivity covering_emissivity_of_iec = 0.9;

/// The surface of a cable and what is around it.
struct cable_surface {
    length diameter;                               ///< [m] over the covering, above 0
    temperature air = temperature::celsius(25.0);  ///< air and walls around, -100 to 500 degC
    speed wind = in_si<speed>(0.0);                ///< across the cable [m/s], 0 for still air
    weldloop::lay lay = weldloop::lay::alone;      ///< arrangement
    int coil_turns = 0;                            ///< of a coiled cable, up to 200; 0 if not known
    length altitude = in_si<length>(0.0);          ///< above sea level [m], -500 to 11000
    heat_flux sun = in_si<heat_flux>(0.0);         ///< sunlight on the cable's outline [W/m2], 0 or above
    weldloop::emissivity emissivity = 0.9;         ///< of the covering
    surface_model model = default_surface_model;   ///< of the lone cable in still air
};

/// @name Air temperatures a lead is rated for
/// @{
inline constexpr temperature coldest_air = temperature::celsius(-100.0);  ///< lower than any workplace
inline constexpr temperature hottest_air = temperature::celsius(500.0);   ///< higher than any workplace
/// @}

/// Heat transfer coefficient per fourth root of the rise in free air, h = Z/De^g + E.
/// @param row constants of the arrangement @param diameter De [m], above 0; up to 0.15 m by the standard
/// @return h [W/(m2 K^(5/4))], plain because its unit has a broken power
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline double free_air_coefficient(const free_air_row& row, length diameter)
{
    require_positive(diameter, "cable diameter");
    return row.z / std::pow(diameter.value(), row.g) + row.e;
}

/// Heat that a cable in an arrangement gives off over that of the same cable alone at the same rise.
///
/// For a touching pair, trefoil and three flat the ratio of the IEC 60287-2-1 rows. `spaced` counts as alone: at one
/// diameter apart side by side the wiring rules give the current of single cables. `on_floor` 0.80, `bundled` 0.45 and
/// `coiled` 0.30 are judgement, and so is coil_ratio() for a coil whose turns are known; results that use them carry
/// range_flag::arrangement_judgement.
/// @param lay the arrangement @param diameter [m], above 0 @param turns of a coiled cable, up to 200; 0 if not known;
/// without effect for the others
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline double lay_ratio(lay lay, length diameter, int turns = 0)
{
    require_within(static_cast<double>(turns), 0.0, static_cast<double>(most_bundled_turns), "turns of the coil");
    require_positive(diameter, "cable diameter");
    const auto over_alone = [&](const free_air_row& row) {
        return free_air_coefficient(row, diameter) / free_air_coefficient(free_air_alone, diameter);
    };
    switch (lay) {
    case lay::alone:
    case lay::spaced: return 1.0;
    case lay::touching_pair: return over_alone(free_air_touching_pair);
    case lay::three_flat: return over_alone(free_air_three_flat);
    case lay::trefoil: return over_alone(free_air_trefoil);
    case lay::on_floor: return 0.80;
    case lay::bundled: return 0.45;
    case lay::coiled:
        return turns == 0 ? 0.30 : coil_ratio(turns, diameter, free_air_alone.z, free_air_alone.e, free_air_alone.g);
    }
    return 1.0;
}

namespace detail {

/// The surface law on plain numbers, what does not change with the temperature worked out once.
class surface_kernel {
public:
    /// Checks the surface. @throws not_finite_error, out_of_range_error
    explicit surface_kernel(const cable_surface& s)
        : diameter_(require_positive(s.diameter, "cable diameter").value()), air_(checked_air(s.air)),
          wind_(require_not_negative(s.wind, "wind").value()), pressure_(pressure_at_altitude(s.altitude).value()),
          emissivity_(static_cast<double>(s.emissivity)), ratio_(weldloop::lay_ratio(s.lay, s.diameter, s.coil_turns)),
          iec_factor_(std::numbers::pi * diameter_ * free_air_coefficient(free_air_alone, s.diameter)),
          sun_(require_not_negative(s.sun, "sunlight").value() * static_cast<double>(sun_absorption) * diameter_),
          model_(s.model),
          is_standard_(model_ == surface_model::iec_60287 && wind_ == 0.0 && pressure_ == sea_level_pressure.value() &&
                       emissivity_ == static_cast<double>(covering_emissivity_of_iec))
    {
    }

    [[nodiscard]] double air() const { return air_; }             // K
    [[nodiscard]] double sun_per_length() const { return sun_; }  // W/m taken up

    /// Heat given off per length [W/m] at a surface temperature [K]; rises with it, zero at the air's.
    [[nodiscard]] double loss(double surface) const { return ratio_ * alone(surface).value; }

    /// The same with its tangent [W/(m K)], on the side of the law in force where two meet.
    [[nodiscard]] value_and_slope loss_and_slope(double surface) const
    {
        const value_and_slope lone = alone(surface);
        return {ratio_ * lone.value, ratio_ * lone.slope};
    }

    /// Temperature [K] of the surface of a covering that lets `conductance` [W/(m K)] through, the conductor under it
    /// steadily at a temperature [K].
    [[nodiscard]] double steady_surface(double conductance, double conductor) const
    {
        const double unheated = sun_ / conductance;  // K, rise of the surface over the conductor if no heat were lost
        const double low = std::min(conductor, air_), high = std::max(conductor, air_) + unheated;
        if (low == high) return low;
        const auto where = [&](auto law, double first) {
            const auto surplus = [&](double t) {
                const value_and_slope lone = law(t);
                return value_and_slope{ratio_ * lone.value - sun_ - conductance * (conductor - t),
                                       ratio_ * lone.slope + conductance};
            };
            return rising_root(surplus, low, high, first, "surface temperature");
        };
        constexpr double usual_share = 0.7;  // of the conductor's rise: only where the search starts
        const double rise = conductor - air_ + unheated;
        double first = air_ + rise / (1.0 + ratio_ * iec_factor_ * std::sqrt(std::sqrt(usual_share * std::fabs(rise))) /
                                                conductance);
        if (is_standard_) {
            // where the standard's law is the larger at its own root, that is the root of the larger of both
            first = where([this](double t) { return standard(t); }, first);
            if (standard_is_larger(first)) return first;
        }
        return where([this](double t) { return alone(t); }, first);
    }

    /// Slope of loss() [W/(m K)] over a twentieth of the rise to either side, so that it has no step where the law
    /// changes from one formula to another; 1e-4 from the tangent elsewhere.
    [[nodiscard]] double slope(double surface) const
    {
        const double step = 0.02 + 0.05 * std::fabs(surface - air_);  // K; large beside rounding
        return (loss(surface + step) - loss(surface - step)) / (2.0 * step);
    }

    /// Whether a convection formula is used outside its range at a surface temperature [K].
    [[nodiscard]] bool leaves_convection_range(double surface) const
    {
        const double t = 0.5 * (surface + air_), rise = std::fabs(surface - air_);
        if (t < air_coldest.in_kelvin() || t > air_hottest.in_kelvin()) return true;
        // above 200 K and 500 m below the sea the Rayleigh number is at most 7.3e8 times this product
        constexpr double small = 1e3;  // m3 K
        if (wind_ == 0.0 && t > 200.0 && rise * diameter_ * diameter_ * diameter_ < small) return false;
        const film_state film = film_of(surface);
        const double relative_pressure = pressure_ / sea_level_pressure.value();
        return film.rayleigh * relative_pressure * relative_pressure > cylinder_highest_rayleigh ||
               wind_ * diameter_ / film.kinematic_viscosity * relative_pressure > cross_flow_highest_reynolds;
    }

private:
    static double checked_air(temperature air)
    {
        if (air < coldest_air || air > hottest_air)
            throw out_of_range_error("air temperature", to_text(air, "degC"), "-100 degC to 500 degC");
        return air.in_kelvin();
    }

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
        const double t = 0.5 * (surface + air_), per_kelvin = 1.0 / t, rise = surface - air_;
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
                gravity * per_kelvin * std::fabs(rise) * diameter_ * diameter_ * diameter_ / (nu * alpha),
                -half * per_kelvin - nu_growth - alpha_growth};
    }

    /// Nusselt number, and its slope times the rise (the slope itself has no bound at zero rise).
    struct nusselt_number {
        double value, slope_by_rise;
    };

    [[nodiscard]] static nusselt_number natural(const film_state& f, double relative_pressure, bool by_morgan)
    {
        const double rayleigh = f.rayleigh * relative_pressure * relative_pressure;
        const double rayleigh_growth_by_rise = 1.0 + f.rise * f.buoyancy_growth;
        if (by_morgan) {
            const morgan_row row = morgan_row_of(rayleigh);
            const double nusselt = row.nusselt(rayleigh);
            return {nusselt, nusselt * row.exponent * rayleigh_growth_by_rise};
        }
        const double moved = churchill_chu_slope * std::cbrt(std::sqrt(rayleigh)) / f.prandtl_factor;
        const double root = churchill_chu_still + moved;
        return {root * root, 2.0 * root * moved * (rayleigh_growth_by_rise / 6.0 - f.rise * f.factor_growth)};
    }

    /// Convection and radiation of a lone cylinder [W/m] and their slope.
    [[nodiscard]] value_and_slope first_principles(const film_state& f, double surface, double wind,
                                                   double relative_pressure, double emissivity) const
    {
        nusselt_number n = natural(f, relative_pressure, model_ == surface_model::morgan);
        if (wind > 0.0) {  // nusselt_mixed() with the power 4
            const double reynolds = wind * diameter_ / f.kinematic_viscosity * relative_pressure;
            const cross_flow_nusselt forced(reynolds, f.prandtl);
            const double forced_slope = forced.by_reynolds * -f.viscosity_growth + forced.by_prandtl * f.prandtl_growth;
            const double n3 = n.value * n.value * n.value, f3 = forced.value * forced.value * forced.value;
            const double mixed = std::sqrt(std::sqrt(n3 * n.value + f3 * forced.value));
            n = {mixed, (n3 * n.slope_by_rise + f3 * f.rise * forced_slope) / (mixed * mixed * mixed)};
        }
        const double by_air = n.value * f.conductivity;
        const double radiating = diameter_ * emissivity * stefan_boltzmann;
        const double by_radiation = radiating * (surface + air_) * (surface * surface + air_ * air_);
        const double radiation_slope = radiating * (surface * (3.0 * surface + 2.0 * air_) + air_ * air_);
        return {std::numbers::pi * (by_air + by_radiation) * f.rise,
                std::numbers::pi * (by_air + by_radiation + n.slope_by_rise * f.conductivity +
                                    f.rise * (by_air * f.conductivity_growth + radiation_slope))};
    }

    /// The standard's law alone [W/m] and its slope.
    [[nodiscard]] value_and_slope standard(double surface) const
    {
        const double rise = surface - air_, per_kelvin = iec_factor_ * std::sqrt(std::sqrt(std::fabs(rise)));
        return {per_kelvin * rise, 1.25 * per_kelvin};
    }

    /// First principles where the standard's law was found: still air at sea level.
    [[nodiscard]] value_and_slope floor_of_standard(const film_state& f, double surface) const
    {
        return first_principles(f, surface, 0.0, 1.0, static_cast<double>(covering_emissivity_of_iec));
    }

    /// Whether the standard's law gives off more than its floor.
    [[nodiscard]] bool standard_is_larger(double surface) const
    {
        return standard_is_surely_larger(surface) ||
               std::fabs(standard(surface).value) > std::fabs(floor_of_standard(film_of(surface), surface).value);
    }

    /// The same proved without the exponentials of air: what the standard leaves to convection lies above Churchill and
    /// Chu's Nu k = (0.60 k^(1/2) + 0.387 (k^3 Ra)^(1/6) / factor)^2 with air_ceiling_at(). False where not proved.
    [[nodiscard]] bool standard_is_surely_larger(double surface) const
    {
        const double t = 0.5 * (surface + air_), rise = std::fabs(surface - air_);
        if (!(t >= ceiling_lowest && t <= ceiling_highest)) return false;
        constexpr double emissivity = static_cast<double>(covering_emissivity_of_iec);
        const double to_convection =
            iec_factor_ / std::numbers::pi * std::sqrt(std::sqrt(rise)) -
            diameter_ * emissivity * stefan_boltzmann * (surface + air_) * (surface * surface + air_ * air_);
        if (!(to_convection > 0.0)) return false;
        const air_numbers a = air_ceiling_at(t, sea_level_pressure.value());
        const double to_movement = (std::sqrt(to_convection) - churchill_chu_still * std::sqrt(a.conductivity)) *
                                   least_prandtl_factor / churchill_chu_slope;
        if (!(to_movement > 0.0)) return false;
        const double density = a.density * diameter_;
        const double k3_rayleigh = gravity / t * rise * diameter_ * density * density * a.specific_heat *
                                   a.conductivity * a.conductivity / a.viscosity;
        const double cube = to_movement * to_movement * to_movement;
        return cube * cube > k3_rayleigh;
    }

    [[nodiscard]] value_and_slope alone(double surface) const
    {
        if (is_standard_ && standard_is_surely_larger(surface)) return standard(surface);
        const film_state film = film_of(surface);
        const double relative_pressure = pressure_ / sea_level_pressure.value();
        const auto here = [&](double wind) {
            return first_principles(film, surface, wind, relative_pressure, emissivity_);
        };
        if (model_ != surface_model::iec_60287) return here(wind_);
        const value_and_slope by_iec = standard(surface), at_least = floor_of_standard(film, surface);
        if (!(std::fabs(by_iec.value) > std::fabs(at_least.value))) return here(wind_);
        if (is_standard_) return by_iec;
        const value_and_slope still = here(0.0);
        const double share = still.value / at_least.value;
        value_and_slope out{by_iec.value * share, by_iec.slope * share + by_iec.value *
                                                                             (still.slope - share * at_least.slope) /
                                                                             at_least.value};
        if (wind_ > 0.0) {
            const value_and_slope windy = here(wind_);
            out.value += windy.value - still.value;
            out.slope += windy.slope - still.slope;
        }
        return out;
    }

    double diameter_, air_, wind_, pressure_, emissivity_, ratio_;
    double iec_factor_;  // W/(m K^(5/4)), of the standard's law for a lone cable
    double sun_;
    surface_model model_;
    bool is_standard_;  // nothing but the standard's own conditions
};

/// Adds what surface_basis() says of a surface with its kernel.
inline void add_surface_basis(basis& out, const cable_surface& s, const surface_kernel& kernel, temperature surface)
{
    if (s.model == surface_model::iec_60287) out.add(iec_60287_free_air);
    if (s.model == surface_model::morgan) out.add(morgan_cylinder);
    if (s.model == surface_model::churchill_chu || s.wind.value() > 0.0 || s.altitude.value() != 0.0)
        out.add(churchill_chu_cylinder);
    if (s.model != surface_model::iec_60287) out.add(stefan_boltzmann_law).add(us_standard_atmosphere);
    if (s.wind.value() > 0.0) out.add(churchill_bernstein_cylinder).add(mixed_convection_rule);
    if (s.sun.value() > 0.0) out.add(sun_on_cables);
    switch (s.lay) {
    case lay::alone:
    case lay::spaced: break;
    case lay::touching_pair: out.add(iec_60287_free_air); break;
    case lay::trefoil:
    case lay::three_flat: out.add(iec_60287_free_air_three); break;
    case lay::on_floor:
    case lay::bundled: out.add(arrangement_factors).add(range_flag::arrangement_judgement); break;
    case lay::coiled:
        out.add(s.coil_turns == 0 ? arrangement_factors : coil_bundle_model).add(range_flag::arrangement_judgement);
        break;
    }
    if (kernel.leaves_convection_range(surface.in_kelvin())) out.add(range_flag::convection_range);
    if (s.model == surface_model::iec_60287 && s.diameter > free_air_widest) out.add(range_flag::cable_diameter_range);
}

}  // namespace detail

/// Heat per length that the surface of a cable gives to air and walls, before what the sun adds.
///
/// Alone in still air:
/// - `churchill_chu`, `morgan`: q = pi D (Nu k/D (Ts - Ta) + eps sigma (Ts^4 - Ta^4)), air at the film temperature;
/// - `iec_60287`: q = pi D (Z/D^g + E) (Ts - Ta)^(5/4). This power makes the coefficient vanish with the rise, which no
///   surface does; below the rise where it falls under `churchill_chu` (about 10 K at 20 mm, 20 K at 50 mm) the latter
///   is used.
///
/// Wind V: Nu^4 = Nu_still^4 + Nu_cross-flow^4. IEC 60287 has neither wind nor altitude nor emissivity: the still part
/// is scaled by churchill_chu here over churchill_chu at sea level with emissivity 0.9, and what wind adds there is
/// added. Arrangement: the whole is multiplied by lay_ratio(), wind too, which is on the cautious side.
///
/// Rises with the surface temperature, is zero at the air's and negative below. Accuracy 5 % in free air for the
/// default model (2.5 % of current), 15 to 20 % for wind, unknown for `on_floor`, `bundled`, `coiled`.
/// @param s the surface and what is around it @param surface Ts
/// @return [W/m]
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline power_per_length surface_loss(const cable_surface& s, temperature surface)
{
    return in_si<power_per_length>(detail::surface_kernel(s).loss(surface.in_kelvin()));
}

/// Heat per length that a cable takes up from the sun: absorption 0.8 x diameter x sunlight.
/// @param s the surface and what is around it
/// @return [W/m]
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline power_per_length absorbed_sun(const cable_surface& s)
{
    return in_si<power_per_length>(detail::surface_kernel(s).sun_per_length());
}

/// The sources of surface_loss() and the ranges it leaves at a surface temperature.
/// @param s the surface and what is around it @param surface Ts
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline basis surface_basis(const cable_surface& s, temperature surface)
{
    basis out;
    detail::add_surface_basis(out, s, detail::surface_kernel(s), surface);
    return out;
}

}  // namespace weldloop
