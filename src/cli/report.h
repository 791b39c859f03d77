/* report.h - one answer in each format. */
#ifndef HW_REPORT_H
#define HW_REPORT_H
#include "cli/args.h"
#include "cli/columns.h"
#include "engine/answer.h"
#include "engine/solution.h"
#include "engine/spread.h"
#include "engine/working.h"

enum { WORDS_MAX = 400, CODES_MAX = 1200, SOLVED_TEXT = 400 };

/* The row that a question came from. */
struct row_view {
    size_t number; /* 1 is the first after the header */
    const struct columns *columns;
    struct csv_record record;
    const char *problem; /* NULL when the question could be asked */
};

/* What was found for a question asked backwards: args tells what was wanted, the question holds the
 * value. */
struct solved {
    const struct hw_solution *solution;
    char value[SOLVED_TEXT]; /* for people: in the input's unit ... */
    char own[SOLVED_TEXT];   /* ... and in the keeper's own, or "" */
};

struct report {
    const struct args *args;
    const struct hw_question *question;
    const struct hw_answer *answer;
    const struct hw_spread *spread; /* NULL: no input carries an uncertainty */
    const struct hw_steps *steps;   /* NULL: not asked for, or no answer */
    const struct row_view *row;     /* NULL: one question */
    const struct solved *solved;    /* NULL: not asked backwards */
};

void report_text(const struct report *report);

/* The head of the text of a question asked backwards: the value that was found, and what to know
 * about it. */
void report_solved(const struct report *report);

/* A name and a value in the columns of a text; returns the column where what follows begins. */
enum { TEXT_COLUMN = 32 };
size_t report_columns(const char *name, const char *value);

/* The unit of the keeper's own system that was written somewhere, in an input or in --for: gallons,
 * Fahrenheit; else NULL. */
const struct hw_unit *own_unit(const struct args *args, const struct hw_question *question,
                               enum hw_kind kind);

/* The line under a result that tells its low and high, and which inputs make the difference; own: a
 * unit to tell it in too, or NULL. Nothing when no uncertain input moves the result. */
void report_spread(const struct report *report, size_t result, const struct hw_unit *own);

/* What low and high are, and which reading to repeat. */
void report_advice(const struct report *report);

/* Parts of a text: an input as used; a note, with a mark before it and where it holds after its
 * code; the sources. */
void print_input(const struct hw_question *question, size_t i);
const char *note_heading(enum hw_effect effect);
void print_note(const struct hw_note *note, const char *mark, const char *where);
void print_sources(const struct hw_calc *calc);

/* One JSON object; on one line for FORMAT_JSONL. With a row its number, cells and problem come
 * first. */
void report_json(const struct report *report);

/* The same without the end of its last line, for lists. */
void report_json_object(const struct report *report);

/* A header and one row: inputs, results, cautions. */
void report_table(const struct report *report, char separator);
void report_table_header(const struct report *report, char separator);
void report_table_row(const struct report *report, char separator);

/* One CSV record: when, tank, calculation, inputs, results, cautions. */
void report_log(const struct report *report);

/* Returns false when the result asked for is absent; the message is out then, but for rows and
 * points of a sweep, which get an empty line. */
bool report_value(const struct report *report);

/* The words of a set, or the word of a choice, into text. */
void words_of(const struct hw_input *input, double value, char *text, size_t size);

/* True when the note is one of the answer's. */
bool has_note(const struct hw_answer *answer, size_t note);

/* The codes of the raised notes, joined by ';'; those of the possible ones with "possible:" before
 * them. */
void raised_codes(const struct hw_calc *calc, uint64_t notes, uint64_t possible,
                  char text[CODES_MAX]);

/* The notes that only the spread raises, as bits. */
uint64_t possible_notes(const struct report *report);

/* The time that a log line carries: local time with its offset, to the second. */
enum { WHEN_MAX = 48 };
void when_now(char text[WHEN_MAX]);
#endif
