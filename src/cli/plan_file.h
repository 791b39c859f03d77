/* plan_file.h - finds the plan that is asked for: one of the program's own, or a file. */
#ifndef HW_PLAN_FILE_H
#define HW_PLAN_FILE_H
#include "cli/plan.h"

/* Reads the plan of that name, or the file. False with a message. */
bool plan_load(const char *word, struct plan *plan);

/* Writes the plan last read on stdout as a file that can be changed and given back: one of the
 * program's own as it stands in data/plans, a keeper's without its comments. */
void plan_write(const char *word, const struct plan *plan);
#endif
