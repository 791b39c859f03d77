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

/* Which side of a threshold a note stands on; UP_TO and FROM have the threshold itself with it. */
enum note_side { ABOVE, BELOW, UP_TO, FROM };

/* A note that hangs on a number: that number, written out again and never taken from the table it
 * is to check, in the unit of what reaches it; the input that is moved; what reaches it, which is a
 * result, a ratio of results as "a/b", or the input itself, NULL; a question close by. A result is
 * there on both sides of the threshold. */
struct note_edge {
    const char *code;
    enum note_side raised;
    double at;
    const char *input, *result, *line;
};

/* Each note is raised just on its side of its threshold: a ten-millionth further. That is a hundred
 * times what `above` leaves out as noise, so a tolerance or a limit that grows is found. */
void check_edges(const struct hw_calc *calc, const struct note_edge edges[], size_t n);

/* The total ammonia, mg N/L, that reaches a published limit by a meter pH: that of "long_ratio"
 * or of "short_ratio" in an answer of ammonia. The water is "ph=8.1;temp=25;salinity=34". */
double total_at(const char *ratio, const char *water);

/* Each note is raised and silent as its row says, and no note is without a row. Every answer on the
 * way has all the results that are not `sometimes`, or none when its status is below 0, and a
 * working that can be redone. */
void check_notes(const struct hw_calc *calc, const struct note_row rows[], size_t n);
#endif
