/* bioload.c - ammonia out of food, fish and what is dead. */
#include "holdwater/bioload.h"

#include "core/no_answer.h"
#include "core/range.h"

#include <stdbool.h>

/* A rise above a limit by less than this share of it is at the limit: quotients round. */
static const double noise = 1e-9;

static bool is_biomass(double x)
{
    return hw_within(x, HW_BIOLOAD_BIOMASS_MIN, HW_BIOLOAD_BIOMASS_MAX);
}

static bool is_protein(double x)
{
    return hw_within(x, HW_BIOLOAD_PROTEIN_SHARE_MIN, HW_BIOLOAD_PROTEIN_SHARE_MAX);
}

static bool is_rise(double x)
{
    return hw_within(x, HW_BIOLOAD_RISE_MIN, HW_BIOLOAD_RISE_MAX);
}

static bool is_limit(double x)
{
    return hw_within(x, HW_BIOLOAD_LIMIT_MIN, HW_BIOLOAD_LIMIT_MAX);
}

int hw_bioload_daily_feed(double biomass, double ration, double *feed)
{
    *feed = HW_NO_ANSWER;
    if (!is_biomass(biomass) ||
        !hw_within(ration, HW_BIOLOAD_RATION_SHARE_MIN, HW_BIOLOAD_RATION_SHARE_MAX)) {
        return HW_STATUS_RANGE;
    }
    *feed = biomass * ration;
    return HW_STATUS_OK;
}

int hw_bioload_from_feed(double feed, double protein, double factor, double *nitrogen)
{
    *nitrogen = HW_NO_ANSWER;
    if (!hw_within(feed, HW_BIOLOAD_FEED_MIN, HW_BIOLOAD_FEED_MAX) || !is_protein(protein) ||
        !hw_within(factor, HW_BIOLOAD_FACTOR_MIN, HW_BIOLOAD_FACTOR_MAX)) {
        return HW_STATUS_RANGE;
    }
    *nitrogen = 1000.0 * feed * protein * factor;
    return HW_STATUS_OK;
}

int hw_bioload_from_dead(double dead, double protein, double *nitrogen)
{
    *nitrogen = HW_NO_ANSWER;
    if (!hw_within(dead, HW_BIOLOAD_DEAD_MIN, HW_BIOLOAD_DEAD_MAX) || !is_protein(protein)) {
        return HW_STATUS_RANGE;
    }
    double counted =
        protein > HW_BIOLOAD_DEAD_PROTEIN_SHARE ? protein : HW_BIOLOAD_DEAD_PROTEIN_SHARE;
    *nitrogen = 1000.0 * dead * counted * HW_BIOLOAD_WHOLE;
    return HW_STATUS_OK;
}

int hw_bioload_starved(double biomass, double rate, double *nitrogen)
{
    *nitrogen = HW_NO_ANSWER;
    if (!is_biomass(biomass) || !hw_within(rate, HW_BIOLOAD_STARVED_MIN, HW_BIOLOAD_STARVED_MAX)) {
        return HW_STATUS_RANGE;
    }
    *nitrogen = biomass / 1000.0 * rate * 24.0;
    return HW_STATUS_OK;
}

int hw_bioload_rise(double production, double volume, double *rise)
{
    *rise = HW_NO_ANSWER;
    if (!hw_within(production, HW_BIOLOAD_PRODUCTION_MIN, HW_BIOLOAD_PRODUCTION_MAX) ||
        !hw_within(volume, HW_BIOLOAD_VOLUME_MIN, HW_BIOLOAD_VOLUME_MAX)) {
        return HW_STATUS_RANGE;
    }
    *rise = production / volume;
    return HW_STATUS_OK;
}

int hw_bioload_hours(double rise, double limit, double *hours)
{
    *hours = HW_NO_ANSWER;
    if (!is_rise(rise) || !is_limit(limit)) {
        return HW_STATUS_RANGE;
    }
    if (rise < HW_BIOLOAD_RISE_LEAST) {
        return HW_STATUS_NONE;
    }
    *hours = 24.0 * limit / rise;
    return HW_STATUS_OK;
}

int hw_bioload_change(double rise, double limit, double *exchanged)
{
    *exchanged = HW_NO_ANSWER;
    if (!is_rise(rise) || !is_limit(limit)) {
        return HW_STATUS_RANGE;
    }
    if (rise > limit * (1.0 + noise)) {
        return HW_STATUS_NONE;
    }
    *exchanged = fmin(rise / limit, 1.0);
    return HW_STATUS_OK;
}
