#pragma once
/// @file
/// What lies between two bodies that are pressed together.

#include <array>
#include <cstddef>
#include <optional>
#include <string_view>

#include <weldloop/core/band.hpp>
#include <weldloop/core/source.hpp>

namespace weldloop {

/// Surface states of a work connection, named by what a person sees.
enum class surface_state {
    clean,              ///< bright metal, ground or filed
    oxidized,           ///< light oxide or handling tarnish
    greasy,             ///< oily, otherwise clean
    galvanized,         ///< zinc coat
    light_rust,         ///< flash rust of weeks
    heavy_rust,         ///< rust of years
    mill_scale,         ///< rolling scale, unbroken under a smooth jaw
    mill_scale_bitten,  ///< rolling scale that jaw teeth have cracked
    spatter_covered,    ///< balls of spatter hold the bodies apart
    painted_pierced,    ///< paint, pierced by jaw teeth or a star washer
    painted_unbroken,   ///< paint, whole: no contact
};

/// Every state, in the order of the enumeration.
inline constexpr std::array all_surface_states{
    surface_state::clean,           surface_state::oxidized,          surface_state::greasy,
    surface_state::galvanized,      surface_state::light_rust,        surface_state::heavy_rust,
    surface_state::mill_scale,      surface_state::mill_scale_bitten, surface_state::spatter_covered,
    surface_state::painted_pierced, surface_state::painted_unbroken};

/// The word for a state, as printed and as written in station files.
[[nodiscard]] constexpr std::string_view to_text(surface_state s)
{
    switch (s) {
    case surface_state::clean: return "clean";
    case surface_state::oxidized: return "oxidized";
    case surface_state::greasy: return "greasy";
    case surface_state::galvanized: return "galvanized";
    case surface_state::light_rust: return "light rust";
    case surface_state::heavy_rust: return "heavy rust";
    case surface_state::mill_scale: return "mill scale";
    case surface_state::mill_scale_bitten: return "mill scale, bitten through";
    case surface_state::spatter_covered: return "spatter-covered";
    case surface_state::painted_pierced: return "painted, pierced";
    case surface_state::painted_unbroken: return "painted, unbroken";
    }
    return "clean";
}

/// Multipliers of clean contact resistance: no published table exists, so they are judgement and the user is told.
inline constexpr source surface_state_judgement{"surface-state multipliers, 5/50/95 % points", "2026",
                                                "judgement; anchors: force-law spread 61..434 uohm at 500 N, 378 uohm "
                                                "limit of a new clamp, 5.5 mohm per pierced painted face",
                                                source_kind::judgement};

namespace detail {
// In the order of the enumeration; the last state, unbroken paint, has no row: it does not conduct.
inline constexpr std::array surface_multipliers{
    band<double>{0.3, 1.0, 2.0},      // clean
    band<double>{0.5, 2.0, 8.0},      // oxidized
    band<double>{0.3, 1.1, 3.0},      // greasy
    band<double>{0.2, 0.6, 2.0},      // galvanized
    band<double>{1.0, 5.0, 50.0},     // light rust
    band<double>{5.0, 50.0, 5000.0},  // heavy rust
    band<double>{2.0, 15.0, 200.0},   // mill scale
    band<double>{0.8, 3.0, 20.0},     // mill scale, bitten through
    band<double>{0.8, 4.0, 30.0},     // spatter-covered
    band<double>{2.0, 20.0, 200.0},   // painted, pierced
};
/// Its row; none for what does not conduct.
[[nodiscard]] constexpr const band<double>* multiplier_row(surface_state s)
{
    const auto row = static_cast<std::size_t>(s);
    return row < surface_multipliers.size() ? &surface_multipliers[row] : nullptr;
}
static_assert(surface_multipliers.size() + 1 == all_surface_states.size() &&
              static_cast<std::size_t>(surface_state::painted_unbroken) == surface_multipliers.size());
}  // namespace detail

/// Resistance over that of clean metal at the same force, 5, 50 and 95 % points. Empty for `painted_unbroken`: no
/// contact at all.
///
/// | state                      | 5 % | median | 95 % | kind                                                  |
/// |----------------------------|-----|--------|------|-------------------------------------------------------|
/// | clean                      | 0.3 | 1      | 2    | judgement; the spread of the published force laws     |
/// | greasy                     | 0.3 | 1.1    | 3    | judgement                                             |
/// | oxidized                   | 0.5 | 2      | 8    | judgement                                             |
/// | galvanized                 | 0.2 | 0.6    | 2    | judgement                                             |
/// | light rust                 | 1   | 5      | 50   | judgement                                             |
/// | heavy rust                 | 5   | 50     | 5000 | judgement                                             |
/// | mill scale                 | 2   | 15     | 200  | judgement                                             |
/// | mill scale, bitten through | 0.8 | 3      | 20   | judgement                                             |
/// | spatter-covered            | 0.8 | 4      | 30   | judgement; agrees with few scaled steel points        |
/// | painted, pierced           | 2   | 20     | 200  | judgement; one measured drop lies in its band         |
/// | painted, unbroken          | open | open  | open | judgement; recalled strength of paint                 |
///
/// @param s the state @see surface_state_judgement
[[nodiscard]] constexpr std::optional<band<double>> resistance_multiplier(surface_state s)
{
    const band<double>* const row = detail::multiplier_row(s);
    return row == nullptr ? std::nullopt : std::optional(*row);
}

}  // namespace weldloop
