/* stopwatch.c - runs a command with its output discarded, and writes down what it took.
 *
 * Usage: stopwatch -o FILE -k KEY [-n TIMES] [-s STATUSES] [-p BYTES INPUT] COMMAND...
 *
 * Each run adds a line to FILE: KEY, user and system time in ns, wall time in ns, the peak of
 * memory in KiB. STATUSES are the digits of those that are right, 0 if not said. With -p the
 * command gets INPUT through a pipe in pieces of so many bytes: each is one read, however slow the
 * reader is. */
#define _GNU_SOURCE /* wait4, O_DIRECT */

#include <errno.h>
#include <fcntl.h>
#include <signal.h>
#include <spawn.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <time.h>
#include <unistd.h>

extern char **environ;

struct order {
    const char *out, *key, *statuses, *input;
    long times;
    size_t piece;
    char **command;
};

struct taken {
    long long cpu, wall;
    long peak;
    int status;
};

static void fail(const char *what)
{
    fprintf(stderr, "stopwatch: %s: %s\n", what, strerror(errno));
    exit(99);
}

static long long now(void)
{
    struct timespec t;
    clock_gettime(CLOCK_MONOTONIC, &t);
    return t.tv_sec * 1000000000LL + t.tv_nsec;
}

static long long of_timeval(struct timeval t)
{
    return (t.tv_sec * 1000000LL + t.tv_usec) * 1000;
}

/* The input goes into the pipe piece by piece; a reader that goes away ends it. */
static void feed(const struct order *order, int to)
{
    static char piece[65536];
    ssize_t n = 0;
    int from = open(order->input, O_RDONLY | O_CLOEXEC);
    if (from < 0) {
        fail(order->input);
    }
    while ((n = read(from, piece, order->piece)) > 0 && write(to, piece, (size_t)n) == n) {
    }
    close(from);
    close(to);
}

static pid_t start(const struct order *order, int in)
{
    pid_t child = 0;
    sigset_t broken_pipe;
    posix_spawnattr_t how;
    posix_spawn_file_actions_t files;
    sigemptyset(&broken_pipe);
    sigaddset(&broken_pipe, SIGPIPE);
    posix_spawnattr_init(&how);
    posix_spawnattr_setsigdefault(&how, &broken_pipe);
    posix_spawnattr_setflags(&how, POSIX_SPAWN_SETSIGDEF);
    posix_spawn_file_actions_init(&files);
    posix_spawn_file_actions_addopen(&files, 1, "/dev/null", O_WRONLY, 0);
    if (in >= 0) {
        posix_spawn_file_actions_adddup2(&files, in, 0);
    } else {
        posix_spawn_file_actions_addopen(&files, 0, "/dev/null", O_RDONLY, 0);
    }
    errno = posix_spawnp(&child, order->command[0], &files, &how, order->command, environ);
    if (errno != 0) {
        fail(order->command[0]);
    }
    posix_spawn_file_actions_destroy(&files);
    posix_spawnattr_destroy(&how);
    return child;
}

static struct taken run(const struct order *order)
{
    int ends[2] = {-1, -1};
    int status = 0;
    struct rusage used;
    /* A pipe of packets keeps the pieces apart. */
    if (order->input && pipe2(ends, O_CLOEXEC | O_DIRECT) != 0) {
        fail("pipe");
    }
    long long from = now();
    pid_t child = start(order, ends[0]);
    if (order->input) {
        close(ends[0]);
        feed(order, ends[1]);
    }
    if (wait4(child, &status, 0, &used) != child) {
        fail("wait");
    }
    return (struct taken){
        .cpu = of_timeval(used.ru_utime) + of_timeval(used.ru_stime),
        .wall = now() - from,
        .peak = used.ru_maxrss,
        .status = WIFEXITED(status) ? WEXITSTATUS(status) : 128 + WTERMSIG(status),
    };
}

static void read_order(int argc, char **argv, struct order *order)
{
    int option = 0;
    while ((option = getopt(argc, argv, "+o:k:n:s:p:")) != -1) {
        switch (option) {
        case 'o':
            order->out = optarg;
            break;
        case 'k':
            order->key = optarg;
            break;
        case 'n':
            order->times = strtol(optarg, NULL, 10);
            break;
        case 's':
            order->statuses = optarg;
            break;
        case 'p':
            order->piece = strtoul(optarg, NULL, 10);
            order->input = argv[optind++];
            break;
        default:
            exit(99);
        }
    }
    order->command = argv + optind;
    if (!order->out || !order->key || optind >= argc || order->piece > 65536) {
        errno = EINVAL;
        fail("usage");
    }
}

int main(int argc, char **argv)
{
    struct order order = {.statuses = "0", .times = 1};
    read_order(argc, argv, &order);
    signal(SIGPIPE, SIG_IGN);
    FILE *out = fopen(order.out, "ae");
    if (!out) {
        fail(order.out);
    }
    for (long i = 0; i < order.times; i++) {
        struct taken taken = run(&order);
        if (taken.status > 9 || !strchr(order.statuses, '0' + taken.status)) {
            fprintf(stderr, "stopwatch: %s: status %d\n", order.key, taken.status);
            return 1;
        }
        fprintf(out, "%s %lld %lld %ld\n", order.key, taken.cpu, taken.wall, taken.peak);
    }
    return fclose(out) == 0 ? 0 : 99;
}
