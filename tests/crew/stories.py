"""Jobs told in words, each with what a foreman would expect of its calendar, written before any plan was seen."""

import datetime
import random

import random_jobs
import random_weather
from random_sites import deck, place, rectangle, sides, stairs

MONDAY = datetime.date(2027, 6, 14)
FINE = random_weather.Day(11, 20, 80, 60, 2)
WET = random_weather.Day(9, 13, 97, 100, 3, 0, 24, 0.8)
HOT = random_weather.Day(22, 37, 55, 0, 1)
OUTFIT = {"boards": {"width": "138 mm", "gap": "5 mm", "thickness": "32 mm", "face": "smooth", "wetted": "top"},
          "timber": "kwila", "state": "weathered"}


def weather(start, *days):
    """A forecast of these days, hour by hour."""
    lines = [random_weather.HEADER]
    for number, day in enumerate(days):
        for hour in range(24):
            air, damp, cloud, wind, rain = day.row(hour)
            date = start + datetime.timedelta(days=number)
            lines.append(f"{date}T{hour:02}:00,{air:.1f},{damp:.0f},{cloud:.0f},{wind:.1f},{rain:.1f}")
    return "\n".join(lines) + "\n"


def board_deck(name, width, depth, at=(0, 0), height=0.0, **more):
    return deck(random.Random(name), name, rectangle(width, depth), at, OUTFIT, height, **more)


def job(areas, work, start=MONDAY, forecast=None, place_=random_jobs.PLACES[5], **more):
    region, state, zone, latitude, longitude, _ = place_
    content = {"ref": "STORY-1", "quoted": start - datetime.timedelta(days=20), "valid_days": 14,
               "customer": {"name": "Some Body"},
               "site": {"region": region, "timezone": zone, "latitude": latitude, "longitude": longitude}, "start": start,
               "firm": str(random_jobs.FIRM), "product": "tern-oil", "colour": "clear",
               "areas": areas, "work": work, "crew": {"people": 2, "hours": "07:30-16:00", "breaks": "45 min"}}
    if state:
        content["site"]["state"] = state
    if "sand" in work:
        content["sanding"] = [60, 80]
    for area in areas:
        area.setdefault("coats", 1)
    content.update(more)
    return random_jobs.Job(content, forecast)


def visits(plan):
    return [str(d.date) for d in plan.site_days()]


def starts(plan, area, coat=1):
    return min(c.start for c in plan.coats if (c.area, c.coat) == (area, coat))


def one_deck_one_day():
    """A small oiled deck, one coat, fine weather: the crew comes once and is home before the afternoon."""
    made = job([board_deck("Deck", 4, 3)], ["oil"], forecast=weather(MONDAY, *[FINE] * 6))

    def expect(plan):
        yield len(visits(plan)) == 1, f"it comes on {visits(plan)}"
        yield all(d.home_clock - d.arrive_clock <= 5 * 60 for d in plan.site_days()), "it stays for over five hours"
    return made, expect


def rain_in_the_middle():
    """Two coats, rain on every second day: two visits, both dry, the second within the recoat window."""
    made = job([board_deck("Deck", 5, 4, coats=2)], ["oil"], forecast=weather(MONDAY, WET, FINE, WET, FINE, FINE, FINE, FINE, FINE))

    def expect(plan):
        yield len(visits(plan)) == 2, f"it comes on {visits(plan)}"
        yield not {"2027-06-14", "2027-06-16"} & set(visits(plan)), "it comes in the rain"
        yield not plan.extra_passes, "it sands between the coats"
    return made, expect


def two_decks_one_behind_the_other():
    """The deck behind comes before the deck one leaves by, and both fit into one visit."""
    made = job([board_deck("Front", 4, 3, (0, 3)), board_deck("Back", 4, 3, height=0.4, way_out=place(2, 3),
                                                                edges=sides(north="wall", east="wall", west="wall"))],
               ["oil"], forecast=weather(MONDAY, *[FINE] * 6))

    def expect(plan):
        yield starts(plan, "Back") < starts(plan, "Front"), "the front deck is laid first"
        yield len(visits(plan)) == 1, f"it comes on {visits(plan)}"
    return made, expect


