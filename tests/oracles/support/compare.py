"""What the oracles share: values of the core, the largest deviation, and the verdict."""

import os
import subprocess
import sys

SKIPPED = 77


def need(name):
    """The module of that name, or the end of the script as skipped."""
    try:
        return __import__(name)
    except ImportError:
        print("skipped:", name)
        sys.exit(SKIPPED)


def core(subject, count=6000):
    """Lines of the program core_values: a name and numbers, exact."""
    program = os.environ.get("HOLDWATER_CORE_VALUES", "build/tests/oracles/core_values")
    done = subprocess.run([program, subject, str(count)], stdout=subprocess.PIPE, check=True)
    for line in done.stdout.decode("ascii").splitlines():
        name, *numbers = line.split(",")
        yield name, [float.fromhex(number) for number in numbers]


class Comparison:
    """Keeps the largest deviation of one quantity and the inputs it came from."""

    def __init__(self, what, allowed, relative=False):
        self.what, self.allowed, self.relative = what, allowed, relative
        self.worst, self.where, self.points = 0, None, 0

    def add(self, got, want, where):
        off = abs(got - want)
        if self.relative:
            off = off / abs(want)
        if off != off:
            off = float("inf")  # no number: nothing is further away
        self.points += 1
        if off > self.worst:
            self.worst, self.where = off, where

    def told(self):
        good = self.points > 0 and self.worst <= self.allowed
        kind = "relative" if self.relative else "absolute"
        print("%-34s %7d points, largest deviation %.3g %s, allowed %.3g%s" % (
            self.what, self.points, float(self.worst), kind, self.allowed,
            "" if good else "  FAILED at %s" % (self.where,)))
        return good


def finish(comparisons):
    """Tells every comparison; status 1 when one of them is over what is allowed."""
    results = [comparison.told() for comparison in comparisons]
    sys.exit(0 if results and all(results) else 1)
