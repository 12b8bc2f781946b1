# What `make check` is made of. Each part can be asked for alone.

# A variant is the same Makefile run with other flags in a folder of its own.
ASAN  := CC=gcc OPT="-O1 -g -fno-omit-frame-pointer" SANITIZE="-fsanitize=address,undefined -fno-sanitize-recover=all"
CLANG := CC=clang OPT="-O1 -g -fno-omit-frame-pointer" SANITIZE="-fsanitize=address,undefined -fno-sanitize-recover=all"

.PHONY: unit check-asan check-clang
unit: $(UNIT_TESTS) ## run the unit tests of this variant
	@set -e; for test in $(UNIT_TESTS); do OW_SOURCE_DIR="$(CURDIR)" $$test >$$test.log 2>&1 || { cat $$test.log; exit 1; }; \
	    grep -hE '^\[  PASSED  \]' $$test.log | sed "s|\$$| $$(basename $$test)|"; done

check-asan: | $(BUILD)/.check-packages ## unit tests, gcc with ASan, UBSan, LeakSanitizer
	$(MAKE) BUILD=$(BUILD)/asan $(ASAN) unit
check-clang: | $(BUILD)/.check-packages ## unit tests, clang with ASan, UBSan
	$(MAKE) BUILD=$(BUILD)/clang $(CLANG) unit

CLI_CASES := $(sort $(wildcard tests/cli/*.case))
.PHONY: cases
cases: $(BUILD)/oilway | $(BUILD)/.check-packages ## run the end-to-end cases against the binary
	@tests/cli/run.py $(BUILD)/oilway $(CLI_CASES)
