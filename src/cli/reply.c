/* reply.c - answers one question in the format asked for. */
#include "cli/reply.h"

#include "cli/logbook.h"
#include "cli/print.h"
#include "cli/report_csv.h"
#include "cli/report_json.h"
#include "cli/report_log.h"
#include "cli/report_text.h"
#include "cli/report_value.h"
#include "cli/stream.h"

#include <stdio.h>

/* Of a question asked backwards the one number is what was looked for, unless a result is named. */
static bool print_value(const struct report *report)
{
    const struct hw_question *question = report->question;
    if (!report->solved || report->answer->status < 0 || report->args->n_only > 0) {
        return report_value(report);
    }
    report_value_raised(report);
    char text[NUMBER_MAX];
    number_digits(text, question->in[question->solved],
                  report->args->digits ? report->args->digits : 6);
    (void)puts(text);
    return true;
}

static bool print_report(const struct report *report)
{
    switch (report->args->format) {
    case FORMAT_CSV:
        report_csv(report, ',');
        return true;
    case FORMAT_TSV:
        report_csv(report, '\t');
        return true;
    case FORMAT_JSON:
    case FORMAT_JSONL:
        report_json(report);
        return true;
    case FORMAT_VALUE:
        return print_value(report);
    case FORMAT_LOG:
        report_value_raised(report);
        report_log(report, stdout);
        return true;
    default:
        report_text(report);
        return true;
    }
}

void reply_report(const struct args *args, const struct hw_question *question,
                  const struct hw_answer *answer, struct reply_parts *parts, struct report *report)
{
    *report = (struct report){.args = args, .question = question, .answer = answer};
    parts->steps.n = 0;
    parts->steps.full = false;
    if (args->work && answer->status >= 0) {
        args->calc->work(question->in, &parts->steps);
        report->steps = &parts->steps;
    }
    if (hw_question_uncertain(question)) {
        hw_question_spread(question, answer, &parts->spread);
        report->spread = &parts->spread;
    }
}

int reply_with(const struct args *args, const struct hw_question *question,
               const struct hw_answer *answer, const struct solved *solved)
{
    static struct reply_parts parts;
    struct report report;
    reply_report(args, question, answer, &parts, &report);
    report.solved = solved;
    bool given = print_report(&report);
    if (args->log && !logbook_append(&report)) {
        return EXIT_ASKED_WRONGLY;
    }
    if (answer->status == -2) {
        return EXIT_WITHHELD;
    }
    return answer->status < 0 || !given ? EXIT_UNANSWERED : EXIT_ANSWERED;
}

int reply(const struct args *args, const struct hw_question *question)
{
    struct hw_answer answer;
    hw_question_answer(question, &answer);
    return reply_with(args, question, &answer, NULL);
}
