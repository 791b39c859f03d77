/* conductivity.c - the practical salinity scale of 1978 and its extension to low salinity. */
#include "holdwater/conductivity.h"

#include "core/false_position.h"
#include "core/no_answer.h"
#include "core/seawater_kernel.h"

#include <math.h>

/* The leading coefficients of the two polynomials: what the extension takes away again. */
static const double a0 = 0.0080;
static const double b0 = 0.0005;

/* The square root of the ratio from which salinity surely rises. */
static const double root_low = 0.004;

/* Conductivity of water of salinity 35 at t68 over that at 15: UNESCO 44, equation 3. */
static double standard_ratio(double t68)
{
    static const double c[] = {0.6766097, 2.00564e-2, 1.104259e-4, -6.9698e-7, 1.0031e-9};
    return c[0] + t68 * (c[1] + t68 * (c[2] + t68 * (c[3] + t68 * c[4])));
}

static double temperature_factor(double t68)
{
    return (t68 - 15.0) / (1.0 + 0.0162 * (t68 - 15.0));
}

/* PSS-78 at one temperature, by x, the square root of the ratio: UNESCO 44, equations 1 and 2. */
struct scale {
    double k;     /* of the temperature */
    double by[5]; /* the slope, by powers of x */
};

static const double by_root[] = {-0.1692, 25.3851, 14.0941, -7.0261, 2.7081};
static const double by_root_k[] = {-0.0056, -0.0066, -0.0375, 0.0636, -0.0144};

static struct scale scale_at(double t68)
{
    struct scale scale = {temperature_factor(t68), {0.0}};
    for (int i = 0; i < 5; i++) {
        scale.by[i] = (i + 1) * (by_root[i] + scale.k * by_root_k[i]);
    }
    return scale;
}

static double pss78(const struct scale *scale, double x)
{
    const double *a = by_root;
    const double *b = by_root_k;
    double at_15 = a0 + x * (a[0] + x * (a[1] + x * (a[2] + x * (a[3] + x * a[4]))));
    double change = b0 + x * (b[0] + x * (b[1] + x * (b[2] + x * (b[3] + x * b[4]))));
    return at_15 + scale->k * change;
}

/* How fast it rises with x. */
static double pss78_slope(const struct scale *scale, double x)
{
    const double *by = scale->by;
    return by[0] + x * (by[1] + x * (by[2] + x * (by[3] + x * by[4])));
}

/* The x of a salinity of 2 to 45, by Newton's steps. The start is within 3 %; each step squares
 * what is wrong, so that the third leaves 1e-16 of it, and the fourth is for safety. */
static double root_of(const struct scale *scale, double salinity)
{
    double r = sqrt(salinity / 35.0);
    double x = r * (1.11 - 0.11 * r);
    for (int i = 0; i < 4; i++) {
        x -= (pss78(scale, x) - salinity) / pss78_slope(scale, x);
    }
    return x;
}

/* The same with the correction of Hill, Dauphinee & Woods for low salinity, not yet scaled. */
static double hill(double t68, double x)
{
    const struct scale scale = scale_at(t68);
    double wide = 400.0 * x * x;
    double root = 10.0 * x;
    double part_a = a0 / (1.0 + wide * (1.5 + wide));
    double part_b = b0 * scale.k / (1.0 + root * (1.0 + root * (1.0 + root)));
    return pss78(&scale, x) - part_a - part_b;
}

/* What brings the two branches together where they meet. */
static double hill_scale(double t68, double root_where_they_meet)
{
    return HW_CONDUCTIVITY_LOW / hill(t68, root_where_they_meet);
}

static double salinity_at(double t68, double x)
{
    if (x <= 0) {
        return 0; /* the terms cancel there, but for rounding */
    }
    const struct scale scale = scale_at(t68);
    double salinity = pss78(&scale, x);
    if (salinity < HW_CONDUCTIVITY_LOW) {
        salinity = hill_scale(t68, root_of(&scale, HW_CONDUCTIVITY_LOW)) * hill(t68, x);
    }
    return salinity;
}

