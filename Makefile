# oilway: build, demo, tests. `make help` lists what one can ask for.
#
# One plain file. Sources are found by folder: src/<module>/*.c is the library, src/cli and
# src/counter are the command. Variants live in folders of their own under $(BUILD).

BUILD   ?= build
PREFIX  ?= /usr/local
DESTDIR ?=
VERSION := 0.1.0
CSTD    := -std=c11 -D_POSIX_C_SOURCE=200809L
WARN    := -Wall -Wextra -Wpedantic -Werror -Wshadow -Wconversion -Wno-sign-conversion \
           -Wstrict-prototypes -Wmissing-prototypes -Wold-style-definition -Wwrite-strings \
           -Wformat=2 -Wvla -Wundef -Wpointer-arith -Wcast-qual -Wswitch-enum \
           -Wdouble-promotion -Wnull-dereference
OPT     ?= -O2 -g
CPPFLAGS += -Iinclude -Isrc -DOW_VERSION='"$(VERSION)"' -DOW_INSTALLED_CATALOG='"$(PREFIX)/share/oilway/catalog"'
CFLAGS  += $(CSTD) $(WARN) $(OPT) $(SANITIZE) -MMD -MP
LIBS    := -lyaml -lcjson -lm
COMMAND_LIBS := $(if $(wildcard src/counter/*.c),-lmicrohttpd -lpthread)
TEST_LIBS := -lcmocka

LIB_SOURCES  := $(sort $(filter-out src/cli/% src/counter/%,$(wildcard src/*/*.c)))
COMMAND_SOURCES := $(sort $(wildcard src/cli/*.c src/counter/*.c))
SUPPORT_SOURCES := $(sort $(wildcard tests/support/*.c))
UNIT_SOURCES := $(sort $(wildcard tests/unit/test_*.c))
FUZZ_SOURCES := $(sort $(wildcard tests/fuzz/fuzz_*.c))

LIB_OBJECTS     := $(LIB_SOURCES:%.c=$(BUILD)/obj/%.o)
COMMAND_OBJECTS := $(COMMAND_SOURCES:%.c=$(BUILD)/obj/%.o) $(BUILD)/obj/page.o
SUPPORT_OBJECTS := $(SUPPORT_SOURCES:%.c=$(BUILD)/obj/%.o)
UNIT_TESTS      := $(UNIT_SOURCES:tests/unit/%.c=$(BUILD)/tests/%)
LIBRARY         := $(BUILD)/liboilway.a

.DEFAULT_GOAL := all
.SECONDARY:
.DELETE_ON_ERROR:

# ---- packages -------------------------------------------------------------------------------
# Debian's names. Building needs the first list only; `make check` also the second.
BUILD_PACKAGES := gcc make libc6-dev libyaml-dev libcjson-dev libmicrohttpd-dev
CHECK_PACKAGES := libcmocka-dev clang libclang-rt-dev clang-format clang-tidy valgrind python3 python3-yaml
include tests/packages.mk
$(BUILD)/.build-packages: tests/install-packages tests/packages.mk Makefile
	@mkdir -p $(@D)
	@tests/install-packages $(BUILD_PACKAGES)
	@touch $@
$(BUILD)/.check-packages: tests/install-packages tests/packages.mk Makefile
	@mkdir -p $(@D)
	@tests/install-packages $(BUILD_PACKAGES) $(CHECK_PACKAGES)
	@touch $@

# One short line for each step; `make V=1` shows the commands themselves.
ifeq ($(V),1)
say =
else
say = @printf '  %-4s %s\n' $(1) $(2);
endif

# ---- building -------------------------------------------------------------------------------
.PHONY: all help demo check clean install uninstall
all: $(LIBRARY) $(if $(COMMAND_SOURCES),$(BUILD)/oilway) ## build the command at build/oilway

$(BUILD)/obj/%.o: %.c | $(BUILD)/.build-packages
	@mkdir -p $(@D)
	$(call say,CC,$<)$(CC) $(CPPFLAGS) $(CFLAGS) -c $< -o $@

$(LIBRARY): $(LIB_OBJECTS)
	@rm -f $@
	$(call say,AR,$@)ar rcs $@ $^

# The counter page's files become arrays of bytes in the command.
PAGE_FILES := $(sort $(wildcard src/counter/page/*.html src/counter/page/*.css src/counter/page/*.js src/counter/page/*.svg))
$(BUILD)/embed: src/counter/page/embed.c
	@mkdir -p $(@D)
	$(CC) $(CSTD) $(WARN) -O1 -o $@ $<
$(BUILD)/page.c: $(BUILD)/embed $(PAGE_FILES) Makefile
	$(BUILD)/embed $(PAGE_FILES) >$@
$(BUILD)/obj/page.o: $(BUILD)/page.c src/counter/assets.h | $(BUILD)/.build-packages
	@mkdir -p $(@D)
	$(CC) $(CPPFLAGS) $(CFLAGS) -c $< -o $@

$(BUILD)/oilway: $(COMMAND_OBJECTS) $(LIBRARY)
	$(call say,LINK,$@)$(CC) $(SANITIZE) $(LDFLAGS) -o $@ $(COMMAND_OBJECTS) $(LIBRARY) $(LIBS) $(COMMAND_LIBS)

$(BUILD)/tests/%: tests/unit/%.c $(SUPPORT_OBJECTS) $(LIBRARY) | $(BUILD)/.check-packages
	@mkdir -p $(@D)
	$(call say,LINK,$@)$(CC) $(CPPFLAGS) -Itests $(CFLAGS) $(LDFLAGS) -o $@ $< $(SUPPORT_OBJECTS) $(LIBRARY) $(TEST_LIBS) $(LIBS)

$(BUILD)/obj/tests/%.o: CPPFLAGS += -Itests

-include $(LIB_OBJECTS:.o=.d) $(COMMAND_OBJECTS:.o=.d) $(SUPPORT_OBJECTS:.o=.d) $(UNIT_TESTS:=.d)

DEMO_ASK := --from brockle-4:gallery --to curlew-8b:oil-in --keep sw-2 --hose "650 mm"
demo: $(BUILD)/oilway ## the main job on the shipped catalogue: an odd turbo fed, the switch kept, the bill
	@printf '%s\n\n' '$$ oilway stack $(DEMO_ASK)'
	@$(BUILD)/oilway stack $(DEMO_ASK)
	@printf '\n%s\n\n' '$$ oilway stack $(DEMO_ASK) --format yaml | oilway bill -'
	@$(BUILD)/oilway stack $(DEMO_ASK) --format yaml --output $(BUILD)/demo.yaml
	@$(BUILD)/oilway bill $(BUILD)/demo.yaml

# The picture of the front page, drawn by the program itself; tests/cli/draw.case holds it against the program.
.PHONY: picture
picture: $(BUILD)/oilway ## draw docs/picture.svg anew
	$(BUILD)/oilway stack $(DEMO_ASK) --format svg --output docs/picture.svg

install: $(BUILD)/oilway ## install the command, the catalogue and the manual under PREFIX
	install -d $(DESTDIR)$(PREFIX)/bin $(DESTDIR)$(PREFIX)/share/oilway/catalog \
	    $(DESTDIR)$(PREFIX)/share/man/man1 $(DESTDIR)$(PREFIX)/share/man/man5
	install -m 755 $(BUILD)/oilway $(DESTDIR)$(PREFIX)/bin/oilway
	install -m 644 catalog/*.yaml $(DESTDIR)$(PREFIX)/share/oilway/catalog/
	$(BUILD)/oilway manual >$(BUILD)/oilway.1
	install -m 644 $(BUILD)/oilway.1 $(DESTDIR)$(PREFIX)/share/man/man1/oilway.1
	install -m 644 docs/man/oilway.5 $(DESTDIR)$(PREFIX)/share/man/man5/oilway.5

uninstall: ## take it away again
	rm -rf $(DESTDIR)$(PREFIX)/share/oilway
	rm -f $(DESTDIR)$(PREFIX)/bin/oilway $(DESTDIR)$(PREFIX)/share/man/man1/oilway.1 $(DESTDIR)$(PREFIX)/share/man/man5/oilway.5

include tests/check.mk

help: ## this list
	@grep -hE '^[a-z-]+:.*##' $(MAKEFILE_LIST) | sed -E 's/:.*## /\t/' | sort | expand -t 16

clean: ## remove what was built
	rm -rf $(BUILD)
