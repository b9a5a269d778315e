"""Rules about people and their hours."""

from plan_reading import IDLE, clock
from rules import rule

SIX_HOURS = 6 * 60  # Directive 2003/88/EC (2003), Article 4: a break where the working day is longer than six hours


@rule
def times_on_five_minutes(plan):
    """The crew reads a clock, not a stopwatch: all times are multiples of five minutes."""
    for p in plan.pieces:
        if p.start % 5 or p.end % 5:
            yield f"{p} does not begin and end on five minutes"
    for w in plan.walks:
        if w.start % 5:
            yield f"the walk of {w} is not on five minutes"


@rule
def pieces_have_a_length(plan):
    """A piece ends after it begins, and somebody does it, who is of this crew."""
    for p in plan.pieces:
        if p.end <= p.start:
            yield f"{p} ends before it begins"
        if not p.people:
            yield f"{p} has nobody to do it"
        for name in p.people:
            if name not in plan.people:
                yield f"{p} is given to {name}, who is not of this crew"
        if p.area is not None and p.area not in plan.areas:
            yield f"{p} lies on no area of this job"


@rule
def nobody_does_two_things(plan):
    """At no minute one person has two pieces of work."""
    for name, pieces in plan.works.items():
        pieces = sorted(pieces, key=lambda p: (p.start, p.end))
        for a, b in zip(pieces, pieces[1:]):
            if b.start < a.end:
                yield f"{name} is told to do two things at once: {a}, and {b}"


@rule
def nobody_is_lost(plan):
    """From arrival to home every minute of everyone who comes is told."""
    for day in plan.site_days():
        for name in day.people:
            pieces, at = plan.works.get(name, []), day.arrive
            for p in sorted((p for p in pieces if p.date == day.date), key=lambda p: p.start):
                if p.start > at:
                    yield f"{day}: nobody knows what {name} does for {p.start - at} min before {p}"
                at = max(at, p.end)
            if at < day.home:
                yield f"{day}: {name} has no work for the last {day.home - at} min before home"
            if at > day.home:
                yield f"{day}: {name} still works {at - day.home} min after everyone is home"


@rule
def work_lies_on_site_days(plan):
    """Work is done on days of the plan on which the crew comes, and it never comes for nothing."""
    for p in plan.pieces:
        day = plan.day(p.date)
        if day is None or day.arrive is None:
            yield f"{p}, but nobody is on site that day"
        elif p.start < day.arrive:
            yield f"{p} begins before the crew arrives at {clock(day.arrive_clock)}"
        else:
            for name in sorted(set(p.people) - set(day.people)):
                yield f"{p} is given to {name}, who does not come that day"
    for day in plan.site_days():
        if not day.people or set(day.people) - set(plan.people):
            yield f"{day}: {len(day.people)} people come, not all of them of this crew"
        if len(plan.people) > 1 and len(day.people) == 1:
            yield f"{day}: {day.people[0]} is alone on site"
        if not any(p.date == day.date and p.task not in IDLE + ("set-up", "pack-down") for p in plan.pieces):
            yield f"{day}: the crew comes and has no work"


@rule
def home_within_hours(plan):
    """Nobody comes before the hours of work or is home after them."""
    for day in plan.site_days():
        if day.home is None or day.home <= day.arrive:
            yield f"{day}: the crew comes but does not go home"
            continue
        if day.arrive_clock < plan.crew_from:
            yield f"{day}: on site at {clock(day.arrive_clock)}, before the hours of work"
        if day.home_clock > plan.crew_until:
            yield f"{day}: home at {clock(day.home_clock)}, hours end at {clock(plan.crew_until)}"


@rule
def days_are_set_up_and_packed(plan):
    """A day begins with setting up, everyone packs down, and after the last wipe pads and oily rags are put away."""
    for day in plan.site_days():
        pieces = [p for p in plan.pieces if p.date == day.date]
        if not any(p.task == "set-up" and p.start == day.arrive for p in pieces):
            yield f"{day}: the day does not begin with setting up"
        packing = {name for p in pieces if p.task == "pack-down" for name in p.people}
        for name in sorted(set(day.people) - packing):
            yield f"{day}: {name} does not pack down"
        if not any(p.task in ("pack-down", "rags") and p.end == day.home for p in pieces):
            yield f"{day}: the crew is home the minute it has wiped, with pads to clean and oily rags to put away"


@rule
def breaks_are_kept(plan):
    """Whoever is on site for more than six hours has the break, and works no six hours on end."""
    for day in plan.site_days():
        if day.home is None or day.home - day.arrive <= SIX_HOURS:
            continue
        for name in day.people:
            pieces = plan.works.get(name, [])
            rests = sorted((p for p in pieces if p.date == day.date and p.task == "rest"), key=lambda p: p.start)
            rested = sum(p.end - p.start for p in rests)
            if rested < plan.break_minutes:
                yield f"{day}: {name} rests {rested} min of {plan.break_minutes}"
            at = day.arrive
            for start, end in [(p.start, p.end) for p in rests] + [(day.home, day.home)]:
                if start - at > SIX_HOURS:
                    yield f"{day}: {name} works {(start - at) / 60:.1f} h on end"
                at = end


@rule
def no_work_on_days_off(plan):
    """Nobody is on site on a public holiday or a day off."""
    works_holidays = plan.data.get("crew", {}).get("works_on_holidays", False)
    holidays = {h["date"]: h["name"] for h in plan.data["holidays"]}
    for day in plan.site_days():
        name = day.holiday or holidays.get(str(day.date))
        if name and not works_holidays:
            yield f"{day} is {name}: nobody works"
        if day.off:
            yield f"{day} is a day off: nobody works"


@rule
def pieces_are_worth_starting(plan):
    """No piece of work under a quarter of an hour, unless it finishes its task; what readies boards for a coat is whole each day."""
    least = plan.rules["least_piece_minutes"]
    for p in plan.pieces:
        if p.task in IDLE + ("set-up", "pack-down", "blow", "mask", "between-coats") or p.strips or p.end - p.start >= least:
            continue
        later = [q for q in plan.pieces if q.start >= p.end and
                 (q.task, q.area, q.coat, q.part, q.grit) == (p.task, p.area, p.coat, p.part, p.grit)]
        if later:
            yield f"{p} is only {p.end - p.start} min, and the task goes on at {later[0].when()}"
