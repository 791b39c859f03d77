/* calendar_args.c - reads the options of `calendar`: exact names, nothing twice but --added. */
#include "cli/calendar_args.h"

#include "cli/args_words.h"
#include "cli/by_hand.h"
#include "cli/civil.h"
#include "cli/message.h"
#include "cli/stream.h"
#include "cli/utf8.h"
#include "cli/wording.h"

#include <string.h>

enum { TANK_MAX = 80, DATE_LENGTH = 10 };

static bool wrong_date(const char *option, const char *word, const char *why)
{
    char shown[SHOWN_MAX];
    show_text((struct hw_text){word, strlen(word)}, shown);
    complain("--%s '%s': %s", option, shown, why);
    return false;
}

/* 2031-04-01, and nothing else: an act is a whole day. */
static bool read_date(const char *option, const char *word, long long *days)
{
    static const char shape[] = "0000-00-00";
    int part[3] = {0, 0, 0};
    size_t at = 0;
    for (size_t i = 0; i < DATE_LENGTH; i++) {
        bool digit = word[i] >= '0' && word[i] <= '9';
        if (shape[i] == '0' ? !digit : word[i] != '-') {
            return wrong_date(option, word, "write a date as 2031-04-01");
        }
        at += shape[i] == '-' ? 1 : 0;
        part[at] = digit ? part[at] * 10 + (word[i] - '0') : part[at];
    }
    struct civil date = {part[0], part[1], part[2]};
    if (word[DATE_LENGTH] != '\0') {
        return wrong_date(option, word, "write a date alone, as 2031-04-01");
    }
    if (date.year < CIVIL_YEAR_MIN) {
        return wrong_date(option, word, "years from 1600 to 9999");
    }
    if (!civil_exists(date)) {
        return wrong_date(option, word, "there is no such day");
    }
    *days = civil_days(date);
    return true;
}

/* Kept in their order, whatever order they were given in. */
static bool read_added(const char *word, struct calendar *calendar)
{
    long long days = 0;
    if (!read_date("added", word, &days)) {
        return false;
    }
    if (calendar->n_added == ADDED_MAX) {
        complain("--added can be given %d times", ADDED_MAX);
        return false;
    }
    size_t at = calendar->n_added;
    for (; at > 0 && calendar->added[at - 1] >= days; at--) {
        if (calendar->added[at - 1] == days) {
            return wrong_date("added", word, "is given twice: give it once");
        }
        calendar->added[at] = calendar->added[at - 1];
    }
    calendar->added[at] = days;
    calendar->n_added++;
    return true;
}

/* What stands in each entry must be a line of text. */
static bool read_tank(const char *word, struct calendar *calendar)
{
    char shown[SHOWN_MAX];
    size_t n = strlen(word);
    bool plain = n > 0 && n <= TANK_MAX;
    for (size_t i = 0; plain && i < n;) {
        size_t length = utf8_length((struct hw_text){word + i, n - i});
        plain = length > 0 && show_text((struct hw_text){word + i, length}, shown);
        i += length;
    }
    calendar->tank = word;
    return plain ||
           option_wrong("tank", (struct hw_text){word, n},
                        "a name in UTF-8, of 80 bytes at most, without control characters");
}

static bool read_when(const char *word, struct calendar *calendar)
{
    char date[DATE_LENGTH + 1] = "";
    if (!option_when(word)) {
        return false;
    }
    memcpy(date, word, DATE_LENGTH);
    calendar->when_given = true;
    return when_read((struct hw_text){word, strlen(word)}, &calendar->when) &&
           read_date("when", date, &calendar->when_date);
}

static bool read_format(const char *word, struct calendar *calendar)
{
    int format = option_word("format", calendar_formats, (struct hw_text){word, strlen(word)});
    calendar->format = format < 0 ? CALENDAR_TEXT : (enum calendar_format)format;
    return format >= 0;
}

static bool read_value(size_t option, const char *word, struct calendar *calendar)
{
    switch (option) {
    case CALENDAR_PLAN:
        calendar->plan_word = word;
        return true;
    case CALENDAR_FROM:
        calendar->from_given = true;
        return read_date("from", word, &calendar->from);
    case CALENDAR_TANK:
        return read_tank(word, calendar);
    case CALENDAR_TANKS:
        calendar->tanks = word;
        return true;
    case CALENDAR_ADDED:
        return read_added(word, calendar);
    case CALENDAR_FORMAT:
        return read_format(word, calendar);
    case CALENDAR_WHEN:
        return read_when(word, calendar);
    default:
        calendar->full = true;
        return true;
    }
}

/* What is missing, and combinations that have no meaning; NULL: fine. */
static const char *nonsense(const struct calendar *calendar)
{
    bool table = calendar->format == CALENDAR_TABLE;
    bool dated = calendar->from_given || calendar->n_added > 0 || calendar->tank;
    if (!calendar->plan_word) {
        return "calendar needs --plan: copper, dye, watch, or a file of your own";
    }
    if (table && dated) {
        return "--format plan prints the plan without dates: leave --from, --added and --tank out";
    }
    if (!table && !calendar->from_given) {
        return "calendar needs --from: the day the fish arrive, as 2031-04-01";
    }
    if (calendar->full && calendar->format != CALENDAR_TEXT) {
        return "--full has a place in text alone";
    }
    if (calendar->when_given && calendar->format != CALENDAR_TEXT &&
        calendar->format != CALENDAR_ICS) {
        return "--when has a place in text and ics alone";
    }
    if (calendar->tanks && !calendar->tank) {
        return "--tanks names a file: say which tank with --tank NAME";
    }
    if (calendar->n_added > 0 && calendar->added[0] <= calendar->from) {
        return "--added is a day after --from: fish that arrived before it belong to day 0";
    }
    return NULL;
}

bool calendar_args_read(int argc, char *argv[], struct calendar *calendar)
{
    struct option_reader reader = {.command = &calendar_caption,
                                   .options = calendar_options,
                                   .argc = argc,
                                   .at = 2,
                                   .argv = argv};
    struct option_given given;
    *calendar = (struct calendar){.format = CALENDAR_TEXT};
    while (reader.at < argc) {
        if (!options_take(&reader, &given) || !read_value(given.option, given.value, calendar)) {
            return false;
        }
    }
    const char *why = nonsense(calendar);
    if (why) {
        complain("%s", why);
        message_try_help(&calendar_caption);
        return false;
    }
    return true;
}
