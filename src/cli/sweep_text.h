/* sweep_text.h - a sweep for people: its table or chart, and what stands around it. */
#ifndef HW_SWEEP_TEXT_H
#define HW_SWEEP_TEXT_H
#include "cli/sweep_view.h"

void sweep_text(struct sweep_view *view);
#endif
