/* saltmix_batch.c - the reckoning of one question of mixing, and its working. */
#include "calc/saltmix_batch.h"

#include <math.h>

/* The product is told before what it is to do: a question told wrongly has no answer, even if no
 * salt is needed. */
static int read_product(struct saltmix_batch *batch, const double in[])
{
    int given = !isnan(in[SALTMIX_LABEL_MASS]) + !isnan(in[SALTMIX_LABEL_MAKES]) +
                !isnan(in[SALTMIX_LABEL_SALINITY]);
    batch->product = given == 0  ? SALTMIX_BY_MOISTURE
                     : given < 3 ? SALTMIX_LABEL_IN_PART
                                 : SALTMIX_BY_LABEL;
    batch->dry = 1 - in[SALTMIX_MOISTURE] / 100;
    if (batch->product != SALTMIX_BY_LABEL) {
        return HW_STATUS_OK;
    }
    if (in[SALTMIX_MOISTURE] > 0) {
        batch->product = SALTMIX_LABEL_AND_MOISTURE;
        return HW_STATUS_OK;
    }
    int status = hw_saltmix_dry(in[SALTMIX_LABEL_MASS], in[SALTMIX_LABEL_MAKES], in[SALTMIX_TEMP],
                                in[SALTMIX_LABEL_SALINITY], &batch->label_dry);
    batch->product = status < 0 ? SALTMIX_LABEL_UNLIKELY : SALTMIX_BY_LABEL;
    batch->dry = fmin(batch->label_dry, HW_SALTMIX_DRY_MAX);
    return status;
}

struct saltmix_batch saltmix_batch(const double in[])
{
    struct saltmix_batch batch = {
        .label_dry = NAN, .dry = NAN, .salt = NAN, .top_up = NAN, .swap = NAN};
    int label = read_product(&batch, in);
    int status = HW_STATUS_NONE;
    if (in[SALTMIX_TARGET] >= in[SALTMIX_SALINITY]) {
        status = hw_saltmix_raise(in[SALTMIX_VOLUME], in[SALTMIX_TEMP], in[SALTMIX_SALINITY],
                                  in[SALTMIX_TARGET], batch.dry, &batch.salt);
        batch.stretched = label > 0;
    } else if (in[SALTMIX_WHY] == SALTMIX_EVAPORATED) {
        status = hw_saltmix_dilute(in[SALTMIX_VOLUME], in[SALTMIX_TEMP], in[SALTMIX_SALINITY],
                                   in[SALTMIX_TARGET], &batch.top_up);
    } else if (in[SALTMIX_WHY] == SALTMIX_MIXED_TOO_STRONG) {
        status = hw_saltmix_replace(in[SALTMIX_VOLUME], in[SALTMIX_TEMP], in[SALTMIX_SALINITY],
                                    in[SALTMIX_TARGET], &batch.swap);
    }
    batch.stretched = batch.stretched || status > 0;
    return batch;
}

static double step_density(const char *symbol, double salinity, double temp, struct hw_steps *steps)
{
    double density = NAN;
    hw_seawater_density_at(temp, salinity, &density);
    hw_step(steps, symbol, density, "kg/m3", "eos80", "%.10g", density);
    return density;
}

static void step_salt(const struct saltmix_batch *batch, const double in[], struct hw_steps *steps)
{
    if (batch->product == SALTMIX_BY_LABEL) {
        double density =
            step_density("label_density", in[SALTMIX_LABEL_SALINITY], in[SALTMIX_TEMP], steps);
        hw_step(steps, "label_dry", batch->label_dry, "", "conservation",
                "%.10g * %.10g/1000 * %.10g / %.10g", in[SALTMIX_LABEL_MAKES], density,
                in[SALTMIX_LABEL_SALINITY], in[SALTMIX_LABEL_MASS]);
    } else {
        hw_step(steps, "dry", batch->dry, "", "", "1 - %.10g/100", in[SALTMIX_MOISTURE]);
    }
    double density = step_density("density", in[SALTMIX_SALINITY], in[SALTMIX_TEMP], steps);
    hw_step(steps, "water", in[SALTMIX_VOLUME] * density / 1000, "kg", "", "%.10g * %.10g/1000",
            in[SALTMIX_VOLUME], density);
    hw_step(steps, "salt", batch->salt, "g", "conservation",
            "1000 * %.10g * (%.10g - %.10g) / (1000 * %.10g - %.10g)",
            in[SALTMIX_VOLUME] * density / 1000, in[SALTMIX_TARGET], in[SALTMIX_SALINITY],
            batch->dry, in[SALTMIX_TARGET]);
}

void saltmix_work(const double in[], struct hw_steps *steps)
{
    struct saltmix_batch batch = saltmix_batch(in);
    if (!isnan(batch.salt)) {
        step_salt(&batch, in, steps);
        return;
    }
    double density = step_density("density", in[SALTMIX_SALINITY], in[SALTMIX_TEMP], steps);
    double fresh = step_density("fresh_density", 0, in[SALTMIX_TEMP], steps);
    if (!isnan(batch.top_up)) {
        hw_step(steps, "top_up", batch.top_up, "L", "conservation",
                "%.10g * %.10g / %.10g * (%.10g / %.10g - 1)", in[SALTMIX_VOLUME], density, fresh,
                in[SALTMIX_SALINITY], in[SALTMIX_TARGET]);
    } else {
        hw_step(steps, "swap", batch.swap, "L", "conservation",
                "%.10g * %.10g * (%.10g - %.10g) / (%.10g * (%.10g - %.10g) + %.10g * %.10g)",
                in[SALTMIX_VOLUME], density, in[SALTMIX_SALINITY], in[SALTMIX_TARGET], density,
                in[SALTMIX_SALINITY], in[SALTMIX_TARGET], fresh, in[SALTMIX_TARGET]);
    }
}
