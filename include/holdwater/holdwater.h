/* holdwater/holdwater.h - the whole library in one include, and its version.
 *
 * Units are fixed and stated at every argument: temperatures in degrees Celsius (ITS-90),
 * salinities in grams of sea salt per kilogram of water (used as practical salinity, from which
 * they differ by 0.5 %), concentrations in mg/L, shares as fractions from 0 to 1. A per cent is
 * named so. Where both are given, the temperature comes before the salinity. A name begins with
 * that of its header. See status.h for what the functions return.
 */
#ifndef HOLDWATER_HOLDWATER_H
#define HOLDWATER_HOLDWATER_H

#include "holdwater/ahead.h"
#include "holdwater/ammonia.h"
#include "holdwater/bag.h"
#include "holdwater/bath.h"
#include "holdwater/binder.h"
#include "holdwater/bioload.h"
#include "holdwater/blend.h"
#include "holdwater/buffer.h"
#include "holdwater/carbonate.h"
#include "holdwater/challenge.h"
#include "holdwater/change.h"
#include "holdwater/chlorine.h"
#include "holdwater/conductivity.h"
#include "holdwater/course.h"
#include "holdwater/criteria.h"
#include "holdwater/dose.h"
#include "holdwater/formalin.h"
#include "holdwater/hydrometer.h"
#include "holdwater/molar.h"
#include "holdwater/nitrite.h"
#include "holdwater/nitrogen.h"
#include "holdwater/oxygen.h"
#include "holdwater/ph.h"
#include "holdwater/refraction.h"
#include "holdwater/saltmix.h"
#include "holdwater/seawater.h"
#include "holdwater/status.h"
#include "holdwater/stock.h"
#include "holdwater/trend.h"
#include "holdwater/verdict.h"
#include "holdwater/volume.h"

/* The version in words, and its three parts as numbers. */
#define HW_VERSION       "0.1.0"
#define HW_VERSION_MAJOR 0
#define HW_VERSION_MINOR 1
#define HW_VERSION_PATCH 0

#endif
