/* run_cases.c - runs the command-line cases of tests/cli and of the documents.
 *
 *     run_cases [--update] [--seconds N] FILE...
 *
 * A *.txt file holds cases; of a *.md file, the fenced blocks whose first line begins with "$ ".
 *
 *     $ COMMAND         a case; a command that ends in a backslash goes on in the next line
 *     text              a line of its stdout
 *     ! text            a line of its stderr
 *     = N               its exit status, when that is not 0
 *     \text             the stdout line "text", when it begins with a mark such as "$ " or with \
 *     \ no newline      after the last stdout line: it ends without a newline
 *     # text            a comment, at the start of a *.txt file or after a blank line
 *
 * One blank line before the next case, comment, fence or end of file separates and is no output.
 *
 * A command is run by /bin/sh in a folder of its own for each file, empty at first, with stdin from
 * /dev/null and a small environment; `holdwater` in it is the program $HOLDWATER, under
 * $HOLDWATER_RUN. Output is compared byte for byte; when stdout begins with { or [, its numbers are
 * compared at 12 significant digits. With --update the files are rewritten to what the commands
 * print. Ends with "N checks passed", a check being a case. */
#include <errno.h>
#include <fcntl.h>
#include <math.h>
#include <poll.h>
#include <setjmp.h>
#include <signal.h>
#include <stdarg.h>
#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <sys/types.h>
#include <sys/wait.h>
#include <time.h>
#include <unistd.h>

#include <cmocka.h>

static const char prefix[] = "holdwater() { $HOLDWATER_RUN \"$HOLDWATER\" \"$@\"; }\n";
static const char no_newline[] = "\\ no newline";
static const double digits12 = 5e-12; /* relative: half a unit of the twelfth digit, at most */

enum {
    OUTPUT_MAX = 16 << 20, /* bytes of one stream; more is a failure */
    STATUS_NONE = -1       /* the command did not end by itself */
};

struct text {
    char *at; /* always ends with a NUL that is not counted */
    size_t n;
};

struct span {
    size_t from, to; /* lines: from <= i < to */
};

struct expected {
    struct text out, err;
    int status;
};

struct a_case {
    struct span lines; /* of the file: "$ " line to the last line of output, no separator */
    size_t body;       /* first line after the command */
    bool separated;    /* a blank line follows */
    struct text command;
    struct expected want;
};

struct a_file {
    const char *name;
    struct text bytes;
    struct text *lines; /* without their newlines; they point into bytes */
    size_t n_lines;
    struct a_case *cases;
    size_t n_cases;
};

static bool update;
static int seconds = 20;
static size_t passed;

/* --- Text ---------------------------------------------------------------------------------- */

static void die(const char *what, const char *name)
{
    fprintf(stderr, "run_cases: %s: %s: %s\n", name, what, strerror(errno));
    exit(2);
}

static void *resized(void *old, size_t size)
{
    void *new = realloc(old, size > 0 ? size : 1);

    if (new == NULL)
        die("memory", "realloc");
    return new;
}

static void add(struct text *text, const char *bytes, size_t n)
{
    text->at = resized(text->at, text->n + n + 1);
    if (n > 0)
        memcpy(text->at + text->n, bytes, n);
    text->n += n;
    text->at[text->n] = '\0';
}

static void add_string(struct text *text, const char *string)
{
    add(text, string, strlen(string));
}

static void clear(struct text *text)
{
    free(text->at);
    text->at = NULL;
    text->n = 0;
}

static bool begins(struct text text, const char *with)
{
    size_t n = strlen(with);

    return text.n >= n && memcmp(text.at, with, n) == 0;
}

static bool is(struct text text, const char *other)
{
    return text.n == strlen(other) && begins(text, other);
}

static bool ends(const char *name, const char *with)
{
    size_t n = strlen(name), m = strlen(with);

    return n >= m && strcmp(name + n - m, with) == 0;
}

