/* reply.h - answers one question in the format asked for. */
#ifndef HW_REPLY_H
#define HW_REPLY_H
#include "cli/report.h"

/* Answers a settled question on stdout; returns the exit status. */
int reply(const struct args *args, const struct hw_question *question);

/* The same with an answer that is known already; solved is NULL, or what was found for a question asked backwards. */
int reply_with(const struct args *args, const struct hw_question *question,
               const struct hw_answer *answer, const struct solved *solved);
#endif
