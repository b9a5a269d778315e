"""Forecasts made up by chance, as the lines of a file beside the job."""

import datetime
import math
import zoneinfo

HEADER = "time,air_c,rh_pct,cloud_pct,wind_ms,rain_mm"


class Day:
    """What one day of a forecast is like."""

    def __init__(self, coldest, warmest, damp, cloud, wind, rain_from=None, rain_hours=0, rain=0.0):
        self.coldest, self.warmest, self.damp, self.cloud, self.wind = coldest, warmest, damp, cloud, wind
        self.rain_from, self.rain_hours, self.rain = rain_from, rain_hours, rain

    def row(self, hour):
        """Air, humidity, cloud, wind, rain an hour; coldest at 5, warmest at 15, as the usual weather has it."""
        share = (1 - math.cos(math.pi * (hour - 5) / 10)) / 2 if 5 <= hour <= 15 else \
            (1 + math.cos(math.pi * ((hour - 15) % 24) / 14)) / 2
        air = self.coldest + (self.warmest - self.coldest) * share
        humid = max(25, self.damp - 2.5 * (air - self.coldest))
        wet = self.rain_from is not None and self.rain_from <= hour < self.rain_from + self.rain_hours
        return air, min(100, humid + (12 if wet else 0)), self.cloud, self.wind, self.rain if wet else 0.0


def settled(rng, _day):
    low = rng.randint(8, 13)
    return Day(low, low + rng.randint(6, 10), rng.randint(75, 88), rng.randint(10, 80), rng.uniform(1, 4))


def showery(rng, day):
    d = settled(rng, day)
    if rng.random() < 0.4:
        d.rain_from, d.rain_hours, d.rain = rng.randrange(0, 24), rng.randint(1, 6), rng.choice([0.1, 0.4, 1.2])
    return d


def hot(rng, _day):
    return Day(rng.randint(18, 23), rng.randint(31, 38), rng.randint(55, 75), rng.randint(0, 30), rng.uniform(0.5, 3))


def cold(rng, _day):
    low = rng.randint(-1, 7)
    return Day(low, low + rng.randint(4, 9), rng.randint(82, 98), rng.randint(30, 100), rng.uniform(0, 4))


def windy(rng, day):
    d = settled(rng, day)
    d.wind = rng.uniform(5, 12)
    return d


def turning(rng, day):
    """A fit day now and then."""
    return settled(rng, day) if day % 4 == 2 else rng.choice([hot, cold, windy, hopeless])(rng, day)


def hopeless(rng, _day):
    return Day(9, 13, 97, 100, rng.uniform(1, 5), 0, 24, 0.8)


KINDS = [settled, settled, showery, showery, showery, hot, cold, windy, turning, hopeless]


def is_on_the_clock(time, zone):
    """Does the clock on site show this time, or does it leap over it?"""
    local = time.replace(tzinfo=zoneinfo.ZoneInfo(zone))
    return local.astimezone(datetime.timezone.utc).astimezone(local.tzinfo).replace(tzinfo=None) == time


def forecast(rng, start, zone, kind=None, days=None):
    """The text of a forecast file, from about the first day on site."""
    make = kind or rng.choice(KINDS)
    step = rng.choice([1, 1, 3])
    lines = [HEADER]
    first = start - datetime.timedelta(days=rng.randint(0, 2))
    for number in range(days or rng.randint(4, 16)):
        day = make(rng, number)
        date = first + datetime.timedelta(days=number)
        for hour in range(0, 24, step):
            air, damp, cloud, wind, rain = day.row(hour)
            if is_on_the_clock(datetime.datetime(date.year, date.month, date.day, hour), zone):
                lines.append(f"{date}T{hour:02}:00,{air:.1f},{damp:.0f},{cloud:.0f},{wind:.1f},{rain * step:.1f}")
    return "\n".join(lines) + "\n"