/* The line of text that starts at *from, without its newline; *from moves to the next. */
static struct text next_line(struct text text, size_t *from)
{
    struct text line = {text.at + *from, 0};

    while (*from + line.n < text.n && line.at[line.n] != '\n')
        line.n++;
    *from += line.n + 1;
    return line;
}

static void read_file(struct a_file *file)
{
    FILE *in = fopen(file->name, "rb");
    char buffer[4096];
    size_t n, from = 0;

    if (in == NULL)
        die("open", file->name);
    add_string(&file->bytes, "");
    while ((n = fread(buffer, 1, sizeof buffer, in)) > 0)
        add(&file->bytes, buffer, n);
    if (ferror(in) != 0)
        die("read", file->name);
    fclose(in);
    while (from < file->bytes.n) {
        file->lines = resized(file->lines, (file->n_lines + 1) * sizeof *file->lines);
        file->lines[file->n_lines++] = next_line(file->bytes, &from);
    }
}

/* --- Reading the cases --------------------------------------------------------------------- */

/* A stdout line that has to be written with a backslash before it. */
static bool looks_marked(struct text line)
{
    return begins(line, "$ ") || begins(line, "! ") || begins(line, "= ") || begins(line, "# ") ||
           begins(line, "\\") || begins(line, "```") || is(line, "!") || is(line, "#");
}

static void refuse(const struct a_file *file, size_t line, const char *why)
{
    fprintf(stderr, "%s:%zu: %s\n", file->name, line + 1, why);
    exit(2);
}

static void read_status(const struct a_file *file, size_t at, struct expected *want)
{
    struct text line = file->lines[at];
    int status = 0;
    size_t i;

    for (i = 2; i < line.n && line.at[i] >= '0' && line.at[i] <= '9' && status < 1000; i++)
        status = 10 * status + (line.at[i] - '0');
    if (i < line.n || line.n == 2 || status > 255)
        refuse(file, at, "\"= \" wants an exit status, 0 to 255; as output write \"\\= \"");
    want->status = status;
}

static void read_body(const struct a_file *file, struct a_case *c)
{
    size_t i;

    add_string(&c->want.out, "");
    add_string(&c->want.err, "");
    for (i = c->body; i < c->lines.to; i++) {
        struct text line = file->lines[i];

        if (begins(line, "! ") || is(line, "!")) {
            if (line.n > 2)
                add(&c->want.err, line.at + 2, line.n - 2);
            add(&c->want.err, "\n", 1);
        } else if (begins(line, "= ")) {
            read_status(file, i, &c->want);
        } else if (is(line, no_newline)) {
            if (c->want.out.n == 0)
                refuse(file, i, "no line of output stands before this");
            c->want.out.at[--c->want.out.n] = '\0';
        } else {
            size_t skip = begins(line, "\\") ? 1 : 0;

            add(&c->want.out, line.at + skip, line.n - skip);
            add(&c->want.out, "\n", 1);
        }
    }
}

/* The case whose "$ " line is at; its output ends before the line `end`, or earlier. */
static struct a_case *new_case(struct a_file *file, size_t at, size_t end)
{
    struct a_case *c;

    file->cases = resized(file->cases, (file->n_cases + 1) * sizeof *file->cases);
    c = &file->cases[file->n_cases++];
    memset(c, 0, sizeof *c);
    c->lines.from = at;
    add(&c->command, file->lines[at].at + 2, file->lines[at].n - 2);
    while (c->command.n > 0 && c->command.at[c->command.n - 1] == '\\' && at + 1 < end) {
        at++;
        add(&c->command, "\n", 1);
        add(&c->command, file->lines[at].at, file->lines[at].n);
    }
    c->body = at + 1;
    return c;
}

static void end_case(const struct a_file *file, struct a_case *c, size_t end)
{
    c->separated = end > c->body && file->lines[end - 1].n == 0;
    c->lines.to = c->separated ? end - 1 : end;
    read_body(file, c);
}

