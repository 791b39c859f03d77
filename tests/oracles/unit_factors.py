"""Unit factors of src/engine/unit.c against GNU units, an independent table (Debian package units)."""

import re
import shutil
import subprocess
import sys

# Our name: (GNU units expression for one of it, for one of the first unit of its kind).
PEERS = {
    ("HW_VOLUME", "mL"): ("mL", "L"),
    ("HW_VOLUME", "gal"): ("usgallon", "L"),
    ("HW_VOLUME", "impgal"): ("brgallon", "L"),
    ("HW_VOLUME", "floz"): ("usfloz", "L"),
    ("HW_VOLUME", "cup"): ("uscup", "L"),
    ("HW_VOLUME", "pt"): ("uspint", "L"),
    ("HW_VOLUME", "qt"): ("usquart", "L"),
    ("HW_VOLUME", "tsp"): ("usteaspoon", "L"),
    ("HW_VOLUME", "tbsp"): ("ustablespoon", "L"),
    ("HW_VOLUME", "m3"): ("m^3", "L"),
    ("HW_VOLUME", "ft3"): ("ft^3", "L"),
    ("HW_MASS", "mg"): ("mg", "g"),
    ("HW_MASS", "kg"): ("kg", "g"),
    ("HW_MASS", "oz"): ("oz", "g"),
    ("HW_MASS", "lb"): ("lb", "g"),
    ("HW_LENGTH", "mm"): ("mm", "cm"),
    ("HW_LENGTH", "m"): ("m", "cm"),
    ("HW_LENGTH", "in"): ("inch", "cm"),
    ("HW_LENGTH", "ft"): ("ft", "cm"),
    ("HW_TEMPERATURE_STEP", "F"): ("degF", "K"),
    ("HW_CONCENTRATION", "ug/L"): ("ug/L", "mg/L"),
    ("HW_CONCENTRATION", "g/L"): ("g/L", "mg/L"),
    ("HW_CONCENTRATION", "mg/mL"): ("mg/mL", "mg/L"),
    ("HW_CONCENTRATION", "%wv"): ("g/(100 mL)", "mg/L"),
    ("HW_TIME", "min"): ("min", "hour"),
    ("HW_TIME", "d"): ("day", "hour"),
    ("HW_DOSE_RATE", "mL/gal"): ("mL/usgallon", "mL/L"),
    ("HW_PARTS", "mL/L"): ("mL/L", "uL/L"),
    ("HW_CONDUCTIVITY", "uS/cm"): ("uS/cm", "mS/cm"),
    ("HW_MASS_PER_DAY", "mg/d"): ("mg/day", "g/day"),
    ("HW_MASS_PER_DAY", "kg/d"): ("kg/day", "g/day"),
    ("HW_MASS_PER_DAY", "oz/d"): ("oz/day", "g/day"),
    ("HW_MASS_PER_DAY", "lb/d"): ("lb/day", "g/day"),
}
ROW = re.compile(r'\{(HW_[A-Z_]+),\s*"([^"]+)",\s*([-0-9.]+),\s*([-0-9.]+),\s*([-0-9.]+),')
TOLERANCE = 1e-14


def main():
    if not shutil.which("units"):
        print("skipped: units")
        return 77
    with open("src/engine/unit.c", encoding="ascii") as source:
        rows = {(kind, name): float(num) / float(den) for kind, name, _, num, den in ROW.findall(source.read())}
    worst, failed = 0.0, 0
    for key, (one, first) in PEERS.items():
        if key not in rows:
            print("no such unit any more:", key)
            failed += 1
            continue
        answer = subprocess.run(["units", "-t", "-o", "%.17g", one, first], capture_output=True, text=True, check=True)
        peer = float(answer.stdout.split()[0])
        off = abs(rows[key] / peer - 1)
        worst = max(worst, off)
        if not off <= TOLERANCE:
            print("%s %s: ours %.17g, units %.17g" % (*key, rows[key], peer))
            failed += 1
    for fahrenheit in (32.0, 77.0, 104.0):
        answer = subprocess.run(
            ["units", "-t", "-o", "%.17g", "tempF(%r)" % fahrenheit, "tempC"], capture_output=True, text=True, check=True
        )
        ours = (fahrenheit - 32) * 5 / 9
        if not abs(ours - float(answer.stdout.split()[0])) <= 1e-12:
            print("tempF(%r): ours %.17g, units %s" % (fahrenheit, ours, answer.stdout.strip()))
            failed += 1
    print("unit factors: %d compared with GNU units, largest deviation %.2g, allowed %.2g" % (len(PEERS), worst, TOLERANCE))
    return 1 if failed else 0


if __name__ == "__main__":
    sys.exit(main())
