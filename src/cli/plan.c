/* plan.c - reads a plan, strictly: a day that was misread is a day too late. */
#include "cli/plan.h"

#include "cli/column_name.h"
#include "cli/csv.h"
#include "cli/stream.h"
#include "cli/suggest.h"
#include "cli/utf8.h"
#include "cli/wording.h"

#include <stdio.h>
#include <string.h>

enum column { DAY, ACT, EVERY, UNTIL, CLASS, SOURCE, COLUMNS };
enum { CELLS_MAX = 32, ROOM = 512 };

static const char *const column_words[] = {"day", "act", "every", "until", "class", "source"};

const char *const plan_classes[] = {"practice", "survey", "paper",    "society", "law", "vet",
                                    "label",    "own",    "recalled", "ours",    NULL};

/* A file on its way through. */
struct reader {
    const char *name;
    const char *text;
    size_t n;
    size_t line, next_line; /* of the record at hand, and of what follows it */
    char separator;
    enum column of_cell[CELLS_MAX]; /* COLUMNS: a column without a name */
    size_t cells;
};

/* The cells of one record, without quotes and the blanks around them. */
struct row {
    struct hw_text cell[COLUMNS];
    char room[COLUMNS][ROOM];
};

/* --- Records ---------------------------------------------------------------------------------- */

static bool wrong(const struct reader *reader, const char *what)
{
    complain("%s line %zu: %s", reader->name, reader->line, what);
    return false;
}

/* The message for a cell: what stands there, and " is wrong" or ": write this". */
static bool wrong_cell(const struct reader *reader, const char *column, struct hw_text text,
                       const char *allowed)
{
    char shown[SHOWN_MAX];
    show_text(text, shown);
    complain("%s line %zu: %s '%s'%s", reader->name, reader->line, column, shown, allowed);
    return false;
}

/* A comment, or a line without anything in it. A spreadsheet puts quotes around a comment, and
 * separators behind the end of a line. */
static bool says_nothing(const struct csv_record *record)
{
    size_t quote = record->n > 0 && record->at[0] == '"' ? 1 : 0;
    bool comment = record->n > quote && record->at[quote] == '#';
    size_t i = 0;
    while (i < record->n && strchr(" \t,;", record->at[i]) && record->at[i] != '\0') {
        i++;
    }
    return comment || i == record->n;
}

/* The next record that says something. False at the end, or with a message and *fine false. */
static bool next_record(struct reader *reader, struct csv_record *record, bool *fine)
{
    while (reader->n > 0) {
        size_t used = 0;
        reader->line = reader->next_line;
        if (csv_find_record(reader->text, reader->n, reader->separator, true, record, &used) !=
            CSV_RECORD) {
            *fine = wrong(reader, "a quote is opened and never closed");
            return false;
        }
        for (size_t i = 0; i < used; i++) {
            reader->next_line += reader->text[i] == '\n' ? 1 : 0;
        }
        reader->text += used;
        reader->n -= used;
        if (!says_nothing(record)) {
            return true;
        }
    }
    return false;
}

/* A cell as text in room: false when it is too long or its quotes are broken. */
static bool take_cell(const struct reader *reader, const struct csv_cell *cell, char room[ROOM],
                      struct hw_text *text)
{
    if (cell->broken) {
        return wrong(reader, "quotes that do not end where their cell does");
    }
    if (cell->text.n >= ROOM) {
        return wrong_cell(reader, "the cell", cell->text, " is too long for a plan");
    }
    *text = hw_text_trimmed((struct hw_text){room, csv_unquote(cell, room)});
    return true;
}

/* --- The header ------------------------------------------------------------------------------- */

/* What parts the cells, by the first line that says something: this must be known before its
 * record is looked for, as quotes mean nothing beside tabs. */
static char separator_of(const char *text, size_t n)
{
    while (n > 0) {
        const char *feed = memchr(text, '\n', n);
        struct csv_record line = {text, feed ? (size_t)(feed - text) : n, false};
        size_t end = line.n > 0 && text[line.n - 1] == '\r' ? line.n - 1 : line.n;
        struct csv_record bare = {text, end, false};
        if (!says_nothing(&bare)) {
            return memchr(text, '\t', end) ? '\t' : memchr(text, ';', end) ? ';' : ',';
        }
        text += line.n + (feed ? 1 : 0);
        n -= line.n + (feed ? 1 : 0);
    }
    return '\t';
}

static bool name_column(struct reader *reader, struct hw_text name)
{
    enum column column = DAY;
    while (column < COLUMNS && !column_folds_to(column_words[column], name.at, name.n)) {
        column++;
    }
    if (column == COLUMNS && name.n > 0) {
        return wrong_cell(reader, "column", name,
                          ": a plan has day, act, every, until, class, source");
    }
    for (size_t i = 0; column < COLUMNS && i < reader->cells; i++) {
        if (reader->of_cell[i] == column) {
            return wrong_cell(reader, "column", name, " is there twice");
        }
    }
    reader->of_cell[reader->cells++] = column;
    return true;
}

