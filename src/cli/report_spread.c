/* report_spread.c - for people: how sure a result is, and which reading to repeat. */
#include "cli/report_spread.h"

#include "cli/print.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

enum { TELLING = 1 }; /* shares below TELLING per cent are not told */

/* From low to high; what is not known is a '-'. */
static void range_of(const struct report *report, size_t result, const struct hw_unit *own,
                     char text[ALLOWED_MAX])
{
    const struct hw_result *this = &report->question->calc->results[result];
    int digits = report->args->digits ? report->args->digits : this->digits;
    double ends[2] = {report->spread->low[result], report->spread->high[result]};
    char number[2][NUMBER_MAX] = {"-", "-"};
    for (int k = 0; k < 2; k++) {
        double value =
            own ? hw_unit_convert(ends[k], hw_unit_of(this->kind, this->unit), own) : ends[k];
        if (!isnan(value)) {
            number_text(number[k], value, digits, k == 0 ? -1 : 1); /* never narrower than it is */
        }
    }
    const char *unit = own ? own->name : this->unit;
    (void)snprintf(text, ALLOWED_MAX, "%.40s to %.40s%s%s", number[0], number[1],
                   unit[0] == '\0' ? "" : " ", unit);
}

/* The uncertain input of the largest share that was not told yet, or n_inputs. */
static size_t next_share(const struct report *report, size_t result, const bool told[HW_INPUTS])
{
    const struct hw_calc *calc = report->question->calc;
    size_t found = calc->n_inputs;
    for (size_t i = 0; i < calc->n_inputs; i++) {
        double share = report->spread->share[result][i];
        bool larger = found == calc->n_inputs || share > report->spread->share[result][found];
        if (!isnan(share) && !told[i] && larger) {
            found = i;
        }
    }
    return found;
}

static int per_cent(double share)
{
    return (int)lround(share * 100);
}

/* Adds ": ph 71 %, tan 25 %", the largest first. */
static void add_shares(const struct report *report, size_t result, char text[ALLOWED_MAX])
{
    bool told[HW_INPUTS] = {false};
    const struct hw_calc *calc = report->question->calc;
    const char *between = ": ";
    for (size_t i = next_share(report, result, told); i < calc->n_inputs;
         i = next_share(report, result, told)) {
        int share = per_cent(report->spread->share[result][i]);
        size_t used = strlen(text);
        told[i] = true;
        if (share >= TELLING) {
            (void)snprintf(text + used, ALLOWED_MAX - used, "%s%s %d %%", between,
                           calc->inputs[i].name, share);
            between = ", ";
        }
    }
}

void report_spread(const struct report *report, size_t result, const struct hw_unit *own,
                   size_t indent)
{
    double low = report->spread->low[result];
    double high = report->spread->high[result];
    char text[ALLOWED_MAX];
    if (low == high) {
        return;
    }
    if (isnan(low) && isnan(high)) {
        (void)snprintf(
            text, sizeof text,
            "low and high cannot be told: an end gives no such answer or is out of range");
    } else {
        range_of(report, result, NULL, text);
        if (own) {
            char shown[ALLOWED_MAX];
            range_of(report, result, own, shown);
            size_t used = strlen(text);
            (void)snprintf(text + used, sizeof text - used, " (%.120s)", shown);
        }
        add_shares(report, result, text);
    }
    print_blanks(indent);
    print_wrapped(text, indent, indent);
}

static void print_outside(const struct report *report)
{
    const struct hw_question *question = report->question;
    for (size_t i = 0; i < question->calc->n_inputs; i++) {
        const struct hw_input *input = &question->calc->inputs[i];
        if (((report->spread->outside >> i) & 1u) != 0) {
            char lo[NUMBER_MAX];
            char hi[NUMBER_MAX];
            char text[ALLOWED_MAX];
            number_digits(lo, input->lo, 12);
            number_digits(hi, input->hi, 12);
            (void)snprintf(text, sizeof text,
                           "the spread of %s reaches beyond its range, %.40s to %.40s%s%s: what"
                           " would come of that end is left open",
                           input->name, lo, hi, input->unit[0] == '\0' ? "" : " ", input->unit);
            print_blanks(2);
            print_wrapped(text, 2, 4);
        }
    }
}

/* True when something that is poured or weighed is shown and spreads. */
static bool an_amount_spreads(const struct report *report)
{
    const struct hw_calc *calc = report->question->calc;
    for (size_t i = 0; i < calc->n_results; i++) {
        const struct hw_result *this = &calc->results[i];
        bool amount = this->safe != 0 && (this->kind == HW_VOLUME || this->kind == HW_MASS);
        if (amount && args_tell(report->args, i) &&
            report->spread->low[i] < report->spread->high[i]) {
            return true;
        }
    }
    return false;
}

/* What low and high are. */
static void explain(const struct report *report)
{
    print_blanks(2);
    print_wrapped("low and high are one standard deviation away, as what follows +- is: the truth"
                  " lies between them in about 2 of 3 cases",
                  2, 4);
    if (an_amount_spreads(report)) {
        print_blanks(2);
        print_wrapped("an amount spreads as other readings would have told it: poured as it"
                      " stands, the level that it makes is as much off",
                      2, 4);
    }
}

void report_spread_advice(const struct report *report)
{
    const struct hw_calc *calc = report->question->calc;
    const bool none[HW_INPUTS] = {false};
    print_outside(report);
    for (size_t result = 0; result < calc->n_results; result++) {
        size_t most = next_share(report, result, none);
        if (!args_tell(report->args, result) || most == calc->n_inputs) {
            continue;
        }
        char text[ALLOWED_MAX];
        (void)snprintf(text, sizeof text,
                       "repeat the %s reading first: it makes %d %% of the spread of %s",
                       calc->inputs[most].name, per_cent(report->spread->share[result][most]),
                       calc->results[result].name);
        print_blanks(2);
        print_wrapped(text, 2, 4);
        if (report->args->full) {
            explain(report);
        }
        return;
    }
}
