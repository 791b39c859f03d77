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

static enum state state_of(int file)
{
    struct stat info;
    char start[sizeof header] = "";
    char last = '\n';
    if (fstat(file, &info) != 0 || !S_ISREG(info.st_mode)) {
        return NO_FILE;
    }
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
static void lock_whole(int file)
{
    struct flock whole = {.l_type = F_WRLCK, .l_whence = SEEK_SET};
    while (fcntl(file, F_SETLKW, &whole) != 0 && errno == EINTR) {
    }
}

/* One buffer holds all of it: it goes out in one write. */
static bool write_record(const struct report *report, FILE *out, enum state state)
{
    static char room[RECORD_MAX];
    (void)setvbuf(out, room, _IOFBF, sizeof room);
    if (state == NEW) {
        (void)fputs(header, out);
    } else if (state == UNENDED) {
        (void)fputc('\n', out); /* the line before was not ended */
    }
    report_log(report, out);
    bool fine = fflush(out) == 0 && !ferror(out);
    bool kept = fine && (fsync(fileno(out)) == 0 || errno == EINVAL); /* a disk without it */
    int cause = errno;
    bool closed = fclose(out) == 0;
    errno = kept ? errno : cause;
    return kept && closed;
}

bool logbook_append(const struct report *report)
{
    const char *name = report->args->log;
    char shown[SHOWN_MAX];
    (void)show_text((struct hw_text){name, strlen(name)}, shown);
    int file = open(name, O_RDWR | O_APPEND | O_CREAT | O_CLOEXEC | O_NONBLOCK, 0666);
    FILE *out = file < 0 ? NULL : fdopen(file, "a+");
    if (!out) {
        complain("could not write to the logbook %s: %s", shown, strerror(errno));
        return false;
    }
    lock_whole(file);
    enum state state = state_of(file);
    if (state == FOREIGN || state == NO_FILE) {
        if (state == NO_FILE) {
            complain("%s keeps nothing: a logbook is a file", shown);
        } else {
            complain("%s is no logbook: its first line is not %.*s", shown, (int)sizeof header - 2,
                     header);
        }
        (void)fclose(out);
        return false;
    }
    if (!write_record(report, out, state)) {
        complain("could not write to the logbook %s: %s", shown, strerror(errno));
        return false;
    }
    return true;
}
