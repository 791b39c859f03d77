/* ammonia_block.c - many ammonia readings side by side, for rows.
 *
 * The same kernels as behind the core's functions, in loops of a fixed length without calls, which
 * compilers turn into vectors; so the bits are those of ammonia_answer, to which a test holds them.
 * Inputs are in range here, and the core's own checks with them: its ranges are those of the table,
 * and what is reckoned from them stays within those of the core. */
#include "calc/ammonia_notes.h"
#include "calc/ammonia_sample.h"
#include "core/ammonia_kernel.h"

#include <math.h>
#include <string.h>

enum {
    LANES = 64,    /* rows that are reckoned at once */
    ROWS_WORTH = 8 /* fewer are not worth as many lanes */
};

/* Rows to which the published salt-water limits apply, and no others. */
struct lanes {
    size_t n;
    size_t row[LANES];
    double tan[LANES], dilution[LANES], ph[LANES], temp[LANES], salinity[LANES];
    double total_n[LANES], pk[LANES], fraction[LANES], pk_1989[LANES], fraction_1989[LANES];
};

/* What is the same for all rows of a block. */
struct constant {
    enum hw_nitrogen_basis basis;
    double to_n, to_nh3;            /* factors from the basis to N, from N to NH3 */
    double long_limit, short_limit; /* as N */
    uint64_t notes;
};

/* --- Reckoning -------------------------------------------------------------------------------- */

/* Every lane, used or not: a length that is known needs no loop for what is left over. */
static void reckon(struct lanes *l, const struct constant *c)
{
    for (size_t i = 0; i < LANES; i++) {
        l->total_n[i] = l->tan[i] * l->dilution[i] * c->to_n;
        l->pk[i] = hw_khoo1977_pk(l->temp[i], l->salinity[i]);
        l->pk_1989[i] = hw_epa1989_pk(l->temp[i], l->salinity[i]);
    }
    for (size_t i = 0; i < LANES; i++) {
        l->fraction[i] = hw_fraction_of(l->ph[i], l->pk[i]);
        l->fraction_1989[i] = hw_fraction_of(l->ph[i], l->pk_1989[i]);
    }
}

static uint64_t notes_of(const struct lanes *l, size_t i, const struct constant *c)
{
    double temp = l->temp[i];
    double salinity = l->salinity[i];
    double free_1989 = l->fraction_1989[i] * l->total_n[i];
    struct ammonia_sample s = {
        .total_n = l->total_n[i],
        .ph_meter = l->ph[i],
        .fit_stretched = hw_ammonia_stretched(HW_AMMONIA_KHOO1977, HW_PH_METER, temp, salinity),
        .criteria_stretched = hw_ammonia_stretched(HW_AMMONIA_EPA1989, HW_PH_METER, temp, salinity),
    };
    return c->notes | reading_notes(&s, l->tan[i]) | published_notes(salinity, true, false) |
           note_if(above(free_1989 / c->long_limit, 1), ammonia_long_limits.over_salt) |
           note_if(above(free_1989 / c->short_limit, 1), ammonia_short_limits.over_salt);
}

/* --- Results ---------------------------------------------------------------------------------- */

/* Stores factor x (a x b) of every lane; with a factor of 1 that is the product itself. */
static void put_products(const struct lanes *l, double *to, const double a[], const double b[],
                         double factor)
{
    for (size_t i = 0; to && i < l->n; i++) {
        to[l->row[i]] = a[i] * b[i] * factor;
    }
}

static void put_ratios(const struct lanes *l, double *to, double limit)
{
    for (size_t i = 0; to && i < l->n; i++) {
        to[l->row[i]] = l->fraction_1989[i] * l->total_n[i] / limit;
    }
}

/* The total and the pH that reach the limit for days. */
static void put_reaching(const struct lanes *l, double *const out[], const struct constant *c)
{
    double *total = out[AMMONIA_TAN_LONG];
    double *ph = out[AMMONIA_PH_LONG];
    for (size_t i = 0; (total || ph) && i < l->n; i++) {
        struct ammonia_standing days = ammonia_against_free(
            l->total_n[i], c->long_limit, l->fraction_1989[i], l->pk_1989[i], ph != NULL);
        if (total) {
            total[l->row[i]] = nitrogen_from_n(c->basis, days.total_n);
        }
        if (ph) {
            ph[l->row[i]] = in_ph_range(days.ph);
        }
    }
}

