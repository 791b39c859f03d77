/* list.c - every calculation, in the order of the help: the order of the job. */
#include "calc/list.h"

/* clang-format off */
const struct hw_calc *const hw_calcs[] = {
    /* ready */ &hw_calc_volume, &hw_calc_gauge, &hw_calc_salinity, &hw_calc_saltmix,
    &hw_calc_neutralise,
    /* prove */ &hw_calc_challenge, &hw_calc_concentrate, &hw_calc_verdict, &hw_calc_bioload,
    /* watch */ &hw_calc_ammonia, &hw_calc_nitrite, &hw_calc_oxygen,
    /* treat */ &hw_calc_dose, &hw_calc_change, &hw_calc_blend, &hw_calc_buffer,
    /* emergency */ &hw_calc_emergency, &hw_calc_binder, &hw_calc_ahead,
    /* rescue */ &hw_calc_bath, &hw_calc_course, &hw_calc_bag,
    /* close */ &hw_calc_disinfect,
    NULL,
};
/* clang-format on */
