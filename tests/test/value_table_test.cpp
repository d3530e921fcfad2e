#include <stdexcept>
#include <string>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <weldloop/core/literals.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/test/matchers.hpp>
#include <weldloop/test/value_table.hpp>

namespace {

using weldloop::test::value_table;

std::string fault_of(const std::string& content)
{
    try {
        const value_table table("sheet.csv", content);
    } catch (const std::runtime_error& fault) {
        return fault.what();
    }
    return "none";
}

}  // namespace

TEST(ValueTable, ReachesCellsByColumnName)
{
    const value_table table("sheet.csv", "size,area_mm2,note\n2/0,67.43,\n1/0,53.48,seen\n");
    ASSERT_EQ(table.rows().size(), 2u);
    const value_table::row& first = table.rows()[0];
    EXPECT_EQ(first.text("size"), "2/0");
    EXPECT_DOUBLE_EQ(first.number("area_mm2"), 67.43);
    EXPECT_EQ(first.text("note"), "");
    EXPECT_FALSE(first.has("note"));
    EXPECT_FALSE(first.has("weight"));
    EXPECT_TRUE(table.rows()[1].has("note"));
    EXPECT_EQ(table.rows()[1].where(), "sheet.csv:3");
}

TEST(ValueTable, ReadsQuotesAsRfc4180WritesThem)
{
    const value_table table("sheet.csv", "source,value\n\"Tables, \"\"old\"\" set\",1\n\"two\nlines\",2\n\"\",3\n");
    ASSERT_EQ(table.rows().size(), 3u);
    EXPECT_EQ(table.rows()[0].text("source"), "Tables, \"old\" set");
    EXPECT_EQ(table.rows()[1].text("source"), "two\nlines");
    EXPECT_FALSE(table.rows()[2].has("source"));
    EXPECT_EQ(table.rows()[2].where(), "sheet.csv:5");
}

TEST(ValueTable, SkipsCommentsAndBlankLines)
{
    const value_table table("sheet.csv", "# from a handbook, 3rd ed.\n\nvalue\n# \"unclosed\n1e-3\n\n\"#2\"\n");
    ASSERT_EQ(table.rows().size(), 2u);
    EXPECT_DOUBLE_EQ(table.rows()[0].number("value"), 1e-3);
    EXPECT_EQ(table.rows()[1].text("value"), "#2");
}

TEST(ValueTable, AcceptsCarriageReturnsAndNoFinalNewline)
{
    const value_table table("sheet.csv", "first,second\r\n1,2\r\n3,4");
    ASSERT_EQ(table.rows().size(), 2u);
    EXPECT_DOUBLE_EQ(table.rows()[0].number("second"), 2.0);
    EXPECT_DOUBLE_EQ(table.rows()[1].number("second"), 4.0);
}

TEST(ValueTable, NamesFileAndLineOfAFault)
{
    EXPECT_EQ(fault_of(""), "sheet.csv:1: no rows");
    EXPECT_EQ(fault_of("size\n"), "sheet.csv:2: no rows");
    EXPECT_EQ(fault_of("size,size\n1,2\n"), "sheet.csv:1: column 'size' twice");
    EXPECT_EQ(fault_of("size,\n1,2\n"), "sheet.csv:1: a column without a name");
    EXPECT_EQ(fault_of("size,area\n1,2\n3\n"), "sheet.csv:3: 1 cell(s) where the header has 2");
    EXPECT_EQ(fault_of("size\n\"open\n\n"), "sheet.csv:2: a quote is not closed");
    EXPECT_EQ(fault_of("size\n2\" pipe\n"), "sheet.csv:2: a quote must enclose the whole cell");
    EXPECT_EQ(fault_of("size\n\"2\" pipe\n"), "sheet.csv:2: a quote must enclose the whole cell");
}

TEST(ValueTable, RefusesWhatIsNoNumber)
{
    const value_table table("sheet.csv", "value\n12 V\n\"\"\nnan\n");
    for (const value_table::row& row : table.rows()) EXPECT_THROW((void)row.number("value"), std::runtime_error);
    try {
        (void)table.rows()[0].number("value");
    } catch (const std::runtime_error& fault) {
        EXPECT_STREQ(fault.what(), "sheet.csv:2: '12 V' in column 'value' is not a number");
    }
    EXPECT_THROW((void)table.rows()[0].text("volts"), std::runtime_error);
}

TEST(ValueTable, GivesACellItsUnit)
{
    using namespace weldloop;
    using namespace weldloop::literals;
    const value_table table("sheet.csv", "# hand calculation\ndrop_mV,length_ft\n1250,50\n,7\n");
    const value_table::row& first = table.rows()[0];
    EXPECT_THAT(first.quantity<voltage>("drop_mV", "mV"), test::near_quantity(1.25_V, 1e-12 * 1_V));
    EXPECT_THAT(first.quantity<length>("length_ft", "ft"), test::near_quantity(15.24_m, 1e-12 * 1_m));
    EXPECT_THROW((void)table.rows()[1].quantity<voltage>("drop_mV", "mV"), std::runtime_error);
}

TEST(ValueTable, SaysWhichFileIsMissing)
{
    try {
        const value_table table = value_table::from_file("no_such_table.csv");
        ADD_FAILURE() << "was read";
    } catch (const std::runtime_error& fault) {
        EXPECT_THAT(fault.what(), testing::HasSubstr("no_such_table.csv: cannot be read"));
    }
}
