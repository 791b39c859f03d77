/* print.h - numbers and wrapped words. */
#ifndef HW_PRINT_H
#define HW_PRINT_H
#include <stdbool.h>
#include <stddef.h>

enum { PRINT_WIDTH = 79, NUMBER_MAX = 352 };

/* A blank at which no line is broken. */
enum { PRINT_TIE = 1 };

/* The shortest of 15, 16 and 17 significant digits that reads back equal. */
void number_exact(char text[NUMBER_MAX], double value);

/* That many significant digits, without trailing zeros; "" for what is no finite number. */
void number_digits(char text[NUMBER_MAX], double value, int digits);

/* For people: that many significant digits, trailing zeros kept, whole numbers in full, never an
 * exponent within 1e-6 to 1e15; safe -1 never rounds up, +1 never down, 0 to the nearest. */
void number_text(char text[NUMBER_MAX], double value, int digits, int safe);

/* That many significant digits with an exponent, rounded as number_text does. */
void number_significant(char text[NUMBER_MAX], double value, int digits, int safe);

/* Prints text wrapped to PRINT_WIDTH, from column `at`; further lines are indented. Words are
 * parted at blanks, and one that is wider than a line after a comma. The first is set off by a
 * blank unless it is glued to what stands there. Returns the column; the line is not ended. */
size_t print_words(const char *text, size_t at, size_t indent, bool glued);

/* The same with the first word glued, and the line ended. */
void print_wrapped(const char *text, size_t at, size_t indent);

/* Prints n blanks. */
void print_blanks(size_t n);
#endif
