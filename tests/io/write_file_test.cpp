// A file is written as a whole or not at all.
#include <filesystem>
#include <iterator>
#include <string>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "io/example_stations.hpp"

#include <weldloop/io/report/write_file.hpp>

using namespace weldloop;
namespace fs = std::filesystem;

namespace {

class WriteFile : public testing::Test {
protected:
    WriteFile()
    {
        const testing::TestInfo* test = testing::UnitTest::GetInstance()->current_test_info();
        folder_ =
            fs::temp_directory_path() /
            ("weldloop_" + std::string(test->name()) + std::to_string(testing::UnitTest::GetInstance()->random_seed()) +
             std::to_string(fs::file_time_type::clock::now().time_since_epoch().count()));
        fs::create_directories(folder_);
    }
    ~WriteFile() override { fs::remove_all(folder_); }

    [[nodiscard]] std::size_t entries() const
    {
        return static_cast<std::size_t>(std::distance(fs::directory_iterator(folder_), fs::directory_iterator()));
    }

    fs::path folder_;
};

}  // namespace

TEST_F(WriteFile, WritesAndReplaces)
{
    const fs::path file = folder_ / "report.json";
    write_file(file, "one");
    EXPECT_EQ(test::content_of(file), "one");
    write_file(file, std::string("two\0\n", 5));
    EXPECT_EQ(test::content_of(file), std::string("two\0\n", 5));
    write_file(file, "");
    EXPECT_EQ(test::content_of(file), "");
    EXPECT_EQ(entries(), 1U);
}

TEST_F(WriteFile, MakesItsFolder)
{
    write_file(folder_ / "a" / "b" / "c.txt", "x");
    EXPECT_EQ(test::content_of(folder_ / "a" / "b" / "c.txt"), "x");
}

TEST_F(WriteFile, LeavesNothingWhereItCannotWrite)
{
    // a folder stands where the file should
    fs::create_directories(folder_ / "taken" / "inside");
    EXPECT_THROW(write_file(folder_ / "taken", "x"), file_write_error);
    EXPECT_EQ(entries(), 1U);
    // a file stands where the folder should
    write_file(folder_ / "file", "old");
    EXPECT_THROW(write_file(folder_ / "file" / "below", "x"), file_write_error);
    EXPECT_EQ(test::content_of(folder_ / "file"), "old");
    EXPECT_EQ(entries(), 2U);
}

TEST_F(WriteFile, SaysWhichFileAndWhy)
{
    fs::create_directories(folder_ / "taken" / "inside");
    try {
        write_file(folder_ / "taken", "x");
        FAIL();
    } catch (const file_write_error& e) {
        EXPECT_THAT(e.what(), testing::HasSubstr("taken"));
        EXPECT_EQ(static_cast<int>(e.id()), 108);
    }
}
