// A case that proves nothing: it does not say what it waits for.
#ifdef CASE_FAIL
int wrong = "text";
#else
int right = 1;
#endif
