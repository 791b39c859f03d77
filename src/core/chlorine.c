/* chlorine.c - bleach into a tank, chlorine out of water. */
#include "holdwater/chlorine.h"

#include "core/no_answer.h"
#include "holdwater/molar.h"

#include <stdbool.h>

static bool is_volume(double x)
{
    return x >= HW_CHLORINE_VOLUME_MIN && x <= HW_CHLORINE_VOLUME_MAX;
}

static bool is_level(double x)
{
    return x >= HW_CHLORINE_LEVEL_MIN && x <= HW_CHLORINE_LEVEL_MAX;
}

/* Chlorine in a gram of what the per cent counts, or 0 for a label that does not exist. */
static double chlorine_share(enum hw_chlorine_label label)
{
    switch (label) {
    case HW_CHLORINE_LABEL_WV:
    case HW_CHLORINE_LABEL_WW:
        return 1.0;
    case HW_CHLORINE_LABEL_NAOCL_WW:
        return HW_MOLAR_CHLORINE / HW_MOLAR_HYPOCHLORITE;
    }
    return 0.0;
}

int hw_chlorine_bleach_strength(enum hw_chlorine_label label, double label_percent, double density,
                                double *strength)
{
    double share = chlorine_share(label);
    double per_litre = label == HW_CHLORINE_LABEL_WV ? 1.0 : density;
    *strength = HW_NO_ANSWER;
    if (share == 0.0) {
        return HW_STATUS_CHOICE;
    }
    if (!(label_percent >= HW_CHLORINE_PERCENT_MIN && label_percent <= HW_CHLORINE_PERCENT_MAX) ||
        !(per_litre >= HW_CHLORINE_DENSITY_MIN && per_litre <= HW_CHLORINE_DENSITY_MAX)) {
        return HW_STATUS_RANGE;
    }
    *strength = 10.0 * label_percent * per_litre * share;
    return HW_STATUS_OK;
}

int hw_chlorine_bleach_amount(double volume, double target, double strength, double *bleach)
{
    *bleach = HW_NO_ANSWER;
    if (!is_volume(volume) ||
        !(target >= HW_CHLORINE_TARGET_MIN && target <= HW_CHLORINE_LEVEL_MAX) ||
        !(strength >= HW_CHLORINE_STRENGTH_MIN && strength <= HW_CHLORINE_STRENGTH_MAX)) {
        return HW_STATUS_RANGE;
    }
    *bleach = target * volume / strength;
    return HW_STATUS_OK;
}

int hw_chlorine_contact(double level, double minutes, double *contact)
{
    *contact = HW_NO_ANSWER;
    if (!is_level(level) ||
        !(minutes >= HW_CHLORINE_MINUTES_MIN && minutes <= HW_CHLORINE_MINUTES_MAX)) {
        return HW_STATUS_RANGE;
    }
    *contact = level * minutes;
    return HW_STATUS_OK;
}

int hw_chlorine_agent_ratio(enum hw_chlorine_agent agent, double *ratio)
{
    static const double pentahydrate = 7.0;
    *ratio = HW_NO_ANSWER;
    switch (agent) {
    case HW_CHLORINE_THIOSULFATE_PENTAHYDRATE:
        *ratio = pentahydrate;
        return HW_STATUS_OK;
    case HW_CHLORINE_THIOSULFATE_ANHYDROUS:
        *ratio = pentahydrate * HW_MOLAR_THIOSULFATE / HW_MOLAR_THIOSULFATE_PENTAHYDRATE;
        return HW_STATUS_OK;
    case HW_CHLORINE_ASCORBIC_ACID:
        *ratio = 2.5;
        return HW_STATUS_OK;
    }
    return HW_STATUS_CHOICE;
}

int hw_chlorine_agent_mass(double volume, double chlorine, double ratio, double *mass)
{
    *mass = HW_NO_ANSWER;
    if (!is_volume(volume) || !is_level(chlorine) ||
        !(ratio >= HW_CHLORINE_RATIO_MIN && ratio <= HW_CHLORINE_RATIO_MAX)) {
        return HW_STATUS_RANGE;
    }
    *mass = volume * chlorine * ratio / 1000.0;
    return HW_STATUS_OK;
}

int hw_chlorine_nitrogen_freed(double chlorine, double *nitrogen)
{
    *nitrogen = HW_NO_ANSWER;
    if (!is_level(chlorine)) {
        return HW_STATUS_RANGE;
    }
    *nitrogen = chlorine * (HW_MOLAR_N / HW_MOLAR_CHLORINE);
    return HW_STATUS_OK;
}
