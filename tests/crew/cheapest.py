"""The cheapest calendar of a small job, found by trying them all; shares nothing with the program.

It takes from 'plan --json' what the calendar is made of (work, fit hours, drying, hours of the crew, prices) and how
long each coat takes once it is begun. It tries every choice of days for coats and wash, packs the rest of the work
before the coats, and adds up what that costs. Only calendars that can be kept are counted, so one that is cheaper
than the plan proves that the plan is not the cheapest.
"""

import itertools
import math

from plan_reading import Moment, Plan, minute_of

SOILING_PREPARATION = ("sand", "edges", "vacuum")
PREPARATION = ("fix",) + SOILING_PREPARATION
SIX_HOURS = 6 * 60
STEP = 5
LATEST = 180  # minutes a crew may come later on a morning on which boards still dry
EXTRA_DAYS = 3  # days without a coat that are tried beside the wash


def ceil5(minutes):
    return STEP * math.ceil(minutes / STEP - 1e-9)


class Block:
    """A coat of an area as a crew lays it: minutes from the first stroke to the last, and then to the last wipe."""

    def __init__(self, plan, area, coat):
        self.area, self.coat = area, coat
        laid = next(c for c in plan.coats if (c.area, c.coat) == (area, coat))
        strips = plan.strips_of(laid)
        wiped = max((s.wipe.end for s in strips if s.wipe), default=laid.end)
        self.lay, self.tail = laid.end - laid.start, wiped - laid.end
        self.wipe_work = sum((s.wipe.end - s.wipe.start) * len(s.wipe.people) for s in strips if s.wipe)


