"""Calendars for a phone read back by python3-icalendar: what stands in the csv stands in them. It takes most broken files
without a word, so it is no check of the form: tests/cli/check_ics.awk is."""

import csv
import datetime
import os
import subprocess
import sys
import tempfile

try:
    import icalendar
except ImportError:
    print("skipped: icalendar")
    sys.exit(77)

HOLDWATER = os.environ["HOLDWATER"]
HARD = (
    "day\tact\tevery\tuntil\tclass\tsource\n"
    '-2\tlook; wait, \\ then: "go"\t2\t40\tvet\ta, b; c\\d\n'
    "1\tWasser pr\u00fcfen, und noch einmal, und noch einmal, und noch \u20ac \U0001f41f einmal\t-\t-\town\t-\n"
)
TANKS = ["birch", "a,b;c\\d:e", "\u00e4" * 40, "=1+1"]


def ask(*words):
    answer = subprocess.run([HOLDWATER, "calendar", *words], capture_output=True, check=False)
    if answer.returncode != 0:
        sys.exit(answer.stderr)
    return answer.stdout


def unguarded(text):
    """A cell that a spreadsheet would run has an apostrophe before it."""
    return text[1:] if text[:1] == "'" and text[1:2] in "=+-@" else text


def compare(words):
    rows = list(csv.DictReader(ask(*words, "--format", "csv").decode("utf-8").splitlines()))
    calendar = icalendar.Calendar.from_ical(ask(*words, "--format", "ics"))
    faults = list(calendar.errors)
    events = [part for part in calendar.walk() if part.name == "VEVENT"]
    for event in events:
        faults += event.errors
    if len(events) != len(rows):
        return ["%d events, %d rows" % (len(events), len(rows))], 0
    for event, row in zip(events, rows):
        date = event["DTSTART"].dt
        tank, act = unguarded(row["tank"]), unguarded(row["act"])
        source = unguarded(row["source"])
        summary = tank + ": " + act if tank else act
        description = str(event["DESCRIPTION"])
        day = "Day %s%s, plan " % (row["day"], "" if row["count"] == "1" else " of count " + row["count"])
        again = "" if row["count"] == "1" else \
            ". A fish was added: medicine may be in. Read its level, pour no second dose"
        cited = ". Class: %s%s%s. Not veterinary advice" % (row["class"], ", " + source if source else "", again)
        if (
            type(date) is not datetime.date
            or date.isoformat() != row["date"]
            or str(event["SUMMARY"]) != summary
            or not description.startswith(day)
            or cited not in description
        ):
            faults.append((row, str(event["SUMMARY"]), description))
    if len({str(event["UID"]) for event in events}) != len(events):
        faults.append("a UID is there twice")
    return faults, len(events)


def main():
    wrong, events = [], 0
    with tempfile.TemporaryDirectory() as folder:
        hard = os.path.join(folder, "hard.tsv")
        with open(hard, "w", encoding="utf-8") as file:
            file.write(HARD)
        for plan in ("copper", "dye", "watch", hard):
            for tank in [[]] + [["--tank", tank] for tank in TANKS]:
                for added in ([], ["--added", "2031-04-11", "--added", "2031-04-20"]):
                    faults, n = compare(["--plan", plan, "--from", "2031-04-01", *tank, *added])
                    wrong += faults
                    events += n
    for line in wrong[:10]:
        print("not read back as written:", line)
    print("calendar: %d entries read back with icalendar %s" % (events, icalendar.__version__))
    return 1 if wrong or events == 0 else 0


if __name__ == "__main__":
    sys.exit(main())
