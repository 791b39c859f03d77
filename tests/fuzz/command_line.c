/* command_line.c - bytes of a fuzzer made into a command line. */
#include "command_line.h"

#include "cli/by_hand.h"
#include "cli/column_name.h"
#include "cli/help.h"
#include "cli/print.h"
#include "cli/wording.h"
#include "engine/answer.h"

#include <math.h>
#include <string.h>

/* --- Options ---------------------------------------------------------------------------------- */

static struct line_option *find(struct command_line *line, const char *name)
{
    for (size_t i = 0; i < line->n; i++) {
        const struct line_option *option = &line->option[i];
        if (!option->bare && hw_name_is(option->name, name, strlen(name))) {
            return &line->option[i];
        }
    }
    return NULL;
}

bool command_line_has(const struct command_line *line, const char *name)
{
    for (size_t i = 0; i < line->n; i++) {
        if (hw_name_is(line->option[i].name, name, strlen(name))) {
            return true;
        }
    }
    return false;
}

/* Sets an option; its value may be NULL. Where there is no more room nothing happens. */
static void set(struct command_line *line, const char *name, const char *value, bool joined)
{
    struct line_option *option = find(line, name);
    if (!option && line->n < LINE_OPTIONS) {
        option = &line->option[line->n++];
    }
    if (option) {
        *option = (struct line_option){.has_value = value != NULL, .joined = joined};
        (void)snprintf(option->name, sizeof option->name, "%s", name);
        (void)snprintf(option->value, sizeof option->value, "%s", value ? value : "");
    }
}

static void leave_out(struct command_line *line, const char *name)
{
    struct line_option *option = find(line, name);
    if (option) {
        *option = line->option[--line->n];
    }
}

/* --- Values ----------------------------------------------------------------------------------- */

/* A unit of the input's kind, or NULL: then a number is written bare. */
static const struct hw_unit *draw_unit(struct draw *draw, const struct hw_input *input)
{
    unsigned skip = draw_byte(draw) % 12;
    for (size_t i = 0; hw_units[i].name; i++) {
        if (hw_units[i].kind == input->kind && skip-- == 0) {
            return &hw_units[i];
        }
    }
    return hw_unit_of(input->kind, input->unit);
}

static double in_unit(const struct hw_input *input, double value, const struct hw_unit *unit)
{
    const struct hw_unit *own = hw_unit_of(input->kind, input->unit);
    return unit && own ? hw_unit_convert(value, own, unit) : value;
}

static void write_value(struct draw *draw, const struct hw_input *input, double value,
                        char text[LINE_TEXT])
{
    if (input->words) {
        words_of(input, value, text, LINE_TEXT);
        return;
    }
    char number[NUMBER_MAX];
    const struct hw_unit *unit = draw_unit(draw, input);
    number_exact(number, in_unit(input, value, unit));
    (void)snprintf(text, LINE_TEXT, "%s%s", number, unit ? unit->name : "");
}

static void add_uncertainty(struct draw *draw, char text[LINE_TEXT])
{
    size_t n = strlen(text);
    (void)snprintf(text + n, LINE_TEXT - n, "+-%u%%", draw_byte(draw) % 40);
}

/* A few values from one to another. */
static void write_sweep(struct draw *draw, const struct hw_input *input, char text[LINE_TEXT])
{
    const struct hw_unit *unit = draw_unit(draw, input);
    double from = in_unit(input, draw_value(draw, input), unit);
    double to = in_unit(input, draw_value(draw, input), unit);
    double steps = 1 + draw_byte(draw) % 9;
    (void)snprintf(text, LINE_TEXT, "%.12g:%.12g:%.12g%s", from, to, (to - from) / steps,
                   unit ? unit->name : "");
}