/* The cases in some lines of a file: a fenced block, or all of a *.txt file. */
static void read_cases(struct a_file *file, struct span lines, bool comments)
{
    struct a_case *c = NULL;
    bool free_line = true; /* a comment may stand here */
    size_t i;

    for (i = lines.from; i < lines.to; i++) {
        struct text line = file->lines[i];

        if (begins(line, "$ ")) {
            if (c != NULL)
                end_case(file, c, i);
            c = new_case(file, i, lines.to);
            i = c->body - 1;
            free_line = false;
        } else if (comments && free_line && (begins(line, "# ") || is(line, "#"))) {
            if (c != NULL)
                end_case(file, c, i);
            c = NULL;
        } else {
            if (c == NULL && line.n > 0)
                refuse(file, i, "neither a case (\"$ \") nor a comment (\"# \")");
            free_line = line.n == 0;
        }
    }
    if (c != NULL)
        end_case(file, c, lines.to);
}

static size_t fence(struct text line)
{
    size_t n = 0;

    while (n < line.n && line.at[n] == '`')
        n++;
    return n >= 3 ? n : 0;
}

static void read_blocks(struct a_file *file)
{
    size_t i, ticks, from;

    for (i = 0; i < file->n_lines; i++) {
        ticks = fence(file->lines[i]);
        if (ticks == 0)
            continue;
        from = ++i;
        while (i < file->n_lines &&
               (fence(file->lines[i]) < ticks || fence(file->lines[i]) != file->lines[i].n))
            i++;
        if (i == file->n_lines)
            refuse(file, from - 1, "this block has no end");
        if (from < i && begins(file->lines[from], "$ "))
            read_cases(file, (struct span){from, i}, false);
    }
}

static void read_all(struct a_file *file)
{
    read_file(file);
    if (ends(file->name, ".md")) {
        read_blocks(file);
    } else if (ends(file->name, ".txt")) {
        read_cases(file, (struct span){0, file->n_lines}, true);
    } else {
        refuse(file, 0, "neither a *.txt nor a *.md file");
    }
}

/* --- Running ------------------------------------------------------------------------------- */

static char *variable(const char *name, const char *value)
{
    struct text text = {NULL, 0};

    add_string(&text, name);
    add_string(&text, "=");
    add_string(&text, value != NULL ? value : "");
    return text.at;
}

static void child(const char *command, const char *folder, int out, int err)
{
    char *words[] = {variable("PATH", getenv("PATH")),
                     variable("HOME", folder),
                     variable("LC_ALL", "C"),
                     variable("TZ", "UTC"),
                     variable("HOLDWATER", getenv("HOLDWATER")),
                     variable("HOLDWATER_RUN", getenv("HOLDWATER_RUN")),
                     variable("HOLDWATER_DATA", getenv("HOLDWATER_DATA")),
                     NULL};
    char name[] = "sh", option[] = "-c";
    struct text script = {NULL, 0};
    char *arguments[] = {name, option, NULL, NULL};
    int null = open("/dev/null", O_RDONLY);

    add_string(&script, prefix);
    add_string(&script, command);
    arguments[2] = script.at;
    signal(SIGPIPE, SIG_DFL);
    umask(022);
    if (setpgid(0, 0) != 0 || chdir(folder) != 0 || null < 0 || dup2(null, 0) < 0 ||
        dup2(out, 1) < 0 || dup2(err, 2) < 0)
        _exit(127);
    close(null);
    execve("/bin/sh", arguments, words);
    _exit(127);
}

static long milliseconds(void)
{
    struct timespec now;

    clock_gettime(CLOCK_MONOTONIC, &now);
    return (long)now.tv_sec * 1000 + now.tv_nsec / 1000000;
}

/* Reads what is there; false at the end of the stream, or when there is too much of it. */
static bool take(int from, struct text *text)
{
    char buffer[65536];
    ssize_t n = read(from, buffer, sizeof buffer);

    if (n < 0 && (errno == EINTR || errno == EAGAIN))
        return true;
    if (n <= 0)
        return false;
    add(text, buffer, (size_t)n);
    return text->n <= OUTPUT_MAX;
}

