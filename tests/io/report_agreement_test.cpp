// Text, page and JSON say the same of every part, and the page on reports names every key of the JSON.
#include <algorithm>
#include <set>
#include <sstream>
#include <string>
#include <string_view>
#include <vector>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "io/example_stations.hpp"
#include "support/near.hpp"

#include <weldloop/core/literals.hpp>
#include <weldloop/io/report/report_json.hpp>
#include <weldloop/io/report/report_page.hpp>
#include <weldloop/io/report/report_text.hpp>

using namespace weldloop;
using namespace weldloop::literals;
using nlohmann::json;
using testing::HasSubstr;

namespace {

std::string trimmed(std::string text)
{
    text.erase(0, text.find_first_not_of(' '));
    text.erase(text.find_last_not_of(' ') + 1);
    return text;
}

/// What a form of the report says of a part, as printed.
struct said {
    std::string peak, place, limit, cases, verdict;
    bool operator==(const said&) const = default;
};
std::ostream& operator<<(std::ostream& out, const said& s)
{
    return out << s.peak << " | " << s.place << " | " << s.limit << " | " << s.cases << " | " << s.verdict;
}

/// The row of a part in the text's table, by the columns of its width.
said in_text(const std::string& text, const part_result& p)
{
    const std::string start = "\n" + detail::right_in(std::to_string(number_of(p)), 3) + "  " +
                              detail::left_in(plain_ascii(p.name), 20) + " ";
    const std::size_t at = text.find(start);
    if (at == std::string::npos) return {};
    const std::string row = text.substr(at + 1, text.find('\n', at + 1) - at - 1);
    return {trimmed(row.substr(54, 14)), trimmed(row.substr(70, 16)), trimmed(row.substr(87, 4)),
            trimmed(row.substr(92, 6)), trimmed(row.substr(100))};
}

/// Text between two marks after a place, which moves behind it.
std::string between(const std::string& page, std::size_t& at, const std::string& begin, const std::string& end)
{
    const std::size_t from = page.find(begin, at);
    if (from == std::string::npos) return {};
    const std::size_t to = page.find(end, from + begin.size());
    at = to;
    return page.substr(from + begin.size(), to - from - begin.size());
}

/// A cell's value, its band and what it is of, without marks.
std::string without_marks(std::string cell)
{
    for (std::size_t at = cell.find('<'); at != std::string::npos; at = cell.find('<'))
        cell.replace(at, cell.find('>', at) - at + 1, " ");
    std::string out;
    std::istringstream words(cell);
    for (std::string word; words >> word;) out.append(out.empty() ? "" : " ").append(word);
    return out;
}

/// The row of a part in the page's first table.
said in_page(const std::string& page, const part_result& p)
{
    std::size_t at = page.find("<tr><td class=\"n\">" + std::to_string(number_of(p)) + "</td><th scope=\"row\">");
    if (at == std::string::npos) return {};
    at = page.find("</th>", at);
    static_cast<void>(between(page, at, "<td class=\"n\">", "</td>"));       // drop
    static_cast<void>(between(page, at, "<td class=\"n wide\">", "</td>"));  // heat
    said out;
    out.peak = without_marks(between(page, at, "<td class=\"n\">", "</td>"));
    if (const std::size_t place = out.peak.find_first_of("abcdefghijklmnopqrstuvwxyz"); place != std::string::npos) {
        out.place = out.peak.substr(place);
        out.peak = trimmed(out.peak.substr(0, place));
    } else
        out.place = "-";
    out.limit = between(page, at, "<td class=\"n wide\">", "</td>");
    out.cases = without_marks(between(page, at, "<td class=\"n wide\">", "</td>"));
    for (const auto& [mark, sign] : {std::pair{"&lt;", "<"}, std::pair{"&gt;", ">"}})
        if (out.cases.starts_with(mark)) out.cases.replace(0, 4, sign);
    const std::string verdict = between(page, at, "<span class=\"verdict w-", "</span>");
    out.verdict = verdict.substr(verdict.find('>') + 1);
    return out;
}

band<temperature> band_of(const json& b)
{
    const auto at = [&b](const char* key) { return temperature::celsius(b.at(key).get<double>()); };
    return {at("low"), at("typical"), at("high")};
}

/// What the JSON says, printed as the others do.
said in_json(const json& part, bool with_numbers)
{
    if (!with_numbers) return {"-", "-", "-", "-", part.at("verdict")};
    return {detail::band_text(band_of(part.at("peak_degC")), 0), part.at("peak_at"),
            part.contains("limit_degC") ? detail::fixed_text(part.at("limit_degC").get<double>(), 0) : "-",
            part.contains("exceeds_probability")
                ? cases_number(likelihood(part.at("exceeds_probability").get<double>()))
                : "-",
            part.at("verdict")};
}

verdict verdict_named(std::string_view words)
{
    for (const verdict v : {verdict::within_limit, verdict::not_judged, verdict::close_to_limit, verdict::may_exceed,
                            verdict::over_limit, verdict::spots_melting, verdict::open_circuit})
        if (to_text(v) == words) return v;
    ADD_FAILURE() << words;
    return verdict::not_judged;
}

/// Every key of a value and of what is below it, once.
void collect_keys(const json& value, std::set<std::string>& keys)
{
    if (value.is_object())
        for (const auto& [key, below] : value.items()) keys.insert(key);
    if (value.is_structured())
        for (const json& below : value) collect_keys(below, keys);
}

bool is_of_a_band(const std::string& name)
{
    return name == "low" || name == "typical" || name == "high" || name == "poor" || name == "mild";
}

/// Every number with the key it stands under; numbers of a band under the band's.
void collect_numbers(const json& value, const std::string& key, std::set<std::string>& keys)
{
    if (value.is_number()) keys.insert(key);
    if (value.is_array())
        for (const json& below : value) collect_numbers(below, key, keys);
    if (value.is_object())
        for (const auto& [name, below] : value.items()) collect_numbers(below, is_of_a_band(name) ? key : name, keys);
}

/// The words in `marks of code` in the page's section on JSON.
std::set<std::string> documented_keys()
{
    const std::string page =
        test::content_of(test::example_file("").parent_path().parent_path().parent_path() / "docs/pages/report.md");
    const std::size_t from = page.find("## JSON"), to = page.find("## From a program");
    EXPECT_NE(from, std::string::npos);
    std::set<std::string> out;
    for (std::size_t at = page.find('`', from); at < to; at = page.find('`', at + 1)) {
        const std::size_t end = page.find('`', at + 1);
        out.insert(page.substr(at + 1, end - at - 1));
        at = end;
    }
    return out;
}

json json_of(const test::assessed_station& s)
{
    return json::parse(report_json(s.is, s.found, s.remedies, s.answers));
}

/// Stations that together have every key.
std::vector<test::assessed_station> stations_with_all_keys()
{
    std::vector<test::assessed_station> out = test::all_stations();
    // what remedies and forecasts of these stations need not have
    remedy r{"tighten it", "lug"};
    r.verdict_before = verdict::over_limit;
    r.verdict_after = verdict::within_limit;
    out.front().remedies.push_back(r);
    for (part_result& p : out.front().found.parts) {
        if (!p.grip) continue;
        p.grip->quarter_lost = band<duration>{in_si<duration>(3.6e5), in_si<duration>(7.2e5), in_si<duration>(7.2e6)};
        p.grip->inspect_by = in_si<duration>(3.6e5);
        p.grip->outlook_poor = grip_outlook::unstable;
        p.grip->poor_points = {p.grip->points.front()};
    }
    // what supplies of several kinds have
    supply& all = out.front().is.supply.emplace();
    all = {.kind = supply_kind::drooping, .setting = 26_V, .highest_output = 44_V};
    all.current_setting = 150_A;
    all.fall = 20_mohm;
    all.rise = in_si<conductance>(2.0);
    all.limit = all.short_circuit = 260_A;
    all.points = {{0_A, 70_V}, {190_A, 12_V}};
    all.no_load = {.kind = output_current::alternating, .peak = 100_V, .rms = 72_V};
    all.polarity = electrode_polarity::positive;
    all.feeding = wire_feeding::by_arc_voltage;
    all.sensing.emplace();
    if (out.front().found.operating) out.front().found.operating->extension = 15_mm;
    out.front().found.year = yearly_loss{.energy_cost = 60.0, .time_cost = 500.0};
    // what a changing current has
    course_effects& changing = out.front().found.course.emplace();
    changing.share.emplace();
    changing.added.emplace();
    changing.levels = {{.asked = 60_A, .outcome = operating_outcome::found}};
    changing.edge = course_edge{.to = 200_A};
    // what answers may hold, and those of these stations need not
    clamp_prospect& c = out.back().answers.life->clamps.front();
    c.poor_ends = 300_h;
    c.cures = {{.kind = clamp_cure_kind::less_current, .clamp = "clamp", .amps = 100_A, .work = 40_degC}};
    out.back().answers.fault->doubtful.push_back({.which = 1, .probability = 0.6, .what = "fits nothing"});
    out.back().answers.fault->next = next_reading{.across = "lug", .bits = 0.1};
    return out;
}

}  // namespace

