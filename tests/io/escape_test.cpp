// Text from elsewhere, made fit for pages and terminals.
#include <string>

#include <gtest/gtest.h>

#include <weldloop/io/report/escape.hpp>
#include <weldloop/io/report/text_layout.hpp>

using namespace weldloop;
using weldloop::detail::broken;

TEST(Escape, LeavesNoMarkOfMarkup)
{
    EXPECT_EQ(markup_escaped("<b a=\"1\" c='2'>&</b>"), "&lt;b a=&quot;1&quot; c=&#39;2&#39;&gt;&amp;&lt;/b&gt;");
    EXPECT_EQ(markup_escaped("\xC3\xA9 \xE2\x82\xAC \xF0\x9F\x94\xA5"), "\xC3\xA9 \xE2\x82\xAC \xF0\x9F\x94\xA5");
}

TEST(Escape, ReplacesWhatIsNoText)
{
    const std::string bad = "\xEF\xBF\xBD";
    EXPECT_EQ(markup_escaped("a\x1b[31m"), "a" + bad + "[31m");
    EXPECT_EQ(markup_escaped(std::string("a\0b", 3)), "a" + bad + "b");
    EXPECT_EQ(markup_escaped("\xC3"), bad);                                // cut short
    EXPECT_EQ(markup_escaped("\xC0\xBC"), bad + bad);                      // '<' written too long
    EXPECT_EQ(markup_escaped("\xE0\x80\xBC"), bad + bad + bad);            // the same in three bytes
    EXPECT_EQ(markup_escaped("\xE0\x9F\xBF"), bad + bad + bad);            // the last that fits in two (RFC 3629, 4)
    EXPECT_EQ(markup_escaped("\xE0\xA0\x80"), "\xE0\xA0\x80");             // the first that needs three
    EXPECT_EQ(markup_escaped("\xF0\x80\x80\xBC"), bad + bad + bad + bad);  // and in four
    // U+2027 is a hyphenation point; separators of lines and paragraphs and marks of direction follow (Unicode 15, UAX
    // 9)
    EXPECT_EQ(markup_escaped("\xE2\x80\xA7"), "\xE2\x80\xA7");
    for (const std::string steers :
         {"\xE2\x80\xA8", "\xE2\x80\xA9", "\xE2\x80\xAA", "\xE2\x80\xAE", "\xE2\x81\xA6", "\xE2\x81\xA9",
          "\xE2\x80\x8E", "\xE2\x80\x8F", "\xD8\x9C", "\xC2\x80", "\xC2\x9F"}) {
        EXPECT_EQ(markup_escaped(steers), bad);
        EXPECT_EQ(printable(steers), "?");
        EXPECT_EQ(plain_ascii(steers), "?");
    }
    EXPECT_EQ(markup_escaped("\xED\xA0\x80"), bad + bad + bad);            // a surrogate
    EXPECT_EQ(markup_escaped("\xF4\x90\x80\x80"), bad + bad + bad + bad);  // beyond Unicode
    EXPECT_EQ(markup_escaped("\xC2\x9B"), bad);                            // a control character of the second set
    EXPECT_EQ(markup_escaped("\xEF\xBF\xBF"), bad);                        // unknown to XML
}

TEST(Escape, GivesATerminalNothingButAscii)
{
    EXPECT_EQ(plain_ascii("a\x1b]0;x\x07 \xC3\xA9\xE2\x82\xAC\xFF\n"), "a?]0;x? ????");
    EXPECT_EQ(printable("a\tb \xC3\xA9"), "a?b \xC3\xA9");
}

TEST(Escape, ShortensByCharacters)
{
    EXPECT_EQ(shortened("abcdef", 6), "abcdef");
    EXPECT_EQ(shortened("abcdefg", 6), "abc...");
    EXPECT_EQ(shortened("\xC3\xA9\xC3\xA9\xC3\xA9\xC3\xA9\xC3\xA9\xC3\xA9\xC3\xA9", 6), "\xC3\xA9\xC3\xA9\xC3\xA9...");
    EXPECT_EQ(character_count("\xC3\xA9\xE2\x82\xAC\xFF"), 3U);
    EXPECT_EQ(shortened("", 6), "");
}

TEST(TextLayout, BreaksBetweenWords)
{
    using strings = std::vector<std::string>;
    EXPECT_EQ(broken("one two  three", 7), (strings{"one two", "three"}));
    EXPECT_EQ(broken("a 0123456789 b", 4), (strings{"a", "0123", "4567", "89 b"}));
    EXPECT_EQ(broken("", 4), strings{});
    EXPECT_EQ(broken("   ", 4), strings{});
    EXPECT_EQ(detail::left_in("abcdef", 5), "ab...");
    EXPECT_EQ(detail::left_in("ab", 5), "ab   ");
    EXPECT_EQ(detail::right_in("ab", 5), "   ab");
}
