/* fuzz_tanks.c - any bytes as a tanks file. */
#define _GNU_SOURCE /* memfd_create */
#include "calc/list.h"
#include "cli/tank.h"

#include <stdio.h>
#include <sys/mman.h>
#include <unistd.h>

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    static struct args args;
    char name[64];
    int file = memfd_create("tanks", 0);
    if (file < 0 || write(file, data, size) != (ssize_t)size) {
        return 0;
    }
    (void)snprintf(name, sizeof name, "/proc/self/fd/%d", file);
    args = (struct args){.calc = &hw_calc_ammonia, .tank = "alder", .tanks = name};
    if (tank_fill(&args)) {
        struct hw_question question;
        size_t which = 0;
        (void)hw_question_settle(args.calc, args.written, &question, &which);
    }
    (void)close(file);
    return 0;
}
