"""Rules about when a coat is laid and dries, and what has to be done before it."""

import datetime

import geometry
from plan_reading import SANDING, SOILING, clock, minute_of
from rules import rule

ORDER = ["clear", "wash", "fix", "sand", "edges", "vacuum", "mask", "between-coats", "blow", "cut-in", "coat", "wipe"]
ANY_ORDER = ({"sand", "edges"}, {"wash", "fix"})  # screws are reset on wet boards as well as on dry ones: common practice
DRY_WORK = ("sand", "edges", "vacuum", "mask", "between-coats")
NEEDS_DRY = DRY_WORK + ("blow", "cut-in", "coat")
LEAST_DRYING = 24 * 60  # trade practice from memory: wood dries 24 to 48 h after washing
NOON = 12 * 60
HOUR = 60
FORTNIGHT = 14  # days, common practice: who waits longer for the crew calls another
QUARTER = 15


def first_of_same(pieces):
    return min(pieces, key=lambda p: p.start, default=None)


@rule
def laid_in_fit_hours(plan):
    """Every stroke of cutting in and laying lies in hours fit for a coat, unless the plan says that none is fit."""
    hours = {}
    for h in plan.hours:
        hours.setdefault(h.area, {})[h.start // 60] = h
    for s in plan.strips:
        miss = plan.misses.get((s.area, s.coat))
        if miss and miss["unfit"]:
            continue
        for minute in range(s.wet_from() // 60, (s.lay.end - 1) // 60 + 1):
            h = hours.get(s.area, {}).get(minute)
            if h is None:
                yield f"{s}: nothing is known about the hour it is laid in"
            elif not h.fit:
                yield f"{s} is laid in an hour that is not fit: {', '.join(h.reasons)}"
                break


@rule
def coats_follow_each_other(plan):
    """Coats of an area are counted 1, 2, … in time, and each lies on the one before over its whole area."""
    for area in plan.areas:
        coats = plan.coats_of(area)
        numbers = sorted({c.coat for c in coats})
        if numbers and numbers != list(range(1, len(numbers) + 1)):
            yield f"{area} gets the coats {numbers}"
        for c in coats:
            for before in coats:
                if before.coat < c.coat and before.part == c.part and before.end > c.start:
                    yield f"{c} begins before {before} is laid"


@rule
def recoat_window_is_kept(plan):
    """The next coat waits until the last one may be coated, and comes before it needs sanding, or a pass is billed."""
    for c in plan.coats:
        for before in plan.coats_of(c.area):
            if before.coat != c.coat - 1 or (before.part != c.part and before.part and c.part):
                continue
            if c.start < before.recoat_from:
                yield f"{c} at {c.when()} lies {(before.recoat_from - c.start) / 60:.1f} h before the coat below may be coated"
            if c.start > before.recoat_until:
                if plan.extra_passes.get((c.area, c.coat)) != "late":
                    yield f"{c} comes {(c.start - before.recoat_until) / 60:.1f} h after the longest wait, and no sanding is billed"
                elif not any(p.task == "between-coats" and p.area == c.area and before.end <= p.start <= c.start
                             for p in plan.pieces):
                    yield f"{c}: the sanding between coats is billed and not planned"


@rule
def drying_has_one_clock(plan):
    """Touch dry, recoat and walk wait at least as the data sheet says, slowed by one and the same weather."""
    for c in plan.coats:
        limits = (("touch dry", c.touch_dry, "touch_dry_h"), ("recoat", c.recoat_from, "recoat_min_h"),
                  ("walk", c.walk, "walk_h"))
        for name, at, key in limits:
            hours = plan.rules[key]
            if at - c.end < hours * 60 - QUARTER:
                yield f"{c} is {name} after {(at - c.end) / 60:.1f} h; the data sheet says {hours}"
            dried = dried_between(plan.dries, c.end, at)
            if dried is None:
                yield f"{c}: the plan does not say how it dries until {name}"
            elif dried < hours - 0.5:
                yield f"{c} is {name} when it has dried for only {dried:.1f} h of the data sheet's {hours}"
            elif dried > hours + 1.5 and at - c.end > hours * 60 + 90:
                yield f"{c} waits for {name} until it has dried for {dried:.1f} h; the data sheet asks {hours}"
        if c.recoat_until - c.end > plan.rules["recoat_max_h"] * 60:
            yield f"{c} may be coated later than the data sheet's longest wait"
        marks = sorted((plan.rules[key], at) for _, at, key in limits)
        if [m[1] for m in marks] != sorted(m[1] for m in marks):
            yield f"{c}: touch dry, recoat and walk do not come in the data sheet's order"


def dried_between(dries, start, end):
    """Hours of the data sheet between two minutes; None where the plan does not tell."""
    total = 0.0
    for hour in range(start // 60, (end - 1) // 60 + 1):
        if hour not in dries:
            return None
        total += dries[hour] * (min(end, hour * 60 + 60) - max(start, hour * 60)) / 60
    return total


@rule
def no_dust_beside_wet_coats(plan):
    """Nothing throws dust or water while a coat of the job is being laid or is not touch dry."""
    for p in plan.pieces:
        if p.task not in SOILING:
            continue
        for c in plan.coats:
            if p.overlaps(c.start, c.touch_dry):
                hours = (c.touch_dry - p.start) / 60
                yield f"{p} throws dust or water on {c}, laid {c.when()} and not touch dry before {hours:.1f} h later"
                break


@rule
def boards_are_not_bare_for_long(plan):
    """The first coat follows the last sanding within the days the product allows, or a light pass is billed and done."""
    allowed = plan.rules["coat_within_days"]
    for c in plan.coats:
        if c.coat != 1:
            continue
        sanded = [p for p in plan.pieces if p.area == c.area and p.end <= c.start and (p.part == c.part or not p.part)
                  and p.task in SANDING + ("between-coats",)]
        if not sanded:
            continue
        last = max(sanded, key=lambda p: p.end)
        days = (c.date - last.date).days
        if days > allowed:
            yield f"{c.area} is bare for {days} days before {c}; the coat should come within {allowed}"
        done = max((p.date for p in sanded if p.task in SANDING), default=None)
        if done and (c.date - done).days > allowed and plan.extra_passes.get((c.area, 1)) != "bare":
            yield f"{c.area}: sanded {(c.date - done).days} days before {c}, and no further pass is billed"


@rule
def tape_stands_briefly(plan):
    """Taping is done on the coat's day or on the afternoon of the working day before."""
    for p in plan.pieces:
        if p.task != "mask":
            continue
        coats = [c for c in plan.coats_of(p.area) if c.end > p.start and (p.part is None or p.part == c.part)]
        c = first_of_same(coats)
        if c is None:
            yield f"{p}: no coat follows"
        elif c.start < p.end:
            yield f"{p}: the coat begins before the tape is on"
        elif c.date != p.date:
            between = [d for d in plan.days.values() if p.date < d.date < c.date]
            if p.first.clock + p.end - p.start <= NOON or between:
                yield f"{p}: the tape stands for {(c.date - p.date).days} days before {c}"


@rule
def boards_are_blown_before_a_coat(plan):
    """Before each coat its boards are cleared of dust on the same day."""
    if not any(p.task == "blow" for p in plan.pieces):
        return
    for c in plan.coats:
        if not any(p.task == "blow" and p.area == c.area and p.date == c.date and p.end <= c.start
                   and (p.part is None or p.part == c.part) for p in plan.pieces):
            yield f"{c}: its boards are not cleared of dust that morning"


@rule
def tasks_follow_each_other(plan):
    """On each area washing and fixing come first, then sanding from coarse to fine, the edges, the dust, the tape."""
    for area in plan.areas:
        done = [p for p in plan.pieces if p.area == area and p.task in ORDER[:7]]
        for a in done:
            for b in done:
                if a.part and b.part and a.part != b.part:
                    continue
                early, late = ORDER.index(a.task), ORDER.index(b.task)
                if early < late and a.end > b.start and {a.task, b.task} not in ANY_ORDER:
                    yield f"{a} is not done when {b.task} begins at {clock(b.first.clock)} on {b.date}"
                elif a.task == b.task and (a.grit or 0) < (b.grit or 0) and a.end > b.start:
                    yield f"{a} with grit {a.grit} is not done when grit {b.grit} begins on {b.date}"
        coats = plan.coats_of(area)
        for p in done:
            for c in coats:
                if c.start < p.end and (not p.part or not c.part or p.part == c.part) and p.task not in ("mask",):
                    yield f"{p} comes after {c} has begun"
                    break


@rule
def washed_boards_dry(plan):
    """Nothing that needs dry boards is done until they have dried after the wash."""
    for w in (p for p in plan.pieces if p.task == "wash"):
        told = [b for b in plan.boards_dry if b["area"] == w.area and minute_of(b["washed"]) >= w.end]
        if not told:
            yield f"{w.area} is washed, and the plan does not say when it is dry"
            continue
        dry = min(minute_of(b["dry"]) for b in told)
        if dry < w.end + LEAST_DRYING:
            yield f"{w.area} is said to be dry {(dry - w.end) / 60:.0f} h after its wash"
        for p in plan.pieces:
            same = p.area == w.area and (not p.part or not w.part or p.part == w.part)
            if same and w.end <= p.start < dry and p.task in NEEDS_DRY:
                yield f"{p} comes {(p.start - w.end) / 60:.0f} h after the wash, on boards that are wet for {(dry - w.end) / 60:.0f} h"
                break


@rule
def dry_work_keeps_out_of_the_rain(plan):
    """Nobody sands, vacuums or tapes in an hour in which it rains on the boards."""
    by_the_clock = {area for (area, _), miss in plan.misses.items() if miss["unfit"]}
    wet = {(h.area, h.start // 60) for h in plan.hours if "rain" in h.reasons}
    for p in plan.pieces:
        hours = range(p.start // 60, (p.end - 1) // 60 + 1)
        if p.area in by_the_clock:
            continue
        if p.task in DRY_WORK and any((p.area, hour) in wet for hour in hours):
            yield f"{p}: it rains on the boards then"


@rule
def top_down(plan):
    """Over comes before under: on every day the coats keep the order of the areas, and that order goes down."""
    areas = list(plan.areas.values())
    for c in plan.coats:
        for d in plan.coats:
            if c.date == d.date and c.coat == d.coat and plan.areas[c.area].order < plan.areas[d.area].order and c.start > d.start:
                yield f"{c} is laid after {d}, which lies under it or before it"
    for a in areas:
        for b in areas:
            is_shut_in = {w.to for w in b.ways} == {a.name}  # it has to come first
            higher = a.height > b.height + 0.05 and a.outline and b.outline and b.kind != "stairs" and not is_shut_in
            if higher and a.order > b.order and geometry.between(a.outline, b.outline) <= geometry.TOUCHING:
                yield f"{b.name} is coated before {a.name}, which lies {a.height - b.height:.2f} m higher beside it"
            if a.kind in ("rail", "screen") and b.kind in ("deck", "stairs", "measured") and a.order > b.order:
                yield f"{b.name} is coated before {a.name}, which drips on it"


@rule
def behind_before_in_front(plan):
    """A deck that leads out is coated after what lies behind it."""
    for a in plan.areas.values():
        outs = {w.to for w in a.ways}
        if len(outs) == 1 and "ground" not in outs:
            front = plan.areas.get(next(iter(outs)))
            if front and front.order < a.order and any(c.area == front.name for c in plan.coats) and plan.coats_of(a.name):
                yield f"{front.name} comes before {a.name}, which can be left only over it"


@rule
def last_times_hold(plan):
    """No coat begins after the day's last start; no stroke comes after its last stroke, which leaves time to wipe."""
    wait = plan.rules["wipe_after_minutes"]
    for day in plan.site_days():
        strips = [s for s in plan.strips if s.date == day.date]
        if not strips:
            if day.last_start or day.last_stroke:
                yield f"{day} has a last start and no coat"
            continue
        if day.last_start is None or day.last_stroke is None:
            yield f"{day} has a coat and says not when it must begin and end"
            continue
        first, last = min(s.wet_from() for s in strips), max(s.lay.end for s in strips)
        end = day.home - day.home_clock + plan.crew_until
        if first > day.last_start:
            yield f"{day}: the first stroke comes after the last start"
        if last > day.last_stroke:
            yield f"{day}: strokes are planned after the last stroke"
        last_strip = max(strips, key=lambda s: s.lay.end)
        tail = 0 if last_strip.wipe and last_strip.wipe.place == "strip" else wait
        if day.last_stroke + tail > end:
            yield f"{day}: the last stroke leaves no time to wipe before the end of the hours"
        if day.last_start > day.last_stroke:
            yield f"{day}: the last start comes after the last stroke"


@rule
def tools_do_not_clash(plan):
    """Nobody sands, vacuums or blows on an area while it is washed."""
    for w in (p for p in plan.pieces if p.task == "wash"):
        for p in plan.pieces:
            if p is not w and p.area == w.area and p.task in SOILING and p.task != "wash" and p.overlaps(w.start, w.end):
                yield f"{p}: an electric tool on boards that are washed at the same time"


@rule
def the_site_is_not_left_for_weeks(plan):
    """Nobody leaves a site for over a fortnight while the mornings between would do for a part of the next coat."""
    days = sorted(plan.site_days(), key=lambda d: d.date)
    for before, after in zip(days, days[1:]):
        if (after.date - before.date).days <= FORTNIGHT:
            continue
        next_coat = min((c.date for c in plan.coats if c.date >= after.date), default=None)
        for area in sorted({c.area for c in plan.coats if c.date == next_coat}):
            fit = [d for d in plan.days.values() if before.date < d.date < after.date and not d.off and fit_hours(plan, area, d)]
            if len(fit) > 1:
                yield f"nobody comes from {before} to {after}, though {len(fit)} days between hold hours fit for {area}"


def fit_hours(plan, area, day):
    """Whole hours of a day's work that are fit for a coat, with one left for setting up and packing down."""
    return [h for h in plan.hours if h.area == area and h.fit and h.at.date == day.date
            and plan.crew_from <= h.at.clock <= plan.crew_until - 2 * HOUR]


@rule
def days_are_complete(plan):
    """Days follow each other without a gap, and each hour of them is judged for every area that is coated."""
    dates = sorted(d.date for d in plan.days.values())
    for a, b in zip(dates, dates[1:]):
        if b - a != datetime.timedelta(days=1):
            yield f"the plan leaps from {a} to {b}"
    for p in plan.pieces:
        if str(p.date) not in plan.days:
            yield f"{p} lies on no day of the plan"
