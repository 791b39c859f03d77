/* list.c - every calculation, in the order of the help: the order of the job. */
#include "calc/list.h"

const struct hw_calc *const hw_calcs[] = {
    &hw_calc_salinity, &hw_calc_challenge, &hw_calc_ammonia, &hw_calc_change, NULL,
};
