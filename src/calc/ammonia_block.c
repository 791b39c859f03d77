/* ammonia_block.c - many ammonia readings side by side, for rows.
 *
 * The same kernels as behind the core's functions, in loops of a fixed length without calls, which
 * compilers turn into vectors; so the bits are those of ammonia_answer, to which a test holds them.
 * Inputs are in range here, and the core's own checks with them: its ranges are those of the table,
 * and what is reckoned from them stays within those of the core. */
#include "calc/ammonia_notes.h"
#include "calc/ammonia_sample.h"
#include "core/ammonia_kernel.h"

#include <assert.h>
#include <math.h>
#include <string.h>

enum {
    LANES = 64,    /* rows that are reckoned at once */
    ROWS_WORTH = 8 /* fewer are not worth as many lanes */
};

/* Rows next to one another. */
struct lanes {
    size_t n;                                            /* those in use, the first ones */
    const double *tan, *dilution, *ph, *temp, *salinity; /* LANES of each */
    double total_n[LANES], pk[LANES], fraction[LANES], pk_1989[LANES], fraction_1989[LANES];
};

/* What is the same for all rows of a block. */
struct constant {
    enum hw_nitrogen_basis basis;
    double to_n, to_nh3;            /* factors from the basis to N, from N to NH3 */
    double long_limit, short_limit; /* as N */
    double long_reach, short_reach; /* the most free ammonia, as N, that is not above them */
    double salt_from, kit_end, sour_below, jump_near; /* what is less is below that limit */
    uint64_t notes;
};

/* --- Reckoning -------------------------------------------------------------------------------- */

/* Every lane, used or not: a length that is known needs no loop for what is left over. */
static void reckon(struct lanes *restrict l, const struct constant *c)
{
    const double *restrict tan = l->tan;
    const double *restrict dilution = l->dilution;
    const double *restrict ph = l->ph;
    const double *restrict temp = l->temp;
    const double *restrict salinity = l->salinity;
    for (size_t i = 0; i < LANES; i++) {
        l->total_n[i] = tan[i] * dilution[i] * c->to_n;
        l->pk[i] = hw_khoo1977_pk(temp[i], salinity[i]);
        l->pk_1989[i] = hw_epa1989_pk(temp[i], salinity[i]);
    }
    for (size_t i = 0; i < LANES; i++) {
        l->fraction[i] = hw_fraction_of(ph[i], l->pk[i]);
        l->fraction_1989[i] = hw_fraction_of(ph[i], l->pk_1989[i]);
    }
}

/* A row to which other limits apply, or that has no total, is answered on its own: it has this bit,
 * which no note has. */
enum { ANSWER_ALONE = HW_AMMONIA_NOTES };
static_assert(ANSWER_ALONE < 52, "a double holds it beside the notes");

/* Notes of every lane. Returns those that any of them has. */
static uint64_t note(const struct lanes *l, const struct constant *c, uint64_t *restrict notes)
{
    const double *restrict tan = l->tan;
    const double *restrict ph = l->ph;
    const double *restrict temp = l->temp;
    const double *restrict salinity = l->salinity;
    uint64_t any = 0;
    for (size_t i = 0; i < LANES; i++) {
        double free_1989 = l->fraction_1989[i] * l->total_n[i];
        const struct ammonia_sample s = {
            .total_n = l->total_n[i],
            .fit_stretched =
                hw_ammonia_stretched(HW_AMMONIA_KHOO1977, HW_PH_METER, temp[i], salinity[i]),
            .criteria_stretched =
                hw_ammonia_stretched(HW_AMMONIA_EPA1989, HW_PH_METER, temp[i], salinity[i]),
        };
        const struct ammonia_stands stands = {
            .act = above_limit(l->total_n[i], HW_LIMIT_ACT_TODAY),
            .at_end = !(tan[i] < c->kit_end),
            .sour = ph[i] < c->sour_below,
            .at_jump = from_jump(salinity[i]) < c->jump_near,
        };
        bool fresh = salinity[i] < c->salt_from;
        double sum = reading_notes(&s, tan[i], &stands) + published_notes(&stands, true, false) +
                     note_where(free_1989 > c->long_reach, ammonia_long_limits.over_salt) +
                     note_where(free_1989 > c->short_reach, ammonia_short_limits.over_salt) +
                     note_where(fresh | isnan(tan[i]), ANSWER_ALONE);
        notes[i] = c->notes | notes_in(sum);
        any |= notes[i];
    }
    return any;
}

