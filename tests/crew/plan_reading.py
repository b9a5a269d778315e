"""What 'plan --json' says, as things to walk through. Minutes count from 1970 in UTC, so that a changed clock does no harm."""

import datetime

import geometry

GROUND = "ground"
SOILING = ("wash", "sand", "edges", "vacuum", "between-coats", "blow")  # throw dust or water: content/tasks.yaml
LAYING = ("cut-in", "coat", "wipe")
SANDING = ("sand", "edges")
IDLE = ("rest", "wait")


class Moment:
    """A time of the plan: minute in UTC, and the clock on site."""

    def __init__(self, text):
        local = datetime.datetime.fromisoformat(text)
        self.minute = int(local.timestamp()) // 60
        self.date = local.date()
        self.clock = local.hour * 60 + local.minute


def minute_of(text):
    return None if text is None else Moment(text).minute


def clock_of(text):
    return int(text[:2]) * 60 + int(text[3:5])


def points_of(outline):
    return [tuple(p) for p in outline]


class Span:
    """Two minutes and who is there between them."""

    def __init__(self, start, end, people=()):
        self.first = Moment(start)
        self.start, self.end, self.people = self.first.minute, Moment(end).minute, list(people)
        self.date = self.first.date

    def overlaps(self, start, end):
        return self.start < end and start < self.end

    def when(self):
        until = clock(self.first.clock + self.end - self.start)
        return f"{self.date:%a} {self.date.day} {self.date:%b} {clock(self.first.clock)}–{until}"


def clock(minutes):
    return f"{minutes // 60 % 24:02}:{minutes % 60:02}"


class Piece(Span):
    """One unbroken piece of work."""

    def __init__(self, t):
        super().__init__(t["start"], t["end"], t["people"])
        self.task, self.area, self.coat, self.part = t["task"], t["area"], t["coat"], t["part"]
        self.grit = t.get("grit")
        first, last = t.get("strips", (1, 0))
        self.strips = range(first, last + 1)

    def __str__(self):
        what = self.task + (f" coat {self.coat}" if self.coat else "") + (f" on {self.area}" if self.area else "")
        return f"{self.when()} {what}" + (f", strip {self.strips[0]} to {self.strips[-1]}" if self.strips else "")


class Stroke(Span):
    """Cutting in, laying or wiping one strip; 'place' is where they stand."""

    def __init__(self, s):
        super().__init__(s["start"], s["end"], s["people"])
        self.place = s["from"]


class Strip:
    def __init__(self, s):
        self.n, self.area, self.coat, self.part = s["n"], s["area"], s["coat"], s["part"]
        self.date = datetime.date.fromisoformat(s["date"])
        self.outline, self.boards, self.litres = points_of(s["outline"]), s["boards"], s["litres"]
        self.open, self.too_long, self.meets = s["open_minutes"], s["too_long"], s["meets"]
        self.cut_in = s["cut_in"] and Stroke(s["cut_in"])
        self.lay = Stroke(s["lay"])
        self.wipe = s["wipe"] and Stroke(s["wipe"])
        self.left = self.wipe.end if self.wipe and self.wipe.place == "strip" else self.lay.end  # by those who laid it

    def key(self):
        return self.area, self.coat, self.part

    def strokes(self):
        return [(name, stroke) for name, stroke in (("cut-in", self.cut_in), ("coat", self.lay), ("wipe", self.wipe))
                if stroke]

    def wet_from(self):
        return min(self.lay.start, self.cut_in.start if self.cut_in else self.lay.start)

    def __str__(self):
        return f"strip {self.n} of {self.date:%a} {self.date.day} {self.date:%b} on {self.area}, coat {self.coat}"


class Coat(Span):
    def __init__(self, c):
        super().__init__(c["start"], c["end"])
        self.area, self.coat, self.part = c["area"], c["coat"], c["part"]
        self.touch_dry, self.recoat_from = minute_of(c["touch_dry"]), minute_of(c["recoat_from"])
        self.recoat_until, self.walk = minute_of(c["recoat_until"]), minute_of(c["walk"])

    def key(self):
        return self.area, self.coat, self.part

    def __str__(self):
        return f"coat {self.coat} on {self.area}" + (f", part {self.part}" if self.part else "")


class Way:
    def __init__(self, w):
        self.to, self.at = w["to"], tuple(w["at"])


