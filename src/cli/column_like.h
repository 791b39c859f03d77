/* column_like.h - columns that feed nothing and may have been meant to. */
#ifndef HW_COLUMN_LIKE_H
#define HW_COLUMN_LIKE_H
#include "cli/args.h"

/* Looks at a column that feeds nothing; fed: which inputs one feeds, by entry. False with a message
 * where what it says would be passed over for an option, the tanks file or a preset; where it would
 * be passed over for nothing it is said, and true. */
bool column_judge(const struct args *args, const bool fed[], struct hw_text name);
#endif
