/* notes.c - the notes of an answer, one after another. */
#include "cli/notes.h"

#include <string.h>

bool notes_have(uint64_t notes, size_t bit)
{
    return ((notes >> bit) & 1u) != 0;
}

bool notes_next(const struct hw_calc *calc, uint64_t notes, size_t *bit)
{
    while (*bit < NOTES_MAX && !(notes_have(notes, *bit) && hw_note_at(calc, *bit))) {
        *bit = notes >> *bit == 0 ? NOTES_MAX : *bit + 1;
    }
    return *bit < NOTES_MAX;
}

/* True when an earlier one of these notes says the same. */
static bool said_before(const struct hw_calc *calc, uint64_t notes, size_t bit)
{
    const char *brief = hw_note_at(calc, bit)->brief;
    for (size_t i = 0; notes_next(calc, notes, &i) && i < bit; i++) {
        const char *other = hw_note_at(calc, i)->brief;
        if (other && strcmp(other, brief) == 0) {
            return true;
        }
    }
    return false;
}

bool notes_next_on(const struct hw_calc *calc, uint64_t notes, enum hw_list list, size_t *bit)
{
    for (; notes_next(calc, notes, bit); ++*bit) {
        const struct hw_note *note = hw_note_at(calc, *bit);
        if (note->list == list && note->brief && !said_before(calc, notes, *bit)) {
            return true;
        }
    }
    return false;
}

size_t notes_gravest_first(const struct hw_calc *calc, uint64_t notes, size_t bits[NOTES_MAX])
{
    size_t n = 0;
    for (int effect = HW_WITHHELD; effect >= (int)HW_STANDING; effect--) {
        for (size_t bit = 0; notes_next(calc, notes, &bit); bit++) {
            if (hw_note_at(calc, bit)->effect == (enum hw_effect)effect) {
                bits[n++] = bit;
            }
        }
    }
    return n;
}

uint64_t notes_between(const struct hw_calc *calc, enum hw_effect from, enum hw_effect to)
{
    uint64_t between = 0;
    for (size_t bit = 0; notes_next(calc, UINT64_MAX, &bit); bit++) {
        enum hw_effect effect = hw_note_at(calc, bit)->effect;
        between |= effect >= from && effect <= to ? UINT64_C(1) << bit : 0;
    }
    return between;
}

/* A shift by all 64 bits, for a table without notes, would be undefined. */
uint64_t notes_of_table(const struct hw_calc *calc)
{
    return calc->n_notes == 0 ? 0 : UINT64_MAX >> (NOTES_MAX - calc->n_notes);
}

uint64_t notes_possible(const struct hw_spread *spread)
{
    return spread ? spread->possible : 0;
}

/* A word behind what is there, as far as there is room. */
static size_t append(char text[CODES_MAX], size_t used, const char *word)
{
    while (*word != '\0' && used < CODES_MAX - 1) {
        text[used++] = *word++;
    }
    return used;
}

void notes_codes(const struct hw_calc *calc, uint64_t notes, uint64_t possible,
                 char text[CODES_MAX])
{
    size_t used = 0;
    for (size_t bit = 0; notes_next(calc, notes | possible, &bit); bit++) {
        const struct hw_note *note = hw_note_at(calc, bit);
        bool is_possible = notes_have(possible, bit);
        if (!is_possible && note->effect == HW_STANDING) {
            continue;
        }
        used = append(text, used, used == 0 ? "" : ";");
        used = append(text, used, is_possible ? "possible:" : "");
        used = append(text, used, note->code);
    }
    text[used] = '\0';
}
