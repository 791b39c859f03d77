/* rows_line.c - writes a row with one look at the room that is left. */
#include "cli/rows_line.h"

#include "cli/stream.h"
#include "engine/decimal.h"

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

static inline bool are_spelt(const struct codes *codes, uint64_t told, uint64_t possible)
{
    return codes->notes == told && codes->possible == possible && codes->n > 0;
}

static void spell_codes(struct rows *rows, uint64_t told, uint64_t possible, struct codes *codes)
{
    char *text = codes->text;
    text[0] = rows->out_separator;
    notes_codes(rows->calc, told, possible, text + 1);
    size_t n = strlen(text);
    text[n] = rows->out_separator;
    text[n + 1] = '\n';
    codes->n = n + 2;
    codes->possible = possible;
    codes->notes = told;
}

struct hw_text rows_codes(struct rows *rows, uint64_t notes, uint64_t possible)
{
    uint64_t told = notes & rows->tellable;
    struct codes *codes = codes_of(rows, told);
    if (!are_spelt(codes, told, possible)) {
        spell_codes(rows, told, possible, codes);
    }
    return (struct hw_text){codes->text + 1, codes->n - 3};
}

void rows_line_prepare(struct rows *rows)
{
    const struct args *args = rows->args;
    bool table = args->format == FORMAT_CSV || args->format == FORMAT_TSV;
    struct line *line = &rows->line;
    line->allowed =
        table && !args->spread && !args->decimal_comma && rows->in_separator == rows->out_separator;
    line->digits = args->digits ? args->digits : 6;
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

/* Spells the results from a place on. */
static void spell(struct rows *rows, size_t first)
{
    struct line *line = &rows->line;
    size_t left = rows->n_asked - first;
    line->first = first;
    line->n_spelt = left < LINES_SPELT ? left : LINES_SPELT;
    for (size_t i = 0; i < line->n; i++) {
        hw_column_write(line->spelt + i * LINES_SPELT, line->from[i] + first, line->n_spelt,
                        line->digits, rows->out_separator);
    }
}

/* The end of a line, from the separator before the cautions on. */
static inline const struct codes *end_of_line(struct rows *rows, uint64_t told)
{
    struct codes *codes = codes_of(rows, told);
    if (!are_spelt(codes, told, 0)) {
        spell_codes(rows, told, 0, codes);
    }
    return codes;
}

/* True when the row can be written in one go. */
static inline bool is_fine(const struct row *row, size_t cells, size_t longest)
{
    return !row->problem && row->cells == cells && row->record.n <= longest;
}

size_t rows_line_put(struct rows *rows, size_t first)
{
    const struct line *line = &rows->line;
    const size_t cells = rows->columns.n;
    const size_t longest = OUT_SIZE - line->room;
    const size_t n_results = line->n;
    const uint64_t grave = rows->grave;
    const uint64_t tellable = rows->tellable;
    const struct row *row = rows->row + first;
    const struct row *end = rows->row + (line->allowed ? rows->n_rows : first);
    for (; row < end && is_fine(row, cells, longest); row++) {
        const size_t place = (size_t)row->place;
        const uint64_t notes = rows->batch.notes[place];
        if ((notes & grave) != 0) {
            break;
        }
        if (rows->written + row->record.n > longest) {
            rows_flush(rows);
        }
        if (place - line->first >= line->n_spelt) {
            spell(rows, place);
        }
        char *begin = rows->text + rows->written;
        char *to = append(begin, row->record.at, row->record.n);
        const struct hw_spelt *spelt = &line->spelt[place - line->first];
        for (size_t i = 0; i < n_results; i++) {
            const struct hw_spelt *cell = &spelt[i * LINES_SPELT];
            memcpy(to, cell, sizeof *cell);
            to += cell->n;
        }
        const struct codes *codes = end_of_line(rows, notes & tellable);
        to = append(to, codes->text, codes->n);
        rows->written += (size_t)(to - begin);
    }
    return (size_t)(row - rows->row) - first;
}
