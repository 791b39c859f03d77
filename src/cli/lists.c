/* lists.c - units, sources, cautions. */
#include "cli/lists.h"

#include "cli/by_hand.h"
#include "cli/help.h"
#include "cli/print.h"
#include "cli/row_problem.h"
#include "cli/stream.h"
#include "cli/suggest.h"
#include "cli/wording.h"
#include "engine/unit.h"
#include "tables.h"

#include <stdio.h>
#include <string.h>

/* False with a message when there is more than one word after the command. */
static bool at_most_one(int argc, char *argv[])
{
    if (argc > 3) {
        complain("%s takes at most one word", argv[1]);
        return false;
    }
    return true;
}

int list_units(int argc, char *argv[])
{
    if (argc > 2) {
        complain("units takes no word: type 'holdwater units'");
        return EXIT_ASKED_WRONGLY;
    }
    (void)argv;
    for (const struct hw_unit *unit = hw_units; unit->name; unit++) {
        bool first = unit == hw_units || unit[-1].kind != unit->kind;
        if (first) {
            (void)printf("%s\n", hw_kind_name(unit->kind));
        }
        (void)printf("  %-12s%s\n", unit->name, unit->definition);
        const char *aliases = hw_unit_aliases(unit);
        if (aliases[0] == '\xC2') {
            (void)printf("  %-12salso with the degree sign\n", "");
        } else if (aliases[0] != '\0') {
            (void)printf("  %-12salso %s\n", "", aliases);
        }
    }
    (void)puts("Volumes, masses, lengths, shares, strengths, dosing rates must carry a unit.");
    return EXIT_ANSWERED;
}

static const char *source_key(size_t i)
{
    return i < HW_REFERENCES ? hw_references[i].key : NULL;
}

/* The reasons of rows follow the cautions. */
static const char *caution_code(size_t i)
{
    return i < HW_CAUTIONS ? hw_cautions[i].code : row_problems[i - HW_CAUTIONS].code;
}

static void print_source(size_t i)
{
    static const struct {
        const char *name, *meaning;
    } classes[] = {
        {"read", "the text or code named was read"},
        {"standard", "a published standard"},
        {"computed", "computed by an independent program"},
        {"recalled", "recalled, not checked against its text"},
        {"practice", "common practice, no source"},
        {"ours", "our own arithmetic or rule"},
    };
    const struct hw_reference *reference = &hw_references[i];
    (void)printf("%s\n  ", reference->key);
    print_wrapped(reference->text, 2, 2);
    for (size_t k = 0; k < sizeof classes / sizeof classes[0]; k++) {
        if (strcmp(classes[k].name, reference->class_name) == 0) {
            (void)printf("  (%s: %s)\n", classes[k].name, classes[k].meaning);
        }
    }
}

enum { HEADING_MAX = 600 };

static void print_caution(size_t i)
{
    if (i >= HW_CAUTIONS) {
        (void)printf("%s (problem of a row)\n  ", row_problems[i - HW_CAUTIONS].code);
        print_wrapped(row_problems[i - HW_CAUTIONS].text, 2, 2);
        return;
    }
    const struct hw_caution *caution = &hw_cautions[i];
    static const char *const effects[] = {
        [HW_STANDING] = "standing",
        [HW_CAUTION] = "raised by values",
        [HW_STRETCHED] = "raised: outside what was fitted",
        [HW_REFUSED] = "no answer",
        [HW_WITHHELD] = "withheld for safety",
    };
    char heading[HEADING_MAX];
    size_t n = (size_t)snprintf(heading, sizeof heading, "%s (%s; ", caution->code,
                                effects[caution->effect]);
    for (const char *c = caution->used_by; *c != '\0' && n + 4 < sizeof heading; c++) {
        n += (size_t)snprintf(heading + n, sizeof heading - n, *c == ',' ? ", " : "%c", *c);
    }
    (void)snprintf(heading + n, sizeof heading - n, ")");
    print_wrapped(heading, 0, 4);
    print_blanks(2);
    print_wrapped(caution->text, 2, 2);
    if (caution->source) {
        (void)printf("  [%s]\n", caution->source);
    }
}

/* True when a calculation has that source. */
static bool source_serves(const struct hw_calc *calc, size_t i)
{
    for (size_t k = 0; calc->sources[k]; k++) {
        if (strcmp(calc->sources[k], hw_references[i].key) == 0) {
            return true;
        }
    }
    return false;
}

static bool caution_serves(const struct hw_calc *calc, size_t i)
{
    for (size_t k = 0; i < HW_CAUTIONS && k < calc->n_notes; k++) {
        if (strcmp(calc->notes[k].code, hw_cautions[i].code) == 0) {
            return true;
        }
    }
    return false;
}

/* A list of rows by key, of which each serves some calculations. */
struct list {
    const char *(*key)(size_t);
    bool (*serves)(const struct hw_calc *, size_t);
    void (*print)(size_t);
};

static const struct list sources = {source_key, source_serves, print_source};
static const struct list cautions = {caution_code, caution_serves, print_caution};

/* Prints the row of the word given, those of a calculation, or all rows. */
static int list_rows(int argc, char *argv[], const struct list *list)
{
    if (!at_most_one(argc, argv)) {
        return EXIT_ASKED_WRONGLY;
    }
    char shown[SHOWN_MAX] = "";
    if (argc == 3) {
        show_text((struct hw_text){argv[2], strlen(argv[2])}, shown);
    }
    struct suggestions near = {.word = shown, .n = 0};
    const struct by_hand *command = argc == 3 ? by_hand_find(argv[2]) : NULL;
    const struct hw_calc *calc = command ? command->caption : argc == 3 ? calc_find(argv[2]) : NULL;
    bool found = false;
    for (size_t i = 0; list->key(i); i++) {
        bool meant = argc < 3 || strcmp(argv[2], list->key(i)) == 0;
        if (meant || (calc && list->serves(calc, i))) {
            list->print(i);
            found = true;
        } else {
            suggest_weigh(&near, list->key(i));
        }
    }
    if (found) {
        return EXIT_ANSWERED;
    }
    char suggestion[SUGGEST_TEXT];
    suggest_text(&near, "", suggestion);
    complain("%s knows no '%s'%s", argv[1], shown, suggestion);
    complain("type 'holdwater %s' for all of them", argv[1]);
    return EXIT_ASKED_WRONGLY;
}

int list_sources(int argc, char *argv[])
{
    return list_rows(argc, argv, &sources);
}

int list_cautions(int argc, char *argv[])
{
    return list_rows(argc, argv, &cautions);
}
