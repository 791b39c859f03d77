/* inverted.h - questions of every calculation, to be asked backwards. */
#ifndef HW_INVERTED_H
#define HW_INVERTED_H
#include "engine/question.h"

/* Calls with each question of a calculation that its examples and its reference rows ask, and that
 * has no problem. Returns how many there were. */
size_t each_question(const struct hw_calc *calc, void (*with)(const struct hw_question *question));
#endif
