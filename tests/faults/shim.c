/* shim.c - a library to be loaded before a program: the calls of the system that it makes fail.
 *
 *     LD_PRELOAD=shim.so FAULT=CALL:N:WHAT [FAULT_COUNT=FILE] program ...
 *
 * CALL  read, write, fsync, close, openat, fcntl or ftruncate; or malloc, which is calloc and
 *       realloc as well
 * N     the call of that kind that fails, the first is 1; 0: none; all: each; from N+: that one and
 *       all after it
 * WHAT  the name of an error; or, of read and write, short: a part of what was asked for is done;
 *       torn: a part, and ENOSPC from then on
 * FILE  gets the number of such calls when the program ends
 *
 * A C library calls the system from within, where no other function can take the place of its own.
 * So a filter of the kernel stops these calls (seccomp), and the handler of its signal makes them,
 * or not. The handler's own calls carry a mark in the sixth argument, which none of them has. */
#define _GNU_SOURCE
#include <errno.h>
#include <fcntl.h>
#include <linux/audit.h>
#include <linux/filter.h>
#include <linux/seccomp.h>
#include <signal.h>
#include <stdbool.h>
#include <stddef.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/prctl.h>
#include <sys/syscall.h>
#include <sys/uio.h>
#include <ucontext.h>
#include <unistd.h>

#if !defined(__x86_64__) || !defined(__GLIBC__)
#error "the registers of x86-64 and the malloc of glibc are meant"
#endif

enum { MARK = 0x5eab1e };

void *__libc_malloc(size_t size);
void *__libc_calloc(size_t n, size_t size);
void *__libc_realloc(void *old, size_t size);

static const struct {
    const char *name;
    int number;
} calls[] = {
    {"read", SYS_read},           {"write", SYS_write},   {"fsync", SYS_fsync},
    {"close", SYS_close},         {"openat", SYS_openat}, {"fcntl", SYS_fcntl},
    {"ftruncate", SYS_ftruncate},
};
enum { CALLS = sizeof calls / sizeof calls[0], NONE = -1, MALLOC = -2 };

static const struct {
    const char *name;
    int number;
} errors[] = {{"EINTR", EINTR},   {"EIO", EIO},       {"ENOSPC", ENOSPC}, {"EMFILE", EMFILE},
              {"EACCES", EACCES}, {"ENOLCK", ENOLCK}, {"EAGAIN", EAGAIN}, {"ENOMEM", ENOMEM}};

static struct {
    int call;         /* number of the system's, or NONE, MALLOC */
    long first, last; /* the calls that fail */
    int error;        /* 0: short */
    long seen;
    bool torn;
    bool odd; /* each: every second call is made, or nothing would ever get on */
} fault = {.call = NONE};

static void wrong(const char *what)
{
    (void)fprintf(stderr, "shim: %s in FAULT\n", what);
    _exit(125);
}

static void read_what(const char *text)
{
    fault.torn = strcmp(text, "torn") == 0;
    if (fault.torn || strcmp(text, "short") == 0) {
        fault.error = fault.torn ? ENOSPC : 0;
        return;
    }
    for (size_t i = 0; i < sizeof errors / sizeof errors[0]; i++) {
        if (strcmp(text, errors[i].name) == 0) {
            fault.error = errors[i].number;
            return;
        }
    }
    wrong("no such error");
}

static void read_fault(char *text)
{
    char *n = strchr(text, ':');
    char *what = n ? strchr(n + 1, ':') : NULL;
    if (!what) {
        wrong("not CALL:N:WHAT");
        return;
    }
    *n++ = '\0';
    *what++ = '\0';
    fault.call = strcmp(text, "malloc") == 0 ? MALLOC : NONE;
    for (size_t i = 0; i < CALLS; i++) {
        fault.call = strcmp(text, calls[i].name) == 0 ? calls[i].number : fault.call;
    }
    if (fault.call == NONE) {
        wrong("no such call");
    }
    read_what(what);
    fault.odd = strcmp(n, "all") == 0;
    fault.first = fault.odd ? 1 : strtol(n, NULL, 10);
    fault.last = fault.odd || fault.torn || strchr(n, '+') ? 1000000 : fault.first;
}

