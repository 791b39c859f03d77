/* logbook.h - the file beside the tank that gets a line for each answer. */
#ifndef HW_LOGBOOK_H
#define HW_LOGBOOK_H
#include "cli/report.h"

/* Appends the record of an answer to the file that --log names, in one write, and waits until it is
 * kept. A new or empty file gets the header first. False with a message when it cannot be written,
 * or when the file is there and is no logbook: nothing is written to it then. */
bool logbook_append(const struct report *report);
#endif
