/* dose_calc.c - a medicine brought to a level: what to pour or weigh, at once or in steps; or what
 * was poured. */
#include "calc/dose_plan.h"
#include "calc/list.h"
#include "tables.h"

#include <math.h>

/* clang-format off */
enum {
    DOSE_STEP_AMOUNT, DOSE_STEP_MASS, DOSE_STEP_EVERY, DOSE_LEVEL_AFTER, DOSE_LIQUID, DOSE_MASS,
    DOSE_SHARE_BACK, DOSE_SOLUTION_UL, DOSE_SOLUTION_MG, DOSE_FORMALDEHYDE, DOSE_OXYGEN_USED,
    DOSE_ACTIVE, DOSE_RESULTS
};
/* clang-format on */

static const char *const kind_words[] = {
    "copper-ionic", "copper-amine", "copper-chelated", "dye", "formalin", "other", NULL};
static const char *const formalin_words[] = {"solution-ul", "solution-mg", "formaldehyde-mg", NULL};
static const char *const source_words[] = {"liquid", "copper-sulfate-pentahydrate", "powder", NULL};
static const char *const strength_words[] = {"as-is", "copper-sulfate-pentahydrate", NULL};

enum { DOSE_WANTED = 1, DOSE_STEPS_MOST = 30 }; /* the group of target and added */

enum {
    DOSE_NOT_FORMALIN = 1u << KIND_IONIC | 1u << KIND_AMINE | 1u << KIND_CHELATED | 1u << KIND_DYE |
                        1u << KIND_OTHER,
    DOSE_FROM_LIQUID = 1u << DOSE_SOURCE_LIQUID,
    DOSE_FROM_SOLID = 1u << DOSE_SOURCE_PENTAHYDRATE | 1u << DOSE_SOURCE_POWDER,
    DOSE_LABELLED = DOSE_FROM_LIQUID | 1u << DOSE_SOURCE_POWDER,
    DOSE_IN_MG = 1u << HW_FORMALIN_SOLUTION_MG | 1u << HW_FORMALIN_FORMALDEHYDE_MG,
    DOSE_IN_UL = 1u << HW_FORMALIN_SOLUTION_UL
};

#define LEVEL_MG .unit = "mg/L", .kind = HW_CONCENTRATION, .hi = HW_DOSE_LEVEL_MAX
#define LEVEL_UL .unit = "uL/L", .kind = HW_PARTS, .hi = HW_DOSE_LEVEL_MAX
#define LEAST    .lo = 1e-4
#define MG       .when_input = DOSE_FORMALIN_BASIS, .when_words = DOSE_IN_MG | HW_WHEN_UNASKED
#define UL       .when_input = DOSE_FORMALIN_BASIS, .when_words = DOSE_IN_UL
#define LIQUIDS  .when_input = DOSE_SOURCE, .when_words = DOSE_FROM_LIQUID
#define LABELLED .when_input = DOSE_SOURCE, .when_words = DOSE_LABELLED