static void collect(const int from[2], struct expected *got, long deadline)
{
    struct pollfd streams[2] = {{from[0], POLLIN, 0}, {from[1], POLLIN, 0}};
    struct text *texts[2] = {&got->out, &got->err};
    int open_streams = 2, i;

    while (open_streams > 0 && milliseconds() < deadline) {
        if (poll(streams, 2, (int)(deadline - milliseconds())) <= 0)
            continue;
        for (i = 0; i < 2; i++) {
            if (streams[i].fd >= 0 && streams[i].revents != 0 && !take(streams[i].fd, texts[i])) {
                streams[i].fd = -1;
                open_streams--;
            }
        }
    }
}

static int ended(pid_t pid, long deadline)
{
    struct timespec pause = {0, 200000};
    pid_t reply;
    int how = 0;

    while ((reply = waitpid(pid, &how, WNOHANG)) != pid && milliseconds() < deadline)
        nanosleep(&pause, NULL);
    kill(-pid, SIGKILL); /* and whatever it left behind */
    if (reply != pid) {
        waitpid(pid, &how, 0);
        return STATUS_NONE;
    }
    return WIFSIGNALED(how) ? 128 + WTERMSIG(how) : WEXITSTATUS(how);
}

static void make_pipe(int ends_of[2])
{
    if (pipe(ends_of) != 0 || fcntl(ends_of[0], F_SETFD, FD_CLOEXEC) != 0 ||
        fcntl(ends_of[1], F_SETFD, FD_CLOEXEC) != 0)
        die("pipe", "run_cases");
}

static struct expected run(const char *command, const char *folder)
{
    struct expected got = {{NULL, 0}, {NULL, 0}, STATUS_NONE};
    long deadline = milliseconds() + 1000L * seconds;
    int out[2], err[2], from[2];
    pid_t pid;

    add_string(&got.out, "");
    add_string(&got.err, "");
    make_pipe(out);
    make_pipe(err);
    fflush(NULL);
    pid = fork();
    if (pid < 0)
        die("fork", "run_cases");
    if (pid == 0)
        child(command, folder, out[1], err[1]);
    setpgid(pid, pid); /* in both, as either may be first */
    close(out[1]);
    close(err[1]);
    from[0] = out[0];
    from[1] = err[0];
    collect(from, &got, deadline);
    close(out[0]);
    close(err[0]);
    got.status = ended(pid, deadline);
    if (got.err.n > 0 && got.err.at[got.err.n - 1] != '\n')
        add(&got.err, "\n", 1);
    return got;
}

static char *make_folder(void)
{
    const char *parent = getenv("TMPDIR");
    struct text name = {NULL, 0};

    add_string(&name, parent != NULL && parent[0] == '/' ? parent : "/tmp");
    add_string(&name, "/cases-XXXXXX");
    if (mkdtemp(name.at) == NULL)
        die("mkdtemp", name.at);
    return name.at;
}

static void remove_folder(char *folder)
{
    char rm[] = "rm", option[] = "-rf";
    char *arguments[] = {rm, option, folder, NULL};
    pid_t pid = fork();
    int how;

    if (pid == 0) {
        execvp(rm, arguments);
        _exit(127);
    }
    if (pid > 0)
        waitpid(pid, &how, 0);
    free(folder);
}

/* --- Comparing ----------------------------------------------------------------------------- */

static bool same_bytes(struct text a, struct text b)
{
    return a.n == b.n && memcmp(a.at, b.at, a.n) == 0;
}

static bool number_at(const char *at)
{
    if (*at == '-')
        at++;
    return *at >= '0' && *at <= '9';
}

