# bench.mk - speed, and what takes long.

# --- Speed ------------------------------------------------------------------------------------

.PHONY: bench
bench: all
	@HOLDWATER="$(abspath $(PROGRAM))" sh tests/bench/bench.sh $(BUILD) $(ROUNDS)

check-long: bits-more faults msan valgrind portable
	+$(Q)$(MAKE) --no-print-directory test sanitize m32
	+$(Q)$(MAKE) --no-print-directory FUZZ_SECONDS=300 fuzz
	@set -e; for script in $(wildcard tests/long/*.sh); do echo "== $$script"; \
	    HOLDWATER="$(abspath $(PROGRAM))" sh $$script $(BUILD); done
