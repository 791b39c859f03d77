# harden.mk - flags that make faults of memory harder to use, and bytes that do not tell the folder.
#
# HARDEN= leaves the first kind out. Whatever CC does not take is left out by itself; a flag in
# CFLAGS, CPPFLAGS or LDFLAGS comes later, and wins.

# Sanitizers and reports of coverage put checks of their own in, and name files as they are.
PLAIN_BUILD := $(if $(findstring -fsanitize,$(CC) $(CFLAGS))$(findstring --coverage,$(CC) $(CFLAGS)),,yes)
HARDEN = $(PLAIN_BUILD)

HARDEN_ASKED = $(if $(HARDEN),-fPIE -fstack-protector-strong -fstack-clash-protection \
  -fcf-protection)
# Paths in debugging information: as if each checkout were the current folder, and built in build/.
MAP_ASKED = $(if $(PLAIN_BUILD),'-ffile-prefix-map=$(CURDIR)=.' \
  $(if $(filter-out build,$(BUILD)),'-ffile-prefix-map=$(BUILD)=build'))
RELRO = -Wl,-z,relro -Wl,-z,now -Wl,-z,noexecstack
LINK_ASKED = $(if $(HARDEN),$(RELRO))

# Of flags those that CC takes without a word, for a program of these lines. It is asked for all at once,
# and then for each.
LEAST = 'int main(void) { return 0; }'
taken = $(if $(strip $(2)),$(shell dir=$$(mktemp -d); printf '%s\n' $(or $(3),$(LEAST)) >$$dir/a.c; \
  takes() { $(CC) -Werror $(1) "$$@" -o $$dir/a $$dir/a.c >$$dir/said 2>&1; }; \
  if takes $(2); then printf "'%s' " $(2); \
  else for flag in $(2); do if takes "$$flag"; then printf "'%s' " "$$flag"; fi; done; fi; \
  rm -rf $$dir))

# The functions of the C library that know how long an array is need optimisation.
OPTIMISED = $(filter-out -O0,$(lastword $(filter -O%,$(CC) $(CFLAGS))))
FORTIFY = $(if $(and $(HARDEN),$(OPTIMISED)),$(if $(findstring _FORTIFY_SOURCE,$(CC) $(CPPFLAGS) \
  $(CFLAGS)),,-U_FORTIFY_SOURCE -D_FORTIFY_SOURCE=2))

# A program linked with -static stays where it is linked to.
AT_ONE_PLACE = $(filter -static,$(CC) $(CFLAGS) $(LDFLAGS))
PIE_ASKED = $(if $(HARDEN),$(if $(AT_ONE_PLACE),,-pie))

HARDEN_CC := $(call taken,-c,$(HARDEN_ASKED) $(MAP_ASKED)) $(FORTIFY)
HARDEN_LD := $(call taken,,$(LINK_ASKED))
HARDEN_PIE := $(if $(PIE_ASKED),$(call taken,-fPIE,-pie))

# The program has its part of the C library in it, where there is one to link: it starts in two thirds of
# the time, and stays position independent. STATIC= has the C library loaded, as a distribution wants it,
# which mends one library for all programs.
STATIC = $(PLAIN_BUILD)
# With glibc alone, as others take the flag and load their library all the same; a call that does not link so
# on each machine; and not where a place is asked for.
FILLS = '\#include <string.h>' '\#ifndef __GLIBC__' '\#error' '\#endif' \
  'int main(int n, char **v) { char a[9]; memset(a, n, (size_t)n); return a[0] + !v; }'
PLACED = $(filter -static -no-pie -fno-pie -nopie,$(CC) $(CFLAGS) $(LDFLAGS))
PROGRAM_LD := $(if $(filter-out 0 no,$(STATIC)),$(if $(PLACED),,$(call taken,-fPIE $(CFLAGS) $(FORTIFY),-static-pie,$(FILLS))))