/* clang-format off */
static const struct hw_input inputs[DOSE_INPUTS] = {
    [DOSE_VOLUME] = {.name = "volume", .tank = "volume", .unit = "L", .kind = HW_VOLUME,
     .lo = HW_DOSE_VOLUME_MIN, .hi = HW_DOSE_VOLUME_MAX, .beyond = "check the unit",
     .help = "water in tank and filter, without rock and sand"},
    [DOSE_KIND] = {.name = "kind", .unit = "", .kind = HW_CHOICE, .hi = KIND_OTHER,
     .words = kind_words, .help = "what is dosed (the label says which copper)"},
    [DOSE_SALINITY] = {.name = "salinity", .tank = "salinity", .unit = "g/kg",
     .kind = HW_SALINITY, .hi = 45, .when_input = DOSE_KIND, .when_words = KINDS_OF_COPPER,
     .beyond = "too salty for fish", .help = "salinity, below "
     HW_FIGURE_COPPER_FRESH_BELOW " g/kg no copper"},
    [DOSE_TEMP] = {.name = "temp", .tank = "temp", .unit = "C", .kind = HW_TEMPERATURE, .hi = 40,
     .when_input = DOSE_KIND, .when_words = 1u << KIND_FORMALIN,
     .beyond = "too cold or too hot for fish", .help = "temperature, above "
     HW_FIGURE_FORMALIN_WARM_FROM " C fish stand less"},
    [DOSE_BIOFILTER] = {.name = "biofilter", .unit = "", .kind = HW_CHOICE, .hi = 1,
     .words = yes_no_words, .when_input = DOSE_KIND, .when_words = 1u << KIND_DYE,
     .help = "does a biofilter or media of one share this water?"},
    [DOSE_FORMALIN_BASIS] = {.name = "formalin_basis", .unit = "", .kind = HW_CHOICE,
     .hi = HW_FORMALIN_FORMALDEHYDE_MG, .words = formalin_words, .when_input = DOSE_KIND,
     .when_words = 1u << KIND_FORMALIN, .help = "what a level of formalin counts, never guessed"},
    [DOSE_SOURCE] = {.name = "source", .unit = "", .kind = HW_CHOICE, .hi = DOSE_SOURCE_POWDER,
     .words = source_words, .need = HW_PRESET, .preset = DOSE_SOURCE_LIQUID,
     .help = "what it is dosed from"},
    [DOSE_NOW] = {.name = "now", LEVEL_MG, MG, .lo = HW_DOSE_LEVEL_MIN, .need = HW_PRESET,
     .cell_must = true, .beyond = "more is no treatment",
     .help = "level in the water before the dose"},
    [DOSE_NOW_UL] = {.name = "now", LEVEL_UL, UL, .lo = HW_DOSE_LEVEL_MIN, .need = HW_PRESET,
     .cell_must = true, .beyond = "more is no treatment",
     .help = "level in the water before the dose"},
    [DOSE_TARGET] = {.name = "target", .aim = true, LEVEL_MG, LEAST, MG, .group = DOSE_WANTED,
     .beyond = "more is no treatment", .help = "level wanted"},
    [DOSE_TARGET_UL] = {.name = "target", .aim = true, LEVEL_UL, LEAST, UL, .group = DOSE_WANTED,
     .beyond = "more is no treatment", .help = "level wanted"},
    [DOSE_ADDED_LIQUID] = {.name = "added", .unit = "mL", .kind = HW_VOLUME, LIQUIDS, .lo = 1e-3,
     .hi = HW_DOSE_LIQUID_MAX, .group = DOSE_WANTED, .beyond = "check the unit",
     .help = "what went in already, to learn the level now"},
    [DOSE_ADDED_MASS] = {.name = "added", .unit = "g", .kind = HW_MASS, .lo = 1e-5,
     .hi = HW_DOSE_MASS_MAX, .group = DOSE_WANTED, .when_input = DOSE_SOURCE,
     .when_words = DOSE_FROM_SOLID, .beyond = "check the unit",
     .help = "what went in already, to learn the level now"},
    [DOSE_STRENGTH] = {.name = "strength", .unit = "mg/mL", .kind = HW_CONCENTRATION, LIQUIDS,
     .unit_must = true, .lo = PRODUCT_MIN, .hi = PRODUCT_MAX, .need = HW_OPTIONAL,
     .beyond = "check the unit, 1 %wv is 10 mg/mL",
     .help = "medicine in the liquid (of formalin: formaldehyde)"},
    [DOSE_STRENGTH_AS] = {.name = "strength_as", .unit = "", .kind = HW_CHOICE,
     .hi = DOSE_STRENGTH_AS_SALT, .words = strength_words, .need = HW_PRESET,
     .preset = DOSE_STRENGTH_AS_IS, .when_input = DOSE_KIND, .when_words = KINDS_OF_COPPER,
     .help = "what strength or label counts, copper or its salt"},
    [DOSE_LABEL_LIQUID] = {.name = "label_liquid", .unit = "mL", .kind = HW_VOLUME, LIQUIDS,
     .lo = HW_STOCK_PER_MIN, .hi = HW_STOCK_PER_MAX, .need = HW_OPTIONAL,
     .beyond = "below 0.1 mL multiply all three, above 1 L divide them",
     .help = "dose of liquid on the label"},
    [DOSE_LABEL_MASS] = {.name = "label_mass", .unit = "g", .kind = HW_MASS,
     .lo = HW_DOSE_LABEL_MASS_MIN, .hi = HW_DOSE_LABEL_MASS_MAX, .need = HW_OPTIONAL,
     .when_input = DOSE_SOURCE, .when_words = 1u << DOSE_SOURCE_POWDER,
     .beyond = "below 0.01 g multiply all three", .help = "dose of powder on the label"},
    [DOSE_LABEL_PER] = {.name = "label_per", .unit = "L", .kind = HW_VOLUME, LABELLED,
     .lo = HW_STOCK_INTO_MIN, .hi = HW_STOCK_INTO_MAX, .need = HW_OPTIONAL,
     .beyond = "check the unit", .help = "water that the label's dose is for"},
    [DOSE_LABEL_RAISES] = {.name = "label_raises", .unit = "mg/L", .kind = HW_CONCENTRATION,
     LABELLED, .lo = HW_STOCK_RAISES_MIN, .hi = HW_STOCK_RAISES_MAX, .need = HW_OPTIONAL,
     .beyond = "check the unit", .help = "how far the label's dose raises that water"},
    [DOSE_PURITY] = {.name = "purity", .unit = "%", .kind = HW_SHARE, .lo = 0.01, .hi = 100,
     .need = HW_PRESET, .preset = 100, .when_input = DOSE_SOURCE, .when_words = DOSE_FROM_SOLID,
     .beyond = "less is something else",
     .help = "purity of the crystals, or medicine in the powder"},
    [DOSE_FLOOR] = {.name = "floor", LEVEL_MG, LEAST, .need = HW_OPTIONAL,
     .when_input = DOSE_KIND, .when_words = DOSE_NOT_FORMALIN, .beyond = "more is no treatment",
     .help = "least that treats, by the label"},
    [DOSE_CEILING] = {.name = "ceiling", LEVEL_MG, LEAST, MG, .need = HW_OPTIONAL,
     .beyond = "more is no treatment", .help = "most that fish stand, by the label"},
    [DOSE_CEILING_UL] = {.name = "ceiling", LEVEL_UL, LEAST, UL, .need = HW_OPTIONAL,
     .beyond = "more is no treatment", .help = "most that fish stand, by the label"},
    [DOSE_STEPS] = {.name = "steps", .unit = "", .kind = HW_COUNT, .lo = 1,
     .hi = DOSE_STEPS_MOST, .need = HW_PRESET, .preset = 1, .beyond = "plan no further",
     .help = "how many equal parts it is poured in"},
    [DOSE_DAYS] = {.name = "days", .unit = "d", .kind = HW_TIME, .hi = 30, .need = HW_PRESET,
     .beyond = "plan no further", .help = "time for the steps (4 in 4 days: one a day)"},
};