def porch_above_the_garden_deck():
    """From the top down: the porch, the stairs below it, the garden deck last."""
    o = dict(OUTFIT)
    areas = [board_deck("Garden deck", 5, 3, (0, 3.6)),
             board_deck("Porch", 5, 3, height=0.7, way_out=place(2.5, 3)),
             {**stairs(random.Random(1), "Stairs", (2, 3), o, 0.7), "shape":
              {"stairs": {"steps": 2, "width": "1 m", "going": "300 mm", "rise": "175 mm"}}}]
    made = job(areas, ["oil"], forecast=weather(MONDAY, *[FINE] * 6))

    def expect(plan):
        yield starts(plan, "Porch") < starts(plan, "Stairs"), "the stairs come before the porch"
        yield starts(plan, "Porch") < starts(plan, "Garden deck"), "the garden deck comes before the porch"
    return made, expect


def jetty_over_the_water():
    """The jetty is left over the boardwalk: it comes first, and nobody is told to stand in the water."""
    made = job([board_deck("Boardwalk", 12, 2, height=0.4), board_deck("Jetty", 2, 8, (5, 2), 0.8, way_out=place(1, 0),
                                                                          edges=sides(east="water", west="water", south="water"))],
               ["oil"], forecast=weather(MONDAY, *[FINE] * 6))

    def expect(plan):
        yield starts(plan, "Jetty") < starts(plan, "Boardwalk"), "the boardwalk is laid first"
        from_water = [s for s in plan.strips if s.area == "Jetty" for _, stroke in s.strokes() if stroke.place == "ground"]
        yield not from_water, "somebody stands in the water"
    return made, expect


def a_large_deck_with_two_people():
    """185 m2 that drink 8 and 12 m2 a litre take 23.1 and 15.4 litres (common practice), whatever the strips and parts."""
    made = job([board_deck("Deck", 18.5, 10, coats=2, rates=["8 m2/L", "12 m2/L"])], ["oil"], loss="0 %",
               forecast=weather(MONDAY, *[FINE] * 12))

    def expect(plan):
        for coat, litres in ((1, 185 / 8), (2, 185 / 12)):
            poured = sum(s.litres for s in plan.strips if s.coat == coat)
            yield abs(poured - litres) < 0.06 * len(plan.strips), f"coat {coat} pours {poured:.1f} L instead of {litres:.1f}"
    return made, expect


def friday_afternoon():
    """A job that may begin on a Friday and takes two coats: no sanding because of the weekend, no coat on it."""
    friday = datetime.date(2027, 6, 18)
    made = job([board_deck("Deck", 6, 5, coats=2)], ["oil"], friday, weather(friday, *[FINE] * 10))

    def expect(plan):
        yield len(visits(plan)) == 2 and not plan.extra_passes, f"it comes on {visits(plan)}, sands {plan.extra_passes}"
        yield not {"2027-06-19", "2027-06-20"} & set(visits(plan)), "it comes at the weekend"
    return made, expect


def christmas():
    """Full work from 21 December in New Zealand: nobody comes on 25 or 28 December, 1, 4 January or a weekend."""
    start = datetime.date(2026, 12, 21)
    made = job([board_deck("Deck", 8, 5, coats=2)], ["wash", "fix", "sand", "oil"], start, weather(start, *[FINE] * 16),
               random_jobs.PLACES[0])

    def expect(plan):
        closed = {"2026-12-25", "2026-12-26", "2026-12-28", "2027-01-01", "2027-01-04"}
        yield not closed & set(visits(plan)), f"it comes on {visits(plan)}"
    return made, expect