TEST(Reports, SayTheSameOfEveryPart)
{
    for (const test::assessed_station& s :
         {test::gate_shop(), test::trailer_stand(), test::long_path(), test::open_bench(), test::ending_stand()}) {
        const std::string text = report_text(s.is, s.found, s.remedies, s.answers),
                          page = report_page(s.is, s.found, s.remedies, s.answers);
        const json report = json_of(s);
        for (std::size_t i = 0; i < s.found.parts.size(); ++i) {
            const part_result& p = s.found.parts[i];
            const said one = in_json(report.at("parts").at(i), s.found.conducts);
            EXPECT_EQ(in_page(page, p), one) << s.is.name << ": " << p.name;
            said brief = one;
            brief.verdict = short_text(verdict_named(one.verdict));
            EXPECT_EQ(in_text(text, p), brief) << s.is.name << ": " << p.name;
        }
    }
}

TEST(Reports, SayTheSameOfEveryDecidingLimit)
{
    for (const test::assessed_station& s : {test::gate_shop(), test::trailer_stand(), test::long_path()}) {
        std::string text = report_text(s.is, s.found, s.remedies, s.answers);
        const std::string page = report_page(s.is, s.found, s.remedies, s.answers);
        // one line for a sentence, however it was broken
        text = without_marks(text.substr(text.find("Part by part")));
        const json report = json_of(s);
        for (std::size_t i = 0; i < s.found.parts.size(); ++i) {
            const part_result& p = s.found.parts[i];
            const json& part = report.at("parts").at(i);
            EXPECT_EQ(part.contains("limit_at"), !p.limits.empty());
            if (p.limits.empty()) continue;
            const json& deciding = part.at("limits").at(0);
            EXPECT_EQ(part.at("limit_at"), deciding.at("at"));
            EXPECT_EQ(part.at("limit_name"), deciding.at("name"));
            EXPECT_EQ(part.contains("limit_degC"), deciding.contains("limit_degC"));
            if (deciding.contains("limit_degC")) {
                // one temperature beside one limit: that of the place the limit is defined for
                EXPECT_EQ(part.at("limit_degC"), deciding.at("limit_degC"));
                EXPECT_EQ(part.at("peak_degC"), deciding.at("peak_degC"));
                EXPECT_EQ(part.at("peak_at"), deciding.at("at"));
                for (const json& at : part.at("places"))
                    if (at.at("place") == deciding.at("at")) {
                        EXPECT_EQ(at.at("peak_degC"), part.at("peak_degC"));
                    }
            }
            const std::string at = deciding.at("at"), name = deciding.at("name");
            EXPECT_THAT(text, HasSubstr("limit: " + limit_line(p.limits.front()) + "; exceeded " +
                                        cases_text(likelihood(deciding.at("exceeds_probability").get<double>()))))
                << p.name;
            EXPECT_THAT(limit_line(p.limits.front()), testing::StartsWith(at + " "));
            EXPECT_THAT(limit_line(p.limits.front()), HasSubstr("(" + name + ")"));

            const std::size_t own = page.find(">" + std::to_string(number_of(p)) + " " + p.name + "</th>",
                                              page.find("<table class=\"places\">"));
            ASSERT_NE(own, std::string::npos);
            std::size_t row = page.find("<tr class=\"deciding\">", own);
            ASSERT_LT(row, page.find("</tbody>", own)) << p.name;
            EXPECT_EQ(between(page, row, "<th scope=\"row\">", "</th>"), at);
            EXPECT_THAT(between(page, row, "<td class=\"against\">", "</td>"),
                        testing::StartsWith(markup_escaped(name) + "; "));
        }
    }
}

