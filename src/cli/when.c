/* when.c - the times of a logbook: ISO 8601, as far as a logbook needs it. */
#include "cli/when.h"

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

static bool date_exists(const char *at)
{
    static const int days[] = {31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};
    int year = 100 * two_digits(at) + two_digits(at + 2);
    int month = two_digits(at + 5);
    int day = two_digits(at + 8);
    bool leap = (year % 4 == 0 && year % 100 != 0) || year % 400 == 0;
    return year >= 1600 && month >= 1 && month <= 12 && day >= 1 &&
           day <= days[month - 1] + (month == 2 && leap ? 1 : 0);
}

/* Nothing, Z, or an offset of at most 14 hours. */
static bool is_zone(struct hw_text text)
{
    if (text.n == 0 || (text.n == 1 && text.at[0] == 'Z')) {
        return true;
    }
    const char *at = text.at;
    bool signs = at[0] == '+' || at[0] == '-';
    text.at++;
    text.n--;
    if (!signs || !take(&text, "00:00") || text.n > 0) {
        return false;
    }
    int hours = two_digits(at + 1);
    int minutes = two_digits(at + 4);
    return minutes <= 59 && hours * 60 + minutes <= 14 * 60;
}

static bool is_time(struct hw_text text)
{
    const char *at = text.at;
    if (!take(&text, "00:00") || two_digits(at) > 23 || two_digits(at + 3) > 59) {
        return false;
    }
    at = text.at;
    if (take(&text, ":00") && two_digits(at + 1) > 59) {
        return false;
    }
    return is_zone(text);
}

bool when_is_iso(struct hw_text text)
{
    const char *at = text.at;
    if (!take(&text, "0000-00-00") || !date_exists(at)) {
        return false;
    }
    if (text.n == 0) {
        return true;
    }
    bool apart = text.at[0] == 'T' || text.at[0] == ' ';
    return apart && is_time((struct hw_text){text.at + 1, text.n - 1});
}