/* JSON: numbers outside strings at 12 significant digits, all else byte for byte. */
static bool same_json(struct text a, struct text b)
{
    const char *p = a.at, *q = b.at;
    bool in_string = false;

    while (p < a.at + a.n && q < b.at + b.n) {
        if (!in_string && number_at(p) && number_at(q)) {
            char *p_end, *q_end;
            double x = strtod(p, &p_end), y = strtod(q, &q_end);

            if (!(fabs(x - y) <= digits12 * fmax(fabs(x), fabs(y))))
                return false;
            p = p_end;
            q = q_end;
            continue;
        }
        if (*p != *q)
            return false;
        if (in_string && *p == '\\' && p + 1 < a.at + a.n && q + 1 < b.at + b.n) {
            p++;
            q++;
            if (*p != *q)
                return false;
        } else if (*p == '"') {
            in_string = !in_string;
        }
        p++;
        q++;
    }
    return p == a.at + a.n && q == b.at + b.n;
}

static bool same(const struct expected *want, const struct expected *got)
{
    bool json = begins(got->out, "{") || begins(got->out, "[");

    return want->status == got->status && same_bytes(want->err, got->err) &&
           (json ? same_json(want->out, got->out) : same_bytes(want->out, got->out));
}

static void show_lines(const char *title, struct text text)
{
    size_t from = 0;

    if (text.n == 0)
        fprintf(stderr, "  %s: nothing\n", title);
    else
        fprintf(stderr, "  %s:\n", title);
    while (from < text.n) {
        struct text line = next_line(text, &from);

        fprintf(stderr, "    | %.*s\n", (int)line.n, line.at);
    }
    if (text.n > 0 && text.at[text.n - 1] != '\n')
        fprintf(stderr, "    %s\n", no_newline);
}

static void show(const struct a_file *file, const struct a_case *c, const struct expected *got)
{
    const struct expected *want = &c->want;

    fprintf(stderr, "%s:%zu: %s\n", file->name, c->lines.from + 1, c->command.at);
    if (got->status == STATUS_NONE)
        fprintf(stderr, "  stopped: not done in %d s, or over %d bytes of output\n", seconds,
                (int)OUTPUT_MAX);
    else if (got->status != want->status)
        fprintf(stderr, "  expected status %d, got %d\n", want->status, got->status);
    if (!same_bytes(want->out, got->out)) {
        show_lines("expected stdout", want->out);
        show_lines("got stdout", got->out);
    }
    if (!same_bytes(want->err, got->err)) {
        show_lines("expected stderr", want->err);
        show_lines("got stderr", got->err);
    }
}

/* --- Rewriting ----------------------------------------------------------------------------- */

static void add_file_lines(struct text *text, const struct a_file *file, size_t from, size_t to)
{
    for (; from < to; from++) {
        add(text, file->lines[from].at, file->lines[from].n);
        add(text, "\n", 1);
    }
}

static void add_output(struct text *text, const struct a_case *c, const struct expected *got)
{
    char status[32];
    size_t from = 0, start = text->n;

    while (from < got->out.n) {
        struct text line = next_line(got->out, &from);

        if (looks_marked(line))
            add(text, "\\", 1);
        add(text, line.at, line.n);
        add(text, "\n", 1);
    }
    if (got->out.n > 0 && got->out.at[got->out.n - 1] != '\n') {
        add_string(text, no_newline);
        add(text, "\n", 1);
    }
    for (from = 0; from < got->err.n;) {
        struct text line = next_line(got->err, &from);

        add_string(text, line.n > 0 ? "! " : "!");
        add(text, line.at, line.n);
        add(text, "\n", 1);
    }
    if (got->status != 0) {
        snprintf(status, sizeof status, "= %d\n", got->status);
        add_string(text, status);
    }
    /* A blank last line is output only when a separator follows it. */
    if (!c->separated && text->n > start &&
        (text->n == start + 1 || text->at[text->n - 2] == '\n') && text->at[text->n - 1] == '\n')
        add(text, "\n", 1);
}

