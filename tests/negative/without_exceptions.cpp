// A unit compiled without exceptions that includes the library. A unit of that sort may call such functions as ask
// through attempt() in a unit with exceptions; those of examples/c_wrapper are some.
// flags-of-the-wrong: -fno-exceptions
// expect: error: .*weldloop needs exceptions in the units that include it
// expect: use attempt\(\)
// at-most-gcc: 5
// at-most-clang: 10
#include <weldloop/core/attempt.hpp>
