#pragma once
/// @file
/// What people in the trade write, and the word of this library that they mean. Nothing is taken for what it seems to
/// mean: a text is refused, and the refusal names the word.

#include <algorithm>
#include <array>
#include <span>
#include <string_view>

#include <weldloop/core/source.hpp>

namespace weldloop {

/// The table of trade words.
inline constexpr source trade_words_practice{
    "words and unit signs of the trade beside those of the standards", {}, {}, source_kind::common_practice};

/// Whether two words differ at most in the case of their (ASCII) letters.
[[nodiscard]] constexpr bool same_but_for_case(std::string_view a, std::string_view b)
{
    const auto lower = [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; };
    return std::equal(a.begin(), a.end(), b.begin(), b.end(), [lower](char x, char y) { return lower(x) == lower(y); });
}

namespace detail {

struct trade_word {
    std::string_view written, meant;
};

// One writing may stand for several words; which of them is meant shows in what would be accepted. UTF-8.
inline constexpr std::array trade_words{
    // units
    trade_word{"C", "degC"},
    trade_word{"deg C", "degC"},
    trade_word{"\xC2\xB0"
               "C",
               "degC"},
    trade_word{"\xC2\xB0 C", "degC"},
    trade_word{"celsius", "degC"},
    trade_word{"centigrade", "degC"},
    trade_word{"F", "degF"},
    trade_word{"deg F", "degF"},
    trade_word{"\xC2\xB0"
               "F",
               "degF"},
    trade_word{"\xC2\xB0 F", "degF"},
    trade_word{"fahrenheit", "degF"},
    trade_word{"kelvin", "K"},
    trade_word{"kelvins", "K"},
    trade_word{"amp", "A"},
    trade_word{"amps", "A"},
    trade_word{"ampere", "A"},
    trade_word{"amperes", "A"},
    trade_word{"volt", "V"},
    trade_word{"volts", "V"},
    trade_word{"millivolt", "mV"},
    trade_word{"millivolts", "mV"},
    trade_word{"'", "ft"},
    trade_word{"\xE2\x80\xB2", "ft"},
    trade_word{"\xE2\x80\x99", "ft"},
    trade_word{"foot", "ft"},
    trade_word{"feet", "ft"},
    trade_word{"\"", "in"},
    trade_word{"''", "in"},
    trade_word{"\xE2\x80\xB3", "in"},
    trade_word{"\xE2\x80\x9D", "in"},
    trade_word{"inch", "in"},
    trade_word{"inches", "in"},
    trade_word{"yard", "yd"},
    trade_word{"yards", "yd"},
    trade_word{"metre", "m"},
    trade_word{"metres", "m"},
    trade_word{"meter", "m"},
    trade_word{"meters", "m"},
    trade_word{"millimetre", "mm"},
    trade_word{"millimetres", "mm"},
    trade_word{"millimeter", "mm"},
    trade_word{"millimeters", "mm"},
    trade_word{"sq mm", "mm2"},
    trade_word{"sqmm", "mm2"},
    trade_word{"mm^2", "mm2"},
    trade_word{"mm\xC2\xB2", "mm2"},
    trade_word{"mm sq", "mm2"},
    trade_word{"square mm", "mm2"},
    trade_word{"m\xC2\xB2", "m2"},
    trade_word{"cm\xC2\xB2", "cm2"},
    trade_word{"MCM", "kcmil"},
    trade_word{"gauge", "AWG"},
    trade_word{"ga", "AWG"},
    trade_word{"gage", "AWG"},
    trade_word{"sec", "s"},
    trade_word{"secs", "s"},
    trade_word{"second", "s"},
    trade_word{"seconds", "s"},
    trade_word{"mins", "min"},
    trade_word{"minute", "min"},
    trade_word{"minutes", "min"},
    trade_word{"hr", "h"},
    trade_word{"hrs", "h"},
    trade_word{"hour", "h"},
    trade_word{"hours", "h"},
    trade_word{"percent", "%"},
    trade_word{"per cent", "%"},
    trade_word{"pct", "%"},
    trade_word{"newton", "N"},
    trade_word{"newtons", "N"},
    trade_word{"lb", "lbf"},
    trade_word{"lbs", "lb"},
    trade_word{"lbs", "lbf"},
    trade_word{"pounds", "lb"},
    trade_word{"pounds", "lbf"},
    trade_word{"ft lb", "lbf ft"},
    trade_word{"ft-lb", "lbf ft"},
    trade_word{"ft-lbs", "lbf ft"},
    trade_word{"ft lbs", "lbf ft"},
    trade_word{"ft lbf", "lbf ft"},
    trade_word{"lb ft", "lbf ft"},
    trade_word{"lb-ft", "lbf ft"},
    trade_word{"foot pounds", "lbf ft"},
    trade_word{"in lb", "lbf in"},
    trade_word{"in-lb", "lbf in"},
    trade_word{"in-lbs", "lbf in"},
    trade_word{"in lbs", "lbf in"},
    trade_word{"lb in", "lbf in"},
    trade_word{"inch pounds", "lbf in"},
    trade_word{"N.m", "Nm"},
    trade_word{"N-m", "Nm"},
    trade_word{"N*m", "Nm"},
    trade_word{"N\xC2\xB7m", "Nm"},
    trade_word{"newton metres", "Nm"},
    trade_word{"newton meters", "Nm"},
    trade_word{"ohms", "ohm"},
    trade_word{"\xCE\xA9", "ohm"},
    trade_word{"\xE2\x84\xA6", "ohm"},
    trade_word{"milliohm", "mohm"},
    trade_word{"milliohms", "mohm"},
    trade_word{"m\xCE\xA9", "mohm"},
    trade_word{"m\xE2\x84\xA6", "mohm"},
    trade_word{"microohm", "uohm"},
    trade_word{"microohms", "uohm"},
    trade_word{"micro-ohm", "uohm"},
    trade_word{"micro-ohms", "uohm"},
    trade_word{"\xC2\xB5\xCE\xA9", "uohm"},
    trade_word{"\xCE\xBC\xCE\xA9", "uohm"},
    trade_word{"\xC2\xB5\xE2\x84\xA6", "uohm"},
    trade_word{"\xC2\xB5m", "um"},
    trade_word{"\xCE\xBCm", "um"},
    trade_word{"micron", "um"},
    trade_word{"microns", "um"},
    trade_word{"fpm", "ft/min"},
    trade_word{"ipm", "in/min"},
    trade_word{"inch/min", "in/min"},
    trade_word{"inches/min", "in/min"},
    trade_word{"in/minute", "in/min"},
    trade_word{"mpm", "m/min"},
    trade_word{"m/sec", "m/s"},
    // processes
    trade_word{"MIG", "gmaw"},
    trade_word{"MAG", "gmaw"},
    trade_word{"MIG/MAG", "gmaw"},
    trade_word{"solid wire", "gmaw"},
    trade_word{"stick", "smaw"},
    trade_word{"MMA", "smaw"},
    trade_word{"rod", "smaw"},
    trade_word{"covered electrode", "smaw"},
    trade_word{"TIG", "gtaw"},
    trade_word{"WIG", "gtaw"},
    trade_word{"tungsten", "gtaw"},
    trade_word{"flux core", "fcaw"},
    trade_word{"flux cored", "fcaw"},
    trade_word{"flux-core", "fcaw"},
    trade_word{"flux-cored", "fcaw"},
    trade_word{"cored wire", "fcaw"},
    trade_word{"sub arc", "saw"},
    trade_word{"subarc", "saw"},
    trade_word{"sub-arc", "saw"},
    trade_word{"submerged arc", "saw"},
    // parts
    trade_word{"ground clamp", "work clamp"},
    trade_word{"earth clamp", "work clamp"},
    trade_word{"return clamp", "work clamp"},
    trade_word{"clamp", "work clamp"},
    trade_word{"lead", "cable"},
    trade_word{"welding lead", "cable"},
    trade_word{"electrode holder", "holder"},
    trade_word{"stinger", "holder"},
    trade_word{"connector", "coupling"},
    trade_word{"plug", "coupling"},
    trade_word{"terminal", "lug"},
    trade_word{"table", "plate"},
    trade_word{"torch", "tig torch"},
    trade_word{"work", "workpiece"},
    // supplies, currents, polarities
    trade_word{"CV", "constant voltage"},
    trade_word{"CC", "constant current"},
    trade_word{"AC", "alternating"},
    trade_word{"DC", "direct"},
    trade_word{"DCEP", "electrode positive"},
    trade_word{"DC+", "electrode positive"},
    trade_word{"DCEN", "electrode negative"},
    trade_word{"DC-", "electrode negative"},
    // surfaces and metals
    trade_word{"bright", "clean"},
    trade_word{"bare metal", "clean"},
    trade_word{"shiny", "clean"},
    trade_word{"oily", "greasy"},
    trade_word{"oil", "greasy"},
    trade_word{"zinc", "galvanized"},
    trade_word{"scale", "mill scale"},
    trade_word{"spatter", "spatter-covered"},
    trade_word{"steel", "mild steel"},
    trade_word{"carbon steel", "mild steel"},
    trade_word{"stainless", "stainless steel"},
    trade_word{"EPR", "ethylene-propylene rubber"},
    trade_word{"EPDM", "ethylene-propylene rubber"},
    // keys
    trade_word{"amps", "current"},
    trade_word{"amperage", "current"},
    trade_word{"ambient", "air"},
    trade_word{"temperature", "air"},
    trade_word{"temp", "air"},
};

}  // namespace detail

/// The accepted word that a writing of the trade stands for, whatever its case: "MIG" among processes is "gmaw", "amps"
/// among units "A". Empty if the table has none that would be accepted.
/// @param written what stands there @param accepted what would be taken @see trade_words_practice
[[nodiscard]] constexpr std::string_view trade_meaning(std::string_view written,
                                                       std::span<const std::string_view> accepted)
{
    for (const detail::trade_word& row : detail::trade_words)
        if (same_but_for_case(row.written, written))
            for (const std::string_view word : accepted)
                if (word == row.meant) return word;
    return {};
}

}  // namespace weldloop
