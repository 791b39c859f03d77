/* formalin.c - levels of formalin in three bases, and the oxygen it takes. */
#include "holdwater/formalin.h"

#include "core/no_answer.h"

#include <stdbool.h>

/* mg of formaldehyde to one of what a basis counts; 0 for one that does not exist. */
static double formaldehyde_in(enum hw_formalin_basis basis)
{
    double per = 0.0;
    switch (basis) {
    case HW_FORMALIN_SOLUTION_UL:
        per = HW_FORMALIN_STRENGTH / 1000.0;
        break;
    case HW_FORMALIN_SOLUTION_MG:
        per = HW_FORMALIN_STRENGTH / 1000.0 / HW_FORMALIN_DENSITY;
        break;
    case HW_FORMALIN_FORMALDEHYDE_MG:
        per = 1.0;
        break;
    }
    return per;
}

static bool is_level(double x)
{
    return x >= HW_FORMALIN_LEVEL_MIN && x <= HW_FORMALIN_LEVEL_MAX;
}

int hw_formalin_to_formaldehyde(enum hw_formalin_basis basis, double level, double *formaldehyde)
{
    double per = formaldehyde_in(basis);
    *formaldehyde = HW_NO_ANSWER;
    if (per == 0.0) {
        return HW_STATUS_CHOICE;
    }
    if (!is_level(level)) {
        return HW_STATUS_RANGE;
    }
    *formaldehyde = level * per;
    return HW_STATUS_OK;
}

int hw_formalin_from_formaldehyde(enum hw_formalin_basis basis, double formaldehyde, double *level)
{
    double per = formaldehyde_in(basis);
    *level = HW_NO_ANSWER;
    if (per == 0.0) {
        return HW_STATUS_CHOICE;
    }
    if (!is_level(formaldehyde)) {
        return HW_STATUS_RANGE;
    }
    *level = formaldehyde / per;
    return HW_STATUS_OK;
}

int hw_formalin_oxygen(double solution, double *oxygen)
{
    *oxygen = HW_NO_ANSWER;
    if (!is_level(solution)) {
        return HW_STATUS_RANGE;
    }
    *oxygen = solution / HW_FORMALIN_PER_OXYGEN;
    return HW_STATUS_OK;
}
