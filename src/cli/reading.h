/* reading.h - a reading as it stands in a cell, a log line or an option: a number, perhaps with a
 * unit of any kind. */
#ifndef HW_READING_H
#define HW_READING_H
#include "engine/value.h"

enum reading_kind {
    READING_NUMBER,
    READING_EMPTY,
    READING_BOUND, /* <0.25, >3, ~1: where it lies, not what it is */
    READING_NONE   /* anything else */
};

struct reading {
    double value;
    const struct hw_unit *unit; /* written with it, or NULL */
};

/* Reads a text. A unit that several kinds have is that of `kind`, if it is one of them; what
 * follows +- is left out, as the value itself is the middle. */
enum reading_kind reading_read(struct hw_text text, enum hw_kind kind, struct reading *reading);

/* On which side of its number a reading lies; of those behind, the number itself may be it, too. */
enum reading_side {
    READING_AT,
    READING_BELOW,
    READING_UP_TO,
    READING_ABOVE,
    READING_FROM,
    READING_ANYWHERE /* ~1, or not to be read: its number tells nothing */
};

/* Reads a text that is no number for reading_read, <0.25 or "<= 0.25 mg/L". */
enum reading_side reading_bound(struct hw_text text, enum hw_kind kind, struct reading *reading);

/* True when numbers in both units, or without any, are the same numbers. */
bool reading_same_unit(const struct hw_unit *a, const struct hw_unit *b);

enum { READINGS_ROOM = 2000 };

/* One of a record: a moment in seconds, and what was read. */
struct timed {
    long long seconds;
    double value;
    enum reading_side side;     /* READING_AT: the value is it */
    const struct hw_unit *unit; /* written with it, or NULL */
};

/* The latest of all readings that were added, by their times, HW_TREND_READINGS_MAX at most; of one
 * time in the order they came in. at[first..first+n) are in the order of their times. */
struct readings {
    struct timed at[READINGS_ROOM];
    size_t first, n;
    size_t all; /* how many were added */
};

/* Adds one. True when none is later. */
bool readings_add(struct readings *readings, struct timed reading);
#endif
