"""Plans made-up jobs with the program and lets a crew walk each of them; the proof of the calendar.

    run.py PLANKSHEAF ROOT                    the examples and the share of every run of the tests: no fault in any of them
    RANDOM_TIMES=5 run.py PLANKSHEAF ROOT     2,000 random jobs, 240 ordinary and 100 small ones, by hand, and what they have
                                              to come to all together; RANDOM_SEED=7 makes others
    run.py PLANKSHEAF ROOT --job KIND NUMBER  one of them in full: any, ordinary, small or story
"""

import collections
import json
import multiprocessing
import os
import pathlib
import subprocess
import sys
import tempfile

import jsonschema

import calendar_file
import cheapest
import job_checks
import random_jobs
import simulator
import spoil
import statistics_of_plans
import stories
from plan_reading import Plan

MAKERS = {**random_jobs.MAKERS, "story": stories.story}
MOST_SECONDS = 20  # of one plan: it takes milliseconds; one that does not end is a fault
SHARE = {"any": 12, "ordinary": 30, "small": 8}  # jobs of each kind
BY_HAND = {"any": 400, "ordinary": 48, "small": 20}  # RANDOM_TIMES as many
SEED = int(os.environ.get("RANDOM_SEED", 1))
DAYS_LATER = 4  # a cheaper calendar may end so much later than the plan
SHOWN = 3  # examples of each fault


class Outcome:
    """What came of one job: what is wrong with its plan, figures for the statistics, cost against the cheapest."""

    def __init__(self, kind, number):
        self.name = f"{kind} {number}"
        self.faults, self.refusal, self.figures, self.ratio = [], None, None, None


def planned(program, folder, kind, number, *options):
    """(exit status, plan as text, messages) of one made-up job; status None where it does not end."""
    path = MAKERS[kind](number, SEED).write(pathlib.Path(folder), f"{kind}-{number}")
    try:
        done = subprocess.run([program, "plan", "--json", *options, path.name], cwd=folder, capture_output=True,
                              timeout=MOST_SECONDS)
    except subprocess.TimeoutExpired:
        return None, "", ""
    return done.returncode, done.stdout.decode(), done.stderr.decode()


def packed(program, folder, kind, number):
    """The calendar file of a job's pack."""
    subprocess.run([program, "pack", "-o", "packs", f"{kind}-{number}.yaml"], cwd=folder, check=True,
                   capture_output=True)
    return "".join(p.read_text() for p in pathlib.Path(folder).glob("packs/*/job.ics"))


def look_at(task):
    """Plans one job and walks it."""
    program, schema, kind, number = task
    outcome = Outcome(kind, number)
    made = MAKERS[kind](number, SEED)
    with tempfile.TemporaryDirectory() as folder:
        status, text, messages = planned(program, folder, kind, number)
        if status is None:
            outcome.faults.append(("always_ends", f"the plan is not ready after {MOST_SECONDS} s"))
        elif status == 1 and "error:" in messages and "internal error" not in messages:
            outcome.refusal = messages.split("error:")[1].splitlines()[0].strip()
        elif status != 0:
            outcome.faults.append(("exit_status", f"{status}: {messages.strip()[:300]}"))
        else:
            data = json.loads(text)
            if number % 20 == 0:
                outcome.faults += [("schema", error.message[:200]) for error in schema_of(schema).iter_errors(data)]
                if planned(program, folder, kind, number)[1] != text:
                    outcome.faults.append(("same_bytes", "planned again it differs"))
            plan = Plan(data)
            outcome.faults += simulator.faults_of(data) + job_checks.faults(made.content, plan)
            if number % 100 == 0:
                outcome.faults += calendar_file.faults(packed(program, folder, kind, number), plan)
            if kind == "story":
                outcome.faults += stories.unmet(number, plan)
            if kind == "ordinary":
                outcome.figures = statistics_of_plans.figures_of(plan)
            if kind == "small":
                outcome.ratio = ratio_of(program, folder, number, data)
    return outcome


def walk_example(task):
    """Walks a job of the examples."""
    program, path = task
    outcome = Outcome("example", path.parent.name)
    done = subprocess.run([program, "plan", "--json", path], capture_output=True, check=True)
    outcome.faults = simulator.faults_of(json.loads(done.stdout))
    return outcome


def schema_of(path):
    return jsonschema.Draft7Validator(json.loads(pathlib.Path(path).read_text()))


