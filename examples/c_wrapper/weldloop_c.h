/* A station file in, a report out, for C and whatever calls C: one shared library around weldloop.
 *
 * Memory: weldloop_assess() gives a result that the caller returns with weldloop_release(), once. Texts belong to their
 * result and die with it; that of weldloop_version() is static. What is passed in is only read, during the call.
 * Errors: no exception leaves a function; every function may be given a null result.
 * Threads: nothing is shared between calls. One result is not released while another thread reads it.
 * Names: UTF-8, ended by a null; the length of the text of a station file is given, so it needs none.
 */
#ifndef WELDLOOP_C_H
#define WELDLOOP_C_H

#include <stddef.h>

#ifdef __cplusplus
extern "C" {
#endif

/* Rises when a function goes or changes its meaning: what the caller was compiled with, and what it has loaded. */
#define WELDLOOP_C_INTERFACE 1
int weldloop_c_interface(void);

/* Of the library inside: "0.1.0". */
const char* weldloop_version(void);

/* One report, or why there is none. */
typedef struct weldloop_result weldloop_result;

/* Reads the text of a station file (at most 1 MiB), assesses the station and writes its report as JSON.
 * text: null only with length 0; length: in bytes; file_name: how messages call the file, null for none
 * Returns null only where not even the result finds memory. */
weldloop_result* weldloop_assess(const char* text, size_t length, const char* file_name);

/* Whether there is a report: 1 or 0; 0 of null. */
int weldloop_has_report(const weldloop_result* result);

/* The report as JSON (docs/schema/station_report.schema.json), UTF-8, without a null inside; "" where there is none. */
const char* weldloop_report(const weldloop_result* result);

/* Why there is none: "bench.toml:4:3: ..."; "" where there is one, "out of memory" of null. */
const char* weldloop_error(const weldloop_result* result);

/* The library's number of that error, 101 and up; 0 where there is none or it has none. */
int weldloop_error_number(const weldloop_result* result);

/* Gives a result back; null is none. */
void weldloop_release(weldloop_result* result);

#ifdef __cplusplus
}
#endif

#endif
