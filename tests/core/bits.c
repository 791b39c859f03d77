/* bits.c - prints hashes of the results of the core over a grid. `make bits` builds it with several
 * compilers, levels of optimisation and C libraries: every build must print the same line.
 *
 * FNV-1a, 64 bits, over the status and the IEEE bytes of each result, lowest byte first. A result
 * that comes with a negative status is left out: NaN has no bits to promise. */
#include <stdint.h>
#include <stdio.h>
#include <string.h>

#include "holdwater/ammonia.h"
#include "holdwater/criteria.h"

enum {
    MODELS = 3,
    SCALES = 5,
    CRITERIA = 4
}; /* the last criteria may be unknown: refusals count */

static const uint64_t start = UINT64_C(14695981039346656037);
static const uint64_t prime = UINT64_C(1099511628211);

static uint64_t with_bytes(uint64_t hash, uint64_t bits, int n)
{
    for (int i = 0; i < n; i++)
        hash = (hash ^ (bits >> (8 * i) & 0xff)) * prime;
    return hash;
}

static uint64_t with_result(uint64_t hash, int status, double result)
{
    uint64_t bits;

    hash = with_bytes(hash, (uint64_t)(status + 128), 1);
    if (status < 0)
        return hash;
    memcpy(&bits, &result, sizeof bits);
    return with_bytes(hash, bits, 8);
}

/* From lo to hi, both included, in n steps that are no round numbers. */
static double point(double lo, double hi, int i, int n)
{
    return i == n ? hi : lo + (hi - lo) * i / n;
}

static uint64_t pk_hash(enum hw_ammonia_model model, enum hw_ph_scale scale, uint64_t hash)
{
    for (int t = 0; t <= 37; t++) {
        for (int s = 0; s <= 29; s++) {
            double pk = 0;
            int status = hw_ammonia_pk(model, scale, point(0, 40, t, 37), point(0, 45, s, 29), &pk);

            hash = with_result(hash, status, pk);
        }
    }
    return hash;
}

static uint64_t fraction_hash(enum hw_ammonia_model model, enum hw_ph_scale scale, uint64_t hash)
{
    for (int p = 0; p <= 13; p++) {
        for (int t = 0; t <= 11; t++) {
            for (int s = 0; s <= 11; s++) {
                double fraction = 0;
                int status =
                    hw_ammonia_fraction(model, scale, point(5, 10, p, 13), point(0, 40, t, 11),
                                        point(0, 45, s, 11), &fraction);

                hash = with_result(hash, status, fraction);
            }
        }
    }
    return hash;
}

static uint64_t criterion_hash(void)
{
    uint64_t hash = start;

    for (int which = 0; which < CRITERIA; which++) {
        for (int p = 0; p <= 47; p++) {
            for (int t = 0; t <= 31; t++) {
                double tan_n = 0;
                int status = hw_criteria_epa2013((enum hw_criteria_limit)which,
                                                 point(6.5, 9, p, 47), point(0, 30, t, 31), &tan_n);

                hash = with_result(hash, status, tan_n);
            }
        }
    }
    return hash;
}

static void print_hash(const char *name, uint64_t hash)
{
    printf(" %s %08lx%08lx", name, (unsigned long)(hash >> 32),
           (unsigned long)(hash & UINT64_C(0xffffffff)));
}

int main(void)
{
    uint64_t pk = start, fraction = start;

    for (int model = 0; model < MODELS; model++) {
        for (int scale = 0; scale < SCALES; scale++) {
            pk = pk_hash((enum hw_ammonia_model)model, (enum hw_ph_scale)scale, pk);
            fraction =
                fraction_hash((enum hw_ammonia_model)model, (enum hw_ph_scale)scale, fraction);
        }
    }
    print_hash("pk", pk);
    print_hash("fraction", fraction);
    print_hash("criteria", criterion_hash());
    printf("\n");
    return 0;
}
