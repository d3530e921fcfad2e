// Two points on the temperature scale added.
// expect: two temperature points cannot be added: add a temperature_difference, such as 10_K
#include <weldloop/core/literals.hpp>

namespace wl = weldloop;
using namespace wl::literals;

wl::temperature warmer()
{
#ifdef CASE_FAIL
    return 40_degC + 10_degC;
#else
    return 40_degC + 10_K;
#endif
}
