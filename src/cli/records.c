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
    input->scan.separator = separator;
    enum csv_end end = csv_scan_on(&input->scan, input->text + input->begin,
                                   input->end - input->begin, input->at_end, record, &used);
    input->begin += used;
    return ends[end];
}

void record_complain(const struct input *input, size_t row, enum record_end why)
{
    complain("%s: row %zu: %s: stopped", input_name(input), row,
             why == RECORD_TOO_LONG ? "a record of over 1 MiB: shorten it"
                                    : "a quote opens there that no quote closes: take it out");
}

/* True when a number with a decimal comma stands in what was read of the file. */
static bool shows_decimal_comma(const struct input *input)
{
    for (size_t i = 1; i + 1 < input->end; i++) {
        const char *at = input->text + i;
        if (*at == ',' && at[-1] >= '0' && at[-1] <= '9' && at[1] >= '0' && at[1] <= '9') {
            return true;
        }
    }
    return false;
}

/* The separator of a header that was taken as if commas separated; 0 with what to type when it
 * shows another. Where decimal commas are told no comma separates, and it is taken as it is. */
static char separator_of(const struct input *input, bool decimal_comma,
                         const struct csv_record *header)
{
    bool semicolon = memchr(header->at, ';', header->n) != NULL;
    bool tab = memchr(header->at, '\t', header->n) != NULL;
    if (memchr(header->at, ',', header->n) || (!semicolon && !tab)) {
        return ',';
    }
    if (decimal_comma && semicolon != tab) {
        return semicolon ? ';' : '\t';
    }
    bool comma = shows_decimal_comma(input) && semicolon != tab;
    complain("%s looks separated by %s%s: add %s", input_name(input),
             semicolon ? "semicolons" : "tabs", comma ? ", with decimal commas" : "",
             comma       ? "--decimal comma"
             : semicolon ? "--separator semicolon"
                         : "--separator tab");
    return '\0';
}

/* The first record of the file. */
static bool take_first(struct input *input, char separator, struct csv_record *header)
{
    enum record_end end = RECORD_MORE;
    while ((end = record_take(input, separator, header)) == RECORD_MORE) {
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
    return true;
}

bool record_header(struct input *input, bool decimal_comma, char *separator,
                   struct csv_record *header)
{
    while (!input->at_end && input->end < 3) {
        if (!input_fill(input)) {
            return false;
        }
    }
    input_skip_mark(input);
    bool named = *separator != '\0';
    if (!take_first(input, named ? *separator : ',', header)) {
        return false;
    }
    *separator = named ? *separator : separator_of(input, decimal_comma, header);
    if (*separator != ',' && *separator != '\0' && !named) {
        /* Once more: what stands in quotes hangs on the separator. */
        input->begin = (size_t)(header->at - input->text);
        return take_first(input, *separator, header);
    }
    return *separator != '\0';
}
