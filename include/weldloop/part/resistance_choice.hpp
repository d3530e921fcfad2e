#pragma once
/// @file
/// Which of a conductor's two resistances is meant: as it is usually bought, or as the standard still allows it.

#include <string_view>

#include <weldloop/core/source.hpp>

namespace weldloop {

/// What a maximum is over the nominal value.
inline constexpr source astm_resistance_limit{"ASTM B172", "2001a", "resistance at most 2 % above nominal",
                                              source_kind::memory};
/// Share of resistance allowed above nominal; see astm_resistance_limit.
inline constexpr double astm_resistance_margin = 0.02;

/// Which of a conductor's two resistances is meant.
enum class resistance_choice {
    nominal,           ///< of its metal area and the lay of its strands: what is usually bought
    standard_maximum,  ///< the highest the standard allows: what may be bought
};

/// The word for a choice. @param c the choice
[[nodiscard]] constexpr std::string_view to_text(resistance_choice c)
{
    return c == resistance_choice::nominal ? "nominal" : "highest";
}

}  // namespace weldloop
