/* syringe.h - what an amount of liquid looks like in the syringe that measures it best. */
#ifndef HW_SYRINGE_H
#define HW_SYRINGE_H
#include <stddef.h>

enum { SYRINGE_TEXT = 80 };

/* "7.2 mL in a 10 mL syringe".
 *
 * Given
 *   amount   mL; safe -1 is never rounded up, +1 never down, 0 to the nearest mark
 * Returned
 *   text     what to draw: the fewest fills of the smallest syringe whose marks lie no further
 *            apart than 1/20 of the amount (in a 1 mL syringe at any amount from 0.05 mL up); in a
 *            jug above ten fills of the largest; that it is too little to measure, below 0.05 mL;
 *            "" for nothing, a negative amount or NaN
 */
void syringe_text(double amount, int safe, char text[SYRINGE_TEXT]);
#endif
