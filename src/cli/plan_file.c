/* plan_file.c - finds the plan that is asked for. The program's own plans are text as a keeper's
 * is, and go through the same reader. */
#include "cli/plan_file.h"

#include "cli/input.h"
#include "cli/stream.h"
#include "cli/suggest.h"
#include "cli/wording.h"
#include "tables.h"

#include <errno.h>
#include <stdio.h>
#include <string.h>
#include <unistd.h>

/* The whole file, while it is read. */
static struct input file;

static const struct hw_plan *own_plan(const char *word)
{
    for (size_t i = 0; hw_plans[i].name; i++) {
        if (hw_name_is(hw_plans[i].name, word, strlen(word))) {
            return &hw_plans[i];
        }
    }
    return NULL;
}

static bool load_own(const struct hw_plan *own, struct plan *plan)
{
    size_t used = 0;
    for (size_t i = 0; own->lines[i]; i++) {
        size_t n = strlen(own->lines[i]);
        memcpy(file.text + used, own->lines[i], n);
        file.text[used + n] = '\n';
        used += n + 1;
    }
    return plan_read(own->name, file.text, used, plan);
}

/* A word that is neither a plan nor a file, and looks like the name of a plan. */
static bool no_such_plan(const char *word)
{
    char shown[SHOWN_MAX];
    char suggestion[SUGGEST_TEXT];
    char names[WORDS_MAX] = "";
    show_text((struct hw_text){word, strlen(word)}, shown);
    struct suggestions near = {.word = shown, .n = 0};
    for (size_t i = 0; hw_plans[i].name; i++) {
        size_t used = strlen(names);
        (void)snprintf(names + used, sizeof names - used, "%s%s", i == 0 ? "" : ", ",
                       hw_plans[i].name);
        suggest_weigh(&near, hw_plans[i].name);
    }
    suggest_text(&near, "", suggestion);
    complain("no plan and no file is called '%s'%s", shown, suggestion);
    complain("plans: %s; or name a file of your own", names);
    return false;
}

static bool load_file(const char *word, struct plan *plan)
{
    bool standard = strcmp(word, "-") == 0;
    if (!standard && !strchr(word, '/') && access(word, F_OK) != 0 && errno == ENOENT) {
        return no_such_plan(word);
    }
    if (!input_open(&file, word)) {
        return false;
    }
    bool fine = true;
    while (fine && !file.at_end) {
        fine = input_fill(&file);
        if (fine && file.end > CSV_RECORD_MAX) {
            complain("%s is too large for a plan (over 1 MiB)", input_name(&file));
            fine = false;
        }
    }
    input_close(&file);
    input_skip_mark(&file);
    return fine &&
           plan_read(input_name(&file), file.text + file.begin, file.end - file.begin, plan);
}

bool plan_load(const char *word, struct plan *plan)
{
    const struct hw_plan *own = own_plan(word);
    return own ? load_own(own, plan) : load_file(word, plan);
}

void plan_write(const char *word, const struct plan *plan)
{
    const struct hw_plan *own = own_plan(word);
    for (size_t i = 0; own && own->lines[i]; i++) {
        (void)puts(own->lines[i]);
    }
    if (!own) {
        plan_print(stdout, plan);
    }
}
