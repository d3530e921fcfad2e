// Two translation units include every header and are linked into this program: a function or constant that is not
// inline would be defined twice (the link fails) or be another object in each unit (the test fails).
#include <gtest/gtest.h>

#include "house/units.hpp"

TEST(OneDefinition, ConstantsAreTheSameObjectInEveryUnit)
{
    EXPECT_EQ(addresses_in_first_unit(), addresses_in_second_unit());
}
