#pragma once
/// @file
/// What cleaning, or a jaw that bites, makes of a surface.

#include <array>
#include <string_view>

#include <weldloop/core/band.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/material/surface_state.hpp>

namespace weldloop {

/// What each treatment changes.
inline constexpr source surface_treatment_judgement{
    "what wiping, twisting, brushing, grinding and a serrated jaw make of each surface state", "2026",
    "judgement on common practice: grind bright where the clamp goes; a brush takes rust and leaves scale, spatter and "
    "paint; teeth pierce paint and scale",
    source_kind::judgement};
/// Abrasion of copper.
inline constexpr source abrasion_judgement{
    "wire brush or emery on copper, joined within minutes: 0.1, 0.3, 0.8 of the resistance before",
    "2026",
    {},
    source_kind::judgement};

/// Ratio of the resistance of a copper joint after abrasion to that before; see abrasion_judgement.
inline constexpr band<double> abrasion_of_copper{0.1, 0.3, 0.8};

/// What is done to a surface.
enum class surface_treatment {
    wiped,          ///< grease taken off with a rag and solvent
    twisted,        ///< the clamp turned to and fro under its force
    wire_brushed,   ///< wire brush or coarse abrasive by hand
    ground_bright,  ///< ground or filed to bright metal
    serrated_jaw,   ///< nothing is cleaned: the jaw has sharp teeth and the force to press them in
};

/// Every treatment, in the order of the enumeration.
inline constexpr std::array all_surface_treatments{surface_treatment::wiped, surface_treatment::twisted,
                                                   surface_treatment::wire_brushed, surface_treatment::ground_bright,
                                                   surface_treatment::serrated_jaw};

/// The words for a treatment, as a report prints them.
[[nodiscard]] constexpr std::string_view to_text(surface_treatment t)
{
    switch (t) {
    case surface_treatment::wiped: return "wiped clean of grease";
    case surface_treatment::twisted: return "clamp twisted under force";
    case surface_treatment::wire_brushed: return "wire-brushed";
    case surface_treatment::ground_bright: return "ground bright";
    case surface_treatment::serrated_jaw: return "serrated jaw";
    }
    return "wiped clean of grease";
}

/// The surface after a treatment. What a treatment does not touch stays as it was.
///
/// Grinding gives clean metal whatever was there, of a galvanized part too: its zinc, the better contact, goes with it.
/// @param before state of the surface @param done what is done to it
/// @see surface_treatment_judgement
[[nodiscard]] constexpr surface_state surface_after(surface_state before, surface_treatment done)
{
    using enum surface_state;
    switch (done) {
    case surface_treatment::wiped: return before == greasy ? clean : before;
    case surface_treatment::twisted: return before == oxidized ? clean : before == light_rust ? oxidized : before;
    case surface_treatment::wire_brushed:
        return before == oxidized     ? clean
               : before == light_rust ? oxidized
               : before == heavy_rust ? light_rust
                                      : before;
    case surface_treatment::ground_bright: return clean;
    case surface_treatment::serrated_jaw:
        return before == mill_scale ? mill_scale_bitten : before == painted_unbroken ? painted_pierced : before;
    }
    return before;
}

}  // namespace weldloop
