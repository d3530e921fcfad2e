// A case that proves nothing: it is refused, but not for the reason given.
// expect: two temperature points
#ifdef CASE_FAIL
int wrong = "text";
#else
int right = 1;
#endif
