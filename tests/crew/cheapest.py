"""The cheapest calendar of a small job, found by trying them all; shares nothing with the program.

It takes from 'plan --json' what the calendar is made of (work, fit hours, drying, hours of the crew, prices) and how
long each coat takes once it is begun. It tries every choice of days for coats and wash, packs the rest of the work
before the coats, and adds up what that costs. Only calendars that can be kept are counted, so one that is cheaper
than the plan proves that the plan is not the cheapest.
"""

import copy
import itertools
import math

from plan_reading import Moment, Plan, minute_of

SOILING_PREPARATION = ("sand", "edges", "vacuum")
PREPARATION = ("fix",) + SOILING_PREPARATION
SIX_HOURS = 6 * 60
CLOSING = 5  # minutes after the last wipe: pads are cleaned, oily rags put away
STEP = 5
MOST_BETWEEN = 5  # working days between two coats; the longest wait of a product is shorter
LATEST = 180  # minutes a crew may come later on a morning on which boards still dry
EXTRA_DAYS = 3  # days without a coat that are tried beside the wash


def ceil5(minutes):
    return STEP * math.ceil(minutes / STEP - 1e-9)


class Block:
    """A coat of an area as a crew lays it: minutes from the first stroke to the last, and then to the last wipe."""

    def __init__(self, plan, area, coat):
        self.area, self.coat = area, coat
        strips = [s for s in plan.strips_on(area) if s.coat == coat]
        start, end = min(s.wet_from() for s in strips), max(s.lay.end for s in strips)
        wiped = max((s.wipe.end for s in strips if s.wipe), default=end)
        self.lay, self.tail = end - start, wiped - end
        self.wipe_work = sum((s.wipe.end - s.wipe.start) * len(s.wipe.people) for s in strips if s.wipe)


