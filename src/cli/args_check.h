/* args_check.h - options that mean nothing together. */
#ifndef HW_ARGS_CHECK_H
#define HW_ARGS_CHECK_H
#include "cli/args.h"

/* Judges options that were read, and settles the format: rows are CSV unless another is given, and
 * their json is one object a line. False with a message when they have no meaning together. */
bool args_check(struct args *args);
#endif
