/* reach.c - marks every block of the program that runs, in a file that several processes share.
 *
 * Linked into the library under test when that is compiled with -fsanitize-coverage=trace-pc: each
 * block then begins with a call. The file is `reach` beside the library, one byte for each byte of
 * code; where there is none nothing is marked. */
#define _GNU_SOURCE
#include <dlfcn.h>
#include <fcntl.h>
#include <stddef.h>
#include <stdio.h>
#include <string.h>
#include <sys/mman.h>
#include <sys/stat.h>
#include <unistd.h>

/* Where the linker puts the beginning of the library. */
extern const char __ehdr_start[] __attribute__((visibility("hidden")));

void __sanitizer_cov_trace_pc(void);

static char *marks;
static size_t n_marks;
static int opened;

static void open_marks(void)
{
    Dl_info library;
    char path[4096] = "";
    struct stat about;
    opened = 1;
    if (dladdr(__ehdr_start, &library) == 0) {
        return;
    }
    const char *slash = strrchr(library.dli_fname, '/');
    int folder = slash == NULL ? 0 : (int)(slash - library.dli_fname) + 1;
    (void)snprintf(path, sizeof path, "%.*sreach", folder, library.dli_fname);
    int file = open(path, O_RDWR | O_CLOEXEC);
    if (file < 0) {
        return;
    }
    if (fstat(file, &about) == 0 && about.st_size > 0) {
        void *map = mmap(NULL, (size_t)about.st_size, PROT_READ | PROT_WRITE, MAP_SHARED, file, 0);
        if (map != MAP_FAILED) {
            marks = map;
            n_marks = (size_t)about.st_size;
        }
    }
    (void)close(file);
}

void __sanitizer_cov_trace_pc(void)
{
    size_t at = (size_t)((const char *)__builtin_return_address(0) - __ehdr_start);
    if (!opened) {
        open_marks();
    }
    if (at < n_marks) {
        marks[at] = 1;
    }
}
