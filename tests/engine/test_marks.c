/* test_marks.c - where cells end, against a look at each byte. */
#include "assert_close.h"
#include "cli/marks.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>

#include <cmocka.h>

static uint16_t found[MARKS_MAX];

/* True when exactly the marks of the text are found, in order. */
static int holds(const char *text, size_t n, char separator)
{
    size_t marks = marks_find(text, n, separator, found);
    size_t k = 0;
    for (size_t i = 0; i < n; i++) {
        if (text[i] == separator || text[i] == '\n' || text[i] == '\r' || text[i] == '"') {
            if (k >= marks || found[k] != i) {
                return 0;
            }
            k++;
        }
    }
    return k == marks;
}

/* Every byte at every place of a stride, and nothing but it. */
static void every_byte(void **state)
{
    (void)state;
    char text[130];
    for (int byte = 0; byte < 256; byte++) {
        memset(text, byte, sizeof text);
        check(holds(text, sizeof text, ','));
        for (size_t at = 0; at < sizeof text; at++) {
            memset(text, 'x', sizeof text);
            text[at] = (char)byte;
            check(holds(text, sizeof text, ','));
            check(holds(text, sizeof text, ';') && holds(text, sizeof text, '\t'));
        }
    }
}

/* Bytes next to those that are looked for, at random, in texts of every length up to some strides;
 * behind the text stand marks that are not its own. */
static void random_texts(void **state)
{
    (void)state;
    static const char near[] = ",;\t\n\r\"+-.0x\x0b\x0c\x0e\x08\x21\x23\x3a\x3c\x80\x8a\xac\xff";
    static char text[MARKS_MAX];
    uint64_t seed = 20310305;
    printf("seed 20310305\n");
    for (size_t n = 0; n < 400; n++) {
        for (size_t i = 0; i < n; i++) {
            seed = seed * UINT64_C(6364136223846793005) + UINT64_C(1442695040888963407);
            text[i] = near[(seed >> 33) % sizeof near]; /* the NUL as well */
        }
        memset(text + n, ',', 64);
        check(holds(text, n, ",;\t"[n % 3]));
    }
    memset(text, ',', sizeof text);
    check(marks_find(text, sizeof text, ',', found) == MARKS_MAX && found[MARKS_MAX - 1] == 8191);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(every_byte),
        cmocka_unit_test(random_texts),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);
    return hw_report_checks(failed);
}
