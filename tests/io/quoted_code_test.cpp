// The code that docs/pages/report.md shows, compiled and run; tests/house/quoted_code_test.cpp holds the page to it.
#include <filesystem>
#include <fstream>
#include <string>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <weldloop/io/report/report_json.hpp>
#include <weldloop/io/station/station_file.hpp>
#include <weldloop/rating/assess.hpp>
#include <weldloop/rating/remedies.hpp>

#include "io/example_stations.hpp"

TEST(QuotedCode, ReportFromAProgram)
{
    const std::filesystem::path before = std::filesystem::current_path(),
                                folder = std::filesystem::path(testing::TempDir()) / "weldloop_quoted_report";
    std::filesystem::create_directories(folder);
    std::filesystem::copy_file(weldloop::test::example_file("gate_shop.toml"), folder / "bench.toml",
                               std::filesystem::copy_options::overwrite_existing);
    std::filesystem::current_path(folder);

    const weldloop::described_station d = weldloop::read_described_station("bench.toml");
    const weldloop::assessment found = weldloop::assess(d.station, d.service);
    const std::string json = weldloop::report_json(d.station, found, weldloop::remedies_for(d.station),
                                                   {.answers = weldloop::answers_of(d.station, found, d.observations)});

    std::filesystem::current_path(before);
    EXPECT_THAT(json, testing::HasSubstr("\"" + d.station.name + "\""));
    EXPECT_THAT(json, testing::HasSubstr("\"life\""));
}
