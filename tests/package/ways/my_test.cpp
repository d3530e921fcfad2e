// my_test.cpp
#include <gmock/gmock.h>
#include <weldloop/test/matchers.hpp>
#include <weldloop/weldloop.hpp>

using namespace weldloop::literals;

TEST(Lead, LosesWhatOhmSays)
{
    EXPECT_THAT(2_mohm * 180_A, weldloop::test::near_quantity(360_mV, 1_uV));
}
