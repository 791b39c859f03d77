/* report.h - one answer in each format. */
#ifndef HW_REPORT_H
#define HW_REPORT_H
#include "cli/args.h"
#include "engine/answer.h"
#include "engine/working.h"

struct report {
    const struct args *args;
    const struct hw_question *question;
    const struct hw_answer *answer;
    const struct hw_steps *steps; /* NULL: not asked for, or no answer */
};

void report_text(const struct report *report);
void report_json(const struct report *report);

/* Returns false when the result asked for is absent; the message is out then. */
bool report_value(const struct report *report);

/* The words of a set, or the word of a choice, into text. */
void words_of(const struct hw_input *input, double value, char *text, size_t size);

/* True when the note is one of the answer's. */
bool has_note(const struct hw_answer *answer, size_t note);
#endif
