/* logbook.c - the file beside the tank that gets a line for each answer. */
#include "cli/logbook.h"

#include "cli/report_log.h"
#include "cli/stream.h"
#include "cli/wording.h"

#include <errno.h>
#include <fcntl.h>
#include <stdio.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

enum { RECORD_MAX = 1 << 16 };

/* What stands in the file already. A pipe or a device keeps nothing that it is given. */
enum state { NEW, LOGBOOK, UNENDED, FOREIGN, NO_FILE };

static const char header[] = REPORT_LOG_HEADER;

/* And where it ends. */
static enum state state_of(int file, off_t *end)
{
    struct stat info = {.st_mode = 0};
    char start[sizeof header] = "";
    char last = '\n';
    if (fstat(file, &info) != 0 || !S_ISREG(info.st_mode)) {
        return NO_FILE;
    }
    *end = info.st_size;
    if (info.st_size == 0) {
        return NEW;
    }
    bool begins = pread(file, start, sizeof header - 1, 0) == (ssize_t)sizeof header - 1 &&
                  memcmp(start, header, sizeof header - 1) == 0;
    if (!begins || pread(file, &last, 1, info.st_size - 1) != 1) {
        return FOREIGN;
    }
    return last == '\n' ? LOGBOOK : UNENDED;
}

/* Waits until no other of our kind writes, so that of two that find a new file one alone heads it.
 * Where the file system has no locks, what is written is still one write to the end of the file. */
static bool lock_whole(int file)
{
    struct flock whole = {.l_type = F_WRLCK, .l_whence = SEEK_SET};
    int got = 0;
    while ((got = fcntl(file, F_SETLKW, &whole)) != 0 && errno == EINTR) {
    }
    return got == 0;
}

/* What is to be written, all of it, so that it goes out in one write; its length, or 0 when there
 * is no memory. */
static size_t record_text(const struct report *report, enum state state, char text[RECORD_MAX])
{
    FILE *out = fmemopen(text, RECORD_MAX, "w");
    if (!out) {
        return 0;
    }
    if (state == NEW) {
        (void)fputs(header, out);
    } else if (state == UNENDED) {
        (void)fputc('\n', out); /* the line before was not ended */
    }
    report_log(report, out);
    bool fine = fflush(out) == 0 && !ferror(out);
    long n = ftell(out);
    (void)fclose(out);
    return fine && n > 0 ? (size_t)n : 0;
}

static bool write_whole(int file, const char *text, size_t n)
{
    while (n > 0) {
        ssize_t written = write(file, text, n);
        if (written > 0) {
            text += written;
            n -= (size_t)written;
        } else if (written == 0 || errno != EINTR) {
            return false;
        }
    }
    return true;
}

/* Writes a record at the end of the file, and waits until it is kept. Of one that found no room
 * what is there already is taken away, where no other of our kind can have written behind it. */
static bool write_record(const struct report *report, int file, enum state state, off_t end,
                         bool locked)
{
    static char text[RECORD_MAX];
    size_t n = record_text(report, state, text);
    bool written = n > 0 && write_whole(file, text, n);
    int cause = errno;
    if (!written) {
        bool back = n > 0 && locked && ftruncate(file, end) == 0;
        (void)back; /* if not, the next record starts a line of its own */
    }
    bool kept = written && (fsync(file) == 0 || errno == EINVAL); /* a disk without it */
    cause = written ? errno : cause;
    bool closed = close(file) == 0;
    errno = kept ? errno : cause;
    return kept && closed;
}

bool logbook_append(const struct report *report)
{
    const char *name = report->args->log;
    char shown[SHOWN_MAX];
    off_t end = 0;
    (void)show_text((struct hw_text){name, strlen(name)}, shown);
    int file = open(name, O_RDWR | O_APPEND | O_CREAT | O_CLOEXEC | O_NONBLOCK, 0666);
    if (file < 0) {
        complain("could not write to the logbook %s: %s", shown, strerror(errno));
        return false;
    }
    bool locked = lock_whole(file);
    enum state state = state_of(file, &end);
    if (state == FOREIGN || state == NO_FILE) {
        if (state == NO_FILE) {
            complain("%s keeps nothing: a logbook is a file", shown);
        } else {
            complain("%s is no logbook: its first line is not %.*s", shown, (int)sizeof header - 2,
                     header);
        }
        (void)close(file);
        return false;
    }
    if (!write_record(report, file, state, end, locked)) {
        complain("could not write to the logbook %s: %s", shown, strerror(errno));
        return false;
    }
    return true;
}
