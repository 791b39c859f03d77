/* column_like.c - holds the name of a column against inputs that no column feeds. */
#include "cli/column_like.h"

#include "cli/column_name.h"
#include "cli/stream.h"
#include "cli/suggest.h"
#include "cli/topic.h"
#include "cli/wording.h"

#include <stdio.h>
#include <string.h>

enum { MAP_MAX = 2 * SHOWN_MAX + COLUMN_NAME_MAX, WORD_MAX = 40, LONG_WORD = 6, NOWHERE = -1 };

/* The unit of an input that a name shows, or NULL. */
static const struct hw_unit *unit_shown(struct hw_text name, const struct hw_input *input)
{
    size_t n = 0;
    const struct hw_unit *unit = column_unit(name, &n);
    return unit && unit->kind == input->kind ? unit : column_unit_within(input->kind, name);
}

/* What is to be typed can be typed: a name that cannot be shown as it is, or that would end its
 * quotes, is not. */
static void map_text(struct hw_text name, const char *to, char map[MAP_MAX])
{
    char shown[SHOWN_MAX];
    bool exact = show_text(name, shown) && !strchr(shown, '\'');
    const char *quote = exact ? "'" : "";
    (void)snprintf(map, MAP_MAX, "--map %s%s=%s%s", quote, exact ? shown : "COLUMN", to, quote);
}

/* Whether what a name does not show is to be added: "" or how. */
static const char *unit_wanted(struct hw_text name, const struct hw_input *input)
{
    bool has_units = input->unit[0] != '\0' && !input->words;
    return has_units && !unit_shown(name, input) ? ", with its unit as in temp_F" : "";
}

/* Where the near miss comes from elsewhere: "an option gives for every row"; or NULL. */
static const char *elsewhere(const struct args *args, size_t input)
{
    const struct hw_calc *calc = args->calc;
    bool by_tank = args->tanks && !args->tank; /* each row has the water of its own */
    bool assumed = false;
    bool of_tank = false;
    if (args->written[input].from == HW_FROM_TANK) {
        return "the tanks file gives for every row";
    }
    if (args->written[input].text.at) {
        return "an option gives for every row";
    }
    for (size_t i = hw_input_first(calc, input); i < calc->n_inputs; i = hw_input_next(calc, i)) {
        assumed = assumed || calc->inputs[i].need == HW_PRESET;
        of_tank = of_tank || (by_tank && calc->inputs[i].tank);
    }
    if (of_tank) {
        return "the tanks file may give for a row";
    }
    return assumed ? "would be assumed" : NULL;
}

/* A column that nearly has the name of an input. Where that is taken from elsewhere, what the sheet
 * says of it would be passed over, row by row: false. Else it is said that it feeds nothing. */
static bool judge_like(const struct args *args, struct hw_text name, size_t input)
{
    const char *other = elsewhere(args, input);
    const struct hw_input *its = &args->calc->inputs[input];
    const struct hw_unit *unit = unit_shown(name, its);
    char shown[SHOWN_MAX];
    char map[MAP_MAX];
    char own[MAP_MAX];
    char to[COLUMN_NAME_MAX];
    show_text(name, shown);
    column_name(its->name, "", unit ? unit->name : "", to);
    map_text(name, to, map);
    map_text(name, "own", own);
    if (!other) {
        complain("column '%s' is not understood and feeds nothing: %s if it should%s", shown, map,
                 unit_wanted(name, its));
        return true;
    }
    complain("column '%s' looks like %s, which %s", shown, its->name, other);
    complain("if it is, write %s%s; if not, write %s", map, unit_wanted(name, its), own);
    return false;
}

