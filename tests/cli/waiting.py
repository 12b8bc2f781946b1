#!/usr/bin/env python3
"""What a person sees who waits for the command, and what Ctrl-C does; on a pseudo-terminal.

    tests/cli/waiting.py BINARY

A catalogue large enough to be stopped in the middle is written; the program is then held for longer than the second
after which it begins to tell, so that nothing hangs on how fast the machine is.
"""
import os
import signal
import subprocess
import sys
import tempfile
import time

from terminal import Judge, Terminal

PAGES, ROWS = 300, 1000
ASK = ["--from", "1/8-27 NPT female", "--to", "-4 flare37 female swivel"]


def write_catalogue(folder):
    for page in range(PAGES):
        with open(f"{folder}/page-{page:03}.yaml", "w", encoding="utf-8") as out:
            out.write(f"page: p{page}\nkind: adapter\ntitle: Adapter\ncolumns: [id, a, b, bore, length]\nrows:\n")
            out.writelines(f"- [a-{page}-{row}, 1/8-27 NPT male, -4 flare37 male, 4.4 mm, {20 + row % 30} mm]\n" for row in range(ROWS))


def state_of(process):
    """The letter of its state, and the ticks that it took of a processor."""
    with open(f"/proc/{process}/stat", encoding="ascii") as stat:
        fields = stat.read().rpartition(")")[2].split()
    return fields[0], int(fields[11]) + int(fields[12])


def until(condition, what):
    """Waits for it, but not for ever."""
    for _ in range(4000):
        if condition():
            return
        time.sleep(0.005)
    sys.exit(f"waited in vain for {what}")


def name_of(process):
    with open(f"/proc/{process}/comm", encoding="utf-8") as name:
        return name.read().strip()


def hold(process, seconds):
    """Stops the program once it is at work, and lets it go on after so many seconds."""
    until(lambda: state_of(process)[1] >= 8, "the program to be at work")
    os.kill(process, signal.SIGSTOP)
    time.sleep(seconds)


def run(binary, words, environment, seconds=1.2, before_going_on=None):
    terminal = Terminal([binary, "stack"] + ASK + words, environment)
    hold(terminal.process, seconds)
    if before_going_on:
        before_going_on(terminal)
    os.kill(terminal.process, signal.SIGCONT)
    return terminal.read_all(60)


def main():
    binary, judge = os.path.abspath(sys.argv[1]), Judge()
    environment = dict(os.environ, LC_ALL="C.UTF-8", TERM="xterm", NO_COLOR="1")
    with tempfile.TemporaryDirectory(prefix="oilway-waiting-") as folder:
        os.mkdir(f"{folder}/shop")
        write_catalogue(f"{folder}/shop")
        shop = ["--catalog", f"{folder}/shop"]

        seen, status = run(binary, shop, environment)
        told, _, answer = seen.rpartition(" \r")
        judge.say(status == 0 and "\rreading the catalogue: " in told and f" of {PAGES} pages" in told,
                  "after a second it tells what it is at", seen)
        judge.say(answer.startswith("from 1/8-27 NPT female") and "reading" not in answer,
                  "the line is erased before the answer", seen)

        quick, _ = Terminal([binary, "oil", "15W-40", "--at", "100 C"], environment).read_all(60)
        judge.say("\r " not in quick and "reading" not in quick, "nothing is told of what takes no time", quick)

        for words, changed in (["--quiet"], {}), ([], {"TERM": "dumb"}):
            seen, status = run(binary, shop + words, dict(environment, **changed))
            judge.say(status == 0 and seen.startswith("from 1/8-27 NPT female"), f"nothing is told with {words} {changed}", seen)

        piped = subprocess.Popen([binary, "stack"] + ASK + shop, env=environment, stdout=subprocess.PIPE, stderr=subprocess.PIPE)
        hold(piped.pid, 1.2)
        os.kill(piped.pid, signal.SIGCONT)
        out, err = piped.communicate(timeout=60)
        judge.say(piped.returncode == 0 and err == b"" and out.startswith(b"from"), "nothing is told into a pipe", err)

        target = f"{folder}/answer.txt"
        for name, stop in (("Ctrl-C", lambda terminal: terminal.send("\x03")),
                           ("a kind kill", lambda terminal: os.kill(terminal.process, signal.SIGTERM))):
            seen, status = run(binary, shop + ["--output", target], environment, before_going_on=stop)
            judge.say(os.WIFSIGNALED(status) and os.WTERMSIG(status) in (signal.SIGINT, signal.SIGTERM) and
                      "oilway stack: interrupted; nothing was written" in seen, f"{name} ends it with a message", (seen, status))
            judge.say(os.listdir(folder) == ["shop"], f"{name} leaves no file", os.listdir(folder))

        waiting = Terminal([binary, "check", "-"], environment)
        until(lambda: name_of(waiting.process) == os.path.basename(binary) and state_of(waiting.process)[0] == "S",
              "the program to sleep")
        time.sleep(0.5)
        waiting.send("\x03")
        seen, status = waiting.read_all(20)
        judge.say(os.WIFSIGNALED(status) and "interrupted" in seen, "Ctrl-C ends it while it waits for its input", (seen, status))
    print(f"{judge.passed} passed, {judge.failed} failed")
    sys.exit(1 if judge.failed else 0)


if __name__ == "__main__":
    main()
