/* unit.c - the table of units. Sizes are exact definitions (international yard and pound 1959, US
 * liquid gallon of 231 cubic inches, imperial gallon of 4.54609 L) unless the row says otherwise.
 * `make oracles` holds them against an independent program. */
#include "engine/unit.h"

#include <string.h>

const struct hw_unit hw_units[] = {
    {HW_VOLUME, "L", 0, 1, 1, "litre, 1 dm3"},
    {HW_VOLUME, "mL", 0, 1, 1000, "millilitre"},
    {HW_VOLUME, "gal", 0, 3.785411784, 1, "US liquid gallon, 231 in3"},
    {HW_VOLUME, "impgal", 0, 4.54609, 1, "imperial gallon, 4.54609 L"},
    {HW_VOLUME, "floz", 0, 3.785411784, 128, "US fluid ounce, 1/128 gal"},
    {HW_VOLUME, "cup", 0, 3.785411784, 16, "US cup, 1/16 gal"},
    {HW_VOLUME, "pt", 0, 3.785411784, 8, "US liquid pint, 1/8 gal"},
    {HW_VOLUME, "qt", 0, 3.785411784, 4, "US liquid quart, 1/4 gal"},
    {HW_VOLUME, "tsp", 0, 3.785411784, 768, "US teaspoon of liquid, 1/768 gal"},
    {HW_VOLUME, "tbsp", 0, 3.785411784, 256, "US tablespoon of liquid, 1/256 gal"},
    {HW_VOLUME, "m3", 0, 1000, 1, "cubic metre"},
    {HW_VOLUME, "ft3", 0, 28.316846592, 1, "cubic foot, (0.3048 m)^3"},
    {HW_MASS, "g", 0, 1, 1, "gram"},
    {HW_MASS, "mg", 0, 1, 1000, "milligram"},
    {HW_MASS, "kg", 0, 1000, 1, "kilogram"},
    {HW_MASS, "oz", 0, 28.349523125, 1, "avoirdupois ounce, 1/16 lb"},
    {HW_MASS, "lb", 0, 453.59237, 1, "avoirdupois pound, 0.45359237 kg"},
    {HW_LENGTH, "cm", 0, 1, 1, "centimetre"},
    {HW_LENGTH, "mm", 0, 1, 10, "millimetre"},
    {HW_LENGTH, "m", 0, 100, 1, "metre"},
    {HW_LENGTH, "in", 0, 2.54, 1, "inch, 25.4 mm"},
    {HW_LENGTH, "ft", 0, 30.48, 1, "foot, 12 in"},
    {HW_TEMPERATURE, "C", 0, 1, 1, "degree Celsius"},
    {HW_TEMPERATURE, "F", 32, 5, 9, "degree Fahrenheit, C = (F - 32) * 5 / 9"},
    {HW_TEMPERATURE, "K", 273.15, 1, 1, "kelvin, C = K - 273.15"},
    {HW_TEMPERATURE_STEP, "C", 0, 1, 1, "difference in degrees Celsius"},
    {HW_TEMPERATURE_STEP, "F", 0, 5, 9, "difference in degrees Fahrenheit"},
    {HW_TEMPERATURE_STEP, "K", 0, 1, 1, "difference in kelvin"},
    {HW_SALINITY, "g/kg", 0, 1, 1, "grams of sea salt in a kilogram of water"},
    {HW_SALINITY, "ppt", 0, 1, 1, "parts per thousand, taken as g/kg"},
    {HW_SALINITY, "psu", 0, 1, 1, "practical salinity, taken as g/kg (they differ by 0.5 %)"},
    {HW_CONCENTRATION, "mg/L", 0, 1, 1, "milligram per litre"},
    {HW_CONCENTRATION, "ppm", 0, 1, 1, "taken as mg/L (in sea water mg/kg is 2.5 % less)"},
    {HW_CONCENTRATION, "ug/L", 0, 1, 1000, "microgram per litre"},
    {HW_CONCENTRATION, "g/L", 0, 1000, 1, "gram per litre"},
    {HW_CONCENTRATION, "mg/mL", 0, 1000, 1, "milligram per millilitre"},
    {HW_CONCENTRATION, "%wv", 0, 10000, 1, "per cent weight in volume, 1 %wv = 10 mg/mL"},
    {HW_SHARE, "%", 0, 1, 1, "per cent; the sign is always written"},
    {HW_TIME, "h", 0, 1, 1, "hour"},
    {HW_TIME, "min", 0, 1, 60, "minute"},
    {HW_TIME, "d", 0, 24, 1, "day, 24 h"},
    {HW_DOSE_RATE, "mL/L", 0, 1, 1, "millilitre of product in a litre of water"},
    {HW_DOSE_RATE, "mL/gal", 0, 1, 3.785411784, "millilitre of product in a US gallon"},
    {HW_CONDUCTIVITY, "mS/cm", 0, 1, 1, "millisiemens per centimetre"},
    {HW_CONDUCTIVITY, "uS/cm", 0, 1, 1000, "microsiemens per centimetre"},
    {HW_ALKALINITY, "meq/L", 0, 1, 1, "milliequivalent per litre"},
    {HW_ALKALINITY, "dKH", 0, 20, 56.077, "German degree, 10 mg CaO/L; CaO is 56.077 g/mol"},
    {HW_ALKALINITY, "mgCaCO3/L", 0, 2, 100.086,
     "milligram CaCO3 per litre; CaCO3 is 100.086 g/mol"},
    {HW_MASS_PER_DAY, "g/d", 0, 1, 1, "gram per day"},
    {HW_MASS_PER_DAY, "mg/d", 0, 1, 1000, "milligram per day"},
    {HW_MASS_PER_DAY, "kg/d", 0, 1000, 1, "kilogram per day"},
    {HW_MASS_PER_DAY, "oz/d", 0, 28.349523125, 1, "avoirdupois ounce per day"},
    {HW_MASS_PER_DAY, "lb/d", 0, 453.59237, 1, "avoirdupois pound per day"},
    {HW_DENSITY, "kg/m3", 0, 1, 1, "kilogram per cubic metre"},
    {HW_DENSITY, "g/mL", 0, 1000, 1, "gram per millilitre"},
    {HW_SLOPE, "%/C", 0, 1, 1, "per cent per degree Celsius"},
    {HW_CONTACT, "mg.min/L", 0, 1, 1, "milligram per litre times minute"},
    {HW_RISE_PER_DAY, "mg/L/d", 0, 1, 1, "milligram per litre and day"},
    {HW_BODY_RATE, "mg/kg/h", 0, 1, 1, "milligram per kilogram of fish and hour"},
    {HW_PARTS, "uL/L", 0, 1, 1, "microlitre of solution in a litre of water"},
    {HW_PARTS, "ppm", 0, 1, 1, "taken as uL/L where a volume in a volume is asked for"},
    {HW_PARTS, "mL/L", 0, 1000, 1, "millilitre of solution in a litre of water"},
    {HW_ALKALINITY_PER_DAY, "meq/L/d", 0, 1, 1, "milliequivalent per litre and day"},
    {HW_ALKALINITY_PER_DAY, "dKH/d", 0, 20, 56.077, "German degree per day"},
    {HW_ALKALINITY_PER_DAY, "mgCaCO3/L/d", 0, 2, 100.086, "milligram CaCO3 per litre and day"},
    {HW_NUMBER, NULL, 0, 1, 1, NULL},
};