static bool read_header(struct reader *reader, const struct csv_record *record)
{
    struct csv_cell cell;
    struct hw_text name;
    char room[ROOM];
    size_t at = 0;
    bool has[COLUMNS + 1] = {false};
    while (csv_next_cell(record, reader->separator, &at, &cell)) {
        if (reader->cells == CELLS_MAX) {
            return wrong(reader, "too many columns for a plan");
        }
        if (!take_cell(reader, &cell, room, &name) || !name_column(reader, name)) {
            return false;
        }
        has[reader->of_cell[reader->cells - 1]] = true;
    }
    return (has[DAY] && has[ACT]) ||
           wrong(reader, "the first line names the columns, day and act at least");
}

/* --- Acts ------------------------------------------------------------------------------------- */

/* A whole number of days; false when it is none, or out of range. */
static bool whole_days(struct hw_text text, int lo, int *days)
{
    bool below = text.n > 0 && text.at[0] == '-';
    size_t i = below || (text.n > 0 && text.at[0] == '+') ? 1 : 0;
    int value = 0;
    if (i == text.n) {
        return false;
    }
    for (; i < text.n; i++) {
        if (text.at[i] < '0' || text.at[i] > '9' || value > PLAN_DAYS) {
            return false;
        }
        value = value * 10 + (text.at[i] - '0');
    }
    *days = below ? -value : value;
    return *days >= lo && *days <= PLAN_DAYS;
}

static bool says(struct hw_text text)
{
    return text.n > 0 && !(text.n == 1 && text.at[0] == '-');
}

/* Copies what a line of a calendar can hold: UTF-8 without control characters. */
static bool read_line(const struct reader *reader, enum column column, struct hw_text text,
                      char to[ACT_MAX + 1])
{
    if (text.n > ACT_MAX) {
        return wrong_cell(reader, column_words[column], text, " is over 120 bytes: be short");
    }
    for (size_t i = 0, length = 0; i < text.n; i += length) {
        unsigned char c = (unsigned char)text.at[i];
        length = utf8_length((struct hw_text){text.at + i, text.n - i});
        if (length == 0) {
            return wrong_cell(reader, column_words[column], text,
                              " is not UTF-8: save the plan as UTF-8");
        }
        bool control = c < ' ' || c == 127 ||
                       (length == 2 && c == 0xC2 && (unsigned char)text.at[i + 1] < 0xA0);
        if (control) {
            return wrong_cell(reader, column_words[column], text,
                              " holds a line break or another control character");
        }
    }
    memcpy(to, text.at, text.n);
    to[text.n] = '\0';
    return true;
}

static bool read_days(const struct reader *reader, const struct row *row, struct act *act)
{
    struct hw_text every = row->cell[EVERY];
    struct hw_text until = row->cell[UNTIL];
    if (!whole_days(row->cell[DAY], -PLAN_DAYS, &act->day)) {
        return wrong_cell(reader, "day", row->cell[DAY],
                          ": write a whole number from -3650 to 3650, 0 for the day of arrival");
    }
    act->until = act->day;
    if (says(every) && !whole_days(every, 1, &act->every)) {
        return wrong_cell(reader, "every", every,
                          ": write a whole number of days from 1 to 3650, or - for once");
    }
    if (says(until) && !whole_days(until, -PLAN_DAYS, &act->until)) {
        return wrong_cell(reader, "until", until,
                          ": write the last day, a whole number from -3650 to 3650, or -");
    }
    if (says(every) != says(until)) {
        return wrong(reader, says(every) ? "every without until: write the last day, too"
                                         : "until without every: write 1 for every day");
    }
    return act->until >= act->day ||
           wrong_cell(reader, "until", until, " is before the day the act begins on");
}

/* Without one the act is the keeper's own. */
static bool read_class(const struct reader *reader, struct hw_text text, struct act *act)
{
    char shown[SHOWN_MAX];
    char suggestion[SUGGEST_TEXT];
    act->class_name = "own";
    if (!says(text)) {
        return true;
    }
    show_text(text, shown);
    struct suggestions near = {.word = shown, .n = 0};
    for (size_t i = 0; plan_classes[i]; i++) {
        if (column_folds_to(plan_classes[i], text.at, text.n)) {
            act->class_name = plan_classes[i];
            return true;
        }
        suggest_weigh(&near, plan_classes[i]);
    }
    suggest_text(&near, "", suggestion);
    complain("%s line %zu: '%s' is no class of an act%s", reader->name, reader->line, shown,
             suggestion);
    complain("classes: practice, survey, paper, society, law, vet, label, own, recalled, ours");
    return false;
}

