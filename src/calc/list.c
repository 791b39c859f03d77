/* list.c - every calculation, in the order of the help: the order of the job. */
#include "calc/list.h"

/* clang-format off */
const struct hw_calc *const hw_calcs[] = {
    /* ready */ &hw_calc_volume, &hw_calc_gauge, &hw_calc_salinity,
    /* prove */ &hw_calc_challenge, &hw_calc_concentrate,
    /* watch */ &hw_calc_ammonia, &hw_calc_nitrite,
    /* treat */ &hw_calc_change,
    /* rescue */ &hw_calc_bath,
    NULL,
};
/* clang-format on */
