/* note_rows.h - what every calculation's notes and results are held to, from one table of
 * questions. */
#ifndef HW_NOTE_ROWS_H
#define HW_NOTE_ROWS_H
#include "ask.h"

/* A note, a question that raises it and one that does not; NULL for a note that stands with every
 * answer. */
struct note_row {
    const char *code, *raised, *silent;
};

/* Each note is raised and silent as its row says, and no note is without a row. Every answer on the
 * way has all the results that are not `sometimes`, or none when its status is below 0, and a
 * working that can be redone. */
void check_notes(const struct hw_calc *calc, const struct note_row rows[], size_t n);
#endif
