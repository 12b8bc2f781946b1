# What `make check` is made of. Each part can be asked for alone.

# A variant is the same Makefile run with other flags in a folder of its own.
ASAN  := CC=gcc OPT="-O1 -g -fno-omit-frame-pointer" SANITIZE="-fsanitize=address,undefined -fno-sanitize-recover=all"
# (clang takes the macros NAN and INFINITY for floats that become doubles; gcc watches for real ones.)
CLANG := CC=clang OPT="-O1 -g -fno-omit-frame-pointer -Wno-double-promotion" SANITIZE="-fsanitize=address,undefined -fno-sanitize-recover=all"
# Instrumented for libFuzzer, the library without its main.
FUZZ  := CC=clang OPT="-O1 -g -fno-omit-frame-pointer -Wno-double-promotion" \
         SANITIZE="-fsanitize=fuzzer-no-link,address,undefined -fno-sanitize-recover=all"

CHECK_JOBS ?= $(shell nproc)
.PHONY: unit check-asan check-clang valgrind headers fuzzers fuzz-seeds fuzz format tidy
# A locale that writes 4,4, to see that nobody minds.
COMMA_LOCALE := $(BUILD)/locale/de_DE.UTF-8
$(COMMA_LOCALE): | $(BUILD)/.check-packages
	@mkdir -p $(@D)
	localedef --no-archive -i de_DE -f UTF-8 $(abspath $@)
TEST_SETTINGS = OW_SOURCE_DIR="$(CURDIR)" LOCPATH="$(abspath $(BUILD)/locale)" OW_COMMA_LOCALE=de_DE.UTF-8

# Side by side, the longest first.
UNIT_SLOW := plan_failing optimum_catalog optimum_random optimum_checked optimum_list
UNIT_FIRST := $(filter $(UNIT_SLOW:%=$(BUILD)/tests/test_%),$(UNIT_TESTS))
unit: $(UNIT_TESTS) $(COMMA_LOCALE) ## run the unit tests of this variant
	@printf '%s\n' $(UNIT_FIRST) $(filter-out $(UNIT_FIRST),$(UNIT_TESTS)) | $(TEST_SETTINGS) xargs -P$(CHECK_JOBS) -I{} sh -c \
	    '{} >{}.log 2>&1 || { echo "unit: {}"; cat {}.log; exit 255; }'
	@echo "unit: $(words $(UNIT_TESTS)) programs, $$(cat $(UNIT_TESTS:%=%.log) | grep -c '^\[       OK \]') tests passed"

check-asan: | $(BUILD)/.check-packages ## unit tests, gcc with ASan, UBSan, LeakSanitizer
	$(MAKE) BUILD=$(BUILD)/asan $(ASAN) unit
check-clang: | $(BUILD)/.check-packages ## unit tests, clang with ASan, UBSan
	$(MAKE) BUILD=$(BUILD)/clang $(CLANG) unit

