/* assert_close.h - comparing doubles in tests.
 *
 * cmocka's own comparison of floats passes NaN and widens small tolerances; this one does not. */
#ifndef HOLDWATER_ASSERT_CLOSE_H
#define HOLDWATER_ASSERT_CLOSE_H

/* Fails the test unless got lies within absolute or within relative x |want| of want, whichever is
 * wider; always fails for NaN. Prints both values and both tolerances. */
#define assert_close(got, want, absolute, relative)                                                \
    hw_assert_close((got), (want), (absolute), (relative), #got, __FILE__, __LINE__)

/* Fails the test unless got is NaN. */
#define assert_no_answer(got) hw_assert_no_answer((got), #got, __FILE__, __LINE__)

/* Fails the test unless got is the status wanted. */
#define assert_status(got, want) hw_assert_status((got), (want), #got, __FILE__, __LINE__)

/* Fails the test unless the condition holds; counted like the others. */
#define check(condition) hw_check((condition) ? 1 : 0, #condition, __FILE__, __LINE__)

/* Whether a comparison would pass, for tests that go on and count what fails. */
int hw_is_close(double got, double want, double absolute, double relative);

void hw_assert_close(double got, double want, double absolute, double relative, const char *what,
                     const char *file, int line);
void hw_assert_no_answer(double got, const char *what, const char *file, int line);
void hw_assert_status(int got, int want, const char *what, const char *file, int line);
void hw_check(int holds, const char *what, const char *file, int line);

/* When a program ends: a line that says how many checks were made, if none failed. What stands in a
 * loop, or in a helper, is one check however often it is made. */
int hw_report_checks(int failed);

/* Random numbers for properties: the same on every machine, from a seed that is printed. */
void hw_random_start(unsigned long seed);
double hw_random_between(double low, double high);

#endif