static void set_value(struct command_line *line, struct draw *draw, size_t i, double value)
{
    char text[LINE_TEXT];
    char name[OPTION_MAX];
    const struct hw_input *input = &line->calc->inputs[i];
    unsigned form = draw_byte(draw);
    write_value(draw, input, value, text);
    if (form % 16 == 1 && !input->words) {
        add_uncertainty(draw, text);
    } else if (form % 16 == 2 && !input->words) {
        write_sweep(draw, input, text);
    }
    option_name(input->name, name);
    set(line, name, text, (form & 16u) != 0);
}

/* --- Lines ------------------------------------------------------------------------------------ */

static void all_inputs(struct command_line *line, struct draw *draw)
{
    draw_question(draw, line->calc, line->in);
    for (size_t i = 0; i < line->calc->n_inputs; i++) {
        bool preset = line->calc->inputs[i].need == HW_PRESET && draw_byte(draw) % 2 == 0;
        if (!isnan(line->in[i]) && !preset) {
            set_value(line, draw, i, line->in[i]);
        }
    }
}

static void one_input(struct command_line *line, struct draw *draw)
{
    size_t i = draw_byte(draw) % line->calc->n_inputs;
    set_value(line, draw, i, draw_value(draw, &line->calc->inputs[i]));
}

static const char *draw_result(const struct command_line *line, struct draw *draw)
{
    return line->calc->results[draw_byte(draw) % line->calc->n_results].name;
}

/* Options and values that they take. Where the value is a letter in brackets it is drawn, or the
 * name of a file. */
static const struct {
    const char *name, *value;
} general[] = {
    {"format", "text"},
    {"format", "csv"},
    {"format", "tsv"},
    {"format", "json"},
    {"format", "jsonl"},
    {"format", "value"},
    {"format", "log"},
    {"format", "svg"},
    {"format", "ics"},
    {"format", "plan"},
    {"page", "phone"},
    {"page", "a4"},
    {"only", "(R)"},
    {"only", "(S)"},
    {"digits", "1"},
    {"digits", "17"},
    {"digits", "4"},
    {"full", NULL},
    {"work", NULL},
    {"tank", "birch"},
    {"tank", "elm"},
    {"tanks", "(T)"},
    {"rows", "(F)"},
    {"separator", "comma"},
    {"separator", "tab"},
    {"separator", "semicolon"},
    {"decimal", "comma"},
    {"decimal", "point"},
    {"tsv", NULL},
    {"map", "(M)"},
    {"map", "day=when"},
    {"map", "day+hour=when"},
    {"map", "where=tank"},
    {"prefix", "hw_"},
    {"on-bad", "keep"},
    {"on-bad", "stop"},
    {"on-bad", "drop"},
    {"when", "2031-03-05"},
    {"when", "2031-03-05T08:15+00:00"},
    {"log", "(L)"},
    {"note", "kit of birch, \"new\""},
    {"note", "=1+1"},
    {"solve", "(I)"},
    {"for", "(G)"},
    {"spread", NULL},
    {"help", NULL},
    {"plan", "dye"},
    {"plan", "copper"},
    {"plan", "watch"},
    {"plan", "(F)"},
    {"from", "2031-03-05"},
    {"added", "2031-03-07"},
    {"of", "tan"},
    {"of", "ammonia.free"},
    {"limit", "0.5"},
    {"floor", "0.1mg/L"},
    {"ceiling", "2"},
    {"gap", "2d"},
    {"last", "5"},
};

static void one_option(struct command_line *line, struct draw *draw)
{
    char text[LINE_TEXT];
    size_t i = draw_byte(draw) % (sizeof general / sizeof general[0]);
    const char *value = general[i].value;
    bool drawn = value && value[0] == '(';
    size_t input = draw_byte(draw) % line->calc->n_inputs;
    switch (drawn ? value[1] : ' ') {
    case 'R':
        value = draw_result(line, draw);
        break;
    case 'S':
        (void)snprintf(text, sizeof text, "%s,", draw_result(line, draw));
        strncat(text, draw_result(line, draw), LINE_TEXT / 2);
        value = text;
        break;
    case 'M':
        (void)snprintf(text, sizeof text, "day=%s", line->calc->inputs[input].name);
        value = text;
        break;
    case 'I':
        value = line->calc->inputs[input].name;
        break;
    case 'G':
        (void)snprintf(text, sizeof text, "%s=%u", draw_result(line, draw), draw_byte(draw));
        value = text;
        break;
    case 'T':
        value = line->tanks;
        break;
    case 'L':
        value = line->log;
        break;
    case 'F':
        value = line->file;
        break;
    default:
        break;
    }
    set(line, general[i].name, value, draw_byte(draw) % 2 == 0);
}

