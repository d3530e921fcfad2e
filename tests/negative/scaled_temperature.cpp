// A temperature point doubled; its distance from absolute zero may be.
// expect-gcc: no match for 'operator[*]' .operand types are 'weldloop::temperature' and 'double'
// expect-clang: invalid operands to binary expression .'weldloop::temperature' and 'double'
#include <weldloop/core/literals.hpp>

namespace wl = weldloop;
using namespace wl::literals;

auto doubled()
{
#ifdef CASE_FAIL
    return 40_degC * 2.0;
#else
    return (40_degC).above_absolute_zero() * 2.0;
#endif
}
