/* calendar_text.c - a calendar for people. An act that is done every few days has one line, on the
 * first of them. */
#include "cli/calendar_text.h"

#include "cli/by_hand.h"
#include "cli/civil.h"
#include "cli/notes.h"
#include "cli/print.h"
#include "cli/text_part.h"
#include "cli/utf8.h"
#include "cli/wording.h"
#include "tables.h"

#include <stdio.h>
#include <string.h>

/* Columns: a mark, weekday and date, day, act, class. */
enum { ACT_COLUMN = 22, CLASS_COLUMN = 71, PUBLISHED_INDENT = 4 };

/* What is done, "; ", how often, " to ", a date. */
enum { OFTEN_MAX = 32, WHAT_MAX = ACT_MAX + OFTEN_MAX + CIVIL_TEXT + 8 };

static void date_text(long long days, char text[CIVIL_TEXT])
{
    civil_text(civil_date(days), text);
}

/* Characters, where a terminal has one column for each. */
static size_t width_of(const char *text)
{
    size_t width = 0;
    for (size_t n = strlen(text); n > 0; width++) {
        size_t length = utf8_length((struct hw_text){text, n});
        length = length > 0 ? length : 1;
        text += length;
        n -= length;
    }
    return width;
}

/* What is done, and until when. */
static void what_text(const struct schedule *schedule, const struct moment *moment,
                      char text[WHAT_MAX])
{
    const struct act *act = &schedule->plan->acts[moment->act];
    char date[CIVIL_TEXT];
    char often[OFTEN_MAX] = "daily";
    if (act->every > 1) {
        (void)snprintf(often, sizeof often, "every %d days", act->every);
    }
    date_text(moment->date + moment->last - moment->day, date);
    if (moment->last > moment->day) {
        (void)snprintf(text, WHAT_MAX, "%s; %s to %s", act->what, often, date);
    } else {
        (void)snprintf(text, WHAT_MAX, "%s", act->what);
    }
}

/* Done with, or to be done on the day of --when; ' ' without one. */
static char mark_of(const struct calendar *calendar, const struct act *act,
                    const struct moment *moment)
{
    long long day = moment->day + calendar->when_date - moment->date;
    int first = 0;
    int last = 0;
    if (!calendar->when_given) {
        return ' ';
    }
    if (day > moment->last) {
        return '-';
    }
    return day >= moment->day && act_within(act, day, day, &first, &last) ? '>' : ' ';
}

static void print_act(const struct calendar *calendar, const struct schedule *schedule,
                      const struct moment *moment)
{
    const struct act *act = &schedule->plan->acts[moment->act];
    char date[CIVIL_TEXT];
    char what[WHAT_MAX];
    char from[2 * ACT_MAX];
    bool cites = calendar->full && act->source[0] != '\0';
    date_text(moment->date, date);
    what_text(schedule, moment, what);
    const char tie[] = {PRINT_TIE, '\0'};
    (void)snprintf(from, sizeof from, "%s%s%s", act->class_name, cites ? tie : "",
                   cites ? act->source : "");
    size_t at = (size_t)printf("%c %s %s %4d ", mark_of(calendar, act, moment),
                               civil_weekday(moment->date), date, moment->day);
    size_t width = width_of(what);
    if (at + width < CLASS_COLUMN && !cites) {
        (void)fputs(what, stdout);
        print_blanks(CLASS_COLUMN - at - width);
        (void)puts(from);
        return;
    }
    at = print_words(what, at, ACT_COLUMN, true);
    char bracketed[2 * ACT_MAX + 3];
    (void)snprintf(bracketed, sizeof bracketed, "[%s]", from);
    (void)print_words(bracketed, at, ACT_COLUMN, false);
    (void)putchar('\n');
}

static void print_acts(const struct calendar *calendar, const struct schedule *schedule)
{
    struct schedule_walk walk = {.begun = false};
    struct moment moment;
    size_t count = 0;
    char date[CIVIL_TEXT];
    while (schedule_next(schedule, &walk, &moment)) {
        for (; count < moment.count; count++) {
            date_text(schedule->start[count + 1], date);
            size_t at =
                (size_t)printf("  a fish added on %s: from here day 0 is that day, for all", date);
            print_blanks(CLASS_COLUMN - at);
            (void)puts("law");
        }
        if (moment.first_time) {
            print_act(calendar, schedule, &moment);
        }
    }
    if (calendar->when_given) {
        date_text(calendar->when_date, date);
        (void)printf("on %s: - is past, > is due; no clock was asked\n", date);
    }
}

/* "given: plan copper, from 2031-04-01, tank birch". */
static void print_given(const struct calendar *calendar)
{
    char text[SHOWN_MAX + 16];
    char shown[SHOWN_MAX];
    show_text((struct hw_text){calendar->plan_word, strlen(calendar->plan_word)}, shown);
    size_t at = print_words("given: plan", 0, 2, true);
    (void)snprintf(text, sizeof text, "%s, from", shown);
    at = print_words(text, at, 2, false);
    date_text(calendar->from, text);
    at = print_words(text, at, 2, false);
    if (calendar->tank) {
        show_text((struct hw_text){calendar->tank, strlen(calendar->tank)}, shown);
        (void)snprintf(text, sizeof text, ", tank %s", shown);
        at = print_words(text, at, 2, true);
    }
    for (size_t i = 0; i < calendar->n_added; i++) {
        char date[CIVIL_TEXT];
        date_text(calendar->added[i], date);
        (void)snprintf(text, sizeof text, ", added %s", date);
        at = print_words(text, at, 2, true);
    }
    (void)putchar('\n');
}

/* Published durations, which nothing is computed with. */
static void print_published(void)
{
    (void)puts("published, beside the plan; nothing is computed with it:");
    for (size_t i = 0; i < HW_DURATIONS; i++) {
        const struct hw_duration *told = &hw_durations[i];
        char heading[SHOWN_MAX];
        char text[2 * WORDS_MAX];
        (void)snprintf(heading, sizeof heading, "  %s%s%s:", told->parasite, told->temp ? ", " : "",
                       told->temp ? told->temp : "");
        size_t at = print_words(heading + 2, (size_t)printf("  "), PUBLISHED_INDENT, true);
        (void)snprintf(text, sizeof text, "%s [%s%c%s]", told->text, told->class_name, PRINT_TIE,
                       told->source);
        (void)print_words(text, at, PUBLISHED_INDENT, false);
        (void)putchar('\n');
    }
}

void calendar_text(const struct calendar *calendar, const struct schedule *schedule)
{
    const struct hw_calc *caption = &calendar_caption;
    uint64_t standing = notes_between(caption, HW_STANDING, HW_STANDING);
    (void)puts("calendar");
    print_acts(calendar, schedule);
    if (schedule->counts > 1) {
        text_note(&hw_calendar_notes[HW_CALENDAR_NOTE_COUNT_RESTARTED], "", "", calendar->full);
    }
    print_given(calendar);
    text_standing(caption, standing, calendar->full);
    if (calendar->full) {
        print_published();
        text_sources(caption);
    }
}
