/* trend_ask.c - reads the options of `trend`. */
#include "cli/trend_ask.h"

#include "cli/args_words.h"
#include "cli/message.h"
#include "cli/stream.h"
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

static const char *const trend_formats[] = {"text", "csv", "json", "svg", NULL};

const struct general_option trend_options[] = {
    [ASK_ROWS] = {.name = "rows",
                  .value = "FILE",
                  .help = "a CSV file or a logbook, must be given; - for standard input",
                  .takes = TAKES_FILE},
    [ASK_TANK] = {.name = "tank",
                  .value = "NAME",
                  .help = "only rows whose cell tank has this name"},
    [ASK_OF] = {.name = "of",
                .value = "COLUMN",
                .help = "the readings; in a logbook CALCULATION.NAME"},
    [ASK_LIMIT] = {.name = "limit",
                   .value = "X",
                   .help = "a value: on what day does the line meet it?"},
    [ASK_FLOOR] = {.name = "floor",
                   .value = "X",
                   .help = "for how long were readings not below this value?"},
    [ASK_CEILING] = {.name = "ceiling", .value = "X", .help = "and not above this one?"},
    [ASK_GAP] = {.name = "gap",
                 .value = "TIME",
                 .help = "more without a reading breaks that run; else 1.5 d"},
    [ASK_LAST] = {.name = "last",
                  .value = "N",
                  .help = "readings that the line takes, the latest; else 14"},
    [ASK_WHEN] = {.name = "when",
                  .value = "TIME",
                  .help = "now, as 2031-03-05T08:15; else by the clock"},
    [ASK_FORMAT] = {.name = "format",
                    .value = "F",
                    .help = "text, csv, json or svg (a picture)",
                    .takes = TAKES_WORD,
                    .words = trend_formats},
    [ASK_DIGITS] = {.name = "digits", .value = "N", .help = "significant digits in csv and text"},
    [ASK_FULL] = {.name = "full", .help = "text: the notes in full, and the sources"},
    [ASK_MAP] = {.name = "map",
                 .value = "COLUMN=when",
                 .help = "times, DATE+TIME=when for two, or COLUMN=tank",
                 .repeats = true},
    [ASK_SEPARATOR] = {.name = "separator",
                       .value = "WORD",
                       .help = "of the file: comma, semicolon or tab",
                       .takes = TAKES_WORD,
                       .words = separator_words},
    [ASK_DECIMAL] = {.name = "decimal",
                     .value = "WORD",
                     .help = "of its numbers: point or comma",
                     .takes = TAKES_WORD,
                     .words = decimal_words},
    [ASK_TSV] = {.name = "tsv", .help = "the same as --separator tab"},
    [ASK_OPTIONS] = {.name = NULL},
};

/* What is being read: the words as they stand. */
struct asking {
    struct trend_ask *ask;
    struct hw_written written[TREND_INPUTS];
};

static bool read_format(struct hw_text text, enum format *format)
{
    static const enum format formats[] = {FORMAT_TEXT, FORMAT_CSV, FORMAT_JSON, FORMAT_SVG};
    int word = option_word("format", trend_formats, text);
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
    struct option_reader reader = {
        .command = &trend_caption, .options = trend_options, .argc = argc, .at = 2, .argv = argv};
    struct option_given given;
    *ask = (struct trend_ask){.format = FORMAT_TEXT};
    while (reader.at < argc) {
        if (!options_take(&reader, &given) || !read_option(given.option, given.value, &asking)) {
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
