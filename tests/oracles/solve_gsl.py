"""Solving backwards against Brent's method of the GNU Scientific Library, on the program's own forward answers."""

import ctypes
import ctypes.util
import json
import os
import subprocess
import sys

from support.compare import SKIPPED, Comparison, finish

PROGRAM = os.environ.get("HOLDWATER", "build/holdwater")
STEPS = 48

# calculation, what is given, the input looked for, its unit, where to look (lo, hi), the result, its unit, and the
# values of the input whose results become targets
CASES = [
    ("ammonia", "--tan 0.6 --temp 25.3 --salinity 33.7",
     "ph", "", (5, 10), "free", "mg/L", (6.13, 7.87, 8.61)),
    ("ammonia", "--tan 0.6 --temp 25.3 --salinity 33.7",
     "ph", "", (6.6, 9.8), "long_ratio", "", (7.77, 8.35)),
    ("ammonia", "--tan 0.6 --ph 8.07 --salinity 33.7",
     "temp", "C", (0, 40), "free_nh3", "mg/L", (3.3, 17.7, 36.1)),
    ("ammonia", "--tan 0.6 --ph 8.07 --temp 25.3",
     "salinity", "g/kg", (1, 45), "pka", "", (4.4, 31.9)),
    ("ammonia", "--tan 0.6 --ph 6.95 --temp 25.3",
     "salinity", "g/kg", (10.01, 45), "tan_long", "mg/L", (19.7, 38.3)),
    ("ammonia", "--ph 8.07 --temp 25.3 --salinity 0.3",
     "tan", "mg/L", (0, 1000), "short_ratio", "", (0.17, 4.9)),
    ("bath", "--strength 1%wv --target 6mg/L",
     "volume", "L", (0.1, 1000), "dye", "mL", (7.7, 11.9)),
    ("bath", "--volume 12L --strength 1%wv",
     "rate", "mL/L", (0.02, 4.9), "level", "mg/L", (0.53, 0.71)),
    ("challenge", "--volume 75L --fish no",
     "target", "mg/L", (0.1, 50), "mass", "g", (1.73, 23.9)),
    ("challenge", "--volume 75L --fish no --reagent ammonia-solution",
     "strength", "%", (0.5, 30), "liquid", "mL", (0.97, 9.51, 27.3)),
    ("challenge", "--volume 75L --fish no --ph 8.1 --salinity 34.1",
     "temp", "C", (0, 40), "free_peak", "mg/L", (13.3, 29.1)),
    ("change", "--volume 110L --now 0.18 --times 3",
     "share", "%", (0.01, 100), "after", "mg/L", (3.7, 41.3, 88.8)),
    ("change", "--volume 110L --now 0.18 --method flow",
     "take", "L", (0.01, 1000), "after", "mg/L", (23.9, 311.0)),
    ("change", "--volume 110L --share 23% --now 80 --method flow",
     "goal", "mg/L", (0.1, 79), "share_needed", "%", (7.1, 53.9)),
    ("change", "--volume 110L --share 23% --now 80",
     "new", "mg/L", (0, 1000), "lowest", "mg/L", (3.3, 41.7)),
    ("concentrate", "--reagent ammonium-chloride --per 5mL --into 110L --make 250mL",
     "raises", "mg/L", (0.01, 3), "mass", "g", (0.37, 1.9)),
    ("disinfect", "--volume 75L",
     "strength", "%", (1, 15), "bleach", "mL", (4.3, 11.7)),
    ("gauge", "--added 9g",
     "rise", "mg/L", (1, 1000), "net", "L", (37.3, 122.8)),
    ("neutralise", "--chlorine 1.2 --chloramine no --medicine none",
     "volume", "L", (1, 1000), "amount", "g", (24.7, 311.0)),
    ("nitrite", "--nitrite 0.5 --basis ion",
     "salinity", "g/kg", (1, 45), "chloride", "mg/L", (3.7, 33.1)),
    ("salinity", "--of sg --reference 25C/25C --temp 23.7",
     "reading", "", (1.001, 1.032), "salinity", "g/kg", (1.0061, 1.0264)),
    ("salinity", "--of conductivity --temp 23.7",
     "reading", "mS/cm", (1, 60), "salinity", "g/kg", (7.3, 51.8)),
    ("salinity", "--of conductivity --reading 50mS/cm",
     "temp", "C", (12.5, 40), "salinity", "g/kg", (17.1, 33.9)),
    ("salinity", "--of compensated --reading 50mS/cm --slope 1.9",
     "temp", "C", (-2, 40), "salinity", "g/kg", (13.1, 27.7)),
    ("verdict", "--volume 110L --start-tan 2 --tan 0.1 --nitrite 0.3",
     "hours", "h", (1, 240), "rate", "mg/L/d", (17.3, 61.0)),
    ("volume", "--measured inside --shape cylinder --depth 37cm",
     "diameter", "cm", (5, 500), "net", "L", (41.9, 173.0)),
    ("volume", "--measured outside --wall 6mm --length 24in --width 14in",
     "depth", "cm", (1, 100), "gross", "L", (33.3, 61.9)),
]


