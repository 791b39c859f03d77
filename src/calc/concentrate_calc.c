/* concentrate_calc.c - what to weigh for a stock of which a syringe doses what no scale can. */
#include "calc/list.h"
#include "calc/shared.h"
#include "calc/steps.h"
#include "holdwater/challenge.h"
#include "holdwater/stock.h"
#include "tables.h"

#include <math.h>

/* clang-format off */
enum {
    CONCENTRATE_REAGENT, CONCENTRATE_RAISES, CONCENTRATE_BASIS, CONCENTRATE_PER, CONCENTRATE_INTO,
    CONCENTRATE_MAKE, CONCENTRATE_INPUTS
};
/* clang-format on */
enum { CONCENTRATE_MASS, CONCENTRATE_STRENGTH, CONCENTRATE_SOLUBILITY_SHARE, CONCENTRATE_RESULTS };

static const char *const reagent_words[] = {"ammonium-chloride", "ammonium-sulfate",
                                            "copper-sulfate-pentahydrate", NULL};
enum { CONCENTRATE_AMMONIUM = 1u << HW_STOCK_AMMONIUM_CHLORIDE | 1u << HW_STOCK_AMMONIUM_SULFATE };

/* clang-format off */
static const struct hw_input inputs[CONCENTRATE_INPUTS] = {
    [CONCENTRATE_REAGENT] = {.name = "reagent", .unit = "", .kind = HW_CHOICE, .hi = 2,
     .words = reagent_words, .help = "what is weighed (copper sulfate: blue crystals)"},
    [CONCENTRATE_RAISES] = {.name = "raises", .unit = "mg/L", .kind = HW_CONCENTRATION,
     .lo = HW_STOCK_RAISES_MIN, .hi = 50,
     .beyond = "no kit shows less, more proves and treats nothing",
     .help = "rise by one dose, of ammonia or of copper"},
    [CONCENTRATE_BASIS] = {.name = "basis", .unit = "", .kind = HW_CHOICE, .hi = 2,
     .words = basis_words, .need = HW_PRESET, .preset = HW_NITROGEN_N,
     .when_input = CONCENTRATE_REAGENT, .when_words = CONCENTRATE_AMMONIUM,
     .help = "what the kit counts (its leaflet says)"},
    [CONCENTRATE_PER] = {.name = "per", .unit = "mL", .kind = HW_VOLUME, .lo = HW_STOCK_PER_MIN,
     .hi = HW_STOCK_PER_MAX, .need = HW_PRESET, .preset = 1,
     .beyond = "too little for a syringe, or too much for a stock",
     .help = "stock that makes one dose"},
    [CONCENTRATE_INTO] = {.name = "into", .unit = "L", .kind = HW_VOLUME,
     .lo = HW_STOCK_INTO_MIN, .hi = HW_STOCK_INTO_MAX, .beyond = "check the unit",
     .help = "water one dose goes into, without rock and sand"},
    [CONCENTRATE_MAKE] = {.name = "make", .unit = "mL", .kind = HW_VOLUME,
     .lo = HW_STOCK_MAKE_MIN, .hi = HW_STOCK_MAKE_MAX,
     .beyond = "too little to measure well, or too much to keep",
     .help = "how much stock to make"},
};
/* clang-format on */

/* A stock that is too strong makes every dose too strong: the mass is rounded down. */
/* clang-format off */
static const struct hw_result results[CONCENTRATE_RESULTS] = {
    [CONCENTRATE_MASS] = {.name = "mass", .unit = "g", .kind = HW_MASS, .digits = 3, .safe = -1,
     .help = "of the reagent (--reagent), to weigh"},
    [CONCENTRATE_STRENGTH] = {.name = "strength", .unit = "g/L", .kind = HW_CONCENTRATION,
     .digits = 3, .help = "for the label: g/L of what --raises counts"},
    [CONCENTRATE_SOLUBILITY_SHARE] = {.name = "solubility_share", .unit = "%", .kind = HW_SHARE,
     .digits = 2, .help = "of what dissolves at 20 C"},
};
/* clang-format on */

static const char *const sources[] = {"iupac-weights",  "solubility",  "solubility-sulfate",
                                      "copper-window",  "copper-ramp", "common-practice",
                                      "our-arithmetic", NULL};

/* One row, and what the core says of it. */
struct stock {
    enum hw_stock_reagent reagent;
    bool copper;
    enum hw_nitrogen_basis basis;
    double strength, strength_as; /* g/L, in the basis and as the core counts it */
    double mass, solubility, share;
};

static struct stock stock_of(const double in[])
{
    struct stock stock = {.reagent = (enum hw_stock_reagent)in[CONCENTRATE_REAGENT],
                          .strength = NAN,
                          .mass = NAN,
                          .solubility = NAN};
    stock.copper = stock.reagent == HW_STOCK_COPPER_SULFATE;
    stock.basis = stock.copper ? HW_NITROGEN_N : (enum hw_nitrogen_basis)in[CONCENTRATE_BASIS];
    hw_stock_strength(in[CONCENTRATE_RAISES], in[CONCENTRATE_INTO], in[CONCENTRATE_PER],
                      &stock.strength);
    stock.strength_as = stock.copper ? stock.strength : nitrogen_to_n(stock.basis, stock.strength);
    hw_stock_mass(stock.reagent, stock.strength_as, in[CONCENTRATE_MAKE], &stock.mass);
    hw_stock_solubility(stock.reagent, &stock.solubility);
    stock.share = 100 * (stock.mass / (in[CONCENTRATE_MAKE] / 1000)) / stock.solubility;
    return stock;
}