/* Other spellings, with blanks between. None that could mean two units: no gallon, no ounce of
 * water, no bare degree sign. Where a mass in a day is asked for, a mass is one. */
static const struct {
    enum hw_kind kind;
    const char *name, *spellings;
} aliases[] = {
    {HW_VOLUME, "L", "l liter litre liters litres"},
    {HW_VOLUME, "mL", "ml milliliter millilitre milliliters millilitres"},
    {HW_MASS, "g", "gram grams"},
    {HW_MASS, "lb", "lbs"},
    {HW_LENGTH, "in", "inch inches \""},
    {HW_LENGTH, "ft", "foot feet"},
    {HW_TEMPERATURE, "C", "\xC2\xB0\x43"},
    {HW_TEMPERATURE, "F", "\xC2\xB0\x46"},
    {HW_TEMPERATURE_STEP, "C", "\xC2\xB0\x43"},
    {HW_TEMPERATURE_STEP, "F", "\xC2\xB0\x46"},
    {HW_CONCENTRATION, "mg/L", "mg/l"},
    {HW_CONCENTRATION, "ug/L", "ug/l"},
    {HW_CONCENTRATION, "g/L", "g/l"},
    {HW_CONCENTRATION, "mg/mL", "mg/ml"},
    {HW_TIME, "h", "hour hours"},
    {HW_TIME, "min", "minute minutes"},
    {HW_TIME, "d", "day days"},
    {HW_DOSE_RATE, "mL/L", "ml/l ml/L"},
    {HW_DOSE_RATE, "mL/gal", "ml/gal"},
    {HW_ALKALINITY, "meq/L", "meq/l"},
    {HW_ALKALINITY, "dKH", "dkh"},
    {HW_ALKALINITY, "mgCaCO3/L", "mgCaCO3/l"},
    {HW_MASS_PER_DAY, "g/d", "g g/day"},
    {HW_MASS_PER_DAY, "mg/d", "mg mg/day"},
    {HW_MASS_PER_DAY, "kg/d", "kg"},
    {HW_MASS_PER_DAY, "oz/d", "oz"},
    {HW_MASS_PER_DAY, "lb/d", "lb"},
    {HW_DENSITY, "g/mL", "g/ml"},
    {HW_RISE_PER_DAY, "mg/L/d", "mg/l/d"},
    {HW_PARTS, "uL/L", "ul/l"},
    {HW_PARTS, "mL/L", "ml/l ml/L"},
};