/* --- Results ---------------------------------------------------------------------------------- */

/* Stores factor x (a x b) of every lane; with a factor of 1 that is the product itself. */
static void put_products(const struct lanes *l, double *restrict to, const double a[],
                         const double b[], double factor)
{
    for (size_t i = 0; to && i < l->n; i++) {
        to[i] = a[i] * b[i] * factor;
    }
}

static void put_ratios(const struct lanes *l, double *restrict to, double limit)
{
    for (size_t i = 0; to && i < l->n; i++) {
        to[i] = l->fraction_1989[i] * l->total_n[i] / limit;
    }
}

/* The total and the pH that reach the limit for days. */
static void put_reaching(const struct lanes *l, double *total, double *ph, const struct constant *c)
{
    for (size_t i = 0; (total || ph) && i < l->n; i++) {
        struct ammonia_standing days = ammonia_against_free(
            l->total_n[i], c->long_limit, l->fraction_1989[i], l->pk_1989[i], ph != NULL);
        if (total) {
            total[i] = nitrogen_from_n(c->basis, days.total_n);
        }
        if (ph) {
            ph[i] = in_ph_range(days.ph);
        }
    }
}

/* Where the result of the first lane goes; NULL for one that nobody wants. */
static double *place_of(const struct hw_block *block, size_t result, size_t first)
{
    return block->out[result] ? block->out[result] + first : NULL;
}

static void put_results(const struct lanes *l, const struct hw_block *block, size_t first,
                        const struct constant *c)
{
    double *percent = place_of(block, AMMONIA_FREE_PERCENT, first);
    double *pka = place_of(block, AMMONIA_PKA, first);
    put_products(l, place_of(block, AMMONIA_FREE, first), l->fraction, l->total_n, 1);
    put_products(l, place_of(block, AMMONIA_FREE_NH3, first), l->fraction, l->total_n, c->to_nh3);
    put_products(l, place_of(block, AMMONIA_FREE_FOR_LIMIT, first), l->fraction_1989, l->total_n,
                 c->to_nh3);
    put_ratios(l, place_of(block, AMMONIA_LONG_RATIO, first), c->long_limit);
    put_ratios(l, place_of(block, AMMONIA_SHORT_RATIO, first), c->short_limit);
    put_reaching(l, place_of(block, AMMONIA_TAN_LONG, first),
                 place_of(block, AMMONIA_PH_LONG, first), c);
    for (size_t i = 0; percent && i < l->n; i++) {
        percent[i] = 100 * l->fraction[i];
    }
    for (size_t i = 0; pka && i < l->n; i++) {
        pka[i] = l->pk[i];
    }
}

/* --- Rows into lanes -------------------------------------------------------------------------- */

/* As many rows of a column as there are lanes. Where the block has fewer they are put into the
 * room, and the lanes that are not in use have what the first one has. */
static const double *take(const struct hw_block *block, size_t input, size_t first,
                          double room[LANES])
{
    const double *column = block->in[input] + first;
    size_t n = block->n - first;
    if (n >= LANES) {
        return column;
    }
    for (size_t i = 0; i < LANES; i++) {
        room[i] = column[i < n ? i : 0];
    }
    return room;
}

