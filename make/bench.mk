# bench.mk - speed, and what takes long.

# --- Speed ------------------------------------------------------------------------------------

BENCH_SRC := $(wildcard tests/bench/*.c)
BENCH_OBJ := $(call objects,$(BENCH_SRC))
BENCH_TOOLS := $(addprefix $(BUILD)/bench/,stopwatch same_values startup core_times)
# Medians of so many rounds, and the rows of the largest file.
ROUNDS = 7
BENCH_ROWS = 10000000

$(BENCH_OBJ): EXTRA = -Itests/reference $(WIDE)

# Static: what starts a program counts in the peak of its memory.
$(BUILD)/bench/stopwatch: $(BUILD)/tests/bench/stopwatch.o
	@mkdir -p $(@D)
	$(Q)$(LINK) -static -o $@ $^ 2>/dev/null || $(LINK) -o $@ $^

$(BUILD)/bench/same_values $(BUILD)/bench/startup: $(BUILD)/bench/%: $(BUILD)/tests/bench/%.o
	@mkdir -p $(@D)
	$(Q)$(LINK) -o $@ $^ -lm

$(BUILD)/bench/core_times: $(BUILD)/tests/bench/core_times.o \
$(BUILD)/tests/reference/reference_public.o $(LIBRARY)
	@mkdir -p $(@D)
	$(Q)$(LINK) -o $@ $^ -lm

# The program as with STATIC=: what its start costs when the C library is loaded.
$(BUILD)/bench/loaded: $(PROGRAM)
	@mkdir -p $(@D)
	$(Q)$(LINK) -o $@ $(PROGRAM_OBJ) -lm $(LDLIBS)

-include $(BENCH_OBJ:.o=.d)

.PHONY: bench
bench: all $(BENCH_TOOLS) $(BUILD)/bench/loaded
	@HOLDWATER="$(abspath $(PROGRAM))" ROUNDS=$(ROUNDS) BENCH_ROWS=$(BENCH_ROWS) \
	  BENCH_CC="$$($(CC) --version | head -n 1), $(CFLAGS)" sh tests/bench/bench.sh $(BUILD)/bench

# --- Long checks ------------------------------------------------------------------------------

.PHONY: check-long
check-long: bits-more faults msan valgrind portable
	+$(Q)LOG_RECORDS=250 PICTURES=all $(MAKE) --no-print-directory test
	+$(Q)$(MAKE) --no-print-directory sanitize coverage m32
	+$(Q)$(MAKE) --no-print-directory FUZZ_SECONDS=300 fuzz
	+$(Q)$(MAKE) --no-print-directory MUTANTS=400 MUTANTS_LEAST=95 MUTATE_OPTIONS='--seconds 30' mutate
	@set -e; for script in $(wildcard tests/long/*.sh); do echo "== $$script"; \
	    HOLDWATER="$(abspath $(PROGRAM))" sh $$script $(BUILD); done
