#!/usr/bin/env python3
"""Lines and branches that the tests reached, by folder; fails below the goals.

    coverage_report.py BUILD            the table
    coverage_report.py BUILD PATH…      and every line and branch not reached of files whose path holds PATH

A branch is one way out of a decision that the source makes. What the compiler adds is left out, by two rules:
both ways out of a call that can throw (gcov marks one of them), and what it makes of a line that decides
nothing (no if, for, while, switch, case, catch, ?, && or ||): the clean-up of values half made, comparisons by
default. In templates and inline functions a way counts as reached where any copy of them took it.
"""
import collections
import json
import os
import re
import subprocess
import sys

DECIDES = re.compile(r"\b(if|for|while|switch|case|catch)\b|\?|&&|\|\|")
SAYS_SOMETHING = re.compile(r"\w")  # a bracket alone is where values are cleaned up
GOALS = [("all", "lines", 90), ("netlist", "branches", 85), ("solve", "branches", 85)]
ROOT = os.path.realpath(os.path.join(os.path.dirname(__file__), ".."))


def measured(build):
    """gcov's JSON documents, one for each object file that ran; those of notes alone count as not reached."""
    files = [os.path.join(folder, name) for folder, _, names in os.walk(build) for name in names]
    notes = [os.path.abspath(file) for file in files if file.endswith(".gcno")]
    for start in range(0, len(notes), 40):
        run = subprocess.run(["gcov", "-b", "-j", "-t", *notes[start:start + 40]], stdout=subprocess.PIPE,
                             stderr=subprocess.DEVNULL, cwd="/", check=True)
        for document in run.stdout.decode().splitlines():
            if document.strip():
                yield json.loads(document)


def decisions(branches):
    """How often each way out was taken, calls that can throw left out."""
    taken, k = [], 0
    while k < len(branches):
        if k + 1 < len(branches) and branches[k + 1]["throw"]:
            k += 2
            continue
        taken.append(branches[k]["count"])
        k += 1
    return taken


class File:
    def __init__(self, name):
        with open(os.path.join(ROOT, name), encoding="utf-8") as source:
            self.text = [""] + source.read().split("\n")
        self.count = collections.Counter()  # by line
        self.ways = {}  # by line, by how many ways out there are: how often each was taken

    def add(self, line):
        number = line["line_number"]
        if number >= len(self.text) or not SAYS_SOMETHING.search(self.text[number]):
            return
        self.count[number] += line["count"]
        taken = decisions(line["branches"]) if DECIDES.search(self.text[number]) else []
        sums = self.ways.setdefault(number, {}).setdefault(len(taken), [0] * len(taken))
        for k, count in enumerate(taken):
            sums[k] += count

    def reached(self, number):
        """Of the copies of a line the one reached best, a mark for each way out."""
        return max(([count > 0 for count in sums] for sums in self.ways[number].values()),
                   key=lambda marks: (sum(marks) / max(1, len(marks)), len(marks)))

    def totals(self):
        marks = [mark for number in self.ways for mark in self.reached(number)]
        return [sum(count > 0 for count in self.count.values()), len(self.count), sum(marks), len(marks)]

    def missed(self):
        for number in sorted(self.count):
            marks = self.reached(number)
            if self.count[number] == 0 or not all(marks):
                shown = "line" if self.count[number] == 0 else "".join("-+"[mark] for mark in marks)
                yield f"  {number:4} {shown:10} {self.text[number].strip()}"


def read(build):
    files = {}
    for document in measured(build):
        for one in document["files"]:
            path = os.path.realpath(os.path.join(document["current_working_directory"], one["file"]))
            name = os.path.relpath(path, ROOT)
            if name.startswith(("src/", "render/", "include/")):
                file = files.setdefault(name, None) or File(name)
                files[name] = file
                for line in one["lines"]:
                    file.add(line)
    return files


def folder_of(name):
    parts = name.split("/")
    return parts[0] if parts[0] == "render" else parts[2] if parts[0] == "include" else parts[1]


def main(build, wanted):
    folders = collections.defaultdict(lambda: [0, 0, 0, 0])
    for name, file in sorted(read(build).items()):
        for into in (folders[folder_of(name)], folders["all"]):
            into[:] = [a + b for a, b in zip(into, file.totals())]
        missed = list(file.missed()) if any(part in name for part in wanted) else []
        if missed:
            print(name, *missed, sep="\n")
    print(f"{'folder':10} {'lines':>8} {'branches':>9}")
    percent = {}
    for name, (lines, of_lines, branches, of_branches) in folders.items():
        percent[name, "lines"] = 100 * lines / max(1, of_lines)
        percent[name, "branches"] = 100 * branches / max(1, of_branches)
        print(f"{name:10} {percent[name, 'lines']:7.1f}% {percent[name, 'branches']:8.1f}%")
    sys.exit("\n".join(f"{what} of {name}: below {least} %" for name, what, least in GOALS
                       if percent.get((name, what), 0) < least) or 0)


if __name__ == "__main__":
    main(sys.argv[1], sys.argv[2:])
