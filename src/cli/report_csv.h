/* report_csv.h - one answer as a row of a table. */
#ifndef HW_REPORT_CSV_H
#define HW_REPORT_CSV_H
#include "cli/report.h"

/* A header and one row: inputs, results, cautions. */
void report_csv(const struct report *report, char separator);
void report_csv_header(const struct report *report, char separator);
void report_csv_row(const struct report *report, char separator);
#endif
