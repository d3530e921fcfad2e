// Seconds given as the length of a lead.
// expect: is_implicitly_convertible
// expect: length_base_dimension.*time_base_dimension|time_base_dimension.*length_base_dimension
#include <weldloop/core/literals.hpp>
#include <weldloop/part/cable.hpp>

namespace wl = weldloop;
using namespace wl::literals;

void cut(wl::cable& lead)
{
#ifdef CASE_FAIL
    lead.length = 12_s;
#else
    lead.length = 12_m;
#endif
}
