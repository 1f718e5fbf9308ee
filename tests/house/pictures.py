"""Draws the pictures that pages show and compares them, byte for byte, with those beside the pages.

OHMTRAIL_RECORD=1 writes them anew for review: look at them before they go in.
Usage: pictures.py PROGRAM SOURCE
"""
import os
import pathlib
import subprocess
import sys
import tempfile

# What is drawn, and where it lies.
PICTURES = {
    "examples/pulsing-lights/diagram.svg":
        ["draw", "netlists/yacht-12v.json", "--case", "at anchor, evening"],
    "examples/pulsing-lights/staircase.svg":
        ["draw", "netlists/yacht-12v.json", "--case", "at anchor, evening", "--staircase", "--load", "cabin lamps"],
}


def main(program, source):
    source, wrong = pathlib.Path(source), 0
    for place, call in PICTURES.items():
        with tempfile.TemporaryDirectory() as scratch:
            drawn = pathlib.Path(scratch) / "drawn.svg"
            subprocess.run([program, *call, "-o", drawn], cwd=source, check=True, stdout=subprocess.DEVNULL)
            now = drawn.read_bytes()
        kept = source / place
        if os.environ.get("OHMTRAIL_RECORD"):
            kept.write_bytes(now)
        elif not kept.exists() or kept.read_bytes() != now:
            print(f"{place} is not what the program draws; OHMTRAIL_RECORD=1 draws it anew")
            wrong += 1
    return 1 if wrong else 0


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:]))
