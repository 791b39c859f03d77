/* list.c - every calculation, in the order of the help: the order of the job. */
#include "calc/list.h"

const struct hw_calc *const hw_calcs[] = {
    &hw_calc_volume, &hw_calc_gauge, &hw_calc_ammonia, &hw_calc_bath, NULL,
};
