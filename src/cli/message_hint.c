/* message_hint.c - a share without its sign, Fahrenheit, gallons, drops, a reading below the first
 * step of a kit. */
#include "cli/message_hint.h"

#include "cli/print.h"
#include "cli/stream.h"
#include "cli/suggest.h"
#include "cli/wording.h"
#include "engine/decimal.h"

#include <string.h>

/* True when the text is a number and nothing else. */
static bool bare(struct hw_text text, double *x)
{
    text = hw_text_trimmed(text);
    return text.n > 0 && hw_decimal_read(text.at, text.n, x) == text.n;
}

/* A share without its sign. A number up to 1 may have been meant as a fraction. */
static void message_share(const char *head, struct hw_text text)
{
    double x = 0;
    if (!bare(text, &x)) {
        complain("%s has no %%: write the sign, as in 25%%, 25%%+-5%% or 10:50:20%%", head);
        return;
    }
    char as_written[NUMBER_MAX];
    char as_fraction[NUMBER_MAX];
    number_digits(as_written, x, 12);
    number_digits(as_fraction, x * 100, 12);
    bool perhaps_fraction = x > 0 && x <= 1;
    complain("%s has no %%: write %s%s%s%%", head, perhaps_fraction ? as_fraction : "",
             perhaps_fraction ? "% or " : "", as_written);
}

static bool has(struct hw_text text, const char *word)
{
    size_t n = strlen(word);
    for (size_t i = 0; i + n <= text.n; i++) {
        if (hw_name_is(word, text.at + i, n)) {
            return true;
        }
    }
    return false;
}

/* A unit with two sizes. */
static bool message_two_units(const char *head, struct hw_text text)
{
    if (has(text, "gallon")) {
        complain("%s may be of two sizes: write gal (US) or impgal", head);
        return true;
    }
    if (text.n > 1 && memcmp(text.at + text.n - 2, "\xC2\xB0", 2) == 0) {
        complain("%s may be of two scales: write C or F", head);
        return true;
    }
    return false;
}

/* A bare temperature that only makes sense in Fahrenheit. */
static bool message_fahrenheit(const struct hw_input *input, const char *head, struct hw_text text)
{
    double x = 0;
    if (input->kind != HW_TEMPERATURE || !bare(text, &x)) {
        return false;
    }
    double celsius = hw_unit_convert(x, hw_unit_of(HW_TEMPERATURE, "F"),
                                     hw_unit_of(HW_TEMPERATURE, input->unit));
    if (!(celsius >= input->lo && celsius <= input->hi)) {
        return false;
    }
    char number[NUMBER_MAX];
    number_digits(number, x, 12);
    complain("%s is out of range; did you mean %sF?", head, number);
    return true;
}

static bool message_house_measure(const struct hw_input *input, const char *head,
                                  struct hw_text text)
{
    bool powder = input->kind == HW_MASS || input->kind == HW_MASS_PER_DAY;
    if (has(text, "drop")) {
        complain("%s: drops differ in size: count them into a syringe and read mL", head);
    } else if (powder) {
        complain("%s: a spoon of powder holds what it will: weigh the powder", head);
    } else {
        complain("%s is a house measure: measure with a syringe or a jug and read mL", head);
    }
    return true;
}

/* A reading that is told as a bound or as a guess. */
static void message_bound(const char *head, struct hw_text text)
{
    double x = 0;
    char sign = text.at[0];
    char number[NUMBER_MAX];
    struct hw_text rest = {text.at + 1, text.n - 1};
    if (!bare(rest, &x)) {
        complain("%s: write a number, and its doubt after it, as in 0.6+-0.1", head);
        return;
    }
    number_digits(number, sign == '<' ? x / 2 : x, 12);
    if (sign == '<') {
        complain("%s: of a reading below the kit's first step write half of the step, and as much "
                 "doubt: %s+-%s",
                 head, number, number);
    } else if (sign == '>') {
        complain("%s: the kit reads no further: dilute the sample with pure water, test again and "
                 "multiply",
                 head);
    } else {
        complain("%s: write the number, and its doubt after it, as in %s+-10%%", head, number);
    }
}

/* A reading that is one already, of another instrument. */
static bool message_gravity(const struct hw_input *input, const char *head)
{
    bool reading = strcmp(input->name, "reading") == 0;
    if (reading) {
        complain("%s looks like a specific gravity: for a hydrometer write --of sg and --reference",
                 head);
    }
    return reading;
}

/* The first word of a set that is none of its words; of a choice all of it. */
static struct hw_text unknown_part(const struct hw_input *input, struct hw_text text)
{
    while (input->kind == HW_SET && memchr(text.at, ',', text.n)) {
        size_t n = (size_t)((const char *)memchr(text.at, ',', text.n) - text.at);
        struct hw_text part = hw_text_trimmed((struct hw_text){text.at, n});
        bool known = false;
        for (size_t i = 0; input->words[i]; i++) {
            known = known || hw_name_is(input->words[i], part.at, part.n);
        }
        if (!known) {
            return part;
        }
        text = (struct hw_text){text.at + n + 1, text.n - n - 1};
    }
    return hw_text_trimmed(text);
}

/* Of two words in one nothing is suggested, as the one would leave out the other. */
void message_unknown_word(const struct hw_input *input, struct hw_text text)
{
    char shown[SHOWN_MAX];
    char suggestion[SUGGEST_TEXT];
    char option[OPTION_MAX];
    show_text(unknown_part(input, text), shown);
    struct suggestions near = {.word = shown, .n = 0};
    bool several = input->kind == HW_SET && strpbrk(shown, " +/;&");
    for (size_t i = 0; input->words[i] && !several; i++) {
        suggest_weigh(&near, input->words[i]);
    }
    suggest_text(&near, "", suggestion);
    option_name(input->name, option);
    complain("--%s '%s' is none of its words%s", option, shown, suggestion);
}

bool message_hint(const struct hw_input *input, const char *head, struct hw_text text,
                  const struct hw_unit *column, enum hw_problem problem)
{
    text = hw_text_trimmed(text);
    switch (problem) {
    case HW_PROBLEM_NEEDS_UNIT:
        if (input->kind == HW_SHARE) {
            message_share(head, text);
        }
        return input->kind == HW_SHARE;
    case HW_PROBLEM_UNKNOWN_UNIT:
        return message_two_units(head, text);
    case HW_PROBLEM_OUT_OF_RANGE:
        return !column && message_fahrenheit(input, head, text);
    case HW_PROBLEM_GRAVITY:
        return message_gravity(input, head);
    case HW_PROBLEM_HOUSE_MEASURE:
        return message_house_measure(input, head, text);
    case HW_PROBLEM_BOUND:
        message_bound(head, text);
        return true;
    default:
        return false;
    }
}
