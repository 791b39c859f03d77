/* calc_dose.c - a medicine brought to a level: what to pour or weigh, at once or in steps; or what
 * was poured. */
#include "calc/dose_plan.h"
#include "calc/list.h"
#include "tables.h"

#include <math.h>

enum {
    LIQUID,
    MASS,
    ACTIVE,
    STEP_AMOUNT,
    STEP_MASS,
    STEP_EVERY,
    LEVEL_AFTER,
    SOLUTION_UL,
    SOLUTION_MG,
    FORMALDEHYDE,
    OXYGEN_USED,
    SHARE_BACK,
    RESULTS
};

static const char *const kind_words[] = {
    "copper-ionic", "copper-amine", "copper-chelated", "dye", "formalin", "other", NULL};
static const char *const formalin_words[] = {"solution-ul", "solution-mg", "formaldehyde-mg", NULL};
static const char *const source_words[] = {"liquid", "copper-sulfate-pentahydrate", "powder", NULL};
static const char *const strength_words[] = {"as-is", "copper-sulfate-pentahydrate", NULL};

enum { WANTED = 1, STEPS_MOST = 30 }; /* the group of target and added */

enum {
    LABEL_ALONE = 1u << KIND_AMINE | 1u << KIND_CHELATED, /* no usual window: it must be given */
    WINDOW_FREE = 1u << KIND_IONIC | 1u << KIND_DYE | 1u << KIND_OTHER,
    FROM_LIQUID = 1u << SOURCE_LIQUID,
    FROM_SOLID = 1u << SOURCE_PENTAHYDRATE | 1u << SOURCE_POWDER,
    IN_MG = 1u << HW_FORMALIN_SOLUTION_MG | 1u << HW_FORMALIN_FORMALDEHYDE_MG,
    IN_UL = 1u << HW_FORMALIN_SOLUTION_UL
};

#define LEVEL_MG .unit = "mg/L", .kind = HW_CONCENTRATION, .hi = HW_DOSE_LEVEL_MAX
#define LEVEL_UL .unit = "uL/L", .kind = HW_PARTS, .hi = HW_DOSE_LEVEL_MAX
#define LEAST    .lo = 1e-4
#define MG       .when_input = FORMALIN_BASIS, .when_words = IN_MG | HW_WHEN_UNASKED
#define UL       .when_input = FORMALIN_BASIS, .when_words = IN_UL
#define LIQUIDS  .when_input = SOURCE, .when_words = FROM_LIQUID