static void replace_file(const struct a_file *file, struct text text)
{
    struct text name = {NULL, 0};
    struct stat old;
    size_t done = 0;
    ssize_t n;
    int out;

    add_string(&name, file->name);
    add_string(&name, ".XXXXXX");
    out = mkstemp(name.at);
    if (out < 0)
        die("mkstemp", name.at);
    while (done < text.n && (n = write(out, text.at + done, text.n - done)) > 0)
        done += (size_t)n;
    if (done < text.n || stat(file->name, &old) != 0 || fchmod(out, old.st_mode & 07777) != 0 ||
        close(out) != 0 || rename(name.at, file->name) != 0) {
        unlink(name.at);
        die("write", file->name);
    }
    clear(&name);
}

/* --- Files --------------------------------------------------------------------------------- */

static void free_expected(struct expected *e)
{
    clear(&e->out);
    clear(&e->err);
}

/* The number of cases that fail. With --update, failing cases get new output instead. */
static size_t run_file(const struct a_file *file)
{
    char *folder = make_folder();
    struct text new = {NULL, 0};
    size_t i, from = 0, failures = 0, changed = 0;

    for (i = 0; i < file->n_cases; i++) {
        const struct a_case *c = &file->cases[i];
        struct expected got = run(c->command.at, folder);

        if (same(&c->want, &got)) {
            passed++;
        } else if (update && got.status != STATUS_NONE) {
            add_file_lines(&new, file, from, c->body);
            add_output(&new, c, &got);
            from = c->lines.to;
            changed++;
        } else {
            show(file, c, &got);
            failures++;
        }
        free_expected(&got);
    }
    if (changed > 0) {
        add_file_lines(&new, file, from, file->n_lines);
        replace_file(file, new);
        printf("%s: %zu of %zu cases rewritten\n", file->name, changed, file->n_cases);
    }
    clear(&new);
    remove_folder(folder);
    return failures;
}

static void test_file(void **state)
{
    const struct a_file *file = *state;
    size_t failures;

    if (file->n_cases == 0 && ends(file->name, ".txt"))
        fail_msg("%s holds no case", file->name);
    failures = run_file(file);
    if (failures > 0)
        fail_msg("%s: %zu of %zu cases fail", file->name, failures, file->n_cases);
}

static void free_file(struct a_file *file)
{
    size_t i;

    for (i = 0; i < file->n_cases; i++) {
        clear(&file->cases[i].command);
        free_expected(&file->cases[i].want);
    }
    free(file->cases);
    free(file->lines);
    clear(&file->bytes);
}

static int read_options(int argc, char **argv)
{
    int i = 1;

    for (; i < argc && argv[i][0] == '-'; i++) {
        if (strcmp(argv[i], "--update") == 0) {
            update = true;
        } else if (strcmp(argv[i], "--seconds") == 0 && i + 1 < argc) {
            seconds = (int)strtol(argv[++i], NULL, 10);
        } else {
            i = argc;
        }
    }
    return i;
}

int main(int argc, char **argv)
{
    int first = read_options(argc, argv), status, i;
    size_t n = first < argc ? (size_t)(argc - first) : 0;
    struct CMUnitTest *tests;
    struct a_file *files;

    if (n == 0) {
        fprintf(stderr, "usage: run_cases [--update] [--seconds N] FILE...\n");
        return 2;
    }
    tests = resized(NULL, n * sizeof *tests);
    files = resized(NULL, n * sizeof *files);
    memset(tests, 0, n * sizeof *tests);
    memset(files, 0, n * sizeof *files);
    for (i = 0; (size_t)i < n; i++) {
        files[i].name = argv[first + i];
        read_all(&files[i]);
        tests[i].name = files[i].name;
        tests[i].test_func = test_file;
        tests[i].initial_state = &files[i];
    }
    status = _cmocka_run_group_tests("cases", tests, n, NULL, NULL);
    if (status == 0)
        printf("%zu checks passed\n", passed);
    for (i = 0; (size_t)i < n; i++)
        free_file(&files[i]);
    free(files);
    free(tests);
    return status == 0 ? 0 : 1;
}
