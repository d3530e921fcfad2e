#pragma once
/// @file
/// A value that was read, with how far off it may be.

namespace weldloop {

/// A reading and its uncertainty. @tparam Q a quantity or a temperature @tparam D the difference of two of them
template <class Q, class D = decltype(Q{} - Q{})>
struct measured {
    Q value{};        ///< what was read, any, or what follows from it
    D uncertainty{};  ///< half of the 95 % interval, 0 or above
};

}  // namespace weldloop
