/* fuzz_plan.c - any bytes as a plan: what is read is in range, comes back as printed, and has
 * its days in order. */
#define _GNU_SOURCE /* open_memstream */
#include "cli/schedule.h"

#include <stdint.h>
#include <stdlib.h>
#include <string.h>

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

static void must(bool condition)
{
    if (!condition) {
        abort();
    }
}

static void in_range(const struct plan *plan)
{
    must(plan->n > 0 && plan->n <= PLAN_ACTS);
    for (size_t i = 0; i < plan->n; i++) {
        const struct act *act = &plan->acts[i];
        must(act->day >= -PLAN_DAYS && act->day <= act->until && act->until <= PLAN_DAYS);
        must(act->every >= 0 && act->every <= PLAN_DAYS);
        must(act->every > 0 || act->until == act->day);
        must(act->what[0] != '\0' && !strpbrk(act->what, "\n\r\t") && act->class_name);
        for (size_t k = 0; k < i; k++) {
            must(strcmp(plan->acts[k].what, act->what) != 0);
        }
    }
}

static void comes_back(const struct plan *plan)
{
    static struct plan again;
    char *text = NULL;
    size_t n = 0;
    FILE *out = open_memstream(&text, &n);
    must(out != NULL);
    plan_print(out, plan);
    (void)fclose(out);
    must(plan_read("again", text, n, &again) && again.n == plan->n);
    for (size_t i = 0; i < plan->n; i++) {
        const struct act *a = &plan->acts[i];
        const struct act *b = &again.acts[i];
        must(a->day == b->day && a->every == b->every && a->until == b->until);
        must(strcmp(a->what, b->what) == 0 && strcmp(a->source, b->source) == 0);
        must(a->class_name == b->class_name);
    }
    free(text);
}

static void in_order(const struct plan *plan)
{
    struct schedule schedule = {.plan = plan, .start = {0, 11, 12, 40}, .counts = 4};
    struct schedule_walk walk = {.begun = false};
    struct moment moment;
    long long date = -PLAN_DAYS;
    for (int i = 0; i < 500 && schedule_next(&schedule, &walk, &moment); i++) {
        must(moment.date >= date && moment.last >= moment.day && moment.number > 0);
        date = moment.date;
    }
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    static struct plan plan;
    if (plan_read("fuzz", (const char *)data, size, &plan)) {
        in_range(&plan);
        comes_back(&plan);
        in_order(&plan);
    }
    return 0;
}
