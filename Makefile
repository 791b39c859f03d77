# holdwater: water chemistry of quarantine fish tanks. GNU make.
#
#   make                 build/holdwater, build/libholdwater.a and build/libholdwater.so.*
#   make test            every check that needs no other program; ends with "N checks passed"
#   make test-update     rewrite the expected output of the CLI cases (review with git diff)
#   make oracles         compare the core with outside implementations; skipped ones are named
#   make lint            format, static analysis, shell scripts
#   make sanitize        make test under the address and undefined-behaviour sanitizers
#   make m32             make test built for 32 bits; M32_PARTS chooses parts of it
#   make msan            core, engine and cases under the sanitizer of memory
#   make valgrind        each VALGRIND_EACH-th case under valgrind
#   make faults          calls of the system that fail, one after the other (x86-64, glibc)
#   make portable        other compilers, C libraries and machines; what is absent is named
#   make coverage        make test with a branch report for core, calc and engine
#   make bits            the same bits from every compiler, optimisation level and C library
#   make bench           speed as ratios against other programs, ROUNDS rounds, up to BENCH_ROWS rows
#   make mutate          small faults in a copy of the source: MUTANTS of them, SEED chooses which
#   make fuzz            each fuzzer for FUZZ_SECONDS
#   make check-long      the long checks: bits on other machines, long fuzzing, 400 mutants, tests/long
#   make demo            one fish, from seeding its filter to disinfecting its tank
#   make install         to DESTDIR/PREFIX; make uninstall takes it away again
#   make man             renew the lists of the manual pages
#   make abi-update      rewrite the names and types that the shared library promises
#   make dist            the source in one file, the same bytes each time
#   make deb             Debian packages of it
#   make format clean
#
# Variables: CC CFLAGS CPPFLAGS LDFLAGS AWK BUILD PREFIX LIBDIR DESTDIR FUZZ_SECONDS; RUN is the
# emulator for what CC makes, where this machine cannot run it; WERROR=1 makes warnings errors;
# HARDEN= leaves out the hardened flags; STATIC= has the program load the C library; V=1
# shows the commands. BUILD is the only place that is written to.

BUILD = build
PREFIX = /usr/local
DESTDIR =
CFLAGS ?= -O2 -g
AWK ?= awk
FUZZ_SECONDS ?= 20
PYTHON = /usr/bin/python3

Q = $(if $(V),,@)

.DELETE_ON_ERROR:
.SUFFIXES:

# --- Flags ------------------------------------------------------------------------------------

WARNINGS = -Wall -Wextra -Wpedantic -Wshadow -Wconversion -Wstrict-prototypes \
  -Wmissing-prototypes -Wvla -Wwrite-strings -Wformat=2 -Wundef \
  $(if $(filter 1,$(WERROR)),-Werror)
DIALECT = -std=c11 -ffp-contract=off
INCLUDES = -Iinclude -Isrc -I$(BUILD)
# Large files and times after 2038 on 32 bits, too.
WIDE = -D_FILE_OFFSET_BITS=64 -D_TIME_BITS=64
POSIX = -D_POSIX_C_SOURCE=200809L $(WIDE)
include make/harden.mk
COMPILE = $(CC) $(HARDEN_CC) $(INCLUDES) $(CPPFLAGS) $(CFLAGS) $(DIALECT) $(WARNINGS)
LINK = $(CC) $(HARDEN_LD) $(HARDEN_PIE) $(CFLAGS) $(LDFLAGS)
LINK_PROGRAM = $(CC) $(HARDEN_LD) $(or $(PROGRAM_LD),$(HARDEN_PIE)) $(CFLAGS) $(LDFLAGS)

# With RUN, each program is a script that starts the emulator: whoever calls it need not know.
RUN =
wrap = $(if $(RUN),@mv $@ $@.bin; \
  printf '\043!/bin/sh\nexec %s "$$0.bin" "$$@"\n' '$(RUN)' >$@; chmod +x $@)

