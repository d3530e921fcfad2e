// A case that proves nothing: it would fail for another reason.
// expect: error
#include <no_such_header>
#ifdef CASE_FAIL
int wrong = "text";
#else
int right = 1;
#endif
