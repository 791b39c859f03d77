/* reference.h - what the rows of the reference sheets can ask for.
 *
 * A function takes choices, then numbers, and gives a status and results, each of them with the
 * name that the sheets use. Names stand in one text, with a blank between. */
#ifndef HOLDWATER_REFERENCE_H
#define HOLDWATER_REFERENCE_H

#include <stddef.h>

enum { CHOICES_MAX = 2, INPUTS_MAX = 20, RESULTS_MAX = 20, SERIES_MAX = 1000 };

/* Readings and their times: inputs `days` and `values`, lists with a blank between. */
struct series {
    double days[SERIES_MAX], values[SERIES_MAX];
    size_t n;
};

/* The words of a choice, in the order of its enum. */
struct choice {
    const char *name, *words;
};

/* One function, called by the one pointer that is set: `chosen` where there are choices, `series`
 * where it takes a record of readings, else `call` or, for functions of the library that take that
 * many numbers and give one result, of1 to of5. An input named temp or new_temp may be given as
 * temp68 or new_temp68, on IPTS-68. */
struct function {
    const char *name;
    struct choice choices[CHOICES_MAX];
    const char *in, *out;
    int (*chosen)(const int choice[], const double in[], double out[]);
    int (*series)(const struct series *series, const double in[], double out[]);
    int (*call)(const double in[], double out[]);
    int (*of1)(double, double *);
    int (*of2)(double, double, double *);
    int (*of3)(double, double, double, double *);
    int (*of4)(double, double, double, double, double *);
    int (*of5)(double, double, double, double, double, double *);
};

/* The functions of the library, and what stands behind them; a NULL name ends each. */
extern const struct function reference_public[];
extern const struct function reference_inner[];

#endif
