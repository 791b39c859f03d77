/* core_times.c - how long each function of the library takes.
 *
 * Fed with lines `function NAME` (without hw_), in the order wanted, and `row NAME,INPUTS` out of
 * the reference sheets, whose inputs it calls the functions with; prints NAME and ns a call, the
 * median of ROUNDS (the argument). A call goes through a pointer, and the inputs vary, so that no
 * compiler can know the answer. */
#ifndef _POSIX_C_SOURCE
#define _POSIX_C_SOURCE 200809L /* clock_gettime */
#endif

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

#include "holdwater/holdwater.h"
#include "reference.h"

enum { NAME = 64, CALLS = 256, FUNCTIONS = 400, ROUNDS = 99, READINGS = 100 };

/* What a function was called with in the sheets. */
struct sample {
    char name[NAME];
    int n;
    int choices[CALLS][CHOICES_MAX];
    double in[CALLS][INPUTS_MAX];
};

static struct sample samples[FUNCTIONS];
static int n_samples;
static volatile double sink;

/* --- Functions that the sheets call together with others, or not at all ----------------------- */

static struct hw_carbonate_water water;
static struct hw_blend mixed;
static struct series readings;

static int hydrometer_density(const double x[], double y[])
{
    struct hw_hydrometer instrument = {x[0], x[1], x[2]};
    return hw_hydrometer_density(&instrument, x[3], x[4], y);
}

static int carbonate_water(const double x[], double y[])
{
    struct hw_carbonate_water made;
    int status = hw_carbonate_water(x[0], x[1], &made);
    memcpy(y, &made, sizeof *y);
    return status;
}

static int carbonate_constants(const double x[], double y[])
{
    struct hw_carbonate_constants made;
    int status = hw_carbonate_constants(x[0], x[1], &made);
    memcpy(y, &made, sizeof *y);
    return status;
}

static int carbonate_water_read(const double x[], double y[])
{
    return hw_carbonate_water_read(&water, x[0], x[1], x[2], &y[0], &y[1]);
}

static int carbonate_water_ph(const double x[], double y[])
{
    return hw_carbonate_water_ph(&water, x[0], x[1], x[2], y);
}

static int carbonate_water_ph_in_air(const double x[], double y[])
{
    return hw_carbonate_water_ph_in_air(&water, x[0], x[1], x[2], y);
}

static int blend_mix(const double x[], double y[])
{
    struct hw_blend blend;
    int status = hw_blend_mix(0.3, x[0], x[1], x[0] - 1, x[1] + 1, &blend);
    memcpy(y, &blend, sizeof *y);
    return status;
}

static int blend_level(const double x[], double y[])
{
    return hw_blend_level(&mixed, x[0], x[1], y);
}

static int change_kept(const int c[], const double x[], double y[])
{
    return hw_change_kept((enum hw_change_method)c[0], x[0], y);
}

static int ph_offset(const int c[], const double x[], double y[])
{
    return hw_ph_offset((enum hw_ph_scale)c[0], x[0], x[1], y);
}

static int status_text(const double x[], double y[])
{
    y[0] = hw_status_text((int)x[0])[0];
    return 0;
}

static int trend_slope(const double x[], double y[])
{
    (void)x;
    return hw_trend_slope(readings.days, readings.values, readings.n, &y[0], &y[1]);
}

static int trend_interval(const double x[], double y[])
{
    (void)x;
    return hw_trend_interval(readings.days, readings.values, readings.n, &y[0], &y[1]);
}

static int trend_held(const double x[], double y[])
{
    struct hw_trend_window window = {0.1, 0.9, 3};
    struct hw_trend_run run;
    (void)x;
    int status = hw_trend_held(readings.days, readings.values, readings.n, &window, &run);
    y[0] = run.held;
    return status;
}

/* clang-format off */
static const struct function own[] = {
    {"seawater_density_at", .in = "temp salinity", .of2 = hw_seawater_density_at},
    {"conductivity_at", .in = "temp salinity", .of2 = hw_conductivity_at},
    {"oxygen_pressure", .in = "altitude", .of1 = hw_oxygen_pressure},
    {"oxygen_saturation", .in = "temp salinity pressure", .of3 = hw_oxygen_saturation},
    {"saltmix_raise", .in = "volume temp salinity target dry", .of5 = hw_saltmix_raise},
    {"saltmix_dilute", .in = "volume temp salinity target", .of4 = hw_saltmix_dilute},
    {"ph_offset", {{"scale", "meter nbs-rigorous total free sws"}}, .in = "temp salinity",
     .chosen = ph_offset},
    {"change_kept", {{"method", "batch flow"}}, .in = "exchanged", .chosen = change_kept},
    {"challenge_solution_density", .in = "nh3_percent", .of1 = hw_challenge_solution_density},
    {"challenge_solution_nitrogen", .in = "nh3_percent", .of1 = hw_challenge_solution_nitrogen},
    {"hydrometer_density", .in = "scale_temp water_temp expansion reading temp",
     .call = hydrometer_density},
    {"carbonate_water", .in = "temp salinity", .call = carbonate_water},
    {"carbonate_constants", .in = "temp salinity", .call = carbonate_constants},
    {"carbonate_carbon", .in = "ph alkalinity tan temp salinity", .of5 = hw_carbonate_carbon},
    {"carbonate_water_read", .in = "ph alkalinity tan", .call = carbonate_water_read},
    {"carbonate_water_ph", .in = "alkalinity carbon tan", .call = carbonate_water_ph},
    {"carbonate_water_ph_in_air", .in = "alkalinity air tan", .call = carbonate_water_ph_in_air},
    {"blend_mix", .in = "temp salinity", .call = blend_mix},
    {"blend_level", .in = "now fresh", .call = blend_level},
    {"status_text", .in = "steps", .call = status_text},
    {"trend_slope", .in = "", .call = trend_slope},
    {"trend_interval", .in = "", .call = trend_interval},
    {"trend_held", .in = "", .call = trend_held},
    {NULL, .in = NULL},
};