def ratio_of(program, folder, number, data):
    """What the plan costs against the cheapest calendar that ends a few days later at the latest; None: not comparable."""
    days = sorted(d["date"] for d in data["days"])
    until = random_jobs.days_after(days[-1], DAYS_LATER)
    _, longer, _ = planned(program, folder, "small", number, "--by", until)
    found = cheapest.cheapest_cost(json.loads(longer)) if longer else None
    return data["cost"]["total"] / found[0] if found else None


def report(outcomes):
    """Tells the faults rule by rule; gives how many jobs have any."""
    by_rule = collections.defaultdict(list)
    for o in outcomes:
        for rule, sentence in o.faults:
            by_rule[rule].append((o.name, sentence))
    for rule, found in sorted(by_rule.items(), key=lambda r: -len({name for name, _ in r[1]})):
        print(f"{rule}: {len(found)} faults in {len({name for name, _ in found})} jobs")
        for name, sentence in found[:SHOWN]:
            print(f"    {name}: {sentence}")
    refused = collections.Counter(o.refusal for o in outcomes if o.refusal)
    for reason, count in refused.most_common(5):
        print(f"refused: {count} × {reason}")
    return sum(bool(o.faults) for o in outcomes)


def near_the_best(outcomes):
    """At most 2 % above the cheapest in 95 of 100 jobs, and never over 10 %."""
    ratios = sorted(o.ratio for o in outcomes if o.ratio)
    if len(ratios) < len(outcomes) // 2:
        return [f"only {len(ratios)} of {len(outcomes)} small jobs can be compared with the cheapest calendar"]
    near = sum(r <= 1.02 for r in ratios) / len(ratios)
    print(f"near the best: {len(ratios)} small jobs, {near:.0%} within 2 %, worst {ratios[-1] - 1:+.1%}")
    wrong = []
    if near < 0.95:
        wrong.append(f"only {near:.0%} of the small jobs are within 2 % of the cheapest calendar")
    wrong += [f"{o.name} costs {o.ratio - 1:.1%} more than the cheapest calendar" for o in outcomes if o.ratio and o.ratio > 1.1]
    return wrong


def one_job(program, schema, kind, number):
    """Shows one job: where its files lie, and every fault of its plan."""
    folder = pathlib.Path(tempfile.gettempdir()) / "crew"
    folder.mkdir(exist_ok=True)
    status, text, messages = planned(program, folder, kind, number)
    (folder / f"{kind}-{number}.json").write_text(text)
    print(f"{folder}/{kind}-{number}.yaml: exit status {status}\n{messages}", end="")
    outcome = look_at((program, schema, kind, number))
    for rule, sentence in outcome.faults:
        print(f"{sentence} [{rule}]")
    if outcome.ratio:
        print(f"costs {outcome.ratio - 1:+.1%} against the cheapest calendar")
    return 1 if outcome.faults else 0


def tasks_of(program, schema, times):
    """Every job of a run: (program, schema, kind, number)."""
    counts = {kind: count * times for kind, count in BY_HAND.items()} if times else dict(SHARE)
    counts["story"] = len(stories.STORIES)
    return [(program, schema, kind, n) for kind, count in counts.items() for n in range(1, count + 1)]


def main():
    program, root = os.path.abspath(sys.argv[1]), pathlib.Path(sys.argv[2])
    schema = str(root / "content/schemas/plan.schema.json")
    if sys.argv[3:4] == ["--job"]:
        return one_job(program, schema, sys.argv[4], int(sys.argv[5]))
    spoiled, unnoticed = spoil.prove()
    print("\n".join(unnoticed + [f"{spoiled} faults put in on purpose, {len(unnoticed)} not noticed"]))
    times = int(os.environ.get("RANDOM_TIMES", 0))
    with multiprocessing.Pool() as pool:
        examples = [(program, path) for path in sorted((root / "out_examples").glob("*/job.yaml"))]
        outcomes = pool.map(walk_example, examples) + pool.map(look_at, tasks_of(program, schema, times), chunksize=4)
    bad = report(outcomes)
    wrong = near_the_best([o for o in outcomes if o.name.startswith("small")])
    if times:
        wrong += statistics_of_plans.judge([o.figures for o in outcomes if o.figures])
    refused = sum(o.refusal is not None for o in outcomes)
    print("\n".join(wrong + [f"{len(outcomes)} jobs, {bad} with faults, {refused} refused"]))
    return 1 if unnoticed or bad or wrong else 0


if __name__ == "__main__":
    sys.exit(main())