/* Looks for an input that has a value, for the result that it leads to, or next to it. */
static void backwards(struct command_line *line, struct draw *draw)
{
    struct hw_question question = {.calc = line->calc};
    struct hw_answer answer;
    char text[LINE_TEXT];
    char name[OPTION_MAX];
    size_t result = draw_byte(draw) % line->calc->n_results;
    size_t i = draw_byte(draw) % line->calc->n_inputs;
    memcpy(question.in, line->in, sizeof question.in);
    if (isnan(line->in[i]) || line->calc->inputs[i].words) {
        return;
    }
    hw_question_answer(&question, &answer);
    double value = answer.out[result] * (1 + (draw_byte(draw) % 8 - 3.0) / 100);
    (void)snprintf(text, sizeof text, "%s=%.15g%s", line->calc->results[result].name, value,
                   line->calc->results[result].unit);
    option_name(line->calc->inputs[i].name, name);
    leave_out(line, name);
    set(line, "solve", name, true);
    set(line, "for", text, true);
}

/* Some inputs as columns, a few records of them, and a column that is none. */
static void columns(struct command_line *line, struct draw *draw)
{
    char text[LINE_TEXT];
    char name[OPTION_MAX];
    uint64_t chosen = 0;
    unsigned records = draw_byte(draw) % 6;
    for (size_t i = 0; i < line->calc->n_inputs; i++) {
        if (hw_input_first(line->calc, i) == i && !isnan(line->in[i]) && draw_byte(draw) % 3 > 0) {
            column_name(line->calc->inputs[i].name, "", line->calc->inputs[i].unit, text);
            (void)fprintf(line->rows, "%s,", text);
            option_name(line->calc->inputs[i].name, name);
            leave_out(line, name);
            chosen |= UINT64_C(1) << i;
        }
    }
    (void)fputs("day\n", line->rows);
    for (unsigned record = 0; record < records; record++) {
        for (size_t i = 0; i < line->calc->n_inputs; i++) {
            const struct hw_input *input = &line->calc->inputs[i];
            if (((chosen >> i) & 1u) != 0) {
                write_value(draw, input, draw_value(draw, input), text);
                (void)fprintf(line->rows, strchr(text, ',') ? "\"%s\"," : "%s,", text);
            }
        }
        (void)fprintf(line->rows, "2031-03-%02u\n", 1 + draw_byte(draw) % 31);
    }
    set(line, "rows", line->file, false);
}

/* --- The whole -------------------------------------------------------------------------------- */

static void read_command(struct command_line *line, const char *text)
{
    static const char *const others[] = {"calendar", "trend",    "help", "units",
                                         "sources",  "cautions", NULL};
    size_t calculations = 0;
    size_t commands = 0;
    while (hw_calcs[calculations]) {
        calculations++;
    }
    while (others[commands]) {
        commands++;
    }
    if (text[0] == '=') {
        size_t which = (unsigned char)text[1] % (calculations + commands);
        text = which < calculations ? hw_calcs[which]->name : others[which - calculations];
    }
    (void)snprintf(line->command, sizeof line->command, "%s", text);
    line->calc = calc_find(line->command);
    line->calc = line->calc ? line->calc : hw_calcs[0];
}

