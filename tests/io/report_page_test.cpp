// The report as a page: well-formed, needs nothing from elsewhere, every text escaped, no promise.
#include <string>
#include <string_view>
#include <vector>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "io/example_stations.hpp"
#include "io/forbidden_words.hpp"
#include "io/markup_checker.hpp"

#include <weldloop/io/report/report_page.hpp>

using namespace weldloop;
using testing::HasSubstr;
using testing::Not;

namespace {

std::string page_of(const test::assessed_station& s)
{
    return report_page(s.is, s.found, s.remedies, s.answers);
}

}  // namespace

TEST(ReportPage, IsWellFormed)
{
    for (const test::assessed_station& s : test::all_stations()) {
        const test::markup_checker checked(page_of(s));
        EXPECT_EQ(checked.fault(), "");
        for (const char* tag :
             {"html", "head", "title", "body", "h1", "h2", "table", "caption", "thead", "tbody", "svg"})
            EXPECT_TRUE(checked.has(tag)) << tag;
    }
}

TEST(ReportPage, NeedsNothingFromElsewhere)
{
    for (const test::assessed_station& s : test::all_stations()) {
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
    // names of the parts that were read, wear out, or are at fault
    const std::string answers = page_of(test::hostile_answers());
    EXPECT_THAT(answers, HasSubstr("By readings"));
    EXPECT_THAT(answers, Not(HasSubstr("<script")));
    EXPECT_THAT(answers, Not(HasSubstr("\x1b")));
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
    for (const char* label : {"The loop of", "Voltage budget of", "Peak temperatures of",
                              "Temperature over the duty period", "Grip of work clamp"})
        EXPECT_THAT(page, HasSubstr("aria-label=\"" + std::string(label)));
    const std::string open = page_of(test::open_bench()), ending = page_of(test::ending_stand());
    EXPECT_THAT(open, HasSubstr("open circuit: no current flows"));
    EXPECT_THAT(ending, HasSubstr("no steady state at this current"));
    for (const char* label :
         {"Voltage budget of", "Peak temperatures of", "Temperature over the duty period", "Grip of"}) {
        EXPECT_THAT(open, Not(HasSubstr("aria-label=\"" + std::string(label))));
        EXPECT_THAT(ending, Not(HasSubstr("aria-label=\"" + std::string(label))));
    }
}

TEST(ReportPage, BeginsWithTheFindings)
{
    const test::assessed_station s = test::gate_shop();
    const std::string page = page_of(s);
    ASSERT_FALSE(s.found.findings.empty());
    std::size_t at = 0;
    for (const loop_finding& f : s.found.findings) {
        const std::size_t here = page.find("<code>" + std::string(to_text(f.id)) + "</code>", at);
        ASSERT_NE(here, std::string::npos) << to_text(f.id);
        EXPECT_NE(page.rfind(std::string(to_text(f.severity)), here), std::string::npos);
        at = here;
    }
    EXPECT_LT(at, page.find("The loop takes"));
}

TEST(ReportPage, ListsEveryPlaceWithItsLimits)
{
    for (const test::assessed_station& s : {test::gate_shop(), test::trailer_stand(), test::long_path()}) {
        const std::string page = page_of(s);
        const std::size_t table = page.find("<table class=\"places\">");
        ASSERT_NE(table, std::string::npos);
        for (const part_result& p : s.found.parts) {
            const std::size_t from = page.find(">" + std::to_string(number_of(p)) + " " + p.name + "</th>", table);
            ASSERT_NE(from, std::string::npos) << p.name;
            const std::string rows = page.substr(from, page.find("</tbody>", from) - from);
            for (const place_result& at : p.places)
                EXPECT_THAT(rows, HasSubstr("<th scope=\"row\">" + std::string(to_text(at.what)) +
                                            "</th><td class=\"n\">" + detail::band_text(at.peak, 0) + "</td>"))
                    << p.name;
            for (const limit_use& u : p.limits) EXPECT_THAT(rows, HasSubstr(markup_escaped(u.name))) << p.name;
            for (const std::string& note : p.notes) EXPECT_THAT(rows, HasSubstr("Note: " + markup_escaped(note)));
        }
    }
}

TEST(ReportPage, OfALoopWithoutAStateHasNoTemperatures)
{
    for (const test::assessed_station& s : {test::open_bench(), test::ending_stand()}) {
        const std::string page = page_of(s);
        EXPECT_THAT(page, HasSubstr("No drops and no temperatures: " + markup_escaped(no_state_line(s.found))));
        EXPECT_THAT(page, Not(HasSubstr("Every place and every limit")));
        for (const part_result& p : s.found.parts) {
            const std::size_t row = page.find("<th scope=\"row\">" + p.name);
            ASSERT_NE(row, std::string::npos);
            const std::string cells = page.substr(row, page.find("<td><span", row) - row);
            EXPECT_EQ(cells.find_first_of("0123456789", cells.find("</th>")), std::string::npos) << cells;
        }
    }
}

TEST(ReportPage, PromisesNothing)
{
    for (const test::assessed_station& s : test::all_stations()) EXPECT_EQ(test::forbidden_word_in(page_of(s)), "");
}
