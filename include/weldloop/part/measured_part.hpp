#pragma once
/// @file
/// A part that is known only by what was measured on it.

#include <array>
#include <optional>
#include <string>
#include <string_view>

#include <weldloop/core/band.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/temperature.hpp>

namespace weldloop {

/// How the drop of a measured part follows its current.
enum class drop_law {
    ohmic,     ///< in proportion
    constant,  ///< the same at any current, as brushes and sliding contacts have it
};

/// The word for a law of the drop, as printed and in station files.
[[nodiscard]] constexpr std::string_view to_text(drop_law l)
{
    return l == drop_law::ohmic ? "ohmic" : "constant";
}
/// All of them.
inline constexpr std::array drop_laws{drop_law::ohmic, drop_law::constant};

/// A slip ring, a chain, somebody's patent coupling: its drop at one current, and where it is known how much heat it
/// holds and gives off.
struct measured_part {
    std::string name = {};                    ///< empty: its word and place
    std::string word = {};                    ///< what it is, as printed; empty: "measured part"
    band<voltage> drop;                       ///< [V] measured, above 0
    weldloop::current at;                     ///< [A] at which it was, above 0
    drop_law law = drop_law::ohmic;           ///< in a stray way always reckoned ohmic
    std::optional<temperature> limit = {};    ///< its highest, if it is stated
    std::optional<weldloop::mass> mass = {};  ///< [kg] above 0, of metal like steel
    std::optional<area> cooling_area = {};    ///< [m2] above 0; left out: its temperature stays unknown
};

}  // namespace weldloop
