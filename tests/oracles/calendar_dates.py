"""Days of `holdwater calendar` against python's own calendar: every date and weekday from 1600 to 2399, and no other."""

import csv
import datetime
import os
import subprocess
import sys
import tempfile

HOLDWATER = os.environ["HOLDWATER"]
FIRST, LAST = datetime.date(1600, 1, 1), datetime.date(2399, 12, 31)
STEP = 3651
DAY = datetime.timedelta(days=1)


def ask(*words):
    return subprocess.run([HOLDWATER, "calendar", *words], capture_output=True, text=True, check=False)


def dates_of(plan, start):
    answer = ask("--plan", plan, "--from", start.isoformat(), "--format", "csv")
    if answer.returncode != 0:
        sys.exit(answer.stderr)
    return [(row["date"], row["weekday"], int(row["day"])) for row in csv.DictReader(answer.stdout.splitlines())]


def main():
    wrong = []
    days = 0
    with tempfile.TemporaryDirectory() as folder:
        plan = os.path.join(folder, "daily.tsv")
        with open(plan, "w", encoding="ascii") as file:
            file.write("day\tact\tevery\tuntil\n0\tlook\t1\t%d\n" % (STEP - 1))
        back = os.path.join(folder, "back.tsv")
        with open(back, "w", encoding="ascii") as file:
            file.write("day\tact\tevery\tuntil\n%d\tlook\t%d\t-1\n" % (1 - STEP, STEP - 2))
        start = FIRST
        while start <= LAST:
            want = [start + i * DAY for i in range(STEP)]
            got = dates_of(plan, start)
            wrong += [pair for pair in zip(got, ((d.isoformat(), d.strftime("%a"), i) for i, d in enumerate(want))) if pair[0] != pair[1]]
            days += len(got)
            if len(got) != STEP:
                wrong.append((start, len(got)))
            if start > FIRST:
                # days before the first day, counted back
                early = [(start - (STEP - 1) * DAY, 1 - STEP), (start - DAY, -1)]
                if dates_of(back, start) != [(d.isoformat(), d.strftime("%a"), n) for d, n in early]:
                    wrong.append(("back from", start))
            start += STEP * DAY
        one = os.path.join(folder, "one.tsv")
        with open(one, "w", encoding="ascii") as file:
            file.write("day\tact\n0\tlook\n")
        refused = 0
        for year in range(1600, 2400):
            leap = datetime.date(year, 3, 1) - DAY == datetime.date(year, 2, 28)
            answer = ask("--plan", one, "--from", "%d-02-29" % year)
            refused += answer.returncode == 2
            if (answer.returncode == 2) != leap:
                wrong.append("%d-02-29" % year)
        for month in range(1, 13):
            last = (datetime.date(2031 + month // 12, month % 12 + 1, 1) - DAY).day
            for day in range(0, 100):
                answer = ask("--plan", one, "--from", "2031-%02d-%02d" % (month, day))
                if (answer.returncode == 0) != (1 <= day <= last):
                    wrong.append((month, day))
    for line in wrong[:10]:
        print("not as python has it:", line)
    print("calendar: %d days from 1600 on and their weekdays, %d years without a 29 February" % (days, refused))
    return 1 if wrong or days < 292194 else 0


if __name__ == "__main__":
    sys.exit(main())
