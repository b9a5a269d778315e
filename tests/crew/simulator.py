"""A crew that walks a plan minute by minute and says what cannot be done. It knows nothing but 'plan --json'.

    simulator.py PLAN.json...      tells the faults of each plan; '-' reads standard input
    simulator.py --rules           tells what it checks
    simulator.py --prove           puts faults into a good plan on purpose and tells which go unnoticed
"""

import json
import pathlib
import sys

import rules
import rules_access  # noqa: F401  each module adds its rules
import rules_coats  # noqa: F401
import rules_money  # noqa: F401
import rules_people  # noqa: F401
import rules_strips  # noqa: F401
from plan_reading import Plan


def faults_of(data):
    """What is wrong with the plan of one job: [(rule, sentence)]."""
    return rules.faults(Plan(data))


def main():
    if sys.argv[1:] == ["--rules"]:
        for check in rules.RULES:
            print(f"{check.__name__.replace('_', ' ')}: {check.__doc__.strip().splitlines()[0]}")
        return 0
    if sys.argv[1:] == ["--prove"]:
        import spoil  # which needs this module
        count, unnoticed = spoil.prove()
        print("\n".join(unnoticed + [f"{count} faults put in on purpose, {len(unnoticed)} not noticed"]))
        return 1 if unnoticed else 0
    bad = 0
    for name in sys.argv[1:]:
        text = sys.stdin.read() if name == "-" else pathlib.Path(name).read_text()
        found = faults_of(json.loads(text))
        bad += bool(found)
        for check, sentence in found:
            print(f"{name}: {sentence} [{check}]")
    return 1 if bad else 0


if __name__ == "__main__":
    sys.exit(main())
