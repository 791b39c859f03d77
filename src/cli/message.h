/* message.h - what was given, what is allowed, what to type. */
#ifndef HW_MESSAGE_H
#define HW_MESSAGE_H
#include "engine/question.h"

/* Everything wrong with a question, on stderr. */
void message_problem(const struct hw_calc *calc, const struct hw_written written[],
                     const struct hw_question *question, enum hw_problem problem, size_t which);

/* What is wrong with the value of --for, read as if its result were an input. */
void message_for(const struct hw_input *target, struct hw_text text, enum hw_problem problem);

void message_try_help(const struct hw_calc *calc);
void message_results(const struct hw_calc *calc);
#endif
