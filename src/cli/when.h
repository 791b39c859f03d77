/* when.h - the times of a logbook: ISO 8601, as far as a logbook needs it. */
#ifndef HW_WHEN_H
#define HW_WHEN_H
#include "engine/value.h"

enum { WHEN_MAX = 40 };

/* True for a date that exists, alone or with a time: 2031-03-05, 2031-03-05T08:15,
 * 2031-03-05 08:15:30+01:00, and Z for +00:00. Years from 1600 on. */
bool when_is_iso(struct hw_text text);
#endif
