/* sweep.c - answers a question with one or two inputs swept, in the format that is asked for. */
#include "cli/sweep.h"

#include "cli/notes.h"
#include "cli/plot_sweep.h"
#include "cli/reply.h"
#include "cli/report_csv.h"
#include "cli/report_json.h"
#include "cli/report_log.h"
#include "cli/report_value.h"
#include "cli/stream.h"
#include "cli/sweep_text.h"
#include "cli/sweep_view.h"
#include "cli/wording.h"

#include <stdio.h>

/* What became of the points so far. */
struct tally {
    size_t refused, withheld, absent; /* absent: --format value printed no number for it */
};

static int status_of(const struct tally *tally)
{
    if (tally->withheld > 0) {
        return EXIT_WITHHELD;
    }
    return tally->refused + tally->absent > 0 ? EXIT_UNANSWERED : EXIT_ANSWERED;
}

static void count_refusal(int status, struct tally *tally)
{
    tally->refused += status < 0 ? 1 : 0;
    tally->withheld += status == -2 ? 1 : 0;
}

/* --- One answer at a time --------------------------------------------------------------------- */

static void put_json(const struct report *report, size_t k, size_t total)
{
    (void)fputs(k == 0 ? "[\n" : ",\n", stdout);
    report_json_object(report);
    (void)fputs(k + 1 == total ? "\n]\n" : "", stdout);
}

static void put_table(const struct report *report, size_t k, char separator)
{
    if (k == 0) {
        report_csv_header(report, separator);
    }
    report_csv_row(report, separator);
}

static void put_point(const struct report *report, size_t k, size_t total, struct tally *tally)
{
    switch (report->args->format) {
    case FORMAT_CSV:
        put_table(report, k, ',');
        break;
    case FORMAT_TSV:
        put_table(report, k, '\t');
        break;
    case FORMAT_JSON:
        put_json(report, k, total);
        break;
    case FORMAT_JSONL:
        report_json(report);
        break;
    case FORMAT_LOG:
        report_log(report, stdout);
        break;
    default:
        tally->absent += report_value(report) ? 0 : 1;
        break;
    }
}

/* The answer at one point, and its working when that is asked for. */
static void answer_point(const struct sweep_view *view, size_t k, struct tally *tally)
{
    static struct reply_parts parts;
    struct report report;
    struct hw_question question;
    struct hw_answer answer;
    hw_points_take(&view->points, k, &question, &answer);
    reply_report(view->args, &question, &answer, &parts, &report);
    put_point(&report, k, view->total, tally);
    count_refusal(answer.status, tally);
}

/* Of bare numbers: what is raised at their points, in one line for all. */
static void tell_raised(const struct sweep_view *view)
{
    char codes[CODES_MAX];
    notes_codes(view->question->calc, view->ever, view->possible & ~view->ever, codes);
    if (codes[0] != '\0') {
        complain("raised at some points: %s", codes);
    }
}

static int answer_points(struct sweep_view *view)
{
    struct tally tally = {0, 0, 0};
    for (size_t k = 0; k < view->total; k++) {
        sweep_reach(view, k);
        answer_point(view, k, &tally);
    }
    bool value = view->args->format == FORMAT_VALUE;
    if (value) {
        tell_raised(view);
    }
    size_t without = value ? tally.absent : tally.refused;
    if (without > 0) {
        complain("no %s at %zu of %zu points: %s why", value ? "number" : "answer", without,
                 view->total, value ? "--format text tells" : "the cautions tell");
    }
    return status_of(&tally);
}

/* --- All points in one ------------------------------------------------------------------------ */

static int show_points(struct sweep_view *view)
{
    struct tally tally = {view->refused, view->withheld, 0};
    if (view->args->format == FORMAT_SVG) {
        plot_sweep(view);
    } else {
        sweep_text(view);
    }
    return status_of(&tally);
}

/* What a sweep cannot be asked for. */
static bool is_refused(const struct args *args, const struct hw_question *question)
{
    if (args->work && args->format == FORMAT_TEXT) {
        complain(
            "--work shows one answer: write one value in place of the sweep, or --format json");
        return true;
    }
    if (hw_points_count(question) > HW_POINTS_MAX) {
        char option[HW_AXES][OPTION_MAX];
        for (size_t i = 0; i < HW_AXES; i++) {
            option_name(question->calc->inputs[question->axis[i].input].name, option[i]);
        }
        complain("--%s and --%s together make %zu points, more than %d: take larger steps",
                 option[0], option[1], hw_points_count(question), HW_POINTS_MAX);
        return true;
    }
    return false;
}

int sweep_run(const struct args *args, const struct hw_question *question)
{
    static struct sweep_view view;
    if (is_refused(args, question)) {
        return EXIT_ASKED_WRONGLY;
    }
    sweep_view(&view, args, question);
    return args->format == FORMAT_TEXT || args->format == FORMAT_SVG ? show_points(&view)
                                                                     : answer_points(&view);
}
