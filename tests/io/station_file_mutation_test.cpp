// Damaged station files: whatever is done to a file, the reader gives a station or station_file_error, and a station it
// gives can be assessed and reported or is refused by an error of the library.
#include <algorithm>
#include <cstddef>
#include <random>
#include <string>
#include <string_view>

#include <gtest/gtest.h>

#include "io/example_stations.hpp"

#include <weldloop/io/report/report_json.hpp>
#include <weldloop/io/report/report_page.hpp>
#include <weldloop/io/report/report_text.hpp>
#include <weldloop/io/station/station_file.hpp>

using namespace weldloop;

namespace {

class damage {
public:
    explicit damage(unsigned seed) : random_(seed) {}

    /// Some characters changed, removed, doubled, or pieces moved.
    std::string of(std::string text)
    {
        const std::size_t times = 1 + below(4);
        for (std::size_t i = 0; i < times && !text.empty(); ++i) {
            const std::size_t at = below(text.size());
            switch (below(7)) {
            case 0: text[at] = static_cast<char>(below(256)); break;
            case 1: text[at] = marks[below(marks.size())]; break;
            case 2: text.erase(at, 1 + below(3)); break;
            case 3: text.insert(at, 1, marks[below(marks.size())]); break;
            case 4: text.insert(at, text.substr(below(text.size()), below(60))); break;
            case 5: text.erase(at, below(200)); break;
            default: text.resize(at); break;
            }
        }
        return text;
    }
    /// Some digits changed: the file stays readable more often.
    std::string digits_of(std::string text)
    {
        const std::size_t times = 1 + below(6);
        for (std::size_t i = 0; i < times; ++i) {
            const std::size_t at = text.find_first_of("0123456789", below(text.size()));
            if (at != std::string::npos) text[at] = static_cast<char>('0' + below(10));
        }
        return text;
    }

private:
    static constexpr std::string_view marks = "\"'=[]{}.,#\\\n\r\t -+0123456789eEA%_";
    std::size_t below(std::size_t n) { return std::uniform_int_distribution<std::size_t>(0, n - 1)(random_); }
    std::mt19937 random_;
};

enum class outcome { a_station, refused };

outcome read(const std::string& text, described_station* out = nullptr)
{
    try {
        described_station s = described_station_from_toml(text, "damaged.toml");
        if (out != nullptr) *out = std::move(s);
        return outcome::a_station;
    } catch (const station_file_error& e) {
        EXPECT_GT(e.line(), 0U) << e.what();
        EXPECT_GT(e.column(), 0U) << e.what();
        const auto lines = static_cast<std::size_t>(std::count(text.begin(), text.end(), '\n')) + 1;
        EXPECT_LE(e.line(), lines + 1) << e.what();
        EXPECT_FALSE(e.reason().empty());
        return outcome::refused;
    }
}

}  // namespace

TEST(StationFileMutation, GivesAStationOrAStationFileError)
{
    int stations = 0, refusals = 0;
    for (const std::string_view name : {"gate_shop.toml", "trailer_frame.toml", "trailer_readings.toml"}) {
        const std::string whole = test::content_of(test::example_file(name));
        damage on(20260701U);
        for (int round = 0; round < 3000; ++round) {
            const std::string text = on.of(whole);
            SCOPED_TRACE(round);
            (read(text) == outcome::a_station ? stations : refusals) += 1;
        }
    }
    EXPECT_GT(stations, 100);
    EXPECT_GT(refusals, 1000);
}

TEST(StationFileMutation, WhatIsReadCanBeReportedOrIsRefused)
{
    int reported = 0;
    for (const std::string_view name : {"gate_shop.toml", "trailer_frame.toml", "trailer_readings.toml"}) {
        const std::string whole = test::content_of(test::example_file(name));
        damage on(7U);
        for (int round = 0; round < 60; ++round) {
            const std::string text = on.digits_of(whole);
            SCOPED_TRACE(text);
            described_station described;
            if (read(text, &described) != outcome::a_station) continue;
            const station& s = described.station;
            try {
                const assessment found = assess(s, described.service);
                const std::vector<remedy> remedies = remedies_for(s);
                station_answers answers;
                if (described.service_is_stated) answers = answers_of(s, found, described.observations);
                EXPECT_FALSE(report_text(s, found, remedies, {.answers = answers}).empty());
                EXPECT_FALSE(report_json(s, found, remedies, {.answers = answers}).empty());
                EXPECT_FALSE(report_page(s, found, remedies, {.answers = answers}).empty());
                ++reported;
            } catch (const error& e) {
                ADD_FAILURE() << "a station within the limits of the format was refused: " << e.what();
            }
        }
    }
    EXPECT_GT(reported, 20);
}
