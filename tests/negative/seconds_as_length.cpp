// Seconds assigned to a length.
// expect: is_implicitly_convertible
// expect: length_base_dimension.*time_base_dimension|time_base_dimension.*length_base_dimension
#include <weldloop/core/literals.hpp>

namespace wl = weldloop;
using namespace wl::literals;

void set(wl::length& lead)
{
#ifdef CASE_FAIL
    lead = 12_s;
#else
    lead = 12_m;
#endif
}
