"""Runs the commands shown in a page and compares what they print with what the page shows.

A page holds fenced blocks that begin with ```console; a line `$ command` is run by the shell in a copy of the
examples, what follows up to the next `$` is its exact output. OHMTRAIL_RECORD=1 writes the page anew for review.
Usage: worked.py PROGRAM PAGE...
"""
import os
import pathlib
import re
import shutil
import subprocess
import sys
import tempfile

BLOCK = re.compile(r"^```console\n(.*?)^```$", re.M | re.S)


def run(command, folder, program):
    path = f"{program.parent}{os.pathsep}{os.environ['PATH']}"
    done = subprocess.run(["bash", "-c", command], cwd=folder, env={**os.environ, "PATH": path, "COLUMNS": "80"},
                          stdin=subprocess.DEVNULL, stdout=subprocess.PIPE, stderr=subprocess.STDOUT, check=False)
    return done.stdout.decode("utf-8")


def steps(block):
    """The block as [command, shown output] pairs."""
    found = []
    for line in block.splitlines(keepends=True):
        if line.startswith("$ "):
            found.append([line[2:].rstrip("\n"), ""])
        elif found:
            found[-1][1] += line
    return found


def replay(page, program, source):
    """The page's text as the program would have it now, and the number of commands run."""
    count = 0
    with tempfile.TemporaryDirectory() as scratch:
        folder = pathlib.Path(scratch)
        shutil.copytree(source / "netlists", folder / "netlists")
        if page.parent.is_relative_to(source / "examples"):
            shutil.copytree(page.parent, folder, dirs_exist_ok=True)

        def block(match):
            nonlocal count
            text = ""
            for command, _ in steps(match.group(1)):
                count += 1
                output = run(command, folder, program)
                text += f"$ {command}\n" + output + ("\n" if output and not output.endswith("\n") else "")
            return f"```console\n{text}```"

        return BLOCK.sub(block, page.read_text(encoding="utf-8")), count


def main(program, pages):
    source = pathlib.Path(__file__).resolve().parents[2]
    failed = False
    for page in map(pathlib.Path, pages):
        now, count = replay(page.resolve(), pathlib.Path(program).resolve(), source)
        shown = page.read_text(encoding="utf-8")
        if os.environ.get("OHMTRAIL_RECORD"):
            page.write_text(now, encoding="utf-8")
        elif count == 0:
            failed = True
            print(f"{page}: shows no command")
        elif now != shown:
            failed = True
            was, is_now = shown.splitlines(), now.splitlines()
            for number, (a, b) in enumerate(zip(was, is_now), 1):
                if a != b:
                    print(f"{page}:{number}\n  shown: {a}\n  now:   {b}")
                    break
            else:
                print(f"{page}: shown {len(was)} lines, now {len(is_now)}")
    return 1 if failed else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1], sys.argv[2:]))
