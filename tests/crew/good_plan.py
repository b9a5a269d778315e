"""A plan written by hand that a crew can keep: a porch behind a deck, a rail, two people, four days in June.

    good_plan.py > plan.json
"""

import json

ZONE = "+01:00"
ANN, BEN = "Ann", "Ben"
DAY = {"mon": "2027-06-14", "tue": "2027-06-15", "wed": "2027-06-16", "thu": "2027-06-17", "fri": "2027-06-18",
       "sat": "2027-06-19"}


def at(day, clock):
    return f"{DAY[day]}T{clock}:00{ZONE}"


def task(day, start, end, name, people, area=None, coat=None, n=None, grit=None):
    t = {"task": name, "area": area, "coat": coat, "part": None, "start": at(day, start), "end": at(day, end),
         "people": people}
    if n:
        t["strips"] = [n, n]
    if grit:
        t["grit"] = grit
    return t


def walk(day, clock, person, came_from, to, over=()):
    return {"person": person, "start": at(day, clock), "from": came_from, "to": to, "over": list(over)}


def box(x0, y0, x1, y1):
    return [[x0, y0], [x1, y0], [x1, y1], [x0, y1]]


def areas():
    boards = {"pitch_m": 0.14, "along_x": True}
    sides = [{"from": [0, 0], "to": [0, 1.4]}, {"from": [6, 0], "to": [6, 1.4]}]
    front = [{"from": [0, 1.4], "to": [0, 4.2]}, {"from": [6, 1.4], "to": [6, 4.2]}, {"from": [0, 4.2], "to": [6, 4.2]}]
    return [
        {"name": "Porch", "outline": box(0, 0, 6, 1.4), "holes": [], "height_m": 0.5, "kind": "deck", "order": 2,
         "ways": [{"to": "Deck", "at": [3, 1.4]}], "wiped_from": sides, "boards": {"count": 10, **boards}},
        {"name": "Deck", "outline": box(0, 1.4, 6, 4.2), "holes": [], "height_m": 0.3, "kind": "deck", "order": 3,
         "ways": [{"to": "ground", "at": [3, 4.2]}, {"to": "Porch", "at": [3, 1.4]}], "wiped_from": front,
         "boards": {"count": 20, **boards}},
        {"name": "Rail", "outline": [], "holes": [], "height_m": 0.5, "kind": "rail", "order": 1, "ways": [],
         "wiped_from": [], "boards": None},
    ]


def coat_day(day, number):
    """One strip of the rail from the ground, two of the porch, four of the deck; each ten minutes, wiped from outside."""
    pieces = [task(day, "08:00", "08:30", "set-up", [ANN, BEN]),
              task(day, "08:30", "08:35", "blow", [ANN], "Porch", number),
              task(day, "08:35", "08:40", "blow", [ANN], "Rail", number),
              task(day, "08:30", "08:40", "blow", [BEN], "Deck", number),
              task(day, "08:40", "08:50", "wait", [ANN])]
    walks = [walk(day, "08:30", ANN, "ground", "Porch", ["Deck"]), walk(day, "08:30", BEN, "ground", "Deck"),
             walk(day, "08:35", ANN, "Porch", "ground", ["Deck"]), walk(day, "08:40", BEN, "Deck", "ground")]
    strips = [strip(day, number, 1, "Rail", None, "08:40", "08:55", None, None, "10:00", ANN)]
    pieces += [task(day, "08:40", "08:55", "coat", [BEN], "Rail", number, 1),
               task(day, "10:00", "10:10", "wipe", [ANN], "Rail", number, 1)]
    walks += [walk(day, "08:50", ANN, "ground", "Porch", ["Deck"]), walk(day, "09:00", BEN, "ground", "Porch", ["Deck"])]
    pieces.append(task(day, "08:55", "09:00", "wait", [BEN]))
    times = ["08:50", "09:00", "09:10", "09:20", "09:30", "09:40", "09:50", "10:00"]
    wipes = ["10:10", "10:20", "10:30", "10:40", "10:50", "11:00", "11:10"]
    for i in range(6):
        area, first = ("Porch", 5 * i + 1) if i < 2 else ("Deck", 5 * i - 9)
        n = i + 2
        strips.append(strip(day, number, n, area, first, times[i + 1], times[i + 2], times[i], times[i + 1], wipes[i], ANN))
        pieces += [task(day, times[i], times[i + 1], "cut-in", [ANN], area, number, n),
                   task(day, times[i + 1], times[i + 2], "coat", [BEN], area, number, n),
                   task(day, wipes[i], wipes[i + 1], "wipe", [ANN], area, number, n)]
    walks += [walk(day, "09:10", ANN, "Porch", "Deck"), walk(day, "09:20", BEN, "Porch", "Deck"),
              walk(day, "09:50", ANN, "Deck", "ground"), walk(day, "10:00", BEN, "Deck", "ground")]
    pieces += [task(day, "09:50", "10:00", "wait", [ANN]), task(day, "10:00", "11:10", "wait", [BEN]),
               task(day, "11:10", "11:40", "pack-down", [ANN, BEN])]
    if number == 2:  # rags are cleared while the other wipes
        pieces = [p for p in pieces if not (p["task"] == "wait" and p["start"] == at(day, "10:00"))]
        pieces += [task(day, "10:00", "10:30", "rags", [BEN]), task(day, "10:30", "11:10", "wait", [BEN])]
    return pieces, walks, strips


