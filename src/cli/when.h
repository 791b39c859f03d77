/* when.h - the times of a logbook: ISO 8601, as far as a logbook needs it. */
#ifndef HW_WHEN_H
#define HW_WHEN_H
#include "engine/value.h"

enum { WHEN_MAX = 40 };

struct when {
    long long seconds; /* since 1970: in UTC with an offset, else by the clock on the wall */
    bool has_time;     /* false: a date alone, its midnight */
    bool has_offset;   /* Z or +01:00 is written; times with and without cannot be compared */
    int offset;        /* of the clock on the wall from UTC, in minutes */
};

/* Reads a date that exists, alone or with a time: 2031-03-05, 2031-03-05T08:15,
 * 2031-03-05 08:15:30+01:00, and Z for +00:00. Years from 1600 on. False, *when as it was, for
 * anything else. */
bool when_read(struct hw_text text, struct when *when);

/* Writes a moment as it was read: a date alone, or with hours and minutes, and seconds if there are
 * any, and its offset if it has one. */
void when_text(const struct when *when, char text[WHEN_MAX]);

/* A date with points, the day first: "01.04.2031", perhaps with a time behind it. Writes it as
 * when_read reads it. False for anything else, and for a day that does not exist. */
bool when_pointed(struct hw_text text, char iso[WHEN_MAX]);

/* True where when_read would read it. */
bool when_is_iso(struct hw_text text);
#endif