static void read_line(struct command_line *line, const char *text, size_t n)
{
    struct draw draw = {(const uint8_t *)text + 1, n - 1};
    switch (text[0]) {
    case '!':
        all_inputs(line, &draw);
        break;
    case '#':
        one_input(line, &draw);
        break;
    case '%':
        one_option(line, &draw);
        break;
    case '?':
        backwards(line, &draw);
        break;
    case '&':
        columns(line, &draw);
        break;
    default:
        line->as_it_stands = true;
        if (line->n < LINE_OPTIONS) {
            line->option[line->n] = (struct line_option){.bare = true};
            (void)snprintf(line->option[line->n++].name, LINE_TEXT, "%s", text);
        }
    }
}

/* The next line, ended by NUL; its length. */
static size_t take_line(struct draw *draw, char text[LINE_TEXT])
{
    size_t n = 0;
    while (draw->n > 0) {
        char c = (char)draw_byte(draw);
        if (c == '\n') {
            break;
        }
        if (n + 1 < LINE_TEXT) {
            text[n++] = c;
        }
    }
    text[n] = '\0';
    return n;
}

void command_line_make(struct command_line *line, struct draw draw)
{
    char text[LINE_TEXT];
    line->n = 0;
    line->as_it_stands = false;
    for (size_t i = 0; i < HW_INPUTS; i++) {
        line->in[i] = NAN;
    }
    (void)take_line(&draw, text);
    read_command(line, text);
    for (size_t n = take_line(&draw, text); n > 0; n = take_line(&draw, text)) {
        read_line(line, text, n);
    }
    (void)fwrite(draw.at, 1, draw.n, line->rows);
    (void)fflush(line->rows);
}

static bool is_own_plan(const char *word)
{
    return strcmp(word, "dye") == 0 || strcmp(word, "copper") == 0 || strcmp(word, "watch") == 0;
}

/* The file that stands in for what an option has, or NULL where that names none. */
static const char *file_for(const struct command_line *line, const char *name, size_t n,
                            const char *value)
{
    if (hw_name_is("tanks", name, n)) {
        return line->tanks;
    }
    if (hw_name_is("log", name, n)) {
        return line->log;
    }
    bool plan = hw_name_is("plan", name, n) && !is_own_plan(value);
    return plan || hw_name_is("rows", name, n) ? line->file : NULL;
}

/* Goes from left to right as the program does: what follows such an option is its value. */
static void redirect_files(struct command_line *line, int n)
{
    for (int i = 2; i < n; i++) {
        const char *name = line->word[i] + 2;
        size_t length = strncmp(line->word[i], "--", 2) == 0 ? strcspn(name, "=") : 0;
        bool joined = length > 0 && name[length] == '=';
        if (length == 0 || (!joined && i + 1 == n)) {
            continue;
        }
        char *value = joined ? line->word[i] + 2 + length + 1 : line->word[i + 1];
        const char *file = file_for(line, name, length, value);
        if (file) {
            (void)snprintf(value, LINE_TEXT, "%s", file);
            i += joined ? 0 : 1;
        }
    }
}

int command_line_words(struct command_line *line, bool reversed)
{
    int n = 0;
    (void)snprintf(line->text[n++], LINE_TEXT, "holdwater");
    if (line->command[0] != '\0') {
        (void)snprintf(line->text[n++], LINE_TEXT, "%s", line->command);
    }
    for (size_t k = 0; k < line->n; k++) {
        const struct line_option *option = &line->option[reversed ? line->n - 1 - k : k];
        bool joined = option->has_value && option->joined;
        (void)snprintf(line->text[n++], sizeof line->text[0], "%s%s%s%s", option->bare ? "" : "--",
                       option->name, joined ? "=" : "", joined ? option->value : "");
        if (option->has_value && !joined) {
            (void)snprintf(line->text[n++], LINE_TEXT, "%s", option->value);
        }
    }
    for (int i = 0; i < n; i++) {
        line->word[i] = line->text[i];
    }
    line->word[n] = NULL;
    redirect_files(line, n);
    return n;
}
