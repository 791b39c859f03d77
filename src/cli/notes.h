/* notes.h - the notes of an answer, one after another. Everything here that goes over notes goes
 * over them so: those of the calculation, and the engine's own. */
#ifndef HW_NOTES_H
#define HW_NOTES_H
#include "engine/answer.h"
#include "engine/spread.h"

enum { NOTES_MAX = HW_NOTES + 1, CODES_MAX = 1600 };

/* Goes over a set of notes, in the order of the table: *bit is the next one from where it stands.
 * False when there are no more. In a loop:
 *     for (size_t bit = 0; notes_next(calc, notes, &bit); bit++) ... hw_note_at(calc, bit) */
bool notes_next(const struct hw_calc *calc, uint64_t notes, size_t *bit);

/* Goes over those whose sentence stands on a list, each sentence once: as notes_next. */
bool notes_next_on(const struct hw_calc *calc, uint64_t notes, enum hw_list list, size_t *bit);

/* The same set, the gravest first: their bits in order, and how many there are. */
size_t notes_gravest_first(const struct hw_calc *calc, uint64_t notes, size_t bits[NOTES_MAX]);

/* Every note that can be: of these effects, `from` the milder. */
uint64_t notes_between(const struct hw_calc *calc, enum hw_effect from, enum hw_effect to);

/* Every note of the calculation's table. */
uint64_t notes_of_table(const struct hw_calc *calc);

bool notes_have(uint64_t notes, size_t bit);

/* The notes that only the spread raises; none for NULL. */
uint64_t notes_possible(const struct hw_spread *spread);

/* The codes of the raised notes, joined by ';'; those of the possible ones with "possible:" before
 * them. */
void notes_codes(const struct hw_calc *calc, uint64_t notes, uint64_t possible,
                 char text[CODES_MAX]);
#endif
