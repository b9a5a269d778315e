"""Rules about what the plan says it costs."""

from plan_reading import IDLE
from rules import rule

CENT = 0.011
STEP = 5  # minutes a piece may be longer than its work, for the clock
MOST_TIGHTER = 10  # minutes a day, rather than come again or stay past the hours


@rule
def visits_are_counted(plan):
    """The plan's visits are its days on site."""
    days = len(plan.site_days())
    if plan.cost["site_days"] != days:
        yield f"{plan.cost['site_days']} visits are counted, the crew comes on {days} days"


@rule
def paid_minutes_are_counted(plan):
    """Paid is the time of everyone who comes from arrival to home, rests and idle minutes included."""
    present = sum((d.home - d.arrive) * len(d.people) for d in plan.site_days() if d.home)
    told = plan.cost["person_minutes"]
    if told != present:
        yield f"{told} person-minutes are paid, the days hold {present}"


@rule
def costs_add_up(plan):
    """Visits and paid hours make the total, and extra passes are part of the hours."""
    c = plan.cost
    if abs(c["visits"] + c["paid_hours"] - c["total"]) > CENT:
        yield f"{c['visits']} and {c['paid_hours']} are not {c['total']}"
    if c["extra_passes"] > c["paid_hours"] + CENT:
        yield "extra passes cost more than all paid hours"
    if bool(c["extra_passes"] > 0) != bool(plan.extra_passes):
        yield f"extra passes cost {c['extra_passes']}, and {len(plan.extra_passes)} are planned"
    per_visit, per_hour = c["per_visit"], c["per_person_hour"]
    if abs(per_visit * c["site_days"] - c["visits"]) > CENT:
        yield f"{c['site_days']} visits at {per_visit} are not {c['visits']}"
    if abs(per_hour * c["person_minutes"] / 60 - c["paid_hours"]) > CENT:
        yield f"{c['person_minutes']} min at {per_hour} an hour are not {c['paid_hours']}"


@rule
def runners_up_cost_more(plan):
    """No calendar that was not taken is cheaper than the plan; they stand cheapest first, each with its reason."""
    costs = [r["cost"] for r in plan.data["runners_up"]]
    if costs and min(costs) < plan.cost["total"] - CENT:
        yield f"a calendar for {min(costs)} was not taken, the plan costs {plan.cost['total']}"
    if costs != sorted(costs):
        yield "the runners-up do not stand cheapest first"
    if any(not r["reason"].strip() for r in plan.data["runners_up"]):
        yield "a runner-up says not why it was not taken"


def key_of(task, area, coat, grit):
    return task, area, coat, grit


@rule
def all_work_is_done_once(plan):
    """Each task of the estimate is done whole: its pieces hold its person-minutes, to the step of the clock, and so
    does the day's work in all: what one piece is rounded down by another is rounded up by, but for days that the
    plan says are a little tighter."""
    held, pieces = {}, {}
    for p in plan.pieces:
        if p.task in IDLE + ("set-up", "pack-down"):
            continue
        key = key_of(p.task, p.area, p.coat, p.grit)
        held[key] = held.get(key, 0) + (p.end - p.start) * len(p.people)
        pieces[key] = pieces.get(key, 0) + len(p.people)
    tighter = 0
    for day in plan.site_days():
        tighter += day.tighter * len(day.people)
        if day.tighter > MOST_TIGHTER:
            yield f"{day}: {day.tighter} min less than its work takes"
    short = -tighter
    for w in plan.work:
        key = key_of(w["task"], w["area"], w["coat"], w.get("grit"))
        have, want = held.pop(key, 0), w["person_minutes"]
        short += want - have
        if have < want - STEP * max(pieces.get(key, 0), 1):
            yield f"{w['task']} on {w['area'] or 'the job'} needs {want} person-minutes and gets {have}"
        elif have > want + STEP * pieces.get(key, 0):
            yield f"{w['task']} on {w['area'] or 'the job'} needs {want} person-minutes and gets {have}"
    if short > STEP:
        yield f"the work in all is {short:.0f} person-minutes short"
    for key, have in held.items():
        yield f"{key[0]} on {key[1] or 'the job'} is done for {have} person-minutes, and nobody asked for it"


@rule
def coats_not_planned_are_named(plan):
    """An area that is not coated, though the job asks for it, is named as a miss."""
    for (area, coat), miss in plan.misses.items():
        if area not in plan.areas:
            yield f"a miss names {area}, which is no area of this job"
    for w in plan.work:
        if w["task"] == "coat" and not any(c.area == w["area"] and c.coat == w["coat"] for c in plan.coats):
            if (w["area"], w["coat"]) not in plan.misses:
                yield f"coat {w['coat']} on {w['area']} is neither planned nor named as a miss"