def stroke(day, start, end, person, place):
    return {"start": at(day, start), "end": at(day, end), "people": [person], "from": place}


def strip(day, coat, n, area, first, lay, laid, cut, cut_end, wipe, wiper):
    top = {"Porch": 0.0, "Deck": 1.4}.get(area)
    outline = [] if first is None else box(0, round(top + (first - 1) * 0.14, 3), 6, round(top + (first + 4) * 0.14, 3))
    hour, minute = wipe.split(":")
    wiped = f"{int(hour) + (int(minute) + 10) // 60:02}:{(int(minute) + 10) % 60:02}"
    return {"n": n, "date": DAY[day], "area": area, "coat": coat, "part": None, "outline": outline,
            "boards": first and [first, first + 4], "litres": 0.5, "open_minutes": 20, "too_long": False,
            "meets": None if first in (None, 1) else n - 1,
            "cut_in": cut and stroke(day, cut, cut_end, ANN, "boards"),
            "lay": stroke(day, lay, laid, BEN, "ground" if first is None else "boards"),
            "wipe": stroke(day, wipe, wiped, wiper, "ground")}


def later(day, clock, hours):
    """A time some hours later, on the days of this plan."""
    days = list(DAY)
    minute = int(clock[:2]) * 60 + int(clock[3:]) + hours * 60
    return at(days[days.index(day) + minute // 1440], f"{minute // 60 % 24:02}:{minute % 60:02}")


def coats(day, number):
    spans = [("Rail", "08:40", "08:55"), ("Porch", "08:50", "09:20"), ("Deck", "09:10", "10:00")]
    until = {"thu": "2027-06-20T", "fri": "2027-06-21T"}[day]
    return [{"area": area, "coat": number, "part": None, "start": at(day, start), "end": at(day, end),
             "touch_dry": later(day, end, 6), "recoat_from": later(day, end, 12), "recoat_until": f"{until}{end}:00{ZONE}",
             "walk": later(day, end, 24)} for area, start, end in spans]


def preparation():
    """Monday's wash from far to near, Wednesday's fixing, sanding and taping."""
    pieces = [task("mon", "08:00", "08:30", "set-up", [ANN, BEN]), task("mon", "08:30", "09:00", "clear", [ANN, BEN]),
              task("mon", "09:00", "09:30", "wash", [ANN], "Porch"), task("mon", "09:00", "09:15", "wash", [BEN], "Rail"),
              task("mon", "09:15", "09:30", "wait", [BEN]), task("mon", "09:30", "10:00", "wash", [ANN, BEN], "Deck"),
              task("mon", "10:00", "10:30", "pack-down", [ANN, BEN]),
              task("wed", "08:00", "08:30", "set-up", [ANN, BEN]),
              task("wed", "08:30", "09:30", "fix", [ANN], "Porch"), task("wed", "08:30", "09:30", "fix", [BEN], "Deck"),
              task("wed", "09:30", "10:30", "sand", [ANN], "Porch", grit=60),
              task("wed", "09:30", "10:30", "sand", [BEN], "Deck", grit=60),
              task("wed", "10:30", "11:30", "sand", [ANN], "Porch", grit=80),
              task("wed", "10:30", "11:30", "sand", [BEN], "Deck", grit=80),
              task("wed", "11:30", "12:00", "rest", [ANN, BEN]),
              task("wed", "12:00", "13:00", "edges", [ANN], "Porch", grit=80),
              task("wed", "12:00", "13:00", "edges", [BEN], "Deck", grit=80),
              task("wed", "13:00", "13:15", "vacuum", [ANN], "Porch"), task("wed", "13:00", "13:15", "vacuum", [BEN], "Deck"),
              task("wed", "13:15", "13:30", "mask", [ANN], "Porch"), task("wed", "13:15", "13:30", "mask", [BEN], "Deck"),
              task("wed", "13:30", "13:45", "mask", [BEN], "Rail"), task("wed", "13:30", "13:45", "wait", [ANN]),
              task("wed", "13:45", "14:15", "pack-down", [ANN, BEN])]
    walks = [walk("mon", "09:00", ANN, "ground", "Porch", ["Deck"]), walk("mon", "09:30", ANN, "Porch", "Deck"),
             walk("mon", "09:30", BEN, "ground", "Deck"), walk("mon", "10:00", ANN, "Deck", "ground"),
             walk("mon", "10:00", BEN, "Deck", "ground"),
             walk("wed", "08:30", ANN, "ground", "Porch", ["Deck"]), walk("wed", "08:30", BEN, "ground", "Deck"),
             walk("wed", "11:30", ANN, "Porch", "ground", ["Deck"]), walk("wed", "11:30", BEN, "Deck", "ground"),
             walk("wed", "12:00", ANN, "ground", "Porch", ["Deck"]), walk("wed", "12:00", BEN, "ground", "Deck"),
             walk("wed", "13:30", ANN, "Porch", "ground", ["Deck"]), walk("wed", "13:30", BEN, "Deck", "ground")]
    return pieces, walks


def day(name, arrive=None, home=None, coats_=False, off=False):
    return {"date": DAY[name], "sunrise": at(name, "04:45"), "sunset": at(name, "21:25"),
            "people": [ANN, BEN] if arrive else [],
            "arrive": arrive and at(name, arrive), "home": home and at(name, home),
            "last_start": at(name, "12:00") if coats_ else None, "last_stroke": at(name, "13:40") if coats_ else None,
            "holiday": None, "off": off, "tighter_minutes": 0}


def work(pieces):
    """The estimate that these pieces fulfil to the minute."""
    total = {}
    for p in pieces:
        if p["task"] in ("set-up", "pack-down", "rest", "wait"):
            continue
        key = (p["task"], p["area"], p["coat"], p.get("grit"))
        minutes = (int(p["end"][11:13]) - int(p["start"][11:13])) * 60 + int(p["end"][14:16]) - int(p["start"][14:16])
        total[key] = total.get(key, 0) + minutes * len(p["people"])
    return [{"task": t, "area": a, "coat": c, **({"grit": g} if g else {}), "person_minutes": m}
            for (t, a, c, g), m in total.items()]


def hours():
    every = []
    for name in list(DAY)[:5]:
        for hour in range(24):
            for area in ("Porch", "Deck", "Rail"):
                fit = 7 <= hour < 18
                every.append({"at": at(name, f"{hour:02}:00"), "area": area, "fit": fit, "reasons": [] if fit else ["dark"],
                              "source": "normals", "air_c": 20, "rh_pct": 60, "cloud_pct": 50, "wind_ms": 2, "rain_mm": 0,
                              "dew_point_c": 12, "emc_pct": 11, "surface_c": 22, "sun_elevation_deg": 30})
    return every


def good_plan():
    pieces, walks = preparation()
    strips = []
    for name, number in (("thu", 1), ("fri", 2)):
        more = coat_day(name, number)
        pieces, walks, strips = pieces + more[0], walks + more[1], strips + more[2]
    minutes = 2 * (150 + 375 + 220 + 220)
    return {
        "ref": "GOOD-1", "weather": {"forecast": None, "usual": "invented"}, "currency": "GBP", "people": [ANN, BEN],
        "crew": {"from": "08:00", "until": "16:30", "break_minutes": 30},
        "rules": {"open_minutes": 20, "wipe_after_minutes": 60, "wipe_by_minutes": 120, "reach_m": 3, "coat_within_days": 3,
                  "touch_dry_h": 6, "recoat_min_h": 12, "recoat_max_h": 72, "walk_h": 24, "least_piece_minutes": 15},
        "areas": areas(),
        "days": [day("mon", "08:00", "10:30"), day("tue"), day("wed", "08:00", "14:15"),
                 day("thu", "08:00", "11:40", True), day("fri", "08:00", "11:40", True)],
        "tasks": pieces, "coats": coats("thu", 1) + coats("fri", 2), "strips": strips, "walks": walks,
        "cost": {"site_days": 4, "person_minutes": minutes, "visits": 180.0, "paid_hours": round(minutes / 60 * 24, 2),
                 "extra_passes": 0, "total": round(180 + minutes / 60 * 24, 2), "per_visit": 45, "per_person_hour": 24},
        "runners_up": [{"first_coat": DAY["fri"], "finished": "2027-06-22T10:00:00+01:00", "cost": 1001, "reason": "one visit more"}],
        "extra_passes": [], "holidays": [], "assumed": [], "misses": [], "hours": hours(), "work": work(pieces),
        "drying": [{"at": at(name, f"{h:02}:00"), "dries": 1} for name in ("thu", "fri", "sat") for h in range(24)],
        "boards_dry": [{"area": a, "washed": at("mon", "09:30" if a != "Deck" else "10:00"), "dry": at("wed", "08:30")}
                       for a in ("Porch", "Deck", "Rail")],
    }


if __name__ == "__main__":
    print(json.dumps(good_plan(), indent=1))
