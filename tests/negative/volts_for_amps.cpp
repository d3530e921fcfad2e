// Volts given where amperes are wanted.
// expect-gcc: could not convert .*operator""_V.* to '[^']*current_base_dimension,static_rational<1>
// expect-clang: no viable conversion from .* to .*current_base_dimension
// expect-clang: no known conversion from 'weldloop::voltage'
#include <weldloop/core/literals.hpp>
#include <weldloop/rating/lead/drop.hpp>

namespace wl = weldloop;
using namespace wl::literals;

wl::voltage drop_over(const wl::cable& lead)
{
#ifdef CASE_FAIL
    return wl::drop_of(lead, 260_V, 60_degC);
#else
    return wl::drop_of(lead, 260_A, 60_degC);
#endif
}
