// The weakest part of an assessment that is gone by the end of the line, as in assess(bench).weakest().
// expect-gcc: use of deleted function .*weakest
// expect-clang: call to deleted member function 'weakest'
#include <weldloop/rating/assessment.hpp>

namespace wl = weldloop;

wl::assessment assessed();

const wl::part_result& culprit(const wl::assessment& found)
{
#ifdef CASE_FAIL
    (void)found;
    return assessed().weakest();
#else
    return found.weakest();
#endif
}
