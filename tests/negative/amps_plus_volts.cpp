// Amperes and volts added.
// expect-gcc: use of deleted function .*two_kinds_of_quantity_have_no_sum
// expect-clang: two_kinds_of_quantity_have_no_sum
// at-most-gcc: 20
// at-most-clang: 20
#include <weldloop/core/literals.hpp>

namespace wl = weldloop;
using namespace wl::literals;

auto total()
{
#ifdef CASE_FAIL
    return 3_A + 2_V;
#else
    return 3_A + 2_A;
#endif
}
