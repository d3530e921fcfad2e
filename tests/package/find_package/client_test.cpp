// A user's own test: a lead's drop by Ohm's law against a table of values worked by hand.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <weldloop/core/literals.hpp>
#include <weldloop/core/quantities.hpp>
#include <weldloop/test/matchers.hpp>
#include <weldloop/test/value_table.hpp>

using namespace weldloop;
using namespace weldloop::literals;

TEST(Client, HoldsDropsAgainstATable)
{
    const test::value_table worked("drops worked by hand, U = I R",
                                   "current_A,resistance_mohm,drop_mV\n240,0.5,120\n180,2,360\n");
    for (const test::value_table::row& row : worked.rows()) {
        const voltage drop =
            row.quantity<current>("current_A", "A") * row.quantity<resistance>("resistance_mohm", "mohm");
        EXPECT_THAT(drop, test::near_quantity(row.quantity<voltage>("drop_mV", "mV"), 1_uV)) << row.where();
    }
}
