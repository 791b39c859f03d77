/* options.c - finds options in their table, and takes them from the command line. */
#include "cli/options.h"

#include "cli/message.h"
#include "cli/stream.h"
#include "cli/suggest.h"
#include "cli/wording.h"

#include <string.h>

const char *const separator_words[] = {"comma", "semicolon", "tab", NULL};
const char *const decimal_words[] = {"point", "comma", NULL};

size_t options_find(const struct general_option *options, const char *name, size_t n)
{
    size_t i = 0;
    while (options[i].name && !hw_name_is(options[i].name, name, n)) {
        i++;
    }
    return i;
}

static bool no_option(const struct hw_calc *command, const struct general_option *first,
                      const char *word)
{
    char shown[SHOWN_MAX];
    show_text((struct hw_text){word, strlen(word)}, shown);
    complain("'%s' is not an option: values are written as --NAME VALUE, as in --%s %s", shown,
             first->name, first->value);
    message_try_help(command);
    return false;
}

static bool unknown_option(const struct hw_calc *command, const struct general_option *options,
                           struct hw_text name)
{
    char shown[SHOWN_MAX];
    char suggestion[SUGGEST_TEXT];
    show_text(name, shown);
    struct suggestions near = {.word = shown, .n = 0};
    for (size_t i = 0; options[i].name; i++) {
        suggest_weigh(&near, options[i].name);
    }
    suggest_text(&near, "--", suggestion);
    complain("%s has no option --%s%s", command->name, shown, suggestion);
    message_try_help(command);
    return false;
}

bool options_take(struct option_reader *reader, struct option_given *given)
{
    const struct hw_calc *command = reader->command;
    const char *word = reader->argv[reader->at++];
    if (strncmp(word, "--", 2) != 0 || word[2] == '\0') {
        return no_option(command, reader->options, word);
    }
    struct hw_text name = {word + 2, strcspn(word + 2, "=")};
    bool joined = name.at[name.n] == '=';
    size_t option = options_find(reader->options, name.at, name.n);
    const struct general_option *known = &reader->options[option];
    if (!known->name) {
        return unknown_option(command, reader->options, name);
    }
    if (reader->seen[option] && !known->repeats) {
        complain("--%s is given twice: give it once", known->name);
        return false;
    }
    reader->seen[option] = true;
    if (joined && !known->value) {
        complain("--%s takes no value", known->name);
        return false;
    }
    if (known->value && !joined && reader->at == reader->argc) {
        complain("--%s needs a value after it", known->name);
        message_try_help(command);
        return false;
    }
    bool next = known->value && !joined;
    const char *value = next ? reader->argv[reader->at++] : joined ? name.at + name.n + 1 : "";
    *given = (struct option_given){option, value};
    return true;
}
