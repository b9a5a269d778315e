"""What somebody who also holds the job file can check: that the plan is one of this job."""

import datetime
import pathlib

import yaml

WEEKDAYS = ["mon", "tue", "wed", "thu", "fri", "sat", "sun"]
CENT = 0.011

# Public holidays on weekdays, by law: NZ Holidays Act 2003, ss 44 to 45A, and Te Kāhui o Matariki Public Holiday Act
# 2022; Public Holidays Act 2010 (NSW); Public Holidays Act 1993 (VIC); Banking and Financial Dealings Act 1971 (GB),
# Schedule 1; Organisation of Working Time Act 1997 (IE), Second Schedule; 5 U.S.C. 6103.
NEW_ZEALAND = ["2026-04-03", "2026-04-06", "2026-04-27", "2026-07-10", "2026-12-25", "2026-12-28", "2027-01-04",
               "2027-02-08", "2027-03-26", "2027-03-29", "2027-04-26", "2027-12-27", "2027-12-28", "2028-01-03",
               "2028-01-04", "2028-02-07"]
HOLIDAYS = {
    ("nz", "OTA"): NEW_ZEALAND + ["2026-03-23", "2027-03-22", "2028-03-20"],
    ("nz", "WKO"): NEW_ZEALAND + ["2026-01-26", "2027-02-01", "2028-01-31"],
    ("au", "NSW"): ["2026-04-03", "2026-04-06", "2026-04-27", "2026-12-25", "2026-12-28", "2027-03-26", "2027-03-29",
                    "2027-12-27", "2027-12-28", "2028-01-03"],
    ("au", "VIC"): ["2026-04-03", "2026-04-06", "2026-11-03", "2026-12-25", "2027-03-26", "2027-03-29", "2027-12-27"],
    ("gb", "ENG"): ["2026-04-03", "2026-04-06", "2026-08-31", "2026-12-25", "2026-12-28", "2027-03-26", "2027-03-29",
                   "2027-05-03", "2027-05-31", "2027-12-27", "2027-12-28", "2028-01-03"],
    ("ie", None): ["2026-04-06", "2026-10-26", "2026-12-25", "2027-02-01", "2027-03-29", "2028-10-30"],
    ("us", "NC"): ["2026-07-03", "2026-11-26", "2026-12-25", "2027-06-18", "2027-07-05", "2027-12-24", "2027-12-31"],
}


def place_of(content):
    return content["site"]["region"], content["site"].get("state")


def faults(content, plan):
    """What in the plan is not of this job, as (rule, sentence)."""
    return [(check.__name__, sentence) for check in (works_on_its_days, lays_its_coats, pays_its_prices)
            for sentence in check(content, plan)]


def works_on_its_days(content, plan):
    """Not before the start, on the crew's weekdays, never on days off or public holidays."""
    crew = content["crew"]
    weekdays = crew.get("days", WEEKDAYS[:5])
    off = {str(d) for d in crew.get("off", [])}
    holidays = [] if crew.get("works_on_holidays") else HOLIDAYS.get(place_of(content), [])
    for day in plan.site_days():
        if day.date < content["start"]:
            yield f"{day} comes before the job's start {content['start']}"
        if WEEKDAYS[day.date.weekday()] not in weekdays:
            yield f"{day} is no working day of this crew"
        if str(day.date) in off:
            yield f"{day} is a day off in the job"
        if str(day.date) in holidays:
            yield f"{day.date} is a public holiday"


def lays_its_coats(content, plan):
    """Each area gets its coats, by people of the crew, within the crew's hours."""
    if "oil" not in content["work"]:
        return
    for area in content["areas"]:
        for number in range(1, area.get("coats", 2) + 1):
            if not any(c.area == area["name"] and c.coat == number for c in plan.coats) and \
                    (area["name"], number) not in plan.misses:
                yield f"{area['name']} does not get its coat {number}"
        if any(c.area == area["name"] and c.coat > area.get("coats", 2) for c in plan.coats):
            yield f"{area['name']} gets more coats than the job asks for"
    if len(plan.people) != content["crew"]["people"]:
        yield f"{len(plan.people)} people are planned, {content['crew']['people']} come"
    hours = content["crew"]["hours"].split("-")
    if [plan.data["crew"]["from"], plan.data["crew"]["until"]] != hours:
        yield f"the plan's hours are {plan.data['crew']}"


def pays_its_prices(content, plan):
    """Visits and hours cost what the firm's file says, open time and reach are those of product and tools."""
    firm = pathlib.Path(content["firm"])
    root = firm.parents[2]
    rates = yaml.safe_load((firm / "firm.yaml").read_text())["rates"][content["site"]["region"]]
    if abs(plan.cost["per_visit"] - rates["travel"]) > CENT:
        yield f"a visit costs {plan.cost['per_visit']}, the firm's travel {rates['travel']}"
    if abs(plan.cost["per_person_hour"] - rates["labour_cost"]) > CENT:
        yield f"an hour costs {plan.cost['per_person_hour']}, the firm's {rates['labour_cost']}"
    product = yaml.safe_load((root / f"content/products/{content['product']}.yaml").read_text())
    times = product["times"]
    told = [plan.rules["touch_dry_h"], plan.rules["recoat_min_h"], plan.rules["recoat_max_h"], plan.rules["walk_h"]]
    sheet = [hours_of(times["touch_dry"]), hours_of(times["recoat"]["min"]), hours_of(times["recoat"]["max"]),
             hours_of(times["walk"])]
    if told != sheet or plan.rules["open_minutes"] != round(hours_of(product["open_time"]) * 60):
        yield f"the plan's waits {told} are not the data sheet's {sheet}"
    if plan.rules["wipe_after_minutes"] != round(hours_of(times.get("wipe_off", "0 min")) * 60):
        yield f"it is wiped after {plan.rules['wipe_after_minutes']} min, the data sheet says {times.get('wipe_off')}"


def hours_of(text):
    value, unit = text.split()
    return float(value) * {"min": 1 / 60, "h": 1, "d": 24}[unit]


def before_a_holiday(rng, place):
    """A start some days before a public holiday."""
    dates = HOLIDAYS[place]
    return datetime.date.fromisoformat(rng.choice(dates)) - datetime.timedelta(days=rng.randint(0, 6))