/* Whose rows are taken where the sheets have none of that name. */
static const char *const rows_of[][2] = {
    {"change_kept", "change_level"}, {"challenge_solution_density", "challenge_solution"},
    {"challenge_solution_nitrogen", "challenge_solution"},
    {"hydrometer_density", "hydrometer_salinity"}, {"carbonate_water", "carbonate_ph"},
    {"carbonate_constants", "carbonate_ph"}, {"carbonate_carbon", "carbonate_air"},
    {"carbonate_water_read", "carbonate_air"}, {"carbonate_water_ph", "carbonate_ph"},
    {"carbonate_water_ph_in_air", "carbonate_ph_in_air"}, {"blend_mix", "seawater_density_at"},
    {"blend_level", "change_level"}, {"status_text", "dose_step_level"},
};

/* Inputs of functions of which the sheets have refusals alone, or what a calculation answers. */
static const char *const more_rows[][2] = {
    {"carbonate_ph", "alkalinity=2.31;carbon=2.07;tan=0.04;temp=25.3;salinity=33.8"},
    {"volume_inside", "outside=61.3;wall=0.62"},
    {"volume_net", "gross=78.4;displaced=4.1;extra=2.2"},
    {"conductivity_ratio", "conductivity=51.8;temp=24.3"},
    {"conductivity_raw", "at_25=51.8;per_degree=0.019;temp=26.4"},
    {"refraction_salinity", "index=1.3386;temp=22.7"},
    {"refraction_salinity", "index=1.3391;temp=24.1"},
    {"refraction_salinity_by_brine", "scale=gkg;reading=35.6"},
    {"refraction_salinity_by_brine", "scale=gL;reading=36.2"},
    {"seawater_salinity_by_density", "density=1022.3;temp=24.6"},
    {"seawater_salinity_by_density", "density=1024.8;temp=21.9"},
};
/* clang-format on */

/* --- Calling ---------------------------------------------------------------------------------- */

static int called(const struct function *f, const int c[], const double x[], double y[])
{
    if (f->of1) {
        return f->of1(x[0], y);
    }
    if (f->of2) {
        return f->of2(x[0], x[1], y);
    }
    if (f->of3) {
        return f->of3(x[0], x[1], x[2], y);
    }
    if (f->of4) {
        return f->of4(x[0], x[1], x[2], x[3], y);
    }
    if (f->of5) {
        return f->of5(x[0], x[1], x[2], x[3], x[4], y);
    }
    return f->call ? f->call(x, y) : f->chosen(c, x, y);
}

static const struct function *in_table(const struct function *table, const char *name)
{
    while (table->name && strcmp(table->name, name) != 0) {
        table++;
    }
    return table->name ? table : NULL;
}

static const struct function *function_named(const char *name)
{
    const struct function *f = in_table(own, name);
    f = f ? f : in_table(reference_public, name);
    return f && !f->series ? f : NULL;
}

/* --- Inputs ----------------------------------------------------------------------------------- */

/* The value of a name in name=value;name=value, or NULL; ended by ; or the end. */
static const char *value_of(const char *inputs, const char *name, size_t n)
{
    for (const char *at = inputs; at && *at != '\0'; at = strchr(at, ';'), at = at ? at + 1 : at) {
        if (strncmp(at, name, n) == 0 && at[n] == '=') {
            return at + n + 1;
        }
    }
    return NULL;
}

static int choice_of(const char *inputs, const struct choice *choice)
{
    const char *value = value_of(inputs, choice->name, strlen(choice->name));
    size_t n = value ? strcspn(value, ";") : 0;
    int place = 0;
    for (const char *at = choice->words; *at != '\0'; place++) {
        size_t length = strcspn(at, " ");
        if (value && length == n && strncmp(at, value, n) == 0) {
            return place;
        }
        at += length + (at[length] == ' ');
    }
    return -1;
}

