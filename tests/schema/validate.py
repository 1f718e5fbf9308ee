"""validate.py PROGRAM SOURCE: the schema that PROGRAM prints against the netlists in SOURCE.

Every good file must pass a general validator (python3-jsonschema, JSON Schema 2020-12), every file of tests/bad must
fail it, but for those that beyond_a_schema.txt lists: their mistake is one that no schema can express. A file listed
there that fails all the same is told too, so that the list stays true.
"""
import json
import pathlib
import subprocess
import sys

import jsonschema

DRAFT = jsonschema.Draft202012Validator
GOOD = ["netlists/*.json", "tests/cli/cases/*/boat.json", "tests/published/circuits/*/input.json"]
FEWEST_GOOD, FEWEST_BAD = 30, 40


def printed_schema(program):
    ended = subprocess.run([program, "schema"], capture_output=True, check=True)
    schema = json.loads(ended.stdout)
    DRAFT.check_schema(schema)
    return schema


def parsed(path):
    """The file's value, or None where it is not JSON; the validator sees what a JSON parser lets through."""
    def refuse(constant):
        raise ValueError(constant)
    try:
        return json.loads(path.read_bytes().decode("utf-8"), parse_constant=refuse)
    except (ValueError, RecursionError):
        return None


def first_error(validator, value):
    error = jsonschema.exceptions.best_match(validator.iter_errors(value))
    return f"{error.json_path}: {error.message}"[:200] if error else None


def wrong_refusals(validator, files):
    for path in files:
        error = first_error(validator, parsed(path))
        if error:
            yield f"{path}: the reader takes it, the schema does not: {error}"


def wrong_acceptances(validator, files, beyond):
    for path in files:
        value = parsed(path)
        fails = value is None or first_error(validator, value) is not None
        if not fails and path.stem not in beyond:
            yield f"{path}: the schema takes a file that must be refused"
        if fails and path.stem in beyond:
            yield f"{path}: the schema refuses it, so it must leave beyond_a_schema.txt"


def listed(path):
    lines = path.read_text(encoding="utf-8").splitlines()
    return {line.split(":")[0].strip() for line in lines if line and not line.startswith("#")}


def refused_by_reader(program, path):
    return subprocess.run([program, "check", str(path)], capture_output=True).returncode == 2


def main(program, source):
    source = pathlib.Path(source)
    validator = DRAFT(printed_schema(program))
    good = sorted(path for pattern in GOOD for path in source.glob(pattern))
    bad = sorted((source / "tests/bad").glob("*.json"))
    beyond = listed(pathlib.Path(__file__).with_name("beyond_a_schema.txt"))
    problems = list(wrong_refusals(validator, [path for path in good if not refused_by_reader(program, path)]))
    problems += wrong_acceptances(validator, bad, beyond)
    problems += [f"{path}: the reader takes a file of tests/bad" for path in bad if not refused_by_reader(program, path)]
    problems += [f"beyond_a_schema.txt: there is no tests/bad/{name}.json"
                 for name in sorted(beyond - {path.stem for path in bad})]
    if len(good) < FEWEST_GOOD or len(bad) < FEWEST_BAD:
        problems.append(f"only {len(good)} good and {len(bad)} bad files were found")
    print("\n".join(problems) or f"{len(good)} good and {len(bad)} bad files, {len(beyond)} of them beyond a schema")
    return 1 if problems else 0


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:3]))
