/* when.c - the times of a logbook: ISO 8601, as far as a logbook needs it. */
#include "cli/when.h"

#include "cli/civil.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* Takes a text of a shape off the front: '0' is a digit, other characters are themselves. False
 * when it does not begin so. */
static bool take(struct hw_text *text, const char *shape)
{
    size_t n = strlen(shape);
    for (size_t i = 0; i < n; i++) {
        char c = i < text->n ? text->at[i] : '\0';
        if (!(shape[i] == '0' ? c >= '0' && c <= '9' : c == shape[i])) {
            return false;
        }
    }
    text->at += n;
    text->n -= n;
    return true;
}

static int two_digits(const char *at)
{
    return 10 * (at[0] - '0') + at[1] - '0';
}

/* Nothing, Z, or an offset of at most 14 hours. */
static bool read_zone(struct hw_text text, struct when *when)
{
    if (text.n == 0) {
        return true;
    }
    when->has_offset = true;
    if (text.n == 1 && text.at[0] == 'Z') {
        return true;
    }
    const char *at = text.at;
    bool signs = at[0] == '+' || at[0] == '-';
    text.at++;
    text.n--;
    if (!signs || !take(&text, "00:00") || text.n > 0) {
        return false;
    }
    int minutes = two_digits(at + 1) * 60 + two_digits(at + 4);
    when->offset = at[0] == '-' ? -minutes : minutes;
    when->seconds -= 60LL * when->offset;
    return two_digits(at + 4) <= 59 && minutes <= 14 * 60;
}

static bool read_time(struct hw_text text, struct when *when)
{
    const char *at = text.at;
    if (!take(&text, "00:00") || two_digits(at) > 23 || two_digits(at + 3) > 59) {
        return false;
    }
    when->has_time = true;
    when->seconds += two_digits(at) * 3600LL + two_digits(at + 3) * 60LL;
    at = text.at;
    if (take(&text, ":00")) {
        when->seconds += two_digits(at + 1);
        return two_digits(at + 1) <= 59 && read_zone(text, when);
    }
    return read_zone(text, when);
}

bool when_read(struct hw_text text, struct when *when)
{
    const char *at = text.at;
    if (!take(&text, "0000-00-00")) {
        return false;
    }
    struct civil date = {100 * two_digits(at) + two_digits(at + 2), two_digits(at + 5),
                         two_digits(at + 8)};
    if (!civil_exists(date)) {
        return false;
    }
    struct when read = {.seconds = civil_days(date) * 86400};
    bool apart = text.n > 0 && (text.at[0] == 'T' || text.at[0] == ' ');
    if (text.n > 0 && !(apart && read_time((struct hw_text){text.at + 1, text.n - 1}, &read))) {
        return false;
    }
    *when = read;
    return true;
}

bool when_pointed(struct hw_text text, char iso[WHEN_MAX])
{
    const char *at = text.at;
    struct when when;
    if (!take(&text, "00.00.0000") || text.n > WHEN_MAX - 11) {
        return false;
    }
    int n = snprintf(iso, WHEN_MAX, "%.4s-%.2s-%.2s%.*s", at + 6, at + 3, at, (int)text.n, text.at);
    if (n > 10 && iso[10] == ' ') {
        iso[10] = 'T';
    }
    return when_read((struct hw_text){iso, (size_t)n}, &when);
}

bool when_is_iso(struct hw_text text)
{
    struct when when;
    return when_read(text, &when);
}

void when_text(const struct when *when, char text[WHEN_MAX])
{
    long long wall = when->seconds + 60LL * when->offset;
    long long days = wall >= 0 ? wall / 86400 : -((86399 - wall) / 86400);
    int rest = (int)(wall - days * 86400);
    struct civil date = civil_date(days);
    char clock[WHEN_MAX] = "";
    char zone[WHEN_MAX] = "";
    if (when->has_time) {
        int n = snprintf(clock, sizeof clock, "T%02d:%02d", rest / 3600, rest / 60 % 60);
        if (rest % 60 != 0) {
            (void)snprintf(clock + n, sizeof clock - (size_t)n, ":%02d", rest % 60);
        }
    }
    if (when->has_offset) {
        (void)snprintf(zone, sizeof zone, "%c%02d:%02d", when->offset < 0 ? '-' : '+',
                       abs(when->offset) / 60, abs(when->offset) % 60);
    }
    (void)snprintf(text, WHEN_MAX, "%04d-%02d-%02d%.12s%.10s", date.year, date.month, date.day,
                   clock, zone);
}
