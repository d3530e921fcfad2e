// The other of two translation units that include the whole library; see one_definition_test.cpp.
#include "house/units.hpp"

#undef WELDLOOP_BODIES_APART  // here with every body, as in a program of one unit
#include <weldloop/weldloop.hpp>

std::array<const void*, 2> addresses_in_second_unit()
{
    return {&weldloop::version_minor, &weldloop::annealed_copper};
}
