"""What ordinary jobs in season have to come to, all together."""

from plan_reading import SANDING
from rules_strips import rests_in, runs

SHORT_VISIT = 60  # minutes
MOST_SHORT = 0.02  # of the days on site
MOST_PRESENCE = 1.15  # person-hours on site for each person-hour of work
BARE_DAYS = 3


class Figures:
    """Of one plan."""

    def __init__(self):
        self.visits = self.short = self.present = self.worked = self.soaking = self.bare = self.over_break = 0


def figures_of(plan):
    f = Figures()
    days = plan.site_days()
    f.visits = len(days)
    f.short = sum(d.home - d.arrive < SHORT_VISIT for d in days)
    rested = sum((p.end - p.start) * len(p.people) for p in plan.pieces if p.task == "rest")
    fixed = sum((p.end - p.start) * len(p.people) for p in plan.pieces if p.task in ("set-up", "pack-down"))
    f.present = sum((d.home - d.arrive) * len(d.people) for d in days) - rested
    f.worked = fixed + sum(w["person_minutes"] for w in plan.work)
    f.soaking = soaking(plan)
    f.bare = sum(is_bare(plan, c) for c in plan.coats if c.coat == 1)
    f.over_break = sum(goes_over_a_break(plan, c) for c in plan.coats)
    return f


def soaking(plan):
    """Person-minutes of waiting, after a day's last stroke of laying, for the product to soak in."""
    laid = {}
    for s in plan.strips:
        if s.wipe:
            laid[s.date] = max(laid.get(s.date, 0), s.lay.end)
    return sum((p.end - p.start) * len(p.people) for p in plan.pieces
               if p.task == "wait" and p.date in laid and p.start >= laid[p.date])


def is_bare(plan, coat):
    """Sanded more than three days before its first coat, and no pass billed."""
    sanded = [p.date for p in plan.pieces if p.area == coat.area and p.task in SANDING and p.end <= coat.start]
    return bool(sanded) and (coat.date - max(sanded)).days > BARE_DAYS and (coat.area, 1) not in plan.extra_passes


def goes_over_a_break(plan, coat):
    """A run of its strips stops for a break of somebody who lays it."""
    return any(list(rests_in(plan, coat, run)) for run in runs(plan.strips_of(coat)))


def judge(figures, tell=True):
    """What does not hold, in sentences."""
    def total(name):
        return sum(getattr(f, name) for f in figures)
    if not figures:
        return ["no ordinary job could be planned"]
    short, presence = total("short") / total("visits"), total("present") / total("worked")
    if tell:
        print(f"ordinary jobs: {len(figures)}, {total('visits')} visits, {short:.1%} under an hour, {total('bare')} areas bare over "
              f"{BARE_DAYS} days unbilled, {total('over_break')} coats over a break,\n  {presence:.3f} person-hours on site for each "
              f"of work, {total('soaking') / total('worked'):.3f} of them waiting for the product to soak in")
    wrong = []
    if short > MOST_SHORT:
        wrong.append(f"{short:.1%} of the visits are under an hour, at most {MOST_SHORT:.0%} may be")
    if presence > MOST_PRESENCE:
        wrong.append(f"{presence:.3f} person-hours on site for each person-hour of work, at most {MOST_PRESENCE} may be")
    if total("bare"):
        wrong.append(f"{total('bare')} areas are bare for more than {BARE_DAYS} days and no pass is billed")
    if total("over_break"):
        wrong.append(f"{total('over_break')} coats go over a break")
    return wrong
