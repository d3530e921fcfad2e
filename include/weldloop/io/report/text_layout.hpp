#pragma once
/// @file
/// Laying out plain text: columns and lines of a given width.

#include <algorithm>
#include <cstddef>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace weldloop::detail {

/// Fills up with spaces on the right; cuts what is longer.
[[nodiscard]] inline std::string left_in(std::string_view text, std::size_t width)
{
    std::string out(text.substr(0, width));
    if (text.size() > width && width > 3) out.replace(width - 3, 3, "...");
    out.append(width - out.size(), ' ');
    return out;
}

/// Fills up with spaces on the left; what is longer stays whole.
[[nodiscard]] inline std::string right_in(std::string_view text, std::size_t width)
{
    return std::string(width - std::min(width, text.size()), ' ').append(text);
}

/// Breaks a text between words so that no line is wider than `width`. A word that is wider than a line is cut.
[[nodiscard]] inline std::vector<std::string> broken(std::string_view text, std::size_t width)
{
    std::vector<std::string> lines;
    std::string line;
    const auto finish = [&] { lines.push_back(std::exchange(line, {})); };
    for (std::size_t at = text.find_first_not_of(' '); at < text.size(); at = text.find_first_not_of(' ', at)) {
        const std::size_t end = std::min(text.find(' ', at), text.size());
        std::string_view word = text.substr(at, end - at);
        at = end;
        if (!line.empty() && line.size() + 1 + word.size() > width) finish();
        for (; word.size() > width; word.remove_prefix(width)) lines.emplace_back(word.substr(0, width));
        if (!line.empty()) line.push_back(' ');
        line.append(word);
    }
    if (!line.empty()) finish();
    return lines;
}

}  // namespace weldloop::detail
