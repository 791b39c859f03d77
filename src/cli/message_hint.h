/* message_hint.h - what a keeper probably meant by a value that cannot be taken. */
#ifndef HW_MESSAGE_HINT_H
#define HW_MESSAGE_HINT_H
#include "engine/question.h"

/* Says what is wrong with a value and what was probably meant. False, and nothing said, where
 * nothing better is known than the reason of the problem.
 *
 * Given
 *   head      the option and what was written, as in --temp '78'
 *   text      what was written
 *   column    the unit that its column carries, or NULL
 */
bool message_hint(const struct hw_input *input, const char *head, struct hw_text text,
                  const struct hw_unit *column, enum hw_problem problem);

/* Says that a text is none of an input's words, and which one it is near. */
void message_unknown_word(const struct hw_input *input, struct hw_text text);
#endif
