"""Jobs made up by chance: random but sensible, the same for the same number on every machine.

    random_jobs.py FOLDER FIRST LAST [any|ordinary|small]   writes them to look at
"""

import datetime
import pathlib
import random
import sys

import yaml

import job_checks
import random_sites
import random_weather

ROOT = pathlib.Path(__file__).resolve().parents[2]
FIRM = pathlib.Path(__file__).resolve().parent / "firm"
PLACES = [  # region, state, timezone, latitude, longitude, months in season
    ("nz", "OTA", "Pacific/Auckland", -44.7, 169.1, (10, 11, 12, 1, 2, 3, 4)),
    ("nz", "WKO", "Pacific/Auckland", -37.8, 175.3, (10, 11, 12, 1, 2, 3, 4)),
    ("au", "NSW", "Australia/Sydney", -33.9, 150.9, (9, 10, 11, 3, 4, 5)),
    ("au", "VIC", "Australia/Melbourne", -37.9, 145.2, (10, 11, 12, 2, 3, 4)),
    ("gb", "ENG", "Europe/London", 54.4, -2.9, (4, 5, 6, 7, 8, 9)),
    ("gb", "ENG", "Europe/London", 52.0, -1.0, (4, 5, 6, 7, 8, 9)),
    ("ie", None, "Europe/Dublin", 53.2, -7.0, (5, 6, 7, 8, 9)),
    ("us", "NC", "America/New_York", 35.6, -82.3, (4, 5, 6, 8, 9, 10)),
]
NAMES = ["Ada Fenn", "Bo Marsh", "Cal Thorn", "Dee Holm", "Eli Crag"]
WORK = [["wash", "fix", "sand", "oil"], ["wash", "sand", "oil"], ["sand", "oil"], ["wash", "oil"], ["oil"],
        ["wash", "fix", "oil"]]


class Job:
    """A job file and the forecast beside it, if it has one."""

    def __init__(self, content, forecast=None):
        self.content, self.forecast = content, forecast

    def write(self, folder, name):
        """Writes job and forecast; gives the path of the job."""
        if self.forecast:
            (folder / f"{name}.csv").write_text(self.forecast)
            self.content["weather"] = f"{name}.csv"
        path = folder / f"{name}.yaml"
        path.write_text(yaml.safe_dump(self.content, sort_keys=False, allow_unicode=True))
        return path


def start_in(rng, months):
    year = rng.randint(2026, 2029)
    return datetime.date(year, rng.choice(months), rng.randint(1, 28))


def crew(rng, start, ordinary):
    people = rng.choice([2, 2, 3]) if ordinary else rng.choice([1, 2, 2, 3, 4])
    hours = rng.choice(["07:30-16:00", "08:00-16:30", "07:00-16:30", "08:00-17:00"])
    c = {"people": people, "hours": hours if ordinary else rng.choice([hours, hours, "06:30-15:00", "09:00-13:00"]),
         "breaks": rng.choice(["30 min", "45 min", "60 min"])}
    if rng.random() < (0.7 if ordinary else 0.5):
        c["names"] = NAMES[:people]
        c["leader"] = NAMES[0]
    if not ordinary and rng.random() < 0.15:
        c["days"] = rng.choice([["mon", "tue", "wed", "thu"], ["mon", "tue", "wed", "thu", "fri", "sat"], ["sat", "sun"]])
    if rng.random() < 0.2:
        c["off"] = sorted({start + datetime.timedelta(days=rng.randint(1, 10)) for _ in range(rng.randint(1, 3))})
    return c


