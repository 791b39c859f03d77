/* row_problem.c - what the reason codes in the column `problem` of rows mean. */
#include "cli/row_problem.h"

#include <stddef.h>

const struct row_problem row_problems[] = {
    {"bad-when",
     "No time that exists, as 2031-03-05 or 2031-03-05T08:15+00:00: a logbook needs one."},
    {"bound-or-guess",
     "Of a reading below the first step of the kit, as <0.25, write half of the step and as much"
     " doubt, 0.125+-0.125 with --spread. Of one told as ~1 write 1+-0.1. Above what the kit reads"
     " dilute the sample and test again."},
    {"broken-quotes", "A quote does not end where its cell does: put quotes around the whole cell, "
                      "and double those within."},
    {"decimal-comma",
     "Write a decimal point, or add --decimal comma when all numbers have a comma."},
    {"decimal-point", "Write a decimal comma, as --decimal comma says, or leave that out."},
    {"empty", "There is nothing but a unit or a sign: write the number."},
    {"half-width", "What follows +- is no number with a unit or %."},
    {"half-width-negative", "What follows +- must be above 0."},
    {"half-width-on-count", "A count is exact: leave +- out."},
    {"half-width-on-word", "A word is exact: leave +- out."},
    {"half-width-unit", "What follows +- takes the unit of the value, or %."},
    {"house-measure",
     "Drops and spoons of powder are no measure: count drops into a syringe, weigh the "
     "powder."},
    {"looks-like-gravity",
     "This looks like a specific gravity: ask salinity first, or write g/kg."},
    {"many-of-group", "Only one of these inputs may be given: leave the others empty."},
    {"missing", "This input must be given, and a preset does not stand in for a reading."},
    {"near-zero", "So small a number is below the least that is taken: check the unit."},
    {"needs-unit", "Write the unit behind the number, or into the name of the column."},
    {"none-of-group", "One of these inputs must be given."},
    {"not-a-number", "Write a plain number as 0.25, and nothing after it but its unit."},
    {"not-alone", "The word none stands alone."},
    {"not-decimal", "nan, inf and 0x8 are no readings: leave the cell empty."},
    {"not-whole", "Write a whole number."},
    {"other-tank", "The row is of another tank than --tank names."},
    {"out-of-place", "This input has no place with the choice made: leave the cell empty."},
    {"out-of-range", "Out of the range that help tells: check the number and its unit."},
    {"refused", "No answer, for the reason whose code follows."},
    {"spread-not-taken", "A value with +- needs --spread."},
    {"sweep-not-taken", "A sweep has no place in rows: one value a cell."},
    {"tab-or-line-break",
     "The row has a tab or a line break, which tsv cannot hold: it became a blank."},
    {"tank-row",
     "The row of this tank in the tanks file has a comma too many or too few, or broken quotes."},
    {"tank-tells", "The tanks file tells this, and a preset would stand instead: write it in a "
                   "column of the rows, or as an option."},
    {"too-few-cells", "The row has fewer cells than the header: check its separators."},
    {"too-large", "The number is too large for any number here."},
    {"too-many-cells",
     "The row has more cells than the header, told behind the code: a decimal comma "
     "without quotes makes one."},
    {"unit-unwanted", "This number has no unit: leave it out."},
    {"unknown-tank", "The tanks file has no tank of that name."},
    {"unknown-unit", "A unit that is not known: holdwater units has them all."},
    {"unknown-word", "None of the words that help tells."},
    {"withheld", "Not given, for safety, for the reason whose code follows."},
    {"word-twice", "Each word of a set once."},
    {"wrong-kind", "A unit of another kind than is asked for."},
    {NULL, NULL},
};