class Area:
    def __init__(self, a):
        self.name, self.outline, self.height, self.order = a["name"], points_of(a["outline"]), a["height_m"], a["order"]
        self.holes = [points_of(h) for h in a["holes"]]
        self.ways = [Way(w) for w in a["ways"]]
        self.wiped_from = [(tuple(e["from"]), tuple(e["to"])) for e in a["wiped_from"]]
        self.kind, self.boards = a["kind"], a["boards"]


class Walk:
    def __init__(self, w):
        self.person, self.at = w["person"], Moment(w["start"])
        self.start, self.came_from, self.to, self.over = self.at.minute, w["from"], w["to"], w["over"]

    def __str__(self):
        return f"{self.person} at {clock(self.at.clock)} on {self.at.date} from {self.came_from} to {self.to}"


class Day:
    def __init__(self, d):
        self.date, self.people = datetime.date.fromisoformat(d["date"]), d["people"]
        self.arrive, self.home = minute_of(d["arrive"]), minute_of(d["home"])
        self.arrive_clock = Moment(d["arrive"]).clock if d["arrive"] else None
        self.home_clock = self.arrive_clock + self.home - self.arrive if d["arrive"] and d["home"] else None
        self.last_start, self.last_stroke = minute_of(d["last_start"]), minute_of(d["last_stroke"])
        self.holiday, self.off, self.tighter = d["holiday"], d["off"], d["tighter_minutes"]

    def __str__(self):
        return f"{self.date:%a} {self.date.day} {self.date:%b}"


class Hour:
    def __init__(self, h):
        self.at = Moment(h["at"])
        self.start, self.area, self.fit, self.reasons = self.at.minute, h["area"], h["fit"], h["reasons"]


class Plan:
    """The plan of one job."""

    def __init__(self, data):
        self.data = data
        self.people, self.rules, self.cost = data["people"], data["rules"], data["cost"]
        self.crew_from, self.crew_until = clock_of(data["crew"]["from"]), clock_of(data["crew"]["until"])
        self.break_minutes = data["crew"]["break_minutes"]
        self.areas = {a["name"]: Area(a) for a in data["areas"]}
        self.days = {d["date"]: Day(d) for d in data["days"]}
        self.pieces = [Piece(t) for t in data["tasks"]]
        self.coats = [Coat(c) for c in data["coats"]]
        self.strips = [Strip(s) for s in data["strips"]]
        self.walks = [Walk(w) for w in data["walks"]]
        self.hours = [Hour(h) for h in data["hours"]]
        self.extra_passes = {(x["area"], x["coat"]): x["why"] for x in data["extra_passes"]}
        self.misses = {(m["area"], m["coat"]): m for m in data["misses"]}
        self.dries = {minute_of(d["at"]) // 60: d["dries"] for d in data["drying"]}
        self.boards_dry = data["boards_dry"]
        self.work = data["work"]
        self.works = {name: [p for p in self.pieces if name in p.people] for name in self.people}

        self.steps = {}  # which strip leads to which place, as underfoot has found it
        self._coats, self._strips, self._on, self._beside = {}, {}, {}, {}
        self._coat_of = {c.key(): c for c in self.coats}
        for c in self.coats:
            self._coats.setdefault(c.area, []).append(c)
        for strip in self.strips:
            self._strips.setdefault(strip.key(), []).append(strip)
            self._on.setdefault(strip.area, []).append(strip)

    def site_days(self):
        return [d for d in self.days.values() if d.arrive is not None]

    def day(self, date):
        return self.days.get(str(date))

    def coats_of(self, area):
        return self._coats.get(area, [])

    def coat_of(self, strip):
        """The coat that a strip is laid with; None: the plan has no such coat."""
        return self._coat_of.get(strip.key())

    def strips_of(self, coat):
        return self._strips.get(coat.key(), [])

    def strips_on(self, area):
        """The strips of all coats of an area."""
        return self._on.get(area, [])

    def beside(self, strip):
        """The strips of any coat of the area that touch a strip."""
        if strip not in self._beside:
            self._beside[strip] = [t for t in self.strips_on(strip.area) if t is not strip and t.outline and strip.outline
                                   and geometry.between(strip.outline, t.outline) <= geometry.TOUCHING]
        return self._beside[strip]
