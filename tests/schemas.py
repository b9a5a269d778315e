"""Checks every example job, content file, firm and theme against the JSON Schemas that editors use, and that
the schemas refuse what the program refuses. Usage: schemas.py [root of the project]"""
import copy
import glob
import json
import os
import re
import sys

import jsonschema
import yaml


class Loader(yaml.SafeLoader):
    """YAML 1.2, as editors read it: dates, clock times and the keys 'on' and 'off' are text."""


Loader.yaml_implicit_resolvers = {
    first: [(tag, regexp) for tag, regexp in resolvers
            if tag not in ("tag:yaml.org,2002:timestamp", "tag:yaml.org,2002:bool", "tag:yaml.org,2002:merge",
                                  "tag:yaml.org,2002:int")]
    for first, resolvers in yaml.SafeLoader.yaml_implicit_resolvers.items()
}
Loader.add_implicit_resolver("tag:yaml.org,2002:bool", re.compile("^(true|false)$"), list("tf"))
Loader.add_implicit_resolver("tag:yaml.org,2002:int", re.compile("^[-+]?[0-9]+$"), list("-+0123456789"))


def load(file):
    with open(file, encoding="utf-8") as f:
        return with_text_keys(yaml.load(f, Loader))


def with_text_keys(value):
    """JSON has no other: the grits of a task are numbers in YAML."""
    if isinstance(value, dict):
        return {str(k): with_text_keys(v) for k, v in value.items()}
    if isinstance(value, list):
        return [with_text_keys(v) for v in value]
    return value


def main():
    root = sys.argv[1] if len(sys.argv) > 1 else os.path.join(os.path.dirname(__file__), "..")
    sets = [
        ("job", "out_examples/*/job.yaml"),
        ("product", "content/products/*.yaml"),
        ("region", "content/regions/*.yaml"),
        ("firm", "out_examples/firms/*/firm.yaml"),
        ("language", "content/languages/*.yaml"),
        ("tasks", "content/tasks.yaml"),
        ("timbers", "content/timbers.yaml"),
        ("consumables", "content/consumables.yaml"),
        ("tools", "content/tools.yaml"),
        ("hazards", "content/hazards.yaml"),
        ("ghs", "content/ghs.yaml"),
        ("theme", "templates/themes/*.yaml"),
    ]
    bad = 0
    checked = 0
    for name, pattern in sets:
        with open(os.path.join(root, f"content/schemas/{name}.schema.json"), encoding="utf-8") as f:
            schema = json.load(f)
        bad += misses_unicode(name, schema)
        jsonschema.Draft7Validator.check_schema(schema)
        validator = jsonschema.Draft7Validator(schema)
        files = sorted(glob.glob(os.path.join(root, pattern)))
        if not files:
            print(f"no file for {pattern}")
            bad += 1
        for file in files:
            checked += 1
            for error in validator.iter_errors(load(file)):
                print(f"{file}: {'.'.join(map(str, error.absolute_path))}: {error.message}")
                bad += 1
        if name == "job" and files:
            bad += refuses(validator, load(os.path.join(root, "out_examples/landing/job.yaml")))
    print(f"{checked} files, {bad} mistakes")
    return bad != 0


def misses_unicode(name, schema):
    bad = [p for p in patterns(schema) if not is_unicode(p)]
    for pattern in bad:
        print(f"{name}.schema.json: not a regular expression of ECMA-262 with 'u': {pattern}")
    return len(bad)


def patterns(schema):
    """All regular expressions of a schema."""
    if isinstance(schema, dict):
        yield from (p for p in [schema.get("pattern")] if isinstance(p, str))
        yield from schema.get("patternProperties", {})
    for value in schema.values() if isinstance(schema, dict) else schema if isinstance(schema, list) else []:
        yield from patterns(value)


def is_unicode(pattern):
    """Whether a validator that compiles with the flag 'u' takes it: ECMA-262 (2015), 21.2.1 allows no escape without need, and
    braces and brackets that stand for themselves only behind a backslash. Both from memory."""
    bare = re.sub(r"\\(?:[dDwWsSbB0-9nrtfv^$\\.*+?()\[\]{}|/]|[pP]\{\w+\}|u[0-9a-fA-F]{4}|x[0-9a-fA-F]{2})", "", pattern)
    bare = re.sub(r"\[(?:[^]\\]|\\-)*\]", "", bare)
    bare = re.sub(r"\{\d+(,\d*)?\}", "", bare)
    return not re.search(r"[\\{}\[\]]", bare)


def refuses(validator, job):
    """The job schema is not merely lenient: each of these edits must be refused."""
    edits = {
        "an unknown key": lambda j: j.update(varnish=True),
        "no areas": lambda j: j.update(areas=[]),
        "a missing start": lambda j: j.pop("start"),
        "a length without unit": lambda j: j["areas"][0]["shape"].update(rectangle=[12.4, 6.2]),
        "a volume as a length": lambda j: j["areas"][0].update(joists="5 L"),
        "two shapes": lambda j: j["areas"][0]["shape"].update(circle="3 m"),
        "an unknown state": lambda j: j["areas"][0].update(state="rotten"),
        "an unknown kind of work": lambda j: j.update(work=["paint"]),
        "a date in another form": lambda j: j.update(start="16/3/2027"),
        "rates and a test patch": lambda j: j["areas"][0].update(
            rates=["8 m2/L"], test_patch={"area": "1 m2", "used": "125 mL"}),
        "normals that do not say where they come from": lambda j: j.update(weather={"normals": {}}),
        "sun in words": lambda j: j["areas"][0].update(sun="in the morning"),
        "a single choice": lambda j: j.update(choices=[{"name": "One"}]),
        "a choice of another crew": lambda j: j.update(choices=[{"name": "One"}, {"name": "Two", "crew": {"people": 3}}]),
        "a reference that is no folder name": lambda j: j.update(ref="../x"),
    }
    bad = 0
    for name, edit in edits.items():
        broken = copy.deepcopy(job)
        edit(broken)
        if validator.is_valid(broken):
            print(f"job.schema.json accepts {name}")
            bad += 1
    return bad


if __name__ == "__main__":
    sys.exit(main())
