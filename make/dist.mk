# dist.mk - the source in one file, and Debian packages of it.

# The files that git knows, as they lie here. An unpacked one has no git: its MANIFEST tells the files, and in
# its first line the time of the commit, so that the same file can be made of it again. GNU tar is needed.
DIST := holdwater-$(VERSION)
DIST_FILE = $(BUILD)/$(DIST).tar.gz
DIST_WORK = $(BUILD)/dist/$(DIST)

.PHONY: dist deb
dist:
	@rm -rf $(DIST_WORK); mkdir -p $(DIST_WORK)
	$(Q)set -e; export LC_ALL=C; \
	if test -e .git; then \
	    time=$${SOURCE_DATE_EPOCH:-$$(git log -1 --format=%ct)}; \
	    git ls-files | sort >$(DIST_WORK).files; \
	    git diff --quiet HEAD || echo 'dist: with changes that are not committed' >&2; \
	else \
	    time=$${SOURCE_DATE_EPOCH:-$$(sed '1!d; s/.* //' MANIFEST)}; \
	    sed 1d MANIFEST >$(DIST_WORK).files; \
	fi; \
	{ echo "$(DIST) $$time"; cat $(DIST_WORK).files; } >$(DIST_WORK).manifest; \
	tar -cf - -T $(DIST_WORK).files | tar -xf - -C $(DIST_WORK); \
	cp $(DIST_WORK).manifest $(DIST_WORK)/MANIFEST; \
	{ echo MANIFEST; cat $(DIST_WORK).files; } | sort | sed 's|^|$(DIST)/|' >$(DIST_WORK).names; \
	tar -cf - -C $(BUILD)/dist --format=ustar --no-recursion --owner=0 --group=0 --numeric-owner \
	  --mode=u=rwX,go=rX --mtime="@$$time" -T $(abspath $(DIST_WORK)).names | gzip -9n >$(DIST_FILE).new; \
	mv $(DIST_FILE).new $(DIST_FILE)
	@echo $(DIST_FILE)

# Packages for this machine, in BUILD/deb. DEB_BUILD_OPTIONS=nocheck builds them without the tests.
DEB = $(BUILD)/deb
deb: dist
	$(Q)rm -rf $(DEB); mkdir -p $(DEB)
	$(Q)cp $(DIST_FILE) $(DEB)/holdwater_$(VERSION).orig.tar.gz
	$(Q)tar -xzf $(DIST_FILE) -C $(DEB)
	$(Q)cp -R .packaging/debian $(DEB)/$(DIST)/debian
	$(Q)cd $(DEB)/$(DIST) && MAKEFLAGS= MFLAGS= dpkg-buildpackage -us -uc -b
	$(Q)cd $(DEB) && lintian --fail-on error holdwater_*.changes
	@ls $(DEB)/*.deb
