/* input.c - opens and reads. Every file that the program reads is opened here. */
#define _GNU_SOURCE /* F_SETPIPE_SZ, where Linux has it */
#include "cli/input.h"

#include "cli/stream.h"

#include <errno.h>
#include <fcntl.h>
#include <poll.h>
#include <stdio.h>
#include <string.h>
#include <unistd.h>

enum { PIPE_SIZE = 1 << 20, READ_SIZE = 1 << 17 };

const char *input_name(const struct input *input)
{
    return strcmp(input->name, "-") == 0 ? "standard input" : input->name;
}

/* Descriptors 0 to 2 are the standard streams, even when the program was started without them. */
static int open_above_streams(const char *name)
{
    int descriptor = open(name, O_RDONLY | O_CLOEXEC);
    if (descriptor < 0 || descriptor > STDERR_FILENO) {
        return descriptor;
    }
    int moved = fcntl(descriptor, F_DUPFD_CLOEXEC, STDERR_FILENO + 1);
    (void)close(descriptor);
    return moved;
}

/* A larger pipe halves the cost of reading from one. A wish: refusals do not matter. */
static void widen_pipe(int descriptor)
{
#ifdef F_SETPIPE_SZ
    (void)fcntl(descriptor, F_SETPIPE_SZ, PIPE_SIZE);
#else
    (void)descriptor;
#endif
}

bool input_open(struct input *input, const char *name)
{
    bool standard = strcmp(name, "-") == 0;
    input->name = name;
    input->at_end = false;
    input->begin = input->end = 0;
    input->scan = (struct csv_scan){.done = 0};
    input->descriptor = standard ? STDIN_FILENO : open_above_streams(name);
    if (input->descriptor < 0) {
        complain("cannot open %s: %s", name, strerror(errno));
        return false;
    }
    if (standard && isatty(STDIN_FILENO)) {
        complain("reading rows from the terminal: the header first, Ctrl-D ends");
    }
    widen_pipe(input->descriptor);
    widen_pipe(STDOUT_FILENO);
    return true;
}

/* True once there is something to read from a descriptor that its opener does not let wait. */
static bool waits(int descriptor)
{
    int cause = errno;
    struct pollfd wanted = {.fd = descriptor, .events = POLLIN};
    bool fine = (cause == EAGAIN || cause == EWOULDBLOCK) && poll(&wanted, 1, -1) >= 0;
    errno = cause;
    return fine;
}

bool input_fill(struct input *input)
{
    /* What is left is moved when that is less than what is done with, so that each byte is moved
     * once or so; and a file of short records stays in a small part of the room. */
    size_t left = input->end - input->begin;
    bool full = INPUT_ROOM - input->end < READ_SIZE;
    if (input->begin > 0 && (full || left < input->begin)) {
        memmove(input->text, input->text + input->begin, left);
        input->end = left;
        input->begin = 0;
    }
    ssize_t got = 0;
    size_t room = INPUT_ROOM - input->end;
    do {
        got =
            read(input->descriptor, input->text + input->end, room < READ_SIZE ? room : READ_SIZE);
    } while (got < 0 && (errno == EINTR || waits(input->descriptor)));
    if (got < 0) {
        complain("cannot read %s: %s", input_name(input), strerror(errno));
        return false;
    }
    input->at_end = got == 0;
    input->end += (size_t)got;
    return true;
}

void input_close(struct input *input)
{
    if (input->descriptor > STDERR_FILENO) {
        (void)close(input->descriptor);
    }
    input->descriptor = -1;
}

void input_skip_mark(struct input *input)
{
    static const char mark[] = "\xEF\xBB\xBF";
    if (input->end - input->begin >= 3 && memcmp(input->text + input->begin, mark, 3) == 0) {
        input->begin += 3;
    }
}