static bool read_act(const struct reader *reader, const struct row *row, struct act *act)
{
    *act = (struct act){.line = reader->line};
    if (!says(row->cell[ACT])) {
        return wrong(reader, "the act is empty: write what is done");
    }
    return read_days(reader, row, act) && read_line(reader, ACT, row->cell[ACT], act->what) &&
           read_class(reader, row->cell[CLASS], act) &&
           read_line(reader, SOURCE,
                     says(row->cell[SOURCE]) ? row->cell[SOURCE] : (struct hw_text){"", 0},
                     act->source);
}

static bool read_row(const struct reader *reader, const struct csv_record *record, struct row *row)
{
    struct csv_cell cell;
    struct hw_text text;
    char spare[ROOM] = "";
    size_t at = 0;
    size_t n = 0;
    for (size_t i = 0; i < COLUMNS; i++) {
        row->cell[i] = (struct hw_text){"", 0};
    }
    for (; csv_next_cell(record, reader->separator, &at, &cell); n++) {
        enum column column = n < reader->cells ? reader->of_cell[n] : COLUMNS;
        if (!take_cell(reader, &cell, column < COLUMNS ? row->room[column] : spare, &text)) {
            return false;
        }
        if (column == COLUMNS && text.n > 0) {
            return wrong_cell(reader, "the cell", text, " stands in no column");
        }
        if (column < COLUMNS) {
            row->cell[column] = text;
        }
    }
    if (n < reader->cells) {
        complain("%s line %zu: %zu cells, and the first line has %zu: write - where there is none",
                 reader->name, reader->line, n, reader->cells);
    }
    return n >= reader->cells;
}

/* Names of acts are compared as people read them: case aside. */
static bool is_named_before(const struct reader *reader, const struct plan *plan)
{
    const struct act *last = &plan->acts[plan->n];
    for (size_t i = 0; i < plan->n; i++) {
        if (column_folds_to(plan->acts[i].what, last->what, strlen(last->what))) {
            complain("%s line %zu: the act '%s' stands in line %zu: give each a name of its own",
                     reader->name, last->line, last->what, plan->acts[i].line);
            return true;
        }
    }
    return false;
}

bool plan_read(const char *name, const char *text, size_t n, struct plan *plan)
{
    static struct row row;
    struct reader reader = {.name = name, .text = text, .n = n, .line = 1, .next_line = 1};
    struct csv_record record;
    bool fine = true;
    plan->n = 0;
    reader.separator = separator_of(text, n);
    if (next_record(&reader, &record, &fine)) {
        fine = read_header(&reader, &record);
    }
    while (fine && next_record(&reader, &record, &fine)) {
        if (plan->n == PLAN_ACTS) {
            return wrong(&reader, "a plan has at most 200 acts");
        }
        fine = read_row(&reader, &record, &row) && read_act(&reader, &row, &plan->acts[plan->n]) &&
               !is_named_before(&reader, plan);
        plan->n += fine ? 1 : 0;
    }
    if (fine && plan->n == 0) {
        complain("%s has no acts: a line of names, day, act and so on, then a line for each act",
                 name);
    }
    return fine && plan->n > 0;
}

/* --- Days ------------------------------------------------------------------------------------- */

bool act_within(const struct act *act, long long from, long long to, int *first, int *last)
{
    long long step = act->every > 0 ? act->every : 1;
    long long late = from > act->day ? (from - act->day + step - 1) / step : 0;
    long long begin = act->day + late * step;
    long long end = to < act->until ? to : act->until;
    if (begin > end) {
        return false;
    }
    *first = (int)begin;
    *last = (int)(begin + (end - begin) / step * step);
    return true;
}

void plan_span(const struct plan *plan, int *first, int *last)
{
    *first = PLAN_DAYS;
    *last = -PLAN_DAYS;
    for (size_t i = 0; i < plan->n; i++) {
        int begin = 0;
        int end = 0;
        (void)act_within(&plan->acts[i], -PLAN_DAYS, PLAN_DAYS, &begin, &end);
        *first = begin < *first ? begin : *first;
        *last = end > *last ? end : *last;
    }
}

void plan_print(FILE *out, const struct plan *plan)
{
    (void)fputs("day\tact\tevery\tuntil\tclass\tsource\n", out);
    for (size_t i = 0; i < plan->n; i++) {
        const struct act *act = &plan->acts[i];
        (void)fprintf(out, "%d\t%s\t", act->day, act->what);
        if (act->every > 0) {
            (void)fprintf(out, "%d\t%d\t", act->every, act->until);
        } else {
            (void)fputs("-\t-\t", out);
        }
        (void)fprintf(out, "%s\t%s\n", act->class_name, act->source[0] == '\0' ? "-" : act->source);
    }
}