static const struct {
    enum hw_kind kind;
    const char *name;
} kind_names[] = {
    {HW_NUMBER, "a number"},
    {HW_COUNT, "a whole number"},
    {HW_CHOICE, "a word"},
    {HW_SET, "words joined by commas"},
    {HW_YES_NO, "yes or no"},
    {HW_SHARE, "a share"},
    {HW_VOLUME, "a volume"},
    {HW_MASS, "a mass"},
    {HW_LENGTH, "a length"},
    {HW_TEMPERATURE, "a temperature"},
    {HW_TEMPERATURE_STEP, "a difference in temperature"},
    {HW_SALINITY, "a salinity"},
    {HW_CONCENTRATION, "a concentration"},
    {HW_TIME, "a time"},
    {HW_DOSE_RATE, "a dosing rate"},
    {HW_CONDUCTIVITY, "a conductivity"},
    {HW_ALKALINITY, "an alkalinity"},
    {HW_PH, "a pH"},
    {HW_MASS_PER_DAY, "a mass per day"},
    {HW_DENSITY, "a density"},
    {HW_SLOPE, "a slope with temperature"},
    {HW_CONTACT, "a level times a time"},
    {HW_RISE_PER_DAY, "a change of concentration per day"},
    {HW_BODY_RATE, "a rate per mass of fish"},
    {HW_PARTS, "parts by volume"},
    {HW_ALKALINITY_PER_DAY, "a change of alkalinity per day"},
};

const char *hw_kind_name(enum hw_kind kind)
{
    const char *name = "a value";
    for (size_t i = 0; i < sizeof kind_names / sizeof kind_names[0]; i++) {
        if (kind_names[i].kind == kind) {
            name = kind_names[i].name;
        }
    }
    return name;
}

const char *hw_unit_aliases(const struct hw_unit *unit)
{
    for (size_t i = 0; i < sizeof aliases / sizeof aliases[0]; i++) {
        if (aliases[i].kind == unit->kind && strcmp(aliases[i].name, unit->name) == 0) {
            return aliases[i].spellings;
        }
    }
    return "";
}

static bool same_name(const struct hw_unit *unit, const char *text, size_t n)
{
    return strlen(unit->name) == n && memcmp(unit->name, text, n) == 0;
}

static bool is_alias(const struct hw_unit *unit, const char *text, size_t n)
{
    const char *word = hw_unit_aliases(unit);
    while (*word != '\0') {
        size_t length = strcspn(word, " ");
        if (length == n && memcmp(word, text, n) == 0) {
            return true;
        }
        word += length;
        word += *word == ' ' ? 1 : 0;
    }
    return false;
}

const struct hw_unit *hw_unit_find(enum hw_kind kind, const char *text, size_t n)
{
    for (const struct hw_unit *unit = hw_units; unit->name; unit++) {
        if (unit->kind == kind && (same_name(unit, text, n) || is_alias(unit, text, n))) {
            return unit;
        }
    }
    return NULL;
}

const struct hw_unit *hw_unit_find_any(const char *text, size_t n)
{
    for (const struct hw_unit *unit = hw_units; unit->name; unit++) {
        if (same_name(unit, text, n) || is_alias(unit, text, n)) {
            return unit;
        }
    }
    return NULL;
}

bool hw_unit_begins(const char *text, size_t n)
{
    if (n == 0) {
        return false;
    }
    bool letter = (text[0] >= 'a' && text[0] <= 'z') || (text[0] >= 'A' && text[0] <= 'Z');
    bool degree = n > 1 && text[0] == '\xC2' && text[1] == '\xB0';
    return letter || degree || text[0] == '%' || text[0] == '"';
}

const struct hw_unit *hw_unit_of(enum hw_kind kind, const char *name)
{
    return hw_unit_find(kind, name, strlen(name));
}

bool hw_unit_must(const struct hw_input *input)
{
    switch (input->kind) {
    case HW_VOLUME:
    case HW_MASS:
    case HW_LENGTH:
    case HW_DENSITY:
    case HW_DOSE_RATE:
    case HW_SHARE:
        return true;
    default:
        return input->unit_must;
    }
}

double hw_unit_convert(double value, const struct hw_unit *from, const struct hw_unit *to)
{
    if (from == to) {
        return value;
    }
    return (value - from->shift) * (from->num * to->den) / (from->den * to->num) + to->shift;
}

double hw_unit_convert_step(double step, const struct hw_unit *from, const struct hw_unit *to)
{
    return from == to ? step : step * (from->num * to->den) / (from->den * to->num);
}
