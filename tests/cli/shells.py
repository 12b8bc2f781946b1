#!/usr/bin/env python3
"""Completion in real shells: types into each on a pseudo-terminal, presses Tab and reads what stands in the line.

    tests/cli/shells.py BINARY SHELL...

A shell is started without anybody's settings, so bash is without the helpers that distributions add.
"""
import os
import sys
import tempfile

from terminal import Terminal

# What is typed, and what must stand in the line after Tab.
CASES = [
    ("oilway st", "oilway stack "),
    ("oilway stack --circ", "oilway stack --circuit "),
    ("oilway stack --circuit f", "oilway stack --circuit feed "),
    ("oilway stack --from brockle-4:ga", "oilway stack --from brockle-4:gallery "),
    ("oilway stack --from=brockle-4:ga", "oilway stack --from=brockle-4:gallery "),
    ('oilway stack --from "brockle-4:ga', 'oilway stack --from "brockle-4:gallery" '),
    ("oilway stack --from a --to curlew-8b:oil-i", "oilway stack --from a --to curlew-8b:oil-in "),
    ('oilway stack --from "1/8-27 NPT fe', 'oilway stack --from "1/8-27 NPT female" '),
    ("oilway stack --from '1/8-27 NPT fe", "oilway stack --from '1/8-27 NPT female' "),
    ("oilway stack --from 1/8-27\\ NPT\\ fe", "oilway stack --from 1/8-27\\ NPT\\ female "),
    ("oilway stack --from=1/8-27\\ NPT\\ fe", "oilway stack --from=1/8-27\\ NPT\\ female "),
    ("oilway mates -4\\ flare37\\ m", "oilway mates -4\\ flare37\\ male "),
    ("oilway catalog show ga-t2-f4-", "oilway catalog show ga-t2-f4-ss "),
    ("oilway rules taper-a", "oilway rules taper-aimed "),
    ("oilway swap examples/plover-on-brockle.yaml he-4", "oilway swap examples/plover-on-brockle.yaml he-4-"),
    ("oilway check examples/plo", "oilway check examples/plover-on-brockle.yaml "),
]
# Zsh puts nothing sensible into a word whose quote opens in its middle, whatever it is offered.
OPEN_IN_THE_MIDDLE = ('oilway stack --from="1/8-27 NPT fe', 'oilway stack --from="1/8-27 NPT female" ')

START = {
    "bash": (["bash", "--norc", "--noprofile", "-i"], 'eval "$(oilway completion bash)"', "\x15", CASES + [OPEN_IN_THE_MIDDLE]),
    "zsh": (["zsh", "-f", "-i"], 'autoload -U compinit; compinit -u -D; eval "$(oilway completion zsh)"', "\x15", CASES),
    "fish": (["fish", "--no-config", "-i"], "oilway completion fish | source", "\x15", CASES + [OPEN_IN_THE_MIDDLE]),
}


def try_shell(shell, environment):
    words, begin, clear, cases = START[shell]
    terminal = Terminal(words, environment)
    failed = 0
    terminal.send(begin + "; echo be''gun\n")
    if "begun" not in terminal.read_until("begun", 30):
        sys.exit(f"{shell} does not start")
    for typed, wanted in cases:
        terminal.read_until(None, 0.2)
        terminal.send(typed + "\t")
        seen = terminal.read_until(wanted, 10)
        if wanted not in seen:
            failed += 1
            print(f"{shell}: {typed}<Tab>\n  wanted {wanted!r}\n  seen   {seen!r}")
        terminal.send(clear)
    terminal.close()
    print(f"{shell}: {len(cases) - failed} passed, {failed} failed")
    return failed


def main():
    binary = os.path.dirname(os.path.abspath(sys.argv[1]))
    with tempfile.TemporaryDirectory(prefix="oilway-home-") as home:
        environment = dict(os.environ, PATH=binary + ":" + os.environ["PATH"], LC_ALL="C.UTF-8", TERM="xterm", HOME=home,
                           INPUTRC="/dev/null", HISTFILE="/dev/null")
        for name in ("OILWAY_CATALOG", "XDG_CONFIG_HOME", "XDG_DATA_HOME", "XDG_CACHE_HOME"):
            environment.pop(name, None)
        failed = sum([try_shell(shell, environment) for shell in sys.argv[2:]])
    sys.exit(1 if failed else 0)


if __name__ == "__main__":
    main()
