/* utf8.h - characters of more than one byte. */
#ifndef HW_UTF8_H
#define HW_UTF8_H
#include "engine/value.h"

/* The bytes of the UTF-8 character that text begins with: 1 to 4; 0 when it begins with none, as
 * RFC 3629 has it: no byte out of place, no longer form than needed, no surrogate, nothing above
 * U+10FFFF, not cut short. */
size_t utf8_length(struct hw_text text);
#endif
