/* topic.c - looks a word up in data/topics.tsv. It is never run: it leads on. */
#include "cli/topic.h"

#include "cli/stream.h"
#include "cli/suggest.h"
#include "cli/wording.h"
#include "tables.h"

#include <stdio.h>
#include <string.h>

/* In a long word a slip is still seen. */
enum { LIST_MAX = 200, LONG_WORD = 6 };

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

static bool has_option(const struct hw_topic *topic, const char *input)
{
    struct hw_text name;
    for (const char *at = topic->options ? topic->options : ""; next_word(&at, &name);) {
        if (hw_name_is(input, name.at, name.n)) {
            return true;
        }
    }
    return false;
}

bool topic_means(const char *word, const char *input)
{
    struct suggestions near = {.word = word, .n = 0};
    for (size_t i = 0; i < HW_TOPICS; i++) {
        const char *topic = hw_topics[i].word;
        if (has_option(&hw_topics[i], input)) {
            bool both_long = strlen(word) >= LONG_WORD && strlen(topic) >= LONG_WORD;
            near.n = 0;
            if (both_long) {
                suggest_weigh(&near, topic);
            }
            if (near.n > 0 || hw_name_is(topic, word, strlen(word))) {
                return true;
            }
        }
    }
    return false;
}
