/* test_utf8.c - characters of UTF-8 against the table of RFC 3629, section 4, byte for byte. */
#include "assert_close.h"
#include "cli/utf8.h"
#include "cli/wording.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>

#include <cmocka.h>

/* The rows of the grammar: the length, and the ranges of the first and the second byte; a third and
 * a fourth are 80 to BF. */
static const struct {
    size_t length;
    unsigned first[2], second[2];
} rows[] = {
    {1, {0x00, 0x7F}, {0, 0}},       {2, {0xC2, 0xDF}, {0x80, 0xBF}},
    {3, {0xE0, 0xE0}, {0xA0, 0xBF}}, {3, {0xE1, 0xEC}, {0x80, 0xBF}},
    {3, {0xED, 0xED}, {0x80, 0x9F}}, {3, {0xEE, 0xEF}, {0x80, 0xBF}},
    {4, {0xF0, 0xF0}, {0x90, 0xBF}}, {4, {0xF1, 0xF3}, {0x80, 0xBF}},
    {4, {0xF4, 0xF4}, {0x80, 0x8F}},
};

static int within(unsigned x, const unsigned range[2])
{
    return x >= range[0] && x <= range[1];
}

static size_t length_by_table(const unsigned char bytes[4], size_t n)
{
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        size_t length = rows[i].length;
        int fits = n >= length && within(bytes[0], rows[i].first) &&
                   (length < 2 || within(bytes[1], rows[i].second));
        for (size_t k = 2; k < length; k++) {
            fits = fits && bytes[k] >= 0x80 && bytes[k] <= 0xBF;
        }
        if (fits) {
            return length;
        }
    }
    return 0;
}

/* All first and second bytes, with third and fourth at and beside their ends, cut at every
 * length. */
static void every_form(void **state)
{
    (void)state;
    static const unsigned char ends[] = {0x00, 0x41, 0x7F, 0x80, 0x9A, 0xBF, 0xC0, 0xFF};
    for (unsigned k = 0; k < 0x10000 * 64; k++) {
        unsigned char bytes[4] = {(unsigned char)(k >> 14), (unsigned char)(k >> 6 & 0xFF),
                                  ends[k >> 3 & 7], ends[k & 7]};
        for (size_t n = 0; n <= 4; n++) {
            size_t got = utf8_length((struct hw_text){(const char *)bytes, n});
            if (got != length_by_table(bytes, n)) {
                fail_msg("%02x %02x %02x %02x, %zu bytes: %zu", bytes[0], bytes[1], bytes[2],
                         bytes[3], n, got);
            }
        }
    }
    check(utf8_length((struct hw_text){"\xF4\x90\x80\x80", 4}) == 0);
    check(utf8_length((struct hw_text){"\xF4\x8F\xBF\xBF", 4}) == 4);
    check(utf8_length((struct hw_text){"\xED\xA0\x80", 3}) == 0);
    check(utf8_length((struct hw_text){"\xC0\xAF", 2}) == 0);
    check(utf8_length((struct hw_text){"\xE2\x82", 2}) == 0);
    check(utf8_length((struct hw_text){"", 0}) == 0);
}

static void shows(const char *text, const char *want, bool exact)
{
    char shown[SHOWN_MAX];
    check(show_text((struct hw_text){text, strlen(text)}, shown) == exact);
    assert_string_equal(shown, want);
}

/* What a keeper wrote, in messages: no command to a terminal, no half character. */
static void shown_texts(void **state)
{
    (void)state;
    shows("", "", true);
    shows("temp (\xC2\xB0\x43)", "temp (\xC2\xB0\x43)", true);
    shows("temp (\xB0\x43)", "temp (?C)", false);
    shows("a\x1B[31m\x7F", "a?[31m?", false);
    shows("a\xC2\x9B\x33\x31m", "a??31m", false);
    shows("\xC2\xA0\xF4\x90\x80\x80", "\xC2\xA0????", false);
    static const char sixty[] = "012345678901234567890123456789012345678901234567890123456789";
    char longer[80];
    shows(sixty, sixty, true);
    (void)snprintf(longer, sizeof longer, "%s0", sixty);
    char cut[80];
    (void)snprintf(cut, sizeof cut, "%s...", sixty);
    shows(longer, cut, false);
    (void)snprintf(longer, sizeof longer, "%.59s\xC2\xB0", sixty);
    (void)snprintf(cut, sizeof cut, "%.59s...", sixty);
    shows(longer, cut, false);
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(every_form), cmocka_unit_test(shown_texts)};
    return hw_report_checks(cmocka_run_group_tests(tests, NULL, NULL));
}
