/* by_hand.h - commands that answer a keeper and are none of hw_calcs: what help and lists tell of
 * them. */
#ifndef HW_BY_HAND_H
#define HW_BY_HAND_H
#include "cli/args.h"

struct by_hand {
    const struct hw_calc
        *caption; /* its name, purpose, notes, sources, and inputs read as others are */
    const struct general_option *options; /* all of them; a NULL name ends the list */
    const char *more;                     /* what its help says below them, or NULL */
};

/* A NULL caption ends the list. */
extern const struct by_hand by_hand[];

/* The command of that name, or NULL. */
const struct by_hand *by_hand_find(const char *name);

/* In the order of its help. */
enum {
    CALENDAR_PLAN,
    CALENDAR_FROM,
    CALENDAR_TANK,
    CALENDAR_ADDED,
    CALENDAR_FORMAT,
    CALENDAR_WHEN,
    CALENDAR_FULL,
    CALENDAR_TANKS,
    CALENDAR_HELP,
    CALENDAR_OPTIONS
};

extern const struct hw_calc calendar_caption;
extern const struct general_option calendar_options[];

/* The words of its --format, in the order of enum calendar_format; NULL ends the list. */
extern const char *const calendar_formats[];
#endif
