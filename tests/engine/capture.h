/* capture.h - keeps what is printed on both streams, in the order in which it comes. */
#ifndef HW_CAPTURE_H
#define HW_CAPTURE_H

enum { CAPTURE_MAX = 200000 };

/* Between the two nothing is printed; capture_end returns what would have been. It stays until the
 * next capture ends. */
void capture_begin(void);
const char *capture_end(void);

/* Fails the test unless text is a part of what was captured last. */
void capture_expect(const char *text);
#endif
