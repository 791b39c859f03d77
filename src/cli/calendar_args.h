/* calendar_args.h - what the words after `calendar` ask for. */
#ifndef HW_CALENDAR_ARGS_H
#define HW_CALENDAR_ARGS_H
#include "cli/schedule.h"
#include "cli/when.h"

enum calendar_format { CALENDAR_TEXT, CALENDAR_CSV, CALENDAR_TSV, CALENDAR_ICS, CALENDAR_TABLE };

struct calendar {
    const char *plan_word; /* the name of a plan, or of a file */
    const char *tank;      /* NULL: none */
    const char *tanks;
    enum calendar_format format;
    bool full, from_given, when_given;
    long long from;             /* day 0, in days since 1970-01-01, as all dates here */
    long long added[ADDED_MAX]; /* rising, each later than from */
    size_t n_added;
    struct when when;
    long long when_date; /* the date that --when writes */
};

/* False with a message for what cannot be understood, or means nothing. */
bool calendar_args_read(int argc, char *argv[], struct calendar *calendar);
#endif