/* Reads the row as the inputs of that function. False when it has not all of them. */
static int read_row(const struct function *f, const char *inputs, int c[], double x[])
{
    int n = 0;
    for (int i = 0; i < CHOICES_MAX && f->choices[i].name; i++) {
        c[i] = choice_of(inputs, &f->choices[i]);
        if (c[i] < 0) {
            return 0;
        }
    }
    for (const char *at = f->in; *at != '\0';) {
        size_t length = strcspn(at, " ");
        const char *value = value_of(inputs, at, length);
        double scale = 1;
        if (!value && length == 4 && strncmp(at, "temp", 4) == 0) {
            value = value_of(inputs, "temp68", 6);
            scale = 1.00024;
        }
        if (!value) {
            return 0;
        }
        x[n++] = strtod(value, NULL) / scale;
        at += length + (at[length] == ' ');
    }
    return 1;
}

static void add_row(const char *name, const char *inputs)
{
    for (int i = 0; i < n_samples; i++) {
        struct sample *sample = &samples[i];
        const char *rows = sample->name;
        for (size_t k = 0; k < sizeof rows_of / sizeof *rows_of; k++) {
            rows = strcmp(rows_of[k][0], sample->name) == 0 ? rows_of[k][1] : rows;
        }
        const struct function *f = function_named(sample->name);
        double y[RESULTS_MAX];
        int n = sample->n;
        if (f && strcmp(rows, name) == 0 && n < CALLS / 2 &&
            read_row(f, inputs, sample->choices[n], sample->in[n]) &&
            called(f, sample->choices[n], sample->in[n], y) >= 0) {
            sample->n++;
        }
    }
}

/* Fills what is left with the same inputs a little higher, which keeps counts what they are, as
 * long as there is an answer. */
static void vary(const struct function *f, struct sample *sample)
{
    int given = sample->n;
    double y[RESULTS_MAX];
    for (int i = given; given > 0 && i < CALLS; i++) {
        const double *from = sample->in[i % given];
        memcpy(sample->choices[i], sample->choices[i % given], sizeof sample->choices[i]);
        for (int k = 0; k < INPUTS_MAX; k++) {
            sample->in[i][k] = from[k] * (1 + 1e-6 * i);
        }
        if (called(f, sample->choices[i], sample->in[i], y) < 0) {
            memcpy(sample->in[i], from, sizeof sample->in[i]);
        }
    }
    sample->n = given > 0 ? CALLS : 0;
}

/* --- Timing ----------------------------------------------------------------------------------- */

static double cpu_ns(void)
{
    struct timespec t;
    clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &t);
    return (double)t.tv_sec * 1e9 + (double)t.tv_nsec;
}

/* ns a call, over as many passes through the inputs as take 2 ms. */
static double timed(const struct function *f, const struct sample *sample)
{
    double y[RESULTS_MAX] = {0};
    double from = cpu_ns();
    double taken = 0;
    long calls = 0;
    while (taken < 2e6) {
        for (int i = 0; i < sample->n; i++) {
            (void)called(f, sample->choices[i], sample->in[i], y);
            sink = y[0];
        }
        calls += sample->n;
        taken = cpu_ns() - from;
    }
    return taken / (double)calls;
}

static int by_size(const void *a, const void *b)
{
    double x = *(const double *)a;
    double y = *(const double *)b;
    return (x > y) - (x < y);
}

static void tell(const struct sample *sample, int rounds)
{
    const struct function *f = function_named(sample->name);
    double taken[ROUNDS];
    if (!f || sample->n == 0) {
        printf("%s -\n", sample->name);
        return;
    }
    for (int i = 0; i < rounds; i++) {
        taken[i] = timed(f, sample);
    }
    qsort(taken, (size_t)rounds, sizeof *taken, by_size);
    printf("%s %.1f\n", sample->name, taken[rounds / 2]);
}

int main(int argc, char **argv)
{
    char line[8192];
    int rounds = argc > 1 ? atoi(argv[1]) : 7;
    rounds = rounds < 1 ? 1 : rounds > ROUNDS ? ROUNDS : rounds;
    (void)hw_carbonate_water(25, 34, &water);
    (void)hw_blend_mix(0.3, 25, 33, 24, 34, &mixed);
    for (readings.n = 0; readings.n < READINGS; readings.n++) {
        readings.days[readings.n] = (double)readings.n * 0.5;
        readings.values[readings.n] = 0.3 + 0.2 * sin((double)readings.n);
    }
    while (fgets(line, sizeof line, stdin)) {
        char *name = strchr(line, ' ');
        line[strcspn(line, "\n")] = '\0';
        if (name && strncmp(line, "function ", 9) == 0 && n_samples < FUNCTIONS) {
            snprintf(samples[n_samples++].name, NAME, "%.63s", name + 1);
        } else if (name && strncmp(line, "row ", 4) == 0 && strchr(name, ',')) {
            char *inputs = strchr(name, ',');
            *inputs = '\0';
            add_row(name + 1, inputs + 1);
        }
    }
    for (size_t i = 0; i < sizeof more_rows / sizeof *more_rows; i++) {
        add_row(more_rows[i][0], more_rows[i][1]);
    }
    for (int i = 0; i < n_samples; i++) {
        const struct function *f = function_named(samples[i].name);
        if (f && *f->in == '\0' && !f->choices[0].name) {
            samples[i].n = 1;
        } else if (f) {
            vary(f, &samples[i]);
        }
        tell(&samples[i], rounds);
    }
    return 0;
}