static bool is_letter(char c)
{
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

/* Where a word stands in a name by itself, or NOWHERE. */
static long place_of(const char *word, struct hw_text name)
{
    size_t n = strlen(word);
    for (size_t i = 0; i + n <= name.n; i++) {
        bool apart = (i == 0 || !is_letter(name.at[i - 1])) &&
                     (i + n == name.n || !is_letter(name.at[i + n]));
        if (apart && column_folds_to(word, name.at + i, n)) {
            return (long)i;
        }
    }
    return NOWHERE;
}

/* True for the name of an input of any calculation: new_ph is no pH of the tank. */
static bool known_elsewhere(struct hw_text name)
{
    const struct hw_unit *unit = NULL;
    size_t input = 0;
    for (size_t i = 0; hw_calcs[i]; i++) {
        if (column_match(hw_calcs[i], name, &input, &unit)) {
            return true;
        }
    }
    return false;
}

/* A word of a name, without the points of 'T.A.N.'; false behind the last. */
static bool next_word(struct hw_text name, size_t *at, char word[WORD_MAX])
{
    size_t n = 0;
    for (; *at < name.n; ++*at) {
        char c = name.at[*at];
        bool part = is_letter(c) || (c >= '0' && c <= '9');
        if (!part && c != '.' && n > 0) {
            break;
        }
        if (part && n + 1 < WORD_MAX) {
            word[n++] = c;
        }
    }
    word[n] = '\0';
    return n > 0;
}

/* True for a word of the trade that stands for an input, for its plural, and for a long word with a
 * slip in it. */
static bool word_means(const char *word, const char *input)
{
    size_t n = strlen(word);
    struct suggestions near = {.word = word, .n = 0};
    bool plural =
        n > 1 && (word[n - 1] == 's' || word[n - 1] == 'S') && column_folds_to(input, word, n - 1);
    if (column_folds_to(input, word, n) || plural || topic_means(word, input)) {
        return true;
    }
    if (n >= LONG_WORD && strlen(input) >= LONG_WORD) {
        suggest_weigh(&near, input);
    }
    return near.n > 0;
}

static bool any_word_means(struct hw_text name, const char *input)
{
    char word[WORD_MAX];
    for (size_t at = 0; next_word(name, &at, word);) {
        if (word_means(word, input)) {
            return true;
        }
    }
    return false;
}

/* Words that join others, and name no input when they stand within a name. */
static bool joins(const char *input)
{
    return strcmp(input, "of") == 0 || strcmp(input, "into") == 0;
}

/* True where the unit at the end of a name, if any, is one of the input's; the end of the input's own
 * name is none. */
static bool unit_fits(struct hw_text name, const struct hw_input *input)
{
    size_t n = 0;
    const struct hw_unit *unit = column_unit(name, &n);
    long at = place_of(input->name, name);
    bool at_end = at >= 0 && (size_t)at + strlen(input->name) == name.n;
    return at_end || !unit || (!input->words && unit->kind == input->kind);
}

/* True for a column of results, which begins as one does. */
static bool tells_result(const struct hw_calc *calc, struct hw_text name)
{
    for (size_t i = 0; i < calc->n_results; i++) {
        size_t n = strlen(calc->results[i].name);
        if (name.n >= n && column_folds_to(calc->results[i].name, name.at, n)) {
            return true;
        }
    }
    return false;
}

/* The input, fed by no column, that a name begins with; else one that stands within it; else one
 * that a word of it means; else n_inputs. */
static size_t meant(const struct hw_calc *calc, const bool fed[], struct hw_text name)
{
    for (size_t i = 0; i < calc->n_inputs; i++) {
        if (place_of(calc->inputs[i].name, name) == 0 && !fed[i]) {
            return i;
        }
    }
    for (int by_words = 0; by_words <= 1 && !known_elsewhere(name); by_words++) {
        for (size_t i = 0; i < calc->n_inputs; i++) {
            const struct hw_input *input = &calc->inputs[i];
            bool like =
                by_words ? any_word_means(name, input->name) : place_of(input->name, name) > 0;
            if (like && !joins(input->name) && !fed[i] && unit_fits(name, input)) {
                return i;
            }
        }
    }
    return calc->n_inputs;
}

/* A column that may have been meant for an input, such as 'Water temp (F)', 'Copper now' or 'Salt
 * (ppt)', feeds nothing: that is said, because the keeper may think otherwise. */
bool column_judge(const struct args *args, const bool fed[], struct hw_text name)
{
    size_t input =
        tells_result(args->calc, name) ? args->calc->n_inputs : meant(args->calc, fed, name);
    return input == args->calc->n_inputs || judge_like(args, name, input);
}