static const struct hw_input inputs[INPUTS] = {
    [VOLUME] = {.name = "volume",
                .unit = "L",
                .kind = HW_VOLUME,
                .unit_must = true,
                .lo = HW_DOSE_VOLUME_MIN,
                .hi = HW_DOSE_VOLUME_MAX,
                .help = "water in the tank and its filter, without rock and sand; outside this "
                        "doubt the unit",
                .need = HW_REQUIRED,
                .when_input = -1},
    [KIND] = {.name = "kind",
              .unit = "",
              .kind = HW_CHOICE,
              .lo = 0,
              .hi = KIND_OTHER,
              .words = kind_words,
              .help = "what is dosed; the label says which copper it is",
              .need = HW_REQUIRED,
              .when_input = -1},
    [FORMALIN_BASIS] = {.name = "formalin_basis",
                        .unit = "",
                        .kind = HW_CHOICE,
                        .lo = 0,
                        .hi = HW_FORMALIN_FORMALDEHYDE_MG,
                        .words = formalin_words,
                        .help = "what a level of formalin counts, never guessed: uL of the 37 % "
                                "solution, mg of it, or mg of formaldehyde in a litre of water",
                        .need = HW_REQUIRED,
                        .when_input = KIND,
                        .when_words = 1u << KIND_FORMALIN},
    [SOURCE] = {.name = "source",
                .unit = "",
                .kind = HW_CHOICE,
                .lo = 0,
                .hi = SOURCE_POWDER,
                .words = source_words,
                .help = "what it is dosed from",
                .need = HW_PRESET,
                .preset = SOURCE_LIQUID,
                .when_input = -1},
    [NOW] = {LEVEL_MG, .name = "now", .lo = HW_DOSE_LEVEL_MIN,
             .help = "level in the water before, as measured", .need = HW_PRESET, .preset = 0, MG},
    [NOW_UL] = {LEVEL_UL, .name = "now", .lo = HW_DOSE_LEVEL_MIN,
                .help = "level in the water before", .need = HW_PRESET, .preset = 0, UL},
    [TARGET] = {LEVEL_MG, LEAST, .name = "target",
                .help = "level wanted; above 10 g/L is no treatment", .need = HW_OPTIONAL,
                .group = WANTED, MG},
    [TARGET_UL] = {LEVEL_UL, LEAST, .name = "target",
                   .help = "level wanted; above 10 mL/L is no treatment", .need = HW_OPTIONAL,
                   .group = WANTED, UL},
    [ADDED_LIQUID] = {.name = "added",
                      .unit = "mL",
                      .kind = HW_VOLUME,
                      .unit_must = true,
                      .lo = 1e-3,
                      .hi = HW_DOSE_LIQUID_MAX,
                      .help = "what was poured already, to learn where the level is now",
                      .need = HW_OPTIONAL,
                      .group = WANTED,
                      LIQUIDS},
    [ADDED_MASS] = {.name = "added",
                    .unit = "g",
                    .kind = HW_MASS,
                    .unit_must = true,
                    .lo = 1e-5,
                    .hi = HW_DOSE_MASS_MAX,
                    .help = "what was put in already, to learn where the level is now",
                    .need = HW_OPTIONAL,
                    .group = WANTED,
                    .when_input = SOURCE,
                    .when_words = FROM_SOLID},
    [STRENGTH] = {.name = "strength",
                  .unit = "mg/mL",
                  .kind = HW_CONCENTRATION,
                  .unit_must = true,
                  .lo = PRODUCT_MIN,
                  .hi = PRODUCT_MAX,
                  .help = "medicine in the liquid, 1 %wv is 10 mg/mL; of formalin formaldehyde, "
                          "37 %wv if not given; outside this there is no such liquid",
                  .need = HW_OPTIONAL,
                  LIQUIDS},
    [STRENGTH_AS] = {.name = "strength_as",
                     .unit = "",
                     .kind = HW_CHOICE,
                     .lo = 0,
                     .hi = STRENGTH_AS_SALT,
                     .words = strength_words,
                     .help = "what the strength, or the rise on the label, counts: copper as it "
                             "is, or its salt",
                     .need = HW_PRESET,
                     .preset = STRENGTH_AS_IS,
                     .when_input = KIND,
                     .when_words = KINDS_OF_COPPER},
    [LABEL_DOSE] = {.name = "label_dose",
                    .unit = "mL",
                    .kind = HW_VOLUME,
                    .unit_must = true,
                    .lo = HW_STOCK_PER_MIN,
                    .hi = HW_STOCK_PER_MAX,
                    .help = "what the label has poured; below 0.1 mL multiply all three, above 1 L "
                            "divide them",
                    .need = HW_OPTIONAL,
                    LIQUIDS},
    [LABEL_PER] = {.name = "label_per",
                   .unit = "L",
                   .kind = HW_VOLUME,
                   .unit_must = true,
                   .lo = HW_STOCK_INTO_MIN,
                   .hi = HW_STOCK_INTO_MAX,
                   .help = "into so much water; outside this doubt the unit",
                   .need = HW_OPTIONAL,
                   LIQUIDS},
    [LABEL_RAISES] = {.name = "label_raises",
                      .unit = "mg/L",
                      .kind = HW_CONCENTRATION,
                      .lo = HW_STOCK_RAISES_MIN,
                      .hi = HW_STOCK_RAISES_MAX,
                      .help = "to raise it by so much; outside this doubt the unit",
                      .need = HW_OPTIONAL,
                      LIQUIDS},
    [PURITY] = {.name = "purity",
                .unit = "%",
                .kind = HW_SHARE,
                .lo = 0.01,
                .hi = 100,
                .help = "of the crystals, or the share of a powder that is the medicine; below "
                        "0.01 % it is something else",
                .need = HW_PRESET,
                .preset = 100,
                .when_input = SOURCE,
                .when_words = FROM_SOLID},
    [FLOOR_ASKED] = {LEVEL_MG, LEAST, .name = "floor",
                     .help = "least level that treats, from the label: products of these kinds "
                             "differ",
                     .need = HW_REQUIRED, .when_input = KIND, .when_words = LABEL_ALONE},
    [FLOOR] = {LEVEL_MG, LEAST, .name = "floor",
               .help = "least level that treats; ionic copper 0.15 if not given",
               .need = HW_OPTIONAL, .when_input = KIND, .when_words = WINDOW_FREE},
    [CEILING_ASKED] = {LEVEL_MG, LEAST, .name = "ceiling",
                       .help = "highest level that fish bear, from the label: no dose goes above "
                               "it",
                       .need = HW_REQUIRED, .when_input = KIND, .when_words = LABEL_ALONE},
    [CEILING] = {LEVEL_MG, LEAST, .name = "ceiling",
                 .help = "highest level that fish bear: no dose goes above it; ionic copper 0.20 "
                         "if not given",
                 .need = HW_OPTIONAL, .when_input = KIND, .when_words = WINDOW_FREE},
    [CEILING_FORMALIN] = {LEVEL_MG, LEAST, .name = "ceiling",
                          .help =
                              "highest level of formalin that fish bear, in the basis; that of 250 "
                              "uL/L if not given",
                          .need = HW_OPTIONAL, .when_input = FORMALIN_BASIS, .when_words = IN_MG},
    [CEILING_UL] = {LEVEL_UL, LEAST, .name = "ceiling",
                    .help = "highest level of formalin that fish bear; 250 if not given",
                    .need = HW_OPTIONAL, UL},
    [STEPS] = {.name = "steps",
               .unit = "",
               .kind = HW_COUNT,
               .lo = 1,
               .hi = STEPS_MOST,
               .help = "equal parts that it is poured in; plan no further than thirty",
               .need = HW_PRESET,
               .preset = 1,
               .when_input = -1},
    [DAYS] = {.name = "days",
              .unit = "d",
              .kind = HW_TIME,
              .lo = 0,
              .hi = 30,
              .help = "over which the steps are spread: 4 steps in 4 days are one a day; plan no "
                      "further than thirty",
              .need = HW_PRESET,
              .preset = 0,
              .when_input = -1},
};

