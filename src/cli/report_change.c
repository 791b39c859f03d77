/* report_change.c - the litres of new water, which the answers about water changes have. */
#include "cli/report_change.h"

#include "calc/emergency_facts.h"
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

static double litres_of_emergency(const struct report *report)
{
    const struct hw_question *question = report->question;
    size_t needed = hw_result_find(question->calc, "water_needed", strlen("water_needed"));
    return emergency_water_in(question->in, report->answer->out[needed]);
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

/* Where at hand is as much as the tank holds, or more. */
static bool changes_all(const struct report *report, const char *result)
{
    return is_of(report, "emergency") && strcmp(result, "at_hand_ratio") == 0 &&
           given(report->question, "at_hand") >= given(report->question, "volume");
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
    if (changes_all(report, name)) {
        (void)snprintf(text, REPORT_CHANGE, "times the limit, with all the water changed");
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
    bool all = is_of(report, "emergency") && !(of < given(report->question, "volume"));
    (void)snprintf(text, REPORT_CHANGE, "%sinto %.40s new water%s", powder ? "powder, " : "",
                   litres, all ? ", all of it" : "");
    return true;
}
