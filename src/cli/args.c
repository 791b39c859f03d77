/* args.c - the options that every calculation takes. */
#include "cli/args.h"

#include <stddef.h>

const char *const format_words[] = {"text",  "csv", "tsv", "json", "jsonl",
                                    "value", "log", "svg", NULL};
const char *const page_words[] = {"phone", "a4", NULL};
const char *const on_bad_words[] = {"keep", "stop", "drop", NULL};

const struct general_option general_options[] = {
    [OPTION_FORMAT] =
        {.name = "format",
         .value = "WORD",
         .help = "text, csv, tsv, json, jsonl, value (bare numbers), log (a logbook line) or"
                 " svg (the picture of a sweep); text if not given, csv for rows",
         .takes = TAKES_WORD,
         .words = format_words},
    [OPTION_PAGE] = {.name = "page",
                     .value = "WORD",
                     .help = "size of a picture (svg): a4, to print, or phone; phone if not given",
                     .takes = TAKES_WORD,
                     .words = page_words},
    [OPTION_ONLY] = {.name = "only",
                     .value = "NAME,...",
                     .help = "only these results, in this order",
                     .takes = TAKES_RESULTS},
    [OPTION_DIGITS] = {.name = "digits",
                       .value = "N",
                       .help = "significant digits, 1 to 17, of every format but json"},
    [OPTION_FULL] = {.name = "full", .help = "all results, all that notes say, and sources"},
    [OPTION_WORK] = {.name = "work", .help = "the working too, step by step (text and json)"},
    [OPTION_TANK] = {.name = "tank",
                     .value = "NAME",
                     .help = "what is not given of the tank's water comes from this row of the"
                             " tanks file"},
    [OPTION_TANKS] = {.name = "tanks",
                      .value = "FILE",
                      .help = "the tanks file; if not given $HOLDWATER_TANKS, else"
                              " holdwater/tanks.csv in $XDG_CONFIG_HOME; with --rows and no"
                              " --tank each row has its own tank",
                      .takes = TAKES_FILE},
    [OPTION_ROWS] = {.name = "rows",
                     .value = "FILE",
                     .help = "answer every row of a CSV file, or of standard input for -",
                     .takes = TAKES_FILE},
    [OPTION_SEPARATOR] = {.name = "separator",
                          .value = "WORD",
                          .help = "of the rows: comma, semicolon or tab",
                          .takes = TAKES_WORD,
                          .words = separator_words},
    [OPTION_DECIMAL] = {.name = "decimal",
                        .value = "WORD",
                        .help = "of numbers in the rows: point or comma",
                        .takes = TAKES_WORD,
                        .words = decimal_words},
    [OPTION_TSV] = {.name = "tsv", .help = "the same as --separator tab"},
    [OPTION_MAP] = {.name = "map",
                    .value = "COLUMN=INPUT",
                    .help = "COLUMN feeds INPUT, or is own; may be repeated",
                    .repeats = true},
    [OPTION_PREFIX] = {.name = "prefix",
                       .value = "WORD",
                       .help = "before the names of added columns"},
    [OPTION_ON_BAD] = {.name = "on-bad",
                       .value = "WORD",
                       .help = "rows without an answer: keep, stop or drop; else keep",
                       .takes = TAKES_WORD,
                       .words = on_bad_words},
    [OPTION_WHEN] = {.name = "when",
                     .value = "TIME",
                     .help = "time of a log line, 2031-03-05T08:15+00:00; else now"},
    [OPTION_LOG] = {.name = "log",
                    .value = "FILE",
                    .help = "add a log line to this logbook as well",
                    .takes = TAKES_FILE},
    [OPTION_NOTE] = {.name = "note", .value = "TEXT", .help = "a remark in the log line"},
    [OPTION_SOLVE] = {.name = "solve",
                      .value = "INPUT",
                      .help = "look for this input, so that --for is met",
                      .takes = TAKES_INPUT},
    [OPTION_FOR] = {.name = "for",
                    .value = "RESULT=VALUE",
                    .help = "what --solve is to reach",
                    .takes = TAKES_TARGET},
    [OPTION_SPREAD] = {.name = "spread", .help = "rows take values such as 8.1+-0.1"},
    [OPTION_HELP] = {.name = "help", .help = "this page"},
    [GENERAL_OPTIONS] = {.name = NULL},
};

bool args_tell(const struct args *args, size_t result)
{
    bool detail = args->calc->results[result].detail && !args->full && args->n_only == 0;
    return args->only[result] && !detail;
}
