"""Proves that what is measured beside the rules would notice a fault: job and plan, statistics, the cheapest calendar."""

import datetime

import calendar_file
import cheapest
import job_checks
import random_jobs
import statistics_of_plans
from good_plan import good_plan
from plan_reading import Plan

JOB = {"site": {"region": "gb", "state": "ENG"}, "start": datetime.date(2027, 6, 14), "work": ["wash", "fix", "sand", "oil"],
       "firm": str(random_jobs.FIRM), "product": "tern-oil",
       "crew": {"people": 2, "hours": "08:00-16:30"}, "areas": [{"name": n} for n in ("Porch", "Deck", "Rail")]}
OTHER_JOBS = [
    ("works_on_its_days", {"start": datetime.date(2027, 6, 15)}),
    ("works_on_its_days", {"crew": {**JOB["crew"], "days": ["mon", "tue", "thu", "fri"]}}),
    ("works_on_its_days", {"crew": {**JOB["crew"], "off": [datetime.date(2027, 6, 17)]}}),
    ("lays_its_coats", {"areas": JOB["areas"] + [{"name": "Jetty"}]}),
    ("lays_its_coats", {"areas": [{"name": n, "coats": 1} for n in ("Porch", "Deck", "Rail")]}),
    ("lays_its_coats", {"crew": {**JOB["crew"], "people": 3}}),
    ("lays_its_coats", {"crew": {**JOB["crew"], "hours": "08:00-16:00"}}),
    ("pays_its_prices", {"site": {"region": "ie"}}),
    ("pays_its_prices", {"product": "plover-wb"}),
]


def plan_with(**cost):
    data = good_plan()
    data["cost"].update(cost)
    return data


def unnoticed_jobs():
    """Plans that are held against another job."""
    plan = Plan(good_plan())
    for _, sentence in job_checks.faults(JOB, plan):
        yield f"the good plan and its job: {sentence}"
    for rule, change in OTHER_JOBS:
        if rule not in {name for name, _ in job_checks.faults({**JOB, **change}, plan)}:
            yield f"a job with {change}: {rule} does not notice"
    holiday = Plan({**good_plan(), "days": [{**d, "date": "2026-12-25"} if d["arrive"] else d for d in good_plan()["days"]]})
    if "works_on_its_days" not in {name for name, _ in job_checks.faults(JOB, holiday)}:
        yield "work on 25 December: nobody notices"


def unnoticed_statistics():
    """Figures that ordinary jobs must not come to."""
    for name, value in (("short", 1), ("present", 2500), ("bare", 1), ("over_break", 1)):
        figures = statistics_of_plans.figures_of(Plan(good_plan()))
        figures.worked = figures.present
        setattr(figures, name, value)
        if not statistics_of_plans.judge([figures], tell=False):
            yield f"figures with {name} {value}: nobody notices"


def unnoticed_costs():
    """A calendar that is dearer than need be."""
    if cheapest.cheapest_cost(plan_with(total=1100.0, site_days=5))[0] > 1000:
        yield "a plan with a visit too many: the search finds no cheaper calendar"
    if cheapest.cheapest_cost(good_plan())[1] is not None:
        yield "the good plan: the search finds a cheaper calendar"


def unnoticed_calendar_files():
    """A calendar file in which a day ends too soon."""
    event = "BEGIN:VEVENT\nUID:GOOD-1-crew-{n}@x\nDTSTART:{start}\nDTEND:{end}\nEND:VEVENT\n"
    plan = Plan(good_plan())
    spans = [[datetime.datetime.fromtimestamp(m * 60, datetime.timezone.utc).strftime("%Y%m%dT%H%M%SZ") for m in (d.arrive, d.home)]
             for d in plan.site_days()]
    def write():
        return "".join(event.format(n=n, start=s, end=e) for n, (s, e) in enumerate(spans))
    if list(calendar_file.faults(write(), plan)):
        yield "a calendar file of the good plan: a fault is told that is none"
    spans[1][1] = spans[1][0]
    if not list(calendar_file.faults(write(), plan)):
        yield "a calendar file with a short day: nobody notices"


def prove():
    """How many faults were put in, and what went unnoticed."""
    return len(OTHER_JOBS) + 8, [*unnoticed_jobs(), *unnoticed_statistics(), *unnoticed_costs(), *unnoticed_calendar_files()]
