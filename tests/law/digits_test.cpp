// Every law against fifty digits: rows made by tests/oracle/digits/rows.py from the laws' equations, written anew
// there. With WELDLOOP_WRITE_ACCURACY=1 the worst errors are written to docs/pages/digits.md, with where the marches
// that have no rows are held (elsewhere.md) and what other compilers gave (variants.sh).
#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <fstream>
#include <limits>
#include <map>
#include <set>
#include <sstream>
#include <string>
#include <string_view>
#include <vector>

#include <gtest/gtest.h>
#include <weldloop/core/number_text.hpp>

#include "oracle/digits/laws.hpp"
#include "oracle/digits/rows.hpp"

namespace {

using weldloop::number_text;
namespace digits = weldloop::test::digits;

const std::string folder = std::string(WELDLOOP_TEST_DATA) + "/../oracle/digits/";
const std::string page_path = std::string(WELDLOOP_INCLUDE_DIR) + "/../docs/pages/digits.md";

std::string text_of(const std::string& path)
{
    std::ifstream in(path);
    std::ostringstream out;
    out << in.rdbuf();
    return out.str();
}

struct worst_of_law {
    double error = 0.0, least_allowed = std::numeric_limits<double>::max(), most_allowed = 0.0;
    int rows = 0;
};

double error_of(const digits::row& r)
{
    const double got = digits::law_of(r.law)(r.inputs);
    // the value is the sum of two doubles, so that half a rounding can be seen
    return r.high == 0.0 ? std::fabs(got) : std::fabs(((got - r.high) - r.low) / r.high);
}

std::map<std::string, worst_of_law> measured(const std::vector<digits::row>& rows)
{
    std::map<std::string, worst_of_law> out;
    for (const digits::row& r : rows) {
        worst_of_law& w = out[r.law];
        ++w.rows;
        w.error = std::max(w.error, error_of(r));
        w.least_allowed = std::min(w.least_allowed, r.allowed);
        w.most_allowed = std::max(w.most_allowed, r.allowed);
    }
    return out;
}

// What of the page does not hang on the compiler: a law with its rows.
std::string begin_of_line(const std::string& law, int rows)
{
    return "| `" + law + "` | " + std::to_string(rows) + " | ";
}

std::string page_of(const std::map<std::string, worst_of_law>& found)
{
    std::string out =
        "# Digits {#digits_page}\n\n"
        "How much of its digits a law loses to rounding, whatever it is worth as physics. Every law is held against "
        "its "
        "equation written anew and evaluated with fifty digits (`tests/oracle/digits/rows.py`), over its range with "
        "its "
        "edges: tiny differences, ratios near 1, very thin and very thick, very short and very long. A law may lose "
        "1e-14, "
        "or where its result hangs on rounded numbers inside, four roundings times its condition number more; what an "
        "approximation of its own allows is said in `rows.py`. What marches or iterates is held to the accuracy that "
        "its "
        "comment states (\\ref digits_marches). Written by `tests/law/digits_test.cpp` with "
        "`WELDLOOP_WRITE_ACCURACY=1`; a rounding more or less depends on the compiler.\n\n"
        "| law | rows | worst relative error | in units of the last place | allowed |\n|---|---|---|---|---|\n";
    const auto span = [](double low, double high) {
        return number_text(low, 2) + (high > 1.01 * low ? " to " + number_text(high, 2) : std::string());
    };
    for (const auto& [law, w] : found)
        out += begin_of_line(law, w.rows) + number_text(w.error, 2) + " | " +
               number_text(w.error / std::numeric_limits<double>::epsilon(), 2) + " | " +
               span(w.least_allowed, w.most_allowed) + " |\n";
    return out + "\n" + text_of(folder + "elsewhere.md") + text_of(folder + "variants.md");
}

TEST(Digits, EveryLawHasRowsAndEveryRowALaw)
{
    std::set<std::string, std::less<>> in_rows;
    for (const digits::row& r : digits::rows_of(folder + "rows.csv")) in_rows.insert(r.law);
    for (const digits::named_law& l : digits::laws) EXPECT_TRUE(in_rows.contains(l.name)) << l.name;
    EXPECT_EQ(in_rows.size(), digits::laws.size());
}

// source: rows.py names that of each equation
TEST(Digits, NoLawLosesMoreThanItsConditionMakesIt)
{
    const std::vector<digits::row> rows = digits::rows_of(folder + "rows.csv");
    ASSERT_GT(rows.size(), 2000u);
    for (const digits::row& r : rows)
        EXPECT_LE(error_of(r), r.allowed) << r.law << " of " << r.text << " is to be " << r.high;
}

TEST(Digits, ThePageNamesEveryLawWithItsRows)
{
    const std::map<std::string, worst_of_law> found = measured(digits::rows_of(folder + "rows.csv"));
    if (std::getenv("WELDLOOP_WRITE_ACCURACY") != nullptr) std::ofstream(page_path) << page_of(found);
    const std::string page = text_of(page_path);
    for (const auto& [law, w] : found) EXPECT_NE(page.find(begin_of_line(law, w.rows)), std::string::npos) << law;
    for (const char* part : {"elsewhere.md", "variants.md"})
        EXPECT_NE(page.find(text_of(folder + part)), std::string::npos) << part;
}

}  // namespace
