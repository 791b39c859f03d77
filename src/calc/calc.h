/* calc.h - what a calculation is: tables and one function of one question. Internal to the program:
 * not installed, no ABI promise. In the tables zero means none.
 *
 * An input may stand in the table more than once, under one name, when a choice decides what it is:
 * each entry then has a condition on that choice, no two of them hold together, and the name means
 * the entry whose condition holds. (ammonia's `model` is so: one preset and list of words for a
 * meter's pH, another for the other scales.) A condition may hold as well while its choice is
 * itself not asked for: dose's `target` is microlitres in a litre with one word of
 * `formalin_basis`, and mg/L with the others and where there is no formalin. A choice that
 * conditions name stands before the inputs that name it. A group whose inputs have conditions is
 * asked for while one of them holds. */
#ifndef HW_CALC_H
#define HW_CALC_H
#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

enum {
    HW_BLOCK = 256,
    HW_INPUTS = 40,
    HW_RESULTS = 16,
    HW_NOTES = 63 /* bits of a uint64_t; the last one is the engine's own */
};                /* limits, held by the lint test */

enum hw_kind { /* which units convert into one another */
               HW_NUMBER,
               HW_COUNT,
               HW_CHOICE,
               HW_SET,
               HW_SHARE,
               HW_VOLUME,
               HW_MASS,
               HW_LENGTH,
               HW_TEMPERATURE,
               HW_TEMPERATURE_STEP,
               HW_SALINITY,
               HW_CONCENTRATION,
               HW_TIME,
               HW_DOSE_RATE,
               HW_CONDUCTIVITY,
               HW_ALKALINITY,
               HW_PH,
               HW_MASS_PER_DAY,
               HW_DENSITY,
               HW_SLOPE,
               HW_CONTACT,
               HW_RISE_PER_DAY,
               HW_BODY_RATE,
               HW_PARTS,
               HW_ALKALINITY_PER_DAY, /* and what else a unit needs; HW_COUNT holds whole numbers */
               HW_YES_NO /* an input is a choice whose words are yes and no; a result is 1 or 0 */
};

/* Bits of when_words that no word has: the condition holds where its input has any value, or none.
 * Such an input may be a number. */
#define HW_WHEN_GIVEN   (UINT32_C(1) << 30)
#define HW_WHEN_UNASKED (UINT32_C(1) << 31)

enum hw_need { HW_REQUIRED, HW_PRESET, HW_OPTIONAL };

struct hw_input {
    const char *name, *unit, *help; /* unit: of the column, of a bare number, of machine output */
    enum hw_kind kind;
    const char *beyond; /* what it means to be out of range: "too hot for fish"; or NULL */
    bool unit_must;     /* a bare number is refused though its kind would allow it: strengths */
    double lo, hi;      /* both valid; a choice runs from 0 to its last word */
    enum hw_need need;
    double preset; /* used when need is HW_PRESET */
    /* An empty cell of a column that feeds it is missing: nobody leaves a reading out on purpose in
     * a column of readings. */
    bool cell_must;
    /* Of a choice word i has value i; of a set word i is bit i, and the first, "none", stands
     * alone. NULL ends the list. */
    const char *const *words;
    /* A number: of the inputs of that group exactly one is given where they are HW_REQUIRED, at
     * most one where they are HW_OPTIONAL. */
    int group;
    /* A condition: the choice `when_input` makes this input required when it has one of these words
     * (bits); given otherwise is an error. A preset with a condition is filled in only while it
     * holds. No words, no condition. */
    int when_input;
    uint32_t when_words;
    /* The column of the tanks file that tells it, where it describes the water of the tank: volume,
     * temp, salinity, alkalinity, or the altitude. Never a reading, a medicine, what lives there,
     * new water or a bucket. NULL: it is never taken from a file. */
    const char *tank;
    bool aim; /* what an amount to pour is for, which is in proportion to it from some level on */
};

