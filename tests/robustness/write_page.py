#!/usr/bin/env python3
"""Writes the tables of docs/pages/robustness.md: called by tests/robustness.sh.

What ran here stands in build/summary/runs.tsv (see record.sh) and is put into tests/robustness/runs.tsv, which is kept with
the sources: a page written on another machine still tells of it. Single faults have a list of their own,
tests/mutation/results.md. Text of the page outside of its markers is left alone.
"""
import collections
import pathlib
import re
import sys

ROOT = pathlib.Path(__file__).resolve().parents[2]
PAGE = ROOT / "docs/pages/robustness.md"
KEPT = ROOT / "tests/robustness/runs.tsv"
HERE = ROOT / "build/summary/runs.tsv"

Run = collections.namedtuple("Run", "date commit check done failed note")

CHECKS = {
    "sanitize": "all tests under the address and undefined-behaviour sanitizers (`.ci/sanitize`)",
    "threads": "a sweep of 300 stations by 1, 2 and 7 threads under the thread sanitizer (`.ci/threads`)",
    "clang": "all tests built with clang++ (`.ci/clang`)",
}


def runs_of(file):
    """The runs that a list holds, the oldest first."""
    if not file.exists():
        return []
    lines = [line.split("\t") for line in file.read_text().splitlines() if line]
    if wrong := [line for line in lines if len(line) != len(Run._fields)]:
        sys.exit(f"{file}: {wrong[0]} has not the columns {' '.join(Run._fields)}")
    return [Run(*line) for line in lines]


def all_runs():
    """Those kept with the sources, and after them those made here since."""
    kept = runs_of(KEPT)
    known = collections.Counter(kept)
    for run in runs_of(HERE):
        if known[run] > 0:
            known[run] -= 1
        else:
            kept.append(run)
    KEPT.write_text("".join("\t".join(run) + "\n" for run in kept))
    return kept


def table(heads, rows):
    lines = ["| " + " | ".join(heads) + " |", "|" + "---|" * len(heads)]
    return "\n".join(lines + ["| " + " | ".join(str(cell) for cell in row) + " |" for row in rows])


def faults_table():
    """Of each folder: faults listed, put in, caught, explained, missed; and which are missed."""
    sys.path.insert(0, str(ROOT / "tests/mutation"))
    import faults

    def folder_of(header):
        parts = header.rsplit("/", 1)[0].split("/")
        return "/".join(parts[:2]) if parts[0] == "io" else parts[0]

    listed = collections.Counter(folder_of(fault[1]) for fault in faults.FAULTS)
    known = {(fault[1], fault[0]) for fault in faults.FAULTS}
    counts, days, commits, missed = {}, [], [], []
    for line in (ROOT / "tests/mutation/results.md").read_text().splitlines():
        cells = [c.strip() for c in line.strip("|").split(" | ")]
        if len(cells) != 7 or cells[0] == "header":
            continue
        if (cells[0], cells[1]) not in known:
            continue  # of a fault that is no longer in the list
        counts.setdefault(folder_of(cells[0]), collections.Counter())[cells[2]] += 1
        if cells[2] == "missed":
            missed.append(f"{cells[1]} (`{cells[0]}`)")
        days.append(cells[5])
        commits.append(cells[4])
    order = ["core", "solve", "material", "law", "part", "circuit", "life", "rating", "field", "io/station", "io/report",
             "io/draw"]
    rows, whole = [], collections.Counter()
    for folder in sorted(counts, key=lambda f: order.index(f) if f in order else len(order)):
        c = counts[folder]
        whole.update(c)
        rows.append([f"`{folder}`", listed[folder], sum(c.values()), c["caught"], c["explained"], c["missed"]])
    put = sum(whole.values())
    rows.append(["all", len(faults.FAULTS), put, whole["caught"], whole["explained"], whole["missed"]])
    share = 100.0 * whole["caught"] / max(1, put)
    when = days[0] if min(days) == max(days) else f"{min(days)} to {max(days)}"
    named = f" Missed: {'; '.join(missed)}." if missed else ""
    return table(["folder", "listed", "put in", "caught", "explained", "missed"], rows) + \
        f"\n\nCaught: {share:.1f} % of those put in. {len(faults.FAULTS) - put} were never put in.{named} Put in on {when}, at " \
        f"commit {', '.join(dict.fromkeys(commits))}."


def fuzz_table(runs):
    """Of each target: executions with and without sanitizers, findings."""
    rows = []
    for target in dict.fromkeys(run.check for run in runs if run.check.startswith("fuzz ")):
        of = [run for run in runs if run.check == target]
        done = {True: 0, False: 0}
        slowest = {}
        for run in of:
            plain = run.note.startswith("fuzz-plain")
            done[plain] += int(run.done)
            if found := re.search(r"slowest (\d+) s", run.note):
                slowest[plain] = max(slowest.get(plain, 0), int(found[1]))
        rows.append([f"`{target.split()[1]}`", f"{done[False]:,}".replace(",", " "), f"{done[True]:,}".replace(",", " "),
                     sum(int(run.failed) for run in of),
                     f"{slowest[True]} s" if True in slowest else "", of[-1].date, of[-1].commit])
    return table(["target", "executions with sanitizers", "without", "runs that ended with a finding",
                  "slowest without sanitizers", "last", "commit"], rows) if rows else "Not run yet."


def checks_table(runs):
    rows = []
    for check, words in CHECKS.items():
        of = [run for run in runs if run.check == check]
        if not of:
            rows.append([words, "not run yet", "", ""])
            continue
        last = of[-1]
        passed = int(last.done) - int(last.failed)
        note = f", {last.note}" if last.note else ""
        rows.append([words, f"{passed} of {last.done} passed{note}", last.date, last.commit])
    return table(["what", "result", "last", "commit"], rows)


def coverage_table(runs):
    of = [run for run in runs if run.check == "coverage"]
    if not of:
        return "Not measured yet: `sh tests/coverage.sh`."
    last = of[-1]
    found = re.findall(r"(\w+) ([\d.]+) % of (\d+)", last.note)
    return table(["of `include/`", "reached by the tests", "of", "last", "commit"],
                 [[what, f"{share} %", count, last.date, last.commit] for what, share, count in found])


def main():
    runs = all_runs()
    page = PAGE.read_text()
    for mark, text in {"faults": faults_table(), "fuzz": fuzz_table(runs), "checks": checks_table(runs),
                       "coverage": coverage_table(runs)}.items():
        begin, end = f"<!-- {mark}, written by tests/robustness.sh -->", f"<!-- end of {mark} -->"
        if page.count(begin) != 1 or page.count(end) != 1:
            sys.exit(f"{PAGE}: the markers of {mark} are missing")
        first, rest = page.split(begin)
        page = first + begin + "\n" + text + "\n" + end + rest.split(end)[1]
    PAGE.write_text(page)
    print(f"{PAGE.relative_to(ROOT)} is written")


if __name__ == "__main__":
    main()
