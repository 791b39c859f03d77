/* list.h - the calculations by name, one line each. */
#ifndef HW_LIST_H
#define HW_LIST_H
#include "calc/calc.h"

extern const struct hw_calc hw_calc_volume;
extern const struct hw_calc hw_calc_gauge;
extern const struct hw_calc hw_calc_ammonia;
extern const struct hw_calc hw_calc_nitrite;
extern const struct hw_calc hw_calc_oxygen;
extern const struct hw_calc hw_calc_salinity;
extern const struct hw_calc hw_calc_saltmix;
extern const struct hw_calc hw_calc_challenge;
extern const struct hw_calc hw_calc_verdict;
extern const struct hw_calc hw_calc_bioload;
extern const struct hw_calc hw_calc_concentrate;
extern const struct hw_calc hw_calc_dose;
extern const struct hw_calc hw_calc_change;
extern const struct hw_calc hw_calc_emergency;
extern const struct hw_calc hw_calc_binder;
extern const struct hw_calc hw_calc_blend;
extern const struct hw_calc hw_calc_buffer;
extern const struct hw_calc hw_calc_bath;
extern const struct hw_calc hw_calc_bag;
extern const struct hw_calc hw_calc_course;
extern const struct hw_calc hw_calc_neutralise;
extern const struct hw_calc hw_calc_disinfect;
extern const struct hw_calc hw_calc_ahead;
#endif
