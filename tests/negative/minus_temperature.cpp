// A minus before a temperature: -10_degC would negate 283.15 K.
// expect: a temperature has no negative: write temperature::celsius[(]-10[)]
#include <weldloop/core/literals.hpp>

namespace wl = weldloop;
using namespace wl::literals;

wl::temperature outside()
{
#ifdef CASE_FAIL
    return -10_degC;
#else
    return wl::temperature::celsius(-10);
#endif
}
