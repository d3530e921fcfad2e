#pragma once
// A list of public functions, each with any doubles for its arguments: a typed error or a finite result, and an end. A
// function is named once in the list of a target; the first byte of an input chooses it.
#include <cstddef>
#include <cstdint>
#include <span>
#include <string_view>
#include <tuple>
#include <type_traits>
#include <utility>

#include <weldloop/core/error.hpp>

#include "any_argument.hpp"
#include "property.hpp"

namespace fuzz {

template <class R, class... A>
void call(std::string_view name, R (*function)(A...), input& in)
{
    // in braces, so that arguments are made from left to right
    std::tuple<typename stored<std::remove_cvref_t<A>>::type...> arguments{
        made<typename stored<std::remove_cvref_t<A>>::type>(in)...};
    const auto result = std::apply([&](const auto&... a) { return function(a...); }, arguments);
    hold(is_finite(result), "the result is finite", name);
}

struct entry {
    std::string_view name;
    void (*feed)(std::string_view name, input& in);
};
template <auto Function>
void feed(std::string_view name, input& in)
{
    call(name, Function, in);
}

constexpr std::size_t most_entries = 256;  // one byte chooses

inline int feed_one(std::span<const entry> entries, const std::uint8_t* data, std::size_t size)
{
    constexpr std::size_t longest = 200;  // bytes: no function takes more
    if (size > longest) return 0;
    input in(data, size);
    const entry& chosen = entries[in.byte() % entries.size()];
    try {
        chosen.feed(chosen.name, in);
    } catch (const weldloop::error&) {
        // typed, as it should be
    }
    return 0;
}

}  // namespace fuzz

/// A function of the library by its name.
#define FED(function)                                                                                                  \
    fuzz::entry                                                                                                        \
    {                                                                                                                  \
#function, &fuzz::feed < &wl::function>                                                                        \
    }
/// One of several of a name.
#define FED_OF(function, ...)                                                                                          \
    fuzz::entry                                                                                                        \
    {                                                                                                                  \
#function, &fuzz::feed < static_cast < __VA_ARGS__>(&wl::function)>                                            \
    }
/// What an object answers, asked by a function that stands in namespace `asked`.
#define FED_BY(function)                                                                                               \
    fuzz::entry                                                                                                        \
    {                                                                                                                  \
#function, &fuzz::feed < &asked::function>                                                                     \
    }
