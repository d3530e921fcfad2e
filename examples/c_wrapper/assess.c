/* Reads a station file, writes its report as JSON to the standard output: assess_c bench.toml > bench.json
 * Status 0: a report; 1: the file or the station is refused; 2: a wrong call, no such file, no memory. */
#include <stdio.h>
#include <stdlib.h>

#include "weldloop_c.h"

/* One byte more than the library reads: it says itself what is too long. */
enum { most = 1024 * 1024 + 1 };

int main(int count, char** words)
{
    FILE* file;
    char* text;
    size_t length;
    weldloop_result* result;
    int status;

    if (weldloop_c_interface() != WELDLOOP_C_INTERFACE) {
        fprintf(stderr, "assess_c: the library has interface %d, not %d\n", weldloop_c_interface(),
                WELDLOOP_C_INTERFACE);
        return 2;
    }
    if (count != 2) {
        fprintf(stderr, "usage: assess_c STATION.toml (weldloop %s)\n", weldloop_version());
        return 2;
    }
    file = fopen(words[1], "rb");
    if (file == NULL) {
        perror(words[1]);
        return 2;
    }
    text = malloc(most);
    if (text == NULL) {
        fclose(file);
        fprintf(stderr, "assess_c: out of memory\n");
        return 2;
    }
    length = fread(text, 1, most, file);
    fclose(file);

    result = weldloop_assess(text, length, words[1]);
    free(text); /* it was only read */
    status = weldloop_has_report(result) ? 0 : 1;
    if (status == 0)
        fputs(weldloop_report(result), stdout);
    else
        fprintf(stderr, "%s\n", weldloop_error(result));
    weldloop_release(result);
    return fflush(stdout) == 0 ? status : 2;
}
