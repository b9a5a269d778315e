"""How to spoil a good plan: finding its parts and moving them."""

from good_plan import DAY, at

SPOILS = []


def spoils(rule):
    """Marks a function that spoils a plan so that a rule has to notice."""
    def mark(change):
        SPOILS.append((rule, change))
        return change
    return mark


def piece(plan, name, area=None, coat=None, n=None, person=None):
    """The first piece of a kind."""
    return next(t for t in plan["tasks"] if t["task"] == name and area in (None, t["area"]) and coat in (None, t["coat"])
                and n in (None, t.get("strips", [None])[0]) and (person is None or person in t["people"]))


def strip(plan, n, day="thu"):
    return next(s for s in plan["strips"] if s["n"] == n and s["date"] == DAY[day])


def coat(plan, area, number=1):
    return next(c for c in plan["coats"] if (c["area"], c["coat"]) == (area, number))


def day(plan, name):
    return next(d for d in plan["days"] if d["date"] == DAY[name])


def walks(plan, name, person, clock):
    return next(w for w in plan["walks"] if w["person"] == person and w["start"] == at(name, clock))


def move(thing, start, end):
    thing["start"], thing["end"] = start, end


def move_stroke(plan, n, what, start, end, name="thu"):
    """Moves cutting in, laying or wiping of a strip together with the piece in the crew's day."""
    kind = {"cut_in": "cut-in", "lay": "coat", "wipe": "wipe"}[what]
    for t in plan["tasks"]:
        if t["task"] == kind and t.get("strips", [None])[0] == n and t["start"] == strip(plan, n, name)[what]["start"]:
            move(t, at(name, start), at(name, end))
    move(strip(plan, n, name)[what], at(name, start), at(name, end))


def area(plan, name):
    return next(a for a in plan["areas"] if a["name"] == name)
