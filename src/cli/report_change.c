/* report_change.c - the litres of new water, which the answers about water changes have. */
#include "cli/report_change.h"

#include "cli/print.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

static double given(const struct hw_question *question, const char *name)
{
    return question->in[hw_input_find(question->calc, name, strlen(name))];
}

/* The water of one round of `change`. */
static double litres_of_change(const struct hw_question *question)
{
    double take = given(question, "take");
    return isnan(take) ? given(question, "volume") * given(question, "share") / 100 : take;
}

/* The water that goes in by `emergency`: what is at hand, at most all, else what is needed. */
static double litres_of_emergency(const struct report *report)
{
    const struct hw_question *question = report->question;
    double at_hand = given(question, "at_hand");
    size_t needed = hw_result_find(question->calc, "water_needed", strlen("water_needed"));
    return isnan(at_hand) ? report->answer->out[needed] : fmin(at_hand, given(question, "volume"));
}

/* In the keeper's own unit, rounded up as water_needed is; false where it is not known. */
static bool litres_text(const struct report *report, double litres, char text[REPORT_CHANGE])
{
    const struct hw_unit *kept = hw_unit_of(HW_VOLUME, "L");
    const struct hw_unit *own = own_unit(report->args->wanted_unit, report->question, HW_VOLUME);
    char number[NUMBER_MAX];
    if (!(litres > 0)) {
        return false;
    }
    number_text(number, own ? hw_unit_convert(litres, kept, own) : litres, 3, 1);
    (void)snprintf(text, REPORT_CHANGE, "%.20s %s", number, own ? own->name : "L");
    return true;
}

static bool is_of(const struct report *report, const char *calculation)
{
    return strcmp(report->question->calc->name, calculation) == 0;
}

bool report_change(const struct report *report, size_t result, char text[REPORT_CHANGE])
{
    const char *name = report->question->calc->results[result].name;
    char litres[REPORT_CHANGE];
    if (is_of(report, "change") && strcmp(name, "new_needed") == 0 &&
        litres_text(report, litres_of_change(report->question), litres)) {
        (void)snprintf(text, REPORT_CHANGE, "level that %.40s of new water must have", litres);
        return true;
    }
    return false;
}

bool report_change_into(const struct report *report, size_t result, char text[REPORT_CHANGE])
{
    const char *name = report->question->calc->results[result].name;
    bool powder = strcmp(name, "add_mass") == 0;
    char litres[REPORT_CHANGE];
    if (!powder && strcmp(name, "add_liquid") != 0) {
        return false;
    }
    double of =
        is_of(report, "change") ? litres_of_change(report->question) : litres_of_emergency(report);
    if (!litres_text(report, of, litres)) {
        return false;
    }
    (void)snprintf(text, REPORT_CHANGE, "%sinto %.40s new water", powder ? "powder, " : "", litres);
    return true;
}
