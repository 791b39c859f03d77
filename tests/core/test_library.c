/* test_library.c - the rules that the public headers keep, read from the headers themselves.
 *
 * The types: library_prototypes.h declares every function again, so that the compiler compares. The
 * rest is text: both lists hold the same prototypes; a name begins with that of its header; int
 * status; at most six parameters; temperature before salinity; a per cent is named so. */
#ifndef _POSIX_C_SOURCE
#define _POSIX_C_SOURCE 200809L /* opendir */
#endif

#include <ctype.h>
#include <dirent.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

#include "assert_close.h"
#include "holdwater/holdwater.h"
#include "library_prototypes.h"

enum { TEXT_MAX = 60000, LIST_MAX = 100, PATH_LENGTH = 200, PARAMETERS_MAX = 6 };

/* Every file of include/holdwater. */
static char headers[LIST_MAX][PATH_LENGTH];
static int header_count;

static void read_text(const char *path, char text[TEXT_MAX])
{
    FILE *file = fopen(path, "r");
    if (file == NULL) {
        fail_msg("cannot open %s", path);
        return;
    }
    size_t length = fread(text, 1, TEXT_MAX - 1, file);
    fclose(file);
    text[length] = '\0';
    check(length > 0 && length < TEXT_MAX - 1);
}

/* Takes comments away. */
static void bare(char *text)
{
    char *to = text;
    for (char *at = text; *at != '\0'; at++) {
        if (at[0] == '/' && at[1] == '*') {
            at = strstr(at, "*/");
            if (at == NULL) {
                fail_msg("a comment does not end");
                return;
            }
            at++;
            continue;
        }
        *to++ = *at;
    }
    *to = '\0';
}

/* The next declaration of a function in bare text, blanks made single, its end after it; NULL when
 * there is none. */
static const char *next_prototype(const char *text, char prototype[PATH_LENGTH * 2])
{
    for (; *text != '\0'; text++) {
        int starts = strncmp(text, "int hw_", 7) == 0 || strncmp(text, "const char *hw_", 15) == 0;
        if (!starts) {
            continue;
        }
        char *to = prototype;
        for (; *text != ';' && *text != '\0' && to < prototype + PATH_LENGTH * 2 - 2; text++) {
            int blank = isspace((unsigned char)*text) != 0;
            if (!blank || (to > prototype && to[-1] != ' ')) {
                *to++ = blank ? ' ' : *text;
            }
        }
        *to = '\0';
        return text;
    }
    return NULL;
}

static void find_headers(void)
{
    DIR *folder = opendir("include/holdwater");
    for (struct dirent *e = folder != NULL ? readdir(folder) : NULL; e != NULL;
         e = readdir(folder)) {
        if (e->d_name[0] != '.' && header_count < LIST_MAX) {
            snprintf(headers[header_count++], PATH_LENGTH, "include/holdwater/%.100s", e->d_name);
        }
    }
    if (folder != NULL) {
        closedir(folder);
    }
}

static void every_header_is_in_the_whole(void **state)
{
    char whole[TEXT_MAX];
    (void)state;
    assert_in_range(header_count, 30, LIST_MAX);
    read_text("include/holdwater/holdwater.h", whole);
    for (int h = 0; h < header_count; h++) {
        char line[PATH_LENGTH + 20];
        snprintf(line, sizeof line, "#include \"%s\"\n", headers[h] + strlen("include/"));
        check(strstr(whole, line) != NULL || strstr(headers[h], "holdwater.h") != NULL);
    }
}

/* hw_seawater of include/holdwater/seawater.h; in capitals HW_SEAWATER. */
static void stem_of(const char *path, int capitals, char stem[PATH_LENGTH])
{
    const char *base = strrchr(path, '/') + 1;
    snprintf(stem, PATH_LENGTH, "hw_%.*s", (int)strcspn(base, "."), base);
    for (char *c = stem; capitals && *c != '\0'; c++) {
        *c = (char)toupper((unsigned char)*c);
    }
}

/* Whether a name is the stem, or begins with it and goes on with an underscore. */
static int begins(const char *name, const char *stem)
{
    size_t length = strlen(stem);
    return strncmp(name, stem, length) == 0 && !isalnum((unsigned char)name[length]);
}

