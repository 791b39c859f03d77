/* pour.h - how an amount of liquid is measured by hand. */
#ifndef HW_POUR_H
#define HW_POUR_H
#include <stddef.h>

enum { POUR_TEXT = 80 };

/* An amount in mL: "5.8 mL in a 10 mL syringe", "10 + 4.4 mL in a 10 mL syringe", "440 mL in a
 * cylinder". The syringe is the smallest that takes it in the fewest fills and has marks fine
 * enough. safe -1 never rounds to a mark above the amount, +1 never to one below, 0 to the nearest.
 * Returns what is poured, in mL; NaN where it is too little to measure, which the text then says,
 * or where there is nothing to pour. */
double pour_text(double amount, int safe, char text[POUR_TEXT]);
#endif