/* True when the call at hand is one that fails. */
static bool fails(void)
{
    long this = ++fault.seen;
    return this >= fault.first && this <= fault.last &&
           !(fault.odd && fault.error && this % 2 == 0);
}

/* Makes the call; what the kernel returns. */
static long make(long number, const long a[5])
{
    long got = syscall(number, a[0], a[1], a[2], a[3], a[4], (long)MARK);
    return got < 0 ? -errno : got;
}

/* At least one byte, or it would be the end of the file. */
static long part_of(long n)
{
    return n > 1 ? (n + 2) / 3 : n;
}

static void on_call(int signal, siginfo_t *info, void *context)
{
    int kept = errno;
    greg_t *at = ((ucontext_t *)context)->uc_mcontext.gregs;
    long a[5] = {at[REG_RDI], at[REG_RSI], at[REG_RDX], at[REG_R10], at[REG_R8]};
    long got = 0;
    (void)signal;
    if (!fails()) {
        got = make(info->si_syscall, a);
    } else if (fault.error && !(fault.torn && fault.seen == fault.first)) {
        if (info->si_syscall == SYS_close) {
            (void)make(info->si_syscall, a); /* closed it is all the same, says Linux */
        }
        got = -fault.error;
    } else {
        a[2] = part_of(a[2]);
        got = make(info->si_syscall, a);
    }
    at[REG_RAX] = got;
    errno = kept;
}

static void filter_calls(void)
{
    struct sock_filter code[] = {
        BPF_STMT(BPF_LD | BPF_W | BPF_ABS, offsetof(struct seccomp_data, nr)),
        BPF_JUMP(BPF_JMP | BPF_JEQ | BPF_K, (unsigned)fault.call, 0, 3),
        BPF_STMT(BPF_LD | BPF_W | BPF_ABS, offsetof(struct seccomp_data, args[5])),
        BPF_JUMP(BPF_JMP | BPF_JEQ | BPF_K, MARK, 1, 0),
        BPF_STMT(BPF_RET | BPF_K, SECCOMP_RET_TRAP),
        BPF_STMT(BPF_RET | BPF_K, SECCOMP_RET_ALLOW),
    };
    struct sock_fprog program = {sizeof code / sizeof code[0], code};
    struct sigaction action = {.sa_sigaction = on_call, .sa_flags = SA_SIGINFO | SA_NODEFER};
    if (sigaction(SIGSYS, &action, NULL) != 0 || prctl(PR_SET_NO_NEW_PRIVS, 1, 0, 0, 0) != 0 ||
        prctl(PR_SET_SECCOMP, SECCOMP_MODE_FILTER, &program) != 0) {
        (void)fprintf(stderr, "shim: the kernel takes no filter: %s\n", strerror(errno));
        _exit(126);
    }
}

__attribute__((constructor)) static void begin(void)
{
    char text[80];
    const char *asked = getenv("FAULT");
    if (!asked || strlen(asked) >= sizeof text) {
        return;
    }
    strcpy(text, asked);
    read_fault(text);
    if (fault.call != MALLOC) {
        filter_calls();
    }
}

__attribute__((destructor)) static void end(void)
{
    const char *name = getenv("FAULT_COUNT");
    char text[32];
    long seen = fault.seen;
    fault.first = fault.last = 0;
    if (name && fault.call != NONE) {
        int file = open(name, O_WRONLY | O_CREAT | O_TRUNC, 0666);
        int n = snprintf(text, sizeof text, "%ld\n", seen);
        if (file < 0 || write(file, text, (size_t)n) != n) {
            (void)fputs("shim: no count\n", stderr);
        }
        (void)close(file);
    }
}

/* --- Memory ----------------------------------------------------------------------------------- */

static bool no_memory(void)
{
    if (fault.call != MALLOC || !fails()) {
        return false;
    }
    errno = ENOMEM;
    return true;
}

void *malloc(size_t size)
{
    return no_memory() ? NULL : __libc_malloc(size);
}

void *calloc(size_t n, size_t size)
{
    return no_memory() ? NULL : __libc_calloc(n, size);
}

void *realloc(void *old, size_t size)
{
    return no_memory() ? NULL : __libc_realloc(old, size);
}
