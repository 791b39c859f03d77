# fuzz.mk - the fuzzers.

# --- Fuzzing ----------------------------------------------------------------------------------

FUZZERS := $(patsubst tests/fuzz/%.c,$(BUILD)/fuzz/%,$(wildcard tests/fuzz/fuzz_*.c))
FUZZ_PARTS := $(CORE_SRC) $(CALC_SRC) $(ENGINE_SRC) $(filter-out $(MAIN_SRC),$(CLI_SRC))
FUZZ_LENGTH = 4096

FUZZ_CC = clang -g -O1 -fsanitize=address,undefined -fno-sanitize-recover=all \
  $(INCLUDES) $(DIALECT) $(POSIX)
FUZZ_OBJ := $(patsubst %.c,$(BUILD)/fuzz/%.o,$(FUZZ_PARTS)) $(BUILD)/fuzz/tables.o
FUZZ_NEEDS := $(BUILD)/tables.h $(HEADERS) $(wildcard src/*/*.h)

$(BUILD)/fuzz/%.o: %.c $(FUZZ_NEEDS)
	@mkdir -p $(@D)
	$(Q)$(FUZZ_CC) -fsanitize=fuzzer-no-link -c -o $@ $<

$(BUILD)/fuzz/tables.o: $(BUILD)/tables.c $(FUZZ_NEEDS)
	@mkdir -p $(@D)
	$(Q)$(FUZZ_CC) -fsanitize=fuzzer-no-link -c -o $@ $<

# What several fuzzers share.
FUZZ_SHARED := $(filter-out tests/fuzz/fuzz_%,$(wildcard tests/fuzz/*.[ch]))
$(FUZZERS): $(BUILD)/fuzz/%: tests/fuzz/%.c $(FUZZ_SHARED) $(FUZZ_OBJ)
	$(Q)$(FUZZ_CC) -Itests/fuzz -fsanitize=fuzzer -o $@ $< $(filter %.c,$(FUZZ_SHARED)) \
	  $(FUZZ_OBJ) -lm

.PHONY: fuzz check-long $(FUZZERS:%=%.run)
fuzz: $(FUZZERS:%=%.run)

# One fuzzer for its time; make -j runs several at once.
$(FUZZERS:%=%.run): %.run: %
	@mkdir -p $<.corpus; seeds=$(patsubst fuzz_%,tests/fuzz/%,$(notdir $<)); \
	$< -max_total_time=$(FUZZ_SECONDS) -max_len=$(FUZZ_LENGTH) -verbosity=0 -close_fd_mask=3 \
	  -print_final_stats=1 -artifact_prefix=$<- $<.corpus $$(test -d $$seeds && echo $$seeds) \
	  >$<.log 2>&1 || { cat $<.log >&2; exit 1; }; \
	echo "$(notdir $<), $(FUZZ_SECONDS) s: $$(grep number_of_executed_units $<.log)"
