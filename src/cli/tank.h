/* tank.h - inputs that a tank has once and for all, kept in a file. */
#ifndef HW_TANK_H
#define HW_TANK_H
#include "cli/args.h"

/* Fills in what the tanks file says of the water of args->tank, for inputs that were not given on
 * the command line. False with a message when a file that was named is not there, or has no such
 * tank, or two of them; without any file the name stands alone, and that is said. Values are read
 * later, with all others. */
bool tank_fill(struct args *args);

/* False with a message when a tanks file is there, or was named (NULL: it was not), and has no tank
 * of that name. Nothing else of it is read. */
bool tank_known(const char *tank, const char *tanks);

/* Says that the tank's row has a cell named as this input that was not taken for it: unless the
 * input was given, and nobody expects it. */
void tank_mention(const struct args *args, size_t input);

/* The first input for which a preset would stand though the tank's row tells it and does not give
 * it (`left`), or calc->n_inputs. */
size_t tank_conflict(const struct hw_question *question, const struct hw_text left[]);

/* False with a message when a preset would stand for what the tank's row tells and does not give, a
 * level or a kit's basis: which of them is true, only the keeper knows. */
bool tank_agrees(const struct args *args, const struct hw_question *question);
#endif
