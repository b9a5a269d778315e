"""Rules about where people stand and how they get there and away."""

import geometry
from plan_reading import GROUND, IDLE, clock
from rules import rule
from underfoot import ROOM, STRIDE, Floor, breadth, wet_coat


class Whereabouts:
    """Where each person is at any minute, as the walks tell it."""

    def __init__(self, plan):
        self.walks = {name: sorted((w for w in plan.walks if w.person == name), key=lambda w: w.start)
                      for name in plan.people}

    def place(self, name, minute):
        """Where a person stands from this minute on; on the ground before the first walk."""
        at = GROUND
        for w in self.walks[name]:
            if w.start > minute:
                break
            at = w.to
        return at


@rule
def walks_join_up(plan):
    """Each walk begins where the last one ended; the day begins and ends on the ground."""
    for name in plan.people:
        at, date = GROUND, None
        for w in sorted((w for w in plan.walks if w.person == name), key=lambda w: w.start):
            if date is not None and w.at.date != date and at != GROUND:
                yield f"{name} stays on {at} overnight after {date}"
            if w.came_from != at:
                yield f"{w}, but {name} stands at {at}"
            at, date = w.to, w.at.date
        if at != GROUND:
            yield f"{name} is left on {at} when the job ends"


@rule
def walks_follow_ways(plan):
    """Every step of a walk follows a way of the areas."""
    ways = {(a.name, w.to) for a in plan.areas.values() for w in a.ways}
    ways |= {(a.name, GROUND) for a in plan.areas.values() if not a.ways}  # it has no place on the plan
    ways |= {(b, a) for a, b in ways}
    for w in plan.walks:
        stops = [w.came_from] + w.over + [w.to]
        for a, b in zip(stops, stops[1:]):
            over_ground = (a, GROUND) in ways and (GROUND, b) in ways
            if (a, b) not in ways and not over_ground:
                yield f"{w} goes from {a} to {b}, where there is no way"


@rule
def areas_have_a_way(plan):
    """Every area leads to the ground, by itself or over others; its ways lie on its edge."""
    leads = {a.name for a in plan.areas.values() if any(w.to == GROUND for w in a.ways)}
    grown = True
    while grown:
        more = {a.name for a in plan.areas.values() if any(w.to in leads for w in a.ways)} - leads
        leads |= more
        grown = bool(more)
    for a in plan.areas.values():
        if a.ways and a.name not in leads:
            yield f"no way leads from {a.name} to the ground"
        for w in a.ways:
            if a.outline and min(geometry.to_segment(w.at, *e) for e in geometry.edges(a.outline)) > STRIDE:
                yield f"the way from {a.name} to {w.to} does not lie on its edge"


def expected_places(plan, p, strips):
    """Where a person may stand for a piece of work; None: anywhere."""
    if p.strips:
        strip = strips.get((p.date, p.strips[0]))
        stroke = strip and dict(strip.strokes()).get(p.task)
        if stroke is None:
            return None
        if stroke.place in ("boards", "strip"):
            return {p.area}
        return {stroke.place}
    if p.area is None or p.task in IDLE:
        return None
    area = plan.areas.get(p.area)
    return {p.area} if area and area.ways and area.kind not in ("rail", "screen") else {p.area, GROUND}


@rule
def works_where_they_stand(plan):
    """Whoever works on an area has walked there."""
    where = Whereabouts(plan)
    strips = {(s.date, s.n): s for s in plan.strips}
    for p in plan.pieces:
        places = expected_places(plan, p, strips)
        for name in p.people:
            if places is None or name not in where.walks:
                continue
            for at in {where.place(name, p.start), where.place(name, p.end - 1)} - places:
                yield f"{name} should be at {' or '.join(sorted(places))} for {p}, but is at {at}"