def clocks_change():
    """Two coats around the night of 4 April 2027, when New Zealand's clocks go back: hours of work stay by the clock."""
    start = datetime.date(2027, 4, 2)
    crew = {"people": 2, "hours": "07:30-16:00", "breaks": "45 min", "days": ["fri", "sat", "sun", "mon", "tue"]}
    made = job([board_deck("Deck", 6, 5, coats=2)], ["oil"], start, None, random_jobs.PLACES[1], crew=crew)

    def expect(plan):
        yield all(d.arrive_clock >= 450 and d.home_clock <= 960 for d in plan.site_days()), "hours of work move with the clock"
        yield len(plan.coats) >= 2, "a coat is missing"
    return made, expect


def too_hot_at_noon():
    """Clear days of 37 C: what is oiled is oiled in the morning, or the plan says that it cannot be done."""
    made = job([board_deck("Deck", 6, 4)], ["oil"], datetime.date(2027, 8, 2), weather(datetime.date(2027, 8, 2), *[HOT] * 14),
               random_jobs.PLACES[7])

    def expect(plan):
        hot = [s for s in plan.strips if s.lay.first.clock >= 11 * 60 and s.lay.first.clock < 17 * 60]
        yield not hot or any(m["unfit"] for m in plan.misses.values()) or visits(plan)[0] > "2027-08-15", "it oils hot boards"
    return made, expect


def film_stain_in_autumn():
    """Days of 5 to 12 C: the second coat waits longer than the data sheet's 16 hours at 20 C."""
    start = datetime.date(2027, 10, 4)
    cool = random_weather.Day(8.5, 12, 70, 60, 2)
    made = job([board_deck("Deck", 5, 4, coats=2)], ["oil"], start, weather(start, *[cool] * 14), product="dunlin-stain")

    def expect(plan):
        for c in plan.coats:
            yield c.recoat_from - c.end > 16 * 60 * 1.5, f"{c} may be coated again {(c.recoat_from - c.end) / 60:.0f} h later"
    return made, expect


def a_forecast_that_fits_no_day():
    """Three weeks of rain: the coat waits for better days or is named as a miss, and nobody oils wet boards in silence."""
    made = job([board_deck("Deck", 5, 4)], ["oil"], forecast=weather(MONDAY, *[WET] * 21))

    def expect(plan):
        for c in plan.coats:
            miss = plan.misses.get((c.area, c.coat))
            yield str(c.date) > "2027-07-04" or bool(miss and miss["unfit"]), f"{c} is laid in the rain on {c.date}"
    return made, expect


def damp_mornings():
    """A small deck in the shade, sanded and coated, on days that are too damp for a coat till noon: sanded and coated on one visit."""
    damp = random_weather.Day(10, 21, 99, 60, 2)
    made = job([board_deck("Deck", 4, 3, sun="never")], ["sand", "oil"], forecast=weather(MONDAY, *[damp] * 10), product="plover-wb")

    def expect(plan):
        yield len(visits(plan)) == 1, f"it comes on {visits(plan)}"
        yield all(s.lay.first.clock >= 11 * 60 for s in plan.strips), "it coats in the damp"
    return made, expect


STORIES = [one_deck_one_day, rain_in_the_middle, two_decks_one_behind_the_other, porch_above_the_garden_deck,
           jetty_over_the_water, a_large_deck_with_two_people, friday_afternoon, christmas, clocks_change, too_hot_at_noon,
           film_stain_in_autumn, a_forecast_that_fits_no_day, damp_mornings]


def story(number, _seed=1):
    """The job of a story, as random_jobs makes them."""
    return STORIES[number - 1]()[0]


def unmet(number, plan):
    """What the plan does otherwise than the story expects, as (rule, sentence)."""
    tell = STORIES[number - 1]
    return [(tell.__name__, f"{tell.__doc__} But {but}.") for holds, but in tell()[1](plan) if not holds]