class Cheapest:
    """What the search knows of a job."""

    def __init__(self, plan):
        self.plan = plan
        self.people, self.cost = len(plan.people), plan.cost
        self.fewest = min(len(d.people) for d in plan.site_days() if any(c.date == d.date for c in plan.coats))
        self.day_minutes = plan.crew_until - plan.crew_from
        self.areas = sorted((a.name for a in plan.areas.values() if plan.coats_of(a.name)), key=lambda n: plan.areas[n].order)
        self.coats = {n: max(c.coat for c in plan.coats_of(n)) for n in self.areas}
        self.blocks = {(n, k): Block(plan, n, k) for n in self.areas for k in range(1, self.coats[n] + 1)}
        self.minutes = {n: {t: self.crew_minutes(t, n) for t in ("wash", "mask") + PREPARATION} for n in self.areas}
        self.blow = {(n, k): self.crew_minutes("blow", n, k) for n, k in self.blocks}
        self.days = [d for d in sorted(plan.days.values(), key=lambda d: d.date) if not d.off]
        self.fit = {(h.area, h.start // 60): h.fit for h in plan.hours}
        self.wet = {(h.area, h.start // 60) for h in plan.hours if set(h.reasons) & {"rain", "boards_wet"}}
        self.overhead = self.fixed("set-up") + self.fixed("pack-down")
        self.set_up, self.pack_down = self.fixed("set-up"), self.fixed("pack-down")
        soaking = min(b.tail for b in self.blocks.values())  # time to pack down most, on a day with a coat
        self.closing = max(CLOSING, self.pack_down - soaking)
        self.clear = self.crew_minutes("clear", None)
        self.rags = self.crew_minutes("rags", None)
        self.dry_gap = max((minute_of(b["dry"]) - minute_of(b["washed"]) for b in plan.boards_dry), default=0)
        self.washing = sum(self.minutes[n]["wash"] for n in self.areas)
        self.midnights, self.known_flows, self.known_waits = {}, {}, {}
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
        """Minutes that all together take for a task of every visit."""
        spent = {}
        for p in self.plan.pieces:
            if p.task == task:
                spent[p.date] = spent.get(p.date, 0) + (p.end - p.start) * len(p.people)
        return ceil5(min(spent.values(), default=0) / self.people)

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
            last = midnight + self.plan.crew_until - self.closing
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

    def copy(self):
        other = copy.copy(self)
        other.coats = list(self.coats)
        return other

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

    def people(self):
        """Who come: only where nothing is done before the coats as few as the plan sends."""
        return self.job.fewest if self.coats and not self.before else self.job.people

    def minutes(self):
        """From arrival to home."""
        many = self.job.people / self.people()
        long = ceil5(self.job.set_up * many) + ceil5(self.job.pack_down * many) + self.before
        if self.coats:
            long += self.flow[1] - self.flow[0] + self.job.closing - self.job.pack_down
        return long + (self.job.plan.break_minutes if long > SIX_HOURS else 0)


def cost_of(job, visits):
    """Money for some visits."""
    minutes = sum(v.minutes() * v.people() for v in visits)
    return len(visits) * job.cost["per_visit"] + minutes / 60 * job.cost["per_person_hour"]


def coat_days(job):
    """Every choice of days for the coats on at most as many days as the plan needs: {(area, coat): index of day}."""
    most = job.cost["site_days"] - (1 if job.washing else 0)
    choices = []
    for name in job.areas:
        choices.append([days for days in itertools.combinations(range(len(job.days)), job.coats[name])
                        if all(b - a <= MOST_BETWEEN for a, b in zip(days, days[1:]))
                        and all(usable(job, name, k + 1, d) for k, d in enumerate(days))])

    def choose(area, assigned, used):
        if area == len(job.areas):
            yield assigned
            return
        for days in choices[area]:
            if len(used | set(days)) <= most:
                more = {(job.areas[area], k + 1): d for k, d in enumerate(days)}
                yield from choose(area + 1, {**assigned, **more}, used | set(days))

    return sorted(choose(0, {}, frozenset()), key=lambda a: (len(set(a.values())), sorted(a.values())))


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
    for area in sorted(job.areas, key=lambda a: -assigned[(a, 1)]):
        if not prepare(job, area, assigned, visits, wash_day):
            return None
    first, last = min(visits), max(visits)
    visits[first].before += job.clear
    visits[last].before += job.rags
    for v in visits.values():
        if v.coats and not v.place_coats() or v.minutes() > job.day_minutes:
            return None
    return list(visits.values())


def prepare(job, area, assigned, visits, wash_day):
    """Puts the preparation of an area into the latest visits before its first coat; False where it does not fit."""
    coat_day = assigned[(area, 1)]
    for task in reversed(PREPARATION):
        need = job.minutes[area][task]
        for index in sorted((i for i in visits if i <= coat_day), reverse=True):
            late = 0 if wash_day is None else wait_for_dry(job, wash_day, index)
            if need == 0 or late is None or not may_prepare(job, area, task, index, coat_day, min(assigned.values())):
                continue
            visits[index].late = max(visits[index].late, late)
            take = max(0, min(need, visits[index].room() // STEP * STEP))
            visits[index].before += take
            need -= take
        if need > 0:
            return False
    return True


def may_prepare(job, area, task, index, coat_day, first_coat):
    """Is a day right for a task on an area: dry, and no dust too long before its coat or after another's?"""
    if not is_dry_day(job, job.days[index], area):
        return False
    bare = (job.days[coat_day].date - job.days[index].date).days
    return task not in SOILING_PREPARATION or (bare <= job.plan.rules["coat_within_days"] and index <= first_coat)


def wait_for_dry(job, wash_day, index):
    """Minutes after the hours begin at which boards washed on one day are dry on another; None: not that morning."""
    if (wash_day, index) not in job.known_waits:
        a, b = job.days[wash_day], job.days[index]
        begin = job.midnight(a) + job.plan.crew_from + job.set_up + job.clear + job.washing
        morning = job.midnight(b) + job.plan.crew_from
        late = max(0, begin + job.dry_gap - morning - job.set_up)
        rain = any((area, hour) in job.wet for area in job.areas for hour in range(begin // 60, morning // 60))
        job.known_waits[(wash_day, index)] = None if late > LATEST or rain or index <= wash_day else ceil5(late)
    return job.known_waits[(wash_day, index)]


def is_divided(plan):
    """Is a coat of an area laid on more than one day?"""
    days = {}
    for c in plan.coats:
        days.setdefault((c.area, c.coat), set()).add(c.date)
    return any(len(d) > 1 for d in days.values())


def cheapest_cost(data):
    """The least money that a calendar costs, not above the plan's, and its days; None: not a job for this search."""
    plan = Plan(data)
    if not plan.coats or is_divided(plan) or plan.extra_passes or any(m["unfit"] for m in plan.misses.values()):
        return None
    job = Cheapest(plan)
    best = (job.cost["total"], None)
    per_minute = job.people / 60 * job.cost["per_person_hour"]
    rest = sum(job.minutes[a][t] for a in job.areas for t in ("wash",) + PREPARATION) * per_minute
    if job.washing:
        rest += job.cost["per_visit"] + job.overhead * per_minute
    for assigned in coat_days(job):
        if len(set(assigned.values())) * (job.cost["per_visit"] + (job.set_up + job.closing) * per_minute) + rest >= best[0]:
            break
        bare = visits_for(job, assigned)
        if bare is None or cost_of(job, list(bare.values())) + rest >= best[0]:
            continue
        first = min(assigned.values())
        for wash_day in range(first) if job.washing else [None]:
            if wash_day is None or wait_for_dry(job, wash_day, first) is not None:
                best = min(best, with_preparation(job, assigned, bare, wash_day, best[0] - rest), key=lambda b: b[0])
    return best


def with_preparation(job, assigned, bare, wash_day, most):
    """The cheapest calendar for these coats and this wash, with as few further visits as do; (cost, days)."""
    first = min(assigned.values())
    free = [i for i in range(first) if i not in bare and i != wash_day]
    best = (math.inf, None)
    for count in range(EXTRA_DAYS + 1):
        if (len(bare) + count) * job.cost["per_visit"] >= most:
            break
        for extra in itertools.combinations(free, count):
            visits = pack(job, assigned, {i: v.copy() for i, v in bare.items()}, extra, wash_day)
            if visits is not None and cost_of(job, visits) < best[0]:
                best = (cost_of(job, visits), sorted(str(v.day.date) for v in visits))
        if best[1]:
            break
    return best
