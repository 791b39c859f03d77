/* fuzz_argv.c - any bytes as a command line (see command_line.h): the whole program but for main.
 * It ends with a status that it has, prints something when it says that it has answered, prints no
 * control character where people read, logs whole lines, and the order of options is nothing to
 * it. Files are in memory; what prints is read back from there. */
#define _GNU_SOURCE /* memfd_create */
#define main        holdwater_main
#include "../../src/cli/main.c"
#undef main

#include "command_line.h"

#include <stdlib.h>
#include <sys/mman.h>
#include <sys/wait.h>
#include <unistd.h>

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);
void __sanitizer_set_report_fd(void *fd);

enum { PRINTED_MAX = 1 << 22 };

static const char tanks_text[] = "tank,volume_L,temp_degC,salinity_g_kg,medicine\n"
                                 "alder,75,25.2,33.5,none\nbirch,110,25.5,33.0,copper-amine\n";

static struct {
    int out, err;           /* what the program prints to, in memory */
    int real_out, real_err; /* where the fuzzer prints */
    int file, tanks, log;   /* files that options name */
    char names[3][40];      /* theirs */
} place;

static struct command_line line;
static char printed[2][PRINTED_MAX];

static void must(bool holds, const char *what)
{
    if (holds) {
        return;
    }
    (void)dprintf(place.real_err, "%s:", what);
    for (int i = 0; line.word[i]; i++) {
        (void)dprintf(place.real_err, " '%s'", line.word[i]);
    }
    (void)dprintf(place.real_err, "\n");
    abort();
}

static int memory(const char *what)
{
    int file = memfd_create(what, 0);
    must(file > 2, "memory for a file");
    return file;
}

static void begin(void)
{
    place.real_out = dup(1);
    place.real_err = dup(2);
    place.out = memory("out");
    place.err = memory("err");
    place.file = memory("file");
    place.tanks = memory("tanks");
    place.log = memory("log");
    const int named[] = {place.file, place.tanks, place.log};
    for (size_t i = 0; i < 3; i++) {
        (void)snprintf(place.names[i], sizeof place.names[i], "/proc/self/fd/%d", named[i]);
    }
    must(write(place.tanks, tanks_text, sizeof tanks_text - 1) > 0, "the tanks");
    must(setenv("HOLDWATER_TANKS", place.names[1], 1) == 0, "the environment");
    must(setenv("SOURCE_DATE_EPOCH", "1930000000", 1) == 0, "the environment");
    line.file = place.names[0];
    line.tanks = place.names[1];
    line.log = place.names[2];
    line.rows = fdopen(dup(place.file), "w");
    must(line.rows != NULL, "the rows");
    __sanitizer_set_report_fd((void *)(intptr_t)place.real_err);
}

static void empty(int file)
{
    must(ftruncate(file, 0) == 0 && lseek(file, 0, SEEK_SET) == 0, "a file in memory");
}

/* All of a file in memory; its length. */
static size_t read_back(int file, char text[PRINTED_MAX])
{
    ssize_t n = pread(file, text, PRINTED_MAX - 1, 0);
    must(n >= 0, "reading back");
    text[n] = '\0';
    return (size_t)n;
}

/* A terminal acts on none of these: no control characters but line ends, nor those of two bytes. */
static bool is_tame(const char *text, size_t n)
{
    for (size_t i = 0; i < n; i++) {
        unsigned char c = (unsigned char)text[i];
        unsigned char next = i + 1 < n ? (unsigned char)text[i + 1] : 0;
        if ((c < ' ' && c != '\n') || c == 127 || (c == 0xC2 && next >= 0x80 && next <= 0x9F)) {
            return false;
        }
    }
    return true;
}

static bool has(const char *option)
{
    return command_line_has(&line, option);
}

static bool format_is(const char *format)
{
    for (int i = 2; line.word[i]; i++) {
        if (strstr(line.word[i], format)) {
            return true;
        }
    }
    return false;
}

/* Cells of files and remarks go out as they were written there. */
static bool people_read_it(void)
{
    bool raw = has("rows") || has("map");
    static const char *const machine[] = {"csv", "tsv", "log", "plan"};
    for (size_t i = 0; i < sizeof machine / sizeof machine[0]; i++) {
        raw = raw || format_is(machine[i]);
    }
    return !raw;
}

static void judge(int status, size_t n)
{
    static char text[PRINTED_MAX];
    must(status >= 0 && status <= 3, "a status that there is not");
    must(status != 0 || n > 0 || has("rows"), "status 0 and nothing printed");
    must(!people_read_it() || is_tame(printed[0], n), "a control character in the answer");
    must(is_tame(text, read_back(place.err, text)), "a control character in a message");
    size_t logged = read_back(place.log, text);
    must(logged == 0 || text[logged - 1] == '\n', "half a line in the logbook");
    must(logged == 0 || strncmp(text, "when,", 5) == 0, "a logbook without its header");
    empty(place.log);
}

/* Runs the program; what it printed is in text, and its length in *n. */
static int run(int argc, char text[PRINTED_MAX], size_t *n)
{
    empty(place.out);
    empty(place.err);
    (void)dup2(place.out, 1);
    (void)dup2(place.err, 2);
    int status = dispatch(argc, line.word);
    stream_flush();
    bool failed = ferror(stdout) != 0;
    (void)dup2(place.real_out, 1);
    (void)dup2(place.real_err, 2);
    must(!failed, "output failed");
    *n = read_back(place.out, text);
    return status;
}

/* What hangs on the clock is another answer a second later. */
static bool by_the_clock(void)
{
    static const char *const clocked[] = {"trend", "calendar"};
    bool log = format_is("log") || has("log");
    for (size_t i = 0; i < sizeof clocked / sizeof clocked[0]; i++) {
        log = log || strcmp(line.command, clocked[i]) == 0;
    }
    return log && !has("when");
}

static void ask(void)
{
    size_t n = 0;
    int status = run(command_line_words(&line, false), printed[0], &n);
    judge(status, n);
    if (line.as_it_stands || by_the_clock() || has("rows")) {
        return;
    }
    size_t again = 0;
    int other = run(command_line_words(&line, true), printed[1], &again);
    must(other == status, "another status when options are turned round");
    bool same = again == n && memcmp(printed[0], printed[1], n) == 0;
    must(status == EXIT_ASKED_WRONGLY || same, "another answer when options are turned round");
    empty(place.log);
}

/* Rows keep what they have counted: in a process of their own. */
static void ask_apart(void)
{
    int status = 0;
    pid_t child = fork();
    if (child == 0) {
        ask();
        _exit(0);
    }
    must(child > 0 && waitpid(child, &status, 0) == child, "a process");
    must(WIFEXITED(status) && WEXITSTATUS(status) == 0, "the run of rows ended badly");
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    if (!place.out) {
        begin();
    }
    empty(place.file);
    rewind(line.rows);
    command_line_make(&line, (struct draw){data, size});
    if (has("rows")) {
        ask_apart();
    } else {
        ask();
    }
    return 0;
}
