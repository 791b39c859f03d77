/* help_files.c - the files of a keeper. The commands about the logbook are those of
 * docs/logbook.md, which the tests run. */
#include "cli/help_files.h"

#include "cli/print.h"

#include <stdio.h>
#include <string.h>

static const struct recipe {
    const char *what, *command;
} recipes[] = {
    {"a line beside the answer, with a remark; a new file gets its header",
     "holdwater ammonia ... --tank birch --log log.csv --note 'gasping'"},
    {"lines from a sheet of readings, each of its own tank and time",
     "holdwater ammonia --rows day.csv --tanks tanks.csv --format log >>log.csv"},
    {"one tank", "awk -F, 'NR == 1 || $2 == \"birch\"' log.csv"},
    {"the same as a table (miller)", "mlr --icsv --opprint filter '$tank == \"birch\"' log.csv"},
    {"what was withheld (sqlite3)",
     "sqlite3 -csv :memory: '.import --csv log.csv log' \\\n"
     "      \"select \\\"when\\\", cautions from log where results = 'status=withheld'\""},
};

void help_log(void)
{
    (void)puts("a logbook: a CSV file beside the tank, one line for each answer");
    print_wrapped("columns: when, tank, calculation, inputs, results, cautions, note. Inputs and"
                  " results are entries name=value unit, joined by a semicolon; a plus joins the"
                  " words of a set. A dose withheld is status=withheld.",
                  0, 2);
    print_wrapped(
        "when: --when TIME, else the clock. Rows need a time each: a column when, --map"
        " COLUMN=when, or --map DATE+TIME=when for two. --map COLUMN=tank names the tanks.",
        0, 2);
    for (size_t i = 0; i < sizeof recipes / sizeof recipes[0]; i++) {
        (void)printf("%s\n    %s\n", recipes[i].what, recipes[i].command);
    }
    print_wrapped("a spreadsheet opens it as CSV: commas between cells, decimal points. Save what"
                  " it makes under another name.",
                  0, 2);
    print_wrapped("more: docs/logbook.md. The line on its own, without a header: --format log.", 0,
                  2);
}

void help_tanks(void)
{
    (void)puts("a tanks file: a CSV file that has the water of each tank once and for all\n"
               "    tank,volume,temp,salinity,alkalinity,altitude\n"
               "    alder,75L,25.5,33,2.4meq/L,40m\n"
               "    birch,110L,25.5,33,2.4meq/L,40m");
    print_wrapped("columns: tank, and of the others what you have, with the unit in the cell or in"
                  " the name, as temp_F. Other columns may stand beside them. At most 1 MiB.",
                  0, 2);
    print_wrapped("taken from it: what describes the tank's water and was not typed. Never a"
                  " reading, a level, a medicine or what lives there, and never the water of a"
                  " bath, a bucket or a change: those are out of date before the file is.",
                  0, 2);
    print_wrapped("one tank: --tank birch --tanks tanks.csv. Without --tanks it is looked for in"
                  " $HOLDWATER_TANKS, then holdwater/tanks.csv in $XDG_CONFIG_HOME or ~/.config.",
                  0, 2);
    print_wrapped("rows of several: --rows day.csv --tanks tanks.csv, and no --tank: each row has"
                  " the water of the tank in its own column tank.",
                  0, 2);
}
