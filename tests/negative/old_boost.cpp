// A Boost older than 1.74 is named as what is wrong.
// expect: weldloop needs Boost 1.74 or later
// at-most-gcc: 20
// at-most-clang: 20
#ifdef CASE_FAIL
#include <boost/version.hpp>
#undef BOOST_VERSION
#define BOOST_VERSION 107300
#endif
#include <weldloop/core/literals.hpp>

namespace wl = weldloop;
using namespace wl::literals;

wl::length lead()
{
    return 40_ft;
}