TEST(Reports, HaveNoNumbersWithoutAState)
{
    for (const test::assessed_station& s : {test::open_bench(), test::ending_stand()}) {
        const json report = json_of(s);
        const std::string word = s.found.outcome == loop_outcome::open_circuit ? "open" : "none";
        EXPECT_EQ(report.at("outcome"), std::string(outcome_word(s.found.outcome)));
        for (const char* key : {"total_drop_V", "total_drop_band_V", "wire_extension_drop_V", "arc_V", "arc_band_V"})
            EXPECT_EQ(report.at(key), word) << key;
        EXPECT_EQ(report.at("findings").at(0).at("text"), no_state_line(s.found));
        for (const json& part : report.at("parts")) {
            std::set<std::string> numbers;
            collect_numbers(part, "", numbers);
            EXPECT_EQ(numbers, std::set<std::string>{"number"}) << part.at("name");
            for (const char* key : {"drop_V", "loss_W", "peak_degC"}) EXPECT_TRUE(part.at(key).is_string());
        }
    }
}

TEST(Reports, HaveNoKeyThatThePageDoesNotName)
{
    const std::set<std::string> named = documented_keys();
    std::set<std::string> used;
    for (const test::assessed_station& s : stations_with_all_keys()) collect_keys(json_of(s), used);
    for (const std::string& key : used) EXPECT_TRUE(named.contains(key)) << key;
    // and the page names none that nothing has: what ends in a unit can only be a key
    for (const std::string& key : named)
        if (key.find('_') != std::string::npos && key.find_first_of(" \"/{") == std::string::npos) {
            EXPECT_TRUE(used.contains(key)) << key;
        }
}

