// Volts given where amperes are wanted.
// expect-gcc: could not convert .*operator""_V.* to '[^']*current_base_dimension,static_rational<1>
// expect-clang: no matching function for call to 'heat_in'
// expect-clang: no known conversion .* for 2nd argument
#include <weldloop/core/literals.hpp>

namespace wl = weldloop;
using namespace wl::literals;

wl::power heat_in(wl::resistance ohms, wl::current amps)
{
    return ohms * amps * amps;
}

wl::power heat()
{
#ifdef CASE_FAIL
    return heat_in(100_uohm, 260_V);
#else
    return heat_in(100_uohm, 260_A);
#endif
}
