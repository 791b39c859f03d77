/* hands.h - the commands that are written by hand, as far as maps and lists tell them. */
#ifndef HW_HANDS_H
#define HW_HANDS_H
#include "calc/calc.h"

/* Name, purpose, notes, sources of each; none can be asked as a calculation is. NULL ends the
 * list. */
extern const struct hw_calc *const hands[];

/* The one of that name, or NULL. */
const struct hw_calc *hand_find(const char *name);
#endif
