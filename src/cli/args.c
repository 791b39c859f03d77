/* args.c - the options that every calculation takes. */
#include "cli/args.h"

#include <stddef.h>

const char *const format_words[] = {"text",  "csv", "tsv", "json", "jsonl",
                                    "value", "log", "svg", NULL};

const struct general_option general_options[] = {
    [OPTION_FORMAT] = {"format", "WORD",
                       "text, csv, tsv, json, jsonl, value (bare numbers), log (a logbook line) or"
                       " svg (the picture of a sweep); text if not given, csv for rows"},
    [OPTION_PAGE] = {"page", "WORD",
                     "size of a picture (svg): a4, to print, or phone; phone if not given"},
    [OPTION_ONLY] = {"only", "NAME,...", "only these results, in this order"},
    [OPTION_DIGITS] = {"digits", "N", "significant digits, 1 to 17, of every format but json"},
    [OPTION_FULL] = {"full", NULL, "all results, all that notes say, and sources"},
    [OPTION_WORK] = {"work", NULL, "the working too, step by step (text and json)"},
    [OPTION_TANK] = {"tank", "NAME",
                     "what is not given of the tank's water comes from this row of the"
                     " tanks file"},
    [OPTION_TANKS] = {"tanks", "FILE",
                      "the tanks file; if not given $HOLDWATER_TANKS, else"
                      " holdwater/tanks.csv in $XDG_CONFIG_HOME; with --rows and no"
                      " --tank each row has its own tank"},
    [OPTION_ROWS] = {"rows", "FILE", "answer every row of a CSV file, or of standard input for -"},
    [OPTION_SEPARATOR] = {"separator", "WORD", "of the rows: comma, semicolon or tab"},
    [OPTION_DECIMAL] = {"decimal", "WORD", "of numbers in the rows: point or comma"},
    [OPTION_TSV] = {"tsv", NULL, "the same as --separator tab"},
    [OPTION_MAP] = {"map", "COLUMN=INPUT", "this column feeds this input; may be repeated"},
    [OPTION_PREFIX] = {"prefix", "WORD", "before the names of added columns"},
    [OPTION_ON_BAD] = {"on-bad", "WORD", "rows without an answer: keep, stop or drop; else keep"},
    [OPTION_WHEN] = {"when", "TIME", "time of a log line, 2031-03-05T08:15+00:00; else now"},
    [OPTION_LOG] = {"log", "FILE", "add a log line to this logbook as well"},
    [OPTION_NOTE] = {"note", "TEXT", "a remark in the log line"},
    [OPTION_SOLVE] = {"solve", "INPUT", "look for this input, so that --for is met"},
    [OPTION_FOR] = {"for", "RESULT=VALUE", "what --solve is to reach"},
    [OPTION_SPREAD] = {"spread", NULL, "rows take values such as 8.1+-0.1"},
    [OPTION_HELP] = {"help", NULL, "this page"},
    [GENERAL_OPTIONS] = {NULL, NULL, NULL},
};

size_t args_general(const char *name, size_t n)
{
    size_t i = 0;
    while (i < GENERAL_OPTIONS && !hw_name_is(general_options[i].name, name, n)) {
        i++;
    }
    return i;
}

bool args_tell(const struct args *args, size_t result)
{
    bool all = args->full || args->n_only > 0;
    return args->only[result] && (all || !args->calc->results[result].detail);
}
