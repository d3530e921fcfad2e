#pragma once
/// @file
/// What is said of a part. Never "safe" or "approved": a verdict names the limit it was held against.

#include <string_view>

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

}  // namespace weldloop
