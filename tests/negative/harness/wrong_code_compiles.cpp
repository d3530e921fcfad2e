// A case that proves nothing: its wrong code is right.
// expect: error
#ifdef CASE_FAIL
int wrong = 1;
#else
int right = 1;
#endif
