"""Fails when a layer includes one to its right, or when a source file lives outside a layer folder."""
import pathlib
import re
import sys

LAYERS = ["units", "trade", "netlist", "network", "solve", "diagnose", "plan", "render", "cli"]
INCLUDE = re.compile(r'^\s*#\s*include\s*[<"](?:ohmtrail/)?((\w+)/[^>"]+)[>"]')
# The mathematics sees plain structs and numbers only. These stand at its border and may see the network:
BORDER = {"case_solution", "circuit_of", "short_duty", "supplies"}
# Plain language, no unit in it:
PLAIN = {"units/index.hpp"}


def layer_of(path, top):
    parts = path.relative_to(top).parts
    if parts[0] == "render":
        return "render"
    if parts[0] == "src" and len(parts) > 2:
        return parts[1]
    if parts[:2] == ("include", "ohmtrail") and len(parts) > 3:
        return parts[2]
    return None


def included_layers(path):
    for number, line in enumerate(path.read_text(encoding="utf-8").splitlines(), 1):
        found = INCLUDE.match(line)
        if found and found.group(2) in LAYERS and found.group(1) not in PLAIN:
            yield number, found.group(2)


def problems(top):
    files = [f for folder in ("src", "include", "render") for f in sorted((top / folder).rglob("*.[ch]pp"))]
    if len(files) < 10:
        yield f"only {len(files)} source files found below {top}: the check is looking in the wrong place"
    for path in files:
        layer = layer_of(path, top)
        if layer not in LAYERS:
            yield f"{path}: lives outside a layer folder"
            continue
        for number, other in included_layers(path):
            if LAYERS.index(other) > LAYERS.index(layer):
                yield f"{path}:{number}: {layer} includes {other}, which stands to its right"
            if layer == "solve" and other != "solve" and path.stem not in BORDER:
                yield f"{path}:{number}: only {', '.join(sorted(BORDER))} may see the network; the solver sees plain structs"


if __name__ == "__main__":
    found = list(problems(pathlib.Path(sys.argv[1])))
    print("\n".join(found) or "every layer includes only what stands left of it")
    sys.exit(1 if found else 0)
