#!/usr/bin/env python3
"""Low and high against Monte Carlo: a million draws by numpy, answered one by one.

The draws are normal, as wide as what follows +-. Low and high are steps of one standard deviation to each side, put
together as independent, so for a result that bends gently they lie where 15.87 and 84.13 per cent of the draws lie
below. They need not for one that bends much: each question states what is allowed, in parts of its spread.
"""
import json
import os
import subprocess
import sys

try:
    import numpy
except ImportError:
    sys.exit(77)

PROGRAM = os.environ["HOLDWATER"]
DRAWS = 1000000
QUESTIONS = [
    # calculation, inputs: (centre, half), fixed options, results, allowed difference in parts of high - low
    ("ammonia", {"tan": (0.6, 0.1), "ph": (8.15, 0.1), "temp": (25, 0.5), "salinity": (34, 1)},
     [], ["free", "long_ratio", "free_percent", "pka"], 0.02),
    ("ammonia", {"tan": (0.6, 0.02), "ph": (8.15, 0.02), "temp": (25, 0.5), "salinity": (34, 1)},
     [], ["free", "short_ratio", "tan_long"], 0.005),
    ("nitrite", {"nitrite": (0.5, 0.05), "salinity": (33, 1)}, ["--basis", "ion"],
     ["as_n", "chloride", "chloride_ratio"], 0.02),
    ("oxygen", {"temp": (25.5, 0.5), "salinity": (33, 1), "oxygen_now": (6.1, 0.2)}, [],
     ["saturation", "percent"], 0.005),
]


def answer(calculation, inputs, fixed, results):
    command = [PROGRAM, calculation, "--format", "json", "--only", ",".join(results)] + fixed
    for name, (centre, half) in inputs.items():
        command += ["--" + name, "%r+-%r" % (centre, half)]
    return json.loads(subprocess.run(command, check=True, capture_output=True).stdout)["results"]


def draws(calculation, inputs, fixed, results, rng):
    columns = [rng.normal(centre, half, DRAWS) for centre, half in inputs.values()]
    text = ",".join(inputs) + "\n" + "\n".join(
        ",".join("%.9g" % x for x in row) for row in zip(*columns)) + "\n"
    command = [PROGRAM, calculation, "--rows", "-", "--only", ",".join(results), "--digits", "9"] + fixed
    out = subprocess.run(command, input=text.encode(), check=True, capture_output=True).stdout.decode()
    lines = out.splitlines()
    skip = len(inputs)
    cells = [line.split(",")[skip:skip + len(results)] for line in lines[1:]]
    return numpy.array(cells, dtype=float)


def main():
    rng = numpy.random.default_rng(20310305)
    failed = 0
    for calculation, inputs, fixed, results, allowed in QUESTIONS:
        told = answer(calculation, inputs, fixed, results)
        found = draws(calculation, inputs, fixed, results, rng)
        assert len(found) == DRAWS
        for k, result in enumerate(results):
            low, high = numpy.quantile(found[:, k], [0.158655, 0.841345])
            width = told[result]["high"] - told[result]["low"]
            off = max(abs(told[result]["low"] - low), abs(told[result]["high"] - high)) / width
            print("%s %s: %.5g to %.5g, draws %.5g to %.5g, off by %.2f %% of the spread"
                  % (calculation, result, told[result]["low"], told[result]["high"], low, high, 100 * off))
            failed += not off <= allowed
    return 1 if failed else 0


sys.exit(main())