struct hw_result {
    const char *name, *unit, *help;
    enum hw_kind kind;
    int digits;      /* significant digits in text */
    int safe;        /* a solved or poured amount is rounded: -1 down, +1 up, 0 to nearest */
    bool keep_below; /* a level: solved for, it ends at or below its target */
    bool sometimes;  /* may be absent (NaN) although there is an answer */
    bool pour;       /* what is poured or weighed in one go, for the input that is an aim */
    bool detail;     /* a text tells it with --full, or where it is named */
};

/* The row's status is that of its gravest note. A standing one is true of every answer, or until a
 * missing input is given: text and json have it, never a cell. */
enum hw_effect {
    HW_STANDING,
    HW_CAUTION,   /* raised by these values: status 0 */
    HW_STRETCHED, /* computable, outside the fitted range: status +1 */
    HW_REFUSED,   /* no answer: status -1, every result NaN */
    HW_WITHHELD   /* not given, for safety: status -2, every result NaN */
};

/* Who sets the bit of a note: `answer` decides, or the engine, which needs no decision. */
enum hw_setter {
    HW_SET_BY_ANSWER,
    HW_SET_WITH_ANSWER, /* true of every answer: set where there is one */
    HW_SET_EVER         /* set where there is no answer, too */
};

/* Where a text of one screen has what a standing note says. */
enum hw_list {
    HW_LIST_NONE,  /* nowhere: --full tells it; and every note that is raised */
    HW_LIST_NEVER, /* what must not be done */
    HW_LIST_SIGN,  /* a sign of danger, and what to do */
    HW_LIST_MIND,  /* what else to think of */
    HW_LIST_LAST   /* who knows better: the veterinarian, the label */
};

/* Notes of one calculation with the same `fact` tell the keeper the same thing, the gravest first
 * in the table: of those raised at once the first alone is told. NULL: nothing else tells it.
 * `brief` is what a text of one screen says: of a standing note the sentence on its list (NULL:
 * none), of another all that is said there (the whole text, where that is short). */
struct hw_note {
    const char *code, *text, *brief, *fact, *source;
    enum hw_effect effect;
    enum hw_setter setter;
    enum hw_list list;
    uint64_t hides; /* the later notes of the same fact, as bits */
};

/* Rows in columns. */
struct hw_block {
    size_t n; /* 1 to HW_BLOCK */
    const double *const
        *in; /* in[INPUT][row]: canonical unit, lo <= x <= hi; NaN: optional, not given */
    double *const *out; /* out[RESULT][row]: set each that is not NULL; NaN where a `sometimes`
                                  result does not apply. NULL: nobody wants that result */
    uint64_t *notes;    /* notes[row]: zero on entry; set bit NOTE, an index into hw_calc.notes */
};

struct hw_steps; /* the working of one row, see engine */

struct hw_calc {
    const char *name, *purpose;
    const struct hw_input *inputs;
    size_t n_inputs;
    const struct hw_result *results;
    size_t n_results;
    const struct hw_note *notes;
    size_t n_notes;
    const char *const *sources; /* keys of data/references.tsv; NULL ends the list */
    /* One question: in[INPUT] is in its canonical unit and range, NaN where it is optional and not
     * given. Sets each out[RESULT], NaN where a `sometimes` result does not apply, and adds the
     * bits of its notes to *notes. Pure: same question, same bytes. */
    void (*answer)(const double in[], double out[], uint64_t *notes);
    /* NULL, or the same over the rows of a block, with the bits of `answer`: for speed alone. A
     * result that is not wanted need not be reckoned; no note may hang on whether it is wanted.
     * It takes no row that may have a result that is not finite and must be. False, and nothing
     * set, for a block that it does not take: `answer` does that one. */
    bool (*block)(const struct hw_block *block);
    /* The working of one question, from the same core calls. */
    void (*work)(const double in[], struct hw_steps *steps);
};

extern const struct hw_calc *const hw_calcs[]; /* help order; NULL ends the list */
#endif
