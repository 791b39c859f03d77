# mutate.mk - small faults put into a copy of the source, one at a time: do the tests find them?

# MUTANTS are shared evenly between src/core, calc, engine and cli; SEED chooses which. The run fails
# when fewer than MUTANTS_LEAST per cent are found. The copy and what is measured of the tests stay in
# BUILD/mutate, for the next run.
MUTANTS = 60
SEED = 1
MUTANTS_LEAST = 85

# For the copy: all of the program in one shared library, so that a fault needs one object compiled
# and one library linked, and no test.
MUTATE_OBJ := $(call objects,$(CORE_SRC) $(CALC_SRC) $(ENGINE_SRC) $(CLI_SRC)) $(TABLES_OBJ)
MUTATE_TESTS := $(CORE_TESTS) $(ENGINE_TESTS) $(REFERENCE) $(RUN_CASES)
REACH =

$(BUILD)/libparts.so: $(MUTATE_OBJ) $(REACH)
	$(Q)$(CC) $(CFLAGS) -shared -Wl,-soname,libparts.so -o $@ $(MUTATE_OBJ) $(REACH) -lm -ldl

.PHONY: mutate mutate-built
mutate-built: $(BUILD)/libparts.so $(PROGRAM) $(MUTATE_TESTS)

# The tests themselves are compiled once, here.
mutate: $(call objects,$(filter-out tests/oracles/% tests/core/bits.c,$(TEST_SRC)))
	+$(Q)MAKE="$(MAKE)" $(PYTHON) -B tests/mutate/mutate.py --build $(BUILD) --mutants $(MUTANTS) \
	  --seed $(SEED) --least $(MUTANTS_LEAST) $(MUTATE_OPTIONS)

-include $(MUTATE_OBJ:.o=.d)
