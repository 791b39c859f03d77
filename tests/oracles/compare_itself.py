"""The comparison that the oracles share: what it must not let pass."""

import contextlib
import io
import math
import sys

from support.compare import Comparison

MUST_FAIL = {
    "nothing compared": [],
    "too far": [(1, 1), (1 + 2e-9, 1), (1, 1)],
    "no number": [(1, 1), (math.nan, 1), (1, 1)],
    "no number, first": [(math.nan, 1), (1, 1)],
    "no number wanted": [(1, math.nan), (1, 1)],
    "far, then no number, then right": [(5, 1), (math.nan, 1), (1, 1)],
    "infinite": [(math.inf, 1), (1, 1)],
}

wrong = []
for relative in (False, True):
    for name, pairs in MUST_FAIL.items():
        comparison = Comparison(name, 1e-9, relative)
        for pair in pairs:
            comparison.add(*pair, where=pair)
        with contextlib.redirect_stdout(io.StringIO()):
            passed = comparison.told()
        if passed:
            wrong.append(name)
    comparison = Comparison("right", 1e-9, relative)
    comparison.add(1 + 5e-10, 1, "here")
    if not comparison.told():
        wrong.append("right")

print("passed though wrong, or failed though right:", wrong or "none")
sys.exit(1 if wrong else 0)
