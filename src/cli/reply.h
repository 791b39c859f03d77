/* reply.h - answers one question in the format asked for. */
#ifndef HW_REPLY_H
#define HW_REPLY_H
#include "cli/report.h"

/* What a report may point to besides question and answer. */
struct reply_parts {
    struct hw_steps steps;
    struct hw_spread spread;
};

/* The report of an answer: its working when --work asks for it, its spread when an input is
 * uncertain. */
void reply_report(const struct args *args, const struct hw_question *question,
                  const struct hw_answer *answer, struct reply_parts *parts, struct report *report);

/* Answers a settled question on stdout; returns the exit status. */
int reply(const struct args *args, const struct hw_question *question);

/* The same with an answer that is known already; solved is NULL, or what was found for a question
 * asked backwards. */
int reply_with(const struct args *args, const struct hw_question *question,
               const struct hw_answer *answer, const struct solved *solved);
#endif