TEST(Reports, GiveEveryNumberAUnitOrNone)
{
    const std::set<std::string> without_unit{"number",
                                             "energy_cost",
                                             "time_cost",
                                             "share",
                                             "coil_turns",
                                             "bundled_leads",
                                             "used",
                                             "used_poor",
                                             "used_typical",
                                             "used_good",
                                             "softening_used",
                                             "resistance_ratio",
                                             "openings",
                                             "knocks",
                                             "drags",
                                             "on_work",
                                             "starts",
                                             "force",
                                             "film",
                                             "heat",
                                             "disturbance",
                                             "fretting",
                                             "probability",
                                             "condition_share",
                                             "none",
                                             "reading",
                                             "exceeds_probability",
                                             "grip_lost_before",
                                             "grip_left",
                                             "grip_left_poor",
                                             "grip_left_of_new",
                                             "over_clean",
                                             "grip_left_of_new_poor",
                                             "lost_share",
                                             "share_of_no_load",
                                             "skin_ratio"};
    std::set<std::string> numbers;
    for (const test::assessed_station& s : stations_with_all_keys()) collect_numbers(json_of(s), "", numbers);
    for (const std::string& key : numbers) {
        bool unit = false;
        for (const char* end : {"_A", "_s", "_degC", "_m_per_s", "_m", "_W_per_m2", "_V", "_W", "_h", "_N", "_ohm",
                                "_S", "_K", "_J", "_Hz", "_H"})
            unit = unit || key.ends_with(end);
        EXPECT_NE(unit, without_unit.contains(key)) << key;
    }
}

TEST(Reports, TellWhatIsGoneOfTheGripInEveryForm)
{
    const test::assessed_station s = test::gate_shop();
    const json report = json_of(s);
    for (std::size_t i = 0; i < s.found.parts.size(); ++i) {
        const part_result& p = s.found.parts[i];
        if (!p.grip) continue;
        const json& grip = report.at("parts").at(i).at("grip");
        EXPECT_EQ(grip.at("grip_lost_before"), 0.3);
        EXPECT_NEAR_REL(grip.at("grip_left_of_new").get<double>(), 0.7 * static_cast<double>(p.grip->grip_left), 1e-6);
        EXPECT_EQ(grip.at("outlook"), std::string(to_text(p.grip->outlook)));
        EXPECT_EQ(grip.at("outlook_poor"), std::string(to_text(p.grip->outlook_poor)));
        const std::string page = report_page(s.is, s.found, s.remedies, s.answers);
        for (const std::string& line : grip_lines(*p.grip, 0.3)) EXPECT_THAT(page, HasSubstr(markup_escaped(line)));
    }
}
