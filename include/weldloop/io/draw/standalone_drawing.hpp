#pragma once
/// @file
/// A drawing as a file of its own.

#include <cstddef>
#include <string>
#include <string_view>

#include <weldloop/io/draw/drawing_style.hpp>

namespace weldloop {

/// A drawing with its looks inside and paper under it, to stand as a file or to be shown as a picture.
/// @param svg what a drawing function returned @return empty for an empty drawing
[[nodiscard]] inline std::string standalone_drawing(std::string_view svg)
{
    constexpr std::string_view end_of_description = "</desc>\n";
    const std::size_t described = svg.find(end_of_description);
    if (described == std::string_view::npos) return {};
    const std::size_t rest = described + end_of_description.size();
    std::string out(svg.substr(0, rest));
    out.append("<style>").append(drawing_style).append("</style>\n");
    out.append("<rect width=\"100%\" height=\"100%\" style=\"fill:var(--paper)\"/>\n");
    return out.append(svg.substr(rest));
}

}  // namespace weldloop
