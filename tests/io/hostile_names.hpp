#pragma once
/// @file
/// Names that hold marks of a page, quotes and every character that steers, for the tests of what is written.

#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "io/example_stations.hpp"

namespace weldloop::test {

/// Every character that is not seen and turns or breaks the text around it (Unicode 15, general categories Cc, Zl, Zp
/// and the bidirectional controls of UAX 9).
inline const std::vector<std::string>& steering_characters()
{
    static const std::vector<std::string> all = [] {
        std::vector<std::string> out{"\xD8\x9C"};  // U+061C
        for (const char last : {'\x8E', '\x8F', '\xA8', '\xA9', '\xAA', '\xAB', '\xAC', '\xAD', '\xAE'})
            out.push_back(std::string("\xE2\x80") + last);  // U+200E, U+200F, U+2028 to U+202E
        for (const char last : {'\xA6', '\xA7', '\xA8', '\xA9'})
            out.push_back(std::string("\xE2\x81") + last);  // U+2066 ff.
        for (char c = 1; c < ' '; ++c) out.emplace_back(1, c);
        out.emplace_back("\x7F");
        out.emplace_back("\xC2\x85");  // next line, of the second set
        return out;
    }();
    return all;
}

inline std::string steering_name()
{
    std::string out = "lead <script>alert(\"1\")</script><img src=x onerror='2'> & ";
    for (const std::string& c : steering_characters()) out += "a" + c + "b";
    return out;
}

/// The station with a second clamp, it, its leads and its first way under that name.
inline assessed_station named(std::string_view name)
{
    described_station d = read_described_station(example_file("gate_two_clamps.toml"));
    d.station.name = name;
    for (path_part& p : d.station.path)
        if (cable* lead = std::get_if<cable>(&p)) lead->name = std::string(name) + lead->name;
    d.station.ways[0].name = name;
    return answered(d);
}

/// The first character in a text that steers, ends of lines apart; empty: none.
inline std::string steering_in(std::string_view text)
{
    for (const std::string& c : steering_characters())
        if (c != "\n" && text.find(c) != std::string_view::npos) return c;
    return {};
}

}  // namespace weldloop::test