static void answer_row(const struct hw_block *block, size_t row)
{
    double in[AMMONIA_INPUTS];
    double out[AMMONIA_RESULTS];
    for (size_t i = 0; i < AMMONIA_INPUTS; i++) {
        in[i] = block->in[i][row];
    }
    block->notes[row] = 0;
    ammonia_answer(in, out, &block->notes[row]);
    for (size_t k = 0; k < AMMONIA_RESULTS; k++) {
        if (block->out[k]) {
            block->out[k][row] = out[k];
        }
    }
}

/* Answers the rows from the first on, as many as there are lanes for. Returns how many. */
static size_t answer_lanes(struct lanes *l, const struct hw_block *block, size_t first,
                           const struct constant *c)
{
    double room[5][LANES];
    uint64_t room_of_notes[LANES];
    l->n = block->n - first < LANES ? block->n - first : LANES;
    l->tan = take(block, AMMONIA_TAN, first, room[0]);
    l->dilution = take(block, AMMONIA_DILUTION, first, room[1]);
    l->ph = take(block, AMMONIA_PH, first, room[2]);
    l->temp = take(block, AMMONIA_TEMP, first, room[3]);
    l->salinity = take(block, AMMONIA_SALINITY, first, room[4]);
    reckon(l, c);
    uint64_t *notes = l->n == LANES ? block->notes + first : room_of_notes;
    uint64_t any = note(l, c, notes);
    if (l->n < LANES) {
        memcpy(block->notes + first, notes, l->n * sizeof *notes);
    }
    put_results(l, block, first, c);
    for (size_t row = first; (any & note_bit(ANSWER_ALONE)) != 0 && row < first + l->n; row++) {
        if ((block->notes[row] & note_bit(ANSWER_ALONE)) != 0) {
            answer_row(block, row);
        }
    }
    return l->n;
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

/* The greatest number that is not above a limit when it is told by their ratio, as `answer` does:
 * the division is rounded, and keeps the order. One such step is the most to be gone here. */
static double reach_of(double limit)
{
    double reach = limit * (1 + 1e-9);
    while (above(reach / limit, 1)) {
        reach = nextafter(reach, 0);
    }
    while (!above(nextafter(reach, HUGE_VAL) / limit, 1)) {
        reach = nextafter(reach, HUGE_VAL);
    }
    return reach;
}

/* The least number that is not below a limit: below_limit keeps the order, too. */
static double turn_of(enum hw_limit_key limit)
{
    double turn = just_below_limit(limit);
    while (below_limit(turn, limit)) {
        turn = nextafter(turn, HUGE_VAL);
    }
    while (!below_limit(nextafter(turn, 0), limit)) {
        turn = nextafter(turn, 0);
    }
    return turn;
}

bool ammonia_block(const struct hw_block *block)
{
    struct lanes lanes;
    if (block->n < ROWS_WORTH || !is_plain(block)) {
        return false;
    }
    enum hw_nitrogen_basis basis = (enum hw_nitrogen_basis)block->in[AMMONIA_BASIS][0];
    double long_limit = nitrogen_to_n(HW_NITROGEN_NH3, hw_limits[ammonia_long_limits.salt].value);
    double short_limit = nitrogen_to_n(HW_NITROGEN_NH3, hw_limits[ammonia_short_limits.salt].value);
    const struct constant constant = {
        .basis = basis,
        .to_n = nitrogen_to_n(basis, 1),
        .to_nh3 = nitrogen_from_n(HW_NITROGEN_NH3, 1),
        .long_limit = long_limit,
        .short_limit = short_limit,
        .long_reach = reach_of(long_limit),
        .short_reach = reach_of(short_limit),
        .salt_from = turn_of(HW_LIMIT_SALT_FROM),
        .kit_end = turn_of(HW_LIMIT_KIT_END),
        .sour_below = turn_of(HW_LIMIT_SOUR_BELOW),
        .jump_near = turn_of(HW_LIMIT_CRITERIA_NEAR),
        .notes = medicine_notes(block->in[AMMONIA_MEDICINE][0]),
    };
    for (size_t first = 0; first < block->n;) {
        first += answer_lanes(&lanes, block, first, &constant);
    }
    return true;
}
