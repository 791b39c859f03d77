/* text_part.h - what texts of one answer and of a sweep have in common. */
#ifndef HW_TEXT_PART_H
#define HW_TEXT_PART_H
#include "engine/question.h"

/* The inputs as used, in run-in lists by where they came from: "given: volume 110 L, ...". */
void text_inputs(const struct hw_question *question, const char *tank);

enum { SENTENCE_MAX = 200 };

/* What a standing note says on its list: a prohibition says Never itself, in the line of its
 * verb. */
void text_sentence(const struct hw_note *note, char text[SENTENCE_MAX]);

/* The word for an effect, as the text of a note begins: "CAUTION". */
const char *text_heading(enum hw_effect effect);

/* A raised note, with a mark before it and where it holds after its code; all it says with full. */
void text_note(const struct hw_note *note, const char *mark, const char *where, bool full);

/* What the standing ones among these notes say: "never: ...", "mind: ..."; all of it with full. */
void text_standing(const struct hw_calc *calc, uint64_t notes, bool full);

void text_sources(const struct hw_calc *calc);
#endif
