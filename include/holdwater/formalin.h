/* holdwater/formalin.h - the three things that "ppm of formalin" can mean, and the oxygen it takes.
 */
#ifndef HOLDWATER_FORMALIN_H
#define HOLDWATER_FORMALIN_H

#include "holdwater/status.h"

#ifdef __cplusplus
extern "C" {
#endif

/* Formalin as the levels count it: 37 % of formaldehyde, weight in volume. */
#define HW_FORMALIN_STRENGTH 370.0 /* mg of formaldehyde in a mL of solution */
#define HW_FORMALIN_DENSITY  1.08  /* g in a mL of solution */

/* mg/L of solution that take 1 mg/L of oxygen. */
#define HW_FORMALIN_PER_OXYGEN 5.0

/* A level in water, in any basis. */
#define HW_FORMALIN_LEVEL_MIN 0.0
#define HW_FORMALIN_LEVEL_MAX 1e5

enum hw_formalin_basis {
    HW_FORMALIN_SOLUTION_UL = 0,    /* microlitres of solution in a litre */
    HW_FORMALIN_SOLUTION_MG = 1,    /* milligrams of solution in a litre */
    HW_FORMALIN_FORMALDEHYDE_MG = 2 /* milligrams of formaldehyde in a litre */
};

/* hw_formalin_to_formaldehyde, hw_formalin_from_formaldehyde - a level in a basis as formaldehyde,
 * and back.
 *
 * Given
 *   basis         what the level counts
 *   level         in that basis, HW_FORMALIN_LEVEL_MIN to HW_FORMALIN_LEVEL_MAX
 *   formaldehyde  mg/L, the same range
 * Returned
 *   formaldehyde  mg/L
 *   level         in the basis
 * Status
 *   HW_STATUS_OK, HW_STATUS_CHOICE (basis), HW_STATUS_RANGE
 * Notes
 *  1. 1 uL/L of solution is 1.08 mg/L of solution and 0.37 mg/L of formaldehyde.
 *  2. Bottles of 37 % by mass hold 0.37 x 1.08 g, 400 mg in a mL: their microlitres are 8 %
 *     stronger than these.
 * Source
 *   Fredricks and others 2018 and a label (0.37 mg to a uL); Piper and others 1982, p. 276 (a
 *   density of 1.08: 167 mg/L are 43.8 mL in 10 cubic feet).
 */
int hw_formalin_to_formaldehyde(enum hw_formalin_basis basis, double level, double *formaldehyde);
int hw_formalin_from_formaldehyde(enum hw_formalin_basis basis, double formaldehyde, double *level);

/* hw_formalin_oxygen - the oxygen that formalin takes out of water in which it stays.
 *
 * Given
 *   solution  mg/L of formalin solution, HW_FORMALIN_LEVEL_MIN to HW_FORMALIN_LEVEL_MAX
 * Returned
 *   oxygen    mg/L, within 30 to 36 hours
 * Status
 *   HW_STATUS_OK, HW_STATUS_RANGE
 * Notes
 *  1. oxygen = solution / 5. The texts write ppm and mg/L of formalin without saying which; it is
 *     read here as solution by mass. If microlitres were meant it is 8 % less. All formaldehyde
 *     burnt to carbon dioxide would take 1.07 mg to a mg, 1.8 mg/L for 5 mg/L of solution.
 *  2. Not modelled: how fast, what air brings back, what killed algae and bacteria take besides.
 * Source
 *   UF/IFAS VM77; Piper and others 1982, p. 276.
 */
int hw_formalin_oxygen(double solution, double *oxygen);

#ifdef __cplusplus
}
#endif

#endif
