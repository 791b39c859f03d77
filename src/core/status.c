/* status.c - statuses in words. */
#include "holdwater/status.h"

const char *hw_status_text(int status)
{
    switch (status) {
    case HW_STATUS_OK:
        return "an answer";
    case HW_STATUS_STRETCHED:
        return "an answer, outside the range its equation was fitted to";
    case HW_STATUS_RANGE:
        return "no answer: an argument is out of its range or not finite";
    case HW_STATUS_CHOICE:
        return "no answer: a choice is unknown or at odds with another";
    case HW_STATUS_NONE:
        return "no answer: the equation has no solution for these arguments";
    }
    return status > 0 ? "an answer, to be used with care" : "no answer";
}
