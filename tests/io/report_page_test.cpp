// The report as a page: well-formed, needs nothing from elsewhere, every text escaped, no promise.
#include <string>
#include <string_view>
#include <vector>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "io/example_stations.hpp"
#include "io/forbidden_words.hpp"
#include "io/markup_checker.hpp"

#include <weldloop/io/report_page.hpp>

using namespace weldloop;
using testing::HasSubstr;
using testing::Not;

namespace {

std::string page_of(const test::assessed_station& s)
{
    return report_page(s.is, s.found, s.remedies);
}

std::vector<test::assessed_station> all_stations()
{
    return {test::gate_shop(), test::trailer_stand(), test::long_path(), test::open_bench(), test::hostile_shop()};
}

}  // namespace

TEST(ReportPage, IsWellFormed)
{
    for (const test::assessed_station& s : all_stations()) {
        const test::markup_checker checked(page_of(s));
        EXPECT_EQ(checked.fault(), "");
        for (const char* tag :
             {"html", "head", "title", "body", "h1", "h2", "table", "caption", "thead", "tbody", "svg"})
            EXPECT_TRUE(checked.has(tag)) << tag;
    }
}

TEST(ReportPage, NeedsNothingFromElsewhere)
{
    for (const test::assessed_station& s : all_stations()) {
        const std::string page = page_of(s);
        const test::markup_checker checked(page);
        for (const char* tag : {"script", "link", "img", "iframe", "object", "a", "form", "use", "image"})
            EXPECT_FALSE(checked.has(tag)) << tag;
        for (const std::string& attribute : checked.attributes()) {
            EXPECT_NE(attribute, "src");
            EXPECT_NE(attribute, "href");
            EXPECT_NE(attribute, "style");
            EXPECT_FALSE(attribute.starts_with("on")) << attribute;
        }
        EXPECT_THAT(page, Not(HasSubstr("url(")));
        EXPECT_THAT(page, Not(HasSubstr("@import")));
        // the one address is the name of the SVG language
        for (std::size_t at = page.find("http"); at != std::string::npos; at = page.find("http", at + 1))
            EXPECT_EQ(page.substr(at, 26), "http://www.w3.org/2000/svg");
    }
}

TEST(ReportPage, EscapesEveryText)
{
    const std::string page = page_of(test::hostile_shop());
    EXPECT_THAT(page, Not(HasSubstr("<script")));
    EXPECT_THAT(
        page,
        HasSubstr("&lt;script&gt;alert(&#39;x&#39;)&lt;/script&gt; &amp; &quot;\xEF\xBF\xBD[31m\xEF\xBF\xBD \xC3\xA9"));
    EXPECT_THAT(page, Not(HasSubstr("\x1b")));
}

TEST(ReportPage, HelpsThoseWhoCannotSeeIt)
{
    const std::string page = page_of(test::gate_shop());
    EXPECT_THAT(page, HasSubstr("<html lang=\"en\">"));
    EXPECT_THAT(page, HasSubstr("<th scope=\"col\""));
    EXPECT_THAT(page, HasSubstr("<th scope=\"row\">"));
    EXPECT_THAT(page, HasSubstr("role=\"img\""));
    EXPECT_THAT(page, HasSubstr("aria-label=\"The loop of Gate shop, bench 1\""));
    EXPECT_THAT(page, HasSubstr("prefers-color-scheme:dark"));
    EXPECT_THAT(page, HasSubstr("@media print"));
}

TEST(ReportPage, HoldsTheDrawingsThatApply)
{
    const std::string page = page_of(test::gate_shop());
    for (const char* label : {"The loop of", "Voltage budget of", "Peak temperatures of", "Grip of work clamp"})
        EXPECT_THAT(page, HasSubstr("aria-label=\"" + std::string(label)));
    const std::string open = page_of(test::open_bench());
    EXPECT_THAT(open, HasSubstr("open circuit: no current flows"));
    for (const char* label : {"Voltage budget of", "Peak temperatures of", "Grip of"})
        EXPECT_THAT(open, Not(HasSubstr("aria-label=\"" + std::string(label))));
}

TEST(ReportPage, PromisesNothing)
{
    for (const test::assessed_station& s : all_stations()) EXPECT_EQ(test::forbidden_word_in(page_of(s)), "");
}
