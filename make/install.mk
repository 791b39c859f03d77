# install.mk - the demo, installing, cleaning.

# --- Demo, installing, cleaning ---------------------------------------------------------------

.PHONY: demo install uninstall clean
demo: all
	@HOLDWATER="$(abspath $(PROGRAM))" HOLDWATER_DATA="$(abspath data)" sh data/demo/demo.sh

VERSION := $(or $(shell sed -n 's/^.define HW_VERSION "\([^"]*\)".*/\1/p' \
  $(HEADERS) $(wildcard src/*/*.h) /dev/null),0.0.0)
MAN := $(wildcard docs/man/*.1)

INSTALL = install
TO = $(DESTDIR)$(PREFIX)

install: all
	@printf '%s\n' 'prefix=$(PREFIX)' 'includedir=$${prefix}/include' 'libdir=$${prefix}/lib' '' \
	  'Name: holdwater' 'Description: water chemistry of quarantine fish tanks' \
	  'Version: $(VERSION)' 'Cflags: -I$${includedir}' 'Libs: -L$${libdir} -lholdwater -lm' \
	  >$(BUILD)/holdwater.pc
	$(INSTALL) -d $(TO)/bin $(TO)/lib/pkgconfig $(TO)/include/holdwater
	$(INSTALL) -m 755 $(BUILD)/holdwater $(TO)/bin/
	$(INSTALL) -m 644 $(LIBRARY) $(TO)/lib/
	$(INSTALL) -m 644 $(HEADERS) $(TO)/include/holdwater/
	$(INSTALL) -m 644 $(BUILD)/holdwater.pc $(TO)/lib/pkgconfig/
	$(INSTALL) -d $(TO)/share/holdwater/plans
	$(INSTALL) -m 644 $(PLANS) $(TO)/share/holdwater/plans/
	$(if $(MAN),$(INSTALL) -d $(TO)/share/man/man1)
	$(if $(MAN),$(INSTALL) -m 644 $(MAN) $(TO)/share/man/man1/)

uninstall:
	rm -f $(TO)/bin/holdwater $(TO)/lib/libholdwater.a $(TO)/lib/pkgconfig/holdwater.pc
	rm -f $(addprefix $(TO)/include/holdwater/,$(notdir $(HEADERS)))
	rm -f $(addprefix $(TO)/share/man/man1/,$(notdir $(MAN)))
	rm -f $(addprefix $(TO)/share/holdwater/plans/,$(notdir $(PLANS)))
	-rmdir $(TO)/include/holdwater $(TO)/share/holdwater/plans $(TO)/share/holdwater

clean:
	rm -rf $(BUILD)
