"""A pseudo-terminal with a program in it: what a person would type, and see."""
import fcntl
import os
import pty
import re
import select
import signal
import struct
import termios
import time

ESCAPE = re.compile(r"\x1b(\[[0-9;?>=]*[A-Za-z]|\][^\x07]*\x07|[()][A-Z0-9]|[=>])")


class Terminal:
    def __init__(self, words, environment, columns=200):
        self.process, self.handle = pty.fork()
        if self.process == 0:
            fcntl.ioctl(1, termios.TIOCSWINSZ, struct.pack("HHHH", 50, columns, 0, 0))
            os.execvpe(words[0], words, environment)

    def send(self, words):
        os.write(self.handle, words.encode())

    def read_until(self, wanted, seconds):
        """What was written until `wanted` stands in it, or until nothing more comes in time; without colours."""
        seen, end = "", time.monotonic() + seconds
        while wanted is None or wanted not in seen:
            left = end - time.monotonic()
            if left <= 0 or not select.select([self.handle], [], [], left)[0]:
                break
            seen += os.read(self.handle, 65536).decode("utf-8", "replace")
            seen = ESCAPE.sub("", seen).replace("\r", "").replace("\a", "")
        return seen

    def read_all(self, seconds):
        """All that is written until the program ends, as it is; and its wait status."""
        seen, end = b"", time.monotonic() + seconds
        while time.monotonic() < end:
            if not select.select([self.handle], [], [], 0.1)[0]:
                continue
            try:
                piece = os.read(self.handle, 65536)
            except OSError: # Linux tells the end of a terminal so
                break
            if not piece:
                break
            seen += piece
        _, status = os.waitpid(self.process, 0)
        os.close(self.handle)
        return seen.decode("utf-8", "replace"), status

    def close(self):
        os.close(self.handle)
        os.kill(self.process, signal.SIGKILL)
        os.waitpid(self.process, 0)


class Judge:
    """Counts what is so and what is not, and tells the latter with what was seen."""

    passed = failed = 0

    def say(self, good, sentence, seen):
        self.passed += good
        self.failed += not good
        if not good:
            print(f"{sentence}: not so\n  {seen!r}"[:1500])