class Cheapest:
    """What the search knows of a job."""

    def __init__(self, data):
        self.plan = plan = Plan(data)
        self.people, self.cost = len(plan.people), plan.cost
        self.day_minutes = plan.crew_until - plan.crew_from
        self.areas = sorted((a.name for a in plan.areas.values() if plan.coats_of(a.name)), key=lambda n: plan.areas[n].order)
        self.coats = {n: len(plan.coats_of(n)) for n in self.areas}
        self.blocks = {(n, k): Block(plan, n, k) for n in self.areas for k in range(1, self.coats[n] + 1)}
        self.minutes = {n: {t: self.crew_minutes(t, n) for t in ("wash", "mask") + PREPARATION} for n in self.areas}
        self.blow = {(n, k): self.crew_minutes("blow", n, k) for n, k in self.blocks}
        self.days = [d for d in sorted(plan.days.values(), key=lambda d: d.date) if not d.off]
        self.fit = {(h.area, h.start // 60): h.fit for h in plan.hours}
        self.wet = {(h.area, h.start // 60) for h in plan.hours if set(h.reasons) & {"rain", "boards_wet"}}
        self.overhead = self.fixed("set-up") + self.fixed("pack-down")
        self.set_up, self.pack_down = self.fixed("set-up"), self.fixed("pack-down")
        self.clear = self.crew_minutes("clear", None)
        self.rags = self.crew_minutes("rags", None)
        self.dry_gap = max((minute_of(b["dry"]) - minute_of(b["washed"]) for b in plan.boards_dry.values()), default=0)
        self.washing = sum(self.minutes[n]["wash"] for n in self.areas)
        self.midnights, self.known_flows = {}, {}
        for h in plan.data["hours"]:
            m = Moment(h["at"])
            self.midnights.setdefault(m.date, m.minute - m.clock)

    def crew_minutes(self, task, area, coat=None):
        """Minutes of the whole crew for a task, each piece on five minutes."""
        total = 0
        for w in self.plan.work:
            if w["task"] == task and w["area"] == area and (coat is None or w["coat"] in (None, coat)):
                total += ceil5(w["person_minutes"] / self.people)
        return total

    def fixed(self, task):
        return max((p.end - p.start for p in self.plan.pieces if p.task == task), default=0)

    def midnight(self, day):
        return self.midnights[day.date]

    def next_fit(self, area, at, minutes):
        """The first minute from which so many lie in fit hours, on the same day; None: there is none."""
        hour, latest = at // 60, at // 60 + 24
        while hour <= latest:
            if all(self.fit.get((area, h)) for h in range(at // 60, (at + minutes - 1) // 60 + 1)):
                return at
            hour += 1
            at = hour * 60
        return None

    def flows(self, day, coats):
        """For each start of a day's coats laid one after the other, latest first: the best from there on."""
        key = (day.date, tuple(coats))
        if key not in self.known_flows:
            midnight, best, found = self.midnights[day.date], None, []
            last = midnight + self.plan.crew_until - self.pack_down
            for start in range(last, midnight + self.plan.crew_from + self.set_up - STEP, -STEP):
                flow = self.flow_from(start, coats, last)
                if flow and (best is None or flow[1] - flow[0] <= best[1] - best[0]):
                    best = flow
                found.append((start, best))
            self.known_flows[key] = dict(found)
        return self.known_flows[key]

    def flow_from(self, start, coats, last):
        """(First stroke, end of the last wipe, span of each coat), begun at a minute; None where it does not fit."""
        at, end, spans = start, start, []
        for key in coats:
            block = self.blocks[key]
            at = self.next_fit(key[0], at, block.lay)
            if at is None:
                return None
            spans.append((at, at + block.lay))
            at += block.lay
            end = max(end, at + block.tail)
        end += ceil5(sum(self.blocks[k].wipe_work for k in coats[:-1]) / self.people)
        return (spans[0][0], end, spans) if end <= last else None

    def flow(self, day, coats, not_before):
        """The coats of a day in the shortest time, from a minute on."""
        return self.flows(day, coats).get(STEP * math.ceil(not_before / STEP))


def dried(job, start, hours):
    """The minute at which a coat has dried some hours of the data sheet; None where the plan does not tell."""
    left, at = float(hours), start
    while left > 1e-9:
        rate = job.plan.dries.get(at // 60)
        if rate is None:
            return None
        step = min((at // 60 + 1) * 60 - at, left * 60 / rate if rate > 0 else 60)
        left -= rate * step / 60
        at += step
    return math.ceil(at)


class Day:
    """One visit in the making: minutes before the coats, the coats, and what that comes to."""

    def __init__(self, job, day):
        self.job, self.day, self.coats, self.before = job, day, [], 0
        self.late = 0  # minutes after the hours begin at which the crew arrives, as the boards are not dry sooner

    def room(self):
        """Minutes still free for work before the coats."""
        used = self.job.overhead + self.before + self.job.plan.break_minutes + self.late
        if not self.coats:
            return self.job.day_minutes - used
        return self.flow[0] - self.job.midnight(self.day) - self.job.plan.crew_from - self.job.set_up - self.before - \
            self.job.plan.break_minutes - self.late

    def place_coats(self):
        """Chooses when the coats are laid: the shortest flow that leaves room for the work before it."""
        begin = self.job.midnight(self.day) + self.job.plan.crew_from + self.job.set_up + self.late + self.before
        self.flow = self.job.flow(self.day, self.coats, begin)
        return self.flow is not None

    def minutes(self):
        """From arrival to home."""
        long = self.job.overhead + self.before + (self.flow[1] - self.flow[0] if self.coats else 0)
        return long + (self.job.plan.break_minutes if long > SIX_HOURS else 0)


def cost_of(job, visits):
    """Money for some visits."""
    minutes = sum(v.minutes() for v in visits)
    return len(visits) * job.cost["per_visit"] + minutes * job.people / 60 * job.cost["per_person_hour"]


def coat_days(job):
    """Every choice of days for the coats: {(area, coat): index of day}."""
    count = len(job.days)
    most = job.cost["site_days"]
    choices = []
    for name in job.areas:
        options = []
        for days in itertools.combinations_with_replacement(range(count), job.coats[name]):
            fits = all(b - a <= 5 for a, b in zip(days, days[1:]))
            if fits and all(usable(job, name, k + 1, d) for k, d in enumerate(days)):
                options.append(days)
        choices.append(options)
    for pick in itertools.product(*choices):
        if len({d for days in pick for d in days}) <= most:
            yield {(name, k + 1): d for name, days in zip(job.areas, pick) for k, d in enumerate(days)}


def usable(job, area, coat, index):
    """Is there any window for this coat on this day?"""
    day = job.days[index]
    return job.flow(day, [(area, coat)], job.midnight(day) + job.plan.crew_from + job.set_up) is not None


def visits_for(job, assigned):
    """The visits that lay these coats, or None where they cannot be laid like that."""
    visits = {}
    for (area, coat), index in assigned.items():
        visits.setdefault(index, Day(job, job.days[index])).coats.append((area, coat))
    for index in sorted(visits):
        v = visits[index]
        v.coats.sort(key=lambda k: (k[1], job.plan.areas[k[0]].order))
        v.before = sum(job.blow[k] for k in v.coats) + sum(job.minutes[a]["mask"] for a, k in v.coats if k == 1)
        if not v.place_coats():
            return None
    spans = {key: span for v in visits.values() for key, span in zip(v.coats, v.flow[2])}
    for (area, coat), (start, _) in spans.items():
        if coat > 1:
            end = spans[(area, coat - 1)][1]
            ready = dried(job, end, job.plan.rules["recoat_min_h"])
            if ready is None or start < ready or start > end + job.plan.rules["recoat_max_h"] * 60:
                return None
    for index, v in visits.items():  # blowing comes after every coat before this day is touch dry
        for key, (start, end) in spans.items():
            if assigned[key] < index:
                touch = dried(job, end, job.plan.rules["touch_dry_h"])
                if touch is None or touch > v.flow[0] - v.before:
                    return None
        if len({k[1] for k in v.coats}) > 1:
            return None  # two coats of one day would need dust between them
    return visits


def is_dry_day(job, day, area):
    """No rain and no wet boards in the hours of work: boards can be prepared."""
    begin = job.midnight(day) + job.plan.crew_from
    return all((area, hour) not in job.wet for hour in range(begin // 60, (begin + job.day_minutes) // 60 + 1))


def pack(job, assigned, visits, extra, wash_day):
    """Puts wash and preparation into the visits and the extra days; None where they do not fit."""
    for index in set(extra) | ({wash_day} if wash_day is not None else set()):
        if index not in visits:
            visits[index] = Day(job, job.days[index])
    if wash_day is not None:
        if visits[wash_day].coats or visits[wash_day].room() < job.washing + job.clear:
            return None
        visits[wash_day].before += job.washing
    first_coat = min(assigned.values())
    within = job.plan.rules["coat_within_days"]
    for area in sorted(job.areas, key=lambda a: -assigned[(a, 1)]):
        need = {t: job.minutes[area][t] for t in PREPARATION}
        coat_day = job.days[assigned[(area, 1)]]
        for task in reversed(PREPARATION):
            for index in sorted((i for i in visits if i <= assigned[(area, 1)]), reverse=True):
                day = job.days[index]
                if need[task] == 0:
                    break
                late = 0 if wash_day is None or index <= wash_day else wait_for_dry(job, wash_day, index)
                if late is None or (wash_day is not None and index <= wash_day):
                    continue
                if not is_dry_day(job, day, area):
                    continue
                if task in SOILING_PREPARATION and ((coat_day.date - day.date).days > within or index > first_coat):
                    continue
                visits[index].late = max(visits[index].late, late)
                take = min(need[task], visits[index].room() // STEP * STEP)
                if take > 0:
                    visits[index].before += take
                    need[task] -= take
            if need[task] > 0:
                return None
    first, last = min(visits), max(visits)
    visits[first].before += job.clear
    visits[last].before += job.rags
    for v in visits.values():
        if v.coats and not v.place_coats() or v.minutes() > job.day_minutes:
            return None
    return list(visits.values())


def wait_for_dry(job, wash_day, index):
    """Minutes after the hours begin at which boards washed on one day are dry on another; None: not that morning."""
    a, b = job.days[wash_day], job.days[index]
    begin = job.midnight(a) + job.plan.crew_from + job.set_up + job.clear + job.washing
    morning = job.midnight(b) + job.plan.crew_from
    late = max(0, begin + job.dry_gap - morning - job.set_up)
    if late > LATEST or any((area, hour) in job.wet for area in job.areas for hour in range(begin // 60, morning // 60)):
        return None
    return ceil5(late)


def cheapest_cost(data):
    """The least money that any calendar costs, and its days; None where the job is not one for this search."""
    job = Cheapest(data)
    if not job.areas or any(c.part for c in job.plan.coats) or job.plan.extra_passes or \
            any(m["unfit"] for m in job.plan.misses.values()):
        return None
    best = None
    for assigned in coat_days(job):
        bare = visits_for(job, assigned)
        if bare is None:
            continue
        floor = cost_of(job, list(bare.values()))
        if best is not None and floor >= best[0]:
            continue
        first = min(assigned.values())
        for wash_day in range(first) if job.washing else [None]:
            if wash_day is not None and wait_for_dry(job, wash_day, first) is None:
                continue
            for count in range(EXTRA_DAYS + 1):
                found = False
                for extra in itertools.combinations([i for i in range(first) if i not in bare and i != wash_day][-5:], count):
                    visits = pack(job, assigned, visits_for(job, assigned), extra, wash_day)
                    if visits is None:
                        continue
                    found = True
                    cost = cost_of(job, visits)
                    if best is None or cost < best[0] - 1e-6:
                        best = (cost, sorted(v.day.date for v in visits), assigned)
                if found:
                    break
    return best
