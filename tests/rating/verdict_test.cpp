// What is said of a part, and of how often.
#include <gtest/gtest.h>

#include <weldloop/rating/verdict.hpp>

using namespace weldloop;

// 1 in 100 is the least that is counted; the ends are said in words, since nothing is quite sure.
TEST(Verdict, CountsCasesOfAHundred)
{
    EXPECT_EQ(cases_text(0.123), "in 12 of 100 such cases");
    EXPECT_EQ(cases_text(0.0), "in fewer than 1 of 100 such cases");
    EXPECT_EQ(cases_text(0.00999), "in fewer than 1 of 100 such cases");
    EXPECT_EQ(cases_text(0.01), "in 1 of 100 such cases");
    EXPECT_EQ(cases_text(0.99), "in 99 of 100 such cases");
    EXPECT_EQ(cases_text(1.0), "in more than 99 of 100 such cases");
}

TEST(Verdict, ThatIsNotJudgedWeighsAsOneWithinItsLimit)
{
    EXPECT_EQ(gravity_of(verdict::not_judged), gravity_of(verdict::within_limit));
    EXPECT_LT(gravity_of(verdict::not_judged), gravity_of(verdict::close_to_limit));
    EXPECT_LT(gravity_of(verdict::may_exceed), gravity_of(verdict::over_limit));
}
