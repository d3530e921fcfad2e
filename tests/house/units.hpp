#pragma once
// What first_unit.cpp and second_unit.cpp, each including the whole library, tell one_definition_test.cpp.

#include <array>

std::array<const void*, 2> addresses_in_first_unit();
std::array<const void*, 2> addresses_in_second_unit();
