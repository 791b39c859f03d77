# bench.mk - speed, and what takes long.

# --- Speed ------------------------------------------------------------------------------------

.PHONY: bench
bench: all
	@HOLDWATER="$(abspath $(PROGRAM))" sh tests/bench/bench.sh $(BUILD) $(ROUNDS)

check-long: bits-more
	+$(Q)$(MAKE) --no-print-directory test sanitize m32
	+$(Q)$(MAKE) --no-print-directory FUZZ_SECONDS=300 fuzz
	+$(Q)$(MAKE) --no-print-directory MUTANTS=400 MUTANTS_LEAST=90 MUTATE_OPTIONS='--seconds 30' mutate
	@set -e; for script in $(wildcard tests/long/*.sh); do echo "== $$script"; \
	    HOLDWATER="$(abspath $(PROGRAM))" sh $$script $(BUILD); done
