/* stream.c - opens what is closed, and makes sure that what was printed was written. */
#include "cli/stream.h"

#include <errno.h>
#include <fcntl.h>
#include <stdarg.h>
#include <stdio.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

static bool stdout_was_closed;
static int first_failure; /* errno of the first write that failed, 0 while none did */

void stream_begin(void)
{
    stdout_was_closed = fcntl(STDOUT_FILENO, F_GETFD) < 0 && errno == EBADF;
    for (int fd = STDIN_FILENO; fd <= STDERR_FILENO; fd++) {
        if (fcntl(fd, F_GETFD) < 0 && errno == EBADF) {
            /* The lowest free descriptor is fd itself: those below it are open by now. */
            int opened = open("/dev/null", fd == STDIN_FILENO ? O_RDONLY : O_WRONLY);
            if (opened < 0) {
                return;
            }
        }
    }
}

enum { MESSAGE_MAX = 8192 };

/* Control characters, of a file's name, say: a terminal would act on them. Those of two bytes are
 * U+0080 to U+009F. */
static void mask_controls(char *text)
{
    for (char *c = text; *c != '\0'; c++) {
        unsigned char here = (unsigned char)c[0];
        unsigned char next = (unsigned char)c[1];
        if (here < ' ' || here == 127) {
            *c = '?';
        } else if (here == 0xC2 && next >= 0x80 && next <= 0x9F) {
            c[0] = c[1] = '?';
        }
    }
}

void complain(const char *format, ...)
{
    char text[MESSAGE_MAX];
    va_list values;
    va_start(values, format);
    stream_flush();
    (void)vsnprintf(text, sizeof text, format, values);
    va_end(values);
    mask_controls(text);
    (void)fprintf(stderr, "holdwater: %s\n", text);
}

void stream_write(const char *text, size_t n)
{
    errno = 0;
    if (fwrite(text, 1, n, stdout) != n && first_failure == 0) {
        first_failure = errno;
    }
}

bool stream_apart(int input)
{
    struct stat in = {.st_mode = 0};
    struct stat out = {.st_mode = 0};
    bool same = fstat(input, &in) == 0 && fstat(STDOUT_FILENO, &out) == 0 && S_ISREG(in.st_mode) &&
                in.st_dev == out.st_dev && in.st_ino == out.st_ino;
    if (same) {
        complain("the rows come from the file that the answers go to: write them to another one");
    }
    return !same;
}

void stream_flush(void)
{
    errno = 0;
    if (fflush(stdout) != 0 && first_failure == 0) {
        first_failure = errno;
    }
}

int stream_end(int status)
{
    bool tried = !stdout_was_closed;
    errno = first_failure;
    bool failed = ferror(stdout) != 0;
    failed = fflush(stdout) != 0 || failed;
    int cause = errno;
    failed = fclose(stdout) != 0 || failed;
    cause = cause ? cause : errno;
    if (!tried && status != EXIT_ASKED_WRONGLY) {
        (void)fputs("holdwater: standard output is closed: the answer was not written\n", stderr);
        return EXIT_ASKED_WRONGLY;
    }
    if (tried && failed) {
        (void)fprintf(stderr, "holdwater: could not write the answer: %s\n",
                      cause ? strerror(cause) : "output error");
        return EXIT_ASKED_WRONGLY;
    }
    /* A message that is lost may be a caution. One that is not wanted goes to /dev/null. */
    return ferror(stderr) != 0 ? EXIT_ASKED_WRONGLY : status;
}
