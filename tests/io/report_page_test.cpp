// The report as a page: well-formed, needs nothing from elsewhere, every text escaped, no promise.
#include <chrono>
#include <string>
#include <string_view>
#include <vector>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "io/example_stations.hpp"
#include "io/forbidden_words.hpp"
#include "io/markup_checker.hpp"

#include <weldloop/io/report/escape.hpp>
#include <weldloop/io/report/first_actions.hpp>
#include <weldloop/io/report/page_style.hpp>
#include <weldloop/io/report/report_page.hpp>

using namespace weldloop;
using testing::HasSubstr;
using testing::Not;

namespace {

std::string page_of(const test::assessed_station& s)
{
    return report_page(s.is, s.found, s.remedies, {.answers = s.answers});
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
    EXPECT_THAT(answers, HasSubstr("Where the fault is, by what was found"));
    EXPECT_THAT(answers, Not(HasSubstr("<script")));
    EXPECT_THAT(answers, Not(HasSubstr("\x1b")));
}

TEST(ReportPage, HelpsThoseWhoCannotSeeIt)
{
    const std::string page = page_of(test::gate_shop());
    EXPECT_THAT(page, HasSubstr("<html lang=\"en\">"));
    for (const char* landmark : {"<header>", "<main>", "<footer>"}) EXPECT_THAT(page, HasSubstr(landmark));
    // every cell keeps its role where a narrow page lays the table out as cards
    EXPECT_THAT(page, HasSubstr("role=\"columnheader\" scope=\"col\""));
    EXPECT_THAT(page, HasSubstr("role=\"rowheader\" scope=\"row\""));
    for (const char* cell :
         {"<td>", "<td class", "<th>", "<th scope", "<tr>", "<tr class", "<tbody>", "<thead>", "<table>"})
        EXPECT_THAT(page, Not(HasSubstr(cell)));
    // what a section is called by is there, once
    for (std::size_t at = page.find("aria-labelledby=\""); at != std::string::npos;
         at = page.find("aria-labelledby=\"", at + 1)) {
        const std::size_t from = at + 17;
        const std::string id = " id=\"" + page.substr(from, page.find('"', from) - from) + "\"";
        EXPECT_NE(page.find(id), std::string::npos) << id;
        EXPECT_EQ(page.find(id), page.rfind(id)) << id;
    }
    // every drawing says in words what it shows
    for (std::size_t at = page.find("<svg"); at != std::string::npos; at = page.find("<svg", at + 1)) {
        EXPECT_THAT(page.substr(at, 300), HasSubstr("role=\"img\""));
        EXPECT_THAT(page.substr(at, 300), HasSubstr("aria-label=\""));
        EXPECT_EQ(page.find("<desc></desc>", at), std::string::npos);
    }
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

TEST(ReportPage, GoesFromWhatIsActedOnToWhatIsLookedUp)
{
    const test::assessed_station s = test::gate_two_clamps();
    const std::string page = report_page(s.is, s.found, s.remedies, {.answers = answers_of(s.is, s.found)});
    std::size_t at = 0;
    for (const char* heading :
         {">This can hurt now<", ">In short<", "<p class=\"answer\">", ">Do first<", ">The loop<",
          "<div class=\"rest\">", ">Parts<", ">What else stands out<", ">Ways beside the path<", ">Grip of gate clamp<",
          ">How long it lasts<", ">All that would help, most first<", ">All cautions<", "<summary>Every place",
          "<summary>Surfaces", "<summary>Sources", "<summary>What rests on judgement", "</main>"}) {
        const std::size_t here = page.find(heading, at);
        ASSERT_NE(here, std::string::npos) << heading;
        at = here;
    }
    EXPECT_THAT(page, Not(HasSubstr("<details open")));
    for (const loop_finding& f : s.found.findings) {
        const std::size_t here = page.find("<code>" + std::string(to_text(f.id)) + "</code>");
        ASSERT_NE(here, std::string::npos) << to_text(f.id);
        EXPECT_EQ(here < page.find(">In short<"), detail::can_hurt(f)) << to_text(f.id);
        EXPECT_NE(page.rfind(std::string(to_text(f.severity)), here), std::string::npos);
    }
    // the cautions of an action stand with it, before the next one
    const std::vector<first_action> actions = first_actions(s.is, s.found, s.remedies, {});
    ASSERT_FALSE(actions.empty());
    at = page.find(">Do first<");
    for (const first_action& a : actions) {
        at = page.find("<li><b>" + markup_escaped(what_line(a.does)), at);
        ASSERT_NE(at, std::string::npos) << a.does.what;
        const std::size_t next = page.find("<li><b>", at + 1);
        for (const std::string& c : a.cautions)
            EXPECT_LT(page.find("<li>" + markup_escaped(in_shown_units(c, {})) + "</li>", at), next) << c;
    }
}

TEST(ReportPage, SaysByWhatAndWhenItWasMade)
{
    const test::assessed_station s = test::trailer_stand();
    using namespace std::chrono_literals;
    EXPECT_THAT(report_page(s.is, s.found, s.remedies, {.date = 2026y / 11 / 26}),
                HasSubstr("<dd>2026-11-26, weldloop " + version_text() + "</dd>"));
    EXPECT_THAT(page_of(s), HasSubstr("<dd>weldloop " + version_text() + "</dd>"));
}

// What a narrow page cannot show it would cut off: nothing has a least width, and nothing scrolls sideways.
TEST(ReportPage, HasNoLeastWidthOnNarrowPages)
{
    const std::string narrow(page_style.substr(page_style.find("@media screen and (max-width")));
    EXPECT_THAT(narrow, HasSubstr(".told th,.told td{border:0;padding:.1rem 0;min-width:0"));
    EXPECT_THAT(narrow, HasSubstr(".on-wide{display:none}.on-narrow{display:block}"));
    constexpr double narrowest = 440.0;  // drawing units: 360 px less the margins show them at three quarters
    const std::string page = page_of(test::gate_two_clamps());
    EXPECT_THAT(page, Not(HasSubstr("class=\"scroll\"")));
    for (std::size_t at = page.find("<table"); at != std::string::npos; at = page.find("<table", at + 1))
        EXPECT_THAT(page.substr(at, 60), HasSubstr("class=\"told "));
    for (std::size_t at = page.find("viewBox=\"0 0 "); at != std::string::npos;
         at = page.find("viewBox=\"0 0 ", at + 1)) {
        if (page.rfind("<div class=\"on-wide\">", at) != std::string::npos &&
            at - page.rfind("<div class=\"on-wide\">", at) < 100)
            continue;
        EXPECT_LE(std::stod(page.substr(at + 13, 10)), narrowest) << page.substr(at, 80);
    }
}

TEST(ReportPage, ListsEveryPlaceWithItsLimits)
{
    for (const test::assessed_station& s : {test::gate_shop(), test::trailer_stand(), test::long_path()}) {
        const std::string page = page_of(s);
        const std::size_t table = page.find("class=\"told places\">");
        ASSERT_NE(table, std::string::npos);
        for (const part_result& p : s.found.parts) {
            const std::size_t from =
                page.find(">" + std::to_string(number_of(p)) + " <bdi>" + p.name + "</bdi></th>", table);
            ASSERT_NE(from, std::string::npos) << p.name;
            const std::string rows = page.substr(from, page.find("</tbody>", from) - from);
            for (const place_result& at : p.places)
                EXPECT_THAT(rows, HasSubstr("scope=\"row\">" + std::string(to_text(at.what)) +
                                            "</th><td role=\"cell\" data-is=\"Peak, degC\" class=\"n\">" +
                                            detail::fixed_text(at.peak.typical.in_celsius(), 0)))
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
            const std::size_t row = page.find("scope=\"row\"><bdi>" + p.name);
            ASSERT_NE(row, std::string::npos);
            std::string cells = page.substr(row, page.find("class=\"says\"", row) - row);
            cells.erase(0, cells.find("</th>"));
            for (std::size_t at = cells.find('<'); at != std::string::npos; at = cells.find('<'))
                cells.erase(at, cells.find('>', at) - at + 1);
            EXPECT_EQ(cells.find_first_of("0123456789"), std::string::npos) << cells;
        }
    }
}

TEST(ReportPage, PromisesNothing)
{
    for (const test::assessed_station& s : test::all_stations()) EXPECT_EQ(test::forbidden_word_in(page_of(s)), "");
}
