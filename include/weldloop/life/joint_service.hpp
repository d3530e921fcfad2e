#pragma once
/// @file
/// What the joints of a circuit live in: shifts and rests, cold starts, the air, and being moved.

#include <array>
#include <string_view>

#include <weldloop/core/band.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/require.hpp>
#include <weldloop/core/source.hpp>

namespace weldloop {

/// The air that joints corrode in.
enum class joint_air {
    dry,   ///< heated shop
    damp,  ///< unheated shop, under a roof outdoors, condensation
    salt,  ///< at the sea, de-icing salt, pickling or galvanizing next door
};

/// Every air, from the mildest.
inline constexpr std::array all_joint_airs{joint_air::dry, joint_air::damp, joint_air::salt};

/// The word for an air, as printed and as written in station files.
[[nodiscard]] constexpr std::string_view to_text(joint_air a)
{
    switch (a) {
    case joint_air::dry: return "dry";
    case joint_air::damp: return "damp";
    case joint_air::salt: return "salt";
    }
    return "dry";
}

/// How much joints are moved.
enum class joint_motion {
    still,   ///< nothing moves them
    moved,   ///< leads are carried and dragged about now and then
    shaken,  ///< on a moving fixture, a robot or a vibrating machine
};

/// Every motion, from the mildest.
inline constexpr std::array all_joint_motions{joint_motion::still, joint_motion::moved, joint_motion::shaken};

/// The word for a motion, as printed and as written in station files.
[[nodiscard]] constexpr std::string_view to_text(joint_motion m)
{
    switch (m) {
    case joint_motion::still: return "still";
    case joint_motion::moved: return "moved";
    case joint_motion::shaken: return "shaken";
    }
    return "still";
}

/// Loss of bare copper by the air.
inline constexpr source copper_corrosion_classes{
    "ISO 9223", "2012",
    "first-year loss of copper by class: C1 up to 0.1 um, C2 to 0.6, C3 to 1.3, C4 to 2.8, C5 to 5.6 um a year; dry "
    "stands for C1, damp for C2 and C3, salt for C4 and C5",
    source_kind::memory};

/// Copper lost by the air [m/s] from the mild case to the harsh one: the classes' bounds and a value between.
/// @see copper_corrosion_classes
[[nodiscard]] constexpr band<speed> corrosion_speed(joint_air a)
{
    constexpr double um_a_year = 1e-6 / (365.25 * 24.0 * 3600.0);
    const auto of = [](double low, double typical, double high) {
        return band<speed>{in_si<speed>(low * um_a_year), in_si<speed>(typical * um_a_year),
                           in_si<speed>(high * um_a_year)};
    };
    switch (a) {
    case joint_air::dry: return of(0.0, 0.05, 0.1);
    case joint_air::damp: return of(0.1, 0.6, 1.3);
    case joint_air::salt: return of(1.3, 2.8, 5.6);
    }
    return of(1.3, 2.8, 5.6);
}

/// Small slips of a joint's faces.
inline constexpr source joint_slips{
    "small slips of a joint that moves with its lead: 10 an hour where leads are carried about, 1000 where a machine "
    "shakes them",
    "2026",
    {},
    source_kind::judgement};

/// Slips an hour of shift [1/h]. @param m what moves the joint @see joint_slips
[[nodiscard]] constexpr double slips_an_hour(joint_motion m)
{
    switch (m) {
    case joint_motion::still: return 0.0;
    case joint_motion::moved: return 10.0;
    case joint_motion::shaken: return 1000.0;
    }
    return 1000.0;
}

/// What joints live in. Times but `rest` are hours of shift: the clock while people work, arc on or off.
struct joint_service {
    duration shift = in_si<duration>(8.0 * 3600.0);  ///< [s] of one shift, above 0
    duration rest = in_si<duration>(16.0 * 3600.0);  ///< [s] by the clock between two shifts, 0 or above, all cold
    double starts = 2.0;                             ///< number in a shift from cold, 0 to 1000
    joint_air air = joint_air::dry;                  ///< what they corrode in
    joint_motion motion = joint_motion::still;       ///< how much they are moved
};

namespace detail {
inline void require_joint_service(const joint_service& s)
{
    constexpr double most_starts = 1000.0;
    require_positive(s.shift, "shift");
    require_not_negative(s.rest, "rest between shifts");
    require_within(s.starts, 0.0, most_starts, "starts of a shift");
}
}  // namespace detail

}  // namespace weldloop
