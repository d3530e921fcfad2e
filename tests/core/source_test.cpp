// Sources, their list, and the range flags.
#include <array>
#include <set>
#include <stdexcept>
#include <string>
#include <string_view>
#include <utility>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <weldloop/core/source.hpp>

namespace wl = weldloop;

namespace {
constexpr wl::source handbook{"Handbook", "3rd edition", "table 2", wl::source_kind::handbook};
constexpr wl::source guess{"a guess", {}, {}, wl::source_kind::judgement};
constexpr int flag_count = 11;
}  // namespace

TEST(Source, PrintsDocumentEditionPlaceAndKind)
{
    EXPECT_EQ(wl::to_text(handbook), "Handbook, 3rd edition, table 2 (handbook)");
    EXPECT_EQ(wl::to_text(guess), "a guess (judgement)");
    EXPECT_EQ(wl::to_text(wl::source{.document = "IEC 1", .place = "4.2", .kind = wl::source_kind::memory}),
              "IEC 1, 4.2 (from memory)");
}

TEST(Source, IsTheSameWhereEveryFieldIs)
{
    const std::string document = "Handbook";  // not the same memory
    const wl::source copy{document, handbook.edition, handbook.place, handbook.kind};
    EXPECT_EQ(copy, handbook);
    for (const wl::source& other : {wl::source{"Handbook 2", "3rd edition", "table 2", wl::source_kind::handbook},
                                    wl::source{"Handbook", "4th edition", "table 2", wl::source_kind::handbook},
                                    wl::source{"Handbook", "3rd edition", "table 3", wl::source_kind::handbook},
                                    wl::source{"Handbook", "3rd edition", "table 2", wl::source_kind::memory},
                                    // the same printed text from other fields
                                    wl::source{"Handbook, 3rd edition", {}, "table 2", wl::source_kind::handbook}})
        EXPECT_NE(other, handbook) << wl::to_text(other);
}

TEST(Source, EveryKindAndFlagHasWordsOfItsOwn)
{
    std::set<std::string_view> kinds, flags;
    for (const wl::source_kind kind :
         {wl::source_kind::standard, wl::source_kind::handbook, wl::source_kind::paper, wl::source_kind::derived,
          wl::source_kind::common_practice, wl::source_kind::judgement, wl::source_kind::memory})
        kinds.insert(wl::to_text(kind));
    EXPECT_EQ(kinds.size(), 7U);
    for (int i = 0; i < flag_count; ++i) flags.insert(wl::to_text(static_cast<wl::range_flag>(i)));
    EXPECT_EQ(flags.size(), static_cast<std::size_t>(flag_count));
    EXPECT_FALSE(flags.contains("outside its range"));  // what an unknown flag would print
}

TEST(Basis, NamesASourceOnceInTheOrderOfUse)
{
    wl::basis b;
    EXPECT_TRUE(b.sources().empty());
    b.add(guess).add(handbook).add(guess);
    EXPECT_THAT(b.sources(), testing::ElementsAre(&guess, &handbook));
    EXPECT_TRUE(b.has(wl::source_kind::judgement));
    EXPECT_FALSE(b.has(wl::source_kind::memory));
}

TEST(Basis, TakesOverAnother)
{
    wl::basis a, b;
    a.add(guess).add(wl::range_flag::relaxation_range);
    b.add(handbook).add(guess).add(wl::range_flag::convection_range).add(a);
    EXPECT_THAT(b.sources(), testing::ElementsAre(&handbook, &guess));
    EXPECT_THAT(b.flags(), testing::ElementsAre(wl::range_flag::convection_range, wl::range_flag::relaxation_range));
    EXPECT_TRUE(b.has(wl::range_flag::relaxation_range));
    EXPECT_FALSE(b.has(wl::range_flag::spots_melting));
    EXPECT_THAT(a.flags(), testing::ElementsAre(wl::range_flag::relaxation_range));
    b.add(b);  // nothing new in itself
    EXPECT_EQ(b.sources().size(), 2U);
}

TEST(Basis, HoldsAnyNumberInTheOrderOfFirstUse)
{
    static constexpr std::array<wl::source, 100> many{};
    wl::basis b;
    for (std::size_t i = 0; i < many.size(); ++i) {
        b.add(many[i]).add(many[i / 2]);
        ASSERT_EQ(b.sources().size(), i + 1);
        const wl::basis copy = b;
        for (std::size_t k = 0; k <= i; ++k) ASSERT_EQ(copy.sources()[k], &many[k]);
    }
    wl::basis all;
    all.add(many[99]).add(b);
    ASSERT_EQ(all.sources().size(), many.size());
    EXPECT_EQ(all.sources()[0], &many[99]);
    EXPECT_EQ(all.sources()[99], &many[98]);
    EXPECT_FALSE(all.has(wl::source_kind::paper));
    static constexpr wl::source paper{.document = "last of many", .kind = wl::source_kind::paper};
    EXPECT_TRUE(all.add(paper).has(wl::source_kind::paper));
}

TEST(Basis, BeginsWithNewOnesAndGoesOnWithAny)
{
    static constexpr std::array<wl::source, 20> many{};
    wl::basis b;
    b.add_new(many[0], many[1], many[2]).add_new(many[3]).add(many[1]).add(many[4]).add(many[4]).add(many[0]);
    ASSERT_EQ(b.sources().size(), 5U);
    for (std::size_t k = 0; k < 5; ++k) EXPECT_EQ(b.sources()[k], &many[k]);
    for (std::size_t k = 5; k < 15; ++k) b.add_new(many[k]);
    b.add_new(many[15], many[16], many[17]);  // more than lie in the value itself
    b.add_new(many[18]).add(many[2]).add(many[19]);
    ASSERT_EQ(b.sources().size(), many.size());
    wl::basis moved = b, taken;
    taken = std::move(moved);
    for (std::size_t k = 0; k < many.size(); ++k) EXPECT_EQ(taken.sources()[k], &many[k]);
}

TEST(Basis, EveryFlagIsKeptApart)
{
    for (int i = 0; i < flag_count; ++i) {
        wl::basis b;
        b.add(static_cast<wl::range_flag>(i));
        for (int k = 0; k < flag_count; ++k) EXPECT_EQ(b.has(static_cast<wl::range_flag>(k)), i == k);
        EXPECT_EQ(b.flags().size(), 1U);
    }
}
