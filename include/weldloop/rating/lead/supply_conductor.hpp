#pragma once
/// @file
/// Currents that the conductors which feed welders are sized for: the duty multipliers of the North American codes, and
/// groups of welders on one feeder. They are for the supply side; a lead gets no credit by them, see ratings_of().

#include <algorithm>
#include <array>
#include <cstddef>
#include <functional>
#include <span>
#include <string_view>
#include <vector>

#include <weldloop/core/error.hpp>
#include <weldloop/core/fraction.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/text.hpp>

namespace weldloop {

/// @name Sources of the supply rules
/// @{

/// Arc welders by duty.
inline constexpr source nfpa_70_630_11_a{"NFPA 70", "2008 text; same in later editions",
                                         "table 630.11(A), duty-cycle multipliers for arc welders",
                                         source_kind::standard};
/// Resistance welders by duty.
inline constexpr source nfpa_70_630_31_a{
    "NFPA 70", "2008 to 2023", "table 630.31(A), duty-cycle multipliers for resistance welders", source_kind::memory};
/// Resistance welders of varying operation.
inline constexpr source c22_1_42_014{"CSA C22.1", "current", "rule 42-014 a) and b), varying operation",
                                     source_kind::standard};
/// Several welders on one feeder.
inline constexpr source nfpa_70_welder_groups{
    "NFPA 70", "2008", "630.11(B) and 630.31(B); same shares in CSA C22.1 rules 42-006 and 42-014",
    source_kind::standard};
/// @}

/// Welders by what the codes ask of their supply conductors.
enum class supplied_welder {
    arc_welder,             ///< transformer or rectifier arc welder
    motor_generator,        ///< arc welder driven by a motor, which draws current without load too
    resistance_welder,      ///< resistance welder with a known duty that does not change
    varying_seam_welder,    ///< seam or automatically fed resistance welder, operation varying
    varying_manual_welder,  ///< manually fed resistance welder, operation varying
};

/// Every kind, in the order of the enumeration.
inline constexpr std::array all_supplied_welders{
    supplied_welder::arc_welder, supplied_welder::motor_generator, supplied_welder::resistance_welder,
    supplied_welder::varying_seam_welder, supplied_welder::varying_manual_welder};

/// The words for a kind.
[[nodiscard]] constexpr std::string_view to_text(supplied_welder w)
{
    switch (w) {
    case supplied_welder::arc_welder: return "arc welder";
    case supplied_welder::motor_generator: return "motor-generator arc welder";
    case supplied_welder::resistance_welder: return "resistance welder";
    case supplied_welder::varying_seam_welder: return "seam welder of varying operation";
    case supplied_welder::varying_manual_welder: return "manual resistance welder of varying operation";
    }
    return "arc welder";
}

/// A row of a multiplier table: up to this duty, this share of the rated primary current.
struct duty_multiplier_row {
    double duty_percent;  ///< highest duty of the row [%]
    double multiplier;    ///< of the rated primary current
};

/// NFPA 70 table 630.11(A), arc welders without a motor.
inline constexpr std::array arc_multipliers{
    duty_multiplier_row{20, 0.45}, duty_multiplier_row{30, 0.55}, duty_multiplier_row{40, 0.63},
    duty_multiplier_row{50, 0.71}, duty_multiplier_row{60, 0.78}, duty_multiplier_row{70, 0.84},
    duty_multiplier_row{80, 0.89}, duty_multiplier_row{90, 0.95}, duty_multiplier_row{100, 1.00}};
/// NFPA 70 table 630.11(A), motor-generator arc welders.
inline constexpr std::array motor_generator_multipliers{
    duty_multiplier_row{20, 0.55}, duty_multiplier_row{30, 0.62}, duty_multiplier_row{40, 0.69},
    duty_multiplier_row{50, 0.75}, duty_multiplier_row{60, 0.81}, duty_multiplier_row{70, 0.86},
    duty_multiplier_row{80, 0.91}, duty_multiplier_row{90, 0.96}, duty_multiplier_row{100, 1.00}};
/// NFPA 70 table 630.31(A), resistance welders.
inline constexpr std::array resistance_multipliers{
    duty_multiplier_row{5, 0.22},  duty_multiplier_row{7.5, 0.27}, duty_multiplier_row{10, 0.32},
    duty_multiplier_row{15, 0.39}, duty_multiplier_row{20, 0.45},  duty_multiplier_row{25, 0.50},
    duty_multiplier_row{30, 0.55}, duty_multiplier_row{40, 0.63},  duty_multiplier_row{50, 0.71}};
/// Resistance welders of varying operation, seam or automatically fed.
inline constexpr std::array varying_seam_multipliers{duty_multiplier_row{100, 0.70}};
/// Resistance welders of varying operation, fed by hand.
inline constexpr std::array varying_manual_multipliers{duty_multiplier_row{100, 0.50}};

/// The rows of a kind, duty small to large.
[[nodiscard]] constexpr std::span<const duty_multiplier_row> multipliers_of(supplied_welder w)
{
    switch (w) {
    case supplied_welder::arc_welder: break;
    case supplied_welder::motor_generator: return motor_generator_multipliers;
    case supplied_welder::resistance_welder: return resistance_multipliers;
    case supplied_welder::varying_seam_welder: return varying_seam_multipliers;
    case supplied_welder::varying_manual_welder: return varying_manual_multipliers;
    }
    return arc_multipliers;
}

/// What the conductors of one welder are sized for.
struct supply_current {
    current amps;                  ///< [A] least ampacity of its supply conductors
    double multiplier;             ///< of the rated primary current
    double row_percent;            ///< duty of the row it was taken from [%]
    bool recalled = false;         ///< the row was recalled, not read: a licensed person checks it in the code
    const source* from = nullptr;  ///< where it stands
};

/// Least ampacity of the supply conductors of one welder, I = multiplier x rated primary current.
///
/// The row is the first whose duty is not below the welder's; nothing is interpolated, and below the lowest row its
/// multiplier stays, as the code has it. The multipliers are the square root of the duty, rounded (0.775 at 60 %
/// to 0.78), but for motor generators, which draw current between welds too. A table of the code: the code adopted
/// where the work is done and a licensed electrician decide.
/// @param welder kind @param rated_primary I1 on the rating plate [A], above 0
/// @param duty on-time over period; without effect for varying operation
/// @throws not_finite_error, out_of_range_error; a resistance welder above 50 % has no row
[[nodiscard]] inline supply_current supply_current_of(supplied_welder welder, current rated_primary, duty_fraction duty)
{
    require_positive(rated_primary, "rated primary current");
    constexpr double percent = 100.0, rounding = 1e-9;  // 0.07 x 100 is not 7
    const std::span<const duty_multiplier_row> rows = multipliers_of(welder);
    const auto row = std::find_if(rows.begin(), rows.end(), [&](const duty_multiplier_row& r) {
        return percent * static_cast<double>(duty) <= r.duty_percent + rounding;
    });
    if (row == rows.end())
        throw out_of_range_error("duty of the welder", to_text(duty), "up to 50 % for a resistance welder");
    const source* from = welder == supplied_welder::resistance_welder ? &nfpa_70_630_31_a
                         : welder == supplied_welder::arc_welder || welder == supplied_welder::motor_generator
                             ? &nfpa_70_630_11_a
                             : &c22_1_42_014;
    return {row->multiplier * rated_primary, row->multiplier, row->duty_percent, from->kind == source_kind::memory,
            from};
}

/// Welders on one feeder.
enum class welder_group {
    arc_welders,         ///< two largest in full, the third 85 %, the fourth 70 %, each further 60 %
    resistance_welders,  ///< the largest in full, each other 60 %
};

/// Shares of the arc welders of a group, largest first; the last stands for all further ones.
inline constexpr std::array arc_group_shares{1.00, 1.00, 0.85, 0.70, 0.60};
/// The same for resistance welders.
inline constexpr std::array resistance_group_shares{1.00, 0.60};

/// Least ampacity of the conductors that feed several welders, the sum of their supply currents by order of size.
///
/// The shares suppose that the welders do not work all at once; where they do, the sum counts. @see
/// nfpa_70_welder_groups
/// @param group kind of the welders @param each supply_current_of() of every welder [A], 0 or above, at least one
/// @return [A], at most the plain sum and at least the largest
/// @throws not_finite_error, out_of_range_error
[[nodiscard]] inline current group_supply_current(welder_group group, std::span<const current> each)
{
    if (each.empty()) throw out_of_range_error("welders on the feeder", "none", "at least one");
    std::vector<double> amps;
    for (const current& one : each) amps.push_back(require_not_negative(one, "supply current of a welder").value());
    std::sort(amps.begin(), amps.end(), std::greater<>{});
    const std::span<const double> shares =
        group == welder_group::arc_welders ? std::span<const double>(arc_group_shares) : resistance_group_shares;
    double sum = 0.0;
    for (std::size_t i = 0; i < amps.size(); ++i) sum += shares[std::min(i, shares.size() - 1)] * amps[i];
    return require_finite(in_si<current>(sum), "supply current of the group");
}

}  // namespace weldloop
