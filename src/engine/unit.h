/* unit.h - the units of this trade and how they convert. */
#ifndef HW_UNIT_H
#define HW_UNIT_H
#include "calc/calc.h"

/* One unit. A value x in it is (x - shift) * num / den in the first unit listed for its kind.
 * Definitions with finitely many decimals are held whole, never as a rounded product. */
struct hw_unit {
    enum hw_kind kind;
    const char *name;
    double shift, num, den;
    const char *definition; /* for people: what it is, or where its size comes from */
};

/* All units, grouped by kind; a NULL name ends the list. */
extern const struct hw_unit hw_units[];

/* What a kind is called in messages: "a volume". */
const char *hw_kind_name(enum hw_kind kind);

/* Other spellings of a unit, with blanks between; "" when there are none. */
const char *hw_unit_aliases(const struct hw_unit *unit);

/* True when a unit may begin so: a letter, %, the sign of inches or that of degrees. */
bool hw_unit_begins(const char *text, size_t n);

/* The unit of that kind written as text[0..n), or NULL. Names and aliases are matched exactly: mL
 * is not ML. */
const struct hw_unit *hw_unit_find(enum hw_kind kind, const char *text, size_t n);

/* The first unit of any kind with that name or alias, or NULL: it tells a wrong kind from an
 * unknown word. */
const struct hw_unit *hw_unit_find_any(const char *text, size_t n);

/* The unit in which an input or a result is kept, NULL when its kind has none. */
const struct hw_unit *hw_unit_of(enum hw_kind kind, const char *name);

/* True when a bare number is refused for an input: of a volume, mass, length, density,
 * dosing rate or share, and where the table says so. */
bool hw_unit_must(const struct hw_input *input);

/* A point (a temperature keeps its offset) from one unit to another of the same kind. */
double hw_unit_convert(double value, const struct hw_unit *from, const struct hw_unit *to);

/* A difference of two points: no offset. */
double hw_unit_convert_step(double step, const struct hw_unit *from, const struct hw_unit *to);
#endif
