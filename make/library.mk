# library.mk - the shared library.

VERSION := $(or $(shell sed -n 's/^.define HW_VERSION  *"\([^"]*\)".*/\1/p' \
  $(wildcard include/holdwater/holdwater.h) /dev/null),0.0.0)

# Programs ask for the soname; it changes when those linked before no longer work.
SONAME := libholdwater.so.$(firstword $(subst ., ,$(VERSION)))
SHARED_NAME := libholdwater.so.$(VERSION)
# What it shows: the names of the public headers, and no other.
MAP := src/core/libholdwater.map
# There is none where programs are linked with -static, or full of checks of the compiler's.
SHARED := $(if $(AT_ONE_PLACE),,$(if $(PLAIN_BUILD),$(BUILD)/$(SHARED_NAME)))

PIC_OBJ := $(patsubst %.c,$(BUILD)/pic/%.o,$(CORE_SRC))

$(BUILD)/pic/%.o: %.c $(BUILD)/flags
	@mkdir -p $(@D)
	$(Q)$(COMPILE) -fPIC -MMD -MP -c -o $@ $<

$(BUILD)/$(SHARED_NAME): $(PIC_OBJ) $(MAP)
	$(Q)$(CC) $(HARDEN_LD) $(CFLAGS) $(LDFLAGS) -shared -Wl,-soname,$(SONAME) \
	  -Wl,--version-script=$(MAP) -Wl,-Bsymbolic-functions -o $@ $(PIC_OBJ) -lm

.PHONY: abi-update
all: $(SHARED)

# After a change of the interface: names and types as they are now. Review with git diff.
abi-update:
	$(Q)sh tests/layers/test_abi.sh $(BUILD) update

# Tests that install a copy, and link with it as a user does; what is missing they name as skipped.
LIBRARY_TESTS := $(patsubst %,$(BUILD)/logs/tests/cli/test_%.sh.log,hardened install library_docs)
$(LIBRARY_TESTS): $(LIBRARY) $(SHARED)
$(LIBRARY_TESTS): export LIBRARY_CC = $(CC)
$(LIBRARY_TESTS): export LIBRARY_RUN = $(RUN)

-include $(PIC_OBJ:.o=.d)
