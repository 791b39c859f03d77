/* column_like.c - holds the name of a column against inputs that no column feeds. */
#include "cli/column_like.h"

#include "cli/column_name.h"
#include "cli/csv.h"
#include "cli/stream.h"
#include "cli/suggest.h"
#include "cli/topic.h"
#include "cli/wording.h"

#include <stdio.h>
#include <string.h>

enum { MAP_MAX = 2 * SHOWN_MAX + COLUMN_NAME_MAX, WORD_MAX = 40, NOWHERE = -1 };

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

static bool is_capital(char c)
{
    return c >= 'A' && c <= 'Z';
}

/* Where a word last stands in a name by itself, or NOWHERE. */
static long place_of(const char *word, struct hw_text name)
{
    size_t n = strlen(word);
    for (size_t i = name.n >= n ? name.n - n + 1 : 0; i-- > 0;) {
        bool apart = (i == 0 || !is_letter(name.at[i - 1])) &&
                     (i + n == name.n || !is_letter(name.at[i + n]));
        if (apart && column_folds_to(word, name.at + i, n)) {
            return (long)i;
        }
    }
    return NOWHERE;
}

/* The two ways to read words: T.A.N. is one, or meds.given and waterTemp are two. */
enum reading { IN_ONE, APART, READINGS };

/* A word of a name, from *at on; false behind the last. */
static bool next_word(struct hw_text name, enum reading reading, size_t *at, char word[WORD_MAX])
{
    size_t n = 0;
    for (; *at < name.n; ++*at) {
        char c = name.at[*at];
        bool part = is_letter(c) || (c >= '0' && c <= '9');
        bool capital = n > 0 && is_capital(c) && !is_capital(word[n - 1]);
        bool ends = reading == APART ? !part || capital : !part && c != '.';
        if (ends && n > 0) {
            break;
        }
        if (part && n + 1 < WORD_MAX) {
            word[n++] = c;
        }
    }
    word[n] = '\0';
    return n > 0;
}

/* True for an input's name, its plural, and a long word with a slip in it. */
static bool is_name(const char *word, const char *input)
{
    size_t n = strlen(word);
    bool plural = n > 1 && (word[n - 1] == 's' || word[n - 1] == 'S');
    return column_folds_to(input, word, n) || (plural && column_folds_to(input, word, n - 1)) ||
           suggest_slip(word, input);
}

/* Words that join others, and name no input when they stand within a name. */
static bool joins(const char *input)
{
    return strcmp(input, "of") == 0 || strcmp(input, "into") == 0;
}

/* True where the unit at the end of a name, if any, is one of the input's; the end of the input's
 * own name is none. */
static bool unit_fits(struct hw_text name, const struct hw_input *input)
{
    size_t n = 0;
    const struct hw_unit *unit = column_unit(name, &n);
    long at = place_of(input->name, name);
    bool at_end = at >= 0 && (size_t)at + strlen(input->name) == name.n;
    return at_end || !unit || (!input->words && unit->kind == input->kind);
}

/* An input that a name may mean: the better, the nearer its word stands to the end, as in 'Water
 * temp', and before all where the unit is one of its own. */
struct guess {
    size_t input, score;
};

static void weigh(const struct hw_calc *calc, const bool fed[], struct hw_text name, size_t input,
                  size_t end, struct guess *best)
{
    if (fed[input] || joins(calc->inputs[input].name)) {
        return;
    }
    size_t score = end + (unit_fits(name, &calc->inputs[input]) ? CSV_RECORD_MAX : 0);
    if (score > best->score) {
        *best = (struct guess){input, score};
    }
}

/* By the words of a name. */
static void weigh_words(const struct hw_calc *calc, const bool fed[], struct hw_text name,
                        enum reading reading, struct guess *best)
{
    char word[WORD_MAX];
    for (size_t at = 0; next_word(name, reading, &at, word);) {
        const struct hw_topic *topic = topic_like(word);
        for (size_t i = 0; i < calc->n_inputs; i++) {
            const char *input = calc->inputs[i].name;
            if (is_name(word, input) || topic_means(topic, input)) {
                weigh(calc, fed, name, i, at, best);
            }
        }
    }
}

/* True for a result as it is appended to rows. */
static bool is_appended(const struct hw_result *result, struct hw_text name)
{
    static const char *const parts[] = {"", "_low", "_high"};
    size_t n = strlen(result->name);
    if (name.n < n || !column_folds_to(result->name, name.at, n)) {
        return false;
    }
    for (size_t k = 0; k < sizeof parts / sizeof parts[0]; k++) {
        char full[COLUMN_NAME_MAX];
        column_name(result->name, parts[k], result->unit, full);
        if (column_folds_to(full, name.at, name.n)) {
            return true;
        }
    }
    return false;
}

/* True for a name that tells something else, of any calculation: an input, as new_ph is no pH of
 * the tank, or a result. */
static bool is_known(struct hw_text name)
{
    const struct hw_unit *unit = NULL;
    size_t input = 0;
    for (size_t c = 0; hw_calcs[c]; c++) {
        bool known = column_match(hw_calcs[c], name, &input, &unit);
        for (size_t i = 0; i < hw_calcs[c]->n_results && !known; i++) {
            known = is_appended(&hw_calcs[c]->results[i], name);
        }
        if (known) {
            return true;
        }
    }
    return false;
}

/* A known name means an input only as a word of the trade does. */
static void weigh_known(const struct hw_calc *calc, const bool fed[], struct hw_text name,
                        struct guess *best)
{
    char word[WORD_MAX];
    size_t at = 0;
    bool one = next_word(name, IN_ONE, &at, word) && at == name.n;
    const struct hw_topic *topic = one ? topic_like(word) : NULL;
    for (size_t i = 0; i < calc->n_inputs; i++) {
        if (topic_means(topic, calc->inputs[i].name)) {
            weigh(calc, fed, name, i, at, best);
        }
    }
}

/* The input, fed by no column, that a name may mean, or n_inputs. */
static size_t meant(const struct hw_calc *calc, const bool fed[], struct hw_text name)
{
    struct guess best = {calc->n_inputs, 0};
    if (is_known(name)) {
        weigh_known(calc, fed, name, &best);
        return best.input;
    }
    for (size_t i = 0; i < calc->n_inputs; i++) {
        long place = place_of(calc->inputs[i].name, name);
        if (place != NOWHERE) {
            weigh(calc, fed, name, i, (size_t)place + strlen(calc->inputs[i].name), &best);
        }
    }
    for (int reading = IN_ONE; reading < READINGS; reading++) {
        weigh_words(calc, fed, name, (enum reading)reading, &best);
    }
    return best.input;
}

/* A column that may have been meant for an input, such as 'Water temp (F)', 'Copper now' or 'Salt
 * (ppt)', feeds nothing: that is said, because the keeper may think otherwise. */
bool column_judge(const struct args *args, const bool fed[], struct hw_text name)
{
    size_t input = meant(args->calc, fed, name);
    return input == args->calc->n_inputs || judge_like(args, name, input);
}
