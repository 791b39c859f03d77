/* ask.h - asks a calculation in one line of text. */
#ifndef HW_ASK_H
#define HW_ASK_H
#include "engine/answer.h"

/* The calculation of that name, or NULL. */
const struct hw_calc *find_calc(const char *name);

/* Writes "name=value;name=value" ("" for nothing), as options do. The text is kept. */
void ask_write(const struct hw_calc *calc, const char *line, struct hw_written written[HW_INPUTS]);

/* Settles "name=value;name=value" ("" for nothing). The text must outlive the question's reading,
 * which this call does. */
enum hw_problem ask_settle(const struct hw_calc *calc, const char *line,
                           struct hw_question *question, size_t *which);

/* Settles and answers; fails the test when the question has a problem. */
void ask(const struct hw_calc *calc, const char *line, struct hw_question *question,
         struct hw_answer *answer);

/* The value of a result by its name; fails the test when there is none of that name. */
double result_of(const struct hw_calc *calc, const struct hw_answer *answer, const char *name);

/* True when the answer has the note of that code; fails the test when the calculation has no such
 * note. */
bool noted(const struct hw_calc *calc, const struct hw_answer *answer, const char *code);

/* True when it is as wanted: the calculation, or the engine for it, notes it, also where a graver
 * note of its fact is told instead; or it is not told. */
bool noted_as(const struct hw_question *question, const char *code, bool wanted);

/* Has awk redo every step of the working: each expression gives its value, a step named like a
 * result has exactly the answer's number, and the last step is the first result that applies. A
 * question without an answer has no working. */
void check_working(const struct hw_calc *calc, const char *line);

/* One run of awk for many workings: between the two, check_working leaves the arithmetic to the
 * second. */
void keep_workings(void);
void redo_workings(void);
#endif
