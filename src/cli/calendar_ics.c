/* calendar_ics.c - a calendar for a phone: RFC 5545, as little of it as does the job. Whole days
 * have no time and no time zone; an entry has no end, so that it lasts its day; nothing rings. */
#include "cli/calendar_ics.h"

#include "cli/civil.h"
#include "cli/stream.h"
#include "cli/wording.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum {
    FOLD = 75,   /* octets of a line, without its end */
    LINE = 2048, /* a whole content line: escapes double a text, percent signs triple it */
    STAMP = 24,
    DAY_SECONDS = 86400
};

/* A content line as it grows. */
struct line {
    char text[LINE];
    size_t n;
};

static void add(struct line *line, const char *text)
{
    size_t n = strlen(text);
    if (line->n + n < LINE) {
        memcpy(line->text + line->n, text, n);
        line->n += n;
    }
}

/* Section 3.3.11: TEXT. A colon stands for itself. */
static void add_text(struct line *line, const char *text)
{
    for (; *text != '\0'; text++) {
        const char pair[] = {'\\', *text, '\0'};
        bool special = *text == '\\' || *text == ';' || *text == ',';
        add(line, special ? pair : pair + 1);
    }
}

/* A part of a UID: no two texts come out the same, and none has a full stop. */
static void add_part(struct line *line, const char *text)
{
    static const char plain[] = "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789-_";
    for (; *text != '\0'; text++) {
        char code[4] = {*text, '\0', '\0', '\0'};
        if (*text == ' ') {
            code[0] = '+';
        } else if (!strchr(plain, *text)) {
            (void)snprintf(code, sizeof code, "%%%02X", (unsigned)(unsigned char)*text);
        }
        add(line, code);
    }
}

/* Section 3.1: at most 75 octets, then CR LF and a blank; a character of UTF-8 stays whole. */
static void end_line(struct line *line)
{
    size_t at = 0;
    size_t room = FOLD;
    while (line->n - at > room) {
        size_t n = room;
        while (((unsigned char)line->text[at + n] & 0xC0u) == 0x80) {
            n--;
        }
        stream_write(line->text + at, n);
        stream_write("\r\n ", 3);
        at += n;
        room = FOLD - 1;
    }
    stream_write(line->text + at, line->n - at);
    stream_write("\r\n", 2);
    line->n = 0;
}

static void put(const char *text)
{
    struct line line = {.n = 0};
    add(&line, text);
    end_line(&line);
}

/* --- The time of the entries ------------------------------------------------------------------ */

/* Seconds since 1970 as $SOURCE_DATE_EPOCH has them; true when it is not set or empty. */
static bool epoch_read(bool *set, long long *seconds)
{
    const char *word = getenv("SOURCE_DATE_EPOCH");
    *set = word && word[0] != '\0';
    *seconds = 0;
    size_t n = *set ? strlen(word) : 0;
    bool digits = n <= 12;
    for (size_t i = 0; digits && i < n; i++) {
        digits = word[i] >= '0' && word[i] <= '9';
        *seconds = *seconds * 10 + (word[i] - '0');
    }
    if (!digits) {
        char shown[SHOWN_MAX];
        show_text((struct hw_text){word, n}, shown);
        complain("SOURCE_DATE_EPOCH '%s' is no number of seconds since 1970: set it right or not "
                 "at all",
                 shown);
    }
    return digits;
}

/* DTSTAMP: --when, else $SOURCE_DATE_EPOCH, else midnight of day 0 of the count that runs. The same
 * question gives the same bytes, and a calendar that was made anew for a fish is the later one. */
static bool stamp_text(const struct calendar *calendar, const struct schedule *schedule,
                       char text[STAMP])
{
    bool set = false;
    long long seconds = 0;
    if (!epoch_read(&set, &seconds)) {
        return false;
    }
    if (calendar->when_given) {
        seconds = calendar->when.seconds;
    } else if (!set) {
        seconds = schedule->start[schedule->counts - 1] * DAY_SECONDS;
    }
    long long of_day = (seconds % DAY_SECONDS + DAY_SECONDS) % DAY_SECONDS;
    struct civil date = civil_date((seconds - of_day) / DAY_SECONDS);
    if (!civil_exists(date)) {
        complain("the time of the entries lies outside the years 1600 to 9999 in UTC: give --when");
        return false;
    }
    (void)snprintf(text, STAMP, "%04d%02d%02dT%02d%02d%02dZ", date.year, date.month, date.day,
                   (int)(of_day / 3600), (int)(of_day / 60 % 60), (int)(of_day % 60));
    return true;
}

