// Whole numbers as factors of quantities, and what must not be an expression at all.
#include <concepts>

#include <gtest/gtest.h>

#include <weldloop/core/literals.hpp>
#include <weldloop/core/quantities.hpp>

using namespace weldloop;
using namespace weldloop::literals;

namespace {

template <class A, class B>
concept addable = requires(A a, B b)
{
    a + b;
};
template <class A, class B>
concept subtractable = requires(A a, B b)
{
    a - b;
};
template <class A, class B>
concept ordered = requires(A a, B b)
{
    a < b;
}
|| requires(A a, B b)
{
    a >= b;
};
template <class A, class B>
concept comparable = requires(A a, B b)
{
    a == b;
}
|| requires(A a, B b)
{
    a != b;
};
template <class A, class B>
concept multipliable = requires(A a, B b)
{
    a* b;
};

}  // namespace

TEST(QuantityOperators, WholeNumbersAndFloatsAreFactors)
{
    static_assert(std::same_as<decltype(3 * 1_min), duration>);
    EXPECT_EQ((3 * 1_min).value(), 180.0);
    EXPECT_EQ((1_min * 3U).value(), 180.0);
    EXPECT_EQ((7_V / 2).value(), 3.5);  // no division of whole numbers
    EXPECT_EQ((2.5F * 2_A).value(), 5.0);
    const resistance r = 6_V / (3L * 1_A);
    EXPECT_EQ(r.value(), 2.0);
    const per_length p = 1 / 4_m;
    EXPECT_EQ(p.value(), 0.25);
    const int passes = 4;
    const double x = 0.5;
    EXPECT_EQ((passes * (x * 1_A)).value(), 2.0);
    static_assert(!multipliable<bool, current>);
}

TEST(QuantityOperators, TwoKindsHaveNoSumAndNoOrder)
{
    static_assert(addable<current, current> && !addable<current, voltage> && !addable<energy, torque>);
    static_assert(subtractable<length, length> && !subtractable<length, area>);
    static_assert(ordered<current, current> && !ordered<current, voltage>);
    static_assert(comparable<force, force> && !comparable<force, pressure>);
    static_assert(!addable<current, int> && !ordered<current, int>);
    EXPECT_LT(1_A, 2_A);
}
