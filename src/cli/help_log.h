/* help_log.h - how a logbook is kept and read. */
#ifndef HW_HELP_LOG_H
#define HW_HELP_LOG_H

/* Prints `holdwater help log`. */
void help_log(void);
#endif
