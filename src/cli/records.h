/* records.h - the records of a file, one after another, and the header before them. */
#ifndef HW_RECORDS_H
#define HW_RECORDS_H
#include "cli/input.h"

enum record_end {
    RECORD_FOUND,
    RECORD_MORE,     /* what was read ends before the record does: input_fill, and again */
    RECORD_NONE,     /* the file has no more */
    RECORD_TOO_LONG, /* the last two end the run */
    RECORD_UNCLOSED
};

/* Takes the next record off what was read, and reads no more itself: where records stand in the
 * text is left as it is. */
enum record_end record_take(struct input *input, char separator, struct csv_record *record);

/* The message for a record that ends the run; 1 is the first row after the header. */
void record_complain(const struct input *input, size_t row, enum record_end why);

/* Takes the header, behind a byte order mark. *separator is 0 where none was named, and then set:
 * a comma, or where numbers have decimal commas what the header shows. False with a message when
 * there is no header, or when it looks separated by something else. */
bool record_header(struct input *input, bool decimal_comma, char *separator,
                   struct csv_record *header);
#endif
