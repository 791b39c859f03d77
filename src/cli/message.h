/* message.h - what was given, what is allowed, what to type. */
#ifndef HW_MESSAGE_H
#define HW_MESSAGE_H
#include "engine/question.h"

enum { SHOWN_MAX = 64, OPTION_MAX = 40, ALLOWED_MAX = 400 };

/* Text as it can be shown: printable ASCII, '?' for the rest, cut with "..." when long. */
void show_text(struct hw_text text, char shown[SHOWN_MAX]);

/* An input's name as an option is written: without the hyphens before it, '-' for '_'. */
void option_name(const char *name, char option[OPTION_MAX]);

/* What an input takes: "0 to 40 C (units C, F, K)", "one of n, nh3, nh4". */
void allowed_text(const struct hw_input *input, char text[ALLOWED_MAX]);

/* The units of a kind: "C, F, K"; "" when it has none. */
void units_text(enum hw_kind kind, char text[ALLOWED_MAX]);

/* Everything wrong with a question, on stderr. */
void message_problem(const struct hw_calc *calc, const struct hw_written written[],
                     const struct hw_question *question, enum hw_problem problem, size_t which);

/* What is wrong with the value of --for, read as if its result were an input. */
void message_for(const struct hw_input *target, struct hw_text text, enum hw_problem problem);

void message_try_help(const struct hw_calc *calc);
void message_results(const struct hw_calc *calc);
#endif
