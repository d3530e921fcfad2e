// The page of published sources is what the headers declare: every source stands on it under its key and its kind.
#include <algorithm>
#include <array>
#include <cstddef>
#include <cstdlib>
#include <fstream>
#include <iterator>
#include <string>
#include <string_view>
#include <tuple>
#include <vector>

#include <gtest/gtest.h>

#include <weldloop/core/source.hpp>

#include "house/header_tree.hpp"
#include "known_sources.hpp"

namespace {

using weldloop::source_kind;

struct section {
    source_kind kind;
    std::string_view heading, remark;
};

constexpr std::array sections{
    section{source_kind::standard, "Standards", "Read, or quoted by a document that was."},
    section{source_kind::handbook, "Handbooks", "Read, among them public pages, data books and trade articles."},
    section{source_kind::paper, "Papers", "Read."},
    section{
        source_kind::memory, "Recalled",
        "Known from a named document that was not read again. None of these passes a part by itself, and none is the "
        "only check of anything."},
    section{source_kind::derived, "Derived", "Follow from others by calculation."},
    section{source_kind::stated, "Stated by the user", "What a station says of itself."},
    section{source_kind::common_practice, "Common practice", "Facts of the trade without a source."},
    section{
        source_kind::judgement, "Judged",
        "No published value was found, or none fits: decided here, with the reason where it is declared. Hold these "
        "in doubt first."},
};

/// A text as it is to be read, not as a mark of the page.
std::string plain(std::string_view text)
{
    std::string out;
    for (const char c : text) {
        if (c == '<') {
            out += "&lt;";
        } else if (c == '>') {
            out += "&gt;";
        } else {
            if (std::string_view("*_#|`@~\\[]").find(c) != std::string_view::npos) out += '\\';
            out += c;
        }
    }
    return out;
}

std::string page_of_the_headers()
{
    std::string out =
        "# Bibliography {#bibliography_page}\n\nEvery source that the library names, " +
        std::to_string(std::size(house::known_sources)) +
        " of them, written by the test run from the headers. The key in front is the name by which the code cites it: "
        "it leads to the header that declares it, whose comments say what is taken from it. Reports "
        "print the ones behind their numbers. What a source is worth stands in its kind, see @ref "
        "weldloop/core/source.hpp \"source_kind\".\n";
    for (const section& part : sections) {
        std::vector<house::known_source> rows;
        std::copy_if(std::begin(house::known_sources), std::end(house::known_sources), std::back_inserter(rows),
                     [&](const house::known_source& s) { return s.what.kind == part.kind; });
        std::sort(rows.begin(), rows.end(), [](const house::known_source& a, const house::known_source& b) {
            return std::tie(a.what.document, a.key) < std::tie(b.what.document, b.key);
        });
        if (rows.empty()) continue;
        out.append("\n## ").append(part.heading).append("\n\n").append(part.remark).append("\n\n");
        for (const house::known_source& s : rows) {
            out.append("- @ref ").append(s.header).append(" \"").append(s.key).append("\": ").append(
                plain(s.what.document));
            for (const std::string_view more : {s.what.edition, s.what.place})
                if (!more.empty()) out.append(", ").append(plain(more));
            out.append("\n");
        }
    }
    return out;
}

}  // namespace

TEST(Bibliography, NoSourceIsLeftOut)
{
    std::size_t declared = 0;
    for (const auto& [header, content] : house::headers_of_the_library())
        for (std::size_t at = 0; (at = content.find("constexpr source ", at)) != std::string::npos; ++at) ++declared;
    EXPECT_EQ(declared, std::size(house::known_sources));
}

TEST(Bibliography, EverySourceHasAKindOfThePage)
{
    for (const house::known_source& s : house::known_sources)
        EXPECT_TRUE(std::any_of(sections.begin(), sections.end(), [&](const section& part) {
            return part.kind == s.what.kind;
        })) << s.key;
}

TEST(Bibliography, ThePageIsWhatTheHeadersDeclare)
{
    const std::string path = WELDLOOP_INCLUDE_DIR "/../docs/pages/bibliography.md";
    const std::string page = page_of_the_headers();
    if (std::getenv("WELDLOOP_WRITE_ACCURACY") != nullptr) std::ofstream(path) << page;
    std::ifstream in(path);
    EXPECT_EQ(std::string(std::istreambuf_iterator<char>(in), {}), page);
}
