// A resistance compared with a length.
// expect-gcc: no match for 'operator<' .operand types are 'weldloop::resistance'.*'weldloop::length'
// expect-clang: invalid operands to binary expression .'wl::resistance'.*'wl::length'
#include <weldloop/core/literals.hpp>

namespace wl = weldloop;
using namespace wl::literals;

bool smaller(wl::resistance joint, wl::length lead)
{
#ifdef CASE_FAIL
    return joint < lead;
#else
    return joint < 2_uohm && lead < 3_m;
#endif
}
