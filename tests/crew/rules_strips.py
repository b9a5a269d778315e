"""Rules about strips: wet edges, cutting in, wiping, the way out."""

import collections
import math

import geometry
from plan_reading import clock
from rules import rule
from underfoot import WHOLE, Floor

LEAN = 0.2  # m that somebody leans out further, common practice
CLOCK = 5  # minutes: the plan's clock goes in steps of five, so no age under that can be told
CONTACT = 0.3  # m that two strips share before their edge counts
LATE = 2  # times the product's wait: what is not wiped by then stays sticky, common practice


def by_coat(plan):
    return [(c, sorted(plan.strips_of(c), key=lambda s: s.lay.start)) for c in plan.coats]


def runs(strips):
    """Strips that are laid wet to wet: a run ends where the next strip begins at a joint between boards instead."""
    found = []
    for s in sorted(strips, key=lambda s: s.lay.start):
        run = next((r for r in found if s.meets is not None and any(t.n == s.meets and t.date == s.date for t in r)), None)
        if run is None:
            found.append([s])
        else:
            run.append(s)
    return found


@rule
def strips_belong_to_coats(plan):
    """Each strip belongs to a coat, each coat has strips, and the coat begins and ends with them."""
    known = {(c.area, c.coat, c.part) for c in plan.coats}
    for s in plan.strips:
        if (s.area, s.coat, s.part) not in known:
            yield f"{s} belongs to no coat"
    for c, strips in by_coat(plan):
        if not strips:
            yield f"{c} has no strips"
            continue
        first, last = min(s.wet_from() for s in strips), max(s.lay.end for s in strips)
        if (first, last) != (c.start, c.end):
            yield f"{c} is said to go on {c.when()}, its strips from {first - c.start:+} min to {last - c.end:+} min of that"


@rule
def strips_are_numbered(plan):
    """Strips are numbered from 1 through the day, in the order in which they are laid."""
    days = collections.defaultdict(list)
    for s in plan.strips:
        days[s.date].append(s)
    for date, strips in days.items():
        if sorted(s.n for s in strips) != list(range(1, len(strips) + 1)):
            yield f"strips of {date} are not numbered 1 to {len(strips)}"
        strips.sort(key=lambda s: s.n)
        for a, b in zip(strips, strips[1:]):
            if b.lay.start < a.lay.start:
                yield f"{b} is laid before {a}"


@rule
def strips_have_their_work(plan):
    """Cutting in, laying and wiping of a strip stand in the work of the people who do it, at the same minutes."""
    pieces = collections.defaultdict(list)
    for p in plan.pieces:
        for n in p.strips:
            pieces[(p.date, n, p.task)].append(p)
    for s in plan.strips:
        for task, stroke in s.strokes():
            found = pieces.get((s.date, s.n, task), [])
            told = {(p.start, p.end, name) for p in found for name in p.people}
            wanted = {(stroke.start, stroke.end, name) for name in stroke.people}
            if not stroke.people:
                yield f"{s}: nobody does the {task}"
            if told != wanted:
                yield f"{s}: the {task} {stroke.when()} by {', '.join(stroke.people)} is not what their day says"


@rule
def strips_cover_the_area(plan):
    """The strips of a coat cover the whole area once, and nothing beside it."""
    for area in plan.areas.values():
        if not area.outline:
            continue
        want = geometry.size(area.outline) - sum(geometry.size(h) for h in area.holes)
        for number in sorted({c.coat for c in plan.coats_of(area.name)}):
            strips = [s for s in plan.strips if s.area == area.name and s.coat == number]
            laid = sum(geometry.size(s.outline) for s in strips)
            most = geometry.size(area.outline)  # an outline of a strip may run over a hole
            if laid < want * 0.98 - 0.05 or laid > most * 1.02 + 0.05:
                yield f"coat {number} on {area.name}: strips of {laid:.1f} m2 for {want:.1f} m2 of boards"
            for s in strips:
                if any(geometry.distance(p, area.outline) > geometry.TOUCHING for p in s.outline):
                    yield f"{s} reaches beyond {area.name}"


@rule
def strips_take_boards_once(plan):
    """Boards of a coat are counted from 1 without a gap, each in one strip."""
    for area in plan.areas:
        for number in sorted({c.coat for c in plan.coats_of(area)}):
            spans = sorted(s.boards for s in plan.strips if s.area == area and s.coat == number and s.boards)
            boards = plan.areas[area].boards
            if spans and spans[0][0] != 1:
                yield f"coat {number} on {area} does not begin with board 1"
            if spans and boards and spans[-1][1] != boards["count"]:
                yield f"coat {number} on {area} ends with board {spans[-1][1]} of {boards['count']}"
            for a, b in zip(spans, spans[1:]):
                if b[0] != a[1] + 1:
                    yield f"coat {number} on {area}: after board {a[1]} comes board {b[0]}"


