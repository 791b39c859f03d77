/* topic.c - looks a word up in data/topics.tsv. It is never run: it leads on. */
#include "cli/topic.h"

#include "cli/stream.h"
#include "cli/suggest.h"
#include "cli/wording.h"
#include "tables.h"

#include <stdio.h>
#include <string.h>

enum { LIST_MAX = 200 };

static const struct hw_topic *find(const char *word)
{
    for (size_t i = 0; i < HW_TOPICS; i++) {
        if (hw_name_is(hw_topics[i].word, word, strlen(word))) {
            return &hw_topics[i];
        }
    }
    return NULL;
}

/* The next word of a list with commas; false at its end. */
static bool next_word(const char **list, struct hw_text *word)
{
    if (**list == '\0') {
        return false;
    }
    *word = (struct hw_text){*list, strcspn(*list, ",")};
    *list += word->n;
    *list += **list == ',' ? 1 : 0;
    return true;
}

bool topic_tell(const char *word)
{
    const struct hw_topic *topic = find(word);
    if (!topic || !topic->asks) {
        return false;
    }
    char list[LIST_MAX] = "";
    struct hw_text name;
    for (const char *at = topic->asks; next_word(&at, &name);) {
        size_t used = strlen(list);
        (void)snprintf(list + used, sizeof list - used, "%s'holdwater %.*s'",
                       used == 0 ? "" : " or ", (int)name.n, name.at);
    }
    complain("no calculation is called '%s': type %s", word, list);
    complain("(%s)", topic->text);
    return true;
}

bool topic_options(const struct hw_calc *calc, const char *word, char text[], size_t size)
{
    const struct hw_topic *topic = find(word);
    size_t used = 0;
    text[0] = '\0';
    if (!topic || !topic->options) {
        return false;
    }
    struct hw_text name;
    for (const char *at = topic->options; next_word(&at, &name);) {
        size_t input = hw_input_find(calc, name.at, name.n);
        if (input < calc->n_inputs && used < size) {
            char option[OPTION_MAX];
            option_name(calc->inputs[input].name, option);
            used += (size_t)snprintf(text + used, size - used, "%s--%s",
                                     used == 0 ? "; did you mean " : " or ", option);
        }
    }
    if (used > 0 && used < size) {
        (void)snprintf(text + used, size - used, "?");
    }
    return used > 0;
}

const struct hw_topic *topic_like(const char *word)
{
    const struct hw_topic *topic = find(word);
    for (size_t i = 0; i < HW_TOPICS && !topic; i++) {
        topic = suggest_slip(word, hw_topics[i].word) ? &hw_topics[i] : NULL;
    }
    return topic;
}

bool topic_means(const struct hw_topic *topic, const char *input)
{
    struct hw_text name;
    for (const char *at = topic && topic->options ? topic->options : ""; next_word(&at, &name);) {
        if (hw_name_is(input, name.at, name.n)) {
            return true;
        }
    }
    return false;
}
