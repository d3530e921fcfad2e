#include <limits>

#include <gtest/gtest-spi.h>
#include <gtest/gtest.h>

#include "support/near.hpp"

TEST(NearRel, AcceptsWithinTheShareOfTheExpected)
{
    EXPECT_NEAR_REL(101.0, 100.0, 0.011);
    EXPECT_NEAR_REL(-99.0, -100.0, 0.011);
    EXPECT_NEAR_REL(0.0, 0.0, 0.0);
}

TEST(NearRel, RefusesBeyondItAndSaysByHowMuch)
{
    EXPECT_NONFATAL_FAILURE(EXPECT_NEAR_REL(102.0, 100.0, 0.01), "relative error 0.02, allowed 0.01");
    EXPECT_NONFATAL_FAILURE(EXPECT_NEAR_REL(-100.0, 100.0, 0.01), "relative error 2");
}

TEST(NearRel, NeverAcceptsNan)
{
    EXPECT_NONFATAL_FAILURE(EXPECT_NEAR_REL(std::numeric_limits<double>::quiet_NaN(), 1.0, 1.0), "nan");
    EXPECT_NONFATAL_FAILURE(EXPECT_NEAR_REL(1.0, std::numeric_limits<double>::quiet_NaN(), 1.0), "nan");
    EXPECT_NONFATAL_FAILURE(EXPECT_NEAR_REL(std::numeric_limits<double>::infinity(), 1.0, 1e9), "inf");
}