# --- Files ------------------------------------------------------------------------------------

objects = $(patsubst %.c,$(BUILD)/%.o,$(1))

CORE_SRC := $(wildcard src/core/*.c)
CALC_SRC := $(wildcard src/calc/*.c)
ENGINE_SRC := $(wildcard src/engine/*.c)
CLI_SRC := $(wildcard src/cli/*.c)
MAIN_SRC := $(wildcard src/cli/main.c)
HEADERS := $(wildcard include/holdwater/*.h)
PLANS := $(sort $(wildcard data/plans/*.tsv))
TSV := data/references.tsv data/limits.tsv data/cautions.tsv data/topics.tsv data/durations.tsv \
  $(PLANS)

CORE_OBJ := $(call objects,$(CORE_SRC))
TABLES_OBJ := $(BUILD)/tables.o
PROGRAM_OBJ := $(call objects,$(CORE_SRC) $(CALC_SRC) $(ENGINE_SRC) $(CLI_SRC)) $(TABLES_OBJ)
PARTS_OBJ := $(filter-out $(call objects,$(MAIN_SRC)),$(PROGRAM_OBJ))

LIBRARY := $(BUILD)/libholdwater.a
PROGRAM := $(BUILD)/holdwater

.PHONY: all
all: $(PROGRAM) $(LIBRARY)

# --- Building ---------------------------------------------------------------------------------

# The flags in use: when they change, everything is compiled anew.
FLAGS := $(subst ','\'',$(COMPILE) $(POSIX) $(LINK) $(PROGRAM_LD) $(RUN))
.PHONY: force
force:
$(BUILD)/flags: force
	@mkdir -p $(@D)
	@printf '%s\n' '$(FLAGS)' | cmp -s - $@ || printf '%s\n' '$(FLAGS)' >$@

$(BUILD)/tables.h $(BUILD)/tables.c: $(BUILD)/tables.%: src/tables/tables.awk $(TSV)
	@mkdir -p $(@D)
	$(Q)LC_ALL=C $(AWK) -f src/tables/tables.awk -v kind=$* $(TSV) >$@.new
	@mv $@.new $@

# The Makefile has the flags of single files.
$(BUILD)/%.o: %.c $(BUILD)/flags Makefile
	@mkdir -p $(@D)
	$(Q)$(COMPILE) $(EXTRA) -MMD -MP -c -o $@ $<

$(TABLES_OBJ): $(BUILD)/tables.c $(BUILD)/tables.h $(BUILD)/flags
	$(Q)$(COMPILE) -MMD -MP -c -o $@ $<

# The header must be there before the first compilation; from then on the .d files know who needs
# it. The core does without.
$(call objects,$(CALC_SRC) $(ENGINE_SRC) $(CLI_SRC)): | $(BUILD)/tables.h
$(call objects,$(CLI_SRC)): EXTRA = $(POSIX)

# The loops that every row of a file goes through.
$(patsubst %,$(BUILD)/src/cli/%.o,marks rows_quick rows_line): EXTRA = $(POSIX) -O3
$(patsubst %,$(BUILD)/src/engine/%.o,answer decimal_column): EXTRA = -O3

# Vectors for the loops over lanes; a comparison of NaN need not trap for that. No value changes.
$(BUILD)/src/core/carbonate.o: EXTRA = -ftree-vectorize -fno-trapping-math
$(BUILD)/src/calc/ammonia_block.o: EXTRA = -ftree-vectorize -fno-trapping-math

$(LIBRARY): $(CORE_OBJ)
	@rm -f $@
	$(Q)$(AR) rcsD $@ $(CORE_OBJ)

$(BUILD)/holdwater: $(PROGRAM_OBJ)
	$(Q)$(LINK_PROGRAM) -o $@ $(PROGRAM_OBJ) -lm $(LDLIBS)
	$(wrap)

# --- Tests ------------------------------------------------------------------------------------

CORE_TESTS := $(patsubst %.c,$(BUILD)/%,$(wildcard tests/core/test_*.c))
ENGINE_TESTS := $(patsubst %.c,$(BUILD)/%,$(wildcard tests/engine/test_*.c))
REFERENCE := $(patsubst %.c,$(BUILD)/%,$(wildcard tests/reference/run_reference.c))
RUN_CASES := $(BUILD)/tests/cli/run_cases
# Other files beside the tests serve them all.
CORE_SUPPORT := $(call objects,$(filter-out tests/core/test_% tests/core/bits.c, \
  $(wildcard tests/core/*.c)))
ENGINE_SUPPORT := $(call objects,$(filter-out tests/engine/test_%,$(wildcard tests/engine/*.c)))
REFERENCE_SUPPORT := $(call objects,$(wildcard tests/reference/reference_*.c))
DOCS := $(wildcard README.md docs/*.md docs/*/*.md docs/*/*/*.md)
# docs/logbook.md and docs/scale.md need other programs: tests/cli/test_logbook.sh and
# test_parallel.sh look for them and run them.
CASES := $(wildcard tests/cli/*.txt) $(filter-out docs/logbook.md docs/scale.md,$(DOCS))

TEST_SRC := $(wildcard tests/core/*.c tests/engine/*.c tests/reference/*.c tests/cli/*.c \
  tests/oracles/*.c)
TEST_OBJ := $(call objects,$(TEST_SRC))

$(call objects,$(filter tests/core/% tests/reference/% tests/oracles/%,$(TEST_SRC))): \
  EXTRA = -Itests/core $(WIDE)
$(call objects,$(filter tests/engine/%,$(TEST_SRC))): EXTRA = -Itests/core $(POSIX) -Itests/engine
$(call objects,$(filter tests/engine/%,$(TEST_SRC))): | $(BUILD)/tables.h
$(call objects,$(filter tests/cli/%,$(TEST_SRC))): EXTRA = $(POSIX)

# Core tests see the core alone, as a user of the library does.
$(CORE_TESTS) $(REFERENCE): $(BUILD)/%: $(BUILD)/%.o $(CORE_SUPPORT) $(CORE_OBJ)
	$(Q)$(LINK) -o $@ $^ -lcmocka -lm $(LDLIBS)
	$(wrap)
$(REFERENCE): $(REFERENCE_SUPPORT)

$(ENGINE_TESTS): $(BUILD)/%: $(BUILD)/%.o $(CORE_SUPPORT) $(ENGINE_SUPPORT) $(PARTS_OBJ)
	$(Q)$(LINK) -o $@ $^ -lcmocka -lm $(LDLIBS)
	$(wrap)

$(RUN_CASES): $(RUN_CASES).o
	$(Q)$(LINK) -o $@ $^ -lcmocka -lm $(LDLIBS)
	$(wrap)

# Each run writes a log; it is shown only when the run fails, and then the log is gone, so that the
# run is repeated next time. All logs are made anew by every `make test`.
LOGS_core := $(patsubst $(BUILD)/%,$(BUILD)/logs/%.log,$(CORE_TESTS) $(REFERENCE))
LOGS_engine := $(patsubst $(BUILD)/%,$(BUILD)/logs/%.log,$(ENGINE_TESTS))
LOGS_cases := $(patsubst %,$(BUILD)/logs/%.log,$(CASES))
SCRIPTS = $(wildcard tests/cli/test_*.sh)
LOGS_scripts := $(patsubst %,$(BUILD)/logs/%.log,$(SCRIPTS))
LOGS_source := $(patsubst %,$(BUILD)/logs/%.log,$(wildcard tests/tables/test_*.sh \
  tests/layers/test_*.sh))
# What `make test` runs. Other builds of the same source leave out what they cannot change.
PARTS = core engine cases scripts source
# These first, so that no processor waits for them at the end.
LONGEST = $(patsubst %,$(BUILD)/logs/tests/%.log,engine/test_csv engine/test_solve_back tables/test_tables.sh \
  cli/test_svg.sh cli/test_parallel.sh cli/test_calendar.sh)
LOGS = $(foreach part,$(PARTS),$(LOGS_$(part)))
ALL_LOGS := $(LOGS_core) $(LOGS_engine) $(LOGS_cases) $(LOGS_scripts) $(LOGS_source)

run = @mkdir -p $(@D); if $(1) >$@ 2>&1; then :; \
  else s=$$?; cat $@ >&2; echo "FAILED: $(patsubst $(BUILD)/logs/%.log,%,$@)" >&2; exit $$s; fi

CASES_ENV = HOLDWATER="$(abspath $(BUILD)/holdwater)" HOLDWATER_RUN="$(HOLDWATER_RUN)" \
  HOLDWATER_DATA="$(abspath data)"

$(ALL_LOGS): force

$(patsubst $(BUILD)/%,$(BUILD)/logs/%.log,$(CORE_TESTS) $(ENGINE_TESTS) $(REFERENCE)): \
$(BUILD)/logs/%.log: $(BUILD)/%
	$(call run,$<)

$(patsubst %,$(BUILD)/logs/%.log,$(CASES)): $(BUILD)/logs/%.log: % $(RUN_CASES) $(PROGRAM)
	$(call run,$(CASES_ENV) $(RUN_CASES) $<)

# Shell tests get the build folder, to keep their files in.
$(BUILD)/logs/tests/cli/%.sh.log: tests/cli/%.sh $(RUN_CASES) $(PROGRAM)
	$(call run,sh $< $(BUILD))
$(BUILD)/logs/tests/tables/%.sh.log: tests/tables/%.sh src/tables/tables.awk
	$(call run,sh $< $(BUILD))
$(BUILD)/logs/tests/layers/%.sh.log: tests/layers/%.sh $(BUILD)/tables.h
	$(call run,sh $< $(BUILD))

# The count: a log's own lines "N checks passed" if it has any, else the number cmocka reports.
# Rows, commands and properties, which name their seed, are told apart as well.
COUNT = function add() { total += own ? own : cmocka; own = cmocka = 0 } \
  FNR == 1 { add() } \
  /^[0-9]+ checks? passed/ { own += $$1; if (FILENAME ~ /\.(txt|md)\.log$$/) commands += $$1 } \
  /^\[  PASSED  \] [0-9]+ test/ { cmocka += $$4 } \
  /^[0-9]+ reference rows/ { rows += $$1 } \
  /^seed [0-9]+/ { properties++ } \
  /^skipped/ { print } \
  END { add(); printf "%d reference rows, %d commands, %d properties\n%d checks passed\n", \
    rows, commands, properties, total }

.PHONY: test test-update
test: all $(filter $(LONGEST),$(LOGS)) $(LOGS)
	@$(AWK) '$(COUNT)' $(LOGS) /dev/null

test-update: $(RUN_CASES) $(PROGRAM)
	$(Q)$(CASES_ENV) $(RUN_CASES) --update $(CASES)

.PHONY: man
man: $(PROGRAM)
	@for page in $(wildcard docs/man/holdwater.?); do \
	    sh tests/cli/man_lists.sh $(PROGRAM) <$$page >$(BUILD)/page && mv $(BUILD)/page $$page; \
	done

# --- Outside implementations ------------------------------------------------------------------

CORE_VALUES := $(patsubst %.c,$(BUILD)/%,$(wildcard tests/oracles/core_values.c))
ORACLES := $(sort $(wildcard tests/oracles/*.py))

$(CORE_VALUES): $(BUILD)/%: $(BUILD)/%.o $(CORE_OBJ)
	$(Q)$(LINK) -o $@ $^ -lm $(LDLIBS)

# Each says what it found and ends with its status: 77 says that it could not look.
ORACLES_SAID := $(patsubst %.py,$(BUILD)/%.said,$(ORACLES))
$(ORACLES_SAID): $(BUILD)/%.said: %.py $(CORE_VALUES) $(PROGRAM) force
	@mkdir -p $(@D); status=0; \
	PYTHONDONTWRITEBYTECODE=1 HOLDWATER_CORE_VALUES="$(abspath $(CORE_VALUES))" \
	  HOLDWATER="$(abspath $(PROGRAM))" $(PYTHON) $< >$@ 2>&1 || status=$$?; \
	echo "status $$status" >>$@

# The longest first, as above.
.PHONY: oracles
oracles: $(filter %/spread_numpy.said %/criteria_mpmath.said,$(ORACLES_SAID)) $(ORACLES_SAID)
	@$(AWK) '/^status [0-9]+$$/ { if ($$2 == 77) skipped = skipped "skipped: " FILENAME "\n"; \
	    else if ($$2 == 0) agree++; \
	    else { print "FAILED: " FILENAME ", status " $$2; differ++ } \
	    next } \
	  FNR == 1 { print "== " FILENAME } { print } \
	  END { printf "%s%d oracles agree, %d do not\n", skipped, agree, differ; exit differ > 0 }' \
	  $(ORACLES_SAID)

# --- Static checks ----------------------------------------------------------------------------

LINT_C := $(CORE_SRC) $(CALC_SRC) $(ENGINE_SRC) $(CLI_SRC)
FORMATTED := $(LINT_C) $(wildcard include/holdwater/*.h src/*/*.h tests/*/*.c tests/*/*.h)
LINT_SCRIPTS := $(wildcard .ci/run tests/*/*.sh data/demo/*.sh)

# cppcheck: missingIncludeSystem, as it is not shown the system's headers; unusedFunction is not
# asked for, as public functions have their callers outside.
CPPCHECK = cppcheck --quiet --std=c11 --error-exitcode=1 --inline-suppr \
  --enable=warning,style,performance,portability --suppress=missingIncludeSystem \
  $(INCLUDES)

.PHONY: lint lint-format lint-tidy lint-cppcheck lint-shell lint-man format
lint: lint-format lint-tidy lint-cppcheck lint-shell lint-man

lint-format:
	$(Q)clang-format --dry-run -Werror $(FORMATTED)
	@awk 'length > 100 { print FILENAME ":" FNR ": over 100 columns"; bad = 1 } END { exit bad }' \
	  $(FORMATTED)

TIDY := $(patsubst %.c,$(BUILD)/tidy/%.ok,$(LINT_C))
lint-tidy: $(TIDY)
$(TIDY): $(BUILD)/tidy/%.ok: %.c .clang-tidy $(HEADERS) $(wildcard src/*/*.h) $(BUILD)/tables.h
	@mkdir -p $(@D)
	$(Q)clang-tidy --quiet $< -- $(INCLUDES) $(DIALECT) \
	  $(if $(filter src/cli/%,$<),$(POSIX)) >$@.out 2>&1 || { cat $@.out >&2; exit 1; }
	@touch $@

lint-cppcheck: $(BUILD)/tables.h
	$(Q)$(CPPCHECK) $(LINT_C)

lint-shell:
	$(Q)shellcheck -x --severity=warning $(LINT_SCRIPTS)

lint-man:
	$(Q)mandoc -T lint -W warning docs/man/holdwater.?

format:
	$(Q)clang-format -i $(FORMATTED)

# --- More -------------------------------------------------------------------------------------

include make/builds.mk make/faults.mk make/portable.mk make/fuzz.mk make/mutate.mk make/bench.mk
include make/library.mk make/install.mk make/dist.mk

-include $(filter %.d,$(PROGRAM_OBJ:.o=.d) $(TEST_OBJ:.o=.d))
