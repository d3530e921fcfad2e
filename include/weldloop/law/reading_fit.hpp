#pragma once
/// @file
/// The force law, the spread of a surface and the relaxation of a spring, fitted to readings of one's own. What the
/// readings cannot tell is not given, and why is said.

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <optional>
#include <span>
#include <string_view>
#include <vector>

#include <weldloop/core/band.hpp>
#include <weldloop/core/fraction.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/law/force_law.hpp>
#include <weldloop/law/stress_relaxation.hpp>
#include <weldloop/material/spring_wire.hpp>
#include <weldloop/solve/least_squares.hpp>

namespace weldloop {

/// What a fit asks of its readings.
inline constexpr source fit_judgement{"what readings tell: an exponent from forces a factor 2 apart, a stress slope "
                                      "from stresses 0.05 apart, a slope of the "
                                      "Larson-Miller parameter from 150 K of it; a spread from four readings and where "
                                      "the instrument has less than half of "
                                      "it; any number that is at least twice its standard error",
                                      "2026",
                                      {},
                                      source_kind::judgement};

/// Why a number is not given.
enum class fit_gap {
    none,              ///< it is given
    too_few,           ///< not more readings than unknowns, or fewer than four for a spread
    too_close,         ///< the readings lie too close together to tell
    scatter_hides_it,  ///< less than twice its standard error, or less than what the instrument scatters
};

/// The words for a gap, as printed.
[[nodiscard]] constexpr std::string_view to_text(fit_gap g)
{
    switch (g) {
    case fit_gap::none: return "given";
    case fit_gap::too_few: return "too few readings";
    case fit_gap::too_close: return "readings too close together";
    case fit_gap::scatter_hides_it: return "hidden by the scatter";
    }
    return "given";
}

/// A fitted number, or why there is none.
struct fitted_number {
    std::optional<double> value = {};  ///< [its unit] empty: see `gap`
    double standard_error = 0.0;       ///< [unit of the value] from the scatter of the readings; 0 without a value
    fit_gap gap = fit_gap::too_few;    ///< none if there is a value
};

/// One reading of a contact, at a current that does not heat its spots.
struct contact_reading {
    force pressing = {};          ///< F [N], above 0
    resistance read = {};         ///< R [ohm], above 0
    double relative_error = 0.0;  ///< standard error of the instrument over the reading, a share, 0 to 1; 0: not known
};

/// The force law of a contact as read: R = 1e-6 K/(0.102 F)^m, ln R scattered by `spread`.
struct force_law_fit {
    fitted_number exponent = {};  ///< m
    fitted_number constant = {};  ///< K [micro-ohm kgf^m], with m as fitted, or as stated where that cannot be told
    double exponent_used = 0.7;   ///< exponent m that K belongs to
    fitted_number spread = {};    ///< standard deviation of ln R of the surface, the instrument's taken off
    std::optional<band<double>> multiplier = {};  ///< 5, 50, 95 % points over the law, exp(-1.645 s), 1, exp(1.645 s)
    weldloop::basis basis = {};                   ///< sources
};

namespace detail {
inline constexpr double tells = 2.0;            // standard errors that a number must be away from zero
inline constexpr std::size_t spread_needs = 4;  // readings
inline constexpr double point_95 = 1.645;       // of a normal distribution

[[nodiscard]] inline fitted_number told(double value, double error)
{
    if (std::fabs(value) < tells * error) return {{}, 0.0, fit_gap::scatter_hides_it};
    return {value, error, fit_gap::none};
}
}  // namespace detail

/// Fits the force law and the spread of a surface to readings, ln R = ln K - m ln(0.102 F) by least squares.
/// @param readings of one pair of metals on one surface @param stated_exponent m to take where it cannot be told, 0.1
/// to 1.5
/// @return what the readings tell; everything else is a gap @throws not_finite_error, out_of_range_error
/// @see force_law_form, fit_judgement
[[nodiscard]] inline force_law_fit fit_force_law(std::span<const contact_reading> readings,
                                                 double stated_exponent = 0.7)
{
    require_within(stated_exponent, 0.1, 1.5, "force-law exponent");
    force_law_fit out;
    out.basis.add(force_law_form).add(fit_judgement);
    out.exponent_used = stated_exponent;
    std::vector<solve::line_reading> lines;
    double least = 0.0, most = 0.0, instrument = 0.0;
    for (const contact_reading& r : readings) {
        const double f = std::log(detail::kgf_per_newton * require_positive(r.pressing, "contact force").value());
        const double y =
            std::log(require_positive(r.read, "contact resistance").value() / detail::ohm_per_unit_constant);
        instrument += std::pow(require_within(r.relative_error, 0.0, 1.0, "relative error"), 2);
        least = lines.empty() ? f : std::min(least, f);
        most = lines.empty() ? f : std::max(most, f);
        lines.push_back({{1.0, -f, 0.0}, y});
    }
    if (lines.empty()) return out;
    const auto count = static_cast<double>(lines.size());
    constexpr double factor_apart = 2.0, least_exponent = 0.1, most_exponent = 1.5;
    std::optional<solve::fitted_line> line;
    if (most - least < std::log(factor_apart) * (1.0 - 1e-9))
        out.exponent.gap = fit_gap::too_close;
    else if ((line = solve::fit_line(lines, 2))) {
        out.exponent = detail::told(line->a[1], line->error[1]);
        // an exponent that no contact has is scatter
        if (out.exponent.value && !(*out.exponent.value >= least_exponent && *out.exponent.value <= most_exponent))
            out.exponent = {{}, 0.0, fit_gap::scatter_hides_it};
    }
    if (out.exponent.value) {
        out.exponent_used = *out.exponent.value;
    } else {
        for (solve::line_reading& l : lines) {
            l.y -= stated_exponent * l.x[1];
            l.x[1] = 0.0;
        }
        line = solve::fit_line(lines, 1);
    }
    if (!line) return out;
    const double k = std::exp(line->a[0]);
    if (!std::isfinite(k * (1.0 + line->error[0]))) {  // a constant beyond the numbers there are is scatter
        out.constant.gap = fit_gap::scatter_hides_it;
        return out;
    }
    out.constant = {k, k * line->error[0], fit_gap::none};
    if (lines.size() < detail::spread_needs) return out;
    const double own = line->spread * line->spread - instrument / count;
    constexpr double mostly = 0.25;  // of the variance
    if (!(own > mostly * line->spread * line->spread) || !(line->spread > 0.0)) {
        out.spread.gap = fit_gap::scatter_hides_it;
        return out;
    }
    const double unknowns = out.exponent.value ? 2.0 : 1.0, s = std::sqrt(own);
    const double multiplier = std::exp(detail::point_95 * s);
    if (!std::isfinite(multiplier)) {
        out.spread.gap = fit_gap::scatter_hides_it;
        return out;
    }
    out.spread = {s, s / std::sqrt(2.0 * (count - unknowns)), fit_gap::none};
    out.multiplier = band<double>{1.0 / multiplier, 1.0, multiplier};
    return out;
}

/// One reading of a spring's relaxation at a constant deflection and temperature.
struct relaxation_reading {
    stress_fraction stress = 0.7;            ///< initial stress over tensile strength
    temperature at = reference_temperature;  ///< held at
    duration time = {};                      ///< [s] above 0
    fraction lost = {};                      ///< share of the force lost, above 0, below 1
};

/// The relaxation of a spring as read, r = r0 exp(b (mu - 0.7)) exp(c (P - P0)).
struct relaxation_reading_fit {
    fitted_number reference_exponent = {};  ///< r0
    fitted_number stress_slope = {};        ///< b
    fitted_number parameter_slope = {};     ///< c [1/K]
    fitted_number spread = {};              ///< standard deviation of ln r about the law
    /// The law to give a spring_wire, where r0 can be told: slopes that cannot are those of the law started from.
    std::optional<relaxation_constants> law = {};
    weldloop::basis basis = {};  ///< sources
};

/// Fits the law of relaxation to readings, ln r by least squares. Slopes that the readings cannot tell are kept.
/// @param readings of springs of one wire and making @param kept the law whose slopes stand where they cannot be told
/// @return what the readings tell; everything else is a gap @throws not_finite_error, out_of_range_error
/// @see larson_miller, fit_judgement
[[nodiscard]] inline relaxation_reading_fit fit_relaxation(std::span<const relaxation_reading> readings,
                                                           const relaxation_constants& kept = normal_relaxation)
{
    constexpr double least_stress_span = 0.05, least_parameter_span = 150.0;
    relaxation_reading_fit out;
    out.basis.add(larson_miller).add(fit_judgement);
    require_finite(kept.stress_slope, "slope of relaxation by stress");
    require_finite(kept.parameter_slope, "slope of relaxation by the time-temperature parameter");
    struct place {
        double stress, parameter, log_exponent;
    };
    std::vector<place> places;
    for (const relaxation_reading& r : readings) {
        const double lost = static_cast<double>(r.lost);
        if (!(lost > 0.0 && lost < 1.0))
            throw out_of_range_error("share of the force lost", number_text(lost), "above 0, below 1: ln r must exist");
        const double hours = require_positive(r.time, "time").value() / detail::seconds_per_hour;
        places.push_back({static_cast<double>(r.stress) - detail::reference_stress,
                          require_finite(r.at.in_kelvin() * (detail::larson_miller_constant + std::log10(hours)) -
                                             detail::reference_parameter,
                                         "time-temperature parameter of a reading"),
                          std::log(-std::log1p(-lost))});
    }
    if (places.empty()) return out;
    const auto span_of = [&](double place::*of) {
        const auto [low, high] = std::minmax_element(places.begin(), places.end(),
                                                     [&](const place& a, const place& b) { return a.*of < b.*of; });
        return (*high).*of - (*low).*of;
    };
    bool by_stress = span_of(&place::stress) >= least_stress_span * (1.0 - 1e-9),
         by_parameter = span_of(&place::parameter) >= least_parameter_span;
    out.stress_slope.gap = by_stress ? fit_gap::too_few : fit_gap::too_close;
    out.parameter_slope.gap = by_parameter ? fit_gap::too_few : fit_gap::too_close;
    // without what the scatter hides the fit is made again
    while (true) {
        std::size_t unknowns = 1, stress_at = 0, parameter_at = 0;
        if (by_stress) stress_at = unknowns++;
        if (by_parameter) parameter_at = unknowns++;
        std::vector<solve::line_reading> lines;
        for (const place& p : places) {
            solve::line_reading l{{1.0, 0.0, 0.0}, p.log_exponent};
            if (by_stress)
                l.x[stress_at] = p.stress;
            else
                l.y -= kept.stress_slope * p.stress;
            if (by_parameter)
                l.x[parameter_at] = p.parameter;
            else
                l.y -= kept.parameter_slope.value() * p.parameter;
            lines.push_back(l);
        }
        const std::optional<solve::fitted_line> line = solve::fit_line(lines, unknowns);
        if (!line) {
            if (by_parameter || by_stress) {
                (by_stress ? by_stress : by_parameter) =
                    false;  // too few for both: the one that stress tells goes first
                continue;
            }
            return out;
        }
        const auto hidden = [&](fitted_number& n, bool& fitted, std::size_t at) {
            if (!fitted) return false;
            n = detail::told(line->a[at], line->error[at]);
            if (n.value && *n.value > 0.0) return false;
            n = {{}, 0.0, fit_gap::scatter_hides_it};
            fitted = false;
            return true;
        };
        if (hidden(out.stress_slope, by_stress, stress_at) || hidden(out.parameter_slope, by_parameter, parameter_at))
            continue;
        const double r0 = std::exp(line->a[0]);
        if (!std::isfinite(r0 * (1.0 + line->error[0]))) {
            out.reference_exponent.gap = fit_gap::scatter_hides_it;
            return out;
        }
        out.reference_exponent = {r0, r0 * line->error[0], fit_gap::none};
        out.law =
            relaxation_constants{r0, out.stress_slope.value.value_or(kept.stress_slope),
                                 in_si<per_kelvin>(out.parameter_slope.value.value_or(kept.parameter_slope.value()))};
        if (places.size() >= detail::spread_needs)
            out.spread = {line->spread, line->spread / std::sqrt(2.0 * static_cast<double>(places.size() - unknowns)),
                          fit_gap::none};
        return out;
    }
}

}  // namespace weldloop
