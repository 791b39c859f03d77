/* stream.h - standard streams that cannot be fooled. */
#ifndef HW_STREAM_H
#define HW_STREAM_H
#include <stdbool.h>
#include <stddef.h>

/* Exit statuses; several causes: the first listed here that applies, in the order asked, withheld,
 * unanswered. */
enum { EXIT_ANSWERED = 0, EXIT_UNANSWERED = 1, EXIT_ASKED_WRONGLY = 2, EXIT_WITHHELD = 3 };

/* Call before anything else: notes whether stdout is open, and fills closed descriptors 0 to 2 so
 * that no file that is opened later is taken for a standard stream. */
void stream_begin(void);

/* Writes to stdout; the reason of the first failure is kept for stream_end. */
void stream_write(const char *text, size_t n);

/* False with a message when stdout goes to the file that is read: it would never end. */
bool stream_apart(int input);

/* Sends on what was written so far. */
void stream_flush(void);

/* Call last: flushes and closes stdout. Returns status, or EXIT_ASKED_WRONGLY with a message when
 * not all was written; and without one when a message could not be written. A status of
 * EXIT_ASKED_WRONGLY on entry stays. */
int stream_end(int status);

/* A message on stderr: "holdwater: " and the text. stdout is flushed first, so that the two stay in
 * order. */
#if defined(__GNUC__)
__attribute__((format(printf, 1, 2)))
#endif
void complain(const char *format, ...);
#endif
