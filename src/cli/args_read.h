/* args_read.h - reads the words after the calculation's name. */
#ifndef HW_ARGS_READ_H
#define HW_ARGS_READ_H
#include "cli/args.h"

/* Reads argv[2] onwards. True when all is well; else the message is out. */
bool args_read(int argc, char *argv[], const struct hw_calc *calc, struct args *args);

/* True when help is asked for anywhere among argv[from] onwards. */
bool args_want_help(int argc, char *argv[], int from);
#endif
