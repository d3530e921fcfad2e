// A file is written as a whole or not at all.
#include <filesystem>
#include <iterator>
#include <string>
#include <vector>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "io/example_stations.hpp"

#include <weldloop/io/report/report_folder.hpp>
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

TEST_F(WriteFile, WritesAllOrNone)
{
    write_file(folder_ / "a", "old");
    fs::create_directories(folder_ / "b" / "inside");
    // the second cannot be written: the first is as it was, the third is not there
    const std::vector<file_content> files{{folder_ / "a", "new"}, {folder_ / "b", "new"}, {folder_ / "c", "new"}};
    EXPECT_THROW(write_files(files), file_write_error);
    EXPECT_EQ(test::content_of(folder_ / "a"), "old");
    EXPECT_FALSE(fs::exists(folder_ / "c"));
    EXPECT_EQ(entries(), 2U);
    // the second fails when the first has its name already: its own is taken away by the first
    const std::vector<file_content> late{{folder_ / "a", "new"}, {folder_ / "a" / "below", "new"}};
    EXPECT_THROW(write_files(late), file_write_error);
    EXPECT_EQ(test::content_of(folder_ / "a"), "old");
    const std::vector<file_content> good{{folder_ / "a", "new"}, {folder_ / "c", "other"}};
    write_files(good);
    EXPECT_EQ(test::content_of(folder_ / "a"), "new");
    EXPECT_EQ(test::content_of(folder_ / "c"), "other");
    EXPECT_EQ(entries(), 3U);
}

TEST_F(WriteFile, PutsBackWhatItSetAsideWhenALaterNameFails)
{
    const fs::path deep = folder_ / "deep";
    write_file(folder_ / "a", "old");
    write_file(deep / "b", "old");
    {
        const fs::path part = folder_ / "a.new";
        write_file(part, "new");
        const detail::renaming first(part, folder_ / "a");
        EXPECT_EQ(test::content_of(folder_ / "a"), "new");
        EXPECT_THROW(detail::renaming(folder_ / "not there", deep / "b"), file_write_error);
        EXPECT_EQ(test::content_of(deep / "b"), "old");
    }
    EXPECT_EQ(test::content_of(folder_ / "a"), "old");
    EXPECT_EQ(entries(), 2U);
}

TEST_F(WriteFile, NoReportTakesThePlaceOfAnothers)
{
    const auto written = [&](const char* stem, const char* origin, const char* content) {
        return write_documents(folder_, {stem, origin}, {{".json", content}, {".html", content}}).front().filename();
    };
    EXPECT_EQ(plain_stem("x/a b.toml"), plain_stem("a_b.toml"));
    EXPECT_EQ(written("a_b", "/x/a b.toml", "1"), "a_b.json");
    EXPECT_EQ(written("a_b", "/x/a_b.toml", "2"), "a_b-2.json");
    EXPECT_EQ(written("A_b", "/x/A_b.toml", "3"), "A_b-3.json");  // a file system may know no case
    EXPECT_EQ(test::content_of(folder_ / "a_b.html"), "1");
    // its own place is kept
    EXPECT_EQ(written("a_b", "/x/a b.toml", "4"), "a_b.json");
    EXPECT_EQ(written("a_b", "/x/a_b.toml", "5"), "a_b-2.json");
    EXPECT_EQ(test::content_of(folder_ / "a_b.html"), "4");
    EXPECT_EQ(test::content_of(folder_ / "a_b-2.html"), "5");
    // a file that nobody knows stays, be it only one of the two
    write_file(folder_ / "c.html", "mine");
    EXPECT_EQ(written("c", "/x/c.toml", "6"), "c-2.json");
    EXPECT_EQ(test::content_of(folder_ / "c.html"), "mine");
    // the list itself is no report
    EXPECT_EQ(written("written", "/x/written.toml", "7"), "written-2.json");
    // a list that cannot be read is not guessed
    write_file(folder_ / "written.json", "[]");
    EXPECT_THROW(written("a_b", "/x/a b.toml", "8"), file_write_error);
    EXPECT_EQ(test::content_of(folder_ / "a_b.html"), "4");
}
