# install.mk - the demo, installing, cleaning.

# --- Demo, installing, cleaning ---------------------------------------------------------------

.PHONY: demo install install-files uninstall clean
demo: all
	@HOLDWATER="$(abspath $(PROGRAM))" HOLDWATER_DATA="$(abspath data)" sh data/demo/demo.sh

# On a system of several architectures LIBDIR is /usr/lib/x86_64-linux-gnu or the like.
BINDIR = $(PREFIX)/bin
LIBDIR = $(PREFIX)/lib
INCLUDEDIR = $(PREFIX)/include
DATADIR = $(PREFIX)/share
MANDIR = $(DATADIR)/man
DOCDIR = $(DATADIR)/doc/holdwater
# Where shells look for what they complete. Debian's zsh looks in zsh/vendor-completions.
ZSHDIR = $(DATADIR)/zsh/site-functions

MAN := $(wildcard docs/man/*.[1-8])
PC := $(BUILD)/holdwater.pc

COMPLETIONS := $(addprefix $(BUILD)/completion.,bash zsh fish)
$(COMPLETIONS): $(BUILD)/completion.%: $(PROGRAM)
	@$(PROGRAM) completion $* >$@
all: $(COMPLETIONS)
$(LIBRARY_TESTS): $(COMPLETIONS)

# What is installed: mode, file, place. Names have no blanks and no colons.
INSTALLED = \
  755:$(PROGRAM)$(if $(RUN),.bin):$(BINDIR)/holdwater \
  644:$(LIBRARY):$(LIBDIR)/libholdwater.a \
  $(if $(SHARED),644:$(SHARED):$(LIBDIR)/$(SHARED_NAME)) \
  644:$(PC):$(LIBDIR)/pkgconfig/holdwater.pc \
  $(foreach file,$(HEADERS),644:$(file):$(INCLUDEDIR)/holdwater/$(notdir $(file))) \
  $(foreach file,$(PLANS),644:$(file):$(DATADIR)/holdwater/plans/$(notdir $(file))) \
  $(foreach file,$(MAN),644:$(file):$(MANDIR)/man$(subst .,,$(suffix $(file)))/$(notdir $(file))) \
  644:$(BUILD)/completion.bash:$(DATADIR)/bash-completion/completions/holdwater \
  644:$(BUILD)/completion.zsh:$(ZSHDIR)/_holdwater \
  644:$(BUILD)/completion.fish:$(DATADIR)/fish/vendor_completions.d/holdwater.fish \
  644:LICENSE:$(DOCDIR)/LICENSE
# Links: what they name, place. The first is for programs that run, the second for the linker.
LINKED = $(if $(SHARED), \
  $(SHARED_NAME):$(LIBDIR)/$(SONAME) \
  $(SONAME):$(LIBDIR)/libholdwater.so)
# Folders that are the project's own.
OWN = $(INCLUDEDIR)/holdwater $(DATADIR)/holdwater/plans $(DATADIR)/holdwater $(DOCDIR)

install: all install-files

# Without building; after it, where both are asked for.
install-files: | $(if $(filter install,$(MAKECMDGOALS)),all)
	@printf '%s\n' 'prefix=$(PREFIX)' \
	  'includedir=$(patsubst $(PREFIX)/%,$${prefix}/%,$(INCLUDEDIR))' \
	  'libdir=$(patsubst $(PREFIX)/%,$${prefix}/%,$(LIBDIR))' '' \
	  'Name: holdwater' 'Description: water chemistry of quarantine fish tanks' \
	  'Version: $(VERSION)' 'Cflags: -I$${includedir}' \
	  'Libs: -L$${libdir} -lholdwater' 'Libs.private: -lm' >$(PC)
	$(Q)set -e; IFS=:; for entry in $(foreach entry,$(INSTALLED),'$(entry)'); do \
	    set -- $$entry; \
	    install -d "$(DESTDIR)$${3%/*}"; \
	    install -m "$$1" "$$2" "$(DESTDIR)$$3"; \
	done
	$(Q)set -e; IFS=:; for entry in $(foreach entry,$(LINKED),'$(entry)'); do \
	    set -- $$entry; \
	    ln -sf "$$1" "$(DESTDIR)$$2"; \
	done

# Folders that others use stay: bin, lib, man1 and the like.
uninstall:
	$(Q)set -e; IFS=:; for entry in $(foreach entry,$(INSTALLED),'$(entry)') \
	  $(foreach entry,$(LINKED),'$(entry)'); do \
	    rm -f "$(DESTDIR)$${entry##*:}"; \
	done
	$(Q)for folder in $(foreach folder,$(OWN),'$(folder)'); do \
	    test ! -d "$(DESTDIR)$$folder" || rmdir "$(DESTDIR)$$folder" 2>/dev/null || \
	      echo "left, as there are other files in it: $(DESTDIR)$$folder"; \
	done

clean:
	rm -rf $(BUILD)
