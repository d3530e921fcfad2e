#pragma once
/// @file
/// Other published laws for the relaxation of cold-drawn wire at 20 degC, to compare the state form of
/// stress_relaxation.hpp with.
///
/// They are made for tendons in tension, S0 the initial stress, Sut the tensile strength, t in hours. Each gives the
/// loss of stress over S0; what temperature does to them stands in relaxation_heat.hpp.

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <numbers>
#include <string_view>

#include <weldloop/core/fraction.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/law/relaxation_result.hpp>

namespace weldloop {

/// @name Sources of the code laws
/// @{

/// Losses after 1000 h by stress.
inline constexpr source code_loss_table{"IRC:18-2000", "2000", "table 4A, as summarised in public notes",
                                        source_kind::standard};
/// Losses by time, as a power.
inline constexpr source model_code_time{"CEB-FIP Model Code 1990", "1990",
                                        "2.3.4.5: rho1000 (t/1000 h)^k, k = 0.12 and 0.19, as summarised in public "
                                        "notes",
                                        source_kind::standard};
/// Losses by stress and time, in one formula.
inline constexpr source eurocode_relaxation{"EN 1992-1-1", "2004", "3.3.2(7), equations 3.28 and 3.29",
                                            source_kind::memory};
/// Losses by the logarithm of time.
inline constexpr source logarithmic_relaxation{"Magura, Sozen and Siess, PCI Journal 9(2)", "1964",
                                               "S/S0 = 1 - log10(t)/10 (S0/fy - 0.55); divisor 45 for low relaxation",
                                               source_kind::memory};
/// Yield of stress-relieved wire.
inline constexpr source wire_yield_ratio{
    "ASTM A421", {}, "yield of stress-relieved wire 0.85 of its tensile strength", source_kind::memory};
/// @}

/// Yield strength over tensile strength, for the logarithmic law alone. @see wire_yield_ratio
inline constexpr double usual_yield_ratio = 0.85;

namespace detail {
inline constexpr double code_hours = 1000.0;  // the time the codes state losses at
inline constexpr double thirty_years_of_hours = 262800.0;

struct code_loss {
    double stress, plain, preset;  // share of strength; loss after 1000 h
};
inline constexpr std::array code_losses{code_loss{0.5, 0.0, 0.0}, code_loss{0.6, 0.025, 0.0125},
                                        code_loss{0.7, 0.05, 0.025}, code_loss{0.8, 0.09, 0.045}};

// Between two rows by a straight line, zero below the first, along the last line beyond the last.
inline double code_loss_at(double stress, spring_making making)
{
    const auto value = [making](const code_loss& row) {
        return making == spring_making::plain ? row.plain : row.preset;
    };
    std::size_t above = 1;
    while (above + 1 < code_losses.size() && code_losses[above].stress < stress) ++above;
    const code_loss &a = code_losses[above - 1], &b = code_losses[above];
    return std::max(0.0, value(a) + (value(b) - value(a)) * (stress - a.stress) / (b.stress - a.stress));
}

struct eurocode_class {
    double factor, stress_slope, loss_at_1000;  // k1, k2, rho1000 in percent
};
inline constexpr eurocode_class eurocode_plain{5.39, 6.7, 8.0}, eurocode_preset{0.66, 9.1, 2.5};

inline constexpr double logarithmic_threshold = 0.55;  // of yield
inline constexpr double logarithmic_plain = 10.0, logarithmic_preset = 45.0;
inline constexpr double model_code_plain = 0.12, model_code_preset = 0.19;  // power of time

inline void require_yield_ratio(double ratio)
{
    constexpr double least = 1e-3;  // any wire yields later
    require_within(ratio, least, 1.0, "yield over tensile strength");
}
}  // namespace detail

/// A published law of relaxation at 20 degC.
enum class relaxation_time_law {
    model_code,   ///< table by stress, power of time; 0.5 to 0.8 of strength, 1 h to 30 years
    eurocode,     ///< one formula; 0.5 to 0.8 of strength, up to 5e5 h. It returns its class loss near 0.8, not 0.7
    logarithmic,  ///< logarithm of time; 0.55 to 0.9 of yield, from 1 h on; nothing before, nothing below 0.55
};

/// The words for a law, as printed.
[[nodiscard]] constexpr std::string_view to_text(relaxation_time_law law)
{
    switch (law) {
    case relaxation_time_law::model_code: return "model code, power of time";
    case relaxation_time_law::eurocode: return "concrete code, one formula";
    case relaxation_time_law::logarithmic: return "logarithm of time";
    }
    return "model code, power of time";
}

/// The wire the laws of code_relaxation() tell apart.
struct code_wire {
    spring_making making = spring_making::plain;  ///< normal wire (plain) or low-relaxation wire (preset)
    double yield_ratio = usual_yield_ratio;       ///< y, yield over tensile strength, 0.001 to 1; logarithmic alone
};

/// The share of its stress that cold-drawn wire loses at 20 degC, never above 1.
///
/// model_code: rho(S0/Sut) (t/1000 h)^k. eurocode: k1 rho exp(k2 S0/Sut) (t/1000 h)^(0.75 (1 - S0/Sut)) 1e-5, rho in
/// percent. logarithmic: log10(t/1 h)/10 (S0/(y Sut) - 0.55).
/// @param law which @param stress S0/Sut, 0 to 1 @param time [s], 0 or above; a new spring has lost nothing
/// @param wire how it was made, and its yield
/// @throws not_finite_error, out_of_range_error
/// @see code_loss_table, model_code_time, eurocode_relaxation, logarithmic_relaxation
[[nodiscard]] inline fraction code_relaxation(relaxation_time_law law, stress_fraction stress, duration time,
                                              const code_wire& wire = {})
{
    const auto& [making, yield_ratio] = wire;

    require_not_negative(time, "time");
    detail::require_yield_ratio(yield_ratio);
    const double mu = static_cast<double>(stress), hours = time.value() / detail::seconds_per_hour;
    const bool plain = making == spring_making::plain;
    if (hours == 0.0) return 0.0;
    double lost = 0.0;
    switch (law) {
    case relaxation_time_law::model_code:
        lost = detail::code_loss_at(mu, making) *
               std::pow(hours / detail::code_hours, plain ? detail::model_code_plain : detail::model_code_preset);
        break;
    case relaxation_time_law::eurocode: {
        const detail::eurocode_class& k = plain ? detail::eurocode_plain : detail::eurocode_preset;
        lost = 1e-5 * k.factor * k.loss_at_1000 * std::exp(k.stress_slope * mu) *
               std::pow(hours / detail::code_hours, 0.75 * (1.0 - mu));
        break;
    }
    case relaxation_time_law::logarithmic:
        // of hours by what is over the first: just after it the logarithm keeps its digits
        lost = std::max(0.0, std::log1p((time.value() - detail::seconds_per_hour) / detail::seconds_per_hour) /
                                 std::numbers::ln10) *
               std::max(0.0, mu / yield_ratio - detail::logarithmic_threshold) /
               (plain ? detail::logarithmic_plain : detail::logarithmic_preset);
        break;
    }
    return std::min(lost, 1.0);
}

/// Whether a published law covers a stress and a time at 20 degC.
/// @param law which @param stress S0/Sut @param time [s], 0 or above
/// @param yield_ratio yield over tensile strength, 0.001 to 1 @throws not_finite_error, out_of_range_error
[[nodiscard]] inline bool code_relaxation_covers(relaxation_time_law law, stress_fraction stress, duration time,
                                                 double yield_ratio = usual_yield_ratio)
{
    require_not_negative(time, "time");
    detail::require_yield_ratio(yield_ratio);
    const double mu = static_cast<double>(stress), hours = time.value() / detail::seconds_per_hour;
    switch (law) {
    case relaxation_time_law::model_code:
        return detail::within_range(mu, 0.5, 0.8) && detail::within_range(hours, 1.0, detail::thirty_years_of_hours);
    case relaxation_time_law::eurocode:
        return detail::within_range(mu, 0.5, 0.8) && detail::within_range(hours, 0.0, 5e5);
    case relaxation_time_law::logarithmic:
        return detail::within_range(mu / yield_ratio, detail::logarithmic_threshold, 0.9) &&
               detail::within_range(hours, 1.0, detail::thirty_years_of_hours);
    }
    return false;
}

/// The sources of a law. @param law which
[[nodiscard]] inline basis sources_of(relaxation_time_law law)
{
    basis out;
    switch (law) {
    case relaxation_time_law::model_code: return out.add(code_loss_table).add(model_code_time);
    case relaxation_time_law::eurocode: return out.add(eurocode_relaxation);
    case relaxation_time_law::logarithmic: return out.add(logarithmic_relaxation).add(wire_yield_ratio);
    }
    return out;
}

}  // namespace weldloop