class Function(ctypes.Structure):
    TYPE = ctypes.CFUNCTYPE(ctypes.c_double, ctypes.c_double, ctypes.c_void_p)
    _fields_ = [("function", TYPE), ("params", ctypes.c_void_p)]


def library():
    found = ctypes.util.find_library("gsl")
    if not found:
        print("skipped: libgsl")
        sys.exit(SKIPPED)
    ctypes.CDLL(ctypes.util.find_library("gslcblas") or "libgslcblas.so.0", mode=ctypes.RTLD_GLOBAL)
    gsl = ctypes.CDLL(found)
    gsl.gsl_root_fsolver_alloc.restype = ctypes.c_void_p
    gsl.gsl_root_fsolver_alloc.argtypes = [ctypes.c_void_p]
    gsl.gsl_root_fsolver_set.argtypes = [ctypes.c_void_p, ctypes.POINTER(Function),
                                         ctypes.c_double, ctypes.c_double]
    for name in ("iterate", "free"):
        getattr(gsl, "gsl_root_fsolver_" + name).argtypes = [ctypes.c_void_p]
    for name in ("root", "x_lower", "x_upper"):
        ask = getattr(gsl, "gsl_root_fsolver_" + name)
        ask.argtypes, ask.restype = [ctypes.c_void_p], ctypes.c_double
    return gsl


def run(words):
    done = subprocess.run([PROGRAM] + words, stdout=subprocess.PIPE, stderr=subprocess.PIPE,
                          check=False)
    return done.returncode, done.stdout.decode("ascii"), done.stderr.decode("utf-8", "replace")


def forward(calculation, given, name, unit, result, x):
    words = [calculation] + given.split() + ["--" + name.replace("_", "-"), "%.17g%s" % (x, unit)]
    status, out, err = run(words + ["--only", result, "--format", "value", "--digits", "17"])
    if status != 0:
        sys.exit("%s: status %d: %s" % (words, status, err))
    return float(out)


def brent(gsl, function, lo, hi):
    """The root between two values of different sign, to the last digits that Brent's method finds."""
    call = Function(Function.TYPE(lambda x, _: function(x)), None)
    solver = gsl.gsl_root_fsolver_alloc(ctypes.c_void_p.in_dll(gsl, "gsl_root_fsolver_brent"))
    if gsl.gsl_root_fsolver_set(solver, ctypes.byref(call), lo, hi) != 0:
        sys.exit("no bracket: %r %r" % (lo, hi))
    for _ in range(100):
        if gsl.gsl_root_fsolver_iterate(solver) != 0:
            sys.exit("no progress")
        root = gsl.gsl_root_fsolver_root(solver)
        width = gsl.gsl_root_fsolver_x_upper(solver) - gsl.gsl_root_fsolver_x_lower(solver)
        if abs(width) <= 1e-14 * abs(root) or function(root) == 0:
            break
    gsl.gsl_root_fsolver_free(solver)
    return root


def grid(lo, hi):
    decades = lo > 0 and hi > 100 * lo
    for k in range(STEPS + 1):
        yield min(hi, lo * (hi / lo) ** (k / STEPS)) if decades else lo + (hi - lo) * k / STEPS


def main():
    gsl = library()
    off = Comparison("solutions, of the solution", 1e-12, relative=True)
    number = Comparison("number of solutions", 0)
    back = Comparison("result at the solution", 1e-12, relative=True)
    for calculation, given, name, unit, (lo, hi), result, result_unit, values in CASES:
        points = [(x, forward(calculation, given, name, unit, result, x)) for x in grid(lo, hi)]
        for value in values:
            target = forward(calculation, given, name, unit, result, value)
            where = (calculation, given, name, value, result, target)

            def function(x):
                return forward(calculation, given, name, unit, result, x) - target

            theirs = [brent(gsl, function, a, b)
                      for (a, ya), (b, yb) in zip(points, points[1:])
                      if (ya - target) * (yb - target) < 0]
            wanted = "%s=%.17g%s" % (result, target, result_unit)
            status, out, err = run([calculation] + given.split() +
                                   ["--solve", name, "--for", wanted,
                                    "--only", result, "--format", "json"])
            if status != 0:
                sys.exit("%s: status %d: %s" % (where, status, err))
            answer = json.loads(out)
            ours = [s["value"] for s in answer["solved"]["solutions"] if lo <= s["value"] <= hi]
            number.add(len(ours), len(theirs), where)
            for mine, other in zip(ours, theirs):
                off.add(mine, other, where)
            back.add(answer["results"][result]["value"], target, where)
            if min(abs(mine - value) for mine in ours) > 1e-9 * value:
                sys.exit("%s: not found again in %s" % (where, ours))
    finish([number, off, back])


main()
