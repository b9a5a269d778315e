"""Rules about where people stand and how they get there and away."""

import geometry
from plan_reading import GROUND, IDLE, LAYING, clock
from rules import rule
from rules_strips import STRIDE

NEXT_COAT_TASKS = ("mask", "blow", "between-coats") + LAYING


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


def walkable_at(coats, minute, for_next_coat):
    """Is an area free to step on: no coat on it, or the last is dry enough. Gives the coat that forbids it."""
    for c in coats:
        if c.start <= minute < (c.recoat_from if for_next_coat else c.walk):
            return c
    return None


def next_coat_comes(plan, area, coat, minute, date):
    """Its own next coat is laid later on the same day."""
    return any(c.area == area and c.coat > coat.coat and c.date == date and c.end > minute for c in plan.coats)


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
    if p.n is not None:
        strip = strips.get((p.date, p.n))
        stroke = strip and dict(strip.strokes()).get(p.task)
        if stroke is None:
            return None
        if stroke.place == "boards":
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
    """No walk leads over an area whose coat may not be stepped on yet."""
    for w in plan.walks:
        for area in w.over:
            coat = walkable_at(plan.coats_of(area), w.start, False)
            stops = [w.came_from] + w.over + [w.to]
            at = stops.index(area)
            if coat and not may_pass(plan, area, w.start, w.at.date, stops[at - 1], stops[at + 1]):
                yield f"{w} crosses {area}, whose coat {coat.coat} may be stepped on {until(coat, w.at)}"


def leads_over_dry_strips(plan, coat, minute, came_from, to):
    """While an area is laid: do boards not yet laid lead from one of its ways to another?"""
    if is_laying(plan, coat.area, minute) is not coat:
        return False
    dry = [s for s in plan.strips_of(coat) if s.lay.start >= minute]
    enter, leave = ways_between(plan, coat.area, came_from), ways_between(plan, coat.area, to)
    starts = [s for s in dry if any(geometry.distance(at, s.outline) <= STRIDE for at in enter if s.outline)]
    return any(geometry.distance(at, s.outline) <= STRIDE for s in plan.connected(dry, starts) for at in leave)


def ways_between(plan, area, other):
    """The points where one steps from an area to another place, as either of the two names them."""
    points = [w.at for w in plan.areas[area].ways if w.to == other]
    return points + [w.at for w in plan.areas[other].ways if w.to == area] if other in plan.areas else points


def until(coat, moment):
    """How long a coat still has to dry, in words."""
    return f"only {(coat.walk - moment.minute) / 60:.1f} h later"


def is_laying(plan, area, minute):
    """The coat that is being laid on an area at this minute."""
    for c in plan.coats_of(area):
        strips = plan.strips_of(c)
        if not strips:
            continue
        ends = [s.wipe.end if s.wipe else s.lay.end for s in strips]
        if min(s.wet_from() for s in strips) <= minute < max(ends):
            return c
    return None


@rule
def nobody_stands_on_wet_boards(plan):
    """Nobody works or waits on a coat that may not be stepped on, but on boards which the coat in hand has not reached."""
    where = Whereabouts(plan)
    for name, pieces in plan.works.items():
        for p in pieces:
            place = where.place(name, p.start)
            if place not in plan.areas:
                continue
            coat = walkable_at(plan.coats_of(place), p.start, False) or walkable_at(plan.coats_of(place), p.end - 1, False)
            if coat is None:
                continue
            if is_laying(plan, place, p.start) is coat:
                if plan.strips_of(coat)[0].outline and not dry_strips(plan, coat, p.end - 1):
                    yield f"{name} is on {place} during {p}, and no board of it is dry any more"
                continue
            mine = p.area == place and p.task in NEXT_COAT_TASKS and (p.coat or 0) > coat.coat
            dry = p.start >= coat.recoat_from and (mine or next_coat_comes(plan, place, coat, p.start, p.date))
            if not dry:
                yield f"{name} stands on {coat}, laid {coat.when()}, during {p}"


def dry_strips(plan, coat, minute):
    """The strips of a coat that are not laid at a minute; who lays one stands on it and goes backwards."""
    return [s for s in plan.strips_of(coat) if s.lay.end > minute]


def reaches_way(plan, area, strips, here):
    """Can one go over these strips from one of them to a way out of the area?"""
    return any(geometry.distance(w.at, s.outline) <= STRIDE for s in plan.connected(strips, [here])
               for w in area.ways)


@rule
def nobody_is_trapped_behind_a_strip(plan):
    """While a strip is laid or wiped from the boards, dry boards lead from there to the way out."""
    for coat in plan.coats:
        area = plan.areas.get(coat.area)
        if area is None or not area.ways:
            continue
        for s in plan.strips_of(coat):
            for task, stroke in s.strokes():
                if stroke.place != "boards" or not s.outline:
                    continue
                if task == "wipe":
                    continue  # those who wipe choose where they stand: see wiped from a dry side
                if not reaches_way(plan, area, dry_strips(plan, coat, stroke.start), s):
                    who = " and ".join(stroke.people)
                    yield f"{s}: wet boards lie between {who} and the way out at {clock(stroke.first.clock)} ({task})"


@rule
def nobody_is_trapped_on_an_area(plan):
    """From every area where somebody is, dry areas lead to the ground at every minute, also when he leaves it."""
    where = Whereabouts(plan)
    told = set()
    for name, pieces in plan.works.items():
        for p in pieces:
            for minute in (p.start, p.end - 1):
                place = where.place(name, minute)
                if place in plan.areas and (place, p.date) not in told and not leads_out(plan, place, minute, p.date):
                    told.add((place, p.date))
                    yield f"{name} cannot leave {place} at {clock(p.first.clock + minute - p.start)} during {p}"


def leads_out(plan, place, minute, date):
    """Is there a way to the ground over areas that may be stepped on, or over their boards not laid yet?"""
    seen, todo = {(place, None)}, [(place, None)]
    while todo:
        here, came_from = todo.pop()
        for w in plan.areas[here].ways:
            if came_from is None:
                if not may_step_off(plan, here, minute, w):
                    continue
            elif not may_pass(plan, here, minute, date, came_from, w.to):
                continue
            if w.to == GROUND:
                return True
            if w.to in plan.areas and (w.to, here) not in seen:
                seen.add((w.to, here))
                todo.append((w.to, here))
    return False


def may_step_off(plan, area, minute, way):
    """Somebody is on an area: can he step off here, though it is being laid?"""
    coat = is_laying(plan, area, minute)
    dry = dry_strips(plan, coat, minute) if coat else []
    return not dry or any(not s.outline or geometry.distance(way.at, s.outline) <= STRIDE for s in dry)


def may_pass(plan, area, minute, date, came_from, to):
    """May one go over an area at this minute, from one place to another?"""
    coat = walkable_at(plan.coats_of(area), minute, False)
    if coat is None or (minute >= coat.recoat_from and next_coat_comes(plan, area, coat, minute, date)):
        return True
    return leads_over_dry_strips(plan, coat, minute, came_from, to)