static double root_at(double t68, double salinity)
{
    const struct scale scale = scale_at(t68);
    if (salinity >= HW_CONDUCTIVITY_LOW) {
        return root_of(&scale, salinity);
    }
    double meet = root_of(&scale, HW_CONDUCTIVITY_LOW);
    return hw_false_position(hill, t68, salinity / hill_scale(t68, meet), root_low, meet);
}

static int temp_in_range(double temp)
{
    return temp >= HW_CONDUCTIVITY_TEMP_MIN && temp <= HW_CONDUCTIVITY_TEMP_MAX;
}

/* The status of an answer at that salinity and temperature. */
static int status_at(double temp, double salinity, double lowest)
{
    int fitted = salinity >= lowest && salinity <= HW_SEAWATER_SALINITY_FITTED &&
                 temp <= HW_CONDUCTIVITY_TEMP_FITTED;
    return fitted ? HW_STATUS_OK : HW_STATUS_STRETCHED;
}

int hw_conductivity_ratio(double conductivity, double temp, double *ratio)
{
    *ratio = HW_NO_ANSWER;
    if (!(conductivity >= HW_CONDUCTIVITY_MIN && conductivity <= HW_CONDUCTIVITY_MAX &&
          temp_in_range(temp))) {
        return HW_STATUS_RANGE;
    }
    *ratio = conductivity / (HW_CONDUCTIVITY_STANDARD * standard_ratio(hw_temp_68(temp)));
    return temp <= HW_CONDUCTIVITY_TEMP_FITTED ? HW_STATUS_OK : HW_STATUS_STRETCHED;
}

int hw_conductivity_salinity_by_ratio(double ratio, double temp, double *salinity)
{
    *salinity = HW_NO_ANSWER;
    if (!(ratio >= HW_CONDUCTIVITY_RATIO_MIN && ratio <= HW_CONDUCTIVITY_RATIO_MAX &&
          temp_in_range(temp))) {
        return HW_STATUS_RANGE;
    }
    const struct scale scale = scale_at(hw_temp_68(temp));
    *salinity = pss78(&scale, sqrt(ratio));
    return status_at(temp, *salinity, HW_CONDUCTIVITY_LOW);
}

int hw_conductivity_salinity(double conductivity, double temp, double *salinity)
{
    double ratio = HW_NO_ANSWER;
    int status = hw_conductivity_ratio(conductivity, temp, &ratio);
    *salinity = HW_NO_ANSWER;
    if (status < 0) {
        return status;
    }
    double found = salinity_at(hw_temp_68(temp), sqrt(ratio));
    if (found > HW_SEAWATER_SALINITY_MAX) {
        return HW_STATUS_NONE;
    }
    *salinity = found;
    return status_at(temp, found, HW_SEAWATER_SALINITY_MIN);
}

int hw_conductivity_at(double temp, double salinity, double *conductivity)
{
    *conductivity = HW_NO_ANSWER;
    if (!(salinity >= HW_SEAWATER_SALINITY_MIN && salinity <= HW_SEAWATER_SALINITY_MAX &&
          temp_in_range(temp))) {
        return HW_STATUS_RANGE;
    }
    double t68 = hw_temp_68(temp);
    double root = salinity > 0 ? root_at(t68, salinity) : 0;
    *conductivity = HW_CONDUCTIVITY_STANDARD * standard_ratio(t68) * root * root;
    return status_at(temp, salinity, HW_SEAWATER_SALINITY_MIN);
}

int hw_conductivity_raw(double at_25, double per_degree, double temp, double *conductivity)
{
    *conductivity = HW_NO_ANSWER;
    if (!(at_25 >= HW_CONDUCTIVITY_MIN && at_25 <= HW_CONDUCTIVITY_MAX &&
          per_degree >= HW_CONDUCTIVITY_PER_DEGREE_MIN &&
          per_degree <= HW_CONDUCTIVITY_PER_DEGREE_MAX && temp_in_range(temp))) {
        return HW_STATUS_RANGE;
    }
    *conductivity = at_25 * (1.0 + per_degree * (temp - 25.0));
    return HW_STATUS_OK;
}
