// A number without a unit given as a current.
// expect-gcc: could not convert '2.6e\+2'
// expect-clang: no viable conversion from .*'double' to .*'wl::current'
// at-most-gcc: 20
// at-most-clang: 22
// at-most-clang: 20 -fshow-overloads=best
#include <weldloop/core/literals.hpp>

namespace wl = weldloop;
using namespace wl::literals;

wl::current setting()
{
#ifdef CASE_FAIL
    return 260.0;
#else
    return 260_A;
#endif
}
