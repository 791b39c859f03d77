/* carbonate_work.c - the carbonate system written down with its constants: on the total scale, per
 * kg. */
#include "calc/carbonate_work.h"

#include "holdwater/carbonate.h"
#include "holdwater/nitrogen.h"

/* Parts of expressions. OTHERS: mmol/kg of alkalinity that is no carbonate. ION and ION_2:
 * bicarbonate and carbonate for one carbon dioxide. Their numbers follow in the order of the
 * names. */
#define OTHERS                                                                                     \
    "(1000*(%.12g/(1 + 10^(%.12g - %.15g)) + 10^(%.15g - %.12g) - 10^(0 - %.15g))"                 \
    " + %.12g/%.10g/%.12g/(1 + 10^(%.12g - %.15g)))"
#define ION   "10^(%.15g - %.12g)"
#define ION_2 "10^(2*%.15g - %.12g - %.12g)"

static struct hw_carbonate_constants constants_of(const struct carbonate_water *water)
{
    struct hw_carbonate_constants k;
    (void)hw_carbonate_constants(water->temp, water->salinity, &k);
    return k;
}

void step_carbon(const char *symbol, double carbon, double ph, const struct carbonate_water *water,
                 struct hw_steps *steps)
{
    const struct hw_carbonate_constants k = constants_of(water);
    const double p = ph - k.meter_over_total;
    hw_step(steps, symbol, carbon, "mmol/L", "carbonate-set",
            "%.12g * (%.12g/%.12g - " OTHERS ") * (1 + " ION " + " ION_2 ")/(" ION " + 2*" ION_2
            ")",
            k.density, water->alkalinity, k.density, k.boron, k.pkb, p, p, k.pkw, p, water->tan,
            HW_MOLAR_N, k.density, k.pkn, p, p, k.pk1, p, k.pk1, k.pk2, p, k.pk1, p, k.pk1, k.pk2);
}

void step_air(const char *symbol, double air, double ph, double carbon,
              const struct carbonate_water *water, struct hw_steps *steps)
{
    const struct hw_carbonate_constants k = constants_of(water);
    const double p = ph - k.meter_over_total;
    hw_step(steps, symbol, air, "uatm", "carbonate-set",
            "1000 * %.12g/%.12g / (1 + " ION " + " ION_2 ") / %.12g", carbon, k.density, p, k.pk1,
            p, k.pk1, k.pk2, k.per_atmosphere);
}

void step_ph_closed(const struct carbonate_symbols *symbols, double ph, double carbon,
                    const struct carbonate_water *water, struct hw_steps *steps)
{
    const struct hw_carbonate_constants k = constants_of(water);
    const double p = ph - k.meter_over_total;
    hw_step(steps, symbols->ph, ph, "", "carbonate-set", "%.15g", ph);
    hw_step(steps, symbols->proof, water->alkalinity, "meq/L", "carbonate-set",
            "%.12g * (" OTHERS " + %.12g/%.12g*(" ION " + 2*" ION_2 ")/(1 + " ION " + " ION_2 "))",
            k.density, k.boron, k.pkb, p, p, k.pkw, p, water->tan, HW_MOLAR_N, k.density, k.pkn, p,
            carbon, k.density, p, k.pk1, p, k.pk1, k.pk2, p, k.pk1, p, k.pk1, k.pk2);
}

void step_ph_in_air(const struct carbonate_symbols *symbols, double ph, double air,
                    const struct carbonate_water *water, struct hw_steps *steps)
{
    const struct hw_carbonate_constants k = constants_of(water);
    const double p = ph - k.meter_over_total;
    hw_step(steps, symbols->ph, ph, "", "carbonate-set", "%.15g", ph);
    hw_step(steps, symbols->proof, water->alkalinity, "meq/L", "carbonate-set",
            "%.12g * (" OTHERS " + %.12g*%.12g/1000*(" ION " + 2*" ION_2 "))", k.density, k.boron,
            k.pkb, p, p, k.pkw, p, water->tan, HW_MOLAR_N, k.density, k.pkn, p, k.per_atmosphere,
            air, p, k.pk1, p, k.pk1, k.pk2);
}
