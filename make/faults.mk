# faults.mk - other ways to find a fault: memory that was never written, division by zero, calls of
# the system that fail.

.PHONY: msan
# cmocka is not built for this sanitizer; it hands nothing to the tests that they read.
msan:
	+$(Q)LOG_RECORDS=25 $(MAKE) --no-print-directory BUILD=$(BUILD)/msan CFLAGS='-O1 -g' \
	  CC='clang -fsanitize=memory -fno-sanitize-recover=all -fno-omit-frame-pointer' \
	  PARTS='core engine cases' test

# Calls of the system that fail, one after the other. The library is for x86-64 with glibc.
SHIM := $(BUILD)/shim.so
$(SHIM): tests/faults/shim.c
	@mkdir -p $(@D)
	$(Q)$(CC) $(CFLAGS) -Wall -Wextra -shared -fPIC -o $@ $<

# It comes before the C library of a program that loads one.
.PHONY: faults faults-all
faults:
	+$(Q)$(MAKE) --no-print-directory BUILD=$(BUILD)/loaded STATIC= faults-all
faults-all: $(PROGRAM) $(SHIM)
	$(Q)sh tests/faults/test_faults.sh $(BUILD)

# The cases under valgrind: of each file every so many, for it takes a hundred times as long.
VALGRIND_EACH ?= 12
VALGRIND = valgrind --quiet --error-exitcode=99 --leak-check=full --errors-for-leak-kinds=definite
# It watches over memory from the C library of a program that loads one.
VALGRIND_CASES := $(patsubst %,$(BUILD)/valgrind/%,$(notdir $(wildcard tests/cli/*.txt)))
.PHONY: valgrind valgrind-all
valgrind:
	+$(Q)$(MAKE) --no-print-directory BUILD=$(BUILD)/loaded STATIC= valgrind-all
valgrind-all: $(VALGRIND_CASES)
	@$(AWK) '/^[0-9]+ checks? passed/ { n += $$1 } END { print n " checks passed under valgrind" }' \
	  $(VALGRIND_CASES:%=%.log)
.PHONY: $(VALGRIND_CASES)
$(VALGRIND_CASES): $(BUILD)/valgrind/%: tests/cli/% $(RUN_CASES) $(PROGRAM)
	@mkdir -p $(@D)
	@$(AWK) -v each=$(VALGRIND_EACH) -f tests/faults/sample.awk $< >$@
	@HOLDWATER="$(abspath $(PROGRAM))" HOLDWATER_DATA="$(abspath data)" HOLDWATER_RUN='$(VALGRIND)' \
	  $(RUN_CASES) --seconds 200 $@ >$@.log 2>&1 || { cat $@.log >&2; exit 1; }
