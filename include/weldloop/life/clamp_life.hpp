#pragma once
/// @file
/// How long a clamp goes on holding, what takes its grip, what would keep it, and when to look at it again.

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include <weldloop/core/fraction.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/life/clamp_use.hpp>
#include <weldloop/life/grip_forecast.hpp>
#include <weldloop/part/work_clamp.hpp>

namespace weldloop {

/// Order of the changes that keep a grip.
inline constexpr source clamp_cure_order{"changes that keep a grip, by what they take: cleaning the work, letting it "
                                         "cool, less current, a larger clamp of the "
                                         "make, another kind",
                                         "2026",
                                         {},
                                         source_kind::judgement};

/// Hours of shift until something happens to a clamp, from the poor case to the mild one; a case it does not happen to
/// within the horizon is empty.
struct clamp_hours {
    std::optional<duration> poor = {};     ///< [s] large resistance, harsher relaxation
    std::optional<duration> typical = {};  ///< [s] not before `poor`
    std::optional<duration> mild = {};     ///< [s] not before `typical`
};

/// Something up to which a clamp keeps its grip, in both cases; a case that keeps it at no value is empty.
template <class Quantity>
struct clamp_bearing {
    std::optional<Quantity> poor = {};     ///< keeps it in the poor case too
    std::optional<Quantity> typical = {};  ///< typically keeps it
};

/// What keeps a grip.
enum class clamp_cure_kind {
    clean_surface,  ///< bright metal under the jaws
    cooler_work,    ///< work no hotter than `work`
    less_current,   ///< no more than `amps`
    next_size,      ///< `clamp`, the smallest of its make that keeps it
    other_kind,     ///< `clamp` of the same rating
};

/// The word for a cure, as printed and in JSON.
[[nodiscard]] constexpr std::string_view to_text(clamp_cure_kind k)
{
    switch (k) {
    case clamp_cure_kind::clean_surface: return "clean surface";
    case clamp_cure_kind::cooler_work: return "cooler work";
    case clamp_cure_kind::less_current: return "less current";
    case clamp_cure_kind::next_size: return "next size";
    case clamp_cure_kind::other_kind: return "other kind";
    }
    return "clean surface";
}

/// One change that alone typically keeps the grip over the horizon.
struct clamp_cure {
    clamp_cure_kind kind = clamp_cure_kind::clean_surface;  ///< which
    std::string clamp = {};                                 ///< name of the clamp to take; empty where it stays
    std::optional<current> amps = {};                       ///< of less_current: the largest that does
    std::optional<temperature> work = {};                   ///< of cooler_work: the hottest that does
    fraction grip_left = 1.0;                               ///< with it, typically
    fraction grip_left_poor = 1.0;                          ///< with it, in the poor case
    bool keeps_poor = false;                                ///< it keeps the grip in the poor case too
};

/// What there is to say of a clamp's life.
struct clamp_life {
    std::string name = {};                  ///< of the clamp
    duration horizon = {};                  ///< hours of shift looked ahead [s]
    clamp_hours quarter_lost = {};          ///< of the grip it has now
    clamp_hours cable_not_held = {};        ///< until it no longer holds 5 m of its lead with a coupling by friction
    std::optional<force> cable_needs = {};  ///< [N] at each jaw for that; empty for leads outside 16 to 185 mm2
    grip_causes causes = {};                ///< what raised its resistance, shares, typical
    clamp_bearing<current> largest_current = {};   ///< at this duty that keeps the grip
    clamp_bearing<fraction> largest_duty = {};     ///< of this period at this current that keeps it
    clamp_bearing<temperature> hottest_work = {};  ///< that keeps it, at most hottest_work_asked
    std::vector<clamp_cure> cures = {};  ///< each alone; by clamp_cure_order; empty if even the poor case keeps its
                                         ///< grip, or nothing listed does
    std::string buy = {};                ///< the clamp to buy: the smallest of its make that keeps its grip in the
                                         ///< poor case, this one if it does, else the other kind; empty: none
    std::optional<duration> look_again = {};  ///< [s] when a poor case may have lost a quarter or dropped its cable;
                                              ///< empty: not within the horizon
    grip_forecast forecast = {};              ///< what it rests on
    weldloop::basis basis = {};               ///< sources

    /// Whether it keeps its grip over the horizon in the poor case too.
    [[nodiscard]] bool keeps_poor() const { return !look_again; }
};

/// Hottest work a clamp is asked for.
inline constexpr temperature hottest_work_asked = temperature::celsius(400.0);

/// How long a clamp goes on holding as it stands now, and what would keep it.
///
/// It keeps its grip where it loses less than a quarter of the force it has now over the horizon, still holds its
/// cable, and finds rest below all limits without molten spots. Times come from grip_over_time(); the largest current,
/// duty and work temperature by halving on marches of it, to 1 %. Some hundred marches.
/// @param use the clamp on its work, its lead, load, air, horizon and service
/// @throws as grip_over_time() @see clamp_cure_order, quarter_grip_judgement, work_clamp_holding_test
[[nodiscard]] clamp_life clamp_life_of(const clamp_use& use);

/// One clamp of several side by side.
struct clamp_life_row {
    std::string name = {};                            ///< of the clamp
    fraction grip_left = 1.0;                         ///< over the horizon, typical
    fraction grip_left_poor = 1.0;                    ///< the same in the poor case
    clamp_hours quarter_lost = {};                    ///< of its grip when new
    clamp_hours cable_not_held = {};                  ///< see clamp_life
    grip_outlook outlook = grip_outlook::holds;       ///< typical
    grip_outlook outlook_poor = grip_outlook::holds;  ///< poor
};

/// Kinds of clamp side by side, each new in the place of one. A lug is never opened, whatever `use` says: it stays
/// where it is.
/// @param clamps to compare @param use the place, its own clamp left out @throws as grip_over_time()
[[nodiscard]] std::vector<clamp_life_row> compare_clamp_lives(std::span<const work_clamp> clamps, const clamp_use& use);

}  // namespace weldloop

#ifndef WELDLOOP_BODIES_APART
#include <weldloop/life/clamp_life_body.hpp>
#endif
