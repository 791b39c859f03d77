# fuzz.mk - the fuzzers.

FUZZERS := $(patsubst tests/fuzz/%.c,%,$(wildcard tests/fuzz/fuzz_*.c))
FUZZ_LENGTH = 4096
# In the build under sanitizers: the fuzzers, their inputs and what they say.
FUZZ_AT = $(BUILD)/fuzz
# What several fuzzers share.
FUZZ_SHARED := $(filter-out tests/fuzz/fuzz_%,$(wildcard tests/fuzz/*.c))
FUZZ_OBJ := $(call objects,$(wildcard tests/fuzz/*.c))

# Words of a command line are char *, as in main; one fuzzer has main under another name.
$(FUZZ_OBJ): EXTRA = -Itests/fuzz $(POSIX) -Wno-write-strings -Wno-missing-prototypes
$(FUZZ_OBJ): | $(BUILD)/tables.h
-include $(FUZZ_OBJ:.o=.d)

# One set of objects serves `make sanitize` and the fuzzers.
.PHONY: fuzz fuzz-all $(FUZZERS:%=%.run)
fuzz:
	+$(Q)$(SANITIZED) fuzz-all
fuzz-all: $(FUZZERS:%=%.run)

$(FUZZERS:%=$(FUZZ_AT)/%): $(FUZZ_AT)/%: $(BUILD)/tests/fuzz/%.o $(call objects,$(FUZZ_SHARED)) \
$(PARTS_OBJ)
	@mkdir -p $(@D)
	$(Q)$(CC) -fsanitize=fuzzer -o $@ $^ -lm

# One fuzzer for its time; make -j runs several at once.
$(FUZZERS:%=%.run): %.run: $(FUZZ_AT)/%
	@mkdir -p $<.corpus; seeds=$(patsubst fuzz_%,tests/fuzz/%,$*); \
	$< -max_total_time=$(FUZZ_SECONDS) -max_len=$(FUZZ_LENGTH) -verbosity=0 -close_fd_mask=3 \
	  -print_final_stats=1 -artifact_prefix=$<- $<.corpus $$(test -d $$seeds && echo $$seeds) \
	  >$<.log 2>&1 || { cat $<.log >&2; exit 1; }; \
	echo "$*, $(FUZZ_SECONDS) s: $$(grep number_of_executed_units $<.log)"
