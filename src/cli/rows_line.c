/* rows_line.c - writes a row with one look at the room that is left. */
#include "cli/rows_line.h"

#include "cli/stream.h"
#include "engine/decimal.h"
#include "engine/decimal_quick.h"

#include <string.h>

void rows_flush(struct rows *rows)
{
    json_flush(&rows->json.out);
    stream_write(rows->text, rows->written);
    rows->written = 0;
}

/* Where the spelling of notes is kept: by those that are told alone, as the standing ones would
 * make more sets, spelt alike. */
static inline struct codes *codes_of(struct rows *rows, uint64_t told)
{
    /* the golden ratio spreads sets of few bits, which are the usual ones, over the places */
    return &rows->codes[told * UINT64_C(0x9e3779b97f4a7c15) >> CODES_SHIFT];
}

struct hw_text rows_codes(struct rows *rows, uint64_t notes, uint64_t possible)
{
    uint64_t told = notes & rows->tellable;
    struct codes *codes = codes_of(rows, told);
    if (codes->notes != told || codes->possible != possible) {
        notes_codes(rows->calc, told, possible, codes->text);
        codes->n = strlen(codes->text);
        codes->possible = possible;
        codes->notes = told;
    }
    return (struct hw_text){codes->text, codes->n};
}

void rows_line_prepare(struct rows *rows)
{
    const struct args *args = rows->args;
    bool table = args->format == FORMAT_CSV || args->format == FORMAT_TSV;
    struct line *line = &rows->line;
    line->allowed =
        table && !args->spread && !args->decimal_comma && rows->in_separator == rows->out_separator;
    line->digits = args->digits ? args->digits : 6;
    for (size_t i = 0; i < CODES_KEPT; i++) {
        rows->codes[i].possible = UINT64_MAX;
    }
    for (size_t at = 0; at < rows->calc->n_results; at++) {
        if (args->only[args->order[at]]) {
            line->from[line->n++] = rows->batch.out[args->order[at]];
        }
    }
    line->room = line->n * (1 + HW_DECIMAL_MAX) + CODES_MAX + ROWS_STRIDE + sizeof ",,\n";
}

/* Copies a stride at a time: see ROWS_STRIDE. */
static inline char *append(char *to, const char *text, size_t n)
{
    for (size_t i = 0; i < n; i += ROWS_STRIDE) {
        memcpy(to + i, text + i, ROWS_STRIDE);
    }
    return to + n;
}

static inline char *append_number(char *to, double value, int digits)
{
    size_t n = hw_quick_write(to, value, digits);
    return to + (n > 0 ? n : hw_decimal_write(to, value, digits));
}

bool rows_line_put(struct rows *rows, const struct row *row)
{
    const struct line *line = &rows->line;
    size_t most = row->record.n + line->room;
    if (!line->allowed || row->problem || most > OUT_SIZE || row->cells != rows->columns.n) {
        return false;
    }
    if (most > OUT_SIZE - rows->written) {
        rows_flush(rows);
    }
    const size_t place = (size_t)row->place;
    const char separator = rows->out_separator;
    char *begin = rows->text + rows->written;
    char *to = append(begin, row->record.at, row->record.n);
    for (size_t i = 0; i < line->n; i++) {
        *to++ = separator;
        to = append_number(to, line->from[i][place], line->digits);
    }
    uint64_t notes = rows->batch.notes[place];
    const struct codes *codes = codes_of(rows, notes & rows->tellable);
    if (codes->notes != (notes & rows->tellable) || codes->possible != 0) {
        (void)rows_codes(rows, notes, 0);
    }
    *to++ = separator;
    to = append(to, codes->text, codes->n);
    *to++ = separator;
    *to++ = '\n';
    rows->written += (size_t)(to - begin);
    return true;
}
