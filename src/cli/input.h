/* input.h - files that are read from start to end in one pass. */
#ifndef HW_INPUT_H
#define HW_INPUT_H
#include "cli/csv.h"

enum { INPUT_ROOM = CSV_RECORD_MAX + (CSV_RECORD_MAX >> 2), INPUT_BEYOND = 64 };

/* One file at a time per struct; the room for its text is part of it, so it is kept in static
 * storage. */
struct input {
    const char *name; /* as it was given; "-" is standard input */
    int descriptor;
    bool at_end;                          /* the file has no more */
    size_t begin, end;                    /* the text read and not yet used: text[begin..end) */
    struct csv_scan scan;                 /* of the record at begin */
    char text[INPUT_ROOM + INPUT_BEYOND]; /* some bytes beyond the text can always be read */
};

/* Opens a file, or standard input for "-". False with a message when it cannot be read. */
bool input_open(struct input *input, const char *name);

/* Reads more behind text[begin..end), moving it to the front first when there is need. False with a
 * message when reading fails. */
bool input_fill(struct input *input);

void input_close(struct input *input);

/* "NAME" or "standard input", for messages. */
const char *input_name(const struct input *input);

/* Takes a byte order mark off the start of the file. */
void input_skip_mark(struct input *input);
#endif
