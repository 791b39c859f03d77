/* capture.c - keeps what is printed on both streams. */
#include "capture.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>
#include <unistd.h>

#include <cmocka.h>

static char said[CAPTURE_MAX];
static FILE *kept;
static int streams[2];

void capture_begin(void)
{
    kept = tmpfile();
    assert_non_null(kept);
    (void)fflush(stdout);
    (void)fflush(stderr);
    streams[0] = dup(STDOUT_FILENO);
    streams[1] = dup(STDERR_FILENO);
    (void)dup2(fileno(kept), STDOUT_FILENO);
    (void)dup2(fileno(kept), STDERR_FILENO);
}

const char *capture_end(void)
{
    (void)fflush(stdout);
    (void)fflush(stderr);
    (void)dup2(streams[0], STDOUT_FILENO);
    (void)dup2(streams[1], STDERR_FILENO);
    (void)close(streams[0]);
    (void)close(streams[1]);
    rewind(kept);
    said[fread(said, 1, sizeof said - 1, kept)] = '\0';
    (void)fclose(kept);
    return said;
}

void capture_expect(const char *text)
{
    if (!strstr(said, text)) {
        fail_msg("'%s' does not hold '%s'", said, text);
    }
}
