/* criteria.c - published fresh-water limits of total ammonia. */
#include "holdwater/criteria.h"

#include "core/elementary.h"
#include "core/no_answer.h"

/* The chronic criterion: its two terms and the pH at which each is at half. */
static const double ccc_high_ph = 0.0278;
static const double ccc_low_ph = 1.1994;
static const double ccc_inflection = 7.688;
static const double cmc_inflection = 7.204;

static int temp_in_range(double temp)
{
    return temp >= HW_CRITERIA_EPA2013_TEMP_MIN && temp <= HW_CRITERIA_EPA2013_TEMP_MAX;
}

/* The tables begin where the accepted temperatures do. */
static int off_the_tables(double ph, double temp)
{
    return !(ph >= HW_CRITERIA_EPA2013_PH_TABLE_MIN && ph <= HW_CRITERIA_EPA2013_PH_TABLE_MAX) ||
           temp > HW_CRITERIA_EPA2013_TEMP_TABLE_MAX;
}

static double smaller(double a, double b)
{
    return a < b ? a : b;
}

/* high / (1 + 10^(inflection - pH)) + low / (1 + 10^(pH - inflection)). */
static double two_terms(double high, double low, double inflection, double ph)
{
    return high / (1.0 + hw_exp10(inflection - ph)) + low / (1.0 + hw_exp10(ph - inflection));
}

/* What multiplies the two terms of the chronic criterion: flat below 7 degrees. */
static double ccc_factor(double temp)
{
    double warm = temp > 7.0 ? temp : 7.0;
    return 0.8876 * 2.126 * hw_exp10(0.028 * (20.0 - warm));
}

static double ccc(double ph, double temp)
{
    return ccc_factor(temp) * two_terms(ccc_high_ph, ccc_low_ph, ccc_inflection, ph);
}

/* 0.7249 g(pH), and the invertebrates' factor of temperature, of both acute criteria. */
static double cmc_by_ph(double ph)
{
    return 0.7249 * two_terms(0.0114, 1.6181, cmc_inflection, ph);
}

static double cmc_by_temp(double temp)
{
    return 23.12 * hw_exp10(0.036 * (20.0 - temp));
}

int hw_criteria_epa2013(enum hw_criteria_limit which, double ph, double temp, double *tan_n)
{
    *tan_n = HW_NO_ANSWER;
    if (which != HW_CRITERIA_EPA2013_CCC && which != HW_CRITERIA_EPA2013_CMC_PRESENT &&
        which != HW_CRITERIA_EPA2013_CMC_ABSENT) {
        return HW_STATUS_CHOICE;
    }
    if (!(ph >= HW_CRITERIA_EPA2013_PH_MIN && ph <= HW_CRITERIA_EPA2013_PH_MAX &&
          temp_in_range(temp))) {
        return HW_STATUS_RANGE;
    }
    if (which == HW_CRITERIA_EPA2013_CCC) {
        *tan_n = ccc(ph, temp);
    } else if (which == HW_CRITERIA_EPA2013_CMC_PRESENT) {
        *tan_n =
            smaller(two_terms(0.275, 39.0, cmc_inflection, ph), cmc_by_ph(ph) * cmc_by_temp(temp));
    } else {
        *tan_n = cmc_by_ph(ph) * smaller(51.93, cmc_by_temp(temp));
    }
    return off_the_tables(ph, temp) ? HW_STATUS_STRETCHED : HW_STATUS_OK;
}

int hw_criteria_epa2013_ccc_ph(double tan_n, double temp, double *ph)
{
    *ph = HW_NO_ANSWER;
    if (!(tan_n >= HW_CRITERIA_EPA2013_TAN_MIN && tan_n <= HW_CRITERIA_EPA2013_TAN_MAX &&
          temp_in_range(temp))) {
        return HW_STATUS_RANGE;
    }
    double terms = tan_n / ccc_factor(temp);
    if (!(terms > ccc_high_ph && terms < ccc_low_ph)) {
        return HW_STATUS_NONE;
    }
    *ph = ccc_inflection + hw_log10((ccc_low_ph - terms) / (terms - ccc_high_ph));
    return off_the_tables(*ph, temp) ? HW_STATUS_STRETCHED : HW_STATUS_OK;
}
