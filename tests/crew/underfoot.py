"""What is under people's feet: which boards of an area may be stepped on at a minute, and where one gets over them."""

import geometry
from plan_reading import GROUND

STRIDE = 0.6  # m from a strip to the way, common practice: one step
ROOM = 0.25  # m across, for somebody who waits or wipes from boards: two feet side by side, common practice
STEP_UP = 0.2  # m between decks that one steps over anywhere along their edge, common practice: a stair's rise
WHOLE = "whole"  # stands for all boards of an area on which no coat has begun


def covers(strip, other):
    """Do two strips of one area lie on the same boards? Where boards are not counted, strips of one number and part do."""
    if strip.boards and other.boards:
        return strip.boards[0] <= other.boards[1] and other.boards[0] <= strip.boards[1]
    return strip.part == other.part


def below(plan, strip):
    """The strips of the coat before that lie under a strip."""
    return [s for s in plan.strips_on(strip.area) if s.coat == strip.coat - 1 and covers(s, strip)]


def is_uppermost(plan, strip, minute):
    """Is this strip what lies on its boards at a minute, or on some of them: begun, or boards without any coat yet?"""
    if not strip.boards:  # nobody can tell which boards are laid: those of the coat in hand
        return strip.coat == max(s.coat for s in plan.strips_on(strip.area) if s.wet_from() <= minute)
    if strip.wet_from() > minute:
        return strip.coat == 1
    later = [s for s in plan.strips_on(strip.area) if s.coat > strip.coat and s.wet_from() <= minute and covers(s, strip)]
    if not later:
        return True
    covered = {b for s in later if s.boards for b in range(s.boards[0], s.boards[1] + 1)}
    return not covered >= set(range(strip.boards[0], strip.boards[1] + 1))


def wet_coat(plan, strip, minute, for_next_coat):
    """The coat that forbids stepping on the boards of a strip; None: they are dry enough, or not reached yet."""
    if strip.left > minute:
        laid, free_from = below(plan, strip), "recoat_from"
    else:
        laid, free_from = [strip], "recoat_from" if for_next_coat else "walk"
    for s in laid:
        c = plan.coat_of(s)
        if c is not None and s.wet_from() <= minute < getattr(c, free_from):
            return c
    return None


def next_coat_today(plan, strip, minute, date):
    """The coat after this strip's comes later on the same day."""
    return any(s.coat > strip.coat and s.date == date and s.left > minute and covers(s, strip)
               for s in plan.strips_on(strip.area))


def free_boards(plan, area, minute, date):
    """The strips of an area that may be stepped on; [WHOLE] where no coat has begun."""
    strips = plan.strips_on(area)
    if all(s.wet_from() > minute for s in strips):
        return [WHOLE]
    return [s for s in strips if is_uppermost(plan, s, minute)
            and wet_coat(plan, s, minute, next_coat_today(plan, s, minute, date)) is None]


def lies_at(strip, point):
    return strip is WHOLE or not strip.outline or geometry.distance(point, strip.outline) <= STRIDE


def leads_to(plan, strip, area, other):
    """Can one step from a strip of an area to another place: at a way between them, or where level decks lie side by side?"""
    key = (strip, area, other)
    if key not in plan.steps:
        plan.steps[key] = any(lies_at(strip, p) for p in steps_between(plan, area, other)) or \
            lie_level_beside(strip, plan.areas[area], plan.areas.get(other))
    return plan.steps[key]


def lie_level_beside(strip, area, other):
    return bool(strip is not WHOLE and strip.outline and other and other.outline
                and abs(area.height - other.height) <= STEP_UP
                and geometry.between(strip.outline, other.outline) <= geometry.TOUCHING)


def steps_between(plan, area, other):
    """The points where one steps from an area to another place, as either of the two names them."""
    points = [w.at for w in plan.areas[area].ways if w.to == other]
    if other in plan.areas:
        points += [w.at for w in plan.areas[other].ways if w.to == area]
    return points


def breadth(strips):
    """The shorter side of the box around some strips in m; None where their shape is not known."""
    points = [p for s in strips if s is not WHOLE for p in s.outline]
    if not points or WHOLE in strips:
        return None
    return min(max(p[axis] for p in points) - min(p[axis] for p in points) for axis in (0, 1))


class Floor:
    """All boards that may be stepped on at one minute."""

    def __init__(self, plan, minute, date):
        self.plan, self.minute, self.date = plan, minute, date
        self.known, self.ways_out = {}, {}

    def free(self, area):
        if area not in self.known:
            self.known[area] = free_boards(self.plan, area, self.minute, self.date)
        return self.known[area]

    def grown(self, area, starts):
        """The free boards of an area that one can walk to from some of them without leaving it."""
        free = set(self.free(area))
        if free == {WHOLE}:
            return free
        seen, todo = set(starts), list(starts)
        while todo:
            here = todo.pop()
            for t in free if here is WHOLE or not here.outline else self.plan.beside(here):
                if t in free and t not in seen:
                    seen.add(t)
                    todo.append(t)
        return seen

    def beside(self, area, other):
        """The free boards of an area from which one steps to another place."""
        return [s for s in self.free(area) if leads_to(self.plan, s, area, other)]

    def leads_across(self, area, came_from, to):
        """Does a dry way lead over an area from one place to another?"""
        reached = self.grown(area, self.beside(area, came_from))
        return any(leads_to(self.plan, s, area, to) for s in reached)

    def leads_out(self, area, starts):
        """Do dry boards lead from some boards of an area to the ground, over other areas too?"""
        key = (area, frozenset(starts))
        if key not in self.ways_out:
            self.ways_out[key] = self.search_ground(area, starts)
        return self.ways_out[key]

    def search_ground(self, area, starts):
        reached = {area: self.grown(area, starts)}
        todo = [area]
        while todo:
            here = todo.pop()
            ways = {w.to for w in self.plan.areas[here].ways}
            if not ways and reached[here]:
                return True  # an area without a place on the plan
            for to in ways:
                if not any(leads_to(self.plan, s, here, to) for s in reached[here]):
                    continue
                if to == GROUND:
                    return True
                before = reached.get(to, set())
                now = before | self.grown(to, self.beside(to, here))
                if now != before:
                    reached[to] = now
                    todo.append(to)
        return False
