# portable.mk - other compilers, standards, C libraries and machines.

# --- Portability ------------------------------------------------------------------------------

# One build a line of `portable`: its name, CC, the emulator, the parts of the tests that run there.
# What is not installed is named and left out. Debian's gcc-multilib and its cross compilers exclude
# each other: give those that are unpacked elsewhere with ARMHF_CC and S390X_CC, as in
#   make portable ARMHF_CC='/elsewhere/usr/bin/arm-linux-gnueabihf-gcc-12 --sysroot=/elsewhere'
# and the folder with the target's libraries with ARMHF_ROOT and S390X_ROOT. Each needs libcmocka-dev
# of its own architecture.
ARMHF_CC = arm-linux-gnueabihf-gcc
ARMHF_ROOT = /
S390X_CC = s390x-linux-gnu-gcc
S390X_ROOT = /
# By the emulator, as not every kernel runs programs of 32 bits.
M32_RUN = qemu-i386-static
MINGW_CC = x86_64-w64-mingw32-gcc
# Tests of the source and those that ask a thousand times are the same everywhere.
FOREIGN_PARTS = core engine cases

portable_test = +$(Q)if command -v $(firstword $(2)) >/dev/null; then \
    echo "== $(1)"; $(MAKE) --no-print-directory BUILD=$(BUILD)/portable/$(1) CC='$(2)' RUN='$(3)' \
      PARTS='$(4)' $(5) test; \
  else echo "skipped: $(1), as there is no $(firstword $(2))"; fi

.PHONY: portable portable-gcc portable-clang portable-c17 portable-musl portable-m32 portable-armhf \
  portable-s390x portable-mingw portable-same
portable: portable-gcc portable-clang portable-c17 portable-musl portable-m32 portable-armhf \
  portable-s390x portable-mingw portable-same

portable-gcc:
	$(call portable_test,gcc,gcc,,core engine cases,)
portable-clang:
	$(call portable_test,clang,clang,,core engine cases,)
portable-c17:
	$(call portable_test,c17,gcc,,core engine cases,DIALECT='-std=c17 -ffp-contract=off')
portable-m32:
	$(call portable_test,m32,gcc -m32 -msse2 -mfpmath=sse,$(M32_RUN),$(FOREIGN_PARTS),)
portable-armhf:
	$(call portable_test,armhf,$(ARMHF_CC),qemu-arm-static -L $(ARMHF_ROOT),$(FOREIGN_PARTS),)
portable-s390x:
	$(call portable_test,s390x,$(S390X_CC),qemu-s390x-static -L $(S390X_ROOT),$(FOREIGN_PARTS),)

# There is no cmocka for musl: the program, static, answers the cases; their runner is of this
# machine.
portable-musl: $(RUN_CASES)
	+$(Q)if ! command -v musl-gcc >/dev/null; then echo 'skipped: musl, as there is no musl-gcc'; exit; fi; \
	echo '== musl'; \
	$(MAKE) --no-print-directory BUILD=$(BUILD)/portable/musl CC='musl-gcc -static' all && \
	HOLDWATER="$(abspath $(BUILD))/portable/musl/holdwater" HOLDWATER_DATA="$(abspath data)" \
	  $(RUN_CASES) $(CASES) | grep 'checks passed'

# The core is C alone: it compiles for Windows, too. Nothing runs it there. Without the warnings of
# conversion, which its isnan() raises.
portable-mingw:
	$(Q)if ! command -v $(MINGW_CC) >/dev/null; then \
	    echo 'skipped: mingw, as there is no $(firstword $(MINGW_CC))'; exit; fi; \
	mkdir -p $(BUILD)/portable/mingw; for file in $(CORE_SRC); do \
	    $(MINGW_CC) -O2 $(DIALECT) -Wall -Wextra -Werror -Iinclude -Isrc -c \
	      -o $(BUILD)/portable/mingw/$$(basename $$file .c).o $$file || exit 1; done; \
	echo "== mingw: $(words $(CORE_SRC)) files of the core compile"

# The same answers to the last digit, of every build that is there.
portable-same: $(PROGRAM)
	$(Q)sh tests/portable/same_answers.sh $(PROGRAM) $(wildcard $(BUILD)/portable/*/holdwater)
