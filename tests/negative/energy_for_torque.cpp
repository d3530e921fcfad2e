// Newtons times metres are joules; a torque turns.
// expect-gcc: could not convert
// expect-clang: no viable conversion
// at-most-gcc: 20
// at-most-clang: 22
// at-most-clang: 20 -fshow-overloads=best
#include <weldloop/core/literals.hpp>

namespace wl = weldloop;
using namespace wl::literals;

wl::torque turned()
{
#ifdef CASE_FAIL
    return 3_N * 2_m;
#else
    return 6_Nm;
#endif
}
