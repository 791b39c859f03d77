/* records.c - takes records off a file that is read from start to end. */
#include "cli/records.h"

#include "cli/stream.h"

#include <string.h>

enum record_end record_take(struct input *input, char separator, struct csv_record *record)
{
    static const enum record_end ends[] = {
        [CSV_RECORD] = RECORD_FOUND,
        [CSV_MORE] = RECORD_MORE,
        [CSV_TOO_LONG] = RECORD_TOO_LONG,
        [CSV_UNCLOSED] = RECORD_UNCLOSED,
    };
    size_t used = 0;
    if (input->begin == input->end) {
        return input->at_end ? RECORD_NONE : RECORD_MORE;
    }
    enum csv_end end = csv_find_record(input->text + input->begin, input->end - input->begin,
                                       separator, input->at_end, record, &used);
    input->begin += used;
    return ends[end];
}

void record_complain(const struct input *input, size_t row, enum record_end why)
{
    complain("%s: row %zu: %s: stopped", input_name(input), row,
             why == RECORD_TOO_LONG ? "a record of over 1 MiB" : "the file ends inside quotes");
}

/* False with what to type when no separator was named and the header shows another. */
static bool separator_fits(const struct input *input, char separator,
                           const struct csv_record *header)
{
    bool semicolon = memchr(header->at, ';', header->n) != NULL;
    bool tab = memchr(header->at, '\t', header->n) != NULL;
    if (separator != 0 || memchr(header->at, ',', header->n) || (!semicolon && !tab)) {
        return true;
    }
    complain("%s looks separated by %s: add --separator %s%s", input_name(input),
             semicolon ? "semicolons" : "tabs", semicolon ? "semicolon" : "tab",
             semicolon ? ", and --decimal comma if its numbers have one" : "");
    return false;
}

bool record_header(struct input *input, char separator, struct csv_record *header)
{
    while (!input->at_end && input->end < 3) {
        if (!input_fill(input)) {
            return false;
        }
    }
    input_skip_mark(input);
    enum record_end end = RECORD_MORE;
    while ((end = record_take(input, separator ? separator : ',', header)) == RECORD_MORE) {
        if (!input_fill(input)) {
            return false;
        }
    }
    if (end == RECORD_TOO_LONG || end == RECORD_UNCLOSED) {
        record_complain(input, 1, end);
        return false;
    }
    if (end == RECORD_NONE || header->n == 0) {
        complain("%s has no header: the first line names the columns", input_name(input));
        return false;
    }
    if (!header->quotes && memchr(header->at, '\r', header->n)) {
        complain("%s has line ends of CR alone: save it with LF or CRLF", input_name(input));
        return false;
    }
    return separator_fits(input, separator, header);
}
