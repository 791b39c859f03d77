/* tank_rows.h - rows that each name a tank of the tanks file. */
#ifndef HW_TANK_ROWS_H
#define HW_TANK_ROWS_H
#include "cli/tank_file.h"

/* Reads the file that --tanks names and makes its tanks ready to be found. False with a message
 * when it is no tanks file, two rows have one name, or two columns feed one input. */
bool tank_rows_read(const struct args *args);

/* True when a column of the file tells the input, as the water of a tank. */
bool tank_rows_tell(const struct hw_calc *calc, size_t input);

/* True when a column of the file only has the input's name: it may be out of date, and is not taken
 * for it. */
bool tank_rows_like(const struct hw_calc *calc, size_t input);

/* Fills in what the file says of a tank for inputs that are not written. NULL, or the code of what
 * is wrong: "unknown-tank" or "tank-row". */
const char *tank_rows_take(struct hw_text tank, const struct tank_take *take);
#endif