def job(rng, areas, work, ordinary, small=False):
    region, state, zone, latitude, longitude, season = rng.choice(PLACES)
    months = season if ordinary else range(1, 13)
    start = start_in(rng, months)
    if not ordinary and rng.random() < 0.15:
        start = job_checks.before_a_holiday(rng, (region, state))
    content = {
        "ref": "CREW-1",
        "quoted": start - datetime.timedelta(days=20),
        "valid_days": 14,
        "customer": {"name": "Some Body", "address": ["1 Any Lane"]},
        "site": {"address": ["1 Any Lane"], "region": region, "timezone": zone, "exposure":
                 rng.choice(["open", "open", "sheltered", "coastal"])},
        "start": start,
        "firm": str(FIRM),
        "product": rng.choice(["tern-oil", "tern-oil", "plover-wb", "dunlin-stain"] + ([] if ordinary else ["knot-care"])),
        "colour": "clear",
        "areas": areas,
        "work": work,
        "crew": crew(rng, start, ordinary or small),
        "price": {"discount": "0 %", "deposit": "10 %"},
    }
    if state:
        content["site"]["state"] = state
    if ordinary or rng.random() < 0.9:
        content["site"].update(latitude=latitude, longitude=longitude)
    if "sand" in work:
        content["licensed_for"] = ["treated"]  # else boards that may hold arsenic are refused
        content["sanding"] = rng.choice([[80], [60, 80], [60, 80], [40, 60, 80]])
        for area in areas:
            if area["state"] == "sanded" and rng.random() < 0.5:
                area["state"] = "weathered"
    return content, start


def rng_of(kind, number, seed):
    return random.Random(f"{kind} {number} {seed}")


def any_job(number, seed=1):
    """One to six areas, any work, crew, season and weather."""
    rng = rng_of("any", number, seed)
    content, start = job(rng, random_sites.site(rng), list(rng.choice(WORK)), ordinary=False)
    known = "latitude" in content["site"]
    return Job(content, random_weather.forecast(rng, start, content["site"]["timezone"]) if known and rng.random() < 0.7 else None)


def ordinary_job(number, seed=1):
    """What a small firm does in its season: full work on some decks, in weather as it usually is."""
    rng = rng_of("ordinary", number, seed)
    work = ["wash", "fix", "sand", "oil"] if rng.random() < 0.6 else list(rng.choice(WORK[1:]))
    content, start = job(rng, random_sites.site(rng, ordinary=True), work, ordinary=True)
    kind = rng.choice([None, None, random_weather.settled, random_weather.showery])
    return Job(content, kind and random_weather.forecast(rng, start, content["site"]["timezone"], kind, rng.randint(8, 14)))


def small_job(number, seed=1):
    """At most three areas and little work, so that every calendar can be tried."""
    rng = rng_of("small", number, seed)
    o = random_sites.outfit(rng, ordinary=True)
    count, areas, x = rng.choice([1, 2, 2, 3]), [], 0.0
    for i in range(count):
        w, d = random_sites.half(rng, 2, 5), random_sites.half(rng, 2, 4)
        areas.append(random_sites.deck(rng, f"Deck {i + 1}", random_sites.rectangle(w, d), (x, 0), o))
        x += w + 2
    for area in areas:
        area["coats"] = rng.choice([1, 1, 2])
    content, start = job(rng, areas, list(rng.choice([["oil"], ["sand", "oil"], ["wash", "oil"]])), ordinary=True, small=True)
    kind = rng.choice([None, random_weather.settled, random_weather.showery, random_weather.turning])
    return Job(content, kind and random_weather.forecast(rng, start, content["site"]["timezone"], kind, rng.randint(6, 12)))


def days_after(date, days):
    """A date as text, some days later."""
    return str(datetime.date.fromisoformat(date) + datetime.timedelta(days=days))


MAKERS = {"any": any_job, "ordinary": ordinary_job, "small": small_job}


def main():
    folder, first, last = pathlib.Path(sys.argv[1]), int(sys.argv[2]), int(sys.argv[3])
    kind = sys.argv[4] if len(sys.argv) > 4 else "any"
    folder.mkdir(parents=True, exist_ok=True)
    for number in range(first, last + 1):
        MAKERS[kind](number).write(folder, f"{kind}-{number}")


if __name__ == "__main__":
    main()