static void must_begin(const char *name, const char *path, int capitals)
{
    char stem[PATH_LENGTH];
    stem_of(path, capitals, stem);
    int holds = begins(name, stem);
    if (strstr(path, "holdwater.h") != NULL) {
        holds = begins(name, "HW_VERSION");
    }
    if (!holds) {
        print_error("%s: %.40s\n", path, name);
    }
    check(holds);
}

/* ---------------------------------------------------------------- the list of functions */

static void both_lists_are_one(void **state)
{
    char list[TEXT_MAX];
    char text[TEXT_MAX];
    char there[PATH_LENGTH * 2];
    char listed[PATH_LENGTH * 2];
    int count = 0;
    (void)state;
    read_text("tests/core/library_prototypes.h", list);
    bare(list);
    for (int h = 0; h < header_count; h++) {
        read_text(headers[h], text);
        bare(text);
        for (const char *at = next_prototype(text, there); at != NULL;
             at = next_prototype(at, there)) {
            int times = 0;
            for (const char *l = next_prototype(list, listed); l != NULL;
                 l = next_prototype(l, listed)) {
                times += strcmp(there, listed) == 0;
            }
            if (times != 1) {
                print_error("%s: listed %d times: %s\n", headers[h], times, there);
            }
            check(times == 1);
            count++;
        }
    }
    for (const char *l = next_prototype(list, listed); l != NULL; l = next_prototype(l, listed)) {
        count--;
    }
    assert_int_equal(count, 0); /* each is in the list once, so nothing else is */
}

/* The names of the parameters that are no pointers, and how many parameters there are in all. */
static int parameters_of(const char *prototype, char names[PARAMETERS_MAX][64], int *plain)
{
    int count = 0;
    const char *at = strchr(prototype, '(') + 1;
    *plain = 0;
    while (at != NULL && count <= PARAMETERS_MAX) {
        size_t length = strcspn(at, ",)");
        const char *name = at + length;
        while (name > at && (isalnum((unsigned char)name[-1]) || name[-1] == '_')) {
            name--;
        }
        if (name[-1] != '*' && *plain < PARAMETERS_MAX) {
            snprintf(names[*plain], 64, "%.*s", (int)(at + length - name), name);
            ++*plain;
        }
        count++;
        at = at[length] == ',' ? at + length + 1 : NULL;
    }
    return count;
}

/* Each salinity comes after the temperature of the same water, where that is given. */
static int in_order(char names[PARAMETERS_MAX][64], int count)
{
    for (int s = 0; s < count; s++) {
        char *end = strstr(names[s], "salinity");
        if (end == NULL) {
            continue;
        }
        char temp[64];
        snprintf(temp, sizeof temp, "%.*stemp", (int)(end - names[s]), names[s]);
        for (int t = s + 1; t < count; t++) {
            if (strcmp(names[t], temp) == 0) {
                return 0;
            }
        }
    }
    return 1;
}

static void functions_keep_the_rules(void **state)
{
    char text[TEXT_MAX];
    char prototype[PATH_LENGTH * 2];
    (void)state;
    for (int h = 0; h < header_count; h++) {
        read_text(headers[h], text);
        bare(text);
        for (const char *at = next_prototype(text, prototype); at != NULL;
             at = next_prototype(at, prototype)) {
            char names[PARAMETERS_MAX][64];
            int plain = 0;
            const char *name = strstr(prototype, "hw_");
            must_begin(name, headers[h], 0);
            check(parameters_of(prototype, names, &plain) <= PARAMETERS_MAX);
            if (!in_order(names, plain)) {
                print_error("%s\n", prototype);
            }
            check(in_order(names, plain));
            check(strncmp(prototype, "int ", 4) == 0 || begins(name, "hw_status_text"));
        }
    }
}

/* What the rules are worth: prototypes that break them are told. */
static void rules_find_what_breaks_them(void **state)
{
    char names[PARAMETERS_MAX][64];
    int plain = 0;
    (void)state;
    assert_int_equal(parameters_of("int f(double salinity, double temp, double *d)", names, &plain),
                     3);
    assert_int_equal(plain, 2);
    assert_false(in_order(names, plain));
    parameters_of("int f(double temp, double salinity, double new_salinity, double new_temp)",
                  names, &plain);
    assert_false(in_order(names, plain));
    parameters_of("int f(double temp, double salinity, double new_temp, double new_salinity)",
                  names, &plain);
    assert_true(in_order(names, plain));
    assert_true(parameters_of("int f(int a, int b, int c, int d, int e, int f, int g)", names,
                              &plain) > PARAMETERS_MAX);
    assert_false(begins("hw_seawaters", "hw_seawater"));
    assert_true(begins("hw_seawater", "hw_seawater"));
    assert_true(begins("hw_seawater_x(", "hw_seawater"));
}