@rule
def strips_lie_on_their_boards(plan):
    """The outline of a strip is where its boards are."""
    for s in plan.strips:
        area = plan.areas.get(s.area)
        if area is None or not (s.outline and s.boards and area.boards) or area.kind != "deck":
            continue
        across = 1 if area.boards["along_x"] else 0
        edge = min(p[across] for p in area.outline)
        pitch = area.boards["pitch_m"]
        first, last = min(p[across] for p in s.outline) - edge, max(p[across] for p in s.outline) - edge
        if first < (s.boards[0] - 1) * pitch - pitch / 2 or last > s.boards[1] * pitch + pitch / 2:
            yield f"{s} is drawn from {first:.2f} to {last:.2f} m across, its boards {s.boards[0]} to {s.boards[1]} are not there"


def neighbours(strips):
    """Pairs of strips whose edges touch, earlier first."""
    for i, a in enumerate(strips):
        for b in strips[i + 1:]:
            if a.outline and b.outline:
                if geometry.between(a.outline, b.outline) <= geometry.TOUCHING and geometry.contact(a.outline, b.outline) > CONTACT:
                    yield a, b
            elif a.boards and b.boards and (a.boards[1] + 1 == b.boards[0] or b.boards[1] + 1 == a.boards[0]):
                yield a, b


@rule
def wet_edges_are_met(plan):
    """No edge is older than the open time when the next strip reaches it, but at a joint that the plan names."""
    for run in (r for c in plan.coats for r in runs(plan.strips_of(c))):
        for a, b in neighbours(run):
            age = max(b.lay.start - a.lay.start, b.lay.end - a.lay.end)
            if age > max(CLOCK, min(a.open, b.open)) and not (b.too_long and a.too_long):
                yield f"{b} meets the edge of strip {a.n} when it is {age} min old; it stays open {min(a.open, b.open)} min"


@rule
def a_strip_fits_its_open_time(plan):
    """A strip that takes longer than the open time says so."""
    for s in plan.strips:
        if s.open > plan.rules["open_minutes"]:
            yield f"{s}: open for {s.open} min, the product only {plan.rules['open_minutes']}"


@rule
def cut_in_meets_the_coat(plan):
    """What is cut in is laid over while it is open, and cut in before."""
    for s in plan.strips:
        if s.cut_in is None:
            continue
        if s.cut_in.start > s.lay.start:
            yield f"{s} is cut in after it is laid"
        age = max(s.lay.start - s.cut_in.start, s.lay.end - s.cut_in.end)
        if age > max(s.open, CLOCK) and not s.too_long:
            yield f"{s}: what is cut in is {age} min old when the coat reaches it; it stays open {s.open} min"


@rule
def cut_in_one_strip_ahead(plan):
    """Nobody cuts in further ahead than the strip that is laid next."""
    for c, strips in by_coat(plan):
        for before, a, b in zip(strips, strips[1:], strips[2:]):
            if b.cut_in and b.cut_in.start < before.lay.start:
                yield f"{b} is cut in before strip {before.n} is begun, two strips ahead"


@rule
def wiped_in_time(plan):
    """Wiping begins when the product has soaked in, and before what is left has become sticky."""
    wait, latest = plan.rules["wipe_after_minutes"], plan.rules["wipe_by_minutes"]
    if latest > LATE * wait:
        yield f"the plan lets what is left stand for {latest} min before it is wiped; by {LATE * wait} it is sticky"
    for s in plan.strips:
        if wait == 0 or s.wipe is None:
            if wait and s.wipe is None:
                yield f"{s} is never wiped"
            continue
        if s.wipe.place == "strip":
            if s.wipe.start != s.lay.end:
                yield f"{s} is wiped {s.wipe.start - s.lay.end} min after the last stroke from its own wet boards"
            continue
        if s.wipe.start < s.lay.start + wait or s.wipe.end < s.lay.end + wait:
            yield f"{s} is wiped {s.wipe.start - s.lay.end} min after the last stroke; it has to soak in for {wait}"
        if s.wipe.start > s.lay.end + latest:
            yield f"{s} is wiped {s.wipe.start - s.lay.end} min after the last stroke; by then it is sticky"


