/* trend_ask.c - reads the options of `trend`. */
#include "cli/trend_ask.h"

#include "cli/args_words.h"
#include "cli/message.h"
#include "cli/stream.h"
#include "cli/suggest.h"
#include "cli/wording.h"
#include "holdwater/trend.h"
#include "tables.h"

#include <string.h>

const char *const trend_level_names[TREND_LEVELS] = {"limit", "floor", "ceiling"};

static const char *const trend_sources[] = {"theil-sen", "our-arithmetic", "label-and-law", NULL};

/* clang-format off */
static const struct hw_input inputs[TREND_INPUTS] = {
    [TREND_GAP] = {.name = "gap", .unit = "d", .kind = HW_TIME, .lo = 0.01, .hi = 366,
     .need = HW_PRESET, .preset = 1.5, .help = "longest time between two readings of a run"},
    [TREND_LAST] = {.name = "last", .unit = "", .kind = HW_COUNT, .lo = 2,
     .hi = HW_TREND_READINGS_MAX, .need = HW_PRESET, .preset = 14,
     .help = "readings, the latest, that the line is laid through"},
};

const struct hw_calc trend_caption = {
    .name = "trend", .purpose = "is a reading creeping, and was a level held?",
    .inputs = inputs, .n_inputs = TREND_INPUTS,
    .notes = hw_trend_notes, .n_notes = HW_TREND_NOTES, .sources = trend_sources,
};
/* clang-format on */

enum {
    ASK_ROWS,
    ASK_TANK,
    ASK_OF,
    ASK_LIMIT,
    ASK_FLOOR,
    ASK_CEILING,
    ASK_GAP,
    ASK_LAST,
    ASK_WHEN,
    ASK_FORMAT,
    ASK_DIGITS,
    ASK_FULL,
    ASK_MAP,
    ASK_SEPARATOR,
    ASK_DECIMAL,
    ASK_TSV,
    ASK_OPTIONS
};

const struct general_option trend_options[] = {
    [ASK_ROWS] = {"rows", "FILE", "a CSV file or a logbook, must be given; - for standard input"},
    [ASK_TANK] = {"tank", "NAME", "only rows whose cell tank has this name"},
    [ASK_OF] = {"of", "COLUMN", "the readings; in a logbook CALCULATION.NAME"},
    [ASK_LIMIT] = {"limit", "X", "a value: on what day does the line meet it?"},
    [ASK_FLOOR] = {"floor", "X", "for how long were readings not below this value?"},
    [ASK_CEILING] = {"ceiling", "X", "and not above this one?"},
    [ASK_GAP] = {"gap", "TIME", "more without a reading breaks that run; else 1.5 d"},
    [ASK_LAST] = {"last", "N", "readings that the line takes, the latest; else 14"},
    [ASK_WHEN] = {"when", "TIME", "now, as 2031-03-05T08:15; else by the clock"},
    [ASK_FORMAT] = {"format", "F", "text, csv, json or svg (a picture)"},
    [ASK_DIGITS] = {"digits", "N", "significant digits in csv and text"},
    [ASK_FULL] = {"full", NULL, "text: the notes in full, and the sources"},
    [ASK_MAP] = {"map", "COLUMN=when", "times, DATE+TIME=when for two, or COLUMN=tank"},
    [ASK_SEPARATOR] = {"separator", "WORD", "of the file: comma, semicolon or tab"},
    [ASK_DECIMAL] = {"decimal", "WORD", "of its numbers: point or comma"},
    [ASK_TSV] = {"tsv", NULL, "the same as --separator tab"},
    [ASK_OPTIONS] = {NULL, NULL, NULL},
};

/* What is being read: the words as they stand. */
struct asking {
    struct trend_ask *ask;
    struct hw_written written[TREND_INPUTS];
    bool seen[ASK_OPTIONS];
};

static bool read_format(struct hw_text text, enum format *format)
{
    static const char *const words[] = {"text", "csv", "json", "svg", NULL};
    static const enum format formats[] = {FORMAT_TEXT, FORMAT_CSV, FORMAT_JSON, FORMAT_SVG};
    int word = option_word("format", words, text);
    *format = word < 0 ? FORMAT_TEXT : formats[word];
    return word >= 0;
}

static bool read_map(struct hw_text text, struct trend_ask *ask)
{
    static const size_t n = 5; /* of either ending */
    const char *ending = text.n > n ? text.at + text.n - n : "";
    const struct hw_text column = {text.at, text.n > n ? text.n - n : 0};
    if (strcmp(ending, "=tank") == 0) {
        return option_tank_map(text, column, &ask->tank_column);
    }
    if (strcmp(ending, "=when") != 0) {
        return option_wrong("map", text,
                            "COLUMN=when, DATE+TIME=when or COLUMN=tank; readings are --of COLUMN");
    }
    return option_when_map(text, column, &ask->when_column, &ask->time_column);
}

/* A number, perhaps with a unit: which unit it must be is known when the readings are. */
static bool read_level(size_t level, struct hw_text text, struct trend_ask *ask)
{
    struct reading reading;
    ask->level[level] = text;
    return reading_read(text, HW_NUMBER, &reading) == READING_NUMBER ||
           option_wrong(trend_level_names[level], text, "a number, or one with a unit as 0.5mg/L");
}