/* ---------------------------------------------------------------- other names, per cents */

/* Macros, enumerators and tags of enums and structs. */
static void names_begin_with_the_header(void **state)
{
    char text[TEXT_MAX];
    (void)state;
    for (int h = 0; h < header_count; h++) {
        read_text(headers[h], text);
        bare(text);
        for (const char *at = strstr(text, "HW_"); at != NULL; at = strstr(at + 1, "HW_")) {
            const char *after = at + strspn(at, "ABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789_");
            int defined = at - text >= 8 && strncmp(at - 8, "#define ", 8) == 0;
            if (defined || strncmp(after, " = ", 3) == 0) {
                must_begin(at, headers[h], 1);
            }
        }
        for (const char *at = strchr(text, '{'); at != NULL; at = strchr(at + 1, '{')) {
            const char *tag = at;
            while (tag > text && tag[-1] != '\n') {
                tag--;
            }
            if (strncmp(tag, "enum ", 5) == 0 || strncmp(tag, "struct ", 7) == 0) {
                must_begin(strchr(tag, ' ') + 1, headers[h], 0);
            }
        }
    }
}

/* Lines of doc blocks, " *   NAME  meaning": who speaks of a per cent is named so. */
static void a_per_cent_is_named_so(void **state)
{
    static const char letters[] = "abcdefghijklmnopqrstuvwxyz0123456789_";
    char text[TEXT_MAX];
    int told = 0;
    (void)state;
    for (int h = 0; h < header_count; h++) {
        read_text(headers[h], text);
        for (char *line = strtok(text, "\n"); line != NULL; line = strtok(NULL, "\n")) {
            size_t length = strncmp(line, " *   ", 5) == 0 ? strspn(line + 5, letters) : 0;
            const char *end = line + 5 + length;
            if (length < 2 || strncmp(end, "  ", 2) != 0 || strstr(end, "per cent") == NULL) {
                continue;
            }
            if (strncmp(end - 7, "percent", 7) != 0) {
                print_error("%s:%s\n", headers[h], line);
            }
            check(strncmp(end - 7, "percent", 7) == 0);
            told++;
        }
    }
    assert_in_range(told, 3, 100);
}

/* ---------------------------------------------------------------- statuses, version */

static void statuses_have_words(void **state)
{
    static const int known[] = {HW_STATUS_OK, HW_STATUS_STRETCHED, HW_STATUS_RANGE,
                                HW_STATUS_CHOICE, HW_STATUS_NONE};
    static const int others[] = {2, 77, -4, -77};
    (void)state;
    for (size_t i = 0; i < sizeof known / sizeof *known; i++) {
        check(strlen(hw_status_text(known[i])) > 5);
        for (size_t k = 0; k < i; k++) {
            check(strcmp(hw_status_text(known[i]), hw_status_text(known[k])) != 0);
        }
    }
    for (int status = -80; status <= 80; status++) {
        const char *text = hw_status_text(status);
        check(text != NULL && text == hw_status_text(status));
        check((strncmp(text, "no answer", 9) == 0) == (status < 0));
    }
    for (size_t i = 0; i < sizeof others / sizeof *others; i++) {
        for (size_t k = 0; k < sizeof known / sizeof *known; k++) {
            check(strcmp(hw_status_text(others[i]), hw_status_text(known[k])) != 0);
        }
    }
}

static void version_agrees_with_its_parts(void **state)
{
    char parts[64];
    (void)state;
    snprintf(parts, sizeof parts, "%d.%d.%d", HW_VERSION_MAJOR, HW_VERSION_MINOR, HW_VERSION_PATCH);
    assert_string_equal(parts, HW_VERSION);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(every_header_is_in_the_whole),
        cmocka_unit_test(both_lists_are_one),
        cmocka_unit_test(functions_keep_the_rules),
        cmocka_unit_test(rules_find_what_breaks_them),
        cmocka_unit_test(names_begin_with_the_header),
        cmocka_unit_test(a_per_cent_is_named_so),
        cmocka_unit_test(statuses_have_words),
        cmocka_unit_test(version_agrees_with_its_parts),
    };
    find_headers();
    return hw_report_checks(cmocka_run_group_tests(tests, NULL, NULL));
}