static const struct hw_result results[DOSE_RESULTS] = {
    [DOSE_STEP_AMOUNT] = {.name = "step_amount", .unit = "mL", .kind = HW_VOLUME, .digits = 3,
     .safe = -1, .sometimes = true, .pour = true, .help = "pour now"},
    [DOSE_STEP_MASS] = {.name = "step_mass", .unit = "g", .kind = HW_MASS, .digits = 3,
     .safe = -1, .sometimes = true, .pour = true, .help = "weigh now"},
    [DOSE_STEP_EVERY] = {.name = "step_every", .unit = "h", .kind = HW_TIME, .digits = 2,
     .safe = 1, .sometimes = true, .help = "from one step to the next"},
    [DOSE_LEVEL_AFTER] = {.name = "level_after", .unit = "mg/L", .kind = HW_CONCENTRATION,
     .digits = 3, .sometimes = true, .help = "level when all is in and mixed"},
    [DOSE_LIQUID] = {.name = "liquid", .unit = "mL", .kind = HW_VOLUME, .digits = 3, .safe = -1,
     .sometimes = true, .help = "all steps together"},
    [DOSE_MASS] = {.name = "mass", .unit = "g", .kind = HW_MASS, .digits = 3, .safe = -1,
     .sometimes = true, .help = "all steps together"},
    [DOSE_SHARE_BACK] = {.name = "share_back", .unit = "%", .kind = HW_SHARE, .digits = 3,
     .safe = 1, .sometimes = true, .help = "water to change, to what may stay in it"},
    [DOSE_SOLUTION_UL] = {.name = "solution_ul", .unit = "uL/L", .kind = HW_PARTS, .digits = 3,
     .sometimes = true, .help = "formalin when mixed, uL of 37 % solution"},
    [DOSE_SOLUTION_MG] = {.name = "solution_mg", .unit = "mg/L", .kind = HW_CONCENTRATION,
     .digits = 3, .sometimes = true, .help = "formalin when mixed, mg of 37 % solution"},
    [DOSE_FORMALDEHYDE] = {.name = "formaldehyde", .unit = "mg/L", .kind = HW_CONCENTRATION,
     .digits = 3, .sometimes = true, .help = "formalin when mixed, mg of formaldehyde"},
    [DOSE_OXYGEN_USED] = {.name = "oxygen_used", .unit = "mg/L", .kind = HW_CONCENTRATION,
     .digits = 2, .sometimes = true, .help = "oxygen it takes within 30 to 36 hours"},
    [DOSE_ACTIVE] = {.name = "active", .unit = "mg", .kind = HW_MASS, .digits = 3,
     .detail = true, .help = "medicine in all of it; formaldehyde if formalin"},
};
/* clang-format on */

