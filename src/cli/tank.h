/* tank.h - inputs that a tank has once and for all, kept in a file. */
#ifndef HW_TANK_H
#define HW_TANK_H
#include "cli/args.h"

/* Fills in what the tanks file says of args->tank for inputs that were not given on the command
 * line. False with a message when there is no file, or no such tank in it, or two of them. Values
 * are read later, with all others. */
bool tank_fill(struct args *args);
#endif
