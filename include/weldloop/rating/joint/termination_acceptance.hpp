#pragma once
/// @file
/// "Is this termination good?" - readings of drop, pull and broken strands held against published limits. Crimps by
/// their drop stand in circuit/lug_behaviour.hpp.

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <limits>
#include <span>
#include <string_view>

#include <weldloop/core/conductor_size.hpp>
#include <weldloop/core/error.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/unit_text.hpp>
#include <weldloop/law/crimp.hpp>

namespace weldloop {

/// @name Sources of acceptance limits
/// @{

/// Pull-out of commercial connectors, small sizes.
inline constexpr source commercial_pull_out_read{"UL 486A (now UL 486A-486B)", "8th edition / 2003",
                                                 "pull-out table, 22 to 14 AWG (as reproduced in open documents)",
                                                 source_kind::standard};
/// Pull-out of commercial connectors, large sizes.
inline constexpr source commercial_pull_out_recalled{"UL 486A (now UL 486A-486B)", "8th edition / 2003",
                                                     "pull-out table, 12 AWG to 4/0", source_kind::memory};
/// Drop of stud terminals.
inline constexpr source stud_terminal_test{
    "MIL-DTL-83454A", "revision A",
    "4.5.3, table VIII: 7.5 mV at 25, 30, 35, 43 A for .138-32, .164-32, .190-32, .250-28 threads",
    source_kind::standard};
/// Broken strands.
inline constexpr source broken_strand_table{"FAA AC 43.13-1B", "1998-09-08", "table 11-13, page 11-62",
                                            source_kind::standard};
/// Joints of one kind beside each other.
inline constexpr source similar_joints_rule{
    "NETA maintenance testing specifications", "2023-2025",
    "a joint 50 % above the lowest of its like is to be investigated (as quoted in open commissioning forms)",
    source_kind::standard};
/// @}

/// Which set of pull-out forces. The military values are 1.4 to 3 times the commercial ones: use the set that belongs
/// to the claim that is tested.
enum class pull_out_claim {
    military,    ///< MIL-T-7928E
    commercial,  ///< UL 486A
};

/// Least pull-out force of a size.
struct pull_out_row {
    conductor_size size;  ///< of the conductor
    force least;          ///< [N]
    bool recalled;        ///< from memory, not read
};

namespace detail {
constexpr pull_out_row commercial_row(conductor_size size, double pounds, bool recalled)
{
    return {size, in_si<force>(pounds * newtons_per_pound_force), recalled};
}
}  // namespace detail

/// The commercial set, smallest conductor first; see commercial_pull_out_read and commercial_pull_out_recalled.
inline constexpr std::array commercial_pull_out{
    detail::commercial_row(awg(22), 8, false),   detail::commercial_row(awg(20), 13, false),
    detail::commercial_row(awg(18), 20, false),  detail::commercial_row(awg(16), 30, false),
    detail::commercial_row(awg(14), 50, false),  detail::commercial_row(awg(12), 70, true),
    detail::commercial_row(awg(10), 80, true),   detail::commercial_row(awg(8), 90, true),
    detail::commercial_row(awg(6), 100, true),   detail::commercial_row(awg(4), 140, true),
    detail::commercial_row(awg(2), 180, true),   detail::commercial_row(awg(1), 200, true),
    detail::commercial_row(aught(1), 250, true), detail::commercial_row(aught(2), 300, true),
    detail::commercial_row(aught(3), 350, true), detail::commercial_row(aught(4), 450, true),
};

/// A reading held against a limit.
struct termination_acceptance {
    double used;    ///< ratio of reading to limit, or limit over reading where the limit is a least value: good up to 1
    bool accepted;  ///< within the limit
    bool limit_recalled;    ///< the limit is from memory: it may condemn, but gives no passing verdict by itself
    weldloop::basis basis;  ///< where the limit comes from
};

/// Whether a termination holds the pull of its size: the force at which it let go, or the highest one it stood, against
/// the least value of the table. A size between two rows counts as the larger.
/// @param size of the conductor @param pulled [N], 0 or above @param claim which set
/// @throws not_finite_error, out_of_range_error; missing_data_error for a size beyond the table
/// @see crimp_limits, commercial_pull_out
[[nodiscard]] inline termination_acceptance pull_out_acceptance_of(const conductor_size& size, force pulled,
                                                                   pull_out_claim claim)
{
    constexpr double rounding = 1.0 - 1e-9;
    require_not_negative(pulled, "pull");
    const auto verdict = [&](force least, bool recalled, const source& from) {
        termination_acceptance out{pulled > force{} ? static_cast<double>(least / pulled)
                                                    : std::numeric_limits<double>::max(),
                                   pulled >= least,
                                   recalled,
                                   {}};
        out.used = std::min(out.used, std::numeric_limits<double>::max());
        out.basis.add(from);
        return out;
    };
    if (claim == pull_out_claim::military) {
        for (const crimp_limit_row& row : crimp_limits)
            if (rounding * size.area() <= row.size.area())
                return verdict(row.pull_out, row.recalled, row.recalled ? crimp_limits_recalled : crimp_limits_read);
    } else {
        for (const pull_out_row& row : commercial_pull_out)
            if (rounding * size.area() <= row.size.area())
                return verdict(row.least, row.recalled,
                               row.recalled ? commercial_pull_out_recalled : commercial_pull_out_read);
    }
    throw missing_data_error("conductor size", si_text(size.area()), "up to 4/0");
}

/// The test of a stud terminal.
struct stud_terminal_row {
    length diameter;       ///< [m] nominal thread
    current test_current;  ///< [A]
    voltage highest_drop;  ///< [V] at the test current
};

/// The rows of stud_terminal_test, smallest thread first.
inline constexpr std::array stud_terminal_limits{
    stud_terminal_row{in_si<length>(0.138 * detail::metres_per_inch), in_si<current>(25), in_si<voltage>(7.5e-3)},
    stud_terminal_row{in_si<length>(0.164 * detail::metres_per_inch), in_si<current>(30), in_si<voltage>(7.5e-3)},
    stud_terminal_row{in_si<length>(0.190 * detail::metres_per_inch), in_si<current>(35), in_si<voltage>(7.5e-3)},
    stud_terminal_row{in_si<length>(0.250 * detail::metres_per_inch), in_si<current>(43), in_si<voltage>(7.5e-3)},
};

/// Whether a stud terminal is good at a reading: its resistance against that of the test, 300, 250, 214 and 174
/// micro-ohm. A thread above 1/4 inch is held against the last row, which is strict for it: a larger stud should do
/// better. @param diameter nominal thread [m], at least .138 inch @param drop measured [V], 0 or above
/// @param through current [A], above 0 @throws not_finite_error, out_of_range_error @see stud_terminal_test
[[nodiscard]] inline termination_acceptance stud_acceptance_of(length diameter, voltage drop, current through)
{
    constexpr double rounding = 1.0 + 1e-9;
    require_positive(diameter, "stud diameter");
    require_not_negative(drop, "voltage reading");
    require_positive(through, "current");
    if (rounding * diameter < stud_terminal_limits.front().diameter)
        throw out_of_range_error("stud diameter", si_text(diameter), ".138 inch (3.505 mm) or more");
    const stud_terminal_row* row = &stud_terminal_limits.front();
    for (const stud_terminal_row& next : stud_terminal_limits)
        if (next.diameter <= rounding * diameter) row = &next;
    const resistance limit = row->highest_drop / row->test_current, reading = drop / through;
    require_finite(reading, "resistance reading");
    const double used = require_finite((reading / limit).value(), "resistance reading over its limit");
    termination_acceptance out{used, used <= rounding, false, {}};
    out.basis.add(stud_terminal_test);
    return out;
}

/// Broken strands that a termination may have.
struct broken_strand_row {
    conductor_size smallest;  ///< from this size
    conductor_size largest;   ///< to this
    int strands_low;          ///< fewest strands the table has for them
    int strands_high;         ///< most
    int nicked;               ///< allowed
    int broken;               ///< allowed
};

/// The copper rows of broken_strand_table.
inline constexpr std::array broken_strand_limits{
    broken_strand_row{awg(24), awg(14), 19, 19, 2, 0},       broken_strand_row{awg(12), awg(10), 37, 37, 4, 0},
    broken_strand_row{awg(8), awg(4), 133, 133, 6, 6},       broken_strand_row{awg(2), awg(1), 665, 817, 6, 6},
    broken_strand_row{aught(1), aught(2), 1045, 1330, 6, 6}, broken_strand_row{aught(3), aught(3), 1665, 1665, 6, 6},
    broken_strand_row{aught(4), aught(4), 2109, 2109, 6, 6},
};

/// Whether a copper termination passes with so many broken strands. A size between two rows counts as the smaller
/// row's, which allows no more. The rule is that of aircraft: much stricter than what heat asks for at 4/0.
/// @param size of the cable @param broken number of broken strands, 0 or above
/// @throws out_of_range_error; missing_data_error for a size outside 24 AWG to 4/0 @see broken_strand_table
[[nodiscard]] inline termination_acceptance broken_strand_acceptance_of(const conductor_size& size, int broken)
{
    constexpr double rounding = 1.0 + 1e-9;
    require_within(broken, 0.0, std::numeric_limits<int>::max(), "broken strands");
    const broken_strand_row* row = nullptr;
    for (const broken_strand_row& next : broken_strand_limits)
        if (next.smallest.area() <= rounding * size.area()) row = &next;
    if (row == nullptr || size.area() > rounding * broken_strand_limits.back().largest.area())
        throw missing_data_error("conductor size", si_text(size.area()), "24 AWG to 4/0");
    termination_acceptance out{broken <= row->broken && row->broken > 0
                                   ? static_cast<double>(broken) / row->broken
                                   : (broken > row->broken ? 1.0 + broken - row->broken : 0.0),
                               broken <= row->broken,
                               false,
                               {}};
    out.basis.add(broken_strand_table);
    return out;
}

/// Share by which a joint may lie above the lowest of its like; see similar_joints_rule.
inline constexpr double similar_joints_margin = 0.5;

/// Whether a joint is as good as others of its kind under the same load: its reading against 1.5 times the lowest.
/// @param reading of the joint [ohm], 0 or above @param lowest reading among its like [ohm], above 0
/// @throws not_finite_error, out_of_range_error @see similar_joints_rule
[[nodiscard]] inline termination_acceptance similar_joint_acceptance_of(resistance reading, resistance lowest)
{
    require_not_negative(reading, "resistance reading");
    const resistance allowed = (1.0 + similar_joints_margin) * require_positive(lowest, "lowest reading");
    const double used = reading / require_finite(allowed, "allowed resistance");
    termination_acceptance out{std::min(used, std::numeric_limits<double>::max()), reading <= allowed, false, {}};
    out.basis.add(similar_joints_rule);
    return out;
}

}  // namespace weldloop
