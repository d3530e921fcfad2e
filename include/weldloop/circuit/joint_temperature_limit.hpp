#pragma once
/// @file
/// Published temperature limits of joints, by how they are held and what covers them.

#include <array>
#include <optional>
#include <string_view>

#include <weldloop/core/quantities.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/temperature.hpp>

namespace weldloop {

/// @name Sources of joint limits
/// @{

/// Bolted joints and terminals.
inline constexpr source iec_60694_bolted{"IEC 60694", "1996+A1:2000+A2:2001",
                                         "table 3, in air: bolted connections and terminals, bare 90 degC, tinned 105 "
                                         "degC, silvered 115 degC (terminals 105 degC)",
                                         source_kind::standard};
/// Sliding and butt contacts.
inline constexpr source iec_60694_contact{
    "IEC 60694", "1996+A1:2000+A2:2001",
    "table 3, in air: contacts, bare copper or copper alloy 75 degC, tinned 90 degC, silvered 105 degC",
    source_kind::standard};
/// Metal within reach.
inline constexpr source iec_60694_accessible{
    "IEC 60694", "1996+A1:2000+A2:2001",
    "table 3, in air: accessible parts, 70 degC where they are touched in use, 80 degC where not",
    source_kind::standard};
/// Rises of terminals.
inline constexpr source iec_60947_terminals{"IEC 60947-1", "5th edition 2007", "table 2: rise of terminals",
                                            source_kind::memory};
/// Stricter practice for bare bars.
inline constexpr source ieee_bus_practice{
    "IEEE C37.20 family", {}, "bolted bus joints: bare 70 degC, silver or tin 105 degC", source_kind::memory};
/// Older practice for bare bars.
inline constexpr source copper_bar_practice{"Copper for Busbars, CDA publication 22", "2014",
                                            "bare bars and bolted joints: rise of 50 K over 40 degC",
                                            source_kind::memory};
/// @}

/// How a joint is held together.
enum class joint_kind {
    contact,                 ///< pressed or sliding, opened in use: coupling, clamp jaw
    bolted,                  ///< bolted faces: lug palm, strap, bar
    terminal,                ///< a terminal for an outside conductor
    accessible_touched,      ///< no joint: metal that is touched in normal use
    accessible_not_touched,  ///< no joint: metal within reach, not touched in normal use
};

/// What covers its faces.
enum class joint_finish {
    bare,      ///< copper, copper alloy; bolted also aluminium alloy
    tinned,    ///< tin on both faces
    silvered,  ///< silver or nickel on both faces; the worse face counts
};

/// A published limit. The standard states it for air of 40 degC; the limit itself is a temperature, not a rise.
struct joint_temperature_limit_row {
    joint_kind kind;                     ///< how it is held
    std::optional<joint_finish> finish;  ///< none: any
    temperature highest;                 ///< allowed
    temperature_difference rise;         ///< allowed over the air the standard assumes
    const source* from;                  ///< where it stands
};

/// The rows of IEC 60694 table 3 for air. Later editions of the series (IEC 62271-1) should be looked up where a
/// verdict hangs on them.
inline constexpr std::array joint_temperature_limits{
    joint_temperature_limit_row{joint_kind::contact, joint_finish::bare, temperature::celsius(75),
                                in_si<temperature_difference>(35), &iec_60694_contact},
    joint_temperature_limit_row{joint_kind::contact, joint_finish::tinned, temperature::celsius(90),
                                in_si<temperature_difference>(50), &iec_60694_contact},
    joint_temperature_limit_row{joint_kind::contact, joint_finish::silvered, temperature::celsius(105),
                                in_si<temperature_difference>(65), &iec_60694_contact},
    joint_temperature_limit_row{joint_kind::bolted, joint_finish::bare, temperature::celsius(90),
                                in_si<temperature_difference>(50), &iec_60694_bolted},
    joint_temperature_limit_row{joint_kind::bolted, joint_finish::tinned, temperature::celsius(105),
                                in_si<temperature_difference>(65), &iec_60694_bolted},
    joint_temperature_limit_row{joint_kind::bolted, joint_finish::silvered, temperature::celsius(115),
                                in_si<temperature_difference>(75), &iec_60694_bolted},
    joint_temperature_limit_row{joint_kind::terminal, joint_finish::bare, temperature::celsius(90),
                                in_si<temperature_difference>(50), &iec_60694_bolted},
    joint_temperature_limit_row{joint_kind::terminal, joint_finish::tinned, temperature::celsius(105),
                                in_si<temperature_difference>(65), &iec_60694_bolted},
    joint_temperature_limit_row{joint_kind::terminal, joint_finish::silvered, temperature::celsius(105),
                                in_si<temperature_difference>(65), &iec_60694_bolted},
    joint_temperature_limit_row{joint_kind::accessible_touched, std::nullopt, temperature::celsius(70),
                                in_si<temperature_difference>(30), &iec_60694_accessible},
    joint_temperature_limit_row{joint_kind::accessible_not_touched, std::nullopt, temperature::celsius(80),
                                in_si<temperature_difference>(40), &iec_60694_accessible},
};

/// The published limit of a joint in air. Every kind and finish has a row.
/// @param kind how it is held @param finish what covers its faces; of two faces give the worse
/// @see joint_temperature_limits
[[nodiscard]] constexpr const joint_temperature_limit_row& joint_temperature_limit(joint_kind kind, joint_finish finish)
{
    for (const joint_temperature_limit_row& row : joint_temperature_limits)
        if (row.kind == kind && row.finish.value_or(finish) == finish) return row;
    return joint_temperature_limits.front();  // the lowest: for a kind that is none
}

/// Limits recalled from other documents, for comparison: they give no verdict.
struct recalled_joint_limit {
    std::string_view what;  ///< the part
    temperature highest;    ///< in air of 40 degC
    const source* from;     ///< from memory
};

/// See recalled_joint_limit.
inline constexpr std::array recalled_joint_limits{
    recalled_joint_limit{"terminal, bare copper", temperature::celsius(100), &iec_60947_terminals},
    recalled_joint_limit{"terminal, bare brass", temperature::celsius(105), &iec_60947_terminals},
    recalled_joint_limit{"terminal, tinned copper or brass", temperature::celsius(105), &iec_60947_terminals},
    recalled_joint_limit{"terminal, silver or nickel plated", temperature::celsius(110), &iec_60947_terminals},
    recalled_joint_limit{"bolted bus joint, bare copper", temperature::celsius(70), &ieee_bus_practice},
    recalled_joint_limit{"bolted bus joint, silver or tin surfaced", temperature::celsius(105), &ieee_bus_practice},
    recalled_joint_limit{"bare copper bus and bolted joint, continuous", temperature::celsius(90),
                         &copper_bar_practice},
};

}  // namespace weldloop