static const struct hw_result results[RESULTS] = {
    [LIQUID] = {.name = "liquid",
                .unit = "mL",
                .kind = HW_VOLUME,
                .digits = 3,
                .safe = -1,
                .sometimes = true,
                .help = "to pour, in all"},
    [MASS] = {.name = "mass",
              .unit = "g",
              .kind = HW_MASS,
              .digits = 3,
              .safe = -1,
              .sometimes = true,
              .help = "to weigh, in all"},
    [ACTIVE] = {.name = "active",
                .unit = "mg",
                .kind = HW_MASS,
                .digits = 3,
                .help = "of the medicine in it; of formalin, formaldehyde"},
    [STEP_AMOUNT] = {.name = "step_amount",
                     .unit = "mL",
                     .kind = HW_VOLUME,
                     .digits = 3,
                     .safe = -1,
                     .sometimes = true,
                     .help = "to pour at each of the steps"},
    [STEP_MASS] = {.name = "step_mass",
                   .unit = "g",
                   .kind = HW_MASS,
                   .digits = 3,
                   .safe = -1,
                   .sometimes = true,
                   .help = "to weigh for each of the steps"},
    [STEP_EVERY] = {.name = "step_every",
                    .unit = "h",
                    .kind = HW_TIME,
                    .digits = 2,
                    .safe = 1,
                    .sometimes = true,
                    .help = "from one step to the next"},
    [LEVEL_AFTER] = {.name = "level_after",
                     .unit = "mg/L",
                     .kind = HW_CONCENTRATION,
                     .digits = 3,
                     .sometimes = true,
                     .help = "level when all is in and mixed"},
    [SOLUTION_UL] = {.name = "solution_ul",
                     .unit = "uL/L",
                     .kind = HW_PARTS,
                     .digits = 3,
                     .sometimes = true,
                     .help = "formalin when all is in and mixed, as uL of 37 % solution"},
    [SOLUTION_MG] = {.name = "solution_mg",
                     .unit = "mg/L",
                     .kind = HW_CONCENTRATION,
                     .digits = 3,
                     .sometimes = true,
                     .help = "formalin when all is in and mixed, as mg of 37 % solution"},
    [FORMALDEHYDE] = {.name = "formaldehyde",
                      .unit = "mg/L",
                      .kind = HW_CONCENTRATION,
                      .digits = 3,
                      .sometimes = true,
                      .help = "formalin when all is in and mixed, as mg of formaldehyde"},
    [OXYGEN_USED] = {.name = "oxygen_used",
                     .unit = "mg/L",
                     .kind = HW_CONCENTRATION,
                     .digits = 2,
                     .sometimes = true,
                     .help = "oxygen that this takes out of the water within 30 to 36 hours, if "
                             "it stays in"},
    [SHARE_BACK] = {.name = "share_back",
                    .unit = "%",
                    .kind = HW_SHARE,
                    .digits = 3,
                    .safe = 1,
                    .sometimes = true,
                    .help = "of the water to change, at once, to come back to the ceiling"},
};

static const char *const sources[] = {"conservation",
                                      "iupac-weights",
                                      "copper-window",
                                      "copper-ramp",
                                      "formalin-forms",
                                      "formalin-baths",
                                      "formalin-oxygen",
                                      "dye-chemistry",
                                      "our-arithmetic",
                                      "label-and-law",
                                      NULL};

static void answer(const double in[], double out[], uint64_t *notes)
{
    struct dose_plan plan = dose_plan(in);
    out[LIQUID] = plan.liquid;
    out[MASS] = plan.mass;
    out[ACTIVE] = plan.active;
    out[STEP_AMOUNT] = plan.step_liquid;
    out[STEP_MASS] = plan.step_mass;
    out[STEP_EVERY] = plan.step_every;
    out[LEVEL_AFTER] = plan.kind == KIND_FORMALIN ? (double)NAN : plan.after;
    out[SOLUTION_UL] = plan.solution_ul;
    out[SOLUTION_MG] = plan.solution_mg;
    out[FORMALDEHYDE] = plan.formaldehyde;
    out[OXYGEN_USED] = plan.oxygen;
    out[SHARE_BACK] = plan.share_back;
    *notes |= dose_notes(&plan, in);
}

const struct hw_calc hw_calc_dose = {
    .name = "dose",
    .purpose = "what to pour or weigh to bring a medicine to a level, or where it is now",
    .inputs = inputs,
    .n_inputs = INPUTS,
    .results = results,
    .n_results = RESULTS,
    .notes = hw_dose_notes,
    .n_notes = HW_DOSE_NOTES,
    .sources = sources,
    .answer = answer,
    .work = dose_work,
};
