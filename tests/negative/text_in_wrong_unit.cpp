// A current written in volts; the unit's text is checked when the program is compiled.
// expect: this_unit_does_not_measure_this_quantity
#include <string>

#include <weldloop/core/literals.hpp>
#include <weldloop/core/text.hpp>

namespace wl = weldloop;
using namespace wl::literals;

std::string shown()
{
#ifdef CASE_FAIL
    return wl::to_text(260_A, "V");
#else
    return wl::to_text(260_A, "A");
#endif
}