# ---- the optimum, by brute force ------------------------------------------------------------
# tests/brute shares nothing with the search that it is held against; its tests are test_optimum_*.
# It does most of the work in them, so it is built fast and without sanitizers in every variant.
BRUTE_SOURCES := $(filter-out tests/brute/find_cases.c,$(sort $(wildcard tests/brute/*.c)))
BRUTE_OBJECTS := $(BRUTE_SOURCES:%.c=$(BUILD)/obj/%.o)
$(BRUTE_OBJECTS): override OPT := -O2 -g
$(BRUTE_OBJECTS): override SANITIZE :=
$(BUILD)/tests/test_optimum_%: tests/unit/test_optimum_%.c $(SUPPORT_OBJECTS) $(BRUTE_OBJECTS) $(LIBRARY) | $(BUILD)/.check-packages
	@mkdir -p $(@D)
	$(CC) $(CPPFLAGS) -Itests $(CFLAGS) $(LDFLAGS) -o $@ $< $(SUPPORT_OBJECTS) $(BRUTE_OBJECTS) $(LIBRARY) $(TEST_LIBS) $(LIBS)
.PHONY: brute-cases
brute-cases: $(BRUTE_OBJECTS) $(BUILD)/obj/tests/brute/find_cases.o ## look for the seeds of the random cases anew (minutes)
	$(CC) $(LDFLAGS) -o $(BUILD)/find-cases $^
	$(BUILD)/find-cases > $(BUILD)/cases.h && mv $(BUILD)/cases.h tests/brute/cases.h
-include $(BRUTE_OBJECTS:.o=.d)

# ---- bench ----------------------------------------------------------------------------------
# Always built for speed, in a folder of its own.
.PHONY: bench bench-docs
bench: ## time loading, the net and answers over synthetic catalogues
	@$(MAKE) --no-print-directory -s BUILD=$(BUILD)/speed OPT=-O2 SANITIZE= $(BUILD)/speed/bench >&2
	@$(BUILD)/speed/bench
bench-docs: ## the same, written to docs/bench.md
	@$(MAKE) --no-print-directory -s bench >$(BUILD)/bench.md && mv $(BUILD)/bench.md docs/bench.md
BENCH_SOURCES := $(sort $(wildcard tests/bench/*.c))
BENCH_OBJECTS := $(BENCH_SOURCES:%.c=$(BUILD)/obj/%.o)
$(BUILD)/bench: $(BENCH_OBJECTS) $(LIBRARY)
	$(CC) $(SANITIZE) $(LDFLAGS) -o $@ $(BENCH_OBJECTS) $(LIBRARY) $(LIBS)
-include $(BENCH_OBJECTS:.o=.d)

CLI_CASES := $(sort $(wildcard tests/cli/*.case))
.PHONY: cases
cases: $(BUILD)/oilway | $(BUILD)/.check-packages ## run the end-to-end cases against the binary
	@tests/cli/run.py $(BUILD)/oilway $(CLI_CASES)

.PHONY: terminal
terminal: $(BUILD)/oilway | $(BUILD)/.check-packages ## on a pseudo-terminal: completion in bash, zsh and fish; progress, Ctrl-C, width
	@tests/cli/shells.py $(BUILD)/oilway bash zsh fish
	@tests/cli/waiting.py $(BUILD)/oilway
	@tests/cli/looks.py $(BUILD)/oilway

# ---- the counter page -----------------------------------------------------------------------
# Over HTTP on a build with the sanitizers: a fault in a thread of the server ends its run with an error.
.PHONY: counter-http counter-times
counter-times: $(BUILD)/oilway ## how long each route of the counter takes
	@python3 tests/counter/times.py $(BUILD)/oilway
counter-http: | $(BUILD)/.check-packages ## the counter over HTTP, with ASan and UBSan
	$(MAKE) BUILD=$(BUILD)/asan $(ASAN) all
	@tests/counter/over_http.py $(BUILD)/asan/oilway

# In Chromium: the main jobs clicked through, keyboard, paper, zoom, WCAG 2.2. Pictures in $(BUILD)/browser to look at.
.PHONY: browser
BROWSER_MODULES := tests/browser/node_modules/.package-lock.json
$(BROWSER_MODULES): tests/browser/package.json tests/browser/package-lock.json | $(BUILD)/.check-packages
	cd tests/browser && npm ci --ignore-scripts --no-audit --no-fund --loglevel=error
	@touch $@
browser: $(BUILD)/oilway $(BROWSER_MODULES) ## the counter page in a real browser
	@OW_SHARE=1/2 node tests/browser/page.mjs $(BUILD)/oilway $(BUILD)/browser & first=$$!; \
	    OW_SHARE=2/2 node tests/browser/page.mjs $(BUILD)/oilway $(BUILD)/browser; second=$$?; \
	    wait $$first && exit $$second

# ---- valgrind -------------------------------------------------------------------------------
# Sees reads of memory that was never written, which ASan does not. OW_SLOW_TOOL asks tests that draw at random to
# draw less. Left out, with the reason:
#   test_joint_table   holds every end against every other; test_joint goes through the same code in a fraction
#   test_draw_sheet, test_draw_layout   draw dozens of layouts; test_draw_plan draws with the same code
#   test_drain         is arithmetic on the stack, and slow
VALGRIND_SKIP := test_joint_table test_draw_sheet test_draw_layout test_drain
VALGRIND_RUN := valgrind --quiet --error-exitcode=99 --leak-check=full --show-leak-kinds=all --errors-for-leak-kinds=all
VALGRIND_TESTS := $(filter-out $(VALGRIND_SKIP:%=$(BUILD)/tests/%),$(UNIT_TESTS))
valgrind: $(VALGRIND_TESTS) $(COMMA_LOCALE) ## unit tests under valgrind
	@printf '%s\n' $(notdir $(VALGRIND_TESTS)) | $(TEST_SETTINGS) OW_SLOW_TOOL=valgrind xargs -P2 -I{} sh -c \
	    '$(VALGRIND_RUN) $(BUILD)/tests/{} >$(BUILD)/tests/{}.valgrind.log 2>&1 || \
	        { echo "valgrind: {}"; cat $(BUILD)/tests/{}.valgrind.log; exit 255; }'
	@echo "valgrind: $(words $(VALGRIND_TESTS)) tests clean, $(words $(VALGRIND_SKIP)) left out"

# ---- headers --------------------------------------------------------------------------------
# Each public header alone, then all in one, by both compilers: none may need another by luck.
PUBLIC_HEADERS := $(sort $(wildcard include/oilway/*.h))
HEADER_CHECKS := $(foreach compiler,gcc clang,$(PUBLIC_HEADERS:include/oilway/%.h=$(BUILD)/headers/$(compiler)/%.ok) \
                 $(BUILD)/headers/$(compiler)/all-in-one.ok)
HEADER_FLAGS := $(CSTD) $(WARN) -Wundef -Wredundant-decls -Wmissing-declarations -Iinclude -fsyntax-only -x c
headers: $(HEADER_CHECKS) ## compile each public header alone and all together, gcc and clang
$(BUILD)/headers/gcc/%.ok: include/oilway/%.h
	@mkdir -p $(@D)
	echo '#include "oilway/$*.h"' | gcc $(HEADER_FLAGS) - && touch $@
$(BUILD)/headers/clang/%.ok: include/oilway/%.h | $(BUILD)/.check-packages
	@mkdir -p $(@D)
	echo '#include "oilway/$*.h"' | clang $(HEADER_FLAGS) - && touch $@
# Twice, so that a missing include guard shows.
$(BUILD)/headers/gcc/all-in-one.ok $(BUILD)/headers/clang/all-in-one.ok: $(PUBLIC_HEADERS) | $(BUILD)/.check-packages
	@mkdir -p $(@D)
	printf '#include "%s"\n' $(PUBLIC_HEADERS:include/%=%) $(PUBLIC_HEADERS:include/%=%) | \
	    $(notdir $(@D)) $(HEADER_FLAGS) - && touch $@
$(HEADER_CHECKS): $(PUBLIC_HEADERS)

# ---- layers ---------------------------------------------------------------------------------
.PHONY: layers
layers: ## every #include against the table of layers in DEVELOPERS.md
	@tests/docs/layers.py

# ---- fuzzing --------------------------------------------------------------------------------
# tests/fuzz/fuzz_X.c with its seeds in tests/fuzz/seeds/X/; words it may use in tests/fuzz/X.dict.
FUZZ_SECONDS ?= 60
FUZZ_NAMES := $(FUZZ_SOURCES:tests/fuzz/fuzz_%.c=%)
FUZZERS := $(FUZZ_NAMES:%=$(BUILD)/fuzzers/%)
fuzzers: $(FUZZERS)
$(BUILD)/fuzzers/%: tests/fuzz/fuzz_%.c $(LIBRARY)
	@mkdir -p $(@D)
	$(CC) $(CPPFLAGS) -Itests $(CFLAGS) -fsanitize=fuzzer $(LDFLAGS) -o $@ $< $(LIBRARY) $(LIBS)
-include $(FUZZERS:=.d)

FUZZ_OPTIONS = -timeout=20 -rss_limit_mb=2048 -print_final_stats=0 $(if $(wildcard tests/fuzz/$(1).dict),-dict=tests/fuzz/$(1).dict)
fuzz-seeds: | $(BUILD)/.check-packages ## every fuzzer over its seeds
	+$(MAKE) BUILD=$(BUILD)/fuzz $(FUZZ) fuzzers
	@mkdir -p $(BUILD)/fuzz/found
	@set -e; $(foreach name,$(FUZZ_NAMES),$(call run_seeds,$(name));) true
# A fuzzer that has no seeds proves nothing, and neither does one that ran fewer than there are.
define run_seeds
seeds=$$(find tests/fuzz/seeds/$(1) -type f 2>/dev/null | wc -l); \
    [ $$seeds -gt 0 ] || { echo "fuzz_$(1) has no seeds in tests/fuzz/seeds/$(1)"; exit 1; }; \
    log=$(BUILD)/fuzz/$(1).seeds.log; \
    find tests/fuzz/seeds/$(1) -type f | LC_ALL=C sort | xargs $(BUILD)/fuzz/fuzzers/$(1) $(call FUZZ_OPTIONS,$(1)) \
        -artifact_prefix=$(BUILD)/fuzz/found/$(1)- >$$log 2>&1 || { tail -30 $$log; echo "fuzz_$(1) fails on a seed"; exit 1; }; \
    ran=$$(grep -c '^Executed ' $$log || :); \
    [ $$ran -eq $$seeds ] || { echo "fuzz_$(1) ran $$ran of $$seeds seeds"; exit 1; }; echo "fuzz_$(1): $$seeds seeds"
endef

fuzz: fuzz-seeds ## fuzz each parser for FUZZ_SECONDS (60)
	@set -e; $(foreach name,$(FUZZ_NAMES),$(call run_fuzzer,$(name));) true
define run_fuzzer
mkdir -p $(BUILD)/fuzz/corpus/$(1); log=$(BUILD)/fuzz/$(1).log; \
    $(BUILD)/fuzz/fuzzers/$(1) $(call FUZZ_OPTIONS,$(1)) -max_total_time=$(FUZZ_SECONDS) \
        -artifact_prefix=$(BUILD)/fuzz/found/$(1)- $(BUILD)/fuzz/corpus/$(1) tests/fuzz/seeds/$(1) >$$log 2>&1 || \
        { tail -30 $$log; echo "fuzz_$(1) found a fault: see $(BUILD)/fuzz/found"; exit 1; }; \
    echo "fuzz_$(1): $$(tail -1 $$log)"
endef

# ---- form -----------------------------------------------------------------------------------
C_FILES := $(LIB_SOURCES) $(COMMAND_SOURCES) $(SUPPORT_SOURCES) $(UNIT_SOURCES) $(FUZZ_SOURCES) \
           $(BRUTE_SOURCES) tests/brute/find_cases.c $(BENCH_SOURCES)
FORMATTED := $(C_FILES) $(PUBLIC_HEADERS) $(sort $(wildcard src/*/*.h tests/*/*.h tests/bench/*.c tests/cli/*.c))
format: | $(BUILD)/.check-packages ## all C files as clang-format writes them
	@clang-format --dry-run -Werror $(sort $(FORMATTED)) && echo "format: $(words $(sort $(FORMATTED))) files"

# One stamp a file, so that only what changed is looked at again.
TIDY_STAMPS := $(C_FILES:%.c=$(BUILD)/tidy/%.ok)
# How far the analyzer follows one function: a third of its own 225000, which takes it a third of the time.
TIDY_NODES ?= 75000
TIDY_DEEP := -Xclang -analyzer-config -Xclang max-nodes=$(TIDY_NODES)
TIDY_FLAGS := $(CSTD) $(filter-out -MMD -MP,$(CPPFLAGS)) -Itests
tidy: | $(BUILD)/.check-packages ## clang-tidy over all C files
	@+$(MAKE) --no-print-directory -k -j2 $(TIDY_STAMPS) && echo "tidy: $(words $(TIDY_STAMPS)) files"
$(BUILD)/tidy/%.ok: %.c .clang-tidy tests/.clang-tidy $(PUBLIC_HEADERS) $(wildcard src/*/*.h)
	@mkdir -p $(@D)
	@clang-tidy --quiet --warnings-as-errors='*' $(TIDY_DEEP:%=--extra-arg=%) $< -- $(TIDY_FLAGS) 2>$@.log || { cat $@.log; exit 1; }
	@touch $@

# ---- references -----------------------------------------------------------------------------
# Tables and models of other people's general-purpose libraries. Not in `check`: a large download, and a minute.
$(BUILD)/.reference-packages: tests/install-packages tests/packages.mk
	@mkdir -p $(@D)
	@tests/install-packages $(REFERENCE_PACKAGES)
	@touch $@
.PHONY: reference
reference: $(BUILD)/oilway | $(BUILD)/.reference-packages ## threads against general-purpose references
	tests/reference/threads.py $(BUILD)/oilway

# The physics takes five seconds, and its packages are small.
.PHONY: reference-physics
reference-physics: $(BUILD)/physics-driver | $(BUILD)/.check-packages ## physics against fluids, scipy and iapws
	/usr/bin/python3 tests/reference/physics.py $(BUILD)/physics-driver
$(BUILD)/physics-driver: tests/reference/physics_driver.c $(LIBRARY)
	$(CC) $(CPPFLAGS) $(CFLAGS) $(LDFLAGS) -o $@ $< $(LIBRARY) $(LIBS)

# ---- all of it ------------------------------------------------------------------------------
# In turn, each with as many jobs as there are processors; the first that fails stops. What waits for a network's time
# limits and what waits for a browser stand together (with a +), since neither keeps a processor busy.
CHECKS := format headers layers check-asan check-clang cases-asan terminal+counter-http+browser docs-fresh fuzz-seeds valgrind reference-physics tidy
.PHONY: cases-asan
check: | $(BUILD)/.check-packages ## every test: gcc, clang, sanitizers, valgrind, cases, seeds, references, tidy
	@set -e; for part in $(CHECKS); do echo "== $$part"; begun=$$(date +%s); \
	    words=$$(echo $$part | tr + ' '); jobs=$$(echo $$words | wc -w); \
	    $(MAKE) --no-print-directory -s -j$$(( jobs > $(CHECK_JOBS) ? jobs : $(CHECK_JOBS) )) $$words; \
	    echo "== $$part: $$(($$(date +%s) - begun)) s"; done; echo "all checks passed"
cases-asan: | $(BUILD)/.check-packages ## the end-to-end cases against a binary with sanitizers
	$(MAKE) BUILD=$(BUILD)/asan $(ASAN) cases

# ---- documentation --------------------------------------------------------------------------
.PHONY: docs docs-fresh
docs: $(BUILD)/oilway ## write anew what the documentation takes from the program
	@tests/docs/run.py $(BUILD)/oilway --update README.md examples/README.md $(sort $(wildcard docs/*.md))
	@$(BUILD)/oilway manual >docs/man/oilway.1
	@$(BUILD)/oilway rules --format md >docs/rules.md
docs-fresh: $(BUILD)/oilway | $(BUILD)/.check-packages ## sessions and YAML in the documentation, the manual, the JSON against its schemas
	@tests/docs/run.py $(BUILD)/oilway README.md examples/README.md $(sort $(wildcard docs/*.md))
	@$(BUILD)/oilway manual | cmp - docs/man/oilway.1
	@$(BUILD)/oilway rules --format md | cmp - docs/rules.md
	@tests/docs/pages.py $(BUILD)/oilway README.md examples/README.md $(sort $(wildcard docs/*.md)) docs/man/oilway.5
	@tests/docs/schemas.py $(BUILD)/oilway