static bool read_option(size_t option, const char *word, struct asking *asking)
{
    struct hw_text text = {word, strlen(word)};
    struct trend_ask *ask = asking->ask;
    switch (option) {
    case ASK_ROWS:
        ask->rows = word;
        return true;
    case ASK_TANK:
        ask->tank = word;
        return true;
    case ASK_OF:
        ask->of = word;
        return true;
    case ASK_LIMIT:
    case ASK_FLOOR:
    case ASK_CEILING:
        return read_level(option - ASK_LIMIT, text, ask);
    case ASK_GAP:
    case ASK_LAST:
        asking->written[option - ASK_GAP] = (struct hw_written){text, NULL, HW_GIVEN};
        return true;
    case ASK_WHEN:
        ask->when = word;
        return option_when(word);
    case ASK_FORMAT:
        return read_format(text, &ask->format);
    case ASK_DIGITS:
        return option_digits(text, &ask->digits);
    case ASK_MAP:
        return read_map(text, ask);
    case ASK_SEPARATOR:
        return option_separator(text, &ask->separator);
    case ASK_DECIMAL:
        return option_decimal(text, &ask->decimal_comma);
    case ASK_TSV:
        return option_separator((struct hw_text){"tab", 3}, &ask->separator);
    default:
        ask->full = true;
        return true;
    }
}

static bool unknown_option(const char *name, size_t n)
{
    char shown[SHOWN_MAX];
    char suggestion[SUGGEST_TEXT];
    show_text((struct hw_text){name, n}, shown);
    struct suggestions near = {.word = shown, .n = 0};
    for (size_t i = 0; i < ASK_OPTIONS; i++) {
        suggest_weigh(&near, trend_options[i].name);
    }
    suggest_text(&near, "--", suggestion);
    complain("trend has no option --%s%s", shown, suggestion);
    message_try_help(&trend_caption);
    return false;
}

/* argv[*i] and, where it stands there, its value behind it. */
static bool take_option(int argc, char *argv[], int *i, struct asking *asking)
{
    const char *word = argv[*i];
    char shown[SHOWN_MAX];
    show_text((struct hw_text){word, strlen(word)}, shown);
    if (strncmp(word, "--", 2) != 0 || word[2] == '\0') {
        complain("'%s' is not an option: write --rows FILE and what else is asked", shown);
        message_try_help(&trend_caption);
        return false;
    }
    size_t n = strcspn(word + 2, "=");
    bool joined = word[2 + n] == '=';
    size_t option = 0;
    while (option < ASK_OPTIONS && !hw_name_is(trend_options[option].name, word + 2, n)) {
        option++;
    }
    if (option == ASK_OPTIONS) {
        return unknown_option(word + 2, n);
    }
    const struct general_option *known = &trend_options[option];
    if (asking->seen[option] && option != ASK_MAP) {
        complain("--%s is given twice: give it once", known->name);
        return false;
    }
    asking->seen[option] = true;
    if (joined != (known->value != NULL) && (joined || *i + 1 == argc)) {
        complain(joined ? "--%s takes no value" : "--%s needs a value after it", known->name);
        return false;
    }
    const char *value = joined ? word + 2 + n + 1 : known->value ? argv[++*i] : "";
    return read_option(option, value, asking);
}

/* Options that mean nothing together, or nothing yet. */
static const char *nonsense(const struct trend_ask *ask)
{
    bool levels = false;
    for (size_t i = 0; i < TREND_LEVELS; i++) {
        levels = levels || ask->level[i].at;
    }
    if (!ask->rows) {
        return "trend reads a file: give it with --rows FILE, as in --rows readings.csv";
    }
    if (!ask->of && levels) {
        return "--limit, --floor and --ceiling are held against one column: name it with --of "
               "COLUMN";
    }
    if (!ask->of && ask->format == FORMAT_SVG) {
        return "--format svg draws one column: name it with --of COLUMN";
    }
    if (ask->digits > 0 && (ask->format == FORMAT_JSON || ask->format == FORMAT_SVG)) {
        return "--digits has a place in text and csv alone";
    }
    return NULL;
}

/* --gap and --last, as calculations read their inputs. */
static bool settle(struct asking *asking)
{
    size_t which = 0;
    struct hw_question *settled = &asking->ask->settled;
    enum hw_problem problem = hw_question_settle(&trend_caption, asking->written, settled, &which);
    if (problem == HW_FINE && (settled->n_axes > 0 || hw_question_uncertain(settled))) {
        complain("--gap and --last take one number each");
        return false;
    }
    if (problem != HW_FINE) {
        message_problem(&trend_caption, asking->written, settled, problem, which);
    }
    return problem == HW_FINE;
}

bool trend_ask_read(int argc, char *argv[], struct trend_ask *ask)
{
    struct asking asking = {.ask = ask};
    *ask = (struct trend_ask){.format = FORMAT_TEXT};
    for (int i = 2; i < argc; i++) {
        if (!take_option(argc, argv, &i, &asking)) {
            return false;
        }
    }
    const char *message = nonsense(ask);
    if (message) {
        complain("%s", message);
        return false;
    }
    return settle(&asking);
}