static const uint64_t copper_always = UINT64_C(1) << HW_CONCENTRATE_NOTE_STOCK_HYDRATE |
                                      UINT64_C(1) << HW_CONCENTRATE_NOTE_STOCK_COPPER_TEST |
                                      UINT64_C(1) << HW_CONCENTRATE_NOTE_STOCK_INVERTEBRATES;

static const uint64_t ammonium_always =
    UINT64_C(1) << HW_CONCENTRATE_NOTE_NO_FISH | UINT64_C(1) << HW_CONCENTRATE_NOTE_KIT_BASIS;

static uint64_t copper_notes(double raises)
{
    return copper_always |
           note_if(above_limit(raises, HW_LIMIT_COPPER_STEP),
                   HW_CONCENTRATE_NOTE_STOCK_COPPER_STEP) |
           note_if(above_limit(raises, HW_LIMIT_COPPER_IONIC_HIGH),
                   HW_CONCENTRATE_NOTE_STOCK_COPPER_OVER);
}

static uint64_t ammonium_notes(double raises)
{
    return ammonium_always | note_if(above_limit(raises, HW_LIMIT_STOCK_AMMONIA),
                                     HW_CONCENTRATE_NOTE_STOCK_AMMONIA_STALLS);
}

static uint64_t notes_of(const struct stock *stock, const double in[])
{
    if (isnan(stock->share) || above(stock->share, 100)) { /* NaN: the core counts no such stock */
        return note_bit(HW_CONCENTRATE_NOTE_STOCK_OVER_SOLUBILITY);
    }
    double raises = in[CONCENTRATE_RAISES];
    return (stock->copper ? copper_notes(raises) : ammonium_notes(raises)) |
           note_if(above_limit(stock->share, HW_LIMIT_STOCK_SOLUBILITY),
                   HW_CONCENTRATE_NOTE_STOCK_NEAR_SOLUBILITY) |
           note_if(below_limit(stock->mass, HW_LIMIT_WEIGH_LEAST),
                   HW_CONCENTRATE_NOTE_STOCK_WEIGH_SMALL) |
           note_if(in[CONCENTRATE_MAKE] < in[CONCENTRATE_PER], HW_CONCENTRATE_NOTE_STOCK_ONE_DOSE) |
           note_if(below_limit(in[CONCENTRATE_PER], HW_LIMIT_DRAW_LEAST),
                   HW_CONCENTRATE_NOTE_SMALL_LIQUID);
}

static void answer(const double in[], double out[], uint64_t *notes)
{
    struct stock stock = stock_of(in);
    out[CONCENTRATE_MASS] = stock.mass;
    out[CONCENTRATE_STRENGTH] = stock.strength;
    out[CONCENTRATE_SOLUBILITY_SHARE] = stock.share;
    *notes |= notes_of(&stock, in);
}

/* What is weighed for a gram of what the core counts, as text would have it: molar mass over so
 * many atoms' mass. */
static void step_mass(const struct stock *stock, const double in[], struct hw_steps *steps)
{
    static const double molar[] = {HW_MOLAR_AMMONIUM_CHLORIDE, HW_MOLAR_AMMONIUM_SULFATE,
                                   HW_MOLAR_COPPER_SULFATE_PENTAHYDRATE};
    static const double counted[] = {HW_MOLAR_N, 2 * HW_MOLAR_N, HW_MOLAR_COPPER};
    hw_step(steps, "mass", stock->mass, "g", "iupac-weights", "%.10g * %.10g/1000 * %.10g/%.10g",
            stock->strength_as, in[CONCENTRATE_MAKE], molar[stock->reagent],
            counted[stock->reagent]);
}

static void work(const double in[], struct hw_steps *steps)
{
    struct stock stock = stock_of(in);
    hw_step(steps, "strength", stock.strength, "g/L", "", "%.10g * %.10g / %.10g",
            in[CONCENTRATE_RAISES], in[CONCENTRATE_INTO], in[CONCENTRATE_PER]);
    if (!stock.copper) {
        hw_step(steps, "strength_as_n", stock.strength_as, "g/L", "iupac-weights",
                "%.10g * %.10g/%.10g", stock.strength, HW_MOLAR_N, basis_molar(stock.basis));
    }
    hw_step(steps, "solubility_share", stock.share, "%", "solubility",
            "100 * (%.10g / (%.10g/1000)) / %.10g", stock.mass, in[CONCENTRATE_MAKE],
            stock.solubility);
    step_mass(&stock, in, steps);
}

/* clang-format off */
const struct hw_calc hw_calc_concentrate = {
    .name = "concentrate",
    .purpose = "what to weigh for a stock that raises a tank by a known step",
    .inputs = inputs, .n_inputs = CONCENTRATE_INPUTS, .results = results,
    .n_results = CONCENTRATE_RESULTS, .notes = hw_concentrate_notes,
    .n_notes = HW_CONCENTRATE_NOTES, .sources = sources, .answer = answer, .work = work,
};
/* clang-format on */
