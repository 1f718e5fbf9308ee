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
GOOD = ["netlists/*.json", "examples/*/*.json"]
WRAPPED = "tests/data/contract/*.json"    # under the key "netlist", beside what is known of it
RECORDED = "tests/cli/cases/*/*.json"     # of recorded calls, some of which show a refusal
FEWEST_GOOD, FEWEST_BAD = 30, 40


def printed_schema(program):
    ended = subprocess.run([program, "schema"], capture_output=True, check=True)
    schema = json.loads(ended.stdout)
    DRAFT.check_schema(schema)
    return schema


def parsed(text):
    """The value of a file's bytes, or None where they are not JSON; the validator sees what a JSON parser lets through."""
    def refuse(constant):
        raise ValueError(constant)
    try:
        return json.loads(text.decode("utf-8"), parse_constant=refuse)
    except (ValueError, RecursionError):
        return None


def first_error(validator, value):
    error = jsonschema.exceptions.best_match(validator.iter_errors(value))
    return f"{error.json_path}: {error.message}"[:200] if error else None


def read_by_pattern(source, pattern):
    return {str(path.relative_to(source)): path.read_bytes() for path in sorted(source.glob(pattern))}


def good_netlists(program, source):
    """By name, the bytes of every netlist that must be taken."""
    good = {"ohmtrail new": subprocess.run([program, "new"], capture_output=True, check=True).stdout}
    for pattern in GOOD:
        good |= read_by_pattern(source, pattern)
    for name, text in read_by_pattern(source, WRAPPED).items():
        good[name] = json.dumps(json.loads(text)["netlist"]).encode()
    return good


def refused_by_reader(program, text):
    return subprocess.run([program, "check", "-"], input=text, capture_output=True).returncode == 2


def wrong_refusals(validator, netlists):
    for name, text in netlists.items():
        error = first_error(validator, parsed(text))
        if error:
            yield f"{name}: the reader takes it, the schema does not: {error}"


def wrong_acceptances(validator, bad, beyond):
    for name, text in bad.items():
        value = parsed(text)
        fails = value is None or first_error(validator, value) is not None
        known = pathlib.Path(name).stem in beyond
        if not fails and not known:
            yield f"{name}: the schema takes a file that must be refused"
        if fails and known:
            yield f"{name}: the schema refuses it, so it must leave beyond_a_schema.txt"


def listed(path):
    lines = path.read_text(encoding="utf-8").splitlines()
    return {line.split(":")[0].strip() for line in lines if line and not line.startswith("#")}


def main(program, source):
    source = pathlib.Path(source)
    validator = DRAFT(printed_schema(program))
    good = good_netlists(program, source)
    recorded = read_by_pattern(source, RECORDED)
    taken = good | {name: text for name, text in recorded.items() if not refused_by_reader(program, text)}
    bad = read_by_pattern(source, "tests/bad/*.json")
    beyond = listed(pathlib.Path(__file__).with_name("beyond_a_schema.txt"))
    problems = [f"{name}: the reader refuses a good netlist" for name, text in good.items() if refused_by_reader(program, text)]
    problems += wrong_refusals(validator, taken)
    problems += wrong_acceptances(validator, bad, beyond)
    problems += [f"{name}: the reader takes a file of tests/bad" for name, text in bad.items() if not refused_by_reader(program, text)]
    problems += [f"beyond_a_schema.txt: there is no tests/bad/{name}.json"
                 for name in sorted(beyond - {pathlib.Path(name).stem for name in bad})]
    if len(taken) < FEWEST_GOOD or len(bad) < FEWEST_BAD:
        problems.append(f"only {len(taken)} good and {len(bad)} bad files were found")
    print("\n".join(problems) or f"{len(taken)} good and {len(bad)} bad files, {len(beyond)} of them beyond a schema")
    return 1 if problems else 0


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:3]))
