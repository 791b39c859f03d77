/* syringe.c - syringes and their marks. Makers differ; these are the coarser of the common ones. */
#include "cli/syringe.h"

#include <math.h>
#include <stdbool.h>
#include <stdio.h>

enum { SYRINGES = 6, MOST_FILLS = 10 };

static const struct syringe {
    double holds, mark; /* mL */
    int places;
} syringes[SYRINGES] = {
    {1, 0.01, 2}, {3, 0.1, 1}, {5, 0.2, 1}, {10, 0.2, 1}, {20, 1, 0}, {60, 1, 0},
};
static const double jug_mark = 10; /* mL */
static const double least = 0.05;  /* mL */
static const double noise = 1e-9;  /* 7.2 is 36 marks of 0.2, whatever its last bit */

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

void syringe_text(double amount, int safe, char text[SYRINGE_TEXT])
{
    text[0] = '\0';
    if (!(amount > 0 && amount <= 1e12)) {
        return;
    }
    if (amount < least) {
        (void)snprintf(text, SYRINGE_TEXT, "too little for a syringe: dilute the stock first");
        return;
    }
    if (amount > MOST_FILLS * syringes[SYRINGES - 1].holds) {
        (void)snprintf(text, SYRINGE_TEXT, "%.0f mL in a jug", at_mark(amount, jug_mark, safe));
        return;
    }
    const struct syringe *syringe = best(amount);
    int fills = fills_of(amount, syringe);
    double drawn = at_mark(amount, syringe->mark, safe);
    if (fills == 1) {
        (void)snprintf(text, SYRINGE_TEXT, "%.*f mL in a %.0f mL syringe", syringe->places, drawn,
                       syringe->holds);
    } else {
        (void)snprintf(text, SYRINGE_TEXT, "%.*f mL in %d fills of a %.0f mL syringe",
                       syringe->places, drawn, fills, syringe->holds);
    }
}