static const char *const sources[] = {"conservation",
                                      "iupac-weights",
                                      "copper-window",
                                      "copper-ramp",
                                      "copper-fresh",
                                      "copper-salinity",
                                      "copper-products",
                                      "formalin-forms",
                                      "formalin-baths",
                                      "formalin-oxygen",
                                      "formalin-filter",
                                      "rifici1996",
                                      "dye-chemistry",
                                      "common-practice",
                                      "our-arithmetic",
                                      "label-and-law",
                                      NULL};

static void answer(const double in[], double out[], uint64_t *notes)
{
    struct dose_plan plan = dose_plan(in);
    out[DOSE_LIQUID] = plan.liquid;
    out[DOSE_MASS] = plan.mass;
    out[DOSE_ACTIVE] = plan.active;
    out[DOSE_STEP_AMOUNT] = plan.step_liquid;
    out[DOSE_STEP_MASS] = plan.step_mass;
    out[DOSE_STEP_EVERY] = plan.step_every;
    out[DOSE_LEVEL_AFTER] = plan.kind == KIND_FORMALIN ? (double)NAN : plan.after;
    out[DOSE_SOLUTION_UL] = plan.solution_ul;
    out[DOSE_SOLUTION_MG] = plan.solution_mg;
    out[DOSE_FORMALDEHYDE] = plan.formaldehyde;
    out[DOSE_OXYGEN_USED] = plan.oxygen;
    out[DOSE_SHARE_BACK] = plan.share_back;
    *notes |= dose_notes(&plan, in);
}

/* clang-format off */
const struct hw_calc hw_calc_dose = {
    .name = "dose",
    .purpose = "what to pour or weigh for a level of medicine",
    .inputs = inputs, .n_inputs = DOSE_INPUTS, .results = results, .n_results = DOSE_RESULTS,
    .notes = hw_dose_notes, .n_notes = HW_DOSE_NOTES, .sources = sources, .answer = answer,
    .work = dose_work,
};
/* clang-format on */
