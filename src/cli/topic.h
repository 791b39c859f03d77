/* topic.h - words of the trade that are no names of this program, and where they lead. */
#ifndef HW_TOPIC_H
#define HW_TOPIC_H
#include "engine/question.h"

/* Tells which calculations answer such a word, as commands to type. False, and nothing said, when
 * the word is not known. */
bool topic_tell(const char *word);

/* "; did you mean --depth?" into text for a word that an option of the calculation stands for.
 * False when it has none. */
bool topic_options(const struct hw_calc *calc, const char *word, char text[], size_t size);

/* True where such a word may mean an input of that name. */
bool topic_means(const char *word, const char *input);
#endif
