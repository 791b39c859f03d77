/* trend_run.h - the command that reads a record: is it creeping, and was a level held? */
#ifndef HW_TREND_RUN_H
#define HW_TREND_RUN_H

/* Returns an exit status. */
int trend_run(int argc, char *argv[]);
#endif
