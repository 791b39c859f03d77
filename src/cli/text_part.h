/* text_part.h - what texts of one answer and of a sweep have in common. */
#ifndef HW_TEXT_PART_H
#define HW_TEXT_PART_H
#include "engine/question.h"

enum { TEXT_COLUMN = 32, TEXT_NAME = 16 };

/* A name and a value in the columns of a text; returns the column where what follows begins. */
size_t text_columns(const char *name, const char *value);

/* An input as used, and where it came from. */
void text_input(const struct hw_question *question, size_t i);

/* The word for an effect; a note, with a mark before it and where it holds after its code. */
const char *text_heading(enum hw_effect effect);
void text_note(const struct hw_note *note, const char *mark, const char *where);

void text_sources(const struct hw_calc *calc);
#endif
