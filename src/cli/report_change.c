/* report_change.c - the litres of new water, which `change` alone has. */
#include "cli/report_change.h"

#include "cli/print.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

static double given(const struct hw_question *question, const char *name)
{
    return question->in[hw_input_find(question->calc, name, strlen(name))];
}

bool report_change(const struct report *report, size_t result, char text[REPORT_CHANGE])
{
    const struct hw_question *question = report->question;
    if (strcmp(question->calc->name, "change") != 0 ||
        strcmp(question->calc->results[result].name, "new_needed") != 0) {
        return false;
    }
    double take = given(question, "take");
    double litres = isnan(take) ? given(question, "volume") * given(question, "share") / 100 : take;
    if (!(litres > 0)) {
        return false;
    }
    const struct hw_unit *kept = hw_unit_of(HW_VOLUME, "L");
    const struct hw_unit *own = own_unit(report->args->wanted_unit, question, HW_VOLUME);
    char number[NUMBER_MAX];
    number_text(number, own ? hw_unit_convert(litres, kept, own) : litres, 3, 0);
    (void)snprintf(text, REPORT_CHANGE, "level that %.20s %s of new water must have", number,
                   own ? own->name : "L");
    return true;
}
