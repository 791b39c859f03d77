/* topic.h - words of the trade that are no names of this program, and where they lead. */
#ifndef HW_TOPIC_H
#define HW_TOPIC_H
#include "engine/question.h"
#include "tables.h"

/* Tells which calculations answer such a word, as commands to type. False, and nothing said, when
 * the word is not known. */
bool topic_tell(const char *word);

/* "; did you mean --depth?" into text for a word that an option of the calculation stands for.
 * False when it has none. */
bool topic_options(const struct hw_calc *calc, const char *word, char text[], size_t size);

/* That word, or one with a slip in it; NULL for none. */
const struct hw_topic *topic_like(const char *word);

/* True where it may mean an input of that name; NULL means none. */
bool topic_means(const struct hw_topic *topic, const char *input);
#endif
