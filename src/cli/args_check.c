/* args_check.c - options that mean nothing together. */
#include "cli/args_check.h"

#include "cli/stream.h"

/* Combinations of general options that have no meaning. */
static const char *nonsense(const struct args *args)
{
    bool json = args->format == FORMAT_JSON || args->format == FORMAT_JSONL;
    if (args->work && args->format != FORMAT_TEXT && !json) {
        return "--work has a place in text and json alone";
    }
    if (json && args->digits > 0) {
        return "--digits has no place in json, which prints numbers in full";
    }
    bool logged = args->log || args->format == FORMAT_LOG;
    if (args->when && !logged) {
        return "--when has a place with --log FILE or --format log alone";
    }
    if (args->note && !logged) {
        return "--note has a place with --log FILE or --format log alone";
    }
    if (args->log && args->rows) {
        return "--log has no place with --rows: write --format log >>FILE";
    }
    if (args->page_given && args->format != FORMAT_SVG) {
        return "--page is the size of a picture: write --format svg with it";
    }
    if (args->tanks && !args->tank && !args->rows) {
        return "--tanks names a file: say which tank with --tank NAME";
    }
    size_t none = args->calc->n_inputs;
    if (args->solve == none && args->wanted < args->calc->n_results) {
        return "--for says what to reach: name what may change with --solve INPUT";
    }
    if (args->solve < none && args->wanted == args->calc->n_results) {
        return "--solve INPUT needs what it is to reach: --for RESULT=VALUE";
    }
    if (args->solve < none && args->rows) {
        return "--solve has no place with --rows: ask one question";
    }
    if (args->spread && !args->rows) {
        return "--spread has a place with --rows alone: one question shows its low and high "
               "without it";
    }
    if (args->row_option && !args->rows) {
        return "--separator, --decimal, --tsv, --map, --prefix and --on-bad have a place with "
               "--rows alone";
    }
    if (args->rows && args->work) {
        return "--work has no place with --rows: ask one question";
    }
    if (args->rows && args->format == FORMAT_SVG) {
        return "--format svg draws a sweep: rows have no picture";
    }
    if (args->rows && args->format == FORMAT_TEXT) {
        return "--rows has no text format: leave --format out for csv, or write tsv, jsonl, value "
               "or log";
    }
    return NULL;
}

bool args_check(struct args *args)
{
    if (args->rows && !args->format_given) {
        args->format = FORMAT_CSV;
    }
    const char *message = nonsense(args);
    if (message) {
        complain("%s", message);
        return false;
    }
    if (args->rows && args->format == FORMAT_JSON) {
        args->format = FORMAT_JSONL;
    }
    return true;
}
