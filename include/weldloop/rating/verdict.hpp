#pragma once
/// @file
/// What is said of a part. Never "safe" or "approved": a verdict names the limit it was held against.

#include <cmath>
#include <string>
#include <string_view>

#include <weldloop/core/fraction.hpp>
#include <weldloop/core/number_text.hpp>

namespace weldloop {

/// The verdicts, in the order of their weight.
enum class verdict {
    within_limit,    ///< below its limit under the stated conditions
    not_judged,      ///< no sourced limit applies, or no current flows; numbers only
    close_to_limit,  ///< above nine tenths of its limit
    may_exceed,      ///< typical value within its limit, 95 % point above it
    over_limit,      ///< typical value above its limit
    spots_melting,   ///< contact spots melting: may weld or burn
    open_circuit,    ///< carries no current
};

/// Weight of a verdict when the weakest part is sought. A part without a sourced limit weighs no more than one within
/// its limit: nothing is known against it.
[[nodiscard]] constexpr int gravity_of(verdict v)
{
    return v == verdict::not_judged ? 0 : static_cast<int>(v);
}

/// Whether a verdict speaks against a part: it is close to a limit or worse.
[[nodiscard]] constexpr bool is_against(verdict v)
{
    return gravity_of(v) >= static_cast<int>(verdict::close_to_limit);
}

/// The words for a verdict.
[[nodiscard]] constexpr std::string_view to_text(verdict v)
{
    switch (v) {
    case verdict::within_limit: return "within limit";
    case verdict::not_judged: return "not judged";
    case verdict::close_to_limit: return "close to limit";
    case verdict::may_exceed: return "may exceed limit";
    case verdict::over_limit: return "over limit";
    case verdict::spots_melting: return "spots melting, may weld or burn";
    case verdict::open_circuit: return "open circuit";
    }
    return "not judged";
}

/// The stable text of a verdict, by which programs name it: "within_limit".
[[nodiscard]] constexpr std::string_view id_text(verdict v)
{
    switch (v) {
    case verdict::within_limit: return "within_limit";
    case verdict::not_judged: return "not_judged";
    case verdict::close_to_limit: return "close_to_limit";
    case verdict::may_exceed: return "may_exceed";
    case verdict::over_limit: return "over_limit";
    case verdict::spots_melting: return "spots_melting";
    case verdict::open_circuit: return "open_circuit";
    }
    return "not_judged";
}

/// A probability as people count: "in 12 of 100 such cases". Ends in words, since none is ever quite nothing or quite
/// sure: "in fewer than 1 of 100 such cases", "in more than 99 of 100 such cases".
[[nodiscard]] inline std::string cases_text(likelihood p)
{
    constexpr double one = 0.01;
    const double share = static_cast<double>(p);
    if (share < one) return "in fewer than 1 of 100 such cases";
    if (share > 1.0 - one) return "in more than 99 of 100 such cases";
    return "in " + number_text(std::round(100.0 * share)) + " of 100 such cases";
}

}  // namespace weldloop
