#pragma once
/// @file
/// What cools the cable of a gun or torch.

#include <string_view>

namespace weldloop {

/// What carries the heat of a gun's or torch's cable away.
enum class torch_cooling {
    gas,    ///< the air around, as for any lead
    water,  ///< water that runs along the conductor in its hose
};

/// The word for a cooling, as printed and as written in station files.
[[nodiscard]] constexpr std::string_view to_text(torch_cooling c)
{
    return c == torch_cooling::water ? "water" : "gas";
}

}  // namespace weldloop