static void put_results(const struct lanes *l, double *const out[], const struct constant *c)
{
    put_products(l, out[AMMONIA_FREE], l->fraction, l->total_n, 1);
    put_products(l, out[AMMONIA_FREE_NH3], l->fraction, l->total_n, c->to_nh3);
    put_products(l, out[AMMONIA_FREE_FOR_LIMIT], l->fraction_1989, l->total_n, c->to_nh3);
    put_ratios(l, out[AMMONIA_LONG_RATIO], c->long_limit);
    put_ratios(l, out[AMMONIA_SHORT_RATIO], c->short_limit);
    put_reaching(l, out, c);
    for (size_t i = 0; out[AMMONIA_FREE_PERCENT] && i < l->n; i++) {
        out[AMMONIA_FREE_PERCENT][l->row[i]] = 100 * l->fraction[i];
    }
    for (size_t i = 0; out[AMMONIA_PKA] && i < l->n; i++) {
        out[AMMONIA_PKA][l->row[i]] = l->pk[i];
    }
}

/* --- Rows into lanes -------------------------------------------------------------------------- */

static void fill_lane(struct lanes *l, size_t lane, const struct hw_block *block, size_t row)
{
    l->row[lane] = row;
    l->tan[lane] = block->in[AMMONIA_TAN][row];
    l->dilution[lane] = block->in[AMMONIA_DILUTION][row];
    l->ph[lane] = block->in[AMMONIA_PH][row];
    l->temp[lane] = block->in[AMMONIA_TEMP][row];
    l->salinity[lane] = block->in[AMMONIA_SALINITY][row];
}

/* Answers the rows in the lanes and empties them. */
static void finish_lanes(struct lanes *l, const struct hw_block *block, const struct constant *c)
{
    if (l->n == 0) {
        return;
    }
    for (size_t i = l->n; i < LANES; i++) {
        fill_lane(l, i, block, l->row[0]);
    }
    reckon(l, c);
    for (size_t i = 0; i < l->n; i++) {
        block->notes[l->row[i]] |= notes_of(l, i, c);
    }
    put_results(l, block->out, c);
    l->n = 0;
}

static void answer_row(const struct hw_block *block, size_t row)
{
    double in[AMMONIA_INPUTS];
    double out[AMMONIA_RESULTS];
    for (size_t i = 0; i < AMMONIA_INPUTS; i++) {
        in[i] = block->in[i][row];
    }
    ammonia_answer(in, out, &block->notes[row]);
    for (size_t k = 0; k < AMMONIA_RESULTS; k++) {
        if (block->out[k]) {
            block->out[k][row] = out[k];
        }
    }
}

/* --- The block -------------------------------------------------------------------------------- */

/* The same bits in every row: each is the one before it. */
static bool is_constant(const struct hw_block *block, size_t input)
{
    const double *column = block->in[input];
    return memcmp(column, column + 1, (block->n - 1) * sizeof *column) == 0;
}

/* A meter's pH, khoo1977 and the published limits, and one basis and one set of medicines. */
static bool is_plain(const struct hw_block *block)
{
    static const size_t alike[] = {AMMONIA_BASIS,    AMMONIA_PH_SCALE,   AMMONIA_MODEL_METER,
                                   AMMONIA_MEDICINE, AMMONIA_LONG_LIMIT, AMMONIA_SHORT_LIMIT};
    for (size_t i = 0; i < sizeof alike / sizeof *alike; i++) {
        if (!is_constant(block, alike[i])) {
            return false;
        }
    }
    return block->in[AMMONIA_PH_SCALE][0] == HW_PH_METER &&
           block->in[AMMONIA_MODEL_METER][0] == HW_AMMONIA_KHOO1977 &&
           isnan(block->in[AMMONIA_LONG_LIMIT][0]) && isnan(block->in[AMMONIA_SHORT_LIMIT][0]);
}

bool ammonia_block(const struct hw_block *block)
{
    struct lanes lanes;
    if (block->n < ROWS_WORTH || !is_plain(block)) {
        return false;
    }
    enum hw_nitrogen_basis basis = (enum hw_nitrogen_basis)block->in[AMMONIA_BASIS][0];
    const struct constant constant = {
        .basis = basis,
        .to_n = nitrogen_to_n(basis, 1),
        .to_nh3 = nitrogen_from_n(HW_NITROGEN_NH3, 1),
        .long_limit = nitrogen_to_n(HW_NITROGEN_NH3, hw_limits[ammonia_long_limits.salt].value),
        .short_limit = nitrogen_to_n(HW_NITROGEN_NH3, hw_limits[ammonia_short_limits.salt].value),
        .notes = medicine_notes(block->in[AMMONIA_MEDICINE][0]),
    };
    lanes.n = 0;
    for (size_t row = 0; row < block->n; row++) {
        bool salt = !below_limit(block->in[AMMONIA_SALINITY][row], HW_LIMIT_SALT_FROM);
        if (!salt || isnan(block->in[AMMONIA_TAN][row])) {
            answer_row(block, row);
            continue;
        }
        fill_lane(&lanes, lanes.n++, block, row);
        if (lanes.n == LANES) {
            finish_lanes(&lanes, block, &constant);
        }
    }
    finish_lanes(&lanes, block, &constant);
    return true;
}
