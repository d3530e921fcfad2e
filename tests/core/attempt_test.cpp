// Questions asked without letting exceptions through.
#include <new>
#include <stdexcept>
#include <string>

#include <gtest/gtest.h>

#include <weldloop/core/attempt.hpp>
#include <weldloop/core/parse.hpp>

namespace wl = weldloop;

TEST(Attempt, GivesWhatTheQuestionGives)
{
    const auto amps = wl::attempt([] { return wl::parse<wl::current>("260 A"); });
    ASSERT_TRUE(amps);
    EXPECT_TRUE(amps.has_answer());
    EXPECT_EQ(amps.failure(), nullptr);
    EXPECT_EQ(amps->value(), 260.0);
    EXPECT_EQ((*amps).value(), 260.0);
    static_assert(noexcept(wl::attempt([] { return wl::parse<wl::current>("260 A"); })));
}

TEST(Attempt, KeepsWhatTheErrorSays)
{
    const auto amps = wl::attempt([] { return wl::parse<wl::current>("260 V"); });
    ASSERT_FALSE(amps);
    EXPECT_EQ(amps.answer(), nullptr);
    const wl::failure& why = *amps.failure();
    EXPECT_EQ(why.id, wl::error_id::bad_text);
    EXPECT_EQ(why.argument, "text");
    EXPECT_NE(why.value.find("\"260 V\""), std::string::npos);
    EXPECT_NE(why.allowed.find("A"), std::string::npos);
    EXPECT_NE(why.text.find("weldloop 103"), std::string::npos);
}

TEST(Attempt, KeepsWhatOthersThrowWithoutAnId)
{
    const auto theirs = wl::attempt([]() -> int { throw std::logic_error("not ours"); });
    ASSERT_FALSE(theirs);
    EXPECT_FALSE(theirs.failure()->id);
    EXPECT_EQ(theirs.failure()->text, "not ours");
    EXPECT_TRUE(theirs.failure()->argument.empty());

    const auto memory = wl::attempt([]() -> int { throw std::bad_alloc(); });
    ASSERT_FALSE(memory);
    EXPECT_EQ(memory.failure()->text, "out of memory");

    const auto odd = wl::attempt([]() -> int { throw 7; });
    ASSERT_FALSE(odd);
    EXPECT_EQ(odd.failure()->text, "unknown error");
}

TEST(Attempt, AsksOnceAndTakesWhatReturnsNothing)
{
    int asked = 0;
    const auto done = wl::attempt([&] { ++asked; });
    EXPECT_TRUE(done);
    EXPECT_EQ(asked, 1);
    const auto failed = wl::attempt([&] {
        ++asked;
        throw wl::out_of_range_error("duty", "120 %", "0 to 100 %");
    });
    ASSERT_FALSE(failed);
    EXPECT_EQ(asked, 2);
    EXPECT_EQ(failed.failure()->value, "120 %");
    EXPECT_EQ(failed.failure()->allowed, "0 to 100 %");
}

TEST(Attempt, CopiesWhatIsReturnedByReference)
{
    std::string held = "gate bench";
    const auto name = wl::attempt([&]() -> const std::string& { return held; });
    held = "changed";
    EXPECT_EQ(*name, "gate bench");
}
