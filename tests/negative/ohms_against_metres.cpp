// A resistance compared with a length.
// expect-gcc: use of deleted function .*two_kinds_of_quantity_cannot_be_compared
// expect-clang: two_kinds_of_quantity_cannot_be_compared
// at-most-gcc: 20
// at-most-clang: 20
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
