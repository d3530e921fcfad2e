// What a name may hold: marks of a page, quotes, characters that turn or break the text around them, any length.
#include <array>
#include <string>
#include <string_view>
#include <vector>

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include "io/example_stations.hpp"
#include "io/hostile_names.hpp"
#include "io/markup_checker.hpp"

#include <weldloop/io/report/json_values.hpp>
#include <weldloop/io/report/report_json.hpp>
#include <weldloop/io/report/report_page.hpp>
#include <weldloop/io/report/report_text.hpp>

using namespace weldloop;
using nlohmann::json;
using testing::HasSubstr;
using testing::Not;

TEST(HostileNames, CannotSteerAPage)
{
    const test::assessed_station s = test::named(test::steering_name());
    const std::string page = report_page(s.is, s.found, s.remedies, {.answers = s.answers});
    EXPECT_EQ(test::markup_checker(page).fault(), "");
    for (const std::string& c : test::steering_characters())
        if (c != "\n") {
            EXPECT_EQ(page.find(c), std::string::npos) << static_cast<int>(c.back());
        }
    EXPECT_THAT(page, Not(HasSubstr("<script")));
    EXPECT_THAT(page, Not(HasSubstr("<img")));
    // as written, but for what is not seen
    EXPECT_THAT(page, HasSubstr("<h1><bdi>lead &lt;script&gt;alert(&quot;1&quot;)&lt;/script&gt;&lt;img src=x "
                                "onerror=&#39;2&#39;&gt; &amp; a\xEF\xBF\xBD"
                                "b"));
}

TEST(HostileNames, CannotSteerATerminal)
{
    const test::assessed_station s = test::named(test::steering_name());
    const std::string text =
        report_text(s.is, s.found, s.remedies, {.answers = s.answers, .detail = report_detail::whole});
    for (const char c : text) EXPECT_TRUE(c == '\n' || (c >= ' ' && c <= '~')) << static_cast<int>(c);
    EXPECT_THAT(text, testing::StartsWith("lead <script>alert(\"1\")</script><img src=x onerror='2'> &\na?ba?b"));
}

TEST(HostileNames, ComeBackFromJsonAsTheyAre)
{
    const std::string name = test::steering_name();
    const test::assessed_station s = test::named(name);
    const std::string text = report_json(s.is, s.found, s.remedies, {.answers = s.answers});
    for (const std::string& c : test::steering_characters())
        if (c != "\n") {
            EXPECT_EQ(text.find(c), std::string::npos) << static_cast<int>(c.back());
        }
    EXPECT_THAT(text, HasSubstr("\\u202e"));
    EXPECT_THAT(text, HasSubstr("\\u2066"));
    EXPECT_EQ(json::parse(text).at("name"), name);
    EXPECT_EQ(json::parse(text).at("ways").at(0).at("name"), name);
    EXPECT_THAT(report_json(s.is, s.found, s.remedies), Not(HasSubstr("\\n\\n")));
    // what is seen stays as it is
    EXPECT_EQ(detail::json_text(json("\xC3\xA9\xE2\x82\xAC \xF0\x9F\x94\xA5")),
              "\"\xC3\xA9\xE2\x82\xAC \xF0\x9F\x94\xA5\"");
}

TEST(HostileNames, OfAnyLengthKeepEveryFormReadable)
{
    for (const std::string& name : {std::string(5000, 'w'), [] {
                                        std::string words;
                                        while (words.size() < 5000) words += "long name ";
                                        return words;
                                    }()}) {
        const test::assessed_station s = test::named(name);
        const std::string text =
            report_text(s.is, s.found, s.remedies, {.answers = s.answers, .detail = report_detail::whole});
        for (std::size_t at = 0; at < text.size();) {
            const std::size_t end = text.find('\n', at);
            EXPECT_LE(end - at, text_report_width);
            at = end + 1;
        }
        const std::string page = report_page(s.is, s.found, s.remedies, {.answers = s.answers});
        EXPECT_EQ(test::markup_checker(page).fault(), "");
        EXPECT_THAT(page, HasSubstr("<h1><bdi>" + name + "</bdi></h1>"));
        // a drawing cannot break its lines: it shortens them, and says the whole in its tip
        for (std::size_t at = page.find("<text"); at != std::string::npos; at = page.find("<text", at + 1)) {
            const std::size_t from = page.find('>', at) + 1;
            EXPECT_LE(page.find("</text>", from) - from, 140U) << page.substr(from, 160);
        }
        EXPECT_EQ(json::parse(report_json(s.is, s.found, s.remedies)).at("name"), name);
    }
}
