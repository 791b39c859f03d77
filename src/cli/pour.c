/* pour.c - syringes, cylinders and jugs, and their marks. Makers differ; these are the coarser of
 * the common ones (common practice, no source). */
#include "cli/pour.h"

#include <math.h>
#include <stdbool.h>
#include <stdio.h>

enum { SYRINGES = 6, VESSELS = 5 };

static const struct syringe {
    double holds, mark; /* mL */
    int places;
} syringes[SYRINGES] = {
    {1, 0.01, 2}, {3, 0.1, 1}, {5, 0.2, 1}, {10, 0.2, 1}, {20, 1, 0}, {60, 1, 0},
};

/* From 100 mL up; a larger amount is measured in the last, filled again. */
static const struct vessel {
    double upto, mark; /* mL */
    const char *name;
} vessels[VESSELS] = {
    {250, 2, "cylinder"},
    {500, 5, "cylinder"},
    {1000, 10, "cylinder"},
    {5000, 50, "jug"},
    {1e12, 100, "bucket with marks"},
};

static const double jug_from = 100; /* mL */
static const double least = 0.05;   /* mL */
static const double noise = 1e-9;   /* 7.2 is 36 marks of 0.2, whatever its last bit */

/* The amount at a mark. */
static double at_mark(double amount, double mark, int safe)
{
    double marks = amount / mark;
    double slack = noise * (1 + marks);
    if (safe < 0) {
        return mark * floor(marks + slack);
    }
    return mark * (safe > 0 ? ceil(marks - slack) : floor(marks + 0.5 + slack));
}

static int fills_of(double amount, const struct syringe *syringe)
{
    return (int)ceil(amount / syringe->holds - noise);
}

/* The 1 mL syringe has no finer one beside it: it serves whatever its marks are to the amount. */
static bool fine_enough(double amount, const struct syringe *syringe)
{
    return syringe == syringes || syringe->mark <= amount / 20 + noise;
}

static const struct syringe *best(double amount)
{
    const struct syringe *found = &syringes[0];
    for (size_t i = 1; i < SYRINGES; i++) {
        const struct syringe *next = &syringes[i];
        if (fine_enough(amount, next) && fills_of(amount, next) < fills_of(amount, found)) {
            found = next;
        }
    }
    return found;
}

static double in_vessel(double amount, int safe, char text[POUR_TEXT])
{
    const struct vessel *vessel = vessels;
    while (amount > vessel->upto) {
        vessel++;
    }
    double poured = at_mark(amount, vessel->mark, safe);
    (void)snprintf(text, POUR_TEXT, "%.0f mL in a %s", poured, vessel->name);
    return poured;
}

double pour_text(double amount, int safe, char text[POUR_TEXT])
{
    text[0] = '\0';
    if (!(amount > 0 && amount <= vessels[VESSELS - 1].upto)) {
        return NAN;
    }
    if (amount < least) {
        (void)snprintf(text, POUR_TEXT, "too little for a syringe: dilute the stock");
        return NAN;
    }
    if (amount >= jug_from) {
        return in_vessel(amount, safe, text);
    }
    const struct syringe *syringe = best(amount);
    double drawn = at_mark(amount, syringe->mark, safe);
    int fills = fills_of(drawn, syringe);
    double full = (fills - 1) * syringe->holds;
    if (fills <= 1) {
        (void)snprintf(text, POUR_TEXT, "%.*f mL in a %.0f mL syringe", syringe->places, drawn,
                       syringe->holds);
    } else {
        (void)snprintf(text, POUR_TEXT, "%.0f + %.*f mL in a %.0f mL syringe", full,
                       syringe->places, drawn - full, syringe->holds);
    }
    return drawn;
}
