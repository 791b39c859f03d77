/* help_files.h - the files of a keeper: the logbook, and the tanks. */
#ifndef HW_HELP_FILES_H
#define HW_HELP_FILES_H

/* Prints `holdwater help log`: how a logbook is kept and read. */
void help_log(void);

/* Prints `holdwater help tanks`: what a tanks file has, and what is taken from it. */
void help_tanks(void);
#endif
