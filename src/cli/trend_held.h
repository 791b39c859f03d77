/* trend_held.h - for how long a level was held, over readings and cells that are none. */
#ifndef HW_TREND_HELD_H
#define HW_TREND_HELD_H
#include "cli/trend_state.h"

/* Counts the run up to the last cell: answer->cells and answer->run. False when it cannot be. */
bool trend_held(struct trend_answer *answer);
#endif
