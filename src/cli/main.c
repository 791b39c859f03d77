/* main.c - finds out what is asked and has it answered. */
#include "cli/args_read.h"
#include "cli/by_hand.h"
#include "cli/calendar.h"
#include "cli/completion.h"
#include "cli/help.h"
#include "cli/lists.h"
#include "cli/message.h"
#include "cli/reply.h"
#include "cli/rows.h"
#include "cli/solve.h"
#include "cli/stream.h"
#include "cli/suggest.h"
#include "cli/sweep.h"
#include "cli/tank.h"
#include "cli/topic.h"
#include "cli/trend_run.h"
#include "cli/wording.h"

#include "holdwater/holdwater.h"

#include <stdio.h>
#include <string.h>

static int print_version(int argc, char *argv[])
{
    if (argc > 2) {
        complain("%s takes no word", argv[1]);
        return EXIT_ASKED_WRONGLY;
    }
    (void)printf("holdwater %s\nMIT licence; comes with no warranty; not veterinary advice\n",
                 HW_VERSION);
    return EXIT_ANSWERED;
}

static int print_help(int argc, char *argv[]);
static int print_completion(int argc, char *argv[]);

/* The words that are not calculations. */
static const struct command {
    const char *name;
    int (*run)(int argc, char *argv[]);
} commands[] = {
    {"calendar", calendar_run},
    {"trend", trend_run},
    {"help", print_help},
    {"units", list_units},
    {"sources", list_sources},
    {"cautions", list_cautions},
    {"--version", print_version},
    {"-V", print_version},
    {"--help", print_help},
    {"-h", print_help},
    {"completion", print_completion},
};

enum { COMMANDS = sizeof commands / sizeof commands[0] };

static int print_completion(int argc, char *argv[])
{
    const char *names[COMMANDS + 1] = {NULL};
    for (size_t i = 0; i < COMMANDS; i++) {
        names[i] = commands[i].name;
    }
    return completion_run(argc, argv, names);
}

static const struct help_page *page_find(const char *name)
{
    for (size_t i = 0; help_pages[i].name; i++) {
        if (strcmp(help_pages[i].name, name) == 0) {
            return &help_pages[i];
        }
    }
    return NULL;
}

static int unknown_name(const char *name)
{
    char shown[SHOWN_MAX];
    char suggestion[SUGGEST_TEXT];
    show_text((struct hw_text){name, strlen(name)}, shown);
    struct suggestions near = {.word = shown, .n = 0};
    for (size_t i = 0; hw_calcs[i]; i++) {
        suggest_weigh(&near, hw_calcs[i]->name);
    }
    for (size_t i = 0; i < COMMANDS; i++) {
        suggest_weigh(&near, commands[i].name);
    }
    if (page_find(name)) {
        complain("no calculation is called '%s': type 'holdwater help %s'", name, name);
        return EXIT_ASKED_WRONGLY;
    }
    if (topic_tell(name)) {
        return EXIT_ASKED_WRONGLY;
    }
    suggest_text(&near, "", suggestion);
    complain("no calculation is called '%s'%s", shown, suggestion);
    complain("type 'holdwater' for the list");
    return EXIT_ASKED_WRONGLY;
}

/* No input or result of that name. */
static int unknown_part(const struct hw_calc *calc, const char *name)
{
    char shown[SHOWN_MAX];
    char suggestion[SUGGEST_TEXT];
    show_text((struct hw_text){name, strlen(name)}, shown);
    struct suggestions near = {.word = shown, .n = 0};
    for (size_t i = 0; i < calc->n_inputs; i++) {
        if (hw_input_first(calc, i) == i) {
            suggest_weigh(&near, calc->inputs[i].name);
        }
    }
    for (size_t i = 0; i < calc->n_results; i++) {
        suggest_weigh(&near, calc->results[i].name);
    }
    suggest_text(&near, "", suggestion);
    complain("%s has no input or result '%s'%s", calc->name, shown, suggestion);
    complain("type 'holdwater help %s' for all of them", calc->name);
    return EXIT_ASKED_WRONGLY;
}

static int print_help(int argc, char *argv[])
{
    if (argc < 3) {
        help_map();
        return EXIT_ANSWERED;
    }
    const struct by_hand *command = by_hand_find(argv[2]);
    const struct hw_calc *calc = command ? command->caption : calc_find(argv[2]);
    if (argc > (calc ? 4 : 3)) {
        complain("help takes no word after '%s'", argv[calc ? 3 : 2]);
        return EXIT_ASKED_WRONGLY;
    }
    const struct help_page *page = page_find(argv[2]);
    if (page) {
        page->print();
        return EXIT_ANSWERED;
    }
    for (size_t i = 0; !calc && i < COMMANDS; i++) {
        if (strcmp(argv[2], commands[i].name) == 0) {
            help_map();
            return EXIT_ANSWERED;
        }
    }
    if (!calc) {
        return unknown_name(argv[2]);
    }
    if (argc == 3) {
        if (command) {
            help_by_hand(calc);
        } else {
            help_calc(calc);
        }
        return EXIT_ANSWERED;
    }
    return help_name(calc, argv[3]) ? EXIT_ANSWERED : unknown_part(calc, argv[3]);
}

static int calculate(int argc, char *argv[], const struct hw_calc *calc)
{
    static struct args args;
    struct hw_question question;
    size_t which = 0;
    if (argc == 2 && help_card(calc)) {
        return EXIT_ANSWERED;
    }
    if (args_want_help(argc, argv, 2)) {
        help_calc(calc);
        return EXIT_ANSWERED;
    }
    if (!args_read(argc, argv, calc, &args) || (args.tank && !tank_fill(&args))) {
        return EXIT_ASKED_WRONGLY;
    }
    if (args.rows) {
        return rows_run(&args);
    }
    for (size_t i = 0; i < calc->n_inputs; i++) {
        tank_mention(&args, i);
    }
    enum hw_problem problem = hw_question_settle(calc, args.written, &question, &which);
    if (problem != HW_FINE) {
        message_problem(calc, args.written, &question, problem, which);
        return hw_problem_of_range(problem) ? EXIT_UNANSWERED : EXIT_ASKED_WRONGLY;
    }
    if (!tank_agrees(&args, &question)) {
        return EXIT_ASKED_WRONGLY;
    }
    bool solving = question.solved < calc->n_inputs;
    if (solving && question.n_axes > 0) {
        complain("--solve has no place with a sweep: give one value for each input");
        return EXIT_ASKED_WRONGLY;
    }
    if (question.n_axes > 0 && args.log) {
        complain("--log has no place with a sweep: give one value for each input");
        return EXIT_ASKED_WRONGLY;
    }
    if (question.n_axes > 0) {
        return sweep_run(&args, &question);
    }
    if (args.format == FORMAT_SVG) {
        complain("--format svg draws a sweep: write an input as start:stop:step");
        return EXIT_ASKED_WRONGLY;
    }
    return solving ? solve_run(&args, &question) : reply(&args, &question);
}

static int dispatch(int argc, char *argv[])
{
    if (argc < 2) {
        help_map();
        return EXIT_ANSWERED;
    }
    for (size_t i = 0; i < COMMANDS; i++) {
        if (strcmp(argv[1], commands[i].name) == 0) {
            return commands[i].run(argc, argv);
        }
    }
    const struct hw_calc *calc = calc_find(argv[1]);
    return calc ? calculate(argc, argv, calc) : unknown_name(argv[1]);
}

int main(int argc, char *argv[])
{
    stream_begin();
    return stream_end(dispatch(argc, argv));
}