def standing_edges(plan, s, stroke):
    """Where somebody can stand to reach a strip: segments to reach from."""
    area = plan.areas[s.area]
    if stroke.place == "ground":
        return area.wiped_from
    if stroke.place == "boards":
        floor = Floor(plan, stroke.end - 1, stroke.date)
        dry = floor.grown(s.area, [t for w in area.ways for t in floor.beside(s.area, w.to)])
        return [e for t in dry if t is not WHOLE for e in geometry.edges(t.outline)]
    other = plan.areas.get(stroke.place)
    return geometry.edges(other.outline) if other and other.outline else []


@rule
def wiped_from_a_dry_side(plan):
    """Whoever wipes stands on the ground, on boards not yet laid or on a dry area, and reaches every board of the strip."""
    for s in plan.strips:
        if s.wipe is None or not s.outline:
            continue
        if s.wipe.place != "strip":
            yield from out_of_reach(plan, s, "wiped", s.wipe)
        elif reach_of(plan, s, plan.areas[s.area].wiped_from) <= plan.rules["reach_m"]:
            yield f"{s} is wiped as it is laid, though it could be wiped from the ground"


@rule
def laid_within_reach(plan):
    """What is cut in or laid from outside the area is within reach of the pole."""
    for s in plan.strips:
        for word, stroke in (("cut in", s.cut_in), ("laid", s.lay)):
            if stroke is not None and stroke.place != "boards" and s.outline:
                yield from out_of_reach(plan, s, word, stroke)


def reach_of(plan, s, edges):
    """How far the boards of a strip lie from some segments, in m."""
    places = [p for p in geometry.grid(s.outline, 0.5) if not any(geometry.is_inside(p, h) for h in plan.areas[s.area].holes)]
    return max(min((geometry.to_segment(p, *e) for e in edges), default=math.inf) for p in places)


def out_of_reach(plan, s, word, stroke):
    """Says how far a strip reaches from where somebody stands, if that is too far."""
    reach, edges = plan.rules["reach_m"], standing_edges(plan, s, stroke)
    if not edges:
        yield f"{s} is {word} from {stroke.place}, where nobody can stand then"
        return
    far = reach_of(plan, s, edges)
    if far > reach + LEAN:
        yield f"{s} is {word} from {stroke.place}: {far:.1f} m to its far boards, the pole reaches {reach} m"


@rule
def coat_in_one_go(plan):
    """A coat of a part is begun and ended on one day, and nobody who lays it rests while its edge is wet."""
    for c, strips in by_coat(plan):
        if len({s.date for s in strips}) > 1:
            yield f"{c} is laid on more than one day: {c.when()}"
        for run in runs(strips):
            yield from rests_in(plan, c, run)


def rests_in(plan, c, run):
    """The breaks for which a run of strips stops and goes on after them."""
    layers = {name for s in run for name in s.lay.people}
    pauses = [(a.lay.end, b.lay.start) for a, b in zip(run, run[1:])]
    for p in plan.pieces:
        if p.task == "rest" and layers & set(p.people) and any(start <= p.start and p.end <= end for start, end in pauses):
            yield f"{c} stops for the break at {clock(p.first.clock)} and goes on after it"


@rule
def parts_meet_at_joints(plan):
    """An area too large for a day is divided along a board joint: parts are counted from 1, each of boards side by side."""
    for area in plan.areas.values():
        for number in sorted({c.coat for c in plan.coats_of(area.name)}):
            parts = [c for c in plan.coats_of(area.name) if c.coat == number]
            if len(parts) > 1 and sorted(c.part or 0 for c in parts) != list(range(1, len(parts) + 1)):
                yield f"parts of coat {number} on {area.name} are not counted 1 to {len(parts)}"
            if len(parts) == 1 and parts[0].part is not None:
                yield f"coat {number} on {area.name} has a part and is laid in one"
            for c in parts:
                spans = sorted(s.boards for s in plan.strips_of(c) if s.boards)
                if any(b[0] != a[1] + 1 for a, b in zip(spans, spans[1:])):
                    yield f"{c} is not one piece of the area: its boards are {spans}"


@rule
def strips_pour_something(plan):
    """Each strip has litres; strips of one coat and area take alike per square metre."""
    for c, strips in by_coat(plan):
        rates = [s.litres / geometry.size(s.outline) for s in strips if s.outline and geometry.size(s.outline) > 0.5]
        if any(s.litres <= 0 for s in strips):
            yield f"{c} has a strip without litres"
        elif rates and max(rates) > 2 * min(rates) + 0.02:
            yield f"{c}: one strip takes {max(rates):.3f} L/m2, another {min(rates):.3f}"
