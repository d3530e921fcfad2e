#pragma once
// Arguments of any type made of bytes, and a look into results of any type: so that a public function is named once to
// be fed with everything a double can be.
#include <array>
#include <bit>
#include <cmath>
#include <complex>
#include <cstddef>
#include <cstdint>
#include <limits>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <tuple>
#include <type_traits>
#include <utility>
#include <vector>

#include <weldloop/core/fraction.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/core/source.hpp>
#include <weldloop/core/temperature.hpp>
#include <weldloop/material/metals.hpp>

namespace fuzz {

/// Bytes that are taken one after the other; zeros once they are used up.
class input {
public:
    input(const std::uint8_t* data, std::size_t size) : bytes_(data, size) {}

    [[nodiscard]] std::uint8_t byte() { return at_ < bytes_.size() ? bytes_[at_++] : std::uint8_t{0}; }

    /// One of the numbers that go wrong, one of usual size, or any pattern of 64 bits.
    [[nodiscard]] double number()
    {
        using limits = std::numeric_limits<double>;
        constexpr std::array rare{0.0,
                                  -0.0,
                                  limits::quiet_NaN(),
                                  limits::infinity(),
                                  -limits::infinity(),
                                  limits::max(),
                                  limits::lowest(),
                                  limits::min(),
                                  limits::denorm_min(),
                                  limits::epsilon(),
                                  1.0,
                                  -1.0,
                                  0.5,
                                  1.0 - 0.5 * limits::epsilon(),
                                  1.0 + limits::epsilon(),
                                  1e-150,
                                  1e150,
                                  1e-12};
        const unsigned kind = byte();
        if (kind < rare.size()) return rare[kind];
        if (kind < 224) {  // 1e-12 to 1e12
            const double decades = (byte() + byte() / 256.0) / 256.0 * 24.0 - 12.0;
            return (kind % 8 == 0 ? -1.0 : 1.0) * std::pow(10.0, decades);
        }
        std::uint64_t bits = 0;
        for (int i = 0; i < 8; ++i) bits = bits << 8U | byte();
        return std::bit_cast<double>(bits);
    }

private:
    std::span<const std::uint8_t> bytes_;
    std::size_t at_ = 0;
};

/// How many enumerators a type has that arguments are made of; they are counted from 0.
template <class E>
inline constexpr unsigned words_of = 0;

template <class T>
inline constexpr bool is_quantity = false;
template <class U, class N>
inline constexpr bool is_quantity<boost::units::quantity<U, N>> = true;
template <class T>
inline constexpr bool is_bounded = false;
template <class Rule>
inline constexpr bool is_bounded<weldloop::bounded_number<Rule>> = true;
template <class T>
inline constexpr bool is_array = false;
template <class T, std::size_t N>
inline constexpr bool is_array<std::array<T, N>> = true;
template <class T, template <class...> class Of>
inline constexpr bool is_a = false;
template <class... A, template <class...> class Of>
inline constexpr bool is_a<Of<A...>, Of> = true;

// ---- how many members an aggregate has

struct anything {
    template <class T>
    operator T() const;  // NOLINT: converts to all, only where nothing is evaluated
};
template <class T, std::size_t... I>
constexpr bool takes(std::index_sequence<I...>)
{
    return requires
    {
        T{(static_cast<void>(I), anything{})...};
    };
}
template <class T, std::size_t N = 14>
constexpr std::size_t members_of()
{
    if constexpr (N == 0 || takes<T>(std::make_index_sequence<N>()))
        return N;
    else
        return members_of<T, N - 1>();
}

// ---- arguments

template <class T>
T made(input& in);

struct maker {
    input* in;  // NOLINT: a pointer, as copies of it take from the same bytes
    template <class T>
    operator T() const  // NOLINT: that it converts is its purpose
    {
        return made<T>(*in);
    }
};

/// What stands behind a span that is an argument.
template <class T>
struct stored {
    using type = T;
};
template <class T>
struct stored<std::span<const T>> {
    using type = std::vector<T>;
};

template <class T, std::size_t... I>
T made_of_members(input& in, std::index_sequence<I...>)
{
    return T{(static_cast<void>(I), maker{&in})...};  // in braces, so from left to right
}

template <class T>
T made(input& in)
{
    if constexpr (std::is_same_v<T, double>)
        return in.number();
    else if constexpr (std::is_same_v<T, std::string_view> || std::is_same_v<T, std::string>)
        return {};
    else if constexpr (std::is_same_v<T, bool>)
        return in.byte() % 2 == 1;
    else if constexpr (std::is_same_v<T, unsigned char>)
        return in.byte();
    else if constexpr (std::is_same_v<T, int>) {
        constexpr std::array rare{0, -1, 1, std::numeric_limits<int>::max(), std::numeric_limits<int>::min()};
        const unsigned b = in.byte();
        return b < rare.size() ? rare[b] : static_cast<int>(b);
    } else if constexpr (std::is_enum_v<T>) {
        static_assert(words_of<T> > 0, "say how many words it has");
        return static_cast<T>(in.byte() % words_of<T>);
    } else if constexpr (is_quantity<T>)
        return T::from_value(in.number());
    else if constexpr (std::is_same_v<T, weldloop::temperature>)
        return weldloop::temperature::kelvin(in.number());
    else if constexpr (is_bounded<T>)
        return T(in.number());
    else if constexpr (std::is_same_v<T, weldloop::metal>)
        return weldloop::all_metals[in.byte() % weldloop::all_metals.size()];
    else if constexpr (std::is_same_v<T, const weldloop::source*>)
        return weldloop::all_metals.front().electrical_source;  // some source
    else if constexpr (is_a<T, std::optional>)
        return in.byte() % 2 == 0 ? T{} : T{made<typename T::value_type>(in)};
    else if constexpr (is_a<T, std::vector>) {
        T out;
        for (unsigned left = in.byte() % 5; left > 0; --left) out.push_back(made<typename T::value_type>(in));
        return out;
    } else {
        static_assert(std::is_aggregate_v<T>, "say how it is made");
        return made_of_members<T>(in, std::make_index_sequence<members_of<T>()>());
    }
}

// ---- results

template <class T>
bool is_finite(const T& x);

template <class... A>
bool all_finite(const A&... a)
{
    return (is_finite(a) && ...);
}

template <class T>
bool members_finite(const T& x)
{
    constexpr std::size_t n = members_of<T>();
    static_assert(n <= 9, "too many members to look at");
    if constexpr (n == 0)
        return true;
    else if constexpr (n == 1) {
        const auto& [a] = x;
        return all_finite(a);
    } else if constexpr (n == 2) {
        const auto& [a, b] = x;
        return all_finite(a, b);
    } else if constexpr (n == 3) {
        const auto& [a, b, c] = x;
        return all_finite(a, b, c);
    } else if constexpr (n == 4) {
        const auto& [a, b, c, d] = x;
        return all_finite(a, b, c, d);
    } else if constexpr (n == 5) {
        const auto& [a, b, c, d, e] = x;
        return all_finite(a, b, c, d, e);
    } else if constexpr (n == 6) {
        const auto& [a, b, c, d, e, f] = x;
        return all_finite(a, b, c, d, e, f);
    } else if constexpr (n == 7) {
        const auto& [a, b, c, d, e, f, g] = x;
        return all_finite(a, b, c, d, e, f, g);
    } else if constexpr (n == 8) {
        const auto& [a, b, c, d, e, f, g, h] = x;
        return all_finite(a, b, c, d, e, f, g, h);
    } else {
        const auto& [a, b, c, d, e, f, g, h, i] = x;
        return all_finite(a, b, c, d, e, f, g, h, i);
    }
}

template <class T>
bool is_finite(const T& x)
{
    if constexpr (std::is_floating_point_v<T>)
        return std::isfinite(x);
    else if constexpr (is_quantity<T>)
        return std::isfinite(x.value());
    else if constexpr (std::is_same_v<T, weldloop::temperature>)
        return std::isfinite(x.in_kelvin());
    else if constexpr (is_bounded<T>)
        return std::isfinite(static_cast<double>(x));
    else if constexpr (is_a<T, std::complex>)
        return std::isfinite(x.real()) && std::isfinite(x.imag());
    else if constexpr (is_a<T, std::optional>)
        return !x || is_finite(*x);
    else if constexpr (is_a<T, std::vector> || is_array<T>) {
        for (const auto& one : x)
            if (!is_finite(one)) return false;
        return true;
    } else if constexpr (std::is_same_v<T, weldloop::metal>)
        return true;  // a row of a table
    else if constexpr (std::is_aggregate_v<T> && !std::is_array_v<T>)
        return members_finite(x);
    else
        return true;  // words, counts, texts
}

}  // namespace fuzz
