/* holdwater/verdict.h - what a challenge proved: how fast a filter clears nitrogen, and how much
 * feed that carries.
 *
 * Nitrogen is counted as N. Ammonia that has become nitrite is not cleared yet: nitrogen is cleared
 * when it has left both.
 */
#ifndef HOLDWATER_VERDICT_H
#define HOLDWATER_VERDICT_H

#include "holdwater/status.h"

#ifdef __cplusplus
extern "C" {
#endif

/* Ammonia and nitrite, mg/L, in any basis and together; a challenge is a few mg/L. */
#define HW_VERDICT_NITROGEN_MIN 0.0
#define HW_VERDICT_NITROGEN_MAX 100.0

/* Hours from the start to the reading: in less nothing moves that a kit can tell, and after two
 * weeks it is no longer one challenge. */
#define HW_VERDICT_HOURS_MIN 1.0
#define HW_VERDICT_HOURS_MAX 336.0

/* Water that the filter serves, L. */
#define HW_VERDICT_VOLUME_MIN 0.1
#define HW_VERDICT_VOLUME_MAX 100000.0

/* Half of a step of a kit, mg/L. */
#define HW_VERDICT_HALF_MIN 0.0
#define HW_VERDICT_HALF_MAX 5.0

/* A rate, mg of nitrogen in a litre and day; a capacity, mg of nitrogen a day. */
#define HW_VERDICT_RATE_MIN     1e-12
#define HW_VERDICT_RATE_MAX     2400.0
#define HW_VERDICT_CAPACITY_MIN 0.0
#define HW_VERDICT_CAPACITY_MAX 2.4e8

/* Protein in feed as it is fed, a share of its mass. */
#define HW_VERDICT_PROTEIN_SHARE_MIN 0.03
#define HW_VERDICT_PROTEIN_SHARE_MAX 0.9

/* The share of its rate at a challenge that a filter keeps at the ammonia fish need. */
#define HW_VERDICT_WORKING_SHARE_MIN 0.01
#define HW_VERDICT_WORKING_SHARE_MAX 1.0

/* Degrees Celsius by which the fish will be kept colder than the challenge was. */
#define HW_VERDICT_COLDER_MIN 0.0
#define HW_VERDICT_COLDER_MAX 40.0

/* mg of ammonia nitrogen from a gram of protein fed. Recalled, a design figure: 160 mg of nitrogen
 * in it, times 0.80 taken up, 0.80 given off, 0.90 of that as ammonia. */
#define HW_VERDICT_NITROGEN_OF_PROTEIN 92.0

/* What the growth of nitrifiers changes by for each degree. */
#define HW_VERDICT_THETA 1.072

/* hw_verdict_rate - how fast the filter cleared nitrogen.
 *
 * Given
 *   start     ammonia and nitrite at the start, mg N/L, HW_VERDICT_NITROGEN_MIN to
 *             HW_VERDICT_NITROGEN_MAX
 *   left      ammonia and nitrite at the reading, the same range
 *   hours     between the two, HW_VERDICT_HOURS_MIN to HW_VERDICT_HOURS_MAX
 *   volume    L, HW_VERDICT_VOLUME_MIN to HW_VERDICT_VOLUME_MAX
 * Returned
 *   rate      mg N in a litre and day
 *   capacity  mg N a day in all the water
 * Status
 *   HW_STATUS_OK; HW_STATUS_NONE: left is not below start; HW_STATUS_RANGE
 * Notes
 *  1. rate = (start - left) / (hours / 24), capacity = rate x volume: a mean over the hours, as if
 *     the rate did not fall with the ammonia (zero order).
 *  2. When nothing was left the true rate is this or more.
 *  3. Not modelled: the lag of nitrite behind ammonia, growth in the meantime, ammonia that carbon,
 *     zeolite, a binder or algae took up: they count as cleared.
 * Source
 *   Conservation of nitrogen.
 */
int hw_verdict_rate(double start, double left, double hours, double volume, double *rate,
                    double *capacity);

/* hw_verdict_feed_carried - the feed whose ammonia a capacity clears.
 *
 * Given
 *   capacity      mg N a day, HW_VERDICT_CAPACITY_MIN to HW_VERDICT_CAPACITY_MAX
 *   protein       share of the feed as it is fed, HW_VERDICT_PROTEIN_SHARE_MIN to
 *                 HW_VERDICT_PROTEIN_SHARE_MAX
 *   working       the share of the capacity that is left at the ammonia fish need,
 *                 HW_VERDICT_WORKING_SHARE_MIN to HW_VERDICT_WORKING_SHARE_MAX
 *   colder        degrees by which the fish will be kept colder than the challenge was,
 *                 HW_VERDICT_COLDER_MIN to HW_VERDICT_COLDER_MAX
 * Returned
 *   feed          g a day at the rate of the challenge, and at its ammonia and temperature
 *   working_feed  g a day that the filter carries with fish in the water
 * Status
 *   HW_STATUS_OK, HW_STATUS_RANGE
 * Notes
 *  1. feed = capacity / (protein x 92). 92 mg N per gram of protein is a design figure and
 *     recalled; ammonia measured in the first day is a third to a half of that, rotting food gives
 *     up to 160.
 *  2. working_feed = feed x working x 1.072^-colder. A filter works the slower the less
 *     ammonia there is: at 0.25 mg N/L it is at 17 % of its rate at 2 mg N/L by
 *     (S - 0.07) / (S + 1.93), at 34 % by S / (S + 0.78).
 *  3. 1.072 per degree is that of one model of suspended sludge; another has 1.123. Films on media
 *     are said to depend less on temperature (recalled). Warmer water is not counted: colder has no
 *     sign.
 * Source
 *   0.092: a design figure of aquaculture (recalled). The two half-saturations: abstracts of a
 *   study of biofilters at 27 degrees (authors recalled: Zhu & Chen 1999) and of estuarine isolates
 *   at 25 degrees. 1.072: code of a wastewater model (read).
 */
int hw_verdict_feed_carried(double capacity, double protein, double working, double colder,
                            double *feed, double *working_feed);

/* hw_verdict_hours - how long until what is left has gone, at a rate.
 *
 * Given
 *   tan           total ammonia at the reading, mg N/L, HW_VERDICT_NITROGEN_MIN to
 *                 HW_VERDICT_NITROGEN_MAX
 *   nitrite       mg N/L, the same range
 *   half_tan      ammonia that counts as none, mg N/L, HW_VERDICT_HALF_MIN to HW_VERDICT_HALF_MAX
 *   half_nitrite  nitrite that counts as none, mg N/L, the same range
 *   rate          mg N in a litre and day, HW_VERDICT_RATE_MIN to HW_VERDICT_RATE_MAX
 * Returned
 *   hours         from the reading on
 * Status
 *   HW_STATUS_OK; HW_STATUS_NONE: both count as none already; HW_STATUS_RANGE
 * Notes
 *  1. hours = 24 x (what tan and nitrite each are above what counts as none) / rate.
 *  2. At least: the rate falls with the ammonia.
 * Source
 *   Conservation of nitrogen.
 */
int hw_verdict_hours(double tan, double nitrite, double half_tan, double half_nitrite, double rate,
                     double *hours);

#ifdef __cplusplus
}
#endif

#endif
