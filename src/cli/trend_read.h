/* trend_read.h - reads a file for `trend`, from start to end. */
#ifndef HW_TREND_READ_H
#define HW_TREND_READ_H
#include "cli/trend_record.h"

/* Reads the file that was asked for into the record. Returns an exit status, with messages: of the
 * first row that was passed over, too. */
int trend_read(const struct trend_ask *ask, struct trend_record *record);
#endif