@rule
def nobody_rests_on_the_work(plan):
    """Setting up, resting and packing down are done on the ground, not on an area that is still wet afterwards."""
    where = Whereabouts(plan)
    for p in plan.pieces:
        if p.task not in ("rest", "pack-down", "set-up"):
            continue
        for name in p.people:
            place = where.place(name, p.start) if name in where.walks else GROUND
            if place != GROUND and any(c.start < p.end and p.start < c.walk for c in plan.coats_of(place)):
                yield f"{name} is on {place} during {p}, beside its wet coat"


@rule
def nobody_crosses_wet_boards(plan):
    """Boards that may be stepped on lead over every area that a walk crosses."""
    for w in plan.walks:
        stops = [w.came_from] + w.over + [w.to]
        floor = Floor(plan, w.start, w.at.date)
        for before, area, after in zip(stops, stops[1:], stops[2:]):
            if area in plan.areas and not floor.leads_across(area, before, after):
                yield f"{w} crosses {area}, {wetness(plan, area, w)}"


def wetness(plan, area, moment):
    """What forbids going over an area, in words."""
    wet = [c for s in plan.strips_on(area) for c in [wet_coat(plan, s, moment.start, False)] if c]
    if not wet:
        return "over which no boards lead there"
    c = max(wet, key=lambda c: c.walk)
    return f"whose {c} may be stepped on only {(c.walk - moment.start) / 60:.1f} h later"


class Foot:
    """A person on an area at the first or the last minute of a piece of work."""

    def __init__(self, plan, name, piece, place, floor):
        self.plan, self.name, self.piece, self.place, self.floor = plan, name, piece, place, floor

    def trodden(self):
        """The boards that the work leads over, where the plan tells which: a strip, or all that it makes ready for a coat."""
        p, strips = self.piece, self.plan.strips_on(self.place)
        own = [s for s in strips if s.date == p.date and s.n in p.strips]
        if p.area != self.place or (p.task == "wipe" and any(s.wipe.place != "strip" for s in own)):
            return []
        if own:
            return own
        coming = [s for s in strips if s.lay.start >= p.end and p.coat in (None, s.coat) and p.part in (None, s.part)]
        number = min((s.coat for s in coming), default=0)
        coming = [s for s in coming if s.coat == number]
        today = [s for s in coming if s.date == p.date]
        return today or coming

    def starts(self):
        """The boards from which the person has to get away."""
        return self.trodden() or self.floor.free(self.place)


def feet(plan):
    """Everyone who is on an area, piece by piece."""
    where, floors = Whereabouts(plan), {}
    for name, pieces in plan.works.items():
        for p in pieces:
            for minute in sorted({p.start, p.end - 1}):
                place = where.place(name, minute)
                if place in plan.areas:
                    floor = floors.setdefault(minute, Floor(plan, minute, p.date))
                    yield Foot(plan, name, p, place, floor)


@rule
def nobody_stands_on_wet_boards(plan):
    """Nobody works or waits on a coat that may not be stepped on, but on boards which the coat in hand has not reached."""
    for foot in feet(plan):
        wet = [c for s in foot.trodden() for c in [wet_coat(plan, s, foot.floor.minute, True)] if c]
        if wet:
            yield f"{foot.name} is on {wet[0]}, laid {wet[0].when()}, during {foot.piece}"
        elif not foot.starts():
            yield f"{foot.name} is on {foot.place} during {foot.piece}, and no board of it is dry"
        elif not foot.trodden() and (breadth(foot.starts()) or ROOM) < ROOM:
            yield f"{foot.name} is on {foot.place} during {foot.piece}, and only {breadth(foot.starts()):.2f} m of its boards are dry"


@rule
def nobody_is_trapped(plan):
    """From where somebody is, dry boards lead to the ground at every minute; the last strip of a day lies at the way out."""
    told = set()
    for foot in feet(plan):
        p, minute = foot.piece, foot.floor.minute
        if (foot.place, p.date) not in told and not foot.floor.leads_out(foot.place, foot.starts()):
            told.add((foot.place, p.date))
            yield f"{foot.name} cannot leave {foot.place} at {clock(p.first.clock + minute - p.start)} during {p}"