/* --- Entries ---------------------------------------------------------------------------------- */

/* The name of a plan without the folders it lies in. */
static const char *plan_name(const char *word)
{
    const char *slash = strrchr(word, '/');
    return slash && slash[1] != '\0' ? slash + 1 : strcmp(word, "-") == 0 ? "of your own" : word;
}

/* Day 0, tank, act, and which time of the act it is. The count is left out: when a fish is added,
 * the times of an act that were still to come are moved, and none stays behind in the phone. */
static void put_uid(const struct calendar *calendar, const struct act *act,
                    const struct moment *moment)
{
    struct line line = {.n = 0};
    char text[CIVIL_TEXT];
    civil_text(civil_date(calendar->from), text);
    add(&line, "UID:");
    add(&line, text);
    add(&line, ".");
    add_part(&line, calendar->tank ? calendar->tank : "");
    add(&line, ".");
    add_part(&line, act->what);
    (void)snprintf(text, sizeof text, ".%d", moment->number);
    add(&line, text);
    add(&line, "@holdwater.invalid");
    end_line(&line);
}

static void put_summary(const struct calendar *calendar, const struct act *act)
{
    struct line line = {.n = 0};
    add(&line, "SUMMARY:");
    if (calendar->tank) {
        add_text(&line, calendar->tank);
        add(&line, ": ");
    }
    add_text(&line, act->what);
    end_line(&line);
}

static void put_description(const struct calendar *calendar, const struct act *act,
                            const struct moment *moment)
{
    struct line line = {.n = 0};
    char text[64];
    char name[SHOWN_MAX];
    const char *plan = plan_name(calendar->plan_word);
    (void)show_text((struct hw_text){plan, strlen(plan)}, name);
    (void)snprintf(text, sizeof text, "Day %d", moment->day);
    add(&line, "DESCRIPTION:");
    add(&line, text);
    if (moment->count > 0) {
        (void)snprintf(text, sizeof text, " of count %zu", moment->count + 1);
        add(&line, text);
    }
    add_text(&line, ", plan ");
    add_text(&line, name);
    add(&line, ". Class: ");
    add(&line, act->class_name);
    if (act->source[0] != '\0') {
        add_text(&line, ", ");
        add_text(&line, act->source);
    }
    if (moment->count > 0) {
        add_text(&line,
                 ". A fish was added: medicine may be in. Read its level, pour no second dose");
    }
    add_text(&line, ". Not veterinary advice: ask a veterinarian, follow labels and local rules.");
    end_line(&line);
}

static void put_entry(const struct calendar *calendar, const struct act *act,
                      const struct moment *moment, const char *stamp)
{
    char text[64];
    struct civil date = civil_date(moment->date);
    put("BEGIN:VEVENT");
    put_uid(calendar, act, moment);
    (void)snprintf(text, sizeof text, "DTSTAMP:%s", stamp);
    put(text);
    (void)snprintf(text, sizeof text, "DTSTART;VALUE=DATE:%04d%02d%02d", date.year, date.month,
                   date.day);
    put(text);
    put_summary(calendar, act);
    put_description(calendar, act, moment);
    put("TRANSP:TRANSPARENT");
    put("END:VEVENT");
}

bool calendar_ics(const struct calendar *calendar, const struct schedule *schedule)
{
    struct schedule_walk walk = {.begun = false};
    struct moment moment;
    char stamp[STAMP];
    if (!stamp_text(calendar, schedule, stamp)) {
        return false;
    }
    put("BEGIN:VCALENDAR");
    put("VERSION:2.0");
    put("PRODID:-//holdwater//calendar//EN");
    while (schedule_next(schedule, &walk, &moment)) {
        put_entry(calendar, &schedule->plan->acts[moment.act], &moment, stamp);
    }
    put("END:VCALENDAR");
    return true;
}
