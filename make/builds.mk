# builds.mk - the same source under sanitizers, for 32 bits, with a report of branches; the same bits everywhere.

# --- Other builds -----------------------------------------------------------------------------

.PHONY: sanitize coverage
# Of the scripts those that reach what no case does; the others ask the program what cases ask it, a
# thousand times.
SANITIZED_SCRIPTS = $(patsubst %,tests/cli/test_%.sh,calendar json log rows_alike)
SANITIZE_PARTS = core engine cases scripts
# Counters of what is reached are for the fuzzers.
SANITIZED = LOG_RECORDS=25 $(MAKE) --no-print-directory BUILD=$(BUILD)/sanitize CFLAGS='-O1 -g' \
  CC='clang -fsanitize=address,undefined,fuzzer-no-link -fno-sanitize-recover=all -fno-omit-frame-pointer'
sanitize:
	+$(Q)$(SANITIZED) PARTS='$(SANITIZE_PARTS)' SCRIPTS='$(SANITIZED_SCRIPTS)' test

# 32 bits, with the arithmetic of SSE: the older unit rounds twice. Where the kernel runs no such
# programs an emulator does.
M32_PARTS = $(PARTS)
.PHONY: m32
m32:
	@mkdir -p $(BUILD)/m32; echo 'int main(void) { return 0; }' >$(BUILD)/m32/try.c
	$(Q)gcc -m32 -o $(BUILD)/m32/try $(BUILD)/m32/try.c
	+$(Q)$(MAKE) --no-print-directory BUILD=$(BUILD)/m32 CC='gcc -m32 -msse2 -mfpmath=sse' \
	  RUN="$$($(BUILD)/m32/try 2>/dev/null || echo qemu-i386-static)" \
	  PARTS="$(M32_PARTS)" test

# Branches that no test can take count against nobody: those the compiler makes for itself, and
# lines marked GCOVR_EXCL_LINE with the reason beside them.
coverage:
	$(Q)if test -d $(BUILD)/coverage; then find $(BUILD)/coverage -name '*.gcda' -delete; fi
	+$(Q)$(MAKE) --no-print-directory BUILD=$(BUILD)/coverage CC=gcc \
	  CFLAGS='-O0 -g --coverage -fprofile-update=atomic' PARTS='core engine cases' test
	$(Q)gcovr --root . --object-directory $(BUILD)/coverage --branches \
	  --exclude-unreachable-branches --exclude-throw-branches \
	  --filter 'src/core/' --filter 'src/calc/' --filter 'src/engine/' --sort-uncovered \
	  $(BUILD)/coverage

# What the tests are made of, compiled and not run: for the warnings.
.PHONY: test-objects
test-objects: $(TEST_OBJ)

# --- The same bits everywhere -----------------------------------------------------------------

# One build per line: name, command and, after |, what runs it. What is not installed is named and
# left out; the first three must be there.
BITS_MUST = gcc clang musl-gcc
BITS_LEVELS = -O0 -O1 -O2 -O3
BITS_MORE = i686-linux-gnu-gcc aarch64-linux-gnu-gcc arm-linux-gnueabihf-gcc \
  riscv64-linux-gnu-gcc powerpc64le-linux-gnu-gcc s390x-linux-gnu-gcc
BITS_SRC := $(wildcard tests/core/bits.c)

bits_flags = $(DIALECT) -Iinclude -Isrc $(BITS_SRC) $(CORE_SRC)
bits_agree = $(AWK) '{ print; name = $$1 " " $$2; $$1 = $$2 = "" } \
  NF < 3 { print "no hash: " name; bad = 1 } \
  NR == 1 { first = $$0 } \
  $$0 != first { bad = 1 } \
  END { if (bad) print "the bits differ"; else print NR " builds, the same bits"; exit bad }' \
  $(BUILD)/bits/table

.PHONY: bits bits-more
bits:
	@rm -rf $(BUILD)/bits; mkdir -p $(BUILD)/bits; : >$(BUILD)/bits/table
	@for cc in $(BITS_MUST); do \
	    for level in $(BITS_LEVELS); do \
	        $$cc $$level $(bits_flags) -o $(BUILD)/bits/$$cc$$level -lm || exit 1; \
	        printf '%-28s %s\n' "$$cc $$level" "$$($(BUILD)/bits/$$cc$$level)" \
	          >>$(BUILD)/bits/table; \
	    done; \
	done
	@$(bits_agree)

# Other machines, under qemu, with the first build of `bits` as the measure. On 32-bit x86 the bits
# are promised for SSE arithmetic: the older unit rounds twice.
bits-more: bits
	@set -e; for cc in $(BITS_MORE); do \
	    arch=$${cc%%-*}; \
	    case $$arch in \
	    i686) flags='-msse2 -mfpmath=sse'; run= ;; \
	    powerpc64le) flags=; run=qemu-ppc64le-static ;; \
	    *) flags=; run=qemu-$$arch-static ;; \
	    esac; \
	    if ! command -v $$cc >/dev/null || { test "$$run" && ! command -v $$run >/dev/null; }; then \
	        echo "skipped: $$cc"; continue; \
	    fi; \
	    for level in -O0 -O2; do \
	        $$cc $$level -static $$flags $(bits_flags) -o $(BUILD)/bits/$$cc$$level -lm; \
	        printf '%-28s %s\n' "$$cc $$level" "$$($$run $(BUILD)/bits/$$cc$$level)" \
	          >>$(BUILD)/bits/table; \
	    done; \
	done
	@$(bits_agree)
