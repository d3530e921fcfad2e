// A length given for an area.
// expect-gcc: could not convert
// expect-clang: no matching function for call to .section.
// at-most-gcc: 20
// at-most-clang: 20
#include <weldloop/core/literals.hpp>

namespace wl = weldloop;
using namespace wl::literals;

wl::area section(wl::area a)
{
    return a;
}

wl::area face()
{
#ifdef CASE_FAIL
    return section(3_m);
#else
    return section(3_m * 2_m);
#endif
}
