#pragma once
/// @file
/// The map of a clamp over current and surface, and its thresholds: the result types of grip_map_of() and
/// grip_threshold_of().

#include <cstddef>
#include <vector>

#include <weldloop/core/quantities.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/life/grip_forecast.hpp>

namespace weldloop {

/// A map of (current, surface factor) into what a clamp comes to.
struct grip_map {
    std::vector<current> currents = {};        ///< [A] columns, rising
    std::vector<double> surface_factors = {};  ///< rows, rising: contact resistance over that of clean metal
    std::vector<grip_outlook> cells = {};      ///< row by row: cells[row * currents.size() + column]
    duration horizon = {};                     ///< hours of shift the map is made for [s]
    weldloop::basis basis = {};                ///< sources and left ranges

    /// What the clamp comes to. @param row of surface_factors @param column of currents; both within the map
    [[nodiscard]] grip_outlook at(std::size_t row, std::size_t column) const
    {
        return cells.at(row * currents.size() + column);
    }
};

/// What ends the steady states of a clamp as its current rises.
enum class grip_bound {
    fold,       ///< heat grows faster than what leaves: the steady states turn back
    tempering,  ///< the spring reaches the tempering limit of its wire
    melting,    ///< the jaws reach the melting point of the softer metal
    spots,      ///< the spots reach the melting drop of their metals: they weld and burn
    lead,       ///< the lead melts
    beyond,     ///< none of these up to the highest current looked at
};

/// The last steady state of a clamp at a stated remaining force and surface.
struct grip_threshold {
    current largest = {};                   ///< [A] largest current with a steady state
    temperature jaw = {};                   ///< period mean at that current
    temperature spring = {};                ///< period mean at that current; the body's without a spring
    grip_bound bound = grip_bound::beyond;  ///< what ends the steady states there
    weldloop::basis basis = {};             ///< sources and left ranges
};

/// One point of a derating curve.
struct grip_derating {
    double duty_share = 1.0;  ///< share of the period under current
    current largest = {};     ///< [A] largest current that holds at that duty
};

}  // namespace weldloop
